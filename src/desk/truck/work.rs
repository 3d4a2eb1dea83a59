//! A pump truck that is there, or has gone.

use super::again::{pump_outs_of, units_in};
use super::noted;
use crate::book::{Stage, TaskChange};
use crate::desk::answer::Reply;
use crate::desk::gallons::{self, Amount};
use crate::desk::phrases::{Phrases, is_marked, plain};
use crate::desk::receive::{Hearing, Texted};
use crate::desk::settle::{self, Settled};
use crate::desk::when;
use crate::dialogue::About;
use crate::finding::TaskKind;
use crate::fleet::Fleet;
use crate::heard::{Entry, Event, ReadingKey, UnitName};

/// Takes "truck for 12 is here" for the truck's arrival and not the trailer's, where the trailer stands there already.
pub(in crate::desk) fn has_come(hearing: &Hearing<'_>, settled: &mut Settled) -> Option<UnitName> {
    let says = |list| hearing.desk.phrases.holds("truck", list, hearing.text);
    let late = super::says::is_late_indeed(hearing.desk.phrases, hearing.text);
    // "truck is at 23" says where it is, "truck is at 18:30 for 23" when it comes
    let at = hearing.desk.phrases.following("truck", "at", hearing.text);
    let at = at.and_then(|rest| {
        let name = UnitName::new(rest.trim_end_matches(['.', '!', ',']));
        settle::known(&hearing.fleet, &name).cloned()
    });
    let at = at.or_else(|| is_there_now(hearing.desk.phrases, &hearing.fleet, hearing.text));
    // "the truck has not arrived" holds the word for one that has
    let away = says("absent") || super::says::is_off(hearing.desk.phrases, hearing.text);
    let here = says("here") || at.is_some();
    // "ya llego" behind a truck that was called is the truck
    let bare =
        hearing.desk.phrases.is("truck", "came-bare", hearing.text) && noted(hearing).is_some();
    let here = here || bare;
    if !(says("who") || bare) || !here || away || says("other") || late || says("not") {
        return None;
    }
    // "la pipa sigue bombeando la 12": it is at work, and the tank is not pumped yet
    let working = is_there_now(hearing.desk.phrases, &hearing.fleet, hearing.text);
    let pumping = |entry: &Entry| {
        let events = entry.events == [Event::WastePumped] || entry.events.is_empty();
        events && entry.readings.is_empty() && entry.faults.is_empty()
    };
    if let Some(unit) = working.filter(|unit| {
        let mut reports = settled.reports.iter();
        reports.all(|(of, _, entry)| of == unit && pumping(entry))
    }) {
        settled.reports.clear();
        settled.from_context = None;
        return Some(unit);
    }
    let only_arrives = |entry: &Entry| {
        entry.unit.is_none()
            && entry.events == [Event::Arrived]
            && entry.readings.is_empty()
            && entry.faults.is_empty()
    };
    // of several it is asked for which it is
    if matches!(hearing.asks, Some(About::WhichUnitOf { .. })) {
        return None;
    }
    // the trailer is named and nothing else is said, or only that something came
    let (unit, arrival) = match (settled.reports.as_slice(), hearing.heard.named.as_slice()) {
        ([], _) if let Some(unit) = at => (unit, true),
        ([(unit, _, entry)], _) => {
            let arrival = entry.events == [Event::Arrived]
                && entry.readings.is_empty()
                && entry.faults.is_empty()
                && entry.cleared.is_empty();
            (unit.clone(), arrival)
        }
        ([], [unit]) if hearing.heard.entries.is_empty() && hearing.heard.unclear.is_empty() => {
            (unit.clone(), hearing.heard.ask.is_none())
        }
        // "truck's here": the one that was called
        ([], [])
            if hearing.heard.entries.iter().all(only_arrives) && hearing.heard.ask.is_none() =>
        {
            let noted = noted(hearing).and_then(|task| task.unit.clone());
            let talked = || hearing.talk.unit_at(hearing.inbound.at).cloned();
            // one that was given up and comes all the same
            let only = || match pump_outs_of(hearing.desk, &hearing.member.id).as_slice() {
                [task] => task.unit.clone(),
                _ => None,
            };
            (noted.or_else(talked).or_else(only)?, true)
        }
        _ => return None,
    };
    let stands = stands(hearing, &unit);
    let task = hearing
        .desk
        .book
        .tasks()
        .open_task(&unit, TaskKind::PumpOut);
    // one that waits to be pumped is there
    if !arrival || !(stands || task.is_some() || says("pumps")) {
        return None;
    }
    settled.reports.clear();
    settled.homeless = None;
    settled.from_context = None;
    Some(unit)
}

