//! Everything that is said about a step: on its ticket, in the Dock, and to a screen reader.

use super::lane::Hands;
use super::reason::Reason;
use super::ticket::Ticket;
use crate::format::{ClockStyle, Formats, odds as odds_said, rounded};
use crate::words::safety::{self, RuleSaid};
use crate::words::{capital, moves, reasons, run_sheet as words, steps as verbs};
use cook_model::plan::Plan;
use cook_model::plan::outlook::{Odds, Outlook, Step, StepKind, Window};
use cook_model::safety::RuleId;
use cook_model::schedule::Pin;
use cook_model::units::Moment;
use std::collections::BTreeSet;

/// A dish as it is marked: letter and hue.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct MarkOf {
    /// Its letter.
    pub letter: char,
    /// Its hue, 1 to 5.
    pub hue: u8,
}

/// What stands on a ticket.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Face {
    /// The dishes; none where a bundle is for several.
    pub marks: Vec<MarkOf>,
    /// What is done, ten letters at most.
    pub verb: String,
    /// The same in a shut lane, eight letters at most.
    pub stub: String,
    /// When it may fall, where it is pinned, or that nobody is up for it.
    pub when: String,
    /// Where it is pinned.
    pub pin: Option<Moment>,
    /// Its pin collides, or it breaks a promise.
    pub heed: bool,
    /// What else a screen reader says after what is done.
    pub said: String,
}

/// What the Dock says about a step.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Facts {
    /// The dish.
    pub mark: Option<MarkOf>,
    /// What is done, in full.
    pub what: String,
    /// For which dish or at which cooker; empty where neither is meant.
    pub with: String,
    /// When it may fall.
    pub when: String,
    /// When it is likely; none where it does not vary.
    pub likely: Option<String>,
    /// Who, and for how long.
    pub hands: String,
    /// Nobody is up for it.
    pub unmanned: bool,
    /// Why it stands there.
    pub reason: String,
    /// How much, where there is an amount.
    pub amount: Option<String>,
    /// Cautions, the gravest first.
    pub cautions: Vec<Caution>,
    /// Questions that come up at such a step, by their keys.
    pub asks: &'static [&'static str],
}

/// A caution of a step.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Caution {
    /// What it says.
    pub rule: RuleSaid,
    /// An earlier step said it already.
    pub before: bool,
}

/// What stands on a ticket.
#[must_use]
pub fn face(ticket: &Ticket, plan: &Plan, outlook: &Outlook, formats: &Formats) -> Face {
    let steps = || ticket.steps.iter().map(|index| &outlook.steps[*index]);
    let mut marks = Vec::new();
    for mark in steps().filter_map(|step| mark(step, outlook)) {
        if !marks.contains(&mark) {
            marks.push(mark);
        }
    }
    let kind = ticket.key.kind;
    let (verb, stub) = match (ticket.bundle, marks.len()) {
        (true, dishes) => {
            // A bundle for several dishes is no one's in particular.
            if dishes > 1 {
                marks.clear();
            }
            let count = words::bundle(ticket.steps.len());
            (count.clone(), count)
        }
        // The marks take the room of a longer word.
        (false, 2..) => (
            capital(verbs::on_stub(kind)),
            verbs::on_stub(kind).to_owned(),
        ),
        (false, _) => (
            verbs::on_ticket(kind).to_owned(),
            verbs::on_stub(kind).to_owned(),
        ),
    };
    let said: Vec<String> = steps()
        .map(|step| said(step, ticket.bundle, plan, outlook, formats))
        .collect();
    let pin = steps().find_map(|step| plan.steps.get(&step.key)?.pin);
    let collides = steps().any(|step| matches!(step.pin, Pin::Collides { .. }));
    let late = steps().find_map(|step| late(step, outlook));
    Face {
        marks,
        verb,
        stub,
        when: match ticket.hands {
            Hands::Nobody => words::NOBODY_UP.to_owned(),
            Hands::Member(_) | Hands::Anybody => match (late, pin) {
                (Some(odds), _) => odds_said(odds),
                (None, Some(_)) => moves::pinned(ticket.likely, formats),
                (None, None) => short_window(ticket.from, ticket.to, formats),
            },
        },
        pin: pin.filter(|_| !ticket.bundle),
        heed: collides || late.is_some(),
        said: said.join(". "),
    }
}

/// The odds of a dish that is put on too late for its promise.
fn late(step: &Step, outlook: &Outlook) -> Option<Odds> {
    let lattice = &outlook.lattice;
    let mut dishes = lattice.dishes.iter();
    let spans = dishes.find(|spans| lattice.tasks[spans.on].key == step.key)?;
    let on = lattice.tasks[spans.on].begins;
    let odds = spans.odds(on, lattice.serving);
    (on > spans.latest_on && odds.kept < spans.wanted).then_some(odds)
}

