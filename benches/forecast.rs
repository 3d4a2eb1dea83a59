//! What one tank forecast costs: in an evening's event with a few readings, and in the midst of a long stay.
#![allow(missing_docs)]

use std::hint::black_box;

use criterion::{Criterion, criterion_group, criterion_main};
use hosebib::fleet::{Gauge, GaugeKind, TankShape};
use hosebib::physics::forecast::{Observation, PRIOR_SPREAD, Tank, Usage, waste};

fn tank() -> Tank {
    Tank {
        capacity_gal: 500.0,
        shape: TankShape::Cylinder {
            diameter_in: 36.0,
            length_in: 113.5,
        },
        gauge: Gauge {
            kind: GaugeKind::Sight,
            step_pct: 12.5,
        },
    }
}

fn forecast(c: &mut Criterion) {
    let evening: Vec<_> = [(-1.0, 0.0), (1.5, 12.5), (3.0, 25.0), (5.0, 50.0)]
        .map(|(at_h, pct)| Observation::Gauge { at_h, pct })
        .to_vec();
    let usage = |open, prior_pct_per_h| Usage {
        prior_pct_per_h,
        prior_spread: PRIOR_SPREAD,
        gal_per_use: 1.1,
        open,
        guests: &[(0.0, 200.0)],
    };
    c.bench_function("forecast/evening", |b| {
        b.iter(|| {
            waste(
                &tank(),
                &usage(&[(0.0, 12.0)], 10.0),
                black_box(&evening),
                5.0,
                85.0,
            )
        });
    });

    let days: Vec<_> = (0..46)
        .map(|day| (24.0 * f64::from(day), 24.0 * f64::from(day) + 11.0))
        .collect();
    let stay: Vec<_> = (0..24)
        .map(|i| Observation::Gauge {
            at_h: 240.0 + 3.0 * f64::from(i),
            pct: 12.5 * f64::from(i / 6),
        })
        .collect();
    c.bench_function("forecast/long stay", |b| {
        b.iter(|| waste(&tank(), &usage(&days, 1.2), black_box(&stay), 312.0, 85.0));
    });
}

criterion_group!(benches, forecast);
criterion_main!(benches);
