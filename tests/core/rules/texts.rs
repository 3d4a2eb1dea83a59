//! Every text that a rule can name is there in both languages and asks for nothing that the facts do not give: thousands
//! of seeded situations are checked and said, and each key in the source must have been met.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use chrono::{DateTime, NaiveDate, TimeDelta, Utc};
use fastrand::Rng;
use hosebib::book::{Task, TaskState, UnitState};
use hosebib::finding::{FactValue, Finding, FindingId, Level, TaskKind};
use hosebib::fleet::Fleet;
use hosebib::heard::{
    Amps, Entry, Event, Fault, Language, LoadPair, Plan, PlanKind, ReadingKey, Taps, UnitName,
};
use hosebib::outlook::{BatteryOutlook, Outlook, TankOutlook};
use hosebib::reply::Replies;
use hosebib::rules;
use hosebib::situation::{Occasion, Situation};

use super::support::{said, unit};

/// So many situations are checked, and more until every text was met.
const AT_LEAST: usize = 2_000;
const SITUATIONS: usize = 20_000;

#[test]
fn every_text_is_there_and_asks_for_no_fact_that_is_not_given() {
    let replies = Replies::new();
    let mut met = BTreeSet::new();
    let keys = keys_in_source();
    let fleet = sample();
    let mut rng = Rng::with_seed(20_270_529);
    // what the desk asks the rules for by itself
    let name = UnitName::new("12");
    let unsafe_act =
        |code| rules::unsafe_act(Some(&name), FindingId::SiteUnsafe, code, Level::Warning);
    for finding in [
        rules::chocks_out(&name),
        rules::icy_steps(Some(&name)),
        unsafe_act("bypassed"),
        unsafe_act("open-neutral"),
        fallen(),
        heater_off(),
    ] {
        met.insert(finding.action.to_string());
        say(&replies, &fleet, DateTime::UNIX_EPOCH, &finding);
    }
    for situation in 0..SITUATIONS {
        if situation > AT_LEAST && keys.is_subset(&met) {
            break;
        }
        sweep(&fleet, &mut rng, |at, findings| {
            for finding in findings {
                let formula = finding.facts.formula.as_deref().expect("a formula");
                assert!(finding.facts.source.is_some(), "{}", finding.id);
                let fresh = met.insert(finding.action.to_string()) | met.insert(formula.to_owned());
                if fresh || says_again(finding) {
                    say(&replies, &fleet, at, finding);
                }
            }
        });
    }
    let missed: Vec<&String> = keys.difference(&met).collect();
    assert!(missed.is_empty(), "never met: {missed:#?}");
}

/// The finding of a heater that was reported off in hard frost.
fn heater_off() -> Finding {
    let found = unit("12").hears(
        "2027-01-16 16:00",
        said().read(ReadingKey::AirF, 10.0).did(Event::HeaterOff),
    );
    found.one(FindingId::ColdTankHeaterOn).clone()
}

/// A truck that is wanted only if nobody pumped: the level fell, which chance seldom brings about.
fn fallen() -> Finding {
    let read = |pct| said().read(ReadingKey::WastePct, pct);
    unit("12")
        .after("2027-05-29 14:00", read(12.5).did(Event::InService))
        .after("2027-05-29 17:00", read(75.0))
        .hears("2027-05-29 18:30", read(12.5))
        .one(FindingId::WasteBookPumpOut)
        .clone()
}

#[test]
fn every_finding_keeps_to_the_urgencies_and_levels_that_are_fixed() {
    let fleet = sample();
    let table = crate::scenarios::fixed_levels();
    let mut strays = BTreeSet::new();
    let mut rng = Rng::with_seed(23);
    for _ in 0..AT_LEAST {
        sweep(&fleet, &mut rng, |_, findings| {
            let found = findings.iter();
            strays.extend(found.filter_map(|finding| crate::scenarios::stray(finding, &table)));
        });
    }
    assert!(strays.is_empty(), "{strays:#?}");
}

#[test]
fn findings_are_in_order_and_each_is_said_once() {
    let fleet = sample();
    let mut rng = Rng::with_seed(7);
    for _ in 0..2_000 {
        sweep(&fleet, &mut rng, |_, findings| {
            let ids: BTreeSet<_> = findings.iter().map(|finding| finding.id).collect();
            assert_eq!(ids.len(), findings.len(), "said twice");
            assert!(findings.is_sorted_by_key(|finding| (finding.order(), finding.id)));
        });
    }
}

