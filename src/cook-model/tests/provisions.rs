//! What must hold for every plan: more guests never buy less, nothing is ever short, changes stay where they are.

use cook_model::handover::identity::{CookerId, DishId, EntryId, PieceId};
use cook_model::handover::{Entry, Journal};
use cook_model::live::Stage;
use cook_model::meat::CutId;
use cook_model::plan::outlook::{
    DishOutlook, DishTimes, Odds, Outlook, StepKind, TableOutlook, Window,
};
use cook_model::plan::{CookerKind, Guests, Intact, Plan, Situation, Zone, derive};
use cook_model::provisions::fuel::{
    FireWeather, Fuel, LearnedFactor, Vessel, fuel_need, learned, rate,
};
use cook_model::provisions::shopping::{
    Item, Money, PackKind, Price, PricedBy, Purchase, SoldBy, Working, bill, shopping_list,
};
use cook_model::provisions::{
    Hunger, IN_FRIDGE, Instead, Keeping, Offer, OfferError, Quantity, Roll, Sides, Size, SwapWay,
    ThawPlace, ThawRefusal, Weights, appetite, burnt, equal_pieces, even_out, from_sizes, keeping,
    portions, swap_effect, take_offer, to_buy, wrap_need,
};
use cook_model::schedule::Lattice;
use cook_model::units::{Area, Energy, Length, Mass, Power, Temperature, TimeSpan, Volume};
use proptest::prelude::*;
use serde_json::json;
use std::collections::BTreeMap;

fn cut() -> impl Strategy<Value = CutId> {
    (0..CutId::ALL.len()).prop_map(|at| CutId::ALL[at])
}

/// A harvest supper: butts and lamb on an offset, corn on a kettle.
fn supper(guests: Guests) -> Plan {
    let id = |random| DishId::new(1, random).to_string();
    let cooker = |random| CookerId::new(1, random).to_string();
    let piece = |random| PieceId::new(1, random).to_string();
    serde_json::from_value(json!({
        "name": "Harvest supper",
        "serving": {"local": "2026-09-12T18:00:00", "zone": "Europe/London", "offset_seconds": 3600},
        "guests": guests,
        "cookers": {
            cooker(1): {"name": "Offset", "kind": "offset", "grate": 0.36,
                "programme": [{"when": {"at": "start"}, "set": 121.0}]},
            cooker(2): {"name": "Kettle", "kind": "kettle", "grate": 0.23,
                "programme": [{"when": {"at": "start"}, "set": 200.0}]},
        },
        "dishes": {
            id(1): {"name": "Pork", "food": {"is": "cut", "cut": "pork-shoulder-butt"}, "cooker": cooker(1),
                "pieces": {piece(1): {"count": 2, "mass": 3.8}},
                "salt": {"ahead": 64800.0, "rate": 0.012},
                "spray": {"first": 7200.0, "every": 2700.0}},
            id(2): {"name": "Lamb", "food": {"is": "cut", "cut": "lamb-shoulder"}, "cooker": cooker(1),
                "pieces": {piece(2): {"mass": 2.6}},
                "salt": {"ahead": 64800.0, "rate": 0.012}},
            id(3): {"name": "Corn", "cooker": cooker(2),
                "food": {"is": "own", "least": 720.0, "likely": 900.0, "most": 1200.0, "place": "cooker"},
                "pieces": {piece(3): {"count": 18, "mass": 0.25}}},
        },
    }))
    .expect("a plan")
}

fn supper_for(grown: u32) -> Plan {
    supper(Guests::of(grown, 4))
}

