//! What time it is.

use cook_model::units::Moment;
use leptos::prelude::*;
use std::time::Duration;

/// How often the screens look at the clock.
const LOOK: Duration = Duration::from_secs(15);

/// Milliseconds since 1970, UTC.
#[must_use]
pub fn wall_milliseconds() -> u64 {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a whole number of milliseconds, positive since 1970"
    )]
    let milliseconds = js_sys::Date::now() as u64;
    milliseconds
}

/// The present moment.
#[must_use]
pub fn now() -> Moment {
    let seconds = i64::try_from(wall_milliseconds() / 1000).unwrap_or(i64::MAX);
    Moment::from_unix_seconds(seconds)
}

/// The present minute as a signal. A page that slept looks at the clock when it is shown again.
#[must_use]
pub fn use_minute() -> Memo<Moment> {
    let (moment, set_moment) = signal(now());
    let look = move || set_moment.set(now());
    if let Ok(interval) = set_interval_with_handle(look, LOOK) {
        on_cleanup(move || interval.clear());
    }
    let shown = document_event_listener("visibilitychange", look);
    on_cleanup(move || shown.remove());
    Memo::new(move |_| {
        let seconds = moment.get().unix_seconds();
        Moment::from_unix_seconds(seconds - seconds.rem_euclid(60))
    })
}

fn document_event_listener(event: &'static str, call: impl Fn() + 'static) -> WindowListenerHandle {
    // `visibilitychange` bubbles from the document to the window.
    window_event_listener_untyped(event, move |_| call())
}
