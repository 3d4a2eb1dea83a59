//! The values of setting up and leaving as crews text them: "water 52", "2 cords, 119", "pumped 300, fresh drained".
//!
//! Alone, such a number may be a trailer's name or nothing at all. While a trailer is being set up or got ready to leave,
//! it is the value that its word names, or that the step asks for. The message is written out with measure and trailer,
//! and read once more; it counts only where more is understood of that trailer and nothing less.

use serde::Deserialize;
use std::sync::LazyLock;

use super::super::phrases::plain;
use super::super::receive::Texted;
use super::super::settle;
use super::phrase::{Phrases, is_question};
use crate::dialogue::{STEP_LASTS, Way};
use crate::fleet::Fleet;
use crate::heard::{Entry, Event, Heard, PlanKind, Remark, UnitName};

const VALUES: &str = include_str!("../../../grammar/walk/values.toml");

/// The words by which values are told.
#[derive(Debug, Deserialize)]
pub(in crate::desk) struct Values {
    cords: Vec<String>,
    names: Vec<String>,
    trailers: Vec<String>,
    measures: Vec<String>,
    first: Vec<String>,
    settings: Vec<String>,
    loose: Vec<String>,
    running: Vec<String>,
    value: Vec<Value>,
}

/// One kind of value.
#[derive(Debug, Deserialize)]
struct Value {
    way: Way,
    words: Vec<String>,
    steps: Vec<String>,
    least: f64,
    most: f64,
    #[serde(default)]
    before: String,
    after: String,
    #[serde(default)]
    at_step: String,
    #[serde(default)]
    sure: Option<(f64, f64)>,
}

impl Values {
    /// Returns those of the built-in file, which is parsed once.
    pub(in crate::desk) fn built_in() -> &'static Values {
        static BUILT_IN: LazyLock<Values> = LazyLock::new(|| {
            toml::from_str(VALUES).expect("the built-in values are read by a test")
        });
        &BUILT_IN
    }

    fn by_step(&self, place: &Place) -> Option<&Value> {
        let step = place.step.as_ref()?;
        self.value.iter().find(|value| value.steps.contains(step))
    }

    /// Puts the trailer before a bare count of cords: "2 cords 12".
    fn turned(&self, message: &Texted<'_>) -> Option<String> {
        let words: Vec<&str> = message.text.split_whitespace().collect();
        let [count, cords, name] = words.as_slice() else {
            return None;
        };
        let name = name.trim_end_matches(['.', ',', '!']);
        let unit = settle::known(message.fleet, &UnitName::new(name))?;
        let nothing = message.heard.entries.is_empty();
        let turned = Word::of(cords).is_in(&self.cords) && nothing;
        turned.then(|| format!("{unit}: {count} {cords}"))
    }

    /// Tells whether a text is a bare number that the step asks for: that is its answer, and not to be written out.
    fn answers_alone(&self, place: &Place, text: &str) -> bool {
        let number = Word::of(text.trim()).number();
        let asked = self.by_step(place);
        number.is_some_and(|(number, _)| asked.is_some_and(|value| value.believes(number)))
    }
}

impl Value {
    fn believes(&self, number: f64) -> bool {
        (self.least..=self.most).contains(&number)
    }
}

/// The trailer that is set up or leaves, and the step that waits; none where the message itself starts it.
struct Place {
    unit: UnitName,
    way: Way,
    step: Option<String>,
}

