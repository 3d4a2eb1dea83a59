//! Numbers of things inside a trailer, or counts of them: stall 2 of 12, three toilets, the lock of 2.

use super::Named;
use super::candidate::{placed_later, plain};
use crate::words::concept::{Concept, Mark, Noun, State};
use crate::words::item::{Form, Item, What};
use crate::words::lex::Token;
use crate::words::senses::{Sense, Senses};

/// "the lock of 2 in unit 31": beside a trailer named for certain, a bare number after "of" is a place inside it.
pub(super) fn sub_places(items: &mut [Item], named: &mut Vec<Named>) {
    let certain: std::collections::BTreeSet<usize> = named
        .iter()
        .filter(|n| n.explicit)
        .map(|n| items[n.at].chunk)
        .collect();
    let placed: std::collections::BTreeMap<usize, usize> = named
        .iter()
        .filter(|n| {
            n.explicit
                || n.at > 0
                    && (items[n.at - 1].is(Mark::At)
                        || items[n.at - 1].what == What::Is(Concept::State(State::On)))
        })
        .map(|n| (items[n.at].chunk, n.at))
        .collect();
    named.retain(|n| {
        // "toilet 3 in unit 9"
        let part = n.at > 0
            && !n.explicit
            && items[n.at - 1]
                .noun()
                .is_some_and(|noun| noun.reading().is_none())
            && placed.get(&items[n.at].chunk).is_some_and(|at| *at > n.at);
        if part {
            items[n.at].what = What::Labelled;
            return false;
        }
        let of = n.at > 0 && items[n.at - 1].is(Mark::Of);
        let inside = !n.explicit && of && certain.contains(&items[n.at].chunk);
        if inside {
            items[n.at].what = What::Labelled;
        }
        !inside
    });
}

/// "stall 2 of 12", "room 2 of 17", "ckt 1 of 20": what has a number inside a trailer that is named right after it.
pub(super) fn places_inside(items: &mut [Item]) {
    for at in 1..items.len() {
        let inside = items[at]
            .number()
            .is_some_and(|n| n.form == Form::Whole && n.unit.is_none() && n.value <= 40.0);
        let thing = items[at - 1].is(Mark::Label)
            || items[at - 1].what == What::Is(Concept::Fault(crate::heard::Fault::ToiletClog))
            || items[at - 1].noun().is_some_and(|n| n.reading().is_none());
        let of = items.get(at + 1).is_some_and(|n| n.is(Mark::Of))
            && items[at + 1..]
                .iter()
                .take(4)
                .find(|i| {
                    !i.is(Mark::Of)
                        && !i.is(Mark::Article)
                        && !i.is(Mark::Unit)
                        && i.what != What::Sign('#')
                })
                .is_some_and(|n| {
                    n.what == What::Code
                        || n.number()
                            .is_some_and(|n| n.form == Form::Whole && n.unit.is_none())
                });
        if inside && thing && of {
            items[at].what = What::Labelled;
        }
    }
}

/// "three toilets clogged", "with two taps", "on one cord": a count of things, and no trailer.
pub(super) fn count_of_things(
    text: &str,
    tokens: &[Token],
    items: &[Item],
    at: usize,
    named: bool,
) -> bool {
    let Some(number) = items[at].number() else {
        return false;
    };
    if asked_how_many(text, tokens, items, at) {
        return true;
    }
    // "two stalls"
    if items
        .get(at + 1)
        .is_some_and(|n| n.is(Mark::LabelAfter) && n.chunk == items[at].chunk)
    {
        return number.form == Form::Whole && number.value <= 20.0;
    }
    let Some(noun) = items
        .get(at + 1)
        .filter(|n| n.chunk == items[at].chunk)
        .and_then(Item::noun)
    else {
        return false;
    };
    let plural =
        text[tokens[items[at + 1].first].start..tokens[items[at + 1].end - 1].end].ends_with('s');
    let typed = &text[tokens[items[at].first].start..tokens[items[at].end - 1].end];
    let spelled = !typed.starts_with(|c: char| c.is_ascii_digit());
    let counted = matches!(
        noun,
        Noun::Toilet
            | Noun::Sink
            | Noun::Taps
            | Noun::Lights
            | Noun::Fan
            | Noun::Door
            | Noun::Lock
            | Noun::Jacks
            | Noun::Cord
            | Noun::Person
            | Noun::Fuse
            | Noun::Breaker
            | Noun::Circuit
            | Noun::Plug
            | Noun::Body
    );
    let opens = at == 0 || items[at - 1].chunk != items[at].chunk;
    // "12 rolls of paper and 4 soaps for 12": so many, where the trailer stands after them
    let ordered = noun == Noun::Supplies
        && number.form == Form::Whole
        && number.unit.is_none()
        && !opens
        && places_follow(items, at + 2);
    ordered
        || counted
            && number.form == Form::Whole
            && number.unit.is_none()
            && (number.value <= 4.0 && noun == Noun::Cord || number.value >= 2.0 && plural)
            && number.value <= 10.0
            && (spelled
                || plural && number.value <= 4.0 && places_follow(items, at + 2)
                || plural && so_many_inside(items, at, noun, opens)
                || named && (!opens || noun == Noun::Cord && number.value <= 4.0))
            && !(at > 0 && (items[at - 1].is(Mark::Unit) || items[at - 1].is(Mark::Article)))
}

