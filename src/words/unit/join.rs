//! Trailers named together: 12 and 14, 12-14, 9, 11 or 12.

use super::{Group, Named, span};
use crate::words::concept::{Concept, Mark, State};
use crate::words::item::{Item, What};

/// Joins trailers named together and puts each group in place of its items.
pub(super) fn join(items: &mut Vec<Item>, named: Vec<Named>) -> Vec<Group> {
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
                                        | Mark::For
                                        | Mark::With
                                        | Mark::Inside
                                        | Mark::To
                                ))
                        ) || items[g].is(Mark::Filler)
                            && gap.clone().any(|o| items[o].is(Mark::With))
                            || items[g].is(Mark::Doubt)
                                && gap.clone().any(|o| items[o].is(Mark::Or))
                    })
                    && gap.clone().any(|g| {
                        matches!(
                            items[g].what,
                            What::Sign(',' | '/' | '+')
                                | What::Is(Concept::Mark(Mark::And | Mark::Or | Mark::To))
                        )
                    })
                    && !gap.clone().any(|g| items[g].what == What::Break)
                    // "la 26 también, la 27 desnivelada": what closes a clause opens no list
                    && !gap.clone().any(|g| {
                        items[g].is(Mark::And)
                            && items.get(g + 1).is_some_and(|n| n.what == What::Sign(','))
                    })
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
        // "se tapó el baño de la 11 y en la 3 hay fuga": something is said of each
        let alone = alone
            || gap
                .clone()
                .zip(last)
                .is_some_and(|(gap, l)| each_has_its_own(items, gap, l, at));
        // "12, 14 arrived" is a list; "leak on 12, 14 no lights" is not
        let list_goes_on = !commas
            || named
                .get(i + 1)
                .is_some_and(|n| short_link(items, at, n.at))
            || opens(items, last)
            || ends_its_sentence(items, at) && groups.last().is_some_and(|g| g.names.len() > 1);
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
                        Mark::At
                        | Mark::For
                        | Mark::With
                        | Mark::Inside
                        | Mark::Of
                        | Mark::From
                        | Mark::To,
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
                    Mark::And | Mark::Or | Mark::Article | Mark::Unit
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
