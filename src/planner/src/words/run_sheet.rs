//! What Run sheet says beside its tickets.

use super::{count, count_at_start};
use crate::format::{Formats, rounded};
use crate::screens::run_sheet::lane::Unattended;
use chrono::{NaiveTime, Timelike};
use cook_model::plan::QuietHours;
use cook_model::plan::outlook::Window;
use cook_model::units::{Moment, TimeSpan};

/// Name of the lane of the kitchen.
pub const KITCHEN: &str = "Kitchen";
/// Name of the lane of all steps where no crew is named.
pub const HANDS: &str = "Hands";
/// Where a step or a fire wants hands and nobody is up.
pub const NOBODY_UP: &str = "nobody up";
/// The shut lanes that share a strip.
pub const OTHERS: &str = "Others";
/// What the buttons for more or less at once are for.
pub const SHOWN: &str = "Shown";
/// Every ticket by itself.
pub const DETAIL: &str = "Detail";
/// The whole day at a glance.
pub const WHOLE_DAY: &str = "Whole day";
/// What the keys for more or fewer hours are for.
pub const HOURS_SHOWN: &str = "Hours on the screen";
/// More hours at once.
pub const WIDER: &str = "Show more hours";
/// Fewer hours at once.
pub const CLOSER: &str = "Show fewer hours";

/// How many hours are on the screen.
#[must_use]
pub fn hours_shown(hours: f64) -> String {
    if hours < 9.95 && (hours - hours.round()).abs() > 0.05 {
        format!("{hours:.1}\u{a0}h")
    } else {
        format!("{hours:.0}\u{a0}h")
    }
}

/// The list of bars, for a screen reader.
pub const WHAT_LIES_WHERE: &str = "What lies where, and when it may be table-ready";
/// The list of tickets, for a screen reader.
pub const WHAT_TO_DO: &str = "What to do, in order of time";
/// The choice of the open lane.
pub const WHOSE_LANE: &str = "Whose lane is open";
/// Before the first answer.
pub const BEING_WORKED_OUT: &str = "The day is being worked out.";
/// While a newer answer is made.
pub const WORKED_OUT_ANEW: &str = "Being worked out anew; this is how it was.";
/// Nothing was planned.
pub const NOTHING_YET: &str = "Nothing is on the sheet yet. Add a dish and a cooker in Gathering.";
/// The reckoning broke down.
pub const BROKEN: &str = "The day could not be worked out on this device. What is shown, if anything, may be out of date. Reload the page.";
/// What the Dock is, for a screen reader.
pub const CHOSEN: &str = "The chosen step";
/// What was folded away.
pub const UNFOLD: &str = "Unfold";
/// Folds it again.
pub const FOLD: &str = "Fold";
/// Opens a list of days.
pub const SHOW: &str = "Show";
/// The table line.
pub const TABLE: &str = "table";
/// The part of a bar between off and the window.
pub const REST: &str = "rest";
/// The part of a bar between the window and slicing.
pub const HELD_HOT: &str = "held hot";

/// The key to the drawing, on a wide screen.
pub const KEY: [(&str, &str); 3] = [
    (
        "tiles",
        "table-ready: each tile one chance in ten, notch likely",
    ),
    ("thread", "thread: when a ticket may fall"),
    ("feed", "the fire is fed"),
];

/// The likely time, in the Dock.
#[must_use]
pub fn likely(time: String) -> String {
    format!("likely {time}")
}

/// Opens the cautions of a step.
#[must_use]
pub fn cautions(count: usize) -> String {
    count_at_start(count, "caution", "cautions")
}

/// Opens the source of the caution that stands in full, and the other cautions.
#[must_use]
pub fn source_and_more(others: usize) -> String {
    match others {
        0 => "Its source".to_owned(),
        _ => format!(
            "Its source, and {}",
            count(others, "more caution", "more cautions")
        ),
    }
}

/// Who does it, and how long hands are at it; empty where neither is known.
#[must_use]
pub fn hands(who: Option<&str>, takes: TimeSpan, formats: &Formats) -> String {
    let takes = (takes.minutes() >= 1.0).then(|| formats.span(takes));
    match (who, takes) {
        (None, None) => String::new(),
        (None, Some(takes)) => format!("{takes} of hands"),
        (Some(who), None) => who.to_owned(),
        (Some(who), Some(takes)) => format!("{who}, {takes}"),
    }
}

/// An amount of salt.
#[must_use]
pub fn of_salt(amount: &str) -> String {
    format!("{amount} of salt")
}

/// What a step is for, with its round where it has several.
#[must_use]
pub fn with_round(with: &str, round: u32) -> String {
    match (with, round) {
        (with, 0) => with.to_owned(),
        ("", round) => format!("round {round}"),
        (with, round) => format!("{with}, round {round}"),
    }
}

/// A bundle of steps on one ticket.
#[must_use]
pub fn bundle(count: usize) -> String {
    format!("{count} steps")
}

/// A step in one sentence, for a screen reader: what, for which dish, when, by whom.
#[must_use]
pub fn step(what: &str, with: &str, when: &str, hands: &str) -> String {
    let parts = [what, with, when, hands].into_iter();
    parts
        .filter(|part| !part.is_empty())
        .collect::<Vec<_>>()
        .join(", ")
}

/// A window in full words, for a screen reader.
#[must_use]
pub fn may_fall(window: &Window, formats: &Formats) -> String {
    let day = formats.weekday(window.likely());
    let [from, likely, to] = rounded(window).map(|moment| formats.time(moment));
    if from == to {
        format!("{day} at {likely}")
    } else {
        format!("{day}, likely at {likely}, may fall from {from} to {to}")
    }
}

