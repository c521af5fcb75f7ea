//! The facts that each kind of question asks for.

use super::prompt::PromptKind::{
    Audience, Choice, Count, Cut, Intact, Keep, Length, Loads, Mass, Moment, Share, Span,
    Temperature, Temperatures, ThreeMasses, ThreeSpans, Wind, YesNo, Zone,
};
use super::prompt::{Prompt, PromptKind};

const HOUR: f64 = 3600.0;
const CORE: PromptKind = Temperature(-2.0, 130.0);
const AIR: PromptKind = Temperature(-40.0, 50.0);
const PIT: PromptKind = Temperature(0.0, 400.0);
const LOT: PromptKind = Mass(0.02, 400.0);

const fn needed(key: &'static str, words: &'static str, kind: PromptKind) -> Prompt {
    Prompt {
        key,
        words,
        kind,
        needed: true,
        from_plan: false,
    }
}

const fn may(key: &'static str, words: &'static str, kind: PromptKind) -> Prompt {
    Prompt {
        needed: false,
        ..needed(key, words, kind)
    }
}

const fn plan(prompt: Prompt) -> Prompt {
    Prompt {
        from_plan: true,
        ..prompt
    }
}

const CUT: Prompt = plan(needed("cut", "What is it?", Cut));
const INTACT: Prompt = plan(may(
    "intact",
    "Is it whole, with nothing put inside it?",
    Intact,
));
const WEIGHT: Prompt = plan(may("mass", "How much of it, as it went on?", LOT));
const AROUND: Prompt = plan(may("air", "How warm is the air around it?", AIR));
const WHO: Prompt = plan(may("audience", "Who eats it?", Audience));

/// The facts of a kind.
pub(super) fn of(kind: &str) -> Option<&'static [Prompt]> {
    Some(match kind {
        "heat_lost" => HEAT_LOST,
        "slow_to_warm" => SLOW_TO_WARM,
        "left_out" => LEFT_OUT,
        "odd_reading" => ODD_READING,
        "running_late" => RUNNING_LATE,
        "can_it_wait" => CAN_IT_WAIT,
        "cool_it_down" => COOL_IT_DOWN,
        "heat_it_up" => HEAT_IT_UP,
        "thaw_in_time" => THAW_IN_TIME,
        "in_two_goes" => IN_TWO_GOES,
        "cool_pit" => COOL_PIT,
        "will_it_fit" => WILL_IT_FIT,
        "shared_cooker" => SHARED_COOKER,
        "cut_smaller" => CUT_SMALLER,
        "how_much" => HOW_MUCH,
        "weather_ahead" => WEATHER_AHEAD,
        "high_up" => HIGH_UP,
        "fire_lasts" => FIRE_LASTS,
        "clock_change" => CLOCK_CHANGE,
        "good_habit" => GOOD_HABIT,
        _ => return None,
    })
}

const HEAT_LOST: &[Prompt] = &[
    CUT,
    needed("keep", "Where has it been since?", Keep),
    may(
        "core_now",
        "What is its core now, at the coldest place?",
        CORE,
    ),
    may("core_before", "What was its core before?", CORE),
    may(
        "since",
        "How long ago did it lose its heat, at the longest?",
        Span(0.0, 72.0 * HOUR),
    ),
    WEIGHT,
    INTACT,
    AROUND,
    may(
        "forgotten",
        "How many pieces were forgotten?",
        Count(0.0, 200.0),
    ),
    may("unwatched", "Was nobody awake?", YesNo),
];

const SLOW_TO_WARM: &[Prompt] = &[
    CUT,
    INTACT,
    needed(
        "since",
        "How long ago did it leave the fridge?",
        Span(0.0, 72.0 * HOUR),
    ),
    may(
        "core_now",
        "What is its core now, at the coldest place?",
        CORE,
    ),
    may(
        "coolest_pit",
        "What is the coolest air at the meat that you read?",
        PIT,
    ),
    may(
        "hot_after",
        "After how long did its core read {60 °C|140 °F}?",
        Span(0.0, 72.0 * HOUR),
    ),
];

const LEFT_OUT: &[Prompt] = &[
    needed("raw", "Is it raw?", YesNo),
    may("span", "For how long, in all?", Span(0.0, 240.0 * HOUR)),
    may("core", "What is its core now?", CORE),
    AROUND,
    may("planned", "Is it only a plan so far?", YesNo),
    may("served", "Is it on the table for guests?", YesNo),
];

