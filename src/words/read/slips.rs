//! Words nobody knows where a word that steers is likely: a slip there would turn a question or a hedge into a value.

use super::neighbours::Words;
use crate::words::concept::{Concept, Mark, Noun, Unit};
use crate::words::item::{Form, What};
use crate::words::senses::Sense;

impl Words<'_> {
    /// Reads what a slip beside a number may have been meant to be.
    pub(super) fn slip(&mut self, at: usize) {
        self.lost_ones(at);
        self.lost_tens(at);
        self.lost_between(at);
        self.lost_than(at);
        if self.items[at].is(Mark::No) {
            self.lost_place(at);
        }
        if self.items[at].is(Mark::Between)
            && self
                .items
                .get(at + 1)
                .is_some_and(|n| n.what == (What::Word { ordinary: false }))
        {
            // "between haf and 3/4"
            self.bound(at + 1);
            return;
        }
        // "tw thirds empty": a part that has lost its number
        if matches!(self.items[at].what, What::Word { ordinary: true })
            && self.says(at, Sense::Parts)
        {
            self.bound(at + 1);
            return;
        }
        // "12 tank almos full", "caso 4 bar"
        let measured = self.items.get(at + 1).is_some_and(|n| {
            matches!(n.what, What::Is(Concept::Level(_)))
                || n.number()
                    .is_some_and(|n| n.unit.is_some() || n.form == Form::Part)
        });
        if self.items[at].what == (What::Word { ordinary: true })
            && measured
            && self.slip_for(at, Sense::Bound, 3)
        {
            self.bound(at + 1);
            return;
        }
        if self.items[at].what != (What::Word { ordinary: false }) {
            self.meant_to_mend(at);
            return;
        }
        // "lmost 80%", "enre 2 y 3 bares": only a bound
        if self.slip_for(at, Sense::Bound, usize::MAX) {
            self.bound(at + 1);
            return;
        }
        // "3/4 empt": full or empty, which is the opposite
        if self.slip_for(at, Sense::TurnsALevel, usize::MAX) && at > 0 {
            if let What::Number(n) = &mut self.items[at - 1].what
                && n.form == Form::Part
            {
                n.bound = true;
            }
            return;
        }
        self.lost_side(at);
        self.lost_part(at);
        self.lost_place(at);
        self.meant_to_mend(at);
    }

    /// "norh of 60 psi", "fresh alf to 3/4": a word nobody knows that may have made the value a bound.
    fn lost_side(&mut self, at: usize) {
        let part = self.items.get(at + 1).is_some_and(|n| n.is(Mark::To))
            && self
                .items
                .get(at + 2)
                .is_some_and(|n| n.number().is_some_and(|n| n.form == Form::Part));
        if part && self.same_chunk(at, at + 2) {
            return self.bound(at + 2);
        }
        let of =
            self.items.get(at + 1).is_some_and(|n| n.is(Mark::Of)) && self.same_chunk(at, at + 2);
        let measured = self.items.get(at + 2).is_some_and(|n| {
            n.number().is_some_and(|n| {
                n.unit.is_some_and(|unit| {
                    matches!(unit, Unit::Volt | Unit::Pct) || unit.is_pressure()
                })
            })
        });
        if of && measured {
            self.bound(at + 2);
        }
    }

    /// "mas ed 300 galones", "less tha 10 percent": only a bound, where the word that ties it is lost.
    fn lost_than(&mut self, at: usize) {
        let lost = self.says(at, Sense::MoreThan)
            && matches!(
                self.items.get(at + 1).map(|n| n.what),
                Some(What::Word { .. })
            )
            && self.same_chunk(at, at + 2);
        if lost {
            self.bound(at + 2);
        }
    }

    /// Tells whether the number at `at` was written in words.
    fn spelled(&self, at: usize) -> bool {
        !self
            .spelt(at)
            .starts_with(|c: char| c.is_ascii_digit() || c == '-')
    }

    /// "fifty dive pounds", "is fifty tow": what the tens had after them is lost.
    fn lost_ones(&mut self, at: usize) {
        let word = matches!(self.items[at].what, What::Word { .. })
            || self.items[at].is(Mark::To) && self.ends(at);
        if !word || at == 0 || !self.spelled(at - 1) || !self.same_chunk(at, at - 1) {
            return;
        }
        let measured = self.ends(at)
            || self.items.get(at + 1).is_some_and(|n| {
                matches!(n.what, What::Is(Concept::Unit(_)))
                    || n.noun().is_some_and(|n| n.reading().is_some())
            });
        if let What::Number(n) = &mut self.items[at - 1].what
            && (20.0..=90.0).contains(&n.value)
            && n.value % 10.0 == 0.0
            && measured
        {
            n.bound = true;
        }
    }

    /// "sity two psi", "ttwo hundred gallons": what stood before is lost.
    fn lost_tens(&mut self, at: usize) {
        let word = self.items[at].what == (What::Word { ordinary: false });
        if !word || !self.same_chunk(at, at + 1) || !self.spelled(at + 1) {
            return;
        }
        if let What::Number(n) = &mut self.items[at + 1].what
            && n.unit.is_some()
            && (n.value < 10.0 || n.value % 100.0 == 0.0)
        {
            n.bound = true;
        }
    }

    /// "entree 2 y 3 bares": only a range, also where the slip is a word.
    fn lost_between(&mut self, at: usize) {
        let two = |i: usize| self.items.get(i).is_some_and(|n| n.number().is_some());
        let range = two(at + 1)
            && self.items.get(at + 2).is_some_and(|n| n.is(Mark::And))
            && two(at + 3)
            && matches!(self.items[at].what, What::Word { .. });
        if range && self.slip_for(at, Sense::Between, usize::MAX) {
            self.bound(at + 1);
        }
    }

    /// "two and a hslf gallons", "twl and a half": half of the number is lost.
    fn lost_part(&mut self, at: usize) {
        let and = |i: usize| self.items.get(i).is_some_and(|n| n.is(Mark::And));
        let a = |i: usize| self.items.get(i).is_some_and(|n| n.is(Mark::Filler));
        let before = at > 2 && a(at - 1) && and(at - 2);
        let after = and(at + 1) && a(at + 2);
        let number = match (before, after) {
            (true, _) => at - 3,
            (_, true) => at + 3,
            _ => return,
        };
        if let Some(What::Number(n)) = self.items.get_mut(number).map(|i| &mut i.what) {
            n.bound = true;
        }
        // "a hslf gallons": a measure that lost its number has none
        if before && let Some(What::Number(n)) = self.items.get_mut(at + 1).map(|i| &mut i.what) {
            n.bound = true;
        }
    }

    /// "psi 50 onn 14": the trailer of a value that was told.
    fn lost_place(&mut self, at: usize) {
        let value = at > 0
            && (self.items[at - 1].number().is_some()
                || matches!(self.items[at - 1].what, What::Is(Concept::Level(_))));
        let trailer = self.names(at + 1) && self.ends(at + 1);
        let word = self.spelt(at);
        // "12 waste 60 no 70": where a trailer opens the clause, a second is named by nothing
        let opened = || {
            let first = (0..at).rev().take_while(|i| self.same_chunk(at, *i)).last();
            first.is_some_and(|i| i + 1 < at && self.names(i))
        };
        let no = self.items[at].is(Mark::No) && self.says(at, Sense::PlainNo) && !opened();
        let place = |meant: &str| {
            no && meant == "on"
                || word.len() <= 3
                    && (one_slip(&word, meant) || word.len() == 2 && near_pair(&word, meant))
        };
        if value
            && trailer
            && self
                .senses
                .of(Sense::Place)
                .iter()
                .any(|meant| place(meant))
        {
            self.items[at].what = What::Is(Concept::Mark(Mark::At));
        }
    }

    /// Tells whether the word at `at` is one slip away from one of the first `most` words of `sense`.
    fn slip_for(&self, at: usize, sense: Sense, most: usize) -> bool {
        let word = self.spelt(at);
        let mut meant = self.senses.of(sense).iter().take(most);
        meant.any(|meant| one_slip(&word, meant))
    }

    fn bound(&mut self, at: usize) {
        // "lmost at 3/4"
        let at = at + usize::from(self.items.get(at).is_some_and(|i| i.is(Mark::At)));
        match &mut self.items.get_mut(at).map(|i| &mut i.what) {
            Some(What::Number(n)) => n.bound = true,
            Some(What::Is(Concept::Level(_))) => {
                self.items[at - 1].what = What::Is(Concept::Mark(Mark::Bound));
            }
            _ => {}
        }
        // "between" has two numbers
        let joined = self.items.get(at + 1).is_some_and(|i| i.is(Mark::And));
        if joined && let Some(What::Number(n)) = self.items.get_mut(at + 2).map(|i| &mut i.what) {
            n.bound = true;
        }
    }

    /// "I man 3/4", "perón, 65": a correction.
    fn meant_to_mend(&mut self, at: usize) {
        let wat = self.items[at].is(Mark::Query) && at > 0 && self.items[at - 1].is(Mark::No);
        if !matches!(self.items[at].what, What::Word { .. }) && !wat {
            return;
        }
        let next = self
            .items
            .iter()
            .skip(at + 1)
            .find(|i| !i.is_filler() && i.what != What::Sign(','))
            .is_some_and(|n| {
                n.number().is_some()
                    || n.what == What::Code
                    || n.noun().is_some_and(|n| n.reading().is_some())
            });
        let first = at == 0 || self.items[at - 1].sentence != self.items[at].sentence;
        if !next || first {
            return;
        }
        let said = (self.says(at - 1, Sense::BeforeTakesBack)
            || self.items[at - 1].number().is_some())
            && self.slip_for(at, Sense::TakesBack, usize::MAX);
        if said {
            self.items[at].what = What::Is(Concept::Mark(Mark::Sorry));
        }
    }

    /// "text me hen the tank gets to 80%": what is told of now has "got to".
    pub(super) fn wanted(&mut self, at: usize) {
        let rises = self.says(at, Sense::Rises);
        if !rises {
            return;
        }
        let sentence = self.items[at].sentence;
        let asks = (0..at)
            .rev()
            .take(40)
            .take_while(|i| self.items[*i].sentence == sentence)
            .any(|i| self.says(i, Sense::Me));
        if asks {
            self.items[at].what = What::Is(Concept::Mark(Mark::If));
        }
    }

    /// "tank 3/4 (fresh)": what stands in brackets says which.
    pub(super) fn bracketed(&mut self, at: usize) {
        let open = at > 0 && self.items[at - 1].what == What::Sign('(');
        let close = self
            .items
            .get(at + 1)
            .is_some_and(|n| n.what == What::Sign(')'));
        let Some(noun @ (Noun::Fresh | Noun::Waste)) =
            self.items[at].noun().filter(|_| open && close)
        else {
            return;
        };
        let tank = (0..at)
            .rev()
            .take(8)
            .take_while(|i| self.items[*i].sentence == self.items[at].sentence)
            .find(|i| self.items[*i].noun() == Some(Noun::Tank));
        if let Some(tank) = tank {
            self.items[tank].what = What::Is(Concept::Noun(noun));
            self.items[at].what = What::Is(Concept::Mark(Mark::Filler));
        }
    }

    /// "frsh tank": the tank that the word before names.
    pub(super) fn which_tank(&mut self, at: usize) {
        if at == 0 || self.items[at].noun() != Some(Noun::Tank) {
            return;
        }
        if let Some(noun @ (Noun::Fresh | Noun::Waste)) = self.items[at - 1].noun()
            && self.same_chunk(at, at - 1)
        {
            self.items[at].what = What::Is(Concept::Noun(noun));
        }
    }

    /// "the generator for 20 is at half tank": its fuel.
    pub(super) fn generators_tank(&mut self, at: usize) {
        if self.items[at].noun() != Some(Noun::Tank) {
            return;
        }
        let spoken_of = (0..at)
            .rev()
            .take(12)
            .take_while(|i| self.same_chunk(at, *i))
            .filter_map(|i| self.items[i].noun())
            .find(|n| n.is_tank() || *n == Noun::Generator);
        if spoken_of == Some(Noun::Generator) {
            self.items[at].what = What::Is(Concept::Noun(Noun::Fuel));
        }
    }

    /// Tells whether a level stands right before it.
    fn level_before(&self, at: usize) -> bool {
        at.checked_sub(1).is_some_and(|i| {
            matches!(self.items[i].what, What::Is(Concept::Level(_)))
                || self.items[i].number().is_some_and(|n| n.form == Form::Part)
        })
    }

    /// "half tank of waste", "full tank of coffee": whose tank it is follows; another's is no tank of ours.
    pub(super) fn tank_of(&mut self, at: usize) {
        let of = self.items[at].noun() == Some(Noun::Tank)
            && self.items.get(at + 1).is_some_and(|n| n.is(Mark::Of))
            && self.same_chunk(at, at + 2);
        if !of {
            return;
        }
        match self.items[at + 2].what {
            What::Is(Concept::Noun(noun)) if noun.is_tank() => {
                self.items[at].what = What::Is(Concept::Noun(noun));
                self.items[at + 2].what = What::Is(Concept::Mark(Mark::Filler));
            }
            What::Word { .. } | What::Is(Concept::Mark(Mark::Idle)) if self.level_before(at) => {
                self.items[at].what = What::Is(Concept::Noun(Noun::Other));
            }
            _ => {}
        }
    }
}

/// Tells whether two words of two letters share one in its place.
fn near_pair(typed: &str, meant: &str) -> bool {
    meant.len() == 2
        && typed
            .bytes()
            .zip(meant.bytes())
            .filter(|(a, b)| a == b)
            .count()
            == 1
}

/// Tells whether one letter wrong, missing, too many or swapped makes `typed` of `meant`; not where they are the same.
pub(in crate::words) fn one_slip(typed: &str, meant: &str) -> bool {
    let (t, m): (Vec<char>, Vec<char>) = (typed.chars().collect(), meant.chars().collect());
    if t == m || t.len() < 3 || t.len().abs_diff(m.len()) > 1 {
        return false;
    }
    let head = t.iter().zip(&m).take_while(|(a, b)| a == b).count();
    let tail = t[head..]
        .iter()
        .rev()
        .zip(m[head..].iter().rev())
        .take_while(|(a, b)| a == b)
        .count();
    match (&t[head..t.len() - tail], &m[head..m.len() - tail]) {
        ([_], [_]) | ([_], []) | ([], [_]) => true,
        ([a, b], [c, d]) => a == d && b == c,
        _ => false,
    }
}
