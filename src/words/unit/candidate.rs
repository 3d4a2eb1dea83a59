//! Whether a number or a code stands where only a trailer can.

use super::Named;
use super::near::{chunk_ends, counts, others, owns_number, risky, value};
use crate::words::attach::after_good_word;
use crate::words::concept::{Concept, Mark, Noun, State, Unit};
use crate::words::item::{Form, Item, Number, What};

/// Returns the nearest item before `at` in its chunk that says something; a greeting that opens the chunk does not.
pub(super) fn significant_before(items: &[Item], at: usize) -> Option<usize> {
    let here = |i: &usize| items[*i].chunk == items[at].chunk;
    let found = (0..at)
        .rev()
        .take_while(here)
        .find(|i| !items[*i].is_filler() && items[*i].what != What::Sign('\u{fffd}'))?;
    let greeting = |i: usize| items[i].is(Mark::Call) || items[i].is_filler();
    let greets = items[found].is(Mark::Call) && (0..found).rev().take_while(here).all(greeting);
    (!greets).then_some(found)
}

/// Returns the nearest item after `at` in its chunk that says something; the end of a sentence does not.
pub(super) fn significant_after(items: &[Item], at: usize) -> Option<usize> {
    (at + 1..items.len())
        .take_while(|i| items[*i].chunk == items[at].chunk)
        .find(|i| !items[*i].is_filler())
        .filter(|i| {
            !matches!(
                items[*i].what,
                What::Sign('.' | '!' | ';' | '\u{fffd}') | What::Break
            )
        })
}

/// The most items that are looked back over for what bears on a whole message: far more than people write.
const FAR: usize = 400;

/// What a look at a candidate comes to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Verdict {
    /// A trailer, for certain: a word or the form of the name says so.
    Certain,
    /// A trailer, by its place.
    Likely,
    /// No trailer.
    No,
}

use Verdict::{Certain, Likely, No};

/// Returns whether the candidate at `at` is a trailer, and whether that is certain.
pub(super) fn is_unit(items: &[Item], at: usize, named: &[Named]) -> Option<bool> {
    match Candidate::new(items, at, named).verdict() {
        Certain => Some(true),
        Likely => Some(false),
        No => None,
    }
}

/// A number, range or code with what stands around it.
pub(super) struct Candidate<'a> {
    pub(super) items: &'a [Item],
    pub(super) at: usize,
    /// The trailers found before it.
    pub(super) named: &'a [Named],
    pub(super) item: &'a Item,
    /// The item right before it, on its line.
    pub(super) before: Option<&'a Item>,
    /// The nearest items of its chunk that say something.
    pub(super) prior: Option<usize>,
    pub(super) next: Option<usize>,
}

impl<'a> Candidate<'a> {
    fn new(items: &'a [Item], at: usize, named: &'a [Named]) -> Self {
        Candidate {
            items,
            at,
            named,
            item: &items[at],
            before: at
                .checked_sub(1)
                .map(|i| &items[i])
                .filter(|b| b.what != What::Break),
            prior: significant_before(items, at),
            next: significant_after(items, at),
        }
    }

    fn verdict(&self) -> Verdict {
        self.marked()
            .or_else(|| self.perhaps_a_measure())
            .or_else(|| self.goes_on_a_bare_list())
            .or_else(|| self.value_by_what_follows())
            .or_else(|| self.value_of_what_is_well())
            .or_else(|| self.listed())
            .or_else(|| self.counted_or_measured())
            .or_else(|| self.of_something())
            .or_else(|| self.of_the_water())
            .or_else(|| self.loose_or_drawn())
            .or_else(|| self.some_of_the_cords())
            .or_else(|| self.what_its_noun_is())
            .unwrap_or_else(|| self.by_what_stands_before())
    }

