//! The shopping list in words: things, aisles, amounts in shop units, and how each amount was worked out.

use super::{capital, count, gathering, list};
use crate::format::{Formats, Span, number};
use cook_model::handover::identity::DishId;
use cook_model::plan::Plan;
use cook_model::provisions::fuel::{FuelNeed, LearnedFactor};
use cook_model::provisions::shopping::{
    Aisle, Bill, Item, Line, PackKind, PricedBy, ShopAmount, Working,
};
use cook_model::provisions::{EvenOut, Lie, Quantity, SaltAmount};
use cook_model::units::{Area, Length, Mass};

/// The patch of surface for which a rate is told.
const PATCH: Area = Area::from_square_metres(0.1);

/// The plate.
pub const COST: &str = "What it costs";
/// Nothing has a price yet.
pub const NO_PRICES: &str = "No prices yet. Open a line to enter what stands on the label.";
/// No plan, or nothing in it.
pub const EMPTY: &str = "Nothing to buy yet. Add a dish at the gathering.";
/// The key that copies the list.
pub const COPY: &str = "Copy as text";
/// It worked.
pub const COPIED: &str = "The list is on the clipboard.";
/// It did not.
pub const NOT_COPIED: &str =
    "This browser keeps its clipboard shut. Send the list as a file instead.";
/// The key that hands the list on.
pub const SHARE: &str = "Share or save";
/// The key that prints it.
pub const PRINT: &str = "Print";
/// Heading of a thing of one's own.
pub const OWN_HEAD: &str = "Something of your own";
/// Its name.
pub const OWN_NAME: &str = "What is it?";
/// Its aisle.
pub const OWN_AISLE: &str = "Where it lies";
/// The key that puts it on the list.
pub const OWN_ADD: &str = "Put it on the list";
/// The key that takes it off.
pub const OWN_OFF: &str = "Take it off the list";
/// Wanted instead.
pub const WANTED: &str = "Wanted";
/// In the house.
pub const ALREADY: &str = "Already have";
/// On the label.
pub const PRICE: &str = "Price";
/// No price is like this.
pub const NOT_A_PRICE: &str = "This cannot be a price. Enter what stands on the label.";
/// For what.
pub const PRICE_FOR: &str = "for";
/// Not wanted.
pub const LEFT_OUT: &str = "Not needed: leave it out of the sum";
/// Your amount stands.
pub const OVERRIDDEN: &str = "your amount";
/// Currency.
pub const CURRENCY: &str = "Currency";
/// Changing it changes no figure.
pub const CURRENCY_NOTE: &str = "Prices stay as they were typed; only their sign changes.";
/// Waits.
pub const WAITS: &str = "waits for the forecast";
/// A unit that does not fit.
pub const UNLIKE: &str = "A unit does not fit this line and was left aside; enter both amounts in the same kind of unit.";

/// The name of an aisle.
#[must_use]
pub const fn aisle(aisle: Aisle) -> &'static str {
    match aisle {
        Aisle::Butcher => "Butcher",
        Aisle::Greengrocer => "Greengrocer",
        Aisle::DryGoods => "Dry goods",
        Aisle::Household => "Household",
        Aisle::Fuel => "Fuel",
        Aisle::Frozen => "Ice, last of all",
    }
}

/// The name of a thing on the list.
#[must_use]
pub fn item(item: Item, plan: &Plan) -> String {
    let dish = |id: DishId| {
        let name = plan.dishes.get(&id).map_or("", |dish| dish.name.as_str());
        gathering::dish_name(name).to_owned()
    };
    match item {
        Item::Meat(id) | Item::OwnDish(id) => dish(id),
        Item::Extra(id) => match plan.extras.get(&id).map(|extra| extra.name.trim()) {
            None | Some("") => "Something of your own".to_owned(),
            Some(name) => name.to_owned(),
        },
        Item::Salt => "Salt".to_owned(),
        Item::Rub => "Rub".to_owned(),
        Item::Binder => "Mustard or oil under the rub".to_owned(),
        Item::Spray => "Vinegar or juice to spray".to_owned(),
        Item::Paper => "Butcher paper, unwaxed".to_owned(),
        Item::Foil => "Foil".to_owned(),
        Item::DripPans => "Pans under the meat".to_owned(),
        Item::ServingPans => "Pans to serve from".to_owned(),
        Item::RestBox => "Box to keep it hot, with towels".to_owned(),
        Item::Wood => "Hardwood splits, dry".to_owned(),
        Item::Lump => "Lump charcoal".to_owned(),
        Item::Briquettes => "Charcoal briquettes".to_owned(),
        Item::Pellets => "Wood pellets".to_owned(),
        Item::Propane => "Propane".to_owned(),
        Item::Electricity => "Current from the socket".to_owned(),
        Item::Ice => "Ice".to_owned(),
    }
}

