//! Circuits by their number: circuit 2, breaker 3, c1 11.8A.

use crate::words::concept::{Concept, Mark, Noun, State, Unit};
use crate::words::item::{Form, Item, What};
use crate::words::lex::Token;
use crate::words::senses::{Sense, Senses};

/// "circuit 2", "breaker 3": a circuit by its number; "breaker 20a" is a rating.
pub(super) fn circuits(items: &mut [Item]) {
    // "15 amps en el 2": the current is of a circuit
    for at in 3..items.len() {
        let small = items[at].number().is_some_and(|n| {
            n.unit.is_none() && n.form == Form::Whole && (1.0..=4.0).contains(&n.value)
        });
        if small
            && items[at - 1].is(Mark::Article)
            && items[at - 2].is(Mark::At)
            && items[at - 3]
                .number()
                .is_some_and(|n| n.unit == Some(Unit::Amp))
        {
            let value = items[at].number().map_or(0.0, |n| n.value);
            items[at].what = What::Circuit(value as u8);
        }
    }
    for at in 0..items.len() {
        let circuit = matches!(items[at].noun(), Some(Noun::Circuit | Noun::Breaker));
        if !circuit {
            continue;
        }
        let Some(next) = (at + 1..items.len())
            .take(3)
            .find(|i| !items[*i].is_filler() && items[*i].what != What::Sign('#'))
        else {
            continue;
        };
        // "el breaker de la 4": that of a trailer
        let of_a_trailer = items[at + 1].is(Mark::Of) && items[at + 2].is(Mark::Article);
        if items[next].chunk != items[at].chunk || of_a_trailer {
            continue;
        }
        if let Some(n) = items[next].number()
            && n.unit.is_none()
            && n.form == Form::Whole
            && (1.0..=4.0).contains(&n.value)
        {
            items[next].what = What::Circuit(n.value as u8);
            more_circuits(items, next);
        }
    }
    currents_of_further_circuits(items);
}

/// "amps are 14 on circuit 1 and 11 on circuit 3": the second is a current as the first.
fn currents_of_further_circuits(items: &mut [Item]) {
    let on_a_circuit = |items: &[Item], at: usize| {
        let place = items
            .get(at + 1)
            .is_some_and(|n| n.is(Mark::At) || n.what == What::Is(Concept::State(State::On)));
        let circuit = (at + 2..items.len())
            .take(3)
            .find(|i| !items[*i].is_filler() && items[*i].noun() != Some(Noun::Circuit));
        place && circuit.is_some_and(|i| matches!(items[i].what, What::Circuit(_)))
    };
    let mut sentence = None;
    for at in 0..items.len() {
        let Some(number) = items[at].number() else {
            continue;
        };
        let here = Some(items[at].sentence);
        if number.unit == Some(Unit::Amp) && on_a_circuit(items, at) {
            sentence = here;
        } else if sentence == here
            && number.unit.is_none()
            && number.form != Form::Part
            && on_a_circuit(items, at)
            && let What::Number(current) = &mut items[at].what
        {
            current.unit = Some(Unit::Amp);
        }
    }
}