    pub(super) fn next_item(&self) -> Option<&'a Item> {
        self.next.map(|i| &self.items[i])
    }

    pub(super) fn prior_item(&self) -> Option<&'a Item> {
        self.prior.map(|i| &self.items[i])
    }

    /// Tells whether the trailer named last stands in the same sentence.
    pub(super) fn named_in_sentence(&self) -> bool {
        self.named
            .last()
            .is_some_and(|n| self.items[n.at].sentence == self.item.sentence)
    }

    /// Tells whether the trailer named last stands in the same chunk.
    pub(super) fn named_in_chunk(&self) -> bool {
        self.named
            .last()
            .is_some_and(|n| self.items[n.at].chunk == self.item.chunk)
    }

    /// unit 12, unit: 12, unit #12, la 12, B7.
    fn marked(&self) -> Option<Verdict> {
        let (items, at) = (self.items, self.at);
        for i in (0..at).rev() {
            match items[i].what {
                What::Is(Concept::Mark(Mark::Unit)) => return Some(Certain),
                What::Is(Concept::Mark(Mark::Article)) if i + 1 == at => {
                    let clockish =
                        i > 0 && items[i - 1].is(Mark::Clock) && value(self.item) <= 12.0;
                    let counted = self
                        .next_item()
                        .is_some_and(|n| n.noun().is_some_and(counts))
                        // "con la 14 llego en 30 minutos"
                        && !owns_number(items, self.next);
                    // "7 one of the three toilets": a count within the trailer that is named
                    let of = i > 0 && items[i - 1].is(Mark::Of) && self.named_in_chunk();
                    let part = self
                        .next_item()
                        .is_some_and(|n| matches!(n.noun(), Some(Noun::Toilet | Noun::Sink)));
                    let counted = counted || of && part;
                    return Some(if clockish || counted { No } else { Certain });
                }
                What::Sign('#') if i + 1 == at => return Some(Certain),
                What::Sign(':' | '#' | '.' | '-') => continue,
                _ => break,
            }
        }
        // "6 = 54 psi"
        let equals = items.get(at + 1).is_some_and(|n| n.what == What::Sign('='))
            && self
                .next_item()
                .is_some_and(|n| n.number().is_some_and(|n| n.unit.is_some()));
        if equals {
            return Some(Likely);
        }
        (self.item.what == What::Code).then_some(Certain)
    }

    /// A word nobody knows right after a number may be a misspelt measure.
    fn perhaps_a_measure(&self) -> Option<Verdict> {
        let (items, at) = (self.items, self.at);
        let strange = items.get(at + 1).is_some_and(|n| {
            n.what == (What::Word { ordinary: false }) && n.chunk == self.item.chunk
        });
        let slip = strange && self.named_in_sentence() && risky(items, at);
        // "sucked 340 agl out of 9", "K2 ... 117 b": beside a trailer named otherwise
        let beside = strange && self.named.iter().any(|n| n.explicit) && value(self.item) >= 30.0;
        // "18 / waste 2/3 / 53 spi": a line of its own under its trailer
        let line = strange
            && !self.named.is_empty()
            && value(self.item) >= 30.0
            && at > 0
            && items[at - 1].what == What::Break
            && chunk_ends(items, at + 1);
        // "114 voltios y 45 si": a slip for psi where nothing was denied
        let yes = items.get(at + 1).is_some_and(|n| n.is(Mark::If))
            && chunk_ends(items, at + 1)
            && !items[..at]
                .iter()
                .rev()
                .take(FAR)
                .any(|i| i.is(Mark::Not) || i.is(Mark::No));
        (slip || beside || line || strange && placed_later(items, at) || yes).then_some(No)
    }

    /// "12 14 and 15": a list without commas.
    fn goes_on_a_bare_list(&self) -> Option<Verdict> {
        let follows = self.named.last().is_some_and(|n| n.at + 1 == self.at)
            && self.items.get(self.at + 1).is_some_and(|n| n.is(Mark::And))
            && self
                .items
                .get(self.at + 2)
                .is_some_and(|n| matches!(n.what, What::Number(n) if plain(n)));
        (follows || self.runs_to_all()).then_some(Likely)
    }

    /// "12 10 23 all closed": bare numbers side by side, of which a word for all is said.
    fn runs_to_all(&self) -> bool {
        let mut after = self.items[self.at..]
            .iter()
            .take(12)
            .skip_while(|i| i.number().is_some_and(plain));
        self.named.last().is_some_and(|n| n.at + 1 == self.at)
            && after
                .next()
                .is_some_and(|i| i.is(Mark::All) && i.chunk == self.item.chunk)
    }

    /// "pressure fine on 7, 51": the value of what is said to be well.
    fn value_of_what_is_well(&self) -> Option<Verdict> {
        after_good_word(self.items, self.at).map(|_| No)
    }

    /// Tells whether only commas and "and" part it from the trailer before.
    fn after_a_comma(&self) -> bool {
        self.named.last().is_some_and(|n| {
            n.at + 1 < self.at
                && (n.at + 1..self.at).all(|i| {
                    matches!(
                        self.items[i].what,
                        What::Sign(',' | '/' | '+')
                            | What::Is(Concept::Mark(Mark::And | Mark::Or | Mark::Article))
                    )
                })
        })
    }

    /// "12, 14 and 15".
    fn listed(&self) -> Option<Verdict> {
        if !self.after_a_comma() {
            return None;
        }
        let counted = self
            .next_item()
            .is_some_and(|n| n.noun().is_some_and(counts))
            && !owns_number(self.items, self.next);
        Some(match self.named.last() {
            _ if counted => No,
            Some(last) if last.explicit => Certain,
            _ => Likely,
        })
    }

    /// 12v lights and 4 cords are no trailers; nor is 95 in "95 pressure on 12".
    fn counted_or_measured(&self) -> Option<Verdict> {
        // "21: guest trapped", "31 - guests happy": the sign parts it from what follows
        let parted = self.items.get(self.at + 1).is_some_and(|n| {
            n.what == What::Sign(':')
                || n.what == What::Sign('-') && !n.glued && self.prior.is_none()
        });
        if parted {
            return None;
        }
        let noun = self.next_item().and_then(Item::noun)?;
        // "80 before 55 after"
        let side =
            |n: Option<Noun>| matches!(n, Some(Noun::BeforeRegulator | Noun::AfterRegulator));
        if side(Some(noun))
            && self.next == Some(self.at + 1)
            && side(self.items.get(self.at + 3).and_then(Item::noun))
        {
            return Some(No);
        }
        // "ac quit in 19 people are sweating": after a place, and no other is named
        let placed = noun == Noun::Guests
            && self
                .before
                .is_some_and(|b| b.what == What::Is(Concept::Mark(Mark::At)))
            && self.named.is_empty()
            && (self.at > 1 && !others(self.items, self.at));
        // "on 5 guests happy": nobody is on so many guests
        let on_it = noun == Noun::Guests
            && self.prior.is_some_and(|p| {
                p + 1 == self.at
                    && (p == 0 || self.items[p - 1].chunk != self.item.chunk)
                    && self.items[p].what == What::Is(Concept::State(State::On))
            });
        if placed || on_it {
            return Some(Likely);
        }
        if owns_number(self.items, self.next) || self.stands_at_a_value() {
            return None;
        }
        // "water on 55 static": on is the water, and the pressure is told
        let after_water_on = value(self.item) >= 15.0
            && chunk_ends(self.items, self.at + 1)
            && self.at > 1
            && self.items[self.at - 1].what == What::Is(Concept::State(State::On))
            && self.items[self.at - 2].noun() == Some(Noun::Water)
            && noun == Noun::Pressure;
        // "hooked 19 to the spigot, 62 static": the pressure that ends what is said of the trailer that was named
        let ends_in_pressure = noun == Noun::Pressure
            && value(self.item) >= 30.0
            && self.named_in_sentence()
            && chunk_ends(self.items, self.at + 1);
        // "118 voltios y 52 de presión"
        let of = self.items.get(self.at + 1).is_some_and(|n| n.is(Mark::Of));
        let measured = noun.reading().is_some()
            && (self.next == Some(self.at + 1) || of && self.next == Some(self.at + 2))
            && !matches!(self.item.what, What::Range(..))
            && (others(self.items, self.at)
                || after_water_on
                || ends_in_pressure
                || noun == Noun::Air && self.opens_before_another());
        // "12.7v on 9 battery": the value stands before its place
        let told = self.at > 1
            && (self.items[self.at - 1].is(Mark::At)
                || self.items[self.at - 1].what == What::Is(Concept::State(State::On)))
            && self.items[self.at - 2]
                .number()
                .is_some_and(|n| n.unit.is_some());
        // a trailer has four cords at most
        let counted = counts(noun) && !(noun == Noun::Cords && value(self.item) > 4.0);
        (counted || measured && !told).then_some(No)
    }

    /// "66 out here, 21 at 53 psi": all that its clause tells, and a number that can be the trailer opens the next.
    fn opens_before_another(&self) -> bool {
        let chunk = |i: &&Item| i.chunk == self.item.chunk;
        let after = &self.items[self.at + 1..];
        let alone =
            self.prior.is_none() && after.iter().take_while(chunk).all(|i| i.number().is_none());
        let mut next = after.iter().skip_while(chunk);
        let next = next.find(|i| !matches!(i.what, What::Sign(_) | What::Break));
        alone && next.and_then(Item::number).is_some_and(plain)
    }

    /// "7 waste at 80", "12 pressure at 55": the smaller number opens, and the value follows where it is at.
    fn stands_at_a_value(&self) -> bool {
        let at = |i: usize| {
            self.items
                .get(i)
                .is_some_and(|n| n.what == What::Is(Concept::Mark(Mark::At)))
        };
        let told = self.items.get(self.at + 3).and_then(Item::number);
        let counted = self
            .next_item()
            .is_some_and(|n| n.noun().is_some_and(counts));
        // "on 9 pressure at 60"
        let led = self.prior.is_some_and(|p| {
            p + 1 == self.at
                && (p == 0 || self.items[p - 1].chunk != self.item.chunk)
                && (self.items[p].is(Mark::At)
                    || self.items[p].what == What::Is(Concept::State(State::On)))
        });
        (self.prior.is_none() || led)
            && !counted
            && self.next == Some(self.at + 1)
            && at(self.at + 2)
            && told.is_some_and(|n| {
                plain(n) && n.value >= 30.0 && n.value > value(self.item)
                    // "10 waste lamp at 1/4"
                    || n.form == Form::Part
                    || n.unit == Some(Unit::Pct)
            })
            && chunk_ends(self.items, self.at + 3)
    }

    /// "310 gal out of 12", "ckt 1 of 20", "the pressure of 44 is 3.2 bar".
    fn of_something(&self) -> Option<Verdict> {
        if !self.before.is_some_and(|b| b.is(Mark::Of)) {
            return None;
        }
        let told = self.prior_item().is_some_and(|p| {
            matches!(p.what, What::Labelled | What::Circuit(_))
                || p.number().is_some_and(|n| n.unit.is_some())
                // "the second stall of 24"
                || (p.is(Mark::Label) || p.is(Mark::LabelAfter)) && value(self.item) < 1000.0
        });
        let noun = self.prior_item().and_then(Item::noun);
        let level = |i: &Item| {
            i.number()
                .is_some_and(|n| n.form == Form::Part || n.unit == Some(Unit::Pct))
                || matches!(i.what, What::Is(Concept::Level(_)))
        };
        // "the waste tanks of 16 and 17 are both at 60 percent"
        let tanks = noun.is_some_and(Noun::is_tank)
            && self.next_item().is_some_and(|n| n.is(Mark::And))
            && self.items[self.at + 1..]
                .iter()
                .take(12)
                .take_while(|i| i.chunk == self.item.chunk)
                .any(level);
        let valued = noun.is_some_and(|n| n.reading().is_some())
            && self.next_item().is_some_and(|n| {
                n.number()
                    .is_some_and(|n| n.unit.is_some() || n.form != Form::Whole)
            });
        (told || valued || tanks).then_some(Likely)
    }

    /// "brought 18 in around two", "it was 65", "circuit 1 pulls 13 amps, circuit 3 pulls 12".
    fn loose_or_drawn(&self) -> Option<Verdict> {
        let (items, at) = (self.items, self.at);
        let loose = self.before.is_some_and(|b| {
            b.is(Mark::Past) && b.end == b.first + 1
                || b.is(Mark::About) && value(self.item) <= 12.0
        }) && (self.named_in_sentence() || self.of_what_was())
            && (chunk_ends(items, at)
                || items
                    .get(at + 1)
                    .is_some_and(|n| n.is(Mark::Past) || n.is(Mark::Now)));
        let drawn = (0..at)
            .rev()
            .take(3)
            .take_while(|i| items[*i].chunk == self.item.chunk)
            .find(|i| {
                !items[*i].is_filler() && items[*i].what != What::Is(Concept::State(State::Ok))
            })
            .is_some_and(|i| matches!(items[i].what, What::Circuit(_)))
            && amps_told(items, at);
        (loose || drawn || self.was_before_now()).then_some(No)
    }
}

