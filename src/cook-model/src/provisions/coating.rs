//! What covers the surface: rub, and what makes it stick.

use super::size::Size;
use crate::meat::{CutId, Make};
use crate::plan::{Dish, Food};
use crate::units::{Area, Mass};
use serde::{Deserialize, Serialize};

/// Weight on each square metre of surface.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct CoatingRate {
    /// A dusting, kg/m².
    pub least: f64,
    /// Usual, kg/m².
    pub usual: f64,
    /// A thick coat, kg/m².
    pub most: f64,
}

/// Dry rub without its salt. Common practice: about a tablespoon (7 g) for a palm and a half of surface.
pub const RUB: CoatingRate = CoatingRate {
    least: 0.20,
    usual: 0.33,
    most: 0.50,
};

/// Mustard or oil under the rub: a film of a tenth of a millimetre. Common practice.
pub const BINDER: CoatingRate = CoatingRate {
    least: 0.05,
    usual: 0.10,
    most: 0.15,
};

impl CoatingRate {
    /// Usual weight for a surface.
    #[must_use]
    pub fn on(&self, surface: Area) -> Mass {
        Mass::from_kilograms(self.usual * surface.square_metres())
    }
}

/// Surface of all pieces of a dish that takes a rub. None for a dish of one's own, an unknown cut, and sausages, which
/// are seasoned inside.
#[must_use]
pub fn rubbed_surface(dish: &Dish) -> Option<Area> {
    let Food::Cut { cut } = &dish.food else {
        return None;
    };
    let cut: CutId = cut.parse().ok()?;
    if cut.cut().make == Make::Ground {
        return None;
    }
    let pieces = dish.pieces.values();
    Some(
        pieces
            .map(|piece| Size::of_one(cut, piece).surface() * f64::from(piece.count))
            .sum(),
    )
}
