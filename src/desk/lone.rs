//! Lone workers as others see them: told with a digest and to whoever asks, and answered for by a dispatcher.

use chrono::{DateTime, TimeDelta, Utc};

use super::answer::{self, Reply};
use super::inbound::Outgoing;
use super::others::{other_dispatchers, watchers_of};
use super::phrases::{Phrases, is_marked, plain};
use super::receive::Hearing;
use super::settle;
use super::sites;
use super::tick::{alone_key, of_alone, of_task};
use super::{Desk, ahead, when};
use crate::book::{AheadChange, Alarm, AlarmChange, Alone, Record, Tasks};
use crate::finding::{FindingId, Level};
use crate::fleet::Fleet;
use crate::heard::{Ask, Entry, Plan, PlanKind, UnitName};
use crate::reply::{Arg, Voice};
use crate::words;

/// A clock runs to a time of day that is this far off at the most.
const LONGEST_TILL: TimeDelta = TimeDelta::hours(12);
/// A clock is set for so many minutes at the most.
const LONGEST_MIN: u32 = 240;

/// What a message says of somebody whose clock runs, or of the sender's own work alone.
pub(super) enum Lone {
    /// How they are is asked.
    Asked(String),
    /// They were reached and are well.
    Reached(String),
    /// The sender goes to see after them.
    GoesTo(String),
    /// The sender works alone, and told no time to be asked at.
    NoClock,
    /// The sender works alone until a time that they told.
    Till,
    /// Others are to be asked after so many minutes; none where no time was told.
    For(Vec<String>, Option<u32>),
    /// Somebody is to be asked after whom nobody knows by that name.
    ForWhom,
    /// The sender, whose clock runs, wants so many minutes more.
    More,
    /// The sender, whose clock runs, works on.
    On,
}

impl Lone {
    /// Tells whether it is all that the message is about: nothing else in it is asked or wanted.
    pub(super) fn is_all(&self) -> bool {
        matches!(
            self,
            Lone::Till | Lone::For(..) | Lone::ForWhom | Lone::More | Lone::GoesTo(_)
        )
    }
}

/// Reads what a message says of lone workers.
pub(super) fn said(hearing: &Hearing<'_>) -> Option<Lone> {
    let (phrases, text, heard) = (&hearing.desk.phrases, hearing.text, &hearing.heard);
    if heard.command.is_some() || hearing.late() || hearing.inbound.replaces.is_some() {
        return None;
    }
    if more_minutes(hearing).is_some() || new_end(hearing).is_some() {
        return Some(Lone::More);
    }
    if goes_on(hearing) {
        return Some(Lone::On);
    }
    if let Some(who) = goes_to(hearing) {
        return Some(Lone::GoesTo(who));
    }
    if let Some((who, minutes)) = for_another(hearing) {
        return Some(Lone::For(who, minutes));
    }
    if till(hearing).is_some() {
        return Some(Lone::Till);
    }
    let mine = heard
        .plans
        .iter()
        .any(|plan| matches!(plan.kind, PlanKind::CheckMe { .. }));
    let over =
        phrases.after("alone", "watch-over", text).is_some() && minutes_in(phrases, text).is_some();
    if over && !mine && hearing.names().is_empty() {
        return Some(Lone::ForWhom);
    }
    let asks = is_marked(text)
        || answer::is_question(hearing)
        || phrases.after("alone", "asks", text).is_some();
    let clocks = hearing.desk.book.ahead().all_alone();
    let mut others = clocks.filter(|(who, _)| *who != hearing.member.id);
    if let Some((who, _)) = others.find(|(who, _)| names(hearing, who)) {
        if asks || heard.ask.is_some() {
            return Some(Lone::Asked(who.to_owned()));
        }
        let well = phrases.holds("alone", "well", text) && !phrases.holds("alone", "not", text);
        let mut watchers = watchers_of(&hearing.fleet, who).into_iter();
        let may = watchers.any(|watcher| watcher.id == hearing.member.id);
        return (well && may).then(|| Lone::Reached(who.to_owned()));
    }
    if let Some(who) = reached_unnamed(hearing, asks) {
        return Some(Lone::Reached(who));
    }
    let running = hearing.desk.book.ahead().alone(&hearing.member.id);
    let timed = |kind: &PlanKind| matches!(kind, PlanKind::CheckMe { .. } | PlanKind::GoingUnder);
    let wish = heard.plans.iter().any(|plan| timed(&plan.kind));
    let says = phrases.holds("alone", "says", text);
    let none = running.is_none() && !wish && !asks && heard.ask.is_none();
    (says && none).then_some(Lone::NoClock)
}

