//! How a cut is cooked: target, wrap, salt, spray, rest, hold. What is not told follows the cut.

use super::DishHandle;
use super::method_parts::{
    cut_of, hold_kind, salt_kind, when_by, with_hold, with_kind, with_salt, with_spray, with_when,
    wrap_kind, wrap_when,
};
use crate::format::Measure;
use crate::parts::{Asked, CheckField, Choice, NumberField, Way};
use crate::words::dish_form::{self as words, HoldKind, SaltKind};
use cook_model::plan::{Dish, HoldPlace, WrapWhen};
use cook_model::units::{Temperature, TimeSpan};
use leptos::prelude::*;

/// The method, folded until it is wanted.
#[component]
pub fn Method() -> impl IntoView {
    let handle = expect_context::<DishHandle>();
    let first_time = handle.read(|dish| dish.first_time);
    let usual = handle.read(cut_of);
    let usual_target = Signal::derive(move || Some(usual.get()??.cut().default_target().celsius()));
    let usual_rest = Signal::derive(move || Some(usual.get()??.cut().rest.least.seconds()));
    let cooker = handle.read(|dish| dish.cooker);
    let cookers_pit = Signal::derive(move || {
        let cooker = cooker.get()??;
        handle.store.plan.with(|plan| {
            let step = plan.as_ref()?.cookers.get(&cooker)?.programme.first()?;
            Some(step.set.celsius())
        })
    });
    view! {
        <details class="group">
            <summary class="head">{words::METHOD}</summary>
            <p class="note">{words::METHOD_NOTE}</p>
            <div class="fields">
                {optional(
                    handle, words::TARGET, Measure::Core, "target", usual_target,
                    |dish| dish.target.map(Temperature::celsius),
                    |dish, celsius| dish.target = celsius.map(Temperature::from_celsius),
                )}
                {optional(
                    handle, words::REST, Measure::Minutes, "rest", usual_rest,
                    |dish| dish.rest.map(TimeSpan::seconds),
                    |dish, seconds| dish.rest = seconds.map(TimeSpan::from_seconds),
                )}
            </div>
            {optional(
                handle,
                words::OWN_PIT,
                Measure::Pit,
                "pit",
                cookers_pit,
                |dish| dish.pit.map(Temperature::celsius),
                |dish, celsius| dish.pit = celsius.map(Temperature::from_celsius),
            )}
            <WrapChoice />
            <SaltChoice />
            <SprayChoice />
            <HoldChoice />
            {optional(
                handle, words::SLICING, Measure::Minutes, "slicing", Signal::stored(None),
                |dish| dish.slicing.map(TimeSpan::seconds),
                |dish, seconds| dish.slicing = seconds.map(TimeSpan::from_seconds),
            )}
            <CheckField
                label=Signal::stored(words::FIRST_TIME.to_owned())
                note=words::FIRST_TIME_NOTE
                value=Signal::derive(move || first_time.get() == Some(true))
                on_change=move |first_time| handle.edit(|dish| dish.first_time = first_time)
            />
        </details>
    }
}

/// A figure that may be left to the cut.
fn optional(
    handle: DishHandle,
    label: &str,
    measure: Measure,
    field: &str,
    usual: Signal<Option<f64>>,
    get: fn(&Dish) -> Option<f64>,
    set: fn(&mut Dish, Option<f64>),
) -> impl IntoView + use<> {
    let value = handle.read(get);
    view! {
        <NumberField
            label=Signal::stored(label.to_owned())
            measure=Signal::stored(measure)
            value=Signal::derive(move || value.get().flatten())
            assumed=usual
            on_change=move |value: f64| handle.edit(|dish| set(dish, Some(value)))
            on_clear=move |()| handle.edit(|dish| set(dish, None))
            problem=handle.wrong_at(field)
        />
    }
}

/// A figure that is always there while its field is shown.
fn required(
    handle: DishHandle,
    label: &str,
    measure: Measure,
    get: fn(&Dish) -> Option<f64>,
    set: fn(&mut Dish, f64),
) -> impl IntoView + use<> {
    let value = handle.read(get);
    view! {
        <NumberField
            label=Signal::stored(label.to_owned())
            measure=Signal::stored(measure)
            value=Signal::derive(move || value.get().flatten())
            on_change=move |value: f64| handle.edit(|dish| set(dish, value))
        />
    }
}