impl Candidate<'_> {
    /// "4 cords, 2 dead": so many of the cords that the clause before counted.
    fn some_of_the_cords(&self) -> Option<Verdict> {
        let opens = self.prior.is_none() && value(self.item) <= 4.0;
        let state = self
            .next_item()
            .is_some_and(|n| matches!(n.what, What::Is(Concept::State(_))));
        let counted = || {
            let before = (0..self.at).rev().take(4);
            let mut here = before.take_while(|i| self.items[*i].sentence == self.item.sentence);
            here.any(|i| {
                self.items[i].noun() == Some(Noun::Cords)
                    && i > 0
                    && self.items[i - 1].number().is_some()
            })
        };
        (opens && state && counted()).then_some(No)
    }

    /// "Was 92, now 55 psi": what was before a value of now.
    fn was_before_now(&self) -> bool {
        let was = self.before.is_some_and(|b| b.is(Mark::Past)) && chunk_ends(self.items, self.at);
        let mut next = self.items[self.at + 1..]
            .iter()
            .filter(|i| !matches!(i.what, What::Sign(',' | '.' | ';') | What::Gone));
        was && next.next().is_some_and(|i| i.is(Mark::Now))
            && next
                .next()
                .is_some_and(|i| i.number().is_some_and(|n| n.unit.is_some()))
    }

    /// "pressure was 38, now 56": what a noun was.
    fn of_what_was(&self) -> bool {
        let noun = self.at.checked_sub(2).map(|i| &self.items[i]);
        self.before.is_some_and(|b| b.is(Mark::Past))
            && noun.is_some_and(|n| n.chunk == self.item.chunk && n.noun().is_some())
    }

    /// "12 water 50, waste 3/4": behind the trailer that is named, the number is of its water, whatever it tells of it.
    fn of_the_water(&self) -> Option<Verdict> {
        let (items, at) = (self.items, self.at);
        let here = |b: &Item| b.noun() == Some(Noun::Water) && b.chunk == self.item.chunk;
        // "12 water back 50"
        let back = self
            .before
            .is_some_and(|b| b.what == What::Is(Concept::State(State::Back)));
        let noun = at.checked_sub(1 + usize::from(back));
        let water = noun.is_some_and(|i| here(&items[i]));
        let named = self.named.last().is_some_and(|n| Some(n.at + 1) == noun)
            || back && value(self.item) >= 40.0;
        let next = self
            .next_item()
            .is_none_or(|n| n.noun().is_some_and(|noun| noun.reading().is_some()));
        (water && named && (next || chunk_ends(items, at))).then_some(No)
    }

    /// "guest count at the reservoir is 180": what the one noun that opens the chunk amounts to.
    fn what_its_noun_is(&self) -> Option<Verdict> {
        let (items, at) = (self.items, self.at);
        let is = self
            .before
            .is_some_and(|b| b.is(Mark::Aux) && b.chunk == self.item.chunk);
        if !is || !chunk_ends(items, at) {
            return None;
        }
        let start = (0..at)
            .rev()
            .take_while(|i| items[*i].chunk == self.item.chunk)
            .last()?;
        let opens = items[start..at]
            .iter()
            .find(|i| !i.is_filler() && !matches!(i.what, What::Sign(_) | What::Break))?
            .noun()
            .is_some_and(|n| n.reading().is_some() && !n.is_tank());
        let alone = items[start..at].iter().all(|i| {
            !matches!(
                i.what,
                What::Number(_) | What::Code | What::Range(..) | What::Units(_)
            )
        });
        (opens && alone).then_some(No)
    }
}

