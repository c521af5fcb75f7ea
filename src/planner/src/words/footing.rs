//! What the rows say that the forecast rests on.

use super::{cookers as kinds, count, gathering, list};
use crate::format::{Formats, LengthUnit, MassUnit, TemperatureScale, Units};
use crate::parts::Way;
use cook_model::plan::{Audience, Cooker, CrewMember, Guests, Place};
use cook_model::provisions::Sides;
use cook_model::safety::say;

/// The table.
pub const TABLE: &str = "Table";
/// What its time means.
pub const TABLE_NOTE: &str = "served and seated";
/// The plan's name.
pub const GATHERING_NAME: &str = "Name of the gathering";
/// The serving date.
pub const DATE: &str = "Day";
/// The serving time.
pub const TIME: &str = "Served at";

/// A time that the clocks skip.
#[must_use]
pub fn skipped(time: &str) -> String {
    format!("The clocks go forward that night: there is no {time}. Which time did you mean?")
}

/// A time that comes twice.
#[must_use]
pub fn twice(time: &str) -> String {
    format!("The clocks go back that night: {time} comes twice. Which one?")
}

/// The first of the two.
pub const EARLIER: &str = "The first, before the change";
/// The second.
pub const LATER: &str = "The second, after it";

/// The key that takes a time that exists.
#[must_use]
pub fn use_time(time: &str) -> String {
    format!("Use {time}")
}

/// A plan on another clock.
#[must_use]
pub fn other_zone(zone: &str) -> String {
    format!("All times are on the clock of {}.", zone.replace('_', " "))
}

/// The key that brings it over.
#[must_use]
pub fn bring_zone(zone: &str) -> String {
    format!("Show them on the clock of {}", zone.replace('_', " "))
}

/// Guests.
pub const GUESTS: &str = "Guests";
/// Grown ones.
pub const GROWN: &str = "Grown";
/// Children.
pub const SMALL: &str = "Small";

/// Grown ones who eat more.
pub const HEARTY: &str = "Of them hearty";
/// Grown ones who eat less.
pub const LIGHT: &str = "Of them light";
/// How much that is.
pub const HEARTY_NOTE: &str = "Of the grown: a hearty eater counts for a quarter more, a light one for a quarter less (common practice).";

/// Guests at a glance.
#[must_use]
pub fn guests(guests: Guests) -> String {
    let grown = format!("{} grown", guests.grown);
    let others = [
        (guests.hearty, "hearty"),
        (guests.light, "light"),
        (guests.small, "small"),
    ];
    let others = others.into_iter().filter(|(number, _)| *number > 0);
    others.fold(grown, |said, (number, who)| {
        format!("{said}, {number} {who}")
    })
}

/// Appetite.
pub const APPETITE: &str = "Appetite";
/// What it counts.
#[must_use]
pub fn appetite_note(units: Units) -> String {
    say(
        "Cooked meat, all dishes together. Usual with sides: {150 g|5 oz} to {200 g|7 oz} a head; {300 g|11 oz} where \
         meat is the meal.",
        units.scales(),
    )
}
/// What else is on the table.
pub const SIDES: &str = "What else is on the table?";
/// What a choice does.
pub const SIDES_NOTE: &str = "A choice fills in the usual amounts; every further meat adds 5 %, at most 20 % (common practice). Change them below.";

/// The answers to it.
#[must_use]
pub fn sides() -> Vec<Way<Sides>> {
    vec![
        Way::new(Sides::Few, "Bread and pickles"),
        Way::new(Sides::Some, "Some sides"),
        Way::new(Sides::Many, "Many sides"),
    ]
}

/// Each grown eater.
pub const EACH_GROWN: &str = "A grown head";
/// Each small eater.
pub const EACH_SMALL: &str = "A small head";
/// Wanted over.
pub const LEFT_OVER: &str = "To be left over";

/// Appetite at a glance.
#[must_use]
pub fn appetite(over: Option<&str>) -> String {
    over.map_or_else(
        || "cooked meat a grown head".to_owned(),
        |over| format!("a grown head, and {over} to be left over"),
    )
}

/// Crew.
pub const CREW: &str = "Crew";
/// What quiet hours mean.
pub const CREW_NOTE: &str = "Nobody is woken for steps in their quiet hours. A lit fire still wants somebody awake and sober.";
/// A name.
pub const CREW_NAME: &str = "Name";
/// Whether somebody sleeps.
pub const HAS_QUIET: &str = "Has quiet hours";
/// They begin.
pub const QUIET_FROM: &str = "Quiet from";
/// They end.
pub const QUIET_TO: &str = "to";
/// The key for one more.
pub const ADD_CREW: &str = "Somebody else lends a hand";
/// The key for one fewer.
pub const LEAVE_CREW: &str = "Take off the crew";

/// Crew at a glance.
#[must_use]
pub fn crew(crew: &[&CrewMember], formats: &Formats) -> String {
    if crew.is_empty() {
        return "nobody named: then nobody is up at night".to_owned();
    }
    let said: Vec<String> = crew
        .iter()
        .map(|one| {
            let name = match one.name.trim() {
                "" => "somebody",
                name => name,
            };
            match one.quiet {
                Some(quiet) => {
                    format!(
                        "{name} quiet {}",
                        formats.clock.from_to(quiet.from, quiet.to)
                    )
                }
                None => format!("{name} always up"),
            }
        })
        .collect();
    said.join(", ")
}

