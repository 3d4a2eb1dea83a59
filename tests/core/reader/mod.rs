//! The reader: messages of crews, and what must come of them.

mod any_text;
mod compare;
mod dangers;
mod desk;
mod figures;
mod forms;
mod outside;
mod score;
mod slips;
mod when;
mod words;
