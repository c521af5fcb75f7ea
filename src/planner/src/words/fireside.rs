//! What Fireside says.

use super::{list, steps as verbs};
use crate::format::Formats;
use crate::screens::fireside::due::Due;
use crate::screens::fireside::fire::FireLine;
use crate::words::journal::{cooker_name, dish_name};
use cook_model::live::Stage;
use cook_model::plan::Plan;
use cook_model::plan::outlook::StepKind;
use cook_model::units::Moment;

/// The screen without a plan.
pub const NO_PLAN: &str = "No plan is open";
/// What to do then.
pub const NO_PLAN_NOTE: &str = "Open one under Plans, or add a dish in Gathering.";
/// Before the first answer.
pub const WORKING: &str = "Being worked out";
/// What can be done meanwhile.
pub const WORKING_NOTE: &str = "Readings can be logged already.";
/// The reckoning broke down.
pub const BROKEN: &str = "The forecast is not to be had";
/// What can be done then.
pub const BROKEN_NOTE: &str = "Everything you log is kept. Reload the page for a forecast.";
/// Everything was done.
pub const ALL_DONE: &str = "Nothing left to do";
/// The key of a step that is done.
pub const DONE: &str = "Done";
/// The key of a fire that was fed.
pub const FED: &str = "Fed";
/// The key of a step that has to be told.
pub const TELL: &str = "Tell";
/// The line of the fire.
pub const FIRE: &str = "Fire";
/// What comes after the fire.
pub const THEN: &str = "Then";
/// The group of log keys.
pub const LOG: &str = "Log";
/// The group of dishes.
pub const DISHES: &str = "Dish";
/// Takes the last entry back.
pub const UNDO: &str = "undo";
/// An entry on its way to the disk.
pub const SAVING: &str = "saving";
/// Nothing was logged.
pub const NOTHING_LOGGED: &str = "Nothing logged yet";
/// The line between what was and what may be.
pub const TENDER: &str = "tender";
/// Half of it.
pub const HALF_WAY: &str = "half way";
/// The serving hour.
pub const TABLE: &str = "table";
/// When something happened.
pub const WHEN: &str = "When";
/// Just now.
pub const NOW: &str = "Now";
/// A moment ago.
pub const FIVE_AGO: &str = "5 min ago";
/// At another time.
pub const ANOTHER_TIME: &str = "At …";
/// The field of another time.
pub const AT: &str = "At";
/// Who tells it.
pub const WHO: &str = "Who";
/// Nobody in particular.
pub const NOBODY: &str = "Not said";
/// Which piece.
pub const WHICH_PIECE: &str = "Which piece";
/// All pieces of a dish.
pub const ALL_PIECES: &str = "All";
/// Which cooker.
pub const WHICH_COOKER: &str = "Which cooker";
/// Where the probe sits.
pub const PROBE_SITS: &str = "Where the probe sits";
/// With which gauge.
pub const WITH_GAUGE: &str = "Which gauge";
/// A number that is not on the ladder.
pub const ANOTHER_NUMBER: &str = "Another number";
/// Back to the ladder.
pub const LADDER: &str = "Back";
/// What a ladder is.
pub const LADDER_NOTE: &str = "Tap what the probe reads. Fill: what is expected.";
/// The same for a pit.
pub const PIT_LADDER_NOTE: &str = "Tap what the gauge reads.";
/// The key that rubs out a digit.
pub const RUB_OUT: &str = "Rub out";
/// Logs what was typed.
pub const LOG_IT: &str = "Log it";
/// Logs a number all the same.
pub const LOG_ANYWAY: &str = "Yes, log it";
/// Logs it as doubtful.
pub const LOG_DOUBTFUL: &str = "Log it as doubtful: bone or air";
/// The same for a gauge.
pub const LOG_DOUBTFUL_GAUGE: &str = "Log it as doubtful";
/// Changes the number first.
pub const CHANGE_IT: &str = "Change it";
/// The journal.
pub const LOGGED: &str = "What was logged";
/// What tapping an entry does.
pub const TAP_TO_MEND: &str = "tap one to mend it";
/// Strikes an entry out.
pub const STRIKE: &str = "Strike it out";
/// Brings it back.
pub const BRING_BACK: &str = "Bring it back";
/// What striking out is.
pub const STRIKE_NOTE: &str = "It stays readable, struck through, and no longer counts.";
/// It was at another time.
pub const OTHER_TIME: &str = "It was at this time";
/// It may be wrong.
pub const MARK_DOUBTFUL: &str = "Mark it doubtful";
/// It is right after all.
pub const MARK_SURE: &str = "It is right after all";
/// The list of things passed over.
pub const LEFT_OUT: &str = "Not logged";
/// What it is.
pub const LEFT_OUT_NOTE: &str = "past; tick off what was done";
/// A note.
pub const NOTE: &str = "Note";
/// How a probe goes in.
pub const HOW_PROBE: &str = "How does the probe go in?";
/// Nothing has been chosen to log for.
pub const NO_DISH: &str = "Add a dish with a cooker in Gathering first.";

