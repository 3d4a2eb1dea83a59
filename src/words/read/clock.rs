//! Times of day without a colon: at 1045, before 6, 0745 on site.

use crate::heard::Event;
use crate::words::concept::{Concept, Mark, Noun, Unit};
use crate::words::item::{Form, Item, What};
use crate::words::lex::Token;

/// "at 1045", "at four fifteen", "before 6": a time of day.
pub(super) fn clock_words(text: &str, tokens: &[Token], items: &mut [Item]) {
    // "2 am. minus eight"
    if let [first, half, ..] = items
        && let What::Number(n) = first.what
        && n.form == Form::Whole
        && n.unit.is_none()
        && (1.0..=12.0).contains(&n.value)
        && text[tokens[half.first].start..tokens[half.end - 1].end] == *"am"
    {
        first.what = What::Clock(n.value as u16 % 12 * 60);
    }
    // "0745 on site with 53"
    if let Some(first) = items.first_mut()
        && let What::Number(n) = first.what
    {
        let typed = &text[tokens[first.first].start..tokens[first.end - 1].end];
        if typed.len() == 4
            && typed.starts_with('0')
            && typed.bytes().all(|b| b.is_ascii_digit())
            && n.value % 100.0 < 60.0
        {
            first.what = What::Clock((n.value / 100.0) as u16 * 60 + (n.value % 100.0) as u16);
        }
    }
    for at in 1..items.len() {
        let Some(n) = items[at].number() else {
            continue;
        };
        if n.form != Form::Whole || n.unit.is_some() {
            continue;
        }
        let half = items
            .get(at + 1)
            .map(|n| &text[tokens[n.first].start..tokens[n.end - 1].end]);
        if half == Some("am") && (1.0..=12.0).contains(&n.value) {
            items[at].what = What::Clock(n.value as u16 % 12 * 60);
            continue;
        }
        let before = items[at - 1];
        let word = &text[tokens[before.first].start..tokens[before.end - 1].end];
        let (hour, minute) = ((n.value / 100.0).floor(), n.value % 100.0);
        let clocky = n.value >= 100.0 && hour <= 23.0 && minute < 60.0;
        let noun_after = items
            .get(at + 1)
            .is_some_and(|x| x.noun().is_some_and(|n| n.reading().is_some()));
        let typed = &text[tokens[items[at].first].start..tokens[items[at].end - 1].end];
        // a las, a 90: the preposition of Spanish does not name a trailer
        if word == "a"
            && before.end == items[at].first
            && let What::Number(number) = &mut items[at].what
        {
            number.form = Form::Decimal;
        }
        let four = typed.len() == 4
            && typed.bytes().all(|b| b.is_ascii_digit())
            && clocky
            && !valued(items, at);
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
            && matches!(word, "at" | "@")
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
        let at_word = before.is(Mark::Clock) || matches!(word, "at" | "a las" | "@");
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
                        || word == "around" && i.number().is_some())
            });
        if around || before.is(Mark::Clock) && n.value <= 24.0 && !noun_after {
            items[at].what = What::Clock(n.value as u16 * 60);
        }
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
