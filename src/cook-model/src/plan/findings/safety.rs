//! Slow through the danger zone, and whether it is intact.

use super::{Said, point};
use crate::meat::Make;
use crate::plan::day::Placed;
use crate::plan::method::CutMethod;
use crate::plan::outlook::{FindingKind, Gravity};
use crate::plan::put_on::needed;
use crate::plan::window::LONGEST_COOK;
use crate::plan::{Intact, hands};
use crate::safety::{CORE_LIMIT, Governs, SURFACE_LIMIT, governing};
use crate::units::TimeSpan;

/// A limit is kept where it is kept in so many of all members.
const KEPT: f64 = 0.9;

pub(super) fn say(placed: &Placed<'_>, said: &mut Said) {
    let Some(method) = placed.settled.cut() else {
        return;
    };
    if method.cut.make == Make::WholeMuscle && method.intact == Intact::Unknown {
        said.of_dish(Gravity::Heed, placed, FindingKind::AskIntact);
    }
    let core: Vec<TimeSpan> = placed
        .members
        .iter()
        .map(|member| member.slow_core.unwrap_or(LONGEST_COOK))
        .collect();
    let likely = point(core.iter().copied(), 0.5);
    match governing(method.sort) {
        Governs::Core => {
            if !is_kept(&core, CORE_LIMIT) {
                let what = FindingKind::SlowCoreNotIntact { likely };
                said.of_dish(Gravity::Stop, placed, what);
            }
        }
        Governs::Surface => {
            surface(placed, method, said);
            if likely > CORE_LIMIT {
                said.of_dish(
                    Gravity::Note,
                    placed,
                    FindingKind::SlowCoreIntact { likely },
                );
            }
        }
    }
}

/// The surface is hot within the limit, counted from when the rub began: then it left the cold.
fn surface(placed: &Placed<'_>, method: &CutMethod<'_>, said: &mut Said) {
    let out = hands::rub(method.cut, method.all());
    let hot: Vec<TimeSpan> = placed
        .members
        .iter()
        .map(|member| out + member.surface_hot.unwrap_or(LONGEST_COOK))
        .collect();
    if !is_kept(&hot, SURFACE_LIMIT) {
        let likely = point(hot.iter().copied(), 0.5);
        said.of_dish(Gravity::Stop, placed, FindingKind::SlowSurface { likely });
    }
}

fn is_kept(spans: &[TimeSpan], limit: TimeSpan) -> bool {
    let kept = spans.iter().filter(|span| **span <= limit).count();
    kept >= needed(KEPT, spans.len())
}
