//! Cooling what is left, in two stages, and how to portion it so that it cools in time.

use super::body::spread;
use super::{Body, Course, Face, follow};
use crate::units::{Length, Mass, Temperature, TimeSpan};
use serde::{Deserialize, Serialize};

/// How it is chilled. Heat transfer is set by hand: still air 8, freezer 9, ice water 200 W/(m² K).
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "in", rename_all = "snake_case")]
pub enum Chilling {
    /// On a shelf of a fridge, lid off.
    Fridge {
        /// Air in the fridge.
        air: Temperature,
    },
    /// On a shelf of a freezer, lid off.
    Freezer,
    /// The pan stands in ice water up to its brim, inside the fridge; the top sees the air.
    PanInIceWater {
        /// Air in the fridge.
        air: Temperature,
    },
    /// In a flat bag under ice water that is stirred now and then.
    BagInIceWater,
    /// On a counter.
    Counter {
        /// Air in the room.
        air: Temperature,
    },
}

impl Chilling {
    const fn faces(self) -> [Face; 2] {
        const STILL_AIR: f64 = 8.0;
        const ICE_WATER: Face = Face {
            air: Temperature::from_celsius(1.0),
            transfer: 200.0,
        };
        match self {
            Self::Fridge { air } | Self::Counter { air } => {
                let face = Face {
                    air,
                    transfer: STILL_AIR,
                };
                [face, face]
            }
            Self::Freezer => {
                let face = Face {
                    air: Temperature::from_celsius(-18.0),
                    transfer: 9.0,
                };
                [face, face]
            }
            Self::PanInIceWater { air } => [
                Face {
                    air,
                    transfer: STILL_AIR,
                },
                ICE_WATER,
            ],
            Self::BagInIceWater => [ICE_WATER, ICE_WATER],
        }
    }
}

/// The two stages, measured at the hottest point: from 57 °C, or from its start where that is lower.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct TwoStages {
    /// To 21 °C. None: not within a day.
    pub to_21: Option<TimeSpan>,
    /// To 5 °C. None: not within a day.
    pub to_5: Option<TimeSpan>,
}

impl TwoStages {
    /// Longest time to 21 °C (Food Code, 3-501.14).
    pub const TO_21: TimeSpan = TimeSpan::from_hours(2.0);
    /// Longest time to 5 °C, from the same start (Food Code, 3-501.14).
    pub const TO_5: TimeSpan = TimeSpan::from_hours(6.0);

    /// Whether both stages are kept.
    #[must_use]
    pub fn kept(&self) -> bool {
        self.to_21.is_some_and(|span| span <= Self::TO_21)
            && self.to_5.is_some_and(|span| span <= Self::TO_5)
    }
}

/// How a body cools.
#[must_use]
pub fn two_stages(body: Body, start: Temperature, chilling: Chilling) -> TwoStages {
    stages_within(body, start, chilling, TimeSpan::from_hours(24.0))
}

/// The same, followed no longer than asked; a stage that ends later is none.
fn stages_within(
    body: Body,
    start: Temperature,
    chilling: Chilling,
    horizon: TimeSpan,
) -> TwoStages {
    let [top, bottom] = chilling.faces();
    let course = follow(body, start, top, bottom, horizon);
    let from = course
        .reaches(Temperature::from_fahrenheit(135.0))
        .unwrap_or(TimeSpan::ZERO);
    let since = |course: &Course, fahrenheit: f64| {
        let at = course.reaches(Temperature::from_fahrenheit(fahrenheit))?;
        Some((at - from).max(TimeSpan::ZERO))
    };
    TwoStages {
        to_21: since(&course, 70.0),
        to_5: since(&course, 41.0),
    }
}

/// Whether a body cools in time.
#[must_use]
pub fn cools_in_time(body: Body, start: Temperature, chilling: Chilling) -> bool {
    // It may take a while to come down to 57 °C, from where the stages count; an hour and a half is more than any body
    // that then keeps them needs.
    let horizon = TwoStages::TO_5 + TimeSpan::from_hours(1.5);
    stages_within(body, start, chilling, horizon).kept()
}