/// No plan is open.
pub const NO_PLAN: &str = "No plan is open. Choose one in Plans, or make a new one there.";

/// Quiet hours, as a word with their hours.
#[must_use]
pub fn quiet(hours: QuietHours, formats: &Formats) -> String {
    let short = |time: NaiveTime| {
        if time.minute() == 0 {
            formats.clock.hour(time)
        } else {
            formats.clock.time(time)
        }
    };
    let (from, to) = (short(hours.from), short(hours.to));
    let half = formats.clock.half_of_day(hours.from);
    let same = half.is_some() && half == formats.clock.half_of_day(hours.to);
    let from = match half.filter(|_| same) {
        Some(half) => from.trim_end_matches(half).trim_end(),
        None => from.as_str(),
    };
    format!("quiet {from}–{to}")
}

/// Goes on after [`NOBODY_UP`], for a screen reader.
#[must_use]
pub fn unattended_said(stretch: &Unattended, cooker: &str, formats: &Formats) -> String {
    format!(
        "for the fire, {cooker}, {}",
        formats.from_to(stretch.from, stretch.to)
    )
}

/// Nobody is up for a fire: the fact.
#[must_use]
pub fn unattended_head(stretch: &Unattended, formats: &Formats) -> String {
    format!(
        "Nobody is up for the fire, {}",
        formats.from_to(stretch.from, stretch.to)
    )
}

/// Nobody is up for a fire: how bad it is.
#[must_use]
pub fn unattended_note(stretch: &Unattended, cooker: &str) -> String {
    let of = if cooker.is_empty() {
        String::new()
    } else {
        format!(" of {cooker}")
    };
    let number = usize::try_from(stretch.rounds).unwrap_or(usize::MAX);
    let fact = match number {
        0 => format!("The fire{of} burns in quiet hours."),
        1 => format!("One feeding{of} falls in quiet hours."),
        _ => {
            let rounds = count_at_start(number, "feeding", "feedings");
            format!("{rounds}{of} fall in quiet hours.")
        }
    };
    format!("{fact} A lit fire is never left alone. Ways out:")
}

/// What can be done where nobody is up for a fire.
pub const WAYS_OUT: [&str; 4] = [
    "Somebody stays up for it by name, awake and sober: give them other quiet hours.",
    "Smoke it until it is wrapped, then finish it overnight in the kitchen oven.",
    "Cook by day with a hotter pit, and put it on in the morning.",
    "Use a cooker that wants feeding less often.",
];

/// What was folded away because its time is past.
#[must_use]
pub fn folded(count: usize, since: Moment, formats: &Formats) -> (String, String) {
    (
        count_at_start(count, "earlier", "earlier"),
        format!("since {}", formats.day_time(since)),
    )
}

/// What is to be done on other days: how many things, and where they lie.
#[must_use]
pub fn other_days(count: usize, ahead: bool) -> String {
    let things = count_at_start(count, "thing", "things");
    let side = if ahead {
        "on days before"
    } else {
        "on days after"
    };
    format!("{things} {side}")
}

/// A clock change on the axis.
#[must_use]
pub fn clock_moves(seconds: i32) -> &'static str {
    if seconds > 0 {
        "clock put on"
    } else {
        "clock put back"
    }
}

/// Dishes that are not on the sheet because they have no forecast.
#[must_use]
pub fn without_forecast(names: &[String]) -> String {
    format!(
        "Not on the sheet, as there is no forecast yet: {}. Gathering says what is missing.",
        names.join(", ")
    )
}

/// A dish's bar, for a screen reader.
#[must_use]
pub fn bar(name: &str, place: &str, on: &str, off: &str, window: &str, likely: &str) -> String {
    format!(
        "{name}, {place}: on at {on}, likely off at {off}, table-ready {window}, likely at {likely}"
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::format::ClockStyle;
    use crate::screens::run_sheet::sample::{at, formats};

    #[test]
    fn quiet_hours_are_short_where_they_are_full() {
        let time = |hour, minute| NaiveTime::from_hms_opt(hour, minute, 0).expect("a time");
        let hours = |to| QuietHours {
            from: time(22, 0),
            to,
        };
        assert_eq!(quiet(hours(time(3, 0)), &formats()), "quiet 22–03");
        assert_eq!(quiet(hours(time(3, 30)), &formats()), "quiet 22–03:30");
        let twelve = Formats {
            clock: ClockStyle::Hours12,
            ..formats()
        };
        assert_eq!(
            quiet(hours(time(3, 0)), &twelve),
            "quiet 10\u{a0}pm–3\u{a0}am"
        );
        let evening = hours(time(23, 0));
        assert_eq!(quiet(evening, &twelve), "quiet 10–11\u{a0}pm");
    }

    #[test]
    fn a_fire_with_nobody_up_says_what_and_when() {
        let stretch = Unattended {
            from: at("2026-09-12T01:00:00"),
            to: at("2026-09-12T03:00:00"),
            rounds: 3,
            finding: 0,
        };
        assert_eq!(
            unattended_head(&stretch, &formats()),
            "Nobody is up for the fire, 01:00–03:00"
        );
        let unfed = Unattended {
            rounds: 0,
            ..stretch
        };
        assert!(unattended_note(&unfed, "Drum").starts_with("The fire of Drum burns"));
        assert!(unattended_note(&stretch, "Offset").starts_with("Three feedings of Offset fall"));
    }
}
