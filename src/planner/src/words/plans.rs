//! What the Plans screen says.

use super::screens::plan_name;
use super::{count, count_at_start};

/// Heading over the plans.
#[must_use]
pub fn on_the_shelf(number: usize) -> String {
    count_at_start(number, "plan", "plans")
}

/// The key for a new one.
pub const NEW: &str = "New plan";
/// The plan on the screen.
pub const OPEN_NOW: &str = "open";
/// What else can be done with it.
pub const MORE: &str = "More";
/// The key that copies it.
pub const COPY: &str = "Copy";
/// The field that renames it.
pub const NAME: &str = "Name";
/// The key that hands it on.
pub const HAND_ON: &str = "Hand on";
/// The key that takes it away.
pub const TAKE_AWAY: &str = "Take away";
/// Heading over what was taken away.
pub const AWAY: &str = "Taken away, still kept";
/// The key that brings it back.
pub const BRING_BACK: &str = "Bring back";
/// The key that erases it.
pub const ERASE: &str = "Erase";
/// The key that erases it really.
pub const ERASE_REALLY: &str = "Erase for good?";
/// Heading over what could not be read.
pub const ASIDE: &str = "Could not be read";
/// What that is.
pub const ASIDE_NOTE: &str = "Found on this device in a state that cannot be read, and kept as it was found. Keep it as a file before you erase it.";
/// The key that keeps it.
pub const KEEP_FILE: &str = "Keep as a file";
/// No plan.
pub const NONE: &str = "No plan here yet";

/// A plan's copy.
#[must_use]
pub fn copy_of(name: &str) -> String {
    format!("{}, again", plan_name(name))
}

/// Dishes and guests at a glance.
#[must_use]
pub fn at_a_glance(dishes: usize, guests: u32) -> String {
    format!("{}, {guests} at the table", count(dishes, "dish", "dishes"))
}

/// Keys that act on one plan say which.
#[must_use]
pub fn on(key: &str, name: &str) -> String {
    format!("{key}: {}", plan_name(name))
}

/// The browser has promised to keep everything.
pub const KEPT: &str = "This browser has promised to keep your plans until you erase them.";
/// It has not.
pub const MAY_BE_CLEARED: &str = "This browser may clear plans when room gets short, or when the page is not opened for some weeks. Put Longcook on the \
     home screen, and hand a plan on to yourself as a file now and then.";
