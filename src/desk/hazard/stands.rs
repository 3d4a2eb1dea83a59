//! A hazard that was told stands on its trailer: it is said where somebody asks after the trailer, until it is told to be
//! over, or until what was done ends it.

use super::{Hazard, known};
use crate::book::{AlarmChange, Record, UnitState};
use crate::desk::answer::Reply;
use crate::desk::inbound::Outgoing;
use crate::desk::others::other_dispatchers;
use crate::desk::phrases::{Words, plain};
use crate::desk::receive::Hearing;
use crate::desk::settle::{self, Settled};
use crate::finding::{Finding, FindingId, Level};
use crate::heard::{Entry, Event, UnitName};
use crate::reply::Arg;
use crate::rules;

/// What ends a hazard of the place or of the road, where the file names nothing for it: the trailer stands elsewhere.
const ELSEWHERE: &[Event] = &[Event::Arrived, Event::Returned];
/// "23 safe now" is short; a longer message says of what.
const LONGEST: usize = 6;

/// Hazards of one trailer that a message says are over.
pub(in crate::desk) struct Over {
    unit: UnitName,
    codes: Vec<String>,
}

/// Returns what is found by these hazards, as they were told of a trailer.
pub(in crate::desk) fn findings<'a>(
    unit: &'a UnitName,
    codes: impl Iterator<Item = &'a String> + 'a,
) -> impl Iterator<Item = Finding> + 'a {
    let hazards = codes.filter_map(|code| known().iter().find(|hazard| hazard.is_news_of(code)));
    hazards.map(|hazard| hazard.finding(Some(unit)))
}

/// Tells whether one of a trailer's findings says a hazard as strongly as it would say itself.
pub(in crate::desk) fn is_said_by(code: &str, findings: &[Finding]) -> bool {
    let hazard = known().iter().find(|hazard| hazard.is_news_of(code));
    hazard.is_some_and(|hazard| hazard.is_said(findings))
}

/// Tells whether a hazard that stands under a code is a danger.
pub(in crate::desk) fn is_a_danger(code: &str) -> bool {
    let mut all = known().iter().filter(|hazard| hazard.is_news_of(code));
    all.any(|hazard| hazard.level == Some(Level::Danger))
}

/// Tells whether a text tells of any hazard, danger or not.
pub(in crate::desk) fn is_told_in(text: &str) -> bool {
    let folded = plain(text);
    let words = Words::of(&folded);
    known().iter().any(|hazard| hazard.is_in(&words, text))
}

/// Finds the hazards that a message says are over, and reports them so.
pub(in crate::desk) fn over(hearing: &Hearing<'_>, settled: &mut Settled) -> Option<Over> {
    ended_by_work(hearing, settled);
    let heard = &hearing.heard;
    if heard.command.is_some() || hearing.mends() || hearing.asks_something() {
        return None;
    }
    let unit = hearing.unit_meant()?;
    let state = hearing.desk.book.unit(&unit)?.state();
    let folded = plain(hearing.text);
    let words = Words::of(&folded);
    let codes = told_over(hearing, &words, state);
    if codes.is_empty() {
        return None;
    }
    let entry = settled.report_on(&unit, hearing.inbound.at);
    entry.hazards_over.extend(codes.iter().cloned());
    Some(Over { unit, codes })
}

/// Tells whether a hazard stands on a trailer and the words say that it is over: "needle picked up".
pub(super) fn is_told_over(
    hearing: &Hearing<'_>,
    words: &Words<'_>,
    hazard: &Hazard,
    unit: Option<&UnitName>,
) -> bool {
    let kept = unit.and_then(|unit| hearing.desk.book.unit(unit));
    let over = kept.map(|kept| told_over(hearing, words, kept.state()));
    over.is_some_and(|over| hazard.reports.is_empty() && over.contains(&hazard.code))
}

/// Returns the standing hazards that the words say are over: each that they name, or all where nothing is named.
fn told_over(hearing: &Hearing<'_>, words: &Words<'_>, state: &UnitState) -> Vec<String> {
    let says = |list| hearing.desk.phrases.holds("hazard", list, hearing.text);
    let standing = state.hazards.keys();
    if says("not") {
        return Vec::new();
    }
    let ended = |code: &&String| {
        let mut all = known().iter().filter(|hazard| hazard.is_news_of(code));
        all.any(|hazard| {
            let mended = !hazard.strict && says("mended");
            words.hold_any(&hazard.about) && (mended || words.hold_any(&hazard.over))
        })
    };
    let named: Vec<String> = standing.clone().filter(ended).cloned().collect();
    let short = hearing.text.split_whitespace().count() <= LONGEST;
    match named.is_empty() && short && says("safe") {
        true => standing.filter(|code| !is_strict(code)).cloned().collect(),
        false => named,
    }
}

/// Tells whether only the words of those who may end it do: "power came back" makes no line on the ground safe.
fn is_strict(code: &str) -> bool {
    known().iter().any(|one| one.strict && one.code == code)
}

