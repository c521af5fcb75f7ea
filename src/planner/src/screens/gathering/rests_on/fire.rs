//! What a cooker burns, and the size of its chamber: the fire is reckoned by both.

use super::read;
use crate::format::Measure;
use crate::parts::{Asked, NumberField, SelectField};
use crate::store::{Edit, use_store};
use crate::words::cookers as words;
use cook_model::handover::identity::CookerId;
use cook_model::plan::Cooker;
use cook_model::provisions::fuel::{Fuel, Shape, Vessel};
use cook_model::units::Length;
use leptos::prelude::*;

/// Fuel and chamber of a cooker; nothing for a kitchen oven.
#[component]
pub fn FireFields(
    /// Which.
    cooker: CookerId,
) -> impl IntoView {
    let store = use_store();
    let id = cooker;
    let cooker = read(move |plan| plan.cookers.get(&id).cloned());
    let cooker = Memo::new(move |_| cooker.get().flatten());
    let edit = move |change: &dyn Fn(&mut Cooker)| {
        store.edit(Edit::Cooker(id), |plan| {
            if let Some(cooker) = plan.cookers.get_mut(&id) {
                change(cooker);
            }
        });
    };
    let usual = Memo::new(move |_| Fuel::usual(cooker.get()?.kind));
    let fuels = words::fuels();
    let names = |names: Vec<&str>| {
        let names = names.into_iter().map(str::to_owned);
        names.map(|name| (name.clone(), name)).collect::<Vec<_>>()
    };
    let fuel_names = names(
        std::iter::once(words::USUAL_FUEL)
            .chain(fuels.iter().map(|fuel| words::fuel(*fuel)))
            .collect(),
    );
    let choose_fuel = move |chosen: String| {
        let fuel = words::fuels()
            .into_iter()
            .find(|fuel| words::fuel(*fuel) == chosen);
        edit(&|cooker| cooker.fuel = fuel);
    };
    let fuel = move || cooker.get()?.fuel;
    let moisture = move || match cooker.get()?.burns()? {
        Fuel::Wood { moisture } => Some(moisture),
        _ => None,
    };
    let set_moisture =
        move |moisture: f64| edit(&|cooker| cooker.fuel = Some(Fuel::Wood { moisture }));
    let shape_names = names(
        std::iter::once(words::NO_SHAPE)
            .chain(words::SHAPES)
            .collect(),
    );
    let choose_shape = move |chosen: String| {
        let Some(now) = cooker.get_untracked() else {
            return;
        };
        let shape = words::SHAPES.into_iter().position(|name| name == chosen);
        let reckoned = Vessel::for_grate(now.kind, now.grate)
            .and_then(|vessel| Some(vessel.bodies.first()?.shape));
        edit(&|cooker| cooker.chamber = shape.map(|shape| like(shape, reckoned)));
    };
    let chamber = Memo::new(move |_| cooker.get()?.chamber);
    let sides = move || {
        let chamber = chamber.get();
        let names = chamber.map_or_else(Vec::new, |shape| words::sides(&shape));
        names.into_iter().enumerate().collect::<Vec<_>>()
    };
    let side =
        move |at: usize| Signal::derive(move || Some(chamber.get()?.sides().get(at)?.metres()));
    let set_side = move |at: usize, metres: f64| {
        edit(&|cooker| {
            if let Some(shape) = &mut cooker.chamber {
                *shape = with_side(*shape, at, Length::from_metres(metres));
            }
        });
    };
    view! {
        <Show when=move || usual.with(Option::is_some)>
            <div class="fields">
                <SelectField
                    label=Signal::stored(words::FUEL.to_owned())
                    groups=vec![(words::FUEL.to_owned(), fuel_names.clone())]
                    value=Signal::derive(move || fuel().map_or(words::USUAL_FUEL, words::fuel).to_owned())
                    on_change=choose_fuel
                    problem=store.wrong_at(format!("cookers/{id}/fuel"))
                />
                <Show when=move || moisture().is_some()>
                    <NumberField
                        label=Signal::stored(words::MOISTURE.to_owned())
                        measure=Signal::stored(Measure::Percent)
                        value=Signal::derive(moisture)
                        on_change=set_moisture
                    />
                </Show>
                <SelectField
                    label=Signal::stored(words::CHAMBER.to_owned())
                    groups=vec![(words::CHAMBER.to_owned(), shape_names.clone())]
                    value=Signal::derive(move || chamber.get().map_or(words::NO_SHAPE, |shape| words::shape(&shape)).to_owned())
                    on_change=choose_shape
                />
                <For each=sides key=|(at, name)| (*at, *name) let:((at, name))>
                    <NumberField
                        label=Signal::stored(name.to_owned())
                        measure=Signal::stored(Measure::Thickness)
                        value=side(at)
                        on_change=move |metres: f64| set_side(at, metres)
                    />
                </For>
            </div>
            <Asked wrong=store.wrong_at(format!("cookers/{id}/chamber")) />
            <p class="note">{words::CHAMBER_NOTE}</p>
        </Show>
    }
}

/// A shape of this number among [`words::SHAPES`], with the dimensions of what was reckoned so far.
fn like(shape: usize, reckoned: Option<Shape>) -> Shape {
    let sides = reckoned.map_or_else(Vec::new, |shape| shape.sides());
    let side = |at: usize| {
        let side = sides.get(at).or(sides.first()).copied();
        // Half a metre: something to begin with.
        let side = side.unwrap_or(Length::from_metres(0.5));
        Length::from_metres((side.metres() * 100.0).round() / 100.0)
    };
    match shape {
        0 => Shape::LyingBarrel {
            diameter: side(0),
            length: side(1),
        },
        1 => Shape::StandingBarrel {
            diameter: side(0),
            height: side(1),
        },
        2 => Shape::Ball { diameter: side(0) },
        _ => Shape::Cabinet {
            width: side(0),
            depth: side(1),
            height: side(2),
        },
    }
}

/// The shape with one of its sides changed; sides count in the order in which they are asked for.
fn with_side(mut shape: Shape, at: usize, to: Length) -> Shape {
    match &mut shape {
        Shape::LyingBarrel { diameter, length } => *[diameter, length][at.min(1)] = to,
        Shape::StandingBarrel { diameter, height } => *[diameter, height][at.min(1)] = to,
        Shape::Ball { diameter } => *diameter = to,
        Shape::Cabinet {
            width,
            depth,
            height,
        } => *[width, depth, height][at.min(2)] = to,
    }
    shape
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_side_is_changed_by_itself() {
        for number in 0..words::SHAPES.len() {
            let shape = like(number, None);
            for at in 0..shape.sides().len() {
                let to = Length::from_metres(0.77);
                let changed = with_side(shape, at, to).sides();
                for (place, side) in changed.iter().enumerate() {
                    assert_eq!(*side == to, place == at, "{shape:?}");
                }
            }
        }
    }
}
