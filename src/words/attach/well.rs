//! "pressure fine on 7, 51": a thing is said to be well, and then its value, with no noun of its own.

use crate::words::concept::{Concept, Mark, Noun, State, Unit};
use crate::words::item::{Form, Item, Number, What};

/// Two trailers of one list lie so close together at most; a value does not.
const LIST_SPAN: f64 = 20.0;

/// Finds the noun whose value the number at `at` is: it ends the sentence's clause, alone, right behind a clause that says
/// of one thing that it is well, and no more than where.
pub(in crate::words) fn after_good_word(items: &[Item], at: usize) -> Option<usize> {
    let number = items[at].number()?;
    let sentence = items[at].sentence;
    let ends = items.get(at + 1).is_none_or(|n| {
        n.sentence != sentence
            || matches!(
                n.what,
                What::Sign('.' | '!' | ';' | '\u{fffd}') | What::Break
            )
    });
    let mut before = (0..at)
        .rev()
        .take(12)
        .take_while(|i| items[*i].sentence == sentence)
        .skip_while(|i| {
            items[*i].chunk == items[at].chunk && (items[*i].is_filler() || items[*i].is(Mark::At))
                || matches!(items[*i].what, What::Sign(',' | ':' | ';'))
        })
        .peekable();
    let last = *before.peek()?;
    if !ends || items[last].chunk == items[at].chunk {
        return None;
    }
    let here = items[last].chunk;
    // the place, and its number where that may open a list
    let (mut thing, mut well, mut place) = (None, false, None);
    for i in before.take_while(|i| items[*i].chunk == here) {
        match items[i].what {
            What::Is(Concept::Noun(noun)) if thing.is_none() && noun.reading().is_some() => {
                thing = Some((i, noun));
            }
            What::Is(Concept::State(State::Ok)) if !well => well = true,
            What::Is(Concept::State(State::On)) => {}
            // found to be trailers already: the number was held to be none of them
            What::Units(_) if place.is_none() => place = Some((i, f64::INFINITY)),
            What::Code if place.is_none() => place = Some((i, number.value)),
            What::Number(n) if place.is_none() && n.form == Form::Whole && n.unit.is_none() => {
                place = Some((i, n.value));
            }
            _ if items[i].is_filler() || items[i].is(Mark::At) || items[i].is(Mark::Unit) => {}
            _ => return None,
        }
    }
    let (noun_at, noun) = thing.filter(|_| well)?;
    // "pressure good on 50, 51" may be a list of trailers
    let listed = place.is_some_and(|(i, name)| {
        let plain = number.form == Form::Whole && number.unit.is_none();
        i == last && plain && (number.value - name).abs() <= LIST_SPAN
    });
    (!listed && has_such_values(noun, number)).then_some(noun_at)
}

/// Tells whether a number can be a value of such a thing, and no trailer's name.
fn has_such_values(noun: Noun, number: Number) -> bool {
    let v = number.value;
    match (noun, number.unit) {
        (_, Some(Unit::Pct)) => noun.is_tank() || noun == Noun::Battery,
        (_, Some(_)) => false,
        _ if number.form == Form::Part => noun.is_tank(),
        (Noun::Pressure | Noun::AfterRegulator | Noun::Supply, None) => (30.0..=150.0).contains(&v),
        (Noun::Volts, None) => (90.0..=260.0).contains(&v),
        (Noun::Battery, None) => number.form == Form::Decimal && (9.0..=16.0).contains(&v),
        _ => false,
    }
}