/// Finds the only lone worker for whom an alarm stands where somebody who is alarmed says, naming nobody, that they reached
/// them: "called him hes fine". While somebody is hurt it may be of them.
fn reached_unnamed(hearing: &Hearing<'_>, asks: bool) -> Option<String> {
    let (phrases, text) = (hearing.desk.phrases, hearing.text);
    let says = |list| phrases.holds("alone", list, text);
    let alarms = hearing.desk.book.alarms();
    let hurt = alarms
        .values()
        .any(|alarm| alarm.id == FindingId::CrewPersonHurt);
    if asks || hurt || says("not") || !(says("well") && says("reached")) {
        return None;
    }
    let mut lost = alarms.keys().filter_map(|key| of_alone(key.as_str()));
    let who = lost.next().filter(|_| lost.next().is_none())?;
    let mut watchers = watchers_of(&hearing.fleet, who).into_iter();
    let may = watchers.any(|watcher| watcher.id == hearing.member.id);
    (may && hearing.names().is_empty()).then(|| who.to_owned())
}

/// Tells whether the sender, whose clock runs, says that they work on, "back under", or takes note of what they were asked,
/// "10-4": that tells that they live, and not that they came out.
pub(super) fn goes_on(hearing: &Hearing<'_>) -> bool {
    let (ahead, phrases) = (hearing.desk.book.ahead(), hearing.desk.phrases);
    let wish = |plan: &Plan| matches!(plan.kind, PlanKind::CheckMe { .. });
    ahead.alone(&hearing.member.id).is_some()
        && !hearing.heard.plans.iter().any(wish)
        && (phrases.holds("alone", "goes-on", hearing.text)
            || phrases.is("alone", "noted", hearing.text))
}

/// Finds the lone worker for whom an alarm stands and to whom the sender goes: the one named, else the only one.
fn goes_to(hearing: &Hearing<'_>) -> Option<String> {
    let phrases = &hearing.desk.phrases;
    let text = hearing.text;
    let asks = is_marked(text) || hearing.heard.ask.is_some();
    if asks || !phrases.holds("alone", "goes", text) {
        return None;
    }
    let alarms = hearing.desk.book.alarms().keys();
    let lost: Vec<&str> = alarms
        .filter_map(|key| of_alone(key.as_str()))
        .filter(|who| *who != hearing.member.id)
        .collect();
    let named = lost.iter().find(|who| names(hearing, who));
    let to_them = || phrases.ends("alone", "them", text);
    match (named, lost.as_slice()) {
        (Some(who), _) => Some((*who).to_owned()),
        (None, [only]) if to_them() => Some((*only).to_owned()),
        _ => None,
    }
}

/// Takes it that the sender goes to a lone worker: that is noted, and the others hear of it.
fn on_the_way(hearing: &Hearing<'_>, who: &str, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let change = AlarmChange::Acknowledged {
        key: alone_key(who),
        by: hearing.member.id.clone(),
    };
    records.push(Record::Alarm {
        at: hearing.now,
        change,
    });
    let name = reply.voice.person(who).into_owned();
    let line = reply.voice.say("alone-goes", &[("who", name.into())]);
    reply.first.insert(0, line);
    for (to, voice) in other_dispatchers(hearing) {
        let by = voice.person(&hearing.member.id).into_owned();
        let who = voice.person(who).into_owned();
        let args = [("by", Arg::from(by)), ("who", who.into())];
        let text = voice.say("alone-goes-by", &args);
        reply
            .others
            .push(Outgoing::to(&to.id, text).of_level(Level::Warning));
    }
}

