//! Which trailers a message names: after "unit" and its like, by a name of letters and digits, or by a bare number that
//! stands where only a trailer can.

mod at_value;
mod candidate;
mod follows;
mod inside;
mod join;
mod near;
mod parity;
mod perhaps;
mod place;

use crate::heard::UnitName;
use crate::words::concept::Mark;
use crate::words::item::{Form, Item, What};
use crate::words::lex::Token;
use crate::words::senses::{Sense, Senses};
use candidate::is_unit;
use inside::{beside_one_person, count_of_things, places_inside, so_many_at_a_trailer, sub_places};
use join::join;

/// The longest span of numbers that "12-14" may mean.
const LONGEST_SPAN: f64 = 20.0;

/// Trailers named together.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Group {
    /// Their names.
    pub names: Vec<UnitName>,
    /// True where a word says that what follows holds for each: both, all, units.
    pub plural: bool,
    /// True where a word or the form of the name says that it is a trailer.
    pub explicit: bool,
    /// True for "12 or 14".
    pub either: bool,
    /// True where a place word stands before: on, at, in.
    pub placed: bool,
}

/// Finds the trailers and replaces their items.
pub(super) fn find(
    text: &str,
    tokens: &[Token],
    items: &mut Vec<Item>,
    senses: &Senses,
) -> Vec<Group> {
    let mut named = mark(text, tokens, items, senses);
    sub_places(items, &mut named);
    let mut groups = join(items, named);
    parity::every_second(text, tokens, items, senses, &mut groups);
    groups
}

/// A candidate that was taken for a trailer.
struct Named {
    at: usize,
    names: Vec<UnitName>,
    explicit: bool,
}

fn name(text: &str, tokens: &[Token], item: &Item) -> Option<UnitName> {
    match item.what {
        What::Number(n)
            if n.form == Form::Whole
                && n.unit.is_none()
                && !(n.bound && spelled(text, tokens, item))
                && (1.0..=99_999.0).contains(&n.value) =>
        {
            let typed = &text[tokens[item.first].start..tokens[item.end - 1].end];
            if typed.bytes().all(|b| b.is_ascii_digit()) {
                Some(UnitName::new(typed))
            } else {
                Some(UnitName::new(&format!("{}", n.value)))
            }
        }
        What::Code => Some(UnitName::new(
            &text[tokens[item.first].start..tokens[item.end - 1].end],
        )),
        _ => None,
    }
}

/// Tells whether a number was written in words.
fn spelled(text: &str, tokens: &[Token], item: &Item) -> bool {
    !text[tokens[item.first].start..].starts_with(|c: char| c.is_ascii_digit())
}

fn span(from: f64, to: f64) -> Option<Vec<UnitName>> {
    let whole = from.fract() == 0.0 && to.fract() == 0.0;
    if !whole || from < 1.0 || to <= from || to - from > LONGEST_SPAN || to > 9999.0 {
        return None;
    }
    Some(
        (from as u32..=to as u32)
            .map(|n| UnitName(n.to_string()))
            .collect(),
    )
}

/// "el tanque del 20": the article in "del" is that of the trailer, which a value has not.
fn of_the(text: &str, tokens: &[Token], items: &[Item], at: usize) -> Option<bool> {
    let of = items.get(at.checked_sub(1)?)?;
    let said = &text[tokens[of.first].start..tokens[of.end - 1].end];
    let thing = items.get(at.checked_sub(2)?)?.noun()?;
    (of.is(Mark::Of) && said == "del" && thing.reading().is_some()).then_some(true)
}

