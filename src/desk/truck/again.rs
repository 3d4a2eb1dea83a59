//! Words about a truck that name none: "push it to 2000" after an order, "se canceló el de la 10", and the bare answers to
//! what the bot asked of a truck. Each is read as the whole sentence that it stands for.

use chrono::{DateTime, NaiveTime, TimeDelta, TimeZone, Timelike, Utc};
use chrono_tz::Tz;

use super::anew::other_trailer;
use crate::book::Task;
use crate::desk::gallons::{self, Amount};
use crate::desk::phrases::{Phrases, plain};
use crate::desk::receive::Texted;
use crate::desk::settle;
use crate::desk::{Desk, when};
use crate::dialogue::{About, Talk};
use crate::finding::TaskKind;
use crate::fleet::Fleet;
use crate::heard::{Entry, UnitName};

/// After an order about a truck, "it" is the truck for this long.
const LATELY: TimeDelta = TimeDelta::minutes(60);
/// A time told in more words than this is part of something else.
const LONGEST: usize = 6;

/// Returns the whole sentence that a message about a truck stands for; none where it is no such message.
pub(in crate::desk) fn spelled_out(message: &Texted<'_>) -> Option<String> {
    let Texted {
        desk,
        fleet,
        talk,
        heard,
        who,
        text,
        at,
    } = *message;
    let phrases = desk.phrases;
    let says = |list| phrases.holds("truck", list, text);
    let orders = heard.ask.is_some() || heard.command.is_some();
    if let Some(other) = other_trailer(message).filter(|_| !orders) {
        return Some(other);
    }
    if says("who") || says("other") || heard.ask.is_some() || heard.command.is_some() {
        return None;
    }
    // "the one for 10 is cancelled"
    if says("dropped")
        && let [unit] = units_in(fleet, text).as_slice()
        && called(desk, unit).is_some()
    {
        return Some(format!("truck for {unit} cancelled"));
    }
    let reports = |entry: &Entry| entry.unit.is_some() && !entry.is_empty();
    let open = talk.question_at(at).map(|question| &question.about);
    let asked = matches!(open, None | Some(About::TruckWhen { .. }));
    if !asked || heard.entries.iter().any(reports) {
        return None;
    }
    if let Some(load) = load_again(desk, who, text, at) {
        return Some(load);
    }
    if let Some(moved) = pushed(message, phrases) {
        return Some(moved);
    }
    let late = says("late");
    // "hes stuck in traffic says 7"
    let within = || late.then(|| phrases.following("truck", "again", text))?;
    let mut rest = phrases.after("truck", "again", text).or_else(within)?;
    // "actually make it friday"
    while let Some(shorter) = phrases.after("truck", "again", rest) {
        rest = shorter;
    }
    let awaited = || awaited(desk, talk, who, at).filter(|_| late);
    let task = ordered_lately(desk, who, at).or_else(awaited)?;
    // "no, 23": of another trailer as well as of 23:00
    let alone = plain(rest);
    let late_hour = alone
        .parse::<u32>()
        .is_ok_and(|hour| (13..24).contains(&hour));
    let other = settle::known(fleet, &UnitName::new(&alone));
    if late_hour
        && other.is_some_and(|unit| Some(unit) != task.unit.as_ref())
        && phrases.after("truck", "no-hour", text).is_some()
    {
        return None;
    }
    let told = |task: &Task| {
        let zone = fleet.zone_at(Some(task.unit.as_ref()?), at);
        on_its_day(rest, task.promised, at, zone).or_else(|| time_told(rest, at, zone))
    };
    // of several called in one message it is the one whose time is nearest
    let together = desk.book.tasks().open().filter(|other| {
        other.kind == task.kind && other.called == task.called && other.called_by == task.called_by
    });
    let moved = |(task, comes): &(&Task, DateTime<Utc>)| {
        task.promised.map(|promised| (promised - *comes).abs())
    };
    let (task, comes) = together
        .filter_map(|task| Some((task, told(task)?)))
        .min_by_key(moved)?;
    Some(sentence(desk, fleet, task.unit.as_ref()?, comes, at))
}

