//! A text as the desk hears it: what the reader makes of it, and the dangers told in ways that take the fleet and the crew to
//! know, or that the reader leaves open.

use std::borrow::Cow;

use super::super::others::called;
use super::super::phrases::{Phrases, plain};
use super::super::{answer, hazard, settle};
use super::meaning::Came;
use crate::fleet::{Fleet, Role};
use crate::heard::{Entry, Event, Fault, Heard, Remark, UnitName};
use crate::quantity::TemperatureScale;

impl Came<'_> {
    /// Hears a text as the reader does, and the dangers that only the desk knows of: it knows the trailers and the crew.
    pub(super) fn hear(&self, text: &str) -> Heard {
        let scale = self.fleet.style.temperature;
        let owned = self.owned(text);
        let text = owned.as_deref().unwrap_or(text);
        let circuit = self.circuit_named(text);
        let text = circuit.as_deref().unwrap_or(text);
        let placed = self.placed_outside(text);
        let text = placed.as_deref().unwrap_or(text);
        let mut heard = self.desk.reader.hear(text, scale);
        let counted = self.counted(text, &heard);
        let text = counted.as_deref().unwrap_or(text);
        if counted.is_some() {
            heard = self.desk.reader.hear(text, scale);
        }
        if heard.command.is_none() {
            self.dangers_all_the_same(text, &mut heard);
            self.dangers_of_an_earlier_day(text, &mut heard);
            self.dangers_beside_a_question(text, &mut heard);
            self.all_dead(text, &mut heard);
            self.crew_hurt(text, &mut heard);
            self.without_idioms(text, &mut heard);
            self.without_other_openings(text, &mut heard);
            self.aboard_on_the_road(text, &mut heard);
        }
        // "12 parked at home" for the night
        let at_home = self.desk.phrases.holds("home", "says", text);
        if at_home || self.desk.answers.tells_of_an_order(text) {
            // it is the fire service or the police who arrived
            for entry in &mut heard.entries {
                entry.events.retain(|event| *event != Event::Arrived);
            }
            heard.entries.retain(|entry| !entry.is_empty());
        }
        heard
    }

    /// "does anyone else smell smoke at 12", "is it normal that the plug is smoking": who asks about a danger that they perceive
    /// tells of it. Returns what is told so; none where nothing is, and of a dispatcher, who is not there.
    pub(super) fn perceived(&self) -> Option<String> {
        let (phrases, text) = (self.desk.phrases, self.text.trim());
        if self.member.role == Role::Dispatcher || phrases.holds("perceived", "not", text) {
            return None;
        }
        let sensed = || {
            let rest = phrases.after("perceived", "of-the-senses", text)?;
            phrases
                .opens("perceived", "senses", &plain(rest))
                .then_some(rest)
        };
        let found = || phrases.following("perceived", "found", text);
        let rest = phrases.after("perceived", "opens", text);
        let rest = rest.or_else(sensed).or_else(found)?;
        let rest = rest.trim_end_matches(['?', '!', ' ']);
        // a name before the question stays the place of what is told
        let (first, _) = text.split_once(' ')?;
        let named = settle::known(self.fleet, &UnitName::new(first)).is_some();
        let told = match named {
            true => format!("{first} {rest}"),
            false => rest.to_owned(),
        };
        let scale = self.fleet.style.temperature;
        let heard = self.desk.reader.hear_dangers(&told, scale);
        (heard.ask.is_none() && (dangers_in(&heard) || hazard::is_danger_in(&told))).then_some(told)
    }

    /// "guest collapsed outside 23": where people are in danger the number is the trailer of the fleet that it names, and no
    /// temperature. Returns the text with the place said so that no air is read; none where nothing is meant so.
    fn placed_outside(&self, text: &str) -> Option<String> {
        let (phrases, scale) = (self.desk.phrases, self.fleet.style.temperature);
        let words: Vec<&str> = text.split_whitespace().collect();
        let is_name = |word: &str| {
            let bare = word.trim_end_matches(['.', ',', '!', '?', ':']);
            settle::known(self.fleet, &UnitName::new(bare)).is_some()
        };
        let placed = (1..words.len()).find_map(|at| {
            let from = at.saturating_sub(2)..at;
            let open = from
                .clone()
                .find(|from| phrases.is("place", "outside", &words[*from..at].join(" ")))?;
            let measured = words
                .get(at + 1)
                .is_some_and(|next| phrases.is("place", "measured", next));
            (open > 0 && is_name(words[at]) && !measured).then_some((open, at))
        });
        let (open, at) = placed?;
        let before = words[..open].join(" ");
        let whole = format!("{before} at {}", words[at..].join(" "));
        let told =
            hazard::is_danger_in(&whole) || dangers_in(&self.desk.reader.hear(&before, scale));
        told.then_some(whole)
    }

    /// "4 toilets out of order", "snow run, 33 out": a number that is no trailer of the fleet counts what stands behind it, or
    /// is the air. Returns the text with the number so written that no trailer is read; none where there is none.
    fn counted(&self, text: &str, heard: &Heard) -> Option<String> {
        let phrases = self.desk.phrases;
        let unknown = |name: &UnitName| settle::known(self.fleet, name).is_none();
        let taken: Vec<&UnitName> = heard.named.iter().filter(|name| unknown(name)).collect();
        if taken.is_empty() {
            return None;
        }
        let words: Vec<&str> = text.split_whitespace().collect();
        let written = |at: usize| {
            let named = || taken.contains(&&UnitName::new(words[at]));
            let number: usize = words[at].parse().ok().filter(|_| named())?;
            let next = words.get(at + 1)?;
            let bare = next.trim_end_matches([',', '.', '!', ';', ':']);
            if phrases.is("counted", "things", bare) {
                return phrases
                    .each("counted", "numbers")
                    .nth(number)
                    .map(str::to_owned);
            }
            // the last of its clause
            let ends = bare.len() < next.len() || at + 2 == words.len();
            let out = ends && phrases.is("counted", "out", bare) && at > 0;
            let (degrees, scale) = match self.fleet.style.temperature {
                TemperatureScale::F => (21..=115, "F"),
                TemperatureScale::C => (13..=45, "C"),
            };
            (out && degrees.contains(&number)).then(|| format!("{number}{scale}"))
        };
        let (at, number) = (0..words.len()).find_map(|at| Some((at, written(at)?)))?;
        let start = words[at].as_ptr() as usize - text.as_ptr() as usize;
        let (before, rest) = text.split_at(start);
        Some(format!("{before}{number}{}", &rest[words[at].len()..]))
    }

    /// "passed out flyers", "on fire tonight, guests love it": a danger counts only where it is told beside such words, too.
    fn without_idioms(&self, text: &str, heard: &mut Heard) {
        let phrases = self.desk.phrases;
        if !phrases.holds("no-danger", "says", text) {
            return;
        }
        let rest = phrases.without("no-danger", "says", text);
        let scale = self.fleet.style.temperature;
        let rest = self.desk.reader.hear(&rest, scale).entries;
        let stands = |fault: &Fault| rest.iter().any(|entry| entry.faults.contains(fault));
        for entry in &mut heard.entries {
            entry
                .faults
                .retain(|fault| !Fault::DANGERS.contains(fault) || stands(fault));
        }
        heard.entries.retain(|entry| !entry.is_empty());
    }

    /// "Voy en camino con la 6 con negras a 3/4": that somebody drives is planned no more, and what is aboard is told of now.
    fn aboard_on_the_road(&self, text: &str, heard: &mut Heard) {
        let phrases = self.desk.phrases;
        let nothing = heard.entries.is_empty() && heard.ask.is_none() && !heard.named.is_empty();
        if !nothing || !phrases.holds("leave", "drives", text) {
            return;
        }
        let fraction = text.split_whitespace().find(|word| word.contains('/'));
        let level = |text: &str| {
            let rest = phrases.without("leave", "drives", text);
            // folding takes the stroke out of a level
            match fraction {
                Some(level) => rest.replace(&plain(level), level.trim_end_matches(['.', ',', '!'])),
                None => rest,
            }
        };
        let scale = self.fleet.style.temperature;
        let told = self.desk.reader.hear(&level(text), scale);
        let reads = |entry: &Entry| !entry.readings.is_empty() && entry.unit.is_some();
        if told.unclear.is_empty() && told.entries.iter().any(reads) {
            heard.entries = told.entries;
            heard.set_aside.clear();
        }
    }

    /// "12 closed the stall", "door blows open": a trailer is neither closed nor open by what is done to one thing of it.
    fn without_other_openings(&self, text: &str, heard: &mut Heard) {
        let of_opening = |event: &Event| matches!(event, Event::Closed | Event::InService);
        let mut entries = heard.entries.iter();
        if !entries.any(|entry| entry.events.iter().any(of_opening)) {
            return;
        }
        let is = |list, word: &str| self.desk.phrases.is("opening", list, word);
        let of_another = |clause: &str| -> Vec<bool> {
            let folded = plain(clause);
            let words: Vec<&str> = folded.split(' ').collect();
            let behind = |at: usize| words[at + 1..].iter().find(|word| !is("between", word));
            let before = |at: usize| words[..at].iter().rev().find(|word| !is("between", word));
            let is_thing = |word: Option<&&str>| word.is_some_and(|word| is("things", word));
            let openings = (0..words.len()).filter(|at| is("words", words[*at]));
            openings
                .map(|at| {
                    // "the door wont latch, wind keeps blowing it open"
                    let it = at > 0 && is("it", words[at - 1]);
                    let named = || words[..at].iter().any(|word| is("things", word));
                    is_thing(behind(at)) || is_thing(before(at)) || it && named()
                })
                .collect()
        };
        let clauses = text.split([',', '.', ';', '!', '\n']);
        let openings: Vec<bool> = clauses.flat_map(of_another).collect();
        if !openings.is_empty() && openings.iter().all(|another| *another) {
            for entry in &mut heard.entries {
                entry.events.retain(|event| !of_opening(event));
            }
            heard.entries.retain(|entry| !entry.is_empty());
        }
    }

    /// "think I smell gas in 12", "an hour ago a guest fell": a danger that is doubted or past is one to the desk, which
    /// sends nobody to have a look. What else is doubted stays so.
    fn dangers_all_the_same(&self, text: &str, heard: &mut Heard) {
        let doubts = |remark: &Remark| matches!(remark.why.as_str(), "doubt" | "which-unit");
        let past = heard.set_aside.iter().any(|remark| remark.why == "past");
        if !past && !heard.unclear.iter().any(doubts) {
            return;
        }
        let scale = self.fleet.style.temperature;
        let mut alarmed = self.desk.reader.hear_dangers(text, scale);
        // whoever hears of it is to know where
        let place = self.only_place(text);
        for entry in alarmed
            .entries
            .iter_mut()
            .filter(|entry| entry.unit.is_none())
        {
            entry.unit.clone_from(&place);
        }
        let is_danger = |fault: &Fault| Fault::DANGERS.contains(fault);
        let news = add_dangers(heard, alarmed.entries, is_danger);
        if news {
            heard
                .unclear
                .retain(|remark| alarmed.unclear.contains(remark));
            heard
                .set_aside
                .retain(|remark| alarmed.set_aside.contains(remark));
        }
    }

    /// Returns the one trailer of the fleet whose name is written in a text; none where several are, or a measure follows.
    fn only_place(&self, text: &str) -> Option<UnitName> {
        let words: Vec<&str> = text.split_whitespace().collect();
        let named = (0..words.len()).filter_map(|at| {
            let bare = words[at].trim_matches(|c: char| !c.is_alphanumeric() && c != '\'');
            let bare = bare.strip_suffix("'s").unwrap_or(bare);
            let unit = settle::known(self.fleet, &UnitName::new(bare))?;
            let next = words.get(at + 1);
            let measured = next.is_some_and(|next| self.desk.phrases.is("place", "measured", next));
            (!measured).then(|| unit.clone())
        });
        let mut named: Vec<UnitName> = named.collect();
        named.sort();
        named.dedup();
        named.pop().filter(|_| named.is_empty())
    }

    /// "plug on one of 5s cords": what belongs to a trailer of the fleet, written without its apostrophe. Returns the text with
    /// it; none where nothing is meant so: "low 20s".
    fn owned(&self, text: &str) -> Option<String> {
        let phrases = self.desk.phrases;
        let mut words: Vec<Cow<'_, str>> = text.split(' ').map(Cow::Borrowed).collect();
        let owns = |at: usize| {
            let name = words[at].strip_suffix('s')?;
            let digits = !name.is_empty() && name.chars().all(|c| c.is_ascii_digit());
            let known = settle::known(self.fleet, &UnitName::new(name)).is_some();
            let decade = at > 0 && phrases.is("place", "decades", &words[at - 1]);
            (digits && known && !decade && at + 1 < words.len()).then(|| format!("{name}'s"))
        };
        let found: Vec<(usize, String)> = (0..words.len())
            .filter_map(|at| Some((at, owns(at)?)))
            .collect();
        for (at, word) in &found {
            words[*at] = Cow::Owned(word.clone());
        }
        (!found.is_empty()).then(|| words.join(" "))
    }

    /// "12 reset breaker 3": the number behind a breaker is its circuit, where another word names the trailer or no trailer
    /// bears that number. Returns the text with it said so; none where nothing is meant so.
    fn circuit_named(&self, text: &str) -> Option<String> {
        let phrases = self.desk.phrases;
        let words: Vec<&str> = text.split_whitespace().collect();
        let bare = |word: &str| word.trim_end_matches([',', '.', '!', ';', ':']).to_owned();
        let is_known =
            |word: &str| settle::known(self.fleet, &UnitName::new(&bare(word))).is_some();
        let at = (1..words.len()).find(|at| {
            let number = bare(words[*at]);
            let circuit = matches!(number.as_str(), "1" | "2" | "3" | "4");
            circuit && phrases.is("place", "breaker", &plain(words[*at - 1]))
        })?;
        let mut others = words.iter().enumerate().filter(|(n, _)| *n != at);
        if is_known(words[at]) && !others.any(|(_, word)| is_known(word)) {
            return None;
        }
        let (before, after) = words.split_at(at);
        let hold = |list| {
            before
                .iter()
                .any(|word| phrases.is("place", list, &plain(word)))
        };
        let joined = match (hold("breaker-resets"), hold("breaker-resets-es")) {
            (true, _) => "on circuit",
            (false, true) => "del circuito",
            _ => return None,
        };
        Some(format!("{} {joined} {}", before.join(" "), after.join(" ")))
    }

    /// "12 dead, nothing works": no one thing of it is meant, but its power.
    fn all_dead(&self, text: &str, heard: &mut Heard) {
        let says = |list| self.desk.phrases.holds("all-dead", list, text);
        if heard.ask.is_some() || !says("says") || says("not") {
            return;
        }
        let unit = heard.named.first().cloned();
        match heard.entries.iter_mut().find(|entry| entry.unit == unit) {
            Some(entry) if entry.faults.contains(&Fault::NoPower) => {}
            Some(entry) => entry.faults.push(Fault::NoPower),
            None => heard.entries.push(Entry {
                unit,
                faults: vec![Fault::NoPower],
                ..Entry::default()
            }),
        }
    }

    /// "how do i reset the gfci and the lady just passed out": what is told beside a question is not asked.
    fn dangers_beside_a_question(&self, text: &str, heard: &mut Heard) {
        let Some(told) = answer::told_beside(text) else {
            return;
        };
        let scale = self.fleet.style.temperature;
        let mut told = self.desk.reader.hear_dangers(&told, scale).entries;
        if let [unit] = heard.named.as_slice() {
            // "12 can i tape it and someone got shocked": the one trailer that is named
            for entry in &mut told {
                entry.unit.get_or_insert_with(|| unit.clone());
            }
        }
        add_dangers(heard, told, |fault| Fault::DANGERS.contains(fault));
    }

    /// "juno fell": of somebody of the crew, whose name the reader does not know, it is what it is of anybody.
    fn crew_hurt(&self, text: &str, heard: &mut Heard) {
        let scale = self.fleet.style.temperature;
        for somebody in unnamed(self.desk.phrases, self.fleet, text) {
            let told = self.desk.reader.hear(&somebody, scale).entries;
            add_dangers(heard, told, |fault| fault.harms_a_person());
        }
    }
}

