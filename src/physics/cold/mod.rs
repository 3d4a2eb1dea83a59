//! Cold and heat: when a hose or a tank freezes, what it takes to stop it, and what the weather does to people.

mod air;
mod body;
mod fluids;
mod pipe;
mod tank;

pub use air::{RADIATION_W_M2K, air_conductivity, crossflow_film, natural_film, outdoor_film};
pub use body::{ChillBand, HeatBand, chill_band, heat_band, heat_index, wind_chill};
pub use fluids::{brine_freezes, glycol_freezes, salt_for_brine};
pub use pipe::{
    BLOCKED_SHARE, Pipe, Standing, ashrae_pipe_time, hose_outside, pipe_resistance,
    pipe_time_to_32f, pipe_time_to_solid, standing_hose, trickle_outlet, watts_per_ft_to_hold,
};
pub use tank::{ICE_SHARE, Tank, skin_area, skin_resistance, wetted_area};

/// Temperature at which pipes in a building call for an alert, °F (Building Research Council, University of Illinois).
/// An outdoor hose is at risk well above it.
pub const PIPE_ALERT_F: f64 = 20.0;
/// Freezing point of water, °F.
pub const FREEZING_F: f64 = 32.0;
