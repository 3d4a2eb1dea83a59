//! Power: what a cord loses, what a circuit carries, what a generator must give.

mod circuit;
mod supply;
mod wire;

pub use circuit::{
    CONTINUOUS_SHARE, Gfci, breaker_must_trip, converter_current, generator_rating, max_continuous,
    min_breaker, resistive_current, services_needed, start_watts,
};
pub use circuit::{Derate, GeneratorLoad};
pub use supply::{
    GENERATOR_DISTANCE_FT, OPEN_NEUTRAL_V, VoltageBand, open_neutral_leg, resistive_power_fraction,
    voltage_band,
};
pub use wire::{
    Conductor, Material, Strand, cord_ampacity, cord_drop, cord_drop_pct, cord_end_voltage,
    max_cord_length, ohm_per_kft,
};
