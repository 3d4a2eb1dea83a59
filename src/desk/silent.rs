//! Somebody who does not answer the phone: who reports it wants to know where they were last, and what to do. Nobody is
//! hurt for that, and nobody is well.

use chrono::TimeDelta;

use super::answer::{self, Reply};
use super::hazard;
use super::lone;
use super::receive::Hearing;
use crate::fleet::{CrewMember, Role};
use crate::heard::Entry;
use crate::reply::Arg;

/// Who wrote from a site this lately may still be near.
const NEAR: TimeDelta = TimeDelta::hours(6);

/// Finds who of the crew does not answer, where a message says that and reports nothing else.
pub(super) fn said(hearing: &Hearing<'_>) -> Option<String> {
    let phrases = hearing.desk.phrases;
    let heard = &hearing.heard;
    let beside = heard.command.is_some() || hearing.late() || hearing.inbound.replaces.is_some();
    if beside || !phrases.holds("silent", "says", hearing.text) {
        return None;
    }
    let who = answer::person_named(hearing).filter(|who| who.id != hearing.member.id)?;
    // "tobin fell and is not answering" is a person hurt
    let rest = phrases.without("silent", "says", hearing.text);
    let scale = hearing.fleet.style.temperature;
    let rest = hearing.desk.reader.hear(&rest, scale);
    let reports = rest.entries.iter().any(|entry| !Entry::is_empty(entry));
    // nor is whoever lies under a trailer and says nothing
    (!reports && !hazard::is_of_a_body(hearing.text)).then(|| who.id.clone())
}

/// Says where they were last, who is near, and what to do, step by step.
pub(super) fn tell(hearing: &Hearing<'_>, who: &str, reply: &mut Reply<'_>) {
    let Some(member) = hearing.fleet.crew.get(who) else {
        return;
    };
    let name = ("who", Arg::from(member.name.as_str()));
    let line = match hearing.desk.book.ahead().alone(who) {
        Some(clock) => lone::told(who, clock, &reply.voice),
        None => answer::where_they_are(hearing, member, reply),
    };
    reply.first.push(line);
    let site = site_of(hearing, who);
    let near = site
        .as_deref()
        .map(|site| near(hearing, who, site))
        .unwrap_or_default();
    let key = match near.is_empty() {
        true => "silent-phone",
        false => "silent-phone-near",
    };
    let near: Vec<String> = near.into_iter().map(|near| near.name.clone()).collect();
    let args = [name.clone(), ("names", reply.voice.all_of(&near).into())];
    let line = reply.voice.say(key, &args);
    reply.first.push(line);
    let site = site.and_then(|site| hearing.fleet.sites.get(&site).cloned());
    let contact = site.as_ref().and_then(|site| site.contact.clone());
    // a site's contact is its crew's and the dispatchers'
    let contact = contact.filter(|_| hearing.member.role == Role::Dispatcher);
    if let Some(contact) = contact {
        let what = reply.voice.plain(&contact).into_owned();
        let line = reply.voice.say("silent-contact", &[("what", what.into())]);
        reply.first.push(line);
    }
    let ahead = hearing.desk.book.ahead();
    let key = match (ahead.alone(who), ahead.road(who, hearing.now)) {
        (Some(_), _) => "silent-alone",
        (None, Some(_)) => "silent-road",
        (None, None) => "silent-then",
    };
    let line = reply.voice.say(key, &[name]);
    reply.first.push(line);
    let line = match site.and_then(|site| site.emergency_address) {
        Some(address) => {
            let address = reply.voice.plain(&address).into_owned();
            reply
                .voice
                .say("silent-hurt-at", &[("address", address.into())])
        }
        None => reply.voice.word("silent-hurt"),
    };
    reply.first.push(line);
}

/// Returns the id of the site that somebody wrote of last.
fn site_of(hearing: &Hearing<'_>, who: &str) -> Option<String> {
    let sent = hearing.desk.book.sent(who).iter().rev();
    let lately = sent.filter(|sent| hearing.now - sent.at <= TimeDelta::hours(24));
    let (unit, at) = lately.into_iter().find_map(|sent| {
        let unit = sent.units.first()?;
        Some((unit, sent.at))
    })?;
    let job = hearing.fleet.job_of(unit, at, None)?;
    Some(job.id.site.clone())
}

/// Lists who else wrote from a site lately and has not gone on.
fn near<'h>(hearing: &'h Hearing<'_>, who: &str, site: &str) -> Vec<&'h CrewMember> {
    let there = |member: &&CrewMember| {
        let sent = hearing.desk.book.sent(&member.id).iter().rev();
        let last = sent.take_while(|sent| hearing.now - sent.at <= NEAR);
        let mut units = last.filter_map(|sent| Some((sent.units.first()?, sent.at)));
        units.next().is_some_and(|(unit, at)| {
            let job = hearing.fleet.job_of(unit, at, None);
            job.is_some_and(|job| job.id.site == site)
        })
    };
    let crew = hearing.fleet.crew.values();
    let others = crew.filter(|member| member.id != who && member.id != hearing.member.id);
    others
        .filter(|member| member.role != Role::Dispatcher)
        .filter(there)
        .collect()
}
