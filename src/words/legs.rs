//! "one cord 138 the other 98": the volts of two cords, legs or outlets of one trailer, told beside each other.
//!
//! Two values of one reading are a contradiction elsewhere; here they are the very thing to report, since one leg high and
//! the other low is a lost neutral.

use super::attach::{Placed, Value};
use super::concept::{Noun, Unit};
use super::item::{Form, Item, Number, What};
use super::lex::Token;
use super::senses::{Sense, Senses};
use crate::heard::ReadingKey;

/// How far apart, in items, the two values stand at most.
const APART: usize = 8;
/// Without a "V" the values lie in here, V: else they may be feet of cord.
const PLAIN_V: std::ops::RangeInclusive<f64> = 80.0..=180.0;
/// Cords are sold in lengths of so many feet.
const CORD_STEP_FT: f64 = 25.0;

/// Marks both values as volts, so that neither is taken for a trailer, feet or amperes.
pub(super) fn settle(text: &str, tokens: &[Token], items: &mut [Item], senses: &Senses) {
    let Some((first, second)) = pair(text, tokens, items, senses) else {
        return;
    };
    for at in [first, second] {
        if let Some(volts) = value(items, at) {
            items[at].what = What::Number(Number {
                value: volts.0,
                form: Form::Whole,
                unit: Some(Unit::Volt),
                bound: false,
            });
        }
    }
    // "cord 1", "leg 2": which of the two, and no reading
    for at in 1..items.len() {
        let counts =
            matches!(items[at].what, What::Number(n) if n.unit.is_none() && n.value <= 4.0);
        let leg = senses.has(spelt(text, tokens, &items[at - 1]), Sense::Legs);
        if counts && leg && at + APART >= first && at <= second + 2 {
            items[at].what = What::Labelled;
        }
    }
}

/// Gives the two values, in place of whatever else was made of them.
pub(super) fn place(
    text: &str,
    tokens: &[Token],
    items: &[Item],
    senses: &Senses,
    placed: &mut Vec<Placed>,
) {
    let Some((first, second)) = pair(text, tokens, items, senses) else {
        return;
    };
    let (Some((a, _)), Some((b, _))) = (value(items, first), value(items, second)) else {
        return;
    };
    let of_cords =
        |p: &Placed| p.noun == Some(Noun::Cord) && p.at + APART >= first && p.at <= second + 2;
    placed.retain(|p| p.at != first && p.at != second && !of_cords(p));
    for (at, key, volts) in [
        (first, ReadingKey::VoltsHigh, a.max(b)),
        (second, ReadingKey::VoltsLow, a.min(b)),
    ] {
        placed.push(Placed {
            at,
            value: Value::Reading(key, volts),
            noun: Some(Noun::Volts),
        });
    }
}

/// Finds two values told of two legs: each behind or before its own leg, or of one and "the other".
fn pair(text: &str, tokens: &[Token], items: &[Item], senses: &Senses) -> Option<(usize, usize)> {
    let volts = |at: usize| value(items, at);
    (0..items.len()).find_map(|first| {
        let (a, marked) = volts(first)?;
        let reach = (first + APART + 1).min(items.len());
        let second = (first + 1..reach)
            .filter(|at| items[*at].sentence == items[first].sentence)
            .find(|at| volts(*at).is_some())?;
        let (b, also) = volts(second)?;
        let near = |i: &usize| {
            items[*i].sentence == items[first].sentence && !matches!(items[*i].what, What::Units(_))
        };
        let around: Vec<usize> = (first.saturating_sub(4)..(second + 4).min(items.len()))
            .filter(near)
            .collect();
        let said = |sense: Sense| {
            let told = |i: &&usize| {
                let mut spelt = spelt(text, tokens, &items[**i]).split(' ');
                spelt.any(|word| senses.has(word, sense))
            };
            around.iter().filter(told).count()
        };
        let says_volts = marked || also;
        let legs = said(Sense::Legs)
            + if says_volts {
                said(Sense::LegPlaces)
            } else {
                0
            };
        let told_apart = legs >= 1 && said(Sense::TheOther) >= 1 || legs >= 2;
        let of_a_cord = (a % CORD_STEP_FT == 0.0) && (b % CORD_STEP_FT == 0.0);
        let plain = PLAIN_V.contains(&a) && PLAIN_V.contains(&b) && !of_a_cord;
        (told_apart && (says_volts || plain)).then_some((first, second))
    })
}

/// Returns a value that may be volts, and whether it says so.
fn value(items: &[Item], at: usize) -> Option<(f64, bool)> {
    match items[at].what {
        What::Number(n) if !n.bound && (60.0..=300.0).contains(&n.value) => match n.unit {
            None if n.form == Form::Whole => Some((n.value, false)),
            Some(Unit::Volt) => Some((n.value, true)),
            _ => None,
        },
        _ => None,
    }
}

fn spelt<'t>(text: &'t str, tokens: &[Token], item: &Item) -> &'t str {
    &text[tokens[item.first].start..tokens[item.end - 1].end]
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
    fn two_legs_are_told_in_many_ways() {
        let split = [(ReadingKey::VoltsHigh, 138.0), (ReadingKey::VoltsLow, 98.0)];
        for text in [
            "12 one cord 138 the other 98",
            "12 cord 1 is 138v, cord 2 98v",
            "138 on one leg, 98 on the other leg, unit 12",
            "la 12 un cable 138 y el otro 98",
            "12 outlet reads 98v, other outlet 138v",
            "12 room A 138 volts room B 98 volts",
            "12 circuit 1 at 138 volts and circuit 3 at 98 volts",
        ] {
            assert_eq!(read(text), split, "{text}");
        }
    }

    #[test]
    fn feet_of_cord_and_a_single_value_are_no_legs() {
        for text in [
            "12 one cord 100 the other 75",
            "12 one hose 138 the other 98",
            "12 138v then 98v",
            "12 room A 85 room B 90",
        ] {
            assert!(
                read(text)
                    .iter()
                    .all(|(key, _)| *key != ReadingKey::VoltsHigh),
                "{text}"
            );
        }
    }
}