#[test]
fn an_odd_card_gives_finite_numbers_and_no_panic() {
    let mut fleet = sample();
    for trailer in fleet.trailers.values_mut() {
        trailer.rooms.clear();
        trailer.circuits.truncate(1);
        trailer.battery.ah = 0.0;
        trailer.battery.converter_circuit = 9;
        trailer.waste_gal = 0.0;
        trailer.fresh_gal = 0.0;
        trailer.gal_per_use = 0.0;
        trailer.waste_gauge.step_pct = 0.0;
    }
    for site in fleet.sites.values_mut() {
        site.water.hose_ft = 0.0;
        site.power.cord_awg = 3;
        site.pump_truck.lead_h = 0.0;
    }
    let mut rng = Rng::with_seed(11);
    for _ in 0..2_000 {
        sweep(&fleet, &mut rng, |_, findings| {
            for finding in findings {
                for fact in &finding.facts.items {
                    if let FactValue::Number(value, _) = fact.value {
                        assert!(value.is_finite(), "{}: {}", finding.id, fact.name);
                    }
                }
            }
        });
    }
}

/// The sample fleet, with an emergency address and a generator's rating here and there.
fn sample() -> Fleet {
    unit("12")
        .with(|fleet| {
            let site = fleet.sites.get_mut("chapel-green").expect("the site");
            site.emergency_address = Some("1 Chapel Lane".into());
            site.water.source = hosebib::fleet::Source::Hydrant;
            let site = fleet.sites.get_mut("glasshouse").expect("the site");
            site.power.generator_w = Some(6000.0);
            site.altitude_ft = 8000.0; // so high that heat alone asks for more than the set gives
            site.water.static_psi = Some(90.0);
            let site = fleet.sites.get_mut("old-cannery").expect("the site");
            site.water.source = hosebib::fleet::Source::None;
            let five = fleet.trailers.get_mut(&UnitName::new("5")).expect("5");
            five.cold.heater_circuit = None;
            five.circuits[2].loads[0].name = "AC one".into();
            five.circuits[2].loads[1].name = "AC two".into();
        })
        .fleet
}

/// Says one finding in both languages, with its reasons.
#[track_caller]
fn say(replies: &Replies, fleet: &Fleet, at: DateTime<Utc>, finding: &Finding) {
    for language in [Language::En, Language::Es] {
        let voice = replies.voice(language, fleet.style, fleet.time_zone, at);
        let formula = finding.facts.formula.as_deref().expect("a formula");
        for key in [finding.action.as_ref(), formula] {
            assert!(replies.has(language, key), "{language} has no `{key}`");
        }
        for fact in &finding.facts.items {
            let key = format!("fact-{}", fact.name.replace('_', "-"));
            assert!(replies.has(language, &key), "{language} has no `{key}`");
        }
        for caution in &finding.cautions {
            let key = format!("caution-{}", caution.code());
            assert!(replies.has(language, &key), "{language} has no `{key}`");
        }
        for said in [voice.finding(finding, false), voice.why(finding)] {
            // a missing argument prints as `{$name}`
            assert!(!said.contains(['{', '}']), "{}: {said}", finding.action);
        }
    }
}

/// Says every finding now and then even when its text was met before: its facts may differ.
fn says_again(finding: &Finding) -> bool {
    finding.facts.items.len().is_multiple_of(3)
}

