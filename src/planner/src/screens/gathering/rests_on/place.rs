//! Where it happens, and the weather expected there.

use super::read;
use crate::format::Measure;
use crate::parts::{Asked, Footing, NumberField};
use crate::store::{Edit, use_store};
use crate::words::footing as words;
use cook_model::plan::Place;
use cook_model::units::{Length, Temperature};
use leptos::prelude::*;

/// Height, air, humidity and wind.
#[component]
pub fn PlaceRow() -> impl IntoView {
    let store = use_store();
    let place = read(|plan| plan.place);
    let note = move || {
        let formats = store.formats.get();
        place
            .get()
            .map_or_else(String::new, |place| words::place(&place, &formats))
    };
    let air = move || {
        let formats = store.formats.get();
        place
            .get()
            .map_or_else(String::new, |place| formats.temperature(place.air))
    };
    let field = move |label: &str,
                      measure: Measure,
                      get: fn(&Place) -> f64,
                      set: fn(&mut Place, f64)| {
        view! {
            <NumberField
                label=Signal::stored(label.to_owned())
                measure=Signal::stored(measure)
                value=Signal::derive(move || Some(get(&place.get()?)))
                on_change=move |value: f64| store.edit(Edit::Place, |plan| set(&mut plan.place, value))
            />
        }
    };
    view! {
        <Footing
            name=Signal::stored(words::PLACE.to_owned())
            note=Signal::derive(note)
            amount=Signal::derive(air)
            asks=store.anything_wrong_in("place")
        >
            <div class="fields">
                {field(
                    words::ALTITUDE, Measure::Altitude,
                    |place| place.altitude.metres(),
                    |place, metres| place.altitude = Length::from_metres(metres),
                )}
                {field(
                    words::AIR, Measure::Air,
                    |place| place.air.celsius(),
                    |place, celsius| place.air = Temperature::from_celsius(celsius),
                )}
                {field(
                    words::HUMIDITY, Measure::Percent,
                    |place| place.relative_humidity,
                    |place, share| place.relative_humidity = share,
                )}
                {field(
                    words::WIND, Measure::Wind,
                    |place| place.wind_metres_per_second,
                    |place, speed| place.wind_metres_per_second = speed,
                )}
            </div>
            <Asked wrong=store.wrong_at("place") />
            <p class="note">{words::PLACE_CAUTION}</p>
        </Footing>
    }
}
