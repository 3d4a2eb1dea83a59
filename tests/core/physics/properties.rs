//! What must hold everywhere: more hose less pressure, colder sooner, and no answer that is not a number.

use hosebib::physics::battery::{self, Bank, Living};
use hosebib::physics::cold::{self, Pipe};
use hosebib::physics::kalman::{self, LevelFilter};
use hosebib::physics::sum::{self, Input, Kind};
use hosebib::physics::tank;
use hosebib::physics::units::*;
use hosebib::physics::water::{self, Line};
use hosebib::physics::{crowd, power};
use proptest::prelude::*;
use serde_json::{Map, Value, json};

/// Picks a value for an input from three numbers in 0..1, the ends of the range more often than chance would.
fn pick(input: &Input, at: &mut impl Iterator<Item = f64>) -> Value {
    let mut number = |low: f64, high: f64| {
        let share = at.next().unwrap_or(0.5);
        match share {
            s if s < 0.1 => low,
            s if s > 0.9 => high,
            // most ranges span decades and most use lies near their low end
            s => low + (high - low) * s.powi(4),
        }
    };
    match input.kind {
        Kind::Number(low, high) => json!(number(low, high)),
        Kind::Whole(low, high) => json!(number(low, high).round()),
        Kind::Flag => json!(number(0.0, 1.0).round()),
        Kind::Word(words) => json!(words[(number(0.0, words.len() as f64 - 0.01)) as usize]),
        Kind::Text => json!("shock"),
        Kind::List(low, high, len) => {
            let list: Vec<f64> = (0..len.unwrap_or(3)).map(|_| number(low, high)).collect();
            json!(list)
        }
        Kind::Rows(columns, len) => {
            let row = |number: &mut dyn FnMut(f64, f64) -> f64| -> Vec<f64> {
                columns
                    .iter()
                    .map(|(low, high)| number(*low, *high))
                    .collect()
            };
            let rows: Vec<Vec<f64>> = (0..len.unwrap_or(3)).map(|_| row(&mut number)).collect();
            json!(rows)
        }
    }
}

/// Tells whether an answer is a number, a code, null or a list of numbers: JSON holds no NaN, so a lost one shows as null
/// inside a list or where null has no meaning.
fn sound(value: &Value) -> bool {
    match value {
        Value::Number(number) => number.as_f64().is_some_and(f64::is_finite),
        Value::Array(items) => items.iter().all(Value::is_number),
        Value::String(_) => true,
        _ => false,
    }
}