/// It was sprayed.
pub const SPRAYED: &str = "Sprayed";
/// It was turned.
pub const TURNED: &str = "Turned";
/// It went on.
pub const WENT_ON: &str = "It went on";
/// It came off.
pub const CAME_OFF: &str = "It came off";
/// Into the box.
pub const INTO_BOX: &str = "Into the box";
/// Into the warm oven.
pub const INTO_WARM_OVEN: &str = "Into the warm oven";
/// Vented first.
pub const VENTED: &str = "Opened to vent";
/// Sliced.
pub const SLICED: &str = "Sliced or pulled";
/// At the table.
pub const SERVED: &str = "On the table whole";
/// Put away.
pub const PUT_AWAY: &str = "The rest is in the fridge";
/// Put away in ice.
pub const PUT_AWAY_ICE: &str = "The rest is in ice water";
/// Heated again.
pub const HEATED_UP: &str = "Being heated up again";
/// Fed without weighing.
pub const FED_NOT_WEIGHED: &str = "Fed, not weighed";
/// Which fuel.
pub const WHAT_FUEL: &str = "Fuel";

/// So many splits, with their weight.
#[must_use]
pub fn splits(count: usize, mass: &str) -> String {
    format!(
        "{}, about {mass}",
        super::count_at_start(count, "split", "splits")
    )
}

/// So much fuel.
#[must_use]
pub fn fed_mass(mass: &str) -> String {
    format!("About {mass}")
}

/// The sheet of the fire.
#[must_use]
pub fn fed_title(cooker: &str) -> String {
    format!("{cooker}: fed")
}

/// The sheet of a core: `Pork: core, °C`.
#[must_use]
pub fn core_title(dish: &str, formats: &Formats) -> String {
    format!("{dish}: core, {}", degrees(formats))
}

/// The sheet of a pit: `Offset: pit, °C`.
#[must_use]
pub fn pit_title(cooker: &str, formats: &Formats) -> String {
    format!("{cooker}: pit, {}", degrees(formats))
}

fn degrees(formats: &Formats) -> &'static str {
    crate::format::Measure::Core.unit(formats.units)
}

/// Wrapped in something.
#[must_use]
pub fn wrapped_in(cover: &str) -> String {
    format!("Wrapped in {cover}")
}

/// A key.
pub const CORE: &str = "Core";
/// A key.
pub const PIT: &str = "Pit";
/// A key.
pub const PROBE: &str = "Probe";
/// A key.
pub const SPRAY: &str = "Spray";
/// A key.
pub const TURN: &str = "Turn";
/// A key.
pub const MORE: &str = "More";
/// Under it.
pub const THE_REST: &str = "the rest";

/// Now on the clock.
pub const NOW_LABEL: &str = "now";
/// The line that a cut cooked to a temperature rises to.
pub const AT_TEMPERATURE: &str = "at temperature";
/// No core was read.
pub const NO_CORE: &str = "no core read yet";

/// The pit as it was read, and as it is run.
#[must_use]
pub fn pit_read(read: Option<String>, wanted: Option<String>) -> String {
    match (read, wanted) {
        (Some(read), Some(wanted)) => format!("pit {read}, wanted {wanted}"),
        (Some(read), None) => format!("pit {read}"),
        (None, Some(wanted)) => format!("no pit read yet, wanted {wanted}"),
        (None, None) => "no pit read yet".to_owned(),
    }
}

/// When it goes on.
#[must_use]
pub fn on_at(time: &str) -> String {
    format!("on at {time}")
}

/// Where it is and since when: `Pork: on since 00:31.`
#[must_use]
pub fn rests_on(name: &str, is: Stage, since: Option<Moment>, formats: &Formats) -> String {
    match since {
        Some(since) => format!("{name}: {} since {}.", stage(is), formats.day_time(since)),
        None => format!("{name}: {}.", stage(is)),
    }
}

/// When it is rested and sliced.
#[must_use]
pub fn table_ready(window: &str) -> String {
    format!("Rested and sliced: {window}.")
}

/// The picture in words.
#[must_use]
pub fn picture_label(name: &str, tender: bool, window: &str, likely: &str, table: &str) -> String {
    let (what, to) = if tender {
        ("Tenderness", "tender")
    } else {
        ("The way to its temperature", "ready")
    };
    format!(
        "{what} of {name} against the clock: {to} {window}, likely {likely}; the table is at {table}"
    )
}

