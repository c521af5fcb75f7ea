//! The pieces of a dish: weight, how many, thickness, intact or not, frozen or not.

use super::DishHandle;
use super::method_parts::cut_of;
use crate::device::ids::Ids;
use crate::format::Measure;
use crate::parts::{Asked, CheckField, Choice, NumberField};
use crate::store::new_things;
use crate::words::dish_form as words;
use cook_model::handover::identity::PieceId;
use cook_model::plan::{Intact, Order, Piece, in_order};
use cook_model::provisions::{Size, Weights};
use cook_model::units::{Length, Mass};
use leptos::prelude::*;

/// All pieces.
#[component]
pub fn Pieces() -> impl IntoView {
    let handle = expect_context::<DishHandle>();
    let ids = handle.read(|dish| {
        let ids = in_order(&dish.pieces, |piece| &piece.order).into_iter();
        ids.map(|(id, _)| id).collect::<Vec<_>>()
    });
    let numbered = move || {
        ids.get()
            .unwrap_or_default()
            .into_iter()
            .enumerate()
            .collect::<Vec<_>>()
    };
    let number = move || ids.with(|ids| ids.as_ref().map_or(0, Vec::len));
    let units = move || handle.store.formats.with_untracked(|formats| formats.units);
    let add = move |_| {
        let units = units();
        handle.edit(|dish| {
            let Some(cut) = cut_of(dish) else { return };
            let last = in_order(&dish.pieces, |piece| &piece.order).pop();
            let order = Order::between(last.map(|(_, piece)| &piece.order), None);
            let intact = last.map_or(Intact::Unknown, |(_, piece)| piece.intact);
            dish.pieces
                .insert(Ids.piece(), new_things::piece(cut, order, intact, units));
        });
    };
    view! {
        <fieldset class="group">
            <legend class="head">{words::PIECES}</legend>
            <For each=numbered key=|(at, id)| (*at, *id) let:((at, id))>
                <OnePiece id at alone=Signal::derive(move || number() == 1) />
            </For>
            <Asked wrong=handle.wrong_at("pieces") />
            <button type="button" class="btn" on:click=add>{words::ADD_PIECE}</button>
        </fieldset>
    }
}

/// One piece of the dish: read as a signal, changed through the dish.
#[derive(Clone, Copy)]
struct PieceHandle {
    dish: DishHandle,
    id: PieceId,
}

