//! One entry of the catalogue.

use super::CutId;
use crate::physics::Cover;
use crate::units::{Length, Mass, Temperature, TimeSpan};

/// The animal.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Cattle.
    Beef,
    /// Pig.
    Pork,
    /// Sheep under a year.
    Lamb,
    /// Chicken.
    Chicken,
    /// Turkey.
    Turkey,
    /// Fish.
    Fish,
}

/// What safety needs to know of the make. Whether a whole-muscle piece was injected, tenderised with blades, rolled or
/// stuffed is asked of each piece, not of the cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Make {
    /// Red meat in whole muscles.
    WholeMuscle,
    /// Ground or chopped: what was outside is inside.
    Ground,
    /// Poultry in any form.
    Poultry,
    /// Fish.
    Fish,
}

impl Make {
    /// The consumer minimum at the coldest point.
    ///
    /// Source: FoodSafety.gov safe minimum internal temperature chart: whole red meat 145 °F with a rest of 3 min,
    /// ground red meat 160 °F, poultry 165 °F, fish 145 °F.
    #[must_use]
    pub const fn consumer_minimum(self) -> Temperature {
        match self {
            Self::WholeMuscle | Self::Fish => Temperature::from_fahrenheit(145.0),
            Self::Ground => Temperature::from_fahrenheit(160.0),
            Self::Poultry => Temperature::from_fahrenheit(165.0),
        }
    }

    /// The rest that belongs to the consumer minimum (same chart).
    #[must_use]
    pub const fn minimum_rest(self) -> TimeSpan {
        match self {
            Self::WholeMuscle => TimeSpan::from_minutes(3.0),
            Self::Ground | Self::Poultry | Self::Fish => TimeSpan::ZERO,
        }
    }
}

/// Mass fractions of the raw edible part; they add up to one within rounding.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Composition {
    /// Water, kg per kg.
    pub water: f64,
    /// Protein, kg per kg.
    pub protein: f64,
    /// Fat, kg per kg.
    pub fat: f64,
    /// Ash, kg per kg.
    pub ash: f64,
    /// Where the figures are from.
    pub source: &'static str,
}

/// Bones and how the model sees them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Bone {
    /// None.
    None,
    /// Inside the meat; the model treats it as meat.
    Within {
        /// Share of the raw weight.
        share: f64,
    },
    /// A row of bones under a slab of meat: a layer of its own that takes up heat and holds no water.
    Under {
        /// Thickness of the bones; a ruler sees it on top of the meat.
        thickness: Length,
        /// Share of the raw weight.
        share: f64,
    },
}

impl Bone {
    /// Share of the raw weight, 0 to 1.
    #[must_use]
    pub const fn share(self) -> f64 {
        match self {
            Self::None => 0.0,
            Self::Within { share } | Self::Under { share, .. } => share,
        }
    }
}

/// Dimensions of the equivalent meat at a reference weight, and how they grow with weight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ReferenceShape {
    /// The weight that the dimensions belong to, as it goes on, bones included.
    pub mass: Mass,
    /// Smallest dimension, of the meat without bones under it.
    pub thickness: Length,
    /// Middle dimension.
    pub width: Length,
    /// Largest dimension.
    pub length: Length,
    /// Share of the enclosing box that is meat: 0.524 for an ellipsoid to 1 for a brick.
    pub fill: f64,
    /// Each dimension grows with (weight / reference)^exponent: thickness, width, length; they add up to one.
    pub exponents: [f64; 3],
}

/// The usual way to cook the cut; the cook changes it freely.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Programme {
    /// Air at the meat.
    pub pit: Temperature,
    /// Wrapped in what, at which core temperature.
    pub wrap: Option<(Cover, Temperature)>,
    /// Core temperature at which the trade takes it off. Below the consumer minimum for some roasts:
    /// [`Cut::default_target`] is what a plan starts from.
    pub target: Temperature,
}

/// Resting: the least, the best, and how long it may be kept above 60 °C. Common practice.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RestTimes {
    /// Shortest rest before slicing.
    pub least: TimeSpan,
    /// What the trade likes best.
    pub best: TimeSpan,
    /// Longest hold above 60 °C before the meat suffers.
    pub longest_hold: TimeSpan,
}

