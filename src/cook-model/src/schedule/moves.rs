//! A step moved by hand: where it may go, what goes with it, and what it does to the promise.

use super::binding::Binding;
use super::lattice::{Lattice, Tie};
use super::reason::Reason;
use super::solve::{Fault, settle};
use crate::handover::identity::DishId;
use crate::plan::outlook::{Odds, StepKind};
use crate::plan::{Order, Plan, StepKey};
use crate::units::Moment;

/// Moments that a step is pinned to are round.
const GRID: i64 = 300;
/// The nearest allowed place is looked for this far to either side, in steps of the grid: two days.
const REACH: i64 = 576;

/// Where a step is moved to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum To {
    /// It is to begin then, and is pinned there.
    At(Moment),
    /// Just before another step, and is pinned there; its place in the order is kept as well.
    Before(StepKey),
    /// Just after another step, likewise.
    After(StepKey),
}

/// A promise that a move breaks, knowingly.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BrokenPromise {
    /// Which dish.
    pub dish: DishId,
    /// Its odds after the move.
    pub odds: Odds,
    /// The latest put-on time that keeps it.
    pub latest: Moment,
}

/// A move that can be made.
#[derive(Clone, Debug, PartialEq)]
pub struct Moved {
    /// Which step.
    pub key: StepKey,
    /// Where it begins now.
    pub at: Moment,
    /// Pins to be kept.
    pub pins: Vec<(StepKey, Moment)>,
    /// Places in the person's order to be kept.
    pub orders: Vec<(StepKey, Order)>,
    /// The sheet after it: every step's beginning and who does it.
    pub lattice: Lattice,
    /// Promises that it breaks. It is allowed all the same.
    pub breaks: Vec<BrokenPromise>,
}

impl Moved {
    /// Writes the move into the plan. Taking it back is putting the plan as it was back.
    pub fn keep(&self, plan: &mut Plan) {
        for (key, at) in &self.pins {
            plan.steps.entry(*key).or_default().pin = Some(*at);
        }
        for (key, order) in &self.orders {
            plan.steps.entry(*key).or_default().order = Some(order.clone());
        }
    }
}

/// A move that hard rules do not allow.
#[derive(Clone, Debug, PartialEq)]
pub struct Refused {
    /// Which step.
    pub key: StepKey,
    /// What holds it: the first reason holds the step, each next one what the one before speaks of. Never empty.
    pub chain: Vec<Reason>,
    /// The allowed place that is nearest. None: it cannot be moved at all.
    pub nearest: Option<Moment>,
}

/// Moves a step, and settles the others around it. Pure; works on the page.
///
/// # Errors
/// Where hard rules do not allow it: with the rules that hold it and the nearest allowed place.
pub fn move_step(lattice: &Lattice, key: StepKey, to: To) -> Result<Moved, Refused> {
    let refused = |chain, nearest| Refused {
        key,
        chain,
        nearest,
    };
    let Some(step) = lattice.place(key) else {
        return Err(refused(vec![Reason::Best], None));
    };
    let task = &lattice.tasks[step];
    match task.tie {
        Tie::Fixed => {
            let reason = match task.key.kind {
                StepKind::Serve => Reason::Serving { at: task.begins },
                _ if task.begins < lattice.now => Reason::Past { now: lattice.now },
                _ => Reason::Happened { at: task.begins },
            };
            return Err(refused(vec![reason], None));
        }
        Tie::With { task: root, after } => {
            let meat = Reason::Meat {
                on: lattice.tasks[root].key,
                after,
                core: None,
            };
            return Err(refused(vec![meat], Some(task.begins)));
        }
        Tie::Free | Tie::Near { .. } => {}
    }
    let (at, orders) = match to {
        To::At(at) => (at, Vec::new()),
        To::Before(other) | To::After(other) => {
            let Some(other) = lattice.place(other).filter(|other| *other != step) else {
                return Err(refused(vec![Reason::Best], Some(task.begins)));
            };
            let before = matches!(to, To::Before(_));
            let there = &lattice.tasks[other];
            let at = if before {
                there.begins - task.takes
            } else {
                there.ends()
            };
            (at, lattice.orders(step, other, before))
        }
    };
    match settle(lattice, step, at) {
        Ok(mut settled) => {
            for (key, order) in &orders {
                if let Some(place) = settled.place(*key) {
                    settled.tasks[place].order = Some(order.clone());
                }
            }
            let pins = vec![(key, at)];
            settled.tasks[step].pinned = Some(at);
            let breaks = broken_promises(lattice, &settled);
            Ok(Moved {
                key,
                at,
                pins,
                orders,
                lattice: settled,
                breaks,
            })
        }
        Err(fault) => {
            let Fault::Rules { too_soon } = fault;
            let chain = why(lattice, step, too_soon);
            Err(refused(chain, nearest(lattice, step, at)))
        }
    }
}

