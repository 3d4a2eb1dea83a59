//! Trucks that a message says are called, or wants called: "truck for 12 comes at 19:00", "pídeme un camión para la 6 a
//! las 8", two of them in one message.
//!
//! The reader finds one time a sentence. Which trailer gets which truck is told by how trailers and times follow each
//! other, and that takes the fleet: "at 8" is an hour, and the trailer 8 stands in the same yard.

use chrono::{DateTime, TimeDelta, Utc};
use chrono_tz::Tz;

use super::super::phrases::{Phrases, is_marked, plain};
use super::marks::{Mark, marks, pairs};
use super::noted;
use super::says::{is_late, is_off, is_told_of};
use super::work::is_there_now;
use crate::book::Stage;
use crate::desk::receive::Hearing;
use crate::desk::{answer, when};
use crate::heard::{Entry, Event, Fault, Heard, Need, Plan, PlanKind, ReadingKey, UnitName};

/// What a message says of trucks to come.
pub(in crate::desk) enum Coming {
    /// Trucks, each with its trailer and its time as far as they are told; and whether every number is told by them.
    Trucks(Vec<Plan>, bool),
    /// Trailers and times of which nobody can say which goes with which.
    Muddled,
}

/// Reads what a message says of trucks to come; none where it says nothing of them, or of one that is off or late.
pub(in crate::desk) fn coming(hearing: &Hearing<'_>) -> Option<Coming> {
    let (phrases, text, heard) = (&hearing.desk.phrases, hearing.text, &hearing.heard);
    let says = |list| phrases.holds("truck", list, text);
    let other = [
        "other",
        "not",
        "unanswered",
        "past",
        "here",
        "left",
        "trouble",
        "working",
    ];
    let bare = is_bare_wish(hearing);
    if !(says("who") || bare)
        || heard.ask.is_some()
        || is_off(phrases, text)
        || heard.command.is_some()
        || other.into_iter().any(says)
        || is_marked(text)
        || is_there_now(phrases, &hearing.fleet, text).is_some()
        || answer::is_question(hearing)
    {
        return None;
    }
    // "pump runs but nothing comes out": the trailer's own
    let of_its_own = |entry: &Entry| {
        let faults = [
            Fault::NoWater,
            Fault::LowFlow,
            Fault::PumpDead,
            Fault::PumpRunning,
        ];
        faults.iter().any(|fault| entry.faults.contains(fault))
    };
    let others = phrases.without("truck", "pump-alone", text);
    if heard.entries.iter().any(of_its_own) && !phrases.holds("truck", "who", &others) {
        return None;
    }
    // one that was called before and now comes at another time is moved, not booked
    if is_late(phrases, text) && noted(hearing).is_some() {
        return None;
    }
    // a trailer that is 40 minutes out is no truck
    let under_way = |entry: &Entry| entry.readings.values.contains_key(&ReadingKey::EtaMin);
    let of_a_pump_truck = says("pumps") || says("for") || says("phoned") || stands(hearing);
    if heard.entries.iter().any(under_way) && !of_a_pump_truck {
        return None;
    }
    let piece = match bare {
        true => text,
        false => of_the_truck(hearing)?,
    };
    let (mut marks, whole) = marks(hearing, piece);
    let wanted = bare || is_wanted(phrases, text);
    // "two trucks for 12, one at 8 one at 9": the board keeps one a trailer
    let units = marks.iter().filter(|mark| matches!(mark, Mark::Unit(_)));
    if says("several") && units.count() == 1 && marks.len() > 2 {
        return Some(Coming::Muddled);
    }
    let clock = marks.iter().any(|mark| matches!(mark, Mark::At(_)));
    let timed = marks.iter().any(|mark| !matches!(mark, Mark::Unit(_)));
    if wanted && !clock && at_once(phrases, piece) {
        let soon = hearing.now + AT_ONCE;
        marks.push(Mark::At(local(soon, zone(hearing))));
    }
    if !(wanted || says("called") || timed) {
        return None;
    }
    let need = match says("water") {
        true => Need::Refill,
        false => Need::PumpOut,
    };
    let Some(pairs) = pairs(&marks) else {
        return Some(Coming::Muddled);
    };
    let reported = match heard.entries.as_slice() {
        [Entry { unit, .. }] => unit.clone(),
        _ => None,
    };
    // "hauler says 9:30": of the truck that was called, whatever was spoken of since
    let quotes = !wanted && says("quotes");
    let quoted = quotes.then(|| noted(hearing)?.unit.clone()).flatten();
    let spoken = spoken(piece);
    let words = words_in(&spoken);
    // "tomorrow" said of one of two trucks is not said of the other
    let several = pairs.len() > 1;
    let text_of = |unit: Option<&UnitName>| {
        let named = |word: &&str| unit.is_some_and(|unit| UnitName::new(word) == *unit);
        let place = words.iter().position(named).filter(|_| several);
        place.map_or_else(|| text.trim().to_owned(), |at| words_about(&words, at))
    };
    let plans = pairs.into_iter().map(|(unit, at)| Plan {
        text: text_of(unit.as_ref()),
        unit: unit.or_else(|| reported.clone()).or_else(|| quoted.clone()),
        kind: match wanted {
            true => PlanKind::Need { need, by: at },
            false => PlanKind::Booked { need, at },
        },
    });
    Some(Coming::Trucks(plans.collect(), whole))
}

