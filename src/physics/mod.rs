//! (in the making)
pub mod forecast;