fn why(lattice: &Lattice, step: usize, too_soon: bool) -> Vec<Reason> {
    let mut binding = Binding::of(lattice, Some(step));
    binding.hold_dishes(Some(step));
    let chain = if too_soon {
        binding.why_not_sooner(step)
    } else {
        binding.why_not_later(step)
    };
    if chain.is_empty() {
        vec![Reason::Best]
    } else {
        chain
    }
}

/// The nearest moment of the grid at which the step can stand; of two equally near ones the sooner.
fn nearest(lattice: &Lattice, step: usize, at: Moment) -> Option<Moment> {
    let round = at.unix_seconds().div_euclid(GRID) * GRID;
    let mut binding = Binding::of(lattice, Some(step));
    binding.hold_dishes(Some(step));
    let (low, high) = binding.network.window(step);
    let around = (0..=REACH).flat_map(|steps| [round - steps * GRID, round + steps * GRID]);
    let allowed = around.filter(|at| low <= *at && *at <= high);
    let mut moments = allowed.map(Moment::from_unix_seconds);
    moments
        .find(|moment| settle(lattice, step, *moment).is_ok())
        .or_else(|| {
            // Where the window holds no round moment, its ends are all there is.
            let ends = [low, high].into_iter().map(Moment::from_unix_seconds);
            let near = ends.min_by_key(|end| (end.unix_seconds() - at.unix_seconds()).abs());
            near.filter(|end| settle(lattice, step, *end).is_ok())
        })
}

fn broken_promises(before: &Lattice, after: &Lattice) -> Vec<BrokenPromise> {
    let broken = |spans: &super::lattice::DishSpans| {
        let was = spans.odds(before.tasks[spans.on].begins, before.serving);
        let odds = spans.odds(after.tasks[spans.on].begins, after.serving);
        (odds.kept < spans.wanted && odds.kept < was.kept).then_some(BrokenPromise {
            dish: spans.dish,
            odds,
            latest: spans.latest_on,
        })
    };
    after.dishes.iter().filter_map(broken).collect()
}

impl Lattice {
    /// The place of a step in the list.
    #[must_use]
    pub fn place(&self, key: StepKey) -> Option<usize> {
        self.tasks.iter().position(|task| task.key == key)
    }

    /// The places in the person's order that put a step just before or after another.
    fn orders(&self, step: usize, other: usize, before: bool) -> Vec<(StepKey, Order)> {
        let mut ordered: Vec<(&Order, usize)> = self
            .tasks
            .iter()
            .enumerate()
            .filter(|(place, _)| *place != step)
            .filter_map(|(place, task)| Some((task.order.as_ref()?, place)))
            .collect();
        ordered.sort();
        let mut given = Vec::new();
        let anchor = match ordered.iter().position(|(_, place)| *place == other) {
            Some(at) => at,
            None => {
                // The other has no place yet: it gets one by its time.
                let begins = self.tasks[other].begins;
                let at = ordered.partition_point(|(_, place)| self.tasks[*place].begins <= begins);
                let low = at.checked_sub(1).map(|at| ordered[at].0);
                let order = Order::between(low, ordered.get(at).map(|(order, _)| *order));
                given.push((self.tasks[other].key, order));
                at
            }
        };
        let has = given.first().map(|(_, order)| order);
        let own = has.or(ordered.get(anchor).map(|(order, _)| *order));
        let neighbour =
            |at: Option<usize>| at.and_then(|at| ordered.get(at)).map(|(order, _)| *order);
        let order = if before {
            Order::between(neighbour(anchor.checked_sub(1)), own)
        } else {
            let next = if has.is_some() { anchor } else { anchor + 1 };
            Order::between(own, neighbour(Some(next)))
        };
        given.push((self.tasks[step].key, order));
        given
    }
}
