//! The fires: lit, steady, fed, changed, and never left alone.

use super::{Made, of_cooker};
use crate::handover::identity::CookerId;
use crate::plan::day::{Day, Placed, habit, is_minded};
use crate::plan::ensemble::reaches;
use crate::plan::hands;
use crate::plan::outlook::{Finding, FindingKind, Gravity, Step, StepKind, Window};
use crate::plan::up::Stretch;
use crate::plan::window::window_of_those;
use crate::plan::{Cooker, PitWhen, in_order};
use crate::provisions::fuel::Feeding;
use crate::units::{Moment, TimeSpan};

/// A fire between two dishes is kept for so long; after that it is let out and lit again. Set by hand.
const KEPT: TimeSpan = TimeSpan::from_hours(2.0);
/// A gap in the watch that is shorter than this is no gap. Set by hand.
const SHORT: TimeSpan = TimeSpan::from_minutes(10.0);
/// The fire is steady so long before something goes on.
const READY: TimeSpan = TimeSpan::from_minutes(10.0);

pub(super) fn add(day: &Day<'_>, made: &mut Made) {
    for (id, cooker) in in_order(&day.plan.cookers, |cooker| &cooker.order) {
        let on_it: Vec<&Placed<'_>> = day
            .placed()
            .filter(|placed| placed.on_a_fire().is_some_and(|(on, _)| on == id))
            .collect();
        let fires = burning(&on_it);
        let several = fires.len() > 1;
        let mut fed = 0;
        for (number, burning) in (1..).zip(fires) {
            let fire = if several { number } else { 0 };
            fed = add_fire(day, (id, cooker), burning, (fire, fed), &on_it, made);
        }
        add_changes(day, (id, cooker), &on_it, made);
    }
}

/// From the first dish on to the last one off, by their likely times; one stretch for each fire.
pub(super) fn burning(on_it: &[&Placed<'_>]) -> Vec<Stretch> {
    let mut each: Vec<Stretch> = on_it
        .iter()
        .map(|placed| Stretch {
            from: placed.on,
            to: placed.ready().likely(),
        })
        .collect();
    each.sort_by_key(|stretch| stretch.from);
    let mut fires: Vec<Stretch> = Vec::new();
    for stretch in each {
        match fires
            .last_mut()
            .filter(|fire| stretch.from <= fire.to + KEPT)
        {
            Some(fire) => fire.to = fire.to.max(stretch.to),
            None => fires.push(stretch),
        }
    }
    fires
}

/// Adds a fire, numbered where there are several. Rounds of feeding are counted over all fires of a cooker; the count
/// so far goes in and comes out.
fn add_fire(
    day: &Day<'_>,
    (id, cooker): (CookerId, &Cooker),
    burning: Stretch,
    (fire, fed): (u32, u32),
    on_it: &[&Placed<'_>],
    made: &mut Made,
) -> u32 {
    let first = on_it.iter().find(|placed| placed.on == burning.from);
    let lit = burning.from - hands::to_steady_fire(cooker.kind);
    let step = |kind, at, takes| {
        of_cooker(
            day,
            (id, cooker),
            first.copied(),
            kind,
            Window::at(at),
            takes,
        )
    };
    if first.is_none_or(|placed| !placed.is_on) {
        let steady = burning.from - READY;
        for (kind, at, takes) in [
            (StepKind::Light, lit, hands::LIGHT),
            (StepKind::SteadyFire, steady, hands::STEADY_FIRE),
        ] {
            made.add(Step {
                round: fire,
                ..step(kind, at, takes)
            });
        }
    }
    let Some(feeding) = habit(cooker) else {
        return fed;
    };
    let rounds = rounds(day, burning, feeding);
    for (round, at) in (fed + 1..).zip(&rounds) {
        let mut step = step(StepKind::Feed, *at, hands::FEED);
        step.round = round;
        made.add(step);
    }
    let whole = Stretch {
        from: lit,
        to: burning.to,
    };
    for alone in day.crew.nobody_up_in(whole) {
        let within = |at: &&Moment| alone.from <= **at && **at < alone.to;
        let count = rounds.iter().filter(within).count();
        let left_alone = is_minded(cooker) && alone.to - alone.from >= SHORT;
        if alone.to < day.situation.now || !(left_alone || count > 0) {
            continue;
        }
        made.findings.push(Finding {
            gravity: Gravity::Heed,
            dish: None,
            cooker: Some(id),
            what: FindingKind::NobodyForFire {
                from: alone.from,
                to: alone.to,
                rounds: u32::try_from(count).unwrap_or(u32::MAX),
            },
        });
    }
    fed + u32::try_from(rounds.len()).unwrap_or(0)
}

/// When the fire is fed: at the usual distance, or a little sooner or later where that finds somebody up.
fn rounds(day: &Day<'_>, burning: Stretch, feeding: Feeding) -> Vec<Moment> {
    const STEP: TimeSpan = TimeSpan::from_minutes(5.0);
    let mut rounds = Vec::new();
    let mut last = burning.from;
    loop {
        let usual = last + feeding.every;
        let (soonest, latest) = (last + feeding.soonest, last + feeding.latest);
        let around = (0..288)
            .map(|steps| STEP * f64::from(steps))
            .flat_map(|away| [usual - away, usual + away])
            .take_while(|at| soonest <= *at || *at <= latest)
            .filter(|at| soonest <= *at && *at <= latest);
        let mut up = around.filter(|at| day.crew.somebody_up_for(*at, hands::FEED));
        let at = up.next().unwrap_or(usual);
        // Nothing is fed that would only burn after the last dish is off.
        if at + feeding.soonest / 2.0 >= burning.to {
            return rounds;
        }
        rounds.push(at);
        last = at;
    }
}

/// Changes of the pit temperature, each in the window of the dish that it goes by.
fn add_changes(
    day: &Day<'_>,
    (id, cooker): (CookerId, &Cooker),
    on_it: &[&Placed<'_>],
    made: &mut Made,
) {
    for (round, change) in (1..).zip(cooker.programme.iter().skip(1)) {
        let (dish, when, core) = match change.when {
            PitWhen::Start => continue,
            PitWhen::AfterOn { dish, span } => {
                let placed = day.placed().find(|placed| placed.settled.id == dish);
                let when = placed.map(|placed| Window::at(placed.on + span));
                (placed, when, None)
            }
            PitWhen::CoreReaches { dish, core } => {
                let placed = day.placed().find(|placed| placed.settled.id == dish);
                let when = placed.and_then(|placed| {
                    let first = placed.pieces.first()?;
                    let times = first.members().iter().map(|run| reaches(run, core));
                    window_of_those(placed.on, times)
                });
                (placed, when, Some(core))
            }
        };
        // A change after everything is off is no change.
        let end = on_it.iter().map(|placed| placed.ready().likely()).max();
        let Some(when) = when.filter(|when| end.is_some_and(|end| when.likely() < end)) else {
            continue;
        };
        let cooker = (id, cooker);
        let mut step = of_cooker(
            day,
            cooker,
            dish,
            StepKind::PitChange,
            when,
            hands::PIT_CHANGE,
        );
        step.round = round;
        step.core = core;
        made.add(step);
    }
}
