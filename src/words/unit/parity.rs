//! Every second trailer of a span: 12-16, even ones.

use super::Group;
use crate::words::item::{Item, What};
use crate::words::lex::Token;
use crate::words::senses::{Sense, Senses};

/// Leaves of a span of trailers those that a word right after it names.
pub(super) fn every_second(
    text: &str,
    tokens: &[Token],
    items: &[Item],
    senses: &Senses,
    groups: &mut [Group],
) {
    // "even ones" is two words that say nothing
    let says = |i: usize, sense: Sense| {
        (i..items.len()).take(2).any(|last| {
            let spelt = &text[tokens[items[i].first].start..tokens[items[last].end - 1].end];
            senses.has(spelt, sense)
        })
    };
    for (at, item) in items.iter().enumerate() {
        let What::Units(group) = item.what else {
            continue;
        };
        let odd = (at + 1..items.len())
            .take(3)
            .take_while(|i| items[*i].sentence == item.sentence)
            .find_map(|i| {
                let even = says(i, Sense::EvenOnes).then_some(0);
                even.or_else(|| says(i, Sense::OddOnes).then_some(1))
            });
        let Some(odd) = odd.filter(|_| groups[group].names.len() > 1) else {
            continue;
        };
        groups[group].names.retain(|name| {
            let number = name.as_str().parse::<u32>();
            number.is_ok_and(|number| number % 2 == odd)
        });
    }
}