/// Says that a hazard stands which others end, where a message reports power on, or anything as mended or safe.
pub(in crate::desk) fn tell_strict(
    hearing: &Hearing<'_>,
    settled: &Settled,
    reply: &mut Reply<'_>,
) {
    let reported = settled.reports.first().map(|(unit, ..)| unit.clone());
    let Some(unit) = reported.or_else(|| hearing.unit_meant()) else {
        return;
    };
    let Some(kept) = hearing.desk.book.unit(&unit) else {
        return;
    };
    let says = |list| hearing.desk.phrases.holds("hazard", list, hearing.text);
    let mut entries = settled.reports.iter().map(|(.., entry)| entry);
    let over = |entry: &Entry| !entry.hazards_over.is_empty();
    if hearing.asks_something() || entries.clone().any(over) {
        return;
    }
    let back =
        entries.any(|entry| entry.events.contains(&Event::PowerOn) || !entry.cleared.is_empty());
    if !(back || says("mended") || says("safe") || says("slight")) {
        return;
    }
    let me = &hearing.member.id;
    for code in kept.state().hazards.keys().filter(|code| is_strict(code)) {
        let key = format!("stays-site-unsafe-{code}");
        if !reply.voice.knows(&key) {
            continue;
        }
        reply.say(&key, &[("unit", Arg::from(unit.as_str()))]);
        for (to, voice) in other_dispatchers(hearing) {
            let args = [
                ("unit", Arg::from(unit.as_str())),
                ("who", voice.person(me).into_owned().into()),
                ("quote", voice.quote(hearing.text.trim()).into()),
                ("what", voice.hazard(code).into()),
            ];
            let text = voice.say("stays-told", &args);
            reply
                .others
                .push(Outgoing::to(&to.id, text).of_level(Level::Warning));
        }
    }
}

/// Finds the hazard that a message says is another trailer's: "its the relief valve at 10 not 23". It ends on the one that
/// was told wrong.
pub(super) fn moved(
    hearing: &Hearing<'_>,
    settled: &mut Settled,
) -> Option<(&'static Hazard, UnitName)> {
    // "at 10 not 23" names a trailer, and no hour
    let named = hearing.heard.named.iter();
    let mut names: Vec<&UnitName> = named
        .filter_map(|name| settle::known(&hearing.fleet, name))
        .collect();
    names.dedup();
    let [one, other] = names.as_slice() else {
        return None;
    };
    let denies = |unit: &UnitName| hearing.desk.phrases.denies(hearing.text, unit.as_str());
    let (right, wrong) = match (denies(one), denies(other)) {
        (false, true) => (*one, *other),
        (true, false) => (*other, *one),
        _ => return None,
    };
    let state = hearing.desk.book.unit(wrong)?.state();
    let folded = plain(hearing.text);
    let words = Words::of(&folded);
    let hazard = known().iter().find(|hazard| {
        let stands = state.hazards.contains_key(&hazard.code) && hazard.is_news_of(&hazard.code);
        stands && words.hold_any(&hazard.about)
    })?;
    let entry = settled.report_on(wrong, hearing.inbound.at);
    entry.hazards_over.push(hazard.code.clone());
    Some((hazard, right.clone()))
}

/// Ends what is over by what a message reports as done: a trailer that is chocked, or one that stands elsewhere.
fn ended_by_work(hearing: &Hearing<'_>, settled: &mut Settled) {
    for (unit, _, entry) in &mut settled.reports {
        let Some(kept) = hearing.desk.book.unit(unit) else {
            continue;
        };
        let ends = |code: &&String| {
            let mut all = known().iter().filter(|hazard| hazard.is_news_of(code));
            all.any(|hazard| hazard.ends_with(entry))
        };
        let over: Vec<String> = kept.state().hazards.keys().filter(ends).cloned().collect();
        entry.hazards_over.extend(over);
    }
}

/// Tells the dispatchers what is over, and ends its alarms.
pub(in crate::desk) fn tell_over(
    hearing: &Hearing<'_>,
    over: &Over,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let unit = &over.unit;
    for code in &over.codes {
        let key = format!("unsafe-{code}:{unit}");
        if hearing.desk.book.alarms().contains_key(&key) {
            let change = AlarmChange::Over { key };
            records.push(Record::Alarm {
                at: hearing.now,
                change,
            });
        }
    }
    let me = &hearing.member.id;
    for (to, voice) in other_dispatchers(hearing) {
        let names: Vec<String> = over.codes.iter().map(|code| voice.hazard(code)).collect();
        let args = [
            ("unit", Arg::from(unit.as_str())),
            ("who", voice.person(me).into_owned().into()),
            ("what", voice.all_of(&names).into()),
        ];
        let text = voice.say("hazard-over-told", &args);
        reply
            .others
            .push(Outgoing::to(&to.id, text).of_level(Level::Notice));
    }
}

impl Hazard {
    /// Tells whether it is the hazard of this code, by which nothing else is reported.
    /// Tells whether one of a trailer's findings says it as strongly.
    pub(super) fn is_said(&self, findings: &[Finding]) -> bool {
        let says = |finding: &Finding| {
            Some(finding.id) == self.said_by && Some(finding.level) >= self.level
        };
        findings.iter().any(says)
    }

    fn is_news_of(&self, code: &str) -> bool {
        self.code == code && self.reports.is_empty() && self.after.is_none()
    }

    /// Returns what is found by it.
    pub(super) fn finding(&self, unit: Option<&UnitName>) -> Finding {
        let id = self.finding.unwrap_or(FindingId::SiteUnsafe);
        let level = self.level.unwrap_or(Level::Warning);
        rules::unsafe_act(unit, id, &self.code, level).cautions(&self.cautions)
    }

    fn ends_with(&self, entry: &Entry) -> bool {
        let moved = |event: &Event| !self.stays && ELSEWHERE.contains(event);
        let ends = |event: &Event| self.ends.contains(event) || moved(event);
        entry.events.iter().any(ends)
    }
}
