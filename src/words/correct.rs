//! Corrections: what a sender takes back is mended before anything is read from it.

use super::concept::{Concept, Mark, Noun, State, Unit};
use super::instead;
use super::item::{Form, Item, Number, What};
use super::unit::Group;
use crate::heard::{Language, UnitName};

/// A number that corrects another is of its size: beyond this ratio it may be a trailer.
const LIKE_SIZE: f64 = 2.5;
/// Within this ratio of both the trailer's number and the value, a bare number could mend either.
const NEAR_BOTH: f64 = 1.5;

/// Applies corrections in place; returns the items at which one stands, and those that could mend either of two things.
pub(super) fn apply(
    items: &mut [Item],
    groups: &mut [Group],
    language: Option<Language>,
) -> (Vec<usize>, Vec<usize>) {
    let mut marks = Vec::new();
    let mut doubtful = Vec::new();
    noes_that_mend(items);
    noes_between_opposites(items, language);
    for at in 0..items.len() {
        if items[at].is(Mark::Not) || items[at].is(Mark::No) {
            if !trailer_contrasted(items, groups, at)
                && !instead::value(items, groups, at)
                && !instead::place(items, groups, at)
            {
                contrast(items, at);
            }
            continue;
        }
        if !mends(items, at) {
            continue;
        }
        let Some(before) = (0..at).rev().find(|i| says_something(&items[*i])) else {
            continue;
        };
        marks.push(at);
        // "off, sorry, on", and not "off, sorry, on 8"
        let turned_on = |i: usize| {
            items[before].what == What::Is(Concept::State(State::Off))
                && items[i].what == What::Is(Concept::State(State::On))
                && !items
                    .get(i + 1)
                    .is_some_and(|n| matches!(n.what, What::Units(_) | What::Number(_)))
        };
        let Some(next) = (at + 1..items.len())
            .take(6)
            .find(|i| !skipped(&items[*i]) || turned_on(*i))
        else {
            continue;
        };
        if trailer_mended(items, groups, at, next) {
            continue;
        }
        match items[next].what {
            What::Units(new) => {
                // "sorry, on 8": where, and not switched on
                for item in &mut items[at + 1..next] {
                    if item.what == What::Is(Concept::State(State::On)) {
                        item.what = What::Gone;
                    }
                }
                units(items, groups, before, next, new, &mut doubtful);
            }
            What::Number(number) => {
                let mended = Mended {
                    at,
                    before,
                    next,
                    number,
                };
                mended.apply(items, groups, &mut doubtful);
            }
            What::Is(Concept::Level(_)) => level_mended(items, at, next),
            What::Word { ordinary: false } => {
                let star = items[at].what == What::Sign('*');
                if star || items[next].sentence == items[before].sentence {
                    doubtful.extend(told_before_a_strange_word(items, at, next));
                }
            }
            What::Is(Concept::Noun(noun)) => noun_mended(items, at, next, noun),
            What::Is(Concept::Unit(unit)) => measure_mended(items, at, next, unit),
            What::Is(Concept::Event(_) | Concept::State(_))
                if matches!(
                    items[before].what,
                    What::Is(Concept::Event(_) | Concept::State(_))
                ) && items[before].sentence == items[next].sentence =>
            {
                items[before].what = What::Gone;
            }
            _ => {}
        }
    }
    (marks, doubtful)
}

/// Tells whether a word of correction stands at `at`, or a star that touches what it mends.
fn mends(items: &[Item], at: usize) -> bool {
    let next = items.get(at + 1);
    let star = items[at].what == What::Sign('*')
        && next.is_some_and(|n| n.glued && n.what != What::Sign('*'));
    items[at].is(Mark::Sorry) || star
}

/// "3/4, no wait, full": the level takes the place of the one told before.
fn level_mended(items: &mut [Item], at: usize, next: usize) {
    let level = |i: &usize| {
        matches!(items[*i].what, What::Is(Concept::Level(_)))
            || items[*i].number().is_some_and(|n| n.form == Form::Part)
    };
    if let Some(old) = (0..at).rev().take(16).find(level) {
        items[old].what = items[next].what;
        items[next].what = What::Gone;
    }
}

