//! One derivation under way.
//!
//! A pit programme that goes by one dish changes the air of another, and with it when that other goes on. So the dishes
//! are placed with a few members first, the programmes are written out anew for those places, and so on until nothing
//! moves; then the forecasts are widened to all members.

use super::SEED;
use super::hindrance::settle;
use super::live::PieceNews;
use super::shelf::{Grain, Place, Shelf};
use crate::forecast::{CHUNK, DishForecast, time_quantile};
use crate::handover::identity::{DishId, PieceId};
use crate::live::{self, PieceLog, Reforecast, UnderWay};
use crate::physics::{ModelError, PitChange, Scenario};
use crate::plan::day::{Day, Placed, Today};
use crate::plan::ensemble::{members_of_cut, members_of_own, reaches};
use crate::plan::method::{Kind, Settled};
use crate::plan::outlook::Hindrance;
use crate::plan::programme::{hottest, pit_of_dish};
use crate::plan::role::Roles;
use crate::plan::scenario::scenario;
use crate::plan::situation::Situation;
use crate::plan::up::Crew;
use crate::plan::{PitWhen, Plan, Problem, check, in_order};
use crate::units::Moment;
use std::collections::BTreeMap;

/// Members while the programmes are still being written out.
const FEW: u32 = 16;
/// Programmes that still move after so many rounds are left as they are.
const MOST_ROUNDS: u32 = 4;

/// Fewer members than this learn nothing from readings.
const LEAST: u32 = 16;

/// A derivation: a plan in its situation, and the forecasts that it wants.
#[derive(Debug)]
pub(super) struct Work {
    plan: Plan,
    situation: Situation,
    on: BTreeMap<DishId, Moment>,
    problems: Vec<Problem>,
    roles: Roles,
    members: u32,
    grain: Grain,
    rounds: u32,
    settled: bool,
    pits: BTreeMap<DishId, Vec<PitChange>>,
    wanted: Vec<(DishId, PieceId, Place)>,
    under_way: Option<UnderWayNow>,
}

/// The forecast of everything that is on, by what was logged.
#[derive(Debug)]
struct UnderWayNow {
    of: Vec<(DishId, PieceId, PieceLog)>,
    reforecast: Reforecast,
    refused: Option<ModelError>,
}

impl Work {
    pub(super) fn new(
        plan: Plan,
        situation: Situation,
        (members, grain): (u32, Grain),
        shelf: &mut Shelf,
    ) -> Self {
        let members = members.max(CHUNK).next_multiple_of(CHUNK);
        let mut work = Self {
            problems: check(&plan, situation.now),
            settled: !dishes_move_each_other(&plan),
            roles: Roles::of(&plan),
            on: situation.went_on(),
            plan,
            situation,
            members,
            grain,
            rounds: 0,
            pits: BTreeMap::new(),
            wanted: Vec::new(),
            under_way: None,
        };
        work.pits = work.pits_of(|_| None, |_, _| None);
        work.wanted = work.wants(shelf);
        work
    }

    /// Does the next chunk of work. True when there is none left.
    pub(super) fn step(&mut self, shelf: &mut Shelf) -> bool {
        let goal = if self.settled {
            self.members
        } else {
            self.members.min(FEW)
        };
        let behind = self
            .wanted
            .iter()
            .map(|(dish, _, place)| (*dish, *place))
            .filter(|(dish, place)| !shelf.has(*place, self.goal_of(*dish, goal)))
            .min_by_key(|(_, place)| shelf.members(*place));
        if let Some((dish, place)) = behind {
            shelf.step(place, self.goal_of(dish, goal));
            return false;
        }
        if self.settled {
            return self.step_under_way(shelf);
        }
        self.rounds += 1;
        let pits = self.pits_by(&self.day(shelf));
        if pits == self.pits || self.rounds >= MOST_ROUNDS {
            self.settled = true;
        } else {
            self.pits = pits;
            self.wanted = self.wants(shelf);
        }
        false
    }

    /// Members wanted of a dish: fewer where it is on and its forecast goes by what was logged.
    fn goal_of(&self, dish: DishId, goal: u32) -> u32 {
        if self.is_on(dish) {
            goal.min(live::MEMBERS)
        } else {
            goal
        }
    }

    fn is_on(&self, dish: DishId) -> bool {
        self.on.contains_key(&dish)
    }

