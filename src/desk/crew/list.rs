//! The list of who works here, for the dispatcher.

use super::super::answer::Reply;
use super::super::door;
use super::super::receive::Hearing;
use crate::heard::Language;
use crate::reply::Arg;

/// Lists everybody: what they may do, whether they joined, when they last wrote; open invites; who is shut out.
pub(super) fn list(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let book = &hearing.desk.book;
    let voice = reply.voice;
    let mut lines = vec![voice.say("people-list", &[("count", hearing.fleet.crew.len().into())])];
    for member in hearing.fleet.crew.values() {
        let language = match member.language {
            Some(Language::Es) => "es",
            Some(Language::En) => "en",
            None => "",
        };
        let mut args: Vec<(&str, Arg<'_>)> = vec![
            ("who", member.name.as_str().into()),
            ("id", member.id.as_str().into()),
            ("role", door::role(&voice, member.role).into()),
            ("language", language.into()),
        ];
        let key = match (book.heard().last.get(&member.id), member.chat_user) {
            (Some(last), _) => {
                args.push(("age", voice.age(*last).into()));
                "people-row-heard"
            }
            (None, Some(_)) => "people-row",
            (None, None) => "people-row-no-phone",
        };
        let row = voice.say(key, &args);
        lines.push(match hearing.desk.means.unreachable.get(&member.id) {
            Some(since) => voice.say(
                "people-row-unreachable",
                &[("row", row.into()), ("since", (*since).into())],
            ),
            None => row,
        });
    }
    for invite in book.people().invites(hearing.now) {
        lines.push(voice.say(
            "people-row-invited",
            &[
                ("who", invite.name.as_str().into()),
                ("role", door::role(&voice, invite.role).into()),
                ("time", invite.expires.into()),
            ],
        ));
    }
    for member in book.people().out() {
        lines.push(voice.say("people-row-out", &[("who", member.name.as_str().into())]));
    }
    reply.lines.push(lines.join("\n"));
}