/// "*resh", "I mean wastr": what was mended cannot be told, and the value told before is doubtful.
fn told_before_a_strange_word(items: &[Item], at: usize, next: usize) -> Option<usize> {
    let ends = items
        .get(next + 1)
        .is_none_or(|n| matches!(n.what, What::Sign(_) | What::Break));
    let value = |i: &usize| {
        matches!(
            items[*i].what,
            What::Number(_) | What::Is(Concept::Level(_))
        )
    };
    (0..at).rev().take(8).find(value).filter(|_| ends)
}

/// A number behind a word of correction.
struct Mended {
    /// The word of correction.
    at: usize,
    /// The last item before it that says something.
    before: usize,
    /// The number's item.
    next: usize,
    number: Number,
}

impl Mended {
    /// Mends the trailer, the level or the value that it can only mean; what could be either is doubtful.
    fn apply(&self, items: &mut [Item], groups: &mut [Group], doubtful: &mut Vec<usize>) {
        let number = self.number;
        let old = (0..self.at)
            .rev()
            .take(16)
            .find(|i| self.is_like(items, *i));
        let trailer = self.trailer(items, groups);
        if let Some(group) = self.right_after_a_trailer(items, trailer)
            && !self.is_near(items, old)
        {
            groups[group].names = vec![UnitName::new(&number.value.to_string())];
            items[self.next].what = What::Gone;
            return;
        }
        // "lleno, no espera, 3/4"
        let level = (0..self.at)
            .rev()
            .take(8)
            .find(|i| matches!(items[*i].what, What::Is(Concept::Level(_))))
            .filter(|_| number.form == Form::Part && old.is_none());
        if let Some(level) = level {
            items[level].what = What::Number(number);
            items[self.next].what = What::Gone;
            return;
        }
        let Some(old) = old else { return };
        if self.could_be_either(items, trailer, old) {
            doubtful.push(old);
            doubtful.push(self.next);
            return;
        }
        let unit = number.unit.or(items[old].number().and_then(|n| n.unit));
        items[old].what = What::Number(Number { unit, ..number });
        items[self.next].what = What::Gone;
    }

    /// Tells whether the number at `i` is of its kind, so that it may take its place.
    fn is_like(&self, items: &[Item], i: usize) -> bool {
        items[i].number().is_some_and(|old| {
            (old.unit == self.number.unit || old.unit.is_none() || self.number.unit.is_none())
                && (old.form == Form::Part) == (self.number.form == Form::Part)
        })
    }

    /// Returns the number that the trailer named last is named by.
    fn trailer(&self, items: &[Item], groups: &[Group]) -> Option<f64> {
        (0..self.at)
            .rev()
            .take(16)
            .find_map(|i| match items[i].what {
                What::Units(g) if groups[g].names.len() == 1 => {
                    groups[g].names[0].as_str().parse::<f64>().ok()
                }
                _ => None,
            })
    }

    fn is_bare(&self) -> bool {
        self.number.unit.is_none() && self.number.form == Form::Whole
    }

    /// "tank 3/4 on 14, sorry, 15": right after a trailer a name like it.
    fn right_after_a_trailer(&self, items: &[Item], trailer: Option<f64>) -> Option<usize> {
        let What::Units(group) = items[self.before].what else {
            return None;
        };
        let like_it = trailer.is_some_and(|name| apart(self.number.value, name) < LIKE_SIZE.ln());
        (self.is_bare() && like_it).then_some(group)
    }

    /// Tells whether it is of the size of the value told before.
    fn is_near(&self, items: &[Item], old: Option<usize>) -> bool {
        old.and_then(|o| items[o].number()).is_some_and(|old| {
            old.form != Form::Part && apart(self.number.value, old.value) < LIKE_SIZE.ln()
        })
    }

