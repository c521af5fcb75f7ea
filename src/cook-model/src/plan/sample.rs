//! Plans and days for the tests of planning. All figures are invented; no physics is run.

use super::day::{Day, Placed, Today};
use super::member::Member;
use super::method::Settled;
use super::outlook::{Finding, FindingKind};
use super::situation::Situation;
use super::up::Crew;
use super::{
    BasisOfWeight, Cooker, CookerKind, CrewMember, Dish, Food, Intact, Order, OwnPlace, Piece,
    PitStep, PitWhen, Plan, QuietHours, Serving, Zone,
};
use crate::handover::identity::{CookerId, CrewId, DishId, EntryId, PieceId};
use crate::handover::{Entry, Event, KnownEvent};
use crate::units::{Area, Mass, Moment, Temperature, TimeSpan};
use proptest::prelude::*;

/// A moment by its clock in UTC.
pub(super) fn at(utc: &str) -> Moment {
    let utc: chrono::NaiveDateTime = utc.parse().expect("a date and time");
    Moment::from_unix_seconds(utc.and_utc().timestamp())
}

/// A plan to be filled.
pub(super) struct Sample {
    pub(super) plan: Plan,
    pub(super) situation: Situation,
    next: u128,
}

impl Sample {
    /// Served at six on a Saturday, UTC, looked at a week before.
    pub(super) fn new() -> Self {
        let plan = Plan::new(Serving {
            local: "2026-09-12T18:00:00".parse().expect("a date and time"),
            zone: "UTC".to_owned(),
            offset_seconds: 0,
        });
        Self {
            plan,
            situation: Situation::new(at("2026-09-05T18:00:00"), Zone::fixed(0)),
            next: 0,
        }
    }

    /// Logs that a dish went on.
    pub(super) fn put_on(&mut self, dish: DishId, on: Moment) {
        self.log(on, KnownEvent::On { dish });
    }

    /// Logs an event as it happens.
    pub(super) fn log(&mut self, at: Moment, event: KnownEvent) {
        self.next += 1;
        let id = EntryId::new(1, self.next);
        let entry = Entry::told(at, Event::Known(event));
        self.situation.journal.0.insert(id, entry);
    }

    fn order(&mut self) -> Order {
        self.next += 1;
        (0..self.next).fold(Order::default(), |last, _| {
            Order::between(Some(&last), None)
        })
    }

    /// A cooker at 121 °C with 0.4 m² of grate.
    pub(super) fn cooker(&mut self, kind: CookerKind) -> CookerId {
        let order = self.order();
        let id = CookerId::new(0, self.next);
        let cooker = Cooker::new(
            &format!("{kind:?}"),
            order,
            kind,
            Area::from_square_metres(0.4),
            vec![PitStep {
                when: PitWhen::Start,
                set: Temperature::from_celsius(121.0),
            }],
        );
        self.plan.cookers.insert(id, cooker);
        id
    }

    /// Somebody with quiet hours, as `22:00`.
    pub(super) fn crew(&mut self, quiet: Option<(&str, &str)>) -> CrewId {
        let order = self.order();
        let id = CrewId::new(0, self.next);
        let clock = |text: &str| format!("{text}:00").parse().expect("a time");
        let member = CrewMember::new(
            &format!("Somebody {}", self.next),
            order,
            quiet.map(|(from, to)| QuietHours {
                from: clock(from),
                to: clock(to),
            }),
        );
        self.plan.crew.insert(id, member);
        id
    }

    /// A dish of one intact piece as bought.
    pub(super) fn dish(&mut self, cut: &str, kilograms: f64, cooker: CookerId) -> DishId {
        let piece = Piece {
            order: Order::default(),
            count: 1,
            mass: Mass::from_kilograms(kilograms),
            weighed: BasisOfWeight::Bought,
            thickness: None,
            intact: Intact::Yes,
            frozen: false,
        };
        let food = Food::Cut {
            cut: cut.to_owned(),
        };
        let id = self.any_dish(food, cooker);
        let piece_id = PieceId::new(0, self.next);
        self.dish_mut(id).pieces.insert(piece_id, piece);
        id
    }

