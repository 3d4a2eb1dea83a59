//! A sum asked in chat: "sum drop 16 amps 150 ft 14 gauge". Nothing in such a message is logged.

use super::answer::Reply;
use super::receive::Hearing;

/// Answers a sum.
pub(super) fn answer(_hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    reply.say("sum-later", &[]);
}
