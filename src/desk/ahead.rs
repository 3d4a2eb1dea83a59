//! What a message changes in what the bot will speak of by itself.

use super::answer::Reply;
use super::receive::Hearing;
use super::situate::Case;
use super::tick::{look_again, task_key};
use crate::book::{AheadChange, AlarmChange, Record};
use crate::heard::ReadingKey;

/// Notes when to look at the trailers again, and which alarms a turn's tasks put an end to.
pub(super) fn note(
    hearing: &Hearing<'_>,
    cases: &[Case],
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    looks(hearing, cases, reply, records);
    taken_up(hearing, reply, records);
}

fn looks(hearing: &Hearing<'_>, cases: &[Case], reply: &Reply<'_>, records: &mut Vec<Record>) {
    let at = hearing.now;
    let known = hearing.desk.book.ahead();
    for case in cases {
        let look = look_again(case, &reply.board, at);
        if look != known.look(&case.unit) {
            let unit = case.unit.clone();
            let change = AheadChange::Look { unit, at: look };
            records.push(Record::Ahead { at, change });
        }
        // a head count bears on every trailer of the job
        let counted = case.report.readings.value(ReadingKey::Guests).is_some();
        let others = case.job().into_iter().flat_map(|job| &job.trailers);
        for other in others.filter(|other| counted && **other != case.unit) {
            if known.look(other).is_some_and(|look| look > at) {
                let unit = other.clone();
                let change = AheadChange::Look { unit, at: Some(at) };
                records.push(Record::Ahead { at, change });
            }
        }
    }
}

/// Ends the alarm of each task that somebody took, called for or closed.
fn taken_up(hearing: &Hearing<'_>, reply: &Reply<'_>, records: &mut Vec<Record>) {
    let alarms = hearing.desk.book.alarms();
    for task in reply.board.touched() {
        let key = task_key(task.id);
        let taken_up = !task.is_open() || task.taken_by.is_some() || task.called.is_some();
        if taken_up && alarms.contains_key(&key) {
            records.push(Record::Alarm {
                at: hearing.now,
                change: AlarmChange::Over { key },
            });
        }
    }
}
