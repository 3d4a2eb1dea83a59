//! What was refused, told to the dispatchers: gathered, and at most once an hour, whatever comes.

use chrono::{DateTime, TimeDelta, Utc};

use super::Round;
use super::say::Answer;
use crate::book::{Attempt, Record, Refusals};
use crate::reply::Voice;

/// How long the first of a run is gathered with what follows it.
const GATHERED: TimeDelta = TimeDelta::minutes(10);
/// How often the dispatchers are told at most.
const TOLD_EVERY: TimeDelta = TimeDelta::hours(1);

/// Returns when the dispatchers are to be told; none while there is nothing to tell.
pub(super) fn due(refusals: &Refusals) -> Option<DateTime<Utc>> {
    let gathered = refusals.since()? + GATHERED;
    let last = refusals.last_told().map(|told| told + TOLD_EVERY);
    Some(last.map_or(gathered, |next| gathered.max(next)))
}

/// Tells the dispatchers.
pub(super) fn tell(round: &mut Round<'_>) {
    round
        .turn
        .records
        .push(Record::RefusedTold { at: round.now });
    for to in round.dispatchers() {
        let Some(voice) = round.voice(&to) else {
            continue;
        };
        let text = words(&voice, round.desk.book.refusals());
        round.say.add(&to, None, text, Answer::None);
    }
}

/// Puts it into words: how much of what, from how many; the crew by name, strangers never by theirs.
fn words(voice: &Voice<'_>, refusals: &Refusals) -> String {
    let lines = refusals.untold().map(|(tried, count, senders)| {
        let args = [
            ("what", tried.code().into()),
            ("count", usize::try_from(count).unwrap_or(usize::MAX).into()),
            ("senders", senders.len().into()),
        ];
        let mut line = voice.say("refused-row", &args);
        if tried == Attempt::Order {
            let names: Vec<String> = senders
                .iter()
                .map(|who| voice.person(who).into_owned())
                .collect();
            let who = voice.all_of(&names);
            line = voice.say(
                "refused-row-crew",
                &[("row", line.into()), ("who", who.into())],
            );
        }
        line
    });
    let rows: Vec<String> = lines.collect();
    let since = refusals.since().unwrap_or(voice.now());
    let rows = voice.all_of(&rows);
    voice.say("refused", &[("time", since.into()), ("rows", rows.into())])
}
