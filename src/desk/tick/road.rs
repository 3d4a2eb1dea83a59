//! People on the road who should have arrived, and what waited for them meanwhile.

use chrono::{DateTime, Utc};

use super::say::Answer;
use super::{Round, rest};
use crate::book::{AheadChange, AlarmChange, HeldOf, Record, Road};
use crate::finding::{FindingId, Level};

/// Returns the key of the alarm about somebody who has not arrived.
pub(in super::super) fn road_key(who: &str) -> String {
    format!("road:{who}")
}

/// Returns when somebody on the road should have been heard of.
pub(super) fn due(road: &Road) -> DateTime<Utc> {
    road.until
}

/// Tells the dispatchers that somebody has not arrived, and lets go what waited.
pub(super) fn over(round: &mut Round<'_>, who: &str) {
    let Some((_, road)) = round
        .desk
        .book
        .ahead()
        .roads()
        .find(|(other, _)| *other == who)
    else {
        return;
    };
    let road = road.clone();
    round.record(AheadChange::Road {
        who: who.to_owned(),
        road: None,
    });
    let held = round.desk.book.ahead().held(who).to_vec();
    if !held.is_empty() {
        round.record(AheadChange::Released { to: who.to_owned() });
        rest::let_go(round, &held, Answer::InText);
    }
    let Some(eta) = road.eta else {
        return; // they named no time to be late for
    };
    let change = AlarmChange::Raised {
        key: road_key(who),
        id: FindingId::CrewLateCheckIn,
        unit: road.unit.clone(),
        level: Level::Notice,
    };
    round.turn.records.push(Record::Alarm {
        at: round.now,
        change,
    });
    for to in round.dispatchers().into_iter().filter(|to| to != who) {
        let Some(voice) = round.voice(&to) else {
            continue;
        };
        let mut args = vec![
            ("who", voice.person(who).into_owned().into()),
            ("time", eta.into()),
        ];
        let mut key = "speak-overdue";
        if let Some(unit) = &road.unit {
            args.push(("unit", unit.as_str().to_owned().into()));
            key = "speak-overdue-unit";
        }
        let text = voice.say(key, &args);
        let says = (Some(Level::Notice), Answer::GotIt);
        let of = Some(HeldOf::Alarm(road_key(who)));
        round.say.add_of(&to, says, text, of);
    }
}
