//! Words of a report that beside certain others report something else, or nothing: bleach got in his eyes, how many
//! flushes left, a valve stuck half open.

use super::Words;
use crate::heard::{Event, Fault};
use crate::words::concept::{AskWord, Concept, Mark, Noun, State, Unit};
use crate::words::item::{Form, Item, Number, What};
use crate::words::senses::Sense;

const FILLER: What = What::Is(Concept::Mark(Mark::Filler));

impl Words<'_> {
    /// Takes such words for what they are.
    pub(super) fn not_so(&mut self, at: usize) {
        self.got_in_somebody(at);
        self.others_are_here(at);
        self.nobody_stuck(at);
        self.driver_backs_up(at);
        self.cannot_get_up_to(at);
        self.so_many_left(at);
        self.half_open(at);
        self.one_guest(at);
        self.one_more(at);
        self.neither_of(at);
        self.high_of_a_day(at);
        self.when_it_starts(at);
        self.sags_to(at);
        self.is_down_to(at);
        self.nobody_read_it(at);
        self.of_others(at);
        self.nearly_tripped(at);
        self.finished_both(at);
        self.pairs_of_a_run(at);
        self.at_the_trailer(at);
        self.same_level(at);
        self.and_a_half(at);
        self.forecast_says(at);
        self.no_load(at);
        self.may_i(at);
        self.out_at(at);
    }

    /// "power out at 12": what is out, and where; "im out at 12" is a place.
    fn out_at(&mut self, at: usize) {
        if !self.items[at].is(Mark::At) || !matches!(self.spelt(at).as_ref(), "out at" | "out in") {
            return;
        }
        let thing = at.checked_sub(1).filter(|i| self.same_chunk(at, *i));
        let thing = thing.and_then(|i| self.items[i].noun());
        let can_be_out = matches!(
            thing,
            Some(Noun::Power | Noun::Lights | Noun::Water | Noun::Ac | Noun::Heat | Noun::Pump)
        );
        if can_be_out {
            self.items[at].what = What::Is(Concept::State(State::Out));
        }
    }

    fn is_event(&self, at: usize, event: Event) -> bool {
        self.items[at].what == What::Is(Concept::Event(event))
    }

    fn earlier_in_chunk(&self, at: usize, test: impl Fn(&Item) -> bool) -> bool {
        (0..at)
            .rev()
            .take(8)
            .take_while(|i| self.same_chunk(at, *i))
            .any(|i| test(&self.items[i]))
    }

    /// "bleach got in his eyes": nobody came.
    fn got_in_somebody(&mut self, at: usize) {
        let arrived = self.is_event(at, Event::Arrived);
        let whose = self.same_chunk(at, at + 1) && self.items[at + 1].is_filler();
        let part = self.same_chunk(at, at + 2) && self.says(at + 2, Sense::BodyPart);
        if arrived && whose && part {
            self.items[at].what = FILLER;
        }
    }

    /// "the fire dept is here for the inspection", "no signal at the site": of others, or where somebody stands.
    fn others_are_here(&mut self, at: usize) {
        let here = self.is_event(at, Event::Arrived)
            || self.items[at].what == What::Is(Concept::State(State::OnSite));
        let others = at > 0 && self.same_chunk(at, at - 1) && self.items[at - 1].is(Mark::Idle);
        if here && others {
            self.items[at].what = FILLER;
        }
    }

    /// "fell down and isnt moving": of somebody hurt, and of no gauge.
    fn nobody_stuck(&mut self, at: usize) {
        let stuck = self.items[at].what == What::Is(Concept::State(State::Stuck));
        let hurt = |i: &Item| i.what == What::Is(Concept::Fault(Fault::PersonHurt));
        if stuck && self.earlier_in_chunk(at, hurt) {
            self.items[at].what = FILLER;
        }
    }

    /// "backing up alone": the truck goes back, and no toilet.
    fn driver_backs_up(&mut self, at: usize) {
        let clogged = self.items[at].what == What::Is(Concept::State(State::Clogged));
        let drives = self.same_chunk(at, at + 1) && self.says(at + 1, Sense::ByADriver);
        if clogged && drives && self.says(at, Sense::BackingUp) {
            self.items[at].what = FILLER;
        }
    }

    /// "cant get up to 12", "cant get up the hill": the truck cannot, and nobody has fallen.
    fn cannot_get_up_to(&mut self, at: usize) {
        let hurt = self.items[at].what == What::Is(Concept::Fault(Fault::PersonHurt));
        let whither = self.same_chunk(at, at + 1)
            && (self.items[at + 1].is(Mark::To)
                || self.same_chunk(at, at + 2)
                    && self.items[at + 1].is(Mark::Article)
                    && self.says(at + 2, Sense::WayUp));
        if hurt && whither && self.says(at, Sense::CannotGetUp) {
            self.items[at].what = FILLER;
        }
    }

    /// "how many flushes left": nobody departs.
    fn so_many_left(&mut self, at: usize) {
        let asks = |i: &Item| i.is(Mark::Query);
        let bare = self.items[at].end == self.items[at].first + 1;
        if self.is_event(at, Event::Left) && bare && self.earlier_in_chunk(at, asks) {
            self.items[at].what = FILLER;
        }
    }

    /// "valve stuck half open": how far, and no trailer is open.
    fn half_open(&mut self, at: usize) {
        let open = matches!(
            self.items[at].what,
            What::Is(Concept::State(State::Open | State::Closed | State::Shut))
        );
        let part = at > 0
            && self.same_chunk(at, at - 1)
            && self.items[at - 1]
                .number()
                .is_some_and(|n| n.form == Form::Part && n.unit.is_none());
        if open && part {
            self.items[at].what = FILLER;
            self.items[at - 1].what = FILLER;
        }
    }

    /// "12 guest says stall 3 stinks": one guest of trailer 12, and no crowd of twelve.
    fn one_guest(&mut self, at: usize) {
        let one = self.items[at].noun() == Some(Noun::Guests) && self.says(at, Sense::OneGuest);
        let number = at > 0 && self.same_chunk(at, at - 1) && self.names(at - 1);
        if one && number {
            self.items[at].what = What::Is(Concept::Noun(Noun::Person));
        }
    }

    /// "no leak on 12, but there's one on 14": one of what was told before.
    fn one_more(&mut self, at: usize) {
        let placed = self.same_chunk(at, at + 1)
            && (self.items[at + 1].is(Mark::At)
                || self.items[at + 1].what == What::Is(Concept::State(State::On)));
        let of_another = at > 0 && placed && (self.names(at + 2) || self.names(at + 3));
        let there_is = at > 0 && self.same_chunk(at, at - 1) && self.says(at - 1, Sense::ThereIs);
        if !of_another || !there_is || !self.says(at, Sense::OneMore) {
            return;
        }
        let (sentence, chunk) = (self.items[at].sentence, self.items[at].chunk);
        let told = (0..at)
            .rev()
            .take(12)
            .take_while(|i| self.items[*i].sentence == sentence)
            .find(|i| {
                let on = self.items[*i].what == What::Is(Concept::State(State::On));
                let wrong = matches!(
                    self.items[*i].what,
                    What::Is(Concept::State(_) | Concept::Fault(_))
                );
                self.items[*i].chunk != chunk && wrong && !on
            });
        if let Some(told) = told {
            self.items[at].what = self.items[told].what;
        }
    }

    /// "high of 40 low of 22 tonight": the other end of what is foretold, and no trailer.
    fn high_of_a_day(&mut self, at: usize) {
        if self.bare_number(at).is_none() {
            return;
        }
        let before = (0..at).rev().find(|i| !self.items[*i].is(Mark::Of));
        let high = before.is_some_and(|i| self.same_chunk(at, i) && self.says(i, Sense::HighOf));
        let sentence = self.items[at].sentence;
        let low = |i: &Item| i.sentence == sentence && i.noun() == Some(Noun::Low);
        if high && self.items.iter().any(low) {
            self.items[at].what = What::Labelled;
        }
    }

    /// "lights dim when the heater kicks on": at what it happens, and nothing was turned on.
    fn when_it_starts(&mut self, at: usize) {
        if !self.says(at, Sense::Whenever) {
            return;
        }
        let wrong = |i: &Item| match i.what {
            What::Is(Concept::Fault(_)) => true,
            What::Is(Concept::State(state)) => !matches!(state, State::On | State::Off | State::Ok),
            _ => false,
        };
        let behind: Vec<usize> = (at + 1..self.items.len())
            .take(6)
            .take_while(|i| self.same_chunk(at, *i))
            .collect();
        let starts = |i: &usize| self.says(*i, Sense::Starts);
        if !self.earlier_in_chunk(at, wrong) || !behind.iter().any(starts) {
            return;
        }
        for i in behind {
            if matches!(
                self.items[i].what,
                What::Is(Concept::State(_) | Concept::Event(_) | Concept::Noun(_))
            ) {
                self.items[i].what = FILLER;
            }
        }
    }

    /// "118 v, drops to 101 when the heat kicks on": a second value in the measure of the first.
    fn sags_to(&mut self, at: usize) {
        if self.bare_number(at).is_none() || at < 2 {
            return;
        }
        let sags = self.same_chunk(at, at - 2) && self.says(at - 2, Sense::Sags);
        let to = self.items[at - 1].is(Mark::To) || self.items[at - 1].is_filler();
        let sentence = self.items[at].sentence;
        let first = (0..at - 2)
            .rev()
            .take(4)
            .take_while(|i| self.items[*i].sentence == sentence)
            .find_map(|i| {
                let measure = self.items[i].number()?.unit;
                measure.or_else(|| match self.items[i.checked_sub(1)?].noun()? {
                    Noun::Pressure => Some(Unit::Psi),
                    Noun::Volts => Some(Unit::Volt),
                    _ => None,
                })
            });
        if let Some(unit) =
            first.filter(|unit| sags && to && matches!(unit, Unit::Volt | Unit::Psi))
            && let What::Number(number) = &mut self.items[at].what
        {
            number.unit = Some(unit);
            self.items[at - 1].what = FILLER;
            self.items[at - 2].what = FILLER;
        }
    }

    /// "the fresh tank is down to a quarter": how far, and nothing is dead.
    fn is_down_to(&mut self, at: usize) {
        let dead = self.items[at].what == What::Is(Concept::State(State::Dead));
        let to = self.same_chunk(at, at + 1) && self.items[at + 1].is(Mark::To);
        let number = (at + 2..self.items.len())
            .take(3)
            .take_while(|i| self.same_chunk(at, *i))
            .any(|i| {
                self.items[i].number().is_some()
                    || matches!(self.items[i].what, What::Is(Concept::Level(_)))
            });
        if dead && to && number && self.says(at, Sense::IsDown) {
            self.items[at].what = FILLER;
            self.items[at + 1].what = FILLER;
        }
    }

    /// "17 locked up by security so not read": nobody looked, and no gauge is stuck.
    fn nobody_read_it(&mut self, at: usize) {
        let stuck = self.items[at].what == What::Is(Concept::State(State::Stuck));
        let gauge = (0..self.items.len()).any(|i| {
            self.same_chunk(at, i)
                && self.items[i]
                    .noun()
                    .is_some_and(|noun| noun.is_tank() || noun == Noun::Gauge)
        });
        if stuck && !gauge && self.says(at, Sense::NotRead) {
            self.items[at].what = FILLER;
        }
    }

    /// "the other company's trailer leaks": what is told of it is of none of ours.
    fn of_others(&mut self, at: usize) {
        let theirs = self.items[at].is(Mark::Unit)
            && at > 0
            && self.same_chunk(at, at - 1)
            && self.says(at - 1, Sense::OfOthers)
            && !self.names(at + 1);
        if !theirs {
            return;
        }
        let chunk = self.items[at].chunk;
        for item in self.items.iter_mut().filter(|item| item.chunk == chunk) {
            match item.what {
                What::Is(Concept::State(_) | Concept::Fault(_) | Concept::Event(_)) => {
                    item.what = FILLER;
                }
                What::Number(_) => item.what = What::Labelled,
                _ => {}
            }
        }
    }

    /// "casi boto la escoba", "it nearly tripped": it did not.
    fn nearly_tripped(&mut self, at: usize) {
        let tripped = self.items[at].what == What::Is(Concept::State(State::Tripped));
        let nearly = at > 0 && self.same_chunk(at, at - 1) && self.items[at - 1].is(Mark::Bound);
        if tripped && nearly {
            self.items[at].what = FILLER;
        }
    }

    /// "finished restocking and cleaning 9": both are done.
    fn finished_both(&mut self, at: usize) {
        let word = matches!(self.items[at].what, What::Word { .. });
        let led = at > 1
            && self.same_chunk(at, at - 2)
            && self.items[at - 1].is(Mark::And)
            && self.opens_with(at - 2, Sense::Finished);
        if !word || !led {
            return;
        }
        let done = match () {
            () if self.says(at, Sense::Cleaning) => State::Cleaned,
            () if self.says(at, Sense::Restocking) => State::Stocked,
            () => return,
        };
        self.items[at].what = What::Is(Concept::State(done));
    }

    /// "29 three quarters waste one third fresh": where the first value stands before its tank, so do those behind it.
    fn pairs_of_a_run(&mut self, at: usize) {
        let part = self.items[at]
            .number()
            .is_some_and(|n| n.form == Form::Part && n.unit.is_none());
        let tank =
            |i: usize| self.same_chunk(at, i) && self.items[i].noun().is_some_and(Noun::is_tank);
        let led = at > 0 && tank(at - 1);
        let next = self.same_chunk(at, at + 2) && self.items[at + 2].number().is_some();
        let its_noun = self.same_chunk(at, at + 3)
            && self.items[at + 3]
                .noun()
                .is_some_and(|noun| noun.reading().is_some());
        if part && !led && tank(at + 1) && next && its_noun {
            self.items[at + 2..]
                .iter_mut()
                .for_each(|item| item.chunk += 1);
        }
    }

    /// "95 psi ahead of the regulator and 48 psi at the trailer": what it gets.
    fn at_the_trailer(&mut self, at: usize) {
        let trailer = self.items[at].is(Mark::Unit) && !self.names(at + 1);
        let article = at > 0 && self.items[at - 1].is(Mark::Article);
        let place = at.checked_sub(1 + usize::from(article));
        let placed = place.is_some_and(|i| self.same_chunk(at, i) && self.items[i].is(Mark::At));
        let psi = place
            .and_then(|i| i.checked_sub(1))
            .and_then(|i| self.items[i].number())
            .is_some_and(|n| n.unit.is_some_and(Unit::is_pressure));
        let sentence = self.items[at].sentence;
        let before = |i: &Item| i.sentence == sentence && i.noun() == Some(Noun::BeforeRegulator);
        let near = at.saturating_sub(12)..at;
        if trailer && placed && psi && self.items[near].iter().any(before) {
            self.items[at].what = What::Is(Concept::Noun(Noun::AfterRegulator));
        }
    }

    /// "pumped neither 9 nor 11": denied of the trailers behind, what stands before was not done.
    fn neither_of(&mut self, at: usize) {
        let neither = self.items[at].is(Mark::Not) && self.says(at, Sense::SoIs);
        let done = at > 0
            && self.same_chunk(at, at - 1)
            && matches!(
                self.items[at - 1].what,
                What::Is(Concept::State(_) | Concept::Event(_) | Concept::Fault(_))
            );
        if neither && done && self.names(at + 1) {
            self.items[at - 1].what = FILLER;
        }
    }

    /// "fresh 3/4 waste same": the level told just before.
    fn same_level(&mut self, at: usize) {
        let tank = at > 0
            && self.same_chunk(at, at - 1)
            && self.items[at - 1].noun().is_some_and(Noun::is_tank);
        if !tank || !self.ends(at) || !self.says(at, Sense::TheSame) {
            return;
        }
        let sentence = self.items[at].sentence;
        let told = (0..at - 1)
            .rev()
            .take(6)
            .take_while(|i| self.items[*i].sentence == sentence)
            .find(|i| {
                self.items[*i].number().is_some()
                    || matches!(self.items[*i].what, What::Is(Concept::Level(_)))
            });
        if let Some(told) = told {
            self.items[at].what = self.items[told].what;
        }
    }

    /// "tres cuartos de negras y media de limpia": half of it.
    fn and_a_half(&mut self, at: usize) {
        let half = self.items[at].is(Mark::Idle) && self.says(at, Sense::AndAHalf);
        let of = self.same_chunk(at, at + 1) && self.items[at + 1].is(Mark::Of);
        let tank =
            self.same_chunk(at, at + 2) && self.items[at + 2].noun().is_some_and(Noun::is_tank);
        if half && of && tank {
            self.items[at].what = What::Number(Number {
                value: 0.5,
                form: Form::Part,
                unit: None,
                bound: false,
            });
            // the "and" in it opens a clause
            self.items[at..].iter_mut().for_each(|item| item.chunk += 1);
        }
    }

    /// "forecast says wind 40 tonight": it is to come.
    fn forecast_says(&mut self, at: usize) {
        let forecast = self.items[at].what == What::Is(Concept::Ask(AskWord::Forecast));
        let says = self.same_chunk(at, at + 1) && self.items[at + 1].is(Mark::Says);
        if forecast && says {
            self.items[at].what = What::Is(Concept::Mark(Mark::Expected));
        }
    }

    /// "battery 12.6 no load 11.2 with pump": how the battery was read.
    fn no_load(&mut self, at: usize) {
        let load = self.items[at].noun() == Some(Noun::Amps) && self.says(at, Sense::Load);
        let none = at > 0 && self.same_chunk(at, at - 1) && self.items[at - 1].is(Mark::No);
        if load && none {
            self.items[at - 1].what = FILLER;
            self.items[at].what = FILLER;
        }
    }

    /// "12 can i leave the tank at 7/8", "puedo dejar el agua abierta": it asks, behind the trailer too.
    fn may_i(&mut self, at: usize) {
        let asks = matches!(
            self.items[at].what,
            What::Word { .. }
                | What::Is(Concept::Ask(AskWord::Advice) | Concept::Mark(Mark::Query))
        );
        if !asks || !self.says(at, Sense::MayI) {
            return;
        }
        let opens = at == 0 || !self.same_chunk(at, at - 1);
        let behind = !opens && self.names(at - 1);
        if opens || behind {
            self.items[at].what = What::Is(Concept::Mark(Mark::Query));
        }
        // "low of 18 tonight should i turn it on": so turned, it asks wherever it stands
        let within =
            !opens && !behind && self.items[at].what == What::Is(Concept::Ask(AskWord::Advice));
        if within {
            self.items[at].what = What::Is(Concept::Mark(Mark::Query));
        }
        if behind || within {
            // the question opens a clause of its own
            self.items[at..].iter_mut().for_each(|item| item.chunk += 1);
        }
    }
}
