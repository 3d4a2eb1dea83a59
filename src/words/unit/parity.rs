//! Every second trailer of a span: 12-16, even ones.

use super::Group;
use crate::heard::UnitName;
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
        let second = |name: &UnitName| {
            let number = name.as_str().parse::<u32>();
            number.is_ok_and(|number| number % 2 == odd)
        };
        let names = &mut groups[group].names;
        // "20, LL1 odds": where none is left, the word spoke of something else
        if names.iter().any(second) {
            names.retain(second);
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::quantity::TemperatureScale;
    use crate::words::Reader;

    #[test]
    fn a_word_that_leaves_no_trailer_leaves_all() {
        let units = |text| {
            let heard = Reader::new().hear(text, TemperatureScale::F);
            let entries = heard.entries.into_iter();
            let units = entries.filter_map(|entry| Some(entry.unit?.to_string()));
            units.collect::<Vec<_>>()
        };
        assert_eq!(units("12-15 odd ones arrived"), ["13", "15"]);
        assert_eq!(units("12 and 14 odd ones arrived"), ["12", "14"]);
        units("Si la 20 ll1 odds arrrvied");
    }
}
