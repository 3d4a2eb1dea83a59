//! What is coming for one trailer: when the waste tank reaches its stop level, when fresh water and battery run out.
//!
//! The desk works it out once a turn and hands it to the rules; `replay --json` prints the same figures. Instants are whole
//! minutes, so that the same log gives the same forecast.

mod compute;
mod learned;
mod lesson;

use chrono::{DateTime, Utc};

pub use compute::{
    BATTERY_LIMIT_PCT, FRESH_LIMIT_PCT, Prospect, WASTE_LIMIT_PCT, runs_on_battery, runs_on_tank,
    waste_volume,
};
pub use learned::Habits;

/// What is coming for a trailer at a job.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Outlook {
    /// The waste tank to 85 % by volume; none where the trailer is at no job.
    pub waste: Option<TankOutlook>,
    /// The fresh tank to 10 %; only while the trailer runs from it.
    pub fresh: Option<TankOutlook>,
    /// The battery to 50 % charge; only while the 12 V system lives on it.
    pub battery: Option<BatteryOutlook>,
}

/// When a tank reaches a limit.
#[derive(Debug, Clone, PartialEq)]
pub struct TankOutlook {
    /// The limit, % by volume.
    pub limit_pct: f64,
    /// One chance in ten that the limit is reached before this; none where it is not reached within 72 h or the job.
    pub p10: Option<DateTime<Utc>>,
    /// As likely before as after.
    pub p50: Option<DateTime<Utc>>,
    /// Nine chances in ten that the limit is reached before this.
    pub p90: Option<DateTime<Utc>>,
    /// The level now, % by volume: the tenth, the half, the nine tenths.
    pub level_pct: [f64; 3],
    /// The level as people are told it, % by volume: what was read just now; else the half, on the far side of what was
    /// read within the hour.
    pub likely_pct: f64,
    /// The rate it moves at while people use it, % an open hour (falling for fresh water).
    pub rate_pct_h: f64,
    /// True when the level could stay short of the limit.
    pub could_stay_below: bool,
    /// True when the gauge did not move although it should have.
    pub stuck: bool,
    /// True when the last gauge reading fits nothing else that is known.
    pub misread: bool,
    /// True where nobody told its level since the set-up of this job: all is reckoned by the crowd.
    pub unread: bool,
}

/// When the battery runs down.
#[derive(Debug, Clone, PartialEq)]
pub struct BatteryOutlook {
    /// When it reaches 50 % charge; none where not within 72 h.
    pub p50: Option<DateTime<Utc>>,
    /// A cautious guess: the load half as high again.
    pub p10: Option<DateTime<Utc>>,
    /// A hopeful guess: the load a third lower.
    pub p90: Option<DateTime<Utc>>,
    /// Hours of use left at the expected load.
    pub hours: f64,
    /// The expected load, A.
    pub amps: f64,
    /// The uses an hour it was worked out for.
    pub uses_per_h: f64,
}
