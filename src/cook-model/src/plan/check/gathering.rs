//! Bad input about the gathering, the place, the crew and the cookers.

use super::{Found, Trouble, count};
use crate::plan::range;
use crate::plan::{Cooker, PitWhen, Plan};
use crate::units::Moment;

pub(super) fn check(plan: &Plan, now: Moment, found: &mut Found) {
    found.name("name", &plan.name);
    let offset = f64::from(plan.serving.offset_seconds);
    let serving = plan.serving.moment();
    if found.hold("serving", range::CLOCK_OFFSET, offset) && serving < now {
        found.say("serving", Trouble::ServingPast { serving });
    }
    let guests = plan.guests;
    let each = found.hold("guests", range::GUESTS, f64::from(guests.grown))
        && found.hold("guests", range::GUESTS, f64::from(guests.small));
    if each {
        found.hold("guests", range::TABLE, f64::from(guests.count()));
    }
    let appetite = plan.appetite;
    found.hold("appetite", range::APPETITE, appetite.grown.kilograms());
    found.hold("appetite", range::APPETITE, appetite.small.kilograms());
    found.hold("appetite", range::LEFTOVERS, appetite.leftovers.kilograms());
    let place = plan.place;
    found.hold("place", range::ALTITUDE, place.altitude.metres());
    found.hold("place", range::OUTSIDE, place.air.celsius());
    found.hold("place", range::HUMIDITY, place.relative_humidity);
    found.hold("place", range::WIND, place.wind_metres_per_second);
    found.hold("promise", range::PROMISE, plan.promise);
    found.hold("dishes", range::DISHES, count(plan.dishes.len()));
    found.hold("cookers", range::COOKERS, count(plan.cookers.len()));
    found.hold("crew", range::CREW, count(plan.crew.len()));
    for (id, member) in &plan.crew {
        found.name(format!("crew/{id}/name"), &member.name);
        if let Some(quiet) = member.quiet.filter(|quiet| quiet.from == quiet.to) {
            let from = quiet.from.format("%H:%M").to_string();
            found.say(
                format!("crew/{id}/quiet"),
                Trouble::QuietWithoutLength { from },
            );
        }
    }
    for (id, cooker) in &plan.cookers {
        check_cooker(plan, &format!("cookers/{id}"), cooker, found);
    }
}

fn check_cooker(plan: &Plan, at: &str, cooker: &Cooker, found: &mut Found) {
    found.name(format!("{at}/name"), &cooker.name);
    found.hold(
        format!("{at}/grate"),
        range::GRATE,
        cooker.grate.square_metres(),
    );
    extras(at, cooker, found);
    let programme = format!("{at}/programme");
    let steps = &cooker.programme;
    if !matches!(steps.first(), Some(first) if first.when == PitWhen::Start) {
        found.say(&programme, Trouble::NoPitAtStart);
    } else {
        found.hold(&programme, range::PIT_STEPS, count(steps.len()));
    }
    for (place, step) in steps.iter().enumerate() {
        found.hold(&programme, range::PIT, step.set.celsius());
        let dish = match step.when {
            PitWhen::Start if place > 0 => {
                found.say(&programme, Trouble::SecondStart);
                continue;
            }
            PitWhen::Start => continue,
            PitWhen::AfterOn { dish, span } => {
                found.hold(&programme, range::AFTER_ON, span.seconds());
                dish
            }
            PitWhen::CoreReaches { dish, core } => {
                found.hold(&programme, range::TURNING_POINT, core.celsius());
                dish
            }
        };
        if !plan.dishes.contains_key(&dish) {
            found.say(&programme, Trouble::Missing { thing: "dish" });
        }
    }
}

/// Racks, the hot side, and how often it is fed.
fn extras(at: &str, cooker: &Cooker, found: &mut Found) {
    let racks = format!("{at}/racks");
    found.hold(&racks, range::RACKS, count(cooker.racks.len()));
    for rack in &cooker.racks {
        found.hold(&racks, range::RACK_AREA, rack.area.square_metres());
        found.hold(&racks, range::RACK_HEIGHT, rack.height.metres());
    }
    if let Some(hot) = cooker.hot_side {
        found.hold(format!("{at}/hot_side"), range::HOT_SIDE, hot.kelvin());
    }
    if let Some(every) = cooker.feed_every {
        found.hold(
            format!("{at}/feed_every"),
            range::FEED_EVERY,
            every.seconds(),
        );
    }
}
