//! What whoever arrives is told: the site's own card, to the crew of the job and on its days only, and the trailer's notes.

use chrono::TimeDelta;

use super::super::ahead;
use super::super::answer::Reply;
use super::super::phrases::plain;
use super::super::receive::Hearing;
use super::super::sites;
use super::super::situate::Case;
use super::super::tick::dispatchers;
use super::notes::tell_notes;
use crate::fleet::{Job, Role, Site};
use crate::heard::{Event, UnitName};
use crate::quantity::Measure;
use crate::reply::Arg;
use crate::rules::FREEZE_F;

/// Says what whoever arrives must know: the site's own card, then the notes on the trailer.
pub(in crate::desk) fn greet(hearing: &Hearing<'_>, cases: &[Case], reply: &mut Reply<'_>) {
    if hearing.late() || hearing.inbound.replaces.is_some() {
        return;
    }
    let mut told: Vec<&str> = Vec::new();
    for case in cases
        .iter()
        .filter(|case| case.report.events.contains(&Event::Arrived))
    {
        // the card of a site that is not the job's is for nobody who only says to be there
        let site = case
            .site()
            .filter(|site| case.job().is_some_and(|job| job.id.site == site.id));
        if let (Some(site), Some(job)) = (site, case.job()) {
            if told.contains(&site.id.as_str()) {
                tell_notes(hearing, &case.unit, reply);
                continue;
            }
            told.push(&site.id);
            match card_is_for(hearing, job) {
                Ok(()) => tell_card(site, reply),
                Err(why) if site.gate_code.is_some() => reply.say(why, &[]),
                Err(_) => {}
            }
        }
        tell_notes(hearing, &case.unit, reply);
        tell_low(hearing, case, reply);
    }
}

/// Tells who arrives of the frost that is foretold for this night, which was told before they were there.
fn tell_low(hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) {
    let site = case.site().map(|site| site.id.as_str());
    let told = hearing.desk.book.ahead();
    let low = told.weather_of_kind(false, site, hearing.now);
    let Some(low) = low.filter(|low| low.low_f <= FREEZE_F && site.is_some()) else {
        return;
    };
    let value = Arg::Number(low.low_f, Measure::DegF);
    reply.say(
        "low-here",
        &[("value", value), ("unit", case.unit.as_str().into())],
    );
    reply.say(ahead::what_to_do(hearing), &[]);
}

/// Answers what the card of a trailer's site tells, to whom it is for.
pub(in crate::desk) fn asked(hearing: &Hearing<'_>, case: &Case, reply: &mut Reply<'_>) {
    let unit = ("unit", case.unit.as_str().into());
    let job = case.job();
    let site = case
        .site()
        .filter(|site| job.is_some_and(|job| job.id.site == site.id));
    let (Some(site), Some(job)) = (site, job) else {
        // it is said to stand at a site that is not its job's
        return match case.site() {
            Some(_) => reply.say("card-not-crew", &[]),
            None => reply.say("card-none", &[unit]),
        };
    };
    match may_ask(hearing, job) {
        Ok(()) => {
            tell_card(site, reply);
            if reply.card.is_empty() {
                reply.say("card-none", &[unit]);
            }
        }
        Err(why) => reply.say(why, &[]),
    }
}

