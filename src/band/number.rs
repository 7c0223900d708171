//! Numbers on their way from formulas to samples.

#[expect(clippy::cast_possible_truncation, reason = "audio is single precision")]
pub(super) fn single(value: f64) -> f32 {
    value as f32
}

/// A number of frames; what is negative is none.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a cast from a float saturates"
)]
pub(super) fn whole(frames: f64) -> usize {
    frames as usize
}

/// From 0 to `most`; what is no number is 0, so that it never gets into a loop (`clamp` would let it).
pub(super) fn within(value: f32, most: f32) -> f32 {
    value.max(0.0).min(most)
}
