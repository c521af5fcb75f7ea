//! Units: a setting of the device. The plan itself is kept in SI.

use crate::format::{LengthUnit, MassUnit, TemperatureScale, Units};
use crate::parts::{Choice, Footing, Way};
use crate::store::use_store;
use crate::words::footing as words;
use leptos::prelude::*;

/// The three switches.
#[component]
pub fn UnitsRow() -> impl IntoView {
    let store = use_store();
    let units = Memo::new(move |_| store.preferences().with(|preferences| preferences.units));
    let set = move |change: &dyn Fn(&mut Units)| {
        store.set_preferences(|preferences| change(&mut preferences.units));
    };
    view! {
        <Footing
            name=Signal::stored(words::UNITS.to_owned())
            note=Signal::stored(words::UNITS_NOTE.to_owned())
            amount=Signal::derive(move || words::units(units.get()))
        >
            <Choice
                lay="two"
                label=Signal::stored(words::TEMPERATURES.to_owned())
                ways=Signal::stored(vec![
                    Way::new(TemperatureScale::Celsius, "°C"),
                    Way::new(TemperatureScale::Fahrenheit, "°F"),
                ])
                chosen=Signal::derive(move || Some(units.get().temperature))
                on_choose=move |one| set(&|units| units.temperature = one)
            />
            <Choice
                lay="two"
                label=Signal::stored(words::WEIGHTS.to_owned())
                ways=Signal::stored(vec![
                    Way::new(MassUnit::Kilograms, "kg, g"),
                    Way::new(MassUnit::Pounds, "lb, oz"),
                ])
                chosen=Signal::derive(move || Some(units.get().mass))
                on_choose=move |one| set(&|units| units.mass = one)
            />
            <Choice
                lay="two"
                label=Signal::stored(words::LENGTHS.to_owned())
                ways=Signal::stored(vec![
                    Way::new(LengthUnit::Metric, "cm, m"),
                    Way::new(LengthUnit::Inches, "in, ft"),
                ])
                chosen=Signal::derive(move || Some(units.get().length))
                on_choose=move |one| set(&|units| units.length = one)
            />
        </Footing>
    }
}