proptest! {
    #[test]
    fn more_guests_never_buy_less(cut in cut(), grown in 0_u32..80, small in 0_u32..40, more in 1_u32..20) {
        let mouths = appetite(Sides::Some, Hunger::Usual, 1);
        let few = mouths.wanted(Guests::of(grown, small));
        let many = mouths.wanted(Guests::of(grown + more, small));
        let many_small = mouths.wanted(Guests::of(grown, small + more));
        prop_assert!(to_buy(cut, many).bought >= to_buy(cut, few).bought);
        prop_assert!(to_buy(cut, many_small).bought >= to_buy(cut, few).bought);
        let pieces = |wanted| equal_pieces(cut, wanted).first().map_or(Mass::ZERO, |choice| choice.weights.bought);
        prop_assert!(pieces(many).kilograms() >= pieces(few).kilograms() - 1e-9);
    }

    #[test]
    fn whole_pieces_are_never_short(cut in cut(), grams in 50.0_f64..20_000.0, sizes in prop::collection::vec(0.05_f64..8.0, 1..5)) {
        let wanted = Mass::from_grams(grams);
        for choice in equal_pieces(cut, wanted) {
            prop_assert!(choice.over.grams() >= -1e-6);
        }
        let sizes: Vec<Mass> = sizes.into_iter().map(Mass::from_kilograms).collect();
        let largest = sizes.iter().fold(Mass::ZERO, |most, size| most.max(*size));
        if let Some(choice) = from_sizes(cut, wanted, &sizes) {
            prop_assert!(choice.over.grams() >= -1e-3, "{:?}", choice);
            let spare = Weights::from_bought(cut, largest).on_plate;
            prop_assert!(choice.over.grams() <= spare.grams() + 1e-3, "{:?}", choice);
        } else {
            // Only where more pieces would be needed than are reckoned with.
            prop_assert!(to_buy(cut, wanted).bought / largest > 199.0);
        }
    }

    #[test]
    fn plate_and_shop_undo_each_other(cut in cut(), grams in 1.0_f64..50_000.0) {
        let buy = to_buy(cut, Mass::from_grams(grams));
        let back = Weights::from_bought(cut, buy.bought);
        prop_assert!((back.on_plate.grams() / grams - 1.0).abs() < 1e-12);
        prop_assert!(buy.bought >= buy.trimmed && buy.trimmed > buy.on_plate);
    }

    #[test]
    fn units_there_and_back(number in 1e-3_f64..1e6) {
        for (there, back) in [
            (Mass::from_pounds(number).kilograms(), Mass::from_kilograms(Mass::from_pounds(number).kilograms()).pounds()),
            (Volume::from_litres(number).cubic_metres(), Volume::from_cubic_metres(Volume::from_litres(number).cubic_metres()).litres()),
            (Length::from_inches(number).metres(), Length::from_metres(Length::from_inches(number).metres()).inches()),
            (Energy::from_kilowatt_hours(number).joules(), Energy::from_joules(Energy::from_kilowatt_hours(number).joules()).kilowatt_hours()),
        ] {
            prop_assert!(there > 0.0 && (back / number - 1.0).abs() < 1e-12);
        }
    }

    #[test]
    fn shop_units_are_never_short_and_never_a_pack_too_many(wanted in 1e-3_f64..500.0, holds in 1e-2_f64..50.0) {
        let sold = SoldBy::packs(PackKind::Sack, Quantity::Mass(Mass::from_kilograms(holds)));
        let bought = sold.shop_amount(Quantity::Mass(Mass::from_kilograms(wanted))).expect("both by weight");
        let amount = bought.amount.number();
        prop_assert!(amount >= wanted * (1.0 - 1e-6));
        prop_assert!(amount - wanted < holds * (1.0 + 1e-6));
    }

    #[test]
    fn fire_wants_more_in_cold_wind_and_with_wet_wood(
        pit in 80.0_f64..200.0, air in -20.0_f64..35.0, wind in 0.0_f64..10.0, wet in 0.05_f64..0.4, by in 0.01_f64..1.0,
    ) {
        let vessel = Vessel::usual(CookerKind::Offset).expect("fed");
        let burn = |pit: f64, air: f64, wind: f64, moisture: f64| {
            let weather = FireWeather {
                air: Temperature::from_celsius(air),
                wind_metres_per_second: wind,
                altitude: Length::ZERO,
            };
            let meat = Power::from_watts(100.0);
            rate(&vessel, Fuel::Wood { moisture }, Temperature::from_celsius(pit), &weather, meat).number()
        };
        let usual = burn(pit, air, wind, wet);
        prop_assert!(usual > 0.0 && usual.is_finite());
        for harder in [
            burn(pit + 20.0 * by, air, wind, wet),
            burn(pit, air - 20.0 * by, wind, wet),
            burn(pit, air, wind + 5.0 * by, wet),
            burn(pit, air, wind, wet + 0.2 * by),
        ] {
            prop_assert!(harder >= usual * (1.0 - 1e-9), "{harder} < {usual}");
        }
    }

    #[test]
    fn a_larger_cooker_burns_more(grate in 0.05_f64..2.0, by in 1.01_f64..2.0) {
        let weather = FireWeather {
            air: Temperature::from_celsius(10.0),
            wind_metres_per_second: 2.0,
            altitude: Length::from_metres(300.0),
        };
        let burn = |grate: f64| {
            let vessel = Vessel::for_grate(CookerKind::Drum, Area::from_square_metres(grate)).expect("fed");
            rate(&vessel, Fuel::Briquettes, Temperature::from_celsius(120.0), &weather, Power::ZERO).number()
        };
        prop_assert!(burn(grate * by) > burn(grate));
    }

    #[test]
    fn a_heavier_piece_is_larger_everywhere(cut in cut(), kilograms in 0.1_f64..10.0, by in 1.01_f64..2.0) {
        let of = |kilograms| Size::of(cut, Mass::from_kilograms(kilograms), None);
        let (light, heavy) = (of(kilograms), of(kilograms * by));
        prop_assert!(heavy.thickness >= light.thickness && heavy.length >= light.length);
        prop_assert!(heavy.surface() > light.surface());
        let roll = Roll { width: Length::from_metres(2.0), turns: 2.0 };
        prop_assert!(wrap_need(&heavy, roll).length >= wrap_need(&light, roll).length);
        prop_assert!(even_out(heavy.thickness, 0.9, IN_FRIDGE).usual >= even_out(light.thickness, 0.9, IN_FRIDGE).usual);
    }

    #[test]
    fn ticks_prices_and_amounts_move_no_line(
        ticks in prop::collection::vec(any::<bool>(), 12), price in 1_i64..100_000, kilograms in 0.1_f64..30.0,
    ) {
        let plan = supper_for(14);
        let plain = shopping_list(&plan, None, &BTreeMap::new());
        let mut noted = plan.clone();
        for (line, ticked) in plain.lines.iter().zip(ticks) {
            noted.purchases.insert(line.item, Purchase {
                ticked,
                amount: ticked.then_some(Quantity::Mass(Mass::from_kilograms(kilograms))),
                price: Some(Price { money: Money(price), by: PricedBy::All }),
                ..Purchase::default()
            });
        }
        let noted = shopping_list(&noted, None, &BTreeMap::new());
        let order = |list: &cook_model::provisions::shopping::ShoppingList| -> Vec<Item> {
            list.lines.iter().map(|line| line.item).collect()
        };
        prop_assert_eq!(order(&plain), order(&noted));
        let sums = bill(&noted, plan.guests);
        let ticked: i64 = noted.lines.iter().filter(|line| line.ticked).map(|line| line.cost.map_or(0, |cost| cost.0)).sum();
        prop_assert_eq!(sums.total.0 - sums.to_pay.0, ticked);
    }
}

