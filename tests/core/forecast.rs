//! The tank forecast: what moves it, what it must not do, and how right it is.

mod calibration;
mod events;
