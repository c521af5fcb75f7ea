//! What is said about moving a step.

use super::{capital, steps};
use crate::format::{self, Formats};
use cook_model::plan::outlook::Odds;
use cook_model::plan::{Plan, StepKey};
use cook_model::units::Moment;

/// Where no rule holds a step.
pub const NOTHING_HOLDS: &str = "Nothing holds it: it is best there.";
/// A key of the Dock.
pub const EARLIER: &str = "Earlier";
/// A key of the Dock.
pub const LATER: &str = "Later";
/// A key of the Dock.
pub const PIN: &str = "Pin";
/// A key of the Dock.
pub const UNPIN: &str = "Unpin";
/// A key of the Dock.
pub const PLACE_AFTER: &str = "Place after";
/// What the keys of the Dock are for.
pub const KEYS: &str = "Move the chosen step";
/// How far a key of the Dock moves.
pub const KEY_STEP: &str = "10\u{a0}min";
/// On a ticket that was refused.
pub const REFUSED: &str = "refused";
/// Why a step is where it is.
pub const WHY: &str = "What holds it there";
/// While a ticket is in hand.
pub const LET_GO: &str = "Let go to set it down.";
/// A promise that a move breaks is allowed.
pub const ALLOWED_LATE: &str = "Allowed, but the promise is not kept.";

/// The grip of a ticket, for a screen reader.
#[must_use]
pub fn handle(key: StepKey, plan: &Plan) -> String {
    format!(
        "Move {}: arrows move it, P pins it, Escape puts it back",
        steps::named(key, plan)
    )
}

/// In the landing place.
#[must_use]
pub fn lands(at: Moment, formats: &Formats) -> String {
    format!("lands {}", formats.time(at))
}

/// In the outline where a ticket was.
#[must_use]
pub fn from(at: Moment, formats: &Formats) -> String {
    format!("from {}", formats.time(at))
}

/// On a ticket with a peg.
#[must_use]
pub fn pinned(at: Moment, formats: &Formats) -> String {
    format!(
        "pinned {}",
        formats.clock.digits(formats.zone.local(at).time())
    )
}

/// At a line that a ticket may not pass.
#[must_use]
pub fn limit(at: Moment, later: bool, formats: &Formats) -> String {
    let word = if later { "latest" } else { "earliest" };
    format!("{word} {}", formats.time(at))
}

/// At the line behind which the promise is not kept.
#[must_use]
pub fn keeps_it(at: Moment, formats: &Formats) -> String {
    format!("{} keeps it", formats.time(at))
}

/// A step in hand: its name at the start of a line.
#[must_use]
pub fn in_hand(key: StepKey, plan: &Plan) -> String {
    capital(&steps::named(key, plan))
}

/// A key that puts a step somewhere.
#[must_use]
pub fn put_it(at: Moment, formats: &Formats) -> String {
    format!("Put it at {}", formats.time(at))
}

/// A key that puts a step back.
#[must_use]
pub fn back_to(at: Moment, formats: &Formats) -> String {
    format!("Back to {}", formats.time(at))
}

/// A key that leaves a step where the promise is broken.
#[must_use]
pub fn leave_it(at: Moment, formats: &Formats) -> String {
    format!("Leave it at {}", formats.time(at))
}

/// A move that was refused: the fact.
#[must_use]
pub fn refused(key: StepKey, at: Moment, plan: &Plan, formats: &Formats) -> String {
    format!(
        "Refused: {} cannot be at {}",
        steps::named(key, plan),
        formats.time(at)
    )
}

/// A dish that does not keep the promise: the fact.
#[must_use]
pub fn late(dish: &str, on: Moment, odds: Odds, serving: Moment, formats: &Formats) -> String {
    format!(
        "{dish} on at {}: {} by {}",
        formats.time(on),
        format::odds(odds),
        formats.time(serving)
    )
}

/// What would keep the promise.
#[must_use]
pub fn late_note(latest: Moment, formats: &Formats) -> String {
    format!(
        "{ALLOWED_LATE} {} is the latest time that keeps it.",
        formats.time(latest)
    )
}

/// A pin that no rule allows any more: the fact.
#[must_use]
pub fn pin_collides(pinned: Moment, stands: Moment, formats: &Formats) -> String {
    format!(
        "You pinned it to {}, which no longer works. It stands at {}.",
        formats.time(pinned),
        formats.time(stands)
    )
}

/// Said politely after a move.
#[must_use]
pub fn moved(key: StepKey, at: Moment, plan: &Plan, formats: &Formats) -> String {
    format!("{}: {}", in_hand(key, plan), formats.day_time(at))
}

/// Said politely after a pin was taken out.
#[must_use]
pub fn unpinned(key: StepKey, plan: &Plan) -> String {
    format!("{}: no longer pinned", in_hand(key, plan))
}

/// Said politely after a ticket was put back.
#[must_use]
pub fn put_back(key: StepKey, at: Moment, plan: &Plan, formats: &Formats) -> String {
    format!("{}: back at {}", in_hand(key, plan), formats.time(at))
}

/// A row of the list of steps behind which one can be put.
#[must_use]
pub fn after_row(key: StepKey, ends: Moment, plan: &Plan, formats: &Formats) -> String {
    format!("{}, over at {}", in_hand(key, plan), formats.day_time(ends))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::screens::run_sheet::sample::{Sample, at, formats};
    use cook_model::plan::outlook::StepKind;

    #[test]
    fn a_refused_move_names_the_step_and_the_time() {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        let lamb = sample.dish("Lamb", None, "2026-09-12T08:30:00");
        let key = StepKey::dish(lamb, StepKind::Salt);
        assert_eq!(
            refused(key, at("2026-09-12T08:10:00"), &sample.plan, &formats()),
            "Refused: salting Lamb cannot be at 08:10"
        );
        assert_eq!(in_hand(key, &sample.plan), "Salting Lamb");
    }
}