/// What is wanted at once is wanted by then: a clock time that is still to come.
const AT_ONCE: TimeDelta = TimeDelta::minutes(1);

/// Tells whether a message asks for trucks, and of none says that it is called.
fn is_wanted(phrases: &Phrases, text: &str) -> bool {
    let says = |list| phrases.holds("truck", list, text);
    !says("phoned") && (says("request") || says("wanted") || wants_before(phrases, text))
}

/// Tells whether a message is work of a truck with its trailers and a time and nothing else, of which nobody says that it is
/// called: "pumpout on 23 pls by 8", "vaciado para la 23 a las 8". That is a wish; so is "truck for 12 by 7".
fn is_bare_wish(hearing: &Hearing<'_>) -> bool {
    let (phrases, text) = (hearing.desk.phrases, hearing.text);
    let says = |list| phrases.holds("truck", list, text);
    let work = says("work");
    if says("called") || !(work || says("who") && says("deadline")) {
        return false;
    }
    let spoken = plain(&spoken(text));
    let rest = phrases.without("truck", "work", &spoken);
    let rest = phrases.without("truck", "who", &rest);
    let digits = |word: &str| word.starts_with(|c: char| c.is_ascii_digit());
    let mut words = rest.split(' ').filter(|word| !word.is_empty());
    let beside = |word: &str| digits(word) || phrases.is("truck", "beside-a-wish", word);
    let numbers = rest.split(' ').filter(|word| digits(word)).count();
    words.all(beside) && numbers > 1
}

/// The most words between what wants a truck and the truck: "get me two more pump trucks".
const NEAR: usize = 3;

/// Tells whether a word of wanting stands shortly before one for a truck.
fn wants_before(phrases: &Phrases, text: &str) -> bool {
    let mut rest = text;
    while let Some(behind) = phrases.following("truck", "wants", rest) {
        let words: Vec<&str> = behind.split_whitespace().collect();
        let near = |gap| words.len() > gap && is_truck(phrases, &words[gap..]);
        if (0..=NEAR).any(near) {
            return true;
        }
        rest = behind;
    }
    false
}

fn is_truck(phrases: &Phrases, words: &[&str]) -> bool {
    phrases.after("truck", "who", &words.join(" ")).is_some()
}

/// Tells whether a truck is wanted now: it is said behind the truck, and no reading's "now".
fn at_once(phrases: &Phrases, piece: &str) -> bool {
    let behind = phrases.following("truck", "who", piece);
    behind.is_some_and(|behind| phrases.holds("need-by", "at-once", behind))
}

/// Tells whether the one trailer that is named stands at its site: then it is on no road.
fn stands(hearing: &Hearing<'_>) -> bool {
    let names = hearing.names();
    let [unit] = names.as_slice() else {
        return false;
    };
    let stage = hearing.desk.book.unit(unit);
    let stage = stage.map(|kept| kept.state().stage());
    stage.is_some_and(Stage::is_on_site)
}

/// Tells whether somebody wants the bot to call, which it cannot.
pub(in crate::desk) fn wants_a_call(hearing: &Hearing<'_>) -> bool {
    let says = |list| hearing.desk.phrases.holds("truck", list, hearing.text);
    says("who") && says("order")
}

