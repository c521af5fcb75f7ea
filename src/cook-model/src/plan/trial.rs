//! What a plan that is only tried does to one of its dishes: the start that it aims for, and what came of another start.

use super::day::{Day, Placed};
use super::outlook::{Finding, Gravity, Hindrance, Odds, Window};
use super::table::table;
use crate::handover::identity::DishId;
use crate::units::{Moment, TimeSpan};
use serde::{Deserialize, Serialize};

/// A dish that goes on at a time, and what comes of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Start {
    /// On.
    pub on: Moment,
    /// Rested and sliced.
    pub table_ready: Window,
    /// Table-ready by serving.
    pub odds: Odds,
    /// Whether that keeps the promise of the plan.
    pub keeps_promise: bool,
}

/// A plan that is only tried, seen from one of its dishes.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Trial {
    /// Members of the ensemble behind it.
    pub members: u32,
    /// The start that the tried plan aims for.
    pub aimed: Start,
    /// The start that was asked about.
    pub also: Option<Start>,
    /// From on to ready, likely.
    pub takes: TimeSpan,
    /// Every dish table-ready by serving, counted over members.
    pub table: Odds,
    /// What is to be said about this dish and its cooker, the gravest first; remarks are left out.
    pub findings: Vec<Finding>,
}

/// Tries a day from one of its dishes. `also` is a second start to be asked about.
pub(super) fn trial(
    day: &Day<'_>,
    findings: &[Finding],
    dish: DishId,
    also: Option<Moment>,
) -> Result<Trial, Hindrance> {
    let placed = day.dishes.iter().find(|today| today.id == dish);
    let placed = placed.ok_or(Hindrance::NoPieces)?.placed.as_ref();
    let placed = placed.map_err(Hindrance::clone)?;
    let start = |on| {
        let moved = Placed {
            on,
            ..placed.clone()
        };
        let after = moved.settled.after;
        Start {
            on,
            table_ready: moved
                .window(|member| member.table_ready(after))
                .unwrap_or_else(|| moved.ready().moved(after.least())),
            odds: moved.odds(day.plan.serving.moment()),
            keeps_promise: moved.keeps_promise(day.plan),
        }
    };
    let cooker = placed.cooker.map(|(id, _)| id);
    let about = |finding: &&Finding| {
        finding.gravity <= Gravity::Heed
            && (finding.dish == Some(dish) || (finding.dish.is_none() && finding.cooker == cooker))
    };
    Ok(Trial {
        members: u32::try_from(placed.members.len()).unwrap_or(u32::MAX),
        aimed: start(placed.on),
        also: also.map(start),
        takes: placed.ready().likely() - placed.on,
        table: table(day).odds,
        findings: findings.iter().filter(about).cloned().collect(),
    })
}
