//! Bad input about the shopping: habits, prices, amounts, and what the cookers burn.

use super::{Found, count};
use crate::plan::{Plan, range};
use crate::provisions::Quantity;
use crate::provisions::fuel::{Fuel, Shape};
use crate::provisions::shopping::{Price, SoldBy};

pub(super) fn check(plan: &Plan, found: &mut Found) {
    let habits = &plan.supplies;
    found.hold("supplies", range::RUB, habits.rub);
    found.hold("supplies", range::SALT_IN_RUB, habits.salt_in_rub);
    found.hold("supplies", range::BINDER, habits.binder);
    found.hold("supplies", range::ROLL_WIDTH, habits.paper_width.metres());
    found.hold("supplies", range::ROLL_WIDTH, habits.foil_width.metres());
    found.hold("supplies", range::TURNS, habits.turns);
    found.hold("supplies", range::COLD_TRAVEL, habits.cold_travel.seconds());
    found.hold("extras", range::EXTRAS, count(plan.extras.len()));
    for (id, extra) in &plan.extras {
        found.name(format!("extras/{id}/name"), &extra.name);
        amount(found, format!("extras/{id}/amount"), extra.amount);
        price(found, format!("extras/{id}/price"), extra.price);
    }
    for (item, purchase) in &plan.purchases {
        amount(found, format!("purchases/{item}/amount"), purchase.amount);
        amount(found, format!("purchases/{item}/already"), purchase.already);
        price(found, format!("purchases/{item}/price"), purchase.price);
        if let Some(SoldBy::Packs { pack }) = purchase.sold_by {
            amount(found, format!("purchases/{item}/sold_by"), Some(pack.holds));
        }
    }
    for (id, cooker) in &plan.cookers {
        if let Some(Fuel::Wood { moisture }) = cooker.fuel {
            found.hold(format!("cookers/{id}/fuel"), range::WOOD_MOISTURE, moisture);
        }
        for side in cooker.chamber.iter().flat_map(Shape::sides) {
            let at = format!("cookers/{id}/chamber");
            found.hold(at, range::CHAMBER_SIDE, side.metres());
        }
    }
}

fn amount(found: &mut Found, at: String, amount: Option<Quantity>) {
    if let Some(amount) = amount {
        found.hold(at, range::BOUGHT, amount.number());
    }
}

fn price(found: &mut Found, at: String, price: Option<Price>) {
    if let Some(price) = price {
        #[expect(
            clippy::cast_precision_loss,
            reason = "only compared with a bound far below 2^53"
        )]
        let coins = price.money.0 as f64;
        found.hold(at, range::PRICE, coins);
    }
}
