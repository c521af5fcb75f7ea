//! How far the last change got.

use super::Refused;

/// What may be told about the last change.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum SaveState {
    /// Nothing was read or written yet.
    #[default]
    Starting,
    /// On its way to the disk.
    Saving,
    /// On disk: a killed browser does not lose it.
    Saved,
    /// In the quick copy alone, which the browser writes to disk when it likes.
    QuickOnly(Refused),
    /// In no store: it lives in this page only.
    Unsaved(Refused),
    /// A newer Longcook has written here; this one no longer writes.
    Behind,
}

impl SaveState {
    /// What follows from the two writes of a change.
    pub(super) fn after(quick: Result<(), Refused>, strict: Result<(), Refused>) -> Self {
        match (quick, strict) {
            (_, Ok(())) => Self::Saved,
            (Ok(()), Err(refused)) => Self::QuickOnly(refused),
            (Err(_), Err(refused)) => Self::Unsaved(refused),
        }
    }

    /// Whether the person has to know.
    #[must_use]
    pub const fn is_trouble(&self) -> bool {
        matches!(self, Self::QuickOnly(_) | Self::Unsaved(_) | Self::Behind)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_strict_copy_counts_as_saved() {
        let full = || Err(Refused::NoRoom);
        assert_eq!(SaveState::after(Ok(()), Ok(())), SaveState::Saved);
        assert_eq!(SaveState::after(full(), Ok(())), SaveState::Saved);
        assert_eq!(
            SaveState::after(Ok(()), full()),
            SaveState::QuickOnly(Refused::NoRoom)
        );
        let lost = SaveState::after(full(), full());
        assert_eq!(lost, SaveState::Unsaved(Refused::NoRoom));
        assert!(lost.is_trouble());
    }
}