/// "5,6 and 7 all leveled": two trailers with no space after their comma, in a list that goes on; no part of one.
fn two_by_a_comma(
    text: &str,
    tokens: &[Token],
    items: &[Item],
    at: usize,
) -> Option<Vec<UnitName>> {
    let number = items[at].number().filter(|n| n.unit.is_none())?;
    let typed = &text[tokens[items[at].first].start..tokens[items[at].end - 1].end];
    let (one, two) = typed.split_once(',')?;
    let name = |digits: &str| {
        let value: u32 = digits.parse().ok()?;
        (value > 0 && !digits.starts_with('0')).then(|| UnitName::new(digits))
    };
    let plain = |n: &Item| {
        n.number()
            .is_some_and(|n| n.form == Form::Whole && n.unit.is_none())
    };
    let goes_on = items.get(at + 1).is_some_and(|n| n.is(Mark::And))
        && items.get(at + 2).is_some_and(plain)
        && items.get(at + 3).is_none_or(|n| n.number().is_none());
    let opens = at == 0
        || items[at - 1].sentence != items[at].sentence
        || !(items[at - 1].noun().is_some()
            || items[at - 1].number().is_some()
            || matches!(items[at - 1].what, What::Units(_)));
    (number.form == Form::Decimal && goes_on && opens).then_some(())?;
    Some(vec![name(one)?, name(two)?])
}

/// "left with b seven": a name of a letter and a number that were said or typed apart, behind a word that leads to one.
fn with_its_letter(
    text: &str,
    tokens: &[Token],
    items: &[Item],
    at: usize,
    senses: &Senses,
) -> Option<UnitName> {
    let (letter, lead) = (
        items.get(at.checked_sub(1)?)?,
        items.get(at.checked_sub(2)?)?,
    );
    let number = items[at].number().filter(|n| {
        n.form == Form::Whole && n.unit.is_none() && (1.0..1000.0).contains(&n.value)
    })?;
    let spelt = &text[tokens[letter.first].start..tokens[letter.end - 1].end];
    // "got here with b 7"
    let with = &text[tokens[lead.end - 1].start..tokens[lead.end - 1].end];
    let leads = lead.is(Mark::With)
        || lead.is(Mark::Unit)
        || lead.is(Mark::Article)
        || senses.has(with, Sense::InCompany);
    let here = lead.chunk == items[at].chunk && letter.chunk == items[at].chunk;
    (here && leads && senses.has(spelt, Sense::Letter))
        .then(|| UnitName::new(&format!("{spelt}{}", number.value)))
}

/// Decides for each candidate whether it names a trailer.
fn mark(text: &str, tokens: &[Token], items: &mut [Item], senses: &Senses) -> Vec<Named> {
    places_inside(items);
    let mut named: Vec<Named> = Vec::new();
    for at in 0..items.len() {
        let names = match items[at].what {
            What::Range(from, to, None) => span(from, to),
            _ => name(text, tokens, &items[at]).map(|n| vec![n]),
        };
        let Some(names) = names.or_else(|| two_by_a_comma(text, tokens, items, at)) else {
            continue;
        };
        if let Some(name) = with_its_letter(text, tokens, items, at, senses) {
            items[at - 1].what = What::Gone;
            named.push(Named {
                at,
                names: vec![name],
                explicit: true,
            });
            continue;
        }
        // "70 ppor ciento": a hundred in words after another number is a part of its measure
        let hundred = items[at].number().is_some_and(|n| n.value == 100.0)
            && spelled(text, tokens, &items[at])
            && at > 1
            && items[at - 2].number().is_some();
        if hundred {
            continue;
        }
        if let Some(two) = two_by_a_comma(text, tokens, items, at) {
            named.push(Named {
                at,
                names: two,
                explicit: false,
            });
            continue;
        }
        if so_many_at_a_trailer(text, tokens, items, at, senses) {
            items[at].what = What::Labelled;
            continue;
        }
        if count_of_things(text, tokens, items, at, !named.is_empty()) {
            continue;
        }
        let one_person = beside_one_person(text, tokens, items, at, senses).then_some(false);
        if let Some(explicit) = of_the(text, tokens, items, at)
            .or(one_person)
            .or_else(|| is_unit(items, at, &named))
        {
            named.push(Named {
                at,
                names,
                explicit,
            });
        }
    }
    named
}
