//! Answers to what people ask.

mod back;
mod reply;
mod tell;
mod why;

pub(super) use reply::Reply;

use super::digest;
use super::receive::Hearing;
use super::settle::{self, Settled};
use super::situate::Case;
use crate::book::Record;
use crate::dialogue::About;
use crate::heard::{Ask, UnitName};
use crate::situation::Occasion;

/// Returns the known trailer that a question is about: the one named, or the sender's last.
pub(super) fn unit_of(hearing: &Hearing<'_>, ask: &Ask) -> Option<UnitName> {
    let named = match ask {
        Ask::Status { unit }
        | Ask::History { unit }
        | Ask::Forecast { unit }
        | Ask::Why { unit } => unit.as_ref(),
        _ => return None,
    };
    let name = match named {
        Some(name) => Some(name),
        None if hearing.heard.named.len() == 1 => hearing.heard.named.first(),
        None => hearing.talk.unit_at(hearing.inbound.at),
    };
    settle::known(&hearing.fleet, name?).cloned()
}

/// Answers what the sender asks.
pub(super) fn ask(
    hearing: &Hearing<'_>,
    settled: &Settled,
    ask: &Ask,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    match ask {
        Ask::Status { unit } => {
            about_unit(hearing, settled, unit.as_ref(), ask, reply, tell::status)
        }
        Ask::History { unit } => {
            about_unit(hearing, settled, unit.as_ref(), ask, reply, tell::history)
        }
        Ask::Forecast { unit } => {
            about_unit(hearing, settled, unit.as_ref(), ask, reply, tell::forecast)
        }
        Ask::Digest => digest::tell(hearing, reply),
        Ask::Tasks => tell::tasks(hearing, reply),
        Ask::Help => {
            let key = format!("help-{}", digest::role_code(hearing.member.role));
            reply.lines.push(reply.voice.word(&key));
        }
        Ask::Undo => back::undo(hearing, reply, records),
        Ask::Why { .. } => why::why(hearing, ask, reply),
        Ask::Done { task } => back::done(hearing, *task, reply),
        Ask::Sum => super::sum::answer(hearing, reply),
        Ask::Command { .. } => {} // obeyed as an order
    }
}

fn about_unit(
    hearing: &Hearing<'_>,
    settled: &Settled,
    named: Option<&UnitName>,
    ask: &Ask,
    reply: &mut Reply<'_>,
    tell: impl Fn(&Hearing<'_>, &Case, &mut Reply<'_>),
) {
    match (unit_of(hearing, ask), named) {
        (Some(unit), _) => {
            let mut case = Case::standing(
                hearing.desk,
                &hearing.fleet,
                &unit,
                hearing.now,
                Occasion::Asked,
            );
            // a report in the same message already counts
            if let Some(now) = hearing.reported(&unit, settled) {
                case = Case::new(
                    hearing.desk,
                    &hearing.fleet,
                    &unit,
                    hearing.now,
                    (case.before, now),
                    case.report,
                    case.plans,
                    Occasion::Asked,
                );
            }
            reply.foresee(&case);
            tell(hearing, &case, reply);
        }
        (None, Some(name)) => reply
            .findings
            .push(settle::unknown_unit(&hearing.fleet, name)),
        (None, None) => {
            reply.asks = Some(About::WhichUnitOf {
                text: hearing.text.trim().to_owned(),
                likely: hearing.likely_units(),
            });
        }
    }
}
