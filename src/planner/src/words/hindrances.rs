//! Why a dish has no forecast, and what to do.

use super::Told;
use crate::format::Formats;
use cook_model::plan::outlook::Hindrance;

/// A hindrance in words.
#[must_use]
pub fn hindrance(hindrance: &Hindrance, formats: &Formats) -> Told {
    match hindrance {
        Hindrance::NoPieces => Told::new(
            "No piece yet",
            "Say what it weighs; its size can be guessed from that.",
        ),
        Hindrance::NoCooker => Told::new("No cooker yet", "Say what it is cooked on."),
        Hindrance::UnknownCut { cut } => Told::new(
            format!("No cut is called “{cut}”"),
            "Choose one from the list, or make it a dish of your own with its minutes.",
        ),
        Hindrance::PitBelowTarget { pit, target } => Told::new(
            format!(
                "The pit never brings it to {}",
                formats.temperature(*target)
            ),
            format!(
                "The air is at most {}. Raise the pit, or lower the target.",
                formats.temperature(*pit)
            ),
        ),
        Hindrance::OutOfRange { message } => {
            Told::new("A figure cannot be reckoned with", message.clone())
        }
        Hindrance::NeverReady { limit } => Told::new(
            format!("Not ready within {}", formats.span(*limit)),
            "In most cooks it takes longer than can be planned. Cook it hotter, or in smaller pieces.",
        ),
    }
}
