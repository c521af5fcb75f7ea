//! The plan that the app opens first: made up, to be looked at and thrown away.

use super::{
    Appetite, BasisOfWeight, Cooker, CookerKind, CrewMember, Dish, Food, Guests, HoldPlace, Intact,
    Order, OwnPlace, Piece, PitStep, PitWhen, Place, Plan, QuietHours, SaltAhead, Serving, Spray,
    Wrap, WrapWhen,
};
use crate::handover::identity::{CookerId, CrewId, DishId, PieceId};
use crate::units::{Area, Length, Mass, Temperature, TimeSpan};
use chrono::NaiveTime;

/// A harvest supper of an allotment society, all of it invented: eighteen at the table, pork, lamb and sausages on one
/// offset, corn on a borrowed kettle, two people with quiet hours.
///
/// `fresh` gives the parts of a new id each time: the wall clock in milliseconds and 80 random bits.
#[must_use]
pub fn demo(serving: Serving, mut fresh: impl FnMut() -> (u64, u128)) -> Plan {
    let mut place = Ladder::default();
    let mut plan = Plan::new(serving);
    plan.name = "Harvest supper".to_owned();
    plan.guests = Guests::of(14, 4);
    plan.appetite = Appetite {
        grown: Mass::from_grams(300.0),
        small: Mass::from_grams(150.0),
        leftovers: Mass::from_kilograms(1.5),
    };
    plan.place = Place {
        altitude: Length::from_metres(60.0),
        ..Place::default()
    };

    for (name, from, to) in [("Joss", 22, 3), ("Mirela", 1, 8)] {
        let quiet = QuietHours {
            from: on_the_hour(from),
            to: on_the_hour(to),
        };
        let member = CrewMember::new(name, place.next(), Some(quiet));
        let (wall, random) = fresh();
        plan.crew.insert(CrewId::new(wall, random), member);
    }

    let mut cooker = |name: &str, kind, square_metres, pit| {
        let programme = vec![PitStep {
            when: PitWhen::Start,
            set: Temperature::from_celsius(pit),
        }];
        let grate = Area::from_square_metres(square_metres);
        let (wall, random) = fresh();
        let id = CookerId::new(wall, random);
        plan.cookers
            .insert(id, Cooker::new(name, place.next(), kind, grate, programme));
        id
    };
    let offset = cooker("Offset", CookerKind::Offset, 0.45, 130.0);
    let kettle = cooker("Kettle", CookerKind::Kettle, 0.24, 190.0);

    let salted = |hours| {
        Some(SaltAhead {
            ahead: TimeSpan::from_hours(hours),
            rate: 0.012,
            solution_added: false,
        })
    };
    let every_45_min = |first| {
        Some(Spray {
            first: TimeSpan::from_hours(first),
            every: TimeSpan::from_minutes(45.0),
        })
    };
    let at_74 = WrapWhen::Core {
        core: Temperature::from_celsius(74.0),
    };
    let dishes = [
        Dish {
            salt: salted(14.0),
            wrap: Some(Wrap::Paper { when: at_74 }),
            spray: every_45_min(3.0),
            hold: Some(HoldPlace::RestBox),
            ..cut("Pork shoulder butts", "pork-shoulder-butt")
        },
        Dish {
            salt: salted(4.0),
            wrap: Some(Wrap::Bare),
            spray: every_45_min(2.5),
            hold: Some(HoldPlace::RestBox),
            ..cut("Lamb shoulder", "lamb-shoulder")
        },
        Dish {
            wrap: Some(Wrap::Bare),
            hold: Some(HoldPlace::Counter),
            ..cut("Sausages", "sausage-links")
        },
        Dish {
            food: Food::Own {
                least: TimeSpan::from_minutes(12.0),
                likely: TimeSpan::from_minutes(15.0),
                most: TimeSpan::from_minutes(20.0),
                place: OwnPlace::Cooker,
            },
            ..cut("Corn", "")
        },
    ];
    let butt = piece(2, 3.8, Some(110.0), Intact::Yes);
    let lamb = piece(1, 2.6, Some(90.0), Intact::Yes);
    let sausage = piece(18, 0.08, None, Intact::No);
    let cob = piece(18, 0.25, None, Intact::Unknown);
    for (mut dish, mut piece) in dishes.into_iter().zip([butt, lamb, sausage, cob]) {
        dish.order = place.next();
        let own = matches!(dish.food, Food::Own { .. });
        dish.cooker = Some(if own { kettle } else { offset });
        piece.order = place.next();
        let (wall, random) = fresh();
        dish.pieces.insert(PieceId::new(wall, random), piece);
        let (wall, random) = fresh();
        plan.dishes.insert(DishId::new(wall, random), dish);
    }
    plan
}

/// Places one after another.
#[derive(Default)]
struct Ladder(Option<Order>);

impl Ladder {
    fn next(&mut self) -> Order {
        let next = Order::between(self.0.as_ref(), None);
        self.0 = Some(next.clone());
        next
    }
}

fn on_the_hour(hour: u32) -> NaiveTime {
    NaiveTime::from_hms_opt(hour, 0, 0).unwrap_or_default()
}

fn cut(name: &str, slug: &str) -> Dish {
    let cut = slug.to_owned();
    Dish::new(name, Food::Cut { cut }, Order::default())
}

fn piece(count: u32, kilograms: f64, millimetres: Option<f64>, intact: Intact) -> Piece {
    Piece {
        order: Order::default(),
        count,
        mass: Mass::from_kilograms(kilograms),
        weighed: BasisOfWeight::Bought,
        thickness: millimetres.map(Length::from_millimetres),
        intact,
        frozen: false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::meat::CutId;

    #[test]
    fn every_cut_of_the_sample_is_in_the_catalogue() {
        let local = "2026-09-12T18:00:00".parse().expect("a date and time");
        let mut next = 0;
        let plan = demo(
            Serving {
                local,
                zone: "Europe/London".to_owned(),
                offset_seconds: 3600,
            },
            || {
                next += 1;
                (1, next)
            },
        );
        assert_eq!(
            (
                plan.guests.count(),
                plan.dishes.len(),
                plan.cookers.len(),
                plan.crew.len()
            ),
            (18, 4, 2, 2)
        );
        for dish in plan.dishes.values() {
            if let Food::Cut { cut } = &dish.food {
                assert!(cut.parse::<CutId>().is_ok(), "{cut}");
            }
        }
        let names: Vec<_> = super::super::in_order(&plan.dishes, |dish| &dish.order);
        assert_eq!(names[0].1.name, "Pork shoulder butts");
        assert_eq!(names[3].1.name, "Corn");
    }
}
