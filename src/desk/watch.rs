//! Alarms that people ask for: "if 12 hits 3/4 call me".

use chrono::TimeDelta;

use super::answer::{self, Reply};
use super::digest;
use super::inbound::Outgoing;
use super::phrases::is_marked;
use super::receive::Hearing;
use super::settle;
use super::situate::Case;
use crate::book::Record;

use crate::dialogue::Watch;
use crate::finding::Level;
use crate::heard::{Entry, Event, Plan, PlanKind, ReadingKey, UnitName};

/// So many trailers are watched by one wish at the most.
const MOST_AT_ONCE: usize = 40;
/// A reading older than this does not tell where a trailer is now.
const FRESH: TimeDelta = TimeDelta::hours(24);

/// What somebody wants to be called for.
#[derive(Debug, Clone, Copy)]
pub(super) struct Wanted<'a> {
    /// The trailer.
    pub(super) unit: &'a UnitName,
    /// The reading.
    pub(super) key: ReadingKey,
    /// The value that sets it off.
    pub(super) value: f64,
    /// True when falling to it counts.
    pub(super) below: bool,
}

/// Takes "under 1/4", "menos de 1/4" in a condition for the way down: the reader takes such words for a bound alone.
pub(super) fn point_down(hearing: &mut Hearing<'_>) {
    let phrases = hearing.desk.phrases;
    for plan in &mut hearing.heard.plans {
        if let PlanKind::Watch { below, .. } = &mut plan.kind {
            // of two conditions nobody can say here whose word it is
            let two = phrases.holds("watch", "parts", &plan.text);
            *below |= !two && phrases.holds("watch", "under", &plan.text);
        }
    }
}

/// Sets a watch; where the trailer is there already, says so at once.
pub(super) fn set(
    hearing: &Hearing<'_>,
    wanted: Wanted<'_>,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let Wanted {
        unit,
        key,
        value,
        below,
    } = wanted;
    if begin(hearing, wanted, reply, records) {
        reply.watching(unit, key, value, below);
    }
}

/// Sets a watch and says nothing of it; false where the trailer is there already, which is said.
fn begin(
    hearing: &Hearing<'_>,
    wanted: Wanted<'_>,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) -> bool {
    let Wanted {
        unit,
        key,
        value,
        below,
    } = wanted;
    let kept = hearing.desk.book.unit(unit);
    let last = kept.and_then(|kept| kept.state().readings.get(&key));
    // what was read before the tank was pumped or filled is no longer so
    let since = kept.and_then(|kept| match key {
        ReadingKey::WastePct | ReadingKey::WasteGal => kept.state().last_pumped().map(|(at, _)| at),
        ReadingKey::FreshPct | ReadingKey::FreshGal => kept.state().when(Event::FreshFilled),
        _ => None,
    });
    let fresh = last.filter(|last| {
        hearing.now - last.at <= FRESH && since.is_none_or(|since| last.at >= since)
    });
    let watch = Watch {
        who: hearing.member.id.clone(),
        unit: unit.clone(),
        key,
        value,
        below,
        since: hearing.now,
    };
    if let Some(last) = fresh.filter(|last| is_reached(&watch, last.value)) {
        let what = reply
            .voice
            .reading(key, last.value, hearing.fleet.trailers.get(unit));
        let args = [
            ("unit", unit.as_str().into()),
            ("what", what.into()),
            ("time", last.at.into()),
        ];
        reply.say("watch-past", &args);
        return false;
    }
    let alike = |other: &&Watch| {
        other.who == watch.who
            && other.unit == watch.unit
            && other.key == watch.key
            && other.below == watch.below
    };
    // the same thing asked for again, or with another number, is one watch
    let old = hearing.desk.book.watches().iter().filter(alike).cloned();
    records.extend(old.map(|watch| Record::Unwatch { watch }));
    records.push(Record::Watch { watch });
    true
}

/// Reads "if any unit hits 7/8 call me" as the watch that each trailer at a job is to have; none where the message is no
/// such wish.
pub(super) fn on_any(hearing: &Hearing<'_>) -> Option<(Vec<UnitName>, PlanKind)> {
    let phrases = &hearing.desk.phrases;
    let says = |list| phrases.holds("watch", list, hearing.text);
    let heard = &hearing.heard;
    if !(says("wants") && says("on")) || heard.command.is_some() || !heard.named.is_empty() {
        return None;
    }
    let (head, rest) = phrases.parted("watch", "any", hearing.text)?;
    let units: Vec<UnitName> = digest::told_of(hearing.desk, &hearing.fleet, hearing.now, None)
        .filter(|unit| hearing.fleet.job_of(unit, hearing.now, None).is_some())
        .take(MOST_AT_ONCE)
        .cloned()
        .collect();
    // read as of one of them, to know what is to be watched
    let text = format!("{head} {} {rest}", units.first()?);
    let scale = hearing.fleet.style.temperature;
    let read = hearing.desk.reader.hear(&text, scale);
    let mut plans = read.plans.into_iter().map(|plan| plan.kind);
    let kind = plans.find(|kind| matches!(kind, PlanKind::Watch { .. }))?;
    Some((units, kind))
}

