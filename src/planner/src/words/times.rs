//! When things are, in words.

use crate::format::Formats;
use cook_model::units::Moment;

/// When the table is served and how far off that is: `Sat 12 Sep, in 7 days`.
#[must_use]
pub fn served_when(serving: Moment, now: Moment, formats: &Formats) -> String {
    format!(
        "{}, {}",
        formats.date(serving),
        how_far(serving, now, formats)
    )
}

/// How far off a moment is: `in 7 days`, `tomorrow`, `in 3 h 20`, `2 h ago`.
#[must_use]
pub fn how_far(moment: Moment, now: Moment, formats: &Formats) -> String {
    let date = |moment| formats.zone.local(moment).date();
    let days = (date(moment) - date(now)).num_days();
    let span = formats.span(moment - now);
    match days {
        0 if moment >= now => format!("in {span}"),
        0 => format!("{span} ago"),
        1 => "tomorrow".to_owned(),
        -1 => "yesterday".to_owned(),
        2.. => format!("in {days} days"),
        _ => format!("{} days ago", -days),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::format::{ClockStyle, Units};
    use cook_model::plan::Zone;
    use cook_model::units::TimeSpan;
    use std::sync::Arc;

    #[test]
    fn days_are_counted_by_the_calendar_and_not_by_hours() {
        let formats = Formats {
            units: Units::METRIC,
            clock: ClockStyle::Hours24,
            zone: Arc::new(Zone::fixed(0)),
        };
        // 12 September 2026, 18:00 UTC.
        let serving = Moment::from_unix_seconds(1_789_236_000);
        let say = |hours: f64| how_far(serving, serving - TimeSpan::from_hours(hours), &formats);
        assert_eq!(say(19.0), "tomorrow");
        assert_eq!(say(17.0), "in 17\u{a0}h");
        assert_eq!(say(170.0), "in 7 days");
        assert_eq!(say(-2.0), "2\u{a0}h ago");
        assert_eq!(say(-20.0), "yesterday");
        let before = serving - TimeSpan::from_hours(19.0);
        assert_eq!(
            served_when(serving, before, &formats),
            "Sat 12 Sep, tomorrow"
        );
    }
}