/// Tells whether a job's card may be shown to the sender now: a card is for the crew of the job, on the days of the job.
fn card_is_for(hearing: &Hearing<'_>, job: &Job) -> Result<(), &'static str> {
    let member = hearing.member;
    if hearing.now < job.from - set_up(job) || hearing.now > job.to {
        return Err("card-not-today");
    }
    let works_it = job.crew.is_empty() || job.crew.contains(&member.id);
    if works_it || member.role == Role::Dispatcher {
        Ok(())
    } else {
        Err("card-not-crew")
    }
}

/// Tells whether the sender may ask for a job's card: where the job names no crew, it is of whoever came with one of its
/// trailers.
fn may_ask(hearing: &Hearing<'_>, job: &Job) -> Result<(), &'static str> {
    card_is_for(hearing, job)?;
    if !job.crew.is_empty() || hearing.member.role == Role::Dispatcher {
        return Ok(());
    }
    let from = job.from - set_up(job);
    let came = job.trailers.iter().any(|unit| {
        hearing.desk.book.unit(unit).is_some_and(|kept| {
            kept.reports()
                .any(|(at, who, _)| at >= from && who == hearing.member.id)
        })
    });
    came.then_some(()).ok_or("card-not-crew")
}

fn set_up(job: &Job) -> TimeDelta {
    TimeDelta::minutes((job.set_up_h * 60.0).round() as i64)
}

fn tell_card(site: &Site, reply: &mut Reply<'_>) {
    let parts = [
        ("card-gate", &site.gate_code),
        ("card-contact", &site.contact),
        ("card-stand", &site.stand),
        ("card-septic-lid", &site.septic_lid),
        ("card-notes", &site.notes),
    ];
    for (key, text) in parts {
        if let Some(text) = text {
            let what = reply.voice.plain(text).into_owned();
            let line = reply.voice.say(key, &[("what", what.into())]);
            reply.card.push(line);
        }
    }
}

/// Answers what is asked of a site's card: its gate code, whom to call, where to stand. `unit` is the trailer talked about.
pub(in crate::desk) fn answer_card(
    hearing: &Hearing<'_>,
    topic: &str,
    unit: Option<&UnitName>,
    reply: &mut Reply<'_>,
) {
    let named = site_named(hearing);
    let mut jobs = hearing.fleet.jobs.iter();
    let job = match named {
        Some(site) => jobs
            .by_ref()
            .filter(|job| job.id.site == site.id)
            .find(|job| card_is_for(hearing, job) != Err("card-not-today"))
            .or_else(|| hearing.fleet.jobs.iter().find(|job| job.id.site == site.id)),
        None => unit.and_then(|unit| hearing.fleet.job_of(unit, hearing.now, None)),
    };
    let Some((job, site)) = job.and_then(|job| Some((job, hearing.fleet.site_of(job)?))) else {
        match unit {
            _ if topic == "card-contact" => tell_whom(hearing, None, reply),
            Some(unit) => {
                let args = [("unit", Arg::from(unit.as_str()))];
                let line = reply.voice.say("card-no-job", &args);
                reply.first.push(line);
            }
            None => reply.asks = Some(hearing.which_unit()),
        }
        return;
    };
    let what = match topic {
        "card-gate" => &site.gate_code,
        "card-contact" => &site.contact,
        "card-stand" => &site.stand,
        "card-septic-lid" => &site.septic_lid,
        _ => &site.emergency_address,
    };
    let refused = may_ask(hearing, job).err();
    if topic == "card-contact" {
        // the site's own contact is of its card; whom to call in danger, and of the company, is everybody's
        let contact = what.as_deref().filter(|_| refused.is_none());
        return tell_whom(hearing, contact, reply);
    }
    // the place to send help to is everybody's
    let refused = refused.filter(|_| topic != "card-address");
    let line = match (refused, what) {
        (Some(why), _) => reply.voice.word(why),
        (None, Some(text)) => {
            let what = reply.voice.plain(text).into_owned();
            reply.voice.say(topic, &[("what", what.into())])
        }
        (None, None) => {
            let site = reply.voice.plain(&site.name).into_owned();
            reply.voice.say("card-silent", &[("site", site.into())])
        }
    };
    reply.first.push(line);
}

/// Whom to call: for a danger, of the site, of the company.
fn tell_whom(hearing: &Hearing<'_>, contact: Option<&str>, reply: &mut Reply<'_>) {
    let line = reply.voice.word("card-call");
    reply.first.push(line);
    if let Some(contact) = contact {
        let what = reply.voice.plain(contact).into_owned();
        let line = reply.voice.say("card-contact", &[("what", what.into())]);
        reply.first.push(line);
    }
    let names: Vec<String> = dispatchers(&hearing.fleet)
        .filter(|id| *id != hearing.member.id)
        .map(|id| reply.voice.person(id).into_owned())
        .collect();
    if !names.is_empty() {
        let who = reply.voice.one_of(&names);
        let line = reply
            .voice
            .say("card-dispatcher", &[("who", Arg::from(who))]);
        reply.first.push(line);
    }
}

/// Returns the site that a message names.
fn site_named<'a>(hearing: &'a Hearing<'_>) -> Option<&'a Site> {
    let text = format!(" {} ", plain(hearing.text));
    let said = |spelling: &str| text.contains(&format!(" {spelling} "));
    sites::named(&hearing.fleet, said)
        .next()
        .map(|(site, _)| site)
}
