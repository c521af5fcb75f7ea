//! Every kind of bad input gives its message; a sound plan gives none.

use super::*;
use crate::handover::identity::{CookerId, CrewId, DishId, OwnStepId, PieceId};
use crate::plan::outlook::StepKind;
use crate::plan::{
    BasisOfWeight, Cooker, CookerKind, CrewMember, Dish, Food, Guests, Intact, Order, OwnPlace,
    OwnStep, OwnStepPlace, OwnWhen, Piece, PitStep, PitWhen, QuietHours, Rack, Serving, StepKey,
};
use crate::safety::Units;
use crate::units::{Area, Length, Mass, Temperature, TemperatureDifference, TimeSpan, Volume};
use proptest::prelude::*;

fn dish_id() -> DishId {
    DishId::new(1, 1)
}

fn piece_id() -> PieceId {
    PieceId::new(1, 2)
}

fn cooker_id() -> CookerId {
    CookerId::new(1, 3)
}

fn celsius(value: f64) -> Temperature {
    Temperature::from_celsius(value)
}

/// One packer brisket on a drum, for a table in the future.
fn sound() -> Plan {
    let mut plan = Plan::new(Serving {
        local: "2026-09-12T18:00:00".parse().expect("a date and time"),
        zone: "Europe/London".to_owned(),
        offset_seconds: 3600,
    });
    let piece = Piece {
        order: Order::default(),
        count: 1,
        mass: Mass::from_kilograms(6.2),
        weighed: BasisOfWeight::Bought,
        thickness: None,
        intact: Intact::Yes,
        frozen: false,
    };
    let mut dish: Dish = serde_json::from_value(serde_json::json!({
        "name": "Brisket", "food": {"is": "cut", "cut": "beef-packer-brisket"}
    }))
    .expect("a dish");
    dish.pieces.insert(piece_id(), piece);
    dish.cooker = Some(cooker_id());
    plan.dishes.insert(dish_id(), dish);
    let cooker = Cooker::new(
        "Drum",
        Order::default(),
        CookerKind::Drum,
        Area::from_square_metres(0.25),
        vec![PitStep {
            when: PitWhen::Start,
            set: celsius(121.0),
        }],
    );
    plan.cookers.insert(cooker_id(), cooker);
    plan
}

fn week_before() -> Moment {
    Moment::from_unix_seconds(1_788_600_000)
}

fn dish(plan: &mut Plan) -> &mut Dish {
    plan.dishes.get_mut(&dish_id()).expect("the dish")
}

fn piece(plan: &mut Plan) -> &mut Piece {
    dish(plan).pieces.get_mut(&piece_id()).expect("the piece")
}

fn cooker(plan: &mut Plan) -> &mut Cooker {
    plan.cookers.get_mut(&cooker_id()).expect("the cooker")
}

/// One change to a sound plan, and a piece of the one message that it gives.
fn finds(place: &str, words: &str, change: impl FnOnce(&mut Plan)) {
    let mut plan = sound();
    change(&mut plan);
    let problems = check(&plan, week_before());
    let [problem] = problems.as_slice() else {
        panic!("{words}: {problems:?}");
    };
    assert!(problem.at.ends_with(place), "{} for {place}", problem.at);
    let message = problem.message(Units::default());
    assert!(message.contains(words), "{message}");
    assert!(!message.contains(['{', '|']), "{message}");
}

#[test]
fn a_sound_plan_has_no_problems() {
    assert_eq!(check(&sound(), week_before()), []);
}

#[test]
fn weights_and_thicknesses() {
    let weighs = |kilograms| {
        move |plan: &mut Plan| {
            piece(plan).mass = Mass::from_kilograms(kilograms);
        }
    };
    finds("/mass", "is 0 kg; between 20 g and 40 kg", weighs(0.0));
    finds("/mass", "is 400 kg;", weighs(400.0));
    finds("/mass", "is -1 kg;", weighs(-1.0));
    finds("/mass", "not a number", weighs(f64::NAN));
    let thick = |millimetres| {
        move |plan: &mut Plan| {
            piece(plan).thickness = Some(Length::from_millimetres(millimetres));
        }
    };
    finds("/thickness", "cannot be 250 mm thick", thick(250.0));
    finds("/thickness", "as wide as a tray", thick(20.0));
    finds("/thickness", "between 8 mm and 400 mm", thick(2.0));
    finds("/count", "between 1 and 200", |plan| piece(plan).count = 0);
}

