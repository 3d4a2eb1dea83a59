//! What everybody may change about themselves: their language, their quiet hours, and whether they stay.

use super::super::answer::Reply;
use super::super::receive::Hearing;
use super::{change, is_last_dispatcher, tell_others, words};
use crate::book::{CrewChange, Record};

/// Takes somebody's leave by their own word.
pub(super) fn leave(hearing: &Hearing<'_>, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    if is_last_dispatcher(hearing, hearing.member) {
        reply.say("last-dispatcher", &[]);
        return;
    }
    let who = hearing.member.id.clone();
    records.push(change(hearing, CrewChange::Left { who }));
    reply.say("left-crew", &[]);
    tell_others(hearing, &[], reply, |voice| {
        voice.say(
            "left-crew-told",
            &[("who", hearing.member.name.as_str().into())],
        )
    });
}

/// Answers somebody in another language from now on.
pub(super) fn language(
    hearing: &Hearing<'_>,
    rest: &str,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let Some(language) = words::language(hearing.desk.phrases, rest) else {
        reply.say("language-how", &[]);
        return;
    };
    let who = hearing.member.id.clone();
    records.push(change(hearing, CrewChange::Language { who, language }));
    let voice = hearing.desk.replies.voice(
        language,
        hearing.fleet.style,
        hearing.fleet.time_zone,
        hearing.now,
    );
    reply.lines.push(voice.word("language-set"));
}

/// Sets or ends somebody's own quiet hours.
pub(super) fn quiet(
    hearing: &Hearing<'_>,
    rest: &str,
    reply: &mut Reply<'_>,
    records: &mut Vec<Record>,
) {
    let who = hearing.member.id.clone();
    let hours = words::hours(rest);
    match hours {
        Some((from, to)) => {
            let time = |time: chrono::NaiveTime| time.format("%H:%M").to_string();
            let args = [("from", time(from).into()), ("to", time(to).into())];
            reply.say("quiet-set", &args);
        }
        None if hearing.desk.phrases.is("crew", "off", rest) => reply.say("quiet-off", &[]),
        None => return reply.say("quiet-how", &[]),
    }
    records.push(change(hearing, CrewChange::Quiet { who, hours }));
}
