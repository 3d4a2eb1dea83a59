//! Times of day without a colon: at 1045, before 6, 0745 on site.

use crate::heard::Event;
use crate::words::concept::{Concept, Mark, Noun, Unit};
use crate::words::item::{Form, Item, What, sentence_around};
use crate::words::lex::Token;
use crate::words::senses::{Sense, Senses};

/// "at 1045", "at four fifteen", "before 6": a time of day.
pub(super) fn clock_words(text: &str, tokens: &[Token], items: &mut [Item], senses: &Senses) {
    let spelt = |item: &Item| &text[tokens[item.first].start..tokens[item.end - 1].end];
    // "2 am. minus eight"
    if let [first, half, ..] = items
        && let What::Number(n) = first.what
        && n.form == Form::Whole
        && n.unit.is_none()
        && (1.0..=12.0).contains(&n.value)
        && senses.has(spelt(half), Sense::Am)
    {
        first.what = What::Clock(n.value as u16 % 12 * 60);
    }
    // "0745 on site with 53"
    if let Some(first) = items.first_mut()
        && let What::Number(n) = first.what
    {
        let typed = &text[tokens[first.first].start..tokens[first.end - 1].end];
        if four_digits(typed) && typed.starts_with('0') && n.value % 100.0 < 60.0 {
            first.what = What::Clock((n.value / 100.0) as u16 * 60 + (n.value % 100.0) as u16);
        }
    }
    parts_of_the_day(items);
    for at in 1..items.len() {
        let Some(n) = items[at].number() else {
            continue;
        };
        if n.form != Form::Whole || n.unit.is_some() {
            continue;
        }
        let half = items
            .get(at + 1)
            .is_some_and(|n| senses.has(spelt(n), Sense::Am));
        if half && (1.0..=12.0).contains(&n.value) {
            items[at].what = What::Clock(n.value as u16 % 12 * 60);
            continue;
        }
        let before = items[at - 1];
        let says = |sense| senses.has(spelt(&before), sense);
        let (hour, minute) = ((n.value / 100.0).floor(), n.value % 100.0);
        let clocky = n.value >= 100.0 && hour <= 23.0 && minute < 60.0;
        let noun_after = items
            .get(at + 1)
            .is_some_and(|x| x.noun().is_some_and(|n| n.reading().is_some()));
        let typed = &text[tokens[items[at].first].start..tokens[items[at].end - 1].end];
        // a las, a 90: the preposition of Spanish does not name a trailer
        if says(Sense::A)
            && before.end == items[at].first
            && let What::Number(number) = &mut items[at].what
        {
            number.form = Form::Decimal;
        }
        let four = four_digits(typed) && clocky && !valued(items, at);
        if four
            && !noun_after
            && !matches!(
                before.what,
                What::Is(Concept::Mark(Mark::Unit | Mark::Article | Mark::Label)) | What::Sign('#')
            )
            && items[..at]
                .iter()
                .rev()
                .take(12)
                .any(|i| matches!(i.what, What::Is(Concept::Event(_))))
        {
            items[at].what = What::Clock(hour as u16 * 60 + minute as u16);
            continue;
        }
        // "3 cords at 118": the volts, beside what carries them
        let fed = (105.0..=130.0).contains(&n.value)
            && says(Sense::AtAValue)
            && items[..at].iter().rev().take(6).any(|i| {
                i.chunk == items[at].chunk
                    && (matches!(i.noun(), Some(Noun::Cords | Noun::Power | Noun::Volts))
                        || i.what == What::Is(Concept::Event(Event::PowerOn)))
            });
        if fed {
            if let What::Number(number) = &mut items[at].what {
                number.unit = Some(Unit::Volt);
            }
            continue;
        }
        // "quarter to nine"
        if before.is(Mark::Idle) && says(Sense::QuarterTo) && (1.0..=12.0).contains(&n.value) {
            items[at].what = What::Labelled;
            continue;
        }
        if beside_a_day(items, at) {
            items[at].what = hour_of(items, at, n.value);
            continue;
        }
        // "truck called for 12, coming 730"
        let coming = says(Sense::Coming)
            && !valued(items, at)
            && items[sentence_around(items, at)].iter().any(|i| {
                i.is(Mark::Booked)
                    || i.noun() == Some(Noun::Truck)
                    || matches!(i.what, What::Is(Concept::Need(_)))
            });
        // "at 1430 waste on 12 was 60": what opens the message
        let noun_after = noun_after && !(at == 1 && four_digits(typed) && n.value >= 1300.0);
        let at_word = before.is(Mark::Clock) || says(Sense::AtAnHour) || coming;
        if at_word && clocky && !noun_after {
            items[at].what = What::Clock(hour as u16 * 60 + minute as u16);
            continue;
        }
        // "by 9's valve": what has something is a trailer
        if text[tokens[items[at].end - 1].end..].starts_with("'s") {
            continue;
        }
        // "came back around 9"
        let around = before.is(Mark::About)
            && n.value <= 12.0
            && !valued(items, at)
            && items[..at].iter().rev().take(8).any(|i| {
                i.chunk == items[at].chunk
                    && (matches!(i.what, What::Is(Concept::Event(_)))
                        || says(Sense::Around) && i.number().is_some())
            });
        if around || before.is(Mark::Clock) && n.value <= 24.0 && !noun_after {
            items[at].what = hour_of(items, at, n.value);
        }
    }
}

