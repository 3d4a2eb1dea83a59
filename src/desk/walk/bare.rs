//! A bare message as an answer to a step of setting up or leaving.

use super::super::phrases::plain;
use super::answers::{Answers, Own};
use super::phrase::{Phrases, is_question};
use super::said::{LONGEST, Said};
use super::verdict::{LEFT_BESIDE_OWN, LEFT_BESIDE_PLAIN, LEFT_BESIDE_SKIP};
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

    /// Reads a bare message as an answer to a step of setting up or leaving: by the step's own words, under its `key`, else by
    /// those that fit every step. Where the step guards somebody, every word of it must be accounted for, and what is only a
    /// promise is none.
    pub(in crate::desk) fn bare(
        &self,
        heard: &Heard,
        text: &str,
        (unit, key): (&str, &str),
        guards: bool,
    ) -> Option<Said> {
        let mut words = Phrases::of(text);
        if words.len() > LONGEST || is_question(text) || self.any(&words, "mistake") {
            return None;
        }
        if self.is_all(&words, "everything") {
            // one step is asked: "all set" names none, and must not report it
            return Some(Said::Unclear);
        }
        let number = heard.answer.as_ref().and_then(|answer| answer.number);
        let mut unnamed = words.clone();
        let unit = plain(unit);
        unnamed.cover_words(|word| word == unit);
        if let Some((said, _)) = self.by_own_words(&unnamed, key, guards) {
            return Some(said);
        }
        let not = self.any(&words, "not");
        // "ya la arreglé": of something else, where nothing is to be mended
        let of_a_fault = key.ends_with("-fault") || key.ends_with("-tire");
        if self.any(&words, "repaired") && !of_a_fault {
            return None;
        }
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
        // "yep drained" at the step that asks whether it is closed
        if said == Said::Yes && self.any(&words, "of-steps") {
            return Some(Said::Unclear);
        }
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

    /// Reads a message that is taken for a report, too, by the words of the step's own: only where they are all that it says.
    pub(super) fn by_own_words_alone(&self, text: &str, key: &str, guards: bool) -> Option<Said> {
        let words = Phrases::of(text);
        if words.len() > LONGEST || is_question(text) || self.any(&words, "mistake") {
            return None;
        }
        let (said, left) = self.by_own_words(&words, key, guards)?;
        (left == 0 && said != Said::Unclear).then_some(said)
    }

    /// Reads a bare message by the words of the step's own, and counts those that they leave; none where it has none of
    /// them, or says more than they do.
    fn by_own_words(&self, words: &Phrases, key: &str, guards: bool) -> Option<(Said, usize)> {
        let mut words = words.clone();
        let leading = self.leading(&words);
        let own = self.own(key, &words);
        let spans = match &own {
            Own::Yes(spans) | Own::No(spans) | Own::Denied(spans) => spans.clone(),
            Own::Both => Vec::new(),
            Own::Neither => words.find_uncovered(self.list(key, "unknown")),
        };
        words.cover(&spans);
        let before = words.find_before(self.list("any", "denies"), &spans);
        words.cover(&before);
        let said = match own {
            Own::Both => return Some((Said::Unclear, 0)),
            Own::Denied(_) if guards => return Some((Said::Unclear, 0)),
            Own::Yes(_) if !before.is_empty() => Said::No,
            Own::Yes(_) if leading == Some(false) => return Some((Said::Unclear, 0)),
            Own::No(_) if leading == Some(true) => return Some((Said::Unclear, 0)),
            Own::Yes(_) | Own::Denied(_) => Said::Yes,
            Own::No(_) => Said::No,
            // "yep hooked up" says a part of what is asked
            Own::Neither if !words.find(self.list(key, "part")).is_empty() => {
                return Some((Said::Unclear, 0));
            }
            Own::Neither if spans.is_empty() || leading == Some(true) => return None,
            Own::Neither => Said::Skip,
        };
        let yes = guards && said == Said::Yes;
        self.cover_what_is_clear(&mut words, "", yes);
        let beside = words.find(self.list(key, "beside"));
        words.cover(&beside);
        let doubt = |list| self.has_uncovered(&words, list);
        let left = words.left().count();
        let said = match said {
            Said::Yes if doubt("later") || doubt("but") || doubt("not") => Said::Unclear,
            Said::Yes if guards && (left > 0 || doubt("unsure")) => Said::Unclear,
            Said::Skip if left > LEFT_BESIDE_SKIP => return None,
            Said::Yes | Said::No if left > LEFT_BESIDE_OWN => return None,
            said => said,
        };
        Some((said, left))
    }
}
