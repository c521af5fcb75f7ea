//! Small outlooks for the tests of this screen. All figures are invented.

use super::scope::Scope;
use crate::format::{ClockStyle, Formats, Units};
use chrono::NaiveDateTime;
use cook_model::handover::identity::{CookerId, CrewId, DishId};
use cook_model::live::Stage;
use cook_model::plan::outlook::{
    DishOutlook, DishTimes, Odds, Outlook, Portions, Step, StepKind, TableOutlook, Window,
};
use cook_model::plan::{
    Cooker, CookerKind, CrewMember, Dish, Food, Order, Plan, Serving, StepKey, StepOf, Zone,
};
use cook_model::units::{Area, Mass, Moment, Temperature, TimeSpan};
use std::collections::BTreeMap;
use std::sync::Arc;

/// A moment by its clock in UTC.
pub(crate) fn at(utc: &str) -> Moment {
    let utc: NaiveDateTime = utc.parse().expect("a date and time");
    Moment::from_unix_seconds(utc.and_utc().timestamp())
}

/// °C, kg and a clock of 24 hours in UTC.
pub(crate) fn formats() -> Formats {
    Formats {
        units: Units::METRIC,
        clock: ClockStyle::Hours24,
        zone: Arc::new(Zone::fixed(0)),
    }
}

/// A plan and an outlook that tests fill as they need.
pub(crate) struct Sample {
    /// The plan.
    pub(crate) plan: Plan,
    /// The outlook.
    pub(crate) outlook: Outlook,
    /// UTC all year.
    pub(crate) zone: Zone,
    next: u128,
}

impl Sample {
    /// Nothing but a serving moment, in UTC.
    pub(crate) fn new(serving: &str) -> Self {
        let odds = Odds { kept: 240, of: 256 };
        Self {
            plan: Plan::new(Serving {
                local: serving.parse().expect("a date and time"),
                zone: "UTC".to_owned(),
                offset_seconds: 0,
            }),
            outlook: Outlook {
                members: 256,
                dishes: Vec::new(),
                table: TableOutlook {
                    serving: at(serving),
                    odds,
                    ready: None,
                    slack: None,
                },
                steps: Vec::new(),
                lattice: cook_model::schedule::Lattice::default(),
                findings: Vec::new(),
                safe: cook_model::safety::SafeLine::default(),
                portions: Portions {
                    wanted: Mass::ZERO,
                    planned: Mass::ZERO,
                },
            },
            zone: Zone::fixed(0),
            next: 1,
        }
    }

    fn number(&mut self) -> u128 {
        self.next += 1;
        self.next
    }

    fn order(&self) -> Order {
        let mut last: Option<Order> = None;
        for _ in 0..self.next {
            last = Some(Order::between(last.as_ref(), None));
        }
        last.unwrap_or_default()
    }

    /// Sorts the steps, with what is past folded away.
    pub(crate) fn scope(&self, now: &str) -> Scope {
        Scope::of(&self.outlook, &self.zone, at(now), true)
    }

    /// Somebody who is always up.
    pub(crate) fn crew(&mut self, name: &str) -> CrewId {
        let id = CrewId::new(0, self.number());
        let member = CrewMember::new(name, self.order(), None);
        self.plan.crew.insert(id, member);
        id
    }

    /// A cooker.
    pub(crate) fn cooker(&mut self, name: &str) -> CookerId {
        let id = CookerId::new(0, self.number());
        let cooker = Cooker::new(
            name,
            self.order(),
            CookerKind::Offset,
            Area::from_square_metres(0.5),
            Vec::new(),
        );
        self.plan.cookers.insert(id, cooker);
        id
    }

    /// A dish on a cooker: on, ready 8 h later give or take 1 h, table-ready another hour later.
    pub(crate) fn dish(&mut self, name: &str, cooker: Option<CookerId>, on: &str) -> DishId {
        let id = DishId::new(0, self.number());
        let dish = Dish {
            name: name.to_owned(),
            order: self.order(),
            food: Food::Cut {
                cut: "pork-shoulder-butt".to_owned(),
            },
            cooker,
            pit: None,
            pieces: BTreeMap::new(),
            target: None,
            thaw: None,
            salt: None,
            wrap: None,
            spray: None,
            rest: None,
            hold: None,
            slicing: None,
            first_time: false,
            note: String::new(),
        };
        self.plan.dishes.insert(id, dish);
        let ready = around(at(on) + TimeSpan::from_hours(8.0), 60.0);
        let odds = Odds { kept: 250, of: 256 };
        let place = self.outlook.dishes.len();
        let times = DishTimes {
            earliest_on: at(on) - TimeSpan::from_hours(1.0),
            latest_on: at(on) + TimeSpan::from_hours(1.0),
            on: at(on),
            ready,
            table_ready: ready.moved(TimeSpan::from_hours(1.0)),
            odds,
            wrap: None,
            stall: None,
            course: Vec::new(),
            target: Some(Temperature::from_celsius(93.0)),
            target_lowered: None,
            loss: [0.3, 0.35, 0.4],
            tenderness: None,
            lethality_met: odds,
            stays_hot: None,
            served: Mass::from_kilograms(2.0),
            assumed: Vec::new(),
        };
        self.outlook.dishes.push(DishOutlook {
            dish: id,
            letter: char::from(b'A' + u8::try_from(place).expect("a letter")),
            hue: u8::try_from(place % 5 + 1).expect("a hue"),
            forecast: Ok(times),
            stage: Stage::NotOn,
            live: None,
        });
        id
    }

    /// Names every step as the model does: by its dish, its cooker or the table, its kind and its round.
    pub(crate) fn name_steps(&mut self) {
        for step in &mut self.outlook.steps {
            let of = match (step.dish, step.cooker) {
                (Some(dish), _) => StepOf::Dish(dish),
                (None, Some(cooker)) => StepOf::Cooker(cooker),
                (None, None) => StepOf::Table,
            };
            step.key = StepKey {
                of,
                kind: step.kind,
                round: step.round,
            };
        }
    }

    /// A step at a time, with a window of as many minutes to either side; the rest is filled in by the caller.
    pub(crate) fn step(&mut self, kind: StepKind, likely: &str, minutes: f64) -> &mut Step {
        let when = around(at(likely), minutes);
        let step = Step::new(kind, when, TimeSpan::ZERO);
        self.outlook.steps.push(step);
        self.outlook.steps.last_mut().expect("just pushed")
    }
}

/// An even window of so many minutes to either side.
pub(crate) fn around(likely: Moment, minutes: f64) -> Window {
    let mut tenth = -5.0;
    Window {
        deciles: [(); 9].map(|()| {
            tenth += 1.0;
            likely + TimeSpan::from_minutes(minutes * tenth / 4.0)
        }),
    }
}