/// Tells whether a message wants somebody to be asked after at a time.
pub(super) fn wants_a_clock(phrases: &Phrases, text: &str) -> bool {
    phrases.after("alone", "watch-timed", text).is_some() && minutes_in(phrases, text).is_some()
}

/// Puts "check us in 20" as the wish of the sender that it is, whoever is with them.
pub(super) fn reworded(phrases: &Phrases, text: &str) -> Option<String> {
    let rest = phrases.following("alone", "check-us", text)?;
    let head = text.strip_suffix(rest)?.trim_end();
    let words: Vec<&str> = head.split_whitespace().collect();
    let own = (1..=words.len().min(4)).find(|count| {
        let tail = words[words.len() - count..].join(" ");
        phrases.is("alone", "check-us", &tail)
    })?;
    let before = words[..words.len() - own].join(" ");
    Some(format!("{before} check me {rest}").trim().to_owned())
}

/// Tells, where a clock of the sender's own is set, of whoever is with them that they have none.
pub(super) fn tell_of_company(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    if hearing
        .desk
        .phrases
        .following("alone", "check-us", hearing.written)
        .is_none()
    {
        return;
    }
    let crew = hearing.fleet.crew.values();
    let others = crew.filter(|other| other.id != hearing.member.id && names(hearing, &other.id));
    for other in others {
        reply.say("alone-company", &[("who", other.name.as_str().into())]);
    }
}

/// Finds who of the others a message wants to be asked after, and in how many minutes.
fn for_another(hearing: &Hearing<'_>) -> Option<(Vec<String>, Option<u32>)> {
    let phrases = &hearing.desk.phrases;
    let wants = |list| phrases.holds("alone", list, hearing.text);
    if phrases
        .following("alone", "check-us", hearing.written)
        .is_some()
    {
        return None;
    }
    let minutes = minutes_in(phrases, hearing.text);
    let heard = &hearing.heard;
    let only = heard.ask.is_none() && heard.entries.iter().all(Entry::is_empty);
    let works_alone = wants("others") && only && !is_marked(hearing.text);
    // "keep an eye on lupe" wants a clock in any case, "check tobin" only with a time; "have abel check on 10" wants none
    let watches = wants("watch-over") && looks_after_somebody(hearing);
    if !(watches || works_alone || wants("watch-timed") && minutes.is_some()) {
        return None;
    }
    let crew = hearing.fleet.crew.keys();
    let others = crew.filter(|who| **who != hearing.member.id && names(hearing, who));
    let who: Vec<String> = others.cloned().collect();
    if who.is_empty() {
        return None;
    }
    let till = || {
        let until = till_in(hearing, hearing.text, hearing.inbound.at)?;
        (until - hearing.inbound.at).num_minutes().try_into().ok()
    };
    Some((who, minutes.or_else(till)))
}

/// Tells whether it is a person who is to be looked after, and no trailer: "check on lupe".
fn looks_after_somebody(hearing: &Hearing<'_>) -> bool {
    let rest = hearing
        .desk
        .phrases
        .following("alone", "watch-over", hearing.text);
    let number = |rest: &str| rest.trim_start().starts_with(|c: char| c.is_ascii_digit());
    rest.is_some_and(|rest| !number(rest))
}

/// Reads "in 15", "every 30 min", "en media hora": the minutes.
fn minutes_in(phrases: &Phrases, text: &str) -> Option<u32> {
    minutes_behind(phrases, "within", text)
}

/// Reads "every 20 min", "cada media hora": how often somebody is to be asked.
pub(super) fn interval(phrases: &Phrases, text: &str) -> Option<u32> {
    minutes_behind(phrases, "every", text)
}

