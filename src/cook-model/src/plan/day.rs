//! The day as far as it is worked out: every dish placed on the clock, with its members.

use super::derive::PieceNews;
use super::member::Member;
use super::method::{Kind, Settled};
use super::outlook::{Hindrance, Odds, StepKind, Window};
use super::put_on::{PutOn, aim, needed, next_round_time, put_on};
use super::situation::Situation;
use super::up::{Crew, Stretch};
use super::window::{LONGEST_COOK, window};
use super::{Cooker, OwnPlace, Plan, StepKey, hands};
use crate::forecast::DishForecast;
use crate::handover::identity::{CookerId, DishId};
use crate::provisions::fuel::{Feeding, feeding};
use crate::units::{Moment, TimeSpan};

/// A fire that has to be fed at least this often is minded by somebody who is awake. Set by hand: offset, kettle and
/// drum, not the cookers that hold themselves through a night.
const MINDED: TimeSpan = TimeSpan::from_hours(6.0);

/// What hands wanted while nobody is up count for, in minutes of a fire left alone. Set by hand.
const WAKING: u32 = 30;

/// The day of a plan.
pub(super) struct Day<'a> {
    pub(super) plan: &'a Plan,
    pub(super) situation: &'a Situation,
    pub(super) crew: Crew<'a>,
    /// In the person's order.
    pub(super) dishes: Vec<Today<'a>>,
}

/// One dish of it.
pub(super) struct Today<'a> {
    pub(super) id: DishId,
    pub(super) placed: Result<Placed<'a>, Hindrance>,
}

/// A dish with its place on the clock.
#[derive(Clone)]
pub(super) struct Placed<'a> {
    pub(super) settled: Settled<'a>,
    pub(super) cooker: Option<(CookerId, &'a Cooker)>,
    /// The forecasts of its pieces; none for a dish of one's own.
    pub(super) pieces: Vec<&'a DishForecast>,
    pub(super) members: Vec<Member>,
    pub(super) span: PutOn,
    pub(super) on: Moment,
    /// It is on already, by the journal.
    pub(super) is_on: bool,
    /// What was logged of its pieces, where the forecasts rest on that.
    pub(super) news: Vec<PieceNews<'a>>,
}

/// How often this cooker is fed: as usual for its kind, stretched to what the person says of it.
pub(super) fn habit(cooker: &Cooker) -> Option<Feeding> {
    let usual = feeding(cooker.kind)?;
    let Some(every) = cooker.feed_every else {
        return Some(usual);
    };
    let stretched = every / usual.every;
    Some(Feeding {
        every,
        soonest: usual.soonest * stretched,
        latest: usual.latest * stretched,
        ..usual
    })
}

/// Whether a cooker's fire is minded all the time.
pub(super) fn is_minded(cooker: &Cooker) -> bool {
    let usual = || habit(cooker).is_some_and(|feeding| feeding.latest <= MINDED);
    cooker.holds_itself.map_or_else(usual, |holds| !holds)
}

impl<'a> Placed<'a> {
    /// Places a dish on the clock.
    pub(super) fn new(
        plan: &'a Plan,
        situation: &Situation,
        crew: &Crew<'_>,
        settled: Settled<'a>,
        pieces: Vec<&'a DishForecast>,
        members: Vec<Member>,
    ) -> Result<Self, Hindrance> {
        let never_ready = Hindrance::NeverReady {
            limit: LONGEST_COOK,
        };
        let ready = members.iter().filter(|member| member.ready.is_some());
        if ready.count() * 2 <= members.len() {
            return Err(never_ready);
        }
        let serving = plan.serving.moment();
        let span = put_on(&members, settled.after, serving, plan.promise).ok_or(never_ready)?;
        let cooker = settled
            .dish
            .cooker
            .and_then(|id| Some((id, plan.cookers.get(&id)?)));
        let mut placed = Self {
            settled,
            cooker,
            pieces,
            members,
            span,
            on: span.latest,
            is_on: false,
            news: Vec::new(),
        };
        match situation.went_on().remove(&placed.settled.id) {
            Some(on) => (placed.on, placed.is_on) = (on, true),
            None => {
                let pinned = plan.pinned(placed.on_key());
                placed.on = pinned.unwrap_or_else(|| placed.aimed(situation.now, crew));
            }
        }
        Ok(placed)
    }

    /// The step that puts it on; a dish of one's own is made.
    pub(super) fn on_key(&self) -> StepKey {
        let kind = match &self.settled.kind {
            Kind::Cut(_) => StepKind::On,
            Kind::Own(_) => StepKind::Make,
        };
        StepKey::dish(self.settled.id, kind)
    }