#[test]
fn a_list_names_everything_once_by_aisle() {
    let list = shopping_list(&supper_for(14), None, &BTreeMap::new());
    let mut seen: Vec<Item> = list.lines.iter().map(|line| line.item).collect();
    assert!(
        list.lines
            .windows(2)
            .all(|pair| pair[0].aisle <= pair[1].aisle)
    );
    let all = seen.len();
    seen.sort_unstable();
    seen.dedup();
    assert_eq!(seen.len(), all);
    for item in [
        Item::Salt,
        Item::Rub,
        Item::Spray,
        Item::Foil,
        Item::Wood,
        Item::Lump,
        Item::Briquettes,
    ] {
        assert!(seen.contains(&item), "{item}");
    }
}

#[test]
fn salt_is_merged_over_dishes_and_shows_its_working() {
    let list = shopping_list(&supper_for(14), None, &BTreeMap::new());
    let salt = list
        .lines
        .iter()
        .find(|line| line.item == Item::Salt)
        .expect("salt");
    let Some(Quantity::Mass(mass)) = salt.worked_out else {
        panic!("salt by weight")
    };
    // 1.2 % of 7.6 kg of butt less 5 % trimming and 2.6 kg of lamb less 6 %.
    assert!((mass.grams() - 0.012 * (7600.0 * 0.95 + 2600.0 * 0.94)).abs() < 1e-6);
    assert!(matches!(&salt.working, Some(Working::Salt { parts, .. }) if parts.len() == 2));
    assert_eq!(salt.dishes.len(), 2);
}

