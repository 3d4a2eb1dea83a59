//! The clock a chat runs on: the machine's, or one that starts elsewhere and runs on from there.

use std::sync::{Arc, Mutex};
use std::time::SystemTime;

use chrono::{DateTime, TimeDelta, Utc};

/// Reads the machine's clock.
pub(super) fn now() -> DateTime<Utc> {
    SystemTime::now().into()
}

/// A clock that runs at the machine's pace, so and so far from its time.
#[derive(Debug, Clone, Default)]
pub(super) struct Clock {
    ahead: Arc<Mutex<TimeDelta>>,
}

impl Clock {
    /// Sets the clock.
    pub(super) fn set(&self, to: DateTime<Utc>) {
        *self
            .ahead
            .lock()
            .unwrap_or_else(std::sync::PoisonError::into_inner) = to - now();
    }

    /// Reads the clock.
    pub(super) fn now(&self) -> DateTime<Utc> {
        now()
            + *self
                .ahead
                .lock()
                .unwrap_or_else(std::sync::PoisonError::into_inner)
    }
}
