//! What an entry of the journal says.

use crate::format::Formats;
use crate::words::steps as verbs;
use cook_model::handover::identity::{CookerId, DishId, PieceId};
use cook_model::handover::{
    Entry, Event, FuelKind, Gauge, HeatLoss, KnownEvent, ProbeFeel, ProbePlace,
};
use cook_model::plan::{Cover, Plan, StepOf, in_order};

/// How a probe goes in.
#[must_use]
pub const fn feel(feel: ProbeFeel) -> &'static str {
    match feel {
        ProbeFeel::Tight => "tight",
        ProbeFeel::Drags => "drags",
        ProbeFeel::SoftButter => "like soft butter",
    }
}

/// Where a probe sat.
#[must_use]
pub const fn place(place: ProbePlace) -> &'static str {
    match place {
        ProbePlace::NotSaid => "Not said",
        ProbePlace::ThickMiddle => "Thick middle",
        ProbePlace::ThinEnd => "Thin end",
    }
}

/// With which gauge.
#[must_use]
pub const fn gauge(gauge: Gauge) -> &'static str {
    match gauge {
        Gauge::NotSaid => "Not said",
        Gauge::AtMeat => "At the meat",
        Gauge::Lid => "In the lid",
        Gauge::Own => "Cooker’s own",
    }
}

/// What is burnt.
#[must_use]
pub const fn fuel(kind: FuelKind) -> &'static str {
    match kind {
        FuelKind::Wood => "Wood",
        FuelKind::Lump => "Lump",
        FuelKind::Briquettes => "Briquettes",
        FuelKind::Pellets => "Pellets",
    }
}

/// What meat is wrapped in.
#[must_use]
pub const fn cover(cover: Cover) -> &'static str {
    match cover {
        Cover::Paper => "paper",
        Cover::Foil => "foil",
    }
}

/// How heat was lost.
#[must_use]
pub const fn heat_loss(by: HeatLoss) -> &'static str {
    match by {
        HeatLoss::Fire => "fire out",
        HeatLoss::Power => "power failed",
        HeatLoss::LidOff => "lid off",
    }
}

/// The name of a dish, or what stands for one that is gone.
#[must_use]
pub fn dish_name(plan: &Plan, dish: DishId) -> String {
    let name = plan.dishes.get(&dish).map(|dish| dish.name.trim());
    name.filter(|name| !name.is_empty())
        .unwrap_or("a dish")
        .to_owned()
}

/// The name of a cooker, or what stands for one that is gone.
#[must_use]
pub fn cooker_name(plan: &Plan, cooker: CookerId) -> String {
    let name = plan.cookers.get(&cooker).map(|cooker| cooker.name.trim());
    name.filter(|name| !name.is_empty())
        .unwrap_or("a cooker")
        .to_owned()
}

/// The dish that a piece belongs to.
#[must_use]
pub fn dish_of(plan: &Plan, piece: PieceId) -> Option<DishId> {
    let mut dishes = plan.dishes.iter();
    dishes
        .find(|(_, dish)| dish.pieces.contains_key(&piece))
        .map(|(id, _)| *id)
}

/// A piece by its dish and, where there are several, its number.
#[must_use]
pub fn piece_name(plan: &Plan, piece: PieceId) -> String {
    let Some(id) = dish_of(plan, piece) else {
        return "a piece".to_owned();
    };
    let pieces = in_order(&plan.dishes[&id].pieces, |piece| &piece.order);
    let name = dish_name(plan, id);
    match pieces.iter().position(|(other, _)| *other == piece) {
        Some(place) if pieces.len() > 1 => format!("{name} {}", place + 1),
        _ => name,
    }
}