/// What the Dock says about a step.
#[must_use]
pub fn facts(step: &Step, plan: &Plan, outlook: &Outlook, formats: &Formats) -> Facts {
    Facts {
        mark: mark(step, outlook),
        what: what(step, plan),
        with: words::with_round(&with(step, plan), step.round),
        when: when(&step.when, formats),
        likely: varies(&step.when).then(|| formats.time(rounded(&step.when)[1])),
        hands: hands(step, plan, formats),
        unmanned: is_unmanned(step, plan),
        reason: reasons::reason(Reason::of(step, outlook), formats),
        amount: step.amount.map(|amount| match step.kind {
            StepKind::Salt => words::of_salt(&formats.mass(amount)),
            _ => formats.mass(amount),
        }),
        cautions: cautions(step, outlook, formats),
        asks: asks(step.kind),
    }
}

fn what(step: &Step, plan: &Plan) -> String {
    let dish = step.dish.and_then(|id| plan.dishes.get(&id));
    verbs::in_full(step.kind, dish).to_owned()
}

fn with(step: &Step, plan: &Plan) -> String {
    let dish = step.dish.and_then(|id| plan.dishes.get(&id));
    let cooker = step.cooker.and_then(|id| plan.cookers.get(&id));
    match (dish, cooker) {
        (Some(dish), _) => dish.name.clone(),
        (None, Some(cooker)) => cooker.name.clone(),
        (None, None) => String::new(),
    }
}

fn is_unmanned(step: &Step, plan: &Plan) -> bool {
    step.who.is_none() && !plan.crew.is_empty()
}

fn hands(step: &Step, plan: &Plan, formats: &Formats) -> String {
    let who = step.who.and_then(|id| plan.crew.get(&id));
    let who = match who {
        Some(member) => Some(member.name.as_str()),
        None => (!plan.crew.is_empty()).then_some(words::NOBODY_UP),
    };
    words::hands(who, step.takes, formats)
}

fn mark(step: &Step, outlook: &Outlook) -> Option<MarkOf> {
    let mut dishes = outlook.dishes.iter();
    let seen = dishes.find(|seen| Some(seen.dish) == step.dish)?;
    Some(MarkOf {
        letter: seen.letter,
        hue: seen.hue,
    })
}

fn varies(window: &Window) -> bool {
    let [from, _, to] = rounded(window);
    from != to
}

/// A window with its day: `Sat 08:10–09:30`; one time where it does not vary.
fn when(window: &Window, formats: &Formats) -> String {
    let [from, likely, _] = rounded(window);
    let day = formats.weekday(from);
    if varies(window) {
        format!("{day} {}", formats.window(window))
    } else {
        format!("{day} {}", formats.time(likely))
    }
}

/// A window as short as it can be said on a ticket: the axis beside it tells morning from afternoon.
fn short_window(from: Moment, to: Moment, formats: &Formats) -> String {
    let mut window = Window::at(from);
    window.deciles[8] = to;
    let [from, _, to] = rounded(&window);
    let digits = |moment| {
        let time = formats.zone.local(moment).time();
        formats.clock.digits(time)
    };
    match (from == to, formats.clock) {
        (true, ClockStyle::Hours12) => formats.time(from),
        (true, ClockStyle::Hours24) => digits(from),
        (false, _) => format!("{}–{}", digits(from), digits(to)),
    }
}

/// A step in one sentence: what is done is said again where it does not stand on the ticket.
fn said(step: &Step, what_too: bool, plan: &Plan, outlook: &Outlook, formats: &Formats) -> String {
    let told = facts(step, plan, outlook, formats);
    let what = if what_too { told.what.as_str() } else { "" };
    let when = words::may_fall(&step.when, formats);
    words::step(what, &told.with, &when, &told.hands)
}

/// The questions that come up at a kind of step.
const fn asks(kind: StepKind) -> &'static [&'static str] {
    match kind {
        StepKind::Thaw => &["thaw_in_time"],
        StepKind::Probe | StepKind::ProbeIn => &["odd_reading"],
        StepKind::Hold => &["can_it_wait"],
        StepKind::Serve => &["left_out"],
        StepKind::Chill => &["cool_it_down", "heat_it_up"],
        _ => &[],
    }
}

