//! A cooker as a body of walls that lose heat.

use crate::plan::CookerKind;
use crate::units::{Area, Length};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::f64::consts::PI;

/// The outer shape of a chamber.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(tag = "is", rename_all = "snake_case")]
pub enum Shape {
    /// A lying barrel.
    LyingBarrel {
        /// Diameter.
        diameter: Length,
        /// Length.
        length: Length,
    },
    /// A standing barrel.
    StandingBarrel {
        /// Diameter.
        diameter: Length,
        /// Height.
        height: Length,
    },
    /// A ball, or near it.
    Ball {
        /// Diameter.
        diameter: Length,
    },
    /// A box.
    Cabinet {
        /// Width.
        width: Length,
        /// Depth.
        depth: Length,
        /// Height.
        height: Length,
    },
}

impl Shape {
    /// Outer surface.
    #[must_use]
    pub fn surface(&self) -> Area {
        let barrel = |d: f64, l: f64| PI * d * l + PI * d * d / 2.0;
        Area::from_square_metres(match *self {
            Self::LyingBarrel { diameter, length } => barrel(diameter.metres(), length.metres()),
            Self::StandingBarrel { diameter, height } => barrel(diameter.metres(), height.metres()),
            Self::Ball { diameter } => PI * diameter.metres() * diameter.metres(),
            Self::Cabinet {
                width,
                depth,
                height,
            } => {
                let [w, d, h] = [width, depth, height].map(Length::metres);
                2.0 * (w * d + w * h + d * h)
            }
        })
    }

    /// Its dimensions, in the order in which they are asked for.
    #[must_use]
    pub fn sides(&self) -> Vec<Length> {
        match *self {
            Self::LyingBarrel { diameter, length } => vec![diameter, length],
            Self::StandingBarrel { diameter, height } => vec![diameter, height],
            Self::Ball { diameter } => vec![diameter],
            Self::Cabinet {
                width,
                depth,
                height,
            } => vec![width, depth, height],
        }
    }

    /// The same shape with every dimension so many times as large.
    #[must_use]
    pub fn scaled(&self, factor: f64) -> Self {
        match *self {
            Self::LyingBarrel { diameter, length } => Self::LyingBarrel {
                diameter: diameter * factor,
                length: length * factor,
            },
            Self::StandingBarrel { diameter, height } => Self::StandingBarrel {
                diameter: diameter * factor,
                height: height * factor,
            },
            Self::Ball { diameter } => Self::Ball {
                diameter: diameter * factor,
            },
            Self::Cabinet {
                width,
                depth,
                height,
            } => Self::Cabinet {
                width: width * factor,
                depth: depth * factor,
                height: height * factor,
            },
        }
    }
}

/// What a wall is made of.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Wall {
    /// Thickness of what holds the heat back; zero for bare sheet.
    pub insulation: Length,
    /// Its conductivity, W/(m K).
    pub conductivity: f64,
    /// Heat that a square metre takes up for each kelvin, J/(m² K).
    pub heat_capacity: f64,
    /// Emissivity of the outside, 0 to 1.
    pub emissivity: f64,
}

impl Wall {
    /// Bare steel sheet of this thickness, painted or enamelled. Density 7,850 kg/m³, specific heat 490 J/(kg K),
    /// emissivity 0.9 (handbook values from memory); its resistance to heat is nothing beside the air's.
    #[must_use]
    pub const fn steel(sheet: Length) -> Self {
        Self {
            insulation: Length::ZERO,
            conductivity: 50.0,
            heat_capacity: sheet.metres() * 7850.0 * 490.0,
            emissivity: 0.9,
        }
    }

    /// Light refractory of this thickness. Conductivity 0.28 W/(m K) set by hand, 2,000 kg/m³ and 900 J/(kg K) from
    /// memory.
    #[must_use]
    pub const fn ceramic(thickness: Length) -> Self {
        Self {
            insulation: thickness,
            conductivity: 0.28,
            heat_capacity: thickness.metres() * 2000.0 * 900.0,
            emissivity: 0.9,
        }
    }

    /// Two sheets of 1 mm steel with mineral wool between. Conductivity 0.06 W/(m K) at 100 to 150 °C with its seams,
    /// from memory.
    #[must_use]
    pub const fn insulated(wool: Length) -> Self {
        Self {
            insulation: wool,
            conductivity: 0.06,
            heat_capacity: 0.002 * 7850.0 * 490.0,
            emissivity: 0.9,
        }
    }
}

/// One part of a cooker: its chamber, or its firebox.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Body {
    /// Outer shape.
    pub shape: Shape,
    /// Share of the outer surface that loses heat to the open: less where parts join or stand on the ground.
    pub open_share: f64,
    /// What its wall is made of.
    pub wall: Wall,
    /// How much hotter its air is than the air at the meat, K.
    pub hotter: f64,
}

/// A cooker: chamber, and what burns beside or below it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Vessel {
    /// Its parts.
    pub bodies: Vec<Body>,
    /// Air drawn in over what the fire needs: 1 is just enough. Set by hand for each kind.
    pub excess_air: f64,
    /// Share of the heating value that the fire gives: the rest goes as unburnt smoke and coal. Set by hand.
    pub burnt_share: f64,
    /// Grate of the usual size, for scaling.
    pub grate: Area,
}

impl Vessel {
    /// A cooker of a kind, scaled so that its grate is this large: each dimension grows with the root of the area.
    #[must_use]
    pub fn for_grate(kind: CookerKind, grate: Area) -> Option<Self> {
        let usual = Self::usual(kind)?;
        let factor = libm::sqrt(grate / usual.grate);
        let bodies = usual
            .bodies
            .iter()
            .map(|body| Body {
                shape: body.shape.scaled(factor),
                ..*body
            })
            .collect();
        Some(Self {
            bodies,
            grate,
            ..usual
        })
    }

    /// The same cooker with a chamber whose shape the person measured.
    #[must_use]
    pub fn with_chamber(mut self, shape: Shape) -> Self {
        if let Some(chamber) = self.bodies.first_mut() {
            chamber.shape = shape;
        }
        self
    }
}
