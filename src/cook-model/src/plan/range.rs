//! Between which bounds each quantity of a plan can be reckoned with. Fields, checks and messages all read them here.

use crate::units::{Area, Length, Mass, Temperature, TimeSpan, Volume};
use serde::Serialize;

/// The unit in which the bounds of a [`Range`] stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Unit {
    /// °C.
    Celsius,
    /// kg.
    Kilogram,
    /// m.
    Metre,
    /// m².
    SquareMetre,
    /// m³.
    CubicMetre,
    /// A difference of temperatures, K.
    Kelvin,
    /// m/s.
    MetrePerSecond,
    /// s.
    Second,
    /// A share of one.
    Share,
    /// How many.
    Count,
}

/// The bounds of one quantity, both included.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Range {
    /// What it is, as the beginning of a sentence.
    pub quantity: &'static str,
    /// Unit of the bounds.
    pub unit: Unit,
    /// Least.
    pub low: f64,
    /// Most.
    pub high: f64,
    /// What to do about a value outside.
    pub advice: &'static str,
}

impl Range {
    /// Whether a value lies within. Not a number lies within nothing.
    #[must_use]
    pub fn holds(&self, value: f64) -> bool {
        (self.low..=self.high).contains(&value)
    }

    /// A value with its unit, as a figure on both scales where there are two.
    #[must_use]
    pub fn figure(&self, value: f64) -> String {
        if value.is_nan() {
            return "not a number".to_owned();
        }
        match self.unit {
            Unit::Celsius => {
                let fahrenheit = Temperature::from_celsius(value).fahrenheit();
                format!("{{{} °C|{} °F}}", short(value), short(fahrenheit))
            }
            Unit::Kilogram if value.abs() < 1.0 && value != 0.0 => {
                let mass = Mass::from_kilograms(value);
                let (grams, ounces) = (short(mass.grams()), short(mass.pounds() * 16.0));
                format!("{{{grams} g|{ounces} oz}}")
            }
            Unit::Kilogram => {
                let pounds = short(Mass::from_kilograms(value).pounds());
                format!("{{{} kg|{pounds} lb}}", short(value))
            }
            Unit::Metre if value.abs() < 1.0 && value != 0.0 => {
                let length = Length::from_metres(value);
                let inches = short(length.inches());
                format!("{{{} mm|{inches} in}}", short(length.millimetres()))
            }
            Unit::Metre => {
                let feet = short(Length::from_metres(value).inches() / 12.0);
                format!("{{{} m|{feet} ft}}", short(value))
            }
            Unit::SquareMetre => {
                let area = Area::from_square_metres(value);
                let inches = short(area.square_inches());
                format!("{{{} cm²|{inches} in²}}", short(area.square_centimetres()))
            }
            Unit::CubicMetre => {
                let volume = Volume::from_cubic_metres(value);
                // A quart of the United States is 0.946 353 litres (NIST Handbook 44, appendix C).
                let quarts = volume.litres() / 0.946_353;
                format!("{{{} l|{} qt}}", short(volume.litres()), short(quarts))
            }
            Unit::Kelvin => format!("{{{} °C|{} °F}}", short(value), short(value * 1.8)),
            Unit::MetrePerSecond => format!("{} m/s", short(value)),
            Unit::Second => span(TimeSpan::from_seconds(value)),
            Unit::Share => format!("{} %", short(value * 100.0)),
            Unit::Count => short(value),
        }
    }
}

/// At most four figures, and no noughts at the end.
fn short(value: f64) -> String {
    let size = value.abs();
    let places = if size >= 100.0 {
        0
    } else if size >= 10.0 {
        1
    } else {
        2
    };
    let text = format!("{value:.places$}");
    let text = if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.')
    } else {
        &text
    };
    if text == "-0" { "0" } else { text }.to_owned()
}

fn span(span: TimeSpan) -> String {
    if span.hours().abs() >= 2.0 {
        format!("{} h", short(span.hours()))
    } else {
        format!("{} min", short(span.minutes()))
    }
}

