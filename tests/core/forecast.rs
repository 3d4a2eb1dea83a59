//! The tank forecast: what moves it, what it must not do, and how right it is.

mod calibration;
mod events;
mod exact;
mod learned;
mod properties;

use hosebib::fleet::{Gauge, GaugeKind, TankShape};
use hosebib::physics::forecast::{
    Doubt, Forecast, Observation, PRIOR_SPREAD, Tank, Usage, fresh, waste,
};

const OPEN: [(f64, f64); 1] = [(0.0, 12.0)];

fn tank(kind: GaugeKind, step_pct: f64) -> Tank {
    Tank {
        capacity_gal: 500.0,
        shape: TankShape::Box,
        gauge: Gauge { kind, step_pct },
    }
}

fn sight() -> Tank {
    tank(GaugeKind::Sight, 12.5)
}

fn usage(prior_pct_per_h: f64) -> Usage<'static> {
    Usage {
        prior_pct_per_h,
        prior_spread: PRIOR_SPREAD,
        gal_per_use: 1.1,
        open: &OPEN,
        guests: &[(0.0, 200.0)],
    }
}

fn read(at_h: f64, pct: f64) -> Observation {
    Observation::Gauge { at_h, pct }
}

fn at(observations: &[Observation], now_h: f64) -> Forecast {
    waste(&sight(), &usage(10.0), observations, now_h, 85.0)
}

fn p50(forecast: &Forecast) -> f64 {
    forecast.p50.unwrap_or(f64::INFINITY)
}

#[test]
fn with_no_reading_the_promise_of_the_guests_stands() {
    let forecast = at(&[], 0.0);
    // 85 % at 10 %/h takes 8.5 h; use gathers pace at first, and the tank comes not quite empty.
    assert!((7.5..9.5).contains(&p50(&forecast)), "{forecast:?}");
    assert!(forecast.p10.expect("likely enough") < 7.0);
    assert!(forecast.could_stay_below && forecast.p90.is_none());
}

#[test]
fn a_reading_moves_level_and_pace() {
    let slow = at(&[read(-1.0, 0.0), read(4.0, 25.0)], 4.0);
    let fast = at(&[read(-1.0, 0.0), read(4.0, 62.5)], 4.0);
    assert!((18.0..32.0).contains(&slow.level_now.p50), "{slow:?}");
    assert!((56.0..69.0).contains(&fast.level_now.p50), "{fast:?}");
    assert!(fast.rate_pct_h > 1.4 * slow.rate_pct_h);
    assert!(p50(&fast) + 3.0 < p50(&slow));
}

#[test]
fn a_lamp_is_a_floor_and_a_mark_is_the_nearest() {
    let seen = [read(5.0, 50.0)];
    let lamps = waste(
        &tank(GaugeKind::Lamps, 25.0),
        &usage(12.0),
        &seen,
        5.0,
        85.0,
    );
    let marks = waste(
        &tank(GaugeKind::Sight, 25.0),
        &usage(12.0),
        &seen,
        5.0,
        85.0,
    );
    assert!(lamps.level_now.p10 > 49.0, "{lamps:?}");
    assert!(marks.level_now.p90 < 63.0, "{marks:?}");
    assert!(p50(&lamps) < p50(&marks));
}

#[test]
fn three_quarters_deep_in_a_lying_cylinder_is_fuller_than_three_quarters() {
    let round = Tank {
        shape: TankShape::Cylinder {
            diameter_in: 36.0,
            length_in: 113.5,
        },
        ..sight()
    };
    let forecast = waste(&round, &usage(12.0), &[read(7.0, 75.0)], 7.0, 85.0);
    // Depth 3/4 is 80.4 % full: the segment of a circle.
    assert!(
        (77.0..84.0).contains(&forecast.level_now.p50),
        "{forecast:?}"
    );
}

