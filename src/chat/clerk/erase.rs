//! Emptying lines of the journal, one after the other: what a person wrote and was told, or what is old. What an incident
//! holds stays.

use std::collections::HashSet;

use chrono::{DateTime, TimeDelta, Utc};
use serde_json::Value;

use super::forget::Forget;
use super::held::{self, kind};
use super::letter::ParcelId;
use crate::book::Hold;
use crate::store::Line;

/// A message's key is kept so long, so that the message is known again should the network bring it once more; it keeps
/// messages for 24 h (Bot API, "Getting updates").
const KEYS_KEPT: TimeDelta = TimeDelta::hours(48);

/// Empties lines one after the other, from the first.
pub(super) struct Eraser {
    pub(super) what: Forget,
    pub(super) now: DateTime<Utc>,
    /// What incidents hold.
    pub(super) holds: Vec<Hold>,
    /// How many turns were left as they are because an incident holds them.
    pub(super) held: usize,
    /// The digest of the fleet in force, which has to go on working.
    pub(super) in_force: String,
    /// What still waits to be sent.
    pub(super) waiting: HashSet<ParcelId>,
    /// The messages that went to the person.
    pub(super) theirs: HashSet<ParcelId>,
    /// What the person was called, in any fleet so far.
    pub(super) names: HashSet<String>,
}

impl Eraser {
    /// Empties a line, unless an incident holds it.
    pub(super) fn erase(&mut self, line: &mut Line) {
        if !held::is_held(line, &self.holds) {
            return self.empty(line);
        }
        let mut emptied = line.clone();
        self.empty(&mut emptied);
        self.held += usize::from(emptied != *line);
    }

    fn empty(&mut self, line: &mut Line) {
        match self.what.clone() {
            Forget::Person(who) => self.erase_person(line, &who),
            Forget::Before(before) if line.at < before => self.erase_old(line),
            Forget::Before(_) => {}
        }
    }

    fn erase_person(&mut self, line: &mut Line, who: &str) {
        let mut wrote = false;
        for record in &mut line.records {
            let is_from = record["from"] == who;
            match kind(record) {
                "message" | "set-aside" if is_from => {
                    wrote = true;
                    empty(record);
                }
                "message" => {
                    if let Some(reply) = record.get_mut("reply")
                        && self.names_them(reply)
                    {
                        empty(reply);
                    }
                }
                "sent" if self.is_theirs(&record["id"]) => empty(record),
                "talk" | "offered" if record["who"] == who => empty(record),
                // what was passed on to another from them
                "talk" if record["talk"]["passed"]["by"] == who => {
                    empty(&mut record["talk"]["passed"]);
                }
                "incident" if record["by"] == who => empty(record),
                "task" | "photo" if record["by"] == who => empty(record),
                "fleet" => self.erase_from_fleet(record, who),
                _ => {}
            }
        }
        for (index, letter) in (0..).zip(&mut line.outgoing) {
            let id = ParcelId {
                turn: line.seq,
                index,
            };
            if letter["to"] == who {
                self.theirs.insert(id);
                empty(letter);
            } else if let Some(text) = letter.get_mut("text")
                // what others were told at a person's words may repeat them
                && (wrote || self.names_them(text))
                && !self.waiting.contains(&id)
            {
                empty(text);
            }
        }
        if wrote && self.now - line.at > KEYS_KEPT {
            line.key = None;
        }
    }

    fn erase_from_fleet(&mut self, record: &mut Value, who: &str) {
        let in_force = record["digest"] == *self.in_force;
        let crew = record.pointer_mut("/fleet/crew");
        let Some(member) = crew.and_then(|crew| crew.get_mut(who)) else {
            return;
        };
        let name = member["name"]["personal"].as_str().unwrap_or_default();
        if !name.trim().is_empty() {
            self.names.insert(name.trim().to_lowercase());
        }
        if !in_force {
            empty(member);
        }
    }

    /// Tells whether a text names the person.
    fn names_them(&self, text: &Value) -> bool {
        let text = text["personal"].as_str().unwrap_or_default().to_lowercase();
        self.names.iter().any(|name| {
            text.match_indices(name.as_str()).any(|(at, found)| {
                let letter = |c: Option<char>| c.is_some_and(char::is_alphanumeric);
                !letter(text[..at].chars().next_back())
                    && !letter(text[at + found.len()..].chars().next())
            })
        })
    }

