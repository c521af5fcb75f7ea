//! Tickets: what hands do, hung at their likely time in somebody's lane.

use super::lane::Hands;
use super::scope::Scope;
use cook_model::plan::outlook::{Outlook, Step};
use cook_model::plan::{Plan, StepKey, StepOf};
use cook_model::units::{Moment, TimeSpan};

/// The same thing for several dishes this close together is done in one go.
const ONE_GO: TimeSpan = TimeSpan::from_minutes(5.0);

/// A ticket: one step, or several that are done in one go, or, in the view of the whole day, a bundle of neighbours.
#[derive(Clone, Debug, PartialEq)]
pub struct Ticket {
    /// The step it is known by.
    pub key: StepKey,
    /// Its steps as places in the outlook's list, in order of likely time.
    pub steps: Vec<usize>,
    /// Whose.
    pub hands: Hands,
    /// Its steps differ in what is done.
    pub bundle: bool,
    /// Where it stands against now.
    pub standing: Standing,
    /// May fall from.
    pub from: Moment,
    /// Likely.
    pub likely: Moment,
    /// May fall until.
    pub to: Moment,
}

/// Where a ticket stands against now.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// Its time is over.
    Past,
    /// The next thing to do.
    Next,
    /// Later.
    Ahead,
}

/// The tickets of the sheet in order of likely time.
#[must_use]
pub fn tickets(plan: &Plan, outlook: &Outlook, scope: &Scope, now: Moment) -> Vec<Ticket> {
    let mut found: Vec<Ticket> = Vec::new();
    for index in &scope.tickets {
        let step = &outlook.steps[*index];
        let hands = Hands::of(step, plan);
        match found
            .iter_mut()
            .rev()
            .find(|ticket| ticket.takes_in(step, hands, outlook))
        {
            Some(ticket) => ticket.add(*index, step),
            None => found.push(Ticket::of(*index, step, hands)),
        }
    }
    if scope.axis.holds(now) {
        let mut next_is_named = false;
        for ticket in &mut found {
            ticket.standing = if ticket.to < now {
                Standing::Past
            } else if next_is_named {
                Standing::Ahead
            } else {
                next_is_named = true;
                Standing::Next
            };
        }
    }
    found
}

impl Ticket {
    fn of(index: usize, step: &Step, hands: Hands) -> Self {
        Self {
            key: step.key,
            steps: vec![index],
            hands,
            bundle: false,
            standing: Standing::Ahead,
            from: step.when.from(),
            likely: step.when.likely(),
            to: step.when.to(),
        }
    }

    fn takes_in(&self, step: &Step, hands: Hands, outlook: &Outlook) -> bool {
        let same = self.hands == hands && self.key.kind == step.kind;
        let of_a_dish = |of| matches!(of, StepOf::Dish(_));
        let new_dish = of_a_dish(step.key.of)
            && of_a_dish(self.key.of)
            && self
                .steps
                .iter()
                .all(|index| outlook.steps[*index].dish != step.dish);
        same && new_dish && step.when.likely() - self.likely <= ONE_GO
    }

    fn add(&mut self, index: usize, step: &Step) {
        self.steps.push(index);
        self.from = self.from.min(step.when.from());
        self.to = self.to.max(step.when.to());
    }

    /// Several tickets as one, known by the first and in its lane. None for none.
    #[must_use]
    pub fn bundled(tickets: &[Self]) -> Option<Self> {
        let (first, others) = tickets.split_first()?;
        let mut bundle = first.clone();
        for other in others {
            bundle.steps.extend(&other.steps);
            bundle.from = bundle.from.min(other.from);
            bundle.to = bundle.to.max(other.to);
            bundle.bundle = true;
            if other.hands == Hands::Nobody {
                bundle.hands = Hands::Nobody;
            }
            bundle.standing = match (bundle.standing, other.standing) {
                (Standing::Next, _) | (_, Standing::Next) => Standing::Next,
                (Standing::Past, Standing::Past) => Standing::Past,
                _ => Standing::Ahead,
            };
        }
        Some(bundle)
    }
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, at};
    use super::*;
    use cook_model::plan::outlook::StepKind;

    fn laid(sample: &Sample, now: &str) -> Vec<Ticket> {
        let scope = Scope::of(&sample.outlook, &sample.zone, at(now), false);
        tickets(&sample.plan, &sample.outlook, &scope, at(now))
    }

    /// The second spray of the pork is its second round.
    fn number_sprays(sample: &mut Sample) {
        if let Some(last) = sample.outlook.steps.last_mut() {
            last.round = 2;
        }
        sample.name_steps();
    }

    fn day() -> Sample {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        let who = Some(sample.crew("Joss"));
        let cooker = Some(sample.cooker("Offset"));
        let pork = Some(sample.dish("Pork", cooker, "2026-09-12T05:00:00"));
        let lamb = Some(sample.dish("Lamb", cooker, "2026-09-12T08:00:00"));
        for (kind, dish, time) in [
            (StepKind::On, pork, "2026-09-12T05:00:00"),
            (StepKind::Spray, pork, "2026-09-12T10:00:00"),
            (StepKind::Spray, lamb, "2026-09-12T10:04:00"),
            (StepKind::Turn, lamb, "2026-09-12T10:04:00"),
            (StepKind::Spray, pork, "2026-09-12T10:05:00"),
        ] {
            let step = sample.step(kind, time, 10.0);
            step.who = who;
            step.dish = dish;
        }
        number_sprays(&mut sample);
        sample
    }

    #[test]
    fn the_same_thing_for_two_dishes_is_one_ticket_but_never_two_rounds_of_one_dish() {
        let sample = day();
        let found = laid(&sample, "2026-09-05T12:00:00");
        let sizes: Vec<_> = found
            .iter()
            .map(|ticket| (ticket.key.kind, ticket.steps.len()))
            .collect();
        assert_eq!(
            sizes,
            [
                (StepKind::On, 1),
                (StepKind::Spray, 2),
                (StepKind::Turn, 1),
                (StepKind::Spray, 1),
            ]
        );
        assert_eq!(found[1].from, at("2026-09-12T09:50:00"));
        assert_eq!(found[1].to, at("2026-09-12T10:14:00"));
    }

    #[test]
    fn the_day_has_one_next_ticket_once_it_runs() {
        let sample = day();
        let standing = |now| {
            let found = laid(&sample, now);
            found
                .iter()
                .map(|ticket| ticket.standing)
                .collect::<Vec<_>>()
        };
        assert_eq!(standing("2026-09-05T12:00:00"), [Standing::Ahead; 4]);
        use Standing::{Ahead, Next, Past};
        assert_eq!(standing("2026-09-12T10:00:00"), [Past, Next, Ahead, Ahead]);
    }

    #[test]
    fn a_bundle_spans_its_tickets_and_loses_none() {
        let sample = day();
        let found = laid(&sample, "2026-09-12T10:00:00");
        let bundle = Ticket::bundled(&found).expect("tickets");
        assert_eq!(bundle.steps.len(), 5);
        assert!(bundle.bundle);
        assert_eq!(bundle.standing, Standing::Next);
        assert_eq!(bundle.key, found[0].key);
        assert_eq!(Ticket::bundled(&[]), None);
    }
}
