//! The rules between steps.

use super::{place_of_on, tasks::own_anchor};
use crate::plan::day::{Day, Placed, habit};
use crate::plan::method::LEAST_SALTING;
use crate::plan::outlook::{Step, StepKind};
use crate::plan::{OwnWhen, StepOf, Thawing, hands, in_order};
use crate::safety::{out_of_fridge_limit, thaw_in_cold_water, thaw_in_fridge};
use crate::schedule::{Link, Rule};
use crate::units::TimeSpan;

/// The longest dry brine. Common practice.
const MOST_SALTING: TimeSpan = TimeSpan::from_hours(48.0);
/// A look at the fire is worth something so long at most. Set by hand.
const LOOKED_AT: TimeSpan = TimeSpan::from_minutes(60.0);
/// Two rounds of spraying are at least so far apart. Set by hand.
const BETWEEN_SPRAYS: TimeSpan = TimeSpan::from_minutes(15.0);
/// A round by the clock may come so much sooner than told. Set by hand.
const SOONER: TimeSpan = TimeSpan::from_minutes(15.0);

pub(super) fn links(day: &Day<'_>, steps: &[Step]) -> Vec<Link> {
    let mut links = Links {
        steps,
        all: Vec::new(),
    };
    for placed in day.placed() {
        links.kitchen(day, placed);
        links.cooking(day, placed);
    }
    links.fires(day);
    links.table(day);
    links.own(day);
    links.all
}

struct Links<'a> {
    steps: &'a [Step],
    all: Vec<Link>,
}

