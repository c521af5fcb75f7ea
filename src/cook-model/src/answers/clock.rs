//! A night on which the clock changes.

use super::{Answer, Figure, Verdict};
use crate::plan::Zone;
use crate::safety::wording::span;
use crate::units::{Moment, TimeSpan};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// When is it done if the clock changes in between?
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct ClockChange {
    /// When it goes on.
    pub on: Moment,
    /// How long it takes.
    pub takes: TimeSpan,
    /// The local clock around it.
    pub zone: Zone,
}

impl ClockChange {
    /// The answer.
    #[must_use]
    pub fn answer(&self) -> Answer {
        let done = self.on + self.takes;
        let shift = self.zone.offset_seconds_at(done) - self.zone.offset_seconds_at(self.on);
        let local = self.zone.local(done).format("%H:%M");
        let by = TimeSpan::from_seconds(f64::from(shift.abs()));
        Answer::new(Verdict::GoodToKnow)
            .say(format!("It is done at {local} by the clock on the wall."))
            .say_if(
                shift > 0,
                format!(
                    "The night loses {}. The meat does not know: it needs its {} all the same.",
                    span(by),
                    span(self.takes)
                ),
            )
            .say_if(
                shift < 0,
                format!(
                    "The night gains {}. The meat does not know: it needs its {} all the same.",
                    span(by),
                    span(self.takes)
                ),
            )
            .say("Go by hours passed and by the core.")
            .figure(Figure::At { moment: done })
    }
}