#[test]
fn what_needs_a_forecast_waits_in_its_place() {
    let list = shopping_list(&supper_for(14), None, &BTreeMap::new());
    let of = |item| {
        list.lines
            .iter()
            .find(|line| line.item == item)
            .expect("a line")
    };
    assert_eq!(of(Item::Wood).worked_out, None);
    assert_eq!(of(Item::Spray).worked_out, None);
    // Corn alone needs no forecast: its minutes are the fire's.
    let Some(Quantity::Mass(briquettes)) = of(Item::Briquettes).worked_out else {
        panic!("by weight")
    };
    assert!(
        briquettes.kilograms() > 0.4 && briquettes.kilograms() < 2.0,
        "{briquettes:?}"
    );
}

#[test]
fn an_override_outlives_a_change_of_the_plan_and_is_marked() {
    let purchases = BTreeMap::from([(
        Item::Salt,
        Purchase {
            amount: Some(Quantity::Mass(Mass::from_grams(200.0))),
            already: Some(Quantity::Mass(Mass::from_grams(150.0))),
            ..Purchase::default()
        },
    )]);
    for grown in [14, 30] {
        let plan = Plan {
            purchases: purchases.clone(),
            ..supper_for(grown)
        };
        let list = shopping_list(&plan, None, &BTreeMap::new());
        let salt = list
            .lines
            .iter()
            .find(|line| line.item == Item::Salt)
            .expect("salt");
        assert!(salt.overridden && salt.worked_out != salt.wanted);
        let bought = salt.to_buy.expect("an amount");
        // 50 g are missing: one small pack.
        assert_eq!(bought.packs.map(|(packs, _)| packs), Some(1));
    }
    let text = serde_json::to_string(&purchases).expect("json");
    let read: BTreeMap<Item, Purchase> = serde_json::from_str(&text).expect("purchases");
    assert_eq!(read, purchases);
}

#[test]
fn an_amount_in_the_wrong_kind_of_unit_is_left_aside_and_said() {
    let mut plan = supper_for(14);
    plan.purchases.insert(
        Item::Salt,
        Purchase {
            already: Some(Quantity::Count(3)),
            ..Purchase::default()
        },
    );
    let list = shopping_list(&plan, None, &BTreeMap::new());
    let salt = list
        .lines
        .iter()
        .find(|line| line.item == Item::Salt)
        .expect("salt");
    assert!(salt.unlike && salt.to_buy.is_some());
}

#[test]
fn the_demo_feeds_its_guests_by_division() {
    let plan = supper_for(14);
    let there = portions(&plan);
    // 14 × 200 g and 4 × 100 g; pork 0.578 of trimmed, lamb 0.481 of trimmed.
    assert!((there.wanted.kilograms() - 3.2).abs() < 1e-9);
    assert!((there.planned.kilograms() - (7.6 * 0.95 * 0.578 + 2.6 * 0.94 * 0.481)).abs() < 1e-9);
}

