//! Two numbers that are one thing: a range (fifteen to twenty, between 50 and 60, 60 or 80), a time (ten to six), a count
//! out of a whole (2 of 4 cords), a move (from 60 to 40).

use crate::heard::{Event, MOST_CORDS};
use crate::words::concept::{Concept, Mark, Noun, State, Unit};
use crate::words::item::{Form, Item, Number, What};

/// How many words that say nothing may stand between two numbers, beside the one that joins them.
const MOST_FILLERS: usize = 2;

/// Takes together the numbers that are one thing.
pub(super) fn ranges(items: &mut [Item]) {
    let live: Vec<usize> = (0..items.len())
        .filter(|i| items[*i].what != What::Gone)
        .collect();
    for (n, three) in live.windows(3).enumerate() {
        let [first, between, mut second] = [three[0], three[1], three[2]];
        // "a quarter to a half", "55 or maybe 60", "from 52 all the way down to 18"
        let fills = |at: usize| {
            [Mark::Article, Mark::Filler, Mark::About]
                .iter()
                .any(|mark| items[at].is(*mark))
        };
        let or_maybe = items[between].is(Mark::Or) && items[second].is(Mark::Doubt);
        let (mut fillers, mut behind) = (0, live[n + 3..].iter());
        while fillers < MOST_FILLERS && (fills(second) || or_maybe && fillers == 0) {
            let Some(next) = behind.next() else { break };
            second = *next;
            fillers += 1;
        }
        let (Some(from), Some(to)) = (items[first].number(), items[second].number()) else {
            continue;
        };
        let two = Two {
            items,
            first,
            between,
            second,
            from,
            to,
        };
        match two.are() {
            Are::Two => continue,
            Are::Range(unit) => {
                items[first].what = What::Range(from.value, to.value, unit);
                items[first].end = items[second].end;
            }
            Are::Either(unit) => {
                // the higher one first: "tank 12 or 14 is full" names no trailer between them
                let (from, to) = (from.value.max(to.value), from.value.min(to.value));
                items[first].what = What::Range(from, to, unit);
                items[first].end = items[second].end;
            }
            Are::Clock(minutes) => items[first].what = What::Clock(minutes),
            Are::Count => {}
            Are::MovedTo => {
                let whence = items[..first].iter().rposition(|i| i.is(Mark::From));
                for item in &mut items[whence.unwrap_or(first)..second] {
                    item.what = What::Gone;
                }
                continue;
            }
        }
        items[between].what = What::Gone;
        items[second].what = What::Gone;
    }
}

/// Two numbers with one word between them, by their places among the items.
struct Two<'a> {
    items: &'a [Item],
    first: usize,
    between: usize,
    second: usize,
    from: Number,
    to: Number,
}

/// What two numbers are together.
enum Are {
    /// Two numbers.
    Two,
    Range(Option<Unit>),
    /// One of the two.
    Either(Option<Unit>),
    /// A time of day, in minutes.
    Clock(u16),
    /// The first, out of the second.
    Count,
    /// The second, where it came to.
    MovedTo,
}