#[test]
fn a_pump_out_empties_the_tank_and_its_gallons_tell_the_pace() {
    let before = at(&[read(5.0, 62.5)], 6.0);
    let pumped = |gal| {
        at(
            &[read(5.0, 62.5), Observation::Pumped { at_h: 6.0, gal }],
            6.0,
        )
    };
    let plain = pumped(None);
    assert!(plain.level_now.p90 < 6.0, "{plain:?}");
    assert!(p50(&plain) > p50(&before) + 3.0);
    let (little, much) = (pumped(Some(310.0)), pumped(Some(410.0)));
    assert!(
        little.rate_pct_h < plain.rate_pct_h && plain.rate_pct_h < much.rate_pct_h,
        "{} {} {}",
        little.rate_pct_h,
        plain.rate_pct_h,
        much.rate_pct_h
    );
}

#[test]
fn a_late_reading_takes_its_place_in_time() {
    let told_late = at(&[read(5.0, 62.5), read(2.0, 12.5)], 5.0);
    let told_in_time = at(&[read(2.0, 12.5), read(5.0, 62.5)], 5.0);
    let never_told = at(&[read(5.0, 62.5)], 5.0);
    assert_eq!(told_late.p50, told_in_time.p50);
    assert_eq!(told_late.level_now, told_in_time.level_now);
    assert_ne!(told_late.p50, never_told.p50);
}

#[test]
fn one_wild_reading_is_doubted_and_hardly_counts() {
    let sane = at(&[read(2.0, 12.5), read(3.0, 25.0), read(5.0, 37.5)], 5.0);
    let wild = at(&[read(2.0, 12.5), read(3.0, 100.0), read(5.0, 37.5)], 5.0);
    assert!((p50(&sane) - p50(&wild)).abs() < 1.0);
    assert!(sane.doubtful.is_empty());
    assert_eq!(wild.doubtful.len(), 1);
    assert_eq!(
        (wild.doubtful[0].index, wild.doubtful[0].why),
        (1, Doubt::OutOfLine)
    );
}

#[test]
fn two_readings_that_agree_on_a_lower_level_are_believed() {
    let forecast = at(
        &[
            read(4.0, 50.0),
            read(5.0, 12.5),
            read(5.5, 12.5),
            read(6.0, 12.5),
        ],
        6.0,
    );
    assert!(forecast.level_now.p50 < 25.0, "{forecast:?}");
}

#[test]
fn a_gauge_that_stands_still_in_use_is_doubted_and_weighs_less() {
    let stuck: Vec<_> = (1..=9).map(|h| read(f64::from(h), 12.5)).collect();
    let forecast = at(&stuck, 9.0);
    assert!(
        forecast
            .doubtful
            .iter()
            .any(|d| d.why == Doubt::Unchanged && d.index == 8),
        "{forecast:?}"
    );
    let trusted = at(&stuck[..6], 6.0);
    assert!(trusted.doubtful.iter().all(|d| d.why != Doubt::Unchanged));
    // Standing still in closed hours is no sign of anything.
    let closed: Vec<_> = (13..=22).map(|h| read(f64::from(h), 87.5)).collect();
    assert!(
        at(&closed, 22.0)
            .doubtful
            .iter()
            .all(|d| d.why != Doubt::Unchanged)
    );
}

#[test]
fn nobody_uses_a_unit_outside_its_open_hours() {
    let open = [(0.0, 10.0), (24.0, 34.0), (48.0, 58.0)];
    let usage = Usage {
        open: &open,
        ..usage(5.0)
    };
    let forecast = waste(&sight(), &usage, &[read(10.0, 50.0)], 10.0, 85.0);
    for at in [forecast.p10, forecast.p50, forecast.p90] {
        let at = at.expect("two more days are enough");
        assert!(
            open.iter().any(|(from, to)| (*from..=*to).contains(&at)),
            "{at}"
        );
    }
    let over = waste(&sight(), &usage, &[read(58.0, 50.0)], 59.0, 85.0);
    assert_eq!((over.p10, over.p50, over.p90), (None, None, None));
    assert!(over.could_stay_below && over.chance < 0.1);
}

