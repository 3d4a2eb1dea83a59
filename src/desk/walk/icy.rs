//! Ice underfoot: steps, a ramp, the ground. It is no frozen pipe, and nothing is to be thawed on the trailer.

use super::super::answer::Reply;
use super::super::receive::Hearing;
use super::super::settle::{self, Settled};
use super::phrase::is_question;
use crate::heard::{Fault, UnitName};
use crate::rules;

/// Tells whether a message says that it is icy where people walk, and takes out of the reports what it is not.
pub(in crate::desk) fn take(hearing: &Hearing<'_>, settled: &mut Settled) -> bool {
    let says = |list| hearing.desk.answers.says("icy", list, hearing.text);
    let asks = hearing.heard.ask.is_some() || is_question(hearing.text);
    if asks || !says("ice") || !says("where") || says("not") {
        return false;
    }
    settled.amend_all(|_, entry| entry.faults.retain(|fault| *fault != Fault::Frozen));
    true
}

/// Says what to do about it, on the trailer that is named, else on the one talked about.
pub(in crate::desk) fn tell(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let known = |name: &UnitName| settle::known(&hearing.fleet, name);
    let named = hearing.heard.named.iter().find_map(known);
    let last = || hearing.talk.unit_at(hearing.inbound.at).and_then(known);
    reply.findings.push(rules::icy_steps(named.or_else(last)));
}
