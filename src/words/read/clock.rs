//! Times of day without a colon: at 1045, before 6, 0745 on site.

use crate::heard::{Event, MAINS_V};
use crate::words::concept::{Concept, Mark, Noun, State, Unit};
use crate::words::item::{Form, Item, Number, What, sentence_around};
use crate::words::lex::Token;
use crate::words::scope::EITHER_HALF;
use crate::words::senses::{Sense, Senses};

/// "at 1045", "at four fifteen", "before 6": a time of day.
pub(super) fn clock_words(text: &str, tokens: &[Token], items: &mut [Item], senses: &Senses) {
    half_days(text, tokens, items, senses);
    opening_time(text, tokens, items, senses);
    parts_of_the_day(items);
    for at in 1..items.len() {
        let Some(n) = items[at]
            .number()
            .filter(|n| n.form == Form::Whole && n.unit.is_none())
        else {
            continue;
        };
        let hour = Hour {
            text,
            tokens,
            items,
            senses,
            at,
            value: n.value,
        };
        let (told, after_a) = (hour.told(), hour.after_a());
        if after_a && let What::Number(number) = &mut items[at].what {
            number.form = Form::Decimal;
        }
        match told {
            Some(Told::Is(what)) => items[at].what = what,
            Some(Told::Volts) => {
                if let What::Number(number) = &mut items[at].what {
                    number.unit = Some(Unit::Volt);
                }
            }
            None => {}
        }
    }
}

/// "at 3 p.m.", "a las 3 p. m.": an hour with its half of the day.
fn half_days(text: &str, tokens: &[Token], items: &mut [Item], senses: &Senses) {
    let spelt = |item: &Item| &text[tokens[item.first].start..tokens[item.end - 1].end];
    for at in 0..items.len() {
        let Some(n) = items[at].number().filter(|n| n.form == Form::Whole) else {
            continue;
        };
        let behind = n.unit.is_none() && at + 1 < items.len();
        let mark = match behind {
            true => spelt(&items[at + 1]),
            false => spelt(&items[at]).trim_start_matches(|c: char| c.is_ascii_digit() || c == ' '),
        };
        // "3 am" may be "3 a.m." or the verb
        let noon = if senses.has(mark, Sense::AfterNoon) {
            12
        } else if senses.has(mark, Sense::BeforeNoon) && (!behind || mark.contains('.')) {
            0
        } else {
            continue;
        };
        if (1.0..=12.0).contains(&n.value) {
            items[at].what = What::Clock((n.value as u16 % 12 + noon) * 60);
            if behind {
                items[at + 1].what = What::Gone;
            }
        }
    }
}

/// "2 am. minus eight", "0745 on site with 53": the time that opens a message.
fn opening_time(text: &str, tokens: &[Token], items: &mut [Item], senses: &Senses) {
    let spelt = |item: &Item| &text[tokens[item.first].start..tokens[item.end - 1].end];
    if let [first, half, ..] = items
        && let What::Number(n) = first.what
        && n.form == Form::Whole
        && n.unit.is_none()
        && (1.0..=12.0).contains(&n.value)
        && senses.has(spelt(half), Sense::Am)
    {
        first.what = What::Clock(n.value as u16 % 12 * 60);
    }
    if let Some(first) = items.first_mut()
        && let What::Number(n) = first.what
    {
        let typed = spelt(first);
        if four_digits(typed) && typed.starts_with('0') && n.value % 100.0 < 60.0 {
            first.what = What::Clock((n.value / 100.0) as u16 * 60 + (n.value % 100.0) as u16);
        }
    }
}

/// A whole number without a measure, which may be a time of day.
struct Hour<'a> {
    text: &'a str,
    tokens: &'a [Token],
    items: &'a [Item],
    senses: &'a Senses,
    at: usize,
    value: f64,
}

/// What its neighbours make of it.
enum Told {
    Is(What),
    /// The volts of the mains.
    Volts,
}

