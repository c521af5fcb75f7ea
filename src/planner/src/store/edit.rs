//! What a change was about, for the line that offers to take it back.

use cook_model::handover::identity::{CookerId, CrewId, DishId, ExtraId, OwnStepId};
use cook_model::plan::StepKey;
use cook_model::provisions::shopping::Item;

/// A change of a plan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Edit {
    /// Its name.
    Name,
    /// The serving moment.
    Serving,
    /// Who comes.
    Guests,
    /// How much they eat.
    Appetite,
    /// Place and weather.
    Place,
    /// How sure the table is to be.
    Promise,
    /// Who is served.
    Audience,
    /// Somebody of the crew.
    Crew(CrewId),
    /// Somebody joined the crew, by name.
    CrewJoined(String),
    /// Somebody left it.
    CrewLeft(String),
    /// A cooker.
    Cooker(CookerId),
    /// A cooker came.
    CookerCame(String),
    /// A cooker went.
    CookerWent(String),
    /// A dish.
    Dish(DishId),
    /// A dish came on the menu.
    DishAdded(String),
    /// A dish was taken off the menu.
    DishTakenOff(String),
    /// Another piece was taken for a dish, by name.
    PieceTaken(String),
    /// A line of the shopping list.
    Line(Item),
    /// A thing of one's own on the list.
    Extra(ExtraId),
    /// A thing of one's own came on the list.
    ExtraAdded(String),
    /// A thing of one's own was taken off it.
    ExtraTakenOff(String),
    /// Habits of the kitchen.
    Supplies,
    /// The currency of all prices.
    Currency,
    /// A step was moved, and is pinned there.
    StepMoved(StepKey),
    /// A step was moved a little, key by key.
    StepNudged(StepKey),
    /// A step was pinned where it is.
    StepPinned(StepKey),
    /// A pin was taken out.
    StepUnpinned(StepKey),
    /// How long a step takes.
    StepTakes(StepKey),
    /// A step of one's own.
    OwnStep(OwnStepId),
    /// A step of one's own came on the sheet.
    OwnStepAdded(String),
    /// A step of one's own was taken off it.
    OwnStepTakenOff(String),
    /// A file was merged in.
    TakenIn,
}

impl Edit {
    /// Whether several of these in a row are taken back together, as the taps on one stepper are.
    #[must_use]
    pub const fn runs_together(&self) -> bool {
        !matches!(
            self,
            Self::CrewJoined(_)
                | Self::CrewLeft(_)
                | Self::CookerCame(_)
                | Self::CookerWent(_)
                | Self::DishAdded(_)
                | Self::DishTakenOff(_)
                | Self::PieceTaken(_)
                | Self::ExtraAdded(_)
                | Self::ExtraTakenOff(_)
                | Self::StepMoved(_)
                | Self::StepPinned(_)
                | Self::StepUnpinned(_)
                | Self::OwnStepAdded(_)
                | Self::OwnStepTakenOff(_)
                | Self::TakenIn
        )
    }
}
