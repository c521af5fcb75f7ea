//! The list put together: worked-out lines, the person's changes on top, things of one's own.

use super::super::quantity::Quantity;
use super::aisle::Aisle;
use super::item::Item;
use super::money::{Money, Price};
use super::notes::Purchase;
use super::shop_unit::{PackKind, ShopAmount, SoldBy};
use super::working::Working;
use super::{dry_goods, fire, household, meat};
use crate::handover::identity::{CookerId, DishId};
use crate::plan::outlook::Outlook;
use crate::plan::{Plan, in_order};
use crate::provisions::fires::{FireNeed as Fire, fires};
use crate::provisions::fuel::LearnedFactor;
use crate::units::{Length, Mass, TimeSpan, Volume};
use serde::Serialize;
use std::collections::BTreeMap;

pub(super) use crate::provisions::fires::FireNeed;

/// A worked-out line before the person's changes.
pub(super) struct Draft {
    pub(super) item: Item,
    pub(super) dishes: Vec<DishId>,
    pub(super) amount: Option<Quantity>,
    pub(super) working: Option<Working>,
}

/// When a dish is bare, by the forecast.
pub(super) struct DishTime {
    /// From on to wrapped or off, likely.
    pub(super) bare: TimeSpan,
}

/// What the forecast says of the dishes. Without one, lines that need it wait.
pub(super) struct Times<'a>(Option<&'a Outlook>);

impl Times<'_> {
    pub(super) fn dish(&self, id: DishId) -> Option<DishTime> {
        let outlook = self.0?.dishes.iter().find(|dish| dish.dish == id)?;
        let times = outlook.forecast.as_ref().ok()?;
        let end = times.wrap.as_ref().unwrap_or(&times.ready).likely();
        Some(DishTime {
            bare: end - times.on,
        })
    }
}

/// A line of the list.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Line {
    /// What it is.
    pub item: Item,
    /// What the person calls it; empty where the item says it all.
    pub name: String,
    /// Where it lies.
    pub aisle: Aisle,
    /// For which dishes.
    pub dishes: Vec<DishId>,
    /// As worked out. None: it waits for a forecast, or nobody said how much.
    pub worked_out: Option<Quantity>,
    /// How that was worked out.
    pub working: Option<Working>,
    /// Wanted: as worked out, or as the person says.
    pub wanted: Option<Quantity>,
    /// The person's amount stands instead of the worked-out one.
    pub overridden: bool,
    /// In the house already.
    pub already: Option<Quantity>,
    /// As the shop hands it over, what is there already taken off.
    pub to_buy: Option<ShopAmount>,
    /// On the label.
    pub price: Option<Price>,
    /// For what is to buy. None without a price, or where the price does not fit.
    pub cost: Option<Money>,
    /// In the basket, or paid.
    pub ticked: bool,
    /// Taken off the list by the person; shown apart, costs nothing.
    pub left_out: bool,
    /// A unit of the person's (pack, amount there) does not fit: it was left aside.
    pub unlike: bool,
}

/// The list.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct ShoppingList {
    /// By aisle, in an order that ticks, amounts and prices do not change.
    pub lines: Vec<Line>,
}

