//! Kitchen habits and packs in words.

use cook_model::provisions::SaltKind;
use cook_model::provisions::shopping::PackKind;

/// The habits.
pub const HABITS: &str = "How this kitchen does it";
/// The kind of salt.
pub const SALT: &str = "Salt in the house";
/// Why it is asked.
pub const SALT_NOTE: &str = "Grams are the same for every salt; a spoonful is not. Name the salt and spoons are given as well, with their spread.";
/// How thick the rub lies.
pub const RUB_COAT: &str = "Rub";
/// What makes it stick.
pub const BINDER_COAT: &str = "Mustard or oil under it";
/// Salt in the rub.
pub const SALT_IN_RUB: &str = "Salt in the rub";
/// Times around a piece.
pub const TURNS: &str = "Times around a piece";
/// Width of the paper.
pub const PAPER_WIDTH: &str = "Paper is wide";
/// Width of the foil.
pub const FOIL_WIDTH: &str = "Foil is wide";
/// Raw food on ice.
pub const COLD_TRAVEL: &str = "On ice on the way";
/// Pans are bought.
pub const PANS: &str = "Buy pans for the day";
/// How a thing is sold.
pub const SOLD: &str = "Sold";
/// What one pack holds.
pub const HOLDS: &str = "One holds";
/// Sold loose.
pub const LOOSE: &str = "loose";

/// A kind of salt; none: by weight alone.
#[must_use]
pub const fn salt(kind: Option<SaltKind>) -> &'static str {
    match kind {
        None => "not said: by weight alone",
        Some(SaltKind::Table) => "fine table salt",
        Some(SaltKind::FineSea) => "fine sea salt",
        Some(SaltKind::CoarseSea) => "coarse sea salt",
        Some(SaltKind::FlakeSea) => "flaky sea salt",
        Some(SaltKind::CoarseDense) => "coarse, dense flakes",
        Some(SaltKind::CoarseLight) => "coarse, light flakes",
    }
}

/// How thick the rub lies, by its rate in kg/m².
#[must_use]
pub fn rub(rate: f64) -> &'static str {
    use cook_model::provisions::RUB;
    if rate <= 0.0 {
        "none"
    } else if rate < RUB.usual {
        "a dusting"
    } else if rate < RUB.most {
        "usual"
    } else {
        "thick"
    }
}

/// Whether there is a binder.
#[must_use]
pub fn binder(rate: f64) -> &'static str {
    if rate <= 0.0 { "none" } else { "a film" }
}

/// Every kind of pack.
pub const PACKS: [PackKind; 5] = [
    PackKind::Pack,
    PackKind::Sack,
    PackKind::Roll,
    PackKind::Bottle,
    PackKind::Piece,
];

/// How a thing is sold: by the pack, or loose.
#[must_use]
pub const fn sold(kind: Option<PackKind>) -> &'static str {
    match kind {
        None => LOOSE,
        Some(PackKind::Pack) => "in packs",
        Some(PackKind::Sack) => "in sacks",
        Some(PackKind::Roll) => "in rolls",
        Some(PackKind::Bottle) => "in bottles",
        Some(PackKind::Piece) => "by the piece",
    }
}
