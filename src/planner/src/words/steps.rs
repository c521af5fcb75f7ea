//! What is done in a step: its verb on a ticket.

use cook_model::plan::outlook::StepKind;

/// The verb on a ticket: a few words at most.
#[must_use]
pub const fn verb(kind: StepKind) -> &'static str {
    match kind {
        StepKind::Buy => "Buy",
        StepKind::Thaw => "Thaw",
        StepKind::Trim => "Trim",
        StepKind::Salt => "Salt",
        StepKind::Rub => "Rub",
        StepKind::Light => "Light the fire",
        StepKind::SteadyFire => "Fire steady",
        StepKind::Feed => "Feed the fire",
        StepKind::PitChange => "Change the pit",
        StepKind::On => "On",
        StepKind::ProbeIn => "Probe in",
        StepKind::Turn => "Turn",
        StepKind::Spray => "Spray",
        StepKind::Wrap => "Wrap",
        StepKind::Probe => "Feel with the probe",
        StepKind::Off => "Off",
        StepKind::Hold => "Into the box",
        StepKind::Slice => "Slice",
        StepKind::Serve => "Serve",
        StepKind::Chill => "Chill what is left",
        StepKind::Make => "Make",
    }
}