/// Writes a message out with the measures of its values, where it belongs to setting a trailer up or to leaving; none
/// where that says no more than the message as it stands.
pub(in crate::desk) fn written_out(message: &Texted<'_>) -> Option<String> {
    let Texted { heard, text, .. } = *message;
    let has_number = text.contains(|c: char| c.is_ascii_digit());
    let mends = message.desk.answers.any(&Phrases::of(text), "mistake") || takes_back(message);
    // "alone until 11", "check me in 15": the number is a time
    let of_a_clock = message.desk.phrases.holds("alone", "says", text)
        || (heard.plans.iter()).any(|plan| matches!(plan.kind, PlanKind::CheckMe { .. }));
    // "12 unplugged 2 cords": those have no power, and how many have is asked
    let asked = (heard.unclear.iter()).any(|remark| remark.why == Remark::CORDS_LIVE);
    let cut = asked && message.desk.phrases.holds("one-cord", "cut", text);
    if !has_number
        || cut
        || mends
        || of_a_clock
        || heard.ask.is_some()
        || heard.command.is_some()
        || is_question(text)
    {
        return None;
    }
    if let Some(turned) = message.desk.values.turned(message) {
        return Some(turned);
    }
    let place = started(message).or_else(|| waiting(message))?;
    let values = &message.desk.values;
    if values.answers_alone(&place, text) || tells_of_another(message, &place.unit) {
        return None;
    }
    let lines: Vec<String> = text
        .lines()
        .map(|line| Line::of(line, values, &place).written_out(message.fleet))
        .collect::<Option<_>>()?;
    let mut whole = lines.join("\n");
    if !names(&whole, &place.unit) {
        whole = format!("unit {}: {whole}", place.unit);
    }
    let again = message
        .desk
        .reader
        .hear(&whole, message.fleet.style.temperature);
    let known = |entry: &Entry| {
        let name = entry.unit.as_ref()?;
        settle::known(message.fleet, name)
    };
    let ours = |entry: &&Entry| known(entry).is_none_or(|unit| *unit == place.unit);
    let all_ours = again
        .entries
        .iter()
        .all(|entry| known(entry) == Some(&place.unit));
    let told = |heard: &Heard| -> Vec<Entry> {
        let ours = heard.entries.iter().filter(ours);
        ours.map(|entry| Entry {
            unit: None,
            ..entry.clone()
        })
        .collect()
    };
    let weight = |told: &[Entry]| told.iter().map(weight).sum::<usize>();
    let (before, after) = (told(heard), told(&again));
    let better = weight(&after) > 0 && weight(&after) >= weight(&before) && after != before;
    (all_ours && better && again.unclear.len() <= heard.unclear.len()).then_some(whole)
}

/// "guest fell at 12": tells whether something happened at another trailer than the one that is gone through; its number is
/// no value. "level at 4" may be one.
fn tells_of_another(message: &Texted<'_>, unit: &UnitName) -> bool {
    let levels = |entry: &Entry| entry.events == [Event::Leveled] && entry.faults.is_empty();
    message.heard.entries.iter().any(|entry| {
        let another = entry.unit.as_ref().is_some_and(|name| {
            settle::known(message.fleet, name).is_some_and(|known| known != unit)
        });
        let happened = !entry.events.is_empty() || !entry.faults.is_empty();
        another && happened && !levels(entry)
    })
}

/// Tells whether a message is a number behind "no" or "wait no": it mends the number before it, and answers no step.
fn takes_back(message: &Texted<'_>) -> bool {
    let phrases = &message.desk.phrases;
    let after = phrases.after("mend", "opens", message.text);
    let marked = after.filter(|rest| {
        let head = &message.text[..message.text.len() - rest.len()];
        !phrases.is("mend", "weak", head)
    });
    let right = marked.or_else(|| phrases.after("mend", "no", message.text));
    right.is_some_and(|right| Word::of(right.trim()).number().is_some())
}

/// Finds the trailer whose arrival or leaving the message itself reports.
fn started(message: &Texted<'_>) -> Option<Place> {
    let place = |name: &UnitName, way| {
        let unit = settle::known(message.fleet, name)?.clone();
        Some(Place {
            unit,
            way,
            step: None,
        })
    };
    let goes = |entry: &&Entry| {
        let says = |event| entry.events.contains(&event);
        says(Event::Arrived) || says(Event::Hitched) || says(Event::Left)
    };
    if let Some(entry) = message.heard.entries.iter().find(goes) {
        let way = match entry.events.contains(&Event::Arrived) {
            true => Way::SetUp,
            false => Way::Leaving,
        };
        return place(entry.unit.as_ref()?, way);
    }
    let leaves = message.desk.phrases.holds("leave", "says", message.text);
    place(
        message.heard.named.first().filter(|_| leaves)?,
        Way::Leaving,
    )
}

