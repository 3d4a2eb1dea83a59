//! Numbers and words that only their company explains: task 41, three units, a level that is no tank's.

use crate::heard::{CommandName, Event};
use crate::words::concept::{AskWord, Concept, Mark, Noun, State, Unit};
use crate::words::item::{Form, Item, Number, What};
use crate::words::lex::Token;
use crate::words::named_month;
use crate::words::senses::{Sense, Senses};

/// "Level, chocked": said of no number, it is how the trailer stands, and not the tank's level.
pub(super) fn level_words(text: &str, tokens: &[Token], items: &mut [Item], senses: &Senses) {
    for at in 0..items.len() {
        if items[at].noun() != Some(Noun::Tank)
            || !senses.has(
                &text[tokens[items[at].first].start..tokens[items[at].end - 1].end],
                Sense::Level,
            )
        {
            continue;
        }
        let chunk = items[at].chunk;
        let near = (at.saturating_sub(8)..items.len().min(at + 8))
            .filter(|i| items[*i].chunk == chunk && *i != at);
        let measured = near.clone().any(|i| {
            matches!(items[i].what, What::Range(..) | What::Is(Concept::Level(_)))
                || items[i]
                    .number()
                    .is_some_and(|n| n.form != Form::Whole || n.unit.is_some())
        });
        let tank = near
            .clone()
            .any(|i| items[i].noun().is_some_and(|n| n.is_tank()));
        let number_after = items
            .get(at + 1)
            .is_some_and(|n| n.number().is_some() && n.chunk == chunk);
        if !measured && !tank && !number_after {
            items[at].what = What::Is(Concept::State(crate::words::concept::State::Level));
        }
    }
}

/// "12 tank 9/8": beside a tank no date, and more than a whole one.
pub(super) fn more_than_full(text: &str, tokens: &[Token], items: &mut [Item]) {
    for at in 1..items.len() {
        let between = |i: &usize| {
            items[*i].chunk == items[at].chunk
                && (items[*i].is_filler()
                    || items[*i].is(Mark::At)
                    || items[*i].what == What::Is(Concept::State(State::On))
                    || items[*i].number().is_some_and(|n| n.form == Form::Whole)
                    || items[*i].noun().is_some_and(Noun::is_tank))
        };
        let tank = items[at].what == What::Labelled
            && (at.saturating_sub(6)..at)
                .rev()
                .take_while(between)
                .any(|i| items[i].noun().is_some_and(Noun::is_tank));
        if !tank {
            continue;
        }
        let typed = &text[tokens[items[at].first].start..tokens[items[at].end - 1].end];
        let parts = typed
            .split_once('/')
            .and_then(|(a, b)| Some((a.parse::<f64>().ok()?, b.parse::<f64>().ok()?)));
        if let Some((part, whole)) = parts
            && [2.0, 3.0, 4.0, 8.0].contains(&whole)
        {
            items[at].what = What::Number(Number {
                value: part / whole,
                form: Form::Part,
                unit: None,
                bound: false,
            });
        }
    }
}

/// "65 psi all four tires", "tyre pressure 50": no pressure of the water.
pub(super) fn tire_pressures(items: &mut [Item]) {
    for at in 0..items.len() {
        if items[at].noun() != Some(Noun::Tire) {
            continue;
        }
        let chunk = items[at].chunk;
        let named = items
            .get(at + 1)
            .is_some_and(|next| next.noun() == Some(Noun::Pressure) && next.chunk == chunk);
        if named {
            items[at + 1].what = What::Is(Concept::Mark(Mark::Filler));
        }
        for i in at.saturating_sub(8)..items.len().min(at + 8) {
            let of_a_tire = items[i].number().is_some_and(|n| match n.unit {
                Some(unit) => unit.is_pressure(),
                None => named && i > at && n.form == Form::Whole,
            });
            if of_a_tire && items[i].chunk == chunk {
                items[i].what = What::Labelled;
            }
        }
    }
}

/// "3/4 in pipe", "1 in hose": how wide it is, and no level of a tank.
pub(super) fn widths(text: &str, tokens: &[Token], items: &mut [Item], senses: &Senses) {
    let spelt = |item: &Item| &text[tokens[item.first].start..tokens[item.end - 1].end];
    for at in 1..items.len() {
        let wide = items[at - 1]
            .number()
            .is_some_and(|n| n.unit.is_none() && n.value > 0.0 && n.value <= WIDEST_IN);
        let of_a_pipe = items
            .get(at + 1)
            .is_some_and(|n| matches!(n.noun(), Some(Noun::Pipe | Noun::Hose)));
        if wide && of_a_pipe && senses.has(spelt(&items[at]), Sense::Inches) {
            items[at - 1].what = What::Labelled;
            items[at].what = What::Is(Concept::Mark(Mark::Filler));
        }
    }
}

