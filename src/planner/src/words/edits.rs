//! What a change was about, for the key that takes it back.

use crate::store::Edit;
use crate::words::screens::plan_name;
use cook_model::plan::Plan;

/// A change in a few words, as they follow “Undo:”.
#[must_use]
pub fn edit(edit: &Edit, plan: &Plan) -> String {
    let name = |name: Option<&String>, unnamed: &str| or(name.map_or("", |name| name), unnamed);
    match edit {
        Edit::Name => "name".to_owned(),
        Edit::Serving => "serving time".to_owned(),
        Edit::Guests => "guests".to_owned(),
        Edit::Appetite => "appetite".to_owned(),
        Edit::Place => "place and weather".to_owned(),
        Edit::Promise => "how sure".to_owned(),
        Edit::Audience => "who is served".to_owned(),
        Edit::Crew(id) => name(plan.crew.get(id).map(|one| &one.name), "crew"),
        Edit::CrewJoined(name) => format!("{} joins", or(name, "somebody")),
        Edit::CrewLeft(name) => format!("{} leaves", or(name, "somebody")),
        Edit::Cooker(id) => name(plan.cookers.get(id).map(|one| &one.name), "cooker"),
        Edit::CookerCame(name) => format!("{} added", or(name, "cooker")),
        Edit::CookerWent(name) => format!("{} removed", or(name, "cooker")),
        Edit::Dish(id) => name(plan.dishes.get(id).map(|one| &one.name), "dish"),
        Edit::DishAdded(name) => format!("{} added", or(name, "dish")),
        Edit::DishTakenOff(name) => format!("{} taken off", or(name, "dish")),
        Edit::PieceTaken(name) => super::swap::taken(&or(name, "dish")),
        Edit::Line(item) => super::shopping::item(*item, plan),
        Edit::Extra(id) => name(
            plan.extras.get(id).map(|one| &one.name),
            "a thing of your own",
        ),
        Edit::ExtraAdded(name) => format!("{} on the list", or(name, "a thing of your own")),
        Edit::ExtraTakenOff(name) => format!("{} off the list", or(name, "a thing of your own")),
        Edit::Supplies => "kitchen habits".to_owned(),
        Edit::Currency => "currency".to_owned(),
        Edit::StepMoved(key) | Edit::StepNudged(key) => {
            format!("{} moved", super::steps::named(*key, plan))
        }
        Edit::StepPinned(key) => format!("{} pinned", super::steps::named(*key, plan)),
        Edit::StepUnpinned(key) => format!("pin out of {}", super::steps::named(*key, plan)),
        Edit::StepTakes(key) => format!("time for {}", super::steps::named(*key, plan)),
        Edit::OwnStep(id) => name(
            plan.own_steps.get(id).map(|one| &one.name),
            "a step of your own",
        ),
        Edit::OwnStepAdded(name) => format!("{} on the sheet", or(name, "a step of your own")),
        Edit::OwnStepTakenOff(name) => {
            format!("{} off the sheet", or(name, "a step of your own"))
        }
        Edit::TakenIn => format!("file taken into {}", plan_name(&plan.name)),
    }
}

fn or(name: &str, unnamed: &str) -> String {
    let name = name.trim();
    if name.is_empty() { unnamed } else { name }.to_owned()
}

/// The key that takes the last change back.
#[must_use]
pub fn undo(what: &str) -> String {
    format!("Undo: {what}")
}

/// The key that makes a change again that was taken back.
#[must_use]
pub fn redo(what: &str) -> String {
    format!("Again: {what}")
}

/// What the line over the bar is for.
pub const LAST_CHANGE: &str = "Last change";
/// Everything of this visit is taken back.
pub const NOTHING_TO_UNDO: &str = "Nothing to undo";
