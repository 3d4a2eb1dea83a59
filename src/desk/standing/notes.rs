//! Notes on a trailer for whoever arrives next, until somebody clears them.

use super::super::answer::Reply;
use super::super::receive::Hearing;
use super::unit_and_words;
use crate::book::{Personal, Record, StandingNote};
use crate::heard::{Command, UnitName};
use crate::reply::Arg;

/// Keeps a note on a trailer, lists its notes, or clears them.
pub(in crate::desk) fn note(
    hearing: &Hearing<'_>,
    order: &Command,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let Some((unit, words)) = unit_and_words(hearing, &order.rest) else {
        reply.say("note-how", &[]);
        return;
    };
    let clears = [
        "clear", "cleared", "off", "quitar", "quita", "borra", "fuera",
    ];
    let name = ("unit", Arg::from(unit.as_str()));
    if words.is_empty() {
        if hearing.desk.book.standing().notes(&unit).is_empty() {
            reply.say("note-none", &[name]);
        }
        tell_notes(hearing, &unit, reply);
    } else if clears.contains(&words.to_lowercase().as_str()) {
        if hearing.desk.book.standing().notes(&unit).is_empty() {
            reply.say("note-none", &[name]);
            return;
        }
        records.push(Record::NotesCleared {
            at: hearing.inbound.at,
            by: hearing.member.id.clone(),
            unit: unit.clone(),
        });
        reply.say("note-cleared", &[name]);
    } else {
        let quoted = reply.voice.quote(&words);
        reply.say("note-taken", &[name, ("quote", quoted.into())]);
        let note = StandingNote {
            unit: unit.clone(),
            at: hearing.inbound.at,
            by: hearing.member.id.clone(),
            text: Personal::new(words),
            load: None,
        };
        records.push(Record::Note { note });
    }
}

/// Says the notes on a trailer.
pub(super) fn tell_notes(hearing: &Hearing<'_>, unit: &UnitName, reply: &mut Reply<'_>) {
    for note in hearing.desk.book.standing().notes(unit) {
        let who = reply.voice.person(&note.by).into_owned();
        let quote = reply.voice.quote(note.text.text());
        let line = reply.voice.say(
            "note-stands",
            &[
                ("unit", unit.as_str().into()),
                ("who", who.into()),
                ("time", note.at.into()),
                ("quote", quote.into()),
            ],
        );
        reply.card.push(line);
    }
}
