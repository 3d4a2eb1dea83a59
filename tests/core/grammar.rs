//! The language as `grammar/message.abnf` states it: sentences made from it with a seed are read back whole.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use abnf::types::{Node, Repeat, TerminalValues};
use hosebib::heard::{Event, Fault, ReadingKey};
use hosebib::quantity::TemperatureScale;
use hosebib::words::{Reader, WordFile};

/// How many sentences each run makes.
const SENTENCES: usize = 1500;

fn project(file: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(file);
    fs::read_to_string(&path).unwrap_or_else(|e| panic!("{}: {e}", path.display()))
}

/// What a generated sentence was meant to say: events, faults and readings by key, each once a trailer.
#[derive(Debug, Default, Clone)]
struct Meant {
    rules: Vec<String>,
    events: Vec<Event>,
    faults: Vec<Fault>,
}

struct Maker {
    rules: BTreeMap<String, Node>,
    leaves: BTreeMap<&'static str, Vec<(String, String)>>,
    chance: fastrand::Rng,
    meant: Meant,
    out: String,
}

impl Maker {
    fn new(seed: u64) -> Maker {
        let text = project("grammar/message.abnf")
            .replace("\r\n", "\n")
            .replace('\n', "\r\n");
        let rules = abnf::rulelist(&text).expect("the grammar is valid ABNF");
        let rules = rules
            .into_iter()
            .map(|rule| (rule.name().to_lowercase(), rule.node().clone()))
            .collect();
        let file = WordFile::parse("en.toml", &project("grammar/words/en.toml")).unwrap();
        let mut leaves: BTreeMap<&'static str, Vec<(String, String)>> = BTreeMap::new();
        for entry in &file.word {
            let (kind, code) = entry.is.split_once(' ').unwrap_or((&entry.is, ""));
            let leaf = match kind {
                "event" => "event-word",
                "fault" => "fault-word",
                "number" if code.parse::<f64>().is_ok_and(|n| (2.0..=40.0).contains(&n)) => {
                    "number-word"
                }
                "word" if code == "unit" => "unit-word",
                _ => continue,
            };
            for say in &entry.say {
                // patterns with choices and gaps are tried by the word files' own test
                let plain = !say.contains(['(', '[', '*'])
                    && say
                        .chars()
                        .all(|c| c.is_ascii_alphabetic() || c == ' ' || c == '\'');
                // "leaving at 4" is a time, and not trailer 4
                let plain = plain && say != "leaving";
                let unit = leaf != "unit-word"
                    || matches!(say.as_str(), "unit" | "trailer" | "trlr" | "rig");
                if plain && unit {
                    leaves
                        .entry(leaf)
                        .or_default()
                        .push((say.clone(), code.to_string()));
                }
            }
        }
        Maker {
            rules,
            leaves,
            chance: fastrand::Rng::with_seed(seed),
            meant: Meant::default(),
            out: String::new(),
        }
    }

    fn sentence(&mut self) -> (String, Meant) {
        self.meant = Meant::default();
        self.out.clear();
        self.rule("message");
        (self.out.clone(), self.meant.clone())
    }

    fn rule(&mut self, name: &str) {
        let name = name.to_lowercase();
        match name.as_str() {
            "sp" => return self.out.push(' '),
            "lf" => return self.out.push('\n'),
            _ => {}
        }
        if let Some(words) = self.leaves.get(name.as_str()) {
            let (say, code) = words[self.chance.usize(..words.len())].clone();
            self.out.push_str(&say);
            match name.as_str() {
                "event-word" => self.meant.events.extend(Event::from_code(&code)),
                "fault-word" => self.meant.faults.extend(Fault::from_code(&code)),
                _ => {}
            }
            return;
        }
        self.meant.rules.push(name.clone());
        let node = self
            .rules
            .get(&name)
            .unwrap_or_else(|| panic!("`{name}` is no rule"))
            .clone();
        self.node(&node);
    }

