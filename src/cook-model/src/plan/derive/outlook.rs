//! The day put into words and figures that a screen can show.

use super::live::live;
use crate::forecast::DishForecast;
use crate::handover::identity::DishId;
use crate::live::{Stage, stage_of};
use crate::physics::MemberRun;
use crate::plan::HoldPlace;
use crate::plan::day::{Day, Placed, counted};
use crate::plan::findings::{findings, food_planned, sort};
use crate::plan::foreseen::foreseen;
use crate::plan::mark::marks;
use crate::plan::method::{CutMethod, Kind};
use crate::plan::outlook::{CoursePoint, DishOutlook, DishTimes, Outlook};
use crate::plan::sheet::lattice;
use crate::plan::steps::steps;
use crate::plan::table::table;
use crate::plan::window::{LONGEST_COOK, three_points};
use crate::provisions::dish_weights;
use crate::safety::safe_line;
use crate::units::{Mass, Moment, TimeSpan};

/// Distance of two points of a course.
const COURSE: TimeSpan = TimeSpan::from_minutes(15.0);

/// Everything that is derived from a day.
pub(super) fn outlook(day: &Day<'_>) -> Outlook {
    let portions = food_planned(day.plan);
    let mut made = steps(day);
    let foreseen: Vec<_> = day
        .placed()
        .map(|placed| foreseen(day.plan, placed, &made))
        .collect();
    let situation = day.situation;
    let safe = safe_line(day.plan, &situation.journal, &foreseen, situation.now);
    let lattice = lattice(day, &made.steps);
    lattice.write_into(&mut made.steps);
    let mut all = findings(day, portions);
    all.extend(made.findings);
    sort(&mut all);
    let marks = marks(day.plan);
    let dishes = day
        .dishes
        .iter()
        .zip(marks)
        .map(|(dish, mark)| DishOutlook {
            dish: dish.id,
            letter: mark.letter,
            hue: mark.hue,
            forecast: match &dish.placed {
                Ok(placed) => Ok(times(day, placed)),
                Err(hindrance) => Err(hindrance.clone()),
            },
            stage: stage(day, dish.id),
            live: dish
                .placed
                .as_ref()
                .ok()
                .and_then(|placed| live(day, placed))
                .map(Box::new),
        });
    Outlook {
        members: u32::try_from(day.members()).unwrap_or(u32::MAX),
        dishes: dishes.collect(),
        table: table(day),
        steps: made.steps,
        lattice,
        findings: all,
        portions,
        safe,
    }
}

fn stage(day: &Day<'_>, id: DishId) -> Stage {
    let dish = day.plan.dishes.get(&id);
    let stage = dish.and_then(|dish| stage_of(&day.situation.journal, id, dish));
    stage.map_or(Stage::NotOn, |(stage, _)| stage)
}

fn times(day: &Day<'_>, placed: &Placed<'_>) -> DishTimes {
    let after = placed.settled.after;
    let ready = placed.ready();
    let table_ready = placed
        .window(|member| member.table_ready(after))
        .unwrap_or_else(|| ready.moved(after.least()));
    let slowest = slowest(placed);
    let method = placed.settled.cut();
    let met = placed.members.iter().filter(|member| {
        let met = member.lethality_met.zip(member.ready);
        met.is_some_and(|(met, ready)| met <= ready)
    });
    DishTimes {
        earliest_on: placed.span.earliest,
        latest_on: placed.span.latest,
        on: placed.on,
        ready,
        table_ready,
        odds: placed.odds(day.plan.serving.moment()),
        wrap: placed.window_on_the_way(|member| member.wrapped),
        stall: slowest.and_then(|slowest| stall(placed.on, slowest)),
        course: slowest.map_or_else(Vec::new, |slowest| course(day, placed, slowest)),
        target: method.map(|method| method.target),
        target_lowered: method.and_then(CutMethod::lowered),
        loss: figures(slowest, loss_of_all).unwrap_or([0.0; 3]),
        tenderness: figures(slowest, |run| run.tenderness_at_ready),
        lethality_met: counted(met.count(), placed.members.len()),
        stays_hot: stays_hot(placed),
        served: dish_weights(placed.settled.dish).map_or(Mass::ZERO, |weights| weights.on_plate),
        assumed: method.map_or_else(Vec::new, |method| method.assumed.clone()),
    }
}

/// The piece that takes longest speaks for its dish.
fn slowest<'a>(placed: &Placed<'a>) -> Option<&'a DishForecast> {
    let likely = |forecast: &&&DishForecast| {
        let ready = forecast.quantile(|run| run.ready, 0.5);
        ready.unwrap_or(LONGEST_COOK).seconds()
    };
    let forecasts = placed.pieces.iter();
    let slowest = forecasts.max_by(|a, b| likely(a).total_cmp(&likely(b)));
    slowest.copied()
}

fn stall(on: Moment, forecast: &DishForecast) -> Option<(Moment, Moment)> {
    let stall = forecast.likely_member()?.stall?;
    Some((on + stall.from, on + stall.to))
}

/// The course until it is likely sliced.
fn course(day: &Day<'_>, placed: &Placed<'_>, forecast: &DishForecast) -> Vec<CoursePoint> {
    let serving = day.plan.serving.moment().max(placed.ready().to());
    let until = (serving - placed.on).min(LONGEST_COOK);
    forecast.course(COURSE, until).unwrap_or_default()
}

fn figures(
    forecast: Option<&DishForecast>,
    figure: impl Fn(&MemberRun) -> Option<f64>,
) -> Option<[f64; 3]> {
    forecast?.figure(figure)
}

/// Water and fat lost when it comes off. None for a member that never does.
fn loss_of_all(run: &MemberRun) -> Option<f64> {
    run.ready.map(|_| run.loss_at_ready())
}

/// How long it stays hot in its holding place. None where it is not held.
fn stays_hot(placed: &Placed<'_>) -> Option<[TimeSpan; 3]> {
    match (&placed.settled.kind, placed.settled.hold) {
        (Kind::Own(_), _) | (_, HoldPlace::Counter) => None,
        (Kind::Cut(_), HoldPlace::RestBox | HoldPlace::WarmOven { .. }) => {
            three_points(placed.members.iter().map(|member| member.hot))
        }
    }
}
