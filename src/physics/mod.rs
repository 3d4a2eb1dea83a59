//! The formulas of the trade, each with its source; nothing here decides anything.
//!
//! Public signatures carry `uom` quantities where mixing units would hurt; [`units`] makes and reads them in the units
//! that crews speak. Every function is total: finite inputs within the documented range give a finite answer, and "never"
//! is a `None`. Inputs outside the range are brought back to it, which each function says. [`sum`] answers a quantity by
//! its name with the same functions.

pub mod units;

pub mod water;

pub mod power;

pub mod battery;

pub mod cold;

pub mod tank;

pub mod crowd;

pub mod distance;

pub mod tow;

pub mod trouble;

pub mod kalman;

pub mod forecast;

pub mod sum;