/// Returns the message that bare minutes make after a clock was offered: "12, 15 min", "20 minutos".
pub(super) fn offer_taken(
    desk: &Desk,
    fleet: &Fleet,
    text: &str,
    offered: &UnitName,
) -> Option<String> {
    let folded = plain(text);
    let words: Vec<&str> = folded.split(' ').collect();
    let (at, told) = (0..words.len()).find_map(|at| {
        let told = when::counted(&words, at)?;
        told.minutes_each().is_some().then_some((at, told))
    })?;
    let minutes = told.number.checked_mul(told.minutes_each()?)?;
    let mut unit = offered;
    let rest = words[..at].iter().chain(&words[told.behind..]);
    for word in rest.filter(|word| !desk.phrases.is("alone", "bare", word)) {
        unit = settle::known(fleet, &UnitName::new(word))?;
    }
    let fits = (1..=LONGEST_MIN).contains(&minutes);
    fits.then(|| format!("going under {unit}, check me in {minutes}"))
}

fn minutes_behind(phrases: &Phrases, list: &str, text: &str) -> Option<u32> {
    let folded = plain(text);
    let words: Vec<&str> = folded.split(' ').collect();
    (1..words.len()).find_map(|at| {
        if !phrases.is("alone", list, words[at - 1]) {
            return None;
        }
        let number = match when::counted(&words, at) {
            Some(told) => told.number.checked_mul(told.minutes_each().unwrap_or(1))?,
            None if phrases.is("alone", "half-an-hour", words[at]) => 30,
            None if phrases.is("alone", "an-hour", words[at]) => 60,
            None => return None,
        };
        (1..=LONGEST_MIN).contains(&number).then_some(number)
    })
}

/// Reads how many minutes more the sender wants of their own running clock: "make it 30", "10 more min", "20 min".
pub(super) fn more_minutes(hearing: &Hearing<'_>) -> Option<u32> {
    let talk = &hearing.talk;
    hearing.desk.book.ahead().alone(&hearing.member.id)?;
    let open = talk.question_at(hearing.inbound.at).is_some()
        || !talk.checks.is_empty()
        || talk.round.is_some();
    let told = more_told(hearing.desk.phrases, hearing.text)?;
    (says_no_more(hearing, &told) && !(told.bare && open)).then_some(told.minutes)
}

/// Minutes more, as the words tell them.
struct More {
    /// The number told, before its measure.
    number: u32,
    minutes: u32,
    /// Whether nothing but the number and its measure was said.
    bare: bool,
}

/// Reads minutes more: a number of its own with a measure of time, or one that directly follows the words that ask for more.
fn more_told(phrases: &Phrases, text: &str) -> Option<More> {
    const FEW: usize = 7;
    let folded = plain(text);
    let words: Vec<&str> = folded.split(' ').filter(|word| !word.is_empty()).collect();
    let mut numbers = (0..words.len()).filter_map(|at| Some((at, when::counted(&words, at)?)));
    let (at, told) = numbers.next()?;
    if numbers.next().is_some() || words.len() > FEW {
        return None;
    }
    let (before, behind) = (words[..at].join(" "), words[told.behind..].join(" "));
    let directly = phrases.ends("alone", "more", &before)
        || phrases.after("alone", "more-behind", &behind).is_some();
    // "10 more min" has its measure behind the word
    let measured = told.minutes_each().or_else(|| {
        let rest = phrases.after("alone", "more-behind", &behind)?;
        words::minutes_in(rest.split(' ').next()?)
    });
    let goes_on = phrases.holds("alone", "goes-on", text);
    let asks = measured.is_some() && (goes_on || phrases.holds("alone", "more", text));
    let bare = measured.is_some() && before.is_empty() && behind.is_empty();
    let minutes = told.number.checked_mul(measured.unwrap_or(1))?;
    let told = More {
        number: told.number,
        minutes,
        bare,
    };
    ((directly || asks || bare) && (1..=LONGEST_MIN).contains(&minutes)).then_some(told)
}

