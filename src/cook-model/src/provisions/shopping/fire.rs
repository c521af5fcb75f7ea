//! Lines for fuel, merged over cookers.

use super::super::fuel::{Fuel, FuelNeed};
use super::super::quantity::Quantity;
use super::item::Item;
use super::list::{Draft, FireNeed};
use super::working::Working;
use crate::handover::identity::CookerId;
use crate::plan::Plan;
use crate::units::{Energy, Mass};

const fn item(fuel: Fuel) -> Item {
    match fuel {
        Fuel::Wood { .. } => Item::Wood,
        Fuel::Lump => Item::Lump,
        Fuel::Briquettes => Item::Briquettes,
        Fuel::Pellets => Item::Pellets,
        Fuel::Propane => Item::Propane,
        Fuel::Electricity => Item::Electricity,
    }
}

const FUELS: [Item; 6] = [
    Item::Wood,
    Item::Lump,
    Item::Briquettes,
    Item::Pellets,
    Item::Propane,
    Item::Electricity,
];

/// A line for each fuel that a cooker of the plan burns. A fire without times yet leaves its line without an amount.
pub(super) fn lines(plan: &Plan, fires: &[(CookerId, FireNeed)]) -> Vec<Draft> {
    FUELS
        .into_iter()
        .filter_map(|wanted| line(plan, fires, wanted))
        .collect()
}

fn line(plan: &Plan, fires: &[(CookerId, FireNeed)], wanted: Item) -> Option<Draft> {
    let burning = |fire: &&(CookerId, FireNeed)| item(fire.1.fuel) == wanted;
    let under_wood =
        |fire: &&(CookerId, FireNeed)| wanted == Item::Lump && item(fire.1.fuel) == Item::Wood;
    let own: Vec<_> = fires.iter().filter(burning).collect();
    let beds: Vec<_> = fires.iter().filter(under_wood).collect();
    if own.is_empty() && beds.is_empty() {
        return None;
    }
    let dishes = plan
        .dishes
        .iter()
        .filter(|(_, dish)| {
            dish.cooker
                .is_some_and(|cooker| own.iter().chain(&beds).any(|(id, _)| *id == cooker))
        })
        .map(|(id, _)| *id)
        .collect();
    let needs: Option<Vec<(CookerId, FuelNeed)>> = own
        .iter()
        .map(|(id, fire)| Some((*id, fire.need.clone()?)))
        .collect();
    let bed_needs: Option<Vec<Mass>> = beds
        .iter()
        .map(|(_, fire)| Some(fire.need.as_ref()?.first_bed))
        .collect();
    let known = needs.zip(bed_needs).map(|(needs, beds)| {
        let first_beds: Mass = beds.into_iter().sum();
        amount(wanted, needs, first_beds)
    });
    let (amount, working) = known.unzip();
    Some(Draft {
        item: wanted,
        dishes,
        amount,
        working,
    })
}

fn amount(wanted: Item, fires: Vec<(CookerId, FuelNeed)>, first_beds: Mass) -> (Quantity, Working) {
    let all: f64 = fires.iter().map(|(_, need)| need.have.number()).sum();
    if wanted == Item::Electricity {
        let energy = Energy::from_joules(all);
        return (Quantity::Energy(energy), Working::Current { fires, energy });
    }
    // Under a wood fire lies a bed of charcoal; elsewhere the first bed is of the same fuel.
    let own_beds: Mass = if wanted == Item::Wood {
        Mass::ZERO
    } else {
        fires.iter().map(|(_, need)| need.first_bed).sum()
    };
    (
        Quantity::Mass(Mass::from_kilograms(all) + own_beds + first_beds),
        Working::Fires { fires, first_beds },
    )
}