/// Makes a trailer's history and one message, and checks it.
fn sweep(fleet: &Fleet, rng: &mut Rng, mut seen: impl FnMut(DateTime<Utc>, &[Finding])) {
    let units: Vec<&UnitName> = fleet.trailers.keys().collect();
    let name = rng.choice(units).expect("a trailer");
    let jobs: Vec<_> = fleet
        .jobs
        .iter()
        .filter(|job| job.trailers.contains(name))
        .collect();
    let job = rng.choice(jobs).filter(|_| rng.u8(..5) > 0);
    let start = job.map_or_else(
        || {
            let day = NaiveDate::from_ymd_opt(2027, 5, 1).expect("a day");
            day.and_hms_opt(12, 0, 0).expect("a time").and_utc()
        },
        |job| job.from,
    );
    let mut at = start + TimeDelta::minutes(rng.i64(-120..600));
    let mut before = UnitState::default();
    if rng.bool() {
        let set_up = set_up(rng);
        before.take_in(at, "wren", &set_up);
        at += TimeDelta::minutes(rng.i64(1..60));
    }
    for _ in 0..rng.usize(0..5) {
        let entry = entry(rng);
        before.take_in(at, "wren", &entry);
        at += TimeDelta::minutes(if rng.bool() { 5 } else { rng.i64(1..400) });
    }
    let report = entry(rng);
    let occasion = match rng.u8(..6) {
        0 => Occasion::Asked,
        1 => Occasion::Tick,
        _ => Occasion::Report,
    };
    let mut now = before.clone();
    if occasion == Occasion::Report {
        now.take_in(at, "wren", &report);
    }
    // a draw of its own, so that the other situations stay what they were
    let mut draw = Rng::with_seed(at.timestamp().unsigned_abs());
    let together: Vec<Plan> = (draw.u8(..8) == 0)
        .then(|| Plan {
            unit: None,
            kind: PlanKind::Together {
                pair: LoadPair::ALL[draw.usize(..LoadPair::ALL.len())],
            },
            text: String::new(),
        })
        .into_iter()
        .collect();
    let outlook = outlook(rng, at);
    let guests = now.guests.clone();
    let tasks = [called(at)];
    let situation = Situation {
        fleet,
        spec: &fleet.trailers[name],
        job,
        site: job.and_then(|job| fleet.site_of(job)),
        before: &before,
        now: &now,
        report: &report,
        plans: &together,
        occasion,
        at,
        guests: &guests,
        tasks: &tasks[usize::from(draw.bool())..],
        outlook: &outlook,
        air_near: None,
        wind_reported: None,
    };
    let findings = rules::check(&situation);
    // at the end of setting up only what was answered by word is left
    let last = rules::set_up(&situation, &["test".to_owned()]);
    if let Some(last) = last.filter(|last| last.action.ends_with("photos")) {
        seen(at, &[last]);
    }
    seen(at, &findings);
}

/// A pump-out whose truck is called.
fn called(at: DateTime<Utc>) -> Task {
    Task {
        id: 1,
        unit: None,
        kind: TaskKind::PumpOut,
        due: None,
        call_by: None,
        opened: at,
        by: "nadia".to_owned(),
        finding: None,
        cause: None,
        taken_by: None,
        given_by: None,
        called: Some(at),
        promised: None,
        called_by: None,
        here: None,
        state: TaskState::Open,
        closed_cause: None,
        escalated: None,
        told_due: None,
        moved: None,
        wanted: None,
        found: None,
        words: None,
        closed: None,
    }
}

/// What a crew reports that has come some way with setting up.
fn set_up(rng: &mut Rng) -> Entry {
    const ORDER: [Event; 9] = [
        Event::Arrived,
        Event::Leveled,
        Event::Chocked,
        Event::Unhitched,
        Event::JacksDown,
        Event::PowerOn,
        Event::WaterOn,
        Event::HeaterOn,
        Event::InService,
    ];
    let mut entry = Entry::default();
    entry.events.extend(&ORDER[..rng.usize(1..=ORDER.len())]);
    for (key, value) in [
        (ReadingKey::Volts, 120.0),
        (ReadingKey::PressurePsi, 50.0),
        (ReadingKey::AirF, 35.0),
    ] {
        if rng.bool() {
            entry.readings.set(key, value);
        }
    }
    entry
}

fn entry(rng: &mut Rng) -> Entry {
    let mut entry = Entry::default();
    for _ in 0..rng.usize(0..4) {
        entry
            .events
            .push(*rng.choice(Event::ALL).expect("an event"));
    }
    for _ in 0..rng.usize(0..4) {
        // the weather bears on more texts than the rest
        let key = match rng.u8(..10) {
            0 => ReadingKey::AirF,
            1 => ReadingKey::WindMph,
            _ => *rng.choice(ReadingKey::ALL).expect("a reading"),
        };
        entry.readings.set(key, value(rng, key));
    }
    if rng.u8(..4) == 0 {
        let circuit = Some(rng.u8(1..=4)).filter(|_| rng.bool());
        let amps = if rng.u8(..4) == 0 {
            0.0
        } else {
            30.0 * rng.f64()
        };
        entry.readings.amps.push(Amps { circuit, amps });
    }
    if rng.u8(..6) == 0 {
        entry.readings.taps = Some(if rng.bool() {
            Taps::Shut
        } else {
            Taps::Running
        });
    }
    if rng.u8(..6) == 0 {
        let live = (1..=4).filter(|_| rng.bool()).collect();
        entry.readings.circuits_live = Some(live);
    }
    for _ in 0..rng.usize(0..3) {
        entry.faults.push(*rng.choice(Fault::ALL).expect("a fault"));
    }
    entry
}