impl PieceHandle {
    fn read<T>(self, part: impl Fn(&Piece) -> T + Send + Sync + 'static) -> Memo<Option<T>>
    where
        T: Clone + PartialEq + Send + Sync + 'static,
    {
        let id = self.id;
        let read = self.dish.read(move |dish| dish.pieces.get(&id).map(&part));
        Memo::new(move |_| read.get().flatten())
    }

    fn edit(self, change: impl FnOnce(&mut Piece)) {
        self.dish.edit(|dish| {
            if let Some(piece) = dish.pieces.get_mut(&self.id) {
                change(piece);
            }
        });
    }

    fn wrong_at(self, field: &str) -> Signal<Option<String>> {
        self.dish.wrong_at(&format!("pieces/{}/{field}", self.id))
    }
}

/// One piece, or several alike.
#[component]
fn OnePiece(
    /// Which.
    id: PieceId,
    /// Its place, from 0.
    at: usize,
    /// Whether it is the only one.
    alone: Signal<bool>,
) -> impl IntoView {
    let dish = expect_context::<DishHandle>();
    let handle = PieceHandle { dish, id };
    let cut = dish.read(cut_of);
    let cut = move || cut.get().flatten();
    let mass = handle.read(|piece| piece.mass);
    let small = Memo::new(move |_| cut().is_some_and(|cut| cut.cut().shape.mass.kilograms() < 0.7));
    let measure = Signal::derive(move || {
        if small.get() {
            Measure::SmallMass
        } else {
            Measure::Mass
        }
    });
    let thickness = handle.read(|piece| piece.thickness.map(Length::metres));
    let piece = handle.read(Clone::clone);
    let guessed = Signal::derive(move || {
        let (cut, piece) = (cut()?, piece.get()?);
        if piece.mass <= Mass::ZERO {
            return None;
        }
        let size = Size::of(cut, Weights::of_one(cut, &piece).trimmed, None);
        Some((size.thickness + size.bone).metres())
    });
    let count = handle.read(|piece| f64::from(piece.count));
    let weighed = handle.read(|piece| piece.weighed);
    let intact = handle.read(|piece| piece.intact);
    let frozen = handle.read(|piece| piece.frozen);
    let asks_intact = Memo::new(move |_| cut().is_some_and(words::is_red_muscle));
    let take_out = move |_| {
        dish.edit(|dish| {
            dish.pieces.remove(&id);
        });
    };
    view! {
        <div class="piece">
            <h3 class="name" hidden=move || alone.get()>{words::piece(at + 1)}</h3>
            <div class="fields">
                <NumberField
                    label=Signal::stored(words::WEIGHT.to_owned())
                    measure
                    value=Signal::derive(move || Some(mass.get()?.kilograms()))
                    on_change=move |kilograms: f64| handle.edit(|piece| piece.mass = Mass::from_kilograms(kilograms))
                    problem=handle.wrong_at("mass")
                />
                <NumberField
                    label=Signal::stored(words::THICKNESS.to_owned())
                    measure=Signal::stored(Measure::Thickness)
                    value=Signal::derive(move || thickness.get().flatten())
                    assumed=guessed
                    on_change=move |metres: f64| handle.edit(|piece| piece.thickness = Some(Length::from_metres(metres)))
                    on_clear=move |()| handle.edit(|piece| piece.thickness = None)
                    problem=handle.wrong_at("thickness")
                />
            </div>
            <OddWeight handle mass />
            <p class="note">{words::THICKNESS_NOTE}</p>
            <div class="fields">
                <NumberField
                    label=Signal::stored(words::ALIKE.to_owned())
                    measure=Signal::stored(Measure::Count)
                    value=count
                    on_change=move |count: f64| handle.edit(|piece| piece.count = whole(count))
                    problem=handle.wrong_at("count")
                />
                <Choice
                    lay="two"
                    label=Signal::stored(words::WEIGHED.to_owned())
                    ways=Signal::stored(words::weighed_ways())
                    chosen=weighed
                    on_choose=move |weighed| handle.edit(|piece| piece.weighed = weighed)
                />
            </div>
            <CheckField
                label=Signal::stored(words::FROZEN.to_owned())
                value=Signal::derive(move || frozen.get() == Some(true))
                on_change=move |frozen| handle.edit(|piece| piece.frozen = frozen)
            />
            <Show when=move || asks_intact.get()>
                <Choice
                    lay="column"
                    label=Signal::stored(words::IS_IT_INTACT.to_owned())
                    ways=Signal::stored(words::intact_ways())
                    chosen=intact
                    on_choose=move |intact| handle.edit(|piece| piece.intact = intact)
                />
            </Show>
            <button type="button" class="btn" hidden=move || alone.get() on:click=take_out>
                {words::TAKE_PIECE_OUT}
            </button>
        </div>
    }
}

/// A weight that was perhaps a slip of the point: asked about, never changed unasked.
#[component]
fn OddWeight(
    /// The piece.
    handle: PieceHandle,
    /// Its weight.
    mass: Memo<Option<Mass>>,
) -> impl IntoView {
    let cut = handle.dish.read(cut_of);
    let formats = handle.dish.store.formats;
    let wrong = handle.wrong_at("mass");
    let odd = Memo::new(move |_| {
        let (told, meant) = words::odd_weight(cut.get()??, mass.get()?, &formats.get())?;
        // Where it is asked about already, only a better guess is worth adding.
        (meant.is_some() || wrong.get().is_none()).then_some((told, meant))
    });
    move || {
        odd.get().map(|(told, meant)| {
            view! {
                <div class="heed" role="status">
                    <p class="note ink">{told}</p>
                    {meant.map(|meant| view! {
                        <button
                            type="button"
                            class="btn"
                            on:click=move |_| handle.edit(|piece| piece.mass = meant)
                        >
                            {words::use_weight(&formats.get_untracked().mass(meant))}
                        </button>
                    })}
                </div>
            }
        })
    }
}

/// A typed number of things. What is not a whole number, or below zero, is taken to the nearest that is.
fn whole(count: f64) -> u32 {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a saturating cast after rounding"
    )]
    let whole = count.round() as u32;
    whole
}
