//! What could be done to a dish now, and what would come of it, all in the same possible worlds.

use super::shelf::{Grain, Shelf};
use super::work::Work;
use crate::forecast::DishForecast;
use crate::handover::KnownEvent;
use crate::handover::identity::DishId;
use crate::live::{Effect, Lever, MEMBERS, Pull, Stage, stage_of};
use crate::physics::{self, Finish, MemberRun, PitChange, Scenario, When, WrapChange};
use crate::plan::day::{Placed, counted};
use crate::plan::ensemble::members_of_cut;
use crate::plan::member::Member;
use crate::plan::outlook::{Odds, Window};
use crate::plan::put_on::needed;
use crate::plan::situation::Situation;
use crate::plan::up::Crew;
use crate::plan::window::window;
use crate::plan::{Cover, Plan};
use crate::provisions::fuel::{FireWeather, Fuel, Vessel, hourly};
use crate::safety::minimum;
use crate::units::{Mass, Moment, Power, Temperature, TemperatureDifference, TimeSpan};

/// The pit goes up or down by this. Set by hand.
const PIT_STEP: TemperatureDifference = TemperatureDifference::from_kelvin(15.0);
/// Air of a kitchen oven in which a cook is finished. Common practice: 135 °C, 275 °F.
const OVEN: Temperature = Temperature::from_celsius(135.0);
/// A later serving is offered on this grid.
const GRID: TimeSpan = TimeSpan::from_minutes(15.0);

/// The levers that there are for a dish as it stands: nothing before it is on. Leaving everything as it is comes first.
#[must_use]
pub fn pulls(plan: &Plan, situation: &Situation, dish: DishId) -> Vec<Pull> {
    let Some(planned) = plan.dishes.get(&dish) else {
        return Vec::new();
    };
    let Some((stage, _)) = stage_of(&situation.journal, dish, planned) else {
        return Vec::new();
    };
    let until = plan.serving.moment();
    match stage {
        Stage::NotOn | Stage::Sliced => Vec::new(),
        Stage::Resting | Stage::Held => vec![Pull::Wait, Pull::HoldUntil { until }],
        Stage::On | Stage::Wrapped => {
            let mut all = vec![Pull::Wait];
            if stage == Stage::On {
                let wraps = [Cover::Paper, Cover::Foil];
                all.extend(wraps.map(|cover| Pull::Wrap { cover }));
            }
            let cooker = planned.cooker.and_then(|id| plan.cookers.get(&id));
            let set = planned
                .pit
                .or_else(|| cooker?.programme.last().map(|step| step.set));
            if let Some(set) = set {
                all.push(Pull::Pit {
                    set: set + PIT_STEP,
                });
                all.push(Pull::Pit {
                    set: set - PIT_STEP,
                });
            }
            all.push(Pull::Oven { air: OVEN });
            all.push(Pull::TakeOff);
            all.push(Pull::HoldUntil { until });
            all
        }
    }
}

/// What would come of each of these. All are reckoned in the same possible worlds, those that the readings leave. Empty
/// where the dish has no forecast or is not on; a lever that leads outside the model is left out. With so many members,
/// [`MEMBERS`] at most.
#[must_use]
pub fn levers(
    plan: &Plan,
    situation: &Situation,
    dish: DishId,
    pulls: &[Pull],
    members: u32,
) -> Vec<Lever> {
    let mut shelf = Shelf::default();
    let asked = (members.min(MEMBERS), Grain::Fine);
    let mut work = Work::new(plan.clone(), situation.clone(), asked, &mut shelf);
    while !work.step(&mut shelf) {}
    let crew = Crew::of(plan, &situation.zone);
    let Ok(placed) = work.place(dish, &crew, &shelf) else {
        return Vec::new();
    };
    let Some(usual) = effect(&work, &placed, situation, Pull::Wait, None) else {
        return Vec::new();
    };
    let later = serve_later(&placed, plan);
    let each = pulls.iter().copied().chain(later);
    each.filter_map(|pull| {
        let effect = effect(&work, &placed, situation, pull, Some(&usual))?;
        Some(Lever {
            pull,
            effect,
            writes: writes(&placed, pull),
        })
    })
    .collect()
}

