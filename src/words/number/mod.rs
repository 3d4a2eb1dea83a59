//! Numbers as they are spoken, joined to their sign, measure and hedge.

mod leading;
mod measure;
mod range;
mod spoken;

use crate::words::concept::{Concept, Unit};
use crate::words::item::{Form, Item, Number, What};
use crate::words::lex::Token;
use crate::words::typed;
use leading::leading_measures;
use measure::{
    contrasted, hedge, hours_and_minutes, levels, measure, respectively, signs, unit_after,
};
use range::ranges;
use spoken::read_spoken;

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
    contrasted(items);
    respectively(items);
    leading_measures(items);
    ranges(items);
    items.retain(|item| item.what != What::Gone);
}
