//! The reader: messages of crews, and what must come of them.

mod any_text;
mod compare;
mod desk;
mod forms;
mod score;
mod slips;
mod words;
