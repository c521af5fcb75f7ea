//! What the plate says: the one answer of the screen, or what is missing for it.

use crate::format::{Formats, odds, rounded};
use crate::store::{Forecast, Progress};
use crate::words::{Told, gathering as words, hindrances};
use cook_model::plan::outlook::{DishTimes, Outlook, Window};
use cook_model::plan::{Dish, Plan};
use cook_model::units::{Moment, TimeSpan};

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub enum Answer {
    /// No dish is on the menu.
    Empty,
    /// The first answer is being worked out.
    Working,
    /// No dish can be reckoned; the first reason.
    Hindered(Told),
    /// The reckoning broke.
    Broken,
    /// When the dish that takes longest is table-ready.
    Ready(Box<Ready>),
}

/// The figures of the answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Ready {
    /// The dish and the day.
    pub heading: String,
    /// The ends of the window as large print, with the half of the day where the clock has halves.
    pub from: (String, Option<&'static str>),
    /// The same.
    pub to: (String, Option<&'static str>),
    /// The likely time and what the window holds.
    pub note: String,
    /// The window.
    pub window: Window,
    /// The window in words.
    pub label: String,
    /// When to put it on: heading, span, and what to aim for.
    pub on: [String; 3],
    /// The table's odds: heading, odds, and the slack.
    pub table: [String; 3],
    /// How the answer stands to the plan.
    pub standing: Option<&'static str>,
}

/// The answer for a plan.
#[must_use]
pub fn answer(plan: &Plan, forecast: &Forecast, formats: &Formats) -> Answer {
    if plan.dishes.is_empty() {
        return Answer::Empty;
    }
    let Some(outlook) = &forecast.outlook else {
        return match forecast.progress {
            Progress::Broken => Answer::Broken,
            _ => Answer::Working,
        };
    };
    match longest(plan, outlook) {
        Some((dish, times)) => Answer::Ready(Box::new(ready(
            plan, dish, times, outlook, forecast, formats,
        ))),
        None => outlook
            .dishes
            .iter()
            .find_map(|dish| dish.forecast.as_ref().err())
            .map_or(Answer::Working, |why| {
                Answer::Hindered(hindrances::hindrance(why, formats))
            }),
    }
}

/// The dish that goes on first, which is what the day hangs on.
fn longest<'a>(plan: &'a Plan, outlook: &'a Outlook) -> Option<(&'a Dish, &'a DishTimes)> {
    outlook
        .dishes
        .iter()
        .filter_map(|one| Some((plan.dishes.get(&one.dish)?, one.forecast.as_ref().ok()?)))
        .min_by_key(|(_, times)| times.on)
}

fn ready(
    plan: &Plan,
    dish: &Dish,
    times: &DishTimes,
    outlook: &Outlook,
    forecast: &Forecast,
    formats: &Formats,
) -> Ready {
    let window = times.table_ready;
    let [from, likely, to] = rounded(&window);
    let large = |moment: Moment| {
        let time = formats.zone.local(moment).time();
        (formats.clock.digits(time), formats.clock.half_of_day(time))
    };
    let serving = outlook.table.serving;
    let dishes = outlook
        .dishes
        .iter()
        .filter(|one| one.forecast.is_ok())
        .count();
    Ready {
        heading: words::table_ready(&dish.name, &formats.day_name(window.likely())),
        from: large(from),
        to: large(to),
        note: words::likely(&formats.time(likely)),
        label: words::window_label(&formats.from_to(from, to), &formats.time(likely)),
        window,
        on: [
            words::put_on(&dish.name, &formats.weekday(times.on)),
            put_on_span(times, formats),
            words::aim_for(&formats.time(crate::format::to_step(times.on, 300))),
        ],
        table: [
            words::all_by(dishes, plan.dishes.len(), &formats.time(serving)),
            odds(outlook.table.odds),
            outlook.table.slack.map_or_else(String::new, |slack| {
                words::slack(&formats.span(slack), slack >= TimeSpan::ZERO)
            }),
        ],
        standing: words::standing(forecast.progress),
    }
}

/// From the earliest to the latest time at which both hold and promise are kept; where none keeps both, the time aimed
/// for alone.
fn put_on_span(times: &DishTimes, formats: &Formats) -> String {
    let round = |moment| crate::format::to_step(moment, 300);
    let (earliest, latest) = (round(times.earliest_on), round(times.latest_on));
    if earliest < latest {
        formats.from_to(earliest, latest)
    } else {
        formats.time(round(times.on))
    }
}
