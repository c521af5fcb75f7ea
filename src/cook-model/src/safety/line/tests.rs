//! The line over a whole plan: what is not begun, what is in play, what is over, and what the model may add.

use super::*;
use crate::handover::Entry;
use crate::handover::identity::{CookerId, EntryId};
use crate::plan::{Intact, Serving, demo};
use crate::safety::watch::Standing::{ActNow, Discard, LooksSafe, Unknown};
use serde_json::{Value, json};

/// The made-up supper: pork, lamb and sausages on one fire, corn on another.
struct Supper {
    plan: Plan,
    journal: Journal,
}

fn at(hours: f64) -> Moment {
    Moment::from_unix_seconds(1_790_000_000) + TimeSpan::from_hours(hours)
}

impl Supper {
    fn new() -> Self {
        let serving = Serving {
            local: "2026-09-12T18:00:00".parse().expect("a time"),
            zone: "Europe/London".to_owned(),
            offset_seconds: 3600,
        };
        let mut next = 0;
        let plan = demo(serving, || {
            next += 1;
            (1, next)
        });
        Self {
            plan,
            journal: Journal::default(),
        }
    }

    fn dish(&self, cut: &str) -> DishId {
        let named = |food: &Food| matches!(food, Food::Cut { cut: slug } if slug == cut);
        let found = self.plan.dishes.iter().find(|(_, dish)| named(&dish.food));
        *found.expect("a dish of this cut").0
    }

    fn piece(&self, dish: DishId) -> PieceId {
        *self.plan.dishes[&dish]
            .pieces
            .keys()
            .next()
            .expect("a piece")
    }

    fn cooker(&self, dish: DishId) -> CookerId {
        self.plan.dishes[&dish].cooker.expect("a cooker")
    }

    /// An event by the words of its file format.
    fn log(&mut self, hours: f64, event: Value) {
        let event = serde_json::from_value(event).expect("an event");
        let entry = Entry::told(at(hours), event);
        let number = u128::try_from(self.journal.0.len()).expect("few");
        self.journal.0.insert(EntryId::new(1, number), entry);
    }

    fn line(&self, dish: DishId, hours: f64) -> DishLine {
        let line = safe_line(&self.plan, &self.journal, &[], at(hours));
        let found = line.dishes.into_iter().find(|line| line.dish == dish);
        found.expect("every dish has its line")
    }
}

#[test]
fn nothing_logged_is_planned_and_says_nothing_of_safe() {
    let supper = Supper::new();
    let line = safe_line(&supper.plan, &supper.journal, &[], at(0.0));
    assert_eq!(line.dishes.len(), supper.plan.dishes.len());
    assert!(line.worst().is_none() && line.stops().is_empty() && line.next().is_none());
    let own = line
        .dishes
        .iter()
        .filter(|line| line.phase == Phase::NotWatched);
    assert_eq!(own.count(), 1, "the corn");
}

#[test]
fn a_dish_that_should_be_out_of_the_fridge_by_now_is_not_known() {
    let supper = Supper::new();
    let lamb = supper.dish("lamb-shoulder");
    let foreseen = Foreseen {
        leaves_the_cold: Some(at(1.0)),
        ..Foreseen::nothing(lamb)
    };
    let before = safe_line(
        &supper.plan,
        &supper.journal,
        std::slice::from_ref(&foreseen),
        at(0.9),
    );
    assert!(before.worst().is_none());
    let after = safe_line(&supper.plan, &supper.journal, &[foreseen], at(1.1));
    let worst = after.worst().expect("the lamb");
    assert_eq!((worst.dish, worst.phase), (lamb, Phase::Planned));
    assert_eq!(worst.state.expect("a state").standing, Unknown);
    assert!(!worst.stops(), "nothing was told: it is asked, not stopped");
}

#[test]
fn the_worst_dish_speaks_for_all_and_a_stop_stays_until_something_is_told() {
    let mut supper = Supper::new();
    let (pork, lamb) = (
        supper.dish("pork-shoulder-butt"),
        supper.dish("lamb-shoulder"),
    );
    supper.log(0.0, json!({"is": "taken_out", "dish": lamb}));
    supper.log(1.0, json!({"is": "taken_out", "dish": pork}));
    let line = |supper: &Supper, hours| safe_line(&supper.plan, &supper.journal, &[], at(hours));
    let calm = line(&supper, 1.1);
    assert!(calm.stops().is_empty());
    assert_eq!(
        calm.next().map(|(dish, next)| (dish, next.at)),
        Some((lamb, at(2.0)))
    );
    assert_eq!(
        calm.worst().map(|worst| worst.dish),
        Some(lamb),
        "its limit comes first"
    );
    let stopped = line(&supper, 2.3);
    let stops = stopped.stops();
    assert_eq!(stops.len(), 1);
    assert_eq!(
        (stops[0].dish, stops[0].state.map(|state| state.standing)),
        (lamb, Some(Discard))
    );
    // The log was wrong: it went back after an hour.
    let mut mended = Supper {
        plan: supper.plan.clone(),
        journal: supper.journal.clone(),
    };
    mended.log(0.9, json!({"is": "put_back", "dish": lamb}));
    assert!(line(&mended, 2.3).stops().is_empty());
    // Or it was thrown away: then nothing is left to watch over.
    supper.log(
        2.4,
        json!({"is": "gone", "dish": lamb, "thrown_away": true}),
    );
    let over = line(&supper, 3.5);
    let lamb = over
        .dishes
        .iter()
        .find(|line| line.dish == lamb)
        .expect("the lamb");
    assert_eq!(lamb.phase, Phase::Over);
    assert!(over.stops().iter().all(|stop| stop.dish == pork));
}

