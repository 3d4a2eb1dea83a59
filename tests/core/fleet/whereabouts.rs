use std::fmt::Write;

use chrono::{DateTime, Duration, Utc};
use hosebib::fleet::Fleet;

use super::{at, loads, of, sample_files, unit};

const SITES: &str =
    "[[site]]\nid = \"hall\"\n[[site]]\nid = \"green\"\ntime_zone = \"America/Denver\"\n";

fn fleet(jobs: &str) -> Fleet {
    let trailers = "time_zone = \"America/Chicago\"\n[[trailer]]\nid = \"1\"\n[[trailer]]\nid = \"2\"\nrooms = [ { toilets = 1, urinals = 2 } ]";
    loads(&of(trailers, &format!("{SITES}{jobs}"), ""))
}

/// Friday evening at the hall, Sunday noon at the green, for trailer 1.
fn two_jobs() -> Fleet {
    fleet(
        "[[job]]\nsite = \"hall\"\ntrailers = [\"1\"]\nfrom = 2027-01-22T17:00:00\nto = 2027-01-22T23:00:00\n\
           [[job]]\nsite = \"green\"\ntrailers = [\"1\", \"2\"]\nfrom = 2027-01-24T12:00:00\nto = 2027-01-24T20:00:00\nset_up_h = 48\n",
    )
}

fn place<'f>(fleet: &'f Fleet, when: &str, left: Option<&str>) -> Option<&'f str> {
    let left: Option<DateTime<Utc>> = left.map(at);
    fleet
        .job_of(&unit("1"), at(when), left)
        .map(|job| job.id.site.as_str())
}

#[test]
fn a_trailer_is_at_a_job_from_its_set_up_on() {
    let fleet = two_jobs();
    assert_eq!(place(&fleet, "2027-01-21T16:59:59-06:00", None), None);
    assert_eq!(
        place(&fleet, "2027-01-21T17:00:00-06:00", None),
        Some("hall")
    );
    assert_eq!(
        place(&fleet, "2027-01-22T22:59:00-06:00", None),
        Some("hall")
    );
}

#[test]
fn set_up_begins_no_earlier_than_the_job_before_ends() {
    let fleet = two_jobs();
    // 48 h before Sunday noon would be Friday noon, in the middle of nothing but the hall's own set-up
    assert_eq!(
        place(&fleet, "2027-01-22T18:00:00-06:00", None),
        Some("hall")
    );
    assert_eq!(
        place(&fleet, "2027-01-22T23:00:00-06:00", None),
        Some("green")
    );
    let green = &fleet.jobs[1].id;
    assert_eq!(
        fleet.set_up_of(&unit("1"), green),
        Some(at("2027-01-22T23:00:00-06:00"))
    );
    assert_eq!(
        fleet.set_up_of(&unit("2"), green),
        Some(at("2027-01-22T12:00:00-07:00"))
    );
    assert_eq!(fleet.set_up_of(&unit("3"), green), None);
}

#[test]
fn it_stays_past_the_end_until_it_is_reported_left() {
    let fleet = two_jobs();
    assert_eq!(
        place(&fleet, "2027-01-29T20:00:00-06:00", None),
        Some("green")
    );
    assert_eq!(
        place(
            &fleet,
            "2027-01-29T20:00:00-06:00",
            Some("2027-01-24T21:00:00-06:00")
        ),
        None
    );
    // a departure that has not happened yet, and one from long before, change nothing
    assert_eq!(
        place(
            &fleet,
            "2027-01-24T13:00:00-06:00",
            Some("2027-01-24T21:00:00-06:00")
        ),
        Some("green")
    );
    assert_eq!(
        place(
            &fleet,
            "2027-01-22T18:00:00-06:00",
            Some("2027-01-02T21:00:00-06:00")
        ),
        Some("hall")
    );
}

#[test]
fn leaving_the_job_before_is_not_leaving_the_next() {
    let fleet = two_jobs();
    // fetched from the hall on Saturday morning, when the green's set-up has begun by the book
    let left = Some("2027-01-23T09:00:00-06:00");
    assert_eq!(
        place(&fleet, "2027-01-23T12:00:00-06:00", left),
        Some("green")
    );
    // but once the green's doors are open a departure is from the green
    assert_eq!(
        place(
            &fleet,
            "2027-01-24T18:00:00-06:00",
            Some("2027-01-24T17:00:00-06:00")
        ),
        None
    );
    // and nobody needs a day and more to leave a hall
    assert_eq!(
        place(
            &fleet,
            "2027-01-24T11:30:00-06:00",
            Some("2027-01-24T11:00:00-06:00")
        ),
        None
    );
}