    /// Does the next chunk of the forecast by what was logged. True when there is none left.
    fn step_under_way(&mut self, shelf: &Shelf) -> bool {
        if self.under_way.is_none() {
            self.under_way = self.begin_under_way(shelf);
        }
        let Some(now) = &mut self.under_way else {
            return true;
        };
        match now.reforecast.step() {
            Ok(done) => done,
            Err(refused) => {
                now.refused = Some(refused);
                true
            }
        }
    }

    /// None where nothing is on.
    fn begin_under_way(&self, shelf: &Shelf) -> Option<UnderWayNow> {
        let mut of = Vec::new();
        let mut under_way = Vec::new();
        for (dish, piece, place) in &self.wanted {
            let cooker = self.plan.dishes.get(dish).and_then(|dish| dish.cooker);
            let log = cooker
                .filter(|_| shelf.refused(*place).is_none())
                .and_then(|cooker| {
                    let Situation { journal, now, .. } = &self.situation;
                    PieceLog::of(journal, *dish, *piece, cooker, *now)
                });
            if let Some(log) = log {
                of.push((*dish, *piece, log.clone()));
                let dish = shelf.scenario(*place).clone();
                under_way.push(UnderWay { dish, log });
            }
        }
        let passes = if self.members < live::MEMBERS {
            1
        } else {
            live::PASSES
        };
        let members = self.members.clamp(LEAST, live::MEMBERS);
        (!of.is_empty()).then(|| UnderWayNow {
            of,
            reforecast: Reforecast::new(under_way, members, passes, SEED, self.grain.settings()),
            refused: None,
        })
    }

    /// Whether every forecast has its first members, or never will.
    pub(super) fn has_begun(&self, shelf: &Shelf) -> bool {
        self.wanted.iter().all(|(_, _, place)| shelf.has(*place, 1))
    }

    /// The day as far as the forecasts are.
    pub(super) fn day<'a>(&'a self, shelf: &'a Shelf) -> Day<'a> {
        let crew = Crew::of(&self.plan, &self.situation.zone);
        let dishes = in_order(&self.plan.dishes, |dish| &dish.order);
        let dishes = dishes
            .into_iter()
            .map(|(id, _)| Today {
                id,
                placed: self.place(id, &crew, shelf),
            })
            .collect();
        Day {
            plan: &self.plan,
            situation: &self.situation,
            crew,
            dishes,
        }
    }

