//! Incidents: a dispatcher opens one for a trailer, is asked its facts one by one, and releases it with a reason. While
//! it stands, what was said of the trailer around it is kept.

use chrono::{DateTime, Days, NaiveDate, NaiveTime, TimeDelta, TimeZone, Utc};
use chrono_tz::Tz;

use super::answer::Reply;
use super::inbound::{Inbound, Outgoing};
use super::others::other_dispatchers;
use super::phrases::Phrases;
use super::receive::Hearing;
use super::{Desk, settle, when};
use crate::book::{Incident, IncidentChange, Personal, Record};
use crate::dialogue::{About, Fact, Talk};
use crate::fleet::{CrewMember, Fleet, Role};
use crate::heard::{Command, CommandName, Entry, Fault, Heard, UnitName};
use crate::reply::{Arg, Voice};

/// How many incidents a list shows.
const MOST_LISTED: usize = 12;

/// What a message says to a fact that was asked.
pub(super) enum Said {
    /// The fact, in the words of the message.
    Told(u32, Fact),
    /// Somebody is hurt or in danger there; the words are kept as the fact.
    Danger(u32, Fact, Entry),
    /// Nobody is hurt now: the facts can be asked.
    NobodyHurt(u32),
    /// It is not known.
    NotKnown(u32, Fact),
    /// No more now.
    Stop(u32),
}

impl Said {
    /// Returns what is to be acted on at once.
    pub(super) fn danger(&self) -> Option<Entry> {
        match self {
            Said::Danger(.., entry) => Some(entry.clone()),
            _ => None,
        }
    }
}

/// Reads an order about incidents that the reader takes for something else.
pub(super) fn order(phrases: &Phrases, text: &str) -> Option<Command> {
    let is_one = phrases.is("incident", "list", text)
        || phrases.after("incident", "release", text).is_some()
        || phrases.after("incident", "new", text).is_some();
    is_one.then(|| Command {
        name: CommandName::Incident,
        task: None,
        rest: text.trim().to_owned(),
    })
}

/// Tells whether a message is an order about incidents.
pub(super) fn is_one(heard: &Heard) -> bool {
    let order = heard.command.as_ref();
    order.is_some_and(|order| order.name == CommandName::Incident)
}

/// Reads what a message says to the fact that was asked last; none where none was, or it is another order or question.
pub(super) fn said(
    desk: &Desk,
    fleet: &Fleet,
    inbound: &Inbound,
    member: &CrewMember,
    talk: &Talk,
    heard: &Heard,
    text: &str,
) -> Option<Said> {
    let about = &talk.question_at(inbound.at)?.about;
    let now = matches!(about, About::HurtNow { .. });
    let (number, fact) = match about {
        About::IncidentFact { number, fact } => (*number, *fact),
        // words that are no yes or no tell the first fact at once
        About::HurtNow { number, .. } if desk.phrases.is("choice", "no", text) => {
            return Some(Said::NobodyHurt(*number));
        }
        About::HurtNow { .. } if desk.phrases.is("choice", "yes", text) => return None,
        About::HurtNow { number, .. } => {
            let incident = desk.book.incidents().incident(*number)?;
            (*number, incident.next()?)
        }
        _ => return None,
    };
    if inbound.replaces.is_some() || text.trim().is_empty() || member.role < Role::Dispatcher {
        return None;
    }
    if desk.phrases.is("incident", "stop", text) {
        return Some(Said::Stop(number));
    }
    if desk.phrases.is("incident", "skip", text) {
        return Some(Said::NotKnown(number, fact));
    }
    // what is told of a trailer that is named is a report, whatever was asked; so is a person in danger, where that is
    // not what was asked for
    let asks_of_it = !now && matches!(fact, Fact::What | Fact::Injured);
    let unit = &desk.book.incidents().incident(number)?.hold.unit;
    // a number that is no trailer is an age or a count
    let elsewhere = |entry: &Entry| {
        let named = entry.unit.as_ref();
        named.is_some_and(|name| settle::known(fleet, name).is_some_and(|known| known != unit))
    };
    let reports = heard.entries.iter().any(|entry| {
        let told =
            !(entry.readings.is_empty() && entry.events.is_empty() && entry.faults.is_empty());
        let named = entry.unit.as_ref();
        let known = named.is_some_and(|name| settle::known(fleet, name).is_some());
        told && known && (elsewhere(entry) || !in_danger(entry) || asks_of_it)
    });
    let asks = heard.ask.is_some()
        || desk.questions.of(heard, text).is_some()
        || desk.phrases.after("incident", "asks", text).is_some();
    let of_a_truck = tells_of_a_truck(desk.phrases, fact, text);
    let takes_over = desk.answers.takes_over(text);
    let ordered = heard.command.is_some() || takes_over;
    if reports || asks || of_a_truck || text.contains(['?', '¿']) || ordered {
        return None;
    }
    let mut faults: Vec<Fault> = heard
        .entries
        .iter()
        .flat_map(|entry| &entry.faults)
        .copied()
        .collect();
    faults.retain(|fault| Fault::DANGERS.contains(fault));
    let says = |list| now && desk.phrases.after("incident", list, text).is_some();
    let fact = match says("denies") || says("affirms") {
        true => Fact::Injured,
        false => fact,
    };
    if faults.is_empty() && says("affirms") {
        faults.push(Fault::PersonHurt);
    }
    if faults.is_empty() || asks_of_it {
        return Some(Said::Told(number, fact));
    }
    let entry = Entry {
        unit: Some(unit.clone()),
        faults,
        ..Entry::default()
    };
    Some(Said::Danger(number, fact, entry))
}

