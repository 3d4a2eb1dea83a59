//! What a trailer's own log teaches: how fast it is used, what a use takes, and which kind of gauge it has.
//!
//! Every answer says how sure it is and rests on the stated value as long as the log is thin. Nothing here keeps anything:
//! the same log teaches the same. One wrong figure in the log must not turn what the rest says, so each is given a chance
//! of being wrong altogether.

use super::gauge::Dial;
use super::{PRIOR_SPREAD, Tank};
use crate::fleet::{Gauge, GaugeKind};

/// How far a trailer's habit at a place lies from the promise: half of its variance goes with the trailer, half with the
/// place. How far one event lies from the habit makes it up to [`PRIOR_SPREAD`] (standard deviations of the logarithm).
/// Common practice, no source.
const HABIT_SD: f64 = 0.24;
/// How often a hauled figure tells nothing: booked on another unit, pumped half, mistyped. Common practice, no source.
const WRONG: f64 = 0.05;
/// How far such a figure may lie off (standard deviation of the logarithm).
const WRONG_SD: f64 = 1.5;
/// What a body adds to each use, gal, and how well that is known (from memory).
const BODY_GAL: f64 = 0.1;
const BODY_SD: f64 = 0.02;
/// How well gallons hauled or filled are known, as a share. Common practice, no source.
const METER_SD: f64 = 0.02;
/// How far the water a use takes may lie from the stated (standard deviation of the logarithm). Common practice, no source.
const STATED_SD: f64 = 0.35;
/// How likely the gauge is of the kind that the fleet's file states. Common practice, no source.
const STATED_KIND: f64 = 0.85;
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
    /// How well that is known, gal (standard deviation).
    pub fresh_sd_gal: f64,
    /// Waste hauled, gal.
    pub waste_gal: f64,
}

/// Learns by how much the promised use must be multiplied for a trailer at a place, and returns with it the spread to
/// forecast the next event with ([`super::Usage::prior_spread`]): from its hauls `here`, and half as much from those
/// `elsewhere`.
pub fn pace(here: &[Haul], elsewhere: &[Haul]) -> (Learned, f64) {
    let habit = HABIT_SD * HABIT_SD;
    let event = PRIOR_SPREAD * PRIOR_SPREAD - habit;
    let of_trailer = updated((0.0, habit / 2.0), &logs(elsewhere), habit / 2.0 + event);
    let logs = logs(here);
    let at_place = (of_trailer.0, of_trailer.1 + habit / 2.0);
    let (mean, variance) = updated(at_place, &logs, event);
    let sd = variance.sqrt();
    let learned = Learned {
        value: mean.exp(),
        p10: (mean - TENTH * sd).exp(),
        p90: (mean + TENTH * sd).exp(),
        entries: logs.len() + elsewhere.len(),
    };
    (learned, (variance + event).sqrt())
}

/// The logarithms of what was hauled over what was promised.
fn logs(hauls: &[Haul]) -> Vec<f64> {
    let logs = hauls
        .iter()
        .filter(|haul| haul.promised_gal > 0.0 && haul.hauled_gal > 0.0)
        .map(|haul| (haul.hauled_gal / haul.promised_gal).ln());
    logs.filter(|log| log.is_finite()).collect()
}

/// Brings a mean and its variance up to date with observations of the same variance each, any of which may be wrong: the
/// posterior is summed over a grid, so that one far off pulls less the further off it is.
fn updated((mean, variance): (f64, f64), logs: &[f64], noise: f64) -> (f64, f64) {
    if logs.is_empty() {
        return (mean, variance);
    }
    const PARTS: usize = 60;
    let (sd, wild) = (variance.sqrt(), noise + WRONG_SD * WRONG_SD);
    let normal = |off: f64, variance: f64| (-off * off / (2.0 * variance)).exp() / variance.sqrt();
    let (mut total, mut first, mut second) = (0.0, 0.0, 0.0);
    for i in 0..=PARTS {
        let z = 9.0 * (i as f64 / PARTS as f64 - 0.5);
        let at = mean + z * sd;
        let mut odds = -z * z / 2.0;
        for log in logs {
            let right = (1.0 - WRONG) * normal(log - at, noise);
            odds += (right + WRONG * normal(log - mean, wild)).ln();
        }
        // the height of one observation at most, so that many of them do not underflow
        let weight = (odds + logs.len() as f64 * noise.sqrt().ln()).exp();
        total += weight;
        first += weight * at;
        second += weight * at * at;
    }
    if total <= 0.0 || !total.is_finite() {
        return (mean, variance);
    }
    let mean = first / total;
    (mean, (second / total - mean * mean).max(1e-6))
}

