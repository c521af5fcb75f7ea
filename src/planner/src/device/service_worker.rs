//! A newer version of the app: it waits until the person says so, then every open page starts again with it.
//!
//! The boot file registers the service worker; what page and worker say to each other is told at the top of `sw.js`.

use gloo_timers::callback::Timeout;
use leptos::prelude::*;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{ServiceWorkerContainer, ServiceWorkerRegistration, ServiceWorkerState};

/// How long a switch may take before the person is told that it is held up. Set by hand: it takes less than a second as a
/// rule.
const PATIENCE_MILLISECONDS: u32 = 3_000;

/// Whether a newer version is waiting, and the way to switch to it.
#[derive(Clone, Copy)]
pub struct Newer {
    /// A newer version is on the device.
    pub waiting: ReadSignal<bool>,
    /// A switch was asked for and the old version has not given way: it still has something to hand out.
    pub held: ReadSignal<bool>,
    set_held: WriteSignal<bool>,
    registration: StoredValue<Option<ServiceWorkerRegistration>, LocalStorage>,
}

impl Newer {
    /// Switches to the waiting version; the page starts again. A browser lets the new version take over only when the
    /// old one has nothing left to hand out, and one answer that nobody reads can hold that up for minutes. The page is
    /// not reloaded in that state: its own request would wait as well, and the screen would stay white meanwhile.
    pub fn switch(self) {
        self.registration.with_value(|registration| {
            if let Some(waiting) = registration.as_ref().and_then(|one| one.waiting()) {
                // A short text can always be copied over.
                waiting.post_message(&"switch".into()).ok();
                let held = self.set_held;
                Timeout::new(PATIENCE_MILLISECONDS, move || held.set(true)).forget();
            }
        });
    }

    /// Looks whether there is a newer version.
    pub fn look(self) {
        self.registration.with_value(|registration| {
            if let Some(registration) = registration {
                // Without a network there is nothing to find.
                let looking = registration.update().ok();
                if let Some(looking) = looking {
                    spawn_local(async move {
                        JsFuture::from(looking).await.ok();
                    });
                }
            }
        });
    }
}

/// Watches for a newer version.
#[must_use]
pub fn use_newer_version() -> Newer {
    let (waiting, set_waiting) = signal(false);
    let (held, set_held) = signal(false);
    let newer = Newer {
        waiting,
        held,
        set_held,
        registration: StoredValue::new_local(None),
    };
    let Some(container) = container() else {
        return newer;
    };
    reload_when_switched(&container);
    spawn_local(async move {
        let ready = container.ready();
        let Ok(ready) = ready else { return };
        let Ok(registration) = JsFuture::from(ready).await else {
            return;
        };
        let registration: ServiceWorkerRegistration = registration.unchecked_into();
        let look = {
            let registration = registration.clone();
            move || set_waiting.set(registration.waiting().is_some())
        };
        look();
        watch(&registration, look);
        newer.registration.set_value(Some(registration));
    });
    let shown = window_event_listener(leptos::ev::focus, move |_| newer.look());
    on_cleanup(move || shown.remove());
    newer
}

fn reload() {
    // A page that cannot reload goes on as it is.
    window().location().reload().ok();
}

fn container() -> Option<ServiceWorkerContainer> {
    let navigator = window().navigator();
    let found = js_sys::Reflect::get(&navigator, &"serviceWorker".into()).ok()?;
    found.dyn_into().ok()
}

/// Calls back when a version that was being fetched has settled.
fn watch(registration: &ServiceWorkerRegistration, call: impl Fn() + Clone + 'static) {
    let found = {
        let registration = registration.clone();
        Closure::<dyn FnMut()>::new(move || {
            let Some(installing) = registration.installing() else {
                return;
            };
            let (worker, call) = (installing.clone(), call.clone());
            let changed = Closure::<dyn FnMut()>::new(move || {
                if worker.state() == ServiceWorkerState::Installed {
                    call();
                }
            });
            installing.set_onstatechange(Some(changed.as_ref().unchecked_ref()));
            // Lives as long as the version that it watches.
            changed.forget();
        })
    };
    registration.set_onupdatefound(Some(found.as_ref().unchecked_ref()));
    // Lives as long as the page.
    found.forget();
}

/// A page that ran without a service worker, as at the first visit, is taken over without starting again.
fn reload_when_switched(container: &ServiceWorkerContainer) {
    if container.controller().is_none() {
        return;
    }
    let switched = Closure::<dyn FnMut()>::new(reload);
    container.set_oncontrollerchange(Some(switched.as_ref().unchecked_ref()));
    // Lives as long as the page.
    switched.forget();
}
