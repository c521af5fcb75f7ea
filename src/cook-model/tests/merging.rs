//! Any two copies of a plan agree after exchanging files, whatever the order, with wrong clocks and repeated merging.

use cook_model::handover::identity::{EntryId, PlanId, ReplicaId};
use cook_model::handover::{
    Clock, Document, Entry, Event, HandOver, Journal, KnownEvent, ReplicaText,
};
use cook_model::plan::{Guests, Plan, Serving};
use cook_model::units::Moment;
use proptest::prelude::*;

fn start() -> (Plan, Document) {
    let local = "2026-09-12T18:00:00".parse().expect("a date and time");
    let plan = Plan::new(Serving {
        local,
        zone: "Europe/London".to_owned(),
        offset_seconds: 3600,
    });
    let mut document = Document::new(PlanId::new(1, 1));
    document.record(None, &plan, &mut Clock::new(ReplicaId::new(9)), 1_000);
    (plan, document)
}

/// One phone's afternoon: edits to one of three fields at whatever its clock says, and entries in its journal.
fn copy(replica: u64, edits: &[(u8, u32, u64)]) -> HandOver {
    let (mut plan, mut document) = start();
    let mut clock = Clock::new(ReplicaId::new(replica));
    let mut journal = Journal::default();
    for (at, (which, value, wall)) in edits.iter().enumerate() {
        let before = plan.clone();
        match which % 3 {
            0 => plan.name = format!("Supper {value}"),
            1 => {
                plan.guests = Guests::of(value % 50, 0);
            }
            _ => plan.promise = 0.5 + f64::from(value % 40) / 100.0,
        }
        document.record(Some(&before), &plan, &mut clock, *wall);
        let entry = Entry {
            at: Moment::from_unix_seconds(i64::from(*value)),
            logged: Moment::from_unix_seconds(0),
            replica: ReplicaText(ReplicaId::new(replica)),
            by: None,
            event: Event::Known(KnownEvent::Note {
                text: format!("{value}"),
            }),
        };
        journal.0.insert(
            EntryId::new(*wall, u128::from(replica) << 16 | at as u128),
            entry,
        );
    }
    HandOver::new(document, journal)
}

fn merged(copies: &[&HandOver]) -> HandOver {
    let mut all = copies[0].clone();
    for other in &copies[1..] {
        all.merge(other);
    }
    all
}

fn edits() -> impl Strategy<Value = Vec<(u8, u32, u64)>> {
    prop::collection::vec((any::<u8>(), 0_u32..1_000, 0_u64..100_000), 0..8)
}

proptest! {
    #[test]
    fn the_order_of_merging_does_not_matter(one in edits(), two in edits(), three in edits()) {
        let (one, two, three) = (copy(1, &one), copy(2, &two), copy(3, &three));
        let all = merged(&[&one, &two, &three]);
        prop_assert_eq!(&merged(&[&three, &one, &two]), &all);
        prop_assert_eq!(&merged(&[&two, &three, &one]), &all);
        prop_assert_eq!(&merged(&[&one, &merged(&[&two, &three])]), &all);
        prop_assert_eq!(&merged(&[&all, &one, &all]), &all);
    }

    #[test]
    fn nothing_logged_is_ever_lost(one in edits(), two in edits()) {
        let (one, two) = (copy(1, &one), copy(2, &two));
        let all = merged(&[&one, &two]);
        prop_assert_eq!(all.journal.0.len(), one.journal.0.len() + two.journal.0.len());
    }

    #[test]
    fn an_edit_made_after_seeing_another_stands(value in 0_u32..1_000, ahead in 0_u64..10_000_000) {
        let fast = copy(1, &[(0, value, ahead + 1_000_000)]);
        let mut here = copy(2, &[]);
        here.merge(&fast);
        let before = here.document.read().plan.expect("a plan");
        let mut after = before.clone();
        after.name = "Mine".to_owned();
        here.document.record(Some(&before), &after, &mut Clock::new(ReplicaId::new(2)), 5);
        let both = merged(&[&fast, &here]);
        prop_assert_eq!(both.document.read().plan.expect("a plan").name, "Mine");
    }
}
