use chrono::{DateTime, Duration, Utc};
use hosebib::fleet::Job;
use proptest::prelude::*;

use super::{at, loads, of};

/// One job, its times local to the zone.
#[track_caller]
fn job(zone: &str, from: &str, to: &str, more: &str) -> Job {
    let jobs = format!(
        "[[site]]\nid = \"s\"\n[[job]]\nsite = \"s\"\ntrailers = [\"1\"]\nfrom = {from}\nto = {to}\n{more}"
    );
    let fleet = format!("time_zone = \"{zone}\"\n[[trailer]]\nid = \"1\"");
    loads(&of(&fleet, &jobs, "")).jobs.remove(0)
}

#[test]
fn a_job_of_a_day_is_open_from_the_doors_to_the_end() {
    let job = job(
        "America/Chicago",
        "2027-01-16T12:00:00",
        "2027-01-16T23:30:00",
        "",
    );
    assert!(!job.is_open(at("2027-01-16T11:59:59-06:00")));
    assert!(job.is_open(at("2027-01-16T12:00:00-06:00")));
    assert!(job.is_open(at("2027-01-16T23:29:59-06:00")));
    assert!(!job.is_open(at("2027-01-16T23:30:00-06:00")));
    assert_eq!(job.ends(), at("2027-01-16T23:30:00-06:00"));
    let all = job.open_hours_between(at("2027-01-01T00:00:00Z"), at("2028-01-01T00:00:00Z"));
    assert_eq!(all, 11.5);
    assert_eq!(job.after_open_hours(job.from, 11.5), Some(job.to));
    assert_eq!(job.after_open_hours(job.from, 11.6), None);
    assert_eq!(
        job.after_open_hours(at("2027-01-16T00:00:00-06:00"), 1.0),
        Some(at("2027-01-16T13:00:00-06:00"))
    );
}

#[test]
fn a_longer_job_is_open_every_day_between_its_own_times_of_day() {
    let job = job(
        "America/Chicago",
        "2027-05-03T05:00:00",
        "2027-05-07T20:00:00",
        "",
    );
    assert!(job.is_open(at("2027-05-04T05:00:00-05:00")));
    assert!(!job.is_open(at("2027-05-04T20:00:00-05:00")));
    assert!(!job.is_open(at("2027-05-04T04:59:00-05:00")));
    assert_eq!(job.open_hours_between(job.from, job.to), 5.0 * 15.0);
    assert_eq!(
        job.opens_next(at("2027-05-04T21:00:00-05:00")),
        Some(at("2027-05-05T05:00:00-05:00"))
    );
    assert_eq!(job.opens_next(at("2027-05-07T05:00:01-05:00")), None);
    // 18:00, two hours to go that day, the third is the next morning's first
    let three = job.after_open_hours(at("2027-05-04T18:00:00-05:00"), 3.0);
    assert_eq!(three, Some(at("2027-05-05T06:00:00-05:00")));
}

#[test]
fn stated_hours_win_and_may_pass_midnight() {
    let yard = job(
        "America/Chicago",
        "2027-01-04T08:00:00",
        "2027-01-08T12:00:00",
        "hours = \"06:00-17:00\"",
    );
    // the first day from 08:00, the last to 12:00
    assert_eq!(
        yard.open_hours_between(yard.from, yard.to),
        9.0 + 3.0 * 11.0 + 6.0
    );
    let fest = job(
        "America/Chicago",
        "2027-08-13T18:00:00",
        "2027-08-16T02:00:00",
        "hours = \"18:00-02:00\"",
    );
    assert_eq!(fest.open_hours_between(fest.from, fest.to), 24.0);
    assert!(fest.is_open(at("2027-08-15T01:30:00-05:00")));
    assert!(!fest.is_open(at("2027-08-15T02:30:00-05:00")));
    let night = job(
        "America/Chicago",
        "2027-08-13T18:00:00",
        "2027-08-16T02:00:00",
        "",
    );
    assert_eq!(night.open, fest.open, "the same by its own times of day");
}

#[test]
fn the_same_time_at_both_ends_leaves_no_hour_shut() {
    let camp = job(
        "America/Chicago",
        "2027-07-01T08:00:00",
        "2027-07-04T08:00:00",
        "",
    );
    assert_eq!(camp.open_hours_between(camp.from, camp.to), 72.0);
    let round = job(
        "America/Chicago",
        "2027-07-01T08:00:00",
        "2027-07-04T10:00:00",
        "hours = \"00:00-24:00\"",
    );
    assert_eq!(round.open_hours_between(round.from, round.to), 74.0);
}

#[test]
fn twenty_four_hours_exactly_is_not_longer_than_a_day() {
    let job = job(
        "America/Chicago",
        "2027-07-01T08:00:00",
        "2027-07-02T08:00:00",
        "",
    );
    assert_eq!(job.open_hours_between(job.from, job.to), 24.0);
    assert!(job.is_open(at("2027-07-02T03:00:00-05:00")));
}

