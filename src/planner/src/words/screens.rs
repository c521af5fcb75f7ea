//! Names of the screens and of the lights.

use crate::route::Route;
use crate::store::Light;

/// The name of a screen.
#[must_use]
pub const fn screen(route: Route) -> &'static str {
    match route {
        Route::Gathering => "Gathering",
        Route::Shopping => "Shopping",
        Route::RunSheet => "Run sheet",
        Route::Fireside => "Fireside",
        Route::Plans => "Plans",
        Route::InDoubt => "In doubt?",
    }
}

/// The name of a light.
#[must_use]
pub const fn light(light: Light) -> &'static str {
    match light {
        Light::Day => "Day",
        Light::Night => "Night",
        Light::Sun => "Sun",
    }
}

/// What a plan without a name is called.
pub const UNNAMED: &str = "Unnamed plan";

/// A plan's name, or what stands for it.
#[must_use]
pub fn plan_name(name: &str) -> &str {
    let name = name.trim();
    if name.is_empty() { UNNAMED } else { name }
}
