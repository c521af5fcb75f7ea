//! How much of the day is shown at once: the whole day, as much as every ticket needs, or so many hours.

/// So many hours fill the screen, from a day and a half to one.
const STEPS: [u8; 10] = [36, 24, 18, 12, 8, 6, 4, 3, 2, 1];
/// A step that changes less than this is skipped: its key would seem to do nothing.
const LEAST_CHANGE: f64 = 1.12;

/// How much is shown at once.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Zoom {
    /// Every ticket by itself, and no closer.
    #[default]
    Detail,
    /// The whole day at a glance.
    Whole,
    /// So many hours on one screen.
    Hours(u8),
}

impl Zoom {
    /// The next step with fewer hours than are shown now; none where an hour or less is.
    #[must_use]
    pub fn closer(shown: f64) -> Option<Self> {
        let mut steps = STEPS.into_iter();
        let step = steps.find(|step| f64::from(*step) * LEAST_CHANGE < shown)?;
        Some(Self::Hours(step))
    }

    /// The next step with more hours than are shown now; none where a day and a half or more is.
    #[must_use]
    pub fn wider(shown: f64) -> Option<Self> {
        let mut steps = STEPS.into_iter().rev();
        let step = steps.find(|step| f64::from(*step) > shown * LEAST_CHANGE)?;
        Some(Self::Hours(step))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_lead_from_a_day_and_a_half_to_an_hour_and_back() {
        let mut shown = 36.0;
        let mut seen = Vec::new();
        while let Some(Zoom::Hours(step)) = Zoom::closer(shown) {
            shown = f64::from(step);
            seen.push(step);
        }
        assert_eq!(seen, STEPS[1..]);
        while let Some(Zoom::Hours(step)) = Zoom::wider(shown) {
            shown = f64::from(step);
        }
        assert_eq!(shown, 36.0);
    }

    #[test]
    fn a_step_next_to_what_is_shown_is_skipped() {
        assert_eq!(Zoom::closer(12.3), Some(Zoom::Hours(8)));
        assert_eq!(Zoom::wider(11.7), Some(Zoom::Hours(18)));
        assert_eq!(Zoom::closer(40.0), Some(Zoom::Hours(24)));
        assert_eq!(Zoom::closer(0.5), None);
        assert_eq!(Zoom::wider(50.0), None);
    }
}