/// An amount as the shop hands it over: `2 sacks of 5 kg`, `7.6 kg`.
#[must_use]
pub fn shop_amount(amount: &ShopAmount, formats: &Formats) -> String {
    match amount.packs {
        Some((packs, pack)) => {
            let (one, many) = match pack.kind {
                PackKind::Pack => ("pack", "packs"),
                PackKind::Sack => ("sack", "sacks"),
                PackKind::Roll => ("roll", "rolls"),
                PackKind::Bottle => ("bottle", "bottles"),
                PackKind::Piece => ("piece", "pieces"),
            };
            format!("{packs} {}", if packs == 1 { one } else { many })
        }
        None => formats.quantity(amount.amount),
    }
}

/// The large figure of a line; empty while it waits.
#[must_use]
pub fn amount(line: &Line, formats: &Formats) -> String {
    let amount = line.to_buy.as_ref();
    amount.map_or_else(String::new, |amount| shop_amount(amount, formats))
}

/// What a line says under its name.
#[must_use]
pub fn note(line: &Line, formats: &Formats) -> String {
    let mut parts = Vec::new();
    match (line.wanted, &line.to_buy) {
        (Some(wanted), Some(bought)) => {
            if let Some((_, pack)) = bought.packs {
                parts.push(format!(
                    "of {}, {} wanted",
                    formats.quantity(pack.holds),
                    formats.quantity(wanted)
                ));
            }
            if let Some(Working::Pieces { pieces, .. }) = &line.working {
                let pieces: Vec<String> = pieces
                    .iter()
                    .map(|(count, mass)| format!("{count} of {}", formats.mass(*mass)))
                    .collect();
                parts.push(list(&pieces));
            }
        }
        (None, _) if matches!(line.item, Item::OwnDish(_)) => {
            parts.push("how many? Say it with the dish".to_owned());
        }
        (None, _) if matches!(line.item, Item::Extra(_)) => {}
        _ => parts.push(WAITS.to_owned()),
    }
    if let Some(Working::Wrapped {
        roll,
        parts: wrapped,
    }) = &line.working
        && wrapped
            .iter()
            .any(|(_, _, need)| need.lie == Lie::TooNarrow)
    {
        let width = formats.thickness(roll.width);
        parts.push(format!("a roll of {width} is too narrow"));
    }
    if line.item == Item::Binder || line.item == Item::Rub {
        parts.extend(line.working.as_ref().and_then(|working| match working {
            Working::Surface { surface, .. } => Some(format!("for {}", formats.area(*surface))),
            _ => None,
        }));
    }
    if let Some(already) = line.already {
        parts.push(format!("{} in the house", formats.quantity(already)));
    }
    if line.overridden {
        parts.push(OVERRIDDEN.to_owned());
    }
    parts.join(". ")
}

