//! The words of an answer: folded, matched against phrases, and what is left of them.

use super::super::phrases::{is_marked, plain};

/// A message as words, and which of them a phrase has accounted for.
#[derive(Debug, Clone)]
pub(super) struct Phrases {
    words: Vec<String>,
    covered: Vec<bool>,
}

/// Stands among the words where a comma parts a "no" from what follows: no phrase goes over it.
const PAUSE: &str = ",";

/// Where a phrase stands: from a word to the one after its last.
pub(super) type Span = (usize, usize);

impl Phrases {
    pub(super) fn of(text: &str) -> Phrases {
        let mut words: Vec<String> = Vec::new();
        let no = text.split_once(',').filter(|(head, _)| plain(head) == "no");
        if no.is_some() {
            // "no, se botó otra vez" does not say "no se botó"
            words.extend(["no".to_owned(), PAUSE.to_owned()]);
        }
        let rest = no.map_or(text, |(_, rest)| rest);
        for word in plain(rest).split(' ').filter(|word| !word.is_empty()) {
            match words.last_mut().and_then(|last| contracted(last, word)) {
                Some((last, short)) => *last = short.to_owned(),
                None if word == "cannot" => words.push("cant".into()),
                None => words.push(without_drawl(word)),
            }
        }
        let covered = words.iter().map(|word| word == PAUSE).collect();
        Phrases { words, covered }
    }

    /// Returns all the words, as phrases are held against them.
    pub(super) fn whole(&self) -> String {
        self.words.join(" ")
    }

    pub(super) fn len(&self) -> usize {
        self.words.len()
    }

    /// Finds each place where one of the phrases stands.
    pub(super) fn find(&self, phrases: &[String]) -> Vec<Span> {
        let mut spans = Vec::new();
        for phrase in phrases {
            let places = 0..self.words.len();
            spans.extend(places.filter_map(|at| Some((at, self.end_of(phrase, at)?))));
        }
        spans
    }

    /// Returns where a phrase ends that begins at a word; none where it does not stand there.
    fn end_of(&self, phrase: &str, mut at: usize) -> Option<usize> {
        // most phrases of a list begin otherwise
        if self.words.get(at)?.as_bytes().first() != phrase.as_bytes().first() {
            return None;
        }
        let mut rest = phrase;
        loop {
            rest = rest.strip_prefix(self.words.get(at)?.as_str())?;
            at += 1;
            if rest.is_empty() {
                return Some(at);
            }
            rest = rest.strip_prefix(' ')?;
        }
    }

    /// Finds the phrases among the words that nothing has accounted for yet.
    pub(super) fn find_uncovered(&self, phrases: &[String]) -> Vec<Span> {
        let mut spans = self.find(phrases);
        spans.retain(|(from, to)| !self.covered[*from..*to].iter().any(|covered| *covered));
        spans
    }

    /// Tells whether one of the phrases ends right before a word.
    pub(super) fn stands_behind(&self, phrases: &[String], at: usize) -> bool {
        self.find(phrases).iter().any(|(_, to)| *to == at)
    }

    /// Finds the phrases that nothing has accounted for and that stand right before one of the places.
    pub(super) fn find_before(&self, phrases: &[String], places: &[Span]) -> Vec<Span> {
        let mut spans = self.find_uncovered(phrases);
        spans.retain(|(_, to)| places.iter().any(|(from, _)| from == to));
        spans
    }

    /// Counts the words of a place that the test does not know.
    pub(super) fn count(&self, (from, to): Span, known: impl Fn(&str) -> bool) -> usize {
        let words = self.words[from..to].iter();
        words.filter(|word| !known(word)).count()
    }

    pub(super) fn cover(&mut self, spans: &[Span]) {
        for (from, to) in spans {
            self.covered[*from..*to].fill(true);
        }
    }

    /// Accounts for each word that the test knows.
    pub(super) fn cover_words(&mut self, known: impl Fn(&str) -> bool) {
        for (word, covered) in self.words.iter().zip(&mut self.covered) {
            *covered = *covered || known(word);
        }
    }

    /// Tells whether every word before one is accounted for.
    pub(super) fn is_covered_to(&self, at: usize) -> bool {
        self.covered[..at].iter().all(|covered| *covered)
    }

