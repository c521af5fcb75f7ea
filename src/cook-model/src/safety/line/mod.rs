//! The safe line: how the food of a plan stands, dish by dish, since when, why, and which moment comes next.
//!
//! It rests on the journal; what the model foresees only makes it stricter, or says when to look. It can be worked out
//! anew at any minute from the plan, the journal and what was foreseen, with no ensemble at hand.

mod foreseen;
mod who;

pub use foreseen::Foreseen;
pub use who::who_to_ask;

use super::watch::{Happened, Next, SafeState, Standing, Track, judge, track_of};
use super::{CORE_LIMIT, Concern, Governs, RuleId, governing};
use crate::handover::identity::{DishId, PieceId};
use crate::handover::{Event, Journal, KnownEvent};
use crate::plan::{Food, Plan, in_order};
use crate::units::{Moment, TimeSpan};
use serde::{Deserialize, Serialize};

/// Every dish of a plan as it stands.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct SafeLine {
    /// Each dish, in the person's order.
    pub dishes: Vec<DishLine>,
}

/// One dish as it stands.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct DishLine {
    /// Which.
    pub dish: DishId,
    /// How far it is.
    pub phase: Phase,
    /// How its worst piece stands. None: nothing can be said, because it is a dish of one's own, its cut is not known,
    /// or it is not due yet.
    pub state: Option<SafeState>,
    /// Its worst piece.
    pub piece: Option<PieceId>,
    /// When a core reading would tell the most, as the model foresees it. Never a promise that all is well.
    pub look: Option<Next>,
    /// What the model foresees, kept so that the line can be worked out again without it.
    pub foreseen: Foreseen,
}

/// How far a dish is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Phase {
    /// Nothing was logged of it, and nothing had to be yet.
    Planned,
    /// It is in play: out of the fridge, on, waiting, on the table, or kept.
    InPlay,
    /// Nothing is left of it to watch over.
    Over,
    /// No clock can run over it: a dish of one's own, a cut that is not known, or no pieces.
    NotWatched,
}

/// How every dish of a plan stands at a moment. `foreseen` may lack dishes; then only the journal speaks.
#[must_use]
pub fn safe_line(plan: &Plan, journal: &Journal, foreseen: &[Foreseen], now: Moment) -> SafeLine {
    let dishes = in_order(&plan.dishes, |dish| &dish.order);
    let dishes = dishes.into_iter().map(|(dish, _)| {
        let known = foreseen.iter().find(|one| one.dish == dish);
        let known = known.cloned().unwrap_or_else(|| Foreseen::nothing(dish));
        dish_line(plan, journal, known, now)
    });
    SafeLine {
        dishes: dishes.collect(),
    }
}

impl SafeLine {
    /// The dish that stands worst, of those that are in play or should be; among alike the one whose next moment comes
    /// first. None: nothing is in play.
    #[must_use]
    pub fn worst(&self) -> Option<&DishLine> {
        let with_state = self.dishes.iter().filter(|line| line.state.is_some());
        with_state.min_by_key(|line| {
            let state = line.state.as_ref();
            let standing = state.map(|state| core::cmp::Reverse(state.standing));
            let next = state.and_then(|state| state.next).map(|next| next.at);
            (standing, next.is_none(), next)
        })
    }

    /// Dishes that ask for something to be done at once, the worst first.
    #[must_use]
    pub fn stops(&self) -> Vec<&DishLine> {
        let mut stops: Vec<_> = self.dishes.iter().filter(|line| line.stops()).collect();
        stops.sort_by_key(|line| core::cmp::Reverse(line.state.map(|state| state.standing)));
        stops
    }

    /// The next moment that matters, over all dishes in play.
    #[must_use]
    pub fn next(&self) -> Option<(DishId, Next)> {
        let next = |line: &DishLine| Some((line.dish, line.state?.next?));
        self.dishes
            .iter()
            .filter_map(next)
            .min_by_key(|(_, next)| next.at)
    }

    /// What was foreseen of each dish.
    #[must_use]
    pub fn foreseen(&self) -> Vec<Foreseen> {
        let foreseen = self.dishes.iter().map(|line| line.foreseen.clone());
        foreseen.collect()
    }
}

