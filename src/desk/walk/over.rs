//! One person goes on with another's check: only by saying so.

use super::super::answer::Reply;
use super::super::inbound::Outgoing;
use super::super::receive::Hearing;
use super::super::settle;
use crate::book::Record;

use crate::dialogue::{CHECK_LASTS, Check, Talk};
use crate::reply::Arg;

/// A check that changes hands.
pub(super) struct Over {
    from: String,
    rest: Talk,
    check: Check,
}

/// Finds the check that the message takes over: of the trailer it names, else of the one talked about.
pub(super) fn from_another(hearing: &mut Hearing<'_>) -> Option<Over> {
    if !hearing.desk.answers.takes_over(hearing.text) || hearing.inbound.replaces.is_some() {
        return None;
    }
    let named = hearing.heard.named.first();
    let unit = named.or_else(|| hearing.talk.unit_at(hearing.inbound.at));
    let unit = unit.and_then(|name| settle::known(&hearing.fleet, name))?;
    let now = hearing.now;
    let mut talks = hearing.desk.book.talks();
    let over = talks.find_map(|(who, talk)| {
        let open = |check: &&Check| check.unit == *unit && now - check.asked <= CHECK_LASTS;
        let check = talk.checks.iter().rfind(open)?.clone();
        let mut rest = talk.clone();
        rest.checks.retain(|other| *other != check);
        (*who != hearing.member.id).then(|| Over {
            from: who.clone(),
            rest,
            check,
        })
    })?;
    // "take over 12" is no order about task 12
    hearing.heard.command = None;
    hearing.heard.ask = None;
    hearing.heard.plans.clear();
    hearing.heard.unclear.clear();
    hearing.heard.set_aside.clear();
    Some(over)
}

impl Over {
    /// Takes the check from its first owner, tells both, and returns it.
    pub(super) fn hand_over(
        &self,
        hearing: &Hearing<'_>,
        reply: &mut Reply<'_>,
        records: &mut Vec<Record>,
    ) -> Check {
        records.push(Record::Talk {
            who: self.from.clone(),
            talk: Box::new(self.rest.clone()),
        });
        let unit = self.check.unit.as_str();
        let name = reply.voice.fault(self.check.fault);
        reply.say(
            "walk-taken-over",
            &[("unit", unit.into()), ("name", name.into())],
        );
        if let Some(other) = hearing.fleet.crew.get(&self.from) {
            let voice = hearing
                .desk
                .voice_for(other, None, &hearing.fleet, hearing.now);
            let who = voice.person(&hearing.member.id).into_owned();
            let name = voice.fault(self.check.fault);
            let args = [
                ("who", Arg::from(who)),
                ("unit", unit.into()),
                ("name", name.into()),
            ];
            reply.others.push(Outgoing::to(
                &other.id,
                voice.say("walk-handed-over", &args),
            ));
        }
        self.check.clone()
    }
}
