//! Fireside: the day in the yard.
//!
//! Plain modules say what there is: [`due`] what comes next, [`fire`] when the fire wants feeding, [`moment`] what a key
//! writes, [`expected`] and [`ladder`] what a reading may be, [`odd`] what is asked about, [`picture`] the drawing,
//! [`telling`] when and by whom. The views only show what these say, and every entry goes through [`yard`].

pub mod course;
pub mod due;
pub mod expected;
pub mod fire;
pub mod interruption;
pub mod journal_view;
pub mod keypad;
pub mod keys;
pub mod ladder;
pub mod left_out;
pub mod marks;
pub mod moment;
pub mod more;
pub mod odd;
pub mod picture;
pub mod plate;
pub mod reading;
pub mod tabs;
pub mod telling;
pub mod when_who;
pub mod yard;

use crate::store::use_store;
use course::Course;
use journal_view::{EntrySlip, JournalList};
use keys::LogKeys;
use left_out::LeftOut;
use leptos::prelude::*;
use marks::{FedSlip, FeelSlip, MarkSlip};
use more::MoreSlip;
use plate::NextPlate;
use reading::{CoreSlip, PitSlip};
use tabs::Tabs;
use yard::{Over, Yard};

/// The screen.
#[component]
pub fn Fireside() -> impl IntoView {
    let yard = Yard::begin(use_store());
    provide_context(yard);
    let slip = move || {
        let over = yard.over.get()?;
        if let Over::Entry(id) = over {
            return Some(view! { <EntrySlip id /> }.into_any());
        }
        let dish = yard.dish.get_untracked()?;
        let cooker = yard.read(|day| day.cooker(Some(dish))).flatten();
        match (over, cooker) {
            (Over::Core, _) => Some(view! { <CoreSlip dish /> }.into_any()),
            (Over::Pit, Some(cooker)) => Some(view! { <PitSlip cooker /> }.into_any()),
            (Over::Fed, Some(cooker)) => Some(view! { <FedSlip cooker /> }.into_any()),
            (Over::Feel, _) => Some(view! { <FeelSlip dish /> }.into_any()),
            (Over::More, _) => Some(view! { <MoreSlip dish /> }.into_any()),
            (Over::Spray | Over::Turn | Over::Moment(_), _) => {
                Some(view! { <MarkSlip dish over /> }.into_any())
            }
            (Over::Pit | Over::Fed, None) | (Over::Entry(_), _) => None,
        }
    };
    view! {
        <main class="fireside">
            <NextPlate />
            <div class="a2">
                <Tabs />
                <Course />
            </div>
            <LeftOut />
            <JournalList />
        </main>
        <LogKeys />
        {slip}
    }
}
