//! Large keys for a number, to be hit with a knuckle.

use crate::format::parse_number;
use crate::words::fireside as words;
use leptos::prelude::*;

/// The keys in their order; the last row is the sign and the point.
const KEYS: [&str; 12] = ["1", "2", "3", "4", "5", "6", "7", "8", "9", ".", "0", "−"];
/// Most letters in a number.
const MOST: usize = 6;

/// What is typed after a key.
#[must_use]
pub fn typed(text: &str, key: &str) -> String {
    match key {
        "−" => text
            .strip_prefix('−')
            .map_or_else(|| format!("−{text}"), str::to_owned),
        "." if text.contains('.') => text.to_owned(),
        _ if text.chars().count() >= MOST => text.to_owned(),
        _ => format!("{text}{key}"),
    }
}

/// The keys and the number as it stands.
#[component]
pub fn Keypad(
    /// Its unit.
    unit: &'static str,
    /// Called with the number.
    #[prop(into)]
    on_number: Callback<f64>,
) -> impl IntoView {
    let text = RwSignal::new(String::new());
    let number = move || text.with(|text| parse_number(text));
    let key = move |key: &'static str| {
        view! {
            <button
                type="button"
                class="btn num"
                on:click=move |_| text.update(|text| *text = typed(text, key))
            >
                {key}
            </button>
        }
    };
    let rub_out = move |_| {
        text.update(|text| {
            text.pop();
        });
    };
    view! {
        <output class="typed num" aria-live="polite">
            {move || text.get()} <small>{unit}</small>
        </output>
        <div class="keypad">{KEYS.map(key).collect_view()}</div>
        <div class="pair">
            <button type="button" class="btn" on:click=rub_out>{words::RUB_OUT}</button>
            <button
                type="button"
                class="btn act"
                disabled=move || number().is_none()
                on:click=move |_| {
                    if let Some(number) = number() {
                        on_number.run(number);
                    }
                }
            >
                {words::LOG_IT}
            </button>
        </div>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_make_a_number() {
        let all = |keys: &[&str]| {
            keys.iter()
                .fold(String::new(), |text, key| typed(&text, key))
        };
        assert_eq!(all(&["6", "9", ".", "5"]), "69.5");
        assert_eq!(all(&["1", ".", "2", ".", "3"]), "1.23");
        assert_eq!(all(&["1", "8", "−"]), "−18");
        assert_eq!(all(&["−", "1", "8", "−"]), "18");
        assert_eq!(parse_number(&all(&["1", "8", "−"])), Some(-18.0));
    }
}
