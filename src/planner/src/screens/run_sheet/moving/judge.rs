//! What a move of a ticket comes to: allowed with what it changes, or refused with what holds it.

use super::hand::no_later;
use cook_model::plan::{Order, OwnWhen, Plan, StepKey, StepOf};
use cook_model::schedule::{BrokenPromise, Lattice, Refused, To, move_step};
use cook_model::units::Moment;

/// A move that can be made, of one step or of several on one ticket.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// The step that the ticket is known by.
    pub key: StepKey,
    /// Where that step begins now.
    pub at: Moment,
    /// Pins to be kept.
    pub pins: Vec<(StepKey, Moment)>,
    /// Places in the person's own order to be kept.
    pub orders: Vec<(StepKey, Order)>,
    /// The day after it.
    pub lattice: Lattice,
    /// Promises that it breaks, knowingly.
    pub breaks: Vec<BrokenPromise>,
}

impl Change {
    /// Writes the move into the plan. A step of one's own that goes by the clock has its clock changed, others are pinned.
    pub fn keep(&self, plan: &mut Plan) {
        for (key, at) in &self.pins {
            match own_clock(plan, *key) {
                Some(moment) => *moment = *at,
                None => plan.steps.entry(*key).or_default().pin = Some(*at),
            }
        }
        for (key, order) in &self.orders {
            plan.steps.entry(*key).or_default().order = Some(order.clone());
        }
    }
}

fn own_clock(plan: &mut Plan, key: StepKey) -> Option<&mut Moment> {
    let StepOf::Own(id) = key.of else {
        return None;
    };
    match &mut plan.own_steps.get_mut(&id)?.when {
        OwnWhen::Clock { moment } => Some(moment),
        _ => None,
    }
}

/// Takes the pins of some steps out of the plan; what is wished of them besides stays.
pub fn unpin(plan: &mut Plan, steps: &[StepKey]) {
    for key in steps {
        if let Some(wish) = plan.steps.get_mut(key) {
            wish.pin = None;
            if wish.is_empty() {
                plan.steps.remove(key);
            }
        }
    }
}

/// Whether any of these steps is pinned.
#[must_use]
pub fn is_pinned(plan: &Plan, steps: &[StepKey]) -> bool {
    let pinned = |key| plan.steps.get(key).is_some_and(|wish| wish.pin.is_some());
    steps.iter().any(pinned)
}

/// Moves the steps of a ticket together: the first to where it is told, the others by as much.
///
/// # Errors
/// Where hard rules do not allow it for one of them, with the reasons and the nearest allowed place of the first.
pub fn judge(lattice: &Lattice, steps: &[StepKey], to: To) -> Result<Change, Box<Refused>> {
    let Some((first, others)) = steps.split_first() else {
        return Err(Box::new(Refused {
            key: nothing(),
            chain: Vec::new(),
            nearest: None,
        }));
    };
    let begins = |lattice: &Lattice, key: StepKey| {
        let place = lattice.place(key)?;
        Some(lattice.tasks[place].begins)
    };
    let was = begins(lattice, *first);
    let moved = move_step(lattice, *first, to)?;
    let round = |broken: BrokenPromise| BrokenPromise {
        latest: no_later(broken.latest),
        ..broken
    };
    let mut change = Change {
        key: *first,
        at: moved.at,
        pins: moved.pins,
        orders: moved.orders,
        lattice: moved.lattice,
        breaks: moved.breaks.into_iter().map(round).collect(),
    };
    let Some(was) = was else { return Ok(change) };
    let by = change.at - was;
    for key in others {
        let Some(wanted) = begins(lattice, *key).map(|begins| begins + by) else {
            continue;
        };
        let moved =
            move_step(&change.lattice, *key, To::At(wanted)).map_err(|refused| Refused {
                key: *first,
                nearest: refused
                    .nearest
                    .map(|nearest| nearest - (wanted - change.at)),
                ..refused
            })?;
        change.pins.extend(moved.pins);
        change.lattice = moved.lattice;
        for broken in moved.breaks {
            change.breaks.retain(|other| other.dish != broken.dish);
            change.breaks.push(round(broken));
        }
    }
    Ok(change)
}

const fn nothing() -> StepKey {
    StepKey {
        of: StepOf::Table,
        kind: cook_model::plan::outlook::StepKind::Serve,
        round: 0,
    }
}