/// Out of the fridge.
pub const TAKEN_OUT: &str = "Out of the fridge";
/// Back into it.
pub const PUT_BACK: &str = "Back in the fridge";
/// The probe is in.
pub const PROBE_IN: &str = "Probe in";
/// Unwrapped.
pub const UNWRAPPED: &str = "Unwrapped";
/// Back on its cooker.
pub const MOVED_BACK: &str = "Back on the cooker";
/// Out of the box.
pub const OUT_OF_BOX: &str = "Out of the box";
/// Into an oven.
pub const OVEN: &str = "Moved to the oven";
/// What is asked then.
pub const OVEN_NOTE: &str = "at what temperature";
/// What is asked then, in full.
pub const OVEN_AIR: &str = "What the oven is set to.";
/// The pit was set.
pub const PIT_SET: &str = "Pit set anew";
/// What is asked then.
pub const PIT_SET_NOTE: &str = "to what temperature";
/// The lid stood open.
pub const LID: &str = "Lid left open";
/// What is asked then.
pub const LID_NOTE: &str = "how long, in minutes";
/// What is asked then, in full.
pub const LID_MINUTES: &str = "When it was opened, and for how many minutes.";
/// The weather.
pub const WEATHER: &str = "Weather";
/// What is asked then.
pub const WEATHER_NOTE: &str = "air, rain or dry";
/// What is asked then, in full.
pub const WEATHER_AIR: &str = "Air in the shade.";
/// Rain or not.
pub const SKY: &str = "Sky";
/// No rain.
pub const DRY: &str = "Dry";
/// Rain.
pub const RAIN: &str = "Rain";
/// What a note is.
pub const NOTE_NOTE: &str = "in your own words";
/// Heat was lost.
pub const INTERRUPTION: &str = "The heat was lost";
/// By what.
pub const INTERRUPTION_NOTE: &str = "fire, power or lid";
/// What happened.
pub const WHAT_HAPPENED: &str = "What happened";
/// The good end of a gap.
pub const LAST_WELL: &str = "Last seen well";
/// The other end.
pub const FOUND: &str = "Found";
/// How it is now.
pub const AND_NOW: &str = "And now";
/// Heat is back.
pub const HEAT_BACK: &str = "Heat is back";
/// It is not.
pub const STILL_COLD: &str = "Still without heat";
/// What to do about the food.
pub const INTERRUPTION_CAUTION: &str = "Read the core before anything else. Without a reading at either end, count the time as warm; when in doubt, throw it out.";
/// The times are the wrong way round.
pub const WELL_BEFORE_FOUND: &str = "It was seen well before it was found: set both times.";

/// The sheet of everything else.
#[must_use]
pub fn more_title(name: &str) -> String {
    format!("{name}: log something else")
}

/// Shows every entry.
#[must_use]
pub fn show_all(count: usize) -> String {
    format!("Show all {count}")
}

/// What is to be done, for which dishes or at which cooker.
#[must_use]
pub fn due(
    due: &Due,
    plan: &Plan,
    cooker: Option<cook_model::handover::identity::CookerId>,
) -> String {
    if let Some(own) = due.own.and_then(|id| plan.own_steps.get(&id)) {
        return own.name.clone();
    }
    let names: Vec<String> = due
        .dishes
        .iter()
        .map(|dish| dish_name(plan, *dish))
        .collect();
    let first = due.dishes.first().and_then(|dish| plan.dishes.get(dish));
    let what = verbs::in_full(due.kind, first);
    let with = match (names.is_empty(), cooker) {
        (false, _) => list(&names),
        (true, Some(cooker)) => cooker_name(plan, cooker),
        (true, None) => return what.to_owned(),
    };
    format!("{what}: {with}")
}

/// When it may fall and who does it: `06:25–06:55, Joss`.
#[must_use]
pub fn span(due: &Due, plan: &Plan, now: Moment, formats: &Formats) -> String {
    let mut text = when(due.from, due.likely, due.to, now, formats);
    if let Some(member) = due.who.and_then(|who| plan.crew.get(&who)) {
        text = format!("{text}, {}", member.name);
    }
    text
}

fn when(from: Moment, likely: Moment, to: Moment, now: Moment, formats: &Formats) -> String {
    let wide = (to - from).minutes() >= 2.0;
    let times = if wide {
        let step = if (to - from).minutes() > 60.0 {
            300
        } else {
            60
        };
        let [from, to] = [from, to].map(|at| crate::format::to_step(at, step));
        formats.from_to(from, to)
    } else {
        formats.time(likely)
    };
    let date = |at| formats.zone.local(at).date();
    if date(from) == date(now) || (from - now).hours().abs() < 12.0 {
        times
    } else {
        format!("{} {times}", formats.weekday(from))
    }
}

