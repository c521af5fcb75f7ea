//! A line of the list: a tick that stays, and what is behind it at one tap.

use super::Listed;
use super::keep::{self, Keep};
use super::packs::Packs;
use super::swap::LookingFor;
use crate::device::money;
use crate::format::{Formats, MassUnit, Measure};
use crate::parts::{CheckField, NumberField, SelectField};
use crate::store::{Edit, Store, use_store};
use crate::words::{keeping as keep_words, shopping as words, swap};
use cook_model::provisions::Quantity;
use cook_model::provisions::shopping::{Item, Line, Money, Price, PricedBy, Purchase};
use leptos::prelude::*;

/// A line.
#[component]
pub fn OneLine(
    /// What it is.
    item: Item,
) -> impl IntoView {
    let store = use_store();
    let Listed {
        lines, currency, ..
    } = expect_context();
    let line = Memo::new(move |_| {
        lines.with(|lines| lines.iter().find(|line| line.item == item).cloned())
    });
    let name = move || {
        store.plan.with(|plan| {
            let plan = plan.as_ref();
            plan.map_or_else(String::new, |plan| words::item(item, plan))
        })
    };
    let say = move |part: fn(&Line, &Formats) -> String| {
        move || {
            let formats = store.formats.get();
            line.with(|line| {
                let line = line.as_ref();
                line.map_or_else(String::new, |line| part(line, &formats))
            })
        }
    };
    let is = move |part: fn(&Line) -> bool| {
        Memo::new(move |_| line.with(|line| line.as_ref().is_some_and(part)))
    };
    let ticked = is(|line| line.ticked);
    let left_out = is(|line| line.left_out);
    let tick = move |_| {
        let now = !ticked.get_untracked();
        edit(store, item, move |purchase| purchase.ticked = now);
    };
    let LookingFor(looking) = expect_context();
    let swappable = matches!(item, Item::Meat(_));
    let look = move |_| {
        if let Item::Meat(dish) = item {
            looking.set(Some(dish));
        }
    };
    let cost = move || {
        let cost = line.with(|line| line.as_ref()?.cost)?;
        Some(money::say(cost, currency.get()))
    };
    let dish = match item {
        Item::Meat(dish) => Some(dish),
        _ => None,
    };
    let keeping = dish.map(keep::of_dish);
    let buy_by = move || {
        let formats = store.formats.get();
        keeping?.with(|keeping| Some(keep_words::buy_by(keeping.as_ref()?, &formats)))
    };
    let kept = dish
        .zip(keeping)
        .map(|(dish, keeping)| view! { <Keep dish keeping /> });
    let working = move || {
        let (plan, formats) = (store.plan.get()?, store.formats.get());
        let said = line.with(|line| Some(words::working(line.as_ref()?, &plan, &formats)))?;
        let said = said
            .into_iter()
            .map(|said| view! { <p class="note">{said}</p> });
        Some(said.collect_view())
    };
    view! {
        <li class="buy" class:done=move || ticked.get() class:out=move || left_out.get()>
            <button
                type="button"
                class="tick"
                class:on=move || ticked.get()
                role="checkbox"
                aria-checked=move || ticked.get().to_string()
                aria-label=name
                on:click=tick
            ></button>
            <details>
                <summary>
                    <span>
                        <span class="name">{name}</span>
                        <span class="note">{say(words::note)}</span>
                        <span class="note">{buy_by}</span>
                    </span>
                    <span class="num amt">
                        {say(words::amount)}
                        <span class="price">{cost}</span>
                    </span>
                </summary>
                <div class="edit">{kept} {working} <Changes item line /></div>
            </details>
            <Show when=move || swappable && !ticked.get() && !left_out.get()>
                <button type="button" class="btn bare swap-key no-print" on:click=look>{swap::ANOTHER_PIECE}</button>
            </Show>
        </li>
    }
}

/// Changes what the person says about a line.
pub(super) fn edit(store: Store, item: Item, change: impl Fn(&mut Purchase)) {
    match item {
        Item::Extra(id) => store.edit(Edit::Extra(id), |plan| {
            if let Some(extra) = plan.extras.get_mut(&id) {
                let mut purchase = Purchase {
                    ticked: extra.ticked,
                    price: extra.price,
                    amount: extra.amount,
                    ..Purchase::default()
                };
                change(&mut purchase);
                extra.ticked = purchase.ticked;
                extra.price = purchase.price;
                extra.amount = purchase.amount;
            }
        }),
        _ => store.edit(Edit::Line(item), |plan| {
            change(plan.purchases.entry(item).or_default());
        }),
    }
}