/// Learns the water one use takes, gal, from fresh in against waste out: waste is g + b a use and fresh is g, so out over in
/// is 1 + b/g, with b what a body adds. An entry that no such use explains is wrong and left alone.
pub fn gallons_per_use(stated_gal: f64, log: &[InAndOut]) -> Learned {
    let stated = if stated_gal.is_finite() {
        stated_gal.clamp(0.05, 10.0)
    } else {
        1.0
    };
    let ratios: Vec<(f64, f64)> = log
        .iter()
        .filter(|entry| entry.fresh_gal > 0.0 && entry.waste_gal > 0.0)
        .map(|entry| {
            let share = (entry.fresh_sd_gal / entry.fresh_gal).abs();
            let ratio = entry.waste_gal / entry.fresh_gal;
            (ratio, 2.0 * METER_SD * METER_SD + share * share)
        })
        .filter(|(ratio, share)| ratio.is_finite() && share.is_finite())
        .collect();
    const PARTS: usize = 120;
    // What the body adds is one and the same in all entries: it is summed over, outside the product over entries. Many
    // entries fix out over in so well that a few coarse values of it would stand as lumps in the answer.
    const BODIES: usize = 25;
    let bodies: [(f64, f64); BODIES] = std::array::from_fn(|i| {
        let off = 6.0 * (i as f64 / (BODIES - 1) as f64 - 0.5);
        (off, -off * off / 2.0)
    });
    let grid: Vec<(f64, f64)> = (0..=PARTS)
        .map(|i| {
            let z = 8.0 * (i as f64 / PARTS as f64 - 0.5);
            let gal = stated * (z * STATED_SD).exp();
            let seen = bodies.map(|(off, weight)| {
                let expected = 1.0 + (BODY_GAL + off * BODY_SD) / gal;
                let odds = ratios.iter().map(|(ratio, share)| {
                    let sd = share.sqrt() * expected;
                    let off = (ratio - expected) / sd;
                    ((1.0 - WRONG) * (-off * off / 2.0).exp() / sd + WRONG).ln()
                });
                weight + odds.sum::<f64>()
            });
            let most = seen.iter().copied().fold(f64::MIN, f64::max);
            let sum: f64 = seen.iter().map(|odds| (odds - most).exp()).sum();
            (gal, -z * z / 2.0 + most + sum.ln())
        })
        .collect();
    let top = grid.iter().map(|g| g.1).fold(f64::MIN, f64::max);
    let total: f64 = grid.iter().map(|g| (g.1 - top).exp()).sum();
    let at = |share: f64| {
        let mut below = 0.0;
        for &(gal, odds) in &grid {
            below += (odds - top).exp() / total;
            if below >= share {
                return gal;
            }
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
/// where nothing tells, as likely as the stated kind makes it. The step is taken as stated.
pub fn lamps(tank: &Tank, shown_and_hauled: &[(f64, f64)]) -> f64 {
    let dial = |kind| {
        let gauge = Gauge { kind, ..tank.gauge };
        Dial::new(tank.shape, gauge, false)
    };
    let (lamps, sight) = (dial(GaugeKind::Lamps), dial(GaugeKind::Sight));
    let mut log_odds = (STATED_KIND / (1.0 - STATED_KIND)).ln();
    if tank.gauge.kind == GaugeKind::Sight {
        log_odds = -log_odds;
    }
    for &(shown, hauled) in shown_and_hauled {
        if !(shown.is_finite() && hauled.is_finite() && tank.capacity_gal > 0.0) {
            continue;
        }
        let level = 100.0 * hauled / tank.capacity_gal;
        let odds = |dial: &Dial| {
            let seen = dial.shown(shown, 0.0);
            let known = Dial::known(level, true);
            let pairs = seen.all.iter().zip(&known.sound);
            let seen = f64::from(pairs.map(|(a, b)| a * b).sum::<f32>());
            let all = f64::from(known.sound.iter().sum::<f32>());
            // one figure in twenty may be wrong altogether, and then tells nothing of the gauge
            (1.0 - WRONG) * seen / all.max(1e-9) + WRONG * 0.25
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
        let (learned, spread) = pace(&[], &[]);
        assert_eq!((learned.value, learned.entries), (1.0, 0));
        assert!((spread - PRIOR_SPREAD).abs() < 1e-9);
        let gal = gallons_per_use(0.8, &[]);
        assert!((gal.value - 0.8).abs() < 0.02 && gal.p10 < 0.55 && gal.p90 > 1.2);
    }

    fn haul(hauled_gal: f64) -> Haul {
        Haul {
            promised_gal: 200.0,
            hauled_gal,
        }
    }

    #[test]
    fn a_trailer_that_always_fills_faster_is_learned_and_known_better() {
        let (one, _) = pace(&[haul(280.0)], &[]);
        let (ten, spread) = pace(&[haul(280.0); 10], &[]);
        assert!(1.05 < one.value && one.value < ten.value && ten.value < 1.4);
        assert!(ten.p90 / ten.p10 < one.p90 / one.p10);
        assert!(spread < PRIOR_SPREAD);
        // Normal with known variances: mean = (n/e) / (1/h + n/e) of the observed, here ln 1.4; the chance of a wrong figure
        // takes a little off.
        let (h, e) = (HABIT_SD.powi(2), PRIOR_SPREAD.powi(2) - HABIT_SD.powi(2));
        let share = (10.0 / e) / (1.0 / h + 10.0 / e);
        assert!((ten.value.ln() - share * 1.4f64.ln()).abs() < 0.01);
    }

    #[test]
    fn one_wrong_figure_does_not_turn_what_nine_say() {
        let mut hauls = vec![haul(260.0); 9];
        let (right, _) = pace(&hauls, &[]);
        for wrong in [26.0, 2600.0] {
            hauls.push(haul(wrong));
            let (with, _) = pace(&hauls, &[]);
            hauls.pop();
            assert!((with.value / right.value - 1.0).abs() < 0.03, "{with:?}");
            // a plain mean would be off by a fifth
        }
    }

    #[test]
    fn other_places_teach_half_of_it() {
        let (none, _) = pace(&[], &[]);
        let (elsewhere, wide) = pace(&[], &[haul(280.0); 20]);
        let (here, narrow) = pace(&[haul(280.0); 20], &[]);
        assert!(none.value < elsewhere.value && elsewhere.value < here.value);
        assert!(narrow < wide && wide < PRIOR_SPREAD);
    }

    fn entry(waste_gal: f64) -> InAndOut {
        InAndOut {
            fresh_gal: 100.0,
            fresh_sd_gal: 2.0,
            waste_gal,
        }
    }

    #[test]
    fn fresh_in_against_waste_out_tells_the_water_a_use_takes() {
        // 0.4 gal a use and 0.1 of body: 125 gal out for every 100 in.
        let learned = gallons_per_use(1.0, &[entry(125.0); 12]);
        assert!((0.32..0.52).contains(&learned.value), "{learned:?}");
        assert!(learned.p90 < 0.8);
        let odd = InAndOut {
            fresh_gal: f64::NAN,
            ..entry(0.0)
        };
        assert_eq!(gallons_per_use(1.0, &[odd]).entries, 0);
        let mut log = vec![entry(125.0); 8];
        log.push(entry(300.0));
        let with = gallons_per_use(1.0, &log);
        assert!((0.3..0.55).contains(&with.value), "{with:?}");
    }

    #[test]
    fn hauled_gallons_tell_lamps_from_marks() {
        let tank = |kind| Tank {
            capacity_gal: 400.0,
            shape: TankShape::Box,
            gauge: Gauge {
                kind,
                step_pct: 25.0,
            },
        };
        let (marks, floor) = (tank(GaugeKind::Sight), tank(GaugeKind::Lamps));
        assert!((lamps(&marks, &[]) - (1.0 - STATED_KIND)).abs() < 1e-12);
        assert!((lamps(&floor, &[]) - STATED_KIND).abs() < 1e-12);
        // Shown 50 %: 276 gal is 69 %, which only a floor shows as a half; 168 gal is 42 %, which only the nearest does.
        assert!(lamps(&marks, &[(50.0, 276.0); 2]) > 0.9);
        assert!(lamps(&floor, &[(50.0, 168.0); 2]) < 0.1);
        // 228 gal is 57 %: both show it as a half
        assert!((lamps(&floor, &[(50.0, 228.0)]) - STATED_KIND).abs() < 0.1);
    }
}
