//! What follows from a situation: one file a topic, each with its limits, actions and cautions.
//!
//! A rule looks at one [`Situation`] and says one thing, or nothing. It speaks where the message bears on it, reckons only
//! through [`crate::physics`], and hands back its numbers with where each came from.

mod bearing;

mod cold;
mod crew;
mod crowd;
mod first;
mod heat;
mod power;
mod site;
mod tanks;
mod together;
mod tow;
mod trouble;
mod waste;
mod water;

pub use cold::FREEZE_F;
pub use crew::{Silence, is_night, silence, silence_in};
pub use first::first_words;
pub use power::cord::{CORD_NOTE_PCT, CORD_WARN_PCT};
pub use power::plug_in::{PlugIn, plug_in};
pub use power::{GeneratorSize, circuits_to_feed, generator_size};
pub use site::set_up::set_up;
pub use site::{chocks_out, icy_steps, unsafe_act};
pub use tow::{leaves_a_site, leaving};
pub use trouble::steps::{Asks, Sought, Step, Then, WaterFrom, course_steps, last_resort, steps};

use crate::finding::Finding;
use crate::heard::Fault;
use crate::situation::Situation;

/// One rule: what it has to say, if anything.
type Rule = fn(&Situation<'_>) -> Option<Finding>;

/// How a source is given for what the trade does and no publication states.
const COMMON_PRACTICE: &str = "common practice, no source";

/// The rules, by topic. Their order does not matter: findings are put in order at the end.
const TOPICS: &[&[Rule]] = &[
    water::RULES,
    waste::RULES,
    cold::RULES,
    heat::RULES,
    power::RULES,
    crowd::RULES,
    site::RULES,
    tow::RULES,
    crew::RULES,
];

/// Checks one trailer's situation and returns every finding that holds for what the message bears on, worst first: by
/// level, then urgency, then the registry's order.
pub fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let mut found: Vec<Finding> = TOPICS
        .iter()
        .flat_map(|rules| rules.iter())
        .filter_map(|rule| rule(situation))
        .chain(trouble::check(situation))
        .collect();
    for finding in &mut found {
        finding.unit = Some(situation.spec.id.clone());
    }
    found.sort_by_key(|finding| (finding.order(), finding.id));
    let mut found = once(found);
    together::settle(&mut found);
    // whatever is told while a shock stands, nothing is switched on
    if situation.now.has(Fault::Shock) {
        together::keep_power_off(&mut found);
    }
    found
}

/// Keeps the first, and so the worst, of each id: a fault and a reading may raise the same finding.
fn once(found: Vec<Finding>) -> Vec<Finding> {
    let mut kept: Vec<Finding> = Vec::with_capacity(found.len());
    for finding in found {
        if kept.iter().all(|other| other.id != finding.id) {
            kept.push(finding);
        }
    }
    kept
}