/// Puts what was read here in the place of what the reader made of it, and drops its doubts about the same numbers.
pub(in crate::desk) fn put(heard: &mut Heard, coming: &Coming) {
    let told_of_one = |plan: &Plan| match &plan.kind {
        PlanKind::Booked { need, .. } | PlanKind::Need { need, .. } => of_a_truck(*need),
        PlanKind::Other | PlanKind::OnTheRoad => true,
        _ => false,
    };
    heard.plans.retain(|plan| !told_of_one(plan));
    // "40 min out" was the truck's time, and not the trailer's
    let of_the_truck = |entry: &Entry| {
        let mut keys = entry.readings.values.keys();
        !entry.readings.values.is_empty() && keys.all(|key| *key == ReadingKey::EtaMin)
    };
    heard.entries.retain(|entry| !of_the_truck(entry));
    // "vaciado para la 23 a las 8" is wanted, and not done
    if let Coming::Trucks(plans, _) = coming {
        let wanted = |unit: &Option<UnitName>| {
            let of = |plan: &&Plan| plan.unit == *unit || unit.is_none();
            let mut plans = plans.iter().filter(of);
            plans.any(|plan| matches!(plan.kind, PlanKind::Need { .. }))
        };
        heard.entries.retain(|entry| {
            let only = entry.events == [Event::WastePumped] && entry.readings.is_empty();
            !(only && entry.faults.is_empty() && wanted(&entry.unit))
        });
    }
    let (plans, whole) = match coming {
        Coming::Trucks(plans, whole) => (plans.as_slice(), *whole),
        Coming::Muddled => (&[][..], true),
    };
    if whole && heard.entries.iter().all(Entry::is_empty) {
        heard.unclear.clear();
        heard.set_aside.clear();
    }
    heard.plans.extend(plans.iter().cloned());
}

/// Drops what the reader took for an order of a truck where the message says that one is off or late, but for another one
/// that is asked for beside it.
pub(in crate::desk) fn put_off(hearing: &mut Hearing<'_>) {
    let phrases = hearing.desk.phrases;
    // "truck for 23 came but left without pumping": the truck left
    let says = |list| phrases.holds("truck", list, hearing.text);
    if says("who") && says("leaves") && !says("other") {
        for entry in &mut hearing.heard.entries {
            entry.events.retain(|event| *event != Event::Left);
        }
        hearing.heard.entries.retain(|entry| !entry.is_empty());
    }
    if !is_told_of(phrases, hearing.text) {
        return;
    }
    // "the truck for 12 isn't coming, need another one by 9"
    let mut pieces = hearing.text.split([',', ';', '.', '\n']);
    let another = pieces.any(|piece| {
        phrases.holds("truck", "request", piece)
            && !is_off(phrases, piece)
            && !is_late(phrases, piece)
    });
    hearing.heard.plans.retain(|plan| match plan.kind {
        PlanKind::Booked { need, .. } => !of_a_truck(need),
        PlanKind::Need { need, .. } => another || !of_a_truck(need),
        _ => true,
    });
    // the hour it comes at is told of the truck, or asked: "se atrasa, 3"
    if is_late(phrases, hearing.text) && hearing.heard.entries.iter().all(Entry::is_empty) {
        hearing.heard.unclear.clear();
    }
    // "flat tire on the pump truck": no trailer's
    if hearing.names().is_empty() && phrases.holds("truck", "pumps", hearing.text) {
        for entry in &mut hearing.heard.entries {
            entry.faults.retain(|fault| *fault != Fault::Tire);
        }
        hearing.heard.entries.retain(|entry| !entry.is_empty());
    }
}

fn of_a_truck(need: Need) -> bool {
    matches!(need, Need::PumpOut | Need::Refill)
}

/// Returns the part of a message that is about the truck: all of it, or what follows a report of something else.
fn of_the_truck<'a>(hearing: &Hearing<'a>) -> Option<&'a str> {
    let text = hearing.text;
    let of_the_way =
        |entry: &Entry| entry.is_empty() || entry.readings.values.keys().eq([&ReadingKey::EtaMin]);
    if hearing.heard.entries.iter().all(of_the_way) {
        return Some(text);
    }
    let breaks = text.match_indices([',', ';', '.', '\n']);
    let starts = std::iter::once(0).chain(breaks.map(|(at, _)| at + 1));
    let about = |piece: &str| {
        let says = |list| hearing.desk.phrases.holds("truck", list, piece);
        says("who") || says("called")
    };
    let mut tails = starts.map(|at| &text[at..]);
    // the first piece that begins to speak of the truck, and all behind it
    let tail = tails.find(|tail| {
        let head = tail.split([',', ';', '.', '\n']).next().unwrap_or(tail);
        about(head)
    })?;
    // readings behind the truck would lend their trailers to it
    let (units, _) = marks(hearing, tail);
    let units = units.iter().filter(|mark| matches!(mark, Mark::Unit(_)));
    (units.count() <= 1).then_some(tail)
}