/// Each caution is said at the first step of the day that has it, and stays readable at the others.
fn cautions(step: &Step, outlook: &Outlook, formats: &Formats) -> Vec<Caution> {
    let earlier = outlook.steps.iter().take_while(|other| *other != step);
    let said: BTreeSet<&String> = earlier.flat_map(|other| &other.cautions).collect();
    let ids = step
        .cautions
        .iter()
        .filter_map(|slug| Some((slug, slug.parse::<RuleId>().ok()?)));
    ids.map(|(slug, id)| Caution {
        rule: safety::rule(id, formats),
        before: said.contains(slug),
    })
    .collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, at, formats};
    use super::super::scope::Scope;
    use super::super::ticket::tickets;
    use super::*;
    use cook_model::units::{Mass, TimeSpan};

    fn wrapped() -> Sample {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        let who = sample.crew("Joss");
        let cooker = sample.cooker("Offset");
        let dish = sample.dish("Pork butts", Some(cooker), "2026-09-12T00:30:00");
        let step = sample.step(StepKind::Wrap, "2026-09-12T08:50:00", 40.0);
        step.dish = Some(dish);
        step.who = Some(who);
        step.takes = TimeSpan::from_minutes(10.0);
        step.cautions = vec![RuleId::HotSurfaces.slug().to_owned(), "gone".to_owned()];
        sample
    }

    fn first_face(sample: &Sample, formats: &Formats) -> Face {
        let now = at("2026-09-05T12:00:00");
        let scope = Scope::of(&sample.outlook, &sample.zone, now, true);
        let found = tickets(&sample.plan, &sample.outlook, &scope, now);
        face(&found[0], &sample.plan, &sample.outlook, formats)
    }

    #[test]
    fn a_ticket_says_what_when_and_to_a_reader_all_of_it() {
        let face = first_face(&wrapped(), &formats());
        assert_eq!(face.verb, "Wrap");
        assert_eq!(face.when, "08:10–09:30");
        assert_eq!(
            face.marks,
            [MarkOf {
                letter: 'A',
                hue: 1
            }]
        );
        assert_eq!(
            face.said,
            "Pork butts, Sat, likely at 08:50, may fall from 08:10 to 09:30, Joss, 10\u{a0}min"
        );
    }

    #[test]
    fn a_clock_of_twelve_hours_is_short_on_the_ticket_and_whole_for_a_reader() {
        let formats = Formats {
            clock: ClockStyle::Hours12,
            ..formats()
        };
        let face = first_face(&wrapped(), &formats);
        assert_eq!(face.when, "8:10–9:30");
        assert!(face.said.contains("8:50\u{a0}am"));
    }

    #[test]
    fn the_dock_has_hands_reason_and_cautions_with_their_source() {
        let sample = wrapped();
        let step = &sample.outlook.steps[0];
        let said = facts(step, &sample.plan, &sample.outlook, &formats());
        assert_eq!(said.when, "Sat 08:10–09:30");
        assert_eq!(said.likely.as_deref(), Some("08:50"));
        assert_eq!(said.hands, "Joss, 10\u{a0}min");
        assert_eq!(said.cautions.len(), 1);
        let rule = &said.cautions[0].rule;
        assert!(!rule.words.is_empty() && !rule.sources.is_empty());
        assert!(!rule.words.contains('{') && !rule.condition.contains('{'));
        assert!(!said.cautions[0].before);
    }

    #[test]
    fn a_caution_is_said_once_and_stays_readable() {
        let mut sample = wrapped();
        let later = sample.step(StepKind::Turn, "2026-09-12T10:00:00", 0.0);
        later.cautions = vec![
            RuleId::HotSurfaces.slug().to_owned(),
            RuleId::CleanBoard.slug().to_owned(),
        ];
        let step = &sample.outlook.steps[1];
        let said = facts(step, &sample.plan, &sample.outlook, &formats());
        let before: Vec<_> = said
            .cautions
            .iter()
            .map(|caution| (caution.rule.id, caution.before))
            .collect();
        assert_eq!(
            before,
            [(RuleId::HotSurfaces, true), (RuleId::CleanBoard, false)]
        );
    }

    #[test]
    fn a_step_that_nobody_is_up_for_says_so() {
        let mut sample = wrapped();
        sample.outlook.steps[0].who = None;
        let step = &sample.outlook.steps[0];
        let said = facts(step, &sample.plan, &sample.outlook, &formats());
        assert!(said.unmanned);
        assert_eq!(said.hands, "nobody up, 10\u{a0}min");
        sample.plan.crew.clear();
        let said = facts(step, &sample.plan, &sample.outlook, &formats());
        assert!(!said.unmanned);
        assert_eq!(said.hands, "10\u{a0}min of hands");
    }

    #[test]
    fn salt_has_its_weight_and_rounds_their_number() {
        let mut sample = wrapped();
        let salt = sample.step(StepKind::Salt, "2026-09-11T17:00:00", 0.0);
        salt.amount = Some(Mass::from_grams(115.0));
        salt.round = 2;
        let step = &sample.outlook.steps[1];
        let said = facts(step, &sample.plan, &sample.outlook, &formats());
        assert_eq!(said.amount.as_deref(), Some("115\u{a0}g of salt"));
        assert_eq!(said.with, "round 2");
        assert_eq!(said.likely, None);
        assert_eq!(said.when, "Fri 17:00");
    }

    #[test]
    fn several_dishes_in_one_go_have_all_their_marks() {
        let mut sample = wrapped();
        let cooker = sample.plan.cookers.keys().next().copied();
        let lamb = sample.dish("Lamb", cooker, "2026-09-12T02:30:00");
        let who = sample.outlook.steps[0].who;
        let step = sample.step(StepKind::Wrap, "2026-09-12T08:53:00", 40.0);
        step.dish = Some(lamb);
        step.who = who;
        sample.name_steps();
        let face = first_face(&sample, &formats());
        let letters: String = face.marks.iter().map(|mark| mark.letter).collect();
        assert_eq!(letters, "AB");
        assert!(face.said.contains("Pork butts") && face.said.contains("Lamb"));
    }
}
