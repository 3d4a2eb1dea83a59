//! Words whose neighbours give them another meaning than they have alone: got to 12, 90 gallons left, once 20 is pumped.

use std::borrow::Cow;

use crate::heard::{Event, Need};
use crate::words::concept::{AskWord, Concept, Mark, Noun, State, Unit};
use crate::words::item::{Form, Item, Number, What};
use crate::words::lex::Token;

/// The items with the text they were read from.
pub(super) struct Words<'a> {
    pub(super) text: &'a str,
    pub(super) tokens: &'a [Token],
    pub(super) items: &'a mut [Item],
}

/// Gives each such word its meaning.
pub(super) fn settle(text: &str, tokens: &[Token], items: &mut [Item]) {
    let mut words = Words {
        text,
        tokens,
        items,
    };
    for at in 0..words.items.len() {
        words.slip(at);
        words.wanted(at);
        words.which_tank(at);
        words.bracketed(at);
        words.once(at);
        words.asked(at);
        words.it_is_out(at);
        words.weather(at);
        words.stands_at(at);
        words.both_cords(at);
        words.got_to(at);
        words.left(at);
        words.truck(at);
        words.regulator_side(at);
        words.alternating(at);
        words.all_of_them(at);
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

    pub(super) fn same_chunk(&self, a: usize, b: usize) -> bool {
        self.items
            .get(b)
            .is_some_and(|item| item.chunk == self.items[a].chunk)
    }

    /// Tells whether nothing more is said in the chunk after `at`.
    fn ends(&self, at: usize) -> bool {
        self.items.get(at + 1).is_none_or(|n| {
            n.chunk != self.items[at].chunk || matches!(n.what, What::Sign(_) | What::Break)
        })
    }

    /// Tells whether a trailer may be named at `at`.
    fn names(&self, at: usize) -> bool {
        self.items.get(at).is_some_and(|n| match n.what {
            What::Code => true,
            What::Number(n) => n.form == Form::Whole && n.unit.is_none(),
            _ => n.is(Mark::Unit),
        })
    }

    /// Tells whether a number without a measure stands at `at`.
    fn bare_number(&self, at: usize) -> Option<f64> {
        let number = self.items.get(at)?.number()?;
        (number.unit.is_none() && matches!(number.form, Form::Whole | Form::Decimal))
            .then_some(number.value)
    }

    /// "once 20 is pumped I'll close it": a condition, and not eleven.
    fn once(&mut self, at: usize) {
        let Some(next) = self.items.get(at + 1) else {
            return;
        };
        let opens = at == 0 || self.items[at - 1].chunk != self.items[at].chunk;
        if opens
            && self.spelt(at) == "once"
            && matches!(self.items[at].what, What::Word { .. })
            && (self.names(at + 1) || next.is(Mark::Article))
        {
            self.items[at].what = What::Is(Concept::Mark(Mark::If));
        }
    }

    /// "is the leak on 17 fixed yet", without its mark: nobody reports in that order.
    fn asked(&mut self, at: usize) {
        let opens = self.items[..at]
            .iter()
            .rev()
            .take_while(|i| i.sentence == self.items[at].sentence)
            .all(|i| i.is(Mark::Call) || matches!(i.what, What::Sign(_) | What::Break));
        if !opens || !self.items[at].is(Mark::Aux) {
            return;
        }
        let verb = matches!(self.spelt(at).as_ref(), "is" | "are" | "does");
        // "is 62 psi too much for 9"
        let value = self.spelt(at) == "is"
            && self
                .items
                .get(at + 1)
                .is_some_and(|n| n.number().is_some_and(|n| n.unit.is_some()));
        if value {
            self.items[at].what = What::Is(Concept::Ask(AskWord::Advice));
            return;
        }
        let next = self.items.get(at + 1);
        let subject =
            next.is_some_and(|n| n.is(Mark::Article) || n.is(Mark::Unit)) || self.names(at + 1);
        if verb && subject && self.same_chunk(at, at + 1) {
            self.items[at].what = What::Is(Concept::Mark(Mark::Query));
        }
    }

    /// "it's 21 out": the air.
    fn it_is_out(&mut self, at: usize) {
        if at == 0 || self.items[at].what != What::Is(Concept::State(State::Out)) {
            return;
        }
        let Some(value) = self.bare_number(at - 1) else {
            return;
        };
        let before = at.checked_sub(2).map(|i| self.spelt(i));
        let its = matches!(
            before.as_deref(),
            Some("it's" | "its" | "is" | "it is" | "around" | "about" | "like")
        );
        let ends = self.ends(at)
            || self.items.get(at + 1).is_some_and(|n| n.is_filler()) && self.ends(at + 1);
        if its && ends && (-60.0..=130.0).contains(&value) {
            self.items[at].what = What::Is(Concept::Noun(Noun::Air));
        }
    }

    /// "it's 27 and dropping", "it's 15 and windy": the air.
    fn weather(&mut self, at: usize) {
        if at == 0 || !self.items[at].is(Mark::And) || at + 1 >= self.items.len() {
            return;
        }
        let number = self.bare_number(at - 1).is_some();
        let its = at > 1 && matches!(self.spelt(at - 2).as_ref(), "it's" | "its" | "it is");
        let said = matches!(
            self.spelt(at + 1).as_ref(),
            "dropping"
                | "falling"
                | "rising"
                | "windy"
                | "gusty"
                | "snowing"
                | "raining"
                | "sunny"
                | "clear"
                | "cloudy"
                | "cold"
                | "blowing"
                | "breezy"
                | "calm"
                | "icy"
                | "sleeting"
                | "foggy"
                | "humid"
        );
        if number && its && said && self.ends(at + 1) {
            self.items[at].what = What::Is(Concept::Noun(Noun::Air));
            self.items[at + 1].what = What::Is(Concept::Mark(Mark::Filler));
        }
    }

    /// "la 9 va a un cuarto": how it stands, and nothing that will be done.
    fn stands_at(&mut self, at: usize) {
        if !self.items[at].is(Mark::Plan) || !matches!(self.spelt(at).as_ref(), "va a" | "van a") {
            return;
        }
        let level = (at + 1..self.items.len())
            .take(2)
            .find(|i| !self.items[*i].is_filler())
            .is_some_and(|i| {
                self.items[i]
                    .number()
                    .is_some_and(|n| n.form == Form::Part || n.unit == Some(Unit::Pct))
            });
        if level {
            self.items[at].what = What::Is(Concept::Mark(Mark::Filler));
        }
    }

    /// "both cords hot", "los dos cables vivos": two of them.
    fn both_cords(&mut self, at: usize) {
        let both = self.items[at].is(Mark::All)
            && matches!(
                self.spelt(at).as_ref(),
                "both" | "los dos" | "ambos" | "both of the"
            );
        let cords = self
            .items
            .get(at + 1)
            .is_some_and(|n| matches!(n.noun(), Some(Noun::Cords | Noun::Cord)));
        if !both || !cords {
            return;
        }
        let live = (at + 1..self.items.len())
            .take(6)
            .take_while(|i| self.same_chunk(at, *i))
            .any(|i| {
                matches!(
                    self.items[i].what,
                    What::Is(
                        Concept::State(
                            State::Live | State::On | State::TurnedOn | State::PluggedIn
                        ) | Concept::Event(Event::PowerOn)
                    )
                ) || self.items[i].noun() == Some(Noun::Cords)
                    && self.items[i].end > self.items[i].first + 1
            });
        if live {
            self.items[at].what = What::Number(Number {
                value: 2.0,
                form: Form::Whole,
                unit: None,
                bound: false,
            });
            self.items[at + 1].what = What::Is(Concept::Noun(Noun::Cords));
        }
    }

    /// "got to 12", "just got to unit 12": the sender arrived, and need do nothing.
    fn got_to(&mut self, at: usize) {
        let plan = self.items[at].is(Mark::Plan) && self.spelt(at) == "got to";
        if !plan || !self.same_chunk(at, at + 1) {
            return;
        }
        let mut next = at + 1;
        while self.items.get(next).is_some_and(|n| n.is(Mark::Article)) {
            next += 1;
        }
        let valued = self
            .items
            .iter()
            .take(at)
            .rev()
            .take(6)
            .take_while(|i| i.chunk == self.items[at].chunk)
            .any(|i| i.noun().is_some_and(|n| n.reading().is_some()));
        if self.names(next) && !valued {
            self.items[at].what = What::Is(Concept::Event(Event::Arrived));
        }
    }

    /// "90 gallons left" remains, "left it in the truck" was forgotten: neither is a departure.
    fn left(&mut self, at: usize) {
        if self.items[at].what != What::Is(Concept::Event(Event::Left)) || self.spelt(at) != "left"
        {
            return;
        }
        let before = at
            .checked_sub(1)
            .filter(|i| self.same_chunk(at, *i))
            .map(|i| self.items[i]);
        let remains = before.is_some_and(|b| {
            b.number()
                .is_some_and(|n| n.unit.is_some() || n.form != Form::Whole)
                || matches!(
                    b.what,
                    What::Is(
                        Concept::Level(_)
                            | Concept::Noun(Noun::Supplies | Noun::Water | Noun::Fuel)
                    )
                )
                || b.noun().is_some_and(Noun::is_tank)
        });
        let forgot = self.items.get(at + 1).is_some_and(|n| {
            n.chunk == self.items[at].chunk
                && n.is(Mark::Pronoun)
                && !(self.ends(at + 1)
                    || self
                        .items
                        .get(at + 2)
                        .is_some_and(|n| n.is(Mark::With) || n.is(Mark::And)))
        });
        if remains || forgot {
            self.items[at].what = What::Is(Concept::Mark(Mark::Filler));
        }
    }

    /// "llegó la pipa a la 12": the truck that was asked for came.
    fn truck(&mut self, at: usize) {
        let need = matches!(self.items[at].what, What::Is(Concept::Need(Need::PumpOut)));
        if !need
            || !matches!(
                self.spelt(at).as_ref(),
                "pipa" | "la pipa" | "una pipa" | "a truck"
            )
        {
            return;
        }
        let moves = |i: &Item| {
            matches!(
                i.what,
                What::Is(Concept::Event(
                    Event::Arrived | Event::Left | Event::Returned
                ))
            )
        };
        let near = (at.saturating_sub(3)..self.items.len().min(at + 4))
            .filter(|i| self.same_chunk(at, *i))
            .any(|i| moves(&self.items[i]));
        if near {
            self.items[at].what = What::Is(Concept::Noun(Noun::Truck));
        }
    }

    /// "3.2 bar after the regulator, 6 bar before", "450 kPa before I fitted the reg, 330 after".
    fn regulator_side(&mut self, at: usize) {
        let before = matches!(
            self.spelt(at).as_ref(),
            "before" | "before i" | "before it" | "ahead"
        );
        let after = matches!(self.spelt(at).as_ref(), "after" | "after it" | "after that");
        if !(before || after)
            || !matches!(
                self.items[at].what,
                What::Is(Concept::Mark(Mark::Clock | Mark::Plan))
            )
        {
            return;
        }
        let pressure = |i: &Item| {
            i.number().is_some_and(|n| {
                matches!(
                    n.unit,
                    Some(Unit::Psi | Unit::Bar | Unit::Kpa | Unit::KgCm2)
                )
            })
        };
        let sentence = self.items[at].sentence;
        let near = |i: &Item| i.sentence == sentence;
        let around = at.saturating_sub(40)..self.items.len().min(at + 40);
        let spoken_of = self.items[around].iter().filter(|i| near(i)).any(|i| {
            matches!(
                i.noun(),
                Some(Noun::Regulator | Noun::BeforeRegulator | Noun::AfterRegulator)
            ) || i.what == What::Is(Concept::Event(Event::RegulatorFitted))
        });
        let told = self.items[..at]
            .iter()
            .rev()
            .take(5)
            .any(|i| near(i) && (pressure(i) || i.number().is_some() && after))
            || at > 0 && self.bare_number(at - 1).is_some_and(|v| v >= 15.0);
        let clause = self.spelt(at) == "before i";
        let next_value = self.bare_number(at + 1).is_some();
        if !spoken_of || !told || !(clause || self.ends(at) || next_value) {
            return;
        }
        let noun = if before {
            Noun::BeforeRegulator
        } else {
            Noun::AfterRegulator
        };
        self.items[at].what = What::Is(Concept::Noun(noun));
        // a number without a measure has that of the number it is held against
        let own = |i: &usize| {
            !clause
                && self.bare_number(*i).is_some()
                && !i.checked_sub(1).is_some_and(|b| {
                    self.items[b].is(Mark::At)
                        || self.items[b].is(Mark::Unit)
                        || self.items[b].what == What::Is(Concept::State(State::On))
                })
        };
        let Some(number) = at.checked_sub(1).filter(own) else {
            return;
        };
        let measure = self.items[..number]
            .iter()
            .rev()
            .take(40)
            .find(|i| near(i) && pressure(i))
            .and_then(|i| i.number()?.unit);
        if let What::Number(n) = &mut self.items[number].what {
            n.unit = measure;
        }
    }

    /// "118 ac", "ac 118": the volts of the mains, and no cooler.
    fn alternating(&mut self, at: usize) {
        if self.items[at].noun() != Some(Noun::Ac) || self.spelt(at) != "ac" {
            return;
        }
        let mains = |v: f64| (90.0..=260.0).contains(&v);
        let before = at
            .checked_sub(1)
            .filter(|i| self.same_chunk(at, *i) && self.bare_number(*i).is_some_and(mains));
        let after = Some(at + 1)
            .filter(|i| self.same_chunk(at, *i) && self.bare_number(*i).is_some_and(mains));
        let place = |i: usize| {
            self.items.get(i).is_some_and(|n| {
                n.is(Mark::At)
                    || n.is(Mark::And)
                    || n.what == What::Is(Concept::State(State::On)) && self.names(i + 1)
            })
        };
        let denied =
            at > 0 && (self.items[at - 1].is(Mark::No) || self.items[at - 1].is(Mark::Not));
        let number = match (before, after) {
            (Some(i), _) if self.ends(at) || place(at + 1) => i,
            (None, Some(i)) if !denied && (self.ends(i) || place(i + 1)) => i,
            _ => return,
        };
        if let What::Number(n) = &mut self.items[number].what {
            n.unit = Some(Unit::Volt);
        }
        self.items[at].what = What::Is(Concept::Mark(Mark::Filler));
    }

    /// "los cords de la 21 están live, los tres", "cords hot, all 3": how many of them, where a count is said last.
    fn all_of_them(&mut self, at: usize) {
        let whole =
            self.items[at].is(Mark::All) || matches!(self.spelt(at).as_ref(), "los" | "las");
        let count = self.bare_number(at + 1).filter(|n| (1.0..=4.0).contains(n));
        if !whole || count.is_none() || !self.ends(at + 1) || !self.same_chunk(at, at + 1) {
            return;
        }
        let sentence = self.items[at].sentence;
        let said = || {
            self.items[..at]
                .iter()
                .rev()
                .take(40)
                .take_while(|i| i.sentence == sentence)
        };
        let live = said().any(|i| {
            matches!(
                i.what,
                What::Is(
                    Concept::State(State::Live | State::On | State::TurnedOn | State::PluggedIn)
                        | Concept::Event(Event::PowerOn)
                )
            )
        });
        let cords = said().any(|i| matches!(i.noun(), Some(Noun::Cords | Noun::Cord)));
        if live && cords {
            self.items[at].what = What::Is(Concept::Noun(Noun::Cords));
        }
    }
}
