//! What a trailer's own log teaches: how fast it is used, what a use takes, and which kind of gauge it has.
//!
//! Every answer says how sure it is and rests on the stated value as long as the log is thin. Nothing here keeps anything:
//! the same log teaches the same.

use super::gauge::Dial;
use super::{PRIOR_SPREAD, Tank};
use crate::fleet::{Gauge, GaugeKind};

/// How far one trailer's habit at a place lies from the promise, and how far one event lies from its habit (standard
/// deviations of the logarithm; together they are [`PRIOR_SPREAD`]). Common practice, no source.
const HABIT_SD: f64 = 0.24;
/// What a body adds to each use, gal, and how well that is known (from memory).
const BODY_GAL: f64 = 0.1;
const BODY_SD: f64 = 0.02;
/// How well gallons hauled or filled are known, as a share. Common practice, no source.
const METER_SD: f64 = 0.02;
/// How far the water a use takes may lie from the stated (standard deviation of the logarithm). Common practice, no source.
const STATED_SD: f64 = 0.35;
/// One standard deviation's worth of a tenth in a normal distribution.
const TENTH: f64 = 1.281_551_6;

/// Something learned, with how sure it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Learned {
    /// The best value.
    pub value: f64,
    /// One chance in ten that it is less.
    pub p10: f64,
    /// One chance in ten that it is more.
    pub p90: f64,
    /// How many entries of the log it rests on.
    pub entries: usize,
}

/// A pump-out whose start was empty and whose gallons were told.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Haul {
    /// What the job promised since the tank was last empty, gal ([`super::promised_pct`] of the tank).
    pub promised_gal: f64,
    /// What was hauled, gal.
    pub hauled_gal: f64,
}

/// Fresh water used and waste hauled over the same time, on tank water alone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct InAndOut {
    /// Fresh water used, gal.
    pub fresh_gal: f64,
    /// Waste hauled, gal.
    pub waste_gal: f64,
}

/// Learns by how much the promised use must be multiplied, and returns with it the spread to forecast the next event with
/// ([`super::Usage::prior_spread`]). Normal in the logarithm: habit and event are told apart by their known spreads.
pub fn pace(hauls: &[Haul]) -> (Learned, f64) {
    let logs: Vec<f64> = hauls
        .iter()
        .filter(|haul| haul.promised_gal > 0.0 && haul.hauled_gal > 0.0)
        .map(|haul| (haul.hauled_gal / haul.promised_gal).ln())
        .filter(|log| log.is_finite())
        // An event this far off was booked wrong, pumped half, or not this trailer's.
        .map(|log| log.clamp(-1.5, 1.5))
        .collect();
    let habit = HABIT_SD * HABIT_SD;
    let event = PRIOR_SPREAD * PRIOR_SPREAD - habit;
    let variance = 1.0 / (1.0 / habit + logs.len() as f64 / event);
    let mean = variance * logs.iter().sum::<f64>() / event;
    let sd = variance.sqrt();
    let learned = Learned {
        value: mean.exp(),
        p10: (mean - TENTH * sd).exp(),
        p90: (mean + TENTH * sd).exp(),
        entries: logs.len(),
    };
    (learned, (variance + event).sqrt())
}

/// Learns the water one use takes, gal, from fresh in against waste out: waste is g + b a use and fresh is g, so out over in
/// is 1 + b/g, with b what a body adds.
pub fn gallons_per_use(stated_gal: f64, log: &[InAndOut]) -> Learned {
    let stated = if stated_gal.is_finite() {
        stated_gal.clamp(0.05, 10.0)
    } else {
        1.0
    };
    let ratios: Vec<f64> = log
        .iter()
        .filter(|entry| entry.fresh_gal > 0.0 && entry.waste_gal > 0.0)
        .map(|entry| entry.waste_gal / entry.fresh_gal)
        .filter(|ratio| ratio.is_finite())
        .collect();
    // What the body adds is one and the same in all entries, so the readings' own errors average out and its does not.
    let count = ratios.len() as f64;
    let mean = ratios.iter().sum::<f64>() / count.max(1.0);
    const PARTS: usize = 120;
    let grid: Vec<(f64, f64)> = (0..=PARTS)
        .map(|i| {
            let z = 8.0 * (i as f64 / PARTS as f64 - 0.5);
            let gal = stated * (z * STATED_SD).exp();
            let mut log_odds = -z * z / 2.0;
            if count > 0.0 {
                let expected = 1.0 + BODY_GAL / gal;
                let meter = 2.0 * (METER_SD * expected).powi(2) / count;
                let variance = meter + (BODY_SD / gal).powi(2);
                log_odds -= (mean - expected).powi(2) / (2.0 * variance) + variance.ln() / 2.0;
            }
            (gal, log_odds)
        })
        .collect();
    let top = grid.iter().map(|g| g.1).fold(f64::MIN, f64::max);
    let total: f64 = grid.iter().map(|g| (g.1 - top).exp()).sum();
    let at = |share: f64| {
        let mut below = 0.0;
        for pair in grid.windows(2) {
            let next = below + (pair[0].1 - top).exp() / total;
            if next >= share {
                return pair[0].0;
            }
            below = next;
        }
        grid[PARTS].0
    };
    Learned {
        value: at(0.5),
        p10: at(0.1),
        p90: at(0.9),
        entries: ratios.len(),
    }
}