impl DishLine {
    /// Whether it takes over the screen until the person has said what happened.
    #[must_use]
    pub fn stops(&self) -> bool {
        let stops = self.state.is_some_and(|state| state.standing.stops());
        self.phase == Phase::InPlay && stops
    }

    /// What a careful friend would say of the plan, while nothing has happened yet.
    #[must_use]
    pub fn concerns(&self) -> &[Concern] {
        match self.phase {
            Phase::Planned => &self.foreseen.concerns,
            Phase::InPlay | Phase::Over | Phase::NotWatched => &[],
        }
    }
}

fn dish_line(plan: &Plan, journal: &Journal, foreseen: Foreseen, now: Moment) -> DishLine {
    let dish = foreseen.dish;
    let line = |phase, state, piece, look| DishLine {
        dish,
        phase,
        state,
        piece,
        look,
        foreseen: foreseen.clone(),
    };
    let tracks = tracks(plan, journal, &foreseen);
    if tracks.is_empty() {
        return line(Phase::NotWatched, None, None, None);
    }
    let begun = tracks.iter().any(|(_, track)| begun(track, now));
    if !begun {
        let due = foreseen.leaves_the_cold.filter(|due| *due < now);
        let state = due.map(|due| SafeState {
            standing: Standing::Unknown,
            since: Some(due),
            next: None,
            why: RuleId::KeepCold,
        });
        return line(Phase::Planned, state, None, None);
    }
    let gone = gone(journal, dish, now);
    // Judged when it was last there: what came of it afterwards is no news of the food.
    let then = gone.map_or(now, |(at, _)| at);
    let states = tracks
        .iter()
        .map(|(piece, track)| (*piece, judge(track, then)));
    let worst = states.max_by_key(|(_, state)| state.standing);
    let (piece, state) = worst.unzip();
    match gone {
        Some(_) => line(Phase::Over, state, piece, None),
        None => {
            let look = look(&tracks, &foreseen, now);
            line(Phase::InPlay, state, piece, look)
        }
    }
}

fn tracks(plan: &Plan, journal: &Journal, foreseen: &Foreseen) -> Vec<(PieceId, Track)> {
    let Some(dish) = plan.dishes.get(&foreseen.dish) else {
        return Vec::new();
    };
    if matches!(dish.food, Food::Own { .. }) {
        return Vec::new();
    }
    let pieces = dish.pieces.keys();
    pieces
        .filter_map(|piece| {
            let track = track_of(plan, journal, foreseen.dish, *piece)?;
            Some((*piece, foreseen.with(track)))
        })
        .collect()
}

/// Whether anything that was told is about the food itself, not only about the fire.
fn begun(track: &Track, now: Moment) -> bool {
    track.happenings.iter().any(|one| {
        let about_the_fire = matches!(one.what, Happened::Pit(_) | Happened::HeatLost);
        one.at <= now && !about_the_fire
    })
}

/// Since when nothing is left of it, and whether it was thrown away. What was told of the food later brings it back.
fn gone(journal: &Journal, dish: DishId, now: Moment) -> Option<(Moment, bool)> {
    let entries = journal.standing().map(|(_, entry)| entry);
    let told = entries.filter_map(|entry| match &entry.event {
        Event::Known(KnownEvent::Gone {
            dish: of,
            thrown_away,
        }) if *of == dish => Some((entry.at, *thrown_away)),
        _ => None,
    });
    told.filter(|(at, _)| *at <= now).min_by_key(|(at, _)| *at)
}

/// When to read the core of meat that goes by it: as late as the model foresees it past 60 °C, if that is before the
/// limit; else in time to act.
fn look(tracks: &[(PieceId, Track)], foreseen: &Foreseen, now: Moment) -> Option<Next> {
    let by_core = |track: &&Track| governing(track.sort) == Governs::Core;
    let (_, track) = tracks.iter().find(|(_, track)| by_core(&track))?;
    let on = track
        .happenings
        .iter()
        .filter(|one| one.what == Happened::On);
    let on = on.map(|one| one.at).min()?;
    let takes = foreseen.core_takes?.min(CORE_LIMIT - ACT);
    let at = on + takes.max(TimeSpan::ZERO);
    (at > now).then_some(Next {
        at,
        rule: RuleId::CoreHotInTime,
    })
}

/// Time to do something about a core that is late. Set by hand.
const ACT: TimeSpan = TimeSpan::from_minutes(45.0);

#[cfg(test)]
mod tests;
