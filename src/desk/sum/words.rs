//! Which sum a message asks for.

use serde::Deserialize;
use std::sync::LazyLock;

use super::numbers::Kind;
use crate::desk::phrases::{PhraseList, Words};
use crate::physics::sum::{Kind as InputKind, Quantity, registry};

const SUMS: &str = include_str!("../../../grammar/replies/sums.toml");
/// A name of a quantity is meant from so many of its words on.
const NAMED_BY: usize = 2;

/// A sum to be computed: quantities, each with the key or the code of its name, and the inputs they take.
pub(super) struct Sum {
    pub(super) answers: Vec<(String, String)>,
    pub(super) takes: Vec<(String, Kind)>,
    /// Whether it wants a list, which a message cannot give.
    pub(super) needs_a_list: bool,
}

/// The sums known by words.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(in crate::desk) struct SumWords {
    sum: Vec<Entry>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Entry {
    all: Vec<PhraseList>,
    #[serde(default)]
    but: PhraseList,
    answers: Vec<(String, String)>,
    takes: Vec<(String, Kind)>,
}

impl SumWords {
    /// Returns those of the built-in file, which is parsed once.
    pub(in crate::desk) fn built_in() -> &'static SumWords {
        static BUILT_IN: LazyLock<SumWords> =
            LazyLock::new(|| toml::from_str(SUMS).expect("the built-in sums are read by a test"));
        &BUILT_IN
    }

    /// Finds the sum a message asks for: by the full name of a quantity, by its words, by most words of a quantity's name.
    pub(super) fn find(&self, folded: &str, typed: &str) -> Option<Sum> {
        let exact = typed
            .split_whitespace()
            .find_map(crate::physics::sum::quantity);
        if let Some(quantity) = exact {
            return Some(of_quantity(quantity));
        }
        let asked = folded.split_once(' ').map_or("", |(_, rest)| rest);
        let words = Words::of(asked);
        let is_in = |entry: &&Entry| {
            entry.all.iter().all(|phrases| words.hold_any(phrases)) && !words.hold_any(&entry.but)
        };
        let entry = self.sum.iter().find(is_in);
        match entry {
            Some(entry) => Some(Sum {
                answers: entry.answers.clone(),
                takes: entry.takes.clone(),
                needs_a_list: false,
            }),
            None => by_name(asked).map(of_quantity),
        }
    }

    /// The keys of the names of all sums, in order.
    pub(super) fn names(&self) -> impl Iterator<Item = &str> {
        self.sum
            .iter()
            .filter_map(|entry| entry.answers.first())
            .map(|(_, name)| name.as_str())
    }
}

/// Says a name of the registry in words: `hose_loss_ratio` as `hose loss ratio`.
pub(super) fn in_words(name: &str) -> String {
    name.replace('_', " ")
}

/// Finds the quantity of whose name a text holds the most words, two at least.
fn by_name(text: &str) -> Option<&'static Quantity> {
    let asked = Words::of(text);
    let held = |quantity: &Quantity| {
        let words = quantity.name.split('_').filter(|word| word.len() > 1);
        words
            .filter(|word| asked.hold(&word.to_lowercase()))
            .count()
    };
    registry()
        .iter()
        .flat_map(|(_, quantities)| quantities.iter())
        .map(|quantity| (held(quantity), quantity))
        .filter(|(held, quantity)| *held >= NAMED_BY || *held == 1 && !quantity.name.contains('_'))
        .max_by_key(|(held, quantity)| (*held, std::cmp::Reverse(quantity.name.len())))
        .map(|(_, quantity)| quantity)
}

fn of_quantity(quantity: &'static Quantity) -> Sum {
    let takes = quantity
        .inputs
        .iter()
        .filter(|input| matches!(input.kind, InputKind::Number(..) | InputKind::Whole(..)))
        .filter(|input| input.default.is_none())
        .map(|input| (input.name.to_owned(), Kind::of_unit(input.unit)))
        .collect();
    let list = |kind: &InputKind| {
        matches!(
            kind,
            InputKind::List(..) | InputKind::Rows(..) | InputKind::Flag | InputKind::Text
        )
    };
    Sum {
        answers: vec![(quantity.name.to_owned(), quantity.name.to_owned())],
        takes,
        needs_a_list: quantity
            .inputs
            .iter()
            .any(|input| list(&input.kind) && input.default.is_none()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::desk::phrases::plain;

    fn asked(text: &str) -> String {
        SumWords::built_in()
            .find(&plain(text), text)
            .map_or_else(String::new, |sum| sum.answers[0].0.clone())
    }

    #[test]
    fn sums_are_known_by_words_in_both_languages() {
        for (text, wanted) in [
            ("sum drop 16 amps 150 ft 14 gauge", "voltage_drop_V"),
            (
                "cuenta caída 16 amperes 150 pies calibre 14",
                "voltage_drop_V",
            ),
            ("sum hose 100 ft 3/4 8 gpm", "hose_loss_hazen_williams_psi"),
            (
                "cuenta manguera 100 pies 3/4 8 gpm",
                "hose_loss_hazen_williams_psi",
            ),
            ("sum freeze 3/4 hose 20F wind 10", "hose_hours_to_32F"),
            ("sum battery 60 uses an hour", "battery_hours_at_uses"),
            ("sum longest cord 16 amps 12 gauge", "max_cord_ft"),
            ("sum brine 15 %", "nacl_freeze_F"),
            ("sum salt 100 gal 15 %", "salt_lb_for_brine"),
            ("sum tire 80 psi 40 F 90 F", "tire_psi_after_temp"),
            ("sum reynolds 8 gpm 0.75 in", "reynolds"),
            ("sum velocity ft s 8 gpm 3/4", "velocity_ft_s"),
            ("sum h2s_idlh_ppm", "h2s_idlh_ppm"),
            ("sum nonsense", ""),
        ] {
            assert_eq!(asked(text), wanted, "{text}");
        }
    }

    #[test]
    fn every_quantity_can_be_asked_by_its_name() {
        for quantity in registry().iter().flat_map(|(_, all)| all.iter()) {
            assert_eq!(asked(&format!("sum {}", quantity.name)), quantity.name);
        }
    }

    #[test]
    fn the_words_name_quantities_and_inputs_that_are_there() {
        for entry in &SumWords::built_in().sum {
            for (name, _) in &entry.answers {
                let quantity =
                    crate::physics::sum::quantity(name).expect("a quantity of the registry");
                let needed = quantity
                    .inputs
                    .iter()
                    .filter(|input| input.default.is_none());
                for input in needed {
                    let taken = entry.takes.iter().any(|(name, _)| name == input.name);
                    assert!(
                        taken || input.name == "od_in",
                        "{name} needs {}",
                        input.name
                    );
                }
            }
        }
    }
}