    /// "16 is 40%, sorry, 14": it could as well mend the trailer.
    fn could_be_either(&self, items: &[Item], trailer: Option<f64>, old: usize) -> bool {
        let Some((name, old)) = trailer.zip(items[old].number()) else {
            return false;
        };
        let like_name = apart(self.number.value, name);
        let like_old = apart(self.number.value, old.value);
        let nearer = old.unit.is_some() && like_name < LIKE_SIZE.ln() && like_name <= like_old;
        let bare = old.unit.is_none() && old.form == Form::Whole;
        // "22 tank 30, oops, 31": near to both, and neither has a measure
        let both = bare && like_name.max(like_old) < NEAR_BOTH.ln();
        // "14 tank 70. *17": like the trailer's name, and unlike the value
        let like_name_only = bare && like_name < NEAR_BOTH.ln() && like_name < like_old / 2.0;
        self.is_bare() && (nearer || both || like_name_only)
    }
}

/// How far two numbers lie apart, as the logarithm of their ratio.
fn apart(a: f64, b: f64) -> f64 {
    (a.abs().max(0.001) / b.abs().max(0.001)).ln().abs()
}

/// "a 50 psi, no, a 55": alone between two values it takes the first one back.
fn noes_that_mend(items: &mut [Item]) {
    let comma = |i: Option<&Item>| i.is_some_and(|i| matches!(i.what, What::Sign(',' | '-')));
    for at in 2..items.len() {
        let alone = items[at].is(Mark::No)
            && comma(items.get(at - 1))
            && comma(items.get(at + 1))
            && items[at - 2].sentence == items[at].sentence;
        let Some(old) = items[at - 2].number().filter(|_| alone) else {
            continue;
        };
        let next = (at + 2..items.len())
            .take(3)
            .find(|i| !(items[*i].is_filler() || items[*i].is(Mark::At)));
        let mends = next.is_some_and(|i| {
            let ends = items
                .get(i + 1)
                .is_none_or(|n| n.chunk != items[i].chunk || matches!(n.what, What::Sign(_)));
            let alike = items[i].number().is_some_and(|new| {
                (new.unit.is_none() || new.unit == old.unit)
                    && (new.form == Form::Part) == (old.form == Form::Part)
            });
            ends && alike && items[i].sentence == items[at].sentence
        });
        if mends {
            items[at].what = What::Is(Concept::Mark(Mark::Sorry));
        }
    }
}

/// "tank empty, no full", "heater off no on": between two levels or two states it takes the first one back. In Spanish it
/// does so between commas only: "lleno no vacío" denies the second.
fn noes_between_opposites(items: &mut [Item], language: Option<Language>) {
    let comma = |i: &Item| matches!(i.what, What::Sign(',' | '-'));
    for at in 1..items.len().saturating_sub(1) {
        if !items[at].is(Mark::No) {
            continue;
        }
        let (left, right) = (comma(&items[at - 1]), comma(&items[at + 1]));
        let old = at.checked_sub(1 + usize::from(left));
        let (Some(old), Some(new)) = (
            old.map(|old| &items[old]),
            items.get(at + 1 + usize::from(right)),
        ) else {
            continue;
        };
        let opposite = match (old.what, new.what) {
            (What::Is(Concept::Level(old)), What::Is(Concept::Level(new))) => old != new,
            (What::Is(Concept::State(old)), What::Is(Concept::State(new))) => matches!(
                (old, new),
                (State::On, State::Off) | (State::Off, State::On)
            ),
            _ => false,
        };
        let denies = language == Some(Language::Es) && !(left && right);
        if opposite && !denies && old.sentence == new.sentence {
            items[at].what = What::Is(Concept::Mark(Mark::Sorry));
        }
    }
}