/// Quantities for which null means never.
const MAY_BE_NEVER: [&str; 14] = [
    "fill_time_min",
    "breaker_must_trip_s",
    "battery_hours_at_uses",
    "fresh_hours_at_uses",
    "tank_hours_to_32F",
    "tank_hours_more_to_10pct_ice",
    "pipe_hours_to_32F",
    "pipe_hours_more_to_solid",
    "ashrae_pipe_hours",
    "hose_hours_to_32F",
    "hose_hours_to_blocked",
    "hose_hours_to_solid",
    "waste_hours_to_stop",
    "hours_until_must_book",
];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn no_quantity_is_ever_not_a_number(at in prop::collection::vec(0.0..1.0_f64, 64)) {
        for (_, quantities) in sum::registry() {
            for quantity in *quantities {
                let mut shares = at.iter().copied().cycle();
                let inputs: Map<String, Value> = quantity
                    .inputs
                    .iter()
                    .map(|input| (input.name.to_owned(), pick(input, &mut shares)))
                    .collect();
                // inputs impossible together are refused in words
                if let Ok(answer) = sum::answer(quantity.name, &inputs) {
                    let never = ["fresh_hours", "hours_to_level_quantile"].contains(&quantity.name)
                        || MAY_BE_NEVER.contains(&quantity.name);
                    prop_assert!(
                        sound(&answer.value) || (never && answer.value.is_null()),
                        "{} {:?} is {}", quantity.name, inputs, answer.value
                    );
                }
            }
        }
    }

    #[test]
    fn a_longer_or_thinner_hose_leaves_less(
        length in 1.0..500.0_f64, more in 1.0..500.0_f64,
        bore in 0.4..2.0_f64, flow in 0.1..40.0_f64, supply in 20.0..120.0_f64,
    ) {
        let line = |length, bore| Line::new(ft(length), inch(bore), ft(0.0));
        let left = |line: Line| in_psi(water::residual(psi(supply), &line, gpm(flow)));
        prop_assert!(left(line(length + more, bore)) < left(line(length, bore)));
        prop_assert!(left(line(length, bore * 0.9)) < left(line(length, bore)));
        let most = |line: Line| in_gpm(water::max_flow(psi(supply), &line, psi(10.0)));
        prop_assert!(most(line(length + more, bore)) <= most(line(length, bore)));
    }

    #[test]
    fn the_most_flow_leaves_just_what_was_asked(
        length in 1.0..500.0_f64, bore in 0.4..2.0_f64, rise in -20.0..20.0_f64, supply in 40.0..120.0_f64,
    ) {
        let line = Line::new(ft(length), inch(bore), ft(rise));
        let flow = water::max_flow(psi(supply), &line, psi(20.0));
        let left = in_psi(water::residual(psi(supply), &line, flow));
        prop_assert!((left - 20.0).abs() < 1e-3, "{left}");
    }

    #[test]
    fn mixed_demand_lies_between_nothing_and_everything(
        stalls in 0_u32..40, sinks in 0_u32..40, q in 0.5..0.999_f64,
    ) {
        let groups = water::trailer_fixtures(stalls, sinks);
        let flow = in_gpm(water::mixed_demand(&groups, q));
        let all = 3.0 * f64::from(stalls) + 0.5 * f64::from(sinks);
        prop_assert!((0.0..=all).contains(&flow));
        let more = in_gpm(water::mixed_demand(&water::trailer_fixtures(stalls + 1, sinks), q));
        prop_assert!(more >= flow);
        // one kind alone is the binomial quantile
        let alone = in_gpm(water::mixed_demand(&groups[..1], q));
        let fixtures = water::simultaneous_fixtures(stalls, 0.2, q);
        prop_assert_eq!(alone, 3.0 * f64::from(fixtures));
    }

    #[test]
    fn more_amps_or_a_thinner_cord_drop_more(
        current in 0.1..60.0_f64, more in 0.1..20.0_f64, length in 1.0..500.0_f64,
    ) {
        let drop = |current, awg| {
            in_volts(power::cord_drop(amps(current), ft(length), awg).unwrap())
        };
        prop_assert!(drop(current + more, 12) > drop(current, 12));
        prop_assert!(drop(current, 14) > drop(current, 12));
        let longest = power::max_cord_length(amps(current), 12, 5.0, volts(120.0)).unwrap();
        let pct = power::cord_drop_pct(amps(current), longest, 12, volts(120.0)).unwrap();
        prop_assert!((pct - 5.0).abs() < 1e-6);
    }

    #[test]
    fn a_busier_or_smaller_battery_dies_sooner(
        uses in 0.1..300.0_f64, more in 0.1..100.0_f64, ah in 40.0..400.0_f64,
    ) {
        let hours = |ah, uses| {
            let bank = Bank { amp_hours: ah, ..Bank::default() };
            in_hours(battery::hours_at_uses(&bank, &Living::default(), uses).unwrap())
        };
        prop_assert!(hours(ah, uses + more) < hours(ah, uses));
        prop_assert!(hours(ah + 10.0, uses) > hours(ah, uses));
    }

    #[test]
    fn colder_windier_and_barer_freeze_sooner(
        air in -40.0..30.0_f64, colder in 0.5..10.0_f64, wind in 0.0..40.0_f64, bore in 0.5..1.5_f64,
    ) {
        let time = |air, wind, foam| {
            let hose = Pipe::hose(inch(bore), inch(foam));
            cold::standing_hose(&hose, deg_f(50.0), deg_f(air), mph(wind)).unwrap()
        };
        let now = time(air, wind, 0.25);
        prop_assert!(now.to_32f < now.blocked && now.blocked < now.solid);
        prop_assert!(time(air - colder, wind, 0.25).to_32f < now.to_32f);
        prop_assert!(time(air, wind, 0.5).to_32f > now.to_32f);
        // a breath of wind is no worse than still air
        prop_assert!(time(air, wind + 5.0, 0.25).to_32f <= now.to_32f);
    }

    #[test]
    fn wind_only_ever_chills(air in -45.0..50.0_f64, wind in 3.0..80.0_f64) {
        let chill = in_deg_f(cold::wind_chill(deg_f(air), mph(wind)));
        let stronger = in_deg_f(cold::wind_chill(deg_f(air), mph(wind + 2.0)));
        prop_assert!(stronger < chill + 1e-9);
    }

    #[test]
    fn a_cylinders_depth_and_fill_turn_round(depth in 0.0..1.0_f64) {
        let back = tank::cylinder_depth(tank::cylinder_fill(depth));
        prop_assert!((back - depth).abs() < 1e-6, "{depth} came back as {back}");
        prop_assert!((tank::cylinder_fill(1.0 - depth) - (1.0 - tank::cylinder_fill(depth))).abs() < 1e-9);
    }

    #[test]
    fn one_stall_more_never_waits_longer(
        stalls in 1_u32..30, arrivals in 0.0..600.0_f64, limit in 1.0..600.0_f64,
    ) {
        let wait = |stalls| {
            crowd::mean_wait(stalls, arrivals, seconds(90.0)).map_or(f64::INFINITY, in_seconds)
        };
        prop_assert!(wait(stalls + 1) <= wait(stalls));
        let least = crowd::servers_for_mean_wait(arrivals, seconds(90.0), seconds(limit)).unwrap();
        prop_assert!(wait(least) <= limit);
        prop_assert!(least == 1 || wait(least - 1) > limit);
    }

    #[test]
    fn readings_only_make_a_level_surer(
        readings in prop::collection::vec(0.0..100.0_f64, 1..8), step in 5.0..33.0_f64,
    ) {
        let start = LevelFilter { level: 2.0, rate: 5.0, var_level: 4.0, cov: 0.0, var_rate: 4.0, q: 0.02 };
        let mut filter = start;
        let timed: Vec<(f64, f64)> =
            readings.iter().enumerate().map(|(i, reading)| (i as f64 + 1.0, *reading)).collect();
        filter.follow(&timed, step);
        prop_assert!(filter.var_level > 0.0 && filter.var_level <= kalman::quantisation_var(step) + 1e-9);
        prop_assert!(filter.cov * filter.cov <= filter.var_level * filter.var_rate * (1.0 + 1e-9));
        let quantile = |p| filter.time_to(85.0, p).map_or(f64::INFINITY, in_hours);
        prop_assert!(quantile(0.1) <= quantile(0.5) && quantile(0.5) <= quantile(0.9));
    }

    #[test]
    fn a_cut_prior_stays_within_its_band(
        mean in -50.0..150.0_f64, sd in 0.1..60.0_f64, low in 0.0..90.0_f64, width in 1.0..25.0_f64,
    ) {
        let cut = kalman::interval_posterior_mean(mean, sd, low, low + width);
        prop_assert!((low..=low + width).contains(&cut), "{cut}");
    }
}
