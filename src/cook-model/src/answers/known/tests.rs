//! What is known is taken over; what is old, doubtful or of another dish is not.

use super::*;
use crate::handover::identity::{CookerId, EntryId, PieceId};
use crate::handover::{Entry, Event};
use crate::plan::{Serving, demo};

struct Yard {
    plan: Plan,
    journal: Journal,
    dish: DishId,
    piece: PieceId,
    cooker: CookerId,
}

fn at(minutes: f64) -> Moment {
    Moment::from_unix_seconds(1_789_200_000) + TimeSpan::from_minutes(minutes)
}

impl Yard {
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
        let is_lamb = |food: &Food| matches!(food, Food::Cut { cut } if cut == "lamb-shoulder");
        let (dish, lamb) = plan
            .dishes
            .iter()
            .find(|(_, dish)| is_lamb(&dish.food))
            .expect("the lamb");
        let (dish, piece) = (*dish, *lamb.pieces.keys().next().expect("a piece"));
        let cooker = lamb.cooker.expect("a cooker");
        Self {
            plan,
            journal: Journal::default(),
            dish,
            piece,
            cooker,
        }
    }

    fn log(&mut self, minutes: f64, event: Value) {
        let event: Event = serde_json::from_value(event).expect("an event");
        let number = u128::try_from(self.journal.0.len()).expect("few");
        let entry = Entry::told(at(minutes), event);
        self.journal.0.insert(EntryId::new(1, number), entry);
    }

    fn known(&self, kind: &str, minutes: f64) -> Map<String, Value> {
        let setting = Setting {
            plan: &self.plan,
            outlook: None,
            journal: &self.journal,
            now: at(minutes),
            zone: &Zone::fixed(3600),
            dish: Some(self.dish),
        };
        Question::known(kind, &setting)
    }
}

#[test]
fn the_plan_says_what_it_is_and_how_much() {
    let yard = Yard::new();
    let known = yard.known("heat_lost", 0.0);
    assert_eq!(known["cut"], json!("lamb-shoulder"));
    assert!(known["mass"].as_f64().expect("kg") > 1.0);
    assert!(!known.contains_key("core_now") && !known.contains_key("keep"));
}

#[test]
fn only_a_fresh_reading_stands_for_now_and_the_lowest_counts() {
    let mut yard = Yard::new();
    let core = |reading: f64, doubtful: bool| json!({"is": "core", "piece": yard.piece, "reading": reading, "doubtful": doubtful});
    let entries = [
        (0.0, core(66.0, false)),
        (1.0, core(64.0, false)),
        (2.0, core(31.0, true)),
    ];
    for (minutes, entry) in entries {
        yard.log(minutes, entry);
    }
    assert_eq!(yard.known("heat_lost", 10.0)["core_now"], json!(64.0));
    let later = yard.known("heat_lost", 17.0);
    assert!(!later.contains_key("core_now"), "17 min old is not now");
    assert_eq!(later["core_before"], json!(64.0));
}

#[test]
fn heat_that_came_back_is_not_lost_any_more() {
    let mut yard = Yard::new();
    let cooker = yard.cooker;
    yard.log(0.0, json!({"is": "fire_out", "cooker": cooker}));
    assert_eq!(yard.known("heat_lost", 30.0)["since"], json!(1800.0));
    yard.log(40.0, json!({"is": "fire_back", "cooker": cooker}));
    assert!(!yard.known("heat_lost", 50.0).contains_key("since"));
}

#[test]
fn what_lies_on_the_board_is_raw_and_what_was_served_is_on_the_table() {
    let mut yard = Yard::new();
    let dish = yard.dish;
    assert!(
        !yard.known("left_out", 0.0).contains_key("raw"),
        "nothing was told"
    );
    yard.log(0.0, json!({"is": "taken_out", "dish": dish}));
    let board = yard.known("left_out", 30.0);
    assert_eq!(
        (&board["raw"], &board["span"]),
        (&json!(true), &json!(1800.0))
    );
    yard.log(40.0, json!({"is": "on", "dish": dish}));
    assert!(
        !yard.known("left_out", 50.0).contains_key("span"),
        "it is on the heat"
    );
    yard.log(500.0, json!({"is": "served", "dish": dish}));
    let table = yard.known("left_out", 560.0);
    assert_eq!(
        (&table["raw"], &table["span"]),
        (&json!(false), &json!(3600.0))
    );
    assert_eq!(table["served"], json!(true));
}

#[test]
fn what_is_known_always_makes_readable_facts() {
    let mut yard = Yard::new();
    let (dish, cooker, piece) = (yard.dish, yard.cooker, yard.piece);
    yard.log(0.0, json!({"is": "taken_out", "dish": dish}));
    yard.log(30.0, json!({"is": "on", "dish": dish}));
    yard.log(
        60.0,
        json!({"is": "pit", "cooker": cooker, "reading": 112.0}),
    );
    yard.log(
        100.0,
        json!({"is": "wrapped", "piece": piece, "cover": "foil"}),
    );
    yard.log(
        110.0,
        json!({"is": "core", "piece": piece, "reading": 71.0}),
    );
    for (kind, _) in Question::KINDS {
        for minutes in [-10.0, 20.0, 115.0, 400.0] {
            let known = yard.known(kind, minutes);
            match Question::of(kind, &known) {
                Ok(_) | Err(crate::answers::FactsError::Missing { .. }) => {}
                Err(error) => panic!("{kind} at {minutes}: {error}"),
            }
        }
    }
}