/// Serving moved to where the promise is kept, if it is not kept as it is.
fn serve_later(placed: &Placed<'_>, plan: &Plan) -> Option<Pull> {
    if placed.keeps_promise(plan) {
        return None;
    }
    let after = placed.settled.after;
    let mut ready: Vec<TimeSpan> = placed
        .members
        .iter()
        .map(|member| member.table_ready(after))
        .collect::<Option<_>>()?;
    ready.sort_by(|a, b| a.seconds().total_cmp(&b.seconds()));
    let kept = needed(plan.promise, ready.len()).checked_sub(1)?;
    let late = placed.on + *ready.get(kept)? - plan.serving.moment();
    let steps = libm::ceil(late / GRID).max(1.0);
    Some(Pull::ServeAt {
        serving: plan.serving.moment() + GRID * steps,
    })
}

/// What is written down when a lever is pulled.
fn writes(placed: &Placed<'_>, pull: Pull) -> Vec<KnownEvent> {
    let dish = placed.settled.id;
    let wrap = |cover| {
        let pieces = placed.news.iter().map(|news| news.piece);
        pieces.map(move |piece| KnownEvent::Wrapped { piece, cover })
    };
    match pull {
        Pull::Wait | Pull::HoldUntil { .. } | Pull::ServeAt { .. } => Vec::new(),
        Pull::Wrap { cover } => wrap(cover).collect(),
        Pull::Pit { set } => {
            let cooker = placed.cooker.map(|(cooker, _)| cooker);
            let set = cooker.map(|cooker| KnownEvent::PitSet { cooker, set });
            set.into_iter().collect()
        }
        Pull::Oven { air } => {
            let bare = placed.news.iter().all(|news| news.log.covers.is_empty());
            let wrapped = bare.then(|| wrap(Cover::Foil)).into_iter().flatten();
            wrapped
                .chain([KnownEvent::MovedToOven { dish, air }])
                .collect()
        }
        Pull::TakeOff => vec![KnownEvent::Off { dish }],
    }
}

/// How the cook goes on when a lever is pulled.
fn pulled(pull: Pull, now: TimeSpan, scenario: &mut Scenario) {
    let wrap = |scenario: &mut Scenario, cover| {
        let before = |wrap: &WrapChange| matches!(wrap.when, When::AfterOn(span) if span < now);
        scenario.wraps.retain(before);
        scenario.wraps.push(WrapChange {
            when: When::AfterOn(now),
            cover,
        });
    };
    let set = |scenario: &mut Scenario, set| {
        let before = |change: &PitChange| matches!(change.when, When::AfterOn(span) if span < now);
        let first = scenario.pit[0];
        scenario.pit.retain(before);
        if scenario.pit.is_empty() {
            scenario.pit.push(first);
        }
        scenario.pit.push(PitChange {
            when: When::AfterOn(now),
            set,
        });
    };
    match pull {
        Pull::Wait | Pull::HoldUntil { .. } | Pull::ServeAt { .. } => {}
        Pull::Wrap { cover } => wrap(scenario, cover_of(cover)),
        Pull::Pit { set: to } => set(scenario, to),
        Pull::Oven { air } => {
            set(scenario, air);
            scenario
                .departures
                .retain(|departure| departure.after <= now);
            let bare = scenario
                .wraps
                .iter()
                .all(|wrap| !matches!(wrap.when, When::AfterOn(span) if span < now));
            if bare {
                wrap(scenario, physics::Cover::Foil);
            }
        }
        Pull::TakeOff => scenario.finish = Finish::AfterOn(now),
    }
}

const fn cover_of(cover: Cover) -> physics::Cover {
    match cover {
        Cover::Paper => physics::Cover::Paper,
        Cover::Foil => physics::Cover::Foil,
    }
}

