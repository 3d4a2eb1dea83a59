//! Measures that stand before their number: 12 psi 55, waste 1/2 psi 50 volts 118.

use super::measure::unit_after;
use crate::words::attach::fits;
use crate::words::concept::{Concept, Mark, Noun, State, Unit};
use crate::words::item::{Form, Item, Number, What};

/// Tells whether the measure after the number at `at` names what the next number gives, and not this one.
pub(super) fn ahead_of_its_number(items: &[Item], at: usize) -> bool {
    let Some((measure, unit)) = unit_after(items, at) else {
        return false;
    };
    let Some(number) = items[at].number() else {
        return false;
    };
    if Noun::of(unit).is_none() || items[measure].glued {
        return false;
    }
    opens_with_a_trailer(items, at, measure, unit) || labelled_otherwise(items, at, number, unit)
}

/// "12 psi 55", "12 psi good": the number before the measure is the trailer.
fn opens_with_a_trailer(items: &[Item], at: usize, measure: usize, unit: Unit) -> bool {
    let whole = items[at].number().is_some_and(|n| n.form == Form::Whole);
    let opens = at == 0
        || matches!(
            items[at - 1].what,
            What::Break
                | What::Clock(_)
                | What::Sign(
                    '.' | ',' | ';' | ':' | '!' | '?' | '#' | '>' | '-' | ')' | '(' | '\u{fffd}'
                )
                | What::Is(Concept::Mark(Mark::Unit | Mark::Article | Mark::And))
        );
    // "10 psi 55 23 psi 56": another one, behind the first one's value
    let opens = opens
        || at > 1
            && items[at - 1].number().is_some_and(|n| n.unit.is_none())
            && items[at - 2].what == What::Is(Concept::Unit(unit));
    // "12 psi good", "12 volts low, like 103": how the trailer's stands
    let stands = items.get(measure + 1).is_some_and(|n| {
        matches!(
            n.what,
            What::Is(Concept::State(State::Ok | State::Low | State::Weak))
        )
    });
    let told = items
        .get(measure + 2)
        .is_none_or(|n| matches!(n.what, What::Sign(',' | '.' | '!') | What::Break));
    // "17 amps ckt 1 14, ckt 2 8.5"
    let of_circuits = unit == Unit::Amp
        && items
            .get(measure + 1)
            .is_some_and(|n| n.noun() == Some(Noun::Circuit))
        && (measure + 2..measure + 4).all(|i| items.get(i).is_some_and(|n| n.number().is_some()));
    // "12 psi was 110, now 55": what the trailer's was, before one of now
    let was = at == 0
        && items.get(measure + 1).is_some_and(|n| n.is(Mark::Past))
        && items.get(measure + 2).is_some_and(|n| n.number().is_some())
        && items[measure + 2..].iter().any(|n| n.is(Mark::Now));
    whole
        && (opens && of_circuits
            || was
            || at == 0 && stands && told
            || opens && well_again(items, at, measure, unit)
            || opens && own_number(items, measure, unit).is_some())
}

/// "12 psi back to normal", "10 psi is fine again", "12 volts back": no pressure or voltage is well at so little, and what
/// is said ends there.
fn well_again(items: &[Item], at: usize, measure: usize, unit: Unit) -> bool {
    const TOO_LITTLE: f64 = 30.0;
    let little = matches!(unit, Unit::Psi | Unit::Volt)
        && items[at].number().is_some_and(|n| n.value < TOO_LITTLE);
    let mut rest = items[measure + 1..]
        .iter()
        .filter(|i| !i.is_filler() && !i.is(Mark::Aux) && !i.is(Mark::Now))
        .take_while(|i| {
            i.chunk == items[at].chunk && !matches!(i.what, What::Sign(_) | What::Break)
        });
    let well = rest.next().is_some_and(|n| {
        matches!(
            n.what,
            What::Is(Concept::State(State::Ok | State::Back | State::Fixed))
        )
    });
    little
        && well
        && rest.all(|i| {
            i.is(Mark::Again) || matches!(i.what, What::Is(Concept::State(State::Ok | State::Back)))
        })
}

/// "waste 1/2 psi 50", "pressure 50 volts 118", "battery 12.1 volts 118": the number before the measure has a noun of
/// its own before it, of another kind.
fn labelled_otherwise(items: &[Item], at: usize, number: Number, unit: Unit) -> bool {
    let Some((measure, _)) = unit_after(items, at) else {
        return false;
    };
    let Some(second) = own_number(items, measure, unit) else {
        return false;
    };
    if number.form == Form::Part {
        return true;
    }
    let label = items[..at]
        .iter()
        .rev()
        .take(3)
        .find(|i| !i.is_filler() && !matches!(i.what, What::Units(_)));
    match label.map(|i| i.what) {
        Some(What::Is(Concept::Unit(before))) => before != unit && Noun::of(before).is_some(),
        // twelve volts of a battery and 118 of the mains
        Some(What::Is(Concept::Noun(Noun::Battery))) if unit == Unit::Volt => {
            let next = items[second].number().map_or(0.0, |n| n.value);
            number.value <= 16.0 && next >= 90.0
        }
        Some(What::Is(Concept::Noun(noun))) => {
            fits(noun, None, false) && !fits(noun, Some(unit), false)
        }
        _ => false,
    }
}

/// Returns the number after a measure that is the measure's own: one that no measure or noun follows which is not the
/// label of the number after that.
fn own_number(items: &[Item], measure: usize, unit: Unit) -> Option<usize> {
    let after = |i: usize| (i + 1..items.len()).find(|i| items[*i].what != What::Gone);
    let number_at = |measure: usize| {
        (measure + 1..items.len())
            .take(4)
            .find(|i| !items[*i].is_filler())
            // "30 psi la 11": what an article leads to is a trailer
            .filter(|i| !items[measure..*i].iter().any(|i| i.is(Mark::Article)))
            .filter(|i| {
                items[*i]
                    .number()
                    .is_some_and(|n| n.form != Form::Part && n.unit.is_none())
            })
    };
    let own = number_at(measure)?;
    let mut last = own;
    // "psi 50 volts 118": each measure leads; "psi 50 volts": the last does not
    while let Some(next) = after(last) {
        match items[next].what {
            What::Is(Concept::Unit(same)) if same == unit && last == own => break,
            What::Is(Concept::Unit(_)) if items[next].glued => return None,
            What::Is(Concept::Unit(_)) => last = number_at(next)?,
            What::Is(Concept::Noun(noun)) if fits(noun, None, false) => {
                let owns = (next + 1..items.len())
                    .take(4)
                    .find(|i| !items[*i].is_filler())
                    .is_some_and(|i| {
                        matches!(
                            items[i].what,
                            What::Number(_) | What::Range(..) | What::Is(Concept::Level(_))
                        )
                    });
                return owns.then_some(own);
            }
            _ => break,
        }
    }
    Some(own)
}

/// A measure that leads its number, "psi 38", and one left over is the thing it measures.
pub(super) fn leading_measures(items: &mut [Item]) {
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
        let Some(noun) = Noun::of(unit).filter(|_| !mends_a_measure(items, at)) else {
            continue;
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

/// "4 psi, sorry, bar": alone after a word of correction a measure mends that of the value before.
fn mends_a_measure(items: &[Item], at: usize) -> bool {
    let sorry = items[..at]
        .iter()
        .rev()
        .find(|i| !i.is_filler() && i.what != What::Sign(','))
        .is_some_and(|i| i.is(Mark::Sorry));
    let ends = items
        .get(at + 1)
        .is_none_or(|i| matches!(i.what, What::Sign(_) | What::Break));
    sorry && ends
}
