//! What a correction says: its mark taken off, what was wrong and what is right told apart.

use super::bare_number;
use crate::desk::answer;
use crate::desk::receive::Hearing;
use crate::desk::settle::known;
use crate::heard::UnitName;
use crate::quantity::c_from_f;

/// What a correction says: what is right, and what was wrong where that is said too.
pub(super) struct Said<'t> {
    pub(super) right: &'t str,
    pub(super) wrong: Option<&'t str>,
    /// True for a mark that begins nothing but a correction: `*`, "oops", "perdón".
    pub(super) sure: bool,
    /// True for one that opens reports too: "its", "era".
    pub(super) weak: bool,
    /// True for one that tells of before: "it was", "era".
    pub(super) past: bool,
    /// True where "no" or "not" stands before what is said.
    pub(super) denied: bool,
}

impl Hearing<'_> {
    /// Takes the mark of a correction off the message.
    pub(super) fn correction(&self) -> Option<Said<'_>> {
        let phrases = &self.desk.phrases;
        let text = self.text.trim();
        let plain = |right, sure| Said {
            right,
            wrong: None,
            sure,
            weak: false,
            past: false,
            denied: false,
        };
        // "me equivoqué", "thats the wrong trailer", and no more
        if phrases.is("mend", "mistaken", text) {
            return Some(plain("", true));
        }
        if self.turns_the_sign(text) {
            return Some(plain(text, true));
        }
        if let Some(right) = text.strip_prefix('*').or(text.strip_suffix('*')) {
            let right = right.trim_matches('*').trim();
            return (!right.is_empty()).then(|| plain(right, true));
        }
        // "12 was right", "la 12 estaba bien": of the trailer that the sender's last correction took it from
        if let Some(unit) = self.was_right(text) {
            let before = answer::correction(self)?.corrects.iter();
            let of_it = before.into_iter().any(|report| report.unit == *unit);
            return of_it.then(|| plain(text, true));
        }
        // "50 was wrong, its 55"
        if let Some((wrong, after)) = phrases.parted("mend", "was-wrong", text)
            && bare_number(wrong)
        {
            let after = after.trim_start_matches([',', ';', '.', ' ']);
            let right = self.without_is(after.trim());
            return bare_number(right).then_some(Said {
                wrong: Some(wrong),
                ..plain(right, true)
            });
        }
        let mut rest = text;
        let (mut sure, mut denied, mut past) = (false, false, false);
        while let Some(after) = phrases.after("mend", "opens", rest) {
            let head = &rest[..rest.len() - after.len()];
            sure |= !phrases.is("mend", "weak", head);
            past |= phrases.ends("mend", "past", head);
            // "perdón, no está": the denial went with the mark
            denied |= phrases.ends("mend", "no", head);
            rest = after;
            if rest.is_empty() {
                return None;
            }
        }
        if let Some(after) = phrases.after("mend", "no", rest) {
            // "not 12, 14", "no la 12, la 14", "no es la 12 es la 14"
            let parts = after
                .split_once([',', ';'])
                .or_else(|| phrases.parted("mend", "between", after));
            // "no, la presión era 60"
            let of_a_thing = self.meant_of_a_thing(after).is_some();
            if let Some((wrong, after)) = parts.filter(|_| !of_a_thing) {
                let after = self.without_is(after.trim());
                return (!after.is_empty()).then_some(Said {
                    right: after,
                    wrong: Some(self.without_is(wrong.trim())),
                    sure,
                    weak: false,
                    past: false,
                    denied: false,
                });
            }
            // "no not unhitched yet"
            let mut denied = after;
            while let Some(more) = phrases.after("mend", "no", denied) {
                denied = more;
            }
            // "no it was 5/8"
            let number = self.without_is(denied);
            let right = match bare_number(number) {
                true => number,
                false => denied,
            };
            return (!right.is_empty()).then(|| Said {
                denied: true,
                ..plain(right, sure)
            });
        }
        // "14 not 12", "es la 14, no la 12"
        if let Some((right, wrong)) = phrases.parted("mend", "not", rest)
            && !wrong.is_empty()
        {
            return Some(Said {
                right: self.without_is(right),
                wrong: Some(self.without_is(wrong)),
                sure,
                weak: false,
                past: false,
                denied: false,
            });
        }
        // "119, I mean", "48, perdón"
        if rest == text {
            let mut right = text;
            while let Some(before) = phrases.before("mend", "closes", right) {
                right = before;
            }
            if right != text {
                return Some(plain(right, true));
            }
        }
        (rest != text).then_some(Said {
            weak: !sure,
            past,
            denied,
            ..plain(rest, sure)
        })
    }

    /// "+5" after "-5": tells whether a number with its sign is the opposite of one told in the last report.
    fn turns_the_sign(&self, text: &str) -> bool {
        let number = text.strip_prefix('+').and_then(|n| n.parse::<f64>().ok());
        let opposite = |value: f64| {
            number.is_some_and(|n| n > 0.0 && (value == -n || (c_from_f(value) + n).abs() < 0.05))
        };
        number.is_some()
            && self.within_reach().next().is_some_and(|(_, told)| {
                let mut entries = told.iter().map(|(.., entry)| &entry.readings.values);
                entries.any(|values| values.values().any(|value| opposite(*value)))
            })
    }

    /// "no the pressure was 60": what was meant of a thing, without the word that tells of before.
    pub(super) fn meant_of_a_thing(&self, right: &str) -> Option<String> {
        let (thing, number) = self.desk.phrases.parted("mend", "was", right)?;
        let thing = thing.trim();
        let plain = !thing.is_empty() && !bare_number(thing) && is_a_value(number);
        plain.then(|| format!("{thing} {}", number.trim()))
    }

    /// Tells whether the message corrects a thing by its name: "no, the pressure was 60".
    pub(in crate::desk::receive) fn mends_a_thing(&self) -> bool {
        let said = self.correction();
        said.is_some_and(|said| self.meant_of_a_thing(said.right).is_some())
    }

    fn without_is<'t>(&self, text: &'t str) -> &'t str {
        let mut rest = text;
        // the word before a trailer's number tells that it is one
        while let Some(after) = self.desk.phrases.after("mend", "is", rest) {
            if after.is_empty() || self.names_a_unit(rest).is_some() && self.explicit(rest) {
                break;
            }
            rest = after;
        }
        rest
    }

    /// Finds the trailer that is said to have been the right one after all: "12 was right".
    pub(super) fn was_right(&self, text: &str) -> Option<&UnitName> {
        let phrases = &self.desk.phrases;
        let name = phrases.before("mend", "was-right", text.trim_end_matches(['.', '!']))?;
        self.names_a_unit(name)
    }

    /// Tells whether a trailer is named as one: "la 10", "unit 10", "#10".
    pub(super) fn explicit(&self, text: &str) -> bool {
        let named = self.desk.phrases.after("mend", "trailer", text);
        text.trim_start().starts_with('#') || named.is_some_and(|rest| !rest.is_empty())
    }

    /// Finds the trailer that a few words name.
    pub(super) fn names_a_unit(&self, text: &str) -> Option<&UnitName> {
        if text.trim_start().starts_with(['-', '+', '−']) {
            return None;
        }
        let words: Vec<&str> = text
            .split(|c: char| !(c.is_alphanumeric() || c == '-' || c == '/' || c == '.' || c == '%'))
            .filter(|word| !word.is_empty())
            .collect();
        let name = match words.as_slice() {
            [name] | [_, name] => name,
            _ => return None,
        };
        if words.len() == 2 && !self.explicit(text) {
            return None;
        }
        let name = name.trim_end_matches('.');
        // a fraction, a decimal number or one with a sign is none
        if name.contains(['/', '.', '%']) {
            return None;
        }
        known(&self.fleet, &UnitName::new(name))
    }
}

/// Tells whether no more than a value is said: a number, with its measure at most.
fn is_a_value(text: &str) -> bool {
    let mut words = text.split_whitespace();
    let number = words
        .next()
        .is_some_and(|word| word.starts_with(|c: char| c.is_ascii_digit() || c == '-'));
    number && words.count() <= 1
}