/// What comes of a lever. None where it leads outside the model.
fn effect(
    work: &Work,
    placed: &Placed<'_>,
    situation: &Situation,
    pull: Pull,
    usual: Option<&Effect>,
) -> Option<Effect> {
    let method = placed.settled.cut()?;
    let now = placed.news.first()?.log.now;
    let forecasts = work.what_if(placed.settled.id, |scenario| pulled(pull, now, scenario))?;
    let each: Vec<&DishForecast> = forecasts.iter().collect();
    let members = members_of_cut(&placed.settled, method, &each, work.audience());
    let serving = match pull {
        Pull::HoldUntil { until: serving } | Pull::ServeAt { serving } => serving,
        _ => work.serving(),
    };
    let after = placed.settled.after;
    let ready = window(placed.on, members.iter().map(|member| member.ready));
    let last = each.last()?;
    let tender = method.cut.demand.is_some();
    let hot = minimum(method.sort).temperature;
    Some(Effect {
        table_ready: window(
            placed.on,
            members.iter().map(|member| member.table_ready(after)),
        ),
        later: match (ready, usual.and_then(|usual| usual.ready)) {
            (Some(ready), Some(usual)) => ready.likely() - usual.likely(),
            _ => TimeSpan::ZERO,
        },
        odds: odds(&members, |member| {
            let table = member.table_ready(after)?;
            Some(placed.on + table <= serving)
        }),
        loss: last.figure(|run| run.ready.map(|_| run.loss_at_ready()))?,
        tenderness: last
            .figure(|run| run.tenderness_at_ready)
            .filter(|_| tender),
        bark: share(last, |run| Some(run.bark_set? <= run.ready?)),
        past_minimum: share(last, |run| {
            let core = crate::forecast::sample_at(&run.samples, run.ready?)?.core;
            Some(core >= hot || run.lethality_met? <= run.ready?)
        }),
        holds: odds(&members, |member| {
            let waits = member.waits(after, serving - placed.on)?;
            Some(waits <= member.keeps)
        }),
        fuel: fuel(
            work,
            placed,
            situation,
            pull,
            (ready, usual.and_then(|usual| usual.ready)),
        ),
        ready,
    })
}

fn odds(members: &[Member], comes: impl Fn(&Member) -> Option<bool>) -> Odds {
    let kept = members.iter().filter(|member| comes(member) == Some(true));
    counted(kept.count(), members.len())
}

fn share(forecast: &DishForecast, comes: impl Fn(&MemberRun) -> Option<bool>) -> Odds {
    let runs = forecast.members();
    let kept = runs.iter().filter(|run| comes(run) == Some(true));
    counted(kept.count(), runs.len())
}

/// Fuel from now until it is likely off, more than without the lever. None where its cooker is not fed with anything
/// that is weighed.
fn fuel(
    work: &Work,
    placed: &Placed<'_>,
    situation: &Situation,
    pull: Pull,
    (ready, usual): (Option<Window>, Option<Window>),
) -> Option<Mass> {
    let (_, cooker) = placed.on_a_fire()?;
    let burnt = cooker.burns().filter(|fuel| *fuel != Fuel::Electricity)?;
    let vessel = Vessel::for_grate(cooker.kind, cooker.grate)?;
    let planned = placed
        .settled
        .dish
        .pit
        .or_else(|| cooker.programme.last().map(|step| step.set))?;
    let weather = FireWeather::from(work.weather());
    let until = |ready: Option<Window>| -> Option<TimeSpan> {
        let ahead: TimeSpan = ready?.likely() - situation.now;
        Some(ahead.max(TimeSpan::ZERO))
    };
    let needs = |set: Temperature, lasts: TimeSpan| -> Mass {
        let kilograms = hourly(&vessel, burnt, set, &weather, Power::ZERO);
        Mass::from_kilograms(kilograms * lasts.hours())
    };
    let with = match pull {
        Pull::Pit { set } => needs(set, until(ready)?),
        // The fire goes out.
        Pull::Oven { .. } | Pull::TakeOff => Mass::ZERO,
        _ => needs(planned, until(ready)?),
    };
    Some(with - needs(planned, until(usual.or(ready))?))
}