// In the United States clocks go forward at 2:00 on the second Sunday in March and back on the first Sunday in November
// (15 U.S.C. 260a): 14 March and 7 November 2027.
#[test]
fn the_night_the_clocks_change_is_as_long_as_it_is() {
    let spring = job(
        "America/New_York",
        "2027-03-13T22:00:00",
        "2027-03-14T06:00:00",
        "",
    );
    assert_eq!(spring.open_hours_between(spring.from, spring.to), 7.0);
    let autumn = job(
        "America/New_York",
        "2027-11-06T22:00:00",
        "2027-11-07T06:00:00",
        "",
    );
    assert_eq!(autumn.open_hours_between(autumn.from, autumn.to), 9.0);
    let nights = job(
        "America/New_York",
        "2027-11-05T22:00:00",
        "2027-11-09T06:00:00",
        "",
    );
    assert_eq!(
        nights.open_hours_between(nights.from, nights.to),
        8.0 + 9.0 + 8.0 + 8.0
    );
    assert_eq!(
        nights.after_open_hours(nights.from, 17.0),
        Some(at("2027-11-07T06:00:00-05:00"))
    );
}

#[test]
fn of_a_local_time_that_comes_twice_the_first_counts() {
    let job = job(
        "America/New_York",
        "2027-11-07T01:30:00",
        "2027-11-07T09:00:00",
        "",
    );
    assert_eq!(job.from, at("2027-11-07T01:30:00-04:00"));
}

#[test]
fn daily_hours_that_begin_in_the_gap_begin_when_it_ends() {
    let bakery = job(
        "America/New_York",
        "2027-03-12T02:30:00",
        "2027-03-16T10:00:00",
        "",
    );
    assert!(!bakery.is_open(at("2027-03-14T06:59:00Z")));
    assert!(
        bakery.is_open(at("2027-03-14T07:00:00Z")),
        "2:00 EST is 3:00 EDT"
    );
    // Lord Howe's gap is half an hour (IANA tz database, Australia/Lord_Howe): 3 October 2027, 02:00 to 02:30
    let island = job(
        "Australia/Lord_Howe",
        "2027-10-01T02:15:00",
        "2027-10-05T10:00:00",
        "",
    );
    assert!(!island.is_open(at("2027-10-02T15:29:00Z")));
    assert!(island.is_open(at("2027-10-02T15:30:00Z")));
}

#[test]
fn before_after_and_odd_questions_have_answers() {
    let job = job(
        "America/Chicago",
        "2027-05-03T05:00:00",
        "2027-05-07T20:00:00",
        "",
    );
    let noon = at("2027-05-04T12:00:00-05:00");
    assert_eq!(job.open_hours_between(noon, noon), 0.0);
    assert_eq!(job.open_hours_between(job.to, job.from), 0.0);
    assert_eq!(
        job.open_hours_between(job.to, job.to + Duration::days(9)),
        0.0
    );
    assert_eq!(job.after_open_hours(noon, 0.0), Some(noon));
    assert_eq!(job.after_open_hours(noon, -1.0), None);
    assert_eq!(job.after_open_hours(noon, f64::NAN), None);
    assert_eq!(job.after_open_hours(noon, f64::INFINITY), None);
    assert_eq!(job.after_open_hours(job.to, 1.0), None);
    assert_eq!(job.opens_next(at("1970-01-01T00:00:00Z")), Some(job.from));
    assert_eq!(job.opens_next(DateTime::<Utc>::MAX_UTC), None);
    for zone in ["Pacific/Kiritimati", "Pacific/Niue"] {
        let job = self::job(zone, "2027-05-03T05:00:00", "2027-05-07T20:00:00", "");
        assert!(!job.is_open(DateTime::<Utc>::MAX_UTC) && !job.is_open(DateTime::<Utc>::MIN_UTC));
    }
}

proptest! {
    // counting open minutes one by one is the slow way to the same sum
    #[test]
    fn open_hours_are_what_a_minute_by_minute_count_gives(
        zone in prop::sample::select(vec!["America/New_York", "Europe/Madrid", "Australia/Lord_Howe", "UTC"]),
        day in 1_u32..28, month in prop::sample::select(vec![3_u32, 6, 10, 11]),
        open in 0_u32..1440, close in 0_u32..1440, days in 1_i64..5, skip in 0_i64..3000, span in 0_i64..5000,
    ) {
        let clock = |minute: u32| format!("{:02}:{:02}", minute / 60, minute % 60);
        let from = format!("2027-{month:02}-{day:02}T12:00:00");
        let end = chrono::NaiveDate::from_ymd_opt(2027, month, day).expect("a day") + Duration::days(days);
        let job = job(zone, &from, &format!("{end}T13:00:00"), &format!("hours = \"{}-{}\"", clock(open), clock(close)));
        let a = job.from - Duration::hours(12) + Duration::minutes(skip);
        let b = a + Duration::minutes(span);
        let minutes = (0..span).filter(|&m| job.is_open(a + Duration::minutes(m))).count();
        let hours = job.open_hours_between(a, b);
        prop_assert!((hours - minutes as f64 / 60.0).abs() < 1e-9, "{hours} against {minutes} min");
    }

    #[test]
    fn after_open_hours_undoes_open_hours_between(skip in 0_i64..6000, hours in 0.01_f64..80.0) {
        let job = job("America/New_York", "2027-03-11T07:00:00", "2027-03-16T19:00:00", "");
        let a = job.from - Duration::hours(6) + Duration::minutes(skip);
        match job.after_open_hours(a, hours) {
            Some(b) => prop_assert!((job.open_hours_between(a, b) - hours).abs() < 1e-6),
            None => prop_assert!(job.open_hours_between(a, job.to) < hours),
        }
    }
}
