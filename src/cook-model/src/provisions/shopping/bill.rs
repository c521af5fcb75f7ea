//! What it costs: in all, what is still to pay, and a plate.

use super::list::ShoppingList;
use super::money::Money;
use crate::plan::Guests;
use serde::{Deserialize, Serialize};

/// The sums under the list.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Bill {
    /// Everything with a price.
    pub total: Money,
    /// Of that, not ticked yet.
    pub to_pay: Money,
    /// For each guest; none without guests.
    pub per_plate: Option<Money>,
    /// Lines without a price: the sums are too small by these.
    pub unpriced: u32,
    /// Lines ticked, and lines in all, those left out not counted.
    pub ticked: (u32, u32),
}

/// Adds the list up.
#[must_use]
pub fn bill(list: &ShoppingList, guests: Guests) -> Bill {
    let mut bill = Bill::default();
    for line in list.lines.iter().filter(|line| !line.left_out) {
        bill.ticked.1 += 1;
        bill.ticked.0 += u32::from(line.ticked);
        match line.cost {
            Some(cost) => {
                bill.total = bill.total + cost;
                if !line.ticked {
                    bill.to_pay = bill.to_pay + cost;
                }
            }
            None => bill.unpriced += 1,
        }
    }
    let plates = guests.count();
    bill.per_plate = (plates > 0).then(|| bill.total.times(1.0 / f64::from(plates)));
    bill
}
