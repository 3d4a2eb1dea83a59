//! A bare message as an answer to a step of setting up or leaving.

use super::answers::Answers;
use super::phrase::{Phrases, is_question};
use super::said::{LONGEST, Said};
use super::verdict::LEFT_BESIDE_PLAIN;
use crate::heard::Heard;

impl Answers {
    /// Reads what a whole message orders of setting up or leaving; none where it is no order.
    pub(in crate::desk) fn orders_on(&self, text: &str) -> Option<Said> {
        let words = Phrases::of(text);
        let is = |list| self.is_all(&words, list);
        let again = is("resume") || is("next") || is("back") || is("repeat") && !is("yes");
        match () {
            () if is("stop") => Some(Said::Stop),
            () if again => Some(Said::Resume),
            () if is("all") => Some(Said::DidAll),
            () if is("skip") || is("unknown") => Some(Said::Skip),
            () => None,
        }
    }

    /// Tells whether a message only asks for the next step, or passes this one: no question but a step's takes that.
    pub(in crate::desk) fn goes_on(&self, text: &str) -> bool {
        let words = Phrases::of(text);
        ["resume", "next", "skip", "all"]
            .into_iter()
            .any(|list| self.is_all(&words, list))
    }

    /// Reads a bare message as an answer to a step of setting up or leaving. Where the step guards somebody, every word of
    /// it must be accounted for, and what is only a promise is none.
    pub(in crate::desk) fn bare(&self, heard: &Heard, text: &str, guards: bool) -> Option<Said> {
        let mut words = Phrases::of(text);
        if words.len() > LONGEST || is_question(text) || self.any(&words, "mistake") {
            return None;
        }
        if self.is_all(&words, "everything") {
            // one step is asked: "all set" names none, and must not report it
            return Some(Said::Unclear);
        }
        let number = heard.answer.as_ref().and_then(|answer| answer.number);
        let not = self.any(&words, "not");
        let said = match self.leading(&words) {
            Some(false) => Said::No,
            Some(true) if not => Said::Unclear,
            Some(true) => Said::Yes,
            None if self.any(&words, "skip") || self.is_all(&words, "unknown") => Said::Skip,
            None if self.any(&words, "done") || self.says_mended(&words) => match not {
                true => Said::No,
                false => Said::Yes,
            },
            None if number.is_some() => return number.map(Said::Number),
            None if self.any(&words, "ack") => Said::Unclear,
            None => return None,
        };
        let yes = guards && said == Said::Yes;
        let promised = yes && (self.is_all(&words, "promise") || self.any(&words, "later"));
        self.cover_what_is_clear(&mut words, "", yes);
        let later = self.has_uncovered(&words, "later") || self.has_uncovered(&words, "but");
        let unsure = yes && self.has_uncovered(&words, "unsure");
        match words.left().count() {
            _ if later || unsure || promised => Some(Said::Unclear),
            0 => Some(said),
            1 if !yes => Some(said),
            1..=LEFT_BESIDE_PLAIN if yes => Some(Said::Unclear),
            _ => None,
        }
    }
}
