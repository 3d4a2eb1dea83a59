//! Words that a dispatcher teaches in chat, lists and takes back; and which words are in force.

use super::answer::Reply;
use super::phrases::Phrases;
use super::receive::Hearing;
use crate::book::{Book, Record, Taught};
use crate::fleet::Fleet;
use crate::heard::Command;
use crate::reply::Arg;
use crate::words::{LONGEST, MOST_WORDS, NameOf, TaughtWord, TeachError, common_keywords};

/// Teaches a word, or lists those there are where no word is given.
pub(super) fn teach(
    hearing: &Hearing<'_>,
    order: &Command,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let Some(word) = word_in(hearing.desk.phrases, &order.rest) else {
        reply.say("teach-how", &[]);
        return;
    };
    let taught = hearing.desk.book.taught().find(&word.say);
    let of_files = || in_files(&hearing.fleet, &word.say);
    if let Some(there) = taught.map(|taught| &taught.word).or_else(of_files) {
        let id = match there.means == word.means {
            true => "teach-taught-already",
            false => "teach-taught-else",
        };
        reply.say(id, &pair(there));
        return;
    }
    match hearing.desk.reader.check_word(&word, hearing.fleet.names()) {
        Err(error) => refuse(&word, &error, reply),
        Ok(()) => {
            reply.say("taught", &pair(&word));
            let taught = Taught {
                word,
                at: hearing.inbound.at,
                by: hearing.member.id.clone(),
            };
            records.push(Record::Taught { taught });
        }
    }
}

/// Lists the words in force that are the company's own.
pub(super) fn list(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let words = in_force(&hearing.desk.book);
    if words.is_empty() {
        reply.say("words-none", &[]);
    } else {
        reply.say("words-head", &[("count", words.len().into())]);
        for word in &words {
            reply.say("words-line", &pair(word));
        }
    }
    reply.say("teach-how", &[]);
}

/// Forgets a taught word.
pub(super) fn forget(
    hearing: &Hearing<'_>,
    order: &Command,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let say = TaughtWord::new(&order.rest, "").say;
    match hearing.desk.book.taught().find(&say) {
        _ if say.is_empty() => reply.say("forget-word-how", &[]),
        Some(taught) => take_back(hearing, taught, reply, records),
        None => {
            let quoted = reply.voice.quote(&order.rest);
            let id = match in_files(&hearing.fleet, &say) {
                Some(_) => "word-of-files",
                None => "word-not-taught",
            };
            reply.say(id, &[("quote", quoted.into())]);
        }
    }
}

/// Takes a taught word back.
pub(super) fn take_back(
    hearing: &Hearing<'_>,
    taught: &Taught,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    reply.say("word-forgotten", &pair(&taught.word));
    records.push(Record::Untaught {
        at: hearing.inbound.at,
        by: hearing.member.id.clone(),
        say: taught.word.say.clone(),
    });
}

/// Returns the company's own words: those of the fleet's files, then those taught that no file and no name stands
/// against.
pub(super) fn in_force(book: &Book) -> Vec<TaughtWord> {
    let Some(fleet) = book.fleet() else {
        return book
            .taught()
            .iter()
            .map(|taught| taught.word.clone())
            .collect();
    };
    let free = |word: &&TaughtWord| {
        in_files(fleet, &word.say).is_none()
            && !fleet.names().any(|(name, _)| word.is_said_as(name))
    };
    let taught = book.taught().iter().map(|taught| &taught.word);
    fleet
        .words
        .iter()
        .chain(taught.filter(free))
        .cloned()
        .collect()
}

fn in_files<'f>(fleet: &'f Fleet, say: &str) -> Option<&'f TaughtWord> {
    fleet.words.iter().find(|word| word.is_said_as(say))
}

/// Reads `honey tank = waste`, or `honey tank means waste`.
fn word_in(phrases: &Phrases, rest: &str) -> Option<TaughtWord> {
    let signs = ["=", ":", "->"];
    let (say, means) = signs
        .iter()
        .find_map(|sign| rest.split_once(sign))
        .or_else(|| phrases.parted("teach", "means", rest))?;
    let word = TaughtWord::new(say, means);
    (!word.say.is_empty() && !word.means.is_empty()).then_some(word)
}

fn pair(word: &TaughtWord) -> [(&'static str, Arg<'static>); 2] {
    let quoted = |text: &str| Arg::from(format!("\"{text}\""));
    [
        ("word", quoted(&word.say)),
        ("meaning", quoted(&word.means)),
    ]
}

/// Says why a word is not taken, and what to do.
fn refuse(word: &TaughtWord, error: &TeachError, reply: &mut Reply<'_>) {
    let quoted = |text: &str| Arg::from(format!("\"{text}\""));
    let say = ("word", reply.voice.quote(&word.say).into());
    let means = ("meaning", reply.voice.quote(&word.means).into());
    match error {
        TeachError::NoWord => {
            let args = [("count", MOST_WORDS.into()), ("value", LONGEST.into())];
            reply.say("teach-no-word", &args);
        }
        TeachError::UnknownKeyword(near) => {
            let common = common_keywords(reply.voice.language()).map(String::from);
            let near: &[String] = if near.is_empty() { &common } else { near };
            let names: Vec<String> = near
                .iter()
                .map(|keyword| format!("\"{keyword}\""))
                .collect();
            reply.say(
                "teach-unknown",
                &[means, ("names", names.join(", ").into())],
            );
        }
        TeachError::NoSuchUse => reply.say("teach-no-use", &[means]),
        TeachError::Number => reply.say("teach-number", &[say]),
        TeachError::Ordinary => reply.say("teach-ordinary", &[say]),
        TeachError::Same => reply.say("teach-taught-already", &pair(word)),
        TeachError::Known(_) => reply.say("teach-known", &[say]),
        TeachError::SlipOf(keyword) => {
            reply.say("teach-slip", &[say, ("meaning", quoted(keyword))])
        }
        TeachError::Name(of) => {
            let kind = match of {
                NameOf::Trailer => "trailer",
                NameOf::Site => "site",
                NameOf::Person => "person",
            };
            reply.say("teach-name", &[say, ("kind", kind.into())]);
        }
    }
}
