//! Words whose neighbours give them another meaning than they have alone: got to 12, 90 gallons left, once 20 is pumped.

mod air;
mod asking;
mod counts;
mod inverted;
mod not_so;
mod parts;
mod places;
mod power;
mod regulator;
mod talk;
mod times;
mod values;

use std::borrow::Cow;

use crate::words::concept::Mark;
use crate::words::item::{Form, Item, What};
use crate::words::lex::Token;
use crate::words::senses::{Sense, Senses, SensesOf};

/// The items with the text they were read from.
pub(super) struct Words<'a> {
    pub(super) text: &'a str,
    pub(super) tokens: &'a [Token],
    pub(super) items: &'a mut [Item],
    pub(super) senses: &'a Senses,
    /// For each item, the senses of its spelling: every rule asks for some, and the spellings do not change.
    said: Vec<SensesOf>,
}

/// Gives each such word its meaning.
pub(super) fn settle(text: &str, tokens: &[Token], items: &mut [Item], senses: &Senses) {
    let spelt = |item: &Item| &text[tokens[item.first].start..tokens[item.end - 1].end];
    let said = items
        .iter()
        .map(|item| senses.all_of(spelt(item)))
        .collect();
    let mut words = Words {
        text,
        tokens,
        items,
        senses,
        said,
    };
    for at in 0..words.items.len() {
        words.slip(at);
        words.wanted(at);
        words.was_wrong(at);
        words.fresh_is_in_it(at);
        words.on_so_many_cords(at);
        words.amps_on_a_circuit(at);
        words.so_hot(at);
        words.plug_is_in(at);
        words.which_tank(at);
        words.tank_of(at);
        words.generators_tank(at);
        words.regulator_on(at);
        words.regulator_set(at);
        words.by_a_place(at);
        words.bracketed(at);
        words.once(at);
        words.refusal(at);
        words.nor(at);
        words.nothing_at_all(at);
        words.asked(at);
        words.inverted(at);
        words.yet_at_the_end(at);
        words.it_is_out(at);
        words.it_is_so_out(at);
        words.outside_of_it(at);
        words.blows(at);
        words.open_part(at);
        words.closed_part(at);
        words.open_tomorrow(at);
        words.hour_of_then(at);
        words.house_on_a_street(at);
        words.so_many_of(at);
        words.so_many_bubbles(at);
        words.so_many_minutes(at);
        words.under_load(at);
        words.bore_of_a_hose(at);
        words.cord_by_number(at);
        words.one_cord(at);
        words.level_lamp(at);
        words.drain_level(at);
        words.dry_tank(at);
        words.one_outlet(at);
        words.weather(at);
        words.cold_tonight(at);
        words.then_another(at);
        words.needle_shows(at);
        words.stands_at(at);
        words.both_cords(at);
        words.got_to(at);
        words.left(at);
        words.works_there(at);
        words.were_off(at);
        words.plugged_into(at);
        words.on_a_circuit(at);
        words.leaves_behind(at);
        words.heats_the_room(at);
        words.nearly_there(at);
        words.here(at);
        words.truck(at);
        words.dumped(at);
        words.pumped_so_much(at);
        words.so_much_out(at);
        words.no_another(at);
        words.whenever(at);
        words.now_after_was(at);
        words.comes_at(at);
        words.breaker_by_number(at);
        words.wind_before_gusts(at);
        words.clean_too(at);
        words.water_beside_waste(at);
        words.regulator_side(at);
        words.at_the_source(at);
        words.source_reads(at);
        words.flowing(at);
        words.unhurried(at);
        words.alternating(at);
        words.amperes(at);
        words.an_for_and(at);
        words.crowd_is_here(at);
        words.all_of_them(at);
        words.not_so(at);
        words.moved_to(at);
        words.a_value_fell(at);
        words.hour_of_tonight(at);
        words.off_a_source(at);
        words.only_talk(at);
    }
}

impl Words<'_> {
    /// Returns the folded text of an item, its words parted by one space each.
    pub(super) fn spelt(&self, at: usize) -> Cow<'_, str> {
        let item = &self.items[at];
        let typed = &self.text[self.tokens[item.first].start..self.tokens[item.end - 1].end];
        if typed.contains("  ") {
            Cow::Owned(typed.split_whitespace().collect::<Vec<_>>().join(" "))
        } else {
            Cow::Borrowed(typed)
        }
    }

    /// Tells whether the item at `at` is spelt as one of the words of `sense`; behind the last there is none.
    pub(super) fn says(&self, at: usize, sense: Sense) -> bool {
        self.said.get(at).is_some_and(|said| said.has(sense))
    }

    pub(super) fn same_chunk(&self, a: usize, b: usize) -> bool {
        self.items
            .get(b)
            .is_some_and(|item| item.chunk == self.items[a].chunk)
    }

    /// Tells whether nothing more is said in the chunk after `at`.
    pub(super) fn ends(&self, at: usize) -> bool {
        self.items.get(at + 1).is_none_or(|n| {
            n.chunk != self.items[at].chunk || matches!(n.what, What::Sign(_) | What::Break)
        })
    }

    /// Tells whether a trailer may be named at `at`.
    pub(super) fn names(&self, at: usize) -> bool {
        self.items.get(at).is_some_and(|n| match n.what {
            What::Code => true,
            What::Number(n) => n.form == Form::Whole && n.unit.is_none(),
            _ => n.is(Mark::Unit),
        })
    }

    /// Tells whether a number without a measure stands at `at`.
    pub(super) fn bare_number(&self, at: usize) -> Option<f64> {
        let number = self.items.get(at)?.number()?;
        (number.unit.is_none() && matches!(number.form, Form::Whole | Form::Decimal))
            .then_some(number.value)
    }
}
