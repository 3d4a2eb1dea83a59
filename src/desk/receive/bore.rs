//! The bore of a hose as it is told of: the reader keeps its length alone, and the site's file says what is usual there.

use super::super::phrases::{is_marked, plain};
use super::super::settle::Settled;
use super::Hearing;
use crate::heard::{Plan, PlanKind, ReadingKey};

/// Between the bore and its hose stand at most so many words: "the 3/4 in garden hose".
const REACH: usize = 4;

impl Hearing<'_> {
    /// "Ran the 1 inch hose, 150 ft": what it passes is worked out by that bore, on the trailer that is reported on.
    pub(super) fn hose_told(&mut self, settled: &mut Settled) {
        let [(unit, _, entry)] = settled.reports.as_slice() else {
            return;
        };
        let told = entry.readings.value(ReadingKey::HoseFt).is_some()
            || entry.readings.value(ReadingKey::PressurePsi).is_some();
        let asks = self.heard.ask.is_some() || is_marked(self.text);
        if !told || asks || self.heard.command.is_some() {
            return;
        }
        let Some(bore_in) = self.bore_told() else {
            return;
        };
        self.heard.plans.push(Plan {
            unit: Some(unit.clone()),
            kind: PlanKind::HoseBore { bore_in },
            text: self.text.trim().to_owned(),
        });
    }

    /// Returns the bore that stands beside the word for a hose, in.
    fn bore_told(&self) -> Option<f64> {
        let phrases = self.desk.phrases;
        let words: Vec<&str> = self.text.split_whitespace().collect();
        let is = |list, at: usize| {
            let word = words.get(at);
            word.is_some_and(|word| phrases.is("hose", list, &plain(word)))
        };
        (0..words.len()).find_map(|at| {
            let (number, mark) = split_mark(words[at]);
            let inches = mark || is("inch", at + 1);
            let bore = match number {
                "1/2" => 0.5,
                "5/8" => 0.625,
                "3/4" => 0.75,
                "1" | "one" | "una" if inches => 1.0,
                "1.25" | "1-1/4" if inches => 1.25,
                "1.5" | "1-1/2" if inches => 1.5,
                "2" | "two" | "dos" if inches => 2.0,
                _ => return None,
            };
            // "3/4 hose", "hose 3/4", "manguera de 3/4": a level is told of no hose
            let after = at + 1..=at + REACH - 1;
            let before = at.saturating_sub(2)..at;
            let named = |near: usize| is("hose", near);
            let of_it = after
                .into_iter()
                .find(|near| named(*near))
                .is_some_and(|near| {
                    (at + 1..near).all(|between| is("inch", between) || is("kind", between))
                });
            let behind = before
                .rev()
                .find(|near| named(*near))
                .is_some_and(|near| (near + 1..at).all(|between| is("of", between)));
            (of_it || behind && inches).then_some(bore)
        })
    }
}

/// Takes the sign of an inch off a number: `1"`.
fn split_mark(word: &str) -> (&str, bool) {
    let word = word.trim_end_matches([',', '.', ';', ':']);
    let bare = word.trim_end_matches(['"', '\u{201d}', '\'']);
    let bare = bare.strip_suffix("in").unwrap_or(bare);
    (bare, bare.len() < word.len())
}