    /// A dish of one's own on a cooker.
    pub(super) fn own(&mut self, minutes: [f64; 3], cooker: CookerId) -> DishId {
        let [least, likely, most] = minutes.map(TimeSpan::from_minutes);
        let food = Food::Own {
            least,
            likely,
            most,
            place: OwnPlace::Cooker,
        };
        self.any_dish(food, cooker)
    }

    fn any_dish(&mut self, food: Food, cooker: CookerId) -> DishId {
        let order = self.order();
        let id = DishId::new(0, self.next);
        let json = serde_json::json!({"name": format!("Dish {}", self.next), "food": food});
        let dish: Dish = serde_json::from_value(json).expect("a dish");
        let dish = Dish {
            order,
            cooker: Some(cooker),
            ..dish
        };
        self.plan.dishes.insert(id, dish);
        id
    }

    pub(super) fn dish_mut(&mut self, id: DishId) -> &mut Dish {
        self.plan.dishes.get_mut(&id).expect("the dish")
    }

    pub(super) fn piece_mut(&mut self, id: DishId) -> &mut Piece {
        let pieces = self.dish_mut(id).pieces.values_mut();
        pieces.last().expect("a piece")
    }

    /// The day with the same members for every dish.
    pub(super) fn day(&self, members: &[Member]) -> Day<'_> {
        let crew = Crew::of(&self.plan, &self.situation.zone);
        let dishes = super::in_order(&self.plan.dishes, |dish| &dish.order);
        let dishes = dishes.into_iter().map(|(id, dish)| {
            let settled = Settled::of(&self.plan, id, dish).expect("a known cut");
            let (plan, situation) = (&self.plan, &self.situation);
            let members = members.to_vec();
            let placed = Placed::new(plan, situation, &crew, settled, Vec::new(), members);
            Today { id, placed }
        });
        Day {
            dishes: dishes.collect(),
            plan: &self.plan,
            situation: &self.situation,
            crew: crew.clone(),
        }
    }
}

/// A member that is ready after so many hours, with everything before it in its place.
pub(super) fn member(hours: f64) -> Member {
    let ready = TimeSpan::from_hours(hours);
    Member {
        ready: Some(ready),
        first_ready: Some(ready),
        hot: TimeSpan::from_hours(5.0),
        keeps: TimeSpan::from_hours(5.0),
        wrapped: Some(ready * 0.5),
        probing: Some(ready * 0.9),
        surface_hot: Some(ready * 0.1),
        slow_core: Some(ready * 0.3),
        lethality_met: Some(ready * 0.7),
    }
}

/// Members between so many hours, evenly.
pub(super) fn members(from: f64, to: f64) -> Vec<Member> {
    let one = |number: u32| member(from + (to - from) * (f64::from(number) + 0.5) / 20.0);
    (0..20).map(one).collect()
}

/// Any ensemble: some members are never ready, some are never wrapped.
pub(super) fn any_members() -> impl Strategy<Value = Vec<Member>> {
    let one = (0.5..30.0f64, 0.2..0.9f64, 0.0..8.0f64, 0..12u8);
    let one = one.prop_map(|(hours, wrapped, keeps, luck)| {
        let whole = member(hours);
        let keeps = TimeSpan::from_hours(keeps);
        Member {
            ready: whole.ready.filter(|_| luck != 0),
            first_ready: whole.first_ready.filter(|_| luck != 0),
            wrapped: whole
                .ready
                .map(|ready| ready * wrapped)
                .filter(|_| luck != 1),
            probing: whole.ready.map(|ready| ready * wrapped.max(0.8)),
            hot: keeps,
            keeps,
            ..whole
        }
    });
    prop::collection::vec(one, 4..40)
}

/// The findings of a kind, by a look at each.
pub(super) fn found<'a, T>(
    findings: &'a [Finding],
    look: impl Fn(&'a FindingKind) -> Option<T>,
) -> Vec<T> {
    findings
        .iter()
        .filter_map(|finding| look(&finding.what))
        .collect()
}