#[test]
fn a_cooker_that_learned_asks_for_less_reserve() {
    let kettle = CookerId::new(1, 2);
    let mut factor = LearnedFactor::default();
    for _ in 0..6 {
        factor = factor.after(1.3);
    }
    let amount = |learned: &BTreeMap<CookerId, LearnedFactor>| {
        let list = shopping_list(&supper_for(14), None, learned);
        let line = list
            .lines
            .iter()
            .find(|line| line.item == Item::Briquettes)
            .cloned();
        line.and_then(|line| line.worked_out)
            .expect("an amount")
            .number()
    };
    assert!(amount(&BTreeMap::from([(kettle, factor)])) < amount(&BTreeMap::new()));
}

/// What a forecast says of the supper: pork on for nine hours (ten in one case of ten) and wrapped after six, lamb for
/// seven.
fn outlook(plan: &Plan, pork_hours: f64) -> Outlook {
    let start = plan.serving.moment() - TimeSpan::from_hours(14.0);
    let window = |from: f64, to: f64| {
        let mut window = Window::at(start + TimeSpan::from_hours(0.5 * (from + to)));
        window.deciles[0] = start + TimeSpan::from_hours(from);
        window.deciles[8] = start + TimeSpan::from_hours(to);
        window
    };
    let odds = Odds { kept: 9, of: 10 };
    let dish = |random, hours: f64, wrap: Option<f64>| DishOutlook {
        dish: DishId::new(1, random),
        letter: 'P',
        hue: 1,
        forecast: Ok(DishTimes {
            earliest_on: start,
            latest_on: start,
            on: start,
            ready: window(hours - 1.0, hours + 1.0),
            table_ready: window(hours, hours + 2.0),
            odds,
            wrap: wrap.map(|hours| window(hours - 0.5, hours + 0.5)),
            stall: None,
            course: Vec::new(),
            target: Some(Temperature::from_celsius(95.0)),
            target_lowered: None,
            loss: [0.3, 0.35, 0.4],
            tenderness: None,
            lethality_met: odds,
            stays_hot: None,
            served: Mass::from_kilograms(4.0),
            assumed: Vec::new(),
        }),
        stage: Stage::NotOn,
        live: None,
    };
    Outlook {
        members: 10,
        dishes: vec![dish(1, pork_hours, Some(6.0)), dish(2, 7.0, None)],
        table: TableOutlook {
            serving: plan.serving.moment(),
            odds,
            ready: None,
            slack: None,
        },
        steps: Vec::new(),
        lattice: Lattice::default(),
        findings: Vec::new(),
        safe: cook_model::safety::SafeLine::default(),
        portions: portions(plan),
    }
}

#[test]
fn a_forecast_fills_the_lines_that_waited() {
    let plan = supper_for(14);
    let worked_out = |hours| {
        let outlook = outlook(&plan, hours);
        let list = shopping_list(&plan, Some(&outlook), &BTreeMap::new());
        move |item| {
            let line = list
                .lines
                .iter()
                .find(|line| line.item == item)
                .expect("a line");
            (
                line.worked_out.expect("an amount").number(),
                line.working.clone(),
            )
        }
    };
    let (nine, ten) = (worked_out(9.0), worked_out(10.0));
    let (wood, working) = nine(Item::Wood);
    assert!((8.0..22.0).contains(&wood), "{wood} kg");
    assert!(ten(Item::Wood).0 > wood);
    let Some(Working::Fires { fires, .. }) = working else {
        panic!("fires")
    };
    assert!(fires[0].1.rounds >= 9);
    // Sprayed from two hours on every 45 min until it is wrapped after six: six rounds.
    let (litres, working) = nine(Item::Spray);
    assert!(litres > 0.0);
    assert!(matches!(working, Some(Working::Sprayed { parts }) if parts[0].1.rounds == 6));
    // A bed of lump under the wood fire.
    assert!((nine(Item::Lump).0 - 1.5).abs() < 1e-9);
}

fn butt(kilograms: f64) -> Offer {
    Offer {
        cut: CutId::PorkShoulderButt,
        count: 2,
        mass: Some(Mass::from_kilograms(kilograms)),
        bones: None,
        thickness: None,
        price: Some(Price {
            money: Money(720),
            by: PricedBy::Kilogram,
        }),
        frozen: false,
        intact: Intact::Yes,
    }
}

