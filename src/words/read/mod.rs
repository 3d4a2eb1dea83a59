//! One message through all stages.

mod also;
mod circuits;
mod clock;
mod command;
mod doubt;
mod labels;
mod leftovers;
mod neighbours;
mod of_another;
mod slips;

use std::collections::BTreeSet;
use std::ops::Range;

use crate::heard::{
    Ask, Entry, Fault, Heard, Language, PlanKind, ReadingKey, Remark, Taken, Taps, UnitName,
};
use crate::quantity::TemperatureScale;
use crate::words::assemble::{self, Assembled};
use crate::words::attach::{self, Placed, Value};
use crate::words::concept::{Mark, Noun};
use crate::words::item::{self, Form, Item, Items, Mended, What};
use crate::words::lex::{self, Token};
use crate::words::normal::Normal;
use crate::words::pair::{self, Found, Outcome};
use crate::words::scope::{self, Scope};
use crate::words::senses::{Sense, Senses};
use crate::words::unit::{self, Group};
use crate::words::vocab::Spellings;
use crate::words::{
    Reader, answer, ask, correct, foretold, hot_air, hot_skin, legs, plan, told, weather, wire,
    wish,
};
use circuits::{circuit_codes, circuits};
use clock::clock_words;
use doubt::{doubted_again, drop_beside_unplaced};
use labels::{
    counted, dates, level_words, more_than_full, ratings_again, sizes, tasks, tire_pressures,
    widths,
};
pub(super) use slips::one_slip;

/// The most remarks of one kind that a message gets: nobody answers more.
const MOST_REMARKS: usize = 40;

/// A message as it is being read.
pub(super) struct Reading<'t> {
    original: &'t str,
    normal: Normal,
    tokens: Vec<Token>,
    /// True where a greeting opened it.
    greeted: bool,
    /// True where a danger counts though it is doubted or past.
    alarmed: bool,
    /// The tokens that are words which no phrase has, in order.
    strange: Vec<usize>,
    /// The tokens that were mended, with what each was read as.
    mended: Vec<Mended>,
    /// The tokens of each number in words, with its value.
    spoken: Vec<(Range<usize>, f64)>,
    pub(super) items: Vec<Item>,
    pub(super) groups: Vec<Group>,
    pub(super) heard: Heard,
}

