//! Field situations: timed messages, and what must and must not be advised after them. Each line of
//! `tests/data/scenarios/*.jsonl` names in `why` the rule or formula it rests on.

use std::collections::BTreeSet;
use std::path::Path;

use chrono::{DateTime, Utc};
use hosebib::book::MessageKey;
use hosebib::desk::{Desk, Inbound, Sender, Turn};
use hosebib::finding::{Facts, Finding, FindingId, Level, Urgency};
use hosebib::heard::Fault;
use hosebib::rules::first_words;
use serde::Deserialize;

#[derive(Deserialize)]
struct Scenario {
    id: String,
    title: String,
    messages: Vec<Said>,
    expect: Expected,
}

#[derive(Deserialize)]
struct Said {
    at: DateTime<Utc>,
    from: String,
    text: String,
    received: Option<DateTime<Utc>>,
    /// The message it replaces, counted from 1.
    edits: Option<usize>,
}

#[derive(Deserialize)]
struct Expected {
    after: usize,
    since: Option<usize>,
    not_since: Option<usize>,
    must: Vec<Must>,
    must_not: Vec<String>,
    tasks: Vec<Task>,
    say_any: Vec<Vec<String>>,
    first: Option<String>,
}

#[derive(Deserialize)]
struct Must {
    unit: Option<String>,
    id: String,
    urgency: Option<String>,
    level: Option<String>,
}

#[derive(Deserialize)]
struct Task {
    unit: String,
    kind_any: Vec<String>,
    due_between: Option<(DateTime<Utc>, DateTime<Utc>)>,
}

#[test]
fn every_field_situation_gets_its_advice() {
    let data = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data");
    let table = fixed_levels();
    let mut failures = Vec::new();
    let mut count = 0;
    for entry in std::fs::read_dir(data.join("scenarios")).expect("the scenarios' folder") {
        let path = entry.expect("a file").path();
        let text = std::fs::read_to_string(&path).expect("a readable file");
        // a file with a fleet of its own has it under its own name
        let own = path.file_stem().and_then(|stem| stem.to_str());
        let own = own.filter(|name| data.join("fleets").join(name).is_dir());
        let desk = crate::desks::at_work(crate::desks::fleet_of(own.unwrap_or("sample")));
        for line in text.lines().filter(|line| !line.trim().is_empty()) {
            let scenario: Scenario =
                serde_json::from_str(line).unwrap_or_else(|error| panic!("{error}: {line}"));
            count += 1;
            let turns = play(&desk, &scenario);
            let mut missed = judge(&scenario, &turns);
            missed.extend(off_the_table(&turns, &table));
            if !missed.is_empty() {
                failures.push(format!(
                    "{} {}:\n  {}",
                    scenario.id,
                    scenario.title,
                    missed.join("\n  ")
                ));
            }
        }
    }
    assert!(count >= 34, "only {count} scenarios found");
    assert!(
        failures.is_empty(),
        "{} of {count} fail\n{}",
        failures.len(),
        failures.join("\n")
    );
}

/// A finding with the urgencies and levels that are allowed.
pub(crate) struct Fixed {
    id: String,
    urgencies: String,
    levels: String,
}

/// Reads the table of what is fixed.
pub(crate) fn fixed_levels() -> Vec<Fixed> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/findings-levels.csv");
    let text = std::fs::read_to_string(path).expect("the table of C3");
    let rows = text.lines().filter(|line| !line.starts_with('#'));
    rows.map(|line| {
        let mut cells = line.split(',').map(str::to_owned);
        let mut cell = || cells.next().expect("three cells");
        Fixed {
            id: cell(),
            urgencies: cell(),
            levels: cell(),
        }
    })
    .collect()
}

/// Names the findings whose urgency or level is not as it is fixed.
fn off_the_table(turns: &[(Vec<Turn>, Turn)], table: &[Fixed]) -> Vec<String> {
    let all = turns
        .iter()
        .flat_map(|(ticks, turn)| ticks.iter().chain([turn]));
    let found = all.flat_map(|turn| &turn.findings);
    found.filter_map(|finding| stray(finding, table)).collect()
}

/// Says how a finding departs from the table; none where it keeps to it.
pub(crate) fn stray(finding: &Finding, table: &[Fixed]) -> Option<String> {
    let row = table.iter().find(|row| row.id == finding.id.code());
    let (urgency, level) = (code(&finding.urgency), code(&finding.level));
    let keeps =
        row.is_some_and(|row| either(&row.urgencies, &urgency) && either(&row.levels, &level));
    (!keeps).then(|| format!("{} is {urgency}, {level}", finding.id.code()))
}