/// Reads "push 12 to 9": another time for the truck that is called for a trailer.
fn pushed(message: &Texted<'_>, phrases: &Phrases) -> Option<String> {
    let Texted {
        desk, fleet, at, ..
    } = *message;
    let rest = phrases.after("orders", "move", message.text.trim())?;
    let (name, rest) = rest.split_once(' ')?;
    let unit = settle::known(fleet, &UnitName::new(name))?;
    called(desk, unit)?;
    let rest = phrases.after("orders", "to", rest)?;
    let comes = time_told(rest, at, fleet.zone_at(Some(unit), at))?;
    Some(sentence(desk, fleet, unit, comes, at))
}

/// Reads "430 gal" as what the sender's last pump-out took in truth.
fn load_again(desk: &Desk, who: &str, text: &str, at: DateTime<Utc>) -> Option<String> {
    let told = gallons_alone(text).filter(|told| told.measured)?;
    let last = desk
        .book
        .sent(who)
        .iter()
        .rev()
        .find(|sent| !sent.units.is_empty())?;
    let [unit] = last.units.as_slice() else {
        return None;
    };
    let pumped = desk.book.unit(unit)?.state().last_pumped();
    let loaded = matches!(pumped, Some((then, Some(_))) if then == last.at);
    let lately = last.at <= at && at - last.at <= LATELY;
    let no = Phrases::built_in().each("mend", "no").next()?;
    (loaded && lately).then(|| format!("{no} {} gal", told.gal))
}

/// How far from the time it was promised for a truck is still waited for.
const AWAITED: TimeDelta = TimeDelta::hours(3);

/// Returns the truck that should come about now: of the trailer talked about, else the only one of the sender's trailers.
fn awaited<'d>(desk: &'d Desk, talk: &Talk, who: &str, at: DateTime<Utc>) -> Option<&'d Task> {
    let due = |task: &&Task| {
        let promised = task.promised.filter(|_| task.called.is_some());
        promised.is_some_and(|promised| (promised - at).abs() <= AWAITED)
    };
    let talked = talk.unit_at(at).and_then(|unit| called(desk, unit));
    if let Some(task) = talked.filter(due) {
        return Some(task);
    }
    let mut theirs = pump_outs_of(desk, who).into_iter().filter(due);
    let only = theirs.next()?;
    theirs.next().is_none().then_some(only)
}

/// Lists the open pump-outs of the trailers that somebody wrote of, called or not.
pub(super) fn pump_outs_of<'d>(desk: &'d Desk, who: &str) -> Vec<&'d Task> {
    let sent = desk.book.sent(who);
    let wrote_of = |unit: &UnitName| sent.iter().any(|sent| sent.units.contains(unit));
    let theirs =
        |task: &&Task| task.kind == TaskKind::PumpOut && task.unit.as_ref().is_some_and(wrote_of);
    desk.book.tasks().open().filter(theirs).collect()
}