/// Works the list out. The same dishes and cookers give the same lines in the same order, with or without a forecast.
/// `learned` is what each cooker taught; a cooker that is missing in it starts from the usual factor.
#[must_use]
pub fn shopping_list(
    plan: &Plan,
    outlook: Option<&Outlook>,
    learned: &BTreeMap<CookerId, LearnedFactor>,
) -> ShoppingList {
    let times = Times(outlook);
    let fires: Vec<(CookerId, Fire)> = fires(plan, outlook, learned);
    let supplies = &plan.supplies;
    let drafts = meat::lines(plan)
        .into_iter()
        .chain(dry_goods::lines(plan, supplies, &times))
        .chain(household::lines(plan, supplies))
        .chain(fire::lines(plan, &fires))
        .chain(household::ice(plan, supplies));
    let mut lines: Vec<Line> = drafts
        .filter_map(|draft| {
            let aisle = draft.item.aisle()?;
            let purchase = plan.purchases.get(&draft.item).copied().unwrap_or_default();
            Some(line(plan, draft, aisle, &purchase))
        })
        .collect();
    for (id, extra) in in_order(&plan.extras, |extra| &extra.order) {
        let purchase = Purchase {
            price: extra.price,
            ticked: extra.ticked,
            ..Purchase::default()
        };
        let draft = Draft {
            item: Item::Extra(id),
            dishes: Vec::new(),
            amount: extra.amount,
            working: None,
        };
        let mut own = line(plan, draft, extra.aisle, &purchase);
        own.name.clone_from(&extra.name);
        lines.push(own);
    }
    // Stable: within an aisle the order above stays.
    lines.sort_by_key(|line| line.aisle);
    ShoppingList { lines }
}

fn line(plan: &Plan, draft: Draft, aisle: Aisle, purchase: &Purchase) -> Line {
    let wanted = purchase.amount.or(draft.amount);
    let mut unlike = false;
    let to_buy = wanted.map(|wanted| {
        let left = purchase
            .already
            .map_or(Ok(wanted), |already| wanted.less(&already));
        let left = left.unwrap_or_else(|_| {
            unlike = true;
            wanted
        });
        let sold_by = purchase.sold_by.unwrap_or_else(|| usually_sold(draft.item));
        sold_by.shop_amount(left).unwrap_or_else(|_| {
            unlike = true;
            ShopAmount {
                packs: None,
                amount: left,
            }
        })
    });
    let cost = match (purchase.price, &to_buy) {
        _ if purchase.left_out => None,
        (Some(price), Some(bought)) => price.of(bought),
        (Some(price), None) => matches!(price.by, super::PricedBy::All).then_some(price.money),
        (None, _) => None,
    };
    let name = match draft.item {
        Item::Meat(id) | Item::OwnDish(id) => plan.dishes.get(&id).map(|dish| dish.name.clone()),
        _ => None,
    };
    Line {
        item: draft.item,
        name: name.unwrap_or_default(),
        aisle,
        dishes: draft.dishes,
        overridden: purchase.amount.is_some(),
        worked_out: draft.amount,
        working: draft.working,
        wanted,
        already: purchase.already,
        to_buy,
        price: purchase.price,
        cost,
        ticked: purchase.ticked,
        left_out: purchase.left_out,
        unlike,
    }
}

/// How shops usually sell it. Common practice; changeable for each line.
fn usually_sold(item: Item) -> SoldBy {
    let kilograms =
        |kind, weight| SoldBy::packs(kind, Quantity::Mass(Mass::from_kilograms(weight)));
    let metres = |length| {
        SoldBy::packs(
            PackKind::Roll,
            Quantity::Length(Length::from_metres(length)),
        )
    };
    match item {
        Item::Salt => kilograms(PackKind::Pack, 0.5),
        Item::Spray => SoldBy::packs(
            PackKind::Bottle,
            Quantity::Volume(Volume::from_millilitres(500.0)),
        ),
        Item::Paper => metres(15.0),
        Item::Foil => metres(10.0),
        Item::Wood => kilograms(PackKind::Piece, 0.5),
        Item::Lump | Item::Briquettes => kilograms(PackKind::Sack, 5.0),
        Item::Pellets => kilograms(PackKind::Sack, 10.0),
        Item::Propane => kilograms(PackKind::Bottle, 5.0),
        Item::Ice => kilograms(PackKind::Sack, 2.0),
        Item::Meat(_)
        | Item::OwnDish(_)
        | Item::Rub
        | Item::Binder
        | Item::DripPans
        | Item::ServingPans
        | Item::RestBox
        | Item::Electricity
        | Item::Extra(_) => SoldBy::Loose,
    }
}
