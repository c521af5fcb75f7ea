//! What the Gathering screen says.

use super::count;
use super::screens::plan_name;
use crate::store::Progress;

/// Heading over the window.
#[must_use]
pub fn table_ready(dish: &str, day: &str) -> String {
    format!("{} table-ready, {day}", dish_name(dish))
}

/// A dish's name, or what stands for it.
#[must_use]
pub fn dish_name(name: &str) -> &str {
    let name = name.trim();
    if name.is_empty() {
        "Unnamed dish"
    } else {
        name
    }
}

/// The likely time, and what a window is.
#[must_use]
pub fn likely(time: &str) -> String {
    format!("Likely {time}. 16 cooks in 20 land inside.")
}

/// A window for those who do not see it.
#[must_use]
pub fn window_label(from_to: &str, likely: &str) -> String {
    format!("Table-ready window {from_to}, likely {likely}")
}

/// Heading over the put-on span.
#[must_use]
pub fn put_on(dish: &str, day: &str) -> String {
    format!("Put {} on, {day}", lower(dish_name(dish)))
}

/// A name in the middle of a sentence: the first letter small, unless the word is all capitals.
pub(super) fn lower(name: &str) -> String {
    let mut letters = name.chars();
    match (letters.next(), letters.next()) {
        (Some(first), Some(second)) if !second.is_uppercase() => {
            first.to_lowercase().chain(name.chars().skip(1)).collect()
        }
        _ => name.to_owned(),
    }
}

/// The time to aim for.
#[must_use]
pub fn aim_for(time: &str) -> String {
    format!("aim for {time}")
}

/// Heading over the table's odds. Dishes that could not be reckoned are not counted in.
#[must_use]
pub fn all_by(reckoned: usize, dishes: usize, time: &str) -> String {
    match (reckoned, dishes) {
        (1, 1) => format!("Ready by {time}"),
        (reckoned, dishes) if reckoned < dishes => {
            format!("{} of {dishes} by {time}", count(reckoned, "", "").trim())
        }
        (2, _) => format!("Both by {time}"),
        (all, _) => format!("All {} by {time}", count(all, "", "").trim()),
    }
}

/// Time left over, or missing, where the window ends.
#[must_use]
pub fn slack(span: &str, left: bool) -> String {
    if left {
        format!("{span} of slack")
    } else {
        format!("may run {span} late")
    }
}

/// How the answer stands to the plan as it is now.
#[must_use]
pub const fn standing(progress: Progress) -> Option<&'static str> {
    match progress {
        Progress::Working => Some("Being worked out again"),
        Progress::Rough => Some("First estimate; being worked out in full"),
        Progress::Broken => Some("The reckoning stopped; this is the last answer"),
        Progress::Idle | Progress::Full => None,
    }
}

/// No dish.
pub const NO_DISH: &str = "No dish yet";
/// What to do without one.
pub const NO_DISH_NOTE: &str = "Say what you would like to cook. Times, amounts and the fire are worked out back from the table.";
/// The key that adds a dish.
pub const ADD_A_DISH: &str = "Add a dish";
/// The key that opens the sample.
pub const LOOK_AT_SAMPLE: &str = "Look through a made-up supper";
/// Where plans are.
pub const STAYS_HERE: &str = "Everything stays on this device and works without signal.";
/// The first answer is on its way.
pub const WORKING: &str = "Working it out";
/// What takes so long.
pub const WORKING_NOTE: &str = "Cooking it a few hundred times over, from the table back.";
/// The reckoning broke.
pub const BROKEN: &str = "The reckoning stopped";
/// What to do then.
pub const BROKEN_NOTE: &str = "It was started again and stopped again. Change something in the plan, or reload the page; the plan itself is kept.";

/// Heading over the dishes.
#[must_use]
pub fn dishes(number: usize) -> String {
    super::count_at_start(number, "dish", "dishes")
}

/// Cooked food planned and wanted.
#[must_use]
pub fn portions(planned: &str, wanted: &str) -> String {
    format!("{planned} cooked, {wanted} wanted")
}

/// What the odds under the dishes mean.
#[must_use]
pub fn odds_note(time: &str) -> String {
    format!("Table-ready: rested and sliced. Odds are by {time}, rounded down.")
}

/// The table's label on an axis, before its time.
pub const TABLE: &str = "table";
/// A dish without its window yet.
pub const BEING_WORKED_OUT: &str = "being worked out";
/// A row with something in it that cannot be right.
pub const ASKS: &str = "Something here cannot be right: tap to see";

/// Heading over the footing.
pub const RESTS_ON: &str = "What this rests on";
/// How it is changed.
pub const TAP_TO_CHANGE: &str = "tap a line to change";
/// The key that hands the plan on.
pub const HAND_ON: &str = "Hand this plan on";
/// The key that takes a plan in.
pub const TAKE_IN: &str = "Take one in";
/// Over the sample.
pub const SAMPLE_HEAD: &str = "This supper is made up";
/// What to do with it.
pub const SAMPLE_NOTE: &str =
    "Change anything and see what follows. It can be taken away at any time.";
/// The key that starts a plan of one's own.
pub const START_OWN: &str = "Start a plan of my own";

/// The name of the plan for headings.
#[must_use]
pub fn heading(name: &str) -> &str {
    plan_name(name)
}

/// Further findings that are folded away.
#[must_use]
pub fn more_findings(number: usize) -> String {
    format!(
        "{} more to think about",
        super::capital(count(number, "", "").trim())
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_is_counted_in_words() {
        assert_eq!(all_by(1, 1, "18:00"), "Ready by 18:00");
        assert_eq!(all_by(2, 2, "18:00"), "Both by 18:00");
        assert_eq!(all_by(4, 4, "18:00"), "All four by 18:00");
        assert_eq!(all_by(1, 3, "18:00"), "one of 3 by 18:00");
    }

    #[test]
    fn names_fit_into_sentences() {
        assert_eq!(
            put_on("Pork shoulder butts", "Sat"),
            "Put pork shoulder butts on, Sat"
        );
        assert_eq!(put_on("BBQ beans", "Sat"), "Put BBQ beans on, Sat");
        assert_eq!(table_ready(" ", "Sat"), "Unnamed dish table-ready, Sat");
    }
}
