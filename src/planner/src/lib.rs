//! Longcook, the app.

pub mod screens;