/// Tells whether a message that tells minutes reports, wants and names nothing besides.
fn says_no_more(hearing: &Hearing<'_>, told: &More) -> bool {
    let heard = &hearing.heard;
    let else_wanted = |plan: &Plan| !matches!(plan.kind, PlanKind::Other | PlanKind::Well);
    // the number itself may be the name of a trailer, too
    let number = told.number.to_string();
    let its_own = |name: &UnitName| name.as_str() == number;
    heard.entries.iter().all(Entry::is_empty)
        && !heard.plans.iter().any(else_wanted)
        && heard.named.iter().all(its_own)
}

/// Returns until when the sender says that they work alone.
pub(super) fn till(hearing: &Hearing<'_>) -> Option<DateTime<Utc>> {
    let phrases = &hearing.desk.phrases;
    // "tobin works alone at 12 til 9" is tobin's clock
    if for_another(hearing).is_some() {
        return None;
    }
    let under = |kind: &PlanKind| *kind == PlanKind::GoingUnder;
    let below = hearing.heard.plans.iter().any(|plan| under(&plan.kind));
    let alone = below || phrases.holds("alone", "says", hearing.text);
    let asks = is_marked(hearing.text);
    (alone && !asks).then(|| till_in(hearing, hearing.text, hearing.inbound.at))?
}

/// Reads "till 6pm" in words that were written at an instant.
pub(super) fn till_in(
    hearing: &Hearing<'_>,
    text: &str,
    written: DateTime<Utc>,
) -> Option<DateTime<Utc>> {
    let rest = hearing.desk.phrases.following("alone", "till", text)?;
    let rest = when::with_halves_joined(rest);
    let told: Vec<&str> = rest.split_whitespace().take(2).collect();
    let phrases = hearing.desk.phrases;
    let first = told
        .first()
        .map_or("", |word| word.trim_end_matches([',', '.', '!']));
    // "till midnight", "hasta las 20"
    let late = first
        .parse::<u32>()
        .ok()
        .filter(|hour| (13..24).contains(hour));
    let told = match late {
        _ if phrases.is("clock", "midnight", first) => "at 00:00".to_owned(),
        _ if phrases.is("clock", "noon", first) => "at 12:00".to_owned(),
        Some(hour) => format!("at {hour}:00"),
        None => format!("at {}", told.join(" ")),
    };
    let unit = unit_till(hearing);
    let zone = hearing.fleet.zone_at(unit.as_ref(), written);
    let until = when::coming(&told, written, zone)?;
    (until - written <= LONGEST_TILL && until > written).then_some(until)
}

/// Reads another end of the sender's own clock that runs until a time of day: "extend 30 min", "until 19:30".
pub(super) fn new_end(hearing: &Hearing<'_>) -> Option<DateTime<Utc>> {
    let (phrases, text) = (hearing.desk.phrases, hearing.text);
    let clock = hearing.desk.book.ahead().alone(&hearing.member.id)?;
    if is_marked(text) {
        return None;
    }
    let extends = phrases.after("alone", "extends", text);
    let opens = extends.unwrap_or(text);
    let told = phrases.after("alone", "till", opens);
    // one of so many minutes is given an end, too: "make it till 8"
    let ends = till_in(hearing, clock.why.text(), clock.since);
    if let (None, Some(_), Some(_)) = (ends, extends, told) {
        return till_in(hearing, opens, hearing.inbound.at);
    }
    let ends = ends?;
    if told.is_some_and(|rest| rest.split_whitespace().count() <= 2) {
        return till_in(hearing, opens, hearing.inbound.at);
    }
    let more = phrases.holds("alone", "more-behind", text) || opens.len() < text.len();
    let minutes = more_minutes(hearing).filter(|_| more)?;
    Some(ends.max(hearing.inbound.at) + TimeDelta::minutes(i64::from(minutes)))
}

/// Returns the trailer that is named before the time until which somebody works there: "alone at 12 till 6pm".
pub(super) fn unit_till(hearing: &Hearing<'_>) -> Option<UnitName> {
    let phrases = &hearing.desk.phrases;
    let (head, _) = phrases.parted("alone", "till", hearing.text)?;
    let mut words = head.split(|c: char| !(c.is_alphanumeric() || c == '-'));
    words.find_map(|word| settle::known(&hearing.fleet, &UnitName::new(word)).cloned())
}