#[test]
fn unknown_units_and_idle_ones_are_nowhere() {
    let fleet = two_jobs();
    let noon = at("2027-01-24T13:00:00-06:00");
    assert!(fleet.job_of(&unit("99"), noon, None).is_none());
    assert_eq!(fleet.jobs_of(&unit("99")).len(), 0);
    assert_eq!(fleet.jobs_of(&unit("1")).len(), 2);
    assert_eq!(fleet.next_job_of(&unit("1"), noon), None);
    let next = fleet
        .next_job_of(&unit("1"), at("2027-01-23T00:00:00Z"))
        .map(|job| &job.id);
    assert_eq!(next, Some(&fleet.jobs[1].id));
    assert_eq!(fleet.job(&fleet.jobs[0].id), Some(&fleet.jobs[0]));
}

#[test]
fn local_times_are_the_sites_own() {
    let fleet = two_jobs();
    assert_eq!(fleet.jobs[1].from, at("2027-01-24T12:00:00-07:00"));
    assert_eq!(
        fleet.site_of(&fleet.jobs[1]).map(|site| site.id.as_str()),
        Some("green")
    );
}

#[test]
fn guests_are_split_by_the_stalls_that_work() {
    let fleet = two_jobs();
    let job = &fleet.jobs[1];
    // five stalls by default, three stated
    assert_eq!(fleet.guests_share(job, &unit("1"), 240.0), 150.0);
    assert_eq!(fleet.guests_share(job, &unit("2"), 240.0), 90.0);
    assert_eq!(fleet.guests_share(job, &unit("7"), 240.0), 0.0);
    let two_shut = |name: &hosebib::heard::UnitName| if *name == unit("1") { 2 } else { 0 };
    assert_eq!(
        fleet.guests_share_less(job, &unit("1"), 240.0, two_shut),
        120.0
    );
    assert_eq!(
        fleet.guests_share_less(job, &unit("1"), 240.0, |_| 99),
        120.0
    );
}

#[test]
fn a_wrong_name_finds_the_likely_ones() {
    let fleet = loads(&sample_files());
    let near = |name: &str| {
        fleet
            .nearest_units(name)
            .into_iter()
            .map(|unit| unit.as_str())
            .collect::<Vec<_>>()
    };
    assert_eq!(near("B7")[0], "7");
    assert_eq!(near("012")[0], "12");
    assert_eq!(near("t-14")[0], "14");
    assert!(
        near("81").contains(&"18"),
        "swapped digits: {:?}",
        near("81")
    );
    assert!(near("122").contains(&"12"), "{:?}", near("122"));
    assert!(near("2").contains(&"21"), "{:?}", near("2"));
    assert!(near("zebra").is_empty());
    assert!(near("").is_empty());
    assert!(near(&"9".repeat(100_000)).is_empty());
}

#[test]
fn ten_thousand_trailers_and_jobs_are_found_by_name() {
    let (mut trailers, mut jobs) = (
        String::from("time_zone = \"America/Chicago\"\n"),
        String::from(SITES),
    );
    let first = at("2027-01-01T06:00:00Z");
    for i in 0..10_000 {
        let doors = first + Duration::minutes(i);
        writeln!(trailers, "[[trailer]]\nid = \"{i}\"").expect("a String");
        let (from, to) = (
            doors.format("%Y-%m-%dT%H:%M:%S"),
            (doors + Duration::hours(5)).format("%Y-%m-%dT%H:%M:%S"),
        );
        writeln!(
            jobs,
            "[[job]]\nsite = \"hall\"\ntrailers = [\"{i}\"]\nfrom = {from}\nto = {to}"
        )
        .expect("a String");
    }
    let fleet = loads(&of(&trailers, &jobs, ""));
    for i in (0..10_000).step_by(7) {
        let job = fleet.job_of(
            &unit(&i.to_string()),
            first + Duration::days(3) + Duration::minutes(i),
            None,
        );
        assert_eq!(
            job.map(|job| &job.trailers[..]),
            Some(&[unit(&i.to_string())][..])
        );
    }
}
