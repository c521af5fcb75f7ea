//! One possible cook of a dish, as far as a plan needs it.

use crate::units::TimeSpan;

/// One member of a dish's ensemble: times since it went on, all pieces taken together.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Member {
    /// The last piece is ready to come off. None: not within the longest cook reckoned with.
    pub(super) ready: Option<TimeSpan>,
    /// The first piece is ready; it waits the longest.
    pub(super) first_ready: Option<TimeSpan>,
    /// How long a piece stays hot enough once it is off.
    pub(super) hot: TimeSpan,
    /// How long a piece may wait after it came off: as long as it stays hot enough and good.
    pub(super) keeps: TimeSpan,
    /// The first piece is wrapped.
    pub(super) wrapped: Option<TimeSpan>,
    /// The first piece is near its target: time to probe.
    pub(super) probing: Option<TimeSpan>,
    /// The last surface is hot, past 54.4 °C.
    pub(super) surface_hot: Option<TimeSpan>,
    /// The longest that a core is between 4 and 60 °C.
    pub(super) slow_core: Option<TimeSpan>,
    /// Every piece has met the published time at temperature.
    pub(super) lethality_met: Option<TimeSpan>,
}

/// From ready to the table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct After {
    /// Least rest.
    pub(super) rest: TimeSpan,
    /// Slicing or pulling, all pieces together.
    pub(super) slicing: TimeSpan,
}

impl After {
    /// Ready to table-ready at the soonest.
    pub(super) fn least(self) -> TimeSpan {
        self.rest + self.slicing
    }
}

impl Member {
    /// Table-ready at the soonest, since it went on.
    pub(super) fn table_ready(&self, after: After) -> Option<TimeSpan> {
        self.ready.map(|ready| ready + after.least())
    }

    /// Slicing begins, since it went on: as late as serving allows, and not before the rest is over.
    pub(super) fn slicing_begins(&self, after: After, serving: TimeSpan) -> Option<TimeSpan> {
        let rested = self.ready? + after.rest;
        Some(rested.max(serving - after.slicing))
    }

    /// How long the first piece waits until slicing begins; `serving` is since it went on.
    pub(super) fn waits(&self, after: After, serving: TimeSpan) -> Option<TimeSpan> {
        Some(self.slicing_begins(after, serving)? - self.first_ready?)
    }
}