/// Reads "truck at 12 now", "truck is there now, 12": the trailer at which it is, and no hour at which it comes.
pub(super) fn is_there_now(phrases: &Phrases, fleet: &Fleet, text: &str) -> Option<UnitName> {
    let says = |list| phrases.holds("truck", list, text);
    if !says("who") || is_marked(text) {
        return None;
    }
    let text = text.trim().trim_end_matches(['.', '!']);
    let named = |rest: &str| settle::known(fleet, &UnitName::new(rest.trim())).cloned();
    if let Some(rest) = phrases.following("truck", "at-bare", text)
        && let Some(unit) = phrases.before("truck", "now-behind", rest).and_then(named)
    {
        return Some(unit);
    }
    let [unit] = units_in(fleet, text).try_into().ok()?;
    (says("working") && when::clock_in(text).is_none()).then_some(unit)
}

/// Notes that the truck is there, so that nobody is told that it is late or not called.
pub(in crate::desk) fn note_here(hearing: &Hearing<'_>, unit: &UnitName, reply: &mut Reply<'_>) {
    let tasks = hearing.desk.book.tasks();
    let Some(task) = tasks.open_task(unit, TaskKind::PumpOut) else {
        return;
    };
    reply.adopt(task);
    let (id, by) = (task.id, hearing.member.id.clone());
    reply.board.change(TaskChange::Here { id, by });
}

/// What a message says of a truck that is done.
pub(in crate::desk) enum Work {
    /// It pumped: the report to read in the message's place.
    Pumped(String),
    /// It pumped one of several: which is asked.
    OneOf(Box<About>),
}

/// Reads "truck left, 380 gal" as the pump-out it tells of: of the trailer named, else of the one whose truck was called.
pub(in crate::desk) fn work_told(message: &Texted<'_>) -> Option<Work> {
    let Texted {
        desk,
        fleet,
        talk,
        heard,
        text,
        at,
        ..
    } = *message;
    if let Some(report) = went_well(message) {
        return Some(Work::Pumped(report));
    }
    if let Some(likely) = here_for_one_of(message) {
        return Some(Work::OneOf(Box::new(About::WhichUnitOf {
            text: text.trim().to_owned(),
            likely,
        })));
    }
    // "took 300, the rest at 22:00"
    if desk.phrases.following("pumped", "rest-at", text).is_some() {
        return None;
    }
    let says = |list| desk.phrases.holds("truck", list, text);
    let done = says("left") || says("took");
    let gone = says("who") && done && !says("other") && !says("water") && !says("not");
    // with other readings beside it the message is a report, and read as one
    let only_gallons = heard.entries.iter().all(|entry| {
        let mut keys = entry.readings.values.keys();
        let gallons = keys.all(|key| matches!(key, ReadingKey::PumpedGal | ReadingKey::WasteGal));
        gallons && entry.readings.amps.is_empty() && entry.faults.is_empty()
    });
    let pumped = heard
        .entries
        .iter()
        .any(|entry| entry.unit.is_some() && entry.events.contains(&Event::WastePumped));
    if !gone || !only_gallons || pumped || heard.ask.is_some() || heard.command.is_some() {
        return None;
    }
    let told = gallons_in(text).or_else(|| load_behind(message))?;
    // "truck hauled 12 to tollgate" tells of no gallons
    let is_a_trailer = settle::known(fleet, &UnitName::new(&told.number)).is_some();
    if is_a_trailer && !told.measured && !says("left") {
        return None;
    }
    let report = format!("pumped {} gal", told.gal);
    // "took 380 from 12"
    let mut named = units_in(fleet, &gallons::thousands_joined(text));
    named.retain(|unit| unit.as_str() != told.number);
    match named.as_slice() {
        [unit] => return Some(Work::Pumped(format!("{unit}: {report}"))),
        [] => {}
        _ => return None,
    }
    let tasks = desk.book.tasks().open();
    let called: Vec<UnitName> = tasks
        .filter(|task| task.kind == TaskKind::PumpOut && task.called.is_some())
        .filter_map(|task| task.unit.clone())
        .collect();
    match (talk.unit_at(at), called.as_slice()) {
        (Some(unit), called) if called.is_empty() || called.contains(unit) => {
            Some(Work::Pumped(format!("{unit}: {report}")))
        }
        (None, [unit]) => Some(Work::Pumped(format!("{unit}: {report}"))),
        (None, []) => Some(Work::Pumped(report)),
        (_, likely) => Some(Work::OneOf(Box::new(About::WhichUnitOf {
            text: report,
            likely: likely.to_vec(),
        }))),
    }
}

