//! The shell: rim above, one screen, the bar under the thumb.

use crate::device::service_worker::use_newer_version;
use crate::device::storage::Storage;
use crate::parts::{Bar, Notices, Rim, SafeStop, keep_light};
use crate::route::{Route, use_route};
use crate::screens::fireside::Fireside;
use crate::screens::gathering::Gathering;
use crate::screens::in_doubt::InDoubt;
use crate::screens::plans::Plans;
use crate::screens::run_sheet::RunSheet;
use crate::screens::shopping::Shopping;
use crate::store::{Loaded, Store};
use leptos::prelude::*;

/// The app, from what was found on the device.
#[component]
pub fn App(
    /// The two stores.
    storage: Storage,
    /// What they held.
    loaded: Loaded,
) -> impl IntoView {
    let store = Store::start(storage, loaded);
    provide_context(store);
    keep_light(store);
    let newer = use_newer_version();
    let route = use_route();
    view! {
        <Rim />
        <Notices newer />
        <SafeStop />
        {move || match route.get() {
            Route::Gathering => view! { <Gathering /> }.into_any(),
            Route::Shopping => view! { <Shopping /> }.into_any(),
            Route::RunSheet => view! { <RunSheet /> }.into_any(),
            Route::Fireside => view! { <Fireside /> }.into_any(),
            Route::Plans => view! { <Plans /> }.into_any(),
            Route::InDoubt => view! { <InDoubt /> }.into_any(),
        }}
        <Bar route />
    }
}