/// Tells whether a message is an order about a truck: what happened may be of one too.
fn tells_of_a_truck(phrases: &Phrases, fact: Fact, text: &str) -> bool {
    let says = |list| phrases.holds("truck", list, text);
    let moves = ["called", "request", "late", "off", "absent", "here"];
    says("who") && (says("for") || fact != Fact::What && moves.into_iter().any(says))
}

/// Tells whether somebody is in danger by what is told of a trailer.
fn in_danger(entry: &Entry) -> bool {
    let mut faults = entry.faults.iter();
    faults.any(|fault| Fault::DANGERS.contains(fault))
}

/// Takes what was said to a fact, and asks the next.
pub(super) fn take(hearing: &Hearing<'_>, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let Some(said) = &hearing.fact else { return };
    let (Said::Told(number, _)
    | Said::Danger(number, ..)
    | Said::NotKnown(number, _)
    | Said::NobodyHurt(number)
    | Said::Stop(number)) = *said;
    let Some(incident) = hearing.desk.book.incidents().incident(number) else {
        return;
    };
    let mut incident = incident.clone();
    let unit = incident.hold.unit.clone();
    let change = match said {
        Said::Stop(_) => return stopped(number, &incident, reply),
        Said::NobodyHurt(_) => return ask_next(number, &incident, reply),
        Said::NotKnown(_, fact) => {
            incident.not_known.insert(*fact);
            reply.say("incident-not-known", &[]);
            IncidentChange::NotKnown {
                number,
                unit,
                fact: *fact,
            }
        }
        Said::Told(_, fact) | Said::Danger(_, fact, _) => {
            // a bare time tells when it was, whatever was asked
            let fact = match is_bare_clock(hearing.written) {
                true => &Fact::When,
                false => fact,
            };
            incident.told.insert(*fact);
            let happened = (*fact == Fact::When)
                .then(|| happened(hearing.written, hearing.inbound.at, zone(hearing, &unit)))
                .flatten();
            let quoted = reply.voice.quote(hearing.written.trim());
            reply.say("incident-noted", &[("quote", quoted.into())]);
            if let Some(happened) = happened {
                incident.hold.reach(happened);
                let (from, to) = (incident.hold.from, incident.hold.to);
                let [from, to] = [from, to].map(|at| reply.voice.date_and_time(at));
                reply.say("incident-kept", &[("from", from.into()), ("to", to.into())]);
            }
            IncidentChange::Told {
                number,
                unit,
                fact: *fact,
                text: Personal::new(hearing.written.trim()),
                happened,
            }
        }
    };
    records.push(record(hearing, change));
    // the person comes first: the other facts wait
    match said {
        Said::Danger(..) => {
            let unit = incident.hold.unit.as_str();
            reply.say("incident-later", &[("unit", unit.into())]);
        }
        _ => ask_next(number, &incident, reply),
    }
}

