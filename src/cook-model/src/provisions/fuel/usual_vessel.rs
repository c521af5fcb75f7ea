//! Cookers of each kind in their usual size.

use super::vessel::{Body, Shape, Vessel, Wall};
use crate::plan::CookerKind;
use crate::units::{Area, Length};

const fn metres(value: f64) -> Length {
    Length::from_metres(value)
}

const fn millimetres(value: f64) -> Length {
    Length::from_millimetres(value)
}

const fn body(shape: Shape, open_share: f64, wall: Wall, hotter: f64) -> Body {
    Body {
        shape,
        open_share,
        wall,
        hotter,
    }
}

impl Vessel {
    /// A cooker of a kind in its usual size. Dimensions are common practice; the firebox's extra heat, the excess air
    /// and the burnt share are set by hand. None for a kitchen oven, which is not fed.
    #[must_use]
    pub fn usual(kind: CookerKind) -> Option<Self> {
        let (bodies, excess_air, burnt_share, grate) = match kind {
            CookerKind::Offset => (
                vec![
                    body(
                        Shape::LyingBarrel {
                            diameter: metres(0.45),
                            length: metres(0.90),
                        },
                        0.95,
                        Wall::steel(millimetres(3.0)),
                        0.0,
                    ),
                    body(
                        Shape::LyingBarrel {
                            diameter: metres(0.36),
                            length: metres(0.42),
                        },
                        0.85,
                        Wall::steel(millimetres(3.0)),
                        120.0,
                    ),
                ],
                5.0,
                0.92,
                0.36,
            ),
            CookerKind::Kettle => (
                vec![
                    body(
                        Shape::Ball {
                            diameter: metres(0.58),
                        },
                        0.85,
                        Wall::steel(millimetres(1.0)),
                        0.0,
                    ),
                    // The bowl around the coals.
                    body(
                        Shape::Ball {
                            diameter: metres(0.58),
                        },
                        0.15,
                        Wall::steel(millimetres(1.0)),
                        120.0,
                    ),
                ],
                2.5,
                0.88,
                0.23,
            ),
            CookerKind::Drum => {
                let shape = Shape::StandingBarrel {
                    diameter: metres(0.58),
                    height: metres(0.88),
                };
                (
                    vec![
                        body(shape, 0.84, Wall::steel(millimetres(1.2)), 0.0),
                        // The ring and floor around the coals.
                        body(shape, 0.14, Wall::steel(millimetres(1.2)), 80.0),
                    ],
                    2.2,
                    0.88,
                    0.24,
                )
            }
            CookerKind::Ceramic => (
                vec![body(
                    Shape::StandingBarrel {
                        diameter: metres(0.54),
                        height: metres(0.68),
                    },
                    0.85,
                    Wall::ceramic(millimetres(30.0)),
                    0.0,
                )],
                2.0,
                0.85,
                0.166,
            ),
            CookerKind::Cabinet => {
                let shape = Shape::Cabinet {
                    width: metres(0.50),
                    depth: metres(0.50),
                    height: metres(1.00),
                };
                (
                    vec![
                        body(shape, 0.85, Wall::insulated(millimetres(50.0)), 0.0),
                        body(shape, 0.12, Wall::insulated(millimetres(50.0)), 60.0),
                    ],
                    2.5,
                    0.88,
                    0.75,
                )
            }
            CookerKind::Pellet => (
                vec![
                    body(
                        Shape::Cabinet {
                            width: metres(0.75),
                            depth: metres(0.50),
                            height: metres(0.45),
                        },
                        0.95,
                        Wall::steel(millimetres(1.5)),
                        0.0,
                    ),
                    body(
                        Shape::Cabinet {
                            width: metres(0.30),
                            depth: metres(0.30),
                            height: metres(0.15),
                        },
                        0.80,
                        Wall::steel(millimetres(1.5)),
                        150.0,
                    ),
                ],
                5.0,
                0.97,
                0.35,
            ),
            CookerKind::Gas => (
                vec![body(
                    Shape::Cabinet {
                        width: metres(0.65),
                        depth: metres(0.50),
                        height: metres(0.40),
                    },
                    0.95,
                    Wall::steel(millimetres(1.5)),
                    0.0,
                )],
                4.0,
                0.99,
                0.27,
            ),
            CookerKind::Electric => (
                vec![body(
                    Shape::Cabinet {
                        width: metres(0.45),
                        depth: metres(0.40),
                        height: metres(0.80),
                    },
                    0.95,
                    Wall::insulated(millimetres(20.0)),
                    0.0,
                )],
                0.0,
                1.0,
                0.60,
            ),
            CookerKind::Oven | CookerKind::FanOven => return None,
        };
        Some(Self {
            bodies,
            excess_air,
            burnt_share,
            grate: Area::from_square_metres(grate),
        })
    }
}
