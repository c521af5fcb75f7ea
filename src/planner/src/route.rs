//! Which screen is shown: the part of the address behind the `#`, so that it works under any path and offline.

use cook_model::answers::Question;
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
    /// Questions with straight answers. Which question follows in the address.
    InDoubt,
}

impl Route {
    /// The route of an address; an unknown one leads to the first screen.
    #[must_use]
    pub fn from_hash(hash: &str) -> Self {
        let name = hash.trim_start_matches('#');
        match name.split_once('/').map_or(name, |(screen, _)| screen) {
            "shopping" => Self::Shopping,
            "run-sheet" => Self::RunSheet,
            "fireside" => Self::Fireside,
            "plans" => Self::Plans,
            "in-doubt" => Self::InDoubt,
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
            Self::InDoubt => "#in-doubt",
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

/// The address of a question.
#[must_use]
pub fn question_href(kind: &str) -> String {
    format!("{}/{kind}", Route::InDoubt.href())
}

/// The question of an address; none where there is no such question.
fn question_of(hash: &str) -> Option<&'static str> {
    let (screen, kind) = hash.trim_start_matches('#').split_once('/')?;
    let mut kinds = Question::KINDS.iter().map(|(known, _)| *known);
    kinds.find(|known| *known == kind && screen == "in-doubt")
}

/// The question that the address names, as a signal that follows it.
#[must_use]
pub fn use_question() -> ReadSignal<Option<&'static str>> {
    let current = || question_of(&window().location().hash().unwrap_or_default());
    let (question, set_question) = signal(current());
    let listener =
        window_event_listener(leptos::ev::hashchange, move |_| set_question.set(current()));
    on_cleanup(move || listener.remove());
    question
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_question_has_an_address() {
        for (kind, _) in Question::KINDS {
            let href = question_href(kind);
            assert_eq!(Route::from_hash(&href), Route::InDoubt);
            assert_eq!(question_of(&href), Some(*kind));
        }
        assert_eq!(question_of("#in-doubt"), None);
        assert_eq!(question_of("#in-doubt/who_knows"), None);
        assert_eq!(question_of("#plans/heat_lost"), None);
    }

    #[test]
    fn every_route_leads_back_to_itself() {
        for route in [
            Route::Gathering,
            Route::Shopping,
            Route::RunSheet,
            Route::Fireside,
            Route::Plans,
            Route::InDoubt,
        ] {
            assert_eq!(Route::from_hash(route.href()), route);
        }
        assert_eq!(Route::from_hash(""), Route::Gathering);
        assert_eq!(Route::from_hash("#elsewhere"), Route::Gathering);
    }
}