/// What an event says, without its time.
#[must_use]
pub fn event(event: &KnownEvent, plan: &Plan, formats: &Formats) -> String {
    let dish = |id: &DishId| dish_name(plan, *id);
    let piece = |id: &PieceId| piece_name(plan, *id);
    let cooker = |id: &CookerId| cooker_name(plan, *id);
    match event {
        KnownEvent::On { dish: id } => format!("{}: on", dish(id)),
        KnownEvent::ProbeIn { piece: id } => format!("{}: probe in", piece(id)),
        KnownEvent::Core {
            piece: id,
            reading,
            place: sat,
            doubtful,
        } => {
            let sat = match sat {
                ProbePlace::NotSaid => String::new(),
                sat => format!(", {}", place(*sat).to_lowercase()),
            };
            let doubt = if *doubtful { ", doubtful" } else { "" };
            format!(
                "{}: core {}{sat}{doubt}",
                piece(id),
                formats.temperature(*reading)
            )
        }
        KnownEvent::Felt {
            piece: id,
            feel: how,
        } => {
            format!("{}: probe goes in {}", piece(id), felt(*how))
        }
        KnownEvent::Pit {
            cooker: id,
            reading,
            gauge: with,
            doubtful,
        } => {
            let with = match with {
                Gauge::NotSaid => String::new(),
                with => format!(", {}", gauge(*with).to_lowercase()),
            };
            let doubt = if *doubtful { ", doubtful" } else { "" };
            format!(
                "{}: pit {}{with}{doubt}",
                cooker(id),
                formats.temperature(*reading)
            )
        }
        KnownEvent::Surroundings {
            air,
            wind_metres_per_second,
            rain,
        } => {
            let mut parts = Vec::new();
            parts.extend(air.map(|air| formats.temperature(air)));
            parts.extend(wind_metres_per_second.map(|wind| format!("wind {}", formats.wind(wind))));
            parts.extend(rain.map(|rain| if rain { "rain" } else { "dry" }.to_owned()));
            format!("outside: {}", parts.join(", "))
        }
        KnownEvent::PitSet { cooker: id, set } => {
            format!("{}: set to {}", cooker(id), formats.temperature(*set))
        }
        KnownEvent::Fed {
            cooker: id,
            fuel: amount,
            kind,
        } => {
            let mut parts = Vec::new();
            parts.extend(amount.map(|amount| formats.mass(amount)));
            parts.extend(kind.map(|kind| fuel(kind).to_lowercase()));
            match parts.is_empty() {
                true => format!("{}: fed", cooker(id)),
                false => format!("{}: fed {}", cooker(id), parts.join(" of ")),
            }
        }
        KnownEvent::LidOpen { cooker: id, until } => match until {
            Some(until) => format!("{}: lid open until {}", cooker(id), formats.time(*until)),
            None => format!("{}: lid opened", cooker(id)),
        },
        KnownEvent::Turned { dish: id } => format!("{}: turned", dish(id)),
        KnownEvent::Sprayed { dish: id } => format!("{}: sprayed", dish(id)),
        KnownEvent::Wrapped {
            piece: id,
            cover: in_,
        } => {
            format!("{}: wrapped in {}", piece(id), cover(*in_))
        }
        KnownEvent::Unwrapped { piece: id } => format!("{}: unwrapped", piece(id)),
        KnownEvent::MovedToOven { dish: id, air } => {
            format!("{}: in the oven at {}", dish(id), formats.temperature(*air))
        }
        KnownEvent::MovedBack { dish: id } => format!("{}: back on the cooker", dish(id)),
        KnownEvent::Off { dish: id } => format!("{}: off", dish(id)),
        KnownEvent::Vented { dish: id } => format!("{}: vented", dish(id)),
        KnownEvent::Boxed { dish: id } => format!("{}: into the box", dish(id)),
        KnownEvent::Unboxed { dish: id } => format!("{}: out of the box", dish(id)),
        KnownEvent::Sliced { dish: id } => format!("{}: sliced or pulled", dish(id)),
        KnownEvent::TakenOut { dish: id } => format!("{}: out of the fridge", dish(id)),
        KnownEvent::PutBack { dish: id } => format!("{}: back in the fridge", dish(id)),
        KnownEvent::FireOut {
            cooker: id,
            by,
            unseen,
        } => {
            let seen = if *unseen { ", last seen well" } else { "" };
            format!("{}: {}{seen}", cooker(id), heat_loss(*by))
        }
        KnownEvent::FireBack { cooker: id } => format!("{}: heat is back", cooker(id)),
        KnownEvent::Served { dish: id } => format!("{}: at the table", dish(id)),
        KnownEvent::Chilled { dish: id, .. } => format!("{}: put away cold", dish(id)),
        KnownEvent::Reheating { dish: id } => format!("{}: heated up again", dish(id)),
        KnownEvent::Done { step } => {
            let what = verbs::in_full(step.kind, None).to_lowercase();
            match step.of {
                StepOf::Dish(id) => format!("{}: {what}, done", dish(&id)),
                StepOf::Cooker(id) => format!("{}: {what}, done", cooker(&id)),
                StepOf::Table => format!("{what}, done"),
                StepOf::Own(id) => match plan.own_steps.get(&id) {
                    Some(own) => format!("{}, done", own.name),
                    None => "a step of your own, done".to_owned(),
                },
            }
        }
        KnownEvent::Gone {
            dish: id,
            thrown_away,
        } => {
            let how = if *thrown_away {
                "thrown away"
            } else {
                "all gone"
            };
            format!("{}: {how}", dish(id))
        }
        KnownEvent::Note { text } => text.clone(),
        KnownEvent::Struck { .. } => "struck out".to_owned(),
    }
}

