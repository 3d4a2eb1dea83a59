//! One message through all stages.

use super::Reader;
use super::assemble::{self, Assembled};
use super::concept::{AskWord, Concept, Mark, Noun, Unit};
use super::item::{self, Form, Item, Items, What};
use super::lex::{self, Token};
use super::normal::Normal;
use super::scope::{self, Sentence};
use super::unit::{self, Group};
use super::{answer, ask, attach, correct, pair, plan, told, weather, wish};
use crate::heard::{Ask, Command, CommandName, Entry, Heard, Language, ReadingKey, Remark, Taken};
use crate::quantity::TemperatureScale;

/// The most remarks of one kind that a message gets: nobody answers more.
const MOST_REMARKS: usize = 40;

/// A message as it is being read.
pub(super) struct Reading<'t> {
    original: &'t str,
    normal: Normal,
    tokens: Vec<Token>,
    pub(super) items: Vec<Item>,
    pub(super) groups: Vec<Group>,
    pub(super) heard: Heard,
}

impl<'t> Reading<'t> {
    /// Reads `text` through all stages.
    pub(super) fn new(reader: &Reader, text: &'t str, scale: TemperatureScale) -> Reading<'t> {
        let normal = Normal::new(text);
        let tokens = lex::tokens(&normal.text, &reader.vocab);
        let Items {
            list,
            mended,
            languages,
        } = item::items(&normal.text, &tokens, &reader.vocab);
        let mut reading = Reading {
            original: text,
            normal,
            tokens,
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
        reading.heard.taken = mended
            .iter()
            .map(|m| Taken {
                typed: reading.token(m.token).to_string(),
                read: m.read.clone(),
            })
            .collect();
        if reading.command() {
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

    fn token(&self, at: usize) -> &'t str {
        self.normal
            .original(self.original, self.tokens[at].start, self.tokens[at].end)
    }

    fn read(&mut self, reader: &Reader, scale: TemperatureScale) {
        scope::segment(&mut self.items);
        level_words(&self.normal.text, &self.tokens, &mut self.items);
        circuit_codes(&self.normal.text, &self.tokens, &mut self.items);
        circuits(&mut self.items);
        clock_words(&self.normal.text, &self.tokens, &mut self.items);
        tasks(&mut self.items);
        let counts = counted(&mut self.items)
            .iter()
            .map(|i| self.items[*i].first)
            .collect::<Vec<_>>();
        self.groups = unit::find(&self.normal.text, &self.tokens, &mut self.items);
        self.plural_groups();
        let mut met = std::collections::BTreeSet::new();
        for item in &self.items {
            if let What::Units(g) = item.what {
                for name in &self.groups[g].names {
                    if met.insert(name.clone()) {
                        self.heard.named.push(name.clone());
                    }
                }
            }
        }
        let (fixes, doubtful) = correct::apply(&mut self.items, &mut self.groups);
        let sentences = scope::sentences(&self.items);
        let scopes = scope::scopes(&self.items, &sentences);
        let short: Vec<usize> = (0..self.items.len())
            .filter(|i| self.items[*i].what == What::Word { ordinary: false })
            .filter(|i| {
                let item = &self.items[*i];
                let word =
                    &self.normal.text[self.tokens[item.first].start..self.tokens[item.end - 1].end];
                (2..=7).contains(&word.chars().count())
                    && word.starts_with(|c: char| c.is_ascii_alphabetic())
            })
            .collect();
        let mut placed = attach::values(&self.items, &scopes, &short, scale);
        drop_beside_unplaced(&self.items, &mut placed);
        doubted_again(&self.items, &scopes, &mut placed);
        placed.retain(|p| !doubtful.contains(&p.at));
        let mut found = pair::statements(&self.items, &scopes, &reader.pairs);
        let told = told::find(&self.normal.text, &self.tokens, &self.items, &scopes);
        if told
            .iter()
            .any(|p| p.value == attach::Value::Taps(crate::heard::Taps::Running))
        {
            // "17 psi with two taps and a toilet running": how it was read, and no fault
            found.retain(|f| {
                f.outcome != pair::Outcome::Fault(crate::heard::Fault::ToiletRunning)
                    || told
                        .iter()
                        .all(|p| self.items[p.at].chunk != self.items[f.at].chunk)
            });
        }
        placed.extend(told);
        let asked = ask::find(&self.items, &sentences, &self.groups);
        let mut out = Assembled::default();
        out.unclear
            .extend(doubtful.iter().take(1).map(|at| (*at, "which-to-mend")));
        self.orders(&sentences, &mut out);
        let mut facts = assemble::sift(&found, &placed, &scopes, &mut out);
        if let Some((ask, _)) = &asked
            && matches!(ask, Ask::Undo)
        {
            facts.clear();
            out.unclear.clear();
        }
        self.uncounted(&counts, &mut facts, &mut out);
        self.all_unnamed(&mut facts, &mut out);
        assemble::assign(&mut facts, &self.items, &sentences);
        assemble::clocks(&mut facts, &self.items);
        if out.unclear.iter().any(|(_, why)| *why == "order") {
            facts.clear();
        }
        assemble::entries(&facts, &self.items, &self.groups, &fixes, &mut out);
        self.heard.plans = plan::find(
            &self.items,
            &sentences,
            &scopes,
            &placed,
            &self.groups,
            |a, b| self.piece(a, b),
        );
        self.heard.ask = asked
            .map(|(ask, _)| ask)
            .or_else(|| self.scratched().then_some(Ask::Undo));
        self.heard.answer = answer::find(&self.items, &self.groups);
        self.leftovers(&facts, &mut out);
        self.heard.plans.truncate(MOST_REMARKS);
        for plan in &self.heard.plans {
            if !out
                .aside
                .iter()
                .any(|(at, _)| self.piece(*at, at + 1).len() > 200)
                && self.heard.set_aside.iter().all(|r| r.text != plan.text)
            {
                let why = match plan.kind {
                    crate::heard::PlanKind::Watch { .. } => "condition",
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
            if !self
                .heard
                .set_aside
                .iter()
                .any(|r| r.text.contains(&text) && r.why == *why)
            {
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
        self.heard.entries = out.entries;
        // a forecast low is no temperature read now
        let read_as_air = |entry: &Entry| {
            let keys = || entry.readings.values.keys();
            entry.events.is_empty()
                && entry.faults.is_empty()
                && keys().all(|key| *key == ReadingKey::AirF)
        };
        if self.heard.entries.iter().all(read_as_air)
            && let Some(low) = weather::low_tonight(&self.normal.text, scale)
        {
            self.heard.entries.clear();
            // the number of degrees is no trailer's name
            let unit = self
                .heard
                .named
                .iter()
                .find(|name| name.as_str().parse() != Ok(low));
            let mut entry = Entry {
                unit: unit.cloned(),
                ..Entry::default()
            };
            entry.readings.set(ReadingKey::LowF, low);
            self.heard.entries.push(entry);
        }
        let wishes = wish::find(&self.normal.text, self.original, &self.heard);
        self.heard.plans.extend(wishes);
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

    /// "scratch that", alone: what was sent before is taken back.
    fn scratched(&self) -> bool {
        let words: Vec<usize> = (0..self.items.len())
            .filter(|i| !matches!(self.items[*i].what, What::Sign(_) | What::Break))
            .collect();
        let [only] = words.as_slice() else {
            return false;
        };
        let item = &self.items[*only];
        item.is(Mark::Sorry)
            && matches!(
                &self.normal.text[self.tokens[item.first].start..self.tokens[item.end - 1].end],
                "scratch that" | "strike that"
            )
    }

    /// What is said of "all units", none of them named, is asked about.
    fn all_unnamed(&self, facts: &mut Vec<assemble::Fact>, out: &mut Assembled) {
        if !self.groups.is_empty() {
            return;
        }
        let whole = self
            .items
            .iter()
            .position(|i| i.is(Mark::All))
            .filter(|at| {
                let next = self.items.get(at + 1).is_some_and(|n| n.is(Mark::Unit));
                let before = *at > 0 && self.items[at - 1].is(Mark::Unit);
                let tanks = (at + 1..self.items.len())
                    .take(3)
                    .find(|i| !self.items[*i].is_filler())
                    .is_some_and(|i| self.items[i].noun().is_some_and(|n| n.is_tank()));
                next || before || tanks || self.piece(*at, at + 1).contains(' ')
            });
        if let Some(at) = whole {
            let chunk = self.items[at].chunk;
            let before = facts.len();
            facts.retain(|f| self.items[f.at].chunk != chunk);
            if facts.len() < before {
                out.unclear.push((at, "which-unit"));
            }
        }
    }

    /// What is said of "three units" names none of them: it is asked about.
    fn uncounted(&self, counts: &[usize], facts: &mut Vec<assemble::Fact>, out: &mut Assembled) {
        for first in counts {
            let Some(at) = self.items.binary_search_by_key(first, |i| i.first).ok() else {
                continue;
            };
            let chunk = self.items[at].chunk;
            let named = (at.saturating_sub(130)..self.items.len().min(at + 130)).any(|i| {
                self.items[i].chunk == chunk && matches!(self.items[i].what, What::Units(_))
            });
            let before = facts.len();
            if !named {
                facts.retain(|f| self.items[f.at].chunk != chunk);
            }
            if facts.len() < before {
                out.unclear.push((at, "which-unit"));
            }
        }
    }

    /// An instruction to change records is asked about, never done.
    fn orders(&self, sentences: &[Sentence], out: &mut Assembled) {
        for sentence in sentences {
            let said = |i: &usize| {
                !matches!(self.items[*i].what, What::Sign(_) | What::Break)
                    && !self.items[*i].is_filler()
                    && !self.items[*i].is(Mark::Request)
            };
            let mut first = (sentence.start..sentence.end).find(said);
            // "system: delete everything"
            if let Some(at) = first
                && matches!(self.items[at].what, What::Word { .. })
                && self
                    .items
                    .get(at + 1)
                    .is_some_and(|n| n.what == What::Sign(':'))
            {
                first = (at + 1..sentence.end).find(said);
            }
            if let Some(at) = first.filter(|at| self.items[*at].is(Mark::Order)) {
                out.unclear.push((at, "order"));
            }
        }
    }

    /// "both", "all" and "units" say that what follows holds for each.
    fn plural_groups(&mut self) {
        for at in 0..self.items.len() {
            let What::Units(g) = self.items[at].what else {
                continue;
            };
            let next = self.items.get(at + 1);
            let all =
                next.is_some_and(|n| n.is(Mark::All)) || at > 0 && self.items[at - 1].is(Mark::All);
            let units =
                at > 0 && self.items[at - 1].is(Mark::Unit) && self.groups[g].names.len() > 1;
            let are = next.is_some_and(|n| n.is(Mark::Aux) && self.groups[g].names.len() > 1);
            if all || units || are {
                self.groups[g].plural = true;
            }
        }
    }

    /// A message that is nothing but a trailer, or only marks a question, is asked about.
    fn leftovers(&self, facts: &[assemble::Fact], out: &mut Assembled) {
        if !facts.is_empty()
            || self.heard.ask.is_some()
            || !out.unclear.is_empty()
            || !out.aside.is_empty()
        {
            return;
        }
        let words: Vec<usize> = (0..self.items.len())
            .filter(|i| {
                !matches!(self.items[*i].what, What::Sign(_) | What::Break)
                    && !self.items[*i].is_filler()
                    && !self.items[*i].is(Mark::Call)
            })
            .collect();
        let named = words
            .iter()
            .copied()
            .find(|i| matches!(self.items[*i].what, What::Units(_)));
        let garbled = words
            .iter()
            .copied()
            .find(|i| self.items[*i].what == What::Garbled);
        if let Some(at) = garbled
            && words
                .iter()
                .any(|i| self.items[*i].noun().is_some_and(|n| n.reading().is_some()))
        {
            out.unclear.push((at, "no-number"));
            return;
        }
        match named {
            Some(at)
                if words.iter().all(|i| {
                    *i == at
                        || matches!(
                            self.items[*i].what,
                            What::Is(
                                Concept::Mark(
                                    Mark::Sorry
                                        | Mark::Now
                                        | Mark::Pronoun
                                        | Mark::Unit
                                        | Mark::Of
                                        | Mark::And
                                ) | Concept::Answer(_)
                            )
                        )
                }) =>
            {
                out.unclear.push((at, "no-place"));
            }
            Some(at)
                if words.iter().any(|i| {
                    self.items[*i].is(Mark::Done)
                        || matches!(self.items[*i].what, What::Is(Concept::Ask(AskWord::Done)))
                }) && words.len() <= 3 =>
            {
                out.unclear.push((at, "done-what"));
            }
            None => {
                let asks = self.items.iter().any(|i| i.what == What::Sign('?'));
                if asks && words.is_empty() {
                    out.unclear.push((0, "asks-something"));
                }
                // "3 units arrived" names none
                if let Some(at) = words
                    .iter()
                    .copied()
                    .find(|i| self.items[*i].is(Mark::Unit))
                {
                    let _ = at;
                }
            }
            _ => {}
        }
    }

    /// A message whose first word is an order to the bot has nothing else in it.
    fn command(&mut self) -> bool {
        let Some(first) = self
            .items
            .iter()
            .position(|i| !matches!(i.what, What::Sign(_) | What::Break))
        else {
            return false;
        };
        let after = first + 1;
        let task = self
            .items
            .get(after)
            .and_then(Item::number)
            .filter(|n| n.form == Form::Whole)
            .map(|n| n.value as u32);
        let rest_from = self.items[first].end;
        let rest = || {
            let start = self
                .tokens
                .get(rest_from)
                .map_or(self.normal.text.len(), |t| t.start);
            self.normal
                .original(self.original, start, self.normal.text.len())
                .to_string()
        };
        match self.items[first].what {
            What::Is(Concept::Ask(AskWord::Sum)) => {
                self.heard.ask = Some(Ask::Sum);
                true
            }
            What::Is(Concept::Command(name)) => {
                let numbered = matches!(
                    name,
                    CommandName::Take | CommandName::Drop | CommandName::Move
                );
                if numbered && task.is_none() {
                    return false;
                }
                let alone = matches!(name, CommandName::GotIt | CommandName::NeverMind);
                if alone
                    && self.items.iter().skip(after).any(|i| {
                        matches!(
                            i.what,
                            What::Number(_)
                                | What::Is(
                                    Concept::Noun(_)
                                        | Concept::State(_)
                                        | Concept::Event(_)
                                        | Concept::Fault(_)
                                        | Concept::Ask(_)
                                )
                        )
                    })
                {
                    return false;
                }
                self.heard.command = Some(Command {
                    name,
                    task: task.filter(|_| numbered),
                    rest: rest(),
                });
                self.heard.ask = Some(Ask::Command { name });
                true
            }
            _ => false,
        }
    }
}

/// "Level, chocked": said of no number, it is how the trailer stands, and not the tank's level.
fn level_words(text: &str, tokens: &[Token], items: &mut [Item]) {
    for at in 0..items.len() {
        if items[at].noun() != Some(Noun::Tank)
            || &text[tokens[items[at].first].start..tokens[items[at].end - 1].end] != "level"
        {
            continue;
        }
        let chunk = items[at].chunk;
        let near = (at.saturating_sub(8)..items.len().min(at + 8))
            .filter(|i| items[*i].chunk == chunk && *i != at);
        let measured = near.clone().any(|i| {
            matches!(items[i].what, What::Range(..) | What::Is(Concept::Level(_)))
                || items[i]
                    .number()
                    .is_some_and(|n| n.form != Form::Whole || n.unit.is_some())
        });
        let tank = near
            .clone()
            .any(|i| items[i].noun().is_some_and(|n| n.is_tank()));
        let number_after = items
            .get(at + 1)
            .is_some_and(|n| n.number().is_some() && n.chunk == chunk);
        if !measured && !tank && !number_after {
            items[at].what = What::Is(Concept::State(super::concept::State::Level));
        }
    }
}

/// "3 units arrived", "four of the trailers": counted, and none named. Returns the items of such counts.
fn counted(items: &mut [Item]) -> Vec<usize> {
    let mut out = Vec::new();
    for at in 0..items.len() {
        if items[at]
            .number()
            .is_none_or(|n| n.form != Form::Whole || n.unit.is_some() || n.value > 40.0)
        {
            continue;
        }
        let next = (at + 1..items.len())
            .take(3)
            .find(|i| !items[*i].is_filler());
        let Some(next) = next.filter(|i| items[*i].is(Mark::Unit)) else {
            continue;
        };
        let named = items.get(next + 1).is_some_and(|n| {
            n.number().is_some() || matches!(n.what, What::Code | What::Sign('#'))
        });
        if !named && items[next].end > items[next].first {
            items[at].what = What::Labelled;
            out.push(at);
        }
    }
    out
}

/// "pressure 55, then again maybe it was 65": a value that the sender then doubts is asked about.
fn doubted_again(items: &[Item], scopes: &[scope::Scope], placed: &mut [attach::Placed]) {
    use attach::Value;
    for n in 1..placed.len() {
        let (before, p) = (placed[n - 1], placed[n]);
        let bare = p.noun.is_none() || p.noun == before.noun;
        let alike = items[before.at]
            .number()
            .zip(items[p.at].number())
            .is_some_and(|(a, b)| {
                (a.form == Form::Part) == (b.form == Form::Part)
                    && (b.unit.is_none() || a.unit == b.unit)
            });
        if scopes[p.at].doubt
            && !scopes[before.at].doubt
            && bare
            && alike
            && items[before.at].sentence == items[p.at].sentence
            && !matches!(p.value, Value::Label)
            && matches!(before.value, Value::Reading(..))
        {
            placed[n - 1].value = Value::Unclear("doubt");
        }
    }
}

/// A number without a place beside a word nobody knows makes the values of its chunk doubtful: the word may be a slip
/// for "to", for a noun or for a measure. So does one beside values where no trailer is named.
fn drop_beside_unplaced(items: &[Item], placed: &mut [attach::Placed]) {
    use attach::Value;
    let word = |i: usize| matches!(items.get(i).map(|n| n.what), Some(What::Word { .. }));
    let mut doubtful: std::collections::BTreeSet<usize> = std::collections::BTreeSet::new();
    for (n, p) in placed.iter().enumerate() {
        if !matches!(p.value, Value::Unclear("no-place" | "no-measure")) {
            continue;
        }
        let chunk = items[p.at].chunk;
        doubtful.insert(chunk);
        // "14 has 2, no wiat 3", "PSI 60, PIS 80": a slip for a correction or a noun
        let lone = [n.checked_sub(1), Some(n + 1)]
            .into_iter()
            .flatten()
            .all(|m| placed.get(m).is_none_or(|q| items[q.at].chunk != chunk));
        let strange = word(p.at + 1) || p.at > 0 && word(p.at - 1);
        if lone && strange {
            let near = |q: Option<&attach::Placed>| {
                q.map(|q| items[q.at].chunk)
                    .filter(|c| c.abs_diff(chunk) <= 2)
            };
            doubtful.extend(n.checked_sub(1).and_then(|m| near(placed.get(m))));
            doubtful.extend(near(placed.get(n + 1)));
        }
    }
    // "7 waste 1/2, I mena 3/4": a second level that no tank claims, beside a word that says nothing here
    for pair in placed.windows(2) {
        let [a, b] = [&pair[0], &pair[1]];
        let level = matches!(
            a.value,
            Value::Reading(ReadingKey::WastePct | ReadingKey::FreshPct, _)
        );
        let second = b.value == Value::Unclear("which-tank") && items[b.at].number().is_some();
        if level
            && second
            && b.at > 0
            && word(b.at - 1)
            && items[a.at].sentence == items[b.at].sentence
        {
            doubtful.insert(items[a.at].chunk);
        }
    }
    // "48 fresh 40%, scrtach that, 45%", "tank full on 12. ank empty": a second level without a tank, after a word
    // nobody knows
    for pair in placed.windows(2) {
        let [a, b] = [&pair[0], &pair[1]];
        let level = matches!(
            a.value,
            Value::Reading(ReadingKey::WastePct | ReadingKey::FreshPct, _)
        );
        let between = a.at + 1..b.at;
        let odd = between
            .clone()
            .any(|i| items[i].what == What::Word { ordinary: false });
        let second = matches!(
            b.value,
            Value::Unclear("which-tank" | "no-measure" | "no-number" | "beside-unplaced")
        );
        if level && second && odd && items[a.at].sentence + 1 >= items[b.at].sentence {
            doubtful.insert(items[a.at].chunk);
        }
    }
    // "50% clean 70% clean": two levels in one breath, and one of them without a tank
    for p in placed.iter() {
        if p.value == Value::Unclear("which-tank")
            && items[p.at].number().is_some()
            && placed.iter().any(|q| {
                q.at != p.at
                    && items[q.at].chunk == items[p.at].chunk
                    && matches!(
                        q.value,
                        Value::Reading(ReadingKey::WastePct | ReadingKey::FreshPct, _)
                    )
            })
        {
            doubtful.insert(items[p.at].chunk);
        }
    }
    if doubtful.is_empty() {
        return;
    }
    for p in placed.iter_mut() {
        if matches!(p.value, Value::Reading(..) | Value::Amps(..))
            && doubtful.contains(&items[p.at].chunk)
        {
            p.value = Value::Unclear("beside-unplaced");
        }
    }
}

/// "circuit 2", "breaker 3": a circuit by its number; "breaker 20a" is a rating.
fn circuits(items: &mut [Item]) {
    for at in 0..items.len() {
        let circuit = matches!(items[at].noun(), Some(Noun::Circuit | Noun::Breaker));
        if !circuit {
            continue;
        }
        let Some(next) = (at + 1..items.len())
            .take(3)
            .find(|i| !items[*i].is_filler() && items[*i].what != What::Sign('#'))
        else {
            continue;
        };
        if items[next].chunk != items[at].chunk {
            continue;
        }
        if let Some(n) = items[next].number()
            && n.unit.is_none()
            && n.form == Form::Whole
            && (1.0..=4.0).contains(&n.value)
        {
            items[next].what = What::Circuit(n.value as u8);
            more_circuits(items, next);
        }
    }
}

/// "c1 11.8A": where a current follows, c and a digit is a circuit.
fn circuit_codes(text: &str, tokens: &[Token], items: &mut [Item]) {
    for at in 0..items.len() {
        // "4 circuits" counts them, "circuits 1 and 2" names them
        let listed = items[at].is(Mark::LabelAfter)
            && matches!(
                &text[tokens[items[at].first].start..tokens[items[at].end - 1].end],
                "circuits" | "ckts"
            )
            && items.get(at + 1).is_some_and(|n| {
                n.number()
                    .is_some_and(|n| n.form == Form::Whole && (1.0..=4.0).contains(&n.value))
            });
        if listed {
            items[at].what = What::Is(Concept::Noun(Noun::Circuit));
        }
        // "la 12 llegó a chapel green": a place, where no number follows
        let came = items[at].is(Mark::Filler)
            && matches!(
                &text[tokens[items[at].first].start..tokens[items[at].end - 1].end],
                "llegó a" | "llego a" | "llegaron a"
            )
            && at > 0
            && (items[at - 1].number().is_some() || items[at - 1].what == What::Code)
            && items
                .get(at + 1)
                .is_some_and(|n| matches!(n.what, What::Word { .. }) || n.is(Mark::Article));
        if came {
            items[at].what = What::Is(Concept::Event(crate::heard::Event::Arrived));
        }
        if items[at].what != What::Code {
            continue;
        }
        let typed = &text[tokens[items[at].first].start..tokens[items[at].end - 1].end];
        let number = match typed.as_bytes() {
            [b'c', digit @ b'1'..=b'4'] => digit - b'0',
            _ => continue,
        };
        let current = (at + 1..items.len())
            .take(3)
            .find(|i| !items[*i].is_filler())
            .is_some_and(|i| {
                items[i].number().is_some_and(|n| n.unit == Some(Unit::Amp))
                    || items[i].noun() == Some(Noun::Amps)
            });
        if current {
            items[at].what = What::Circuit(number);
        }
    }
}

/// "circuits 1, 2 and 3", "circuit 1 draws 13 amps and 3 draws 12": the circuits that follow the first.
fn more_circuits(items: &mut [Item], first: usize) {
    let sentence = items[first].sentence;
    let circuit = |i: &Item| {
        i.number().is_some_and(|n| {
            n.unit.is_none() && n.form == Form::Whole && (1.0..=4.0).contains(&n.value)
        })
    };
    // a list right after the first
    let mut at = first + 1;
    let mut last = first;
    while at < items.len()
        && at <= last + 3
        && items[at].sentence == sentence
        && (matches!(items[at].what, What::Sign(',' | '/' | '+'))
            || items[at].is(Mark::And)
            || items[at].is(Mark::Article)
            || circuit(&items[at]))
    {
        // "circuits 1, 2 leveled": only where the list goes on or ends with "and"
        if circuit(&items[at]) && at > last + 1 {
            let tied = items[last + 1..at].iter().any(|i| i.is(Mark::And))
                || items[at + 1..]
                    .iter()
                    .take(2)
                    .any(|i| i.is(Mark::And) || circuit(i))
                || plural_before(items, first);
            if !tied {
                break;
            }
            let value = items[at].number().map_or(0.0, |n| n.value);
            items[at].what = What::Circuit(value as u8);
            last = at;
        }
        at += 1;
    }
    // a clause of its own: a circuit's number before what it draws
    for at in last + 1..items.len().min(last + 24) {
        if items[at].sentence != sentence || !circuit(&items[at]) {
            continue;
        }
        let opens = items[at - 1].is(Mark::And)
            || items[at - 1].what == What::Sign(',')
            || items[at - 1].is(Mark::Article)
                && at > 1
                && (items[at - 2].is(Mark::And) || items[at - 2].what == What::Sign(','));
        let next = (at + 1..items.len())
            .take(3)
            .find(|i| !items[*i].is_filler() && !items[*i].is(Mark::At));
        let next = next.map(|i| {
            if items[i].what == What::Is(Concept::State(super::concept::State::Ok)) {
                i + 1
            } else {
                i
            }
        });
        let draws = next.filter(|i| *i < items.len()).is_some_and(|i| {
            items[i].noun() == Some(Noun::Amps)
                || items[i]
                    .number()
                    .is_some_and(|n| n.unit == Some(Unit::Amp) || n.unit.is_none() && i > at + 1)
        });
        if opens && draws {
            let value = items[at].number().map_or(0.0, |n| n.value);
            items[at].what = What::Circuit(value as u8);
        }
    }
}

/// Tells whether a stroke ties the first circuit to the next: "circuits 1/2".
fn plural_before(items: &[Item], first: usize) -> bool {
    (first + 1..items.len())
        .take(2)
        .any(|i| items[i].what == What::Sign('/'))
}

/// "at 1045", "at four fifteen", "before 6": a time of day.
fn clock_words(text: &str, tokens: &[Token], items: &mut [Item]) {
    // "2 am. minus eight"
    if let [first, half, ..] = items
        && let What::Number(n) = first.what
        && n.form == Form::Whole
        && n.unit.is_none()
        && (1.0..=12.0).contains(&n.value)
        && text[tokens[half.first].start..tokens[half.end - 1].end] == *"am"
    {
        first.what = What::Clock(n.value as u16 % 12 * 60);
    }
    // "0745 on site with 53"
    if let Some(first) = items.first_mut()
        && let What::Number(n) = first.what
    {
        let typed = &text[tokens[first.first].start..tokens[first.end - 1].end];
        if typed.len() == 4
            && typed.starts_with('0')
            && typed.bytes().all(|b| b.is_ascii_digit())
            && n.value % 100.0 < 60.0
        {
            first.what = What::Clock((n.value / 100.0) as u16 * 60 + (n.value % 100.0) as u16);
        }
    }
    for at in 1..items.len() {
        let Some(n) = items[at].number() else {
            continue;
        };
        if n.form != Form::Whole || n.unit.is_some() {
            continue;
        }
        let half = items
            .get(at + 1)
            .map(|n| &text[tokens[n.first].start..tokens[n.end - 1].end]);
        if half == Some("am") && (1.0..=12.0).contains(&n.value) {
            items[at].what = What::Clock(n.value as u16 % 12 * 60);
            continue;
        }
        let before = items[at - 1];
        let word = &text[tokens[before.first].start..tokens[before.end - 1].end];
        let (hour, minute) = ((n.value / 100.0).floor(), n.value % 100.0);
        let clocky = n.value >= 100.0 && hour <= 23.0 && minute < 60.0;
        let noun_after = items
            .get(at + 1)
            .is_some_and(|x| x.noun().is_some_and(|n| n.reading().is_some()));
        let typed = &text[tokens[items[at].first].start..tokens[items[at].end - 1].end];
        // a las, a 90: the preposition of Spanish does not name a trailer
        if word == "a"
            && before.end == items[at].first
            && let What::Number(number) = &mut items[at].what
        {
            number.form = Form::Decimal;
        }
        let four = typed.len() == 4
            && typed.bytes().all(|b| b.is_ascii_digit())
            && clocky
            && !valued(items, at);
        if four
            && !noun_after
            && !matches!(
                before.what,
                What::Is(Concept::Mark(Mark::Unit | Mark::Article | Mark::Label)) | What::Sign('#')
            )
            && items[..at]
                .iter()
                .rev()
                .take(12)
                .any(|i| matches!(i.what, What::Is(Concept::Event(_))))
        {
            items[at].what = What::Clock(hour as u16 * 60 + minute as u16);
            continue;
        }
        let at_word = before.is(Mark::Clock) || matches!(word, "at" | "a las" | "@");
        if at_word && clocky && !noun_after {
            items[at].what = What::Clock(hour as u16 * 60 + minute as u16);
            continue;
        }
        // "came back around 9"
        let around = before.is(Mark::About)
            && n.value <= 12.0
            && !valued(items, at)
            && items[..at].iter().rev().take(8).any(|i| {
                i.chunk == items[at].chunk
                    && (matches!(i.what, What::Is(Concept::Event(_)))
                        || word == "around" && i.number().is_some())
            });
        if around || before.is(Mark::Clock) && n.value <= 24.0 && !noun_after {
            items[at].what = What::Clock(n.value as u16 * 60);
        }
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

/// "task 41" names a task, no trailer; "3 units" counts them.
fn tasks(items: &mut [Item]) {
    for at in 0..items.len() {
        if items[at].is(Mark::Label) && at + 1 < items.len() {
            let mut next = at + 1;
            while next < items.len()
                && (matches!(items[next].what, What::Sign('#' | '.' | ':' | '-'))
                    || items[next].is(Mark::No))
                && next < at + 4
            {
                next += 1;
            }
            if let Some(item) = items.get_mut(next)
                && matches!(
                    item.what,
                    What::Number(_) | What::Code | What::Range(..) | What::Garbled
                )
                && item.sentence == items[at].sentence
            {
                items[next].what = What::Labelled;
            }
        }
        let asks = matches!(
            items[at].what,
            What::Is(Concept::Ask(AskWord::Task | AskWord::Done))
        );
        let opens = at == 0 || items[at - 1].sentence != items[at].sentence;
        if asks || items[at].is(Mark::Done) && opens {
            let next = (at + 1..items.len())
                .take(3)
                .find(|i| !items[*i].is_filler() && items[*i].what != What::Sign('#'));
            if let Some((next, n)) = next.and_then(|i| items[i].number().map(|n| (i, n)))
                && n.form == Form::Whole
                && n.unit.is_none()
                && n.value < 1e9
                && items[next].sentence == items[at].sentence
                && !items
                    .get(next + 1)
                    .is_some_and(|c| c.what == What::Sign(':'))
            {
                items[next].what = What::Task(n.value as u32);
            }
        }
        // "new 2024 model": a year
        if (items[at].is(Mark::Label)
            || items[at].is(Mark::Unit) && at > 1 && items[at - 2].is_filler())
            && at > 0
            && items[at - 1]
                .number()
                .is_some_and(|n| (1990.0..=2039.0).contains(&n.value) && n.unit.is_none())
        {
            items[at - 1].what = What::Labelled;
        }
        // 40 stalls, 1200 Harbor Road
        if items[at].is(Mark::LabelAfter) {
            let number = (at.saturating_sub(3)..at)
                .rev()
                .find(|i| !matches!(items[*i].what, What::Word { .. }));
            if let Some(i) = number.filter(|i| {
                matches!(items[*i].what, What::Number(_) | What::Range(..))
                    && items[*i].chunk == items[at].chunk
            }) {
                items[i].what = What::Labelled;
            }
        }
    }
}
