//! A danger that its sender takes back: the dispatchers, who were alarmed, learn it and by whom, and the sender is asked
//! whether it really was a mistake. Until that is answered everybody keeps off.

use super::answer::Reply;
use super::inbound::Outgoing;
use super::others::other_dispatchers;
use super::phrases::{Phrases, is_marked};
use super::receive::{Hearing, Told};
use super::settle::{self, Settled};
use crate::book::{AlarmChange, Record, Sent};
use crate::dialogue::About;
use crate::finding::{FindingId, Level};
use crate::heard::{Fault, UnitName};
use crate::reply::{Arg, Voice};

/// A longer message says more than that it was none.
const LONGEST: usize = 9;

/// Returns the sender's own last report of a danger that still stands, where the message says no more than that there was
/// none: "false alarm", "it was static".
pub(super) fn meant<'a>(hearing: &'a Hearing<'_>) -> Option<&'a Sent> {
    let of_a_shock = says(hearing, "static");
    if !of_a_shock && !says(hearing, "says") || unplaced(hearing).is_some() {
        return None;
    }
    let named = hearing.heard.named.first();
    let named = named.and_then(|name| settle::known(&hearing.fleet, name));
    let stands = |sent: &&Sent| {
        let told = hearing.told_in(sent);
        let mut dangers = dangers_in(&told).into_iter();
        dangers.any(|(unit, fault)| {
            let kept = hearing.desk.book.unit(&unit);
            named.is_none_or(|named| *named == unit)
                && (!of_a_shock || fault == Fault::Shock)
                && kept.is_some_and(|kept| kept.state().has(fault))
        })
    };
    let sent = hearing.desk.book.sent(&hearing.member.id).iter().rev();
    sent.take_while(|sent| hearing.now - sent.at <= crate::dialogue::CHECK_LASTS)
        .find(stands)
}

/// Finds the danger that somebody calls a false alarm who did not report it: its words report none anew.
pub(super) fn not_theirs(hearing: &mut Hearing<'_>, settled: &mut Settled) -> Option<UnitName> {
    let unit = anothers(hearing)?;
    let is_danger = |fault: &Fault| Fault::DANGERS.contains(fault);
    settled.amend_all(|_, entry| entry.faults.retain(|fault| !is_danger(fault)));
    if let Some(entry) = &mut settled.homeless {
        entry.faults.retain(|fault| !is_danger(fault));
    }
    settled.homeless = settled.homeless.take().filter(|entry| !entry.is_empty());
    settled.from_context = None;
    settled.findings.clear();
    hearing.heard.set_aside.clear();
    hearing.heard.unclear.clear();
    Some(unit)
}

/// Returns the trailer with an open danger that the message calls none, where its sender has reported none that stands.
fn anothers(hearing: &Hearing<'_>) -> Option<UnitName> {
    let of_a_shock = says(hearing, "static");
    let said = says(hearing, "says") || of_a_shock;
    if !said || meant(hearing).is_some() || hearing.heard.ask.is_some() {
        return None;
    }
    if unplaced(hearing).is_some() {
        return None;
    }
    let faulty = hearing.desk.book.faulty_units();
    let open = faulty.filter_map(|(unit, kept)| {
        let state = kept.state();
        let dangers = match of_a_shock {
            true => &[Fault::Shock],
            false => Fault::DANGERS,
        };
        dangers
            .iter()
            .any(|fault| state.has(*fault))
            .then_some(unit)
    });
    let last = hearing.talk.unit_at(hearing.inbound.at);
    let mut open: Vec<&UnitName> = open.collect();
    if let Some(last) = last.filter(|last| open.contains(last)) {
        open = vec![last];
    }
    open.first().copied().cloned()
}

/// Returns the dangers that wait for their trailer, where the message says no more than that there was none.
fn unplaced(hearing: &Hearing<'_>) -> Option<Vec<Fault>> {
    let question = hearing.talk.question_at(hearing.inbound.at)?;
    let About::WhichUnit { entry, .. } = &question.about else {
        return None;
    };
    let mut faults = Fault::DANGERS.to_vec();
    faults.retain(|fault| entry.faults.contains(fault));
    let none = says(hearing, "says") || faults == [Fault::Shock] && says(hearing, "static");
    let only = hearing.heard.named.is_empty() && hearing.heard.ask.is_none();
    (none && only && !faults.is_empty()).then_some(faults)
}

