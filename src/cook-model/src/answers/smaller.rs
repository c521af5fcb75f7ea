//! Cut it smaller, or many small ones instead of few large: what does that do to the time?

use super::{Answer, Figure, Verdict};
use crate::meat::CutId;
use crate::provisions::Size;
use crate::safety::RuleId;
use crate::safety::wording::{degrees, thickness};
use crate::units::{Length, Mass, Temperature};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Does a smaller piece save time?
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct CutSmaller {
    /// What it is.
    pub cut: CutId,
    /// Weight of one piece as it is.
    pub mass: Mass,
    /// Cut across into so many, or bought as so many smaller ones. 2 to 8.
    pub into: u32,
    /// They are bought smaller, not cut.
    #[serde(default)]
    pub bought_smaller: bool,
    /// Thickness of a thin end. None: no end is much thinner.
    #[serde(default)]
    pub thin_end: Option<Length>,
}

impl CutSmaller {
    /// The answer.
    #[must_use]
    pub fn answer(&self) -> Answer {
        if let Some(thin) = self.thin_end {
            return self.thin(thin);
        }
        let pieces = f64::from(self.into.clamp(2, 8));
        let whole = Size::of(self.cut, self.mass, None);
        let part = if self.bought_smaller {
            dimensions(&Size::of(self.cut, self.mass / pieces, None))
        } else {
            cut_across(dimensions(&whole), self.into)
        };
        let share = slowness(part) / slowness(dimensions(&whole));
        let percent = libm::round(100.0 * (1.0 - share) / 5.0) * 5.0;
        let verdict = if share > 0.6 {
            Verdict::WithCare
        } else {
            Verdict::LooksFine
        };
        Answer::new(verdict)
            .say(format!("Thickness rules, not weight. It saves about {percent:.0} % of the time, not {:.0} %.", 100.0 * (1.0 - 1.0 / pieces)))
            .say("You get more crust, and it ends a little drier. It also wants more room on the grate.")
            .say_if(!self.bought_smaller, format!("The pit does more: {} or more with a wrap saves far more time.", degrees(Temperature::from_fahrenheit(300.0))))
            .say_if(self.cut == CutId::BeefPackerBrisket, "If you must cut a brisket, part the flat from the point.")
            .by(RuleId::CleanBoard)
            .figure(Figure::TimeShare { share })
    }

    fn thin(&self, thin: Length) -> Answer {
        let usual = Size::of(self.cut, self.mass, None).thickness;
        let verdict = if thin < usual * 0.5 {
            Verdict::BetterNot
        } else {
            Verdict::WithCare
        };
        Answer::new(verdict)
            .say(format!("An end of {} is dry long before the thick part is done.", thickness(thin)))
            .say("Trim it off and use it for something else. Or fold it under, or shield it with foil.")
            .say("Finish by the thick part, and reckon with a little less on the plate.")
            .by(RuleId::ColdestPoint)
    }
}

/// Thickness, width and length, m.
fn dimensions(size: &Size) -> [f64; 3] {
    [size.thickness, size.width, size.length].map(Length::metres)
}

/// Cut across its longest side, again and again.
fn cut_across(mut sides: [f64; 3], into: u32) -> [f64; 3] {
    let mut left = into.clamp(2, 8);
    while left > 1 {
        let parts = if left.is_multiple_of(2) { 2 } else { left };
        let longest = if sides[2] >= sides[1] { 2 } else { 1 };
        sides[longest] /= f64::from(parts);
        left /= parts;
    }
    sides
}

/// Time of a brick to warm through, in its slowest term: one over the sum of one over each side squared (product of
/// slabs; textbook conduction with a fixed surface).
fn slowness(sides: [f64; 3]) -> f64 {
    1.0 / sides.iter().map(|side| 1.0 / (side * side)).sum::<f64>()
}