#[test]
fn every_finding_of_the_table_is_registered() {
    let registered: BTreeSet<&str> = FindingId::ALL.iter().map(|id| id.code()).collect();
    let table = fixed_levels();
    for row in &table {
        assert!(registered.contains(row.id.as_str()), "{}", row.id);
        assert!(
            !row.urgencies.is_empty() && !row.levels.is_empty(),
            "{} is free",
            row.id
        );
    }
    for id in registered {
        assert!(
            table.iter().any(|row| row.id == id),
            "{id} is not in the table"
        );
    }
}

/// The table is no rubber stamp: a finding that fires with another urgency or level is told.
#[test]
fn a_finding_off_the_table_is_told() {
    let facts = || Facts::new().by("formula-reported", "a test");
    let mut turn =
        crate::desks::at_work(crate::desks::fleet_of("sample")).tick(DateTime::UNIX_EPOCH);
    turn.findings.clear();
    for (id, level, urgency) in [
        (FindingId::CrowdUnderServed, Level::Danger, Urgency::Soon),
        (FindingId::WaterHoseUndersized, Level::Notice, Urgency::Now),
        (FindingId::WasteSpill, Level::Warning, Urgency::Now),
    ] {
        turn.findings
            .push(Finding::new(id, level, urgency, facts()));
    }
    let strays = off_the_table(&[(Vec::new(), turn)], &fixed_levels());
    assert_eq!(strays.len(), 2, "{strays:?}");
}

/// A danger is told as grave before anybody knows which trailer it is about as after.
#[test]
fn first_words_are_as_grave_as_is_fixed() {
    let table = fixed_levels();
    let firsts = Fault::ALL.iter().filter_map(|fault| first_words(*fault));
    for first in firsts {
        let row = table.iter().find(|row| row.id == first.id.code());
        if let Some(row) = row.filter(|row| !row.levels.is_empty()) {
            assert!(either(&row.levels, &code(&first.level)), "{}", row.id);
        }
    }
}

/// Plays a scenario.
fn play(desk: &Desk, scenario: &Scenario) -> Vec<(Vec<Turn>, Turn)> {
    let mut desk = desk.clone();
    // each message's turn, with the ticks that came before it
    let mut turns: Vec<(Vec<Turn>, Turn)> = Vec::new();
    let mut now: Option<DateTime<Utc>> = None;
    for (n, said) in scenario.messages.iter().enumerate() {
        let received = said.received.unwrap_or(said.at);
        let mut ticks = Vec::new();
        if let Some(now) = now {
            while let Some(due) = desk
                .next_due()
                .map(|due| due.max(now))
                .filter(|due| *due <= received)
            {
                let tick = desk.tick(due);
                assert!(
                    !tick.records.is_empty(),
                    "{}: a tick at {due} was due and did nothing",
                    scenario.id
                );
                desk.apply(&tick.records);
                ticks.push(tick);
            }
        }
        now = Some(received);
        let (key, replaces) = match said.edits.map(|edited| edited as i64) {
            None => (MessageKey::new("scenario", 0, n as i64 + 1, 0), None),
            Some(edited) => (
                MessageKey::new("scenario", 0, edited, received.timestamp()),
                Some(MessageKey::new("scenario", 0, edited, 0)),
            ),
        };
        let inbound = Inbound {
            received,
            replaces,
            ..Inbound::says(
                key,
                Sender::Crew(said.from.clone()),
                said.at,
                said.text.clone(),
            )
        };
        let turn = desk.receive(&inbound);
        desk.apply(&turn.records);
        turns.push((ticks, turn));
    }
    turns
}

