//! The table of facts.toml: what a thing in a state means.

use crate::heard::{Event, Fault};
use crate::words::concept::{Concept, Noun, State};
use crate::words::vocab::WordsError;
use std::collections::BTreeMap;

/// What a noun in a state means.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::words) enum Outcome {
    /// Something done.
    Event(Event),
    /// Something wrong.
    Fault(Fault),
    /// Something no longer wrong.
    Clears(Fault),
    /// It could be two things: ask back, with the reason.
    Unclear(&'static str),
    /// Understood: nothing to log.
    Nothing,
}

/// The table of nouns and states.
#[derive(Debug, Clone, Default)]
pub(in crate::words) struct Pairs {
    pub(super) table: Vec<Vec<Option<Outcome>>>,
    pub(super) any: Vec<Option<Outcome>>,
}

impl Pairs {
    /// Reads the table: a TOML table for each noun, with what each state of it means.
    pub(in crate::words) fn parse(file: &str, text: &str) -> Result<Pairs, WordsError> {
        let read: BTreeMap<String, BTreeMap<String, String>> =
            toml::from_str(text).map_err(|error| WordsError::Toml {
                file: file.into(),
                message: error.to_string(),
            })?;
        let mut pairs = Pairs {
            table: vec![vec![None; State::ALL.len()]; Noun::ALL.len()],
            any: vec![None; State::ALL.len()],
        };
        for (noun, states) in &read {
            for (state, outcome) in states {
                let unknown = || WordsError::Unknown {
                    file: file.into(),
                    is: format!("{noun} {state} = {outcome}"),
                };
                let state = State::from_code(state).ok_or_else(unknown)?;
                let outcome = Outcome::parse(outcome).ok_or_else(unknown)?;
                let row = if noun == "any" {
                    &mut pairs.any
                } else {
                    let noun = Noun::from_code(noun).ok_or_else(unknown)?;
                    &mut pairs.table[noun as usize]
                };
                row[state as usize] = Some(outcome);
            }
        }
        Ok(pairs)
    }

    /// Returns what `noun` in `state` means.
    pub(in crate::words) fn of(&self, noun: Noun, state: State) -> Option<Outcome> {
        let state = if state == State::TurnedOn {
            State::On
        } else {
            state
        };
        let row = &self.table[noun as usize];
        // what went out and has no word of its own for that is dead
        row[state as usize].or_else(|| row[State::Dead as usize].filter(|_| state == State::Lost))
    }

    /// Returns what `state` means where no noun fits it.
    pub(in crate::words) fn any(&self, state: State) -> Option<Outcome> {
        self.any[state as usize]
    }
}

/// What a thing in a state may have asked back.
const ASKED: [&str; 6] = [
    "outlet-power",
    "mains-or-lights",
    "cords-live",
    "stopped-where",
    "done-in-part",
    "nearly-level",
];

impl Outcome {
    fn parse(text: &str) -> Option<Outcome> {
        Some(match Concept::parse(text) {
            Some(Concept::Event(event)) => Outcome::Event(event),
            Some(Concept::Fault(fault)) => Outcome::Fault(fault),
            Some(Concept::Clears(fault)) => Outcome::Clears(fault),
            _ if text == "nothing" => Outcome::Nothing,
            _ => {
                let why = text.strip_prefix("unclear ")?;
                Outcome::Unclear(ASKED.into_iter().find(|asked| *asked == why)?)
            }
        })
    }
}
