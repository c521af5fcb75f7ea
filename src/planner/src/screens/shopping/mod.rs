//! Shopping: what it costs, the list by aisle, and things of one's own.

pub mod habits;
pub mod keep;
pub mod line;
pub mod own;
pub mod packs;
pub mod send;
pub mod swap;

use crate::device::money;
use crate::parts::{LastLine, SafeLine, SelectField};
use crate::store::{Edit, use_store};
use crate::words::shopping as words;
use cook_model::handover::identity::CookerId;
use cook_model::plan::Currency;
use cook_model::provisions::fuel::LearnedFactor;
use cook_model::provisions::portions;
use cook_model::provisions::shopping::{Aisle, Item, Line, ShoppingList, bill, shopping_list};
use habits::Habits;
use leptos::prelude::*;
use line::OneLine;
use own::OwnThing;
use send::SendList;
use std::collections::BTreeMap;
use swap::{LookingFor, SwapSlip};

/// The list as it stands, and the currency of its prices.
#[derive(Clone, Copy)]
pub(crate) struct Listed {
    pub(crate) lines: Memo<Vec<Line>>,
    pub(crate) currency: Memo<Currency>,
    pub(crate) learned: Memo<BTreeMap<CookerId, LearnedFactor>>,
}

/// The screen.
#[component]
pub fn Shopping() -> impl IntoView {
    let store = use_store();
    let learned = store.learned();
    let lines = Memo::new(move |_| {
        let Some(plan) = store.plan.get() else {
            return Vec::new();
        };
        let forecast = store.forecast().get();
        let outlook = forecast
            .outlook
            .filter(|_| forecast.of == store.open_id.get());
        shopping_list(&plan, outlook.as_deref(), &learned.get()).lines
    });
    let currency = Memo::new(move |_| {
        let said = store.plan.with(|plan| plan.as_ref()?.currency);
        said.unwrap_or_else(money::usual)
    });
    provide_context(Listed {
        lines,
        currency,
        learned,
    });
    let looking = RwSignal::new(None);
    provide_context(LookingFor(looking));
    let slip = move || looking.get().map(|dish| view! { <SwapSlip dish /> });
    let some = Memo::new(move |_| lines.with(|lines| !lines.is_empty()));
    view! {
        <main class="shopping">
            <SafeLine quiet=true />
            <CostPlate />
            <Show when=move || some.get() fallback=|| view! { <p class="note settle">{words::EMPTY}</p> }>
                <div class="aisles">{Aisle::ALL.map(|aisle| view! { <OneAisle aisle /> }).into_iter().collect_view()}</div>
            </Show>
            <OwnThing />
            <SendList />
            <Habits />
            <CurrencyField />
        </main>
        {slip}
        <LastLine />
    }
}

/// The plate.
#[component]
fn CostPlate() -> impl IntoView {
    let store = use_store();
    let Listed {
        lines, currency, ..
    } = expect_context();
    let sums = Memo::new(move |_| {
        let plan = store.plan.get()?;
        let list = ShoppingList { lines: lines.get() };
        Some((
            bill(&list, plan.guests),
            plan.guests.count(),
            portions(&plan),
        ))
    });
    let big = move || {
        let (bill, ..) = sums.get()?;
        let plate = bill.per_plate.filter(|_| bill.total.0 > 0)?;
        Some(money::say(plate, currency.get()))
    };
    let beside = move || {
        let (bill, plates, _) = sums.get()?;
        if bill.total.0 == 0 {
            return Some(words::NO_PRICES.to_owned());
        }
        let say = |sum| money::say(sum, currency.get());
        Some(words::sums(
            &bill,
            plates,
            &say(bill.total),
            &say(bill.to_pay),
        ))
    };
    let enough = move || {
        let (_, _, portions) = sums.get()?;
        let formats = store.formats.get();
        Some(words::enough(
            &formats.mass(portions.planned),
            &formats.mass(portions.wanted),
        ))
    };
    view! {
        <section class="plate" aria-labelledby="cost">
            <h2 class="head" id="cost">{words::COST}</h2>
            <div class="cost">
                <p class="num big">{big}</p>
                <p class="note ink">{beside}</p>
            </div>
            <p class="note">{enough}</p>
        </section>
    }
}

/// The lines of an aisle; nothing where it is empty.
#[component]
fn OneAisle(
    /// Which.
    aisle: Aisle,
) -> impl IntoView {
    let Listed { lines, .. } = expect_context();
    let items = Memo::new(move |_| {
        lines.with(|lines| {
            let here = lines.iter().filter(|line| line.aisle == aisle);
            here.map(|line| line.item).collect::<Vec<Item>>()
        })
    });
    let done = move || {
        lines.with(|lines| {
            let here = lines
                .iter()
                .filter(|line| line.aisle == aisle && !line.left_out);
            let (mut done, mut all) = (0, 0);
            for line in here {
                all += 1;
                done += u32::from(line.ticked);
            }
            words::ticked(done, all)
        })
    };
    view! {
        <Show when=move || items.with(|items| !items.is_empty())>
            <section class="band">
                <h2 class="head">
                    <span>{words::aisle(aisle)}</span>
                    <span class="note">{done}</span>
                </h2>
                <ul>
                    <For each=move || items.get() key=|item| item.to_string() let:item>
                        <OneLine item />
                    </For>
                </ul>
            </section>
        </Show>
    }
}

/// The currency of all prices.
#[component]
fn CurrencyField() -> impl IntoView {
    let store = use_store();
    let Listed { currency, .. } = expect_context();
    let codes = money::all()
        .into_iter()
        .map(|code| (code.to_string(), code.to_string()))
        .collect();
    let choose = move |code: String| {
        if let Ok(code) = code.parse::<Currency>() {
            let from = money::digits(currency.get_untracked());
            let to = money::digits(code);
            let factor = 10_f64.powi(i32::from(to) - i32::from(from));
            store.edit(Edit::Currency, |plan| {
                plan.currency = Some(code);
                let bought = plan.purchases.values_mut().map(|one| &mut one.price);
                let own = plan.extras.values_mut().map(|one| &mut one.price);
                for price in bought.chain(own).flatten() {
                    price.money = price.money.times(factor);
                }
            });
        }
    };
    view! {
        <section class="settle no-print">
            <SelectField
                label=Signal::stored(words::CURRENCY.to_owned())
                groups=vec![(words::CURRENCY.to_owned(), codes)]
                value=Signal::derive(move || currency.get().to_string())
                on_change=choose
            />
            <p class="note">{words::CURRENCY_NOTE}</p>
        </section>
    }
}
