//! Water: what a hose loses, what a supply can give, and what the fixtures ask for.

mod demand;
mod hose;
mod supply;

pub use demand::{
    FixtureGroup, hunter_flush_tank, mixed_demand, simultaneous_fixtures, trailer_demand,
    trailer_fixtures, wistort_demand,
};
pub use hose::{
    C_SMOOTH, FITTINGS_K, Friction, Line, elevation_loss, hose_loss, hose_loss_darcy,
    hose_loss_ratio, minor_loss, reynolds, roughness_smooth, velocity, viscosity_68f,
};
pub use supply::{
    LossFormula, PRV_LIMIT_PSI, Restriction, expected_flowing_pressure, fill_time, flow_after_clog,
    max_flow, prv_required, regulated, residual, residual_by, restriction_cause, unexplained_loss,
};