/// Returns the trailer at which somebody works: at the site that they name the one of theirs, or the only one, else the one
/// talked about.
pub(super) fn unit_worked_on(hearing: &Hearing<'_>) -> Option<UnitName> {
    let now = hearing.inbound.at;
    let there = sites::told_in(&hearing.fleet, hearing.text).and_then(|site| {
        let mut jobs = hearing.fleet.jobs_between(now, now);
        let job = jobs.find(|job| job.id.site == site.id)?;
        let sent = hearing.desk.book.sent(&hearing.member.id).iter().rev();
        let last = sent.flat_map(|sent| sent.units.last()).next();
        match (last, job.trailers.as_slice()) {
            (Some(last), trailers) if trailers.contains(last) => Some(last.clone()),
            (_, [only]) => Some(only.clone()),
            _ => None,
        }
    });
    let unit = there.or_else(|| hearing.talk.unit_at(now).cloned())?;
    settle::known(&hearing.fleet, &unit).cloned()
}

/// Tells whether a message names somebody of the crew.
fn names(hearing: &Hearing<'_>, who: &str) -> bool {
    let text = format!(" {} ", plain(hearing.text));
    // "lupe's on his own"
    let shortened = hearing.text.contains(['\'', '’']);
    let called = |name: &str| {
        let name = plain(name);
        let is = |name: String| text.contains(&format!(" {name} "));
        !name.is_empty() && (is(name.clone()) || shortened && is(format!("{name}s")))
    };
    let member = hearing.fleet.crew.get(who);
    called(who) || member.is_some_and(|member| called(&member.name))
}

/// Answers it; with a digest or the tasks, says first who works alone.
pub(super) fn tell(
    hearing: &Hearing<'_>,
    lone: Option<&Lone>,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    match lone {
        Some(Lone::Asked(who)) => {
            if let Some(clock) = hearing.desk.book.ahead().alone(who) {
                let line = told(who, clock, &reply.voice);
                reply.first.insert(0, line);
            }
        }
        Some(Lone::Reached(who)) => reached(hearing, who, reply, records),
        Some(Lone::GoesTo(who)) => on_the_way(hearing, who, reply, records),
        Some(Lone::NoClock) => {
            let named = hearing.names();
            let unit = named.first().or_else(|| hearing.talk.unit_at(hearing.now));
            let unit = unit.and_then(|name| settle::known(&hearing.fleet, name));
            let line = match unit {
                Some(unit) => {
                    let args = [("unit", Arg::from(unit.as_str()))];
                    reply.voice.say("speak-alone-how", &args)
                }
                None => reply.voice.word("speak-alone-how-nowhere"),
            };
            reply.first.insert(0, line);
        }
        Some(Lone::Till | Lone::More | Lone::On) => {} // set with what the bot will speak of
        Some(Lone::ForWhom) => {
            let line = reply.voice.word("alone-for-whom");
            reply.first.insert(0, line);
        }
        Some(Lone::For(who, minutes)) => {
            let crew = &hearing.fleet.crew;
            for member in who.iter().filter_map(|who| crew.get(who)) {
                match minutes {
                    Some(minutes) => ahead::set_for(hearing, member, *minutes, reply, records),
                    None => {
                        let args = [("who", Arg::from(member.name.as_str()))];
                        let line = reply.voice.say("alone-for-how", &args);
                        reply.first.insert(0, line);
                    }
                }
            }
        }
        None if matches!(hearing.heard.ask, Some(Ask::Digest | Ask::Tasks)) => {
            let lines = everybody(hearing, reply);
            reply.first.splice(..0, lines);
        }
        None => {}
    }
}