/// Tells whether a number is whole and has no measure, as a trailer's is.
pub(super) fn plain(n: Number) -> bool {
    n.form == Form::Whole && n.unit.is_none()
}

/// Tells whether a number stands later in the sentence where a trailer stands: after of, at, on.
pub(super) fn placed_later(items: &[Item], at: usize) -> bool {
    (at + 2..items.len())
        .take(10)
        .take_while(|i| items[*i].sentence == items[at].sentence)
        .any(|i| {
            matches!(items[i].what, What::Number(n) if n.form == Form::Whole && n.unit.is_none())
                && (items[i - 1].is(Mark::Of)
                    || items[i - 1].is(Mark::At)
                    || items[i - 1].is(Mark::Article)
                    || items[i - 1].is(Mark::Unit)
                    || items[i - 1].what == What::Is(Concept::State(State::On)))
        })
}

/// Tells whether the sentence gives a current in amps.
fn amps_told(items: &[Item], at: usize) -> bool {
    let here = |i: &usize| items[*i].sentence == items[at].sentence;
    (0..at)
        .rev()
        .take(20)
        .take_while(here)
        .chain((at + 1..items.len()).take(20).take_while(here))
        .any(|i| items[i].number().is_some_and(|n| n.unit == Some(Unit::Amp)))
}
