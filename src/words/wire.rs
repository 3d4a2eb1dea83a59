//! "it's a 14 gauge cord", "cable calibre 12": how thick a cord's wire is. No trailer, no length, and no tank's gauge.

use super::attach::{Placed, Value};
use super::concept::{Concept, Mark, Noun, State, Unit};
use super::item::{Item, What};
use super::lex::{Kind, Token};
use super::senses::{Sense, Senses};
use crate::heard::ReadingKey;

/// The gauges that cords have.
const CORD_GAUGES: std::ops::RangeInclusive<f64> = 6.0..=18.0;

/// The gauge of a cord, as one message tells it.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Told {
    /// The item of the number.
    number: usize,
    /// The item of the word for it.
    word: usize,
    /// The token of that word.
    token: usize,
    awg: f64,
}

/// Marks the numbers of gauges, so that none is taken for a trailer or a length. Returns the tokens of the words for them.
pub(super) fn settle(
    text: &str,
    tokens: &[Token],
    items: &mut [Item],
    senses: &Senses,
) -> Vec<usize> {
    let all = all(text, tokens, items, senses);
    for told in &all {
        let chunk = items[told.number].chunk;
        let named = items
            .iter()
            .any(|item| item.chunk == chunk && is_cord(item));
        // "100 ft of 10 gauge": what the length is of
        items[told.number].what = match named {
            true => What::Labelled,
            false => What::Is(Concept::Noun(Noun::Cord)),
        };
        if told.word != told.number && items[told.word].noun() == Some(Noun::Gauge) {
            items[told.word].what = What::Word { ordinary: true };
        }
    }
    all.iter().map(|told| told.token).collect()
}

/// Gives the gauge, where the message tells one only.
pub(super) fn place(
    text: &str,
    tokens: &[Token],
    items: &[Item],
    senses: &Senses,
    placed: &mut Vec<Placed>,
) {
    let told = all(text, tokens, items, senses);
    let Some(first) = told.first() else {
        return;
    };
    // "swap the 14 gauge cord for a 10 gauge one"
    if told.iter().any(|other| other.awg != first.awg) {
        return;
    }
    placed.push(Placed {
        at: first.number,
        value: Value::Reading(ReadingKey::CordAwg, first.awg),
        noun: Some(Noun::Cord),
    });
}

fn all(text: &str, tokens: &[Token], items: &[Item], senses: &Senses) -> Vec<Told> {
    let spelt = |at: usize| &text[tokens[at].start..tokens[at].end];
    let item_of = |token: usize| {
        let at = items.partition_point(|item| item.end <= token);
        items.get(at).filter(|item| item.first <= token).map(|_| at)
    };
    let says_gauge =
        |at: &usize| tokens[*at].kind == Kind::Word && senses.has(spelt(*at), Sense::WireGauge);
    (0..tokens.len())
        .filter(says_gauge)
        .filter_map(|token| {
            let (number, awg) = number_beside(tokens, token)?;
            let told = Told {
                number: item_of(number)?,
                word: item_of(token)?,
                token,
                awg,
            };
            let look = |item: &Item| {
                (item.first..item.end).any(|at| senses.has(spelt(at), Sense::CordLook))
            };
            is_of_a_cord(items, told, look).then_some(told)
        })
        .collect()
}

/// Finds the number that touches a word for gauge, with a dash or "of" between at most: the token, and its value.
fn number_beside(tokens: &[Token], word: usize) -> Option<(usize, f64)> {
    let awg = |at: usize| match tokens.get(at)?.kind {
        Kind::Number {
            value,
            whole: true,
            signed: false,
        } if CORD_GAUGES.contains(&value) && value % 2.0 == 0.0 => Some((at, value)),
        _ => None,
    };
    let sign = |at: usize| {
        matches!(
            tokens.get(at).map(|t| t.kind),
            Some(Kind::Sign('-' | ':' | '#'))
        )
    };
    let before = word.checked_sub(1).and_then(awg);
    let dashed = || word.checked_sub(2).filter(|_| sign(word - 1)).and_then(awg);
    let after = || awg(word + 1);
    let after_a_sign = || Some(word + 2).filter(|_| sign(word + 1)).and_then(awg);
    before.or_else(dashed).or_else(after).or_else(after_a_sign)
}