impl Two<'_> {
    fn are(&self) -> Are {
        if self.is_count() {
            return Are::Count;
        }
        if self.joined_by(Mark::And) && self.both(Form::Part) && !self.is_measured() {
            return Are::Range(Some(Unit::Pct));
        }
        if self.joined_by(Mark::Or) && self.is_either() {
            return Are::Either(self.unit());
        }
        if self.is_given() || self.is_whither() || self.is_filled_to() {
            return Are::Two;
        }
        let moved = self.follows(Mark::From);
        let joined = self.joined_by(Mark::To) || moved && self.joined_by(Mark::Filler);
        let between = self.joined_by(Mark::And) && self.follows(Mark::Between);
        if !joined {
            return match between {
                true => Are::Range(self.unit_of_both()),
                false => Are::Two,
            };
        }
        if let Some(minutes) = self.clock() {
            return Are::Clock(minutes);
        }
        if self.is_address() {
            return Are::Two;
        }
        if moved && self.has_moved() {
            return Are::MovedTo;
        }
        Are::Range(self.unit_of_both())
    }

    /// "2 of 4 cords".
    fn is_count(&self) -> bool {
        let counts = self.joined_by(Mark::Of)
            && self.both(Form::Whole)
            && self.from.value <= self.to.value
            && self.from.unit.is_none();
        let after = self.items[self.second + 1..]
            .iter()
            .find(|item| item.what != What::Gone);
        counts && after.and_then(Item::noun) == Some(Noun::Cords)
    }

    /// "60% or 80%", "psi 55 or 60", "2 or 3 cords": one of two values, and no two trailers.
    fn is_either(&self) -> bool {
        let of_a_noun = self
            .before()
            .and_then(Item::noun)
            .is_some_and(|noun| noun.reading().is_some());
        self.is_alike()
            && (self.is_measured() || !self.both(Form::Whole) || of_a_noun || self.are_counted())
    }

    /// "2 or 3 cords": more cords than a trailer has are trailers.
    fn are_counted(&self) -> bool {
        let after = self.items[self.second + 1..]
            .iter()
            .find(|item| item.what != What::Gone);
        match after.and_then(Item::noun) {
            Some(Noun::Cords) => self.to.value <= MOST_CORDS,
            Some(Noun::Guests) => true,
            _ => false,
        }
    }

    /// "300 galones a la 21": what it was taken from.
    fn is_given(&self) -> bool {
        let to_the = self.items[self.between].end == self.items[self.between].first + 2;
        self.joined_by(Mark::To) && to_the && self.from.unit.is_some() && plain(self.to)
    }

    /// "eta 20 to 9": how long, and where to.
    fn is_whither(&self) -> bool {
        self.joined_by(Mark::To)
            && self.from.value > self.to.value
            && plain(self.to)
            && self.before().and_then(Item::noun) == Some(Noun::Eta)
    }

    /// "filled the fresh on 20 to 90 percent": a trailer, and the level its tank came to.
    fn is_filled_to(&self) -> bool {
        let level = self.to.form == Form::Part || self.to.unit == Some(Unit::Pct);
        let mut before = self.items[..self.first].iter().rev();
        let placed = before
            .next()
            .is_some_and(|item| item.what == What::Is(Concept::State(State::On)));
        let filled = before.take(4).any(|item| {
            matches!(
                item.what,
                What::Is(Concept::Event(Event::FreshFilled) | Concept::State(State::Filled))
            )
        });
        self.joined_by(Mark::To) && plain(self.from) && level && placed && filled
    }

    /// "at ten to seven"; "arrived about ten to six": what was done has its time.
    fn clock(&self) -> Option<u16> {
        let before = self.items.get(self.first.checked_sub(1)?)?;
        let done = self.first.checked_sub(2).map(|at| self.items[at].what);
        let about_when =
            before.is(Mark::About) && matches!(done, Some(What::Is(Concept::Event(_))));
        let timed = before.is(Mark::At) || before.is(Mark::Clock) || about_when;
        let hours = plain(self.from) && plain(self.to);
        if !timed || !hours || self.to.value > 12.0 || self.from.value >= 60.0 {
            return None;
        }
        let hour = self.to.value as u16 * 60;
        Some(hour - (self.from.value as u16).min(hour))
    }

    /// "12 to 1200 Harbor Road".
    fn is_address(&self) -> bool {
        let street = self.items.get(self.second + 1).map(|item| item.what);
        plain(self.from)
            && plain(self.to)
            && self.to.value >= 100.0
            && matches!(street, Some(What::Word { ordinary: false }))
    }

    /// "from 60 to 40 psi": what it moved to counts.
    fn has_moved(&self) -> bool {
        let of_a_noun = self.items[..self.first].iter().rev().take(8).any(|item| {
            let noun = item.noun();
            noun.is_some_and(|noun| noun.reading().is_some() && !noun.is_tank())
        });
        self.is_alike() && (!plain(self.to) || of_a_noun)
    }

    fn joined_by(&self, mark: Mark) -> bool {
        self.items[self.between].is(mark)
    }

    /// Returns the last word of weight before them.
    fn before(&self) -> Option<&Item> {
        let mut before = self.items[..self.first].iter().rev();
        before.find(|item| !item.is_filler())
    }

    fn follows(&self, mark: Mark) -> bool {
        self.before().is_some_and(|item| item.is(mark))
    }

    fn both(&self, form: Form) -> bool {
        self.from.form == form && self.to.form == form
    }

    fn is_measured(&self) -> bool {
        self.from.unit.is_some() || self.to.unit.is_some()
    }

    /// Tells whether nothing says that they are measured otherwise.
    fn is_alike(&self) -> bool {
        let (from, to) = (self.from.unit, self.to.unit);
        from.is_none_or(|from| to.is_none_or(|to| from == to))
    }

    fn unit(&self) -> Option<Unit> {
        let part = self.from.form == Form::Part;
        let measured = self.to.unit.or(self.from.unit);
        measured.or(part.then_some(Unit::Pct))
    }

    fn unit_of_both(&self) -> Option<Unit> {
        let measured = self.to.unit.or(self.from.unit);
        measured.or(self.both(Form::Part).then_some(Unit::Pct))
    }
}

/// Tells whether a number is a whole one without a unit of measure.
fn plain(number: Number) -> bool {
    number.form == Form::Whole && number.unit.is_none()
}
