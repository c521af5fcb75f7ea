//! What is said about keeping: where the last change is, and what to do when it cannot be kept.

use super::Told;
use crate::device::storage::{Refused, SaveState};

/// A word for the rim; empty where there is nothing to tell.
#[must_use]
pub const fn word(state: &SaveState) -> &'static str {
    match state {
        SaveState::Starting => "",
        SaveState::Saving => "Saving",
        SaveState::Saved => "Saved",
        SaveState::QuickOnly(_) => "Saved for now",
        SaveState::Unsaved(_) | SaveState::Behind => "Not saved",
    }
}

/// What to do where a change is not, or not surely, kept.
#[must_use]
pub fn trouble(state: &SaveState) -> Option<Told> {
    match state {
        SaveState::QuickOnly(refused) => Some(Told {
            head: "Saved for now, perhaps not for good".to_owned(),
            note: format!(
                "The sure one of two copies could not be written: {}. Keep a copy as a file.",
                because(refused)
            ),
        }),
        SaveState::Unsaved(refused) => Some(Told {
            head: "The last change is not saved".to_owned(),
            note: format!(
                "It is on the screen only: {}. Keep a copy as a file now, then clear some space.",
                because(refused)
            ),
        }),
        SaveState::Behind => Some(Told {
            head: "A newer Longcook has been here".to_owned(),
            note:
                "It has written something that this one cannot read, so this one leaves it alone. \
                Reload the page to get the newer one."
                    .to_owned(),
        }),
        SaveState::Starting | SaveState::Saving | SaveState::Saved => None,
    }
}

fn because(refused: &Refused) -> String {
    match refused {
        Refused::NoRoom => "this device gives the browser no more room".to_owned(),
        Refused::Other(message) => format!("the browser says “{message}”"),
    }
}

/// The key that keeps a copy as a file.
pub const KEEP_A_COPY: &str = "Keep a copy";
/// A newer version is on the device.
pub const NEWER_HEAD: &str = "A newer Longcook is on this device";
/// What it means to switch.
pub const NEWER_NOTE: &str = "Your plans stay as they are. Switching takes a second.";
/// When the old version does not give way.
pub const NEWER_HELD: &str = "The old one is still busy. Close Longcook everywhere and open it again: then the newer one starts.";
/// The key that switches.
pub const SWITCH: &str = "Switch to it";
/// The key that waits.
pub const NOT_NOW: &str = "Not now";
/// The key that lets a good word go.
pub const GOOD: &str = "Good";
/// The key that starts the page again.
pub const RELOAD: &str = "Reload";

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_what_is_on_disk_is_called_saved() {
        assert_eq!(word(&SaveState::Saved), "Saved");
        for state in [
            SaveState::Saving,
            SaveState::QuickOnly(Refused::NoRoom),
            SaveState::Unsaved(Refused::NoRoom),
            SaveState::Behind,
        ] {
            assert_ne!(word(&state), "Saved");
            assert_eq!(trouble(&state).is_some(), state.is_trouble());
        }
    }
}
