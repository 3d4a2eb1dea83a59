//! Which trailers a message names: after "unit" and its like, by a name of letters and digits, or by a bare number that
//! stands where only a trailer can.

use super::concept::{Concept, Mark, Noun, State, Unit};
use super::item::{Form, Item, What};
use super::lex::Token;
use crate::heard::UnitName;

/// The longest span of numbers that "12-14" may mean.
const LONGEST_SPAN: f64 = 20.0;

/// Trailers named together.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Group {
    /// Their names.
    pub names: Vec<UnitName>,
    /// True where a word says that what follows holds for each: both, all, units.
    pub plural: bool,
    /// True where a word or the form of the name says that it is a trailer.
    pub explicit: bool,
    /// True for "12 or 14".
    pub either: bool,
    /// True where a place word stands before: on, at, in.
    pub placed: bool,
}

/// Finds the trailers and replaces their items.
pub(super) fn find(text: &str, tokens: &[Token], items: &mut Vec<Item>) -> Vec<Group> {
    let mut named = mark(text, tokens, items);
    sub_places(items, &mut named);
    join(items, named)
}

/// "the lock of 2 in unit 31": beside a trailer named for certain, a bare number after "of" is a place inside it.
fn sub_places(items: &mut [Item], named: &mut Vec<Named>) {
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

/// A candidate that was taken for a trailer.
struct Named {
    at: usize,
    names: Vec<UnitName>,
    explicit: bool,
}

fn significant_before(items: &[Item], at: usize) -> Option<usize> {
    (0..at)
        .rev()
        .take_while(|i| items[*i].chunk == items[at].chunk)
        .find(|i| !items[*i].is_filler())
}

fn significant_after(items: &[Item], at: usize) -> Option<usize> {
    (at + 1..items.len())
        .take_while(|i| items[*i].chunk == items[at].chunk)
        .find(|i| !items[*i].is_filler())
}

fn name(text: &str, tokens: &[Token], item: &Item) -> Option<UnitName> {
    match item.what {
        What::Number(n)
            if n.form == Form::Whole
                && n.unit.is_none()
                && !(n.bound && spelled(text, tokens, item))
                && (1.0..=99_999.0).contains(&n.value) =>
        {
            let typed = &text[tokens[item.first].start..tokens[item.end - 1].end];
            if typed.bytes().all(|b| b.is_ascii_digit()) {
                Some(UnitName::new(typed))
            } else {
                Some(UnitName::new(&format!("{}", n.value)))
            }
        }
        What::Code => Some(UnitName::new(
            &text[tokens[item.first].start..tokens[item.end - 1].end],
        )),
        _ => None,
    }
}

/// Tells whether a number was written in words.
fn spelled(text: &str, tokens: &[Token], item: &Item) -> bool {
    !text[tokens[item.first].start..].starts_with(|c: char| c.is_ascii_digit())
}

fn span(from: f64, to: f64) -> Option<Vec<UnitName>> {
    let whole = from.fract() == 0.0 && to.fract() == 0.0;
    if !whole || from < 1.0 || to <= from || to - from > LONGEST_SPAN || to > 9999.0 {
        return None;
    }
    Some(
        (from as u32..=to as u32)
            .map(|n| UnitName(n.to_string()))
            .collect(),
    )
}

/// "stall 2 of 12", "room 2 of 17", "ckt 1 of 20": what has a number inside a trailer that is named right after it.
fn places_inside(items: &mut [Item]) {
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

/// Decides for each candidate whether it names a trailer.
fn mark(text: &str, tokens: &[Token], items: &mut [Item]) -> Vec<Named> {
    places_inside(items);
    let mut named: Vec<Named> = Vec::new();
    for at in 0..items.len() {
        let names = match items[at].what {
            What::Range(from, to, None) => span(from, to),
            _ => name(text, tokens, &items[at]).map(|n| vec![n]),
        };
        let Some(names) = names else { continue };
        if count_of_things(text, tokens, items, at, !named.is_empty()) {
            continue;
        }
        if let Some(explicit) = is_unit(items, at, &named) {
            named.push(Named {
                at,
                names,
                explicit,
            });
        }
    }
    named
}

/// "three toilets clogged", "with two taps", "on one cord": a count of things, and no trailer.
fn count_of_things(text: &str, tokens: &[Token], items: &[Item], at: usize, named: bool) -> bool {
    let Some(number) = items[at].number() else {
        return false;
    };
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
    );
    let opens = at == 0 || items[at - 1].chunk != items[at].chunk;
    counted
        && number.form == Form::Whole
        && number.unit.is_none()
        && (number.value <= 4.0 && noun == Noun::Cord || number.value >= 2.0 && plural)
        && number.value <= 10.0
        && (spelled || named && (!opens || noun == Noun::Cord && number.value <= 4.0))
        && !(at > 0 && (items[at - 1].is(Mark::Unit) || items[at - 1].is(Mark::Article)))
}

/// Returns whether the candidate at `at` is a trailer, and whether that is certain.
fn is_unit(items: &[Item], at: usize, named: &[Named]) -> Option<bool> {
    let item = &items[at];
    let before = at
        .checked_sub(1)
        .map(|i| &items[i])
        .filter(|b| b.what != What::Break);
    let code = item.what == What::Code;
    let range = matches!(item.what, What::Range(..));
    // unit 12, unit: 12, unit #12, la 12
    let mut i = at;
    while i > 0 {
        i -= 1;
        match items[i].what {
            What::Is(Concept::Mark(Mark::Unit)) => return Some(true),
            What::Is(Concept::Mark(Mark::Article)) if i + 1 == at => {
                let clockish = i > 0 && items[i - 1].is(Mark::Clock) && value(item) <= 12.0;
                if clockish {
                    return None;
                }
                let takes = significant_after(items, at)
                    .is_none_or(|n| !items[n].noun().is_some_and(counts));
                return takes.then_some(true);
            }
            What::Sign('#') if i + 1 == at => return Some(true),
            What::Sign(':' | '#' | '.' | '-') => continue,
            _ => break,
        }
    }
    if code {
        return Some(true);
    }
    // a word nobody knows right after it may be a misspelt measure
    let slip = matches!(
        items.get(at + 1).map(|n| n.what),
        Some(What::Word { ordinary: false })
    ) && items[at + 1].chunk == item.chunk
        && named
            .last()
            .is_some_and(|n| items[n.at].sentence == item.sentence);
    if slip && risky(items, at) {
        return None;
    }
    // "sucked 340 agl out of 9", "K2 ... 117 b": beside a trailer named otherwise, a word nobody knows after a number
    // may be its measure
    let strange = matches!(
        items.get(at + 1).map(|n| n.what),
        Some(What::Word { ordinary: false })
    ) && items[at + 1].chunk == item.chunk;
    if strange && !named.is_empty() && named.iter().any(|n| n.explicit) && value(item) >= 30.0 {
        return None;
    }
    let inner = at > 0 && items[at - 1].chunk == item.chunk
        || items.get(at + 2).is_some_and(|n| n.number().is_some());
    if strange && inner && placed_later(items, at) {
        return None;
    }
    // "114 voltios y 45 si": a slip for psi where nothing was denied
    let yes = items.get(at + 1).is_some_and(|n| n.is(Mark::If))
        && chunk_ends(items, at + 1)
        && !items[..at]
            .iter()
            .any(|i| i.is(Mark::Not) || i.is(Mark::No));
    if yes {
        return None;
    }
    let prior = significant_before(items, at);
    let next = significant_after(items, at);
    let prior_item = prior.map(|i| &items[i]);
    let next_item = next.map(|i| &items[i]);
    let listed = named.last().is_some_and(|n| {
        (n.at + 1..at).all(|i| {
            matches!(
                items[i].what,
                What::Sign(',' | '/' | '+')
                    | What::Is(Concept::Mark(Mark::And | Mark::Or | Mark::Article))
            )
        }) && n.at + 1 < at
    });
    // "12 14 and 15": a list without commas
    let follows = named.last().is_some_and(|n| n.at + 1 == at)
        && items.get(at + 1).is_some_and(|n| n.is(Mark::And))
        && items.get(at + 2).is_some_and(|n| {
            n.number()
                .is_some_and(|n| n.form == Form::Whole && n.unit.is_none())
        });
    if follows {
        return Some(false);
    }
    // "88 inside": a temperature in the room
    if next_item.is_some_and(|n| n.is(Mark::Inside))
        && next == Some(at + 1)
        && value(item) >= 30.0
        && chunk_ends(items, at + 1)
    {
        return None;
    }
    // "60 at 12 and 85 at 14": a number before the place of a trailer is a value where a noun waits for it
    let place_next = next.is_some_and(|n| {
        (items[n].is(Mark::At) || items[n].what == What::Is(Concept::State(State::On)))
            && next == Some(at + 1) && items.get(n + 1).is_some_and(|u| {
            u.what == What::Code
                || u.is(Mark::Unit)
                || u.is(Mark::Article)
                || matches!(u.what, What::Number(n) if n.form == Form::Whole && n.unit.is_none())
        })
            && !items
                .get(n + 2)
                .is_some_and(|c| c.noun().is_some_and(counts))
    });
    if place_next && noun_earlier(items, at) {
        return None;
    }
    // "4.1 bar at 52 after the regulator": the value was said before
    let regulated = next_item
        .and_then(Item::noun)
        .is_some_and(|n| matches!(n, Noun::AfterRegulator | Noun::BeforeRegulator))
        && prior_item.is_some_and(|p| p.is(Mark::At))
        && (0..at)
            .rev()
            .take(6)
            .take_while(|i| items[*i].chunk == item.chunk)
            .any(|i| {
                items[i].number().is_some_and(|n| {
                    matches!(
                        n.unit,
                        Some(Unit::Psi | Unit::Bar | Unit::Kpa | Unit::KgCm2)
                    )
                })
            });
    if regulated {
        return Some(false);
    }
    // "wind 18 mph, 26 outside": the air, where the words before gave another value
    let aired = next_item.and_then(Item::noun) == Some(Noun::Air)
        && next == Some(at + 1)
        && chunk_ends(items, at + 1)
        && items.get(at + 2).is_none_or(|n| n.number().is_none())
        && (prior_item.is_none() || prior_item.is_some_and(|p| p.is(Mark::And)))
        && items[..at]
            .iter()
            .rev()
            .take_while(|i| i.sentence == item.sentence)
            .any(|i| matches!(i.what, What::Number(_)));
    if aired || outside(items, at) {
        return None;
    }
    if listed {
        let counted =
            next_item.is_some_and(|n| n.noun().is_some_and(counts)) && !owns_number(items, next);
        return (!counted).then_some(named.last().is_some_and(|n| n.explicit));
    }
    // 12v lights and 4 cords are no trailers; nor is 95 in "95 pressure on 12"
    if let Some(noun) = next_item.and_then(Item::noun) {
        if counts(noun) && !owns_number(items, next) {
            return None;
        }
        if noun.reading().is_some() && next == Some(at + 1) && !owns_number(items, next) && !range {
            let other = others(items, at);
            if other {
                return None;
            }
        }
    }
    // "310 gal out of 12", "ckt 1 of 20", "the pressure of 44 is 3.2 bar"
    if before.is_some_and(|b| b.is(Mark::Of)) {
        let told = prior_item.is_some_and(|p| {
            matches!(p.what, What::Labelled | What::Circuit(_))
                || p.number().is_some_and(|n| n.unit.is_some())
        });
        let valued = prior_item
            .and_then(Item::noun)
            .is_some_and(|n| n.reading().is_some())
            && next_item.is_some_and(|n| {
                n.number()
                    .is_some_and(|n| n.unit.is_some() || n.form != Form::Whole)
            });
        if told || valued {
            return Some(false);
        }
    }
    // "brought 18 in around two", "it was 65": beside a trailer, a number that is only about so is none
    let loose = before.is_some_and(|b| {
        b.is(Mark::Past) && b.end == b.first + 1 || b.is(Mark::About) && value(item) <= 12.0
    }) && named
        .last()
        .is_some_and(|n| items[n.at].sentence == item.sentence);
    if loose && chunk_ends(items, at) {
        return None;
    }
    // "circuit 1 pulls 13 amps, circuit 3 pulls 12"
    let drawn = (0..at)
        .rev()
        .take(3)
        .take_while(|i| items[*i].chunk == item.chunk)
        .find(|i| !items[*i].is_filler() && items[*i].what != What::Is(Concept::State(State::Ok)))
        .is_some_and(|i| matches!(items[i].what, What::Circuit(_)))
        && amps_told(items, at);
    if drawn {
        return None;
    }
    let clock = (100.0..=2359.0).contains(&value(item)) && value(item) % 100.0 < 60.0;
    match prior_item.map(|p| p.what) {
        // first in its chunk
        None => {
            let slip = matches!(
                items.get(at + 1).map(|n| n.what),
                Some(What::Word { ordinary: false })
            ) && named
                .last()
                .is_some_and(|n| items[n.at].sentence == item.sentence);
            if slip && risky(items, at) {
                return None;
            }
            let opens = before.is_none_or(|b| b.chunk != item.chunk || b.is_filler());
            if !opens {
                return None;
            }
            // "37 leveled. 48": a number left over at the end
            let said = |i: &&Item| !matches!(i.what, What::Sign(_) | What::Break);
            let leftover = named
                .last()
                .is_some_and(|n| items[n.at].sentence != item.sentence)
                && items[at + 1..].iter().filter(said).all(|i| {
                    matches!(i.what, What::Word { .. })
                        || i.is(Mark::Call)
                        || i.is_filler()
                        || i.is(Mark::Idle)
                })
                && !items[..at]
                    .iter()
                    .rev()
                    .find(said)
                    .is_some_and(|i| i.is(Mark::Sorry));
            if leftover {
                return None;
            }
            // "pressure at 12": what opens the chunk is a value where the chunk before ended in its noun
            match next_item.map(|n| n.what) {
                None => {
                    let second = named
                        .last()
                        .is_some_and(|n| items[n.at].sentence == item.sentence);
                    // "in with 14 - oops, 41": mends the trailer where no value stands to mend
                    let mended = second
                        && items[..at]
                            .iter()
                            .rev()
                            .find(|i| !matches!(i.what, What::Sign(_)))
                            .is_some_and(|i| i.is(Mark::Sorry))
                        && items
                            .iter()
                            .enumerate()
                            .filter(|(_, i)| i.sentence == item.sentence)
                            .all(|(i, x)| {
                                i == at
                                    || named.iter().any(|n| n.at == i)
                                    || !matches!(x.what, What::Number(_) | What::Range(..))
                            });
                    // "20 doesnt leak, 21 does"
                    let elided = second
                        && items.get(at + 1).is_some_and(|n| {
                            n.is(Mark::Aux)
                                || n.is(Mark::If)
                                || n.what
                                    == What::Is(Concept::Answer(crate::heard::ShortAnswer::Yes))
                        })
                        && items[..at]
                            .iter()
                            .rev()
                            .take(10)
                            .any(|i| i.is(Mark::Not) || i.is(Mark::No));
                    (mended || elided || value(item) < 10_000.0 && !second && !leftover)
                        .then_some(false)
                }
                Some(
                    What::Word { .. }
                    | What::Is(_)
                    | What::Number(_)
                    | What::Range(..)
                    | What::Clock(_)
                    | What::Circuit(_)
                    | What::Sign(_)
                    | What::Garbled,
                ) => Some(false),
                _ => Some(false),
            }
        }
        Some(What::Is(Concept::Mark(Mark::Bound))) => {
            // "under 50 psi" bounds a value, "under 12" is a place
            let valued = chunk_has_value_noun(items, at);
            // "over 12 sitting at a quarter tank": a whole number is no level
            let leveled = (at + 1..items.len())
                .take(12)
                .take_while(|i| items[*i].chunk == item.chunk)
                .any(|i| items[i].number().is_some_and(|n| n.form == Form::Part))
                && (at + 1..items.len())
                    .take(12)
                    .take_while(|i| items[*i].chunk == item.chunk)
                    .all(|i| {
                        items[i]
                            .noun()
                            .is_none_or(|n| n.is_tank() || n.reading().is_none())
                    });
            (!valued || leveled).then_some(false)
        }
        Some(What::Is(Concept::Mark(
            Mark::At | Mark::With | Mark::Inside | Mark::Of | Mark::From | Mark::To,
        ))) => {
            if range && next_item.is_none() && prior.is_some_and(|p| valued_before(items, p)) {
                return None;
            }
            let place = prior?;
            let at_word = items[place].is(Mark::At);
            if clock
                && next_item.is_none_or(|n| n.noun().is_none_or(|n| n.reading().is_none()))
                && item.what != What::Code
                && value(item) >= 100.0
                && !listed
            {
                return None;
            }
            // "opened 12 at 4": beside a trailer, what was done at a small number was done at that hour
            let told = named
                .last()
                .is_some_and(|n| items[n.at].chunk == item.chunk)
                && value(item) <= 12.0
                && next_item.is_none()
                && place + 1 == at;
            let done = (0..place)
                .rev()
                .take(8)
                .take_while(|i| items[*i].chunk == item.chunk)
                .any(|i| {
                    matches!(
                        items[i].what,
                        What::Is(
                            Concept::Event(_)
                                | Concept::State(
                                    State::Open
                                        | State::Closed
                                        | State::Pumped
                                        | State::Cleaned
                                        | State::Stocked
                                )
                        )
                    )
                });
            if at_word && told && done && !range {
                return None;
            }
            // "pressure at 55": the value, where no number follows and another trailer is named
            if at_word
                && valued_before(items, place)
                && next_item.is_none_or(|n| n.number().is_none())
                && others(items, at)
            {
                return None;
            }
            Some(false)
        }
        Some(What::Is(Concept::Mark(Mark::Clock | Mark::Label | Mark::Between | Mark::Minus))) => {
            None
        }
        // "22 has all 4 ...", "all four arrived": a count
        Some(What::Is(Concept::Mark(Mark::All)))
            if at > 0 && items[at - 1].is(Mark::All) && value(item) <= 4.0
                || named
                    .last()
                    .is_some_and(|n| items[n.at].chunk == item.chunk && n.at + 1 < at) =>
        {
            None
        }
        Some(What::Is(Concept::Mark(Mark::Call)))
            if risky(items, at) && chunk_has_value_noun(items, at) =>
        {
            None
        }
        Some(What::Is(Concept::Mark(
            Mark::And
            | Mark::Or
            | Mark::But
            | Mark::Not
            | Mark::Yet
            | Mark::If
            | Mark::Query
            | Mark::Aux
            | Mark::Sorry
            | Mark::Plan
            | Mark::Request
            | Mark::Doubt
            | Mark::All
            | Mark::Past
            | Mark::Now
            | Mark::Call
            | Mark::Yesterday
            | Mark::Order
            | Mark::Pronoun
            | Mark::Done
            | Mark::Idle,
        ))) => Some(false),
        Some(What::Is(Concept::Noun(noun))) => {
            if noun.reading().is_some()
                || matches!(noun, Noun::Circuit | Noun::Breaker | Noun::Amps)
            {
                // tank 12 full: a whole number is no level
                let leveled = noun.is_tank()
                    && next_item.is_some_and(|n| {
                        n.number()
                            .is_some_and(|n| n.form != Form::Whole || n.unit.is_some())
                            || matches!(
                                n.what,
                                What::Is(
                                    Concept::Level(_)
                                        | Concept::State(_)
                                        | Concept::Mark(Mark::Full | Mark::Empty)
                                )
                            )
                    });
                // "pulling 29 in": what is pulled is the trailer where no circuit is spoken of
                let pulled = noun == Noun::Amps
                    && next == Some(at + 1)
                    && next_item.is_some_and(|n| {
                        n.is(Mark::At)
                            || matches!(
                                n.what,
                                What::Is(Concept::State(
                                    State::Out | State::Off | State::Up | State::On
                                ))
                            )
                    })
                    && !items.iter().any(|i| {
                        matches!(i.what, What::Circuit(_))
                            || matches!(i.noun(), Some(Noun::Circuit | Noun::Breaker))
                    });
                return (leveled || pulled).then_some(false);
            }
            Some(false)
        }
        Some(What::Is(
            Concept::State(_)
            | Concept::Event(_)
            | Concept::Fault(_)
            | Concept::Clears(_)
            | Concept::Ask(_)
            | Concept::Need(_)
            | Concept::Level(_)
            | Concept::Answer(_),
        )) => Some(false),
        // "finisshed 11: filter changed"
        Some(What::Word { ordinary: false })
            if items.get(at + 1).is_some_and(|n| n.what == What::Sign(':'))
                && prior.is_some_and(|p| p == 0 || items[p - 1].sentence != item.sentence) =>
        {
            Some(false)
        }
        // a word nobody knows may be a slip for what gave the number its place
        Some(What::Word { ordinary: false }) if risky(items, at) => None,
        Some(What::Word { .. })
            if risky(items, at)
                && named
                    .last()
                    .is_some_and(|n| items[n.at].chunk == item.chunk) =>
        {
            None
        }
        Some(What::Word { .. } | What::Clock(_)) => Some(false),
        Some(What::Sign(_)) => None,
        _ => None,
    }
}

/// Tells whether a number stands later in the sentence where a trailer stands: after of, at, on.
fn placed_later(items: &[Item], at: usize) -> bool {
    (at + 2..items.len())
        .take(10)
        .take_while(|i| items[*i].sentence == items[at].sentence)
        .any(|i| {
            matches!(items[i].what, What::Number(n) if n.form == Form::Whole && n.unit.is_none())
                && (items[i - 1].is(Mark::Of)
                    || items[i - 1].is(Mark::At)
                    || items[i - 1].is(Mark::Article)
                    || items[i - 1].is(Mark::Unit)
                    || items[i - 1].what == What::Is(Concept::State(State::On)))
        })
}

/// Tells whether the sentence gives a current in amps.
fn amps_told(items: &[Item], at: usize) -> bool {
    let here = |i: &usize| items[*i].sentence == items[at].sentence;
    (0..at)
        .rev()
        .take(20)
        .take_while(here)
        .chain((at + 1..items.len()).take(20).take_while(here))
        .any(|i| items[i].number().is_some_and(|n| n.unit == Some(Unit::Amp)))
}

/// "26 outside" with no more in its sentence: the air, for no trailer is only outside.
fn outside(items: &[Item], at: usize) -> bool {
    items
        .get(at + 1)
        .is_some_and(|n| n.noun() == Some(Noun::Air) && n.end == n.first + 1)
        && items.get(at + 2).is_none_or(|n| {
            n.sentence != items[at].sentence || matches!(n.what, What::Sign(_) | What::Break)
        })
        && (at == 0 || items[at - 1].chunk != items[at].chunk || items[at - 1].is_filler())
        && items.get(at + 2).is_none()
}

fn value(item: &Item) -> f64 {
    match item.what {
        What::Number(n) => n.value,
        What::Range(from, ..) => from,
        _ => 0.0,
    }
}

/// Tells whether other numbers stand near, so that a wrong guess would move a value to another trailer.
fn risky(items: &[Item], at: usize) -> bool {
    let near = at.saturating_sub(16)..items.len().min(at + 16);
    near.into_iter().any(|i| {
        i != at
            && matches!(
                items[i].what,
                What::Number(_) | What::Range(..) | What::Code
            )
    })
}

/// Tells whether the chunk ends after `at`, or a trailer follows.
fn chunk_ends(items: &[Item], at: usize) -> bool {
    items.get(at + 1).is_none_or(|n| {
        n.chunk != items[at].chunk
            || matches!(n.what, What::Sign(_) | What::Break | What::Number(_))
            || n.is(Mark::Unit)
    })
}

/// Tells whether a noun that has numbers stands earlier in the sentence.
fn noun_earlier(items: &[Item], at: usize) -> bool {
    (0..at)
        .rev()
        .take(10)
        .take_while(|i| items[*i].sentence == items[at].sentence)
        .any(|i| items[i].noun().is_some_and(|n| n.reading().is_some()))
}

fn chunk_has_value_noun(items: &[Item], at: usize) -> bool {
    (at.saturating_sub(20)..items.len().min(at + 20))
        .filter(|i| items[*i].chunk == items[at].chunk)
        .any(|i| items[i].noun().is_some_and(|n| n.reading().is_some()))
}

/// Nouns whose number stands before them: 4 cords, 120 people.
fn counts(noun: Noun) -> bool {
    matches!(
        noun,
        Noun::Cords | Noun::Guests | Noun::Eta | Noun::AfterRegulator | Noun::BeforeRegulator
    )
}

/// Tells whether the noun at `noun` has a number of its own right after it.
fn owns_number(items: &[Item], noun: Option<usize>) -> bool {
    noun.and_then(|n| significant_after(items, n))
        .is_some_and(|i| {
            matches!(
                items[i].what,
                What::Number(_) | What::Range(..) | What::Is(Concept::Level(_))
            )
        })
}

/// Tells whether the word before `at` is a noun that has numbers.
fn valued_before(items: &[Item], at: usize) -> bool {
    significant_before(items, at).is_some_and(|i| {
        items[i]
            .noun()
            .is_some_and(|n| n.reading().is_some() && !n.is_tank() && !counts(n))
    })
}

/// Tells whether the sentence names another trailer for certain.
fn others(items: &[Item], at: usize) -> bool {
    let sentence = items[at].sentence;
    let mut i = at;
    let mut start = at;
    while i > 0 && items[i - 1].sentence == sentence {
        i -= 1;
        start = i;
    }
    let mut j = start;
    while j < items.len() && items[j].sentence == sentence {
        if j != at {
            let clear = items[j].what == What::Code
                || matches!(items[j].what, What::Number(n) if n.form == Form::Whole && n.unit.is_none())
                    && (j == start
                        || j > 0
                            && (items[j - 1].is(Mark::At)
                                || items[j - 1].is(Mark::With)
                                || items[j - 1].what == What::Is(Concept::State(State::On))
                                || items[j - 1].is(Mark::Unit)
                                || items[j - 1].is(Mark::Article)
                                || items[j - 1].what == What::Sign('#')));
            if clear {
                return true;
            }
        }
        j += 1;
    }
    false
}

/// Joins trailers named together and puts each group in place of its items.
fn join(items: &mut Vec<Item>, named: Vec<Named>) -> Vec<Group> {
    let mut groups: Vec<Group> = Vec::new();
    let mut last: Option<usize> = None; // item of the last group
    let mut i = 0;
    while i < named.len() {
        let current = &named[i];
        let at = current.at;
        // a list ends with its sentence, which also bounds how far this looks back
        let gap = last
            .filter(|l| items[*l].sentence == items[at].sentence)
            .map(|l| l + 1..at);
        // "12 14 and 15": taken for a list by what follows
        let side_by_side =
            gap.is_some() && last.is_some_and(|l| items[l].end == items[at].first && l + 1 == at);
        let linked = side_by_side
            || gap.as_ref().is_some_and(|gap| {
                !gap.is_empty()
                    && gap.clone().all(|g| {
                        matches!(
                            items[g].what,
                            What::Sign(',' | '/' | '+' | '#')
                                | What::Gone
                                | What::Is(Concept::Mark(
                                    Mark::And
                                        | Mark::Or
                                        | Mark::Article
                                        | Mark::Unit
                                        | Mark::At
                                        | Mark::With
                                        | Mark::Inside
                                        | Mark::To
                                ))
                        ) || items[g].is(Mark::Doubt) && gap.clone().any(|o| items[o].is(Mark::Or))
                    })
                    && gap.clone().any(|g| {
                        matches!(
                            items[g].what,
                            What::Sign(',' | '/' | '+')
                                | What::Is(Concept::Mark(Mark::And | Mark::Or | Mark::To))
                        )
                    })
                    && !gap.clone().any(|g| items[g].what == What::Break)
            });
        let commas = gap.as_ref().is_some_and(|gap| {
            gap.clone().any(|g| items[g].what == What::Sign(','))
                && !gap
                    .clone()
                    .any(|g| items[g].is(Mark::And) || items[g].is(Mark::Or))
        });
        // "leak on 12 and 14 has no lights": the second opens a clause of its own
        let alone = items.get(at + 1).is_some_and(|n| n.is(Mark::Aux))
            && last.is_some_and(|l| before_placed(items, l));
        // "12, 14 arrived" is a list; "leak on 12, 14 no lights" is not
        let list_goes_on = !commas
            || named
                .get(i + 1)
                .is_some_and(|n| short_link(items, at, n.at))
            || opens(items, last);
        let to = gap
            .as_ref()
            .is_some_and(|gap| gap.clone().any(|g| items[g].is(Mark::To)));
        // "12 and 13 too, and on 13 the floor": named again, it opens a clause of its own
        let anew = groups
            .last()
            .is_some_and(|g| current.names.iter().any(|n| g.names.contains(n)));
        if linked && !alone && list_goes_on && !anew {
            let group = groups.last_mut().expect("a linked trailer follows a group");
            let gap = gap.expect("linked");
            if to {
                let from = group
                    .names
                    .last()
                    .and_then(|n| n.as_str().parse::<f64>().ok());
                let upto = current.names[0].as_str().parse::<f64>().ok();
                if let Some(more) = from.zip(upto).and_then(|(a, b)| span(a, b)) {
                    group.names.pop();
                    group.names.extend(more);
                }
            } else {
                group.names.extend(current.names.iter().cloned());
            }
            group.explicit |= current.explicit;
            group.either |= gap.clone().any(|g| items[g].is(Mark::Or));
            for g in gap {
                items[g].what = What::Gone;
            }
            items[at].what = What::Gone;
            let end = items[at].end;
            let l = last.expect("linked");
            items[l].end = end;
            i += 1;
            last = Some(l);
            // what was between is gone: let the next link reach over it
            if named.get(i).is_some_and(|n| n.at > at) {
                last = Some(l);
            }
            continue;
        }
        let placed = at > 0 && {
            let mut j = at;
            let mut found = false;
            while j > 0 {
                j -= 1;
                match items[j].what {
                    What::Is(Concept::Mark(Mark::Unit | Mark::Article)) | What::Sign('#') => {
                        continue;
                    }
                    What::Is(Concept::Mark(
                        Mark::At | Mark::With | Mark::Inside | Mark::Of | Mark::From | Mark::To,
                    )) => {
                        found = true;
                        break;
                    }
                    _ => break,
                }
            }
            found
        };
        groups.push(Group {
            names: current.names.clone(),
            plural: false,
            explicit: current.explicit,
            either: false,
            placed,
        });
        items[at].what = What::Units(groups.len() - 1);
        last = Some(at);
        i += 1;
    }
    items.retain(|item| item.what != What::Gone);
    groups
}

fn before_placed(items: &[Item], at: usize) -> bool {
    at > 0 && items[at - 1].is(Mark::At)
}

fn short_link(items: &[Item], from: usize, to: usize) -> bool {
    (from + 1..to).all(|g| {
        matches!(
            items[g].what,
            What::Sign(',' | '/')
                | What::Is(Concept::Mark(
                    Mark::And | Mark::Or | Mark::Article | Mark::Unit
                ))
        )
    }) && from + 1 < to
}

fn opens(items: &[Item], last: Option<usize>) -> bool {
    last.is_some_and(|l| {
        (0..l)
            .rev()
            .take_while(|i| items[*i].sentence == items[l].sentence)
            .all(|i| {
                matches!(
                    items[i].what,
                    What::Is(Concept::Mark(
                        Mark::Unit | Mark::Article | Mark::Filler | Mark::All
                    )) | What::Sign(_)
                        | What::Break
                        | What::Gone
                )
            })
    })
}