/// Returns the trailer that stands right behind the condition of a watch: "call me if 12 hits 7/8".
pub(super) fn unit_of(hearing: &Hearing<'_>, plan: &Plan) -> Option<UnitName> {
    let phrases = &hearing.desk.phrases;
    if !matches!(plan.kind, PlanKind::Watch { .. }) {
        return None;
    }
    let condition = phrases.following("watch", "on", &plan.text)?;
    let name = phrases
        .after("mend", "trailer", condition)
        .unwrap_or(condition);
    let name = UnitName::new(name.split_whitespace().next()?);
    settle::known(&hearing.fleet, &name).cloned()
}

/// Sets the watch that is wanted on any of the trailers at a job.
pub(super) fn set_on_any(
    hearing: &Hearing<'_>,
    units: &[UnitName],
    kind: &PlanKind,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let PlanKind::Watch { key, value, below } = *kind else {
        return;
    };
    let mut watched: Vec<String> = Vec::new();
    for unit in units {
        let wanted = Wanted {
            unit,
            key,
            value,
            below,
        };
        if begin(hearing, wanted, reply, records) {
            watched.push(unit.to_string());
        }
    }
    if watched.is_empty() {
        return;
    }
    let what = reply.voice.reading(key, value, None);
    let names = reply.voice.one_of(&watched);
    let key = match below {
        true => "watch-set-any-below",
        false => "watch-set-any",
    };
    reply.say(key, &[("names", names.into()), ("what", what.into())]);
}

/// Reads the other half of "if 10 goes over 3/4 or pressure drops under 40": a watch of its own, or the words it is not
/// understood by.
pub(super) fn other_half(hearing: &Hearing<'_>) -> Option<Result<Plan, String>> {
    let watches = |plan: &&Plan| matches!(plan.kind, PlanKind::Watch { .. });
    let mut set = hearing.heard.plans.iter().filter(watches);
    let (first, none) = (set.next()?, set.next());
    let half = [" or ", " o ", " u "];
    let rest = half
        .iter()
        .find_map(|word| Some(hearing.text.split_once(word)?.1))?;
    if none.is_some() || !rest.contains(|c: char| c.is_ascii_digit()) {
        return None;
    }
    let unit = first.unit.as_ref().map_or("", UnitName::as_str);
    let text = format!("if {unit} {rest} call me");
    let heard = hearing
        .desk
        .reader
        .hear(&text, hearing.fleet.style.temperature);
    let mut other = heard.plans.into_iter();
    let other = other.find(|plan| watches(&plan) && plan.kind != first.kind);
    Some(other.ok_or_else(|| rest.trim().to_owned()))
}

/// What a message wants of the bot that it does not do, and how that is said.
pub(super) enum Missed {
    /// An alarm whose condition is not understood.
    Alarm,
    /// To be reminded at a time.
    Reminder,
    /// Something on a condition that is no alarm: "if nobody called call abel".
    Condition,
}

/// Tells whether a message wants the sender to be reminded: no truck is ordered by it.
pub(super) fn reminds(hearing: &Hearing<'_>) -> bool {
    let says = hearing.desk.phrases.holds("watch", "remind", hearing.text);
    says && hearing.heard.command.is_none()
}

/// Finds what a message wants on a condition or at a time that the bot does not take: it must not meet silence.
pub(super) fn missed(hearing: &Hearing<'_>) -> Option<Missed> {
    let phrases = &hearing.desk.phrases;
    let text = hearing.text;
    let says = |list| phrases.holds("watch", list, text);
    let heard = &hearing.heard;
    let acted_on = |plan: &Plan| !matches!(plan.kind, PlanKind::Other | PlanKind::Well);
    let tells = heard.ask.is_some()
        || heard.command.is_some()
        || !heard.entries.iter().all(Entry::is_empty)
        || answer::is_question(hearing)
        || is_marked(text);
    if tells || heard.plans.iter().any(acted_on) {
        return None;
    }
    if reminds(hearing) {
        return Some(Missed::Reminder);
    }
    let bare = phrases.after("watch", "bare", text).is_some() && !hearing.names().is_empty();
    let wants = says("wants") && says("on") && heard.unclear.is_empty();
    if bare || wants && !heard.plans.is_empty() {
        return Some(Missed::Alarm);
    }
    // "sí" without its accent opens answers too
    let busy = !hearing.talk.checks.is_empty() || hearing.talk.round.is_some();
    let on = !busy && phrases.after("watch", "condition", text).is_some();
    (on && !heard.plans.is_empty() && heard.unclear.is_empty()).then_some(Missed::Condition)
}

