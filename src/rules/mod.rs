//! What follows from a situation: one file a topic, each with its limits, actions and cautions.

use crate::finding::Finding;
use crate::situation::Situation;

/// Checks one trailer's situation and returns every finding that holds for what the message bears on, worst first.
pub fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let _ = situation;
    Vec::new()
}
