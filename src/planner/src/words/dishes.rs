//! Dishes and their pieces in a few words.

use super::{cookers, count};
use crate::format::Formats;
use cook_model::meat::{CutId, Kind};
use cook_model::plan::{Dish, Food, OwnPlace, Plan, Wrap, in_order};

/// The name of a new dish: the cut's, without what follows the comma.
#[must_use]
pub fn dish_name(cut: CutId) -> &'static str {
    let name = cut.cut().name;
    name.split(',').next().unwrap_or(name)
}

/// The animal, as a heading over its cuts.
#[must_use]
pub const fn kind(kind: Kind) -> &'static str {
    match kind {
        Kind::Beef => "Beef",
        Kind::Pork => "Pork",
        Kind::Lamb => "Lamb",
        Kind::Chicken => "Chicken",
        Kind::Turkey => "Turkey",
        Kind::Fish => "Fish",
    }
}

/// All animals, in the order in which they are offered.
pub const KINDS: [Kind; 6] = [
    Kind::Pork,
    Kind::Beef,
    Kind::Lamb,
    Kind::Chicken,
    Kind::Turkey,
    Kind::Fish,
];

/// What a dish is at a glance: `two of 3.8 kg, 11 cm thick. Offset at 120 °C, wrapped in paper`.
#[must_use]
pub fn at_a_glance(dish: &Dish, plan: &Plan, formats: &Formats) -> String {
    let what = match &dish.food {
        Food::Cut { .. } => pieces(dish, formats),
        Food::Own { least, most, .. } => {
            format!(
                "your own, {} to {}",
                formats.span(*least),
                formats.span(*most)
            )
        }
    };
    format!("{what}. {}", place(dish, plan, formats))
}

fn pieces(dish: &Dish, formats: &Formats) -> String {
    let pieces = in_order(&dish.pieces, |piece| &piece.order);
    let number: usize = pieces.iter().map(|(_, piece)| piece.count as usize).sum();
    let Some((_, first)) = pieces.first() else {
        return "no piece yet".to_owned();
    };
    let weight = formats.mass(first.mass);
    let alike = pieces.iter().all(|(_, piece)| piece.mass == first.mass);
    let weight = match (number, alike) {
        (1, _) => weight,
        (_, true) => format!("{} {weight}", count(number, "of", "of")),
        (_, false) => {
            let all = pieces
                .iter()
                .map(|(_, piece)| piece.mass * f64::from(piece.count))
                .sum();
            format!(
                "{}, {} in all",
                count(number, "piece", "pieces"),
                formats.mass(all)
            )
        }
    };
    match first.thickness {
        Some(thickness) if alike => format!("{weight}, {} thick", formats.thickness(thickness)),
        _ => weight,
    }
}

fn place(dish: &Dish, plan: &Plan, formats: &Formats) -> String {
    if let Food::Own { place, .. } = dish.food {
        match place {
            OwnPlace::Kitchen => return "In the kitchen".to_owned(),
            OwnPlace::Bench => return "Made cold".to_owned(),
            OwnPlace::Cooker => {}
        }
    }
    let Some(cooker) = dish.cooker.and_then(|id| plan.cookers.get(&id)) else {
        return "No cooker yet".to_owned();
    };
    let pit = dish.pit.or_else(|| Some(cooker.programme.first()?.set));
    let at = pit.map_or_else(String::new, |pit| {
        format!(" at {}", formats.temperature(pit))
    });
    let wrap = match dish.wrap {
        Some(Wrap::Bare) => ", bare",
        Some(Wrap::Paper { .. }) => ", in paper",
        Some(Wrap::Foil { .. }) => ", in foil",
        None => "",
    };
    format!("{}{at}{wrap}", cookers::name(&cooker.name, cooker.kind))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::format::{ClockStyle, Units};
    use cook_model::handover::identity::{CookerId, PieceId};
    use cook_model::plan::{Serving, Zone};
    use serde_json::json;
    use std::sync::Arc;

    fn plan() -> Plan {
        Plan::new(Serving {
            local: "2026-09-12T18:00:00".parse().expect("a date and time"),
            zone: "Europe/London".to_owned(),
            offset_seconds: 3600,
        })
    }

    fn said(dish: serde_json::Value) -> String {
        let mut plan = plan();
        let cooker = json!({"name": "Offset", "kind": "offset", "grate": 0.4,
            "programme": [{"when": {"at": "start"}, "set": 120.0}]});
        let cooker = serde_json::from_value(cooker).expect("a cooker");
        plan.cookers.insert(CookerId::new(1, 1), cooker);
        let mut dish: Dish = serde_json::from_value(dish).expect("a dish");
        dish.cooker = Some(CookerId::new(1, 1));
        let formats = Formats {
            units: Units::METRIC,
            clock: ClockStyle::Hours24,
            zone: Arc::new(Zone::fixed(0)),
        };
        at_a_glance(&dish, &plan, &formats).replace('\u{a0}', " ")
    }

    #[test]
    fn alike_pieces_are_counted_and_others_weighed_together() {
        let id = |n| PieceId::new(1, n).to_string();
        let dish = |pieces| {
            json!({"name": "Butt", "food": {"is": "cut", "cut": "pork-shoulder-butt"},
                "pieces": pieces, "wrap": {"cover": "bare"}})
        };
        let two = json!({id(1): {"mass": 3.8, "count": 2, "thickness": 0.11}});
        assert_eq!(
            said(dish(two)),
            "two of 3.8 kg, 11 cm thick. Offset at 120 °C, bare"
        );
        let unlike = json!({id(1): {"mass": 3.8}, id(2): {"mass": 3.0}});
        assert_eq!(
            said(dish(unlike)),
            "two pieces, 6.8 kg in all. Offset at 120 °C, bare"
        );
        assert_eq!(
            said(dish(json!({}))),
            "no piece yet. Offset at 120 °C, bare"
        );
    }

    #[test]
    fn a_dish_of_ones_own_tells_its_minutes() {
        let dish = json!({"name": "Corn", "food": {"is": "own", "least": 720.0, "likely": 900.0,
            "most": 1200.0, "place": "kitchen"}});
        assert_eq!(said(dish), "your own, 12 min to 20 min. In the kitchen");
    }

    #[test]
    fn every_cut_has_a_short_name() {
        for cut in CutId::ALL {
            assert!(!dish_name(*cut).contains(','));
        }
    }
}