fn four_digits(typed: &str) -> bool {
    typed.len() == 4 && typed.bytes().all(|b| b.is_ascii_digit())
}

/// "at 6 in the morning", "a las 9 de la noche": the half of the day. Where no hour stands before them the words of the
/// morning plan, and those of the afternoon say nothing.
fn parts_of_the_day(items: &mut [Item]) {
    for at in 0..items.len() {
        let late = match items[at].what {
            What::Is(Concept::Mark(Mark::Forenoon)) => false,
            What::Is(Concept::Mark(Mark::Afternoon)) => true,
            _ => continue,
        };
        let hour = at
            .checked_sub(1)
            .filter(|i| items[*i].chunk == items[at].chunk);
        let minutes = hour.and_then(|i| match items[i].what {
            What::Clock(minutes) => Some(minutes),
            What::Number(n) if n.form == Form::Whole && n.unit.is_none() => {
                let led = i > 0
                    && [Mark::At, Mark::About, Mark::Clock]
                        .iter()
                        .any(|mark| items[i - 1].is(*mark));
                (led && (1.0..=12.0).contains(&n.value)).then_some(n.value as u16 * 60)
            }
            _ => None,
        });
        let told = match (hour, minutes) {
            (Some(hour), Some(minutes)) if minutes < 13 * 60 => {
                items[hour].what = What::Clock(minutes % 720 + if late { 720 } else { 0 });
                true
            }
            (_, minutes) => minutes.is_some(),
        };
        let left_over = if late { Mark::Filler } else { Mark::Plan };
        items[at].what = What::Is(Concept::Mark(if told { Mark::Filler } else { left_over }));
    }
}

/// "last night around 10", "at 9 last night", beside another number that can be the trailer: the hour.
fn beside_a_day(items: &[Item], at: usize) -> bool {
    let hour = items[at]
        .number()
        .is_some_and(|n| (1.0..=12.0).contains(&n.value));
    let led = [Mark::At, Mark::About, Mark::Clock]
        .iter()
        .any(|mark| items[at - 1].is(*mark));
    let day = |i: usize| {
        items
            .get(i)
            .is_some_and(|n| n.is(Mark::LastNight) || n.is(Mark::Yesterday) || n.is(Mark::Morning))
    };
    let another = |i: usize| {
        i != at
            && (items[i].what == What::Code
                || items[i]
                    .number()
                    .is_some_and(|n| n.form == Form::Whole && n.unit.is_none()))
    };
    hour && led && (day(at + 1) || at > 1 && day(at - 2)) && sentence_around(items, at).any(another)
}

/// Returns a bare hour as a time of day; "yesterday at 9" is of neither half of the day for certain.
fn hour_of(items: &[Item], at: usize, hour: f64) -> What {
    let either_half = (1.0..=12.0).contains(&hour)
        && items[sentence_around(items, at)]
            .iter()
            .any(|i| i.is(Mark::Yesterday) && i.chunk == items[at].chunk);
    if either_half {
        What::Labelled
    } else {
        What::Clock(hour as u16 * 60)
    }
}

/// Tells whether a noun that has numbers stands in the chunk.
fn valued(items: &[Item], at: usize) -> bool {
    let chunk = items[at].chunk;
    let back = (0..at)
        .rev()
        .take(12)
        .take_while(|i| items[*i].chunk == chunk);
    let on = (at + 1..items.len())
        .take(6)
        .take_while(|i| items[*i].chunk == chunk);
    back.chain(on)
        .any(|i| items[i].noun().is_some_and(|n| n.reading().is_some()))
}
