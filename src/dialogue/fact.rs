//! The facts that are asked after an incident.

use serde::{Deserialize, Serialize};

/// One fact of an incident, in the order they are asked. The list is common practice in accident reports, no source.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Fact {
    /// What happened.
    What,
    /// When.
    When,
    /// Where: which side, step, stall.
    Where,
    /// Who was involved.
    Who,
    /// Whether and how somebody was hurt.
    Injured,
    /// Who was told: the office, the client, the insurer, the authorities.
    Told,
    /// Who saw it.
    Witnesses,
    /// Which photos there are and who has them.
    Photos,
}

impl Fact {
    /// Every fact, in the order they are asked.
    pub const ALL: [Fact; 8] = [
        Fact::What,
        Fact::When,
        Fact::Where,
        Fact::Who,
        Fact::Injured,
        Fact::Told,
        Fact::Witnesses,
        Fact::Photos,
    ];

    /// Returns the word for it in texts and exports.
    pub fn code(self) -> &'static str {
        match self {
            Fact::What => "what",
            Fact::When => "when",
            Fact::Where => "where",
            Fact::Who => "who",
            Fact::Injured => "injured",
            Fact::Told => "told",
            Fact::Witnesses => "witnesses",
            Fact::Photos => "photos",
        }
    }
}