/// Says in short what an alarm is about: the person, where it is one.
pub(super) fn alarm_name(key: &str, alarm: &Alarm, tasks: &Tasks, voice: &Voice<'_>) -> String {
    // work that is late is named by its task
    if let Some(task) = of_task(key).and_then(|id| tasks.task(id)) {
        let head = voice.task_head(task);
        return voice.say("got-it-task", &[("task", head.into())]);
    }
    if let Some(who) = of_alone(key) {
        let who = voice.person(who).into_owned();
        return voice.say("got-it-alone", &[("who", who.into())]);
    }
    // what was done has words of its own
    let act = key.split(':').next().unwrap_or_default();
    let act = format!("name-site-{act}");
    let name = match voice.knows(&act) {
        true => voice.word(&act),
        false => voice.name(alarm.id, alarm.level),
    };
    match &alarm.unit {
        Some(unit) => format!("{unit} {name}"),
        None => name,
    }
}

/// Says who works alone, each in a line.
pub(super) fn everybody(hearing: &Hearing<'_>, reply: &Reply<'_>) -> Vec<String> {
    let clocks = hearing.desk.book.ahead().all_alone();
    clocks
        .map(|(who, clock)| told(who, clock, &reply.voice))
        .collect()
}

pub(super) fn told(who: &str, clock: &Alone, voice: &Voice<'_>) -> String {
    let mut args = vec![
        ("who", Arg::from(voice.person(who).into_owned())),
        ("time", clock.since.into()),
        ("words", voice.quote(clock.why.text()).into()),
    ];
    let key = match clock.alarmed {
        Some(_) => "alone-no-answer",
        None => {
            args.push(("due", clock.due.into()));
            "alone-runs"
        }
    };
    voice.say(key, &args)
}

/// Ends the clock of somebody who was reached, and tells the other dispatchers.
fn reached(hearing: &Hearing<'_>, who: &str, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    let at = hearing.now;
    let change = AheadChange::Alone {
        who: who.to_owned(),
        alone: None,
    };
    records.push(Record::Ahead { at, change });
    let key = alone_key(who);
    if hearing.desk.book.alarms().contains_key(&key) {
        let change = AlarmChange::Over { key };
        records.push(Record::Alarm { at, change });
    }
    let name = reply.voice.person(who).into_owned();
    let line = reply.voice.say("alone-reached", &[("who", name.into())]);
    reply.first.insert(0, line);
    for (to, voice) in other_dispatchers(hearing) {
        let args = [
            (
                "by",
                Arg::from(voice.person(&hearing.member.id).into_owned()),
            ),
            ("who", voice.person(who).into_owned().into()),
        ];
        let text = voice.say("alone-reached-by", &args);
        reply
            .others
            .push(Outgoing::to(&to.id, text).of_level(Level::Warning));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn more_minutes_have_a_measure_or_directly_follow_the_words() {
        for (text, minutes) in [
            ("make it 30", Some(30)),
            ("10 more min", Some(10)),
            ("need 10 more", Some(10)),
            ("need another 20", Some(20)),
            ("20 min", Some(20)),
            ("1h more", Some(60)),
            ("dame otros 15", Some(15)),
            ("15 minutos más", Some(15)),
            ("need pump out on 12", None),
            ("need help on 12", None),
            ("12 needs more paper", None),
            ("necesito la pipa en la 12", None),
            ("give me the status of 12", None),
            ("10 more on 12", None),
        ] {
            let told = more_told(Phrases::built_in(), text).map(|told| told.minutes);
            assert_eq!(told, minutes, "{text}");
        }
    }

    #[test]
    fn minutes_are_read_in_either_language() {
        for (text, minutes) in [
            ("check on tobin in 15", Some(15)),
            ("ask lupe every 30 min if shes ok", Some(30)),
            ("check on abel in 2 hours", Some(120)),
            ("pregunta a lupe en 20min", Some(20)),
            ("checa a lupe en media hora", Some(30)),
            ("check on him in an hour", Some(60)),
            ("check on him in 900", None),
            ("keep an eye on lupe in the barn", None),
        ] {
            assert_eq!(minutes_in(Phrases::built_in(), text), minutes, "{text}");
        }
    }
}
