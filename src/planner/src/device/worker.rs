//! The page's side of the worker: started when first needed, started again when it dies, asked anew with every change.

use crate::reckon::{Answer, Effort, Line, Question, Reply, Request};
use js_sys::Array;
use leptos::prelude::document;
use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use web_sys::{HtmlLinkElement, MessageEvent, Worker, WorkerOptions, WorkerType};

/// The file that starts the worker; it waits for the app's own compiled module.
const BOOT: &str = "worker_boot.js";
/// A worker that dies this often without an answer between is not started again until the next change.
const MOST_DEATHS: u32 = 3;

/// What came of a question.
pub enum Heard {
    /// An answer to the latest question of its line.
    Answer {
        /// How much work it is worth.
        effort: Effort,
        /// The answer.
        answer: Answer,
    },
    /// The worker died too often.
    Broken,
}

/// The worker, and the questions it is to answer.
#[derive(Clone)]
pub struct Reckoner {
    inner: Rc<Inner>,
}

struct Inner {
    heard: Box<dyn Fn(Heard)>,
    worker: RefCell<Option<Running>>,
    asked: RefCell<BTreeMap<Line, Asked>>,
    requests: Cell<u32>,
    deaths: Cell<u32>,
}

/// What is asked in a line.
#[derive(Default)]
struct Asked {
    generation: u32,
    questions: Vec<Question>,
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
    /// A reckoner that calls back with every answer to the latest questions.
    pub fn new(heard: impl Fn(Heard) + 'static) -> Self {
        Self {
            inner: Rc::new(Inner {
                heard: Box::new(heard),
                worker: RefCell::new(None),
                asked: RefCell::new(BTreeMap::new()),
                requests: Cell::new(0),
                deaths: Cell::new(0),
            }),
        }
    }

    /// Asks all questions of a line; answers to earlier ones are not waited for any more. None: nothing is asked.
    pub fn ask(&self, line: Line, questions: Vec<Question>) {
        let inner = &self.inner;
        {
            let mut asked = inner.asked.borrow_mut();
            let asked = asked.entry(line).or_default();
            asked.generation += 1;
            asked.questions = questions;
        }
        inner.deaths.set(0);
        if inner.worker.borrow().is_none() {
            self.start();
        } else {
            self.send(line);
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
                self.send(Line::Outlook);
                self.send(Line::Trial);
            }
            Ok(Reply::Answer {
                generation,
                effort,
                answer,
                ..
            }) => {
                self.inner.deaths.set(0);
                if self.is_newest(answer.line(), generation) {
                    (self.inner.heard)(Heard::Answer { effort, answer });
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

    fn is_newest(&self, line: Line, generation: u32) -> bool {
        let asked = self.inner.asked.borrow();
        asked
            .get(&line)
            .is_some_and(|asked| asked.generation == generation)
    }

    /// Sends the questions of a line, once for each effort. A worker that is not ready yet is sent them when it is.
    fn send(&self, line: Line) {
        let inner = &self.inner;
        let running = inner.worker.borrow();
        let asked = inner.asked.borrow();
        let (Some(running), Some(asked)) = (running.as_ref(), asked.get(&line)) else {
            return;
        };
        if !running.ready {
            return;
        }
        for effort in Effort::ALL {
            for question in &asked.questions {
                inner.requests.set(inner.requests.get().wrapping_add(1));
                let request = Request {
                    id: inner.requests.get(),
                    generation: asked.generation,
                    effort,
                    question: question.clone(),
                };
                if let Ok(text) = serde_json::to_string(&request) {
                    // A text can always be copied over.
                    running.worker.post_message(&text.into()).ok();
                }
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
