//! Records that could not be read: kept as they were found, and given out as files.

use crate::device::files::send;
use crate::store::{KeptAside, use_store};
use crate::words::plans as words;
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

/// What could not be read, where there is any.
#[component]
pub fn Aside() -> impl IntoView {
    let store = use_store();
    let kept = Memo::new(move |_| store.library().with(|library| library.aside.clone()));
    view! {
        <Show when=move || kept.with(|kept| !kept.is_empty())>
            <section class="band" aria-labelledby="aside">
                <h2 class="head" id="aside">{words::ASIDE}</h2>
                <p class="note aside-note">{words::ASIDE_NOTE}</p>
                <ul>
                    <For each=move || kept.get() key=|one| one.checksum let:one>
                        <One kept=one />
                    </For>
                </ul>
            </section>
        </Show>
    }
}

/// A record that could not be read.
#[component]
fn One(
    /// Which.
    kept: KeptAside,
) -> impl IntoView {
    let store = use_store();
    let KeptAside { checksum, text } = kept;
    let name = format!("unread-{checksum:08x}.txt");
    let file = name.clone();
    let keep = move |_| {
        let (name, text) = (file.clone(), text.clone());
        spawn_local(async move {
            send(&name, &text, "text/plain").await;
        });
    };
    let asked = RwSignal::new(false);
    let erase = move |_| {
        if asked.get_untracked() {
            store.erase_aside(checksum);
        } else {
            asked.set(true);
        }
    };
    view! {
        <li class="away">
            <span class="name">{name}</span>
            <span class="pair">
                <button type="button" class="btn" on:click=keep>{words::KEEP_FILE}</button>
                <button type="button" class="btn" class:asks=move || asked.get() on:click=erase>
                    {move || if asked.get() { words::ERASE_REALLY } else { words::ERASE }}
                </button>
            </span>
        </li>
    }
}
