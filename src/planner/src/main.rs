//! Mounts the app.

use leptos::prelude::*;

fn main() {
    mount_to_body(|| view! { <h1>"Longcook"</h1> });
}