impl<'t> Reading<'t> {
    /// Reads `text` through all stages.
    pub(super) fn new(reader: &Reader, text: &'t str, scale: TemperatureScale) -> Reading<'t> {
        Reading::with(reader, text, scale, false)
    }

    /// Reads `text` so that dangers count which are doubted or past.
    pub(super) fn alarmed(reader: &Reader, text: &'t str, scale: TemperatureScale) -> Reading<'t> {
        Reading::with(reader, text, scale, true)
    }

    fn with(reader: &Reader, text: &'t str, scale: TemperatureScale, alarmed: bool) -> Reading<'t> {
        let normal = Normal::new(text);
        let spellings = Spellings {
            vocab: &reader.vocab,
            senses: &reader.senses,
        };
        let tokens = lex::tokens(&normal.text, &spellings);
        let Items {
            list,
            mended,
            greeted,
            languages,
            strange,
        } = item::items(&normal.text, &tokens, &reader.vocab);
        let mut reading = Reading {
            original: text,
            spoken: in_words(&normal.text, &tokens, &list),
            normal,
            tokens,
            greeted,
            alarmed,
            strange,
            mended,
            items: list,
            groups: Vec::new(),
            heard: Heard::default(),
        };
        reading.heard.language = match languages {
            [0, 0] => None,
            [en, es] if es > en => Some(Language::Es),
            [en, es] if en > es => Some(Language::En),
            _ => None,
        };
        let mended = &reading.mended;
        reading.heard.taken = mended
            .iter()
            .map(|m| Taken {
                typed: reading.token(m.token).to_string(),
                read: m.read.clone(),
            })
            .collect();
        if reading.command() {
            // an order's words stand as typed
            reading.heard.taken.clear();
            return reading;
        }
        reading.read(reader, scale);
        reading
    }

    /// Returns the sender's own words for the items `from..to`.
    pub(super) fn piece(&self, from: usize, to: usize) -> &'t str {
        let (Some(first), Some(last)) =
            (self.items.get(from), self.items.get(to.saturating_sub(1)))
        else {
            return "";
        };
        let (start, end) = (
            self.tokens[first.first].start,
            self.tokens[last.end.max(last.first + 1) - 1].end,
        );
        self.normal.original(self.original, start, end)
    }

    /// Returns the text as it was read.
    pub(super) fn folded(&self) -> &str {
        &self.normal.text
    }

    /// Returns where a token stands in the folded text.
    pub(super) fn token_range(&self, at: usize) -> (usize, usize) {
        (self.tokens[at].start, self.tokens[at].end)
    }

    /// Returns the tokens that no phrase has, those that `doubtful` holds for, and those that were mended, with what
    /// these were read as.
    pub(super) fn strange(&self, doubtful: impl Fn(&str) -> bool) -> Vec<(usize, Option<String>)> {
        let spelt = |at: usize| &self.normal.text[self.tokens[at].start..self.tokens[at].end];
        // "t12": a mark that touches a name belongs to it
        let glued = |at: usize| self.tokens.get(at + 1).is_some_and(|next| next.glued);
        let read = |at: usize| self.mended.iter().find(|m| m.token == at);
        (0..self.tokens.len())
            .filter_map(|at| match read(at) {
                Some(mended) => Some((at, Some(mended.read.clone()))),
                None if self.strange.binary_search(&at).is_ok() => Some((at, None)),
                None => (doubtful(spelt(at)) && !glued(at)).then_some((at, None)),
            })
            .collect()
    }

    /// Asks about what stands around a token.
    pub(super) fn ask_about(&mut self, token: usize, why: &str) {
        let at = self.items.partition_point(|item| item.end <= token);
        let text = self.around(at.min(self.items.len().saturating_sub(1)));
        if !self.heard.unclear.iter().any(|r| r.text == text) {
            self.heard.unclear.push(Remark {
                text: text.to_owned(),
                why: why.to_owned(),
            });
        }
    }

    fn token(&self, at: usize) -> &'t str {
        self.normal
            .original(self.original, self.tokens[at].start, self.tokens[at].end)
    }

    fn read(&mut self, reader: &Reader, scale: TemperatureScale) {
        let counts = self.find_trailers(&reader.senses);
        let corrections = correct::apply(&mut self.items, &mut self.groups, self.heard.language);
        let (fixes, doubtful) = &corrections;
        let sentences = scope::sentences(&self.items);
        let mut scopes = scope::scopes(&self.items, &sentences);
        let (placed, found) = self.place(reader, &scopes, doubtful, scale);
        if self.alarmed {
            assemble::certain_dangers(&found, &self.items, &mut scopes);
        }
        let ask = ask::find(&self.items, &sentences, &self.groups).map(|(ask, _)| ask);

        let mut out = Assembled::default();
        out.unclear
            .extend(doubtful.iter().take(1).map(|at| (*at, "which-to-mend")));
        self.orders(&sentences, &mut out);
        let mut facts = assemble::sift(&found, &placed, &scopes, &mut out);
        if ask == Some(Ask::Undo) {
            facts.clear();
            out.unclear.clear();
        }
        self.uncounted(&counts, &mut facts, &mut out);
        self.all_unnamed(&mut facts, &mut out);
        assemble::assign(&mut facts, &self.items, &sentences, &scopes);
        self.both(&mut facts, &reader.senses);
        self.also(&mut facts, &scopes, &reader.senses);
        assemble::doubted_trailers(&mut facts, (&self.items, &scopes), self.alarmed, &mut out);
        assemble::times(&mut facts, &self.items, &scopes);
        assemble::lasting(&mut facts, &self.items, &scopes);
        if out.unclear.iter().any(|(_, why)| *why == "order") {
            facts.clear();
        }
        assemble::entries(&facts, &self.items, &self.groups, fixes, &mut out);

        self.heard.plans = plan::find(
            &self.items,
            &sentences,
            &scopes,
            &placed,
            &self.groups,
            |a, b| self.piece(a, b),
        );
        self.heard.ask = ask.or_else(|| self.scratched(&reader.senses).then_some(Ask::Undo));
        self.heard.answer = answer::find(&self.items, &self.groups);
        self.leftovers(&facts, &mut out);
        self.static_and_flowing(&reader.senses, &mut out);
        self.heard.plans.truncate(MOST_REMARKS);
        self.remark(&out);
        self.heard.entries = out.entries;
        self.heard.entries.iter_mut().for_each(smells_too);
        self.forecast_low(scale, &reader.senses);
        hot_air::doubt(reader, &self.normal.text, self.original, &mut self.heard);
        hot_skin::take(reader, &self.normal.text, &mut self.heard);
        let wishes = wish::find(reader, &self.normal.text, self.original, &self.heard);
        // "check me in 20" is no word of a report, and is understood all the same
        if !wishes.is_empty() {
            let minutes = wishes
                .iter()
                .any(|plan| matches!(plan.kind, PlanKind::CheckMe { .. }))
                && self.heard.entries.is_empty();
            self.heard
                .unclear
                .retain(|r| r.why != Remark::NOT_UNDERSTOOD && !(minutes && r.why == "no-place"));
        }
        self.heard.plans.extend(wishes);
    }

    /// Parts the items into sentences, gives numbers with a use of their own their label, and finds the trailers.
    /// Returns the first token of each count of trailers: "three units".
    fn find_trailers(&mut self, senses: &Senses) -> Vec<usize> {
        let (text, tokens) = (&self.normal.text, &self.tokens);
        scope::segment(&mut self.items);
        neighbours::settle(text, tokens, &mut self.items, senses);
        legs::settle(text, tokens, &mut self.items, senses);
        level_words(text, tokens, &mut self.items, senses);
        more_than_full(text, tokens, &mut self.items);
        circuit_codes(text, tokens, &mut self.items, senses);
        circuits(&mut self.items);
        clock_words(text, tokens, &mut self.items, senses);
        tasks(text, tokens, &mut self.items, senses);
        tire_pressures(&mut self.items);
        ratings_again(&mut self.items);
        widths(text, tokens, &mut self.items, senses);
        sizes(text, tokens, &mut self.items, senses);
        dates(text, tokens, &mut self.items, senses);
        let wires = wire::settle(text, tokens, &mut self.items, senses);
        self.strange.retain(|token| !wires.contains(token));
        let counts = counted(text, tokens, &mut self.items)
            .iter()
            .map(|i| self.items[*i].first)
            .collect();
        self.groups = unit::find(text, tokens, &mut self.items, senses);
        self.plural_groups();
        let mut met = BTreeSet::new();
        for item in &self.items {
            if let What::Units(g) = item.what {
                for name in &self.groups[g].names {
                    if met.insert(name.clone()) {
                        self.heard.named.push(name.clone());
                    }
                }
            }
        }
        counts
    }

    /// Finds the values and the statements.
    fn place(
        &self,
        reader: &Reader,
        scopes: &[Scope],
        doubtful: &[usize],
        scale: TemperatureScale,
    ) -> (Vec<Placed>, Vec<Found>) {
        let mut placed = attach::values(
            &self.items,
            &self.groups,
            scopes,
            &self.short_unknown(),
            scale,
        );
        drop_beside_unplaced(&self.items, &mut placed);
        doubted_again(&self.items, scopes, &mut placed);
        placed.retain(|p| !doubtful.contains(&p.at));
        of_another::settle(self, &reader.senses, &mut placed);
        doubt::contradicted_label(&self.items, &mut placed);
        doubt::gusts_over_winds(&self.items, &mut placed);
        let mut found = pair::statements(&self.items, scopes, &reader.pairs);
        let told = told::find(
            (&self.normal.text, &self.tokens),
            &self.items,
            scopes,
            &reader.senses,
        );
        let chunk = |at: usize| self.items[at].chunk;
        if told.iter().any(|p| p.value == Value::Taps(Taps::Running)) {
            // "17 psi with two taps and a toilet running": how it was read, and no fault
            found.retain(|f| {
                f.outcome != Outcome::Fault(Fault::ToiletRunning)
                    || told.iter().all(|p| chunk(p.at) != chunk(f.at))
            });
        }
        placed.extend(told);
        let (text, tokens) = (&self.normal.text, &self.tokens);
        legs::place(text, tokens, &self.items, &reader.senses, &mut placed);
        wire::place(text, tokens, &self.items, &reader.senses, &mut placed);
        (placed, found)
    }

    /// Returns the unknown words that are short enough to be a misspelt measure.
    fn short_unknown(&self) -> Vec<usize> {
        let short = |i: &usize| {
            let word = self.spelt(*i);
            (2..=7).contains(&word.chars().count())
                && word.starts_with(|c: char| c.is_ascii_alphabetic())
        };
        (0..self.items.len())
            .filter(|i| self.items[*i].what == What::Word { ordinary: false })
            .filter(short)
            .collect()
    }

    /// Returns the folded text of an item.
    fn spelt(&self, at: usize) -> &str {
        let item = &self.items[at];
        &self.normal.text[self.tokens[item.first].start..self.tokens[item.end - 1].end]
    }

    /// Keeps what was set aside and what is unclear, in the sender's own words.
    fn remark(&mut self, out: &Assembled) {
        // a word that grew huge would be quoted once for each plan
        let huge = out
            .aside
            .iter()
            .any(|(at, _)| self.piece(*at, at + 1).len() > 200);
        for plan in self.heard.plans.iter().filter(|_| !huge) {
            if self.heard.set_aside.iter().all(|r| r.text != plan.text) {
                let why = match plan.kind {
                    PlanKind::Watch { .. } => "condition",
                    _ => "plan",
                };
                self.heard.set_aside.push(Remark {
                    text: plan.text.clone(),
                    why: why.into(),
                });
            }
        }
        for (at, why) in out.aside.iter().take(MOST_REMARKS) {
            let text = self.piece(*at, at + 1).to_string();
            let known = |r: &Remark| r.text.contains(&text) && r.why == *why;
            if !self.heard.set_aside.iter().any(known) {
                self.heard.set_aside.push(Remark {
                    text,
                    why: (*why).into(),
                });
            }
        }
        for (at, why) in out.unclear.iter().take(MOST_REMARKS) {
            let text = self.around(*at).to_string();
            if !self.heard.unclear.iter().any(|r| r.text == text) {
                self.heard.unclear.push(Remark {
                    text,
                    why: (*why).into(),
                });
            }
        }
    }

    /// A forecast low is no temperature read now.
    fn forecast_low(&mut self, scale: TemperatureScale, senses: &Senses) {
        let read_as_air = |entry: &Entry| {
            let keys = || entry.readings.values.keys();
            entry.events.is_empty()
                && entry.faults.is_empty()
                && keys().all(|key| *key == ReadingKey::AirF)
        };
        if !self.heard.entries.iter().all(read_as_air) {
            return;
        }
        let text = &self.in_digits(senses);
        let about_more = self.items.iter().any(|item| {
            let other =
                |noun: Noun| !matches!(noun, Noun::Air | Noun::Low | Noun::Person | Noun::Sound);
            item.noun().is_some_and(other)
        });
        let foretold = || {
            let low = foretold::low(text, &self.heard.named, scale, senses);
            low.filter(|_| !about_more)
        };
        let Some(low) = weather::low_tonight(text, scale, senses).or_else(foretold) else {
            if self.heard.entries.is_empty()
                && foretold::without_degrees(text, &self.heard.named, senses)
            {
                self.heard.unclear.push(Remark {
                    text: self.original.trim().to_owned(),
                    why: "bound".into(),
                });
            }
            return;
        };
        // the number of degrees is no trailer's name
        let unit = self.heard.named.iter().find(|name| {
            !foretold::are_degrees(text, name, low, senses) && !self.is_behind_of(name)
        });
        let mut entry = Entry {
            unit: unit.cloned(),
            ..Entry::default()
        };
        entry.readings.set(ReadingKey::LowF, low);
        self.heard.entries = vec![entry];
        // what was put as a plan, or asked about, is this low
        let digits = format!("{}", low.abs());
        let said = self
            .spoken
            .iter()
            .filter(|(_, value)| value.abs() == low.abs());
        let said: Vec<String> = said.map(|(tokens, _)| self.spelt_tokens(tokens)).collect();
        let of_it = |remark: &Remark| {
            let typed = remark.text.to_lowercase();
            typed.contains(&digits) || said.iter().any(|said| typed.contains(said.as_str()))
        };
        self.heard.unclear.retain(|remark| !of_it(remark));
        self.heard.set_aside.retain(|remark| !of_it(remark));
        self.heard.plans.retain(|plan| plan.kind != PlanKind::Other);
        if self.heard.ask == Some(Ask::Forecast { unit: None }) {
            self.heard.ask = None;
        }
    }

    /// "high of 40, low of 22": tells whether a trailer is named as no more than what something is of.
    fn is_behind_of(&self, name: &UnitName) -> bool {
        let names = |item: &Item| match item.what {
            What::Units(group) => self.groups[group].names.contains(name),
            _ => false,
        };
        let mut named = (0..self.items.len()).filter(|i| names(&self.items[*i]));
        named.all(|i| i > 0 && self.items[i - 1].is(Mark::Of))
    }

    /// Returns the text as it was read, its numbers in words written in digits.
    fn in_digits(&self, senses: &Senses) -> String {
        let mut out = String::with_capacity(self.normal.text.len());
        let mut end = 0;
        for (tokens, value) in &self.spoken {
            out.push_str(&self.normal.text[end..self.tokens[tokens.start].start]);
            // "ten below zero" stays under zero in so many words: by them it is known for a low
            let first =
                &self.normal.text[self.tokens[tokens.start].start..self.tokens[tokens.start].end];
            match *value < 0.0 && !senses.has(first, Sense::MinusSign) {
                true => out.push_str(&format!("{} below 0", -value)),
                false => out.push_str(&value.to_string()),
            }
            end = self.tokens[tokens.end - 1].end;
        }
        out.push_str(&self.normal.text[end..]);
        out
    }

    /// Returns the folded text of some tokens.
    fn spelt_tokens(&self, tokens: &Range<usize>) -> String {
        self.normal.text[self.tokens[tokens.start].start..self.tokens[tokens.end - 1].end]
            .to_owned()
    }

    /// Returns the words of the chunk that an item stands in, or the item alone where the chunk is long.
    fn around(&self, at: usize) -> &'t str {
        let chunk = self.items[at].chunk;
        let start = (0..=at)
            .rev()
            .take(12)
            .take_while(|i| self.items[*i].chunk == chunk)
            .last()
            .unwrap_or(at);
        let end = (at..self.items.len())
            .take(12)
            .take_while(|i| self.items[*i].chunk == chunk && self.items[*i].what != What::Break)
            .last()
            .unwrap_or(at);
        self.piece(start, end + 1)
    }

