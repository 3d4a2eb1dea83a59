//! How a message was read, for people who extend the word files.

use std::fmt;

use super::item::{Form, What};
use super::read::Reading;
use super::scope::clock;
use crate::heard::{Heard, Remark, Taken};

/// How a message was read.
#[derive(Debug, Clone)]
pub struct Explained {
    /// Each piece with what it became.
    pub pieces: Vec<(String, String)>,
    /// Spellings that were mended.
    pub taken: Vec<Taken>,
    /// What it comes to.
    pub heard: Heard,
}

/// Tells how `reading` came about.
pub(super) fn explain(reading: Reading<'_>) -> Explained {
    let pieces = (0..reading.items.len())
        .filter(|at| !matches!(reading.items[*at].what, What::Break))
        .map(|at| {
            (
                reading.piece(at, at + 1).to_string(),
                describe(&reading, at),
            )
        })
        .collect();
    Explained {
        pieces,
        taken: reading.heard.taken.clone(),
        heard: reading.heard,
    }
}

fn describe(reading: &Reading<'_>, at: usize) -> String {
    match reading.items[at].what {
        What::Units(g) => {
            let names: Vec<&str> = reading.groups[g].names.iter().map(|n| n.as_str()).collect();
            format!("trailer {}", names.join(", "))
        }
        What::Is(concept) => concept.to_string(),
        What::Number(number) => {
            let mut said = match number.form {
                Form::Part => format!("{:.3} of one", number.value),
                _ => format!("number {}", number.value),
            };
            if let Some(unit) = number.unit {
                said += &format!(" {}", unit.code());
            }
            if number.bound {
                said += ", no plain value";
            }
            said
        }
        What::Range(from, to, _) => format!("between {from} and {to}"),
        What::Clock(minutes) => format!("the time {}", clock(minutes)),
        What::Labelled => "a number with a use of its own".into(),
        What::Task(task) => format!("task {task}"),
        What::Circuit(circuit) => format!("circuit {circuit}"),
        What::Code => "perhaps a trailer's name".into(),
        What::Garbled => "neither word nor number".into(),
        What::Word { ordinary: true } => "a word that says nothing here".into(),
        What::Word { ordinary: false } => "not known".into(),
        What::Sign('\u{fffd}') => "a picture".into(),
        What::Sign(sign) => format!("sign {sign}"),
        What::Break => "the end of a line".into(),
        What::Gone => "taken up by another".into(),
    }
}

impl fmt::Display for Explained {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (piece, meaning) in &self.pieces {
            writeln!(f, "  {piece:<24} {meaning}")?;
        }
        for taken in &self.taken {
            writeln!(f, "  `{}` taken for `{}`", taken.typed, taken.read)?;
        }
        let notes = |f: &mut fmt::Formatter<'_>, title: &str, remarks: &[Remark]| {
            remarks
                .iter()
                .try_for_each(|r| writeln!(f, "  {title}: `{}` ({})", r.text, r.why))
        };
        notes(f, "set aside", &self.heard.set_aside)?;
        notes(f, "unclear", &self.heard.unclear)
    }
}
