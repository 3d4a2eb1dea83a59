//! Trailers named together: 12 and 14, 12-14, 9, 11 or 12.

use super::{Group, Named, span};
use crate::heard::UnitName;
use crate::words::concept::{Concept, Mark, State};
use crate::words::item::{Item, What};

/// Joins trailers named together and puts each group in place of its items.
pub(super) fn join(items: &mut Vec<Item>, named: Vec<Named>) -> Vec<Group> {
    let mut groups: Vec<Group> = Vec::new();
    let mut last: Option<usize> = None; // item of the last group
    for (n, current) in named.iter().enumerate() {
        if let (Some(first), Some(group)) = (last, groups.last_mut())
            && goes_with(items, group, first, &named[n..])
        {
            take_in(items, group, first, current);
            continue;
        }
        groups.push(Group {
            names: current.names.clone(),
            plural: false,
            explicit: current.explicit,
            either: false,
            placed: is_placed(items, current.at),
        });
        items[current.at].what = What::Units(groups.len() - 1);
        last = Some(current.at);
    }
    items.retain(|item| item.what != What::Gone);
    groups
}

/// Tells whether the first of some trailers is named together with the group before it, which stands at `first`.
fn goes_with(items: &[Item], group: &Group, first: usize, named: &[Named]) -> bool {
    let [current, rest @ ..] = named else {
        return false;
    };
    let at = current.at;
    // a list ends with its sentence, which also bounds how far this looks back
    if items[first].sentence != items[at].sentence {
        return false;
    }
    let gap = first + 1..at;
    // "12 14 and 15": taken for a list by what follows
    let taken_in = items[gap.clone()].iter().all(|i| i.what == What::Gone);
    let side_by_side = taken_in && items[first].end == items[at].first;
    if !side_by_side && !links(&items[gap.clone()], items.get(at)) {
        return false;
    }
    // "leak on 12 and 14 has no lights": the second opens a clause of its own
    let opens_a_clause = before_placed(items, first)
        && items.get(at + 1).is_some_and(|n| {
            let has_no = n.is(Mark::No) && n.end > n.first + 1;
            n.is(Mark::Aux) || has_no
        });
    // "12 and 13 too, and on 13 the floor": named again, it opens a clause of its own
    let anew = current.names.iter().any(|n| group.names.contains(n));
    // "se tapó el baño de la 11 y en la 3 hay fuga": something is said of each
    if opens_a_clause || anew || each_has_its_own(items, gap.clone(), first, at) {
        return false;
    }
    // "12, 14 arrived" is a list; "leak on 12, 14 no lights" is not
    let has = |what: &dyn Fn(&Item) -> bool| items[gap.clone()].iter().any(what);
    let only_commas = has(&|item| item.what == What::Sign(','))
        && !has(&|item| item.is(Mark::And) || item.is(Mark::Or));
    !only_commas
        || rest
            .first()
            .is_some_and(|next| short_link(items, at, next.at))
        || opens(items, Some(first))
        || ends_its_sentence(items, at) && group.names.len() > 1
}

/// Tells whether what stands between two trailers makes a list of them; `next` is the second.
fn links(gap: &[Item], next: Option<&Item>) -> bool {
    let has = |mark| gap.iter().any(|item| item.is(mark));
    let may_stand = |item: &Item| {
        matches!(
            item.what,
            What::Sign(',' | '/' | '+' | '#')
                | What::Gone
                | What::Is(Concept::Mark(
                    Mark::And
                        | Mark::Or
                        | Mark::Article
                        | Mark::Unit
                        | Mark::At
                        | Mark::For
                        | Mark::With
                        | Mark::Inside
                        | Mark::To
                ))
        ) || item.is(Mark::Filler) && has(Mark::With)
            || item.is(Mark::Doubt) && has(Mark::Or)
    };
    let joins = |item: &Item| {
        matches!(
            item.what,
            What::Sign(',' | '/' | '+') | What::Is(Concept::Mark(Mark::And | Mark::Or | Mark::To))
        )
    };
    // "la 26 también, la 27 desnivelada": what closes a clause opens no list
    let after = gap.iter().skip(1).chain(next);
    let closes =
        |(item, after): (&Item, &Item)| item.is(Mark::And) && after.what == What::Sign(',');
    gap.iter().all(may_stand)
        && gap.iter().any(joins)
        && !gap.iter().any(|item| item.what == What::Break)
        && !gap.iter().zip(after).any(closes)
}

/// Takes a trailer into the group at `first`, a span of them where a "to" stands between.
fn take_in(items: &mut [Item], group: &mut Group, first: usize, current: &Named) {
    let gap = first + 1..current.at;
    let between = |mark| items[gap.clone()].iter().any(|item| item.is(mark));
    group.explicit |= current.explicit;
    group.either |= between(Mark::Or);
    if between(Mark::To) {
        let number = |name: &UnitName| name.as_str().parse::<f64>().ok();
        let from = group.names.last().and_then(number);
        let upto = number(&current.names[0]);
        if let Some(more) = from.zip(upto).and_then(|(a, b)| span(a, b)) {
            group.names.pop();
            group.names.extend(more);
        }
    } else {
        group.names.extend(current.names.iter().cloned());
    }
    items[first].end = items[current.at].end;
    for item in &mut items[first + 1..=current.at] {
        item.what = What::Gone;
    }
}

/// Tells whether a place word stands before a trailer: at, for, with, in, of, from, to.
fn is_placed(items: &[Item], at: usize) -> bool {
    let naming = |item: &&Item| {
        matches!(
            item.what,
            What::Is(Concept::Mark(Mark::Unit | Mark::Article)) | What::Sign('#')
        )
    };
    let before = items[..at].iter().rev().find(|item| !naming(item));
    before.is_some_and(|item| {
        matches!(
            item.what,
            What::Is(Concept::Mark(
                Mark::At | Mark::For | Mark::With | Mark::Inside | Mark::Of | Mark::From | Mark::To
            ))
        )
    })
}

/// Tells whether a place word parts two trailers, with a fault or a deed told before the first and another after the second.
fn each_has_its_own(
    items: &[Item],
    gap: std::ops::Range<usize>,
    first: usize,
    second: usize,
) -> bool {
    let told = |i: &Item| {
        matches!(i.what, What::Is(Concept::Event(_) | Concept::Fault(_)))
            || matches!(i.what, What::Is(Concept::State(state)) if state != State::On)
    };
    let placed = gap.clone().any(|g| items[g].is(Mark::And))
        && gap
            .clone()
            .any(|g| items[g].what == What::Is(Concept::Mark(Mark::At)));
    let chunk = items[second].chunk;
    let before = (0..first)
        .rev()
        .take(12)
        .take_while(|i| items[*i].chunk == items[first].chunk)
        .any(|i| told(&items[i]));
    let after = (second + 1..items.len())
        .take(8)
        .take_while(|i| items[*i].chunk == chunk)
        .any(|i| told(&items[i]));
    placed && before && after
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
                    Mark::And | Mark::Or | Mark::Article | Mark::Unit | Mark::With
                ))
        )
    }) && from + 1 < to
}

/// "restocked 14, 15, 16.": nothing more is said of the last.
fn ends_its_sentence(items: &[Item], at: usize) -> bool {
    items[at + 1..]
        .iter()
        .take_while(|i| i.sentence == items[at].sentence)
        .all(|i| matches!(i.what, What::Sign(_) | What::Break))
}

pub(super) fn opens(items: &[Item], last: Option<usize>) -> bool {
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
