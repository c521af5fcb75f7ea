//! The worker's side: chunks of work with the message queue looked at between them.

use super::{Desk, Reply, Request, Turn};
use crate::reckon::desk::Work;
use cook_model::plan::outlook::Outlook;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use web_sys::{DedicatedWorkerGlobalScope, MessageChannel, MessageEvent};

/// Whether this is the worker and not the page.
#[must_use]
pub fn is_worker() -> bool {
    js_sys::global().is_instance_of::<DedicatedWorkerGlobalScope>()
}

/// Answers requests for as long as the worker lives.
pub fn serve<W>(work: W)
where
    W: Work<Answer = Outlook> + 'static,
{
    let scope: DedicatedWorkerGlobalScope = js_sys::global().unchecked_into();
    // A message to oneself comes after the messages that are already waiting, and unlike a timer it comes at once.
    let Ok(channel) = MessageChannel::new() else {
        return;
    };
    let desk = Rc::new(RefCell::new(Desk::new(work)));
    let busy = Rc::new(Cell::new(false));
    let again = {
        let (port, busy) = (channel.port2(), Rc::clone(&busy));
        move || {
            busy.set(port.post_message(&JsValue::NULL).is_ok());
        }
    };

    let turn = {
        let (scope, desk, again) = (scope.clone(), Rc::clone(&desk), again.clone());
        let busy = Rc::clone(&busy);
        move || match desk.borrow_mut().turn() {
            Turn::Idle => busy.set(false),
            Turn::Busy => again(),
            Turn::Done {
                id,
                generation,
                effort,
                answer,
            } => {
                say(
                    &scope,
                    &Reply::Answer {
                        id,
                        generation,
                        effort,
                        outlook: Box::new(answer),
                    },
                );
                again();
            }
        }
    };
    let turn = Closure::<dyn FnMut()>::new(turn);
    channel
        .port1()
        .set_onmessage(Some(turn.as_ref().unchecked_ref()));

    let take = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        let request: Option<Request> = event
            .data()
            .as_string()
            .and_then(|text| serde_json::from_str(&text).ok());
        if let Some(request) = request {
            desk.borrow_mut().take(request);
            if !busy.get() {
                again();
            }
        }
    });
    scope.set_onmessage(Some(take.as_ref().unchecked_ref()));
    say(&scope, &Reply::Ready);
    // All of it lives as long as the worker.
    turn.forget();
    take.forget();
    std::mem::forget(channel);
}

fn say(scope: &DedicatedWorkerGlobalScope, reply: &Reply) {
    if let Ok(text) = serde_json::to_string(reply) {
        // A text can always be copied over.
        scope.post_message(&text.into()).ok();
    }
}
