//! How crews answer, as phrases by list: looked up in the words of a message.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use serde::Deserialize;

use super::super::phrases::{faultless, plain};
use super::phrase::{Phrases, Span, is_question};
use super::said::{LONGEST, Message};
use crate::dialogue::Check;
use crate::rules::{Asks, Step};

const ANSWERS: &str = include_str!("../../../grammar/walk/answers.toml");

/// How crews answer, by step.
#[derive(Debug, Deserialize)]
#[serde(try_from = "BTreeMap<String, BTreeMap<String, Vec<String>>>")]
pub(in crate::desk) struct Answers(pub(super) BTreeMap<String, BTreeMap<String, Vec<String>>>);

impl TryFrom<BTreeMap<String, BTreeMap<String, Vec<String>>>> for Answers {
    type Error = String;

    fn try_from(topics: BTreeMap<String, BTreeMap<String, Vec<String>>>) -> Result<Self, String> {
        for (of, lists) in &topics {
            for (name, list) in lists {
                // names of other lists, and no phrases
                if name == "like" {
                    match list.iter().find(|other| !topics.contains_key(*other)) {
                        Some(other) => {
                            return Err(format!("[{of}] is like {other:?}, which is none"));
                        }
                        None => continue,
                    }
                }
                let phrases = list.iter().map(String::as_str);
                faultless(phrases, |phrase| Phrases::of(phrase).whole())
                    .map_err(|why| format!("[{of}] {name}: {why}"))?;
            }
        }
        Ok(Answers(topics))
    }
}

/// What the words of a step's own say.
pub(super) enum Own {
    Yes(Vec<Span>),
    No(Vec<Span>),
    /// Every word that says no is denied: "not tripped".
    Denied(Vec<Span>),
    Both,
    Neither,
}