/// How an amount was worked out, a sentence a line.
#[must_use]
pub fn working(line: &Line, plan: &Plan, formats: &Formats) -> Vec<String> {
    let dish = |id: DishId| item(Item::Meat(id), plan);
    let mut said = match &line.working {
        None => Vec::new(),
        Some(Working::Pieces {
            weights, source, ..
        }) => vec![
            format!(
                "To buy {}; {} goes on after trimming; {} on the plate.",
                formats.mass(weights.bought),
                formats.mass(weights.trimmed),
                formats.mass(weights.on_plate)
            ),
            format!("Yield: {source}."),
        ],
        Some(Working::Counted) => vec!["As many as the plan has.".to_owned()],
        Some(Working::Salt { parts, teaspoons }) => {
            let mut said: Vec<String> = parts
                .iter()
                .map(|part| {
                    let even = part
                        .even
                        .map_or_else(String::new, |even| evens_out(even, formats));
                    format!("{}: {}.{even}", dish(part.dish), salt(part.amount, formats))
                })
                .collect();
            if let Some((fewest, most)) = teaspoons {
                said.push(format!(
                    "By the spoon {} to {} level teaspoons; weigh it if you can.",
                    number(*fewest, 0),
                    number(*most, 0)
                ));
            }
            said.push("Usual is 0.8 to 1.5 % of the trimmed weight (common practice).".to_owned());
            said
        }
        Some(Working::Surface { rate, surface }) => vec![format!(
            "{} of surface, {} on every {}.",
            formats.area(*surface),
            formats.mass(Mass::from_kilograms(rate * PATCH.square_metres())),
            formats.area(PATCH)
        )],
        Some(Working::Sprayed { parts }) => parts
            .iter()
            .map(|(id, need)| {
                format!(
                    "{}: {} over {}.",
                    dish(*id),
                    count(need.rounds as usize, "round", "rounds"),
                    formats.area(need.surface)
                )
            })
            .collect(),
        Some(Working::Wrapped { roll, parts }) => parts
            .iter()
            .map(|(id, pieces, need)| {
                let width = formats.thickness(roll.width);
                let lies = match need.lie {
                    Lie::Across | Lie::Along => format!("one sheet of a roll {width} wide"),
                    Lie::TwoSheets => {
                        format!("two sheets side by side: the roll of {width} is narrow")
                    }
                    Lie::TooNarrow => format!(
                        "the roll of {width} is too narrow: {} would do",
                        formats.thickness(need.narrowest)
                    ),
                };
                format!(
                    "{}: {} of {}, {lies}.",
                    dish(*id),
                    count(*pieces as usize, "piece", "pieces"),
                    formats.quantity(Quantity::Length(need.length))
                )
            })
            .collect(),
        Some(Working::UnderFootprint { footprint }) => vec![format!(
            "The meat covers {}; a half-size pan is {} by {} (EN 631-1).",
            formats.area(*footprint),
            formats.thickness(Length::from_metres(0.325)),
            formats.thickness(Length::from_metres(0.265))
        )],
        Some(Working::ForCooked { cooked }) => vec![format!(
            "{} of cooked meat, {} to {} a half-size pan (common practice).",
            formats.mass(*cooked),
            formats.mass(Mass::from_kilograms(2.0)),
            formats.mass(Mass::from_kilograms(2.5))
        )],
        Some(Working::Fires { fires, first_beds }) => {
            let mut said: Vec<String> = fires
                .iter()
                .map(|(id, need)| format!("{}: {}", cooker(*id, plan), fire(need, formats)))
                .collect();
            if first_beds.kilograms() > 0.0 {
                said.push(format!(
                    "A first bed under wood: {}.",
                    formats.mass(*first_beds)
                ));
            }
            said
        }
        Some(Working::Current { fires, .. }) => fires
            .iter()
            .map(|(id, need)| format!("{}: {}", cooker(*id, plan), fire(need, formats)))
            .collect(),
        Some(Working::Held { need }) => vec![
            format!(
                "Room for the wrapped pieces and half as much again for towels: {}.",
                formats.quantity(Quantity::Volume(need.room))
            ),
            format!(
                "Warm it first with {} of hot water, and pour that out (common practice).",
                formats.quantity(Quantity::Volume(need.hot_water))
            ),
        ],
        Some(Working::Ice {
            on_the_way,
            leftovers,
        }) => [
            (on_the_way, "for the way home"),
            (leftovers, "to chill what is left over"),
        ]
        .into_iter()
        .filter(|(ice, _)| **ice > Mass::ZERO)
        .map(|(ice, what)| format!("{} {what}.", formats.mass(*ice)))
        .collect(),
    };
    if line.overridden
        && let Some(amount) = line.worked_out
    {
        said.push(format!(
            "Worked out: {}. Empty the field to go by that.",
            formats.quantity(amount)
        ));
    }
    if line.unlike {
        said.push(UNLIKE.to_owned());
    }
    said
}

fn cooker(id: cook_model::handover::identity::CookerId, plan: &Plan) -> String {
    let cooker = plan.cookers.get(&id);
    cooker.map_or_else(String::new, |cooker| {
        super::cookers::name(&cooker.name, cooker.kind)
    })
}

fn salt(amount: SaltAmount, formats: &Formats) -> String {
    match amount {
        SaltAmount::Grams { salt, of, rate, .. } => format!(
            "{} is {} % of {}, trimmed",
            formats.mass(salt),
            number(rate * 100.0, 1),
            formats.mass(of)
        ),
        SaltAmount::SolutionAdded => "none, a solution was added".to_owned(),
        SaltAmount::Seasoned => "none, it is seasoned already".to_owned(),
        SaltAmount::RubBringsEnough { .. } => "none, the rub brings enough".to_owned(),
    }
}

