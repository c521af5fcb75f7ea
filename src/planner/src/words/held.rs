//! What holds a step where it is, link by link, in a cook's words.

use super::{moves, steps};
use crate::format::{self, Formats};
use cook_model::plan::{Plan, StepKey};
use cook_model::schedule::{Lattice, Reason, Room, Rule};
use cook_model::units::TimeSpan;

/// Shorter than this, a span is not worth saying.
const AT_ONCE: TimeSpan = TimeSpan::from_minutes(2.0);

/// What a reason is told with.
#[derive(Clone, Copy)]
pub struct Told<'a> {
    /// Names of dishes, cookers and people.
    pub plan: &'a Plan,
    /// Where other steps are.
    pub lattice: &'a Lattice,
    /// How this person reads.
    pub formats: &'a Formats,
}

/// A chain of reasons, one sentence a link. The first speaks of the step itself, each next one of what the one before
/// spoke of.
#[must_use]
pub fn chain(reasons: &[Reason], told: Told<'_>) -> Vec<String> {
    reasons.iter().map(|reason| told.reason(reason)).collect()
}

impl Told<'_> {
    /// Another step, with its time: `wrapping Pork butts at 08:50`.
    fn step(self, key: StepKey) -> String {
        let name = steps::named(key, self.plan);
        match self.lattice.place(key) {
            Some(place) => {
                let begins = self.lattice.tasks[place].begins;
                format!("{name} at {}", self.formats.time(begins))
            }
            None => name,
        }
    }

    /// So long before or after; only the word where it is at once.
    fn span(self, span: TimeSpan, word: &str) -> String {
        if span < AT_ONCE {
            word.to_owned()
        } else {
            format!("{} {word}", self.formats.span(span))
        }
    }

    fn reason(self, reason: &Reason) -> String {
        let formats = self.formats;
        match reason {
            Reason::Serving { at } => {
                format!(
                    "The table is served at {}, the hour you chose.",
                    formats.time(*at)
                )
            }
            Reason::Before { step, least, rule } => self.before(*step, *least, *rule),
            Reason::After { step, least, rule } => self.after(*step, *least, *rule),
            Reason::NotLongBefore { step, most, rule } => {
                let step = self.step(*step);
                let most = formats.span(*most);
                match rule {
                    Rule::Salting => format!("Salt works for {most} at most before {step}."),
                    Rule::RawKeeps => format!("Raw meat keeps for {most} at most before {step}."),
                    Rule::Feeding => format!("The fire holds {most} at most until {step}."),
                    _ => format!("No more than {most} before {step}."),
                }
            }
            Reason::NotLongAfter { step, most, rule } => {
                let step = self.step(*step);
                let most = formats.span(*most);
                match rule {
                    Rule::Chilling => {
                        format!("What was on the table is chilled within {most} of {step}.")
                    }
                    Rule::Feeding => format!("The fire holds {most} at most after {step}."),
                    _ => format!("No more than {most} after {step}."),
                }
            }
            Reason::Meat { on, after, core } => {
                let core = core.map(|core| {
                    format!(
                        ", when the core is likely to reach {}",
                        formats.temperature(core)
                    )
                });
                format!(
                    "It goes by the meat: {}{}.",
                    self.span(*after, &format!("after {}", self.step(*on))),
                    core.unwrap_or_default()
                )
            }
            Reason::Promise { dish, latest, odds } => {
                let name = self.dish(*dish);
                format!(
                    "{name} is table-ready in time in {}. Put on up to {} it keeps the promise.",
                    format::odds(*odds),
                    formats.time(*latest)
                )
            }
            Reason::HoldLimit { dish, earliest } => format!(
                "{} put on before {} would wait longer than it stays hot and good.",
                self.dish(*dish),
                formats.time(*earliest)
            ),
            Reason::NobodyUp { from, to } => format!(
                "Nobody who may do it is up, {}.",
                formats.from_to(*from, *to)
            ),
            Reason::HandsBusy { who, with } => {
                let who = self.plan.crew.get(who).map_or("", |one| one.name.as_str());
                format!("{who} is busy with {}.", self.step(*with))
            }
            Reason::Full { room, with, .. } => {
                format!(
                    "{} is full, with {} in it.",
                    self.room(*room),
                    self.dish(*with)
                )
            }
            Reason::OneAir {
                cooker,
                with,
                low,
                high,
            } => {
                let cooker = self.plan.cookers.get(cooker);
                format!(
                    "{} has one pit at a time, and {} wants another: {} and {}.",
                    cooker.map_or("The cooker", |cooker| cooker.name.as_str()),
                    self.dish(*with),
                    formats.temperature(*low),
                    formats.temperature(*high)
                )
            }
            Reason::ShopHours => "Shops are taken to be open from nine to seven.".to_owned(),
            Reason::ByDay => "It can be done by day, so it does not keep you up.".to_owned(),
            Reason::Past { now } => {
                format!("It is {} already.", formats.time(*now))
            }
            Reason::Happened { at } => format!("It was done at {}.", formats.time(*at)),
            Reason::Pinned { at } => format!("You pinned it to {}.", formats.time(*at)),
            Reason::PersonsOrder { step } => {
                format!("You want it in this order with {}.", self.step(*step))
            }
            Reason::Best => moves::NOTHING_HOLDS.to_owned(),
        }
    }

    fn before(self, step: StepKey, least: TimeSpan, rule: Rule) -> String {
        let formats = self.formats;
        let other = self.step(step);
        match rule {
            Rule::Salting => format!(
                "Salt needs {} at least before {other}.",
                formats.span(least)
            ),
            Rule::Thawing => format!("It thaws for {} before {other}.", formats.span(least)),
            Rule::SteadyFire => format!(
                "The fire needs {} to burn clean and steady before {other}.",
                formats.span(least)
            ),
            Rule::Rest => format!("The meat rests {} before {other}.", formats.span(least)),
            Rule::Own => format!(
                "You want it over {}.",
                self.span(least, &format!("before {other}"))
            ),
            _ if least < AT_ONCE => format!("It has to be done before {other}."),
            _ => format!("It has to be done {} before {other}.", formats.span(least)),
        }
    }

    fn after(self, step: StepKey, least: TimeSpan, rule: Rule) -> String {
        let formats = self.formats;
        let other = self.step(step);
        match rule {
            Rule::Rest => format!("The meat rests {} after {other}.", formats.span(least)),
            Rule::SteadyFire => format!(
                "The fire needs {} to burn clean and steady after {other}.",
                formats.span(least)
            ),
            Rule::Salting => format!("Salt needs {} at least after {other}.", formats.span(least)),
            Rule::Thawing => format!("It thaws for {} after {other}.", formats.span(least)),
            Rule::Feeding => format!(
                "The fire is fed no sooner than {} after {other}.",
                formats.span(least)
            ),
            Rule::Own => format!(
                "You want it {}.",
                self.span(least, &format!("after {other}"))
            ),
            _ if least < AT_ONCE => format!("It cannot begin before {other} is over."),
            _ => format!(
                "It cannot begin sooner than {} after {other}.",
                formats.span(least)
            ),
        }
    }

    fn dish(self, id: cook_model::handover::identity::DishId) -> String {
        let dish = self.plan.dishes.get(&id);
        dish.map_or_else(|| "a dish".to_owned(), |dish| dish.name.clone())
    }

    fn room(self, room: Room) -> String {
        match room {
            Room::Grate { cooker } => {
                let cooker = self.plan.cookers.get(&cooker);
                cooker.map_or_else(|| "The cooker".to_owned(), |cooker| cooker.name.clone())
            }
            Room::Oven => "The kitchen oven".to_owned(),
            Room::RestBox => "The box that keeps hot".to_owned(),
            Room::Fridge => "The fridge".to_owned(),
        }
    }
}
