//! What comes out for one member.

use crate::units::{Mass, Temperature, TimeSpan};

/// A span between two times since the piece went on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// Beginning.
    pub from: TimeSpan,
    /// End.
    pub to: TimeSpan,
}

/// The course of one possible cook. Times are since the piece went on.
#[derive(Clone, Debug, PartialEq)]
pub struct MemberRun {
    /// Ready by the scenario's finish. None if it was not ready within the limit.
    pub ready: Option<TimeSpan>,
    /// The probe first at the finish's target.
    pub target_reached: Option<TimeSpan>,
    /// The scenario's covers, as far as they were put on.
    pub covered: Vec<Option<TimeSpan>>,
    /// The scenario's pit changes, as far as they were made.
    pub pit_changed: Vec<Option<TimeSpan>>,
    /// Longest slow stretch: the probe between 55 and 90 °C rising by less than 3 K an hour, for half an hour or more.
    pub stall: Option<Span>,
    /// Bark index when it came off: hours of dry surface at 75 °C, doubling every 10 K.
    pub bark: f64,
    /// The bark holds under a spray (index 1.5).
    pub bark_firm: Option<TimeSpan>,
    /// The bark has set (index 5.3).
    pub bark_set: Option<TimeSpan>,
    /// The coldest point has met the published time at temperature.
    pub lethality_met: Option<TimeSpan>,
    /// The surface is past 54.4 °C.
    pub surface_hot: Option<TimeSpan>,
    /// The coldest point is past 4 °C, or was so when it went on.
    pub core_past_4: Option<TimeSpan>,
    /// The coldest point is past 60 °C.
    pub core_past_60: Option<TimeSpan>,
    /// Tenderness when ready: 1 is tender. None for cuts without a demand, or when it was never ready.
    pub tenderness_at_ready: Option<f64>,
    /// The probe when ready.
    pub probe_at_ready: Option<Temperature>,
    /// The highest that the coldest point gets after it came off. None if it was never ready or has no stage after.
    pub core_peak_after: Option<Temperature>,
    /// The coldest point falls below 73.9 °C after it came off, if it does within the stages.
    pub core_below_73_9: Option<TimeSpan>,
    /// The coldest point falls below 60 °C after it came off, if it does within the stages.
    pub core_below_60: Option<TimeSpan>,
    /// End of each stage after it came off, as far as it was reached.
    pub stage_ends: Vec<TimeSpan>,
    /// The course at the settings' spacing, from 0 until the last stage or the limit ends.
    pub samples: Vec<Sample>,
    /// Totals when it came off (at the limit if it never did).
    pub at_ready: Totals,
    /// Totals at the very end.
    pub at_end: Totals,
    /// Mass of the meat that the model follows (bones under a slab left out).
    pub meat: Mass,
    /// Steps that the march tried.
    pub steps: u32,
}

/// One moment of a course.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sample {
    /// Since the piece went on.
    pub after: TimeSpan,
    /// Coldest point.
    pub core: Temperature,
    /// Where the probe is.
    pub probe: Temperature,
    /// Surface.
    pub surface: Temperature,
    /// Air around it.
    pub air: Temperature,
    /// Tenderness, 1 is tender; for a cut without a demand the bare integral.
    pub tenderness: f64,
    /// Water and fat lost so far as a share of the meat followed, 0 to 1.
    pub loss: f64,
}

/// Running totals for one piece.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Totals {
    /// Water evaporated.
    pub evaporated: Mass,
    /// Water dripped.
    pub dripped: Mass,
    /// Fat rendered out.
    pub fat: Mass,
    /// Heat taken in, J.
    pub heat: f64,
    /// Water not accounted for, as a share of the water lost. Only where [`Settings::audit`] asks for it.
    ///
    /// [`Settings::audit`]: super::Settings::audit
    pub water_residual: Option<f64>,
    /// Heat not accounted for, as a share of the heat taken in. Only where the audit is asked for.
    pub energy_residual: Option<f64>,
}

impl MemberRun {
    /// Water and fat lost as a share of the meat followed, when it came off.
    #[must_use]
    pub fn loss_at_ready(&self) -> f64 {
        let lost = self.at_ready.evaporated + self.at_ready.dripped + self.at_ready.fat;
        lost / self.meat
    }
}