/// The widest hose that waste is pumped through, inches (common practice, no source).
const WIDEST_IN: f64 = 6.0;

/// The fuses and breakers that are sold, amps (common practice, no source).
const RATINGS_A: [f64; 8] = [5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0, 50.0];

/// "the 15 A fuse in 31 blew, put a new 15 in": a rating that was told with its measure is one without it too.
pub(super) fn ratings_again(items: &mut [Item]) {
    for at in 0..items.len() {
        let Some(rating) = items[at]
            .number()
            .filter(|n| n.unit == Some(Unit::Amp) && n.form == Form::Whole)
        else {
            continue;
        };
        let sentence = items[at].sentence;
        let near = at.saturating_sub(4)..items.len().min(at + 16);
        let of_a_fuse = near.clone().any(|i| {
            items[i].sentence == sentence
                && matches!(items[i].noun(), Some(Noun::Fuse | Noun::Breaker))
                || matches!(items[i].what, What::Is(Concept::Event(Event::FuseReplaced)))
        });
        for again in (at + 1..near.end).filter(|_| of_a_fuse) {
            let bare = items[again].number().filter(|n| n.unit.is_none());
            let same = bare.is_some_and(|n| n.value == rating.value);
            // "swapped the 10 amp fuse for a 15"
            let other = bare.is_some_and(|n| RATINGS_A.contains(&n.value))
                && items[again - 1].is(Mark::Filler)
                && again > 1
                && items[again - 2].is(Mark::For);
            let replaced = (again.saturating_sub(4)..again).any(|i| {
                matches!(
                    items[i].what,
                    What::Is(Concept::State(State::Replaced | State::Fitted))
                )
            });
            if (same && replaced || other) && items[again].sentence == sentence {
                items[again].what = What::Labelled;
            }
        }
    }
}

/// "2x4s", "1 marker out": the size of a board, one of a trailer's things, and no trailer.
pub(super) fn sizes(text: &str, tokens: &[Token], items: &mut [Item], senses: &Senses) {
    let spelt = |item: &Item| &text[tokens[item.first].start..tokens[item.end - 1].end];
    for at in 0..items.len() {
        let Some(number) = items[at]
            .number()
            .filter(|n| n.form == Form::Whole && n.unit.is_none())
        else {
            continue;
        };
        let Some(next) = items
            .get(at + 1)
            .copied()
            .filter(|n| n.chunk == items[at].chunk)
        else {
            continue;
        };
        let named = at > 0
            && (items[at - 1].is(Mark::Unit)
                || items[at - 1].is(Mark::Article)
                || items[at - 1].what == What::Sign('#'));
        let board = next.glued
            && spelt(&next)
                .strip_prefix('x')
                .map(|rest| rest.trim_end_matches('s'))
                .is_some_and(|rest| !rest.is_empty() && rest.bytes().all(|b| b.is_ascii_digit()));
        let digits = spelt(&items[at]).starts_with(|c: char| c.is_ascii_digit());
        let one = digits
            && number.value == 1.0
            && (matches!(next.noun(), Some(Noun::Tire | Noun::TowLights))
                || senses.has(spelt(&next), Sense::OneThing))
            && !spelt(&next).ends_with('s');
        if named || !(board || one) {
            continue;
        }
        items[at].what = What::Labelled;
        if board {
            items[at + 1].what = What::Labelled;
        }
    }
}

/// "party is Oct 12", "el 12 de octubre": a day of the month, and no trailer.
pub(super) fn dates(text: &str, tokens: &[Token], items: &mut [Item], senses: &Senses) {
    let month = |item: &Item| {
        let word = &text[tokens[item.first].start..tokens[item.end - 1].end];
        named_month(word).is_some() && !senses.has(word, Sense::MonthOrVerb)
    };
    for at in 0..items.len() {
        if !matches!(items[at].what, What::Word { .. }) || !month(&items[at]) {
            continue;
        }
        let sentence = items[at].sentence;
        let day = |i: &usize| {
            let of_a_month = |n: Number| {
                n.unit.is_none() && n.form == Form::Whole && (1.0..=31.0).contains(&n.value)
            };
            items
                .get(*i)
                .is_some_and(|n| n.sentence == sentence && n.number().is_some_and(of_a_month))
        };
        let of = at > 1 && items[at - 1].is(Mark::Of);
        let before = at.checked_sub(1 + usize::from(of)).filter(day);
        let after = Some(at + 1).filter(day);
        // "a truck on 12 Oct 6": the trailer, and then the date
        let day = if of {
            before.or(after)
        } else {
            after.or(before)
        };
        if let Some(day) = day {
            items[day].what = What::Labelled;
        }
    }
}

