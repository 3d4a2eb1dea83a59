//! Numbers in words: ninety five, a hundred and ten, three quarters, one eighteen.

use crate::words::concept::{Concept, Mark, Noun, Spoken};
use crate::words::item::{Form, Item, Number, What, spoken};
use crate::words::lex::Token;

pub(super) fn read_spoken(text: &str, tokens: &[Token], items: &mut Vec<Item>) {
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
                    // "cincuenta y dos y medio": in words all through, after a thing that has such numbers
                    Some(Spoken::Part(p))
                        if p == 0.5
                            && value.is_some_and(|v| (20.0..100.0).contains(&v))
                            && spoken(&items[0]).is_some()
                            && before.is_some_and(|b| b.noun().is_some() || b.is_filler()) =>
                    {
                        let number = Number {
                            form: Form::Decimal,
                            ..whole(value? + p)
                        };
                        return Some((number, ahead + 1));
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
            // "de la 3 un tercio" is not three of them
            (Spoken::Part(p), Some(v))
                if item.end == item.first + 1
                    && v >= 1.0
                    && v * p <= 1.0
                    && (p < 0.5 || v == 1.0) =>
            {
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
                        )
                            // "circuit one"; "the outside one" is no number
                            || b.noun().is_some_and(|noun| noun.reading().is_none())
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
