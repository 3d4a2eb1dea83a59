//! What a question is about, by its words: the list stands in `grammar/replies/questions.toml`.

use serde::Deserialize;
use std::sync::LazyLock;

use crate::desk::phrases::{PhraseList, Phrases, Words, is_marked, plain};
use crate::desk::settle;
use crate::finding::Caution;
use crate::fleet::Fleet;
use crate::heard::{Ask, Heard, UnitName};

const QUESTIONS: &str = include_str!("../../../grammar/replies/questions.toml");

/// What crews ask about, as the word file states it.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(in crate::desk) struct Questions {
    question: Vec<Question>,
}

/// One thing that is asked about.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(in crate::desk) struct Question {
    /// Its name; `answer-<topic>` is its text where it has cautions.
    pub(super) topic: String,
    /// Lists of phrases: the message holds one of each.
    all: Vec<PhraseList>,
    /// Whole messages that mean it, whatever the lists say.
    #[serde(default)]
    whole: PhraseList,
    /// Phrases that speak against it.
    #[serde(default)]
    but: PhraseList,
    /// Phrases by which a statement is answered as the question would be: somebody is about to do what must not be done.
    #[serde(default)]
    told: PhraseList,
    /// The cautions that its text always has with it.
    #[serde(default)]
    pub(super) cautions: Vec<Caution>,
}

impl Questions {
    /// Returns those of the built-in file, which is parsed once.
    pub(in crate::desk) fn built_in() -> &'static Questions {
        static BUILT_IN: LazyLock<Questions> = LazyLock::new(|| {
            toml::from_str(QUESTIONS).expect("the built-in questions are read by a test")
        });
        &BUILT_IN
    }

    /// Returns the cautions of what words tell somebody to do that must not be done; none where they tell of no such thing.
    pub(in crate::desk) fn cautions_of(&self, words: &str) -> &[Caution] {
        const TOLD: &[&str] = &[
            "flame",
            "fuel-heater",
            "boiling-water",
            "unclog",
            "bypass",
            "bigger-breaker",
            "bigger-fuse",
            "enter-tank",
        ];
        let folded = plain(words);
        let words = Words::of(&folded);
        let meant = |one: &&Question| TOLD.contains(&one.topic.as_str()) && one.is_in(&words);
        let question = self.question.iter().find(meant);
        question.map_or(&[], |question| question.cautions.as_slice())
    }

    /// Finds what a message asks about; none where it asks nothing that is known here.
    ///
    /// A message that also reports is answered so only where the answer is a caution: the rest of it is answered by what the
    /// rules say to the report.
    pub(in crate::desk) fn of(&self, heard: &Heard, text: &str) -> Option<&Question> {
        if heard.command.is_some()
            || !matches!(
                heard.ask,
                None | Some(Ask::Status { .. } | Ask::Forecast { .. })
            )
        {
            return None;
        }
        let folded = plain(text);
        if let Some(whole) = self
            .question
            .iter()
            .find(|question| question.whole.has(&folded))
        {
            return Some(whole);
        }
        if Phrases::built_in().opens("questions", "orders", &folded) {
            return None;
        }
        let words = Words::of(&folded);
        if !(heard.ask.is_some() || asks(text, &folded)) {
            return self.question.iter().find(|one| one.is_told_in(&words));
        }
        let reports = heard.entries.iter().any(|entry| !entry.is_empty());
        self.question
            .iter()
            .filter(|question| !reports || !question.cautions.is_empty())
            .find(|question| question.is_in(&words))
    }
}

/// Tells whether a message sounds like a question, known or not.
pub(in crate::desk) fn sounds_like_one(text: &str) -> bool {
    asks(text, &plain(text))
}