/// Cooked and edible per raw as bought.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EdibleYield {
    /// kg per kg, 0 to 1.
    pub share: f64,
    /// Where it is from, and from which way of cooking.
    pub source: &'static str,
}

/// One cut of the catalogue.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cut {
    /// Its key; [`CutId::slug`] is its spelling in files.
    pub id: CutId,
    /// Plain name.
    pub name: &'static str,
    /// Number in the Institutional Meat Purchase Specifications (USDA AMS, series 100, 200 and 400).
    pub imps: Option<&'static str>,
    /// True where the number was read on a public listing, false where it is from memory.
    pub imps_verified: bool,
    /// The animal.
    pub kind: Kind,
    /// What safety needs to know.
    pub make: Make,
    /// What it is made of.
    pub composition: Composition,
    /// Its size.
    pub shape: ReferenceShape,
    /// Its bones.
    pub bone: Bone,
    /// Share of the surface that can give off water, 0 to 1 (skin and fat cap hold it back). Set by hand from cut to cut,
    /// all but the birds' then raised together by 1.035, fitted to real cooks.
    pub evaporating_share: f64,
    /// Tenderness integral (1 after 4.785 h at 90 °C) that the cut needs to be tender, or none for a cut that is cooked to
    /// a temperature. Fitted so that the usual programme ends tender at its target.
    pub demand: Option<f64>,
    /// The usual way to cook it.
    pub programme: Programme,
    /// How the trade tells that it is done, in °F where the trade says so.
    pub finish: &'static str,
    /// Resting.
    pub rest: RestTimes,
    /// Slicing or pulling one piece. Common practice.
    pub slice: TimeSpan,
    /// Trimming one piece. Common practice.
    pub trim: TimeSpan,
    /// The usual range of one piece as bought. Common practice.
    pub usual_mass: (Mass, Mass),
    /// Cooked and edible per raw as bought.
    pub edible_yield: EdibleYield,
}

impl Cut {
    /// The target that a plan starts from: the trade's, never below the consumer minimum of its make.
    #[must_use]
    pub fn default_target(&self) -> Temperature {
        let minimum = self.make.consumer_minimum();
        if self.programme.target < minimum {
            minimum
        } else {
            self.programme.target
        }
    }

    /// True for a cut that is cooked until it is tender, false for one that is cooked to a temperature.
    #[must_use]
    pub const fn cooks_to_tenderness(&self) -> bool {
        self.demand.is_some()
    }
}

/// A shape from inches and pounds, as the trade measures.
pub(super) const fn shape(
    pounds: f64,
    inches: [f64; 3],
    fill: f64,
    exponents: [f64; 3],
) -> ReferenceShape {
    ReferenceShape {
        mass: Mass::from_pounds(pounds),
        thickness: Length::from_inches(inches[0]),
        width: Length::from_inches(inches[1]),
        length: Length::from_inches(inches[2]),
        fill,
        exponents,
    }
}

/// A composition from fractions that are already normalised to one.
pub(super) const fn composition(
    [water, protein, fat, ash]: [f64; 4],
    source: &'static str,
) -> Composition {
    Composition {
        water,
        protein,
        fat,
        ash,
        source,
    }
}

/// A programme in °F, as the trade says it.
pub(super) const fn programme(pit: f64, wrap: Option<(Cover, f64)>, target: f64) -> Programme {
    Programme {
        pit: Temperature::from_fahrenheit(pit),
        wrap: match wrap {
            Some((cover, core)) => Some((cover, Temperature::from_fahrenheit(core))),
            None => None,
        },
        target: Temperature::from_fahrenheit(target),
    }
}

/// Rest times in minutes.
pub(super) const fn rest(least: f64, best: f64, longest_hold: f64) -> RestTimes {
    RestTimes {
        least: TimeSpan::from_minutes(least),
        best: TimeSpan::from_minutes(best),
        longest_hold: TimeSpan::from_minutes(longest_hold),
    }
}

/// A range of masses in kg.
pub(super) const fn kilograms(low: f64, high: f64) -> (Mass, Mass) {
    (Mass::from_kilograms(low), Mass::from_kilograms(high))
}
