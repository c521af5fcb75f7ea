//! Heating cooked meat up again.

use super::{Body, Face, follow};
use crate::units::{Temperature, TimeSpan};
use serde::{Deserialize, Serialize};

/// What heats it. Heat transfer is set by hand: a covered pan or foil in a still oven 12, with its fan on 20 W/(m² K).
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct OvenHeat {
    /// Air of the oven or cooker.
    pub air: Temperature,
    /// A fan stirs it.
    pub fan: bool,
}

/// How long a covered body takes from one temperature to another all through. None: not within 12 h.
#[must_use]
pub fn reheat_time(
    body: Body,
    from: Temperature,
    to: Temperature,
    heat: OvenHeat,
) -> Option<TimeSpan> {
    let face = Face {
        air: heat.air,
        transfer: if heat.fan { 20.0 } else { 12.0 },
    };
    if from >= to {
        return Some(TimeSpan::ZERO);
    }
    if heat.air <= to {
        return None;
    }
    follow(body, from, face, face, TimeSpan::from_hours(12.0)).reaches(to)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Length, Mass};

    fn time(body: Body, oven: f64) -> Option<f64> {
        let heat = OvenHeat {
            air: Temperature::from_fahrenheit(oven),
            fan: false,
        };
        let [cold, hot] = [
            Temperature::from_celsius(4.0),
            Temperature::from_fahrenheit(165.0),
        ];
        reheat_time(body, cold, hot, heat).map(TimeSpan::hours)
    }

    #[test]
    fn a_whole_butt_in_a_cool_oven_takes_far_over_two_hours() {
        assert!(time(Body::lump(Mass::from_kilograms(3.0)), 200.0).is_none_or(|hours| hours > 4.0));
    }

    #[test]
    fn a_flat_pan_in_a_hot_oven_makes_it() {
        let hours = time(Body::layer(Length::from_millimetres(50.0)), 300.0).expect("hot enough");
        println!("50 mm in a covered pan at 149 °C: {hours:.2} h");
        assert!(hours < 2.0);
    }

    #[test]
    fn an_oven_no_hotter_than_the_goal_never_does() {
        assert_eq!(
            time(Body::layer(Length::from_millimetres(20.0)), 165.0),
            None
        );
    }
}
