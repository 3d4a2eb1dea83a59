//! Two numbers that are one range: fifteen to twenty, between 50 and 60, 60 or 80.

use crate::words::concept::{Concept, Mark, Noun, Unit};
use crate::words::item::{Form, Item, Number, What};

fn live_after(items: &[Item], at: usize) -> Option<usize> {
    (at + 1..items.len()).find(|i| items[*i].what != What::Gone)
}

/// "arrived about ten to six": what was done has its time.
fn after_what_was_done(items: &[Item], at: usize) -> bool {
    let before = at.checked_sub(1).map(|i| items[i].what);
    matches!(before, Some(What::Is(Concept::Event(_))))
}

/// Fifteen to twenty-five; between 50 and 60; 48 a 52.
pub(super) fn ranges(items: &mut [Item]) {
    let live: Vec<usize> = (0..items.len())
        .filter(|i| items[*i].what != What::Gone)
        .collect();
    for (n, three) in live.windows(3).enumerate() {
        let [a, b, mut c] = [three[0], three[1], three[2]];
        // "a quarter to a half"
        // "55 or maybe 60"
        let or_maybe = items[b].is(Mark::Or) && items[c].is(Mark::Doubt);
        if items[c].is(Mark::Article)
            || items[c].is(Mark::Filler)
            || items[c].is(Mark::About)
            || or_maybe
        {
            match live.get(n + 3) {
                Some(next) => c = *next,
                None => continue,
            }
        }
        let (Some(from), Some(to)) = (items[a].number(), items[c].number()) else {
            continue;
        };
        // "2 of 4 cords"
        let part_of = items[b].is(Mark::Of)
            && from.form == Form::Whole
            && to.form == Form::Whole
            && from.value <= to.value
            && from.unit.is_none();
        if part_of && live_after(items, c).is_some_and(|i| items[i].noun() == Some(Noun::Cords)) {
            items[b].what = What::Gone;
            items[c].what = What::Gone;
            continue;
        }
        let parts = items[b].is(Mark::And)
            && from.form == Form::Part
            && to.form == Form::Part
            && from.unit.is_none()
            && to.unit.is_none();
        if parts {
            items[a].what = What::Range(from.value, to.value, Some(Unit::Pct));
            items[a].end = items[c].end;
            items[b].what = What::Gone;
            items[c].what = What::Gone;
            continue;
        }
        // "60% or 80%", "psi 55 or 60": one of two values, and no two trailers
        let either = items[b].is(Mark::Or) && {
            let measured = from.unit.is_some() || to.unit.is_some();
            let parts = from.form != Form::Whole || to.form != Form::Whole;
            let noun = a > 0
                && items[..a]
                    .iter()
                    .rev()
                    .find(|i| !i.is_filler())
                    .and_then(Item::noun)
                    .is_some_and(|n| n.reading().is_some());
            let alike = from.unit.is_none_or(|u| to.unit.is_none_or(|v| u == v));
            alike && (measured || parts || noun)
        };
        if either {
            let unit = to
                .unit
                .or(from.unit)
                .or((from.form == Form::Part).then_some(Unit::Pct));
            items[a].what = What::Range(from.value, to.value, unit);
            items[a].end = items[c].end;
            items[b].what = What::Gone;
            items[c].what = What::Gone;
            continue;
        }
        // "300 galones a la 21": what it was taken from
        let given = items[b].is(Mark::To)
            && items[b].end == items[b].first + 2
            && from.unit.is_some()
            && to.unit.is_none()
            && to.form == Form::Whole;
        if given {
            continue;
        }
        // "eta 20 to 9": how long, and where to
        let whither = items[b].is(Mark::To)
            && from.value > to.value
            && to.unit.is_none()
            && to.form == Form::Whole
            && items[..a]
                .iter()
                .rev()
                .find(|i| !i.is_filler())
                .is_some_and(|i| i.noun() == Some(Noun::Eta));
        if whither {
            continue;
        }
        // from 60 to 40, de 30 a 48: what it moved to counts
        let moved = items[..a]
            .iter()
            .rev()
            .find(|i| !i.is_filler())
            .is_some_and(|i| i.is(Mark::From));
        let joined = items[b].is(Mark::To)
            || moved && items[b].is(Mark::Filler) && items[b].end == items[b].first + 1;
        let between = items[b].is(Mark::And)
            && a > 0
            && items[..a]
                .iter()
                .rev()
                .find(|i| !i.is_filler())
                .is_some_and(|i| i.is(Mark::Between));
        if !(joined || between) {
            continue;
        }
        // "at ten to seven" is a time, "12 to 1200 Harbor Road" an address
        let whole = |n: Number| n.form == Form::Whole && n.unit.is_none();
        let clock = a > 0
            && (items[a - 1].is(Mark::At)
                || items[a - 1].is(Mark::Clock)
                || items[a - 1].is(Mark::About) && after_what_was_done(items, a - 1))
            && joined
            && whole(from)
            && whole(to)
            && to.value <= 12.0
            && from.value < 60.0;
        if clock {
            let minutes = to.value as u16 * 60 - (from.value as u16).min(to.value as u16 * 60);
            items[a].what = What::Clock(minutes);
            items[b].what = What::Gone;
            items[c].what = What::Gone;
            continue;
        }
        if joined
            && whole(from)
            && whole(to)
            && to.value >= 100.0
            && matches!(
                items.get(c + 1).map(|i| i.what),
                Some(What::Word { ordinary: false })
            )
        {
            continue;
        }
        let of_a_noun = items[..a].iter().rev().take(8).any(|i| {
            i.noun()
                .is_some_and(|n| n.reading().is_some() && !n.is_tank())
        });
        if moved
            && joined
            && from.unit.is_none_or(|u| to.unit.is_none_or(|v| u == v))
            && (to.form != Form::Whole || to.unit.is_some() || of_a_noun)
        {
            items[a].what = What::Gone;
            items[b].what = What::Gone;
            continue;
        }
        let unit = to
            .unit
            .or(from.unit)
            .or((from.form == Form::Part && to.form == Form::Part).then_some(Unit::Pct));
        items[a].what = What::Range(from.value, to.value, unit);
        items[a].end = items[c].end;
        items[b].what = What::Gone;
        items[c].what = What::Gone;
    }
}
