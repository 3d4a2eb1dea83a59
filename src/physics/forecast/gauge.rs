//! What a reading says about the level: a band, soft at its edges, with room for a misreading.

use super::grid::{CELL_PCT, CELLS};
use crate::fleet::model::{Gauge, GaugeKind, TankShape};

/// Softness of a band's edges, % of depth.
const SKIRT_PCT: f64 = 1.0;
/// How often a reading is off by one step either way, and how often by anything. Common practice, no source.
const OFF_BY_ONE: f64 = 0.025;
const OFF_BY_ANY: f64 = 0.01;
/// How well a stated or hauled number of gallons is known, % of the tank. Common practice, no source.
const HAULED_SD_PCT: f64 = 2.0;
const STATED_SD_PCT: f64 = 4.0;

/// How likely a reading is at each level, in all and without a mistake.
pub(super) struct Likelihood {
    pub(super) all: [f32; CELLS],
    pub(super) sound: [f32; CELLS],
}

/// A gauge on its tank, with the depth at each level worked out once.
pub(super) struct Dial {
    depth: [f64; CELLS],
    kind: GaugeKind,
    step: f64,
}

impl Dial {
    /// `falls` is for a tank whose use is counted from full: level 0 of the grid is then the full tank.
    pub(super) fn new(shape: TankShape, gauge: Gauge, falls: bool) -> Self {
        let mut depth = [0.0; CELLS];
        let inverse = Inverse::new(shape);
        for (i, depth) in depth.iter_mut().enumerate() {
            let level = i as f64 * CELL_PCT;
            *depth = inverse.depth(if falls { 100.0 - level } else { level });
        }
        let step = if gauge.step_pct.is_finite() {
            gauge.step_pct.clamp(1.0, 100.0)
        } else {
            25.0
        };
        Dial {
            depth,
            kind: gauge.kind,
            step,
        }
    }

    /// The step between two marks, % of depth.
    pub(super) fn step(&self) -> f64 {
        self.step
    }

    /// The depth at a level of the grid, %, where the level need not be a cell's.
    pub(super) fn depth_at(&self, level_pct: f64) -> f64 {
        let at = (level_pct / CELL_PCT).clamp(0.0, (CELLS - 1) as f64);
        let cell = (at as usize).min(CELLS - 2);
        let part = at - cell as f64;
        self.depth[cell] * (1.0 - part) + self.depth[cell + 1] * part
    }

    /// The depths that a shown figure stands for, %.
    pub(super) fn band(&self, shown: f64) -> (f64, f64) {
        let on_mark = (shown / self.step - (shown / self.step).round()).abs() < 1e-6;
        let (low, high) = match self.kind {
            // The last lamp lights a little under the very top.
            GaugeKind::Lamps if shown > 99.9 => (97.0, f64::MAX),
            GaugeKind::Lamps if on_mark => (shown, shown + self.step),
            // Between marks it is somebody's estimate, whatever the gauge.
            GaugeKind::Sight | GaugeKind::Lamps => {
                (shown - self.step / 2.0, shown + self.step / 2.0)
            }
        };
        (
            if low <= 0.0 { f64::MIN } else { low },
            if high > 100.0 { f64::MAX } else { high },
        )
    }

    /// Reads a gauge figure; `stuck` is how likely it shows what it showed before, whatever the level.
    pub(super) fn shown(&self, pct: f64, stuck: f64) -> Likelihood {
        let shown = pct.clamp(0.0, 100.0);
        let (low, high) = self.band(shown);
        let mut sound = [0.0; CELLS];
        let mut all = [0.0; CELLS];
        for i in 0..CELLS {
            let depth = self.depth[i];
            let inside = skirted(depth, low, high);
            let near = skirted(depth, low - self.step, high + self.step);
            let right = 1.0 - OFF_BY_ONE - OFF_BY_ANY;
            sound[i] = inside as f32;
            all[i] = ((1.0 - stuck) * (right * inside + OFF_BY_ONE / 2.0 * near + OFF_BY_ANY / 4.0)
                + stuck * 0.25) as f32;
        }
        Likelihood { all, sound }
    }

    /// Reads a level known within a few percent.
    pub(super) fn known(level_pct: f64, hauled: bool) -> Likelihood {
        let sd = if hauled { HAULED_SD_PCT } else { STATED_SD_PCT };
        let level = level_pct.clamp(0.0, 100.0);
        let mut sound = [0.0; CELLS];
        let mut all = [0.0; CELLS];
        for i in 0..CELLS {
            let off = (i as f64 * CELL_PCT - level) / sd;
            let near = (-off * off / 2.0).exp();
            sound[i] = near as f32;
            all[i] = (near + OFF_BY_ANY) as f32;
        }
        Likelihood { all, sound }
    }
}

fn skirted(depth: f64, low: f64, high: f64) -> f64 {
    let off = (low - depth).max(depth - high).max(0.0) / SKIRT_PCT;
    if off == 0.0 {
        1.0
    } else if off > 6.0 {
        0.0
    } else {
        (-off * off / 2.0).exp()
    }
}

/// Depth from volume, by a table of volume from depth (the segment of a circle).
struct Inverse {
    volume: Option<Vec<f64>>,
}

impl Inverse {
    const PARTS: usize = 200;

    fn new(shape: TankShape) -> Self {
        let volume = match shape {
            TankShape::Box => None,
            TankShape::Cylinder { .. } => Some(
                (0..=Self::PARTS)
                    .map(|i| {
                        let x = 1.0 - 2.0 * i as f64 / Self::PARTS as f64;
                        let part = x.acos() - x * (1.0 - x * x).max(0.0).sqrt();
                        100.0 * part / std::f64::consts::PI
                    })
                    .collect(),
            ),
        };
        Inverse { volume }
    }

    fn depth(&self, volume_pct: f64) -> f64 {
        let Some(table) = &self.volume else {
            return volume_pct;
        };
        if volume_pct <= 0.0 {
            return 0.0;
        }
        let at = table.partition_point(|v| *v < volume_pct);
        if at > Self::PARTS {
            // More than full: how much more still tells one level from another.
            return volume_pct.max(100.0);
        }
        let part = (volume_pct - table[at - 1]) / (table[at] - table[at - 1]);
        100.0 * ((at - 1) as f64 + part) / Self::PARTS as f64
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_lying_cylinder_has_its_depth_table() {
        // Depth 1/8, 1/4, 3/8, 1/2, 5/8, 3/4, 7/8 against % of volume: the segment of a circle, printed to 0.1.
        let inverse = Inverse::new(TankShape::Cylinder {
            diameter_in: 36.0,
            length_in: 96.0,
        });
        for (eighth, volume) in [7.2, 19.6, 34.3, 50.0, 65.7, 80.4, 92.8].iter().enumerate() {
            let depth = 12.5 * (eighth + 1) as f64;
            assert!((inverse.depth(*volume) - depth).abs() < 0.1);
        }
    }

    #[test]
    fn a_sight_gauge_reads_the_nearest_mark_and_lamps_the_floor() {
        let dial = |kind| {
            Dial::new(
                TankShape::Box,
                Gauge {
                    kind,
                    step_pct: 25.0,
                },
                false,
            )
        };
        assert_eq!(dial(GaugeKind::Sight).band(75.0), (62.5, 87.5));
        assert_eq!(dial(GaugeKind::Lamps).band(75.0), (75.0, 100.0));
        assert_eq!(dial(GaugeKind::Lamps).band(50.0), (50.0, 75.0));
        assert_eq!(dial(GaugeKind::Lamps).band(60.0), (47.5, 72.5));
    }
}
