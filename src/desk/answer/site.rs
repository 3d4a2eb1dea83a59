//! How a site stands: each of its trailers in a row.

use super::Reply;
use super::STATUS_WORDS;
use crate::desk::digest;
use crate::desk::phrases::plain;
use crate::desk::receive::Hearing;
use crate::desk::sites;
use crate::fleet::Site;
use crate::reply::Arg;

/// Ways to ask how a place is, beside the words for a status.
const ASKS: &[&str] = &[
    "how is",
    "hows",
    "how are things at",
    "how is it going at",
    "whats up at",
    "whats going on at",
    "como va",
    "como esta",
    "como andan en",
    "que pasa en",
];
/// Words that may stand before the name of a place.
const BEFORE: &[&str] = &[
    "of", "at", "for", "on", "the", "site", "de", "en", "del", "la", "el", "sitio",
];
/// Words that may stand behind it.
const BEHIND: &[&str] = &[
    "doing", "going", "now", "today", "looking", "please", "ahora", "hoy",
];

/// Answers who asks how a site stands; false where nobody does.
pub(in crate::desk) fn answer(hearing: &Hearing<'_>, reply: &mut Reply<'_>) -> bool {
    let Some(site) = asked(hearing) else {
        return false;
    };
    let (desk, now) = (hearing.desk, hearing.now);
    let units = digest::told_of(desk, &hearing.fleet, now, None);
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
    let text = plain(hearing.text);
    let opens = STATUS_WORDS.iter().chain(ASKS);
    let rest = opens
        .filter_map(|opening| text.strip_prefix(opening)?.strip_prefix(' '))
        .min_by_key(|rest| rest.len())?;
    let mut words: Vec<&str> = rest.split(' ').filter(|word| !word.is_empty()).collect();
    while words.first().is_some_and(|word| BEFORE.contains(word)) {
        words.remove(0);
    }
    while words.last().is_some_and(|word| BEHIND.contains(word)) {
        words.pop();
    }
    let place = words.join(" ");
    let whole = |spelling: &str| spelling == place;
    let mut sites = sites::named(&hearing.fleet, whole);
    match (sites.next(), sites.next()) {
        (Some((site, _)), None) => Some(site),
        _ => None,
    }
}
