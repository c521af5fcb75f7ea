//! Files out and in. Out: shared where the device can, which is the only way in some home-screen apps, else downloaded.

use cook_model::handover::{Refusal, file};
use js_sys::{Array, Uint8Array};
use leptos::prelude::{document, window};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, BlobPropertyBag, File, FilePropertyBag, HtmlAnchorElement, ShareData, Url};

/// What became of a file that was to go out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sent {
    /// Handed to another app or a person.
    Shared,
    /// Given to the browser to save.
    Downloaded,
    /// The person thought better of it.
    Cancelled,
    /// The browser can do neither.
    Impossible,
}

/// Hands a text out as a file. Call it in answer to a tap: browsers allow sharing only then.
pub async fn send(name: &str, text: &str, media_type: &str) -> Sent {
    if let Some(data) = shareable(name, text, media_type) {
        match JsFuture::from(window().navigator().share_with_data(&data)).await {
            Ok(_) => return Sent::Shared,
            Err(error) if is_named(&error, "AbortError") => return Sent::Cancelled,
            Err(_) => {}
        }
    }
    if download(name, text, media_type).is_some() {
        Sent::Downloaded
    } else {
        Sent::Impossible
    }
}

fn shareable(name: &str, text: &str, media_type: &str) -> Option<ShareData> {
    let touch = window().match_media("(pointer: coarse)").ok()??.matches();
    let navigator = window().navigator();
    let can_share = js_sys::Reflect::get(&navigator, &"canShare".into()).ok()?;
    if !touch || !can_share.is_function() {
        return None;
    }
    let options = FilePropertyBag::new();
    options.set_type(media_type);
    let parts = Array::of1(&text.into());
    let file = File::new_with_str_sequence_and_options(&parts, name, &options).ok()?;
    let data = ShareData::new();
    data.set_files(&Array::of1(&file));
    navigator.can_share_with_data(&data).then_some(data)
}

/// The address of a text as a file, for as long as the page lives or until it is revoked.
pub(crate) fn address_of(text: &str, media_type: &str) -> Option<String> {
    let options = BlobPropertyBag::new();
    options.set_type(media_type);
    let blob = Blob::new_with_str_sequence_and_options(&Array::of1(&text.into()), &options).ok()?;
    Url::create_object_url_with_blob(&blob).ok()
}

fn download(name: &str, text: &str, media_type: &str) -> Option<()> {
    let address = address_of(text, media_type)?;
    let anchor: HtmlAnchorElement = document().create_element("a").ok()?.dyn_into().ok()?;
    anchor.set_href(&address);
    anchor.set_download(name);
    anchor.click();
    // The browser needs the address until it has read it; a minute is more than enough for a few kilobytes.
    gloo_timers::callback::Timeout::new(60_000, move || {
        Url::revoke_object_url(&address).ok();
    })
    .forget();
    Some(())
}

/// Reads a file, unless it is larger than any plan.
///
/// # Errors
/// [`Refusal`] where it is too large or cannot be read.
pub async fn read(file: &File) -> Result<Vec<u8>, Refusal> {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a file's size is a whole number"
    )]
    let bytes = file.size() as usize;
    if bytes > file::MOST_BYTES {
        return Err(Refusal::TooLarge {
            bytes,
            most: file::MOST_BYTES,
        });
    }
    match JsFuture::from(file.array_buffer()).await {
        Ok(buffer) => Ok(Uint8Array::new(&buffer).to_vec()),
        // The file went away between choosing and reading: the same as a file cut short at its first byte.
        Err(_) => Err(Refusal::NotJson { line: 0, column: 0 }),
    }
}

fn is_named(error: &JsValue, name: &str) -> bool {
    let found = js_sys::Reflect::get(error, &"name".into()).ok();
    found.and_then(|found| found.as_string()).as_deref() == Some(name)
}

/// A file name from a plan's name: letters and digits of any language, the rest as hyphens.
#[must_use]
pub fn file_name(plan: &str) -> String {
    let words: Vec<&str> = plan
        .split(|letter: char| !letter.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .collect();
    let stem: String = words.join("-").to_lowercase().chars().take(60).collect();
    if stem.is_empty() {
        "plan.longcook.json".to_owned()
    } else {
        format!("{stem}.longcook.json")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_safe_on_every_system() {
        assert_eq!(
            file_name("Harvest supper, 2026/09"),
            "harvest-supper-2026-09.longcook.json"
        );
        assert_eq!(file_name("Żniwa"), "żniwa.longcook.json");
        assert_eq!(file_name("../.."), "plan.longcook.json");
    }
}
