//! What a fire was really fed, by the journal.

use super::feeding::feeding;
use super::learned::LearnedFactor;
use crate::handover::identity::CookerId;
use crate::handover::{Event, Journal, KnownEvent};
use crate::plan::CookerKind;
use crate::units::Mass;

/// What a journal tells of feeding a cooker.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Fed {
    /// Rounds.
    pub rounds: u32,
    /// Weight of the rounds whose weight was told, and of those fed by the piece.
    pub fuel: Mass,
    /// Rounds of which nobody told the weight, and that are not fed by the piece.
    pub unweighed: u32,
}

/// Adds up the rounds of a cooker; entries that were struck out do not count. A round without a weight counts as one
/// split where the kind is fed by the piece.
#[must_use]
pub fn fed(journal: &Journal, cooker: CookerId, kind: CookerKind) -> Fed {
    let piece = feeding(kind).and_then(|habit| habit.piece);
    let mut sum = Fed::default();
    for (_, entry) in journal.standing() {
        let Event::Known(KnownEvent::Fed {
            cooker: at, fuel, ..
        }) = &entry.event
        else {
            continue;
        };
        if *at != cooker {
            continue;
        }
        sum.rounds = sum.rounds.saturating_add(1);
        match fuel.or(piece) {
            Some(mass) => sum.fuel += mass,
            None => sum.unweighed = sum.unweighed.saturating_add(1),
        }
    }
    sum
}

impl LearnedFactor {
    /// After a cook with this journal, for which the model alone reckoned `modelled` (start-up included). A cook that
    /// was not fed, or of which a round has no weight, teaches nothing.
    #[must_use]
    pub fn after_cook(&self, fed: Fed, modelled: Mass) -> Self {
        if fed.rounds == 0 || fed.unweighed > 0 || modelled <= Mass::ZERO {
            return *self;
        }
        self.after(fed.fuel / modelled)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::handover::Entry;
    use crate::handover::identity::EntryId;
    use crate::units::Moment;

    fn journal(events: Vec<KnownEvent>) -> Journal {
        let entry = |(at, event): (usize, KnownEvent)| {
            let entry = Entry::told(Moment::from_unix_seconds(0), Event::Known(event));
            (EntryId::new(1, at as u128), entry)
        };
        Journal(events.into_iter().enumerate().map(entry).collect())
    }

    #[test]
    fn rounds_add_up_and_what_was_struck_out_does_not_count() {
        let (cooker, other) = (CookerId::new(1, 1), CookerId::new(1, 2));
        let round = |cooker, fuel: Option<f64>| KnownEvent::Fed {
            cooker,
            fuel: fuel.map(Mass::from_kilograms),
            kind: None,
        };
        let journal = journal(vec![
            round(cooker, Some(0.7)),
            round(cooker, None),
            round(cooker, Some(9.0)),
            round(other, Some(2.0)),
            KnownEvent::Struck {
                entry: EntryId::new(1, 2),
            },
        ]);
        let offset = fed(&journal, cooker, CookerKind::Offset);
        assert_eq!(offset.rounds, 2);
        assert!((offset.fuel.kilograms() - 1.2).abs() < 1e-12);
        let kettle = fed(&journal, cooker, CookerKind::Kettle);
        assert_eq!(kettle.unweighed, 1);
        let before = LearnedFactor::default();
        assert_eq!(before.after_cook(kettle, Mass::from_kilograms(1.0)), before);
        let after = before.after_cook(offset, Mass::from_kilograms(1.2));
        assert!(after.likely() < before.likely() && after.cooks == 1);
    }
}