impl Hour<'_> {
    /// Returns what the first rule that fits makes of it.
    fn told(&self) -> Option<Told> {
        let at_noon_or_before = 1.0..=12.0;
        if self.half_follows() && at_noon_or_before.contains(&self.value) {
            return Some(Told::Is(What::Clock(self.value as u16 % 12 * 60)));
        }
        if self.four_digits_after_what_was_done() {
            return Some(Told::Is(self.clock()));
        }
        if self.beside_cords() {
            return Some(Told::Volts);
        }
        // "quarter to nine"
        let quarter = self.before().is(Mark::Idle) && self.says(Sense::QuarterTo);
        if quarter && at_noon_or_before.contains(&self.value) {
            return Some(Told::Is(What::Labelled));
        }
        if at_noon_or_before.contains(&self.value)
            && (self.between_a_trailer_and_a_colon()
                || self.opens_before_a_place()
                || self.after_a_deed_at_a_trailer()
                || self.after_a_trailer_was_seen_to())
        {
            return Some(Told::Is(hour_of(self.items, self.at, self.value)));
        }
        // "12 tank pumped at 14": no trailer either
        if (13.0..24.0).contains(&self.value) && self.after_a_trailer_was_seen_to() {
            return Some(Told::Is(What::Labelled));
        }
        if beside_a_day(self.items, self.at) {
            return Some(Told::Is(hour_of(self.items, self.at, self.value)));
        }
        if self.after_a_word_for_hours() && self.is_clock() && !self.heads_a_value() {
            return Some(Told::Is(self.clock()));
        }
        // "by 9's valve": what has something is a trailer
        if self.text[self.tokens[self.item().end - 1].end..].starts_with("'s") {
            return None;
        }
        // "by like 4"
        let about = self.before().is(Mark::About) && self.at > 1;
        let led = &self.items[self.at - if about { 2 } else { 1 }];
        let bare = led.is(Mark::Clock) && self.value <= 24.0 && !self.heads_a_value();
        // "doing this since 1987"; what is told beside an hour since which something stands is of now
        let year = self.says(Sense::Since) && (1900.0..2100.0).contains(&self.value);
        let since = self.since_an_hour();
        if year || since && self.value_beside() {
            return Some(Told::Is(What::Labelled));
        }
        if since {
            return Some(Told::Is(hour_of(self.items, self.at, self.value)));
        }
        (self.around() || bare).then(|| Told::Is(hour_of(self.items, self.at, self.value)))
    }

    fn item(&self) -> &Item {
        &self.items[self.at]
    }

    fn before(&self) -> &Item {
        &self.items[self.at - 1]
    }

    fn spelt(&self, item: &Item) -> &str {
        &self.text[self.tokens[item.first].start..self.tokens[item.end - 1].end]
    }

    /// Tells whether it is a plain number behind a bare "at" of its chunk.
    fn is_at(&self, at: usize) -> bool {
        let plain = self.items[at]
            .number()
            .is_some_and(|n| n.form == Form::Whole && n.unit.is_none());
        plain && at > 0 && {
            let before = &self.items[at - 1];
            before.what == What::Is(Concept::Mark(Mark::At)) && before.chunk == self.items[at].chunk
        }
    }

    /// "12 at 4: 50 psi": the time of what the colon opens, behind the trailer.
    fn between_a_trailer_and_a_colon(&self) -> bool {
        let colon = self.items.get(self.at + 1);
        let trailer = self.at.checked_sub(2).map(|i| &self.items[i]);
        self.is_at(self.at)
            && colon.is_some_and(|n| n.what == What::Sign(':'))
            && trailer.is_some_and(|i| {
                i.what == What::Code
                    || i.number()
                        .is_some_and(|n| n.form == Form::Whole && n.unit.is_none())
            })
    }

    /// "pumped 12 at 3": when it was done.
    fn after_a_deed_at_a_trailer(&self) -> bool {
        let chunk = self.item().chunk;
        let ends = self
            .items
            .get(self.at + 1)
            .is_none_or(|n| n.chunk != chunk || matches!(n.what, What::Sign(_) | What::Break));
        let trailer = self.at.checked_sub(2).filter(|i| {
            let item = &self.items[*i];
            let plain = |n: Number| n.form == Form::Whole && n.unit.is_none();
            item.chunk == chunk && (item.what == What::Code || item.number().is_some_and(plain))
        });
        let done = |i: &Item| {
            matches!(
                i.what,
                What::Is(
                    Concept::Event(_)
                        | Concept::State(State::Pumped | State::Cleaned | State::Stocked)
                )
            )
        };
        let deed = trailer
            .and_then(|i| i.checked_sub(1))
            .map(|i| &self.items[i]);
        ends && self.is_at(self.at) && deed.is_some_and(|i| i.chunk == chunk && done(i))
    }

    /// "12 tank pumped out at 4": when it was done to the trailer that heads the clause.
    fn after_a_trailer_was_seen_to(&self) -> bool {
        let chunk = self.item().chunk;
        let ends = self
            .items
            .get(self.at + 1)
            .is_none_or(|n| n.chunk != chunk || matches!(n.what, What::Sign(_) | What::Break));
        let here = |i: &usize| self.items[*i].chunk == chunk;
        let first = (0..self.at).rev().take(8).take_while(here).last();
        let Some(first) = first.filter(|_| ends && self.is_at(self.at)) else {
            return false;
        };
        let [trailer, between @ .., _] = &self.items[first..self.at] else {
            return false;
        };
        let plain = |n: Number| n.form == Form::Whole && n.unit.is_none();
        let seen_to = |i: &Item| {
            matches!(
                i.what,
                What::Is(Concept::State(
                    State::Pumped | State::Emptied | State::Cleaned | State::Stocked
                ))
            )
        };
        let beside = |i: &Item| {
            let tank = i.noun().is_some_and(Noun::is_tank);
            tank || seen_to(i) || i.is_filler() || i.is(Mark::Aux) || i.is(Mark::Past)
        };
        let heads = trailer.what == What::Code || trailer.number().is_some_and(plain);
        heads && between.iter().any(seen_to) && between.iter().all(beside)
    }

    /// "at 3 someone slipped on the steps at 23": it opens a clause that has a place of its own.
    fn opens_before_a_place(&self) -> bool {
        let chunk = self.item().chunk;
        let opens = self.at < 2 || self.items[self.at - 2].chunk != chunk;
        let here = || (self.at + 1..self.items.len()).take_while(|i| self.items[*i].chunk == chunk);
        let read = |i: usize| {
            let item = &self.items[i];
            item.noun().is_some_and(|n| n.reading().is_some())
                || item.number().is_some_and(|n| n.unit.is_some())
        };
        opens && self.is_at(self.at) && here().skip(2).any(|i| self.is_at(i)) && !here().any(read)
    }

    /// Tells whether the word before it has a sense.
    fn says(&self, sense: Sense) -> bool {
        self.senses.has(self.spelt(self.before()), sense)
    }

    /// a las, a 90: the preposition of Spanish does not name a trailer.
    fn after_a(&self) -> bool {
        !(self.half_follows() && (1.0..=12.0).contains(&self.value))
            && self.says(Sense::A)
            && self.before().end == self.item().first
    }

    fn half_follows(&self) -> bool {
        let next = self.items.get(self.at + 1);
        next.is_some_and(|n| self.senses.has(self.spelt(n), Sense::Am))
    }

    /// Returns hours and minutes of 1045.
    fn parts(&self) -> (f64, f64) {
        ((self.value / 100.0).floor(), self.value % 100.0)
    }

    fn clock(&self) -> What {
        let (hour, minute) = self.parts();
        What::Clock(hour as u16 * 60 + minute as u16)
    }

    /// "at 1045", "at 730"; nobody writes 1:02 as 102.
    fn is_clock(&self) -> bool {
        let (hour, minute) = self.parts();
        let short = hour < 10.0 && !four_digits(self.spelt(self.item()));
        let odd = short && (1.0..10.0).contains(&minute);
        self.value >= 100.0 && hour <= 23.0 && minute < 60.0 && !odd
    }

    /// Tells whether a noun that has numbers follows.
    fn noun_follows(&self) -> bool {
        let next = self.items.get(self.at + 1).and_then(Item::noun);
        next.is_some_and(|n| n.reading().is_some())
    }

    /// As [`Hour::noun_follows`], but for "at 1430 waste on 12 was 60": what opens the message.
    fn heads_a_value(&self) -> bool {
        let opens = self.at == 1 && four_digits(self.spelt(self.item())) && self.value >= 1300.0;
        self.noun_follows() && !opens
    }

    /// "arrived with 12 1045": four digits after what was done.
    fn four_digits_after_what_was_done(&self) -> bool {
        let four = four_digits(self.spelt(self.item()))
            && self.is_clock()
            && !valued(self.items, self.at)
            && !self.noun_follows();
        let named = matches!(
            self.before().what,
            What::Is(Concept::Mark(Mark::Unit | Mark::Article | Mark::Label)) | What::Sign('#')
        );
        let mut back = self.items[..self.at].iter().rev().take(12);
        four && !named && back.any(|i| matches!(i.what, What::Is(Concept::Event(_))))
    }

    /// "3 cords at 118": the volts, beside what carries them.
    fn beside_cords(&self) -> bool {
        let carries = |i: &Item| {
            i.chunk == self.item().chunk
                && (matches!(i.noun(), Some(Noun::Cords | Noun::Power | Noun::Volts))
                    || i.what == What::Is(Concept::Event(Event::PowerOn)))
        };
        MAINS_V.contains(&self.value)
            && self.says(Sense::AtAValue)
            && self.items[..self.at].iter().rev().take(6).any(carries)
    }

    /// "at 1045"; "truck called for 12, coming 730".
    fn after_a_word_for_hours(&self) -> bool {
        let called = |i: &Item| {
            i.is(Mark::Booked)
                || i.noun() == Some(Noun::Truck)
                || matches!(i.what, What::Is(Concept::Need(_)))
        };
        let coming = || {
            self.says(Sense::Coming)
                && !valued(self.items, self.at)
                && self.items[sentence_around(self.items, self.at)]
                    .iter()
                    .any(called)
        };
        self.before().is(Mark::Clock) || self.says(Sense::AtAnHour) || coming()
    }

    /// Tells whether the sentence gives a level or a number with its measure.
    fn value_beside(&self) -> bool {
        self.items[sentence_around(self.items, self.at)]
            .iter()
            .any(|i| {
                matches!(i.what, What::Is(Concept::Level(_)))
                    || i.number()
                        .is_some_and(|n| n.form == Form::Part || n.unit.is_some())
            })
    }

    /// "open since 11": the hour that ends its clause, after how a trailer stands; "closed since 12 is leaking" tells why.
    fn since_an_hour(&self) -> bool {
        let (chunk, sentence) = (self.item().chunk, self.item().sentence);
        let here = |by: usize| {
            let next = self.items.get(self.at + by)?;
            (next.chunk == chunk && !matches!(next.what, What::Sign(_) | What::Break))
                .then_some(next)
        };
        let number = |by: usize| here(by).is_some_and(|n| n.number().is_some());
        // "no water since 9 at 12", "down since 10 psi 20"
        let placed = here(1)
            .is_some_and(|n| n.is(Mark::At) || n.what == What::Is(Concept::State(State::On)));
        let headed = here(1).is_some_and(|n| n.noun().is_some());
        let ends = here(1).is_none() || (placed || headed) && number(2);
        let stands = |i: &Item| {
            i.sentence == sentence
                && matches!(
                    i.what,
                    What::Is(
                        Concept::Event(_)
                            | Concept::State(_)
                            | Concept::Fault(_)
                            | Concept::Noun(_)
                    )
                )
        };
        let before = self.items[..self.at - 1].iter().rev().take(6);
        (1.0..=12.0).contains(&self.value)
            && self.says(Sense::Since)
            && ends
            && before.into_iter().any(stands)
    }

    /// "came back around 9".
    fn around(&self) -> bool {
        let told = |i: &Item| {
            i.chunk == self.item().chunk
                && (matches!(
                    i.what,
                    What::Is(
                        Concept::Event(_)
                            | Concept::Fault(_)
                            | Concept::State(State::Leaking | State::Spilled | State::Smelly)
                    )
                ) || self.says(Sense::Around) && i.number().is_some())
        };
        self.before().is(Mark::About)
            && self.value <= 12.0
            && !valued(self.items, self.at)
            && self.items[..self.at].iter().rev().take(8).any(told)
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
            What::Clock(minutes) => Some(minutes % EITHER_HALF),
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
    } else if (1.0..=11.0).contains(&hour) {
        What::Clock(hour as u16 * 60 + EITHER_HALF)
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
