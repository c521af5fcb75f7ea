//! What a careful friend would say about the plan: the fact, then what to do.

use super::{Told, capital, count_at_start, screens::plan_name, steps};
use crate::format::{Formats, cooks};
use cook_model::plan::Plan;
use cook_model::plan::outlook::{Finding, FindingKind};
use cook_model::safety::SURFACE_HOT;
use cook_model::units::Area;

/// A finding in words.
#[must_use]
pub fn finding(finding: &Finding, plan: &Plan, formats: &Formats) -> Told {
    let dish = finding
        .dish
        .and_then(|id| plan.dishes.get(&id))
        .map_or_else(
            || "a dish".to_owned(),
            |dish| plan_name_of(&dish.name, "a dish"),
        );
    let cooker = finding
        .cooker
        .and_then(|id| plan.cookers.get(&id))
        .map_or_else(
            || "the cooker".to_owned(),
            |cooker| plan_name_of(&cooker.name, "the cooker"),
        );
    let head_dish = capital(&dish);
    let head_cooker = capital(&cooker);
    match &finding.what {
        FindingKind::ServingPast => Told::new(
            "The serving time is past",
            "Choose a later one under Table.",
        ),
        FindingKind::OnPast { latest } => Told::new(
            format!(
                "{head_dish} should have gone on by {}",
                formats.day_time(*latest)
            ),
            "Put it on now and serve later, cook it hotter, or take the chance that its odds tell.",
        ),
        FindingKind::TooLittleGrate { wanted, there } => {
            let area = |square_metres| formats.area(Area::from_square_metres(square_metres));
            Told::new(
                format!("{head_cooker} has too little room"),
                format!(
                    "{} wanted with air between the pieces, {} there. Use another cooker for a dish, or another time.",
                    area(*wanted),
                    area(*there)
                ),
            )
        }
        FindingKind::TwoPitTemperatures { low, high } => Told::new(
            format!(
                "{head_cooker} cannot be {} and {} at once",
                formats.temperature(*low),
                formats.temperature(*high)
            ),
            "Two dishes lie on it together and want different air. Give one a cool end or a hot side with its own \
             temperature, another cooker, or another time.",
        ),
        FindingKind::NobodyForFire { from, to, rounds } => Told::new(
            format!(
                "Nobody is up to feed the fire, {}",
                formats.from_to(*from, *to)
            ),
            format!(
                "{} in everybody’s quiet hours, and a lit fire is never left alone. Let somebody who is awake and sober \
                 keep watch; or smoke until it is wrapped and finish in the oven; or cook by day and hotter; or use a \
                 cooker that holds itself.",
                count_at_start(*rounds as usize, "round falls", "rounds fall")
            ),
        ),
        FindingKind::NobodyUp { step, when } => Told::new(
            format!(
                "Nobody is up: {} {dish}, {}",
                steps::verb(*step).to_lowercase(),
                formats.window(when)
            ),
            "Change somebody’s quiet hours, or ask one more to lend a hand.",
        ),
        FindingKind::NotThawed { by, cold_water } => Told::new(
            format!("{head_dish} would not be thawed in time"),
            match cold_water {
                Some(span) => format!(
                    "It belonged in the fridge by {}. Cold water changed every 30 min still does it, in {}; then cook it at \
                     once.",
                    formats.day_time(*by),
                    formats.span(*span)
                ),
                None => format!(
                    "It belongs in the fridge by {}. Later than that, buy it fresh or serve later.",
                    formats.day_time(*by)
                ),
            },
        ),
        FindingKind::HoldTooLong {
            waits,
            limit,
            odds: kept,
        } => Told::new(
            format!("{head_dish} may have to wait {}", formats.span(*waits)),
            format!(
                "It may stay hot and good for no more than {}; it lasts till slicing in {}. Put it on later, or hold it in a \
                 warm oven.",
                formats.span(*limit),
                cooks(*kept)
            ),
        ),
        FindingKind::PromiseBroken { odds: kept } => Told::new(
            format!("{head_dish} is in time in {}", cooks(*kept)),
            "Serve later, cook it hotter, wrap it sooner, or take that chance.",
        ),
        FindingKind::TargetLowered { from, to, boiling } => Told::new(
            format!("Water boils at {} up there", formats.temperature(*boiling)),
            format!(
                "So {dish} is aimed at {} instead of {}. Go by how the probe feels.",
                formats.temperature(*to),
                formats.temperature(*from)
            ),
        ),
        FindingKind::TargetBelowMinimum {
            target,
            minimum,
            by_table,
        } => Told::new(
            format!(
                "{head_dish} is aimed below {}",
                formats.temperature(*minimum)
            ),
            match by_table {
                Some(span) => format!(
                    "{} at the coldest point is the published least. At {} the printed table wants it to stay there for {}. \
                     Not for the young, the old, the pregnant or the ill.",
                    formats.temperature(*minimum),
                    formats.temperature(*target),
                    formats.span(*span)
                ),
                None => format!(
                    "{} at the coldest point is the published least, and no table allows {}. Aim higher.",
                    formats.temperature(*minimum),
                    formats.temperature(*target)
                ),
            },
        ),
        FindingKind::SlowSurface { likely } => Told::new(
            format!("{head_dish} is slow to get hot outside"),
            format!(
                "Its surface is past {} only about {} after it left the cold; 4 h is the limit. Cook it hotter, or put \
                 it on straight from the fridge.",
                formats.temperature(SURFACE_HOT),
                formats.span(*likely)
            ),
        ),
        FindingKind::SlowCoreNotIntact { likely } => Told::new(
            format!("{head_dish} warms too slowly in the middle"),
            format!(
                "It counts as not intact, and its middle takes about {} to get hot; 4 h is the limit. Cook it hotter, \
                 or flatter, or in smaller pieces. If it is intact, say so at the dish.",
                formats.span(*likely)
            ),
        ),
        FindingKind::SlowCoreIntact { likely } => Told::new(
            format!("{head_dish} is slow in the middle"),
            format!(
                "About {} until its middle is hot. It is intact, so its surface governs: put the probe in only once \
                 the surface is hot.",
                formats.span(*likely)
            ),
        ),
        FindingKind::AskIntact => Told::new(
            format!("{head_dish}: is every piece intact?"),
            "Not injected, not blade-tenderised, not boned and rolled, not stuffed, not minced. No answer counts as no.",
        ),
        FindingKind::TooLittleFood { wanted, planned } => Told::new(
            format!(
                "{} of cooked meat is missing",
                formats.mass(*wanted - *planned)
            ),
            format!(
                "{} wanted, {} planned. Add a piece, or ask less for each plate.",
                formats.mass(*wanted),
                formats.mass(*planned)
            ),
        ),
        FindingKind::SaltTooShort { ahead, least } => Told::new(
            format!("{head_dish}: salt wants at least {}", formats.span(*least)),
            format!(
                "{} is planned, which draws water out and leaves it there. Salt it earlier, or just as it goes on.",
                formats.span(*ahead)
            ),
        ),
    }
}

fn plan_name_of(name: &str, unnamed: &str) -> String {
    if name.trim().is_empty() {
        unnamed.to_owned()
    } else {
        plan_name(name).to_owned()
    }
}

/// The key that opens the dish that a finding is about.
#[must_use]
pub fn open_dish(name: &str) -> String {
    format!("Open {}", plan_name_of(name, "the dish"))
}