#[component]
fn WrapChoice() -> impl IntoView {
    let handle = expect_context::<DishHandle>();
    let kind = handle.read(|dish| wrap_kind(dish.wrap));
    let by_core =
        handle.read(|dish| wrap_when(dish.wrap).map(|when| matches!(when, WrapWhen::Core { .. })));
    let by = move || by_core.get().flatten();
    view! {
        <Choice
            lay="four"
            label=Signal::stored(words::WRAP.to_owned())
            ways=Signal::stored(words::wrap_ways())
            chosen=kind
            on_choose=move |kind| handle.edit(|dish| dish.wrap = with_kind(dish.wrap, kind))
        />
        <Show when=move || by().is_some()>
            <Choice
                lay="two"
                label=Signal::stored(words::WRAP_WHEN.to_owned())
                ways=Signal::stored(vec![Way::new(true, words::BY_CORE), Way::new(false, words::BY_TIME)])
                chosen=Signal::derive(by)
                on_choose=move |core| handle.edit(|dish| dish.wrap = with_when(dish.wrap, when_by(core)))
            />
        </Show>
        <Show when=move || by() == Some(true)>
            {required(
                handle, words::WRAP_CORE, Measure::Core,
                |dish| match wrap_when(dish.wrap) {
                    Some(WrapWhen::Core { core }) => Some(core.celsius()),
                    _ => None,
                },
                |dish, celsius| {
                    let core = Temperature::from_celsius(celsius);
                    dish.wrap = with_when(dish.wrap, WrapWhen::Core { core });
                },
            )}
        </Show>
        <Show when=move || by() == Some(false)>
            {required(
                handle, words::WRAP_AFTER, Measure::Hours,
                |dish| match wrap_when(dish.wrap) {
                    Some(WrapWhen::AfterOn { span }) => Some(span.seconds()),
                    _ => None,
                },
                |dish, seconds| {
                    let span = TimeSpan::from_seconds(seconds);
                    dish.wrap = with_when(dish.wrap, WrapWhen::AfterOn { span });
                },
            )}
        </Show>
        <Asked wrong=handle.wrong_at("wrap") />
    }
}

#[component]
fn SaltChoice() -> impl IntoView {
    let handle = expect_context::<DishHandle>();
    let kind = handle.read(|dish| salt_kind(dish.salt));
    view! {
        <Choice
            label=Signal::stored(words::SALT.to_owned())
            ways=Signal::stored(words::salt_ways())
            chosen=kind
            on_choose=move |kind| handle.edit(|dish| dish.salt = with_salt(dish.salt, kind))
        />
        <Show when=move || kind.get() == Some(SaltKind::Ahead)>
            <div class="fields">
                {required(
                    handle, words::SALT_AHEAD, Measure::Hours,
                    |dish| Some(dish.salt?.ahead.seconds()),
                    |dish, seconds| {
                        if let Some(salt) = &mut dish.salt {
                            salt.ahead = TimeSpan::from_seconds(seconds);
                        }
                    },
                )}
                {required(
                    handle, words::SALT_RATE, Measure::FinePercent,
                    |dish| Some(dish.salt?.rate),
                    |dish, rate| {
                        if let Some(salt) = &mut dish.salt {
                            salt.rate = rate;
                        }
                    },
                )}
            </div>
        </Show>
        <Asked wrong=handle.wrong_at("salt") />
    }
}

#[component]
fn SprayChoice() -> impl IntoView {
    let handle = expect_context::<DishHandle>();
    let sprays = handle.read(|dish| dish.spray.is_some());
    view! {
        <Choice
            lay="two"
            label=Signal::stored(words::SPRAY.to_owned())
            ways=Signal::stored(vec![Way::new(false, words::NO_SPRAY), Way::new(true, words::WITH_SPRAY)])
            chosen=sprays
            on_choose=move |wanted| handle.edit(|dish| dish.spray = with_spray(dish.spray, wanted))
        />
        <Show when=move || sprays.get() == Some(true)>
            <div class="fields">
                {required(
                    handle, words::SPRAY_FIRST, Measure::Hours,
                    |dish| Some(dish.spray?.first.seconds()),
                    |dish, seconds| {
                        if let Some(spray) = &mut dish.spray {
                            spray.first = TimeSpan::from_seconds(seconds);
                        }
                    },
                )}
                {required(
                    handle, words::SPRAY_EVERY, Measure::Minutes,
                    |dish| Some(dish.spray?.every.seconds()),
                    |dish, seconds| {
                        if let Some(spray) = &mut dish.spray {
                            spray.every = TimeSpan::from_seconds(seconds);
                        }
                    },
                )}
            </div>
        </Show>
        <Asked wrong=handle.wrong_at("spray") />
    }
}

#[component]
fn HoldChoice() -> impl IntoView {
    let handle = expect_context::<DishHandle>();
    let kind = handle.read(|dish| hold_kind(dish.hold));
    view! {
        <Choice
            lay="four"
            label=Signal::stored(words::HOLD.to_owned())
            ways=Signal::stored(words::hold_ways())
            chosen=kind
            on_choose=move |kind| handle.edit(|dish| dish.hold = with_hold(dish.hold, kind))
        />
        <Show when=move || kind.get() == Some(HoldKind::Oven)>
            {required(
                handle, words::OVEN_AIR, Measure::Air,
                |dish| match dish.hold {
                    Some(HoldPlace::WarmOven { air }) => Some(air.celsius()),
                    _ => None,
                },
                |dish, celsius| {
                    let air = Temperature::from_celsius(celsius);
                    dish.hold = Some(HoldPlace::WarmOven { air });
                },
            )}
        </Show>
        <Asked wrong=handle.wrong_at("hold") />
    }
}
