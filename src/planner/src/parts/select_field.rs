//! One of many, in groups: the browser's own list, which phones show large.

use super::choice::unique_id;
use leptos::prelude::*;

/// Groups by heading; each entry by its value and its name.
pub type Groups = Vec<(String, Vec<(String, String)>)>;

/// A list to choose from.
#[component]
pub fn SelectField(
    /// What it is.
    #[prop(into)]
    label: Signal<String>,
    /// What can be chosen.
    groups: Groups,
    /// The value chosen.
    #[prop(into)]
    value: Signal<String>,
    /// Called with a value that is chosen.
    #[prop(into)]
    on_change: Callback<String>,
    /// What is wrong with it.
    #[prop(into, default = Signal::stored(None))]
    problem: Signal<Option<String>>,
) -> impl IntoView {
    let id = unique_id("select");
    let known: Vec<String> = groups
        .iter()
        .flat_map(|(_, entries)| entries.iter().map(|(value, _)| value.clone()))
        .collect();
    // A value that is not in the list is shown as it stands, not as the first entry.
    let unknown = move || {
        let value = value.get();
        (!known.contains(&value))
            .then(|| view! { <option selected=true disabled=true>{value}</option> })
    };
    let group = move |(heading, entries): (String, Vec<(String, String)>)| {
        let entries = entries
            .into_iter()
            .map(|(entry, name)| {
                let chosen = {
                    let entry = entry.clone();
                    move || value.with(|value| *value == entry)
                };
                view! { <option value=entry prop:selected=chosen>{name}</option> }
            })
            .collect_view();
        view! { <optgroup label=heading>{entries}</optgroup> }
    };
    view! {
        <div class="field" class:asks=move || problem.with(Option::is_some)>
            <label for=id.clone()>{move || label.get()}</label>
            <select id=id on:change=move |event| on_change.run(event_target_value(&event))>
                {unknown}
                {groups.into_iter().map(group).collect_view()}
            </select>
            <p class="asked" role="status">{move || problem.get()}</p>
        </div>
    }
}
