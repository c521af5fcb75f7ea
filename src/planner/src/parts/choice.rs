//! One of several: large keys side by side, each a radio button underneath, so that arrows and screen readers work.

use leptos::prelude::*;

/// One way to choose.
#[derive(Clone, Debug, PartialEq)]
pub struct Way<T> {
    /// What is chosen.
    pub value: T,
    /// Its name.
    pub label: String,
    /// What it means; may be empty.
    pub note: String,
}

impl<T> Way<T> {
    /// A way without a note.
    pub fn new(value: T, label: impl Into<String>) -> Self {
        Self {
            value,
            label: label.into(),
            note: String::new(),
        }
    }

    /// The same with a note.
    #[must_use]
    pub fn with_note(mut self, note: impl Into<String>) -> Self {
        self.note = note.into();
        self
    }
}

/// A choice between ways.
#[component]
pub fn Choice<T>(
    /// The question.
    #[prop(into)]
    label: Signal<String>,
    /// The ways.
    #[prop(into)]
    ways: Signal<Vec<Way<T>>>,
    /// The way chosen; none yet.
    #[prop(into)]
    chosen: Signal<Option<T>>,
    /// Called with a way that is chosen.
    #[prop(into)]
    on_choose: Callback<T>,
    /// How the keys lie: `three`, `four`, `column`.
    #[prop(default = "three")]
    lay: &'static str,
) -> impl IntoView
where
    T: Clone + PartialEq + Send + Sync + 'static,
{
    let group = unique_id("choice");
    let keys = move || {
        let group = group.clone();
        ways.get()
            .into_iter()
            .map(move |way| {
                let value = way.value.clone();
                let checked = {
                    let value = way.value.clone();
                    move || chosen.with(|chosen| chosen.as_ref() == Some(&value))
                };
                let note =
                    (!way.note.is_empty()).then(|| view! { <span class="note">{way.note}</span> });
                view! {
                    <label class="way">
                        <input
                            type="radio"
                            name=group.clone()
                            prop:checked=checked
                            on:change=move |_| on_choose.run(value.clone())
                        />
                        <span class="way-face"><b>{way.label}</b>{note}</span>
                    </label>
                }
            })
            .collect_view()
    };
    view! {
        <fieldset class=format!("choice {lay}")>
            <legend>{move || label.get()}</legend>
            <div class="ways">{keys}</div>
        </fieldset>
    }
}

/// A name that no other element of this page has.
pub(crate) fn unique_id(kind: &str) -> String {
    use std::sync::atomic::{AtomicU32, Ordering};
    static NEXT: AtomicU32 = AtomicU32::new(0);
    format!("{kind}-{}", NEXT.fetch_add(1, Ordering::Relaxed))
}