#[test]
fn a_reading_before_the_doors_open_holds_the_level() {
    let forecast = waste(&sight(), &usage(10.0), &[read(-5.0, 37.5)], -4.0, 85.0);
    assert!(
        (31.0..44.0).contains(&forecast.level_now.p50),
        "{forecast:?}"
    );
    assert!(p50(&forecast) > 3.0);
}

#[test]
fn a_tank_above_the_limit_has_reached_it_now() {
    let forecast = at(&[read(6.0, 87.5), read(6.5, 100.0)], 7.0);
    assert_eq!(
        (forecast.p10, forecast.p50, forecast.p90),
        (Some(7.0), Some(7.0), Some(7.0))
    );
    assert!(!forecast.could_stay_below);
}

#[test]
fn a_head_count_moves_the_rate() {
    let counted = |guests: f64| {
        let guests = [(0.0, 200.0), (3.0, guests)];
        let usage = Usage {
            guests: &guests,
            ..usage(10.0)
        };
        waste(&sight(), &usage, &[read(3.0, 25.0)], 3.0, 85.0)
    };
    assert!(p50(&counted(400.0)) < p50(&counted(200.0)));
    assert!(p50(&counted(200.0)) < p50(&counted(60.0)));
}

#[test]
fn a_fresh_tank_falls_and_a_refill_lifts_it() {
    let seen = [Observation::Filled { at_h: 0.0 }, read(4.0, 50.0)];
    let low = fresh(&sight(), &usage(10.0), &seen, 4.0, 10.0);
    assert!((43.0..57.0).contains(&low.level_now.p50), "{low:?}");
    assert!((6.0..10.0).contains(&p50(&low)), "{low:?}");
    assert!(low.level_now.p10 < low.level_now.p90);
    let refilled = fresh(
        &sight(),
        &usage(10.0),
        &[seen[0], seen[1], Observation::Filled { at_h: 5.0 }],
        5.0,
        10.0,
    );
    assert!(refilled.level_now.p10 > 93.0);
    assert!(p50(&refilled) > p50(&low) + 3.0);
    let drained = fresh(
        &sight(),
        &usage(10.0),
        &[Observation::Drained { at_h: 3.0 }],
        3.0,
        10.0,
    );
    assert_eq!(drained.p90, Some(3.0));
}

#[test]
fn stated_gallons_tell_the_level() {
    let forecast = at(
        &[Observation::Gallons {
            at_h: 5.0,
            gal: 250.0,
        }],
        5.0,
    );
    assert!(
        (45.0..55.0).contains(&forecast.level_now.p50),
        "{forecast:?}"
    );
    assert!(forecast.level_now.p90 - forecast.level_now.p10 < 15.0);
}

/// The figures that the full run (`cargo bench --bench calibrate`) prints, from fewer events and so with wider bounds.
#[test]
fn the_band_holds_about_as_many_truths_as_it_says() {
    for protocol in calibration::Protocol::ALL {
        let figures = calibration::Figures::measure(2, 50, protocol, &mut calibration::ours);
        let share = |count| figures.share(count);
        let title = protocol.title();
        assert!(figures.events > 30, "{title}\n{figures}");
        let inside = share(figures.inside);
        assert!((0.70..0.92).contains(&inside), "{title}\n{figures}");
        for outside in [figures.before_p10, figures.after_p90] {
            assert!(share(outside) < 0.2, "{title}\n{figures}");
        }
        let losses = &figures.losses;
        assert!(losses.forecast < 0.65 * losses.line, "{title}\n{figures}");
        assert!(losses.forecast < losses.guests, "{title}\n{figures}");
        let trucks = &figures.trucks;
        assert!(
            trucks.in_time * 100 >= trucks.could * 88,
            "{title}\n{figures}"
        );
        assert!(
            trucks.fill > 45.0 * trucks.came as f64,
            "{title}\n{figures}"
        );
    }
}