    fn node(&mut self, node: &Node) {
        match node {
            Node::Alternatives(nodes) => {
                let pick = self.chance.usize(..nodes.len());
                self.node(&nodes[pick]);
            }
            Node::Concatenation(nodes) => nodes.iter().for_each(|n| self.node(n)),
            Node::Repetition { repeat, node } => {
                let (least, most) = match repeat {
                    Repeat::Specific(n) => (*n, *n),
                    Repeat::Variable { min, max } => (min.unwrap_or(0), max.unwrap_or(2).min(2)),
                };
                for _ in 0..self.chance.usize(least..=most.max(least)) {
                    self.node(node);
                }
            }
            Node::Rulename(name) => self.rule(name),
            Node::Group(node) => self.node(node),
            Node::Optional(node) => {
                if self.chance.bool() {
                    self.node(node);
                }
            }
            Node::String(literal) => self.out.push_str(literal.value()),
            Node::TerminalValues(TerminalValues::Concatenation(codes)) => {
                self.out
                    .extend(codes.iter().filter_map(|c| char::from_u32(*c)));
            }
            Node::TerminalValues(TerminalValues::Range(from, _)) => {
                self.out.extend(char::from_u32(*from))
            }
            Node::Prose(text) => panic!("the grammar has prose: {text}"),
        }
    }
}

fn key_of(rule: &str) -> Option<ReadingKey> {
    Some(match rule {
        "pressure" => ReadingKey::PressurePsi,
        "tank" => ReadingKey::WastePct,
        "fresh" => ReadingKey::FreshPct,
        "air" => ReadingKey::AirF,
        "volts" => ReadingKey::Volts,
        "battery" => ReadingKey::BatteryV,
        "wind" => ReadingKey::WindMph,
        "cords" => ReadingKey::Cords,
        "guests" => ReadingKey::Guests,
        "hose" => ReadingKey::HoseFt,
        "cord" => ReadingKey::CordFt,
        "flow" => ReadingKey::FlowGpm,
        "eta" => ReadingKey::EtaMin,
        _ => return None,
    })
}

/// Tells why a sentence was not read as it was meant; none where it was.
fn misread(reader: &Reader, sentence: &str, meant: &Meant) -> Option<String> {
    let heard = reader.hear(sentence, TemperatureScale::F);
    let keys: Vec<ReadingKey> = meant.rules.iter().filter_map(|r| key_of(r)).collect();
    let mut once = keys.clone();
    once.sort();
    once.dedup();
    // one trailer named twice may be told two values of one reading, which is rightly asked about
    if once.len() == keys.len() && !heard.unclear.is_empty() {
        return Some(format!("unclear {:?}", heard.unclear));
    }
    let got_keys: Vec<ReadingKey> = heard
        .entries
        .iter()
        .flat_map(|e| e.readings.values.keys().copied())
        .collect();
    if once.len() == keys.len() && keys.iter().any(|k| !got_keys.contains(k)) {
        return Some(format!("readings {got_keys:?}, meant {keys:?}"));
    }
    let events: Vec<Event> = heard
        .entries
        .iter()
        .flat_map(|e| e.events.clone())
        .collect();
    if let Some(missing) = meant.events.iter().find(|e| !events.contains(e)) {
        return Some(format!("event {missing} is missing from {events:?}"));
    }
    let faults: Vec<Fault> = heard
        .entries
        .iter()
        .flat_map(|e| e.faults.iter().chain(&e.cleared).copied())
        .collect();
    if let Some(missing) = meant.faults.iter().find(|f| !faults.contains(f)) {
        return Some(format!("fault {missing} is missing from {faults:?}"));
    }
    let asks = meant.rules.iter().any(|r| r == "ask" || r == "task-done");
    if asks != heard.ask.is_some() {
        return Some(format!("ask {:?}", heard.ask));
    }
    let needs = meant.rules.iter().any(|r| r == "need");
    (needs && heard.plans.is_empty()).then(|| "no plan".to_string())
}

#[test]
fn sentences_of_the_grammar_are_read_as_they_were_meant() {
    let reader = Reader::new();
    let seed = 20_261_125;
    println!("seed {seed}");
    let mut maker = Maker::new(seed);
    let mut wrong = Vec::new();
    for _ in 0..SENTENCES {
        let (sentence, meant) = maker.sentence();
        if let Some(why) = misread(&reader, &sentence, &meant) {
            wrong.push(format!("{sentence:?}: {why}"));
        }
    }
    for line in wrong.iter().take(60) {
        println!("{line}");
    }
    assert!(
        wrong.is_empty(),
        "{} of {SENTENCES} sentences were misread",
        wrong.len()
    );
}

#[test]
fn every_rule_of_the_grammar_is_reached_from_message() {
    let mut maker = Maker::new(7);
    let mut met = std::collections::BTreeSet::new();
    for _ in 0..4000 {
        met.extend(maker.sentence().1.rules);
    }
    let unmet: Vec<&String> = maker.rules.keys().filter(|r| !met.contains(*r)).collect();
    assert!(unmet.is_empty(), "never used: {unmet:?}");
}