    /// "both", "all" and "units" say that what follows holds for each.
    fn plural_groups(&mut self) {
        self.one_a_line();
        for at in 0..self.items.len() {
            let What::Units(g) = self.items[at].what else {
                continue;
            };
            let next = self.items.get(at + 1);
            let all = next.is_some_and(|n| n.is(Mark::All))
                || at > 0 && self.items[at - 1].is(Mark::All)
                || at > 1 && self.items[at - 1].is(Mark::Of) && self.items[at - 2].is(Mark::All)
                || self.all_led(at);
            let units =
                at > 0 && self.items[at - 1].is(Mark::Unit) && self.groups[g].names.len() > 1;
            if all || units {
                self.groups[g].plural = true;
            }
        }
    }
}

impl Reading<'_> {
    /// "ambas, la 3 y la 5, con el tanque a la mitad": a word for all, and which these are.
    fn all_led(&self, at: usize) -> bool {
        let mut before = (0..at).rev().filter(|i| !self.items[*i].is(Mark::Article));
        let comma = before
            .next()
            .is_some_and(|i| self.items[i].what == What::Sign(','));
        let all = before.next();
        comma
            && all.is_some_and(|i| {
                self.items[i].is(Mark::All)
                    && self.items[i].sentence == self.items[at].sentence
                    && (i == 0 || self.items[i - 1].sentence != self.items[i].sentence)
            })
    }

    /// "30\n31\n32\nall arrived": trailers that stand on lines of their own before a word for all of them.
    fn one_a_line(&mut self) {
        for at in 2..self.items.len() {
            if !self.items[at].is(Mark::All) || self.items[at - 1].what != What::Break {
                continue;
            }
            let mut listed: Vec<(usize, usize)> = Vec::new();
            let mut line = at - 1;
            while line > 0
                && self.items[line].what == What::Break
                && let What::Units(group) = self.items[line - 1].what
            {
                listed.push((line - 1, group));
                let Some(before) = (line - 1).checked_sub(1) else {
                    break;
                };
                line = before;
            }
            if listed.len() < 2 {
                continue;
            }
            let last = listed[0].1;
            let names = listed.iter().rev();
            self.groups[last].names = names
                .flat_map(|(_, group)| self.groups[*group].names.clone())
                .collect();
            self.groups[last].plural = true;
            for (item, _) in &listed[1..] {
                self.items[*item].what = What::Gone;
            }
        }
    }
}

/// Returns the numbers that were said in words: their tokens and values.
fn in_words(text: &str, tokens: &[Token], items: &[Item]) -> Vec<(Range<usize>, f64)> {
    let said = |item: &&Item| text[tokens[item.first].start..].starts_with(char::is_alphabetic);
    let numbers = items.iter().filter(said);
    let whole = |item: &Item| {
        let number = item.number()?;
        (number.form != Form::Part).then_some((item.first..item.end, number.value))
    };
    numbers.filter_map(whole).collect()
}

/// A smell of gas is a smell, and told first.
fn smells_too(entry: &mut Entry) {
    if let Some(at) = entry
        .faults
        .iter()
        .position(|fault| *fault == Fault::GasSmell)
    {
        entry.faults.retain(|fault| *fault != Fault::Odor);
        entry
            .faults
            .insert((at + 1).min(entry.faults.len()), Fault::Odor);
    }
    if entry.cleared.contains(&Fault::GasSmell) && !entry.cleared.contains(&Fault::Odor) {
        entry.cleared.push(Fault::Odor);
    }
}
