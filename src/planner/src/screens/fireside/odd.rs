//! Numbers that are asked about before they are logged. Nothing is refused.

use crate::words::fireside::Odd;
use cook_model::units::{Moment, Temperature};

/// Water boils at 100 °C at sea level; salt and fat add little. No core is hotter. Common practice.
const HOTTEST_CORE: Temperature = Temperature::from_celsius(102.0);
/// Meat from a freezer that was not thawed through.
const COLDEST_CORE: Temperature = Temperature::from_celsius(-5.0);
/// A core moves less than this in an hour on any cooker; and this much two probes may differ. Set by hand.
const FASTEST_AN_HOUR: f64 = 40.0;
const SLACK: f64 = 6.0;
/// What gauges of cookers show.
const PIT: [f64; 2] = [20.0, 350.0];

/// Whether a core is asked about, given the last one of the same piece.
#[must_use]
pub fn core(reading: Temperature, at: Moment, last: Option<(Moment, Temperature)>) -> Option<Odd> {
    if reading > HOTTEST_CORE {
        return Some(Odd::TooHot);
    }
    if reading < COLDEST_CORE {
        return Some(Odd::TooCold);
    }
    let (before, was) = last?;
    let hours = (at - before).hours().abs();
    let leap = (reading.celsius() - was.celsius()).abs();
    (leap > SLACK + FASTEST_AN_HOUR * hours).then_some(Odd::Leap)
}

/// Whether a pit is asked about.
#[must_use]
pub fn pit(reading: Temperature) -> Option<Odd> {
    let [least, most] = PIT;
    let celsius = reading.celsius();
    (celsius < least || celsius > most).then_some(Odd::NoPit)
}

#[cfg(test)]
mod tests {
    use super::super::super::run_sheet::sample::at;
    use super::*;

    #[test]
    fn only_what_cannot_be_is_asked_about() {
        let celsius = Temperature::from_celsius;
        let now = at("2026-09-12T06:00:00");
        let half_past = Some((at("2026-09-12T05:30:00"), celsius(66.0)));
        assert_eq!(core(celsius(69.0), now, half_past), None);
        assert_eq!(core(celsius(64.0), now, half_past), None);
        assert_eq!(core(celsius(95.0), now, half_past), Some(Odd::Leap));
        assert_eq!(core(celsius(156.0), now, half_past), Some(Odd::TooHot));
        assert_eq!(core(celsius(156.0), now, None), Some(Odd::TooHot));
        assert_eq!(core(celsius(-18.0), now, None), Some(Odd::TooCold));
        assert_eq!(core(celsius(2.0), now, None), None);
        assert_eq!(pit(celsius(121.0)), None);
        assert_eq!(pit(celsius(12.0)), Some(Odd::NoPit));
        assert_eq!(pit(celsius(700.0)), Some(Odd::NoPit));
    }
}