    fn settled(&self, id: DishId) -> Result<Settled<'_>, Hindrance> {
        let dish = self.plan.dishes.get(&id).ok_or(Hindrance::NoPieces)?;
        settle(&self.plan, id, dish, &self.problems)
    }

    pub(super) fn place<'a>(
        &'a self,
        id: DishId,
        crew: &Crew<'_>,
        shelf: &'a Shelf,
    ) -> Result<Placed<'a>, Hindrance> {
        let settled = self.settled(id)?;
        let mut forecasts = Vec::new();
        let mut news = Vec::new();
        for (_, piece, place) in self.wanted.iter().filter(|(dish, ..)| *dish == id) {
            if let Some(refused) = shelf.refused(*place) {
                return Err(Hindrance::OutOfRange {
                    message: refused.to_string(),
                });
            }
            let before = shelf.forecast(*place);
            let live = self.piece_news(id, *piece, before)?;
            forecasts.push(live.as_ref().map_or(before, |(now, _)| *now));
            news.extend(live.map(|(_, news)| news));
        }
        let members = match &settled.kind {
            Kind::Cut(method) => members_of_cut(&settled, method, &forecasts, self.plan.audience),
            Kind::Own(own) => {
                let owner = self.roles.own(id).ok_or(Hindrance::NoPieces)?;
                members_of_own(&settled, *own, owner, self.members, SEED)
            }
        };
        let placed = Placed::new(
            &self.plan,
            &self.situation,
            crew,
            settled,
            forecasts,
            members,
        )?;
        Ok(Placed { news, ..placed })
    }

    /// The plan.
    pub(super) const fn plan(&self) -> &Plan {
        &self.plan
    }

    /// The forecasts of the pieces of a dish that is on, if its cook went on otherwise from now. None where there are
    /// none, or where that leads outside the model.
    pub(super) fn what_if(
        &self,
        dish: DishId,
        change: impl Fn(&mut Scenario),
    ) -> Option<Vec<DishForecast>> {
        let now = self.under_way.as_ref()?;
        let pieces = now.of.iter().enumerate().filter(|(_, of)| of.0 == dish);
        pieces
            .map(|(place, _)| now.reforecast.what_if(place, &change).ok().flatten())
            .collect()
    }

    /// The forecast of a piece that is on, and what it rests on. None before it is on, or before that forecast is made.
    fn piece_news<'a>(
        &'a self,
        dish: DishId,
        piece: PieceId,
        before: &'a DishForecast,
    ) -> Result<Option<(&'a DishForecast, PieceNews<'a>)>, Hindrance> {
        let Some(now) = &self.under_way else {
            return Ok(None);
        };
        let place = now.of.iter().position(|of| (of.0, of.1) == (dish, piece));
        let Some(place) = place else {
            return Ok(None);
        };
        if let Some(refused) = &now.refused {
            return Err(Hindrance::OutOfRange {
                message: refused.to_string(),
            });
        }
        Ok(now.reforecast.forecast(place).map(|forecast| {
            let news = PieceNews {
                piece,
                log: &now.of[place].2,
                before,
                fits: now.reforecast.fits(place).collect(),
            };
            (forecast, news)
        }))
    }

    /// The air of every cut, given where dishes are placed and when a step of a cooker's programme falls.
    fn pits_of(
        &self,
        on: impl Fn(DishId) -> Option<Moment>,
        moment_of: impl Fn(DishId, PitWhen) -> Option<Moment>,
    ) -> BTreeMap<DishId, Vec<PitChange>> {
        let mut pits = BTreeMap::new();
        for (id, dish) in &self.plan.dishes {
            let Some(cooker) = dish.cooker.and_then(|id| self.plan.cookers.get(&id)) else {
                continue;
            };
            let programme = &cooker.programme;
            let when = |step: usize| {
                let when = programme.get(step)?.when;
                moment_of(driver(when)?, when)
            };
            pits.insert(*id, pit_of_dish(*id, dish, programme, on(*id), when));
        }
        pits
    }

    fn pits_by(&self, day: &Day<'_>) -> BTreeMap<DishId, Vec<PitChange>> {
        let find = |id: DishId| day.placed().find(|placed| placed.settled.id == id);
        let on = |id| Some(find(id)?.on);
        let moment_of = |id, when| {
            let placed = find(id)?;
            match when {
                PitWhen::Start => None,
                PitWhen::AfterOn { span, .. } => Some(placed.on + span),
                PitWhen::CoreReaches { core, .. } => {
                    let members = placed.pieces.first()?.members();
                    let times = members.iter().map(|run| reaches(run, core));
                    Some(placed.on + time_quantile(times, 0.5)?)
                }
            }
        };
        self.pits_of(on, moment_of)
    }

    /// The forecasts that are wanted for the present programmes.
    fn wants(&self, shelf: &mut Shelf) -> Vec<(DishId, PieceId, Place)> {
        let mut wanted = Vec::new();
        for (id, _) in in_order(&self.plan.dishes, |dish| &dish.order) {
            let Ok(settled) = self.settled(id) else {
                continue;
            };
            let (Some(method), Some(pit)) = (settled.cut(), self.pits.get(&id)) else {
                continue;
            };
            let cooker = settled
                .dish
                .cooker
                .and_then(|id| Some((id, self.plan.cookers.get(&id)?.kind)));
            let Some(cooker) = cooker.filter(|_| hottest(pit).is_some()) else {
                continue;
            };
            for (piece_id, piece) in &method.pieces {
                let Some(owners) = self.roles.owners(cooker.0, id, *piece_id) else {
                    continue;
                };
                let piece = (*piece, owners);
                let of = scenario(&settled, method, piece, cooker.1, pit, &self.plan.place);
                wanted.push((id, *piece_id, shelf.place(of, self.grain)));
            }
        }
        wanted
    }
}

/// The dish that a step of a pit programme goes by.
const fn driver(when: PitWhen) -> Option<DishId> {
    match when {
        PitWhen::Start => None,
        PitWhen::AfterOn { dish, .. } | PitWhen::CoreReaches { dish, .. } => Some(dish),
    }
}

/// Whether a cooker's programme goes by one dish while another lies in it.
fn dishes_move_each_other(plan: &Plan) -> bool {
    plan.dishes.iter().any(|(id, dish)| {
        let cooker = dish.cooker.and_then(|id| plan.cookers.get(&id));
        cooker.is_some_and(|cooker| {
            let drivers = cooker.programme.iter().filter_map(|step| driver(step.when));
            drivers.into_iter().any(|driver| driver != *id)
        })
    })
}
