//! The lone worker's clock: it asks, waits three minutes, and alarms.

use chrono::{DateTime, TimeDelta, Utc};

use super::super::others::{watchers_of, whom};
use super::say::Answer;
use super::{LATE, Round};
use crate::book::{AheadChange, AlarmChange, Alone, HeldOf, Record};
use crate::desk::Desk;
use crate::desk::situate::site_told;
use crate::finding::{FindingId, Level};
use crate::fleet::Fleet;
use crate::heard::UnitName;

/// How long a lone worker has to answer.
const ANSWER_WITHIN: TimeDelta = TimeDelta::minutes(3);

/// Returns the key of the alarm about a lone worker.
pub(in super::super) fn alone_key(who: &str) -> String {
    format!("alone:{who}")
}

/// Returns whose alarm a key is of, where it is about a lone worker.
pub(in super::super) fn of_alone(key: &str) -> Option<&str> {
    key.strip_prefix("alone:")
}

/// Returns when a lone worker's clock next does something.
pub(super) fn due(clock: &Alone) -> Option<DateTime<Utc>> {
    match (clock.asked, clock.alarmed) {
        (None, _) => Some(clock.due),
        (Some(asked), None) => Some(asked + ANSWER_WITHIN),
        (Some(_), Some(_)) => None,
    }
}

/// Asks a lone worker, or alarms the dispatchers when they did not answer.
pub(super) fn ask_or_alarm(round: &mut Round<'_>, who: &str) {
    let Some(clock) = round.desk.book.ahead().alone(who).cloned() else {
        return;
    };
    let now = round.now;
    let mut next = clock.clone();
    if clock.asked.is_none() {
        next.asked = Some(now);
        if let Some(voice) = round.voice(who) {
            let at = now + ANSWER_WITHIN;
            let whom = whom(&round.fleet, who, &voice);
            let args = [("time", at.into()), ("names", whom.into())];
            let text = voice.say("speak-alone-ask", &args);
            round.say.add(who, Some(Level::Warning), text, Answer::Well);
        }
        if now - clock.due >= LATE {
            tell_of_delay(round, who, &clock);
        }
    } else {
        next.alarmed = Some(now);
        alarm(round, who, &clock);
    }
    round.record(AheadChange::Alone {
        who: who.to_owned(),
        alone: Some(next),
    });
}

/// Tells those who would be alarmed that somebody was not asked in time: the bot was down.
fn tell_of_delay(round: &mut Round<'_>, who: &str, clock: &Alone) {
    for to in watchers(round, who) {
        if let Some(voice) = round.voice(&to) {
            let name = voice.person(who).into_owned();
            let args = [
                ("who", name.into()),
                ("words", voice.quote(clock.why.text()).into()),
            ];
            let text = voice.say("speak-alone-delayed", &args);
            round
                .say
                .add(&to, Some(Level::Warning), text, Answer::InText);
        }
    }
}

fn alarm(round: &mut Round<'_>, who: &str, clock: &Alone) {
    let change = AlarmChange::Raised {
        key: alone_key(who),
        id: FindingId::CrewLateCheckIn,
        unit: clock.unit.clone(),
        level: Level::Danger,
    };
    round.turn.records.push(Record::Alarm {
        at: round.now,
        change,
    });
    let where_to = place_told(round.desk, &round.fleet, clock.unit.as_ref(), round.now);
    // with no trailer told, where they wrote of last
    let last = match where_to.is_empty() {
        true => last_place(round, who),
        false => None,
    };
    for to in watchers(round, who) {
        let Some(voice) = round.voice(&to) else {
            continue;
        };
        let place = match &last {
            Some((place, at)) => {
                let args = [
                    ("site", place.join(", ").into()),
                    ("age", voice.age(*at).into()),
                ];
                voice.say("speak-alone-last-place", &args)
            }
            None if where_to.is_empty() => voice.word("speak-alone-nowhere"),
            None => where_to.join(", "),
        };
        let mut args = vec![
            ("signal", voice.word("signal-danger").into()),
            ("who", voice.person(who).into_owned().into()),
            ("time", clock.since.into()),
            ("words", voice.quote(clock.why.text()).into()),
            ("site", place.into()),
        ];
        let mut key = "speak-alone-alarm";
        if let Some(by) = &clock.by {
            args.push(("by", voice.person(by).into_owned().into()));
            key = "speak-alone-alarm-for";
        }
        let text = voice.say(key, &args);
        let says = (Some(Level::Danger), Answer::GotIt);
        let of = Some(HeldOf::Alarm(alone_key(who)));
        round.say.add_of(&to, says, text, of);
    }
}

/// How long a person's last word tells where they may be.
const LAST_WORD: TimeDelta = TimeDelta::hours(24);

/// Returns the place of which somebody last wrote, and when that was.
fn last_place(round: &Round<'_>, who: &str) -> Option<(Vec<String>, DateTime<Utc>)> {
    let sent = round.desk.book.sent(who).iter().rev();
    let mut lately = sent.filter(|sent| sent.at <= round.now && round.now - sent.at <= LAST_WORD);
    let (unit, at) = lately.find_map(|sent| Some((sent.units.first()?, sent.at)))?;
    let place = place_told(round.desk, &round.fleet, Some(unit), round.now);
    (!place.is_empty()).then_some((place, at))
}

/// Tells where somebody who works alone is, as far as it is known: the trailer, its site, the address for emergencies.
pub(in super::super) fn place_told(
    desk: &Desk,
    fleet: &Fleet,
    unit: Option<&UnitName>,
    now: DateTime<Utc>,
) -> Vec<String> {
    let site = unit.and_then(|unit| {
        let departed = desk.book.unit(unit).and_then(|kept| kept.state().departed);
        if let Some(told) = site_told(desk, unit, now, departed) {
            return fleet.sites.get(&told);
        }
        fleet.site_of(fleet.job_of(unit, now, None)?)
    });
    let mut place: Vec<String> = Vec::new();
    place.extend(unit.map(ToString::to_string));
    if let Some(site) = site {
        place.push(site.name.clone());
        place.extend(site.emergency_address.clone());
    }
    place
}

/// Lists, by id, who is alarmed where somebody who works alone does not answer.
pub(super) fn watchers(round: &Round<'_>, who: &str) -> Vec<String> {
    let watchers = watchers_of(&round.fleet, who).into_iter();
    watchers.map(|member| member.id.clone()).collect()
}