/// Obeys an order about incidents.
pub(super) fn obey(hearing: &Hearing<'_>, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let phrases = &hearing.desk.phrases;
    let text = hearing.written.trim();
    if phrases.is("incident", "list", text) {
        return list(hearing, reply);
    }
    if let Some(rest) = phrases.after("incident", "release", text) {
        return release(hearing, rest, reply, records);
    }
    let new = phrases.after("incident", "new", text);
    let Some(rest) = new.or_else(|| phrases.after("incident", "opens", text)) else {
        return reply.say("incident-how", &[]);
    };
    let Some((name, rest)) = trailer_and_rest(phrases, rest) else {
        return reply.say("incident-how", &[]);
    };
    // no trailer is called so
    if !name.as_str().contains(|c: char| c.is_ascii_digit())
        && settle::known(&hearing.fleet, &name).is_none()
    {
        return reply.say("incident-how", &[]);
    }
    let Some(unit) = settle::known(&hearing.fleet, &name).cloned() else {
        let finding = settle::unknown_unit(&hearing.fleet, &name);
        reply.findings.push(finding);
        return;
    };
    let mut standing = hearing.desk.book.incidents().standing();
    let last = standing.rfind(|(_, incident)| incident.hold.unit == unit);
    match last {
        Some((number, incident)) if new.is_none() => {
            if !rest.is_empty() {
                records.push(record(
                    hearing,
                    IncidentChange::Told {
                        number,
                        unit: unit.clone(),
                        fact: Fact::What,
                        text: Personal::new(rest),
                        happened: None,
                    },
                ));
                reply.say("incident-added", &named(number, incident));
            }
            go_on(number, incident, reply);
        }
        _ => open(hearing, &unit, rest, reply, records),
    }
}

/// Opens an incident: from here on, what was said of the trailer around it is kept.
fn open(
    hearing: &Hearing<'_>,
    unit: &UnitName,
    words: &str,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let number = hearing.desk.book.incidents().next_number();
    let told = happened(words, hearing.inbound.at, zone(hearing, unit));
    let happened = told.unwrap_or(hearing.inbound.at);
    let mut book = crate::book::Incidents::default();
    let mut change = |change: IncidentChange| {
        let record = record(hearing, change);
        if let Record::Incident { at, by, change } = &record {
            book.apply(*at, by, change);
        }
        records.push(record);
    };
    change(IncidentChange::Opened {
        number,
        unit: unit.clone(),
        happened,
    });
    let mut tell = |fact, text: String| {
        change(IncidentChange::Told {
            number,
            unit: unit.clone(),
            fact,
            text: Personal::new(text),
            happened: None,
        });
    };
    if !words.is_empty() {
        tell(Fact::What, words.to_owned());
    }
    // "4:30" can be either half of the day: then it is asked
    if let Some(at) = told.filter(|_| !is_either_half(words)) {
        tell(Fact::When, reply.voice.time(at));
    }
    let Some(incident) = book.incident(number).cloned() else {
        return;
    };
    let numbered = |voice: &Voice<'_>, key: &str| {
        voice.say(
            key,
            &[
                ("id", number.into()),
                ("unit", unit.as_str().into()),
                ("from", voice.date_and_time(incident.hold.from).into()),
                ("to", voice.date_and_time(incident.hold.to).into()),
                ("who", hearing.member.name.as_str().into()),
            ],
        )
    };
    reply.lines.push(numbered(&reply.voice, "incident-opened"));
    tell_others(hearing, reply, |voice| {
        numbered(voice, "incident-opened-by")
    });
    // the facts wait until it is known that nobody needs help
    let unit = unit.clone();
    reply.asks = Some(About::HurtNow { number, unit });
}

fn go_on(number: u32, incident: &Incident, reply: &mut Reply<'_>) {
    if incident.next().is_none() {
        reply.say("incident-complete", &named(number, incident));
        return;
    }
    reply.say("incident-goes-on", &named(number, incident));
    ask_next(number, incident, reply);
}

fn stopped(number: u32, incident: &Incident, reply: &mut Reply<'_>) {
    reply.say("incident-stopped", &named(number, incident));
}

/// Asks the next fact, or says that all were asked.
fn ask_next(number: u32, incident: &Incident, reply: &mut Reply<'_>) {
    match incident.next() {
        Some(fact) => reply.asks = Some(About::IncidentFact { number, fact }),
        None => reply.say("incident-complete", &named(number, incident)),
    }
}

fn list(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let mut listed = 0;
    for (number, incident) in hearing
        .desk
        .book
        .incidents()
        .standing()
        .rev()
        .take(MOST_LISTED)
    {
        reply.say("incident-line", &named(number, incident));
        listed += 1;
    }
    if listed == 0 {
        reply.say("incident-none", &[]);
    }
    reply.say("incident-how", &[]);
}

