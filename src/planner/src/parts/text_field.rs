//! Text and times of day.

use super::choice::unique_id;
use chrono::NaiveTime;
use leptos::prelude::*;

/// Longest name, in characters: what still reads on a phone over a few lines.
const LONGEST_NAME: &str = "120";

/// A line of text. A change counts when the field is left or Enter is pressed.
#[component]
pub fn TextField(
    /// What it is.
    #[prop(into)]
    label: Signal<String>,
    /// As it stands.
    #[prop(into)]
    value: Signal<String>,
    /// Called with what was typed.
    #[prop(into)]
    on_change: Callback<String>,
) -> impl IntoView {
    let id = unique_id("text");
    view! {
        <div class="field">
            <label for=id.clone()>{move || label.get()}</label>
            <input
                id=id
                type="text"
                autocomplete="off"
                maxlength=LONGEST_NAME
                prop:value=move || value.get()
                on:change=move |event| on_change.run(event_target_value(&event).trim().to_owned())
            />
        </div>
    }
}

/// A time of day, in the browser's own field: it asks in twelve or twenty-four hours as the device does.
#[component]
pub fn TimeField(
    /// What it is.
    #[prop(into)]
    label: Signal<String>,
    /// As it stands.
    #[prop(into)]
    value: Signal<NaiveTime>,
    /// Called with a new time.
    #[prop(into)]
    on_change: Callback<NaiveTime>,
) -> impl IntoView {
    let id = unique_id("time");
    let changed = move |event| {
        if let Some(time) = read_time(&event_target_value(&event)) {
            on_change.run(time);
        }
    };
    view! {
        <div class="field">
            <label for=id.clone()>{move || label.get()}</label>
            <input
                id=id
                type="time"
                required=true
                prop:value=move || value.get().format("%H:%M").to_string()
                on:change=changed
            />
        </div>
    }
}

/// A time as a browser writes it, with or without seconds.
fn read_time(text: &str) -> Option<NaiveTime> {
    NaiveTime::parse_from_str(text, "%H:%M")
        .or_else(|_| NaiveTime::parse_from_str(text, "%H:%M:%S"))
        .ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn times_are_read_as_browsers_write_them() {
        assert_eq!(read_time("22:00"), NaiveTime::from_hms_opt(22, 0, 0));
        assert_eq!(read_time("22:00:30"), NaiveTime::from_hms_opt(22, 0, 30));
        assert_eq!(read_time(""), None);
    }
}