impl Answers {
    /// Returns those of the built-in file, which is parsed once.
    pub(in crate::desk) fn built_in() -> &'static Answers {
        static BUILT_IN: LazyLock<Answers> = LazyLock::new(|| {
            toml::from_str(ANSWERS).expect("the built-in answers are read by a test")
        });
        &BUILT_IN
    }

    /// Tells whether a message holds one of a list's phrases as whole words.
    pub(in crate::desk) fn says(&self, of: &str, list: &str, text: &str) -> bool {
        !Phrases::of(text).find(self.list(of, list)).is_empty()
    }

    /// Tells whether a message says that fire or police ordered something.
    pub(in crate::desk) fn tells_of_an_order(&self, text: &str) -> bool {
        let words = Phrases::of(text);
        let at = |list| words.find(self.list("order", list));
        let says = |list| !at(list).is_empty();
        if !says("who") {
            return false;
        }
        let orders = says("what") || says("tells") && says("moves");
        // what is denied before it was ordered by nobody; "12 cant stay here", "tank still full" take no order back
        let told = at("what").into_iter().chain(at("tells"));
        let first = told.map(|(from, _)| from).min().unwrap_or_default();
        let denied = words.find(self.list("any", "denies"));
        let denied = denied.into_iter().any(|(_, to)| to <= first);
        orders && !denied && !says("lets")
    }

    /// Tells whether a message asks to go on where a check stopped.
    pub(in crate::desk) fn resumes(&self, text: &str) -> bool {
        let words = Phrases::of(text);
        let is = |list| self.is_all(&words, list);
        is("resume") || is("next") || is("back") || is("repeat")
    }

    /// Tells whether a message asks for the question that waits, or where things stand, in more than a word.
    pub(super) fn asks_for_the_question(&self, text: &str) -> bool {
        let words = Phrases::of(text);
        let asks = self.is_all(&words, "resume") || self.is_all(&words, "repeat");
        asks && words.len() > 2
    }

    /// Tells whether a message is a plain yes or no and nothing else.
    pub(in crate::desk) fn is_plain(&self, text: &str) -> bool {
        let words = Phrases::of(text);
        self.is_all(&words, "yes") || self.is_all(&words, "no")
    }

    /// Tells whether a message says that something was done, and nothing else.
    pub(in crate::desk) fn is_done(&self, text: &str) -> bool {
        self.is_all(&Phrases::of(text), "done")
    }

    /// Tells whether a message takes another person's check over.
    pub(in crate::desk) fn takes_over(&self, text: &str) -> bool {
        self.any(&Phrases::of(text), "take-over")
    }

    /// Finds the one load that a message names, such as `water-heater`.
    pub(in crate::desk) fn load(&self, text: &str) -> Option<&str> {
        let words = Phrases::of(text);
        let loads = self.0.get("load")?;
        let mut found: Vec<(&str, Span)> = Vec::new();
        for (load, phrases) in loads {
            found.extend(
                words
                    .find(phrases)
                    .into_iter()
                    .map(|span| (load.as_str(), span)),
            );
        }
        let within = |inner: &Span, outer: &Span| {
            outer.0 <= inner.0 && inner.1 <= outer.1 && outer.1 - outer.0 > inner.1 - inner.0
        };
        let all = found.clone();
        found.retain(|(_, span)| !all.iter().any(|(_, other)| within(span, other)));
        let (first, _) = *found.first()?;
        found
            .iter()
            .all(|(load, _)| *load == first)
            .then_some(first)
    }

    /// Tells whether a message says that something was taken off the circuit.
    pub(in crate::desk) fn takes_off(&self, text: &str) -> bool {
        self.any(&Phrases::of(text), "taken-off")
    }

    /// Tells whether a message says that it holds, or that it trips; none where it says neither or both.
    pub(in crate::desk) fn holds(&self, text: &str) -> Option<bool> {
        match self.own("step-holds-now", &Phrases::of(text)) {
            Own::Yes(_) => Some(true),
            Own::No(_) => Some(false),
            _ => None,
        }
    }

    /// Tells whether a message that does not answer its step may answer one after it.
    pub(super) fn may_answer_ahead(&self, message: &Message<'_>) -> bool {
        let words = Phrases::of(message.text);
        let heard = message.heard;
        let asks = heard.ask.is_some() || heard.command.is_some() || is_question(message.text);
        let aside = ["mistake", "later"]
            .iter()
            .any(|list| self.any(&words, list));
        let reports = message.told.is_some_and(|entry| !entry.faults.is_empty());
        !asks && !aside && !reports && words.len() <= LONGEST
    }

    /// Tells whether a message says yes to a step's question after a trip.
    pub(in crate::desk) fn names_a_trip(&self, step: &Step, text: &str) -> bool {
        let words = Phrases::of(text);
        matches!(self.own(step.key, &words), Own::Yes(_)) || self.leading(&words) == Some(true)
    }

    /// Tells how often a message says that a reset was tried: "reset it twice".
    pub(in crate::desk) fn resets_told(&self, text: &str) -> u32 {
        let words = Phrases::of(text);
        let resets = self.any(&words, "reset");
        let often = self.any(&words, "twice");
        match () {
            () if often && (resets || self.any(&words, "tries")) => 2,
            () if resets => 1,
            () => 0,
        }
    }

    pub(super) fn list(&self, of: &str, list: &str) -> &[String] {
        let lists = self.0.get(of);
        lists
            .and_then(|lists| lists.get(list))
            .map_or(&[], Vec::as_slice)
    }

    pub(super) fn any(&self, words: &Phrases, list: &str) -> bool {
        !words.find(self.list("any", list)).is_empty()
    }

    pub(super) fn has_uncovered(&self, words: &Phrases, list: &str) -> bool {
        !words.find_uncovered(self.list("any", list)).is_empty()
    }

    /// Tells whether a message is a phrase of the list and nothing beside it but filling.
    pub(super) fn is_all(&self, words: &Phrases, list: &str) -> bool {
        let mut words = words.clone();
        let spans = words.find(self.list("any", list));
        words.cover(&spans);
        let filler = self.list("any", "filler");
        words.cover_words(|word| filler.iter().any(|known| known == word));
        !spans.is_empty() && words.left().next().is_none()
    }

    /// Finds the yes or no that a message opens with.
    pub(super) fn leading(&self, words: &Phrases) -> Option<bool> {
        let mut rest = words.clone();
        let first = |spans: Vec<Span>| {
            spans
                .into_iter()
                .map(|(from, to)| (from, to - from))
                .min_by_key(|(from, len)| (*from, usize::MAX - len))
        };
        let yes = first(rest.find(self.list("any", "yes")));
        let no = first(rest.find(self.list("any", "no")));
        let (at, says) = match (yes, no) {
            (Some(yes), Some(no)) if yes.0 == no.0 => (yes.0, yes.1 > no.1),
            (Some(yes), Some(no)) => (yes.0.min(no.0), yes.0 < no.0),
            (Some(yes), None) => (yes.0, true),
            (None, Some(no)) => (no.0, false),
            (None, None) => return None,
        };
        // only filling may stand before it
        for list in ["filler", "ack", "done"] {
            let spans = rest.find(self.list("any", list));
            rest.cover(&spans);
        }
        rest.is_covered_to(at).then_some(says)
    }

    pub(super) fn own(&self, step: &str, words: &Phrases) -> Own {
        let like = self.list(step, "like").iter().map(String::as_str);
        let lists: Vec<&str> = [step].into_iter().chain(like).collect();
        let said = |list: &str| -> Vec<Span> {
            let spans = lists
                .iter()
                .map(|of| words.find_uncovered(self.list(of, list)));
            spans.flatten().collect()
        };
        let (mut yes, mut no) = (said("yes"), said("no"));
        // "hold on" has nothing of "on"; "a car on it" is no "on it"
        let of_every_step = ["later", "ack", "done"].iter().flat_map(|list| {
            let mut spans = words.find(self.list("any", list));
            spans.retain(|(from, to)| to - from > 1);
            spans
        });
        let of_every_step: Vec<Span> = of_every_step.collect();
        let meant = |(from, to): &Span| {
            let crosses = |(a, b): &&Span| a < to && from < b;
            let mut others = of_every_step.iter().filter(crosses);
            others.all(|(a, b)| to - from > b - a)
        };
        yes.retain(meant);
        no.retain(meant);
        let within = |inner: &Span, outer: &Span| {
            outer.0 <= inner.0 && inner.1 <= outer.1 && outer.1 - outer.0 > inner.1 - inner.0
        };
        // "nothing works" has nothing of "works"
        let unchanged = words.find(self.list("any", "unchanged"));
        yes.retain(|span| !unchanged.iter().any(|other| within(span, other)));
        let (all_yes, all_no) = (yes.clone(), no.clone());
        yes.retain(|span| !all_no.iter().any(|other| within(span, other)));
        no.retain(|span| !all_yes.iter().any(|other| within(span, other)));
        // "not tripped" says that it is on; the other way round a plain "not" is enough
        let negations = self.list("any", "negates");
        let denied = |span: &Span| words.stands_behind(negations, span.0);
        if yes.is_empty() && !no.is_empty() && no.iter().all(denied) {
            return Own::Denied(no);
        }
        match (yes.is_empty(), no.is_empty()) {
            (true, true) => Own::Neither,
            (false, true) => Own::Yes(yes),
            (true, false) => Own::No(no),
            (false, false) => Own::Both,
        }
    }

    /// Tells whether words say that it works again; "nothing works" says that nothing changed.
    pub(super) fn says_mended(&self, words: &Phrases) -> bool {
        let unchanged = words.find(self.list("any", "unchanged"));
        let mended = words.find_uncovered(self.list("any", "mended"));
        mended
            .iter()
            .any(|(from, to)| !unchanged.iter().any(|(a, b)| a <= from && to <= b))
    }

    /// Finds the words that say that the step cannot be told: those of its own, and those for every step.
    pub(super) fn unknown(&self, step: &str, words: &Phrases) -> Vec<Span> {
        let mut spans = words.find_uncovered(self.list(step, "unknown"));
        spans.extend(words.find_uncovered(self.list("any", "unknown")));
        let reflexive = words.find(self.list("any", "reflexive"));
        let knows = words.find(self.list("any", "knows"));
        spans.retain(|span| {
            let followed = knows.iter().any(|(from, _)| *from == span.1);
            !reflexive.contains(span) || followed || span.1 == words.len()
        });
        spans
    }

    /// Returns a message without the words that answer a step: what is said beyond the answer.
    pub(super) fn beyond(&self, check: &Check, step: &Step, text: &str) -> Option<String> {
        let mut words = Phrases::of(text);
        let mended = format!("mended-{}", check.fault);
        let mut spans: Vec<Span> = Vec::new();
        for key in [step.key, mended.as_str()] {
            if let Own::Yes(own) | Own::No(own) | Own::Denied(own) = self.own(key, &words) {
                spans.extend(own);
            }
        }
        if matches!(step.asks, Asks::For { .. }) {
            spans.extend(words.find(self.list("any", "none")));
        }
        spans.extend(self.unknown(step.key, &words));
        words.cover(&spans);
        let left: Vec<&str> = words.left().collect();
        (!spans.is_empty()).then(|| left.join(" "))
    }

    /// Counts the words of a phrase that say something: "its wet" has one.
    pub(super) fn weight(&self, words: &Phrases, span: Span) -> usize {
        let filler = self.list("any", "filler");
        words.count(span, |word| filler.iter().any(|known| known == word))
    }

    /// Accounts for the words that say nothing against an answer.
    pub(super) fn cover_what_is_clear(&self, words: &mut Phrases, question: &str, guards: bool) {
        let question = plain(question);
        let asked: Vec<&str> = question.split(' ').collect();
        let mut lists = vec![
            "yes", "no", "filler", "ack", "done", "mended", "skip", "unknown",
        ];
        if !guards {
            lists.extend(["fine", "unchanged", "unsure", "not"]);
        }
        for list in lists {
            let spans = words.find(self.list("any", list));
            words.cover(&spans);
        }
        let hedges: Vec<&String> = ["later", "but", "unsure", "not"]
            .iter()
            .flat_map(|list| self.list("any", list))
            .collect();
        words.cover_words(|word| {
            asked.contains(&word) && !hedges.iter().any(|hedge| *hedge == word)
        });
    }
}
