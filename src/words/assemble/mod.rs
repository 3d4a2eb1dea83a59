//! Facts to entries: each to the trailer it is about, contradictions dropped and asked about.

mod entry;
mod trailers;

use crate::heard::{Entry, Event, ReadingKey, UnitName};
use crate::words::attach::{Placed, Value};
use crate::words::concept::{Concept, Mark, State};
use crate::words::item::{Item, What};
use crate::words::pair::{Found, Outcome};
use crate::words::scope::{Aside, Scope};
use crate::words::unit::Group;
use entry::one_unit;
use std::collections::BTreeMap;
use std::collections::BTreeSet;
pub(super) use trailers::assign;

/// One thing the message says, with its place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Fact {
    /// The item that carries it.
    pub at: usize,
    /// What it says.
    pub says: Says,
    /// The group of trailers it is about.
    pub group: Option<usize>,
    /// The clock time given for it, in minutes.
    pub when: Option<u16>,
    /// It is said to have come again.
    pub again: bool,
}

/// What a fact says.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Says {
    /// Something done, wrong or mended.
    That(Outcome),
    /// A value.
    Value(Value),
}

/// A piece set aside or to be asked about: the item and the reason.
pub(super) type Note = (usize, &'static str);

/// What became of the facts.
#[derive(Debug, Default)]
pub(super) struct Assembled {
    /// The entries.
    pub entries: Vec<Entry>,
    /// What to ask about.
    pub unclear: Vec<Note>,
    /// What was left out on purpose.
    pub aside: Vec<Note>,
}

/// Sorts facts by whether they count; those that do not go to `out`.
pub(super) fn sift(
    found: &[Found],
    placed: &[Placed],
    scope: &[Scope],
    out: &mut Assembled,
) -> Vec<Fact> {
    let mut facts: Vec<Fact> = Vec::new();
    let mut all: Vec<(usize, Says)> = found
        .iter()
        .map(|f| (f.at, Says::That(f.outcome)))
        .collect();
    all.extend(placed.iter().map(|p| (p.at, Says::Value(p.value))));
    all.sort_by_key(|(at, _)| *at);
    for (at, says) in all {
        let s = scope[at];
        let event = matches!(says, Says::That(Outcome::Event(_) | Outcome::Clears(_)));
        if says == Says::Value(Value::Label) {
            continue;
        }
        let eta = matches!(says, Says::Value(Value::Reading(ReadingKey::EtaMin, _)));
        let aside = s
            .aside
            .filter(|a| !(eta && *a == Aside::Plan))
            .or((s.was && !event).then_some(Aside::Past));
        if let Some(aside) = aside {
            out.aside.push((at, aside.code()));
            if aside == Aside::EarlierDay && event {
                out.unclear.push((at, "earlier-day"));
            }
            continue;
        }
        if s.doubt {
            out.unclear.push((at, "doubt"));
            continue;
        }
        if let Says::Value(Value::Unclear(why)) | Says::That(Outcome::Unclear(why)) = says {
            out.unclear.push((at, why));
            continue;
        }
        facts.push(Fact {
            at,
            says,
            group: None,
            when: None,
            again: false,
        });
    }
    facts
}

/// Gives each fact the clock time that stands with it.
pub(super) fn clocks(facts: &mut [Fact], items: &[Item]) {
    for fact in facts {
        let sentence = items[fact.at].sentence;
        let near = |i: &usize| items[*i].sentence == sentence;
        let back = (0..fact.at).rev().take(8).take_while(near);
        let on = (fact.at + 1..items.len()).take(8).take_while(near);
        let mut best: Option<(usize, u16)> = None;
        for i in back.chain(on) {
            if let What::Clock(minutes) = items[i].what {
                let same = items[i].chunk == items[fact.at].chunk;
                let cost = i.abs_diff(fact.at) + if same { 0 } else { 20 };
                if best.is_none_or(|(least, _)| cost < least) {
                    best = Some((cost, minutes));
                }
            }
        }
        fact.when = best.map(|(_, m)| m);
        fact.again = items[fact.at].what == What::Is(Concept::State(State::KeepsTripping))
            || (fact.at.saturating_sub(5)..items.len().min(fact.at + 5))
                .any(|i| items[i].is(Mark::Again) && items[i].chunk == items[fact.at].chunk);
    }
}

/// Makes entries of the facts.
pub(super) fn entries(
    facts: &[Fact],
    items: &[Item],
    groups: &[Group],
    fixes: &[usize],
    out: &mut Assembled,
) {
    // order first named
    let mut order: Vec<Option<UnitName>> = Vec::new();
    let mut about: Vec<(Option<UnitName>, Fact)> = Vec::new();
    for fact in facts {
        match fact.group {
            None => about.push((None, *fact)),
            Some(g) => {
                let group = &groups[g];
                if group.either {
                    out.unclear.push((fact.at, "which-unit"));
                    continue;
                }
                let value = matches!(fact.says, Says::Value(_));
                if value && group.names.len() > 1 && !shared(items, fact.at, g, group) {
                    out.unclear.push((fact.at, "which-unit"));
                    continue;
                }
                for name in &group.names {
                    about.push((Some(name.clone()), *fact));
                }
            }
        }
    }
    let mut listed: BTreeSet<Option<UnitName>> = BTreeSet::new();
    if about.iter().any(|(unit, _)| unit.is_none()) {
        order.push(None);
    }
    for item in items {
        if let What::Units(g) = item.what {
            for name in &groups[g].names {
                if listed.insert(Some(name.clone())) {
                    order.push(Some(name.clone()));
                }
            }
        }
    }
    let pumped = about
        .iter()
        .any(|(_, f)| f.says == Says::That(Outcome::Event(Event::WastePumped)));
    let mut by_unit: BTreeMap<Option<UnitName>, Vec<&Fact>> = BTreeMap::new();
    for (unit, fact) in &about {
        by_unit.entry(unit.clone()).or_default().push(fact);
    }
    for unit in order {
        let Some(mine) = by_unit.get(&unit) else {
            continue;
        };
        let mine_unit = unit.clone();
        one_unit(unit, mine, fixes, out);
        // "pumped 12, 300 gal, and 14, 250 gal": both were
        if let Some(entry) = out
            .entries
            .last_mut()
            .filter(|e| pumped && e.unit == mine_unit)
            && entry.readings.value(ReadingKey::PumpedGal).is_some()
            && !entry.events.contains(&Event::WastePumped)
        {
            entry.events.push(Event::WastePumped);
        }
    }
}

/// Tells whether a value said of several trailers holds for each.
fn shared(items: &[Item], at: usize, _g: usize, group: &Group) -> bool {
    let chunk = items[at].chunk;
    let near =
        (at.saturating_sub(130)..items.len().min(at + 130)).filter(|i| items[*i].chunk == chunk);
    let mut all = group.plural;
    for i in near {
        all |= items[i].is(Mark::All);
    }
    all
}
