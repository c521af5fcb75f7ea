//! Too late, or too early to stay hot.

use super::{Said, point};
use crate::plan::day::{Day, Placed, counted};
use crate::plan::outlook::{FindingKind, Gravity};
use crate::plan::put_on::needed;

pub(super) fn say(day: &Day<'_>, placed: &Placed<'_>, said: &mut Said) {
    let serving = day.plan.serving.moment();
    if !placed.is_on && placed.span.latest < day.situation.now {
        let latest = placed.span.latest;
        said.of_dish(Gravity::Heed, placed, FindingKind::OnPast { latest });
    }
    if !placed.keeps_promise(day.plan) {
        let odds = placed.odds(serving);
        said.of_dish(Gravity::Heed, placed, FindingKind::PromiseBroken { odds });
    }
    let after = placed.settled.after;
    let waits = placed.members.iter().filter_map(|member| {
        let waits = member.waits(after, serving - placed.on)?;
        Some((waits, member.keeps))
    });
    let waits: Vec<_> = waits.collect();
    let good = waits.iter().filter(|(waits, keeps)| waits <= keeps).count();
    if good < needed(0.9, waits.len()) {
        let what = FindingKind::HoldTooLong {
            waits: point(waits.iter().map(|(waits, _)| *waits), 0.9),
            limit: point(waits.iter().map(|(_, keeps)| *keeps), 0.1),
            odds: counted(good, waits.len()),
        };
        let gravity = if good * 2 < waits.len() {
            Gravity::Heed
        } else {
            Gravity::Note
        };
        said.of_dish(gravity, placed, what);
    }
}
