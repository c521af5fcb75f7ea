//! The outer dimensions of a piece, the room it takes on the grate, and its surface.

use crate::meat::{Bone, CutId};
use crate::physics::shape::Shape;
use crate::plan::{Dish, Food, Piece};
use crate::units::{Area, Length, Mass};

/// Free grate around a piece so that smoke and heat pass, on each side. Common practice: about an inch between pieces.
const GAP: Length = Length::from_millimetres(12.5);

/// Outer dimensions of a piece as it goes on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Size {
    /// Greatest thickness of the meat, bones under it left out.
    pub thickness: Length,
    /// Middle dimension.
    pub width: Length,
    /// Largest dimension.
    pub length: Length,
    /// Thickness of the bones under it; zero where there are none.
    pub bone: Length,
    /// Share of the enclosing box that is meat, 0.524 to 1.
    pub fill: f64,
}

impl Size {
    /// A piece of this weight as it goes on, 0.02 to 40 kg. Each dimension grows from the catalogue's reference with
    /// its exponent; a thickness by the ruler, bones included, stretches the other two so that the weight is kept.
    #[must_use]
    pub fn of(cut: CutId, trimmed: Mass, ruler: Option<Length>) -> Self {
        let shape = &cut.cut().shape;
        let bone = match cut.cut().bone {
            Bone::Under { thickness, .. } => thickness,
            Bone::None | Bone::Within { .. } => Length::ZERO,
        };
        let grown = |length: Length, exponent| length * libm::pow(trimmed / shape.mass, exponent);
        let [thick, wide, long] = shape.exponents;
        let usual = grown(shape.thickness, thick);
        let thickness = ruler.map_or(usual, |ruler| {
            (ruler - bone).max(Length::from_millimetres(1.0))
        });
        let stretch = libm::sqrt(usual / thickness);
        Self {
            thickness,
            width: grown(shape.width, wide) * stretch,
            length: grown(shape.length, long) * stretch,
            bone,
            fill: shape.fill,
        }
    }

    /// The piece of a dish, one of its count. The weight that goes on is what is left after trimming.
    #[must_use]
    pub fn of_one(cut: CutId, piece: &Piece) -> Self {
        let weights = super::Weights::of_one(cut, piece);
        Self::of(cut, weights.trimmed, piece.thickness)
    }

    /// The rectangle that it covers on the grate.
    #[must_use]
    pub fn footprint(&self) -> Area {
        rectangle(self.width, self.length)
    }

    /// The rectangle with free grate all around it.
    #[must_use]
    pub fn footprint_with_gap(&self) -> Area {
        rectangle(self.width + GAP * 2.0, self.length + GAP * 2.0)
    }

    /// Outer surface, bones under it left out, by the same shape that the physics cooks.
    #[must_use]
    pub fn surface(&self) -> Area {
        let halves = [self.thickness, self.width, self.length].map(|side| side.metres() / 2.0);
        let all = Shape::of(halves, self.fill).area;
        let bone_face = if self.bone > Length::ZERO {
            self.footprint().square_metres()
        } else {
            0.0
        };
        Area::from_square_metres(all - bone_face)
    }
}

fn rectangle(width: Length, length: Length) -> Area {
    Area::from_square_metres(width.metres() * length.metres())
}

/// Room that all pieces of a dish want on the grate, free grate around each included. None for a dish of one's own and
/// for a cut that the catalogue does not have.
#[must_use]
pub fn grate_room(dish: &Dish) -> Option<Area> {
    let Food::Cut { cut } = &dish.food else {
        return None;
    };
    let cut: CutId = cut.parse().ok()?;
    let pieces = dish.pieces.values();
    Some(
        pieces
            .map(|piece| Size::of_one(cut, piece).footprint_with_gap() * f64::from(piece.count))
            .sum(),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn at_the_reference_weight_the_reference_dimensions() {
        for &cut in CutId::ALL {
            let shape = &cut.cut().shape;
            let size = Size::of(cut, shape.mass, None);
            assert!(
                (size.thickness - shape.thickness).metres().abs() < 1e-12,
                "{cut}"
            );
            assert!((size.length - shape.length).metres().abs() < 1e-12, "{cut}");
        }
    }

    #[test]
    fn a_measured_thickness_keeps_the_volume() {
        let usual = Size::of(CutId::PorkShoulderButt, Mass::from_kilograms(3.8), None);
        let thin = Size::of(
            CutId::PorkShoulderButt,
            Mass::from_kilograms(3.8),
            Some(Length::from_millimetres(90.0)),
        );
        let volume = |size: Size| size.thickness.metres() * size.footprint().square_metres();
        assert!((volume(usual) / volume(thin) - 1.0).abs() < 1e-12);
        assert!(thin.footprint() > usual.footprint());
    }

    #[test]
    fn a_ball_has_the_surface_of_a_ball() {
        let side = Length::from_metres(0.2);
        let ball = Size {
            thickness: side,
            width: side,
            length: side,
            bone: Length::ZERO,
            fill: std::f64::consts::FRAC_PI_6,
        };
        let exact = std::f64::consts::PI * 0.04;
        assert!((ball.surface().square_metres() / exact - 1.0).abs() < 1e-9);
        let brick = Size { fill: 1.0, ..ball };
        assert!((brick.surface().square_metres() - 0.24).abs() < 1e-12);
    }
}