const ODD_READING: &[Prompt] = &[
    needed(
        "of",
        "What did you read?",
        Choice(&[("core", "The core"), ("pit", "The pit")]),
    ),
    needed(
        "readings",
        "What did it read, in each place?",
        Temperatures(-60.0, 700.0),
    ),
    plan(may("expected", "What does the forecast expect?", PIT)),
    may("one_thermometer", "All by one thermometer?", YesNo),
    may("handed_over", "Does somebody else act on it?", YesNo),
    may("at_the_lid", "Was the pit read at the lid?", YesNo),
];

const RUNNING_LATE: &[Prompt] = &[
    CUT,
    plan(needed(
        "left",
        "How long is left until you serve?",
        Span(0.0, 72.0 * HOUR),
    )),
    may("core", "What is its core now, at the coldest place?", CORE),
    plan(may(
        "still_takes",
        "How much longer does the forecast give it?",
        ThreeSpans(0.0, 72.0 * HOUR),
    )),
    may("pit", "What is the air at the meat?", PIT),
    plan(may("pit_planned", "What was it to be?", PIT)),
    may("wrapped", "Is it wrapped?", YesNo),
    INTACT,
];

const CAN_IT_WAIT: &[Prompt] = &[
    CUT,
    needed(
        "wait",
        "How long does it have to wait?",
        Span(0.0, 48.0 * HOUR),
    ),
    needed("keep", "Where?", Keep),
    may("core", "What is its core now, at the coldest place?", CORE),
    WEIGHT,
    INTACT,
    AROUND,
    may("unfinished", "Is it not tender yet?", YesNo),
    may("on_the_road", "Does it wait on the road?", YesNo),
    WHO,
];

const COOL_IT_DOWN: &[Prompt] = &[
    needed("mass", "How much is left, cooked?", LOT),
    may("depth", "How deep does it lie?", Length(0.005, 0.4)),
    may("ice", "Is it in ice water?", YesNo),
    may("fridge", "How cold is the fridge?", Temperature(-5.0, 20.0)),
    may(
        "since",
        "How long ago was it put away?",
        Span(0.0, 240.0 * HOUR),
    ),
    may("core_now", "What does its warmest spot read now?", CORE),
];

const HEAT_IT_UP: &[Prompt] = &[
    needed(
        "mass",
        "How heavy is one piece or pan, cooked?",
        Mass(0.02, 40.0),
    ),
    needed("oven", "How hot is the oven?", Temperature(40.0, 300.0)),
    may(
        "depth",
        "How deep does it lie in a covered pan?",
        Length(0.005, 0.4),
    ),
    may("fan", "Has the oven a fan?", YesNo),
    may("core", "What is its core now?", CORE),
];

const THAW_IN_TIME: &[Prompt] = &[
    CUT,
    plan(needed("mass", "How heavy is one piece?", Mass(0.02, 40.0))),
    plan(needed(
        "available",
        "How long until it has to go on?",
        Span(0.0, 480.0 * HOUR),
    )),
    needed(
        "way",
        "How is it to thaw?",
        Choice(&[
            ("fridge", "In the fridge"),
            ("cold_water", "In cold water that I change every 30 min"),
            ("standing_water", "In water that I do not change"),
            ("counter", "On the counter"),
            ("frozen", "Not at all: frozen onto the smoker"),
        ]),
    ),
];

const IN_TWO_GOES: &[Prompt] = &[
    CUT,
    needed(
        "between",
        "What is in between?",
        Choice(&[
            ("straight_on", "It moves hot from one heat to the next"),
            ("chilled", "It is chilled"),
            ("left_out", "It stays out"),
        ]),
    ),
    may("core", "What is its core at the end of the first go?", CORE),
    may("tender", "Is it cooked until tender by then?", YesNo),
    may("second_heat", "How hot is the second go?", PIT),
    may(
        "oven_first",
        "Is the oven first and the smoke after?",
        YesNo,
    ),
    may("done", "Has it happened already?", YesNo),
    INTACT,
];

const COOL_PIT: &[Prompt] = &[
    CUT,
    needed(
        "pit",
        "How hot is the air at the meat in the cool stretch?",
        PIT,
    ),
    INTACT,
];