#[test]
fn the_usual_size_of_every_cut_is_thick_enough_and_not_too_thick() {
    for cut in crate::meat::catalogue() {
        for mass in [cut.usual_mass.0, cut.shape.mass, cut.usual_mass.1] {
            let mut plan = sound();
            dish(&mut plan).food = Food::Cut {
                cut: cut.id.slug().to_owned(),
            };
            let size = crate::provisions::Size::of(cut.id, mass, None);
            let piece = piece(&mut plan);
            piece.mass = mass;
            piece.weighed = BasisOfWeight::Trimmed;
            piece.thickness = Some(size.thickness + size.bone);
            assert_eq!(check(&plan, week_before()), [], "{} of {mass:?}", cut.name);
        }
    }
}

#[test]
fn the_pit_and_the_target() {
    finds("/target", "never brings the core to 95 °C", |plan| {
        cooker(plan).programme[0].set = celsius(90.0);
        dish(plan).target = Some(celsius(95.0));
    });
    finds("/target", "at most 80 °C", |plan| {
        dish(plan).pit = Some(celsius(80.0));
    });
    finds("/programme", "between 60 °C and 260 °C", |plan| {
        cooker(plan).programme[0].set = celsius(400.0);
    });
    finds("/programme", "no pit temperature for the start", |plan| {
        cooker(plan).programme.clear();
        dish(plan).pit = Some(celsius(121.0));
    });
    finds("/programme", "Only the first", |plan| {
        let first = cooker(plan).programme[0];
        cooker(plan).programme.push(first);
    });
    finds("/programme", "no longer in the plan", |plan| {
        cooker(plan).programme.push(PitStep {
            when: PitWhen::CoreReaches {
                dish: DishId::new(9, 9),
                core: celsius(80.0),
            },
            set: celsius(150.0),
        });
    });
}

#[test]
fn dishes_that_cannot_be() {
    finds("/food", "No cut is called “pork-cloud”", |plan| {
        dish(plan).food = Food::Cut {
            cut: "pork-cloud".to_owned(),
        };
    });
    finds("/food", "must rise in that order", |plan| {
        dish(plan).food = Food::Own {
            least: TimeSpan::from_minutes(20.0),
            likely: TimeSpan::from_minutes(15.0),
            most: TimeSpan::from_minutes(30.0),
            place: OwnPlace::Kitchen,
        };
    });
    finds("/cooker", "cooker is no longer in the plan", |plan| {
        plan.dishes.values_mut().for_each(|dish| {
            dish.cooker = Some(CookerId::new(9, 9));
        });
    });
    finds("/hold", "must keep food at 60 °C or hotter", |plan| {
        dish(plan).hold = Some(crate::plan::HoldPlace::WarmOven { air: celsius(50.0) });
    });
    finds("dishes", "Make a second plan", |plan| {
        let one = dish(plan).clone();
        for number in 10..40 {
            plan.dishes.insert(DishId::new(2, number), one.clone());
        }
    });
}

#[test]
fn the_gathering() {
    finds("serving", "past", |plan| {
        plan.serving.local = "2026-09-01T18:00:00".parse().expect("a date and time");
    });
    finds("guests", "between 1 and 1000", |plan| {
        plan.guests = Guests::of(0, 0);
    });
    finds("place", "height above the sea", |plan| {
        plan.place.altitude = Length::from_metres(9000.0);
    });
    finds("place", "not a number", |plan| {
        plan.place.air = celsius(f64::NAN);
    });
    finds("promise", "between 50 % and 99 %", |plan| {
        plan.promise = 1.0;
    });
    finds("/quiet", "begin and end at 22:00", |plan| {
        let ten = "22:00:00".parse().expect("a time");
        let member = CrewMember::new(
            "Joss",
            Order::default(),
            Some(QuietHours { from: ten, to: ten }),
        );
        plan.crew.insert(CrewId::new(1, 4), member);
    });
}

