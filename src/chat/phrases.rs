//! What the service itself says: that something is not logged, whom to phone. The texts stand with all others in
//! `grammar/replies`.

use chrono::{DateTime, Utc};
use chrono_tz::Tz;

use crate::heard::Language;
use crate::quantity::Style;
use crate::reply::{Arg, Replies};

/// Says what the service has to say.
#[derive(Default)]
pub(crate) struct Phrases {
    replies: Replies,
}

impl Phrases {
    /// Says that a message is not logged; `again` when it has to be sent again.
    pub(crate) fn not_logged(&self, language: Language, again: bool) -> String {
        self.say(
            language,
            if again {
                "service-not-logged"
            } else {
                "service-not-logged-yet"
            },
            &[],
        )
    }

    /// Adds to words on a danger that they are not logged.
    pub(crate) fn danger_not_logged(&self, language: Language, text: &str) -> String {
        self.say(
            language,
            "service-danger-not-logged",
            &[("words", text.into())],
        )
    }

    /// Takes the place of an answer that is true no longer.
    pub(crate) fn answered_below(&self, language: Language) -> String {
        self.say(language, "service-answered-below", &[])
    }

    /// Says why a picture is not kept, by the key of its text.
    pub(crate) fn photo_lost(&self, language: Language, key: &str) -> String {
        self.say(language, key, &[])
    }

    /// Returns a command of the menu, and what it is for.
    pub(crate) fn menu(&self, language: Language, code: &str) -> (String, String) {
        let command = self.say(language, &format!("menu-{code}"), &[]);
        (
            command,
            self.say(language, &format!("menu-{code}-about"), &[]),
        )
    }

    /// Says that a message was set aside because working through it failed.
    pub(crate) fn set_aside(&self, language: Language) -> String {
        self.say(language, "service-set-aside", &[])
    }

    /// Tells a dispatcher that somebody cannot be reached on the chat.
    pub(crate) fn unreachable(&self, language: Language, who: &str) -> String {
        self.say(language, "service-unreachable", &[("who", who.into())])
    }

    /// Tells a dispatcher about a danger that did not reach somebody.
    pub(crate) fn undelivered(&self, language: Language, who: &str, text: &str) -> String {
        self.say(
            language,
            "service-undelivered",
            &[("who", who.into()), ("words", text.into())],
        )
    }

    /// These texts hold neither numbers nor times, so units, zone and now do not matter.
    fn say(&self, language: Language, key: &str, args: &[(&str, Arg<'_>)]) -> String {
        self.replies
            .voice(
                language,
                Style::default(),
                Tz::UTC,
                DateTime::<Utc>::UNIX_EPOCH,
            )
            .say(key, args)
    }
}