#[test]
fn a_heavier_piece_feeds_more_costs_more_and_takes_more_room() {
    let plan = supper_for(14);
    let (dish, piece) = (DishId::new(1, 1), PieceId::new(2, 2));
    let took = |kilograms, way| {
        take_offer(&plan, dish, &butt(kilograms), way, Instead::All, piece).expect("taken")
    };
    let small = took(3.8, SwapWay::Whole);
    let large = took(4.4, SwapWay::Whole);
    let effect = swap_effect(&small, None, &BTreeMap::new(), dish, &large).expect("both");
    assert!(effect.after.portions.planned > effect.before.portions.planned);
    // 1.2 kg more at 7.20 a kilogram.
    assert_eq!(
        effect.after.bill.total - effect.before.bill.total,
        Money(864)
    );
    assert!(effect.after.room > effect.before.room);
    assert!(effect.grate.is_some());
    let halves = took(4.4, SwapWay::CutInTwo);
    assert_eq!(portions(&halves).planned, portions(&large).planned);
    let count: u32 = halves.dishes[&dish]
        .pieces
        .values()
        .map(|piece| piece.count)
        .sum();
    assert_eq!(count, 4);
}

#[test]
fn another_cut_takes_its_own_method_and_a_dish_of_ones_own_has_no_piece() {
    let plan = supper_for(14);
    let offer = Offer {
        cut: CutId::PorkPicnic,
        ..butt(3.0)
    };
    let piece = PieceId::new(2, 2);
    let changed = take_offer(
        &plan,
        DishId::new(1, 1),
        &offer,
        SwapWay::Whole,
        Instead::All,
        piece,
    )
    .expect("taken");
    assert_eq!(changed.dishes[&DishId::new(1, 1)].wrap, None);
    assert_eq!(plan.dishes[&DishId::new(1, 1)].pieces.len(), 1);
    let corn = take_offer(
        &plan,
        DishId::new(1, 3),
        &offer,
        SwapWay::Whole,
        Instead::All,
        piece,
    );
    assert_eq!(corn.expect_err("no cut"), OfferError::NoSuchDish);
}

#[test]
fn a_piece_stands_in_for_one_of_two_and_the_other_stays() {
    let plan = supper_for(14);
    let (dish, planned) = (DishId::new(1, 1), PieceId::new(1, 1));
    let one = Offer {
        count: 1,
        ..butt(4.4)
    };
    let take = |instead| {
        take_offer(
            &plan,
            dish,
            &one,
            SwapWay::Whole,
            instead,
            PieceId::new(2, 2),
        )
    };
    let taken = take(Instead::OneOf { piece: planned }).expect("taken");
    let pieces = &taken.dishes[&dish].pieces;
    let weights: Vec<(u32, f64)> = pieces
        .values()
        .map(|piece| (piece.count, piece.mass.kilograms()))
        .collect();
    assert_eq!(weights, [(1, 3.8), (1, 4.4)]);
    let gone = take(Instead::OneOf {
        piece: PieceId::new(9, 9),
    });
    assert_eq!(gone.expect_err("not there"), OfferError::NoSuchPiece);
    let all = take(Instead::All).expect("taken");
    assert_eq!(all.dishes[&dish].pieces.len(), 1);
}

/// Frozen butts of the supper, thawed in a place of the person's.
fn frozen(thaw: &str) -> Plan {
    let mut plan = supper_for(14);
    let pork = plan.dishes.get_mut(&DishId::new(1, 1)).expect("pork");
    pork.thaw = serde_json::from_value(json!(thaw)).expect("a place");
    pork.salt = None;
    for piece in pork.pieces.values_mut() {
        piece.frozen = true;
    }
    plan
}

fn derived(plan: &Plan, hours_before: f64) -> (Outlook, cook_model::units::Moment) {
    let now = plan.serving.moment() - TimeSpan::from_hours(hours_before);
    let situation = Situation::new(now, Zone::fixed(3600));
    (derive(plan, &situation, 8), now)
}