/// Tells whether the number and its word speak of a cord: it follows them, or was named before and they tell what it is.
fn is_of_a_cord(items: &[Item], told: Told, looks: impl Fn(&Item) -> bool) -> bool {
    let (first, last) = (told.number.min(told.word), told.number.max(told.word));
    let sentence = items[first].sentence;
    let cord = |item: &Item| is_cord(item) || looks(item);
    let run = |item: &Item| {
        let unit = item.number().and_then(|n| n.unit);
        matches!(unit, Some(Unit::Ft | Unit::Metre))
    };
    let here = |item: &&Item| item.sentence == sentence;
    let itself = items[first..=last].iter().any(cord);
    let mut after = items[last + 1..].iter().take(4).take_while(here);
    let follows = after.clone().take(2).any(cord) || after.any(run);
    // "waste gauge 12", "the cord on 12 gauge": a tank's, or a trailer's
    let Some(before) = first.checked_sub(1).map(|at| &items[at]) else {
        return itself || follows;
    };
    let places = before.is(Mark::Unit)
        || before.is(Mark::At)
        || before.what == What::Is(Concept::State(State::On))
        || before.noun().is_some_and(Noun::is_tank);
    if before.sentence == sentence && places {
        return itself;
    }
    let mut earlier = items[..first].iter().rev().take(8).take_while(here);
    let tank = items[..first]
        .iter()
        .rev()
        .take(8)
        .take_while(here)
        .any(|item| item.noun().is_some_and(Noun::is_tank));
    itself || follows || !tank && earlier.any(|item| cord(item) || run(item))
}

fn is_cord(item: &Item) -> bool {
    matches!(item.noun(), Some(Noun::Cord | Noun::Cords | Noun::Plug))
}

#[cfg(test)]
mod tests {
    use crate::heard::ReadingKey;
    use crate::quantity::TemperatureScale;

    fn read(text: &str) -> Vec<(ReadingKey, f64)> {
        let heard = crate::words::Reader::new().hear(text, TemperatureScale::F);
        let readings = heard
            .entries
            .into_iter()
            .flat_map(|entry| entry.readings.values);
        readings.collect()
    }

    #[test]
    fn a_cord_is_told_by_its_gauge() {
        for (text, awg) in [
            ("it's a 14 gauge cord", 14.0),
            ("its a 14-gauge cord on 7", 14.0),
            ("the cord on 7 is a 14 gauge", 14.0),
            ("7: 12awg cord", 12.0),
            ("cord on 7 is 16 ga", 16.0),
            ("7 running on a 16 gauge orange one", 16.0),
            ("cable calibre 12 en la 7", 12.0),
            ("el cable de la 7 es calibre 14", 14.0),
            ("la extensión de la 7 es del 12 awg", 12.0),
        ] {
            assert_eq!(read(text), [(ReadingKey::CordAwg, awg)], "{text}");
        }
        let both = [(ReadingKey::CordFt, 50.0), (ReadingKey::CordAwg, 12.0)];
        for text in [
            "50 ft of 12 gauge on 7",
            "7 is on 50 ft of 12 gauge cord",
            "cable de 50 pies calibre 12 en la 7",
            "cable calibre 12 de 50 pies en la 7",
        ] {
            assert_eq!(read(text), both, "{text}");
        }
    }

    #[test]
    fn a_tanks_gauge_and_a_cord_that_is_wanted_are_none() {
        for text in [
            "12 gauge stuck",
            "waste gauge 12 is stuck",
            "the gauge on 12 is stuck, cord is fine",
            "cord is good on 12, gauge stuck",
            "need a 12 gauge cord on 7",
            "is a 14 gauge cord ok on 7?",
            "swapped the 14 gauge cord for a 10 gauge one",
        ] {
            assert_eq!(read(text), [], "{text}");
        }
    }
}
