//! A dish of one's own: it is made, and that is all that the model knows of it.

use super::{Made, cooking, of_dish};
use crate::plan::day::{Day, Placed};
use crate::plan::method::Kind;
use crate::plan::outlook::{StepKind, Window};
use crate::units::TimeSpan;

/// Hands are at it for so long at most; after that it minds itself. Set by hand.
const AT_IT: TimeSpan = TimeSpan::from_minutes(20.0);

pub(super) fn add(day: &Day<'_>, placed: &Placed<'_>, made: &mut Made) {
    let Kind::Own(own) = &placed.settled.kind else {
        return;
    };
    let takes = own.likely.min(AT_IT);
    let mut step = of_dish(day, placed, StepKind::Make, Window::at(placed.on), takes);
    step.cooker = placed.on_a_fire().map(|(id, _)| id);
    made.add(step);
    cooking::slice(day, placed, made);
}