/// Lets go what an incident holds.
fn release(hearing: &Hearing<'_>, rest: &str, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let rest = rest.trim_start_matches('#');
    let digits = rest
        .find(|c: char| !c.is_ascii_digit())
        .unwrap_or(rest.len());
    let number: Option<u32> = rest[..digits].parse().ok();
    let reason = rest[digits..].trim_matches(|c: char| c.is_whitespace() || ",:;.-".contains(c));
    let Some(number) = number else {
        return reply.say("incident-release-how", &[]);
    };
    let incident = hearing.desk.book.incidents().incident(number);
    let Some(incident) = incident.filter(|incident| incident.released.is_none()) else {
        return reply.say("incident-no-such", &[("id", number.into())]);
    };
    if reason.is_empty() {
        return reply.say("incident-release-why", &named(number, incident));
    }
    records.push(record(
        hearing,
        IncidentChange::Released {
            number,
            unit: incident.hold.unit.clone(),
            reason: Personal::new(reason),
        },
    ));
    reply.say("incident-released", &named(number, incident));
    let (unit, who) = (&incident.hold.unit, hearing.member.name.as_str());
    tell_others(hearing, reply, |voice| {
        let args = [
            ("id", Arg::from(number)),
            ("unit", unit.as_str().into()),
            ("who", who.into()),
            ("quote", voice.quote(reason).into()),
        ];
        voice.say("incident-released-by", &args)
    });
}

fn tell_others(hearing: &Hearing<'_>, reply: &mut Reply<'_>, words: impl Fn(&Voice<'_>) -> String) {
    let letters = other_dispatchers(hearing).map(|(to, voice)| Outgoing::to(&to.id, words(&voice)));
    reply.others.extend(letters);
}

fn named(number: u32, incident: &Incident) -> [(&'static str, Arg<'_>); 4] {
    [
        ("id", number.into()),
        ("unit", incident.hold.unit.as_str().into()),
        ("time", incident.opened.into()),
        ("count", incident.open().into()),
    ]
}

fn record(hearing: &Hearing<'_>, change: IncidentChange) -> Record {
    Record::Incident {
        at: hearing.now,
        by: hearing.member.id.clone(),
        change,
    }
}

/// Takes the trailer off the front of an order's words: `14 man slipped`, `on unit 14: man slipped`.
fn trailer_and_rest<'t>(phrases: &Phrases, mut text: &'t str) -> Option<(UnitName, &'t str)> {
    while let Some(rest) = phrases.after("incident", "before", text) {
        text = rest;
    }
    let text = text.trim_start_matches('#');
    let inside = |c: char| c.is_alphanumeric() || matches!(c, '-' | '_' | '.');
    let end = text.find(|c: char| !inside(c)).unwrap_or(text.len());
    let name = text[..end].trim_end_matches('.');
    let rest = text[end..].trim_start_matches(|c: char| c.is_whitespace() || ",:;-–".contains(c));
    (!name.is_empty()).then(|| (UnitName::new(name), rest.trim_end()))
}

fn zone(hearing: &Hearing<'_>, unit: &UnitName) -> Tz {
    let job = hearing.fleet.job_of(unit, hearing.inbound.at, None);
    job.map_or(hearing.fleet.time_zone, |job| job.time_zone)
}

/// Finds when something happened: a clock time with a colon or half of the day, with "yesterday" or a date before it, or
/// one of those alone.
fn happened(words: &str, written: DateTime<Utc>, zone: Tz) -> Option<DateTime<Utc>> {
    let lower = words.to_lowercase();
    let has = |some: &[&str]| {
        let mut words = lower.split(|c: char| !c.is_alphanumeric());
        words.any(|word| some.contains(&word))
    };
    let clock =
        when::clock_in(words).filter(|_| lower.contains(':') || has(HALVES) || halved(&lower));
    let date = words.split_whitespace().find_map(|word| {
        word.trim_matches(|c: char| !c.is_ascii_digit())
            .parse::<NaiveDate>()
            .ok()
    });
    let before = has(&["yesterday", "ayer", "anoche"]) || lower.contains("last night");
    if date.is_none() && !before {
        let clock = clock?;
        let told = when::instant(&clock, written, zone);
        let later = NaiveTime::parse_from_str(&clock, "%H:%M").ok()? + TimeDelta::hours(12);
        let later = when::instant(&later.format("%H:%M").to_string(), written, zone);
        // of two that are past, the later one
        return match is_either_half(words) {
            true => told.into_iter().chain(later).max(),
            false => told,
        };
    }
    let day = match date {
        Some(date) => date,
        None => written
            .with_timezone(&zone)
            .date_naive()
            .checked_sub_days(Days::new(1))?,
    };
    let time = match clock {
        Some(clock) => NaiveTime::parse_from_str(&clock, "%H:%M").ok()?,
        None => NaiveTime::from_hms_opt(12, 0, 0)?,
    };
    let at = zone.from_local_datetime(&day.and_time(time)).earliest()?;
    Some(at.with_timezone(&Utc)).filter(|at| *at <= written)
}