/// Finds the step that waits for this person, unless something else was asked since.
fn waiting(message: &Texted<'_>) -> Option<Place> {
    let round = message.talk.round.as_ref()?;
    let at = message.at;
    let fresh = at >= round.asked && at - round.asked <= STEP_LASTS;
    let asked_since = message
        .talk
        .question_at(at)
        .is_some_and(|question| question.asked > round.asked)
        || message
            .talk
            .checks
            .last()
            .is_some_and(|check| check.asked >= round.asked);
    (fresh && !asked_since).then(|| Place {
        unit: round.unit.clone(),
        way: round.way,
        step: Some(round.step.clone()),
    })
}

/// Counts what an entry reports.
fn weight(entry: &Entry) -> usize {
    let live = usize::from(entry.readings.circuits_live.is_some());
    let numbers = entry.readings.values.len() + entry.readings.amps.len() + live;
    numbers + entry.events.len() + entry.faults.len() + entry.cleared.len()
}

/// Tells whether a text names a trailer at its head.
fn names(text: &str, unit: &UnitName) -> bool {
    let text = plain(text);
    let mut words = text.split(' ').take(2);
    words.any(|word| word == plain(unit.as_str()))
}

/// A word of a message, as written and folded, and whether a sign ends its clause.
struct Word<'a> {
    raw: &'a str,
    plain: String,
    ends: bool,
}

impl Word<'_> {
    fn of(raw: &str) -> Word<'_> {
        let ends = raw.ends_with([',', ';', ':', '.', '!']);
        let plain = plain(raw);
        Word { raw, plain, ends }
    }

    fn is_in(&self, list: &[String]) -> bool {
        list.contains(&self.plain)
    }

    /// Returns the number that the word is, and whether a percent sign stands with it.
    fn number(&self) -> Option<(f64, bool)> {
        let digits = self.digits();
        let clean = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',');
        let value = digits.replace(',', ".").parse().ok();
        let percent = self.raw.contains('%');
        Some((value.filter(|_| digits.chars().all(clean))?, percent))
    }

    fn digits(&self) -> &str {
        let signs = |c| matches!(c, ',' | ';' | ':' | '!' | '.' | '(' | ')' | '~' | '@' | '%');
        self.raw.trim_matches(signs)
    }

    fn sign(&self) -> &'static str {
        if self.ends { "," } else { "" }
    }
}

/// A line of a message, in words.
struct Line<'a> {
    values: &'a Values,
    place: &'a Place,
    words: Vec<Word<'a>>,
}

impl<'a> Line<'a> {
    fn of(text: &'a str, values: &'a Values, place: &'a Place) -> Line<'a> {
        let words = text.split_whitespace().map(Word::of).collect();
        Line {
            values,
            place,
            words,
        }
    }

    fn before(&self, at: usize) -> Option<&Word<'a>> {
        self.words.get(at.checked_sub(1)?)
    }

    fn is_in(&self, list: &[String], at: usize) -> bool {
        self.words.get(at).is_some_and(|word| word.is_in(list))
    }

