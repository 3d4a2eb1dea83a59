use std::collections::BTreeSet;

use chrono::{DateTime, Timelike, Utc};
use hosebib::fleet::{Role, Source, demo};

use super::{at, unit};

struct Line {
    at: DateTime<Utc>,
    received: DateTime<Utc>,
    from: String,
    text: String,
}

fn day() -> Vec<Line> {
    let line = |line: &str| {
        let line: serde_json::Value =
            serde_json::from_str(line).expect("a line of the day is JSON");
        let text = |key: &str| line[key].as_str().map(String::from);
        let written = text("at").expect("a time");
        Line {
            at: at(&written),
            received: at(&text("received").unwrap_or(written)),
            from: text("from").expect("a sender"),
            text: text("text").expect("a text"),
        }
    };
    demo::DAY.lines().map(line).collect()
}

#[test]
fn the_chat_starts_at_an_open_wedding_in_deep_winter() {
    let fleet = demo::fleet();
    let now = demo::starts();
    let job = fleet
        .job_of(&unit("12"), now, None)
        .expect("trailer 12 is at a job");
    assert!(job.is_open(now));
    assert!(job.alcohol && job.guests == 200.0);
    let trailer = &fleet.trailers[&unit("12")];
    assert!(trailer.cold.package && trailer.waste_gal == 500.0);
    let site = fleet.site_of(job).expect("its site");
    assert_eq!(
        (site.water.source, site.water.static_psi),
        (Source::Hydrant, Some(110.0))
    );
    assert_eq!(site.pump_truck.lead_h, 2.5);
    let clock = now.with_timezone(&job.time_zone);
    assert_eq!(
        (
            clock.hour(),
            clock.minute(),
            clock.format("%A").to_string().as_str()
        ),
        (17, 10, "Saturday")
    );
    assert_eq!(fleet.crew[demo::SENDER].role, Role::Driver);
}

#[test]
fn the_fleet_has_the_cases_that_matter() {
    let fleet = demo::fleet();
    let sites = || fleet.sites.values();
    assert!(
        sites().any(|site| site.water.source == Source::None && site.power.source == Source::None)
    );
    assert!(sites().any(|site| site.power.generator_w.is_some_and(|watts| watts <= 4000.0)));
    assert!(sites().any(|site| site.water.hose_in < 0.7 && site.water.hose_ft > 150.0));
    assert!(
        fleet
            .jobs
            .iter()
            .any(|job| job.to - job.from > chrono::Duration::days(60))
    );
    assert!(fleet.trailers.values().any(|trailer| !trailer.cold.package));
    assert_eq!(
        fleet
            .crew
            .values()
            .filter(|member| member.role == Role::Dispatcher)
            .count(),
        1
    );
    // no trailer without a cold package is out in the cold
    for job in fleet
        .jobs
        .iter()
        .filter(|job| job.from < at("2027-04-01T00:00:00Z"))
    {
        assert!(
            job.trailers
                .iter()
                .all(|unit| fleet.trailers[unit].cold.package),
            "{}",
            job.id
        );
    }
}

#[test]
fn the_day_is_in_the_order_received_by_people_of_the_crew() {
    let fleet = demo::fleet();
    let day = day();
    assert!((40..=60).contains(&day.len()), "{}", day.len());
    assert!(day.is_sorted_by_key(|line| line.received));
    assert!(
        day.iter()
            .all(|line| line.received >= line.at && fleet.crew.contains_key(&line.from))
    );
    let late = day
        .iter()
        .filter(|line| line.received - line.at > chrono::Duration::hours(1))
        .count();
    assert_eq!(late, 1, "one message had no signal");
    let date: BTreeSet<_> = day
        .iter()
        .map(|line| line.at.with_timezone(&fleet.time_zone).date_naive())
        .collect();
    assert_eq!(date.len(), 1);
    assert!(day.iter().any(
        |line| line.at == demo::starts() && line.text == "unit 12 pressure 95 tank 3/4 temp -5"
    ));
}