#[test]
fn frozen_pieces_thaw_by_the_printed_rates_and_never_on_the_counter() {
    let pork = DishId::new(1, 1);
    let step = |outlook: &Outlook, kind| {
        let found = outlook
            .steps
            .iter()
            .find(|step| step.dish == Some(pork) && step.kind == kind);
        found.expect("a step").when.likely()
    };
    let plan = frozen("fridge");
    let (outlook, now) = derived(&plan, 200.0);
    let kept = keeping(&plan, &outlook, pork, now).expect("before it goes on");
    let of = |kept: &Keeping, wanted| {
        let mut ways = kept.thaw.iter();
        let way = ways.find(|(place, _)| *place == wanted);
        way.expect("a way").1
    };
    assert!(matches!(
        of(&kept, ThawPlace::Counter),
        Err(ThawRefusal::Counter)
    ));
    let fridge = of(&kept, ThawPlace::Fridge).expect("time enough");
    assert_eq!(kept.buy.latest, fridge.begins);
    // A day for every 4 lb at the longest, 8.4 lb.
    assert!((fridge.most.hours() - 24.0 * 3.8 / 0.453_592_37 / 4.0).abs() < 1e-6);
    assert!(step(&outlook, StepKind::Thaw) <= fridge.begins);

    let plan = frozen("cold_water");
    let (outlook, now) = derived(&plan, 200.0);
    let kept = keeping(&plan, &outlook, pork, now).expect("before it goes on");
    let water = of(&kept, ThawPlace::ColdWater).expect("time enough");
    assert!(water.cook_at_once && water.most.hours() < 5.0);
    let thawing = step(&outlook, StepKind::On) - step(&outlook, StepKind::Thaw);
    // Out of the water it is salted, rubbed and put on at once.
    assert!(
        thawing - water.most < TimeSpan::from_hours(2.0),
        "{thawing:?}"
    );
}

#[test]
fn fresh_meat_is_bought_while_it_keeps() {
    let plan = supper_for(14);
    let (outlook, now) = derived(&plan, 200.0);
    for dish in [1, 2].map(|random| DishId::new(1, random)) {
        let kept = keeping(&plan, &outlook, dish, now).expect("before it goes on");
        assert!(kept.thaw.is_empty());
        let earliest = kept.buy.earliest.expect("fresh");
        assert!(earliest < kept.buy.latest && kept.buy.latest <= kept.wanted);
    }
    assert_eq!(keeping(&plan, &outlook, DishId::new(1, 3), now), None);
}

#[test]
fn what_a_fire_was_fed_teaches_the_next_cook() {
    let plan = supper_for(14);
    let (offset, kettle) = (CookerId::new(1, 1), CookerId::new(1, 2));
    let on = plan.serving.moment() - TimeSpan::from_hours(12.0);
    let cook = |kilograms: f64, told_off: bool| {
        let mut events = vec![(0.0, json!({"is": "on", "dish": DishId::new(1, 1)}))];
        events.extend((1..=10).map(|hour| {
            let fed = json!({"is": "fed", "cooker": offset, "fuel": kilograms / 10.0});
            (f64::from(hour), fed)
        }));
        if told_off {
            events.push((10.0, json!({"is": "off", "dish": DishId::new(1, 1)})));
        }
        let mut journal = Journal::default();
        for (number, (hours, event)) in (1..).zip(events) {
            let at = on + TimeSpan::from_hours(hours);
            let entry =
                json!({"at": at, "logged": at, "replica": "0000000000000001", "event": event});
            let entry: Entry = serde_json::from_value(entry).expect("an entry");
            journal.0.insert(EntryId::new(number, 0), entry);
        }
        journal
    };
    let after = |journal: &Journal| learned(&plan, [(&plan, journal)].into_iter());
    let modelled = fuel_need(&burnt(&plan, &cook(6.0, true), offset).expect("it is over"));
    let modelled = modelled.likely.number();
    let usual = LearnedFactor::default().likely();
    let more = after(&cook(2.0 * modelled, true));
    let less = after(&cook(0.7 * modelled, true));
    assert!(more[&offset].likely() > usual && usual > less[&offset].likely());
    assert_eq!(more[&offset].cooks, 1);
    assert!(
        !more.contains_key(&kettle),
        "nothing was told of the kettle"
    );
    assert!(after(&cook(6.0, false)).is_empty(), "it is not off yet");
    // A copy of the plan has the same cookers; so has another plan in which they have the same name.
    let amount = |learned: &BTreeMap<CookerId, LearnedFactor>| {
        let outlook = outlook(&plan, 9.0);
        let list = shopping_list(&plan, Some(&outlook), learned);
        let wood = list.lines.iter().find(|line| line.item == Item::Wood);
        wood.and_then(|line| line.worked_out)
            .expect("wood")
            .number()
    };
    assert!(amount(&more) > amount(&less));
}