/// A value in its plausible range, often at one of the limits.
fn value(rng: &mut Rng, key: ReadingKey) -> f64 {
    use ReadingKey as R;
    let (low, high) = match key {
        R::PressurePsi | R::SupplyPsi => (0.0, 130.0),
        R::FlowGpm => (0.0, 12.0),
        R::HoseFt | R::CordFt => (10.0, 250.0),
        R::AirF if rng.u8(..4) == 0 => return 32.0,
        R::AirF | R::LowF => (-30.0, 120.0),
        R::InsideF => (30.0, 100.0),
        R::WindMph => (0.0, 60.0),
        R::SlopePct => (0.0, 5.0),
        R::Volts | R::VoltsHigh | R::VoltsLow => (40.0, 140.0),
        R::BatteryV => (11.0, 16.0),
        R::Cords => (0.0, 4.0),
        R::Guests => (0.0, 900.0),
        R::StallsOut => (1.0, 10.0),
        R::WasteGal | R::FreshGal | R::PumpedGal => (0.0, 300.0),
        R::WastePct | R::FreshPct => {
            return [0.0, 12.5, 25.0, 50.0, 75.0, 87.5, 100.0][rng.usize(..7)];
        }
        _ => (0.0, 100.0),
    };
    let value: f64 = low + (high - low) * rng.f64();
    if key == R::Cords {
        value.round()
    } else {
        value
    }
}

fn outlook(rng: &mut Rng, at: DateTime<Utc>) -> Outlook {
    let mut tank = |limit_pct| {
        let soon = TimeDelta::minutes(rng.i64(0..600));
        let reached = rng.bool();
        let level = 100.0 * rng.f64();
        TankOutlook {
            limit_pct,
            p10: reached.then(|| at + soon),
            p50: (reached && rng.u8(..4) > 0).then(|| at + soon * 2),
            p90: (reached && rng.bool()).then(|| at + soon * 3),
            level_pct: [level * 0.9, level, level],
            likely_pct: level,
            rate_pct_h: 30.0 * rng.f64(),
            could_stay_below: !reached,
            stuck: rng.u8(..8) == 0,
            misread: false,
            unread: rng.u8(..8) == 0,
        }
    };
    let waste = tank(85.0);
    let fresh = tank(10.0);
    let battery = BatteryOutlook {
        p10: None,
        p50: None,
        p90: None,
        hours: 8.0 * rng.f64(),
        amps: 12.0,
        uses_per_h: 40.0,
    };
    Outlook {
        waste: (rng.u8(..5) > 0).then_some(waste),
        fresh: rng.bool().then_some(fresh),
        battery: rng.bool().then_some(battery),
    }
}

/// Returns every text key that stands in the rules' source.
fn keys_in_source() -> BTreeSet<String> {
    let topics: BTreeSet<&str> = FindingId::ALL
        .iter()
        .map(|id| id.topic())
        .chain(["formula"])
        .collect();
    let mut keys = BTreeSet::new();
    for path in sources(Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/src/rules"))) {
        let source = std::fs::read_to_string(&path).expect("a source file");
        let code = source
            .lines()
            .filter(|line| !line.trim_start().starts_with("//"));
        for line in code {
            for text in line.split('"').skip(1).step_by(2) {
                let is_key = text
                    .chars()
                    .all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-');
                let topic = text.split_once('-').map(|(topic, _)| topic);
                if is_key && topic.is_some_and(|topic| topics.contains(topic)) {
                    keys.insert(text.to_owned());
                }
            }
        }
    }
    // words of the leaving list, not texts
    for word in ["water-off", "power-off", "heater-off"] {
        keys.remove(word);
    }
    assert!(keys.len() > 150, "{} keys", keys.len());
    keys
}

fn sources(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder).expect("a folder").flatten() {
        let path = entry.path();
        if path.is_dir() {
            found.extend(sources(&path));
        } else if path.extension().is_some_and(|ext| ext == "rs") {
            found.push(path);
        }
    }
    found
}