    /// Finds the trailer that a word names: at the head of the line, or behind a word that leads one in.
    fn trailer<'f>(&self, at: usize, fleet: &'f Fleet) -> Option<&'f UnitName> {
        let leads = |word: &Word<'_>| word.is_in(&self.values.trailers);
        let heads = at == 0 || self.before(at).is_some_and(leads);
        let counts =
            self.is_in(&self.values.cords, at + 1) || self.is_in(&self.values.measures, at + 1);
        let name = UnitName::new(&self.words[at].plain);
        settle::known(fleet, &name).filter(|_| heads && !counts)
    }

    /// Writes the line out; none where it speaks of another trailer.
    fn written_out(&self, fleet: &Fleet) -> Option<String> {
        let mut out: Vec<String> = Vec::new();
        for (at, word) in self.words.iter().enumerate() {
            match self.trailer(at, fleet) {
                Some(unit) if *unit == self.place.unit => {
                    out.push(word.raw.to_owned());
                    continue;
                }
                Some(_) => return None,
                None => {}
            }
            self.write(at, &mut out);
        }
        Some(out.join(" "))
    }

    fn write(&self, at: usize, out: &mut Vec<String>) {
        let word = &self.words[at];
        let Some((number, percent)) = word.number() else {
            let circuit = at >= 2 && self.is_in(&self.values.names, at - 2);
            if circuit && word.is_in(&self.values.first) {
                out.push(format!("live{}", word.sign()));
                return;
            }
            out.push(word.raw.to_owned());
            let counted = self
                .before(at)
                .is_some_and(|before| before.number().is_some());
            if counted && word.is_in(&self.values.cords) {
                part(out);
            }
            return;
        };
        if self
            .before(at)
            .is_some_and(|before| before.is_in(&self.values.settings))
        {
            out.push(format!("fitted{}", word.sign()));
        } else if self.is_in(&self.values.cords, at + 1) {
            part(out);
            out.push(word.raw.to_owned());
        } else if let Some(value) = self.value(at, number, percent) {
            let stands_by_its_word = self
                .before(at)
                .is_some_and(|before| before.is_in(&value.words));
            if !value.before.is_empty() || !stands_by_its_word {
                part(out);
            }
            let runs = self
                .words
                .iter()
                .any(|word| word.is_in(&self.values.running));
            let at_step = match self.place.step.is_some() && !runs {
                true => value.at_step.as_str(),
                false => "",
            };
            let (before, after) = (&value.before, &value.after);
            out.push(format!(
                "{before}{}{after}{at_step}{}",
                word.digits(),
                word.sign()
            ));
        } else {
            out.push(word.raw.to_owned());
        }
    }

    /// Finds what a number stands for: by the last word before it in its clause that names a value, by the word behind
    /// it, by a word of the clauses before, else by the step. None where it is a name, has its measure, or counts.
    fn value(&self, at: usize, number: f64, percent: bool) -> Option<&'a Value> {
        let values = self.values;
        let named = self
            .before(at)
            .is_some_and(|before| before.is_in(&values.names) || before.number().is_some());
        let word = &self.words[at];
        let next = self.words.get(at + 1).filter(|_| !word.ends);
        let known = |word: &Word<'_>| values.value.iter().any(|value| word.is_in(&value.words));
        let alone = next.is_none_or(|next| {
            next.is_in(&values.loose) || next.is_in(&values.running) || known(next)
        });
        // "packing up 12": its own name behind other words, and no slope
        let its_name = at > 0
            && word.plain == plain(self.place.unit.as_str())
            && !self.before(at).is_some_and(known);
        if named || its_name || !alone {
            return None;
        }
        let fits = |value: &&Value| {
            value.way == self.place.way
                && value.believes(number)
                && (!percent || value.after == "%")
        };
        let of = |word: &Word<'_>| {
            values
                .value
                .iter()
                .find(|value| word.is_in(&value.words))
                .filter(fits)
        };
        let head = &self.words[..at];
        let clause = head
            .iter()
            .rposition(|word| word.ends)
            .map_or(0, |end| end + 1);
        let before = || head[clause..].iter().rev().find_map(of);
        let earlier = || head[..clause].iter().rev().find_map(of);
        let by_step = || values.by_step(self.place).filter(fits);
        // nothing else of setting up is so large a number
        let by_size = || {
            let large = |value: &&Value| {
                value
                    .sure
                    .is_some_and(|(from, to)| (from..=to).contains(&number))
            };
            values.value.iter().filter(fits).find(large)
        };
        before()
            .or_else(|| next.and_then(of))
            .or_else(earlier)
            .or_else(by_step)
            .or_else(by_size)
    }
}

/// Ends the clause before what follows.
fn part(out: &mut [String]) {
    if let Some(last) = out.last_mut()
        && !last.ends_with([',', ';', ':', '.'])
    {
        last.push(',');
    }
}
