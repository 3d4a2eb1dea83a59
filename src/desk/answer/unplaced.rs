//! Words that nothing was read of. "Noted" under a cry for help reads as if somebody had heard it, so it is said plainly that
//! nothing was logged, and what to do where somebody is in danger. Talk that asks for nothing keeps its short answer.

use crate::desk::phrases::{Phrases, plain};
use crate::desk::receive::Hearing;
use crate::desk::settle::{self, Settled};
use crate::heard::UnitName;
use crate::reply::Voice;

/// Says that a message could not be placed; none where it is talk.
pub(super) fn said(hearing: &Hearing<'_>, settled: &Settled, voice: &Voice<'_>) -> Option<String> {
    if is_talk_alone(hearing) {
        return None;
    }
    let text = hearing.text.trim();
    let last = || hearing.talk.unit_at(hearing.inbound.at);
    let unit = settled.words.first().or_else(last);
    let args = [
        ("quote", voice.quote(text).into()),
        ("unit", unit.map_or("12", |unit| unit.as_str()).into()),
    ];
    Some(voice.say("unplaced", &args))
}

/// Tells whether a message is talk and nothing else.
pub(in crate::desk) fn is_talk_alone(hearing: &Hearing<'_>) -> bool {
    let fleet = &hearing.fleet;
    let is_name = |word: &str| {
        let people = fleet.crew.values().map(|member| &member.name);
        let mut names = people.chain(fleet.sites.values().map(|site| &site.name));
        settle::known(fleet, &UnitName::new(word)).is_some()
            || names.any(|name| plain(name).split(' ').any(|part| part == word))
    };
    is_talk(hearing.desk.phrases, hearing.text.trim(), is_name)
}

/// Tells whether a text has no word but those of talk, and names.
fn is_talk(phrases: &Phrases, text: &str, is_name: impl Fn(&str) -> bool) -> bool {
    if phrases.holds("unplaced", "never", text) {
        return false;
    }
    let rest = phrases.without("unplaced", "talk", text);
    let mut words = rest.split(' ').filter(|word| !word.is_empty());
    words.all(|word| {
        word.contains(|c: char| c.is_ascii_digit())
            || phrases.is("unplaced", "idle", word)
            || is_name(word)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn talk_is_told_from_words_that_nobody_placed() {
        let phrases = Phrases::built_in();
        let named = |word: &str| matches!(word, "tobin" | "juno" | "sleigh" | "barn");
        for text in [
            "12 all good here",
            "quiet night on 12",
            "thanks juno",
            "nice barn",
            "on my way to 12",
            "back in 10",
            "la 12 va bien",
            "voy en camino a la 12",
            "son las 9",
            "12?",
        ] {
            assert!(is_talk(phrases, text, named), "{text}");
        }
        for text in [
            "12 something weird by the door",
            "12 not good",
            "nobody answers in stall 3",
            "12 guy went blue",
            "la 12 no esta bien",
            "algo raro en la 12",
            "good, but she fell",
        ] {
            assert!(!is_talk(phrases, text, named), "{text}");
        }
    }
}
