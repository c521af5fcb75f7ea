//! A sheet from under the thumb, over the screen until it is closed. The browser's own dialog keeps the focus inside,
//! closes on Escape and gives the focus back.

use super::choice::unique_id;
use leptos::html::Dialog;
use leptos::prelude::*;

/// A slip, open for as long as it is there.
#[component]
pub fn Slip(
    /// Its heading.
    #[prop(into)]
    title: Signal<String>,
    /// What the key that closes it says.
    #[prop(default = "Close")]
    close: &'static str,
    /// Called when it was closed.
    #[prop(into)]
    on_close: Callback<()>,
    /// What is on it.
    children: Children,
) -> impl IntoView {
    let heading = unique_id("slip");
    let dialog = NodeRef::<Dialog>::new();
    Effect::new(move |_| {
        if let Some(dialog) = dialog.get()
            && !dialog.open()
        {
            // It fails only where the dialog is no longer on the page.
            dialog.show_modal().ok();
        }
    });
    let shut = move |_| {
        if let Some(dialog) = dialog.get_untracked() {
            dialog.close();
        }
    };
    view! {
        <dialog class="slip" node_ref=dialog aria-labelledby=heading on:close=move |_| on_close.run(())>
            <div class="slip-top">
                <h2 class="name" id=heading.clone()>{move || title.get()}</h2>
                <button type="button" class="btn bare" on:click=shut>{close}</button>
            </div>
            <div class="slip-body">{children()}</div>
        </dialog>
    }
}
