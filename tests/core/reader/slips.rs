//! One slip of the thumb in each example message: what the reader logs that was not meant.
//!
//! A slip is one keystroke: a neighbour key, a key dropped, doubled, or swapped with the next. In words it spares digits,
//! signs and the names of trailers, whose slips no reader can know; the other count takes them in.

use std::cell::RefCell;
use std::collections::{BTreeSet, HashMap};

use hosebib::quantity::TemperatureScale;
use hosebib::words::{Reader, to_json};
use serde_json::Value;

use super::compare::{all_examples, same_reading, values};

const NEIGHBOURS: [(&str, &str); 26] = [
    ("a", "qsz"),
    ("b", "vgn"),
    ("c", "xdv"),
    ("d", "sfec"),
    ("e", "wrd"),
    ("f", "dgrv"),
    ("g", "fhtb"),
    ("h", "gjyn"),
    ("i", "uok"),
    ("j", "hkum"),
    ("k", "jlim"),
    ("l", "kop"),
    ("m", "njk"),
    ("n", "bmh"),
    ("o", "ipl"),
    ("p", "ol"),
    ("q", "wa"),
    ("r", "etf"),
    ("s", "adwx"),
    ("t", "ryg"),
    ("u", "yij"),
    ("v", "cbf"),
    ("w", "qes"),
    ("x", "zcs"),
    ("y", "tuh"),
    ("z", "xa"),
];

const SIGN_NEIGHBOURS: [(char, &str); 15] = [
    ('1', "2"),
    ('2', "13"),
    ('3', "24"),
    ('4', "35"),
    ('5', "46"),
    ('6', "57"),
    ('7', "68"),
    ('8', "79"),
    ('9', "80"),
    ('0', "9-"),
    ('-', "0="),
    ('.', ",/"),
    (',', ".m"),
    ('/', "."),
    ('%', "$^"),
];

/// The share of slips in words that may log a value that was not meant, in percent.
pub(super) const AT_MOST: f64 = 0.5;

/// Which keys slip.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Keys {
    /// Letters of words that touch no digit and name no trailer.
    Words,
    /// Letters, and not those of a trailer's name: the `v` of `118v` too.
    Letters,
    /// Letters, digits and signs, wherever they stand.
    All,
}

/// One keystroke that went wrong, at a character.
#[derive(Debug, Clone, Copy)]
enum Slip {
    Neighbour(usize, char),
    Dropped(usize),
    Doubled(usize),
    Swapped(usize),
}

/// What slips led to.
#[derive(Debug, Default)]
pub(super) struct Slips {
    /// How many messages with a slip were read.
    pub(super) mutants: usize,
    /// Those with a value logged that the message without the slip has not got, for its trailer or for none named.
    pub(super) wrong: Vec<String>,
    /// Those with a right value whose trailer was lost, so that the desk has to find it.
    pub(super) trailer_lost: usize,
}

impl Slips {
    /// Returns the share of messages with a value that was not meant, in percent.
    pub(super) fn share(&self) -> f64 {
        100.0 * self.wrong.len() as f64 / self.mutants.max(1) as f64
    }
}

/// A reader that remembers which words it took for a trailer: the same words stand in many messages.
pub(super) struct Namer<'r> {
    reader: &'r Reader,
    known: RefCell<HashMap<String, Option<String>>>,
}

impl Namer<'_> {
    /// Makes one that knows no word yet.
    pub(super) fn new(reader: &Reader) -> Namer<'_> {
        let known = RefCell::default();
        Namer { reader, known }
    }

    fn is_a_trailer(&self, name: &str, units: &BTreeSet<String>) -> bool {
        let mut known = self.known.borrow_mut();
        if !known.contains_key(name) {
            let answer = self.reader.hear(name, TemperatureScale::F).answer;
            let unit = answer.and_then(|answer| answer.unit);
            known.insert(name.to_owned(), unit.map(|unit| unit.to_string()));
        }
        known[name]
            .as_ref()
            .is_some_and(|unit| units.contains(unit))
    }
}