/// Puts "temp at 12" and "battery 12" as the question that they are: a trailer's number is no value.
pub(in crate::desk) fn reworded(phrases: &Phrases, fleet: &Fleet, text: &str) -> Option<String> {
    let folded = plain(text);
    let bare = phrases.after("asked-value", "noun-article", &folded);
    let bare = bare.unwrap_or(&folded).trim_end_matches('?').trim();
    let name = bare.rsplit(' ').next()?;
    let unit = settle::known(fleet, &UnitName::new(name))?;
    let head = bare[..bare.len() - name.len()].trim_end();
    let noun = phrases.before("asked-value", "noun-at", head);
    let is = |list, noun: &str| phrases.is("asked-value", list, noun);
    match noun {
        Some(noun) if is("noun-en", noun) => Some(format!("whats the {noun} on {unit}?")),
        Some(noun) if is("noun-es", noun) => Some(format!("cual es la {noun} de la {unit}?")),
        None if is("noun-alone", head) => Some(format!("whats the {head} on {unit}?")),
        None if is("noun-alone-es", head) => Some(format!("cual es la {head} de la {unit}?")),
        _ => None,
    }
}

/// Tells whether a message asks whether something may be done, or how it is done.
pub(in crate::desk) fn asks_to_act(text: &str) -> bool {
    let folded = plain(text);
    let bare = without_trailer(without_lead_in(&folded));
    Phrases::built_in().opens("questions", "acts", bare)
}

/// Takes a trailer's number off that stands before a question: "12 can i reset it", "la 12 puedo".
fn without_trailer(folded: &str) -> &str {
    let phrases = Phrases::built_in();
    let parted = |text: &'_ str| -> Option<usize> { text.find(' ').map(|at| at + 1) };
    let mut rest = folded;
    while let Some(at) = parted(rest)
        && phrases.is("mend", "trailer", &rest[..at])
    {
        rest = &rest[at..];
    }
    match parted(rest) {
        Some(at) if rest[..at - 1].chars().all(|c| c.is_ascii_digit()) => &rest[at..],
        _ => folded,
    }
}

/// Tells whether a message asks for leave, "dump it in the ditch ok?" too: what it speaks of is not done.
pub(in crate::desk) fn asks_leave(text: &str) -> bool {
    let behind = Phrases::built_in().ends("questions", "acts-behind", text);
    asks_to_act(text) || is_marked(text) && behind
}

/// Returns what a message tells beside what it asks: "someone got shocked" behind "can i tape the breaker and"; none where
/// it asks nothing, or tells nothing beside. What a condition opens is not told: "what if it trips and somebody falls".
pub(in crate::desk) fn told_beside(text: &str) -> Option<String> {
    let phrases = Phrases::built_in();
    let (mut told, mut asked) = (Vec::new(), false);
    for part in text.split_inclusive(['.', ',', ';', '!', '?', '\n']) {
        let mut depends = false;
        for clause in clauses(part) {
            let bare = phrases.after("questions", "joins", clause);
            let bare = plain(bare.unwrap_or(clause));
            let bare = without_lead_in(&bare);
            let asks = phrases.opens("questions", "openings", bare) || asks_leave(clause.trim());
            asked |= asks;
            if !asks && !depends && !clause.trim().is_empty() {
                told.push(clause.trim());
            }
            depends |= phrases.holds("questions", "depends", clause);
        }
    }
    let told = told.join(" ");
    (asked && !plain(&told).is_empty()).then_some(told)
}

/// Parts a stretch without stops where a word joins to it what somebody or something does: "and the lady passed out".
fn clauses(part: &str) -> Vec<&str> {
    let phrases = Phrases::built_in();
    let starts = part.match_indices(' ').map(|(at, _)| at + 1);
    let begins = |at: &usize| {
        let rest = &part[*at..];
        let joined = phrases.after("questions", "joins", rest);
        // "and 12 is on fire"
        let named = |rest: &str| rest.starts_with(|c: char| c.is_ascii_digit());
        let tells = |rest: &str| named(rest) || phrases.opens("questions", "tells", &plain(rest));
        joined.is_some_and(tells) || phrases.opens("questions", "cries", &plain(rest))
    };
    let mut clauses = Vec::new();
    let mut from = 0;
    for at in starts.filter(begins) {
        clauses.push(&part[from..at]);
        from = at;
    }
    clauses.push(&part[from..]);
    clauses
}

/// Takes the words off that may stand before a question: "so", "hey".
fn without_lead_in(folded: &str) -> &str {
    let mut bare = folded;
    while let Some((first, rest)) = bare.split_once(' ')
        && Phrases::built_in()
            .each("questions", "before")
            .any(|word| word == first)
    {
        bare = rest;
    }
    bare
}

