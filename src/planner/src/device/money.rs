//! Money as the browser writes it: its own table of currencies follows ISO 4217.

use super::locale::locale;
use cook_model::plan::Currency;
use cook_model::provisions::shopping::Money;
use js_sys::{Array, Object, Reflect};
use wasm_bindgen::JsValue;

fn format(currency: Currency) -> js_sys::Intl::NumberFormat {
    let options = Object::new();
    // A fresh, plain object takes any property.
    Reflect::set(&options, &"style".into(), &"currency".into()).ok();
    let code = JsValue::from(currency.to_string());
    Reflect::set(&options, &"currency".into(), &code).ok();
    js_sys::Intl::NumberFormat::new(&Array::new(), &options)
}

/// How many digits of a currency stand behind the point.
#[must_use]
pub fn digits(currency: Currency) -> u8 {
    let options = format(currency).resolved_options();
    let digits = Reflect::get(&options, &"maximumFractionDigits".into()).ok();
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "none to four digits"
    )]
    let digits = digits.and_then(|digits| digits.as_f64()).unwrap_or(2.0) as u8;
    digits
}

/// A sum with the sign of its currency, as people write it where they live.
#[must_use]
pub fn say(money: Money, currency: Currency) -> String {
    #[expect(
        clippy::cast_precision_loss,
        reason = "sums of a shopping list are far below 2^53 coins"
    )]
    let whole = money.0 as f64 / 10_f64.powi(i32::from(digits(currency)));
    let text = format(currency)
        .format()
        .call1(&JsValue::UNDEFINED, &whole.into());
    text.ok()
        .and_then(|text| text.as_string())
        .unwrap_or_else(|| format!("{whole} {currency}"))
}

/// Every currency that the browser knows, by its code.
#[must_use]
pub fn all() -> Vec<Currency> {
    let listed = Reflect::get(&js_sys::global(), &"Intl".into()).and_then(|intl| {
        let list = Reflect::get(&intl, &"supportedValuesOf".into())?;
        js_sys::Function::from(list).call1(&intl, &"currency".into())
    });
    let codes = listed
        .map(|listed| Array::from(&listed))
        .unwrap_or_default();
    let known: Vec<Currency> = codes
        .iter()
        .filter_map(|code| code.as_string()?.parse().ok())
        .collect();
    if known.is_empty() {
        vec![usual()]
    } else {
        known
    }
}

/// The currency of the region that the browser names, until the person says another.
#[must_use]
pub fn usual() -> Currency {
    let locale = locale();
    let region = locale
        .split(['-', '_'])
        .skip(1)
        .find(|part| part.len() == 2);
    let code = match region.map(str::to_ascii_uppercase).as_deref() {
        Some("GB") => "GBP",
        Some("US") => "USD",
        Some("CA") => "CAD",
        Some("AU") => "AUD",
        Some("NZ") => "NZD",
        Some("CH") => "CHF",
        Some("JP") => "JPY",
        Some("ZA") => "ZAR",
        _ => "EUR",
    };
    code.parse().expect("a code of three large letters")
}
