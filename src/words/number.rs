//! Numbers as they are spoken, joined to their sign, measure and hedge.

use super::concept::{Concept, Mark, Noun, Spoken, Unit};
use super::item::{Form, Item, Number, What, spoken};
use super::lex::Token;
use super::typed;

/// Joins the words of each spoken number, then signs, measures, levels and hedges to their numbers.
pub(super) fn join(text: &str, tokens: &[Token], items: &mut Vec<Item>) {
    typed::quarter_to(text, tokens, items);
    read_spoken(text, tokens, items);
    typed::lost_ones(text, tokens, items);
    typed::spaced_amps(text, tokens, items);
    for item in items.iter_mut() {
        // "an hour" is one
        let an = item.what == What::Is(Concept::Unit(Unit::Hour)) && item.end > item.first + 1;
        if an {
            item.what = What::Number(Number {
                value: 1.0,
                form: Form::Whole,
                unit: Some(Unit::Hour),
                bound: false,
            });
        }
    }
    let mut at = 0;
    while at < items.len() {
        if let Some(number) = items[at].number() {
            items[at].what = What::Number(number);
            signs(items, at);
            measure(items, at);
            typed::thousands(text, tokens, items, at);
            levels(items, at);
            hedge(items, at);
        } else if let What::Range(from, to, None) = items[at].what
            && let Some((next, unit)) = unit_after(items, at)
        {
            items[at].what = What::Range(from, to, Some(unit));
            items[next].what = What::Gone;
        }
        at += 1;
    }
    hours_and_minutes(items);
    leading_measures(items);
    ranges(items);
    items.retain(|item| item.what != What::Gone);
}

fn read_spoken(text: &str, tokens: &[Token], items: &mut Vec<Item>) {
    let mut out: Vec<Item> = Vec::with_capacity(items.len());
    let mut at = 0;
    while at < items.len() {
        let starts = spoken(&items[at]).is_some()
            || matches!(
                items[at].what,
                What::Number(Number {
                    form: Form::Whole,
                    ..
                })
            ) && items.get(at + 1).and_then(spoken).is_some_and(|s| {
                matches!(
                    s,
                    Spoken::Part(_) | Spoken::Parts(_) | Spoken::Hundred | Spoken::Thousand
                )
            });
        if starts {
            if let Some((number, used)) = one_spoken(text, tokens, &items[at..], out.last()) {
                let mut item = items[at];
                item.what = What::Number(number);
                item.end = items[at + used - 1].end;
                out.push(item);
                at += used;
                continue;
            }
            let mut item = items[at];
            item.what = What::Word { ordinary: true };
            out.push(item);
            at += 1;
            continue;
        }
        out.push(items[at]);
        at += 1;
    }
    *items = out;
}

