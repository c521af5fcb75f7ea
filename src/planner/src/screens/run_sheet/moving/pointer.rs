//! Fingers, mice and pens. What is measured is measured when a ticket is picked up; in a frame nothing is read from the
//! page, and nothing but a transform is written.

use super::super::board::Board;
use super::super::frame::Direction;
use super::hand::Hand;
use super::session::{Moving, Verdict};
use crate::store::Edit;
use cook_model::plan::StepKey;
use cook_model::schedule::To;
use leptos::prelude::*;
use std::time::Duration;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement, PointerEvent};

/// A browser's usual size of letters, CSS pixels: lengths of the sheet are told in it and grow with it.
const LETTERS: f64 = 16.0;
/// Between a ticket in hand and what is beside it.
const BESIDE: f64 = 6.0;

/// A ticket that a pointer has picked up.
pub struct Grab {
    pointer: i32,
    key: StepKey,
    hand: Hand,
    direction: Direction,
    /// What rides with the hand: the ticket, beside its lane, and the handle.
    ticket: HtmlElement,
    handle: Option<HtmlElement>,
    beside: (f64, f64),
    scroller: Option<Element>,
    begun: bool,
    frame_asked: bool,
    judging: bool,
}

/// Where the grab is kept: nowhere else than in this page's thread.
pub type Held = StoredValue<Option<Grab>, LocalStorage>;

fn along(direction: Direction, event: &PointerEvent) -> f64 {
    match direction {
        Direction::Down => f64::from(event.client_y()),
        Direction::Across => f64::from(event.client_x()),
    }
}

impl Board {
    /// A pointer goes down on a ticket's handle, or with a mouse on the ticket itself.
    pub fn pointer_down(self, event: &PointerEvent, key: StepKey, on_handle: bool) {
        if event.button() != 0 || !event.is_primary() {
            return;
        }
        // A finger or pen on the ticket itself scrolls the page.
        if !on_handle && event.pointer_type() != "mouse" {
            return;
        }
        let target = event.current_target();
        let Some(pressed) = target.and_then(|target| target.dyn_into::<Element>().ok()) else {
            return;
        };
        if let Some(grab) = self.measured(event, key) {
            // Where the pointer is gone already there is nothing to capture.
            pressed.set_pointer_capture(event.pointer_id()).ok();
            self.grab.set_value(Some(grab));
        }
    }

    fn measured(self, event: &PointerEvent, key: StepKey) -> Option<Grab> {
        self.steps_of(key)?;
        let from = self.begins(key)?;
        let sheet = self.sheet.get_untracked()?;
        let direction = sheet.frame.direction;
        let page = document().document_element()?;
        let style = window().get_computed_style(&page).ok()??;
        let letters = style.get_property_value("font-size").ok()?;
        let letters: f64 = letters.trim_end_matches("px").parse().unwrap_or(LETTERS);
        let ticket = element(&key.to_string())?;
        let handle = element(&handle_id(key));
        let there = ticket.get_bounding_client_rect();
        let wide = handle
            .as_ref()
            .map_or(0.0, |handle| handle.get_bounding_client_rect().width());
        let find = |selector: &str| document().query_selector(selector).ok().flatten();
        let box_of = |selector: &str| Some(find(selector)?.get_bounding_client_rect());
        let at = along(direction, event);
        let (sight, scrolls, beside, scroller) = match direction {
            Direction::Down => {
                let first = box_of(".lane-heads").map_or(0.0, |heads| heads.bottom().max(0.0));
                let height = f64::from(page.client_height());
                let last = box_of(".dock").map_or(height, |dock| dock.top());
                let gone = window().scroll_y().unwrap_or(0.0);
                let most = (f64::from(page.scroll_height()) - height).max(gone);
                let left = (there.width() + wide).min(there.left() - 2.0).max(0.0);
                ((first, last), (-gone, most - gone), (-left, 0.0), None)
            }
            Direction::Across => {
                let scroller = find(".sheet-scroll")?;
                let seen = scroller.get_bounding_client_rect();
                let gone = f64::from(scroller.scroll_left());
                let most = f64::from(scroller.scroll_width() - scroller.client_width());
                let up = (0.0, -there.height() - BESIDE);
                (
                    (seen.left(), seen.right()),
                    (-gone, most.max(gone) - gone),
                    up,
                    Some(scroller),
                )
            }
        };
        Some(Grab {
            pointer: event.pointer_id(),
            key,
            hand: Hand {
                from,
                start: at,
                last: at,
                scrolled: 0.0,
                scrolls,
                sight,
                hour: sheet.hour * letters / LETTERS,
                sheet: (sheet.scope.axis.start, sheet.scope.axis.end),
            },
            direction,
            ticket,
            handle,
            beside,
            scroller,
            begun: false,
            frame_asked: false,
            judging: false,
        })
    }

    /// A pointer moves that has a ticket.
    pub fn pointer_move(self, event: &PointerEvent) {
        let mut begins = None;
        let mut asks = false;
        self.grab.update_value(|grab| {
            let Some(grab) = grab.as_mut() else { return };
            if grab.pointer != event.pointer_id() {
                return;
            }
            grab.hand.last = along(grab.direction, event);
            if !grab.begun && grab.hand.lands() != grab.hand.from {
                grab.begun = true;
                begins = Some((grab.key, grab.hand.from));
            }
            asks = grab.begun && !std::mem::replace(&mut grab.frame_asked, grab.begun);
        });
        if let Some((key, from)) = begins {
            self.choose(super::super::board::Chosen::Step(key));
            self.mover.moving.set(Some(Moving {
                key,
                from,
                lands: from,
                held: true,
                verdict: Verdict::Allowed(Vec::new()),
            }));
        }
        if asks {
            request_animation_frame(move || self.frame());
        }
    }