/// Words between what is said of one truck and of the next.
const BREAKS: &[&str] = &["and", "y", "then", "plus"];
/// Words by which a time is today's.
const TODAY: &[&str] = &["today", "tonight", "tonite", "hoy", "noche"];

/// Writes a text so that what is told of several trucks is parted by words alone.
pub(super) fn spoken(text: &str) -> String {
    let halves = colons(&when::with_halves_joined(text)).replace('@', " at ");
    let mut spoken = format!(" {halves} ");
    let phrases = Phrases::built_in();
    for (list, minutes) in [("hour-and-a-half", 90), ("half-an-hour", 30), ("hour", 60)] {
        for length in phrases.each("truck", list) {
            spoken = spoken.replace(&format!(" {length} "), &format!(" {minutes} min "));
        }
    }
    let parted = |text: String, mark: &str| text.replace(mark, " and ");
    [", ", ";", "&", "\n"].into_iter().fold(spoken, parted)
}

/// Writes "7.30" as the clock time it is among trailers and hours.
fn colons(text: &str) -> String {
    let clock = |word: &str| {
        let (hour, minute) = word.split_once('.')?;
        let told = hour.parse::<u32>().is_ok_and(|hour| hour < 24) && hour.len() <= 2;
        let digits = minute.get(..2)?.chars().all(|c| c.is_ascii_digit());
        let ends = minute[2..].chars().all(|c| c.is_alphabetic());
        (told && digits && ends).then(|| format!("{hour}:{minute}"))
    };
    let words = text
        .split(' ')
        .map(|word| clock(word).unwrap_or_else(|| word.to_owned()));
    words.collect::<Vec<_>>().join(" ")
}

pub(super) fn words_in(spoken: &str) -> Vec<&str> {
    let apart = |c: char| c.is_whitespace() || ",()".contains(c);
    let bare = |word: &'_ str| -> usize {
        let word = word.trim_end_matches(['.', ':', '!']);
        word.trim_end_matches("'s").len()
    };
    let words = spoken.split(apart).map(|word| &word[..bare(word)]);
    words.filter(|word| !word.is_empty()).collect()
}

/// Returns the part of a message, word by word, that a word stands in, and the parts before and behind it.
pub(super) fn parts<'a, 'w>(words: &'a [&'w str], at: usize) -> (usize, Vec<&'a [&'w str]>) {
    let parts: Vec<&[&str]> = words.split(|word| BREAKS.contains(word)).collect();
    let mut end = 0;
    let own = parts.iter().position(|part| {
        end += part.len() + 1;
        at < end
    });
    (own.unwrap_or_default(), parts)
}

/// Returns the day that is said of the truck that a word is about, empty for today: the one in the same part of the
/// message, else one before it, else one behind it where that part tells no time of its own, or the own part none.
pub(super) fn day_about(words: &[&str], at: usize) -> String {
    let (own, parts) = parts(words, at);
    let day = |part: &&[&str]| match part.iter().any(|word| TODAY.contains(word)) {
        true => Some(String::new()),
        false => when::day_word(&part.join(" ")),
    };
    let numbers = |part: &[&str]| {
        let number = |word: &&&str| word.starts_with(|c: char| c.is_ascii_digit());
        part.iter().filter(number).count()
    };
    let before = || parts[..own].iter().rev().find_map(day);
    let shared = |part: &&&[&str]| numbers(part) == 0 || numbers(parts[own]) < 2;
    let behind = || parts[own + 1..].iter().filter(shared).find_map(day);
    let found = parts.get(own).and_then(day);
    found.or_else(before).or_else(behind).unwrap_or_default()
}

/// Returns the words that are about the truck of a trailer, with their day.
fn words_about(words: &[&str], at: usize) -> String {
    let (own, parts) = parts(words, at);
    let told = parts
        .get(own)
        .map_or_else(String::new, |part| part.join(" "));
    match when::names_a_day(&told) {
        true => told,
        false => format!("{told} {}", day_about(words, at)),
    }
}

pub(super) fn zone(hearing: &Hearing<'_>) -> Tz {
    let named = hearing.names();
    hearing.fleet.zone_at(named.first(), hearing.now)
}

pub(super) fn local(at: DateTime<Utc>, zone: Tz) -> String {
    at.with_timezone(&zone).format("%H:%M").to_string()
}
