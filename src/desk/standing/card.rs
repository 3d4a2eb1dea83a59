//! What whoever arrives is told: the site's own card, to the crew of the job and on its days only, and the trailer's notes.

use super::super::answer::Reply;
use super::super::receive::Hearing;
use super::super::situate::Case;
use super::notes::tell_notes;
use crate::fleet::{Job, Role, Site};
use crate::heard::Event;

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
    }
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
    // where the job names no crew it is of whoever came with one of its trailers
    let set_up = chrono::TimeDelta::minutes((job.set_up_h * 60.0).round() as i64);
    let came = hearing.desk.book.unit(&case.unit).is_some_and(|kept| {
        kept.reports()
            .any(|(at, from, _)| at >= job.from - set_up && from == hearing.member.id)
    });
    let is_for = match card_is_for(hearing, job) {
        Ok(()) if job.crew.is_empty() && !came && hearing.member.role != Role::Dispatcher => {
            Err("card-not-crew")
        }
        is_for => is_for,
    };
    match is_for {
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
    let set_up = chrono::TimeDelta::minutes((job.set_up_h * 60.0).round() as i64);
    if hearing.now < job.from - set_up || hearing.now > job.to {
        return Err("card-not-today");
    }
    let works_it = job.crew.is_empty() || job.crew.contains(&member.id);
    if works_it || member.role == Role::Dispatcher {
        Ok(())
    } else {
        Err("card-not-crew")
    }
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
