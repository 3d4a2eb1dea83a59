//! What holds for any input.

use hosebib::fleet::{Gauge, GaugeKind, TankShape};
use hosebib::physics::forecast::{Observation, Tank, Usage, fresh, waste};
use proptest::prelude::*;

use super::{events, p50, read, usage};

fn shape() -> impl Strategy<Value = TankShape> {
    prop_oneof![
        Just(TankShape::Box),
        Just(TankShape::Cylinder {
            diameter_in: 36.0,
            length_in: 96.0
        })
    ]
}

fn anything() -> impl Strategy<Value = f64> {
    prop_oneof![
        5 => -50.0..150.0f64,
        1 => proptest::num::f64::ANY,
        1 => Just(0.0),
    ]
}

fn observation() -> impl Strategy<Value = Observation> {
    prop_oneof![
        4 => (anything(), anything()).prop_map(|(at_h, pct)| Observation::Gauge { at_h, pct }),
        1 => (anything(), anything()).prop_map(|(at_h, gal)| Observation::Gallons { at_h, gal }),
        1 => (anything(), proptest::option::of(anything()))
            .prop_map(|(at_h, gal)| Observation::Pumped { at_h, gal }),
        1 => anything().prop_map(|at_h| Observation::Filled { at_h }),
        1 => anything().prop_map(|at_h| Observation::Drained { at_h }),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    #[test]
    fn any_input_gives_a_forecast_in_order_and_the_same_again(
        capacity_gal in anything(),
        shape in shape(),
        lamps in any::<bool>(),
        step_pct in anything(),
        prior_pct_per_h in anything(),
        prior_spread in anything(),
        gal_per_use in anything(),
        open in proptest::collection::vec((anything(), anything()), 0..4),
        guests in proptest::collection::vec((anything(), anything()), 0..4),
        seen in proptest::collection::vec(observation(), 0..8),
        now_h in anything(),
        limit in anything(),
        falls in any::<bool>(),
    ) {
        let kind = if lamps { GaugeKind::Lamps } else { GaugeKind::Sight };
        let tank = Tank { capacity_gal, shape, gauge: Gauge { kind, step_pct } };
        let usage = Usage { prior_pct_per_h, prior_spread, gal_per_use, open: &open, guests: &guests };
        let ask = if falls { fresh } else { waste };
        let forecast = ask(&tank, &usage, &seen, now_h, limit);
        let now = if now_h.is_finite() { now_h } else { 0.0 };
        let mut last = now;
        for at in [forecast.p10, forecast.p50, forecast.p90].into_iter().flatten() {
            prop_assert!(at >= last && at <= now + 72.0 + 1e-6, "{forecast:?}");
            last = at;
        }
        prop_assert!(forecast.p10.is_some() || forecast.p50.is_none());
        prop_assert!(forecast.p50.is_some() || forecast.p90.is_none());
        let level = forecast.level_now;
        prop_assert!(0.0 <= level.p10 && level.p10 <= level.p50 && level.p50 <= level.p90 && level.p90 <= 100.0);
        prop_assert!(forecast.rate_pct_h >= 0.0 && forecast.rate_pct_h.is_finite());
        prop_assert!((0.0..=1.0).contains(&forecast.chance));
        prop_assert_eq!(&forecast, &ask(&tank, &usage, &seen, now_h, limit));
    }

    /// Among readings that the job makes likely; a wild one is taken for a misreading, and the wilder the more so.
    #[test]
    fn a_higher_reading_never_gives_a_later_median(
        prior in 6.0..20.0f64,
        at_h in 2.0..6.0f64,
        lamps in any::<bool>(),
        quarters in any::<bool>(),
        shape in shape(),
    ) {
        let kind = if lamps { GaugeKind::Lamps } else { GaugeKind::Sight };
        let step_pct = if quarters { 25.0 } else { 12.5 };
        let tank = Tank { capacity_gal: 400.0, shape, gauge: Gauge { kind, step_pct } };
        let likely = waste(&tank, &usage(prior), &[], at_h, 85.0).level_now;
        let mut before = f64::INFINITY;
        let mut mark = 0.0;
        while mark <= 100.0 {
            let forecast = waste(&tank, &usage(prior), &[read(at_h, mark)], at_h, 85.0);
            let level = events::volume_pct(shape, mark);
            if likely.p10 < level && level < likely.p90 {
                let median = p50(&forecast);
                prop_assert!(median <= before + 0.02, "{mark}: {median} after {before}");
                before = median;
            }
            mark += step_pct;
        }
    }
}
