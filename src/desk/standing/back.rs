//! "undo" for what is no report: a note, notes cleared, a decision, a step of leaving, a watch, a low that was told.

use chrono::{DateTime, Utc};

use super::super::ahead;
use super::super::answer::Reply;
use super::super::inbound::Outgoing;
use super::super::others::other_dispatchers;
use super::super::receive::Hearing;
use crate::book::{AheadChange, Override, Record, TakesBack, Weather};
use crate::dialogue::{About, Watch};
use crate::finding::Level;
use crate::heard::UnitName;
use crate::quantity::Measure;
use crate::reply::{Arg, Voice};

/// Something the sender put there that an undo can take back.
enum Put<'a> {
    /// Beside a trailer, all of one message.
    Beside(Vec<TakesBack>),
    Watch(&'a Watch),
    Weather(&'a Weather),
}

impl Put<'_> {
    fn at(&self) -> Option<DateTime<Utc>> {
        match self {
            Put::Beside(put) => put.first().map(TakesBack::at),
            Put::Watch(watch) => Some(watch.since),
            Put::Weather(weather) => Some(weather.at),
        }
    }

    /// Says in a few words what it is.
    fn name(&self, voice: &Voice<'_>) -> String {
        let of = |key: &str, unit: &UnitName| voice.say(key, &[("unit", unit.as_str().into())]);
        match self {
            Put::Beside(put) => match put.first() {
                Some(TakesBack::Note(note)) => of("undo-what-note", &note.unit),
                Some(TakesBack::Cleared(cleared)) => of("undo-what-cleared", &cleared.unit),
                Some(TakesBack::Override(decided)) => of("undo-what-override", &decided.unit),
                Some(TakesBack::Step(done)) => of("undo-what-step", &done.unit),
                None => String::new(),
            },
            Put::Watch(watch) => of("undo-what-watch", &watch.unit),
            Put::Weather(weather) => {
                let key = if weather.air {
                    "undo-what-air"
                } else {
                    "undo-what-low"
                };
                let value = Arg::Number(weather.low_f, Measure::DegF);
                voice.say(key, &[("value", value)])
            }
        }
    }
}

/// Takes back the last thing the sender put there, where it is newer than `last`; false where nothing is.
pub(in crate::desk) fn take_back(
    hearing: &Hearing<'_>,
    (since, last): (DateTime<Utc>, Option<DateTime<Utc>>),
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) -> bool {
    let me = &hearing.member.id;
    let book = &hearing.desk.book;
    let newer = |at: DateTime<Utc>| at <= hearing.now && last.is_none_or(|last| last < at);
    let mut beside = book.standing().put_by(me, since);
    beside.retain(|one| newer(one.at()));
    let newest = beside.last().map(TakesBack::at);
    beside.retain(|one| Some(one.at()) == newest);
    let mine = |watch: &&Watch| watch.who == *me && watch.since >= since && newer(watch.since);
    let watches = book.watches().iter().filter(mine);
    let watch = watches.max_by_key(|watch| watch.since);
    let weather = book.ahead().weather_of(me);
    let weather = weather.filter(|weather| weather.at >= since && newer(weather.at));
    let put = [
        Some(Put::Beside(beside)),
        watch.map(Put::Watch),
        weather.map(Put::Weather),
    ];
    let put = put.into_iter().flatten();
    let Some(newest) = put.filter(|put| put.at().is_some()).max_by_key(Put::at) else {
        return false;
    };
    // what was put there before what was taken back just now may not be meant
    if let (true, Some(at)) = (hearing.talk.undone, newest.at()) {
        let what = newest.name(&reply.voice);
        reply.say("undo-older", &[("time", at.into()), ("what", what.into())]);
        reply.asks = Some(About::UndoNext);
        return true;
    }
    match newest {
        Put::Beside(put) => put
            .iter()
            .for_each(|one| one_back(hearing, one, reply, records)),
        // a wish for any of the trailers set one on each
        Put::Watch(newest) => {
            let of_it = |watch: &&Watch| mine(watch) && watch.since == newest.since;
            let all = book.watches().iter().filter(of_it);
            all.for_each(|watch| unwatch(watch, reply, records));
        }
        Put::Weather(weather) => weather_back(hearing, weather, reply, records),
    }
    true
}

/// Takes back what went with a message of the sender that is taken back.
pub(in crate::desk) fn went_with(
    hearing: &Hearing<'_>,
    at: DateTime<Utc>,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let put = hearing.desk.book.standing().put_by(&hearing.member.id, at);
    for one in put.iter().filter(|one| one.at() == at) {
        one_back(hearing, one, reply, records);
    }
}

fn one_back(
    hearing: &Hearing<'_>,
    one: &TakesBack,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    records.push(Record::TakenBack {
        at: hearing.inbound.at,
        by: hearing.member.id.clone(),
        what: one.clone(),
    });
    reply.undone = true;
    match one {
        TakesBack::Note(note) => {
            let quote = reply.voice.quote(note.text.text());
            let args = [
                ("unit", Arg::from(note.unit.as_str())),
                ("quote", quote.into()),
            ];
            reply.say("undone-note", &args);
        }
        TakesBack::Cleared(cleared) => {
            reply.say("undone-cleared", &[("unit", cleared.unit.as_str().into())]);
        }
        TakesBack::Override(decided) => decision_back(hearing, decided, reply),
        TakesBack::Step(done) => {
            let what = reply.voice.word(&format!("value-{}", done.step));
            let args = [
                ("unit", Arg::from(done.unit.as_str())),
                ("what", what.into()),
            ];
            reply.say("undone-step", &args);
            // the walk that is open asks for it again
            let round = hearing.talk.round.clone();
            if let Some(mut round) = round.filter(|round| round.unit == done.unit) {
                round.confirmed.retain(|step| *step != done.step);
                reply.round = Some(Some(round));
            }
        }
    }
}

/// Says that a decision stands no more; of an order, every dispatcher who was told of it.
fn decision_back(hearing: &Hearing<'_>, decided: &Override, reply: &mut Reply<'_>) {
    let quote = reply.voice.quote(decided.reason.text());
    let unit = decided.unit.as_str();
    let args = [("unit", Arg::from(unit)), ("quote", quote.into())];
    reply.say("undone-override", &args);
    for (to, voice) in other_dispatchers(hearing).filter(|_| decided.ordered) {
        let args = [
            ("unit", Arg::from(unit)),
            ("who", voice.person(&hearing.member.id).into_owned().into()),
            ("quote", voice.quote(decided.reason.text()).into()),
        ];
        let text = voice.say("order-taken-back", &args);
        reply
            .others
            .push(Outgoing::to(&to.id, text).of_level(Level::Notice));
    }
}

/// Takes back weather that was told, and says so to everybody who was warned by it.
fn weather_back(
    hearing: &Hearing<'_>,
    weather: &Weather,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    records.push(Record::Ahead {
        at: hearing.now,
        change: AheadChange::WeatherBack {
            weather: weather.clone(),
        },
    });
    reply.undone = true;
    ahead::weather_taken_back(hearing, weather, reply);
}

fn unwatch(watch: &Watch, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    records.push(Record::Unwatch {
        watch: watch.clone(),
    });
    reply.undone = true;
    reply.say("never-mind-watch", &[("unit", watch.unit.as_str().into())]);
}