/// "3 units arrived", "four of the trailers": counted, and none named. Returns the items of such counts.
/// "12 trailer fell" names the twelfth: only the plural is counted.
pub(super) fn counted(text: &str, tokens: &[Token], items: &mut [Item]) -> Vec<usize> {
    let plural = |item: &Item| text[..tokens[item.end - 1].end].ends_with('s');
    let mut out = Vec::new();
    for at in 0..items.len() {
        if items[at]
            .number()
            .is_none_or(|n| n.form != Form::Whole || n.unit.is_some() || n.value > 40.0)
        {
            continue;
        }
        // "3 of em got here"
        let of_them = items.get(at + 1).is_some_and(|n| n.is(Mark::Of))
            && items.get(at + 2).is_some_and(|n| n.is(Mark::Pronoun));
        if of_them {
            items[at].what = What::Labelled;
            out.push(at);
            continue;
        }
        let next = (at + 1..items.len())
            .take(3)
            .find(|i| !items[*i].is_filler());
        let Some(next) = next.filter(|i| items[*i].is(Mark::Unit) && plural(&items[*i])) else {
            continue;
        };
        let named = items.get(next + 1).is_some_and(|n| {
            n.number().is_some() || matches!(n.what, What::Code | What::Sign('#'))
        });
        if !named && items[next].end > items[next].first {
            items[at].what = What::Labelled;
            out.push(at);
        }
    }
    out
}

/// "task 41" names a task, no trailer; a ticket, a year and an address have their own numbers.
pub(super) fn tasks(text: &str, tokens: &[Token], items: &mut [Item], senses: &Senses) {
    let spelt = |item: &Item| &text[tokens[item.first].start..tokens[item.end - 1].end];
    places_by_number(items, |item| {
        let said = |sense| senses.has(spelt(item), sense);
        said(Sense::Stall) || said(Sense::PlacesInside)
    });
    for at in 0..items.len() {
        // "la nota 4471": an order only where it opens the message
        if items[at].what == What::Is(Concept::Command(CommandName::Note))
            && !items.get(at + 1).is_some_and(|n| n.what == What::Sign(':'))
        {
            items[at].what = What::Is(Concept::Mark(Mark::Label));
        }
        // "all over the floor 10": what follows is the trailer
        let underfoot = at > 0
            && items[at - 1].is(Mark::Article)
            && senses.has(spelt(&items[at]), Sense::Floor);
        if items[at].is(Mark::Label) && underfoot {
            items[at].what = What::Word { ordinary: true };
        }
        if items[at].is(Mark::Label) {
            number_of_a_label(items, at);
        }
        if names_a_task(items, at) {
            task_by_number(items, at);
        }
        let says_a = |item: &Item| senses.has(spelt(item), Sense::A);
        years(items, at, says_a);
        if items[at].is(Mark::LabelAfter) {
            let inside = senses.has(spelt(&items[at]), Sense::PlacesInside);
            number_before_a_label(items, at, inside);
        }
    }
}

/// "ticket 88213", "gate code: 4411", "stall no. 2".
fn number_of_a_label(items: &mut [Item], at: usize) {
    let sign = |i: &Item| matches!(i.what, What::Sign('#' | '.' | ':' | '-')) || i.is(Mark::No);
    let mut next = at + 1;
    while next < at + 4 && items.get(next).is_some_and(sign) {
        next += 1;
    }
    next = told_of_a_place(items, next);
    let sentence = items[at].sentence;
    if let Some(item) = items.get_mut(next)
        && matches!(
            item.what,
            What::Number(_) | What::Code | What::Range(..) | What::Garbled
        )
        && item.sentence == sentence
    {
        item.what = What::Labelled;
    }
}

/// Tells whether the number of a task may follow: after the word, or after "done" where it opens the sentence.
fn names_a_task(items: &[Item], at: usize) -> bool {
    let asks = matches!(
        items[at].what,
        What::Is(Concept::Ask(AskWord::Task | AskWord::Done))
    );
    let opens = || {
        items[..at]
            .iter()
            .rev()
            .take_while(|i| i.sentence == items[at].sentence)
            .all(|i| i.is(Mark::Call) || matches!(i.what, What::Sign(',')))
    };
    asks || items[at].is(Mark::Done) && opens()
}

