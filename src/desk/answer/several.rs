//! Several questions in one message, each answered on its own: "status 12 and when does 14 fill?"

use super::{ask, question, topic};
use crate::book::Record;
use crate::desk::answer::Reply;
use crate::desk::phrases::Phrases;
use crate::desk::receive::Hearing;
use crate::desk::settle::{self, Settled};
use crate::heard::{Ask, Heard, UnitName};

/// The signs that may stand between two questions; the words stand in the word file.
const SIGNS: &[&str] = &["? ", "?\n", ", ", "; ", "\n"];
/// So many are answered; nobody reads more on a phone.
const MOST: usize = 4;

/// One question out of several.
pub(in crate::desk) struct Part {
    text: String,
    heard: Heard,
    /// Whether anything is known of what it asks.
    known: bool,
}

/// Parts a message into its questions; empty where it asks one thing, or does more than ask.
pub(in crate::desk) fn parts(hearing: &Hearing<'_>) -> Vec<Part> {
    let heard = &hearing.heard;
    let asks_only = heard.entries.iter().all(|entry| entry.is_empty()) && heard.command.is_none();
    if !asks_only || !(heard.ask.is_some() || super::is_question(hearing)) {
        return Vec::new();
    }
    // what must not be done is answered as a whole
    let whole = super::topic_of(hearing);
    if whole.is_some_and(|topic| !topic.cautions.is_empty()) {
        return Vec::new();
    }
    let mut parts: Vec<Part> = Vec::new();
    for piece in pieces(hearing.desk.phrases, hearing.text) {
        let read = part(hearing, &piece)
            .or_else(|| of_another(hearing, parts.last()?, &piece))
            .or_else(|| unknown(hearing, &piece));
        match read {
            Some(part) => parts.push(part),
            // a piece that asks nothing belongs to the one before it, or to one question that has "and" in it
            None => return Vec::new(),
        }
    }
    if parts.len() < 2 || !parts.iter().any(|part| part.known) {
        return Vec::new();
    }
    parts.truncate(MOST);
    let named: Vec<UnitName> = heard.named.clone();
    if let [only] = named.as_slice() {
        // "how full and how cold is 12": the trailer is of both
        for part in parts.iter_mut().filter(|part| part.heard.named.is_empty()) {
            part.heard.named.push(only.clone());
        }
    }
    parts
}

/// Answers each question in its turn.
pub(in crate::desk) fn answer(
    hearing: &Hearing<'_>,
    parts: &[Part],
    settled: &Settled,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    reply.several = true;
    for part in parts {
        if !part.known {
            let quote = reply.voice.quote(&part.text);
            let line = reply.voice.say("several-left", &[("quote", quote.into())]);
            reply.first.push(line);
            continue;
        }
        let one = hearing.asking(&part.text, part.heard.clone());
        if !question(&one, settled, reply)
            && let Some(wanted) = &part.heard.ask
        {
            ask(&one, settled, wanted, reply, records);
        }
        // each answer stands as one block, in the order asked
        let mut lines = std::mem::take(&mut reply.lines);
        reply.first.append(&mut lines);
    }
}

fn pieces(phrases: &Phrases, text: &str) -> Vec<String> {
    let mut pieces = vec![text.trim().to_owned()];
    let words = phrases.each("several", "between");
    let words = words.map(|word| format!(" {word} "));
    for between in words.chain(SIGNS.iter().map(|sign| (*sign).to_owned())) {
        pieces = pieces
            .iter()
            .flat_map(|piece| piece.split(&between))
            .map(|piece| piece.trim().to_owned())
            .filter(|piece| piece.chars().any(char::is_alphanumeric))
            .collect();
    }
    pieces
}

fn part(hearing: &Hearing<'_>, piece: &str) -> Option<Part> {
    let scale = hearing.fleet.style.temperature;
    let heard = hearing.desk.reader.hear(piece, scale);
    if !heard.entries.iter().all(|entry| entry.is_empty()) || heard.command.is_some() {
        return None;
    }
    let known = matches!(
        heard.ask,
        Some(
            Ask::Status { .. }
                | Ask::History { .. }
                | Ask::Forecast { .. }
                | Ask::Digest
                | Ask::Tasks
                | Ask::Why { .. }
        )
    );
    let asks = known || hearing.desk.questions.of(&heard, piece).is_some();
    asks.then(|| Part {
        text: piece.to_owned(),
        heard,
        known: true,
    })
}

/// Takes a piece that opens as questions do and is none that is known: it is said to be left.
fn unknown(hearing: &Hearing<'_>, piece: &str) -> Option<Part> {
    let bare = piece.trim_end_matches('?');
    let heard = hearing
        .desk
        .reader
        .hear(bare, hearing.fleet.style.temperature);
    let reports = heard.entries.iter().any(|entry| !entry.is_empty());
    (topic::sounds_like_one(bare) && !reports).then(|| Part {
        text: bare.to_owned(),
        heard,
        known: false,
    })
}

/// Reads "14" behind "status 12" as "status 14".
fn of_another(hearing: &Hearing<'_>, before: &Part, piece: &str) -> Option<Part> {
    let [was] = before.heard.named.as_slice() else {
        return None;
    };
    let words: Vec<&str> = piece
        .split_whitespace()
        .map(|word| word.trim_end_matches(['?', '.', '!']))
        .collect();
    let names = words.iter().map(|word| UnitName::new(word));
    let mut units = names.filter_map(|name| settle::known(&hearing.fleet, &name).cloned());
    let unit = units
        .next()
        .filter(|_| words.len() <= 2 && units.next().is_none())?;
    let text = before.text.replacen(was.as_str(), unit.as_str(), 1);
    (text != before.text).then(|| part(hearing, &text))?
}