macro_rules! ranges {
    ($($(#[$doc:meta])* $name:ident = $unit:ident $low:expr, $high:expr, $quantity:literal, $advice:literal;)+) => {
        $($(#[$doc])* pub const $name: Range = Range {
            quantity: $quantity, unit: Unit::$unit, low: $low, high: $high, advice: $advice,
        };)+

        /// Every range.
        pub const ALL: &[Range] = &[$($name,)+];
    };
}

const MINUTE: f64 = 60.0;
const HOUR: f64 = 3600.0;

ranges! {
    /// Weight of one piece.
    PIECE_MASS = Kilogram 0.02, 40.0, "The weight of a piece", "Weigh it again, or enter several pieces.";
    /// How many pieces alike.
    PIECE_COUNT = Count 1.0, 200.0, "The number of pieces alike", "Take the piece out, or split the dish.";
    /// Thickness by the ruler.
    THICKNESS = Metre 0.008, 0.4, "The thickness", "Measure it again at the thickest place, or leave it empty.";
    /// Core temperature aimed for.
    TARGET = Celsius 45.0, 100.0, "The core temperature aimed for", "Enter the core, not the pit.";
    /// Air in a cooker.
    PIT = Celsius 60.0, 260.0, "The pit temperature", "Enter the air at the meat.";
    /// How many steps of a pit programme.
    PIT_STEPS = Count 1.0, 12.0, "The number of pit temperatures", "Keep the ones that matter.";
    /// Air of a warm oven: never below the 60 °C at which food is held hot.
    WARM_OVEN = Celsius 60.0, 120.0, "The air of the warm oven", "It must keep food at {60 °C|140 °F} or hotter.";
    /// Core temperature of a wrap or of a change of the pit.
    TURNING_POINT = Celsius 10.0, 100.0, "The core temperature at which something changes", "Enter the core, not the pit.";
    /// Time after it went on.
    AFTER_ON = Second 0.0, 48.0 * HOUR, "The time after it went on", "Enter hours and minutes since it went on.";
    /// Salt per trimmed weight.
    SALT_RATE = Share 0.0, 0.03, "The salt", "Usual is 1.2 % of the trimmed weight.";
    /// Salt ahead of the cook.
    SALT_AHEAD = Second 0.0, 48.0 * HOUR, "The time that salt is given", "Longer makes it taste like ham.";
    /// Time between two sprays.
    SPRAY_EVERY = Second 5.0 * MINUTE, 12.0 * HOUR, "The time between two sprays", "Usual is 45 min.";
    /// Least rest.
    REST = Second 0.0, 8.0 * HOUR, "The least rest", "Enter the rest before slicing, not the hold.";
    /// Slicing, all pieces together.
    SLICING = Second 0.0, 4.0 * HOUR, "The time for slicing", "Enter it for all pieces together.";
    /// Minutes of a dish of one's own.
    OWN_TIME = Second MINUTE, 24.0 * HOUR, "The time of a dish of your own", "Enter minutes, or hours and minutes.";
    /// Height above the sea.
    ALTITUDE = Metre -430.0, 5000.0, "The height above the sea", "Look it up for the place of the cook.";
    /// Air outside.
    OUTSIDE = Celsius -40.0, 50.0, "The air outside", "Enter what the weather forecast says.";
    /// Relative humidity outside.
    HUMIDITY = Share 0.0, 1.0, "The humidity outside", "Enter what the weather forecast says.";
    /// Wind at the cooker.
    WIND = MetrePerSecond 0.0, 25.0, "The wind at the cooker", "In a storm, do not light a fire.";
    /// Cooking grate.
    GRATE = SquareMetre 0.02, 4.0, "The cooking grate", "Measure length and width of all racks together.";
    /// Promise.
    PROMISE = Share 0.5, 0.99, "The promise", "Nine in ten is usual; certainty cannot be had.";
    /// Grown or small eaters.
    GUESTS = Count 0.0, 500.0, "The number of guests", "Enter who sits at the table.";
    /// Everybody at the table.
    TABLE = Count 1.0, 1000.0, "The number of guests", "Enter who sits at the table.";
    /// Cooked meat for one.
    APPETITE = Kilogram 0.0, 2.0, "The cooked meat for one", "Usual is {150 g|5 oz} to {300 g|11 oz}.";
    /// Cooked meat wanted over.
    LEFTOVERS = Kilogram 0.0, 100.0, "The meat wanted over", "Enter the cooked weight.";
    /// Offset of the clock.
    CLOCK_OFFSET = Second -50_400.0, 50_400.0, "The clock's offset", "Choose the serving time again.";
    /// Dishes in a plan.
    DISHES = Count 0.0, 24.0, "The number of dishes", "Make a second plan for the others.";
    /// Pieces of a dish, alike ones counted once.
    PIECES = Count 0.0, 40.0, "The number of different pieces", "Enter pieces of the same weight as one with a count.";
    /// Cookers in a plan.
    COOKERS = Count 0.0, 12.0, "The number of cookers", "Keep the ones that are lit.";
    /// People in a plan.
    CREW = Count 0.0, 20.0, "The number of people in the crew", "Keep the ones who lend a hand.";
    /// Water in wood, wet basis.
    WOOD_MOISTURE = Share 0.0, 0.6, "The water in the wood", "Covered and seasoned wood has 15 to 20 %.";
    /// A side of a cooker's chamber.
    CHAMBER_SIDE = Metre 0.1, 4.0, "A side of the chamber", "Measure the outside, legs and firebox left out.";
    /// Rub on a square metre.
    RUB = Kilogram 0.0, 2.0, "The rub on a square metre", "Usual is about {350 g|12 oz}.";
    /// Salt in the rub.
    SALT_IN_RUB = Share 0.0, 1.0, "The salt in the rub", "Enter its share by weight.";
    /// Binder on a square metre.
    BINDER = Kilogram 0.0, 1.0, "The binder on a square metre", "A thin film is enough.";
    /// Width of a roll.
    ROLL_WIDTH = Metre 0.15, 2.0, "The width of the roll", "It is printed on the box.";
    /// Times around a piece.
    TURNS = Count 1.0, 4.0, "The number of turns around a piece", "Two are usual.";
    /// The way home with raw food.
    COLD_TRAVEL = Second 0.0, 48.0 * HOUR, "The time on the way with raw food", "Enter the hours in the box.";
    /// An amount on the shopping list, in its SI unit.
    BOUGHT = Count 0.0, 100_000_000.0, "The amount on the list", "Enter what you want to buy.";
    /// Things of one's own on the list.
    EXTRAS = Count 0.0, 300.0, "The number of things of your own", "Take out what was bought long ago.";
    /// A price in the smallest coin.
    PRICE = Count 0.0, 1e12, "The price", "Enter what stands on the label.";
    /// Racks of a cooker.
    RACKS = Count 0.0, 12.0, "The number of racks", "Keep the ones that food lies on.";
    /// One rack.
    RACK_AREA = SquareMetre 0.01, 2.0, "The area of a rack", "Measure its length and width.";
    /// Free height above a rack.
    RACK_HEIGHT = Metre 0.02, 1.0, "The height above a rack", "Measure up to the next rack or the lid.";
    /// Hot side of a cooker.
    HOT_SIDE = Kelvin 0.0, 80.0, "How much hotter the hot side is than the place of the thermometer", "Measure both sides, or leave it empty.";
    /// Time between two rounds of fuel.
    FEED_EVERY = Second 10.0 * MINUTE, 48.0 * HOUR, "The time between two rounds of fuel", "Enter how long the cooker goes on by itself.";
    /// Hands at a step whose time was changed.
    STEP_TAKES = Second MINUTE, 6.0 * HOUR, "The time that a step takes", "Enter how long hands are at it.";
    /// From a pinned step to serving; negative after it.
    PIN_AHEAD = Second -72.0 * HOUR, 336.0 * HOUR, "The time from a pinned step to serving", "Take the pin out, or pin the step again.";
    /// A step of one's own.
    OWN_STEP_TAKES = Second 0.0, 48.0 * HOUR, "The time that a step of your own takes", "Enter minutes, or hours and minutes.";
    /// From a step of one's own to what it goes by.
    OWN_STEP_APART = Second 0.0, 336.0 * HOUR, "The time between a step of your own and what it goes by", "Enter hours and minutes.";
    /// Hands at a step of one's own.
    OWN_STEP_HANDS = Count 0.0, 2.0, "The number of people at a step", "Enter 0 where nobody has to be there, else 1 or 2.";
    /// Steps of one's own.
    OWN_STEPS = Count 0.0, 200.0, "The number of steps of your own", "Keep the ones that the day hangs on.";
    /// Ovens of the kitchen.
    OVEN_ROOM = SquareMetre 0.0, 4.0, "The shelves of the oven", "Measure the shelves that can be used.";
    /// Boxes that keep hot.
    BOX_ROOM = CubicMetre 0.0, 1.0, "The room in the boxes", "It is printed on the box; add them up.";
    /// Fridge.
    FRIDGE_ROOM = CubicMetre 0.0, 2.0, "The room in the fridge", "Enter what is free for raw meat.";
    /// Length of a name, in characters.
    NAME = Count 0.0, 200.0, "The length of a name in letters", "Shorten it; a note can hold the rest.";
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bounds_are_in_and_not_a_number_is_out() {
        for range in ALL {
            assert!(range.low < range.high, "{}", range.quantity);
            assert!(range.holds(range.low) && range.holds(range.high));
            assert!(!range.holds(f64::NAN) && !range.holds(f64::INFINITY));
            assert!(range.advice.ends_with('.'), "{}", range.quantity);
        }
    }

    #[test]
    fn figures_carry_their_unit_on_both_scales() {
        assert_eq!(PIECE_MASS.figure(400.0), "{400 kg|882 lb}");
        assert_eq!(PIECE_MASS.figure(0.02), "{20 g|0.71 oz}");
        assert_eq!(PIECE_MASS.figure(0.0), "{0 kg|0 lb}");
        assert_eq!(THICKNESS.figure(0.11), "{110 mm|4.33 in}");
        assert_eq!(PIT.figure(121.0), "{121 °C|250 °F}");
        assert_eq!(SALT_RATE.figure(0.012), "1.2 %");
        assert_eq!(REST.figure(2700.0), "45 min");
        assert_eq!(SALT_AHEAD.figure(172_800.0), "48 h");
        assert_eq!(PIT.figure(f64::NAN), "not a number");
        assert_eq!(OUTSIDE.figure(-0.001), "{0 °C|32 °F}");
    }
}