/// Returns how likely the gauge is lamps, 0 to 1, from what it showed (% of depth) just before so many gallons were hauled;
/// 0.5 where nothing tells. The step is taken as stated.
pub fn lamps(tank: &Tank, shown_and_hauled: &[(f64, f64)]) -> f64 {
    let dial = |kind| {
        let gauge = Gauge { kind, ..tank.gauge };
        Dial::new(tank.shape, gauge, false)
    };
    let (lamps, sight) = (dial(GaugeKind::Lamps), dial(GaugeKind::Sight));
    let mut log_odds = 0.0;
    for &(shown, hauled) in shown_and_hauled {
        if !(shown.is_finite() && hauled.is_finite() && tank.capacity_gal > 0.0) {
            continue;
        }
        let level = 100.0 * hauled / tank.capacity_gal;
        let odds = |dial: &Dial| {
            let seen = dial.shown(shown, 0.0);
            let known = Dial::known(level, true);
            let pairs = seen.all.iter().zip(&known.sound);
            f64::from(pairs.map(|(a, b)| a * b).sum::<f32>()) + 1e-9
        };
        log_odds += (odds(&lamps) / odds(&sight)).ln();
    }
    1.0 / (1.0 + (-log_odds).exp())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fleet::TankShape;

    #[test]
    fn with_no_log_the_stated_value_stands() {
        let (learned, spread) = pace(&[]);
        assert_eq!((learned.value, learned.entries), (1.0, 0));
        assert!((spread - PRIOR_SPREAD).abs() < 1e-9);
        let gal = gallons_per_use(0.8, &[]);
        assert!((gal.value - 0.8).abs() < 0.02 && gal.p10 < 0.55 && gal.p90 > 1.2);
    }

    #[test]
    fn a_trailer_that_always_fills_faster_is_learned_and_known_better() {
        let haul = Haul {
            promised_gal: 200.0,
            hauled_gal: 280.0,
        };
        let (one, _) = pace(&[haul]);
        let (ten, spread) = pace(&[haul; 10]);
        assert!(1.05 < one.value && one.value < ten.value && ten.value < 1.4);
        assert!(ten.p90 / ten.p10 < one.p90 / one.p10);
        assert!(spread < PRIOR_SPREAD);
        // Normal with known variances: mean = (n/e) / (1/h + n/e) of the observed, here ln 1.4.
        let (h, e) = (HABIT_SD.powi(2), PRIOR_SPREAD.powi(2) - HABIT_SD.powi(2));
        let share = (10.0 / e) / (1.0 / h + 10.0 / e);
        assert!((ten.value.ln() - share * 1.4f64.ln()).abs() < 1e-9);
    }

    #[test]
    fn fresh_in_against_waste_out_tells_the_water_a_use_takes() {
        // 0.4 gal a use and 0.1 of body: 125 gal out for every 100 in.
        let entry = InAndOut {
            fresh_gal: 100.0,
            waste_gal: 125.0,
        };
        let learned = gallons_per_use(1.0, &[entry; 12]);
        assert!((0.32..0.52).contains(&learned.value), "{learned:?}");
        assert!(learned.p90 < 0.8);
        let odd = InAndOut {
            fresh_gal: f64::NAN,
            waste_gal: 0.0,
        };
        assert_eq!(gallons_per_use(1.0, &[odd]).entries, 0);
    }

    #[test]
    fn hauled_gallons_tell_lamps_from_marks() {
        let tank = Tank {
            capacity_gal: 400.0,
            shape: TankShape::Box,
            gauge: Gauge {
                kind: GaugeKind::Sight,
                step_pct: 25.0,
            },
        };
        // Shown 50 %: 276 gal is 69 %, which only a floor shows as a half; 168 gal is 42 %, which only the nearest does.
        assert!(lamps(&tank, &[(50.0, 276.0)]) > 0.9);
        assert!(lamps(&tank, &[(50.0, 168.0)]) < 0.1);
        assert!((lamps(&tank, &[]) - 0.5).abs() < 1e-12);
        assert!((lamps(&tank, &[(50.0, 228.0)]) - 0.5).abs() < 0.1);
    }
}