/// "Truck's here", where several were called: returns for which trailers.
fn here_for_one_of(message: &Texted<'_>) -> Option<Vec<UnitName>> {
    let phrases = message.desk.phrases;
    let says = |list| phrases.holds("truck", list, message.text);
    let away = says("absent") || super::says::is_off(phrases, message.text);
    let other = ["other", "not", "left", "took", "past"]
        .into_iter()
        .any(says);
    let named = !units_in(message.fleet, message.text).is_empty();
    let heard = message.heard;
    let only = heard.entries.iter().all(|entry| {
        entry.unit.is_none() && entry.events == [Event::Arrived] && entry.readings.is_empty()
    });
    let asks = heard.ask.is_some() || heard.command.is_some() || is_marked(message.text);
    if !says("who") || !says("here") || away || other || named || asks || !only {
        return None;
    }
    let tasks = message.desk.book.tasks().open();
    let called: Vec<UnitName> = tasks
        .filter(|task| task.kind == TaskKind::PumpOut)
        .filter(|task| task.called.is_some() && task.here.is_none())
        .filter_map(|task| task.unit.clone())
        .collect();
    (called.len() > 1).then_some(called)
}

/// Reads "the pump-out on 12 at 3 went fine" as the pump-out that was, at that hour: it books none.
fn went_well(message: &Texted<'_>) -> Option<String> {
    let (phrases, text) = (message.desk.phrases, message.text);
    let says = |list| phrases.holds("truck", list, text);
    let well = says("work") && says("fine") && !says("other") && !says("not");
    let heard = message.heard;
    let reports = heard.entries.iter().any(|entry| !entry.is_empty());
    if !well || reports || heard.ask.is_some() || heard.command.is_some() || is_marked(text) {
        return None;
    }
    let spoken = when::with_halves_joined(text);
    let folded = plain(&spoken);
    let words: Vec<&str> = folded.split(' ').collect();
    let hour = (1..words.len()).find(|at| {
        let mark = words[at - 1];
        let before = phrases.is("truck", "before-an-hour", mark) || when::is_hour_mark(mark);
        before && words[*at].starts_with(|c: char| c.is_ascii_digit())
    });
    let hour = hour.map(|at| words[at]);
    let mut named = units_in(message.fleet, &spoken);
    if named.len() > 1 {
        named.retain(|unit| Some(unit.as_str().to_lowercase().as_str()) != hour);
    }
    let known = message.talk.unit_at(message.at).cloned();
    let unit = match named.as_slice() {
        [unit] => unit.clone(),
        [] => known?,
        _ => return None,
    };
    let clock = when::clock_in(&spoken).or_else(|| {
        let hour = hour.filter(|hour| *hour != unit.as_str())?;
        hour.parse::<u32>()
            .ok()
            .filter(|hour| *hour <= 12)
            .map(|hour| hour.to_string())
    });
    let at = clock.map_or_else(String::new, |clock| format!(" at {clock}"));
    let day = match says("yesterday") {
        true => " yesterday",
        false => "",
    };
    Some(format!("{unit} pumped out{at}{day}"))
}

/// Reads what was pumped out of several trailers, each with its gallons: "pumped 12 380 and 10 250", "23 and 10 pumped, 300
/// and 120". Returns the reports, a line each; none where a number may be either.
pub(in crate::desk) fn loads_told(message: &Texted<'_>) -> Option<String> {
    let (phrases, fleet) = (message.desk.phrases, message.fleet);
    if !phrases.holds("truck", "pumped", message.text) || is_marked(message.text) {
        return None;
    }
    let words = gallons::words_of(message.text);
    let (mut units, mut loads, mut pairs) = (Vec::new(), Vec::new(), Vec::new());
    let mut at = 0;
    while at < words.len() {
        let unit = settle::known(fleet, &UnitName::new(&words[at]));
        let amount = gallons::amount_at(&words, at);
        match (unit, amount) {
            (Some(unit), amount) if amount.as_ref().is_none_or(|told| !told.measured) => {
                units.push(unit.clone());
            }
            (_, Some(told)) if told.gal >= LEAST_GAL => {
                if units.len() == loads.len() + 1 {
                    pairs.push(loads.len());
                }
                at = told.behind - 1;
                loads.push(told.gal);
            }
            _ if phrases.is("truck", "pumped", &words[at]) => {}
            _ if phrases.is("truck", "beside-loads", &words[at]) => {}
            _ => return None,
        }
        at += 1;
    }
    // each load behind its trailer, or all behind all
    let ordered = pairs.len() == loads.len() || pairs.len() == 1 && loads.len() == units.len();
    let told = units.len() > 1 && units.len() == loads.len() && (ordered || pairs.is_empty());
    let line = |(unit, gal): (&UnitName, &f64)| format!("{unit}: pumped {gal} gal");
    let lines: Vec<String> = units.iter().zip(&loads).map(line).collect();
    told.then(|| lines.join("\n"))
}

