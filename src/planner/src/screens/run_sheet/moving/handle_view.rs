//! The handle of the chosen ticket: what a finger picks it up by, and where keys move it.

use super::super::board::{Board, use_board};
use super::pointer::handle_id;
use crate::words::moves as words;
use cook_model::plan::StepKey;
use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

/// Steps of the grid that an arrow moves, and with Shift.
const STEP: i64 = 1;
const STRIDE: i64 = 6;

/// The handle.
#[component]
pub fn Handle(
    /// Whose.
    key: StepKey,
) -> impl IntoView {
    let board = use_board();
    let name = move || board.with_all(|_, plan, _, _| words::handle(key, plan));
    view! {
        <button
            type="button"
            class="handle"
            id=handle_id(key)
            aria-label=name
            on:pointerdown=move |event| board.pointer_down(&event, key, true)
            on:pointermove=move |event| board.pointer_move(&event)
            on:pointerup=move |event| board.pointer_up(&event)
            on:pointercancel=move |event| board.pointer_cancel(&event)
            on:keydown=move |event| pressed(board, key, &event)
        >
            <i aria-hidden="true"></i>
        </button>
    }
}

fn pressed(board: Board, key: StepKey, event: &KeyboardEvent) {
    if event.ctrl_key() || event.meta_key() || event.alt_key() {
        return;
    }
    let far = if event.shift_key() { STRIDE } else { STEP };
    match event.key().as_str() {
        "ArrowUp" | "ArrowLeft" => board.nudge(key, -far),
        "ArrowDown" | "ArrowRight" => board.nudge(key, far),
        "p" | "P" => board.pin_or_unpin(key),
        "Escape" => {
            if !board.drop_back() {
                board.put_back();
            }
        }
        _ => return,
    }
    keep_focus(key);
    // The list of tickets has arrows of its own.
    event.prevent_default();
    event.stop_propagation();
}

/// A ticket that changed its place in the list lost the focus on the way.
fn keep_focus(key: StepKey) {
    request_animation_frame(move || {
        let handle = document().get_element_by_id(&handle_id(key));
        if let Some(handle) = handle.and_then(|handle| handle.dyn_into::<HtmlElement>().ok()) {
            // A handle that is gone cannot have it.
            handle.focus().ok();
        }
    });
}
