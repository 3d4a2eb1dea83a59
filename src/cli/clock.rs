//! The clock a chat runs on: the machine's, or one that starts elsewhere and runs on from there.

use std::sync::{Arc, Mutex};
use std::time::{SystemTime, UNIX_EPOCH};

use chrono::{DateTime, TimeDelta, Utc};

/// Reads the machine's clock.
pub(super) fn now() -> DateTime<Utc> {
    let since = SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default();
    DateTime::from_timestamp(since.as_secs().try_into().unwrap_or(i64::MAX), since.subsec_nanos()).unwrap_or(DateTime::UNIX_EPOCH)
}

/// A clock that runs at the machine's pace, so and so far from its time.
#[derive(Debug, Clone, Default)]
pub(super) struct Clock {
    ahead: Arc<Mutex<TimeDelta>>,
}

impl Clock {
    /// Sets the clock.
    pub(super) fn set(&self, to: DateTime<Utc>) {
        *self.ahead.lock().unwrap_or_else(std::sync::PoisonError::into_inner) = to - now();
    }

    /// Reads the clock.
    pub(super) fn now(&self) -> DateTime<Utc> {
        now() + *self.ahead.lock().unwrap_or_else(std::sync::PoisonError::into_inner)
    }
}
