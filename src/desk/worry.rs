//! Words that may tell of somebody hurt or in danger, in a message that nothing else took for one.
//!
//! A danger has its own words, and people in need do not keep to them. Better one question too many than "nothing to log"
//! under a cry for help: the sender is asked, and where a person may be hurt the dispatchers are shown the words at once.

use super::Desk;
use super::answer::{self, Reply};
use super::inbound::Outgoing;
use super::others::other_dispatchers;
use super::phrases::Phrases;
use super::receive::Hearing;
use super::settle::Settled;
use crate::dialogue::About;
use crate::finding::{Finding, Level};
use crate::fleet::Role;
use crate::heard::Fault;
use crate::reply::Arg;

/// What may be in danger.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Worry {
    Person,
    Thing,
}

/// Finds the words of a worry in a text.
fn told(phrases: &Phrases, text: &str) -> Option<Worry> {
    let rest = phrases.without("worry", "not", text);
    let says = |list| phrases.holds("worry", list, &rest);
    if says("person") || says("body") && says("harm") {
        return Some(Worry::Person);
    }
    says("thing").then_some(Worry::Thing)
}

/// Asks whether somebody is in danger, where the words may say so and nothing came of them; `heard` tells whether the
/// message was taken for something that bears on people's safety.
pub(super) fn ask(hearing: &Hearing<'_>, settled: &Settled, heard: bool, reply: &mut Reply<'_>) {
    let danger = |fault: &Fault| Fault::DANGERS.contains(fault);
    let mut reported = settled.reports.iter().map(|(.., entry)| entry);
    let checked = hearing.talk.checks.iter().any(|check| danger(&check.fault));
    let grave = |finding: &Finding| finding.level == Level::Danger;
    let known = heard
        || checked
        || reply.walked
        || reply.asks.is_some()
        || reply.findings.iter().any(grave)
        || reported.any(|entry| entry.faults.iter().any(danger))
        || hearing.heard.command.is_some()
        || hearing.inbound.replaces.is_some();
    if known {
        return;
    }
    let Some(worry) = told(hearing.desk.phrases, hearing.text) else {
        return;
    };
    let finds = settled
        .reports
        .iter()
        .any(|(.., entry)| !entry.faults.is_empty());
    if worry == Worry::Thing && (finds || answer::is_question(hearing)) {
        return;
    }
    let line = reply.voice.word("worry-first");
    reply.first.insert(0, line);
    reply.asks = Some(About::Worry {
        person: worry == Worry::Person,
    });
    tell_dispatchers(hearing, "worry-told", reply);
}

/// Tells the dispatchers what one of the crew wrote.
fn tell_dispatchers(hearing: &Hearing<'_>, key: &str, reply: &mut Reply<'_>) {
    if hearing.member.role == Role::Dispatcher {
        return;
    }
    for (to, voice) in other_dispatchers(hearing) {
        let args = [
            (
                "who",
                Arg::from(voice.person(&hearing.member.id).into_owned()),
            ),
            ("quote", voice.quote(hearing.text.trim()).into()),
        ];
        let text = voice.say(key, &args);
        reply
            .others
            .push(Outgoing::to(&to.id, text).of_level(Level::Warning));
    }
}

/// Returns the message that a yes to the question makes.
pub(super) fn completed(desk: &Desk, text: &str, person: bool) -> Option<String> {
    let yes = desk.phrases.after("choice", "yes", text)?;
    let what = if person { "someone hurt" } else { "need help" };
    Some(format!("{what}. {yes}"))
}

/// Tells whether a message answers no to the question: "no, false alarm".
pub(super) fn denied(phrases: &Phrases, text: &str) -> bool {
    let rest = phrases.after("choice", "no", text);
    rest.is_some_and(|rest| told(phrases, rest).is_none())
}

/// Takes a no to the question: the dispatchers, who were shown the words, hear of it.
pub(super) fn tell_of_none(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    reply.say("worry-dropped", &[]);
    tell_dispatchers(hearing, "worry-none", reply);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_that_may_tell_of_a_danger_are_told_from_their_like() {
        let phrases = Phrases::built_in();
        let person = [
            "some guy by the steps isnt breathing right",
            "hes out cold",
            "fingers r numb and white",
            "woman in labor in stall 1",
            "12 lady's wrist is bent funny",
            "hand stuck in the jack",
            "a drunk guy punched the mirror blood everywhere",
            "se me desmayó una doña",
            "un niño se tragó el azul",
            "le dio un golpe de calor",
            "picó un alacrán a mi compa",
        ];
        for text in person {
            assert_eq!(told(phrases, text), Some(Worry::Person), "{text}");
        }
        let thing = [
            "trailer is rolling",
            "tree branch on the wire",
            "tank is bulging n hissing",
            "la B3 se rueda sola",
            "se derramó gasolina",
            "it hisses",
        ];
        for text in thing {
            assert_eq!(told(phrases, text), Some(Worry::Thing), "{text}");
        }
        let none = [
            "12 rolling in ten",
            "pressure fell to 40",
            "bleeding the air out of the pump",
            "hand pump stuck",
            "first aid kit is empty",
            "my back door is stuck",
            "gas station first, then home",
            "blood drive at the fair, 200 guests",
        ];
        for text in none {
            assert_eq!(told(phrases, text), None, "{text}");
        }
    }
}
