//! What readings and probes by hand say, and how far each may be off.

use super::log::{CoreReading, Felt, PieceLog};
use crate::forecast::sample_at;
use crate::handover::identity::EntryId;
use crate::handover::{ProbeFeel, ProbePlace};
use crate::physics::{MemberRun, Sample};
use crate::units::TimeSpan;

/// Error of the model's core that stays for hours, K, and for how long, h; error of a reading by itself, K. Set by hand.
const LASTING_ERROR: f64 = 1.8;
const LASTS_HOURS: f64 = 3.0;
const READING_ERROR: f64 = 0.6;
/// Added for a probe in the thin end, and for one that may have touched bone or air, K. Set by hand.
const THIN_END_ERROR: f64 = 5.0;
const DOUBTFUL_ERROR: f64 = 10.0;
/// A probe in the thin end sits this much further towards the surface. Set by hand.
const THIN_END: f64 = 0.15;
/// Error of a hand on the probe, in tenderness. Set by hand.
const HAND_ERROR: f64 = 0.1;
/// Between two readings that both count. Closer ones tell the same; the later stands.
const APART: TimeSpan = TimeSpan::from_minutes(30.0);

/// What one entry says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Evidence {
    /// Which entry.
    pub(super) entry: EntryId,
    /// When.
    pub(super) after: TimeSpan,
    /// What was seen: the least and the most that it may have been. °C of the probe, or tenderness.
    pub(super) between: [f64; 2],
    /// Error by itself.
    pub(super) error: f64,
    /// What is seen.
    pub(super) of: Seen,
}

/// What is seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Seen {
    /// The probe where it usually sits.
    Probe,
    /// The probe in the thin end.
    ThinEnd,
    /// Tenderness.
    Tenderness,
}

impl Evidence {
    /// What a log says, in order of time.
    pub(super) fn of(log: &PieceLog) -> Vec<Self> {
        let mut cores: Vec<&CoreReading> = Vec::new();
        for core in &log.cores {
            let same = cores.last().is_some_and(|last| {
                core.after - last.after < APART && last.place == core.place && !core.doubtful
            });
            if same {
                cores.pop();
            }
            cores.push(core);
        }
        let cores = cores.into_iter().map(Self::core);
        let mut all: Vec<Self> = cores.chain(log.feels.iter().map(Self::felt)).collect();
        all.sort_by(|a, b| a.after.seconds().total_cmp(&b.after.seconds()));
        all
    }

    fn core(core: &CoreReading) -> Self {
        let thin = core.place == ProbePlace::ThinEnd;
        let added = [(thin, THIN_END_ERROR), (core.doubtful, DOUBTFUL_ERROR)];
        let added = added.iter().filter(|(is, _)| *is).map(|(_, error)| error);
        let own = READING_ERROR * READING_ERROR;
        let square = added.fold(own, |sum, error| sum + error * error);
        let reading = core.reading.celsius();
        Self {
            entry: core.entry,
            after: core.after,
            between: [reading, reading],
            error: libm::sqrt(square),
            of: if thin { Seen::ThinEnd } else { Seen::Probe },
        }
    }

    /// By hand: pushed in below three quarters of the demand, held on to between there and tender, like butter from just
    /// before tender on.
    fn felt(felt: &Felt) -> Self {
        let between = match felt.feel {
            ProbeFeel::Tight => [0.0, 0.75],
            ProbeFeel::Drags => [0.65, 1.0],
            ProbeFeel::SoftButter => [0.95, f64::INFINITY],
        };
        Self {
            entry: felt.entry,
            after: felt.after,
            between,
            error: HAND_ERROR,
            of: Seen::Tenderness,
        }
    }

    /// What a member would have shown at a time. `tenderness` multiplies the cut's demand in it.
    pub(super) fn in_member(
        &self,
        run: &MemberRun,
        after: TimeSpan,
        tenderness: f64,
    ) -> Option<f64> {
        let value = self.of.value(&sample_at(&run.samples, after)?);
        Some(match self.of {
            Seen::Probe | Seen::ThinEnd => value,
            Seen::Tenderness => value / tenderness,
        })
    }

    /// How far a member's figure is from what was seen.
    pub(super) fn misses_by(&self, figure: f64) -> f64 {
        figure.clamp(self.between[0], self.between[1]) - figure
    }

    /// Covariance of the errors of two entries of one piece.
    pub(super) fn covariance(&self, other: &Self, same: bool) -> f64 {
        let own = if same { self.error * self.error } else { 0.0 };
        let lasting = |of: Seen| match of {
            Seen::Probe | Seen::ThinEnd => LASTING_ERROR,
            Seen::Tenderness => 0.0,
        };
        let apart = (self.after - other.after).hours().abs();
        own + lasting(self.of) * lasting(other.of) * libm::exp(-apart / LASTS_HOURS)
    }
}

impl Seen {
    fn value(self, sample: &Sample) -> f64 {
        match self {
            Self::Probe => sample.probe.celsius(),
            Self::ThinEnd => (sample.probe + (sample.surface - sample.probe) * THIN_END).celsius(),
            Self::Tenderness => sample.tenderness,
        }
    }
}
