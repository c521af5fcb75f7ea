//! Names of the kinds of cooker.

use cook_model::plan::CookerKind;
use cook_model::provisions::fuel::{Fuel, Shape};

/// All kinds, in the order in which they are offered.
pub const KINDS: [CookerKind; 10] = [
    CookerKind::Offset,
    CookerKind::Kettle,
    CookerKind::Drum,
    CookerKind::Ceramic,
    CookerKind::Cabinet,
    CookerKind::Pellet,
    CookerKind::Gas,
    CookerKind::Electric,
    CookerKind::Oven,
    CookerKind::FanOven,
];

/// The trade's name of a kind.
#[must_use]
pub const fn kind(kind: CookerKind) -> &'static str {
    match kind {
        CookerKind::Offset => "Offset",
        CookerKind::Kettle => "Kettle",
        CookerKind::Drum => "Drum",
        CookerKind::Ceramic => "Ceramic",
        CookerKind::Cabinet => "Cabinet",
        CookerKind::Pellet => "Pellet",
        CookerKind::Gas => "Gas",
        CookerKind::Electric => "Electric",
        CookerKind::Oven => "Oven",
        CookerKind::FanOven => "Fan oven",
    }
}

/// What the person calls a cooker, or what it is.
#[must_use]
pub fn name(name: &str, of: CookerKind) -> String {
    match name.trim() {
        "" => kind(of).to_owned(),
        name => name.to_owned(),
    }
}

/// What it burns.
pub const FUEL: &str = "Burns";
/// As its kind usually does.
pub const USUAL_FUEL: &str = "as usual";
/// Water in the wood.
pub const MOISTURE: &str = "Water in the wood";
/// The shape of its chamber.
pub const CHAMBER: &str = "Chamber";
/// Not measured.
pub const NO_SHAPE: &str = "by its grate";
/// Why it is asked.
pub const CHAMBER_NOTE: &str = "The outside of the chamber, legs and firebox left out: the fuel is reckoned from what its walls lose.";

/// Shapes of a chamber, in the order in which they are offered.
pub const SHAPES: [&str; 4] = ["lying barrel", "standing barrel", "ball", "box"];

/// Fuels, in the order in which they are offered. Wood as it lies covered and seasoned.
#[must_use]
pub fn fuels() -> Vec<Fuel> {
    let wood = Fuel::usual(CookerKind::Offset).into_iter();
    wood.chain([
        Fuel::Lump,
        Fuel::Briquettes,
        Fuel::Pellets,
        Fuel::Propane,
        Fuel::Electricity,
    ])
    .collect()
}

/// A fuel.
#[must_use]
pub const fn fuel(fuel: Fuel) -> &'static str {
    match fuel {
        Fuel::Wood { .. } => "hardwood splits",
        Fuel::Lump => "lump charcoal",
        Fuel::Briquettes => "briquettes",
        Fuel::Pellets => "pellets",
        Fuel::Propane => "propane",
        Fuel::Electricity => "electricity",
    }
}

/// The name of a shape.
#[must_use]
pub const fn shape(shape: &Shape) -> &'static str {
    match shape {
        Shape::LyingBarrel { .. } => SHAPES[0],
        Shape::StandingBarrel { .. } => SHAPES[1],
        Shape::Ball { .. } => SHAPES[2],
        Shape::Cabinet { .. } => SHAPES[3],
    }
}

/// The sides of a shape, in the order in which they are asked for.
#[must_use]
pub fn sides(shape: &Shape) -> Vec<&'static str> {
    match shape {
        Shape::LyingBarrel { .. } => vec!["Diameter", "Length"],
        Shape::StandingBarrel { .. } => vec!["Diameter", "Height"],
        Shape::Ball { .. } => vec!["Diameter"],
        Shape::Cabinet { .. } => vec!["Width", "Depth", "Height"],
    }
}
