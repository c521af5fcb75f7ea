//! What is said when the app breaks.

/// Heading of the plain screen.
pub const HEADING: &str = "Something broke";
/// What became of the work.
pub const COMFORT: &str = "Your plans are on this device, up to the last change that was shown as saved. \
    Keep a copy first if you like, then start again.";
/// The link that starts the page again.
pub const START_AGAIN: &str = "Start again";
/// The fold with what the program says.
pub const DETAILS: &str = "What the program says";

/// The link that keeps a copy of a plan.
#[must_use]
pub fn keep_a_copy(plan: &str) -> String {
    if plan.is_empty() {
        "Keep a copy of the unnamed plan".to_owned()
    } else {
        format!("Keep a copy of {plan}")
    }
}