/// How to portion what is left.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Portioning {
    /// Deepest layer that cools in time.
    pub depth: Length,
    /// Area that it covers then, m².
    pub area_square_metres: f64,
    /// Half-size pans of 325 by 265 mm (EN 631) that this fills.
    pub half_pans: u32,
    /// How it cools at that depth.
    pub stages: TwoStages,
}

/// The Food Code's deepest layer, 3 in.
const DEEPEST: Length = Length::from_inches(3.0);
const HALF_PAN_SQUARE_METRES: f64 = 0.325 * 0.265;

/// The deepest layer, in steps of 5 mm from 10 mm to 3 in, in which a mass of sliced or pulled meat cools in time from a
/// temperature. None: not even the thinnest does; choose a colder way.
#[must_use]
pub fn how_to_portion(mass: Mass, start: Temperature, chilling: Chilling) -> Option<Portioning> {
    let depths = (2..).map(|step| Length::from_millimetres(5.0 * f64::from(step)));
    let kept = depths
        .take_while(|depth| *depth <= DEEPEST)
        .take_while(|depth| cools_in_time(Body::layer(*depth), start, chilling));
    let depth = kept.last()?;
    let stages = two_stages(Body::layer(depth), start, chilling);
    let area_square_metres = spread(mass, depth);
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a saturating cast of a small positive count"
    )]
    let half_pans = libm::ceil(area_square_metres / HALF_PAN_SQUARE_METRES) as u32;
    Some(Portioning {
        depth,
        area_square_metres,
        half_pans,
        stages,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const FRIDGE: Chilling = Chilling::Fridge {
        air: Temperature::from_celsius(3.0),
    };

    fn hot() -> Temperature {
        Temperature::from_celsius(65.0)
    }

    #[test]
    fn a_whole_butt_in_a_fridge_is_far_too_slow() {
        let stages = two_stages(Body::lump(Mass::from_kilograms(3.0)), hot(), FRIDGE);
        assert!(!stages.kept());
        assert!(
            stages
                .to_21
                .is_none_or(|span| span > TimeSpan::from_hours(5.0))
        );
    }

    #[test]
    fn ice_allows_deeper_pans_than_air_and_a_bag_in_ice_the_deepest() {
        let mass = Mass::from_kilograms(4.0);
        let depth = |chilling| {
            how_to_portion(mass, hot(), chilling)
                .map_or(0.0, |portions| portions.depth.millimetres())
        };
        let air = depth(FRIDGE);
        let pan = depth(Chilling::PanInIceWater {
            air: Temperature::from_celsius(3.0),
        });
        let bag = depth(Chilling::BagInIceWater);
        println!(
            "deepest layer that cools in time: fridge {air} mm, pan in ice water {pan} mm, bag in ice water {bag} mm, freezer {} mm",
            depth(Chilling::Freezer)
        );
        assert!(air >= 10.0 && air < pan && pan < bag);
    }

    #[test]
    fn a_counter_never_chills() {
        let counter = Chilling::Counter {
            air: Temperature::from_celsius(20.0),
        };
        assert_eq!(
            how_to_portion(Mass::from_kilograms(1.0), hot(), counter),
            None
        );
    }

    #[test]
    fn thinner_is_never_slower() {
        for chilling in [FRIDGE, Chilling::Freezer, Chilling::BagInIceWater] {
            let mut before = TimeSpan::ZERO;
            for millimetres in [10.0, 15.0, 25.0, 40.0, 60.0, 76.0] {
                let stages = two_stages(
                    Body::layer(Length::from_millimetres(millimetres)),
                    hot(),
                    chilling,
                );
                let now = stages.to_21.expect("cools within a day");
                assert!(now >= before);
                before = now;
            }
        }
    }
}
