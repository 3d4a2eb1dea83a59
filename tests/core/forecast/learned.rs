//! What a trailer's own log teaches, over a season of simulated pump-outs, through the desk.

use chrono::{DateTime, TimeDelta, Utc};
use hosebib::book::{Book, MessageKey, Record};
use hosebib::desk::{Desk, Inbound, Sender, Turn};
use hosebib::fleet::{self, FleetFiles, GaugeKind};
use hosebib::heard::UnitName;
use hosebib::outlook::Habits;

const FLEET: &str = r#"
company = "Saltbox Lane Comforts"
time_zone = "UTC"
[[trailer]]
id = "12"
waste_gal = 500
fresh_gal = 500
gal_per_use = 1.0
waste_gauge = { kind = "sight", step_pct = 25 }
rooms = [ { name = "A", toilets = 4, sinks = 2 } ]
"#;
const CREW: &str = r#"
[[crew]]
id = "dana"
name = "Dana"
role = "driver"
[[crew]]
id = "nadia"
name = "Nadia"
role = "dispatcher"
"#;
/// Saturdays with doors from 12 to 22 at a place without water, 100 guests: 250 uses are promised, 275 gal of waste.
const SEASON: i64 = 16;
const PROMISED_GAL: f64 = 100.0 * 0.25 * 10.0 * 1.1;

struct Log {
    desk: Desk,
    records: Vec<Record>,
    count: i64,
}

impl Log {
    fn begin() -> Log {
        let mut jobs = String::from(
            "[[site]]\nid = \"heron-mere\"\nname = \"Heron Mere\"\nwater = { source = \"none\" }\n\
             [[site]]\nid = \"tern-hall\"\nname = \"Tern Hall\"\n",
        );
        for week in 0..SEASON + 1 {
            let day = saturday(week).format("%Y-%m-%d");
            jobs.push_str(&format!(
                "[[job]]\nsite = \"heron-mere\"\ntrailers = [\"12\"]\nfrom = {day}T12:00:00\nto = {day}T22:00:00\n\
                 guests = 100\nalcohol = false\n"
            ));
        }
        let fleet = fleet::read(&FleetFiles {
            fleet: FLEET.to_owned(),
            jobs,
            crew: CREW.to_owned(),
            ..FleetFiles::default()
        })
        .unwrap();
        let mut log = Log {
            desk: Desk::default(),
            records: Vec::new(),
            count: 0,
        };
        let turn = log.desk.load(DateTime::UNIX_EPOCH, "season", fleet);
        log.take(turn);
        log
    }

    fn take(&mut self, turn: Turn) -> Turn {
        self.desk.apply(&turn.records);
        self.records.extend(turn.records.iter().cloned());
        turn
    }

    fn says(&mut self, at: DateTime<Utc>, from: &str, text: &str) -> String {
        self.count += 1;
        let turn = self.desk.receive(&Inbound::says(
            MessageKey::new("test", 1, self.count, 0),
            Sender::Crew(from.to_owned()),
            at,
            text,
        ));
        let turn = self.take(turn);
        turn.outgoing.iter().map(|out| out.text.text()).collect()
    }

    /// One Saturday: the tank is pumped at the close with `hauled` gallons, its lamps showing their floor just before.
    fn saturday(&mut self, week: i64, hauled: f64, fresh_pct: f64) {
        let noon = saturday(week);
        let hour = |h: f64| noon + TimeDelta::minutes((h * 60.0) as i64);
        let lamp = (hauled / 500.0 * 4.0).floor() * 25.0;
        self.says(hour(-2.0), "dana", "12 arrived, fresh filled");
        self.says(hour(-1.0), "dana", "12 in service");
        self.says(
            hour(9.8),
            "dana",
            &format!("12 waste {lamp:.0}% fresh {fresh_pct:.0}%"),
        );
        let pumped = self.says(hour(10.0), "dana", &format!("12 pumped {hauled:.0} gal"));
        assert!(pumped.contains(&format!("{hauled:.0} gal")), "{pumped}");
        self.says(hour(11.0), "dana", "12 left");
    }

    fn habits(&self) -> Habits {
        habits(self.desk.book())
    }
}

fn habits(book: &Book) -> Habits {
    let twelve = UnitName::new("12");
    let fleet = book.fleet().unwrap();
    let spec = &fleet.trailers[&twelve];
    Habits::learn(spec, Some("heron-mere"), book.lessons().of(&twelve))
}