/// Takes back dangers that wait for their trailer: nothing else is read out of the message.
pub(super) fn take_unplaced(
    hearing: &mut Hearing<'_>,
    settled: &mut Settled,
) -> Option<Vec<Fault>> {
    let faults = unplaced(hearing)?;
    *settled = Settled::default();
    hearing.heard.set_aside.clear();
    hearing.heard.unclear.clear();
    Some(faults)
}

/// Tells of dangers without a trailer that are taken back, ends their alarms, and asks whether it really was a mistake.
pub(super) fn tell_unplaced(
    hearing: &Hearing<'_>,
    faults: &[Fault],
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let me = &hearing.member.id;
    for fault in faults {
        let key = format!("{}:{me}", FindingId::of_fault(*fault));
        if hearing.desk.book.alarms().contains_key(&key) {
            let change = AlarmChange::Over { key };
            let at = hearing.now;
            records.push(Record::Alarm { at, change });
        }
    }
    let all_of = |voice: &Voice<'_>| {
        let names: Vec<String> = faults.iter().map(|fault| voice.fault(*fault)).collect();
        voice.all_of(&names)
    };
    for (other, voice) in other_dispatchers(hearing) {
        let who = voice.person(me).into_owned();
        let args = [("who", Arg::from(who)), ("what", all_of(&voice).into())];
        let text = voice.say("danger-back-person", &args);
        reply
            .others
            .push(Outgoing::to(&other.id, text).of_level(Level::Warning));
    }
    let what = all_of(&reply.voice);
    reply.say("danger-back-taken", &[("what", what.into())]);
    reply.asks = Some(About::NoDanger {
        unit: None,
        faults: faults.to_vec(),
    });
}

/// Says that only who reported a danger can take it back.
pub(super) fn tell_not_theirs(unit: &UnitName, reply: &mut Reply<'_>) {
    reply.say("danger-back-not-yours", &[("unit", unit.as_str().into())]);
}

fn says(hearing: &Hearing<'_>, list: &str) -> bool {
    let (phrases, text) = (hearing.desk.phrases, without_a_no(hearing.text));
    let holds = |list| phrases.holds("withdraw", list, text);
    holds(list)
        && !holds("not")
        && !holds("doubt")
        && text.split_whitespace().count() <= LONGEST
        && !asks(phrases, text)
        && hearing.inbound.replaces.is_none()
}

/// Takes a "no" off the front that a comma sets apart: "no, false alarm" is not "no false alarm".
fn without_a_no(text: &str) -> &str {
    let rest = text.trim_start().split_once([',', '.', '!', ';']);
    match rest {
        Some((no, rest)) if no.trim().eq_ignore_ascii_case("no") && !rest.trim().is_empty() => rest,
        _ => text,
    }
}

/// Tells whether it is asked whether a danger was none: by the mark, or by the words that open it. "was a false alarm" is
/// told, since its subject was left out.
fn asks(phrases: &Phrases, text: &str) -> bool {
    let mut bare = text;
    while let Some(rest) = phrases.after("questions", "before", bare) {
        bare = rest;
    }
    let told = |text: &str| {
        let mut lists = ["says", "static"].into_iter();
        lists.any(|list| phrases.after("withdraw", list, text).is_some())
    };
    let opened = phrases
        .after("withdraw", "asks", bare)
        .or_else(|| phrases.after("questions", "openings", bare));
    is_marked(text)
        || phrases.holds("withdraw", "asks-inside", text)
        || opened.is_some_and(|rest| !told(bare) && !told(rest))
}

/// Returns the dangers among what was reported, and a spill, of which the dispatchers heard as of a danger.
pub(super) fn dangers_in(told: &[Told]) -> Vec<(UnitName, Fault)> {
    let of = |(unit, _, entry): &Told| -> Vec<(UnitName, Fault)> {
        let alarming = |f: &&Fault| Fault::DANGERS.contains(f) || **f == Fault::Spill;
        let dangers = entry.faults.iter().filter(alarming);
        dangers.map(|fault| (unit.clone(), *fault)).collect()
    };
    told.iter().flat_map(of).collect()
}