/// Reads one spoken number; returns it with how many items it took.
fn one_spoken(
    text: &str,
    tokens: &[Token],
    items: &[Item],
    before: Option<&Item>,
) -> Option<(Number, usize)> {
    let whole = |value| Number {
        value,
        form: Form::Whole,
        unit: None,
        bound: false,
    };
    let part = |value| Number {
        value,
        form: Form::Part,
        unit: None,
        bound: false,
    };
    let word = |item: &Item| &text[tokens[item.first].start..tokens[item.first].end];
    let mut value: Option<f64> = None;
    let mut hundred = false; // the last word was a hundred or more: a smaller number may follow
    let mut used = 0;
    while let Some(item) = items.get(used) {
        let next = match item.what {
            What::Number(n) if used == 0 => {
                value = Some(n.value);
                used += 1;
                continue;
            }
            What::Is(Concept::Spoken(s)) => s,
            What::Is(Concept::Mark(Mark::And)) => {
                // a hundred and ten; noventa y cinco; one and a half
                let tens = value.is_some_and(|v| v >= 20.0 && v % 10.0 == 0.0) && word(item) == "y";
                let mut ahead = used + 1;
                if items.get(ahead).is_some_and(|i| i.is(Mark::Filler)) {
                    ahead += 1;
                }
                match items.get(ahead).and_then(spoken) {
                    Some(Spoken::Number(n))
                        if ahead == used + 1 && (hundred && n < 100.0 || tens && n < 10.0) =>
                    {
                        used += 1;
                        value = value.map(|v| v + n);
                        hundred = false;
                        used += 1;
                    }
                    Some(Spoken::One) if ahead == used + 1 && (hundred || tens) => {
                        value = value.map(|v| v + 1.0);
                        used += 2;
                    }
                    Some(Spoken::Part(p)) if p == 0.5 && value.is_some_and(|v| v <= 9.0) => {
                        return Some((part(value? + p), ahead + 1));
                    }
                    _ => break,
                }
                continue;
            }
            _ => break,
        };
        match (next, value) {
            (Spoken::Part(p), None) => return Some((part(p), used + 1)),
            (Spoken::Parts(p), Some(v)) if v >= 1.0 && v * p <= 1.0 => {
                return Some((part(v * p), used + 1));
            }
            (Spoken::Parts(_), _) => break,
            (Spoken::Part(p), Some(v)) if v >= 1.0 && v * p <= 1.0 && (p < 0.5 || v == 1.0) => {
                return Some((part(v * p), used + 1));
            }
            (Spoken::Part(_), Some(_)) => break,
            (Spoken::Number(n), None) => {
                value = Some(n);
                hundred = n >= 100.0;
            }
            (Spoken::One, None) => {
                let goes_on = items.get(used + 1).and_then(spoken).is_some_and(|s| {
                    matches!(
                        s,
                        Spoken::Hundred
                            | Spoken::Thousand
                            | Spoken::Oh
                            | Spoken::Point
                            | Spoken::Part(_)
                    ) || matches!(s, Spoken::Number(n) if (10.0..100.0).contains(&n))
                });
                let article = matches!(word(item), "un" | "una");
                let named = !article
                    && before.is_some_and(|b| {
                        matches!(
                            b.what,
                            What::Is(Concept::Mark(Mark::Unit | Mark::Minus | Mark::Label))
                                | What::Is(Concept::Noun(_))
                        )
                    });
                let measured = matches!(
                    items.get(used + 1).map(|i| i.what),
                    Some(What::Is(
                        Concept::Unit(_) | Concept::Noun(Noun::Cord | Noun::Cords)
                    ))
                ) && (!article
                    || matches!(
                        items.get(used + 1).map(|i| i.what),
                        Some(What::Is(Concept::Unit(_)))
                    ));
                if !(goes_on || named || measured) {
                    return None;
                }
                value = Some(1.0);
            }
            (Spoken::Number(n), Some(v))
                if v >= 20.0 && v % 10.0 == 0.0 && v % 100.0 != 0.0 && n < 10.0 =>
            {
                value = Some(v + n);
                hundred = false;
            }
            (Spoken::One, Some(v)) if v >= 20.0 && v % 10.0 == 0.0 || hundred => {
                value = Some(v_plus(value, 1.0))
            }
            (Spoken::Number(n), Some(v)) if hundred && n < 100.0 => {
                value = Some(v + n);
                hundred = false;
            }
            // dictated: one eighteen
            (Spoken::Number(n), Some(v)) if v < 10.0 && (10.0..100.0).contains(&n) => {
                value = Some(v * 100.0 + n);
                hundred = false;
            }
            (Spoken::Oh, Some(v)) if v < 10.0 => match items.get(used + 1).and_then(spoken) {
                Some(Spoken::Number(n)) if n < 10.0 => {
                    value = Some(v * 100.0 + n);
                    used += 1;
                }
                _ => break,
            },
            (Spoken::Hundred, v) if v.is_none_or(|v| v < 100.0) => {
                value = Some(v.unwrap_or(1.0) * 100.0);
                hundred = true;
            }
            (Spoken::Thousand, v) if v.is_none_or(|v| v < 1000.0) => {
                value = Some(v.unwrap_or(1.0) * 1000.0);
                hundred = true;
            }
            (Spoken::Point, Some(v)) => {
                let mut place = 0.1;
                let mut total = v;
                let mut ahead = used + 1;
                while let Some(Spoken::Number(_) | Spoken::One | Spoken::Oh) =
                    items.get(ahead).and_then(spoken)
                {
                    let digit = match items.get(ahead).and_then(spoken) {
                        Some(Spoken::Number(n)) if n < 10.0 => n,
                        Some(Spoken::One) => 1.0,
                        _ => 0.0,
                    };
                    total += digit * place;
                    place /= 10.0;
                    ahead += 1;
                }
                if ahead == used + 1 {
                    // "twelve point sevem": what followed the point is lost
                    return value.map(|v| {
                        let number = Number {
                            bound: true,
                            ..whole(v)
                        };
                        (number, used + 1)
                    });
                }
                return Some((
                    Number {
                        value: (total * 1e4).round() / 1e4,
                        form: Form::Decimal,
                        unit: None,
                        bound: false,
                    },
                    ahead,
                ));
            }
            _ => break,
        }
        used += 1;
    }
    value.filter(|_| used > 0).map(|v| (whole(v), used))
}

fn v_plus(value: Option<f64>, more: f64) -> f64 {
    value.unwrap_or(0.0) + more
}

