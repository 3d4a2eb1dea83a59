//! Which trailer each fact is about.

use super::{Fact, Says};
use crate::words::concept::Mark;
use crate::words::item::{Item, What};
use crate::words::pair::Outcome;
use crate::words::scope::{Scope, Sentence};

/// Gives each fact its trailers.
pub(in crate::words) fn assign(
    facts: &mut Vec<Fact>,
    items: &[Item],
    sentences: &[Sentence],
    scope: &[Scope],
) {
    let units: Vec<(usize, usize)> = items
        .iter()
        .enumerate()
        .filter_map(|(i, item)| match item.what {
            What::Units(g) => Some((i, g)),
            _ => None,
        })
        .collect();
    let distinct = units.len();
    let mut current: Option<usize> = None;
    let mut unplaced: Vec<usize> = Vec::new();
    let mut cursor = 0;
    let mut also: Vec<Fact> = Vec::new();
    for sentence in sentences {
        let first = cursor;
        let mut said_before: Vec<usize> = Vec::new();
        while cursor < facts.len() && facts[cursor].at < sentence.end {
            cursor += 1;
        }
        let here: Vec<usize> = (first..cursor).collect();
        let from = units.partition_point(|(i, _)| *i < sentence.start);
        let to = units.partition_point(|(i, _)| *i < sentence.end);
        let named = &units[from..to];
        let mut pending: Vec<usize> = Vec::new();
        let mut in_sentence: Option<usize> = None;
        let mut at = sentence.start;
        while at < sentence.end {
            let chunk = items[at].chunk;
            let end = (at..sentence.end)
                .find(|i| items[*i].chunk != chunk)
                .unwrap_or(sentence.end);
            let chunk_facts: Vec<usize> = here
                .iter()
                .copied()
                .filter(|f| (at..end).contains(&facts[*f].at))
                .collect();
            let chunk_units: Vec<(usize, usize)> = named
                .iter()
                .copied()
                .filter(|(i, _)| (at..end).contains(i))
                .collect();
            if chunk_units.is_empty() {
                for f in chunk_facts.iter().copied() {
                    match in_sentence {
                        Some(g) => facts[f].group = Some(g),
                        None => pending.push(f),
                    }
                }
            } else {
                let opens = chunk_facts
                    .first()
                    .is_none_or(|f| chunk_units[0].0 < facts[*f].at);
                // a number's noun counts as the fact's place: "pressure on 12 55"
                let leading = opens && !noun_before(items, at, chunk_units[0].0);
                for f in &chunk_facts {
                    let place = facts[*f].at;
                    let before = chunk_units.iter().rev().find(|(i, _)| *i < place);
                    let after = chunk_units.iter().find(|(i, _)| *i > place);
                    // "pressure on 12 is 55 and on 14 is 60": what stands right after its trailer
                    let told = before.is_some_and(|(i, _)| {
                        items[i + 1..place]
                            .iter()
                            .all(|i| i.is_filler() || i.is(Mark::At) || i.is(Mark::To))
                            && items[i + 1..place].iter().any(|i| {
                                // "el de la 18 está a tres cuartos y el de la 19 a la mitad"
                                let value = matches!(facts[*f].says, Says::Value(_));
                                i.is(Mark::Aux) || value && i.is(Mark::Filler)
                            })
                    });
                    let group = if leading || told || chunk_units.len() == 1 {
                        before.or(after)
                    } else {
                        after.or(before)
                    };
                    facts[*f].group = group.map(|(_, g)| *g);
                }
                // what was said before in this sentence without a trailer is about the one named last
                let own = !chunk_facts.is_empty();
                let planned = chunk_units
                    .iter()
                    .all(|(i, _)| scope[*i].aside.is_some() || scope[*i].doubt);
                if !pending.is_empty() && (!own && !planned || current.is_none()) {
                    for f in pending.drain(..) {
                        facts[f].group = Some(chunk_units[0].1);
                    }
                }
                in_sentence = chunk_units.last().map(|(_, g)| *g);
                if chunk_facts.is_empty() && closes_with_also(items, at, end) {
                    also.extend(said_before.iter().map(|f| Fact {
                        at: chunk_units[0].0,
                        group: Some(chunk_units[0].1),
                        ..facts[*f]
                    }));
                }
            }
            if !chunk_facts.is_empty() {
                said_before = chunk_facts
                    .into_iter()
                    .filter(|f| {
                        matches!(
                            facts[*f].says,
                            Says::That(Outcome::Event(_) | Outcome::Fault(_))
                        )
                    })
                    .collect();
            }
            at = end;
        }
        for f in pending {
            match current {
                Some(g) => facts[f].group = Some(g),
                None => unplaced.push(f),
            }
        }
        if in_sentence.is_some() {
            current = in_sentence;
        }
    }
    // said before any trailer was named: clear only where the message names one group
    if distinct >= 1 {
        let group = units[0].1;
        let single = units.iter().all(|(_, g)| *g == group) || distinct == 1;
        if single {
            for f in unplaced {
                facts[f].group = Some(group);
            }
        }
    }
    if !also.is_empty() {
        facts.extend(also);
        facts.sort_by_key(|fact| fact.at);
    }
}

/// "25 is in the yard, 26 also": the clause says of its trailer what the one before said.
fn closes_with_also(items: &[Item], start: usize, end: usize) -> bool {
    items[start..end]
        .iter()
        .rev()
        .find(|i| !matches!(i.what, What::Sign(_) | What::Break))
        .is_some_and(|i| i.is(Mark::And))
}

/// Tells whether the chunk opens with a noun whose value comes after the trailer: "pressure on 12 is 60".
fn noun_before(items: &[Item], start: usize, unit: usize) -> bool {
    items[start..unit]
        .iter()
        .any(|i| i.noun().is_some_and(|n| n.reading().is_some()) || i.number().is_some())
}