/// How a probe went in, after “goes in”.
const fn felt(how: ProbeFeel) -> &'static str {
    match how {
        ProbeFeel::Tight => "tight",
        ProbeFeel::Drags => "but drags",
        ProbeFeel::SoftButter => "like soft butter",
    }
}

/// What an entry says, with its time: `Pork: core 69 °C at 06:05`.
#[must_use]
pub fn entry(entry: &Entry, plan: &Plan, formats: &Formats) -> String {
    let what = match &entry.event {
        Event::Known(known) => event(known, plan, formats),
        Event::Other(_) => "an entry of a newer Longcook".to_owned(),
    };
    format!("{what} at {}", formats.time(entry.at))
}

/// What an entry says in the least room, for the line over the keys.
#[must_use]
pub fn short(entry: &Entry, plan: &Plan, formats: &Formats) -> String {
    let time = formats.time(entry.at);
    match &entry.event {
        Event::Known(KnownEvent::Core { reading, .. }) => {
            format!("core {} at {time}", formats.bare_temperature(*reading))
        }
        Event::Known(KnownEvent::Pit { reading, .. }) => {
            format!("pit {} at {time}", formats.bare_temperature(*reading))
        }
        Event::Known(KnownEvent::Note { .. }) => format!("note at {time}"),
        _ => self::entry(entry, plan, formats),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::screens::run_sheet::sample::{Sample, at, formats};
    use cook_model::handover::ReplicaText;
    use cook_model::handover::identity::ReplicaId;
    use cook_model::units::{Mass, Temperature};

    fn told(event: KnownEvent) -> Entry {
        Entry {
            at: at("2026-09-12T06:05:00"),
            logged: at("2026-09-12T06:05:00"),
            replica: ReplicaText(ReplicaId::new(1)),
            by: None,
            event: Event::Known(event),
        }
    }

    #[test]
    fn entries_are_said_as_a_cook_would() {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        let cooker = sample.cooker("Offset");
        let dish = sample.dish("Pork", Some(cooker), "2026-09-12T00:30:00");
        let say = |event| entry(&told(event), &sample.plan, &formats());
        assert_eq!(say(KnownEvent::Sprayed { dish }), "Pork: sprayed at 06:05");
        let fed = KnownEvent::Fed {
            cooker,
            fuel: Some(Mass::from_grams(500.0)),
            kind: Some(FuelKind::Wood),
        };
        assert_eq!(say(fed), "Offset: fed 500\u{a0}g of wood at 06:05");
        let pit = KnownEvent::Pit {
            cooker,
            reading: Temperature::from_celsius(121.0),
            gauge: Gauge::Lid,
            doubtful: true,
        };
        assert_eq!(
            say(pit.clone()),
            "Offset: pit 121\u{a0}°C, in the lid, doubtful at 06:05"
        );
        assert_eq!(
            short(&told(pit), &sample.plan, &formats()),
            "pit 121 at 06:05"
        );
        let gone = DishId::new(9, 9);
        assert_eq!(say(KnownEvent::Off { dish: gone }), "a dish: off at 06:05");
    }
}