/// Minus five, five below.
fn signs(items: &mut [Item], at: usize) {
    let Some(mut number) = items[at].number() else {
        return;
    };
    if at > 0 && items[at - 1].is(Mark::Minus) && number.value > 0.0 {
        number.value = -number.value;
        number.form = Form::Decimal;
        items[at - 1].what = What::Gone;
    }
    let mut next = at + 1;
    while let Some(What::Is(Concept::Unit(Unit::Deg | Unit::DegF | Unit::DegC))) =
        items.get(next).map(|i| i.what)
    {
        next += 1;
    }
    if items.get(next).is_some_and(|i| i.is(Mark::Below))
        && number.value > 0.0
        && number.form == Form::Whole
    {
        // "5 below the line" is no temperature
        let ends = items.get(next + 1).is_none_or(|i| {
            !matches!(i.what, What::Word { ordinary: true } | What::Number(_))
                && !i.is(Mark::Article)
        });
        if ends {
            number.value = -number.value;
            number.form = Form::Decimal;
            number.unit = Some(Unit::Deg);
            items[next].what = What::Gone;
        }
    }
    items[at].what = What::Number(number);
}

/// Finds the measure that follows a number.
fn unit_after(items: &[Item], at: usize) -> Option<(usize, Unit)> {
    let next = (at + 1..items.len()).find(|i| items[*i].what != What::Gone)?;
    match items[next].what {
        What::Is(Concept::Unit(unit)) => Some((next, unit)),
        _ => None,
    }
}

/// "12 psi 55": the measure names what the second number gives, and the first is the trailer.
fn ahead_of_its_number(items: &[Item], at: usize) -> bool {
    let Some((next, unit)) = unit_after(items, at) else {
        return false;
    };
    let leads = matches!(
        unit,
        Unit::Psi
            | Unit::Bar
            | Unit::Kpa
            | Unit::Volt
            | Unit::Amp
            | Unit::Gpm
            | Unit::Mph
            | Unit::Kmh
    );
    if !leads
        || items[next].glued
        || !matches!(
            items[at].what,
            What::Number(Number {
                form: Form::Whole,
                ..
            })
        )
    {
        return false;
    }
    let opens = at == 0
        || matches!(
            items[at - 1].what,
            What::Break
                | What::Sign('.' | ',' | ';' | '#' | '>' | '-' | ')' | '(')
                | What::Is(Concept::Mark(Mark::Unit | Mark::Article | Mark::And))
        );
    let second = (next + 1..items.len())
        .take(4)
        .find(|i| !items[*i].is_filler());
    opens
        && second.is_some_and(|i| {
            matches!(items[i].what, What::Number(n) if n.form != Form::Part && n.unit.is_none())
                && !matches!(unit_after(items, i), Some((j, u)) if j == i + 1 && u != unit)
        })
}

/// One hour fifteen minutes; an hour and 15 min.
fn hours_and_minutes(items: &mut [Item]) {
    for at in 0..items.len() {
        // "an hour and a hallf": the rest of it is lost
        let odd = (at + 1..items.len())
            .take(3)
            .find(|i| !items[*i].is(Mark::And) && !items[*i].is(Mark::Filler))
            .is_some_and(|i| i > at + 1 && items[i].what == What::Word { ordinary: false });
        if odd
            && let What::Number(number) = &mut items[at].what
            && number.unit == Some(Unit::Hour)
        {
            number.bound = true;
        }
        let Some(hours) = items[at].number().filter(|n| n.unit == Some(Unit::Hour)) else {
            continue;
        };
        let next = (at + 1..items.len()).take(4).find(|i| {
            items[*i].what != What::Gone && !items[*i].is(Mark::And) && !items[*i].is(Mark::Filler)
        });
        let Some(next) = next else { continue };
        let minutes = match items[next].number() {
            Some(n) if n.unit == Some(Unit::Minute) && n.value < 60.0 => n.value,
            Some(n) if n.form == Form::Part && n.unit.is_none() && n.value < 1.0 => n.value * 60.0,
            _ => continue,
        };
        items[at].what = What::Number(Number {
            value: hours.value * 60.0 + minutes,
            unit: Some(Unit::Minute),
            ..hours
        });
        items[at].end = items[next].end;
        items[next].what = What::Gone;
    }
}