/// What comes after: `Then salt: Lamb, 07:25–07:45`.
#[must_use]
pub fn then(what: &str, span: &str) -> String {
    format!("Then {}, {span}", lower(what))
}

fn lower(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_lowercase().chain(letters).collect()
    })
}

/// The fire's line: `next split 06:25–06:45`.
#[must_use]
pub fn next_feed(fire: &FireLine, now: Moment, formats: &Formats) -> String {
    let what = if fire.piece.is_some() {
        "split"
    } else {
        "fuel"
    };
    format!(
        "next {what} {}",
        when(fire.from, fire.likely, fire.to, now, formats)
    )
}

/// What is known of it: `fed 05:50`.
#[must_use]
pub fn fed(fire: &FireLine, plan: &Plan, formats: &Formats) -> String {
    let name = cooker_name(plan, fire.cooker);
    match fire.fed {
        Some(fed) => format!("{name}, fed {}", formats.time(fed)),
        None => name,
    }
}

/// The plate of a fire that is overdue.
#[must_use]
pub fn feed_now(fire: &FireLine, plan: &Plan) -> String {
    let what = if fire.piece.is_some() {
        "one split"
    } else {
        "fuel"
    };
    format!("Feed the fire: {what}, {}", cooker_name(plan, fire.cooker))
}

/// Why.
#[must_use]
pub fn feed_note(fire: &FireLine, formats: &Formats) -> String {
    match fire.fed {
        Some(fed) => format!("last fed {}; the fire comes first", formats.time(fed)),
        None => "no feeding was logged; the fire comes first".to_owned(),
    }
}

/// What follows a countdown that has run out.
#[must_use]
pub fn over(unit: &str) -> String {
    format!("{unit} over").trim().to_owned()
}

/// Over the picture: what the window is of.
#[must_use]
pub fn heading(stage: Stage, tender: bool, likely: &str) -> String {
    let ready = if tender { "Tender" } else { "At temperature" };
    match stage {
        Stage::NotOn => format!("{ready} as planned, likely {likely}"),
        Stage::On | Stage::Wrapped => format!("{ready}, likely {likely}"),
        Stage::Resting | Stage::Held => format!("Table-ready, likely {likely}"),
        Stage::Sliced => "At the table".to_owned(),
    }
}

/// Where a dish is, in two words.
#[must_use]
pub const fn stage(stage: Stage) -> &'static str {
    match stage {
        Stage::NotOn => "not on yet",
        Stage::On => "on",
        Stage::Wrapped => "wrapped",
        Stage::Resting => "off, resting",
        Stage::Held => "held hot",
        Stage::Sliced => "served",
    }
}

/// The slow stretch as it was planned.
#[must_use]
pub fn planned_stall(stall: (Moment, Moment), now: Moment, formats: &Formats) -> Option<String> {
    let (begins, ends) = stall;
    let about = |at: Moment| formats.time(crate::format::to_step(at, 600));
    if now >= ends {
        None
    } else if now >= begins {
        Some(format!("slow stretch till about {}", about(ends)))
    } else {
        Some(format!("slow stretch from about {}", about(begins)))
    }
}

/// A core reading asked about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Odd {
    /// Hotter than the air of the pit, or than water boils.
    TooHot,
    /// Colder than any fridge.
    TooCold,
    /// Fell, or rose, faster than meat does.
    Leap,
    /// No gauge reads this.
    NoPit,
}

/// Why a number is asked about.
#[must_use]
pub fn odd(odd: Odd, number: &str, last: Option<&str>) -> String {
    match (odd, last) {
        (Odd::TooHot, _) => format!(
            "A core of {number} is hotter than meat gets. Does the probe sit in the meat, and is it the right unit?"
        ),
        (Odd::TooCold, _) => {
            format!("A core of {number} is colder than a fridge. Is it the right number and unit?")
        }
        (Odd::Leap, Some(last)) => format!(
            "{number} is a leap from {last}. The probe may touch bone or stick out into the air."
        ),
        (Odd::Leap, None) => {
            format!("{number} is a leap. The probe may touch bone or stick out into the air.")
        }
        (Odd::NoPit, _) => format!("A pit of {number}? Is it the right number and unit?"),
    }
}

/// What a step of the run sheet is called on its key in the yard.
#[must_use]
pub const fn moment_key(kind: StepKind) -> &'static str {
    match kind {
        StepKind::On => "On",
        StepKind::Wrap => "Wrap",
        StepKind::Off => "Off",
        StepKind::Hold => "Box",
        StepKind::Slice => "Slice",
        StepKind::Serve => "Table",
        _ => "Chill",
    }
}