fn own_step(plan: &mut Plan, when: OwnWhen) -> &mut OwnStep {
    let own = OwnStep {
        name: "Beans on".to_owned(),
        when,
        takes: TimeSpan::from_hours(2.0),
        hands: 1,
        place: OwnStepPlace::Anywhere,
        who: None,
        note: String::new(),
    };
    let id = OwnStepId::new(1, 100 + plan.own_steps.len() as u128);
    plan.own_steps.entry(id).or_insert(own)
}

const AT_SERVING: OwnWhen = OwnWhen::BeforeServing {
    span: TimeSpan::ZERO,
};

#[test]
fn the_run_sheet() {
    let on = StepKey::dish(dish_id(), StepKind::On);
    finds(
        "/pin",
        "time from a pinned step to serving is 720 h",
        |plan| {
            let far = plan.serving.moment() - TimeSpan::from_hours(720.0);
            plan.steps.entry(on).or_default().pin = Some(far);
        },
    );
    finds("/takes", "time that a step takes is 7 h", |plan| {
        plan.steps.entry(on).or_default().takes = Some(TimeSpan::from_hours(7.0));
    });
    finds("/takes", "step of your own takes is 60 h", |plan| {
        own_step(plan, AT_SERVING).takes = TimeSpan::from_hours(60.0);
    });
    finds("/hands", "Enter 0 where nobody has to be there", |plan| {
        own_step(plan, AT_SERVING).hands = 3;
    });
    finds("/who", "person is no longer in the plan", |plan| {
        own_step(plan, AT_SERVING).who = Some(CrewId::new(9, 9));
    });
    finds("/place", "cooker is no longer in the plan", |plan| {
        let cooker = CookerId::new(9, 9);
        own_step(plan, AT_SERVING).place = OwnStepPlace::Cooker { cooker };
    });
    finds("/when", "step is no longer in the plan", |plan| {
        let step = StepKey::dish(DishId::new(9, 9), StepKind::On);
        let span = TimeSpan::ZERO;
        own_step(plan, OwnWhen::After { step, span });
    });
    finds("/when", "goes by itself", |plan| {
        let (step, span) = (StepKey::own(OwnStepId::new(1, 100)), TimeSpan::ZERO);
        own_step(plan, OwnWhen::After { step, span });
    });
    finds("kitchen", "room in the fridge is 3000 l", |plan| {
        plan.kitchen.fridge = Volume::from_litres(3000.0);
    });
    finds("/racks", "height above a rack is 5 mm", |plan| {
        cooker(plan).racks.push(Rack {
            area: Area::from_square_metres(0.2),
            height: Length::from_millimetres(5.0),
        });
    });
    finds(
        "/hot_side",
        "hot side is than the place of the thermometer is 200 °C",
        |plan| {
            cooker(plan).hot_side = Some(TemperatureDifference::from_kelvin(200.0));
        },
    );
    finds("/feed_every", "rounds of fuel is 1 min", |plan| {
        cooker(plan).feed_every = Some(TimeSpan::from_minutes(1.0));
    });
}

proptest! {
    #[test]
    fn any_numbers_are_judged_without_a_panic(mass in any::<f64>(), thickness in any::<f64>(), pit in any::<f64>(), altitude in any::<f64>(), count in any::<u32>()) {
        let mut plan = sound();
        plan.place.altitude = Length::from_metres(altitude);
        cooker(&mut plan).programme[0].set = celsius(pit);
        let one = piece(&mut plan);
        one.mass = Mass::from_kilograms(mass);
        one.thickness = Some(Length::from_metres(thickness));
        one.count = count;
        for problem in check(&plan, week_before()) {
            prop_assert!(!problem.message(Units::default()).is_empty());
        }
    }
}