/// "c1 11.8A": where a current follows, c and a digit is a circuit.
pub(super) fn circuit_codes(text: &str, tokens: &[Token], items: &mut [Item], senses: &Senses) {
    let spelt = |item: &Item| &text[tokens[item.first].start..tokens[item.end - 1].end];
    for at in 0..items.len() {
        // "4 circuits" counts them, "circuits 1 and 2" names them
        let listed = items[at].is(Mark::LabelAfter)
            && senses.has(spelt(&items[at]), Sense::Circuits)
            && items.get(at + 1).is_some_and(|n| {
                n.number()
                    .is_some_and(|n| n.form == Form::Whole && (1.0..=4.0).contains(&n.value))
            });
        if listed {
            items[at].what = What::Is(Concept::Noun(Noun::Circuit));
        }
        // "la 12 llegó a chapel green": a place, where no number follows
        let came = items[at].is(Mark::Filler)
            && senses.has(spelt(&items[at]), Sense::CameTo)
            && at > 0
            && (items[at - 1].number().is_some() || items[at - 1].what == What::Code)
            && items
                .get(at + 1)
                .is_some_and(|n| matches!(n.what, What::Word { .. }) || n.is(Mark::Article));
        if came {
            items[at].what = What::Is(Concept::Event(crate::heard::Event::Arrived));
        }
        if items[at].what != What::Code {
            continue;
        }
        let number = match spelt(&items[at]).as_bytes() {
            [b'c', digit @ b'1'..=b'4'] => digit - b'0',
            _ => continue,
        };
        let current = (at + 1..items.len())
            .take(3)
            .find(|i| !items[*i].is_filler())
            .is_some_and(|i| {
                items[i].number().is_some_and(|n| n.unit == Some(Unit::Amp))
                    || items[i].noun() == Some(Noun::Amps)
            });
        if current {
            items[at].what = What::Circuit(number);
        }
    }
}

/// "circuits 1, 2 and 3", "circuit 1 draws 13 amps and 3 draws 12": the circuits that follow the first.
fn more_circuits(items: &mut [Item], first: usize) {
    let sentence = items[first].sentence;
    let circuit = |i: &Item| {
        i.number().is_some_and(|n| {
            n.unit.is_none() && n.form == Form::Whole && (1.0..=4.0).contains(&n.value)
        })
    };
    // a list right after the first
    let mut at = first + 1;
    let mut last = first;
    while at < items.len()
        && at <= last + 3
        && items[at].sentence == sentence
        && (matches!(items[at].what, What::Sign(',' | '/' | '+'))
            || items[at].is(Mark::And)
            || items[at].is(Mark::Article)
            || circuit(&items[at]))
    {
        // "circuits 1, 2 leveled": only where the list goes on or ends with "and"
        if circuit(&items[at]) && at > last + 1 {
            let tied = items[last + 1..at].iter().any(|i| i.is(Mark::And))
                || items[at + 1..]
                    .iter()
                    .take(2)
                    .any(|i| i.is(Mark::And) || circuit(i))
                || plural_before(items, first);
            if !tied {
                break;
            }
            let value = items[at].number().map_or(0.0, |n| n.value);
            items[at].what = What::Circuit(value as u8);
            last = at;
        }
        at += 1;
    }
    // a clause of its own: a circuit's number before what it draws
    for at in last + 1..items.len().min(last + 24) {
        if items[at].sentence != sentence || !circuit(&items[at]) {
            continue;
        }
        let opens = items[at - 1].is(Mark::And)
            || items[at - 1].what == What::Sign(',')
            || items[at - 1].is(Mark::Article)
                && at > 1
                && (items[at - 2].is(Mark::And) || items[at - 2].what == What::Sign(','));
        let next = (at + 1..items.len())
            .take(3)
            .find(|i| !items[*i].is_filler() && !items[*i].is(Mark::At));
        let next = next.map(|i| {
            if items[i].what == What::Is(Concept::State(crate::words::concept::State::Ok)) {
                i + 1
            } else {
                i
            }
        });
        let draws = next.filter(|i| *i < items.len()).is_some_and(|i| {
            items[i].noun() == Some(Noun::Amps)
                || items[i]
                    .number()
                    .is_some_and(|n| n.unit == Some(Unit::Amp) || n.unit.is_none() && i > at + 1)
        });
        if opens && draws {
            let value = items[at].number().map_or(0.0, |n| n.value);
            items[at].what = What::Circuit(value as u8);
        }
    }
}

/// Tells whether a stroke ties the first circuit to the next: "circuits 1/2".
fn plural_before(items: &[Item], first: usize) -> bool {
    (first + 1..items.len())
        .take(2)
        .any(|i| items[i].what == What::Sign('/'))
}