/// Reads a new time of a truck that was promised for another day, or a new day for it: what is not told stays as it was.
fn on_its_day(
    rest: &str,
    promised: Option<DateTime<Utc>>,
    now: DateTime<Utc>,
    zone: Tz,
) -> Option<DateTime<Utc>> {
    let local = promised?.with_timezone(&zone);
    let folded = plain(rest);
    if minutes_told(&folded).is_some() {
        return None;
    }
    if let Some(day) = when::day_word(rest) {
        let phrases = Phrases::built_in();
        let bare = |word: &&str| *word != day && !phrases.is("truck", "beside-a-day", word);
        let clock: Vec<&str> = folded.split(' ').filter(bare).collect();
        return match clock.is_empty() {
            true => when::told(&local.format("%H:%M").to_string(), &day, now, zone),
            false if clock.len() <= LONGEST => when::coming(rest, now, zone)
                .or_else(|| when::coming(&format!("at {rest}"), now, zone)),
            false => None,
        };
    }
    let date = local.date_naive();
    if date <= now.with_timezone(&zone).date_naive() {
        return None;
    }
    let begins = zone
        .from_local_datetime(&date.and_time(NaiveTime::MIN))
        .earliest()?;
    let early = time_told(rest, begins.to_utc(), zone)?;
    // "no wait 4" of one that was promised for 15:00 is four in the afternoon
    let half = plain(&when::with_halves_joined(rest))
        .split(' ')
        .any(has_half);
    let hour = early.with_timezone(&zone).hour();
    let zero = folded.split(' ').any(|word| word.starts_with('0'));
    let later = (!half && !zero && (1..12).contains(&hour)).then(|| early + TimeDelta::hours(12));
    let told = [Some(early), later].into_iter().flatten();
    told.min_by_key(|at| (*at - local.to_utc()).abs())
}

/// Reads a bare answer to what was asked of a truck; none where it is none.
pub(in crate::desk) fn answered(
    desk: &Desk,
    fleet: &Fleet,
    text: &str,
    about: &About,
    at: DateTime<Utc>,
) -> Option<String> {
    match about {
        About::TruckWhen { unit } => {
            let comes = time_told(text, at, fleet.zone_at(Some(unit), at))?;
            Some(sentence(desk, fleet, unit, comes, at))
        }
        About::HowMuch { unit, .. } => {
            let gal = gallons_alone(text)?.gal;
            Some(format!("{unit}: pumped {gal} gal"))
        }
        _ => None,
    }
}

/// Tells whether a number that is told alone, with no measure, is the name of a trailer too: "12".
pub(in crate::desk) fn may_be_a_trailer(fleet: &Fleet, text: &str) -> bool {
    let number = gallons_alone(text).filter(|told| !told.measured);
    number.is_some_and(|told| settle::known(fleet, &UnitName::new(&told.number)).is_some())
}

/// Says when a truck comes, as the crew would: one that was promised before comes at another time now.
fn sentence(
    desk: &Desk,
    fleet: &Fleet,
    unit: &UnitName,
    comes: DateTime<Utc>,
    at: DateTime<Utc>,
) -> String {
    let zone = fleet.zone_at(Some(unit), at);
    let comes = comes.with_timezone(&zone);
    let clock = match comes.date_naive() == at.with_timezone(&zone).date_naive() {
        true => comes.format("%H:%M").to_string(),
        false => comes.format("%H:%M %A").to_string().to_lowercase(),
    };
    let promised = called(desk, unit).is_some_and(|task| task.promised.is_some());
    match promised {
        true => format!("truck for {unit} late, {clock}"),
        false => format!("truck for {unit} comes at {clock}"),
    }
}

/// Reads the time behind the word that a truck is late: "truck late, 930 now".
pub(super) fn behind_late(
    desk: &Desk,
    text: &str,
    now: DateTime<Utc>,
    zone: Tz,
) -> Option<DateTime<Utc>> {
    time_told(desk.phrases.following("truck", "late", text)?, now, zone)
}

/// Reads how much later than promised a truck comes: "late 30 min", "running 45 minutes late", "delayed by an hour".
pub(super) fn delay_told(phrases: &Phrases, text: &str) -> Option<TimeDelta> {
    let mut folded = format!(" {} ", plain(text));
    for (list, minutes) in [("hour-and-a-half", 90), ("half-an-hour", 30), ("hour", 60)] {
        for length in phrases.each("truck", list) {
            folded = folded.replace(&format!(" {length} "), &format!(" {minutes} min "));
        }
    }
    let words: Vec<&str> = folded.split_whitespace().collect();
    let beside = |word: &&str| phrases.is("truck", "beside-a-delay", word);
    (0..words.len()).find_map(|at| {
        let told = when::counted(&words, at)?;
        let minutes = i64::from(told.number.checked_mul(told.minutes_each()?)?);
        let head = &words[..at];
        let gap = head.iter().rev().take_while(|word| beside(word)).count();
        let tail = words[told.behind..].iter().skip_while(|word| beside(word));
        let tail: Vec<&str> = tail.copied().collect();
        let near = phrases.ends("truck", "delay", &head[..at - gap].join(" "))
            || phrases.opens("truck", "delay", &tail.join(" "));
        // "late, there in 30 min" counts from now
        let from_now = phrases.ends("truck", "from-now", &head.join(" "));
        (near && !from_now && (1..=720).contains(&minutes)).then(|| TimeDelta::minutes(minutes))
    })
}

