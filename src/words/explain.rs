//! How a message was read, for people who extend the word files.

use std::fmt;

use super::item::What;
use super::read::Reading;
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
        What::Is(concept) => format!("{concept:?}").to_lowercase(),
        What::Word { ordinary: true } => "a word that says nothing here".into(),
        What::Word { ordinary: false } => "not known".into(),
        other => format!("{other:?}").to_lowercase(),
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