fn judge(scenario: &Scenario, turns: &[(Vec<Turn>, Turn)]) -> Vec<String> {
    let expect = &scenario.expect;
    let window = |since: usize| -> Vec<&Turn> {
        let from = since.min(expect.after);
        turns[from..=expect.after]
            .iter()
            .enumerate()
            .flat_map(|(n, (ticks, turn))| ticks.iter().filter(move |_| n > 0).chain([turn]))
            .collect()
    };
    let good = window(expect.since.unwrap_or(expect.after));
    let bad = window(expect.not_since.unwrap_or(expect.after));
    let found: Vec<&Finding> = good.iter().flat_map(|turn| &turn.findings).collect();
    let sender = &scenario.messages[expect.after].from;
    let said: String = good
        .iter()
        .flat_map(|turn| &turn.outgoing)
        .filter(|message| message.to == *sender)
        .map(|message| message.text.text().to_lowercase() + "\n")
        .collect();
    let mut missed = Vec::new();
    for must in &expect.must {
        let hit = found.iter().any(|finding| {
            of_unit(must.unit.as_deref(), finding)
                && either(&must.id, finding.id.code())
                && must
                    .urgency
                    .as_deref()
                    .is_none_or(|wanted| either(wanted, &code(&finding.urgency)))
                && must
                    .level
                    .as_deref()
                    .is_none_or(|wanted| either(wanted, &code(&finding.level)))
        });
        if !hit {
            missed.push(format!("must {}", must.id));
        }
    }
    for forbidden in &expect.must_not {
        let (unit, rest) = forbidden
            .split_once(':')
            .map_or((None, forbidden.as_str()), |(unit, rest)| {
                (Some(unit), rest)
            });
        let (id, urgency) = rest
            .split_once('@')
            .map_or((rest, None), |(id, urgency)| (id, Some(urgency)));
        let hit = bad.iter().flat_map(|turn| &turn.findings).any(|finding| {
            of_unit(unit, finding)
                && (id == "*" || either(id, finding.id.code()))
                && urgency.is_none_or(|wanted| either(wanted, &code(&finding.urgency)))
        });
        if hit {
            missed.push(format!("must not {forbidden}"));
        }
    }
    for wanted in &expect.tasks {
        // a truck that is late is wanted now: what is due is never earlier than the message
        let tasks = good
            .iter()
            .flat_map(|turn| turn.tasks.iter().map(|task| (task, task.due_from(turn.at))));
        let hit = tasks.into_iter().any(|(task, due)| {
            task.unit
                .as_ref()
                .is_some_and(|unit| unit.as_str() == wanted.unit)
                && wanted.kind_any.iter().any(|kind| kind == task.kind.code())
                && wanted
                    .due_between
                    .is_none_or(|(from, to)| due.is_some_and(|due| from <= due && due <= to))
        });
        if !hit {
            missed.push(format!("task {} on {}", wanted.kind_any[0], wanted.unit));
        }
    }
    if let Some(first) = &expect.first
        && !found
            .first()
            .is_some_and(|finding| either(first, finding.id.code()))
    {
        missed.push(format!("first {first}"));
    }
    for words in &expect.say_any {
        if !words.iter().any(|word| says(&said, word)) {
            missed.push(format!("say one of {words:?}"));
        }
    }
    if said.is_empty() {
        missed.push("an answer".into());
    }
    missed
}

fn of_unit(wanted: Option<&str>, finding: &Finding) -> bool {
    wanted.is_none_or(|unit| {
        finding
            .unit
            .as_ref()
            .is_some_and(|other| other.as_str() == unit)
    })
}

/// Tells whether `got` is one of the alternatives `a|b`; `topic.*` stands for all of a topic.
fn either(wanted: &str, got: &str) -> bool {
    wanted.split('|').any(|one| {
        one == got
            || one
                .strip_suffix('*')
                .is_some_and(|topic| got.starts_with(topic))
    })
}

fn code<T: serde::Serialize>(value: &T) -> String {
    serde_json::to_value(value)
        .ok()
        .and_then(|value| value.as_str().map(str::to_owned))
        .unwrap_or_default()
}

/// Tells whether a word of the text begins with `word`; one of three letters or fewer must be a whole word.
fn says(text: &str, word: &str) -> bool {
    let word = word.trim().to_lowercase();
    text.match_indices(&word).any(|(at, _)| {
        let before = text[..at]
            .chars()
            .next_back()
            .is_none_or(|c| !c.is_alphanumeric());
        let after = text[at + word.len()..]
            .chars()
            .next()
            .is_none_or(|c| !c.is_alphanumeric());
        before && (word.chars().count() > 3 || after)
    })
}

/// The fleet of the situations is whole: each trailer named in a message is in it, or is meant not to be.
#[test]
fn the_situations_name_known_crew() {
    let data = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data");
    let crew =
        std::fs::read_to_string(data.join("fleets/sample/crew.toml")).expect("the sample crew");
    let text = std::fs::read_to_string(data.join("scenarios/field.jsonl")).expect("the scenarios");
    let senders: BTreeSet<String> = text
        .lines()
        .flat_map(|line| {
            serde_json::from_str::<Scenario>(line)
                .expect("a scenario")
                .messages
        })
        .map(|said| said.from)
        .collect();
    for sender in senders {
        assert!(crew.contains(&format!("id = \"{sender}\"")), "{sender}");
    }
}
