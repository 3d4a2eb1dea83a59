//! The belief against sums done the long way.

use hosebib::fleet::{Gauge, GaugeKind, TankShape};
use hosebib::physics::forecast::{Observation, Tank, Usage, waste};

/// Simple enough to integrate by hand: hardly any wandering matters over a short closed look, since all that is uncertain
/// is a level between two marks and a pace known to 2 %.
#[test]
fn a_known_pace_from_a_known_level_reaches_the_limit_on_time() {
    let tank = Tank {
        capacity_gal: 500.0,
        shape: TankShape::Box,
        gauge: Gauge {
            kind: GaugeKind::Sight,
            step_pct: 12.5,
        },
    };
    let open = [(0.0, 60.0)];
    let usage = Usage {
        prior_pct_per_h: 2.0,
        prior_spread: 0.02,
        gal_per_use: 1.1,
        open: &open,
        guests: &[],
    };
    let seen = [Observation::Pumped {
        at_h: 4.0,
        gal: None,
    }];
    let forecast = waste(&tank, &usage, &seen, 4.0, 85.0);
    // Full pace is 60 / (60 - 1.25 x 0.8 / 2 - 1 x 0.7 / 2) of the mean; from 2 % to 85 %.
    let expected = 4.0 + 83.0 / (2.0 * 60.0 / (60.0 - 0.5 - 0.35));
    assert!(
        (forecast.p50.expect("reached in time") - expected).abs() < 0.5,
        "{forecast:?} {expected}"
    );
    // Spread: wandering pace 0.3 with memory 1 h over 41 h, single uses of 0.22 %, start give or take 2 %.
    let wander = 2.0 * ((0.09f64).exp() - 1.0) * 41.0 * 4.0;
    let sd = (wander + 83.0 * 0.22 + 4.0 + (83.0f64 * 0.02).powi(2)).sqrt() / 2.0;
    let width = forecast.p90.expect("reached in time") - forecast.p10.expect("reached in time");
    assert!(
        (width / (2.0 * 1.2816 * sd) - 1.0).abs() < 0.15,
        "{width} {sd}"
    );
}

/// Many paths drawn from the model itself, weighed by the same bands: the belief on the grid against brute force.
#[test]
fn the_belief_agrees_with_brute_force() {
    let tank = Tank {
        capacity_gal: 300.0,
        shape: TankShape::Box,
        gauge: Gauge {
            kind: GaugeKind::Sight,
            step_pct: 25.0,
        },
    };
    let open = [(-4.0, 40.0)];
    let usage = Usage {
        prior_pct_per_h: 10.0,
        prior_spread: 0.4,
        gal_per_use: 1.1,
        open: &open,
        guests: &[],
    };
    let seen = [
        Observation::Pumped {
            at_h: 0.0,
            gal: None,
        },
        Observation::Gauge {
            at_h: 2.0,
            pct: 25.0,
        },
        Observation::Gauge {
            at_h: 5.0,
            pct: 50.0,
        },
    ];
    let forecast = waste(&tank, &usage, &seen, 5.0, 85.0);

    let full = 44.0 / (44.0 - 0.5 - 0.35);
    let mut rng = fastrand::Rng::with_seed(3);
    let step = 0.1f64;
    let kept = (-step).exp();
    let mut found: Vec<(f64, f64)> = Vec::new();
    for _ in 0..30_000 {
        let mut level = 2.0 + 2.0 * normal(&mut rng);
        if level < 0.0 {
            continue;
        }
        let mut moment = normal(&mut rng);
        let mut event = normal(&mut rng);
        let memory = (-step / 12.0).exp();
        let (mut weight, mut at, mut reached) = (1.0, 0.0, None);
        let mut ticks = 0;
        while reached.is_none() && ticks < 400 {
            let pace = (0.4 * event + 0.3 * moment - 0.045).exp();
            let mean = 10.0 * full * pace * step;
            let grain: f64 = 110.0 / 300.0;
            level += (mean + (mean * grain).sqrt() * normal(&mut rng)).max(0.0);
            moment = kept * moment + (1.0 - kept * kept).sqrt() * normal(&mut rng);
            event = memory * event + (1.0 - memory * memory).sqrt() * normal(&mut rng);
            ticks += 1;
            at += step;
            if ticks == 20 {
                weight *= band(level, 12.5, 37.5);
            }
            if ticks == 50 {
                weight *= band(level, 37.5, 62.5);
            }
            if weight < 1e-4 {
                break;
            }
            if ticks >= 50 && level >= 85.0 {
                reached = Some(at);
            }
        }
        if weight >= 1e-4 {
            found.push((reached.unwrap_or(40.0), weight));
        }
    }
    found.sort_by(|a, b| a.0.total_cmp(&b.0));
    let total: f64 = found.iter().map(|f| f.1).sum();
    for (share, ours) in [
        (0.1, forecast.p10),
        (0.5, forecast.p50),
        (0.9, forecast.p90),
    ] {
        let mut below = 0.0;
        let theirs = found
            .iter()
            .find(|(_, weight)| {
                below += weight;
                below >= share * total
            })
            .expect("weights add up to their total")
            .0;
        let ours = ours.expect("reached in time");
        assert!(
            (ours - theirs).abs() < 0.35,
            "p{share}: {ours} against {theirs}"
        );
    }
}

/// The band of a reading as the forecast takes it: right 96.5 times in a hundred, else off by a step or by anything.
fn band(level: f64, low: f64, high: f64) -> f64 {
    let inside = |low: f64, high: f64| {
        let off = (low - level).max(level - high).max(0.0);
        (-off * off / 2.0).exp()
    };
    0.965 * inside(low, high) + 0.0125 * inside(low - 25.0, high + 25.0) + 0.0025
}

fn normal(rng: &mut fastrand::Rng) -> f64 {
    let radius = (-2.0 * (1.0 - rng.f64()).ln()).sqrt();
    radius * (2.0 * std::f64::consts::PI * rng.f64()).cos()
}
