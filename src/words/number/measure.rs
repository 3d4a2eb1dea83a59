//! What joins a number: its sign, its measure, full or empty, and what makes it only a bound.

use super::leading::ahead_of_its_number;
use crate::words::concept::{Concept, Mark, Noun, Unit};
use crate::words::item::{Form, Item, Number, What};

/// So many words before a number may tell that it is of a low.
const FEW: usize = 6;

/// Minus five, five below.
pub(super) fn signs(items: &mut [Item], at: usize) {
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
        // "5 below the line" is no temperature, "10 below zero tonight" and "lows of 10 below tonight" are
        let zero = items[next].end > items[next].first + 1;
        let before = items[..at].iter().rev().take(FEW);
        let of_a_low = before
            .take_while(|i| i.chunk == items[at].chunk)
            .any(|i| i.noun() == Some(Noun::Low));
        let ends = items.get(next + 1).is_none_or(|i| match i.what {
            What::Word { ordinary: true } => zero || of_a_low,
            What::Number(_) => false,
            _ => !i.is(Mark::Article),
        });
        if ends {
            number.value = -number.value;
            number.form = Form::Decimal;
            number.unit = Some(Unit::Deg);
            items[next].what = What::Gone;
        } else if next > at + 1 {
            // "5 degrees below X": below what cannot be told
            number.bound = true;
        }
    }
    items[at].what = What::Number(number);
}

/// Finds the measure that follows a number.
pub(super) fn unit_after(items: &[Item], at: usize) -> Option<(usize, Unit)> {
    let next = (at + 1..items.len()).find(|i| items[*i].what != What::Gone)?;
    match items[next].what {
        What::Is(Concept::Unit(unit)) => Some((next, unit)),
        _ => None,
    }
}

/// One hour fifteen minutes; an hour and 15 min.
pub(super) fn hours_and_minutes(items: &mut [Item]) {
    for at in 0..items.len() {
        // "half an hour": half of one
        let part = items[at]
            .number()
            .filter(|n| n.form == Form::Part && n.unit.is_none() && n.value < 1.0);
        let hour = items
            .get(at + 1)
            .and_then(Item::number)
            .filter(|n| n.unit == Some(Unit::Hour) && n.value == 1.0);
        if let (Some(part), Some(hour)) = (part, hour)
            && items[at + 1].end > items[at + 1].first + 1
        {
            items[at].what = What::Number(Number {
                value: part.value * 60.0,
                form: Form::Whole,
                unit: Some(Unit::Minute),
                bound: part.bound || hour.bound,
            });
            items[at].end = items[at + 1].end;
            items[at + 1].what = What::Gone;
            continue;
        }
        // "an hour and a hallf": the rest of it is lost
        let odd = (at + 1..items.len())
            .take(3)
            .find(|i| !items[*i].is(Mark::And) && !items[*i].is(Mark::Filler))
            .is_some_and(|i| {
                let half = items[i + 1..]
                    .iter()
                    .take(2)
                    .any(|n| n.number().is_some_and(|n| n.form == Form::Part));
                items[i].what == What::Word { ordinary: false } && (i > at + 1 || half)
            });
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

/// "pumped 30 and 31, 280 and 310 gal": after a comma the measure is of both numbers, and the first no trailer.
pub(super) fn respectively(items: &mut [Item]) {
    const LIKE_SIZE: f64 = 2.5;
    let live: Vec<usize> = (0..items.len())
        .filter(|i| items[*i].what != What::Gone)
        .collect();
    for four in live.windows(4) {
        let [comma, first, and, second] = [four[0], four[1], four[2], four[3]];
        let (Some(a), Some(b)) = (items[first].number(), items[second].number()) else {
            continue;
        };
        let measured = matches!(
            b.unit,
            Some(Unit::Gal | Unit::Litre | Unit::Psi | Unit::Volt)
        );
        let alike = a.value >= 30.0 && (a.value / b.value).max(b.value / a.value) <= LIKE_SIZE;
        if items[comma].what == What::Sign(',')
            && items[and].is(Mark::And)
            && a.unit.is_none()
            && a.form == Form::Whole
            && measured
            && alike
        {
            items[first].what = What::Number(Number { unit: b.unit, ..a });
        }
    }
}

/// "61, not 16, psi": the measure is of both numbers.
pub(super) fn contrasted(items: &mut [Item]) {
    let comma = |i: &Item| i.what == What::Sign(',');
    let live: Vec<usize> = (0..items.len())
        .filter(|i| items[*i].what != What::Gone && !comma(&items[*i]))
        .collect();
    for four in live.windows(4) {
        let [first, not, second, measure] = [four[0], four[1], four[2], four[3]];
        let bare = |i: usize| items[i].number().is_some_and(|n| n.unit.is_none());
        if !(items[not].is(Mark::Not) && bare(first) && bare(second)) {
            continue;
        }
        let What::Is(Concept::Unit(unit)) = items[measure].what else {
            continue;
        };
        for at in [first, second] {
            if let What::Number(number) = &mut items[at].what {
                number.unit = Some(unit);
            }
        }
        items[measure].what = What::Gone;
    }
}

pub(super) fn measure(items: &mut [Item], at: usize) {
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
    // "unit 19 amps: circuit 1 pulls 14": what follows a trailer's name heads what is told of it
    let name = at > 0
        && items[at - 1].is(Mark::Unit)
        && number.form == Form::Whole
        && unit_after(items, at).is_some_and(|(next, _)| {
            !items[next].glued
                && items
                    .get(next + 1)
                    .is_some_and(|n| n.what == What::Sign(':'))
        });
    if name || ahead_of_its_number(items, at) {
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
pub(super) fn levels(items: &mut [Item], at: usize) {
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
pub(super) fn hedge(items: &mut [Item], at: usize) {
    // "almost at 3/4"; a number without a measure is at home after "over at"
    let measured = items[at]
        .number()
        .is_some_and(|n| n.form == Form::Part || n.unit.is_some());
    let mut before = at;
    while before > 0 {
        before -= 1;
        if items[before].is(Mark::Bound)
            && let What::Number(number) = &mut items[at].what
        {
            number.bound = true;
        }
        let between = matches!(
            items[before].what,
            What::Is(Concept::Mark(Mark::Filler | Mark::About | Mark::Article)) | What::Gone
        );
        let leads = between || measured && items[before].is(Mark::At);
        if !leads {
            break;
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::heard::ReadingKey;
    use crate::quantity::TemperatureScale;
    use crate::words::Reader;

    #[test]
    fn so_much_below_is_under_zero_where_it_is_a_temperature() {
        for (text, key, read) in [
            (
                "lows around 10 below tonight",
                ReadingKey::LowF,
                Some(-10.0),
            ),
            (
                "low of 10 below zero tonight",
                ReadingKey::LowF,
                Some(-10.0),
            ),
            ("9 is 5 below out here", ReadingKey::AirF, Some(-5.0)),
            ("9 valve is 5 below the line", ReadingKey::AirF, None),
        ] {
            let heard = Reader::new().hear(text, TemperatureScale::F);
            let value = heard.entries.iter().find_map(|it| it.readings.value(key));
            assert_eq!(value, read, "{text}");
        }
    }
}