/// Says that it is not taken.
pub(super) fn say_missed(hearing: &Hearing<'_>, missed: &Missed, reply: &mut Reply<'_>) {
    match missed {
        Missed::Alarm => reply.say("watch-how", &[]),
        Missed::Reminder => reply.say("watch-no-reminder", &[]),
        Missed::Condition => {
            let quote = reply.voice.quote(hearing.text.trim());
            reply.say("watch-no-condition", &[("quote", quote.into())]);
        }
    }
}

/// Lists the sender's watches where the message asks for them.
pub(super) fn list(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let phrases = &hearing.desk.phrases;
    if !phrases.is("watch", "list", hearing.text) && !phrases.holds("watch", "asks", hearing.text) {
        return;
    }
    let mine = |watch: &&Watch| watch.who == hearing.member.id;
    let mut none = true;
    for watch in hearing.desk.book.watches().iter().filter(mine) {
        none = false;
        let line = told(watch, hearing, reply);
        reply.lines.push(line);
    }
    if none {
        reply.say("watch-none", &[]);
    }
}

/// Drops the sender's watches where the message says so: those on the trailer it names, else all.
pub(super) fn drop(
    hearing: &Hearing<'_>,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) -> bool {
    let phrases = &hearing.desk.phrases;
    let drops = phrases.holds("watch", "drop", hearing.text);
    // who is named is looked for among all trailers: only where it matters
    if !drops && phrases.after("watch", "forget", hearing.text).is_none() {
        return false;
    }
    let named = hearing.names();
    if !drops && !forgets_one(hearing, &named) {
        return false;
    }
    let mine: Vec<Watch> = hearing
        .desk
        .book
        .watches()
        .iter()
        .filter(|watch| watch.who == hearing.member.id)
        .filter(|watch| named.is_empty() || named.contains(&watch.unit))
        .cloned()
        .collect();
    if mine.is_empty() {
        reply.say("watch-none", &[]);
    }
    for watch in mine {
        reply.say("never-mind-watch", &[("unit", watch.unit.as_str().into())]);
        records.push(Record::Unwatch { watch });
    }
    true
}

/// Tells whether a message that opens by forgetting drops the watch on the one trailer that it names: "never mind the 10
/// one".
fn forgets_one(hearing: &Hearing<'_>, named: &[UnitName]) -> bool {
    const LONGEST: usize = 6;
    let phrases = &hearing.desk.phrases;
    let [unit] = named else { return false };
    let mut watches = hearing.desk.book.watches().iter();
    let mine = |watch: &Watch| watch.who == hearing.member.id && watch.unit == *unit;
    let short = hearing.text.split_whitespace().count() <= LONGEST;
    let of_a_truck = phrases.holds("truck", "who", hearing.text);
    short && !of_a_truck && watches.any(mine)
}

fn told(watch: &Watch, hearing: &Hearing<'_>, reply: &Reply<'_>) -> String {
    let spec = hearing.fleet.trailers.get(&watch.unit);
    let what = reply.voice.reading(watch.key, watch.value, spec);
    let key = if watch.below {
        "watch-set-below"
    } else {
        "watch-set"
    };
    let args = [("unit", watch.unit.as_str().into()), ("what", what.into())];
    reply.voice.say(key, &args)
}

/// Tells whoever asked, when a report reaches what they watch.
pub(super) fn hits(
    hearing: &Hearing<'_>,
    cases: &[Case],
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    for watch in hearing.desk.book.watches() {
        let Some(case) = cases.iter().find(|case| case.unit == watch.unit) else {
            continue;
        };
        let Some(value) = reached(watch, case) else {
            continue;
        };
        records.push(Record::Unwatch {
            watch: watch.clone(),
        });
        let Some(member) = hearing.fleet.crew.get(&watch.who) else {
            continue;
        };
        let voice = hearing
            .desk
            .voice_for(member, None, &hearing.fleet, hearing.now);
        let what = voice.reading(watch.key, value, case.spec());
        let by = voice.person(&hearing.member.id).into_owned();
        let text = voice.say(
            "watch-hit",
            &[
                ("unit", watch.unit.as_str().into()),
                ("what", what.into()),
                ("who", by.into()),
            ],
        );
        if watch.who == hearing.member.id {
            reply.opening.push(text);
        } else {
            reply
                .others
                .push(Outgoing::to(&watch.who, text).of_level(Level::Notice));
        }
    }
}

fn reached(watch: &Watch, case: &Case) -> Option<f64> {
    let value = case.report.readings.value(watch.key)?;
    is_reached(watch, value).then_some(value)
}

fn is_reached(watch: &Watch, value: f64) -> bool {
    if watch.below {
        value <= watch.value
    } else {
        value >= watch.value
    }
}