    /// Returns the words that nothing has accounted for.
    pub(super) fn left(&self) -> impl Iterator<Item = &str> {
        let pairs = self.words.iter().zip(&self.covered);
        pairs
            .filter(|(_, covered)| !**covered)
            .map(|(word, _)| word.as_str())
    }
}

/// Finds a verb and `not` that the lists write as one: "does not hold" is "doesnt hold" there.
fn contracted<'w>(verb: &'w mut String, word: &str) -> Option<(&'w mut String, &'static str)> {
    let short = match (verb.as_str(), word) {
        ("do", "not") => "dont",
        ("does", "not") => "doesnt",
        ("did", "not") => "didnt",
        ("will", "not") => "wont",
        ("can", "not") => "cant",
        ("could", "not") => "couldnt",
        _ => return None,
    };
    Some((verb, short))
}

/// Writes a drawled word as it is spelled: "yesss", "nooo".
fn without_drawl(word: &str) -> String {
    let letters: Vec<char> = word.chars().collect();
    let drawled = |c: char, at: usize| {
        c.is_alphabetic() && letters.get(at + 1) == Some(&c) && letters.get(at + 2) == Some(&c)
    };
    let Some(start) = (0..letters.len()).find(|at| drawled(letters[*at], *at)) else {
        return word.to_owned();
    };
    let run = letters[start..]
        .iter()
        .take_while(|c| **c == letters[start])
        .count();
    letters[..=start]
        .iter()
        .chain(&letters[start + run..])
        .collect()
}

/// Tells whether a text asks rather than tells: by its mark, or by the words it opens with.
pub(super) fn is_question(text: &str) -> bool {
    const OPENINGS: &[&str] = &[
        "can i",
        "can we",
        "can you",
        "could i",
        "should i",
        "should we",
        "shall i",
        "may i",
        "is it ok",
        "is it safe",
        "is it fine",
        "do i",
        "do we",
        "what",
        "whats",
        "how",
        "when can",
        "when do",
        "when is",
        "when will",
        "why",
        "which",
        "where",
        "who",
        "whos",
        "is there",
        "are you",
        "puedo",
        "podemos",
        "se puede",
        "debo",
        "es seguro",
        "esta bien si",
        "como le",
        "como se",
        "como hago",
        "cuando puedo",
        "que hago",
        "que sigue",
        "por que",
        "cual",
        "donde",
        "quien",
        "hay que",
    ];
    let asks = is_marked(text);
    let text = plain(text);
    let opens = |opening: &&str| {
        text.strip_prefix(*opening)
            .is_some_and(|rest| rest.is_empty() || rest.starts_with(' '))
    };
    asks || OPENINGS.iter().any(opens)
}

/// Finds the one number of a text and the measure written to it; none where there are two, or a part of one.
pub(super) fn sole_value(text: &str) -> Option<(f64, String)> {
    let mut found = None;
    for word in text.to_lowercase().split_whitespace() {
        let word =
            word.trim_matches(|c: char| matches!(c, ',' | '.' | ';' | '!' | '(' | ')' | '~' | '#'));
        if !word.contains(|c: char| c.is_ascii_digit()) {
            continue;
        }
        let digits = word.trim_end_matches(|c: char| !c.is_ascii_digit());
        let value: f64 = digits.replace(',', ".").parse().ok()?;
        if found.is_some() || !value.is_finite() {
            return None;
        }
        found = Some((value, word[digits.len()..].to_owned()));
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_drawl_is_read_as_the_word() {
        assert_eq!(without_drawl("yesss"), "yes");
        assert_eq!(without_drawl("nooo"), "no");
        assert_eq!(without_drawl("off"), "off");
    }

    #[test]
    fn a_question_is_known_by_its_mark_and_by_its_opening() {
        assert!(is_question("yes, can i turn it back on?"));
        assert!(is_question("can i turn it back on"));
        assert!(!is_question("when i plug the heater it trips"));
        assert!(!is_question("como 52"));
    }

    #[test]
    fn one_number_is_one() {
        assert_eq!(sole_value("about 52psi"), Some((52.0, "psi".into())));
        assert_eq!(sole_value("12.1 v"), Some((12.1, String::new())));
        assert_eq!(sole_value("52 or 53"), None);
        assert_eq!(sole_value("3/4"), None);
    }
}