const WILL_IT_FIT: &[Prompt] = &[
    CUT,
    plan(needed(
        "available",
        "How long from the earliest start until you serve?",
        Span(0.0, 240.0 * HOUR),
    )),
    plan(needed(
        "takes",
        "How long does the forecast say, rest and all?",
        ThreeSpans(0.0, 240.0 * HOUR),
    )),
    may(
        "one_time_before",
        "How long did it take last time?",
        Span(0.0, 72.0 * HOUR),
    ),
    plan(may("bought", "How heavy was it as bought?", LOT)),
    plan(may("trimmed", "How heavy is it trimmed?", LOT)),
    plan(may("first_time", "Is it the first time?", YesNo)),
    may("sleep", "Does everybody sleep in between?", YesNo),
];

const SHARED_COOKER: &[Prompt] = &[
    plan(needed(
        "loads",
        "What goes on it, and how long does each take?",
        Loads,
    )),
    may("one_after_the_other", "One after the other?", YesNo),
];

const CUT_SMALLER: &[Prompt] = &[
    CUT,
    plan(needed(
        "mass",
        "How heavy is one piece as it is?",
        Mass(0.02, 40.0),
    )),
    needed("into", "Into how many?", Count(2.0, 8.0)),
    may("bought_smaller", "Are they bought smaller, not cut?", YesNo),
    may("thin_end", "How thick is its thin end?", Length(0.003, 0.4)),
];

const HOW_MUCH: &[Prompt] = &[
    CUT,
    plan(needed("people", "How many eat?", Count(1.0, 1000.0))),
    plan(may(
        "portion",
        "How much cooked meat for each?",
        Mass(0.02, 1.0),
    )),
    may(
        "left_over",
        "What share of the raw weight is left?",
        Share(0.2, 0.9),
    ),
    plan(may("raw", "How much raw meat is there?", LOT)),
    WHO,
];

const WEATHER_AHEAD: &[Prompt] = &[
    plan(needed("air", "How cold will it be?", AIR)),
    plan(needed(
        "wind_metres_per_second",
        "How strong is the wind?",
        Wind(0.0, 60.0),
    )),
    may(
        "on_wood_or_dry_grass",
        "Does it stand on wood or dry grass?",
        YesNo,
    ),
];

const HIGH_UP: &[Prompt] = &[
    plan(needed(
        "altitude",
        "How high up is it?",
        Length(-430.0, 5000.0),
    )),
    plan(needed("target", "Which core do you aim for?", CORE)),
];

const FIRE_LASTS: &[Prompt] = &[
    needed("laid", "How much fuel is laid?", Mass(0.05, 200.0)),
    plan(needed(
        "per_hour",
        "How much does it burn in an hour?",
        ThreeMasses(0.01, 20.0),
    )),
    plan(needed(
        "wanted",
        "How long does it have to last?",
        Span(0.0, 72.0 * HOUR),
    )),
];

const CLOCK_CHANGE: &[Prompt] = &[
    plan(needed("on", "When does it go on?", Moment)),
    plan(needed(
        "takes",
        "How long does it take?",
        Span(0.0, 72.0 * HOUR),
    )),
    plan(needed("zone", "Which clock?", Zone)),
];

const GOOD_HABIT: &[Prompt] = &[needed(
    "about",
    "About what?",
    Choice(&[
        ("what_to_write", "What to write down"),
        ("how_often_to_read", "How often to read"),
        ("earlier_cooks", "Earlier cooks"),
        ("hours_for_each_pound", "Hours for each pound"),
        ("when_to_start", "When to start"),
        ("steps_and_hands", "Steps and hands"),
        ("lessons_learned", "Lessons learned"),
        ("first_time", "The first time"),
        ("alarms_and_sleep", "Alarms and sleep"),
        ("unwatched_gap", "A gap that nobody watched"),
        ("advice_that_disagrees", "Advice that disagrees"),
        ("after_a_break", "After a break"),
        ("short_fierce_steps", "Short fierce steps"),
        ("counting_pieces", "Counting pieces"),
        ("handing_over", "Handing over"),
        ("where_the_pit_is_read", "Where the pit is read"),
        ("how_long_it_may_wait", "How long it may wait"),
        ("which_weight", "Which weight"),
        ("sums_of_loss", "Sums of trim and loss"),
    ]),
)];