/// Reads the number alone behind "truck gone, 420": the load, where it is neither a trailer nor a clock time.
fn load_behind(message: &Texted<'_>) -> Option<Amount> {
    let rest = message
        .desk
        .phrases
        .following("truck", "left", message.text)?;
    let before = message.text.strip_suffix(rest)?.trim_end();
    let words = gallons::words_of(rest);
    let told = gallons::amount_at(&words, 0)?;
    let is_a_trailer = settle::known(message.fleet, &UnitName::new(&told.number)).is_some();
    let alone = words.len() == 1 && before.ends_with([',', ';', ':', '-']);
    let load = told.gal >= LEAST_GAL && when::clock_in(rest).is_none();
    (alone && load && !is_a_trailer).then_some(told)
}

/// Fewer gallons than this, told with no measure, are a count of something else.
const LEAST_GAL: f64 = 50.0;

/// Finds the trailer whose truck is said to be gone, where nobody says that it pumped: the trailer itself stands.
pub(in crate::desk) fn gone(hearing: &Hearing<'_>, settled: &mut Settled) -> Option<UnitName> {
    let says = |list| hearing.desk.phrases.holds("truck", list, hearing.text);
    // "its gone", once it was told that the truck is there
    let is_gone = hearing.desk.phrases.is("truck", "gone-alone", hearing.text);
    let asked = hearing.talk.question_at(hearing.inbound.at);
    if let (true, Some(About::HowMuch { unit, .. })) = (is_gone, asked.map(|asked| &asked.about)) {
        let unit = unit.clone();
        settled.reports.clear();
        settled.homeless = None;
        settled.from_context = None;
        return Some(unit);
    }
    let of_it = says("who") && says("left") && !says("other") && !says("not");
    let only_left = |entry: &Entry| {
        entry.events.iter().all(|event| *event == Event::Left)
            && entry.readings.is_empty()
            && entry.faults.is_empty()
    };
    let told = settled.reports.iter().map(|(_, _, entry)| entry);
    let nothing_else = told.chain(&settled.homeless).all(only_left);
    if !of_it || !nothing_else || hearing.heard.ask.is_some() || hearing.heard.command.is_some() {
        return None;
    }
    // with none noted it is still no trailer that goes: the one that is meant stands there
    let reported = settled.reports.first().map(|(unit, ..)| unit.clone());
    let standing = || {
        let talked = || hearing.talk.unit_at(hearing.inbound.at).cloned();
        let unit = hearing.names().into_iter().next();
        let unit = unit.or(reported).or_else(talked)?;
        stands(hearing, &unit).then_some(unit)
    };
    let unit = noted(hearing).and_then(|task| task.unit.clone());
    let unit = unit.or_else(standing)?;
    settled.reports.clear();
    settled.homeless = None;
    settled.from_context = None;
    Some(unit)
}

/// Tells whether a trailer stands at its site: then the truck that comes or goes is another.
fn stands(hearing: &Hearing<'_>, unit: &UnitName) -> bool {
    let kept = hearing.desk.book.unit(unit);
    let stage = kept.map(|kept| kept.state().stage());
    stage.is_some_and(Stage::is_on_site)
}

/// Returns the one number that a text gives as gallons: "380 gal", "took 1,200".
fn gallons_in(text: &str) -> Option<Amount> {
    let words = gallons::words_of(text);
    let plain: Vec<&str> = words.iter().map(String::as_str).collect();
    let told = |amount: &Amount| {
        let before = amount.at.checked_sub(1).map_or("", |at| plain[at]);
        let took = Phrases::built_in().is("truck", "took", before);
        // "took 20 min"
        let counted = when::counted(&plain, amount.at).and_then(|told| told.minutes_each());
        amount.measured || took && counted.is_none()
    };
    let mut found = gallons::amounts(&words).into_iter().filter(told);
    let first = found.next()?;
    found.next().is_none().then_some(first)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_a_truck_took_is_found_where_one_number_is_told() {
        for (text, gallons) in [
            ("truck left, 380 gal", Some("380")),
            ("truck's gone, took 380.", Some("380")),
            ("se fue la pipa, 380 galones", Some("380")),
            ("truck left 380gal", Some("380")),
            ("truck took 380 from 12", Some("380")),
            ("truck took 20 min at 12", None),
            ("truck left at 14:10", None),
            ("truck left, 380 gal or 400 gal", None),
            ("truck left, 1,000 gal from 12", Some("1000")),
            ("truck took 1,200 gal from 12", Some("1200")),
            ("truck left, 430gallons", Some("430")),
            ("se fue la pipa, 1500 litros", Some("1500")),
        ] {
            let told = gallons_in(text).map(|amount| amount.number);
            assert_eq!(told.as_deref(), gallons, "{text}");
        }
    }
}
