//! Who does what: among those who are up and free, whoever has done least.

use super::Made;
use crate::handover::identity::CrewId;
use crate::plan::day::Day;
use crate::plan::outlook::{Finding, FindingKind, Gravity, Step, StepKind};
use crate::plan::up::Stretch;
use crate::units::TimeSpan;
use std::collections::BTreeMap;

#[derive(Default)]
struct Diary {
    busy: Vec<Stretch>,
    in_all: TimeSpan,
}

impl Diary {
    fn is_free(&self, wanted: Stretch) -> bool {
        let apart = |busy: &Stretch| busy.to <= wanted.from || wanted.to <= busy.from;
        self.busy.iter().all(apart)
    }
}

/// Gives each step to somebody, in order of likely time. A step for which nobody is up is a finding; feeding a fire is
/// spoken of for the whole gap in the watch instead.
pub(super) fn assign(day: &Day<'_>, made: &mut Made) {
    if day.plan.crew.is_empty() {
        return;
    }
    let mut diaries: BTreeMap<CrewId, Diary> = BTreeMap::new();
    for step in &mut made.steps {
        let wanted = Stretch {
            from: step.when.likely(),
            to: step.when.likely() + step.takes,
        };
        let mut best = None;
        for id in day.crew.who_is_up_for(wanted.from, step.takes) {
            let diary = diaries.entry(id).or_default();
            let rank = (!diary.is_free(wanted), diary.in_all);
            if best.is_none_or(|(least, _)| rank < least) {
                best = Some((rank, id));
            }
        }
        step.who = best.map(|(_, id)| id);
        if let Some(id) = step.who {
            let diary = diaries.entry(id).or_default();
            diary.busy.push(wanted);
            diary.in_all += step.takes;
        }
    }
    let unattended = made
        .steps
        .iter()
        .filter(|step| step.who.is_none() && step.kind != StepKind::Feed)
        .filter(|step| step.when.likely() >= day.situation.now)
        .map(nobody_up);
    made.findings.extend(unattended);
}

fn nobody_up(step: &Step) -> Finding {
    Finding {
        gravity: Gravity::Heed,
        dish: step.dish,
        cooker: step.cooker,
        what: FindingKind::NobodyUp {
            step: step.kind,
            when: step.when,
        },
    }
}
