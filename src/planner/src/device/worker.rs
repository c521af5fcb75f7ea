//! The page's side of the worker: started when first needed, started again when it dies, asked anew with every change.

use crate::reckon::{Effort, Question, Reply, Request};
use cook_model::plan::outlook::Outlook;
use js_sys::Array;
use leptos::prelude::document;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use web_sys::{HtmlLinkElement, MessageEvent, Worker, WorkerOptions, WorkerType};

/// The file that starts the worker; it waits for the app's own compiled module.
const BOOT: &str = "worker_boot.js";
/// A worker that dies this often without an answer between is not started again until the next change.
const MOST_DEATHS: u32 = 3;

/// What came of a question.
pub enum Heard {
    /// An answer to the latest question.
    Answer {
        /// How much work it is worth.
        effort: Effort,
        /// The answer.
        outlook: Box<Outlook>,
    },
    /// The worker died too often.
    Broken,
}

/// The worker, and the question it is to answer.
#[derive(Clone)]
pub struct Reckoner {
    inner: Rc<Inner>,
}

struct Inner {
    heard: Box<dyn Fn(Heard)>,
    worker: RefCell<Option<Running>>,
    question: RefCell<Option<Question>>,
    generation: Cell<u32>,
    requests: Cell<u32>,
    deaths: Cell<u32>,
}

/// A worker with the closures that it calls.
struct Running {
    worker: Worker,
    ready: bool,
    _on_message: Closure<dyn FnMut(MessageEvent)>,
    _on_error: Closure<dyn FnMut(web_sys::Event)>,
}

impl Drop for Running {
    fn drop(&mut self) {
        self.worker.set_onmessage(None);
        self.worker.set_onerror(None);
        self.worker.terminate();
    }
}

impl Reckoner {
    /// A reckoner that calls back with every answer to the latest question.
    pub fn new(heard: impl Fn(Heard) + 'static) -> Self {
        Self {
            inner: Rc::new(Inner {
                heard: Box::new(heard),
                worker: RefCell::new(None),
                question: RefCell::new(None),
                generation: Cell::new(0),
                requests: Cell::new(0),
                deaths: Cell::new(0),
            }),
        }
    }

    /// Asks; the answer to an earlier question is not waited for any more.
    pub fn ask(&self, question: Question) {
        let inner = &self.inner;
        inner.generation.set(inner.generation.get() + 1);
        *inner.question.borrow_mut() = Some(question);
        inner.deaths.set(0);
        if inner.worker.borrow().is_none() {
            self.start();
        } else {
            self.send();
        }
    }

    fn start(&self) {
        let options = WorkerOptions::new();
        options.set_type(WorkerType::Module);
        let Ok(worker) = Worker::new_with_options(BOOT, &options) else {
            (self.inner.heard)(Heard::Broken);
            return;
        };
        let this = self.clone();
        let on_message = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
            if let Some(text) = event.data().as_string() {
                this.hear(&text);
            }
        });
        let this = self.clone();
        let on_error = Closure::<dyn FnMut(web_sys::Event)>::new(move |_| this.died());
        worker.set_onmessage(Some(on_message.as_ref().unchecked_ref()));
        worker.set_onerror(Some(on_error.as_ref().unchecked_ref()));
        *self.inner.worker.borrow_mut() = Some(Running {
            worker,
            ready: false,
            _on_message: on_message,
            _on_error: on_error,
        });
    }

    fn hear(&self, text: &str) {
        if text == "boot" {
            self.boot();
            return;
        }
        match serde_json::from_str(text) {
            Ok(Reply::Ready) => {
                if let Some(running) = self.inner.worker.borrow_mut().as_mut() {
                    running.ready = true;
                }
                self.send();
            }
            Ok(Reply::Answer {
                generation,
                effort,
                outlook,
                ..
            }) => {
                self.inner.deaths.set(0);
                if generation == self.inner.generation.get() {
                    (self.inner.heard)(Heard::Answer { effort, outlook });
                }
            }
            // Page and worker are one file; what cannot be read means that the worker is not what it should be.
            Err(_) => self.died(),
        }
    }

    /// Hands the compiled module over, so that the worker neither fetches nor compiles it again.
    fn boot(&self) {
        let script = document()
            .query_selector("link[rel=modulepreload]")
            .ok()
            .flatten()
            .and_then(|link| link.dyn_into::<HtmlLinkElement>().ok())
            .map(|link| link.href());
        let running = self.inner.worker.borrow();
        let (Some(script), Some(running)) = (script, running.as_ref()) else {
            return;
        };
        let told = Array::of2(&script.into(), &wasm_bindgen::module());
        // It fails only for what cannot be copied; a text and a module can.
        running.worker.post_message(&told).ok();
    }

    /// Sends the question, once for each effort. A worker that is not ready yet is sent it when it is.
    fn send(&self) {
        let inner = &self.inner;
        let running = inner.worker.borrow();
        let question = inner.question.borrow();
        let (Some(running), Some(question)) = (running.as_ref(), question.as_ref()) else {
            return;
        };
        if !running.ready {
            return;
        }
        for effort in Effort::ALL {
            inner.requests.set(inner.requests.get().wrapping_add(1));
            let request = Request {
                id: inner.requests.get(),
                generation: inner.generation.get(),
                effort,
                question: question.clone(),
            };
            if let Ok(text) = serde_json::to_string(&request) {
                // A text can always be copied over.
                running.worker.post_message(&text.into()).ok();
            }
        }
    }

    fn died(&self) {
        let inner = &self.inner;
        // The worker's own error handler may be what is running: it must not be dropped while it runs.
        let dead = inner.worker.borrow_mut().take();
        let this = self.clone();
        leptos::prelude::queue_microtask(move || {
            drop(dead);
            let inner = &this.inner;
            inner.deaths.set(inner.deaths.get() + 1);
            if inner.deaths.get() >= MOST_DEATHS {
                (inner.heard)(Heard::Broken);
            } else if inner.worker.borrow().is_none() {
                this.start();
            }
        });
    }
}
