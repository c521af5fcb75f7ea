//! Prints everything that the model derives from a plan, as one JSON document.
//!
//! `cargo run --release -p cook-model --example day -- PLAN.json [--now 2026-09-12T06:00:00Z] [--members 256]`
//!
//! PLAN.json is a plan as Longcook exports it. Without `--now` the plan is looked at a week before serving. Moments are
//! seconds since 1970, UTC; `in_words` says the day on the local clock, with the offset that the serving time has.

use cook_model::forecast::FULL;
use cook_model::handover::file;
use cook_model::plan::outlook::{DishTimes, Outlook, Window};
use cook_model::plan::{Plan, Situation, Zone, check, derive};
use cook_model::safety::Units;
use cook_model::units::{Moment, TimeSpan};
use serde_json::{Value, json};
use std::error::Error;
use std::process::ExitCode;
use std::{env, fs};

const USAGE: &str = "usage: day PLAN.json [--now 2026-09-12T06:00:00Z] [--members 256]";

struct Asked {
    file: String,
    now: Option<Moment>,
    members: u32,
}

fn main() -> ExitCode {
    match run() {
        Ok(document) => {
            println!("{document:#}");
            ExitCode::SUCCESS
        }
        Err(error) => {
            eprintln!("{error}");
            ExitCode::FAILURE
        }
    }
}

fn run() -> Result<Value, Box<dyn Error>> {
    let asked = asked(env::args().skip(1))?;
    let bytes = fs::read(&asked.file).map_err(|error| format!("{}: {error}", asked.file))?;
    let (hand_over, plan) = file::read(&bytes).map_err(|refusal| match &refusal {
        file::Refusal::Wrong(places) => {
            let places = places
                .iter()
                .map(|place| format!("\n  {}: {}", place.at, place.because));
            format!("{refusal}{}", places.collect::<String>())
        }
        _ => refusal.to_string(),
    })?;
    let now = asked
        .now
        .unwrap_or(plan.serving.moment() - TimeSpan::from_hours(7.0 * 24.0));
    let zone = Zone::fixed(plan.serving.offset_seconds);
    let situation = Situation::new(now, zone.clone()).after(&hand_over.journal);
    let outlook = derive(&plan, &situation, asked.members);
    let problems: Vec<Value> = check(&plan, now)
        .iter()
        .map(|problem| json!({"at": problem.at, "message": problem.message(Units::default())}))
        .collect();
    Ok(json!({
        "plan": plan.name,
        "now": now,
        "problems": problems,
        "in_words": in_words(&plan, &outlook, &zone),
        "outlook": outlook,
    }))
}

fn asked(mut words: impl Iterator<Item = String>) -> Result<Asked, Box<dyn Error>> {
    let (mut file, mut now, mut members) = (None, None, FULL);
    while let Some(word) = words.next() {
        match word.as_str() {
            "--now" => {
                let text = words.next().ok_or(USAGE)?;
                let moment = text
                    .strip_suffix('Z')
                    .ok_or("--now wants a moment in UTC that ends in Z")?
                    .parse::<chrono::NaiveDateTime>()
                    .map_err(|error| format!("--now {text}: {error}"))?;
                now = Some(Moment::from_unix_seconds(moment.and_utc().timestamp()));
            }
            "--members" => members = words.next().ok_or(USAGE)?.parse()?,
            _ if file.is_none() && !word.starts_with('-') => file = Some(word),
            _ => return Err(USAGE.into()),
        }
    }
    Ok(Asked {
        file: file.ok_or(USAGE)?,
        now,
        members,
    })
}

/// The day as lines of text, for reading in a terminal.
fn in_words(plan: &Plan, outlook: &Outlook, zone: &Zone) -> Vec<String> {
    let clock = |moment| zone.local(moment).format("%a %H:%M").to_string();
    let window = |window: &Window| {
        format!(
            "{} to {}, likely {}",
            clock(window.from()),
            clock(window.to()),
            clock(window.likely())
        )
    };
    let name = |id| plan.dishes.get(&id).map_or("", |dish| dish.name.as_str());
    let mut lines = Vec::new();
    for dish in &outlook.dishes {
        let said = match &dish.forecast {
            Ok(times) => dish_in_words(times, clock, window),
            Err(hindrance) => format!("no forecast: {hindrance:?}"),
        };
        lines.push(format!("{} {}: {said}", dish.letter, name(dish.dish)));
    }
    if let Some(ready) = &outlook.table.ready {
        let odds = outlook.table.odds.in_twenty();
        lines.push(format!(
            "Table: {}; {odds} in 20 by {}",
            window(ready),
            clock(outlook.table.serving)
        ));
    }
    for step in &outlook.steps {
        let of = match (step.dish, step.cooker) {
            (Some(dish), _) => name(dish),
            (None, Some(cooker)) => plan
                .cookers
                .get(&cooker)
                .map_or("", |cooker| cooker.name.as_str()),
            (None, None) => "",
        };
        let who = match step.who {
            Some(id) => plan.crew.get(&id).map_or("", |member| member.name.as_str()),
            None if plan.crew.is_empty() => "",
            None => "nobody is up",
        };
        let minutes = step.takes.minutes();
        lines.push(format!(
            "{:?} {} {of}: {}; {minutes:.0} min; {who}",
            step.kind,
            step.round,
            window(&step.when)
        ));
    }
    for finding in &outlook.findings {
        let of = finding.dish.map_or("", name);
        lines.push(format!("{:?}: {of} {:?}", finding.gravity, finding.what));
    }
    lines
}

fn dish_in_words(
    times: &DishTimes,
    clock: impl Fn(Moment) -> String,
    window: impl Fn(&Window) -> String,
) -> String {
    format!(
        "on at {} (from {} to {}); ready {}; table-ready {}; {} in 20",
        clock(times.on),
        clock(times.earliest_on),
        clock(times.latest_on),
        window(&times.ready),
        window(&times.table_ready),
        times.odds.in_twenty()
    )
}