fn asks(text: &str, folded: &str) -> bool {
    let bare = without_lead_in(folded);
    let phrases = Phrases::built_in();
    let ends = || phrases.ends("questions", "endings", folded);
    let of_a_trailer = || {
        let behind = without_trailer(bare);
        behind != bare && phrases.opens("questions", "openings-behind", behind)
    };
    is_marked(text) || phrases.opens("questions", "openings", bare) || ends() || of_a_trailer()
}

impl Question {
    /// Tells whether a message is one of the whole messages that mean it.
    pub(super) fn is_set_phrase(&self, text: &str) -> bool {
        self.whole.has(&plain(text))
    }

    /// Tells whether a message states what the question would ask.
    fn is_told_in(&self, words: &Words<'_>) -> bool {
        words.hold_any(&self.told) && self.is_in(words)
    }

    fn is_in(&self, words: &Words<'_>) -> bool {
        !self.all.is_empty()
            && self.all.iter().all(|phrases| words.hold_any(phrases))
            && !words.hold_any(&self.but)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::TemperatureScale;
    use crate::words::Reader;

    fn topic(text: &str) -> String {
        let questions = Questions::built_in();
        let heard = Reader::new().hear(text, TemperatureScale::F);
        questions
            .of(&heard, text)
            .map_or_else(String::new, |question| question.topic.clone())
    }

    #[test]
    fn questions_are_known_by_their_words() {
        for (text, wanted) in [
            ("can i use a torch on the frozen hose?", "flame"),
            ("¿puedo usar un soplete en la manguera congelada?", "flame"),
            ("how full is 12", "waste"),
            ("que tan llena esta la 12", "waste"),
            ("how much water is left in 12", "fresh"),
            ("is 55 ok?", "is-ok"),
            ("está bien 55?", "is-ok"),
            ("do I need a regulator on 12?", "regulator"),
            ("¿necesito regulador en la 12?", "regulator"),
            ("what do i set the regulator to", "set-regulator"),
            (
                "can i take the regulator off to get more flow",
                "regulator-off",
            ),
            ("when does the truck come", "truck"),
            ("¿cuándo llega el camión?", "truck"),
            ("should I turn the heater on in 14?", "heater"),
            ("¿prendo el calentador en la 14?", "heater"),
            ("when do i turn the water heater on", "water-heater"),
            ("what now", "next"),
            ("¿y ahora qué?", "next"),
            ("what do I do with 22", "next"),
            ("can I open 12?", "open"),
            ("can we tow 12 now?", "tow"),
            ("¿puedo mover la 12?", "tow"),
            ("can i run the ac and the heater together", "ac-and-heat"),
            ("can i put the generator in the doorway", "generator-place"),
            ("how long will the battery last on 12", "battery"),
            ("how many cords do I need for 12", "cords"),
            ("can I bypass the gfci", "bypass"),
            ("heat gun ok on pvc?", "flame"),
            ("can i leave the heat gun on it", "flame"),
            ("¿puedo usar la pistola de calor?", "flame"),
            ("is it ok to reset the breaker a third time", "reset-more"),
            ("puedo subir la pastilla otra vez, ya van dos", "reset-more"),
            ("its just 3 miles, ok if i tow with waste in", "tow-waste"),
            ("puedo remolcar con negras, son 3 millas", "tow-waste"),
            ("can i put a 30 amp fuse instead of 15", "bigger-fuse"),
            ("puedo poner uno de 30 en lugar del fusible", "bigger-fuse"),
            ("can i tape the breaker", "hold-breaker"),
            ("puedo encintar la pastilla", "hold-breaker"),
            ("can i use a suicide cord", "backfeed"),
            ("puedo usar un cable macho a macho", "backfeed"),
            ("can i hot swap the cords", "hot-swap"),
            ("puedo cambiar el cable sin apagar", "hot-swap"),
            ("can i daisy chain two cords", "daisy-chain"),
            (
                "puedo conectar los dos cables en un contacto",
                "daisy-chain",
            ),
            ("can i stick my arm in the tank", "enter-tank"),
            ("puedo meter el brazo al tanque", "enter-tank"),
            ("how do i thaw the hose", "thaw"),
            ("cómo descongelo la manguera", "thaw"),
            ("how do i drain the water heater", "drain-heater"),
            ("cómo dreno el calentador de agua", "drain-heater"),
            ("how do i test the breakaway", "breakaway-test"),
            ("cómo pruebo el freno de seguridad", "breakaway-test"),
            ("how do i hook up the water", "hook-up-water"),
            ("cómo conecto el agua", "hook-up-water"),
            ("how do i level it", "level-how"),
            ("cómo nivelo", "level-how"),
            ("when will the hose freeze", "freeze"),
            ("how level is it, bubble is half out", "level-enough"),
            ("should I leave the water dripping", "drip"),
            ("how long until the hose freezes", "freeze"),
            ("más", "more"),
            ("what if the truck dont come at all", "what-if"),
            ("¿y si no viene el camión?", "what-if"),
            ("so is 12 gonna overflow before 7", "pump-out"),
            ("can i wait till 9 with the truck for 12?", "truck-latest"),
            ("15 amp outlet only is that ok", "small-outlet"),
            (
                "can i run a second off an extension cord from the kitchen",
                "house-cord",
            ),
            ("no ground rod on the gen do i need one", "ground-rod"),
            ("is it ok to jump it from my truck", "battery-charge"),
            ("is there anyone near 12", "who-has"),
            ("is it level enough, bubble is half out", "level-enough"),
            ("dont have blocks", "no-blocks"),
            ("done setting up 16?", "open"),
            ("12 gate code", "card-gate"),
            ("what is the level on 12", "waste"),
            ("has anyone pumped 12", "pumped"),
            ("pumped 12 yet", "pumped"),
            ("anyone know if 12 got pumped", "pumped"),
            ("12 pumped or no", "pumped"),
            ("was 12 pumped?", "pumped"),
            ("ya bombearon la 6 o no", "pumped"),
            ("¿ya vaciaron la 12?", "pumped"),
            ("does 12 need to be pumped", "pump-out"),
            ("when do i need 12 pumped", "pump-out"),
        ] {
            assert_eq!(topic(text), wanted, "{text}");
        }
    }

    #[test]
    fn what_may_be_done_and_how_is_asked_and_nothing_else_is() {
        for asks in [
            "can i stand on the fender",
            "so how do i open the awning",
            "puedo subirme a la salpicadera",
            "12 can i reset it",
            "la 12 puedo abrirla",
        ] {
            assert!(asks_to_act(asks), "{asks}");
        }
        assert!(asks_leave("dump it in the ditch ok?"));
        assert!(!asks_leave("dumped it in the ditch ok"));
        for (text, told) in [
            (
                "can i tape the breaker. someone got shocked",
                Some("someone got shocked"),
            ),
            ("12 is on fire, can i use water?", Some("12 is on fire,")),
            ("12 can i reset it n a guy is down", Some("n a guy is down")),
            (
                "cómo lo abro y se cayó una señora",
                Some("y se cayó una señora"),
            ),
            (
                "whats the code theres a fire in 12",
                Some("theres a fire in 12"),
            ),
            ("what if it trips and someone gets shocked", None),
            ("dump it in the ditch ok?", None),
            ("12 water on and the pump runs", None),
        ] {
            assert_eq!(told_beside(text).as_deref(), told, "{text}");
        }
        for other in ["12 water ok", "is 12 ok?", "heater can go on", "how is 12"] {
            assert!(!asks_to_act(other), "{other}");
        }
    }

    #[test]
    fn reports_and_orders_are_no_questions() {
        for text in [
            "12 pressure 50 tank 1/2",
            "status 12",
            "forecast 12",
            "sum drop 16 amps 150 ft 14 gauge",
            "why pressure",
            "12 pumped out, truck was here at 14:00",
            "12 not pumped yet",
            "ya vaciaron la 12",
            "the regulator is on",
            "note 12 the heater switch is behind the door",
        ] {
            assert_eq!(topic(text), "", "{text}");
        }
    }
}
