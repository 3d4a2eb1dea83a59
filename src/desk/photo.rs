//! A picture that somebody sent: which trailer it shows, by its caption, else by the trailer talked about, else by asking.

use super::answer::Reply;
use super::inbound::{Body, Photo};
use super::receive::Hearing;
use super::settle::{self, Settled};
use crate::book::{Personal, Record};
use crate::dialogue::{About, Talk};
use crate::heard::UnitName;

/// Says what becomes of a picture, and notes it. The file itself is fetched and kept by the clerk.
pub(super) fn take(
    hearing: &Hearing<'_>,
    settled: &Settled,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    if let Some(unit) = &hearing.photo_of {
        reply.say("photo-of", &[("unit", unit.as_str().into())]);
        records.push(Record::PhotoOf {
            at: hearing.now,
            by: hearing.member.id.clone(),
            unit: unit.clone(),
        });
        return;
    }
    // an edit changes the caption, not the picture
    let (Body::Photo(photo), None) = (&hearing.inbound.body, &hearing.inbound.replaces) else {
        return;
    };
    let unit = shows(hearing, settled);
    records.push(Record::Photo {
        at: hearing.inbound.received,
        by: hearing.member.id.clone(),
        key: hearing.key.clone(),
        unit: unit.clone(),
        file: Personal::new(&*photo.file),
    });
    if is_of_the_same_album(photo, &hearing.talk) {
        return;
    }
    match unit {
        Some(unit) => reply.say("photo-noted", &[("unit", unit.as_str().into())]),
        None => {
            reply.say("photo-noted-nowhere", &[]);
            let likely = hearing.likely_units();
            reply.asks = Some(About::PhotoOf { likely });
        }
    }
}

/// Notes the album of a picture, so that the rest of it is not answered one by one.
pub(super) fn note(hearing: &Hearing<'_>, talk: &mut Talk) {
    talk.album = match &hearing.inbound.body {
        Body::Photo(photo) => photo.album.clone(),
        _ => None,
    };
}

fn is_of_the_same_album(photo: &Photo, talk: &Talk) -> bool {
    photo.album.is_some() && photo.album == talk.album
}

fn shows(hearing: &Hearing<'_>, settled: &Settled) -> Option<UnitName> {
    let reported = settled.reports.first().map(|(unit, ..)| unit.clone());
    let named = || hearing.names().into_iter().next();
    let talked =
        || settle::known(&hearing.fleet, hearing.talk.unit_at(hearing.inbound.at)?).cloned();
    reported.or_else(named).or_else(talked)
}