/// Tells the other dispatchers that these dangers are taken back, and ends their alarms. `to` is the trailer that is meant
/// instead.
pub(super) fn tell(
    hearing: &Hearing<'_>,
    lost: &[(UnitName, Fault)],
    to: Option<&UnitName>,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let me = &hearing.member.id;
    for (unit, fault) in lost {
        let key = format!("{}:{unit}", FindingId::of_fault(*fault));
        if hearing.desk.book.alarms().contains_key(&key) {
            records.push(Record::Alarm {
                at: hearing.now,
                change: AlarmChange::Over { key },
            });
        }
    }
    let Some((unit, _)) = lost.first() else {
        return;
    };
    for (other, voice) in other_dispatchers(hearing) {
        let mut args = vec![
            ("unit", Arg::from(unit.as_str())),
            ("who", voice.person(me).into_owned().into()),
            ("what", names(&voice, lost).into()),
        ];
        let text = match to {
            Some(to) => {
                args.push(("to", to.as_str().into()));
                voice.say("danger-back-moved", &args)
            }
            None => voice.say("danger-back", &args),
        };
        reply
            .others
            .push(Outgoing::to(&other.id, text).of_level(Level::Warning));
    }
}

/// What the sender says of a danger that they took back.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Verdict {
    /// It was a mistake.
    Mistake,
    /// It was none, or they are not sure: it stands again.
    Stands,
}

/// Reads what is said to the question whether a danger was a mistake. A doubt outweighs a yes beside it; what is neither,
/// or asks back, leaves the question open.
pub(super) fn verdict(phrases: &Phrases, text: &str) -> Option<Verdict> {
    let holds = |list| phrases.holds("withdraw", list, text);
    if holds("doubt") || holds("not") {
        return Some(Verdict::Stands);
    }
    if asks(phrases, text) {
        return None;
    }
    let sure = phrases.after("withdraw", "sure", text).is_some();
    if sure || holds("says") || holds("static") {
        return Some(Verdict::Mistake);
    }
    phrases.after("withdraw", "no", text)?;
    Some(Verdict::Stands)
}

/// Asks the question again that is still open: only a clear yes ends it.
pub(super) fn asks_again(hearing: &Hearing<'_>) -> Option<About> {
    let question = hearing.talk.question_at(hearing.inbound.at)?;
    let About::NoDanger { unit, faults } = &question.about else {
        return None;
    };
    let kept = unit.as_ref().and_then(|unit| hearing.desk.book.unit(unit));
    let has = |fault: &Fault| kept.is_some_and(|kept| kept.state().has(*fault));
    let stands = faults.iter().any(has);
    let answered = verdict(hearing.desk.phrases, hearing.text).is_some();
    (!stands && !answered).then(|| question.about.clone())
}

/// Asks the sender whether it really was a mistake.
pub(super) fn ask(lost: &[(UnitName, Fault)], reply: &mut Reply<'_>) {
    if let Some((unit, _)) = lost.first() {
        let of_it = lost.iter().filter(|(of, _)| of == unit);
        reply.asks = Some(About::NoDanger {
            unit: Some(unit.clone()),
            faults: of_it.map(|(_, fault)| *fault).collect(),
        });
    }
}

/// Tells of the dangers that a mended or edited report no longer holds, or holds of another trailer.
pub(super) fn mended(
    hearing: &Hearing<'_>,
    told: &[Told],
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let Some(key) = hearing.replaced() else {
        return;
    };
    let sent = hearing.desk.book.sent(&hearing.member.id);
    let before = sent.iter().find(|sent| sent.key == *key);
    let before = before.map(|sent| hearing.told_in(sent)).unwrap_or_default();
    let now = dangers_in(told);
    let mut lost = dangers_in(&before);
    lost.retain(|danger| !now.contains(danger));
    let same = |(_, fault): &&(UnitName, Fault)| lost.iter().any(|(_, was)| was == fault);
    let to = now.iter().find(same).map(|(unit, _)| unit.clone());
    tell(hearing, &lost, to.as_ref(), reply, records);
    if to.is_none() && reply.asks.is_none() {
        ask(&lost, reply);
    }
}

/// Names the dangers: "electric shock and fire".
pub(super) fn names(voice: &Voice<'_>, lost: &[(UnitName, Fault)]) -> String {
    let names: Vec<String> = lost.iter().map(|(_, fault)| voice.fault(*fault)).collect();
    voice.all_of(&names)
}
