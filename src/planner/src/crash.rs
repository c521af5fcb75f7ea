//! When the app breaks: a plain screen that gives the work back first. It is drawn without the app's own machinery,
//! which is what broke, and its buttons are plain links that need no code behind them.

use crate::device::files::address_of;
use crate::device::storage::{Envelope, Key, PREFIX};
use crate::words::crash as words;
use gloo_storage::{LocalStorage, Storage};
use std::panic::PanicHookInfo;
use wasm_bindgen::JsCast;
use web_sys::{Document, Element, HtmlAnchorElement};

/// Shows the plain screen on every panic from now on.
pub fn guard() {
    std::panic::set_hook(Box::new(|info| {
        web_sys::console::error_1(&info.to_string().into());
        show(info);
    }));
}

fn show(info: &PanicHookInfo<'_>) -> Option<()> {
    let document = web_sys::window()?.document()?;
    let body = document.body()?;
    while let Some(child) = body.first_child() {
        body.remove_child(&child).ok()?;
    }
    let screen = document.create_element("main").ok()?;
    screen.set_class_name("crash");
    screen.set_attribute("role", "alert").ok()?;
    add(&document, &screen, "h1", words::HEADING)?;
    add(&document, &screen, "p", words::COMFORT)?;
    for (name, text) in kept_plans() {
        let link = link(&document, &words::keep_a_copy(&name))?;
        link.set_href(&address_of(&text, "application/json")?);
        link.set_download(&crate::device::files::file_name(&name));
        screen.append_child(&link).ok()?;
    }
    let reload = link(&document, words::START_AGAIN)?;
    reload.set_class_name("btn act");
    // An empty address is this page's own; with a hash it would only scroll.
    reload.set_href(&web_sys::window()?.location().pathname().ok()?);
    screen.append_child(&reload).ok()?;
    let details = add(&document, &screen, "details", "")?;
    add(&document, &details, "summary", words::DETAILS)?;
    add(&document, &details, "pre", &info.to_string())?;
    body.append_child(&screen).ok()?;
    document
        .document_element()?
        .set_attribute("data-app", "broken")
        .ok()
}

fn add(document: &Document, parent: &Element, tag: &str, text: &str) -> Option<Element> {
    let element = document.create_element(tag).ok()?;
    element.set_text_content(Some(text));
    parent.append_child(&element).ok()?;
    Some(element)
}

fn link(document: &Document, text: &str) -> Option<HtmlAnchorElement> {
    let link: HtmlAnchorElement = document.create_element("a").ok()?.dyn_into().ok()?;
    link.set_text_content(Some(text));
    link.set_class_name("btn");
    Some(link)
}

/// Every plan in the quick copy, by name, as a file that can be taken in again.
fn kept_plans() -> Vec<(String, String)> {
    let store = LocalStorage::raw();
    (0..LocalStorage::length())
        .filter_map(|at| store.key(at).ok().flatten())
        .filter(|name| name.starts_with(PREFIX))
        .filter_map(|name| {
            let key: Key = name.parse().ok()?;
            let text = store.get_item(&name).ok().flatten()?;
            let Key::Plan(_) = key else { return None };
            let content = Envelope::open(key, &text).map_or(text, |envelope| envelope.content);
            Some((plan_name(&content).unwrap_or_default(), content))
        })
        .collect()
}

fn plan_name(content: &str) -> Option<String> {
    let json: serde_json::Value = serde_json::from_str(content).ok()?;
    let name = json.pointer("/document/fields/name/value")?.as_str()?;
    Some(name.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_plans_name_is_found_without_reading_the_plan() {
        let content = r#"{"document": {"fields": {"name": {"value": "Supper", "stamp": "x"}}}}"#;
        assert_eq!(plan_name(content).as_deref(), Some("Supper"));
        assert_eq!(plan_name("{}"), None);
        assert_eq!(plan_name("torn"), None);
    }
}