    fn aimed(&self, now: Moment, crew: &Crew<'_>) -> Moment {
        let likely = |time: fn(&Member) -> Option<TimeSpan>| {
            let start = Moment::from_unix_seconds(0);
            let window = window(start, self.members.iter().map(time))?;
            Some(window.likely() - start)
        };
        let ready = likely(|member| member.ready).unwrap_or(LONGEST_COOK);
        let wrapped = likely(|member| member.wrapped);
        let lit_before = self.on_a_fire().map_or(TimeSpan::ZERO, |(_, cooker)| {
            hands::to_steady_fire(cooker.kind)
        });
        let minded = self
            .on_a_fire()
            .is_some_and(|(_, cooker)| is_minded(cooker));
        let rub = self.settled.cut().map_or(TimeSpan::ZERO, |method| {
            hands::rub(method.cut, method.all())
        });
        let trouble = |on: Moment| {
            let lit = on - lit_before;
            let hands_at = [
                Some(on - rub),
                Some(lit),
                Some(on),
                wrapped.map(|span| on + span),
                Some(on + ready),
            ];
            let asleep = |moment: &Moment| !crew.somebody_up(*moment);
            let wakings = hands_at.into_iter().flatten().filter(asleep).count();
            let off = on + ready;
            let alone = if minded {
                crew.nobody_up(Stretch { from: lit, to: off }).minutes()
            } else {
                0.0
            };
            #[expect(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                reason = "minutes of a cook"
            )]
            let alone = alone as u32;
            alone + WAKING * u32::try_from(wakings).unwrap_or(0)
        };
        let soonest = next_round_time(now);
        aim(self.span, soonest, trouble)
    }

    /// The cooker, where the dish is on one.
    pub(super) fn on_a_fire(&self) -> Option<(CookerId, &'a Cooker)> {
        let kitchen = matches!(&self.settled.kind, Kind::Own(own) if own.place != OwnPlace::Cooker);
        self.cooker.filter(|_| !kitchen)
    }

    /// The window of a time that every member has, or is late with.
    pub(super) fn window(&self, time: impl Fn(&Member) -> Option<TimeSpan>) -> Option<Window> {
        window(self.on, self.members.iter().map(time))
    }

    /// The window of something on the way that half of the members or more come to. A member that comes off without it
    /// counts with the moment at which it comes off, so that no window on the way is later than that of coming off.
    pub(super) fn window_on_the_way(
        &self,
        time: impl Fn(&Member) -> Option<TimeSpan>,
    ) -> Option<Window> {
        let come = self.members.iter().filter(|member| time(member).is_some());
        if come.count() * 2 < self.members.len() {
            return None;
        }
        self.window(|member| match (time(member), member.ready) {
            (Some(time), Some(ready)) => Some(time.min(ready)),
            (time, ready) => time.or(ready),
        })
    }

    /// Ready to come off.
    pub(super) fn ready(&self) -> Window {
        let ready = self.window(|member| member.ready);
        ready.unwrap_or(Window::at(self.on + LONGEST_COOK))
    }

    /// Table-ready in the world of a member. None if never.
    pub(super) fn table_ready(&self, member: usize) -> Option<Moment> {
        let span = self.members.get(member)?.table_ready(self.settled.after)?;
        Some(self.on + span)
    }

    /// Table-ready by serving.
    pub(super) fn odds(&self, serving: Moment) -> Odds {
        let of = self.members.len();
        let in_time = |member: &usize| self.table_ready(*member).is_some_and(|at| at <= serving);
        counted((0..of).filter(in_time).count(), of)
    }

    /// Whether the promise is kept.
    pub(super) fn keeps_promise(&self, plan: &Plan) -> bool {
        let odds = self.odds(plan.serving.moment());
        odds.kept as usize >= needed(plan.promise, self.members.len())
    }
}

/// Odds from counts of members.
pub(super) fn counted(kept: usize, of: usize) -> Odds {
    let count = |number: usize| u32::try_from(number).unwrap_or(u32::MAX);
    Odds {
        kept: count(kept),
        of: count(of),
    }
}

impl<'a> Day<'a> {
    /// The dishes that are placed, in the person's order.
    pub(super) fn placed(&self) -> impl Iterator<Item = &Placed<'a>> {
        self.dishes
            .iter()
            .filter_map(|dish| dish.placed.as_ref().ok())
    }

    /// Members that all placed dishes have.
    pub(super) fn members(&self) -> usize {
        let fewest = self.placed().map(|placed| placed.members.len()).min();
        fewest.unwrap_or(0)
    }
}