/// Reads a time to come that is told alone: "at 745", "2030", "8ish", "10 min", "half an hour".
pub(super) fn time_told(text: &str, now: DateTime<Utc>, zone: Tz) -> Option<DateTime<Utc>> {
    let phrases = Phrases::built_in();
    let folded = plain(&when::with_halves_joined(text));
    let words: Vec<&str> = folded.split(' ').filter(|word| !word.is_empty()).collect();
    if words.is_empty() || words.len() > LONGEST {
        return None;
    }
    if let Some(minutes) = minutes_told(&folded) {
        return Some(now + TimeDelta::minutes(minutes));
    }
    let halved = words.iter().find(|word| has_half(word));
    let second = halved.and_then(|word| when::without_half(word));
    let digits = |word: &&str| word.starts_with(|c: char| c.is_ascii_digit());
    if words
        .iter()
        .any(|word| !digits(word) && !phrases.is("truck", "beside-a-time", word))
    {
        return None;
    }
    // the colon went with the folding: "7 15" and "715" are one time
    let told: String = words
        .iter()
        .filter(|word| digits(word))
        .map(|word| word.trim_end_matches(|c: char| c.is_alphabetic()))
        .collect();
    let (hour, minute) = match told.len() {
        1 | 2 => (told.parse::<u32>().ok()?, 0),
        3 | 4 => {
            let (hour, minute) = told.split_at(told.len() - 2);
            (hour.parse().ok()?, minute.parse().ok()?)
        }
        _ => return None,
    };
    if hour > 23 || minute > 59 {
        return None;
    }
    let half = match second {
        Some((_, true)) => "pm",
        Some((_, false)) => "am",
        None => "",
    };
    // "04:00" is told on a clock of 24 hours
    let whole_day = told.len() == 4 && told.starts_with('0');
    if whole_day {
        return when::coming(&format!("{hour:02}:{minute:02}{half}"), now, zone);
    }
    if minute == 0 && hour <= 12 && half.is_empty() {
        return when::coming(&format!("at {hour}"), now, zone);
    }
    when::coming(&format!("{hour}:{minute:02}{half}"), now, zone)
}

/// Tells whether a word is a number with its half of the day: "7pm".
fn has_half(word: &str) -> bool {
    word.starts_with(|c: char| c.is_ascii_digit()) && when::without_half(word).is_some()
}

/// Reads "10 min", "half an hour", "media hora": the minutes from now.
fn minutes_told(folded: &str) -> Option<i64> {
    if Phrases::built_in().holds("truck", "half-an-hour", folded) {
        return Some(30);
    }
    let words: Vec<&str> = folded.split(' ').collect();
    (0..words.len()).find_map(|at| {
        let told = when::counted(&words, at)?;
        // "10m" of a truck are minutes
        let each = match told.is_of("m") {
            true => 1,
            false => told.minutes_each()?,
        };
        let minutes = i64::from(told.number.checked_mul(each)?);
        (1..=720).contains(&minutes).then_some(minutes)
    })
}

