//! Bad input, found before it is reckoned with: each with its place, its figures and what to do.

mod arrangement;
mod dishes;
mod gathering;
mod problem;
mod shopping;

pub use problem::{Problem, Trouble};

use super::Plan;
use super::range::Range;
use crate::units::Moment;

/// Everything in a plan that cannot be reckoned with, in the order of the plan. An empty list is a plan that can be.
#[must_use]
pub fn check(plan: &Plan, now: Moment) -> Vec<Problem> {
    let mut found = Found(Vec::new());
    gathering::check(plan, now, &mut found);
    dishes::check(plan, &mut found);
    shopping::check(plan, &mut found);
    arrangement::check(plan, &mut found);
    found.0
}

/// Problems found so far.
struct Found(Vec<Problem>);

impl Found {
    fn say(&mut self, at: impl Into<String>, what: Trouble) {
        self.0.push(Problem {
            at: at.into(),
            what,
        });
    }

    /// Reports a value outside its range. Returns whether it was within.
    fn hold(&mut self, at: impl Into<String>, range: Range, value: f64) -> bool {
        let within = range.holds(value);
        if !within {
            self.say(at, Trouble::OutOfRange { range, value });
        }
        within
    }

    fn name(&mut self, at: impl Into<String>, name: &str) {
        self.hold(at, super::range::NAME, count(name.chars().count()));
    }
}

fn count(number: usize) -> f64 {
    number as f64
}

#[cfg(test)]
mod tests;