/// "with a toilet refilling and 2 taps open", "2 toilets clogged 12": so many in a trailer that is named elsewhere or
/// was spoken of.
fn so_many_inside(items: &[Item], at: usize, noun: Noun, opens: bool) -> bool {
    let here = |i: &usize| items[*i].chunk == items[at].chunk;
    // a number that is the trailer's, and counts nothing itself
    let named_later = (at + 2..items.len()).take(8).take_while(here).any(|i| {
        let counts = items.get(i + 1).is_some_and(|n| n.noun().is_some());
        items[i].number().is_some_and(plain) && !counts
    });
    match noun {
        Noun::Taps => !opens || items[at].number().is_some_and(|n| n.value <= 4.0),
        Noun::Toilet | Noun::Sink => !opens || named_later,
        _ => false,
    }
}

/// "is it 4 chocks or 2": asked how many there are to be.
fn asked_how_many(text: &str, tokens: &[Token], items: &[Item], at: usize) -> bool {
    let small = |i: usize| {
        items
            .get(i)
            .and_then(Item::number)
            .is_some_and(|n| n.form == Form::Whole && n.unit.is_none() && n.value <= 10.0)
    };
    let things = |i: usize| {
        items.get(i).is_some_and(|n| {
            n.noun().is_some_and(|noun| {
                matches!(
                    noun,
                    Noun::Wheels | Noun::Jacks | Noun::Cord | Noun::Cords | Noun::Chains
                )
            }) && text[..tokens[n.end - 1].end].ends_with('s')
        })
    };
    let asked = |i: usize| i > 0 && items[i - 1].is(Mark::Query);
    // "4 chocks or 2", "4 or 2 chocks"
    let or = |i: usize| items.get(i).is_some_and(|n| n.is(Mark::Or));
    small(at)
        && (asked(at) && (things(at + 1) || or(at + 1) && small(at + 2) && things(at + 3))
            || at > 3 && or(at - 1) && things(at - 2) && small(at - 3) && asked(at - 3)
            || at > 2 && or(at - 1) && small(at - 2) && asked(at - 2) && things(at + 1))
}

/// "2 guests fell at 23", "6 of the lights are out on 12": so many of what is said, where the trailer is named after it.
pub(super) fn so_many_at_a_trailer(
    text: &str,
    tokens: &[Token],
    items: &[Item],
    at: usize,
    senses: &Senses,
) -> bool {
    let here = |i: usize| items.get(i).filter(|n| n.chunk == items[at].chunk);
    let number = items[at].number().filter(|n| plain(*n));
    let (Some(number), Some(next)) = (number, here(at + 1)) else {
        return false;
    };
    let led = at > 0
        && items[at - 1].chunk == items[at].chunk
        && (items[at - 1].is(Mark::Unit)
            || items[at - 1].is(Mark::Article)
            || items[at - 1].is(Mark::At)
            || items[at - 1].what == What::Sign('#')
            || items[at - 1].what == What::Is(Concept::State(State::On)));
    let spelt = &text[tokens[next.first].start..tokens[next.end - 1].end];
    let thing = spelt.split(' ').next().unwrap_or(spelt);
    let broken = matches!(next.what, What::Is(Concept::Fault(_)))
        && thing.ends_with('s')
        && thing.len() < spelt.len()
        && (2.0..=4.0).contains(&number.value);
    // "2 toilets running 12"
    let named_last = here(at + 2).and_then(Item::number).is_some_and(plain)
        && here(at + 3).is_none_or(|n| matches!(n.what, What::Sign(_)));
    if led || !(placed_later(items, at) || broken && named_last) {
        return false;
    }
    let harmed = |i: &Item| match i.what {
        What::Is(Concept::Fault(fault)) => fault.harms_a_person(),
        What::Is(Concept::State(state)) => matches!(state, State::Trapped | State::Hurt),
        _ => false,
    };
    let of_people = matches!(next.noun(), Some(Noun::Guests | Noun::Person))
        || senses.has(thing, Sense::OnePerson)
        || harmed(next);
    let mut behind = items[at + 1..].iter().take(8);
    let mut in_sentence = behind
        .by_ref()
        .take_while(|i| i.sentence == items[at].sentence);
    let people = of_people && in_sentence.any(harmed);
    let part = at + 2 + usize::from(here(at + 2).is_some_and(|n| n.is(Mark::Article)));
    let of = next.is(Mark::Of)
        && here(part)
            .and_then(Item::noun)
            .is_some_and(|noun| noun.reading().is_none());
    people || of || broken
}

/// Tells whether a place and a number stand at `at`: "on 22".
fn places_follow(items: &[Item], at: usize) -> bool {
    let place = items
        .get(at)
        .is_some_and(|n| n.is(Mark::At) || n.what == What::Is(Concept::State(State::On)));
    place
        && items.get(at + 1).is_some_and(|n| {
            n.what == What::Code
                || n.number()
                    .is_some_and(|n| n.form == Form::Whole && n.unit.is_none())
        })
}

/// "21 guest trapped": one guest, and the trailer where it happened.
pub(super) fn beside_one_person(
    text: &str,
    tokens: &[Token],
    items: &[Item],
    at: usize,
    senses: &Senses,
) -> bool {
    let Some(person) = items.get(at + 1).filter(|n| n.chunk == items[at].chunk) else {
        return false;
    };
    let spelt = &text[tokens[person.first].start..tokens[person.end - 1].end];
    let more_than_one = items[at]
        .number()
        .is_some_and(|n| n.form == Form::Whole && n.unit.is_none() && n.value > 1.0);
    let in_danger = (at + 2..items.len())
        .take(8)
        .take_while(|i| items[*i].sentence == items[at].sentence)
        .any(|i| match items[i].what {
            What::Is(Concept::Fault(fault)) => fault.harms_a_person(),
            What::Is(Concept::State(state)) => matches!(
                state,
                State::Trapped | State::Hurt | State::Stuck | State::Down
            ),
            _ => false,
        });
    more_than_one && in_danger && senses.has(spelt, Sense::OnePerson)
}
