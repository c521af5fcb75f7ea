//! How this kitchen uses rub, paper, foil and the rest: the habits behind the amounts.

use super::super::coating::{BINDER, RUB};
use super::super::spoons::SaltKind;
use super::super::wrapping::Roll;
use crate::plan::Cover;
use crate::units::{Length, TimeSpan};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Habits; each can be changed.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(default)]
pub struct Supplies {
    /// Rub on each square metre, kg/m², 0 to 2. Zero: none.
    pub rub: f64,
    /// Share of the rub that is salt, 0 to 1: it counts towards the salt.
    pub salt_in_rub: f64,
    /// Mustard or oil under the rub, kg/m², 0 to 1. Zero: none.
    pub binder: f64,
    /// The kind of salt, for spoons. None: grams only.
    pub salt: Option<SaltKind>,
    /// Width of the paper.
    pub paper_width: Length,
    /// Width of the foil.
    pub foil_width: Length,
    /// Times around a piece, 1 to 4.
    pub turns: f64,
    /// Pans under the meat and for serving are bought for the day.
    pub pans: bool,
    /// Raw food travels this long in a box with ice. Zero: no ice for that.
    pub cold_travel: TimeSpan,
}

impl Default for Supplies {
    fn default() -> Self {
        Self {
            rub: RUB.usual,
            salt_in_rub: 0.0,
            binder: 0.0,
            salt: None,
            paper_width: Roll::usual(Cover::Paper).width,
            foil_width: Roll::usual(Cover::Foil).width,
            turns: Roll::usual(Cover::Paper).turns,
            pans: true,
            cold_travel: TimeSpan::ZERO,
        }
    }
}

impl Supplies {
    /// The roll for a cover.
    #[must_use]
    pub const fn roll(&self, cover: Cover) -> Roll {
        Roll {
            width: match cover {
                Cover::Paper => self.paper_width,
                Cover::Foil => self.foil_width,
            },
            turns: self.turns,
        }
    }

    /// The usual binder, for someone who wants one.
    #[must_use]
    pub const fn with_binder(self) -> Self {
        Self {
            binder: BINDER.usual,
            ..self
        }
    }
}