/// Place.
pub const PLACE: &str = "Place and weather";
/// Height above the sea.
pub const ALTITUDE: &str = "Height above the sea";
/// Air outside.
pub const AIR: &str = "Air";
/// Humidity.
pub const HUMIDITY: &str = "Humidity";
/// Wind.
pub const WIND: &str = "Wind";
/// Where a fire never is.
pub const PLACE_CAUTION: &str = "Charcoal and wood burn in the open only, well away from walls: their smoke carries carbon monoxide, which kills \
     indoors, under a roof that is closed in, or in a tent.";

/// Place at a glance.
#[must_use]
pub fn place(place: &Place, formats: &Formats) -> String {
    // Up to 1.5 m/s calm or light air, to 5.4 light to gentle, to 10.7 moderate to fresh: the Beaufort scale (WMO).
    let wind = match place.wind_metres_per_second {
        wind if wind < 1.5 => "calm",
        wind if wind < 5.5 => "light breeze",
        wind if wind < 10.8 => "fresh breeze",
        _ => "strong wind",
    };
    let humid = match place.relative_humidity {
        share if share < 0.4 => ", dry",
        share if share < 0.75 => "",
        _ => ", damp",
    };
    format!("{} up, {wind}{humid}", formats.altitude(place.altitude))
}

/// Cookers.
pub const COOKERS: &str = "Cookers";
/// A cooker's name.
pub const COOKER_NAME: &str = "What you call it";
/// A cooker's kind.
pub const KIND: &str = "Kind";
/// Heading of the kinds.
pub const KINDS: &str = "Kinds of cooker";
/// Room on it.
pub const GRATE: &str = "Grate, all racks";
/// Pit from the start.
pub const PIT: &str = "Pit, at the meat";
/// Pit later.
pub const THEN_PIT: &str = "Then the pit";
/// The key for a change of the pit.
pub const ADD_PIT_STEP: &str = "Change the pit later";
/// The key that takes a change out.
pub const REMOVE_PIT_STEP: &str = "Take this change out";
/// By which dish.
pub const STEP_DISH: &str = "Going by";
/// By what of it.
pub const STEP_WHEN: &str = "When";
/// By its core.
pub const STEP_CORE: &str = "its core reaches";
/// By the clock.
pub const STEP_AFTER: &str = "so long after on";
/// The hours.
pub const STEP_HOURS: &str = "hours after it went on";
/// Heading of the dishes on a cooker.
pub const DISHES_ON_IT: &str = "Dishes on it";
/// The choice for one more.
pub const ADD_COOKER: &str = "Add a cooker";
/// The key for one fewer.
pub const REMOVE_COOKER: &str = "Take this cooker out";

/// Cookers at a glance.
#[must_use]
pub fn cookers(cookers: &[&Cooker], formats: &Formats) -> String {
    if cookers.is_empty() {
        return "none yet; asked with the first dish".to_owned();
    }
    let said: Vec<String> = cookers
        .iter()
        .map(|cooker| {
            let name = kinds::name(&cooker.name, cooker.kind);
            match cooker.programme.first() {
                Some(step) => format!("{name} at {}", formats.temperature(step.set)),
                None => name,
            }
        })
        .collect();
    said.join(", ")
}

/// What lies on a cooker.
#[must_use]
pub fn lies_on(dishes: &[String]) -> String {
    if dishes.is_empty() {
        return "Nothing lies on it.".to_owned();
    }
    let names: Vec<&str> = dishes
        .iter()
        .map(|name| gathering::dish_name(name))
        .collect();
    format!(
        "{} on it: {}.",
        super::capital(&count(dishes.len(), "dish", "dishes")),
        list(&names)
    )
}

/// How sure.
pub const SURE: &str = "How sure";
/// What that means.
pub const SURE_NOTE: &str = "Each dish is put on early enough to be table-ready in time that often. Surer means earlier, and a longer hold.";
/// The question.
pub const SURE_QUESTION: &str = "In time";
/// For whom.
pub const AUDIENCE: &str = "Who is served?";

/// For whom, at a glance.
#[must_use]
pub const fn audience(audience: Audience) -> &'static str {
    match audience {
        Audience::Household => "each dish in time, for family and friends",
        Audience::Public => "each dish in time, for the public",
    }
}

/// The answers to that.
#[must_use]
pub fn audience_ways() -> Vec<Way<Audience>> {
    vec![
        Way::new(Audience::Household, "Family and friends"),
        Way::new(Audience::Public, "The public, or for money")
            .with_note("Local codes and licences come first; ask the authority where you live"),
    ]
}

/// Units.
pub const UNITS: &str = "Units";
/// What they are.
pub const UNITS_NOTE: &str = "on this device";
/// Temperatures.
pub const TEMPERATURES: &str = "Temperatures";
/// Weights.
pub const WEIGHTS: &str = "Weights";
/// Lengths.
pub const LENGTHS: &str = "Lengths";

/// Units at a glance.
#[must_use]
pub fn units(units: Units) -> String {
    let temperature = match units.temperature {
        TemperatureScale::Celsius => "°C",
        TemperatureScale::Fahrenheit => "°F",
    };
    let mass = match units.mass {
        MassUnit::Kilograms => "kg",
        MassUnit::Pounds => "lb",
    };
    let length = match units.length {
        LengthUnit::Metric => "cm",
        LengthUnit::Inches => "in",
    };
    format!("{temperature}, {mass}, {length}")
}
