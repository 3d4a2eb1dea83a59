//! Facts to entries: each to the trailer it is about, contradictions dropped and asked about.

mod entry;
mod trailers;

use crate::heard::{Entry, Event, Fault, ReadingKey, UnitName};
use crate::words::attach::{Placed, Value};
use crate::words::concept::{Concept, Mark, State};
use crate::words::item::{Item, What};
use crate::words::pair::{Found, Outcome};
use crate::words::scope::{self, Aside, Day, Scope};
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
    /// The time given for it.
    pub when: Option<When>,
    /// It is said to have come again.
    pub again: bool,
    /// What was done is said to have held.
    pub held: bool,
}

/// A time that is given for a fact: a clock time in minutes, a word for an earlier time, or both.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct When {
    /// The clock time.
    pub minutes: Option<u16>,
    /// The word.
    pub day: Option<Day>,
}

impl When {
    /// Returns the time as an entry prints it.
    fn said(self) -> String {
        match (self.day, self.minutes) {
            (Some(day), minutes) => day.said(minutes),
            (None, minutes) => scope::clock(minutes.unwrap_or_default()),
        }
    }
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
    /// Why a pump-out was left out.
    pub pump_aside: Option<Aside>,
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
            if says == Says::That(Outcome::Event(Event::WastePumped)) {
                out.pump_aside.get_or_insert(aside);
            }
            let fault = matches!(says, Says::That(Outcome::Fault(_)));
            if aside == Aside::EarlierDay && (event || fault && !s.was) {
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
            held: false,
        });
    }
    with_its_pump_out(&mut facts, out);
    facts
}

/// Takes doubt and past off what can kill or has hurt somebody, and off the trailers beside it: "think I smell gas in 12"
/// doubts the gas. A trailer that alone is doubted stays so: "I smell gas, think it was 12".
pub(super) fn certain_dangers(found: &[Found], items: &[Item], scope: &mut [Scope]) {
    for f in found.iter().filter(|f| is_danger(f.outcome)) {
        let doubted = scope[f.at].doubt;
        for (at, (item, counts)) in items.iter().zip(&mut *scope).enumerate() {
            let here = item.sentence == items[f.at].sentence;
            let beside = doubted && here && matches!(item.what, What::Units(_));
            if at != f.at && !beside {
                continue;
            }
            counts.doubt = false;
            counts.was = false;
            counts.aside = counts.aside.filter(|aside| *aside != Aside::Past);
        }
    }
}

/// Tells whether it is a fault that can kill somebody or has hurt somebody.
fn is_danger(outcome: Outcome) -> bool {
    matches!(outcome, Outcome::Fault(fault) if Fault::DANGERS.contains(&fault))
}

/// "12 pumped yesterday, 300 gal": the gallons are of the pump-out that was set aside.
fn with_its_pump_out(facts: &mut Vec<Fact>, out: &mut Assembled) {
    let pumps = |says: Says| says == Says::That(Outcome::Event(Event::WastePumped));
    let Some(why) = out
        .pump_aside
        .filter(|_| !facts.iter().any(|f| pumps(f.says)))
    else {
        return;
    };
    facts.retain(|f| {
        let gallons = matches!(
            f.says,
            Says::Value(Value::Reading(ReadingKey::PumpedGal, _))
        );
        if gallons {
            out.aside.push((f.at, why.code()));
        }
        !gallons
    });
}

/// "a drip under the sink, think it was 7": where only a doubt names the trailer, nobody knows which it is. `alarmed` keeps
/// a danger all the same, of no trailer.
pub(super) fn doubted_trailers(
    facts: &mut Vec<Fact>,
    (items, scope): (&[Item], &[Scope]),
    alarmed: bool,
    out: &mut Assembled,
) {
    // a group that is named without a doubt anywhere is no doubted one
    let certain: BTreeSet<usize> = items
        .iter()
        .zip(scope)
        .filter(|(_, scope)| !scope.doubt || scope.aside.is_some())
        .filter_map(|(item, _)| match item.what {
            What::Units(group) => Some(group),
            _ => None,
        })
        .collect();
    facts.retain_mut(|fact| {
        let lost = fact.group.is_some_and(|group| !certain.contains(&group));
        if lost && alarmed && matches!(fact.says, Says::That(outcome) if is_danger(outcome)) {
            fact.group = None;
            return true;
        }
        if lost {
            out.unclear.push((fact.at, "which-unit"));
        }
        !lost
    });
}