/// Tells whether a reading reports a danger.
pub(super) fn dangers_in(heard: &Heard) -> bool {
    let mut faults = heard.entries.iter().flat_map(|entry| &entry.faults);
    faults.any(|fault| Fault::DANGERS.contains(fault))
}

/// Adds such faults of these entries as are wanted and not heard already; tells whether there were any.
pub(super) fn add_dangers(
    heard: &mut Heard,
    told: Vec<Entry>,
    wanted: impl Fn(&Fault) -> bool,
) -> bool {
    let mut news = false;
    for entry in told {
        let ours = heard.entries.iter_mut().find(|our| our.unit == entry.unit);
        let known: &[Fault] = ours.as_ref().map_or(&[], |our| our.faults.as_slice());
        let mut faults = entry.faults;
        faults.retain(|fault| wanted(fault) && !known.contains(fault));
        if faults.is_empty() {
            continue;
        }
        news = true;
        match ours {
            Some(ours) => ours.faults.extend(faults),
            None => heard.entries.push(Entry {
                unit: entry.unit,
                when: entry.when,
                faults,
                ..Entry::default()
            }),
        }
    }
    news
}

/// Returns a text with each name of somebody of the crew in it replaced by a word for anybody, one name and one language at
/// a time.
fn unnamed(phrases: &Phrases, fleet: &Fleet, text: &str) -> Vec<String> {
    let is_name = |word: &str| {
        let bare = word.trim_end_matches(['.', ',', '!', ':']);
        called(fleet.crew.values(), bare).is_some()
    };
    let words: Vec<&str> = text.split(' ').collect();
    let mut texts = Vec::new();
    for n in (0..words.len()).filter(|n| is_name(words[*n])) {
        for anybody in phrases.each("hurt", "anybody") {
            let mut words = words.clone();
            words[n] = anybody;
            texts.push(words.join(" "));
        }
    }
    texts
}