impl Work {
    fn audience(&self) -> crate::plan::Audience {
        self.plan().audience
    }

    fn serving(&self) -> Moment {
        self.plan().serving.moment()
    }

    fn weather(&self) -> &crate::plan::Place {
        &self.plan().place
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::CookerKind;
    use crate::plan::sample::{Sample, at};

    /// A chuck roast on a kettle, three hours under way; served an hour before it is likely ready.
    fn under_way() -> (Sample, DishId) {
        let mut sample = Sample::new();
        let cooker = sample.cooker(CookerKind::Kettle);
        let dish = sample.dish("beef-chuck-roast", 1.8, cooker);
        sample.put_on(dish, at("2026-09-12T11:00:00"));
        sample.situation.now = at("2026-09-12T14:00:00");
        (sample, dish)
    }

    fn all(sample: &Sample, dish: DishId) -> Vec<Lever> {
        let pulls = pulls(&sample.plan, &sample.situation, dish);
        levers(&sample.plan, &sample.situation, dish, &pulls, 16)
    }

    #[test]
    fn a_dish_that_is_not_on_has_no_levers() {
        let (mut sample, dish) = under_way();
        sample.situation.journal.0.clear();
        assert!(all(&sample, dish).is_empty());
    }

    #[test]
    fn levers_do_what_a_cook_would_expect() {
        let (sample, dish) = under_way();
        let all = all(&sample, dish);
        for lever in &all {
            let effect = &lever.effect;
            println!(
                "{:?}: {:+.0} min, {}/{}, loss {:.2?}, tender {:.2?}, bark {}, fuel {:?}",
                lever.pull,
                effect.later.minutes(),
                effect.odds.kept,
                effect.odds.of,
                effect.loss,
                effect.tenderness,
                effect.bark.kept,
                effect.fuel,
            );
        }
        let of = |found: fn(&Pull) -> bool| {
            let lever = all.iter().find(|lever| found(&lever.pull));
            &lever.expect("the lever").effect
        };
        let wait = of(|pull| *pull == Pull::Wait);
        assert_eq!(wait.later, TimeSpan::ZERO);
        let foil = of(|pull| matches!(pull, Pull::Wrap { cover: Cover::Foil }));
        assert!(foil.later < TimeSpan::ZERO && foil.bark.kept <= wait.bark.kept);
        let hotter = of(|pull| matches!(pull, Pull::Pit { set } if set.celsius() > 121.0));
        let cooler = of(|pull| matches!(pull, Pull::Pit { set } if set.celsius() < 121.0));
        assert!(hotter.later < TimeSpan::ZERO && cooler.later > TimeSpan::ZERO);
        assert!(hotter.odds.kept >= wait.odds.kept && cooler.odds.kept <= wait.odds.kept);
        let off = of(|pull| *pull == Pull::TakeOff);
        assert!(off.tenderness.expect("tenderness")[1] < 0.7);
        assert!(off.loss[1] < wait.loss[1]);
        assert!(off.fuel.is_some_and(|fuel| fuel < Mass::ZERO));
        if let Some(later) = all.iter().find(|l| matches!(l.pull, Pull::ServeAt { .. })) {
            let odds = later.effect.odds;
            assert!(f64::from(odds.kept) >= sample.plan.promise * f64::from(odds.of) - 1.0);
        }
    }

    #[test]
    fn pulling_a_lever_writes_what_was_done() {
        let (sample, dish) = under_way();
        let all = all(&sample, dish);
        let writes = |found: fn(&Pull) -> bool| {
            let lever = all.iter().find(|lever| found(&lever.pull));
            lever.expect("the lever").writes.clone()
        };
        assert!(writes(|pull| *pull == Pull::Wait).is_empty());
        let oven = writes(|pull| matches!(pull, Pull::Oven { .. }));
        assert!(matches!(
            oven.as_slice(),
            [KnownEvent::Wrapped { .. }, KnownEvent::MovedToOven { .. }]
        ));
        let off = writes(|pull| *pull == Pull::TakeOff);
        assert_eq!(off, [KnownEvent::Off { dish }]);
    }
}