/// Reads every so-manieth example with so many slips, one at a time, drawn by the seed: first the kind, then the key.
pub(super) fn slips(namer: &Namer, keys: Keys, (every, each): (usize, usize), seed: u64) -> Slips {
    let reader = namer.reader;
    let mut chance = fastrand::Rng::with_seed(seed);
    let mut found = Slips::default();
    let first = chance.usize(..every);
    for (_, example) in all_examples().into_iter().skip(first).step_by(every) {
        let text = example["text"].as_str().unwrap();
        let meant = Meant::of(reader, &example);
        let chars: Vec<char> = text.chars().collect();
        let mut ways = ways(namer, &chars, keys, &meant.units);
        for ways in &mut ways {
            chance.shuffle(ways);
        }
        for _ in 0..each {
            let Some(way) = chance.choice(&mut ways).and_then(Vec::pop) else {
                continue;
            };
            let mutant = with_slip(&chars, way);
            found.mutants += 1;
            let (mut wrong, mut lost) = (None, false);
            for value in logged(reader, &mutant) {
                match meant.place(&value) {
                    Place::Meant => {}
                    Place::Nowhere => lost = true,
                    Place::Wrong => wrong = wrong.or(Some(value)),
                }
            }
            found.trailer_lost += usize::from(lost && wrong.is_none());
            if let Some((unit, key, value)) = wrong {
                let line = format!("{mutant:?} logs {unit} {key} {value}; meant was {text:?}");
                found.wrong.push(line);
            }
        }
    }
    found
}

/// Where a logged value belongs.
enum Place {
    Meant,
    Nowhere,
    Wrong,
}

type Logged = (Value, String, Value);

/// What a message without slips says: by its gold, and by what the reader logs of readings that the gold leaves out.
struct Meant {
    values: Vec<Logged>,
    units: BTreeSet<String>,
}

impl Meant {
    fn of(reader: &Reader, example: &Value) -> Meant {
        let entries = example["gold"]["entries"].as_array().unwrap();
        let mut values = of_entries(entries);
        values.extend(logged(reader, example["text"].as_str().unwrap()));
        let mut units: BTreeSet<String> = values
            .iter()
            .map(|(unit, _, _)| unit)
            .chain(entries.iter().map(|entry| &entry["unit"]))
            .chain([&example["gold"]["ask"]["unit"]])
            .filter_map(|unit| unit.as_str().map(String::from))
            .collect();
        units.remove("");
        Meant { values, units }
    }

    fn place(&self, (unit, key, value): &Logged) -> Place {
        let same = |(_, k, v): &&Logged| k == key && same_reading(key, value, v);
        let units: Vec<&Value> = self.values.iter().filter(same).map(|(u, _, _)| u).collect();
        match units.contains(&unit) {
            true => Place::Meant,
            false if !units.is_empty() && unit.is_null() => Place::Nowhere,
            false => Place::Wrong,
        }
    }
}

fn logged(reader: &Reader, text: &str) -> Vec<Logged> {
    let got = to_json(text, &reader.hear(text, TemperatureScale::F));
    of_entries(got["entries"].as_array().unwrap())
}

/// Takes entries apart into values, each circuit's current one of its own.
fn of_entries(entries: &[Value]) -> Vec<Logged> {
    let mut all = Vec::new();
    for entry in entries {
        for (key, value) in entry["readings"].as_object().unwrap() {
            let values = match value.as_array() {
                Some(list) => list
                    .iter()
                    .map(|item| Value::from(vec![item.clone()]))
                    .collect(),
                None => vec![value.clone()],
            };
            all.extend(
                values
                    .into_iter()
                    .map(|value| (entry["unit"].clone(), key.clone(), value)),
            );
        }
    }
    all
}

/// Lists every keystroke that may go wrong, by kind.
fn ways(namer: &Namer, chars: &[char], keys: Keys, units: &BTreeSet<String>) -> [Vec<Slip>; 4] {
    let spared = match keys {
        Keys::Words | Keys::Letters => names(namer, chars, keys, units),
        Keys::All => vec![false; chars.len()],
    };
    let slips = |at: usize| match keys {
        Keys::Words | Keys::Letters => chars[at].is_ascii_alphabetic() && !spared[at],
        Keys::All => !chars[at].is_whitespace() && chars[at].is_ascii(),
    };
    let mut ways: [Vec<Slip>; 4] = Default::default();
    for at in (0..chars.len()).filter(|at| slips(*at)) {
        let low = chars[at].to_ascii_lowercase();
        let near = NEIGHBOURS
            .iter()
            .find(|(key, _)| key.starts_with(low))
            .map(|(_, near)| *near)
            .or(SIGN_NEIGHBOURS
                .iter()
                .find(|(key, _)| *key == low)
                .map(|(_, near)| *near));
        let near = near.unwrap_or_default().chars();
        ways[0].extend(near.map(|key| Slip::Neighbour(at, key)));
        ways[1].push(Slip::Dropped(at));
        ways[2].push(Slip::Doubled(at));
        if at + 1 < chars.len() && slips(at + 1) && chars[at] != chars[at + 1] {
            ways[3].push(Slip::Swapped(at));
        }
    }
    ways
}