/// "14 psi 55. sorry 15 not 14": which trailer was not meant is said. Tells whether that was so.
fn trailer_mended(items: &mut [Item], groups: &mut [Group], at: usize, next: usize) -> bool {
    let What::Units(new) = items[next].what else {
        return false;
    };
    if !items
        .get(next + 1)
        .is_some_and(|n| n.is(Mark::Not) || n.is(Mark::No))
    {
        return false;
    }
    let denied = match items.get(next + 2).map(|i| i.what) {
        Some(What::Number(n)) if n.form == Form::Whole && n.unit.is_none() => {
            UnitName::new(&n.value.to_string())
        }
        Some(What::Units(g)) if groups[g].names.len() == 1 => groups[g].names[0].clone(),
        _ => return false,
    };
    let old = items[..at].iter().rev().find_map(|i| match i.what {
        What::Units(g) if groups[g].names == [denied.clone()] => Some(g),
        _ => None,
    });
    let Some(old) = old else { return false };
    groups[old].names = groups[new].names.clone();
    for item in &mut items[next..next + 3] {
        item.what = What::Gone;
    }
    true
}

/// "psi 64 on 24... 42, not 24": the trailer that was named and is denied goes for the one right before. Tells whether that
/// was so.
fn trailer_contrasted(items: &mut [Item], groups: &mut [Group], at: usize) -> bool {
    let denied = match items.get(at + 1).map(|i| i.what) {
        Some(What::Number(n)) if n.form == Form::Whole && n.unit.is_none() => {
            UnitName::new(&n.value.to_string())
        }
        Some(What::Units(g)) if groups[g].names.len() == 1 => groups[g].names[0].clone(),
        _ => return false,
    };
    let Some(before) = (0..at).rev().take(3).find(|i| says_something(&items[*i])) else {
        return false;
    };
    let What::Units(meant) = items[before].what else {
        return false;
    };
    let wrong = items[..before]
        .iter()
        .position(|i| matches!(i.what, What::Units(g) if groups[g].names == [denied.clone()]));
    let Some(What::Units(wrong)) = wrong.map(|i| items[i].what) else {
        return false;
    };
    groups[wrong].names = groups[meant].names.clone();
    for i in [before, at, at + 1] {
        items[i].what = What::Gone;
    }
    true
}

/// "temp 15 no wait thats celsius": the measure of the value before.
fn measure_mended(items: &mut [Item], at: usize, next: usize, unit: Unit) {
    let more = items
        .get(next + 1)
        .is_some_and(|n| n.number().is_some() && n.chunk == items[next].chunk);
    let old = (0..at).rev().take(8).find(|i| items[*i].number().is_some());
    let Some(old) = old.filter(|_| !more) else {
        return;
    };
    let kind = |unit: Unit| match unit {
        Unit::Deg | Unit::DegC | Unit::DegF => 1,
        Unit::Gal | Unit::Litre | Unit::Pct => 2,
        Unit::Ft | Unit::Metre => 3,
        Unit::Mph | Unit::Kmh | Unit::Ms | Unit::Knot => 4,
        unit if unit.is_pressure() => 5,
        _ => 0,
    };
    if let What::Number(number) = &mut items[old].what
        && kind(unit) > 0
        && number.unit.is_none_or(|old| kind(old) == kind(unit))
    {
        number.unit = Some(unit);
        items[next].what = What::Gone;
    }
}

fn says_something(item: &Item) -> bool {
    matches!(
        item.what,
        What::Number(_)
            | What::Units(_)
            | What::Range(..)
            | What::Is(
                Concept::Noun(_)
                    | Concept::State(_)
                    | Concept::Event(_)
                    | Concept::Fault(_)
                    | Concept::Level(_)
            )
    )
}

fn skipped(item: &Item) -> bool {
    item.is_filler()
        || matches!(item.what, What::Sign(_) | What::Break)
        || item.is(Mark::Sorry)
        || item.is(Mark::Pronoun)
        || item.is(Mark::At)
        || item.is(Mark::With)
        || item.is(Mark::Unit)
        || item.what == What::Is(Concept::State(State::On))
}