/// What can be changed.
#[component]
fn Changes(
    /// What it is.
    item: Item,
    /// The line.
    line: Memo<Option<Line>>,
) -> impl IntoView {
    let store = use_store();
    let Listed { currency, .. } = expect_context();
    let own = matches!(item, Item::Extra(_));
    // The plan counts coins, which nobody reads.
    let wrong_price = move |wrong: Signal<Option<String>>| {
        Signal::derive(move || {
            wrong
                .with(|wrong| wrong.is_some())
                .then(|| words::NOT_A_PRICE.to_owned())
        })
    };
    let wrong = move |field: &str| match item {
        Item::Extra(id) => store.wrong_at(format!("extras/{id}/{field}")),
        _ => store.wrong_at(format!("purchases/{item}/{field}")),
    };
    let amount = Memo::new(move |_| line.with(|line| line.as_ref()?.wanted));
    let kind = move || amount.get_untracked().unwrap_or(Quantity::Count(0));
    let measure = Signal::derive(move || {
        let amount = amount.get().unwrap_or(Quantity::Count(0));
        Measure::of(amount, store.formats.get().units)
    });
    let of = move |part: fn(&Line) -> Option<Quantity>| {
        Signal::derive(move || line.with(|line| Some(part(line.as_ref()?)?.number())))
    };
    let price = Memo::new(move |_| line.with(|line| line.as_ref()?.price));
    let ways = move || {
        let pounds = store.formats.get_untracked().units.mass == MassUnit::Pounds;
        words::ways_to_price(amount.get_untracked(), pounds)
    };
    let first = ways().first().copied().unwrap_or(PricedBy::All);
    let by = RwSignal::new(price.get_untracked().map_or(first, |price| price.by));
    let set_price = move |coins: f64| {
        #[expect(clippy::cast_possible_truncation, reason = "a saturating cast")]
        let money = Money(coins.round() as i64);
        let by = by.get_untracked();
        // The first price settles the currency of the plan.
        let unsaid = store
            .plan
            .with_untracked(|plan| plan.as_ref().is_some_and(|plan| plan.currency.is_none()));
        if unsaid {
            let code = currency.get_untracked();
            store.edit(Edit::Currency, |plan| plan.currency = Some(code));
        }
        edit(store, item, move |purchase| {
            purchase.price = Some(Price { money, by });
        });
    };
    let choose_by = move |chosen: String| {
        let found = ways()
            .into_iter()
            .find(|by| words::priced_by(*by) == chosen);
        if let Some(found) = found {
            by.set(found);
            edit(store, item, move |purchase| {
                if let Some(price) = &mut purchase.price {
                    price.by = found;
                }
            });
        }
    };
    let names = ways().into_iter().map(words::priced_by);
    let groups = names
        .map(|name| (name.to_owned(), name.to_owned()))
        .collect();
    let remove = move |_| {
        if let Item::Extra(id) = item {
            let name = line.with_untracked(|line| line.as_ref().map(|line| line.name.clone()));
            store.edit(Edit::ExtraTakenOff(name.unwrap_or_default()), |plan| {
                plan.extras.remove(&id);
            });
        }
    };
    let wanted = Signal::derive(move || {
        line.with(|line| {
            let line = line.as_ref()?;
            let said = line.wanted.filter(|_| own || line.overridden);
            Some(said?.number())
        })
    });
    let coins = Signal::derive(move || {
        #[expect(
            clippy::cast_precision_loss,
            reason = "prices are far below 2^53 coins"
        )]
        let coins = price.get()?.money.0 as f64;
        Some(coins)
    });
    let left_out =
        Signal::derive(move || line.with(|line| line.as_ref().is_some_and(|line| line.left_out)));
    view! {
        <div class="fields">
            <NumberField
                label=Signal::stored(words::WANTED.to_owned())
                measure
                value=wanted
                assumed=of(|line| line.worked_out)
                on_change=move |number: f64| {
                    let amount = kind().with_number(number);
                    edit(store, item, move |purchase| purchase.amount = Some(amount));
                }
                on_clear=move |()| edit(store, item, |purchase| purchase.amount = None)
                problem=wrong("amount")
            />
            {(!own).then(|| view! {
                <NumberField
                    label=Signal::stored(words::ALREADY.to_owned())
                    measure
                    value=of(|line| line.already)
                    on_change=move |number: f64| {
                        let amount = kind().with_number(number);
                        edit(store, item, move |purchase| purchase.already = Some(amount));
                    }
                    on_clear=move |()| edit(store, item, |purchase| purchase.already = None)
                    problem=wrong("already")
                />
            })}
            <NumberField
                label=Signal::derive(move || format!("{}, {}", words::PRICE, currency.get()))
                measure=Signal::derive(move || Measure::Money(money::digits(currency.get())))
                value=coins
                on_change=set_price
                on_clear=move |()| edit(store, item, |purchase| purchase.price = None)
                problem=wrong_price(wrong("price"))
            />
            <SelectField
                label=Signal::stored(words::PRICE_FOR.to_owned())
                groups=vec![(words::PRICE_FOR.to_owned(), groups)]
                value=Signal::derive(move || words::priced_by(by.get()).to_owned())
                on_change=choose_by
            />
            {(!own).then(|| view! { <Packs item line /> })}
        </div>
        {(!own).then(|| view! {
            <CheckField
                label=Signal::stored(words::LEFT_OUT.to_owned())
                value=left_out
                on_change=move |out: bool| edit(store, item, move |purchase| purchase.left_out = out)
            />
        })}
        {own.then(|| view! {
            <button type="button" class="btn" on:click=remove>{words::OWN_OFF}</button>
        })}
    }
}
