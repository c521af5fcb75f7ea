//! From shares to whole things.

/// So many whole things that none is missing: rounded up, a billionth forgiven so that a weight told in pounds and back
/// asks for no further one. Nothing, or less, or not a number, is none; too many saturates.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a saturating cast of a count that is never negative"
)]
pub(super) fn whole(share: f64) -> u32 {
    libm::ceil(share - 1e-9 * (1.0 + share.abs())).max(0.0) as u32
}

/// So many whole things fit: rounded down.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a saturating cast of a count that is never negative"
)]
pub(super) fn fitting(share: f64) -> u32 {
    libm::floor(share).max(0.0) as u32
}
