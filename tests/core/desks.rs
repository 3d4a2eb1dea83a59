//! A desk at which a fleet is loaded, as every test of talk begins.

use chrono::{DateTime, Utc};
use hosebib::desk::Desk;
use hosebib::fleet::Fleet;

/// Loads a fleet into a fresh desk, long before anybody writes.
pub(crate) fn at_work(fleet: Fleet) -> Desk {
    let mut desk = Desk::default();
    let turn = desk.load(DateTime::<Utc>::UNIX_EPOCH, "test", fleet);
    desk.apply(&turn.records);
    desk
}