/// Marks the characters of words that name a trailer of the message, as a name or in number words, and of those that
/// touch a digit where words alone slip.
fn names(namer: &Namer, chars: &[char], keys: Keys, units: &BTreeSet<String>) -> Vec<bool> {
    let part = |c: char| c.is_alphanumeric() || c == '-';
    let mut words = Vec::new();
    let mut at = 0;
    while at < chars.len() {
        let end = (at..chars.len())
            .find(|i| !part(chars[*i]))
            .unwrap_or(chars.len());
        if end > at {
            words.push(at..end);
        }
        at = end.max(at) + 1;
    }
    let mut spared = vec![false; chars.len()];
    for count in 1..=3 {
        for several in words.windows(count) {
            let (start, end) = (several[0].start, several[count - 1].end);
            let name: String = chars[start..end].iter().collect();
            // `u12`: a mark that is glued to a name belongs to it
            let bare = name.trim_start_matches(char::is_alphabetic);
            let mut forms = [name.as_str(), bare]
                .into_iter()
                .filter(|form| form.len() + 1 >= name.len());
            let digits =
                keys == Keys::Words && count == 1 && name.contains(|c: char| c.is_ascii_digit());
            if digits || forms.any(|form| namer.is_a_trailer(form, units)) {
                spared[start..end].fill(true);
            }
        }
    }
    spared
}

fn with_slip(chars: &[char], way: Slip) -> String {
    let mut out = chars.to_vec();
    match way {
        Slip::Neighbour(at, key) if out[at].is_uppercase() => out[at] = key.to_ascii_uppercase(),
        Slip::Neighbour(at, key) => out[at] = key,
        Slip::Dropped(at) => drop(out.remove(at)),
        Slip::Doubled(at) => out.insert(at, out[at]),
        Slip::Swapped(at) => out.swap(at, at + 1),
    }
    out.into_iter().collect()
}

#[test]
fn words_of_the_language_are_not_taken_for_ours() {
    let reader = Reader::new();
    for text in [
        "12 lever 95",
        "14 tanker 3/4",
        "I presume 12 is fine",
        "a small box for 9",
        "we all slept well at 12",
    ] {
        assert_eq!(values(&reader, text), Vec::<String>::new(), "{text:?}");
        assert!(
            reader.hear(text, TemperatureScale::F).taken.is_empty(),
            "{text:?}"
        );
    }
    assert_eq!(
        reader.hear("12 presure 55", TemperatureScale::F).taken[0].read,
        "pressure"
    );
}

#[test]
fn a_value_that_hangs_on_a_word_nobody_knows_is_asked_about() {
    let reader = Reader::new();
    for text in [
        "iss 48 psi ok for 9",
        "31 aws 88 psi",
        "12 tank syh of full",
        "7 waste 1/2, I men 3/4",
        "14 got the 10 wag cord, 25 ft run",
        "iff 9 drops below 20 psi",
        "2 yy 3 bar on 14",
        "waste ver 3/4 on 31",
    ] {
        let heard = reader.hear(text, TemperatureScale::F);
        assert_eq!(values(&reader, text), Vec::<String>::new(), "{text:?}");
        assert!(!heard.unclear.is_empty(), "{text:?} meets silence");
    }
    // words that could not be a slip for one that matters leave the values alone
    for (text, count) in [
        ("12 psi 55 according to Wendell", 1),
        ("12 fresh 1/2, waste 3/4, yikes", 2),
        ("zoinks, 118 volts on 12", 1),
    ] {
        let heard = reader.hear(text, TemperatureScale::F);
        assert_eq!(values(&reader, text).len(), count, "{text:?}");
        assert!(heard.unclear.is_empty(), "{text:?}");
    }
}
