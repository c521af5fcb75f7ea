//! The rules of a lattice as a network, and which of them hold a step.

use super::lattice::{Lattice, Tie};
use super::network::{Arc, Network};
use super::reason::{Reason, Rule};
use crate::units::{Moment, TimeSpan};
use std::collections::BTreeSet;

/// What goes by the meat may be done so much later: hands are busy for a moment, and a window is wider than that. Set by
/// hand.
pub(super) const NO_HARM: TimeSpan = TimeSpan::from_minutes(15.0);

/// Rules are kept to the second; a step is called held by a rule that has less room than this.
const TIGHT: i64 = 300;

/// Whole seconds.
#[expect(
    clippy::cast_possible_truncation,
    reason = "spans of a plan are far below 2^63 s"
)]
pub(super) fn seconds(span: TimeSpan) -> i64 {
    libm::round(span.seconds()) as i64
}

/// A lattice's rules, as far as they do not contradict one another.
#[derive(Clone, Debug)]
pub(super) struct Binding<'a> {
    pub(super) lattice: &'a Lattice,
    pub(super) network: Network,
    /// Pins that no rule allows, by the place of their step.
    pub(super) collisions: BTreeSet<usize>,
}

impl<'a> Binding<'a> {
    /// The rules alone, and the pins of all steps but one that is about to be moved.
    pub(super) fn of(lattice: &'a Lattice, but: Option<usize>) -> Self {
        let mut network = Network::new(lattice.tasks.len());
        for (place, task) in lattice.tasks.iter().enumerate() {
            if task.tie == Tie::Fixed {
                network.put(place, task.begins.unix_seconds()).ok();
            }
        }
        for link in &lattice.links {
            let takes = seconds(lattice.tasks[link.sooner].takes);
            let least = Arc {
                from: link.sooner,
                to: link.later,
                least: takes + seconds(link.least),
            };
            let most = link.most.map(|most| Arc {
                from: link.later,
                to: link.sooner,
                least: -(takes + seconds(most)),
            });
            for arc in [Some(least), most].into_iter().flatten() {
                // A rule that what has happened already breaks is left out; findings speak of it.
                network.add(arc).ok();
            }
        }
        for (place, task) in lattice.tasks.iter().enumerate() {
            if let Some(bound) = &task.earliest {
                network
                    .hold(place, bound.at.unix_seconds(), i64::MAX / 4)
                    .ok();
            }
            if let Some(bound) = &task.latest {
                network
                    .hold(place, i64::MIN / 4, bound.at.unix_seconds())
                    .ok();
            }
            if let Tie::With { task: root, after } = task.tie {
                let after = seconds(after);
                let forth = Arc {
                    from: root,
                    to: place,
                    least: after,
                };
                let back = Arc {
                    from: place,
                    to: root,
                    least: -(after + seconds(NO_HARM)),
                };
                network.add(forth).ok();
                network.add(back).ok();
            }
        }
        let mut binding = Self {
            lattice,
            network,
            collisions: BTreeSet::new(),
        };
        binding.pins(but);
        binding
    }

    fn pins(&mut self, but: Option<usize>) {
        for (place, task) in self.lattice.tasks.iter().enumerate() {
            let Some(pinned) = task.pinned.filter(|_| Some(place) != but) else {
                continue;
            };
            if self.network.put(place, pinned.unix_seconds()).is_err() {
                self.collisions.insert(place);
                let (low, high) = self.network.window(place);
                let near = pinned.unix_seconds().clamp(low, high);
                self.network.put(place, near).ok();
            }
        }
    }

    /// Holds the steps that put dishes on where they are, but for one that is about to be moved.
    pub(super) fn hold_dishes(&mut self, but: Option<usize>) {
        for spans in &self.lattice.dishes {
            if Some(spans.on) == but {
                continue;
            }
            let at = self.lattice.tasks[spans.on].begins.unix_seconds();
            let (low, high) = self.network.window(spans.on);
            self.network.put(spans.on, at.clamp(low, high)).ok();
        }
    }

    /// What keeps a step from beginning sooner than it can: the first rule holds it, the next holds what that speaks of.
    pub(super) fn why_not_sooner(&self, step: usize) -> Vec<Reason> {
        self.chain(step, true, |place| self.network.window(place).0)
    }

    /// What keeps a step from beginning later than it can.
    pub(super) fn why_not_later(&self, step: usize) -> Vec<Reason> {
        self.chain(step, false, |place| self.network.window(place).1)
    }

    fn chain(&self, step: usize, sooner: bool, at: impl Fn(usize) -> i64) -> Vec<Reason> {
        let mut chain = Vec::new();
        let mut seen = BTreeSet::from([step]);
        let mut place = step;
        loop {
            if let Some(reason) = self.own_reason(place, sooner, at(place), place != step) {
                chain.push(reason);
                return chain;
            }
            let tight = self.network.around(place).find_map(|arc| {
                let other = if sooner { arc.from } else { arc.to };
                let here = if sooner { arc.to } else { arc.from };
                let holds = here == place && !seen.contains(&other) && {
                    let apart = if sooner {
                        at(place) - at(other)
                    } else {
                        at(other) - at(place)
                    };
                    apart <= arc.least
                };
                holds.then_some((other, arc))
            });
            let Some((other, arc)) = tight else {
                return chain;
            };
            chain.push(self.reason_of(place, other, arc));
            seen.insert(other);
            place = other;
        }
    }

