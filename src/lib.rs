//! hosebib reads what the crews of a restroom-trailer company text in, checks it against each unit's limits and the
//! site, answers with actions and cautions, and remembers.
//!
//! Modules stand in the order of the work, and a module names only modules before it:
//!
//! - what is spoken of: [`quantity`], [`heard`], [`finding`];
//! - what a message means: [`words`];
//! - what the company states, and the formulas of the trade: [`fleet`], [`physics`];
//! - what is known: [`dialogue`] (what is open with a person), [`book`] (all records, folded), [`outlook`] (what is
//!   coming), [`situation`] (one trailer as the rules see it);
//! - what follows and how it is said: [`rules`], [`reply`];
//! - one turn, from a message to what it changes and what is answered: [`desk`].
//!
//! Everything up to the desk is free of I/O, clocks and chance. Around it stand [`store`], which keeps the records, and
//! with their features `chat`, the live service, and `cli`, the command line.
//!
//! A message is heard before anybody knows who sent it or which trailers exist:
//!
//! ```
//! use hosebib::quantity::TemperatureScale;
//! use hosebib::words::{Reader, to_json};
//!
//! let text = "unit 12 pressure 95 tank 3/4 temp -5";
//! let heard = Reader::new().hear(text, TemperatureScale::F);
//! let meaning = to_json(text, &heard);
//! assert_eq!(meaning["entries"][0]["readings"]["pressure_psi"], 95.0);
//! assert_eq!(meaning["unclear"], serde_json::json!([]));
//! ```

#![cfg_attr(test, allow(clippy::unwrap_used))]

pub mod quantity;

pub mod heard;

pub mod finding;

pub mod words;

pub mod fleet;

pub mod physics;

pub mod dialogue;

pub mod book;

pub mod outlook;

pub mod situation;

pub mod rules;

pub mod reply;

pub mod desk;

pub mod store;

#[cfg(all(feature = "store", feature = "telegram"))]
pub mod chat;

#[cfg(feature = "cli")]
pub mod cli;