    /// One frame of a drag: the ticket follows the hand.
    fn frame(self) {
        let (mut again, mut judges) = (false, false);
        self.grab.update_value(|grab| {
            let Some(grab) = grab.as_mut() else { return };
            let by = grab.hand.scroll();
            match (&grab.scroller, grab.direction) {
                (Some(scroller), _) if by != 0.0 => scroller.scroll_by_with_x_and_y(by, 0.0),
                (None, Direction::Down) if by != 0.0 => window().scroll_by_with_x_and_y(0.0, by),
                _ => {}
            }
            let way = grab.hand.way();
            let (right, down) = match grab.direction {
                Direction::Down => (grab.beside.0, way),
                Direction::Across => (way, grab.beside.1),
            };
            transform(&grab.ticket, right, down);
            if let Some(handle) = &grab.handle {
                match grab.direction {
                    Direction::Down => transform(handle, 0.0, way),
                    Direction::Across => transform(handle, way, 0.0),
                }
            }
            again = by != 0.0;
            grab.frame_asked = again;
            judges = !std::mem::replace(&mut grab.judging, true);
        });
        if again {
            request_animation_frame(move || self.frame());
        }
        if judges {
            set_timeout(move || self.judge_in_hand(), Duration::ZERO);
        }
    }

    /// After a frame: what the rules say to where the ticket would land.
    fn judge_in_hand(self) {
        let mut lands = None;
        self.grab.update_value(|grab| {
            let Some(grab) = grab.as_mut() else { return };
            grab.judging = false;
            lands = Some((grab.key, grab.hand.lands()));
        });
        let Some((key, lands)) = lands else { return };
        let same = self
            .mover
            .moving
            .with_untracked(|moving| moving.as_ref().is_none_or(|moving| moving.lands == lands));
        if same {
            return;
        }
        let verdict = match self.judged(key, To::At(lands)) {
            Some(Ok(change)) => Verdict::Allowed(change.breaks),
            Some(Err(refused)) => Verdict::Refused(refused),
            None => return,
        };
        self.mover.moving.update(|moving| {
            if let Some(moving) = moving {
                moving.lands = lands;
                moving.verdict = verdict;
            }
        });
    }

    /// The pointer lets go: the ticket is set down, or was only tapped.
    pub fn pointer_up(self, event: &PointerEvent) {
        let Some(grab) = self.let_go(event.pointer_id()) else {
            return;
        };
        if !grab.begun {
            return;
        }
        let lands = grab.hand.lands();
        self.mover.moving.set(None);
        let moved = lands != grab.hand.from;
        if moved && self.make(grab.key, To::At(lands), Edit::StepMoved(grab.key)) {
            stay_under_the_hand(&grab);
        }
    }

    /// The pointer is taken away, by the browser or with Escape: the ticket goes back.
    pub fn pointer_cancel(self, event: &PointerEvent) {
        if self.let_go(event.pointer_id()).is_some() {
            self.put_back();
        }
    }

    /// Puts back what is in hand. Returns whether something was.
    pub fn drop_back(self) -> bool {
        let pointer = self
            .grab
            .with_value(|grab| grab.as_ref().map(|grab| grab.pointer));
        let held = pointer.and_then(|pointer| self.let_go(pointer));
        if held.is_some() {
            self.put_back();
        }
        held.is_some()
    }

    fn let_go(self, pointer: i32) -> Option<Grab> {
        let mut taken = None;
        self.grab.update_value(|grab| {
            if grab.as_ref().is_some_and(|grab| grab.pointer == pointer) {
                taken = grab.take();
            }
        });
        let grab = taken?;
        for element in [Some(&grab.ticket), grab.handle.as_ref()]
            .into_iter()
            .flatten()
        {
            // It fails only for a property that is set from elsewhere.
            element.style().remove_property("transform").ok();
        }
        Some(grab)
    }
}

/// A day that begins sooner or later than before must not take the ticket away from where it was set down.
fn stay_under_the_hand(grab: &Grab) {
    let (id, direction) = (grab.key.to_string(), grab.direction);
    let (last, scroller) = (grab.hand.last, grab.scroller.clone());
    request_animation_frame(move || {
        let Some(ticket) = element(&id) else { return };
        let there = ticket.get_bounding_client_rect();
        match (direction, scroller) {
            (Direction::Down, _) => {
                let dock = document().query_selector(".dock").ok().flatten();
                let seen = dock.map_or(f64::MAX, |dock| dock.get_bounding_client_rect().top());
                let middle = last.min(seen - there.height());
                let away = there.top() + there.height() / 2.0 - middle;
                window().scroll_by_with_x_and_y(0.0, away);
            }
            (Direction::Across, Some(scroller)) => {
                let away = there.left() + there.width() / 2.0 - last;
                scroller.scroll_by_with_x_and_y(away, 0.0);
            }
            (Direction::Across, None) => {}
        }
    });
}

fn transform(element: &HtmlElement, right: f64, down: f64) {
    let moved = format!("translate({right:.1}px, {down:.1}px)");
    // A browser that does not take it leaves the ticket where it is; the landing place is still shown.
    element.style().set_property("transform", &moved).ok();
}

fn element(id: &str) -> Option<HtmlElement> {
    document().get_element_by_id(id)?.dyn_into().ok()
}

/// The id of a ticket's handle.
#[must_use]
pub fn handle_id(key: StepKey) -> String {
    format!("handle-{key}")
}