    /// A reason that a step has of its own, without another step.
    fn own_reason(&self, place: usize, sooner: bool, at: i64, not_first: bool) -> Option<Reason> {
        let task = &self.lattice.tasks[place];
        let moment = Moment::from_unix_seconds(at);
        if task.tie == Tie::Fixed {
            return Some(if task.key.kind == crate::plan::outlook::StepKind::Serve {
                Reason::Serving { at: task.begins }
            } else if task.begins < self.lattice.now {
                Reason::Past {
                    now: self.lattice.now,
                }
            } else {
                Reason::Happened { at: task.begins }
            });
        }
        if task.pinned == Some(moment) && not_first {
            return Some(Reason::Pinned { at: moment });
        }
        let bound = if sooner { &task.earliest } else { &task.latest };
        if let Some(bound) = bound.as_ref().filter(|bound| bound.at == moment) {
            return Some(bound.why.clone());
        }
        let dish = self.lattice.dishes.iter().find(|spans| spans.on == place);
        dish.filter(|_| not_first).map(|spans| self.why_on(spans))
    }

    /// Why a dish goes on when it does.
    pub(super) fn why_on(&self, spans: &super::lattice::DishSpans) -> Reason {
        let on = self.lattice.tasks[spans.on].begins;
        let near = TimeSpan::from_minutes(35.0);
        if on >= spans.latest_on - near {
            return Reason::Promise {
                dish: spans.dish,
                latest: spans.latest_on,
                odds: spans.odds(on, self.lattice.serving),
            };
        }
        if on <= spans.earliest_on + near {
            return Reason::HoldLimit {
                dish: spans.dish,
                earliest: spans.earliest_on,
            };
        }
        Reason::Best
    }

    /// The rule between two steps in words of the one that is held.
    fn reason_of(&self, held: usize, other: usize, arc: Arc) -> Reason {
        let tasks = &self.lattice.tasks;
        let step = tasks[other].key;
        if let Tie::With { task, after } = tasks[held].tie
            && task == other
        {
            return Reason::Meat {
                on: step,
                after,
                core: None,
            };
        }
        let rule = self.rule(held, other);
        let takes = |place: usize| tasks[place].takes;
        let span = |seconds: i64| TimeSpan::from_seconds(seconds as f64);
        let forth = arc.least >= 0;
        match (arc.to == held, forth) {
            (true, true) => Reason::After {
                step,
                least: span(arc.least) - takes(other),
                rule,
            },
            (true, false) => Reason::NotLongBefore {
                step,
                most: span(-arc.least) - takes(held),
                rule,
            },
            (false, true) => Reason::Before {
                step,
                least: span(arc.least) - takes(held),
                rule,
            },
            (false, false) => Reason::NotLongAfter {
                step,
                most: span(-arc.least) - takes(other),
                rule,
            },
        }
    }

    fn rule(&self, one: usize, other: usize) -> Rule {
        let pair = |link: &&super::lattice::Link| {
            (link.sooner, link.later) == (one, other) || (link.sooner, link.later) == (other, one)
        };
        let link = self.lattice.links.iter().find(pair);
        link.map_or(Rule::SinceOn, |link| link.rule)
    }

    /// The rule that holds a step where it is, other steps being where they are.
    pub(super) fn held_by(&self, step: usize) -> Vec<Reason> {
        let at = |place: usize| self.lattice.tasks[place].begins.unix_seconds();
        let mut chain = Vec::new();
        let mut seen = BTreeSet::from([step]);
        let mut place = step;
        loop {
            let task = &self.lattice.tasks[place];
            if task.tie == Tie::Fixed || (task.pinned == Some(task.begins) && task.pinned.is_some())
            {
                chain.push(match self.own_reason(place, true, at(place), true) {
                    Some(reason) => reason,
                    None => Reason::Pinned { at: task.begins },
                });
                return chain;
            }
            if let Some(spans) = self.lattice.dishes.iter().find(|spans| spans.on == place) {
                chain.push(self.why_on(spans));
                return chain;
            }
            let tight = self.network.around(place).filter_map(|arc| {
                let other = if arc.from == place { arc.to } else { arc.from };
                let room = at(arc.to) - at(arc.from) - arc.least;
                let with = matches!(task.tie, Tie::With { task, .. } if task == other);
                (!seen.contains(&other) && (room < TIGHT || with))
                    .then_some((!with, room, other, arc))
            });
            // A tie first, then what it must be over before: the day is planned backwards.
            let best = tight.min_by_key(|(not_with, room, other, arc)| {
                (*not_with, arc.from != place, *room, *other)
            });
            let Some((_, _, other, arc)) = best else {
                if chain.is_empty() {
                    chain.push(Reason::Best);
                }
                return chain;
            };
            chain.push(self.reason_of(place, other, arc));
            seen.insert(other);
            place = other;
        }
    }
}
