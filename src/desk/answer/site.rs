//! How a site stands: each of its trailers in a row.

use super::Reply;
use super::STATUS_WORDS;
use crate::desk::digest;
use crate::desk::phrases::plain;
use crate::desk::receive::Hearing;
use crate::desk::sites;
use crate::fleet::Site;
use crate::heard::UnitName;
use crate::reply::Arg;

/// Answers who asks how a site stands; false where nobody does.
pub(in crate::desk) fn answer(hearing: &Hearing<'_>, reply: &mut Reply<'_>) -> bool {
    let Some(site) = asked(hearing) else {
        return false;
    };
    let (desk, now) = (hearing.desk, hearing.now);
    // to look at a trailer is to ask all rules: only of those that may stand there
    let may_stand_here = |unit: &&UnitName| {
        let fleet = &hearing.fleet;
        let jobs = [fleet.job_of(unit, now, None), fleet.next_job_of(unit, now)];
        let here = |job| fleet.site_of(job).is_some_and(|at| at.name == site.name);
        jobs.into_iter().flatten().any(here) || desk.book.ahead().stands_at(unit).is_some()
    };
    let units = digest::told_of(desk, &hearing.fleet, now, None).filter(may_stand_here);
    let stands = units.map(|unit| digest::look(desk, &hearing.fleet, unit, now).2);
    let here: Vec<_> = stands
        .filter(|stand| stand.site.as_ref() == Some(&site.name))
        .collect();
    let text = match here.is_empty() {
        true => {
            let name = reply.voice.plain(&site.name).into_owned();
            let args = [("site", Arg::from(name))];
            reply.voice.say("answer-site-empty", &args)
        }
        false => digest::rows(desk, &here, &reply.voice),
    };
    reply.first.push(text);
    true
}

/// Returns the one site that a message asks the state of.
fn asked<'a>(hearing: &'a Hearing<'_>) -> Option<&'a Site> {
    let reports = hearing.heard.entries.iter().any(|entry| !entry.is_empty());
    if reports || hearing.heard.command.is_some() || !hearing.names().is_empty() {
        return None;
    }
    let phrases = hearing.desk.phrases;
    let text = plain(hearing.text);
    let by_word = STATUS_WORDS
        .iter()
        .find_map(|word| text.strip_prefix(word)?.strip_prefix(' '));
    let mut place = by_word.or_else(|| phrases.after("site", "asks", &text))?;
    while let Some(rest) = phrases.after("site", "before", place) {
        place = rest;
    }
    while let Some(rest) = phrases.before("site", "behind", place) {
        place = rest;
    }
    let whole = |spelling: &str| spelling == place;
    let mut sites = sites::named(&hearing.fleet, whole);
    match (sites.next(), sites.next()) {
        (Some((site, _)), None) => Some(site),
        _ => None,
    }
}