/// Gives each fact the time that stands with it.
pub(super) fn times(facts: &mut [Fact], items: &[Item], scope: &[Scope]) {
    for fact in facts {
        let sentence = items[fact.at].sentence;
        let near = |i: &usize| items[*i].sentence == sentence;
        let back = (0..fact.at).rev().take(8).take_while(near);
        let on = (fact.at + 1..items.len()).take(8).take_while(near);
        let mut best: Option<(usize, u16)> = None;
        for i in back.chain(on) {
            // the hour of last night is none of now
            let same_day = scope[i].day == scope[fact.at].day
                || matches!(scope[i].day, None | Some(Day::Morning | Day::Ago(_)));
            // "tank 1/2, gotta leave by 5": the hour of a plan is none of now
            if let What::Clock(minutes) = items[i].what
                && same_day
                && scope[i].aside.is_none()
            {
                let same = items[i].chunk == items[fact.at].chunk;
                let cost = i.abs_diff(fact.at) + if same { 0 } else { 20 };
                if best.is_none_or(|(least, _)| cost < least) {
                    best = Some((cost, minutes));
                }
            }
        }
        let (minutes, day) = (best.map(|(_, m)| m), scope[fact.at].day);
        fact.when = (minutes.is_some() || day.is_some()).then_some(When { minutes, day });
    }
}

/// Marks what is said to have come again, and what was done and holds: "tripped again, I reset it, holding".
pub(super) fn lasting(facts: &mut [Fact], items: &[Item], scope: &[Scope]) {
    for fact in facts {
        fact.again = items[fact.at].what == What::Is(Concept::State(State::KeepsTripping))
            || (fact.at.saturating_sub(5)..items.len().min(fact.at + 5))
                .any(|i| items[i].is(Mark::Again) && items[i].chunk == items[fact.at].chunk);
        fact.held = holds(items, scope, fact.at);
    }
}

/// Tells whether the words after something done say that it holds, before they turn to another thing.
fn holds(items: &[Item], scope: &[Scope], at: usize) -> bool {
    let turns = |i: &Item| {
        i.noun().is_some() || matches!(i.what, What::Units(_) | What::Is(Concept::Fault(_)))
    };
    (at + 1..items.len())
        .take(8)
        .take_while(|i| items[*i].sentence <= items[at].sentence + 1 && !turns(&items[*i]))
        .find(|i| matches!(items[*i].what, What::Is(Concept::State(_))))
        .is_some_and(|i| {
            let stands = scope[i].aside.is_none() && !scope[i].doubt && !scope[i].denied;
            items[i].what == What::Is(Concept::State(State::Ok)) && stands
        })
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
        for mine in by_day(mine, out) {
            one_unit(unit.clone(), &mine, fixes, out);
        }
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

/// Parts what is said of an earlier day from the values of now, the earlier first. Of two values of one reading that of
/// now counts, and the other only says what was.
fn by_day<'f>(facts: &[&'f Fact], out: &mut Assembled) -> Vec<Vec<&'f Fact>> {
    let day = |f: &Fact| f.when.and_then(|when| when.day);
    let (mut earlier, now): (Vec<&Fact>, Vec<&Fact>) =
        facts.iter().copied().partition(|f| day(f).is_some());
    let read = |f: &Fact| match f.says {
        Says::Value(Value::Reading(key, _)) => Some(key),
        _ => None,
    };
    earlier.retain(|old| {
        let again = read(old).is_some() && now.iter().any(|f| read(f) == read(old));
        if again {
            out.aside.push((old.at, Aside::Past.code()));
        }
        !again
    });
    let valued = now.iter().any(|f| matches!(f.says, Says::Value(_)));
    let another_day = earlier
        .iter()
        .any(|f| matches!(day(f), Some(Day::Yesterday | Day::LastNight)));
    if valued && another_day {
        return vec![earlier, now];
    }
    let left = facts
        .iter()
        .copied()
        .filter(|f| day(f).is_none() || earlier.iter().any(|e| std::ptr::eq(*e, *f)));
    vec![left.collect()]
}

/// Tells whether a value said of several trailers holds for each: by a word such as "both", or as what a clause says that
/// they are.
fn shared(items: &[Item], at: usize, g: usize, group: &Group) -> bool {
    let chunk = items[at].chunk;
    let near =
        (at.saturating_sub(130)..items.len().min(at + 130)).filter(|i| items[*i].chunk == chunk);
    let mut all = group.plural;
    for i in near {
        all |= items[i].is(Mark::All)
            || items[i].what == What::Units(g) && items.get(i + 1).is_some_and(|n| n.is(Mark::Aux));
    }
    all
}
