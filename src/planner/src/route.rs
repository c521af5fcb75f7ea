//! Which screen is shown: the part of the address behind the `#`, so that it works under any path and offline.

use leptos::prelude::*;

/// The screens.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Route {
    /// The answer, the dishes and what they rest on.
    #[default]
    Gathering,
    /// What to buy, and what it costs.
    Shopping,
    /// The day, step by step.
    RunSheet,
    /// The day in the yard.
    Fireside,
    /// All plans on this device.
    Plans,
}

impl Route {
    /// The route of an address; an unknown one leads to the first screen.
    #[must_use]
    pub fn from_hash(hash: &str) -> Self {
        match hash.trim_start_matches('#') {
            "shopping" => Self::Shopping,
            "run-sheet" => Self::RunSheet,
            "fireside" => Self::Fireside,
            "plans" => Self::Plans,
            _ => Self::Gathering,
        }
    }

    /// Its address.
    #[must_use]
    pub const fn href(self) -> &'static str {
        match self {
            Self::Gathering => "#gathering",
            Self::Shopping => "#shopping",
            Self::RunSheet => "#run-sheet",
            Self::Fireside => "#fireside",
            Self::Plans => "#plans",
        }
    }

    /// Goes there.
    pub fn go(self) {
        // Setting the hash fails only on a page without an address, which has no screens either.
        window().location().set_hash(self.href()).ok();
    }
}

/// The route as a signal that follows the address.
#[must_use]
pub fn use_route() -> ReadSignal<Route> {
    let current = || Route::from_hash(&window().location().hash().unwrap_or_default());
    let (route, set_route) = signal(current());
    let listener = window_event_listener(leptos::ev::hashchange, move |_| set_route.set(current()));
    on_cleanup(move || listener.remove());
    route
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_route_leads_back_to_itself() {
        for route in [
            Route::Gathering,
            Route::Shopping,
            Route::RunSheet,
            Route::Fireside,
            Route::Plans,
        ] {
            assert_eq!(Route::from_hash(route.href()), route);
        }
        assert_eq!(Route::from_hash(""), Route::Gathering);
        assert_eq!(Route::from_hash("#elsewhere"), Route::Gathering);
    }
}
