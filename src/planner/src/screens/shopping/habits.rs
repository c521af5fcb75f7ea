//! How this kitchen uses salt, rub, paper, foil and ice: the habits behind the amounts.

use crate::format::Measure;
use crate::parts::{Asked, CheckField, Choice, NumberField, SelectField, Way};
use crate::store::{Edit, use_store};
use crate::words::habits as words;
use cook_model::provisions::shopping::Supplies;
use cook_model::provisions::{BINDER, RUB, SaltKind};
use cook_model::units::{Length, TimeSpan};
use leptos::prelude::*;

/// The habits, shut until they are wanted.
#[component]
pub fn Habits() -> impl IntoView {
    let store = use_store();
    let habits = Memo::new(move |_| store.plan.with(|plan| Some(plan.as_ref()?.supplies)));
    let edit = move |change: &dyn Fn(&mut Supplies)| {
        store.edit(Edit::Supplies, |plan| change(&mut plan.supplies));
    };
    let read = move |part: fn(&Supplies) -> f64| Signal::derive(move || Some(part(&habits.get()?)));
    let salts = std::iter::once(None)
        .chain(SaltKind::ALL.map(Some))
        .map(|kind| words::salt(kind).to_owned())
        .map(|name| (name.clone(), name))
        .collect();
    let choose_salt = move |chosen: String| {
        let kinds = std::iter::once(None).chain(SaltKind::ALL.map(Some));
        if let Some(kind) = kinds.into_iter().find(|kind| words::salt(*kind) == chosen) {
            edit(&|habits| habits.salt = kind);
        }
    };
    let rub = [0.0, RUB.least, RUB.usual, RUB.most].map(|rate| Way::new(rate, words::rub(rate)));
    let binder = [0.0, BINDER.usual].map(|rate| Way::new(rate, words::binder(rate)));
    view! {
        <details class="group settle no-print">
            <summary class="head">{words::HABITS}</summary>
            <SelectField
                label=Signal::stored(words::SALT.to_owned())
                groups=vec![(words::SALT.to_owned(), salts)]
                value=Signal::derive(move || words::salt(habits.get().and_then(|habits| habits.salt)).to_owned())
                on_change=choose_salt
            />
            <p class="note">{words::SALT_NOTE}</p>
            <Choice
                lay="four"
                label=Signal::stored(words::RUB_COAT.to_owned())
                ways=Signal::stored(rub.to_vec())
                chosen=read(|habits| habits.rub)
                on_choose=move |rate| edit(&|habits| habits.rub = rate)
            />
            <Choice
                lay="two"
                label=Signal::stored(words::BINDER_COAT.to_owned())
                ways=Signal::stored(binder.to_vec())
                chosen=read(|habits| habits.binder)
                on_choose=move |rate| edit(&|habits| habits.binder = rate)
            />
            <div class="fields">
                <NumberField
                    label=Signal::stored(words::SALT_IN_RUB.to_owned())
                    measure=Signal::stored(Measure::Percent)
                    value=read(|habits| habits.salt_in_rub)
                    on_change=move |share: f64| edit(&|habits| habits.salt_in_rub = share)
                />
                <NumberField
                    label=Signal::stored(words::TURNS.to_owned())
                    measure=Signal::stored(Measure::Count)
                    value=read(|habits| habits.turns)
                    on_change=move |turns: f64| edit(&|habits| habits.turns = turns)
                />
                <NumberField
                    label=Signal::stored(words::PAPER_WIDTH.to_owned())
                    measure=Signal::stored(Measure::Thickness)
                    value=read(|habits| habits.paper_width.metres())
                    on_change=move |metres: f64| edit(&|habits| habits.paper_width = Length::from_metres(metres))
                />
                <NumberField
                    label=Signal::stored(words::FOIL_WIDTH.to_owned())
                    measure=Signal::stored(Measure::Thickness)
                    value=read(|habits| habits.foil_width.metres())
                    on_change=move |metres: f64| edit(&|habits| habits.foil_width = Length::from_metres(metres))
                />
                <NumberField
                    label=Signal::stored(words::COLD_TRAVEL.to_owned())
                    measure=Signal::stored(Measure::Hours)
                    value=read(|habits| habits.cold_travel.seconds())
                    on_change=move |seconds: f64| edit(&|habits| habits.cold_travel = TimeSpan::from_seconds(seconds))
                />
            </div>
            <CheckField
                label=Signal::stored(words::PANS.to_owned())
                value=Signal::derive(move || habits.get().is_some_and(|habits| habits.pans))
                on_change=move |pans: bool| edit(&|habits| habits.pans = pans)
            />
            <Asked wrong=store.wrong_at("supplies") />
        </details>
    }
}