/// Noon of a Saturday: 1 May 2027 and weeks on.
fn saturday(week: i64) -> DateTime<Utc> {
    DateTime::parse_from_rfc3339("2027-05-01T12:00:00Z")
        .unwrap()
        .to_utc()
        + TimeDelta::weeks(week)
}

/// Use runs at 1.25 times the promise, give or take a quarter from week to week, and a use takes 0.6 gal of water: 350 gal
/// out for every 300 in.
fn season(log: &mut Log, rng: &mut fastrand::Rng, weeks: std::ops::Range<i64>) {
    for week in weeks {
        let noise = (0.25 * (rng.f64() + rng.f64() + rng.f64() - 1.5) * 2.0).exp();
        let hauled = (1.25 * PROMISED_GAL * noise).min(480.0);
        let fresh = (100.0 - hauled * 0.6 / 0.7 / 5.0).round();
        log.saturday(week, hauled, fresh);
    }
}

#[test]
fn a_season_of_pump_outs_teaches_pace_use_and_gauge_and_a_wrong_figure_does_not_turn_it() {
    let mut rng = fastrand::Rng::with_seed(5);
    let mut log = Log::begin();
    let stated = log.habits();
    assert_eq!((stated.pace.value, stated.gal_per_use.value), (1.0, 1.0));
    season(&mut log, &mut rng, 0..4);
    let early = log.habits();
    season(&mut log, &mut rng, 4..SEASON);
    let late = log.habits();
    assert!((1.1..1.4).contains(&late.pace.value), "{late:?}");
    assert!(late.pace.p10 < 1.25 && 1.25 < late.pace.p90, "{late:?}");
    assert!(late.pace.p90 / late.pace.p10 < early.pace.p90 / early.pace.p10);
    assert!(late.spread < early.spread && early.spread < stated.spread);
    let gal = late.gal_per_use;
    assert!((0.5..0.85).contains(&gal.value), "{late:?}");
    assert!(gal.p10 < 0.6 && 0.6 < gal.p90 && gal.p90 < 1.0, "{late:?}");
    assert!(gal.p90 / gal.p10 < early.gal_per_use.p90 / early.gal_per_use.p10);
    // lamps all season, though the file says sight
    assert!(late.lamps > 0.95, "{late:?}");
    let gauge = log.desk.book().fleet().unwrap().trailers[&UnitName::new("12")].waste_gauge;
    assert_eq!(late.gauge(gauge).kind, GaugeKind::Lamps);

    log.saturday(SEASON, 45.0, 5.0);
    let wrong = log.habits();
    assert!(
        (wrong.pace.value / late.pace.value - 1.0).abs() < 0.04,
        "{wrong:?}"
    );
    assert!((wrong.gal_per_use.value / late.gal_per_use.value - 1.0).abs() < 0.06);
    assert_eq!(wrong.gauge(gauge).kind, GaugeKind::Lamps);

    // the same records teach the same to the bit
    let mut book = Book::default();
    log.records.iter().for_each(|record| book.apply(record));
    assert_eq!(habits(&book), wrong);
}

#[test]
fn what_was_learned_moves_the_forecast_and_can_be_forgotten_and_taken_back() {
    let mut rng = fastrand::Rng::with_seed(6);
    let mut log = Log::begin();
    season(&mut log, &mut rng, 0..6);
    let ask = saturday(7) + TimeDelta::hours(2);
    let known = log.says(ask, "nadia", "forecast 12");
    let before = log.habits();
    assert!(before.pace.value > 1.05);

    // an undone pump-out taught nothing
    let doors = saturday(6);
    log.says(doors + TimeDelta::hours(5), "dana", "12 pumped 60 gal");
    assert_ne!(log.habits(), before);
    log.says(doors + TimeDelta::hours(5), "dana", "undo");
    assert_eq!(log.habits(), before);

    let refused = log.says(ask, "dana", "relearn 12");
    assert!(refused.contains("dispatcher"), "{refused}");
    assert_eq!(log.habits(), before);
    let done = log.says(ask, "nadia", "relearn 12");
    assert!(done.contains("6 pump-outs"), "{done}");
    let after = log.habits();
    assert_eq!((after.pace.value, after.pace.entries), (1.0, 0));
    assert_ne!(log.says(ask, "nadia", "forecast 12"), known);
    let again = log.says(ask, "nadia", "relearn 12");
    assert!(again.contains("nothing"), "{again}");
}
