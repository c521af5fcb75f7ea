//! The axis under the windows of the Gathering screen: the same for the answer and for every dish.

use crate::format::Formats;
use crate::screens::run_sheet::axis::Axis;
use cook_model::plan::outlook::Window;
use cook_model::units::{Moment, TimeSpan};

/// Most hours written under the axis of a phone.
const MOST_LABELS: usize = 5;

/// Half the width of the table's label on a phone, in percent of the axis.
const HALF_LABEL: f64 = 16.0;

/// A label under the axis.
#[derive(Clone, Debug, PartialEq)]
pub struct Label {
    /// Where, in percent of the axis.
    pub at: f64,
    /// What is written.
    pub text: String,
    /// The table's own label, which the others give way to.
    pub table: bool,
    /// It ends at its place instead of standing around it: there is no room behind.
    pub ends_there: bool,
}

/// The axis that holds every window and the serving moment.
#[derive(Clone, Debug, PartialEq)]
pub struct Scale {
    axis: Axis,
    serving: Moment,
}

impl Scale {
    /// The axis around these windows, with room behind the table line.
    #[must_use]
    pub fn around<'a>(
        windows: impl Iterator<Item = &'a Window> + Clone,
        serving: Moment,
        formats: &Formats,
    ) -> Self {
        let first = windows.clone().map(Window::from).fold(serving, Moment::min);
        let last = windows.map(Window::to).fold(serving, Moment::max);
        let room = TimeSpan::from_minutes(20.0);
        Self {
            axis: Axis::around(first - room, last + room, &formats.zone),
            serving,
        }
    }

    /// Where a moment lies, as a fraction of the axis.
    #[must_use]
    pub fn at(&self, moment: Moment) -> f64 {
        self.axis.at(moment) / self.axis.hours()
    }

    /// Where the deciles of a window lie.
    #[must_use]
    pub fn deciles(&self, window: &Window) -> [f64; 9] {
        window.deciles.map(|moment| self.at(moment))
    }

    /// Where the table line stands, in percent.
    #[must_use]
    pub fn table(&self) -> f64 {
        self.at(self.serving) * 100.0
    }

    /// The labels: full hours, thinned out, away from the table's own.
    #[must_use]
    pub fn labels(&self, formats: &Formats, table: &str) -> Vec<Label> {
        let ticks = self.axis.ticks(&formats.zone);
        let every = [1, 2, 3, 4, 6, 12, 24]
            .into_iter()
            .find(|every| ticks.len() / every <= MOST_LABELS)
            .unwrap_or(24);
        let line = self.table();
        let ends_there = line > 100.0 - HALF_LABEL;
        let (before, behind) = if ends_there {
            (2.0 * HALF_LABEL, 0.0)
        } else {
            (HALF_LABEL, HALF_LABEL)
        };
        // Half of another label stands on its own side.
        let clear = |at: f64| at < line - before - 4.0 || at > line + behind + 4.0;
        let mut labels: Vec<Label> = ticks
            .iter()
            .filter(|tick| {
                use chrono::Timelike;
                tick.local.minute() == 0 && (tick.local.hour() as usize).is_multiple_of(every)
            })
            .map(|tick| Label {
                at: tick.at / self.axis.hours() * 100.0,
                text: if tick.names_day && tick.local.time() == chrono::NaiveTime::MIN {
                    tick.local.format("%a").to_string()
                } else {
                    formats.clock.hour(tick.local.time())
                },
                table: false,
                ends_there: false,
            })
            .filter(|label| (3.0..=97.0).contains(&label.at) && clear(label.at))
            .collect();
        labels.push(Label {
            at: line,
            text: format!("{table} {}", formats.time(self.serving)),
            table: true,
            ends_there,
        });
        labels
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::format::{ClockStyle, Units};
    use cook_model::plan::Zone;
    use std::sync::Arc;

    fn formats() -> Formats {
        Formats {
            units: Units::METRIC,
            clock: ClockStyle::Hours24,
            zone: Arc::new(Zone::fixed(0)),
        }
    }

    /// 12 September 2026, 18:00 UTC.
    const SERVING: Moment = Moment::from_unix_seconds(1_789_236_000);

    fn window(hours_before: f64, wide: f64) -> Window {
        let from = SERVING - TimeSpan::from_hours(hours_before);
        let tenth = |n: usize| TimeSpan::from_hours(wide * n as f64 / 8.0);
        Window {
            deciles: std::array::from_fn(|n| from + tenth(n)),
        }
    }

    #[test]
    fn everything_lies_on_the_axis() {
        let windows = [window(4.0, 3.0), window(0.5, 1.5)];
        let scale = Scale::around(windows.iter(), SERVING, &formats());
        for window in &windows {
            for at in scale.deciles(window) {
                assert!((0.0..=1.0).contains(&at), "{at}");
            }
        }
        assert!((0.0..100.0).contains(&scale.table()));
    }

    #[test]
    fn labels_are_few_and_keep_clear_of_the_table() {
        for hours in [1.0, 4.0, 9.0, 20.0] {
            let windows = [window(hours, 1.0)];
            let scale = Scale::around(windows.iter(), SERVING, &formats());
            let labels = scale.labels(&formats(), "table");
            assert!(labels.len() <= MOST_LABELS + 2, "{labels:?}");
            let last = labels.last().expect("the table's label");
            assert_eq!(last.text, "table 18:00");
            let room = if last.ends_there {
                2.0 * HALF_LABEL
            } else {
                HALF_LABEL
            };
            for label in &labels[..labels.len() - 1] {
                assert!(
                    label.at < last.at - room || label.at > last.at + HALF_LABEL,
                    "{labels:?}"
                );
            }
        }
    }

    #[test]
    fn without_windows_there_is_still_the_table() {
        let scale = Scale::around([].iter(), SERVING, &formats());
        assert!(scale.table() > 0.0);
    }
}
