//! Names of the kinds of cooker.

use cook_model::plan::CookerKind;

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
