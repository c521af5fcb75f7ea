//! The worker's side: chunks of work with the message queue looked at between them.

use super::{Answer, Desk, Reply, Request, Turn};
use crate::reckon::desk::Work;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use web_sys::{DedicatedWorkerGlobalScope, MessageChannel, MessageEvent, MessagePort};

/// Whether this is the worker and not the page.
#[must_use]
pub fn is_worker() -> bool {
    js_sys::global().is_instance_of::<DedicatedWorkerGlobalScope>()
}

/// Answers requests for as long as the worker lives.
pub fn serve<W>(work: W)
where
    W: Work<Answer = Answer> + 'static,
{
    let scope: DedicatedWorkerGlobalScope = js_sys::global().unchecked_into();
    // A message to oneself comes after the messages that are waiting already, and unlike a timer it comes at once.
    let Ok(channel) = MessageChannel::new() else {
        return;
    };
    let turns = Turns {
        scope: scope.clone(),
        bell: channel.port2(),
        desk: RefCell::new(Desk::new(work)),
        busy: Cell::new(false),
    };
    let turns = Rc::new(turns);
    let turn = {
        let turns = Rc::clone(&turns);
        Closure::<dyn FnMut()>::new(move || turns.take_one())
    };
    let rung = turn.as_ref().unchecked_ref();
    channel.port1().set_onmessage(Some(rung));
    let take = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
        let request: Option<Request> = event
            .data()
            .as_string()
            .and_then(|text| serde_json::from_str(&text).ok());
        if let Some(request) = request {
            turns.desk.borrow_mut().take(request);
            if !turns.busy.get() {
                turns.ring();
            }
        }
    });
    scope.set_onmessage(Some(take.as_ref().unchecked_ref()));
    say(&scope, &Reply::Ready);
    // Both live as long as the worker; the browser keeps a port that is listened to.
    turn.forget();
    take.forget();
}

/// Turns at the desk, one after another, with a look at the messages between any two.
struct Turns<W> {
    scope: DedicatedWorkerGlobalScope,
    bell: MessagePort,
    desk: RefCell<Desk<W>>,
    busy: Cell<bool>,
}

impl<W: Work<Answer = Answer>> Turns<W> {
    /// Calls for another turn.
    fn ring(&self) {
        self.busy
            .set(self.bell.post_message(&JsValue::NULL).is_ok());
    }

    fn take_one(&self) {
        let turn = self.desk.borrow_mut().turn();
        match turn {
            Turn::Idle => self.busy.set(false),
            Turn::Busy => self.ring(),
            Turn::Done {
                id,
                generation,
                effort,
                answer,
            } => {
                let answer = Reply::Answer {
                    id,
                    generation,
                    effort,
                    answer,
                };
                say(&self.scope, &answer);
                self.ring();
            }
        }
    }
}

fn say(scope: &DedicatedWorkerGlobalScope, reply: &Reply) {
    if let Ok(text) = serde_json::to_string(reply) {
        // A text can always be copied over.
        scope.post_message(&text.into()).ok();
    }
}