/// Reads gallons that are told alone: "430", "430 gal", "about 1,200 gallons".
fn gallons_alone(text: &str) -> Option<Amount> {
    let words = gallons::words_of(text);
    let amounts = gallons::amounts(&words);
    let [told] = amounts.as_slice() else {
        return None;
    };
    let (before, behind) = (&words[..told.at], &words[told.behind..]);
    let beside = |word: &String| Phrases::built_in().is("truck", "beside-a-load", word);
    let alone = before.iter().chain(behind).all(beside);
    alone.then(|| told.clone())
}

/// Returns the truck that the sender said was called a short while ago, where they reported nothing since.
pub(super) fn ordered_lately<'d>(desk: &'d Desk, who: &str, at: DateTime<Utc>) -> Option<&'d Task> {
    let open = desk.book.tasks().open();
    let mine = open
        .filter(|task| task.kind == TaskKind::PumpOut && task.called_by.as_deref() == Some(who));
    let (called, task) = mine
        .filter_map(|task| Some((task.called?, task)))
        .max_by_key(|(called, _)| *called)?;
    let mut since = desk.book.sent(who).iter();
    let reported = since.any(|sent| sent.at > called && !sent.units.is_empty());
    (at - called <= LATELY && called <= at && !reported).then_some(task)
}

/// Tells whether the sender said lately of several trucks that they were called: then "the truck" may be any of them.
pub(super) fn several_lately(desk: &Desk, who: &str, at: DateTime<Utc>) -> bool {
    let open = desk.book.tasks().open();
    let lately = |called: DateTime<Utc>| called <= at && at - called <= LATELY;
    let mine = open.filter(|task| {
        let pumps = task.kind == TaskKind::PumpOut && task.called_by.as_deref() == Some(who);
        pumps && task.called.is_some_and(lately)
    });
    mine.count() > 1
}

fn called<'d>(desk: &'d Desk, unit: &UnitName) -> Option<&'d Task> {
    let task = desk.book.tasks().open_task(unit, TaskKind::PumpOut);
    task.filter(|task| task.called.is_some())
}

pub(super) fn units_in(fleet: &Fleet, text: &str) -> Vec<UnitName> {
    let words = text.split(|c: char| !(c.is_alphanumeric() || c == '-'));
    let units = words.filter_map(|word| settle::known(fleet, &UnitName::new(word)));
    let mut found: Vec<UnitName> = units.cloned().collect();
    found.dedup();
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_time_that_is_told_alone_is_the_next_one() {
        let now: DateTime<Utc> = "2027-01-23T17:10:00Z".parse().expect("an instant");
        let told = |text: &str| {
            let at = time_told(text, now, Tz::UTC)?;
            Some(at.format("%H:%M").to_string())
        };
        for (text, wanted) in [
            ("at 745", Some("19:45")),
            ("2030", Some("20:30")),
            ("to 2000", Some("20:00")),
            ("8", Some("20:00")),
            ("8ish", Some("20:00")),
            ("7:15", Some("19:15")),
            ("7:15 pm", Some("19:15")),
            ("10 min", Some("17:20")),
            ("half an hour", Some("17:40")),
            ("en 2 horas", Some("19:10")),
            ("a las 8", Some("20:00")),
            ("a las 7 y media", Some("19:30")),
            ("half past 7", Some("19:30")),
            ("52", None),
            ("25:00", None),
            ("pressure 50", None),
            ("", None),
        ] {
            assert_eq!(told(text).as_deref(), wanted, "{text}");
        }
    }

    #[test]
    fn gallons_are_read_where_nothing_else_is_told() {
        for (text, wanted) in [
            ("430", Some(430.0)),
            ("430 gal", Some(430.0)),
            ("about 1,200 gallons", Some(1200.0)),
            ("380gal", Some(380.0)),
            ("430gallons", Some(430.0)),
            ("like 1,200gl", Some(1200.0)),
            ("fueron 1500 litros", Some(396.0)),
            ("2 or 300", None),
            ("no", None),
            ("12 pressure 50", None),
        ] {
            let told = gallons_alone(text).map(|told| told.gal);
            assert_eq!(told, wanted, "{text}");
        }
    }
}
