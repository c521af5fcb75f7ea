//! From on to sliced.

use super::{Made, of_dish};
use crate::plan::day::{Day, Placed};
use crate::plan::hands;
use crate::plan::member::Member;
use crate::plan::method::CutMethod;
use crate::plan::outlook::{Step, StepKind, Window};
use crate::plan::{CookerKind, HoldPlace, WrapWhen};
use crate::units::TimeSpan;

/// More rounds of spraying than this are one too many.
const MOST_SPRAYS: u32 = 48;

pub(super) fn add(day: &Day<'_>, placed: &Placed<'_>, made: &mut Made) {
    let Some(method) = placed.settled.cut() else {
        return;
    };
    let mut add = |kind, when: Option<Window>, takes, core| {
        if let Some(when) = when {
            made.add(Step {
                core,
                ..of_dish(day, placed, kind, when, takes)
            });
        }
    };
    let those = |time: &dyn Fn(&Member) -> Option<TimeSpan>| placed.window_on_the_way(time);
    let on = Window::at(placed.on);
    add(StepKind::On, Some(on), hands::ON, None);
    add(
        StepKind::ProbeIn,
        those(&|member| member.surface_hot),
        hands::PROBE_IN,
        None,
    );
    if is_turned(placed, method) {
        let half = |member: &Member| Some(member.wrapped.or(member.ready)? / 2.0);
        add(StepKind::Turn, those(&half), hands::TURN, None);
    }
    let wraps = those(&|member| member.wrapped);
    if let Some((_, when)) = method.wrap {
        let core = match when {
            WrapWhen::Core { core } => Some(core),
            WrapWhen::AfterOn { .. } => None,
        };
        add(StepKind::Wrap, wraps, hands::wrap(method.all()), core);
    }
    let near = those(&|member| member.probing);
    add(StepKind::Probe, near, hands::PROBE, Some(method.target));
    add(StepKind::Off, Some(placed.ready()), hands::OFF, None);
    let hold = |member: &Member| Some(member.ready? + hands::VENT);
    if !matches!(placed.settled.hold, HoldPlace::Counter) {
        add(StepKind::Hold, placed.window(hold), hands::HOLD, None);
    }
    slice(day, placed, made);
    spray(day, placed, wraps, made);
}

/// Slicing, just before serving where the dish is early enough.
pub(super) fn slice(day: &Day<'_>, placed: &Placed<'_>, made: &mut Made) {
    let after = placed.settled.after;
    let serving = day.plan.serving.moment() - placed.on;
    let begins = placed.window(|member| member.slicing_begins(after, serving));
    if let Some(when) = begins.filter(|_| after.slicing > TimeSpan::ZERO) {
        made.add(of_dish(day, placed, StepKind::Slice, when, after.slicing));
    }
}

/// Turned once half way where one side is hotter than the other, and what is cooked to a temperature on any fire.
fn is_turned(placed: &Placed<'_>, method: &CutMethod<'_>) -> bool {
    use CookerKind::{Drum, Gas, Kettle, Offset};
    let Some((_, cooker)) = placed.cooker else {
        return false;
    };
    let oven = matches!(cooker.kind, CookerKind::Oven | CookerKind::FanOven);
    matches!(cooker.kind, Offset | Kettle | Drum | Gas)
        || (!method.cut.cooks_to_tenderness() && !oven)
}

/// Rounds by the clock until it is likely wrapped, or off. Nobody is woken for one.
fn spray(day: &Day<'_>, placed: &Placed<'_>, wraps: Option<Window>, made: &mut Made) {
    let Some(spray) = placed.settled.dish.spray else {
        return;
    };
    let until = wraps.unwrap_or_else(|| placed.ready()).likely();
    for round in 0..MOST_SPRAYS {
        let at = placed.on + spray.first + spray.every * f64::from(round);
        if at >= until {
            break;
        }
        if !day.crew.somebody_up_for(at, hands::SPRAY) {
            continue;
        }
        let mut step = of_dish(day, placed, StepKind::Spray, Window::at(at), hands::SPRAY);
        step.round = round + 1;
        made.add(step);
    }
}
