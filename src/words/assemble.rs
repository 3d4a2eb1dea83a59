//! Facts to entries: each to the trailer it is about, contradictions dropped and asked about.

use std::collections::{BTreeMap, BTreeSet};

use super::attach::{Placed, Value};
use super::concept::{Concept, Mark, State};
use super::item::{Item, What};
use super::pair::{Found, Outcome};
use super::scope::{Aside, Scope, Sentence};
use super::unit::Group;
use crate::heard::{Amps, Entry, Event, Fault, ReadingKey, UnitName};

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

/// Gives each fact its trailers.
pub(super) fn assign(facts: &mut [Fact], items: &[Item], sentences: &[Sentence]) {
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
    for sentence in sentences {
        let first = cursor;
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
                for f in chunk_facts {
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
                    let group = if leading || chunk_units.len() == 1 {
                        before.or(after)
                    } else {
                        after.or(before)
                    };
                    facts[*f].group = group.map(|(_, g)| *g);
                }
                // what was said before in this sentence without a trailer is about the one named last
                let own = !chunk_facts.is_empty();
                if !pending.is_empty() && (!own || current.is_none()) {
                    for f in pending.drain(..) {
                        facts[f].group = Some(chunk_units[0].1);
                    }
                }
                in_sentence = chunk_units.last().map(|(_, g)| *g);
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
}

/// Tells whether the chunk opens with a noun whose value comes after the trailer: "pressure on 12 is 60".
fn noun_before(items: &[Item], start: usize, unit: usize) -> bool {
    items[start..unit]
        .iter()
        .any(|i| i.noun().is_some_and(|n| n.reading().is_some()) || i.number().is_some())
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

fn one_unit(unit: Option<UnitName>, facts: &[&Fact], fixes: &[usize], out: &mut Assembled) {
    let corrected = |a: usize, b: usize| fixes.iter().any(|f| (a..=b).contains(f));
    let mut entry = Entry {
        unit: unit.clone(),
        ..Entry::default()
    };
    let mut later: Vec<Entry> = Vec::new();
    let mut lasting: Vec<Fault> = Vec::new(); // faults said to come again
    let mut values: Vec<(ReadingKey, f64, &Fact, bool)> = Vec::new(); // false once dropped
    let mut amps: Vec<(Option<u8>, f64, usize, bool)> = Vec::new();
    for fact in facts {
        match fact.says {
            Says::That(Outcome::Event(event)) => {
                // a cure after its fault ends it; one that did not hold is followed by the fault again
                let cured: &[Fault] = match event {
                    Event::BreakerReset => &[Fault::BreakerTrip, Fault::GfciTrip],
                    Event::FuseReplaced => &[Fault::FuseBlown],
                    Event::PowerBack => &[Fault::NoPower],
                    Event::WaterOn => &[Fault::NoWater],
                    Event::Leveled => &[Fault::NotLevel],
                    _ => &[],
                };
                for fault in cured {
                    if entry.faults.contains(fault) && !lasting.contains(fault) {
                        entry.faults.retain(|f| f != fault);
                        entry.cleared.push(*fault);
                    }
                }
                if !entry.events.contains(&event) {
                    entry.events.push(event);
                }
            }
            Says::That(Outcome::Fault(fault)) => {
                entry.cleared.retain(|c| *c != fault);
                if fact.again {
                    lasting.push(fault);
                }
                if !entry.faults.contains(&fault) {
                    entry.faults.push(fault);
                }
            }
            Says::That(Outcome::Clears(fault)) => {
                entry.faults.retain(|f| *f != fault);
                if !entry.cleared.contains(&fault) {
                    entry.cleared.push(fault);
                }
            }
            Says::Value(Value::Reading(key, value)) => {
                let old = values.iter_mut().find(|(k, _, f, _)| {
                    *k == key && (f.when == fact.when || f.when.is_none() || fact.when.is_none())
                });
                match old {
                    None => values.push((key, value, fact, true)),
                    Some(old) if same(old.1, value) => {}
                    Some(old) if corrected(old.2.at, fact.at) => *old = (key, value, fact, true),
                    Some(old) => {
                        old.3 = false;
                        out.unclear.push((fact.at, "two-values"));
                    }
                }
            }
            Says::Value(Value::Taps(taps)) => entry.readings.taps = Some(taps),
            Says::Value(Value::Live(bits)) => {
                let live = entry.readings.circuits_live.get_or_insert_default();
                live.extend((1..=4).filter(|n| bits & (1 << n) != 0));
                live.sort_unstable();
                live.dedup();
            }
            Says::Value(Value::Amps(circuit, value)) => match amps
                .iter_mut()
                .find(|a| a.0 == circuit)
            {
                None => amps.push((circuit, value, fact.at, true)),
                Some(old) if same(old.1, value) => {}
                Some(old) if corrected(old.2, fact.at) => *old = (circuit, value, fact.at, true),
                Some(old) => {
                    old.3 = false;
                    out.unclear.push((fact.at, "two-values"));
                }
            },
            _ => {}
        }
    }
    let mut first: Option<u16> = None;
    for (key, value, fact, kept) in values {
        if !kept {
            continue;
        }
        if entry.readings.value(key).is_none() {
            entry.readings.set(key, value);
            first = first.or(fact.when);
        } else {
            let mut other = Entry {
                unit: unit.clone(),
                when: fact.when.map(clock),
                ..Entry::default()
            };
            other.readings.set(key, value);
            later.push(other);
        }
    }
    for (circuit, value, _, kept) in amps {
        if kept {
            entry.readings.amps.push(Amps {
                circuit,
                amps: crate::quantity::rounded(value),
            });
        }
    }
    entry.when = first
        .or_else(|| facts.iter().find_map(|f| f.when))
        .map(clock);
    if !entry.is_empty() {
        out.entries.push(entry);
    }
    later.sort_by(|a, b| a.when.cmp(&b.when));
    out.entries.extend(later);
}

fn clock(minutes: u16) -> String {
    format!("{:02}:{:02}", minutes / 60 % 24, minutes % 60)
}

fn same(a: f64, b: f64) -> bool {
    (a - b).abs() <= 0.001 * a.abs().max(1.0)
}
