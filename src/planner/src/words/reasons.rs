//! Why a step stands where it stands, in words.

use crate::format::{self, Formats};
use crate::screens::run_sheet::reason::Reason;
use cook_model::units::{Temperature, TimeSpan};

/// Nearer to another step than this, a span is not worth saying.
const AT_ONCE: TimeSpan = TimeSpan::from_minutes(2.0);

/// A reason in words.
#[must_use]
pub fn reason(reason: Reason, formats: &Formats) -> String {
    match reason {
        Reason::Promise {
            earliest,
            latest,
            odds,
            serving,
        } => {
            let odds = format::odds(odds);
            let (serving, latest) = (formats.time(serving), formats.time(latest));
            match earliest {
                Some(earliest) => format!(
                    "Table-ready by {serving}: {odds}. From {} on it holds well till then, and up to {latest} the promise is kept.",
                    formats.time(earliest)
                ),
                None => {
                    format!("Table-ready by {serving}: {odds}. Up to {latest} the promise is kept.")
                }
            }
        }
        Reason::PromiseBroken { odds, serving } => format!(
            "Table-ready by {}: {}, less than was promised.",
            formats.time(serving),
            format::odds(odds),
        ),
        Reason::Core(core) => format!("When the core reaches {}.", formats.temperature(core)),
        Reason::Tender(core) => format!(
            "When it is tender. Begin to probe near {} in the core.",
            formats.temperature(core)
        ),
        Reason::AfterOn(span) if span < AT_ONCE => "As it goes on.".to_owned(),
        Reason::AfterOn(span) => format!("{} after it goes on.", formats.span(span)),
        Reason::BeforeOn(span) if span < AT_ONCE => "Just before it goes on.".to_owned(),
        Reason::BeforeOn(span) => format!("{} before it goes on.", formats.span(span)),
        Reason::FireFor(on) => format!(
            "So that the fire is clean and steady when food goes on at {}.",
            formats.time(on)
        ),
        Reason::AfterOff {
            stays_hot: Some(span),
        } => format!(
            "Once it is off and has vented. 18 in 20 stay above {} for {} or longer; probe it.",
            formats.temperature(Temperature::from_celsius(60.0)),
            formats.span(span)
        ),
        Reason::AfterOff { stays_hot: None } => "Once it is off and has vented.".to_owned(),
        Reason::BeforeServing(serving) => {
            format!("So that it is on the table at {}.", formats.time(serving))
        }
        Reason::Serving => "The hour you chose.".to_owned(),
        Reason::AfterServing => "As soon as people have eaten.".to_owned(),
        Reason::Leads => "Early enough for what comes after it.".to_owned(),
        Reason::FireWants(Some(span)) => {
            format!(
                "This fire wants feeding about every {}.",
                formats.span(span)
            )
        }
        Reason::FireWants(None) => "This fire wants feeding then.".to_owned(),
        Reason::Programme => "The pit programme of this cooker says so.".to_owned(),
    }
}