proptest! {
    #[test]
    fn no_line_asks_for_less_when_every_piece_grows(by in 1.02_f64..1.8, paper in 0.3_f64..1.2) {
        let mut small = supper_for(14);
        small.supplies.paper_width = Length::from_metres(paper);
        small.supplies.binder = 0.1;
        small.appetite.leftovers = Mass::from_kilograms(1.0);
        let mut large = small.clone();
        for dish in large.dishes.values_mut() {
            for piece in dish.pieces.values_mut() {
                piece.mass = piece.mass * by;
            }
        }
        let list = |plan: &Plan| shopping_list(plan, Some(&outlook(plan, 9.0)), &BTreeMap::new());
        let (small, large) = (list(&small), list(&large));
        prop_assert_eq!(small.lines.len(), large.lines.len());
        for (before, after) in small.lines.iter().zip(&large.lines) {
            let (before, after) = (before.worked_out, after.worked_out);
            let number = |amount: Option<Quantity>| amount.map_or(0.0, |amount| amount.number());
            prop_assert!(number(after) >= number(before) - 1e-9, "{:?} {:?}", before, after);
        }
    }

    #[test]
    fn what_is_handed_over_with_what_is_there_is_never_short(already in 0.0_f64..30.0, holds in 0.05_f64..20.0) {
        let mut plan = supper_for(14);
        let kilograms = |number| Quantity::Mass(Mass::from_kilograms(number));
        plan.purchases.insert(Item::Salt, Purchase {
            already: Some(kilograms(already)),
            sold_by: Some(SoldBy::packs(PackKind::Pack, kilograms(holds))),
            ..Purchase::default()
        });
        let list = shopping_list(&plan, None, &BTreeMap::new());
        let salt = list.lines.iter().find(|line| line.item == Item::Salt).expect("salt");
        let (wanted, bought) = (salt.wanted.expect("known"), salt.to_buy.expect("known"));
        prop_assert!(already + bought.amount.number() >= wanted.number() * (1.0 - 1e-6));
    }

    #[test]
    fn every_offer_that_is_taken_can_be_reckoned_with(
        kilograms in 1.9_f64..8.0, count in 1_u32..6, in_two in any::<bool>(), one in any::<bool>(),
    ) {
        let plan = supper_for(14);
        let dish = DishId::new(1, 1);
        let offer = Offer { count, ..butt(kilograms) };
        let way = if in_two { SwapWay::CutInTwo } else { SwapWay::Whole };
        let instead = if one { Instead::OneOf { piece: PieceId::new(1, 1) } } else { Instead::All };
        let taken = take_offer(&plan, dish, &offer, way, instead, PieceId::new(2, 2)).expect("taken");
        prop_assert!(cook_model::plan::check(&taken, plan.serving.moment() - TimeSpan::from_hours(90.0)).is_empty());
        let mass: f64 = taken.dishes[&dish].pieces.values().map(|piece| piece.mass.kilograms() * f64::from(piece.count)).sum();
        let expected = kilograms * f64::from(count) + if one { 3.8 } else { 0.0 };
        prop_assert!((mass - expected).abs() < 1e-9);
    }
}