/// Tells whether the clock time in a text may be of either half of the day: `4:30`, and not `04:30`, `16:30` or `4:30pm`.
fn is_either_half(words: &str) -> bool {
    let lower = words.to_lowercase();
    let halved = halved(&lower) || lower.split_whitespace().any(|word| HALVES.contains(&word));
    let open = words.split_whitespace().any(|word| {
        let hour = word
            .split_once(':')
            .and_then(|(hour, _)| hour.parse::<u32>().ok());
        !word.starts_with('0') && hour.is_some_and(|hour| (1..12).contains(&hour))
    });
    open && !halved
}

/// Tells whether a text is a time and nothing else: `4:30pm`, `around 16:30`, `ayer a las 18:40`.
fn is_bare_clock(words: &str) -> bool {
    const BESIDE: &[&str] = &[
        "at",
        "about",
        "around",
        "am",
        "pm",
        "yesterday",
        "today",
        "ayer",
        "hoy",
        "a",
        "las",
        "como",
    ];
    let lower = words.to_lowercase();
    when::clock_in(words).is_some()
        && lower
            .split_whitespace()
            .all(|word| BESIDE.contains(&word) || word.starts_with(|c: char| c.is_ascii_digit()))
}

const HALVES: &[&str] = &["am", "pm"];

/// Tells whether a number runs on into its half of the day: `7pm`.
fn halved(text: &str) -> bool {
    text.split_whitespace().any(|word| {
        let word = word.trim_end_matches(['.', ',', '!']);
        let digits = word.strip_suffix("pm").or(word.strip_suffix("am"));
        digits.is_some_and(|digits| digits.starts_with(|c: char| c.is_ascii_digit()))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_time_of_an_incident_is_found_in_its_words() {
        let zone = Tz::America__Denver;
        let written = "2027-01-16T18:00:00Z".parse().unwrap(); // 11:00 local
        let at = |words: &str| happened(words, written, zone).map(|at| at.to_rfc3339());
        let day = |day: u32, hour: u32| Some(format!("2027-01-{day}T{hour:02}:40:00+00:00"));
        assert_eq!(at("man slipped at 9:40"), day(16, 16));
        // at 11:00, 10:40 is this morning's, and 12:40 and 1:40 are last night's
        assert_eq!(at("around 10:40"), day(16, 17));
        assert_eq!(at("1:40 on the ice"), day(16, 8));
        assert!(
            is_bare_clock("4:30pm")
                && is_bare_clock("around 16:30")
                && !is_bare_clock("4 of them at 16:30 there")
        );
        assert_eq!(
            at("ayer a las 18:40 se cayó un señor").as_deref(),
            Some("2027-01-16T01:40:00+00:00")
        );
        assert_eq!(at("2027-01-14 13:40 he fell"), day(14, 20));
        assert_eq!(
            at("yesterday").as_deref(),
            Some("2027-01-15T19:00:00+00:00")
        );
        assert_eq!(at("9:40am on the step"), day(16, 16));
        for words in [
            "tank took 1930 gallons",
            "he fell",
            "12.5 turns",
            "2027-02-01",
            "99:99",
        ] {
            assert_eq!(at(words), None, "{words}");
        }
    }

    #[test]
    fn the_trailer_stands_first() {
        let phrases = Phrases::built_in();
        let parted = |text| {
            let (unit, rest) = trailer_and_rest(phrases, text)?;
            Some((unit.to_string(), rest.to_owned()))
        };
        let found = |unit: &str, rest: &str| Some((unit.to_owned(), rest.to_owned()));
        assert_eq!(parted("14 man slipped"), found("14", "man slipped"));
        assert_eq!(
            parted("on unit 14: man slipped."),
            found("14", "man slipped.")
        );
        assert_eq!(parted("en la #14"), found("14", ""));
        assert_eq!(parted(""), None);
    }
}