/// Salt by diffusion: nine tenths of its share at the centre.
fn evens_out(even: EvenOut, formats: &Formats) -> String {
    format!(
        " The middle has nine tenths of its share after about {}, {} to {} (diffusion in the thickest piece); less time \
         seasons less deeply.",
        formats.span(even.usual),
        formats.span(even.fast),
        formats.span(even.slow)
    )
}

fn fire(need: &FuelNeed, formats: &Formats) -> String {
    let fed = need
        .feed_every
        .map_or_else(String::new, |every| format!(", fed every {}", Span(every)));
    format!(
        "{} an hour in this weather by the model, {} to start; likely {}, and {} is enough in 18 cooks of 20{fed}. {}",
        formats.quantity(need.rate),
        formats.quantity(need.start_up),
        formats.quantity(need.likely),
        formats.quantity(need.have),
        learned(need.learned)
    )
}

/// How far the model was moved by what was fed.
fn learned(factor: LearnedFactor) -> String {
    let times = number(factor.likely(), 2);
    match factor.cooks {
        0 => format!("A cooker that taught nothing yet counts {times} times (set by hand)."),
        cooks => format!(
            "{} on it taught that it burns {times} times that.",
            capital(&count(cooks as usize, "cook", "cooks"))
        ),
    }
}

/// What stands beside the price of a plate.
#[must_use]
pub fn sums(bill: &Bill, plates: u32, total: &str, to_pay: &str) -> String {
    let missing = match bill.unpriced {
        0 => String::new(),
        lines => format!(
            " {} without a price.",
            capital(&count(lines as usize, "line", "lines"))
        ),
    };
    format!(
        "a plate, {}. {total} in all, {to_pay} still to pay.{missing}",
        count(plates as usize, "plate", "plates")
    )
}

/// How far the trip is.
#[must_use]
pub fn ticked(done: u32, all: u32) -> String {
    format!("{done} of {all}")
}

/// Enough on the plate?
#[must_use]
pub fn enough(planned: &str, wanted: &str) -> String {
    format!("{planned} cooked on the plate, {wanted} wanted.")
}

/// What a price is for.
#[must_use]
pub const fn priced_by(by: PricedBy) -> &'static str {
    match by {
        PricedBy::Kilogram => "a kilogram",
        PricedBy::Pound => "a pound",
        PricedBy::Litre => "a litre",
        PricedBy::Metre => "a metre",
        PricedBy::KilowattHour => "a kilowatt-hour",
        PricedBy::Each => "one pack or piece",
        PricedBy::All => "all of it",
    }
}

/// What an amount can be priced by, the usual first.
#[must_use]
pub fn ways_to_price(amount: Option<Quantity>, pounds: bool) -> Vec<PricedBy> {
    let mut ways = match amount {
        Some(Quantity::Mass(_)) if pounds => vec![PricedBy::Pound, PricedBy::Kilogram],
        Some(Quantity::Mass(_)) => vec![PricedBy::Kilogram, PricedBy::Pound],
        Some(Quantity::Volume(_)) => vec![PricedBy::Litre],
        Some(Quantity::Length(_)) => vec![PricedBy::Metre],
        Some(Quantity::Energy(_)) => vec![PricedBy::KilowattHour],
        Some(Quantity::Count(_)) | None => Vec::new(),
    };
    if amount.is_some() {
        ways.push(PricedBy::Each);
    }
    ways.push(PricedBy::All);
    ways
}

/// The list as text, for a message or a sheet.
#[must_use]
pub fn as_text(lines: &[Line], plan: &Plan, formats: &Formats) -> String {
    let mut text = format!("{}\n", super::screens::plan_name(&plan.name));
    for part in Aisle::ALL {
        let mut here = lines
            .iter()
            .filter(|line| line.aisle == part && !line.left_out)
            .peekable();
        if here.peek().is_none() {
            continue;
        }
        text.push_str(&format!("\n{}\n", aisle(part)));
        for line in here {
            let tick = if line.ticked { "x" } else { " " };
            let amount = line.to_buy.as_ref().map_or_else(String::new, |amount| {
                format!(": {}", shop_amount(amount, formats))
            });
            let note = note(line, formats);
            let note = if note.is_empty() {
                note
            } else {
                format!(" ({note})")
            };
            text.push_str(&format!(
                "[{tick}] {}{amount}{note}\n",
                item(line.item, plan)
            ));
        }
    }
    text
}