fn units(
    items: &mut [Item],
    groups: &mut [Group],
    before: usize,
    next: usize,
    new: usize,
    doubtful: &mut Vec<usize>,
) {
    // "60%, sorry, on 8": a place, and no value
    let placed = matches!(
        next.checked_sub(1).map(|i| items[i].what),
        Some(What::Is(Concept::State(State::On)))
    );
    let loose = !placed && !groups[new].explicit && groups[new].names.len() == 1;
    let number = groups[new].names[0].as_str().parse::<f64>().ok();
    if let (true, Some(value), Some(old)) = (loose, number, items[before].number()) {
        // "27 at 62 psi. oops 26": as near to the trailer's name as to the value
        let name = (0..before).rev().find_map(|i| match items[i].what {
            What::Units(g) if groups[g].names.len() == 1 => {
                groups[g].names[0].as_str().parse::<f64>().ok()
            }
            _ => None,
        });
        if name.is_some_and(|name| apart(value, name) <= apart(value, old.value)) {
            doubtful.extend([before, next]);
            return;
        }
        let alike = old.value.abs() > 0.0
            && value / old.value.abs() <= LIKE_SIZE
            && old.value.abs() / value.max(0.001) <= LIKE_SIZE;
        if alike && old.form != Form::Part {
            let mut mended = old;
            mended.value = value;
            items[before].what = What::Number(mended);
            items[next].what = What::Gone;
        } else {
            doubtful.push(before);
            doubtful.push(next);
        }
        return;
    }
    // "40 libras e presion, digo 60": of the size of the value told before, it may as well mend that
    let value_like = number.filter(|_| loose).and_then(|value| {
        (before.saturating_sub(6)..=before).rev().find(|i| {
            items[*i].number().is_some_and(|n| {
                n.unit.is_some()
                    && n.value > 0.0
                    && (value / n.value).max(n.value / value) <= LIKE_SIZE
            })
        })
    });
    let Some(old) = (0..next).rev().find_map(|i| match items[i].what {
        What::Units(g) => Some(g),
        _ => None,
    }) else {
        return;
    };
    let apart = |a: f64, b: f64| (a / b).max(b / a);
    let nearer = |at: &usize| {
        let told = items[*at].number().map_or(0.0, |n| n.value);
        let value = number.unwrap_or_default();
        groups[old].names.iter().all(|name| {
            let name = name.as_str().parse::<f64>().ok();
            name.is_none_or(|name| apart(value, told) < apart(value, name))
        })
    };
    if let Some(at) = value_like.filter(nearer) {
        doubtful.push(at);
        doubtful.push(next);
        return;
    }
    if groups[old].names.len() == groups[new].names.len()
        || matches!(items[before].what, What::Units(_)) && groups[new].names.len() == 1
    {
        if groups[old].names.len() > 1 && groups[new].names.len() == 1 {
            groups[old].names.pop();
            let name = groups[new].names[0].clone();
            groups[old].names.push(name);
        } else {
            groups[old].names = groups[new].names.clone();
        }
        let more = (next + 1..items.len())
            .take_while(|i| items[*i].chunk == items[next].chunk)
            .any(|i| says_something(&items[i]));
        if !more {
            items[next].what = What::Gone;
        }
    }
}

fn noun_mended(items: &mut [Item], at: usize, next: usize, noun: Noun) {
    let after = (next + 1..items.len())
        .take_while(|i| items[*i].chunk == items[next].chunk)
        .find(|i| !items[*i].is_filler());
    match after.map(|i| items[i].what) {
        // "fresh half, I mean waste half": the same value, of another tank
        Some(What::Number(number)) => {
            let old = (0..at)
                .rev()
                .take(16)
                .take_while(|i| !matches!(items[*i].what, What::Units(_)))
                .find(|i| items[*i].number() == Some(number));
            let label = old.and_then(|o| {
                (0..o)
                    .rev()
                    .take(4)
                    .find(|i| items[*i].noun().is_some_and(|n| n.reading().is_some()))
            });
            if let (Some(old), Some(label)) = (old, label)
                && items[label].noun() != Some(noun)
                && noun.reading().is_some()
            {
                items[old].what = What::Gone;
                items[label].what = What::Gone;
            }
        }
        Some(What::Range(..) | What::Is(Concept::Level(_))) => {}
        Some(What::Is(Concept::State(_))) => {
            // power on, no wait, power off
            let old = (0..at)
                .rev()
                .take(10)
                .find(|i| items[*i].noun() == Some(noun));
            if let Some(state) = old.and_then(|o| {
                (o..at).find(|i| matches!(items[*i].what, What::Is(Concept::State(_))))
            }) {
                items[state].what = What::Gone;
            }
        }
        _ => {
            if noun.reading().is_none() {
                return;
            }
            if let Some(old) = (0..at)
                .rev()
                .take(16)
                .find(|i| items[*i].noun().is_some_and(|n| n.reading().is_some()))
            {
                items[old].what = What::Is(Concept::Noun(noun));
                items[next].what = What::Gone;
            }
        }
    }
}