fn task_by_number(items: &mut [Item], at: usize) {
    let next = (at + 1..items.len())
        .take(3)
        .find(|i| !items[*i].is_filler() && items[*i].what != What::Sign('#'));
    let Some((next, n)) = next.and_then(|i| items[i].number().map(|n| (i, n))) else {
        return;
    };
    let headed = items
        .get(next + 1)
        .is_some_and(|c| c.what == What::Sign(':'));
    let a_name = n.form == Form::Whole && n.unit.is_none() && n.value < 1e9;
    if a_name && items[next].sentence == items[at].sentence && !headed {
        items[next].what = What::Task(n.value as u32);
    }
}

/// "new 2024 model", "bought it in 2019", "22 is a 2019", "a 2014 F-250": a year, and the name of a model behind it.
fn years(items: &mut [Item], at: usize, says_a: impl Fn(&Item) -> bool) {
    let year = |i: usize| {
        items[i]
            .number()
            .is_some_and(|n| (1990.0..=2039.0).contains(&n.value) && n.unit.is_none())
    };
    let of_a_model = items[at].is(Mark::Label)
        || items[at].is(Mark::Unit) && at > 1 && items[at - 2].is_filler();
    let before = at > 0 && of_a_model && year(at - 1);
    let whole = items[at].number().is_some_and(|n| n.value.fract() == 0.0);
    let led = at > 0
        && (items[at - 1].is(Mark::At) || items[at - 1].is(Mark::Of) || says_a(&items[at - 1]));
    let dated = led
        && items.get(at + 1).is_none_or(|n| {
            n.noun().is_none()
                && n.number().is_none()
                && !matches!(n.what, What::Is(Concept::Unit(_)) | What::Code)
        });
    let here = year(at);
    let model =
        here && !(dated && whole) && items.get(at + 1).is_some_and(|n| n.what == What::Code);
    if before {
        items[at - 1].what = What::Labelled;
    }
    if here && dated && whole || model {
        items[at].what = What::Labelled;
    }
    if model {
        items[at + 1].what = What::Labelled;
    }
}

/// 40 stalls, 1200 Harbor Road. "two stalls out of order": how many is told, and stays.
fn number_before_a_label(items: &mut [Item], at: usize, inside: bool) {
    let number = (at.saturating_sub(3)..at)
        .rev()
        .find(|i| !matches!(items[*i].what, What::Word { .. }));
    let Some(i) = number else { return };
    let how_many = i + 1 == at
        && inside
        && items[i]
            .number()
            .is_some_and(|n| n.form == Form::Whole && n.value <= 20.0);
    if matches!(items[i].what, What::Number(_) | What::Range(..))
        && items[i].chunk == items[at].chunk
        && !how_many
    {
        items[i].what = What::Labelled;
    }
}

/// "gate code at the quarry is 4471": returns where the number of a label stands, whose place is told before it, or `from`
/// where none is told.
fn told_of_a_place(items: &[Item], from: usize) -> usize {
    let opens = |i: &Item| i.is(Mark::At) || matches!(i.what, What::Word { .. });
    if !items.get(from).is_some_and(opens) {
        return from;
    }
    let place = |i: &usize| {
        items[*i].sentence == items[from].sentence
            && (items[*i].is_filler() && !items[*i].is(Mark::Aux)
                || items[*i].is(Mark::At)
                || matches!(items[*i].what, What::Word { .. }))
    };
    let is = (from..items.len()).take(6).take_while(place).last();
    match is.map(|i| i + 1) {
        Some(is) if items.get(is).is_some_and(|i| i.is(Mark::Aux)) => is + 1,
        _ => from,
    }
}

/// "stalls 1 and 2 closed", "stall 2 out of order": places inside the trailer, by their numbers.
fn places_by_number(items: &mut [Item], is_place: impl Fn(&Item) -> bool) {
    let small = |item: &Item| {
        item.number()
            .is_some_and(|n| n.form == Form::Whole && n.unit.is_none() && n.value <= 12.0)
    };
    for at in 0..items.len() {
        let labels = items[at].is(Mark::Label) || items[at].is(Mark::LabelAfter);
        if labels
            && is_place(&items[at])
            && matches!(
                items.get(at + 1).map(|n| n.what),
                Some(What::Range(_, _, None))
            )
        {
            items[at + 1].what = What::Labelled;
        }
        if !labels || !is_place(&items[at]) || !items.get(at + 1).is_some_and(small) {
            continue;
        }
        items[at].what = What::Is(Concept::Mark(Mark::Label));
        let mut next = at + 1;
        while next < items.len()
            && items[next].sentence == items[at].sentence
            && (small(&items[next])
                || items[next].is(Mark::And)
                || matches!(items[next].what, What::Sign(',' | '/' | '&')))
        {
            if small(&items[next]) {
                items[next].what = What::Labelled;
            }
            next += 1;
        }
    }
}
