//! How the shop sells a thing: loose, or in packs of a size.

use super::line::edit;
use crate::format::Measure;
use crate::parts::{NumberField, SelectField};
use crate::store::use_store;
use crate::words::habits as words;
use cook_model::provisions::Quantity;
use cook_model::provisions::shopping::{Item, Line, Pack, PackKind, SoldBy};
use leptos::prelude::*;

/// The two fields; nothing while there is no amount, and for current.
#[component]
pub fn Packs(
    /// What it is.
    item: Item,
    /// The line.
    line: Memo<Option<Line>>,
) -> impl IntoView {
    let store = use_store();
    let wanted = Memo::new(move |_| line.with(|line| line.as_ref()?.wanted));
    let pack = Memo::new(move |_| line.with(|line| Some(line.as_ref()?.to_buy.as_ref()?.packs?.1)));
    let shown =
        move || matches!(wanted.get(), Some(amount) if !matches!(amount, Quantity::Energy(_)));
    let set = move |sold: SoldBy| {
        edit(store, item, move |purchase| purchase.sold_by = Some(sold));
    };
    let choose = move |chosen: String| {
        let kinds = words::PACKS.into_iter().map(Some);
        let kind: Option<Option<PackKind>> = std::iter::once(None)
            .chain(kinds)
            .find(|kind| words::sold(*kind) == chosen);
        match (kind, wanted.get_untracked()) {
            (Some(None), _) => set(SoldBy::Loose),
            // What one holds is not known yet: all of it, until it is said.
            (Some(Some(kind)), Some(wanted)) => {
                let holds = pack.get_untracked().map_or(wanted, |pack: Pack| pack.holds);
                set(SoldBy::packs(kind, holds));
            }
            _ => {}
        }
    };
    let names = std::iter::once(None)
        .chain(words::PACKS.map(Some))
        .map(|kind| words::sold(kind).to_owned())
        .map(|name| (name.clone(), name))
        .collect::<Vec<_>>();
    let measure = Signal::derive(move || {
        let amount = pack.get().map(|pack| pack.holds).or(wanted.get());
        Measure::of(
            amount.unwrap_or(Quantity::Count(0)),
            store.formats.get().units,
        )
    });
    let holds = move |number: f64| {
        if let Some(pack) = pack.get_untracked() {
            set(SoldBy::packs(pack.kind, pack.holds.with_number(number)));
        }
    };
    view! {
        <Show when=shown>
            <SelectField
                label=Signal::stored(words::SOLD.to_owned())
                groups=vec![(words::SOLD.to_owned(), names.clone())]
                value=Signal::derive(move || words::sold(pack.get().map(|pack| pack.kind)).to_owned())
                on_change=choose
            />
            <Show when=move || pack.with(Option::is_some)>
                <NumberField
                    label=Signal::stored(words::HOLDS.to_owned())
                    measure
                    value=Signal::derive(move || Some(pack.get()?.holds.number()))
                    on_change=holds
                    problem=store.wrong_at(format!("purchases/{item}/sold_by"))
                />
            </Show>
        </Show>
    }
}