/// "55, not 62", "14 not 12", "not 12, 14": what follows "not" goes.
fn contrast(items: &mut [Item], at: usize) {
    // "a 3,2 bar, no a 2,3": a place word may stand between, where "no" opens its chunk
    let no = items[at].is(Mark::No);
    let opens = at > 0 && items[at - 1].chunk != items[at].chunk;
    let leads = |i: &Item| i.is(Mark::At) || i.is(Mark::To) || i.is_filler();
    let Some(next) = (at + 1..items.len())
        .take(if opens { 3 } else { 1 })
        .find(|i| !leads(&items[*i]))
        .filter(|i| items[*i].chunk == items[at].chunk)
    else {
        return;
    };
    let value = matches!(items[next].what, What::Number(_) | What::Units(_));
    let value_before = at > 1 && items[at - 2..at].iter().any(|i| i.number().is_some());
    if !value || no && !(opens && value_before && items[next].number().is_some()) {
        return;
    }
    let before = (0..at).rev().take(8).find(|i| says_something(&items[*i]));
    let after = (next + 1..items.len())
        .take(3)
        .find(|i| says_something(&items[*i]));
    let with = |i: Option<usize>| {
        i.is_some_and(|i| matches!(items[i].what, What::Number(_) | What::Units(_)))
    };
    // "71 psi at the inlet, not 17"
    let told_before = before.is_some_and(|i| {
        i > 0
            && items[i].noun().is_some()
            && items[i - 1].number().is_some()
            && items[i - 1].chunk == items[i].chunk
    });
    if with(before) || told_before || with(after) {
        items[at].what = What::Gone;
        items[next].what = What::Labelled;
    }
}

#[cfg(test)]
mod tests {
    use crate::heard::Event::{self, HeaterOff, HeaterOn, WaterOff, WaterOn};
    use crate::heard::ReadingKey;
    use crate::quantity::TemperatureScale;
    use crate::words::Reader;

    fn events(text: &str) -> Vec<Event> {
        let heard = Reader::new().hear(text, TemperatureScale::F);
        let entries = heard.entries.into_iter();
        entries.flat_map(|entry| entry.events).collect()
    }

    #[test]
    fn the_last_of_two_opposites_stands() {
        for (text, stands) in [
            ("10 heater off no on", HeaterOn),
            ("10 heater on, no off", HeaterOff),
            ("10 heater off sorry on", HeaterOn),
            ("10 heater off, sorry, on 12", HeaterOff),
            ("10 water on, no, off", WaterOff),
            ("10 water off no on", WaterOn),
            ("10 heater on, no leaks", HeaterOn),
        ] {
            assert_eq!(events(text), [stands], "{text}");
        }
    }

    #[test]
    fn no_between_two_levels_takes_the_first_back_and_in_spanish_denies_the_second() {
        for (text, pct) in [
            ("10 tank empty, no full", 100.0),
            ("10 tank full no empty", 0.0),
            ("10 negras vacío, no, lleno", 100.0),
            ("10 negras lleno, no vacío", 100.0),
            ("10 tank full, no leak", 100.0),
            ("10 tank full, not empty", 100.0),
        ] {
            let heard = Reader::new().hear(text, TemperatureScale::F);
            let read = heard.entries[0].readings.value(ReadingKey::WastePct);
            assert_eq!(read, Some(pct), "{text}");
        }
    }
}