/// A measure that leads its number, "psi 38", and one left over is the thing it measures.
fn leading_measures(items: &mut [Item]) {
    if items
        .iter()
        .filter(|i| !matches!(i.what, What::Sign(_) | What::Break | What::Gone))
        .count()
        == 1
    {
        return; // a bare "psi" answers a question
    }
    for at in 0..items.len() {
        let What::Is(Concept::Unit(unit)) = items[at].what else {
            continue;
        };
        let noun = match unit {
            Unit::Psi | Unit::Bar | Unit::Kpa => Noun::Pressure,
            Unit::Volt => Noun::Volts,
            Unit::Amp => Noun::Amps,
            Unit::Gpm => Noun::Flow,
            Unit::Mph | Unit::Kmh => Noun::Wind,
            _ => continue,
        };
        items[at].what = What::Is(Concept::Noun(noun));
        let next = (at + 1..items.len())
            .take(4)
            .find(|i| !items[*i].is_filler());
        if let Some(What::Number(number)) = next.map(|i| &mut items[i].what)
            && number.unit.is_none()
            && number.form != Form::Part
        {
            number.unit = Some(unit);
        }
    }
}

fn measure(items: &mut [Item], at: usize) {
    let Some(mut number) = items[at].number() else {
        return;
    };
    // inches: 3/4"
    if items
        .get(at + 1)
        .is_some_and(|i| i.glued && matches!(i.what, What::Sign('"')))
        && number.form != Form::Level
    {
        let opened = items[at.saturating_sub(64)..at]
            .iter()
            .filter(|i| i.what == What::Sign('"'))
            .count()
            % 2
            == 1;
        if !opened {
            number.unit = Some(Unit::Other);
            items[at + 1].what = What::Gone;
        }
    }
    // feet: 75'
    if number.unit.is_none()
        && items
            .get(at + 1)
            .is_some_and(|i| i.glued && i.what == What::Sign('\''))
        && items.get(at + 2).is_none_or(|i| !i.glued)
    {
        number.unit = Some(Unit::Ft);
        items[at + 1].what = What::Gone;
    }
    if ahead_of_its_number(items, at) {
        return;
    }
    while let Some((next, unit)) = unit_after(items, at) {
        // `14 degrees C`, `-5 F`: the more exact measure stands
        match number.unit {
            None => number.unit = Some(unit),
            Some(Unit::Deg) if matches!(unit, Unit::DegC | Unit::DegF) => number.unit = Some(unit),
            Some(there) if there == unit => {}
            Some(_) => break,
        }
        items[at].end = items[at].end.max(items[next].end);
        items[next].what = What::Gone;
    }
    items[at].what = What::Number(number);
}

/// Three quarters empty; half full.
fn levels(items: &mut [Item], at: usize) {
    let Some(mut number) = items[at].number() else {
        return;
    };
    let level = number.form == Form::Part || number.unit == Some(Unit::Pct);
    if !level {
        return;
    }
    let mut next = at + 1;
    while items.get(next).is_some_and(|i| i.what == What::Gone) {
        next += 1;
    }
    match items.get(next).map(|i| i.what) {
        Some(What::Is(Concept::Level(full))) if full >= 100.0 => items[next].what = What::Gone,
        Some(What::Is(Concept::Level(_))) => {
            number.value = if number.form == Form::Part {
                1.0 - number.value
            } else {
                100.0 - number.value
            };
            items[next].what = What::Gone;
        }
        _ => {}
    }
    items[at].what = What::Number(number);
}

/// Over, under, almost: no plain value.
fn hedge(items: &mut [Item], at: usize) {
    let mut before = at;
    while before > 0 {
        before -= 1;
        if items[before].is(Mark::Bound)
            && let What::Number(number) = &mut items[at].what
        {
            number.bound = true;
        }
        if !matches!(
            items[before].what,
            What::Is(Concept::Mark(Mark::Filler | Mark::About | Mark::Article)) | What::Gone
        ) {
            break;
        }
    }
}

fn live_after(items: &[Item], at: usize) -> Option<usize> {
    (at + 1..items.len()).find(|i| items[*i].what != What::Gone)
}

/// Fifteen to twenty-five; between 50 and 60; 48 a 52.
fn ranges(items: &mut [Item]) {
    let live: Vec<usize> = (0..items.len())
        .filter(|i| items[*i].what != What::Gone)
        .collect();
    for (n, three) in live.windows(3).enumerate() {
        let [a, b, mut c] = [three[0], three[1], three[2]];
        // "a quarter to a half"
        if items[c].is(Mark::Article) || items[c].is(Mark::Filler) || items[c].is(Mark::About) {
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
        let joined = items[b].is(Mark::To);
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
            && (items[a - 1].is(Mark::At) || items[a - 1].is(Mark::Clock))
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
        // from 60 to 40: the last word counts
        let moved = items[..a]
            .iter()
            .rev()
            .find(|i| !i.is_filler())
            .is_some_and(|i| i.is(Mark::From));
        if moved
            && joined
            && from.unit.is_none_or(|u| to.unit.is_none_or(|v| u == v))
            && (to.form != Form::Whole || to.unit.is_some())
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