#[test]
fn eaten_food_has_no_clock_but_keeps_what_it_had_come_to() {
    let mut supper = Supper::new();
    let lamb = supper.dish("lamb-shoulder");
    supper.log(0.0, json!({"is": "taken_out", "dish": lamb}));
    supper.log(2.5, json!({"is": "gone", "dish": lamb}));
    let over = supper.line(lamb, 50.0);
    assert_eq!(
        (over.phase, over.state.map(|state| state.standing)),
        (Phase::Over, Some(Discard))
    );
    assert!(!over.stops());
}

#[test]
fn a_dying_fire_cools_only_what_lies_on_it() {
    let mut supper = Supper::new();
    let lamb = supper.dish("lamb-shoulder");
    let (piece, cooker) = (supper.piece(lamb), supper.cooker(lamb));
    let core = |reading: f64| json!({"is": "core", "piece": piece, "reading": reading});
    let pit = |reading: f64| json!({"is": "pit", "cooker": cooker, "reading": reading});
    supper.log(0.0, json!({"is": "on", "dish": lamb}));
    supper.log(0.5, pit(125.0));
    supper.log(3.5, core(62.0));
    supper.log(6.0, core(85.0));
    // Finished in the oven: the smoker's own air is no news any more.
    supper.log(
        6.1,
        json!({"is": "moved_to_oven", "dish": lamb, "air": 135.0}),
    );
    supper.log(6.5, pit(60.0));
    supper.log(6.6, json!({"is": "fire_out", "cooker": cooker}));
    let state = supper.line(lamb, 7.0).state.expect("a state");
    assert!(state.standing < Unknown, "{state:?}");
    // Off and in the box: a fire that is lit again does not put it back on the heat.
    supper.log(9.0, core(92.0));
    supper.log(9.1, json!({"is": "boxed", "dish": lamb}));
    supper.log(9.2, json!({"is": "fire_back", "cooker": cooker}));
    let boxed = supper.line(lamb, 9.3).state.expect("a state");
    assert_eq!((boxed.standing, boxed.why), (LooksSafe, RuleId::HoldHot));
    // On it, the same fire counts.
    let mut on = Supper::new();
    on.log(0.0, json!({"is": "on", "dish": lamb}));
    on.log(0.5, pit(125.0));
    on.log(1.0, pit(60.0));
    assert_eq!(
        on.line(lamb, 1.1).state.map(|state| state.standing),
        Some(ActNow)
    );
}

#[test]
fn what_the_model_foresees_only_makes_it_stricter() {
    let mut supper = Supper::new();
    let pork = supper.dish("pork-shoulder-butt");
    let cooker = supper.cooker(pork);
    let dish = supper.plan.dishes.get_mut(&pork).expect("the pork");
    for piece in dish.pieces.values_mut() {
        piece.intact = Intact::Yes;
    }
    supper.log(0.0, json!({"is": "on", "dish": pork}));
    supper.log(
        0.3,
        json!({"is": "pit", "cooker": cooker, "reading": 121.0}),
    );
    let standing = |takes: Option<f64>, out: f64, hours: f64| {
        let foreseen = Foreseen {
            surface_takes: takes.map(TimeSpan::from_hours),
            out_before_on: TimeSpan::from_hours(out),
            ..Foreseen::nothing(pork)
        };
        let line = safe_line(&supper.plan, &supper.journal, &[foreseen], at(hours));
        line.worst()
            .and_then(|line| line.state)
            .expect("a state")
            .standing
    };
    for hours in [1.0, 2.5, 3.9, 4.2] {
        let alone = standing(None, 0.0, hours);
        for takes in [0.5, 1.0, 2.0, 3.0, 3.8, 4.5] {
            for out in [0.0, 0.3, 1.0] {
                assert!(
                    standing(Some(takes), out, hours) >= alone,
                    "{takes} {out} {hours}"
                );
            }
        }
    }
    // A surface foreseen hot at 3.8 h is in time from the fridge straight on, and not after half an hour on the board.
    assert!(standing(Some(3.8), 0.0, 4.2) < Unknown);
    assert_eq!(standing(Some(3.8), 0.5, 4.2), Unknown);
}

#[test]
fn a_core_that_governs_is_looked_at_in_time_to_act() {
    let mut supper = Supper::new();
    let sausages = supper.dish("sausage-links");
    supper.log(0.0, json!({"is": "on", "dish": sausages}));
    let look = |takes: f64, hours| {
        let foreseen = Foreseen {
            core_takes: Some(TimeSpan::from_hours(takes)),
            ..Foreseen::nothing(sausages)
        };
        let line = safe_line(&supper.plan, &supper.journal, &[foreseen], at(hours));
        let line = line.dishes.iter().find(|line| line.dish == sausages);
        line.and_then(|line| line.look).map(|look| look.at)
    };
    assert_eq!(look(1.5, 0.5), Some(at(1.5)));
    assert_eq!(look(9.0, 0.5), Some(at(3.25)), "in time before 4 h");
    assert_eq!(look(1.5, 1.6), None, "it is past");
}

#[test]
fn a_line_survives_its_way_to_the_page() {
    let mut supper = Supper::new();
    let lamb = supper.dish("lamb-shoulder");
    supper.log(0.0, json!({"is": "taken_out", "dish": lamb}));
    let line = safe_line(
        &supper.plan,
        &supper.journal,
        &[Foreseen::nothing(lamb)],
        at(1.0),
    );
    let text = serde_json::to_string(&line).expect("json");
    let back: SafeLine = serde_json::from_str(&text).expect("a line");
    assert_eq!(back, line);
    assert_eq!(
        safe_line(&supper.plan, &supper.journal, &back.foreseen(), at(1.0)),
        line
    );
}