impl Links<'_> {
    fn add(&mut self, sooner: Option<usize>, later: Option<usize>, least: TimeSpan, rule: Rule) {
        self.between(sooner, later, least, None, rule);
    }

    fn between(
        &mut self,
        sooner: Option<usize>,
        later: Option<usize>,
        least: TimeSpan,
        most: Option<TimeSpan>,
        rule: Rule,
    ) {
        if let (Some(sooner), Some(later)) = (sooner, later)
            && sooner != later
        {
            self.all.push(Link {
                sooner,
                later,
                least,
                most,
                rule,
            });
        }
    }

    fn place(&self, placed: &Placed<'_>, kind: StepKind) -> Option<usize> {
        let dish = Some(placed.settled.id);
        self.steps
            .iter()
            .position(|step| step.dish == dish && step.kind == kind)
    }

    fn rounds(&self, of: impl Fn(&Step) -> bool) -> Vec<usize> {
        let mut rounds: Vec<usize> = (0..self.steps.len())
            .filter(|place| of(&self.steps[*place]))
            .collect();
        rounds.sort_by_key(|place| self.steps[*place].round);
        rounds
    }

    fn kitchen(&mut self, day: &Day<'_>, placed: &Placed<'_>) {
        use StepKind as K;
        let Some(method) = placed.settled.cut() else {
            return;
        };
        let on = place_of_on(day, self.steps, placed.settled.id);
        let [buy, thaw, trim, salt, rub] =
            [K::Buy, K::Thaw, K::Trim, K::Salt, K::Rub].map(|kind| self.place(placed, kind));
        let chain = [buy, trim, salt, rub, on];
        let mut last = None;
        for next in chain.into_iter().flatten() {
            self.add(last, Some(next), TimeSpan::ZERO, Rule::Sequence);
            last = Some(next);
        }
        if let Some(thaw) = thaw {
            let frozen = method.all().filter(|piece| piece.frozen);
            let (cut, place) = (method.cut.id, placed.settled.dish.thaw.unwrap_or_default());
            let span = frozen.map(|piece| match place {
                Thawing::Fridge => thaw_in_fridge(cut, piece.mass).least,
                Thawing::ColdWater => thaw_in_cold_water(cut, piece.mass).least,
            });
            let span = span.reduce(TimeSpan::max).unwrap_or(TimeSpan::ZERO);
            self.add(buy, Some(thaw), TimeSpan::ZERO, Rule::Sequence);
            self.add(
                Some(thaw),
                trim.or(salt).or(rub).or(on),
                span,
                Rule::Thawing,
            );
        }
        if method.salt.is_some_and(|salt| salt.liked > TimeSpan::ZERO) {
            let takes = salt.map_or(TimeSpan::ZERO, |salt| self.steps[salt].takes);
            let least = (LEAST_SALTING - takes).max(TimeSpan::ZERO);
            self.between(salt, on, least, Some(MOST_SALTING - takes), Rule::Salting);
        }
    }

    fn cooking(&mut self, day: &Day<'_>, placed: &Placed<'_>) {
        use StepKind as K;
        let dish = Some(placed.settled.id);
        let on = place_of_on(day, self.steps, placed.settled.id);
        let off = self.place(placed, K::Off);
        let slice = self.place(placed, K::Slice);
        let rest = placed.settled.after.rest;
        let takes = off.map_or(TimeSpan::ZERO, |off| self.steps[off].takes);
        match off {
            Some(_) => self.add(off, slice, (rest - takes).max(TimeSpan::ZERO), Rule::Rest),
            None => self.add(on, slice, TimeSpan::ZERO, Rule::Rest),
        }
        let hold = self.place(placed, K::Hold);
        self.add(hold, slice, TimeSpan::ZERO, Rule::Sequence);
        let sprays = self.rounds(|step| step.dish == dish && step.kind == K::Spray);
        if let (Some(first), Some(spray)) = (sprays.first(), placed.settled.dish.spray) {
            let least = (spray.first - SOONER).max(TimeSpan::ZERO);
            self.add(on, Some(*first), least, Rule::SinceOn);
        }
        for pair in sprays.windows(2) {
            self.add(Some(pair[0]), Some(pair[1]), BETWEEN_SPRAYS, Rule::SinceOn);
        }
        let until = self.place(placed, K::Wrap).or(off);
        self.add(
            sprays.last().copied(),
            until,
            TimeSpan::ZERO,
            Rule::Sequence,
        );
    }

    fn fires(&mut self, day: &Day<'_>) {
        use StepKind as K;
        for (id, cooker) in in_order(&day.plan.cookers, |cooker| &cooker.order) {
            let of = |kind| {
                move |step: &Step| {
                    step.cooker == Some(id) && step.kind == kind && step.dish.is_none()
                }
            };
            let on_it = day
                .placed()
                .filter(|placed| placed.on_a_fire().is_some_and(|(on, _)| on == id));
            let mut ons: Vec<usize> = on_it
                .filter_map(|placed| place_of_on(day, self.steps, placed.settled.id))
                .collect();
            ons.sort_by_key(|on| self.steps[*on].when.likely());
            let to_steady = hands::to_steady_fire(cooker.kind);
            for light in self.rounds(of(K::Light)) {
                let lit = self.steps[light].when.likely();
                let least = (to_steady - self.steps[light].takes).max(TimeSpan::ZERO);
                for on in ons
                    .iter()
                    .filter(|on| self.steps[**on].when.likely() >= lit)
                    .copied()
                    .collect::<Vec<_>>()
                {
                    self.add(Some(light), Some(on), least, Rule::SteadyFire);
                }
            }
            for look in self.rounds(of(K::SteadyFire)) {
                let at = self.steps[look].when.likely();
                let on = ons
                    .iter()
                    .copied()
                    .find(|on| self.steps[*on].when.likely() >= at);
                self.between(
                    Some(look),
                    on,
                    TimeSpan::ZERO,
                    Some(LOOKED_AT),
                    Rule::Sequence,
                );
                let lights = self.rounds(of(K::Light));
                let light = lights
                    .into_iter()
                    .rfind(|light| self.steps[*light].when.likely() <= at);
                self.add(light, Some(look), TimeSpan::ZERO, Rule::Sequence);
            }
            let Some(feeding) = habit(cooker) else {
                continue;
            };
            let mut last: Option<usize> = None;
            for feed in self.rounds(of(K::Feed)) {
                let at = self.steps[feed].when.likely();
                // A fire that was let out and lit again begins a new row of rounds.
                let first = ons
                    .iter()
                    .copied()
                    .filter(|on| self.steps[*on].when.likely() <= at);
                let begun = first.max_by_key(|on| self.steps[*on].when.likely());
                let close =
                    last.filter(|last| at - self.steps[*last].when.likely() <= feeding.latest);
                let before = close
                    .or(begun.filter(|on| at - self.steps[*on].when.likely() <= feeding.latest));
                let takes = before.map_or(TimeSpan::ZERO, |before| self.steps[before].takes);
                let least = (feeding.soonest - takes).max(TimeSpan::ZERO);
                self.between(
                    before,
                    Some(feed),
                    least,
                    Some(feeding.latest - takes),
                    Rule::Feeding,
                );
                last = Some(feed);
            }
        }
    }

    fn table(&mut self, day: &Day<'_>) {
        let find = |kind| self.steps.iter().position(|step| step.kind == kind);
        let (serve, chill) = (find(StepKind::Serve), find(StepKind::Chill));
        let takes = serve.map_or(TimeSpan::ZERO, |serve| self.steps[serve].takes);
        let most = out_of_fridge_limit(day.plan.place.air) - takes;
        self.between(serve, chill, TimeSpan::ZERO, Some(most), Rule::Chilling);
    }

    fn own(&mut self, day: &Day<'_>) {
        for place in 0..self.steps.len() {
            let step = &self.steps[place];
            let StepOf::Own(id) = step.key.of else {
                continue;
            };
            let Some(own) = day.plan.own_steps.get(&id) else {
                continue;
            };
            let anchor = own_anchor(day, self.steps, step);
            match own.when {
                OwnWhen::Clock { .. } => {}
                OwnWhen::BeforeServing { span } | OwnWhen::Before { span, .. } => {
                    self.add(Some(place), anchor, span, Rule::Own);
                }
                OwnWhen::AfterServing { span } | OwnWhen::After { span, .. } => {
                    self.add(anchor, Some(place), span, Rule::Own);
                }
            }
        }
    }
}