    /// Empties texts alone: names and numbers are what messages still go by.
    fn erase_old(&mut self, line: &mut Line) {
        for record in &mut line.records {
            match kind(record) {
                "message" => {
                    for field in ["text", "reply", "unclear", "set_aside"] {
                        if let Some(value) = record.get_mut(field) {
                            empty(value);
                        }
                    }
                }
                "talk" | "task" | "incident" => empty(record),
                "set-aside" => record.get_mut("text").map_or((), empty),
                "refused" => empty(record),
                _ => {}
            }
        }
        for (index, letter) in (0..).zip(&mut line.outgoing) {
            let id = ParcelId {
                turn: line.seq,
                index,
            };
            if !self.waiting.contains(&id)
                && let Some(text) = letter.get_mut("text")
            {
                empty(text);
            }
        }
    }

    fn is_theirs(&self, id: &Value) -> bool {
        let number = |field: &str| id.get(field).and_then(Value::as_u64);
        let (Some(turn), Some(index)) = (number("turn"), number("index")) else {
            return false;
        };
        u32::try_from(index).is_ok_and(|index| self.theirs.contains(&ParcelId { turn, index }))
    }
}

/// Empties every personal text in a value.
fn empty(value: &mut Value) {
    match value {
        Value::Array(items) => items.iter_mut().for_each(empty),
        Value::Object(map) => match map.get_mut("personal") {
            Some(text @ Value::String(_)) => *text = Value::Null,
            _ => map.values_mut().for_each(empty),
        },
        _ => {}
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::store::Hash;
    use serde_json::json;

    fn line(at: &str, records: Vec<Value>, outgoing: Vec<Value>) -> Line {
        Line {
            seq: 7,
            version: 1,
            key: Some("telegram:77:1:0".into()),
            at: at.parse().unwrap(),
            records,
            outgoing,
            prev: Hash::START,
            hash: Hash::START,
        }
    }

    fn message(from: &str) -> Value {
        json!({"record": "message", "from": from, "text": {"personal": "12 psi 95"},
            "unclear": [{"text": {"personal": "zog"}, "why": "unknown"}], "reports": [{"unit": "12"}]})
    }

    fn erased(what: &Forget, mut line: Line) -> Line {
        let mut eraser = Eraser {
            what: what.clone(),
            now: "2027-02-01T00:00:00Z".parse().unwrap(),
            holds: Vec::new(),
            held: 0,
            in_force: "now".into(),
            waiting: HashSet::from([ParcelId { turn: 7, index: 1 }]),
            theirs: HashSet::new(),
            names: HashSet::from(["dana".into()]),
        };
        eraser.erase(&mut line);
        line
    }

    #[test]
    fn what_others_were_told_of_the_person_goes_too() {
        let what = Forget::Person("dana".into());
        let told = |text: &str| json!({"to": "mo", "text": {"personal": text}});
        let letters = vec![
            told("Dana reports someone hurt"),
            told("Dana is late"),
            told("Danaher Road is shut"),
        ];
        let line = erased(&what, line("2027-01-16T12:00:00Z", vec![], letters));
        let text = |at: usize| line.outgoing[at]["text"]["personal"].as_str();
        assert_eq!(text(0), None);
        // it still waits to be sent
        assert_eq!(text(1), Some("Dana is late"));
        assert_eq!(text(2), Some("Danaher Road is shut"));
    }

    #[test]
    fn a_persons_words_go_and_their_readings_stay() {
        let letters = vec![
            json!({"to": "dana", "chat": {"personal": "77"}, "text": {"personal": "Logged"}}),
            json!({"to": "mo", "text": {"personal": "Late"}}),
        ];
        let sent =
            json!({"note": "sent", "id": {"turn": 7, "index": 0}, "message": {"personal": "5"}});
        let what = Forget::Person("dana".into());
        let line = erased(
            &what,
            line("2027-01-16T12:00:00Z", vec![message("dana"), sent], letters),
        );
        assert_eq!(line.key, None);
        assert_eq!(line.records[0]["text"], json!({"personal": null}));
        assert_eq!(
            line.records[0]["unclear"][0]["text"],
            json!({"personal": null})
        );
        assert_eq!(line.records[0]["reports"], json!([{"unit": "12"}]));
        assert_eq!(line.outgoing[0]["chat"], json!({"personal": null}));
        assert_eq!(line.outgoing[1]["text"], json!({"personal": "Late"}));
    }

    #[test]
    fn words_passed_on_to_another_go_too() {
        let passed = |by: &str| {
            json!({"record": "talk", "who": "mo", "talk": {"unit": ["12", "then"],
                "passed": {"by": by, "at": "then", "words": {"personal": "bring the long hose"}}}})
        };
        let what = Forget::Person("dana".into());
        let records = vec![passed("dana"), passed("ana")];
        let line = erased(&what, line("2027-01-16T12:00:00Z", records, vec![]));
        let words = |at: usize| line.records[at]["talk"]["passed"]["words"]["personal"].as_str();
        assert_eq!((words(0), words(1)), (None, Some("bring the long hose")));
        assert_eq!(line.records[0]["talk"]["unit"][0], "12");
    }

    #[test]
    fn the_network_number_of_a_message_to_the_person_goes_too() {
        let what = Forget::Person("dana".into());
        let mut eraser = Eraser {
            what,
            now: "2027-02-01T00:00:00Z".parse().unwrap(),
            holds: Vec::new(),
            held: 0,
            in_force: String::new(),
            waiting: HashSet::new(),
            theirs: HashSet::from([ParcelId { turn: 7, index: 0 }]),
            names: HashSet::new(),
        };
        let sent = |index| json!({"note": "sent", "id": {"turn": 7, "index": index}, "message": {"personal": "5"}});
        let mut line = line("2027-01-16T12:00:00Z", vec![sent(0), sent(1)], vec![]);
        eraser.erase(&mut line);
        assert_eq!(line.records[0]["message"], json!({"personal": null}));
        assert_eq!(line.records[1]["message"], json!({"personal": "5"}));
    }

    #[test]
    fn a_name_stays_in_the_fleet_in_force() {
        let fleet = |digest: &str| {
            json!({"record": "fleet", "digest": digest, "fleet": {"crew": {
                "dana": {"name": {"personal": "Dana"}}, "mo": {"name": {"personal": "Mo"}}}}})
        };
        let what = Forget::Person("dana".into());
        let line = erased(
            &what,
            line(
                "2027-01-16T12:00:00Z",
                vec![fleet("then"), fleet("now")],
                vec![],
            ),
        );
        let name = |at: usize, who: &str| {
            line.records[at]["fleet"]["crew"][who]["name"]["personal"].clone()
        };
        assert_eq!(name(0, "dana"), Value::Null);
        assert_eq!(
            (name(0, "mo"), name(1, "dana")),
            (json!("Mo"), json!("Dana"))
        );
    }

    #[test]
    fn a_fresh_key_stays_so_that_the_message_is_known_again() {
        let what = Forget::Person("dana".into());
        let line = erased(
            &what,
            line("2027-01-31T12:00:00Z", vec![message("dana")], vec![]),
        );
        assert!(line.key.is_some());
        assert_eq!(line.records[0]["text"], json!({"personal": null}));
    }

    #[test]
    fn old_texts_go_but_for_what_waits_to_be_sent() {
        let letters = || {
            vec![
                json!({"to": "dana", "text": {"personal": "Logged"}}),
                json!({"to": "dana", "chat": {"personal": "77"}, "text": {"personal": "DANGER"}}),
            ]
        };
        let what = Forget::Before("2027-01-20T00:00:00Z".parse().unwrap());
        let old = erased(
            &what,
            line("2027-01-16T12:00:00Z", vec![message("mo")], letters()),
        );
        assert_eq!(old.records[0]["text"], json!({"personal": null}));
        assert_eq!(old.outgoing[0]["text"], json!({"personal": null}));
        assert_eq!(old.outgoing[1]["text"], json!({"personal": "DANGER"}));
        assert!(old.key.is_some());
        let young = line("2027-01-21T12:00:00Z", vec![message("mo")], letters());
        assert_eq!(erased(&what, young.clone()), young);
    }
}
