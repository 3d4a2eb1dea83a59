//! The message files of both languages, parsed once.

use std::fmt::Write;
use std::sync::{Arc, LazyLock};

use chrono::{DateTime, Utc};
use chrono_tz::Tz;
use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource};
use unic_langid::LanguageIdentifier;

use super::voice::Voice;
use crate::heard::Language;
use crate::quantity::Style;

const ENGLISH: &str = include_str!("../../grammar/replies/en.ftl");
const SPANISH: &str = include_str!("../../grammar/replies/es.ftl");

type Bundle = FluentBundle<FluentResource>;

/// Every text in every language; clones share them.
#[derive(Clone)]
pub struct Replies {
    english: Arc<Bundle>,
    spanish: Arc<Bundle>,
}

impl Default for Replies {
    fn default() -> Self {
        Replies::new()
    }
}

impl Replies {
    /// Returns the texts of the message files that were compiled in. A faulty message is left out; tests see to it that
    /// there is none.
    pub fn new() -> Replies {
        static BUILT_IN: LazyLock<Replies> = LazyLock::new(|| Replies {
            english: Arc::new(bundle("en", ENGLISH)),
            spanish: Arc::new(bundle("es-MX", SPANISH)),
        });
        BUILT_IN.clone()
    }

    /// Returns a voice that speaks `language`, prints numbers in `style` and local times in `zone`, seen from `now`.
    pub fn voice(
        &self,
        language: Language,
        style: Style,
        zone: Tz,
        now: DateTime<Utc>,
    ) -> Voice<'_> {
        Voice::new(self, language, style, zone, now)
    }

    /// Tells whether the language has a text of its own under `key`.
    pub fn has(&self, language: Language, key: &str) -> bool {
        self.bundle(language).has_message(key)
    }

    /// Appends the text under `key`; the English one where the language lacks it, the key itself where both do.
    pub(super) fn write(
        &self,
        out: &mut String,
        language: Language,
        key: &str,
        args: Option<&FluentArgs<'_>>,
    ) {
        for bundle in [self.bundle(language), self.english.as_ref()] {
            let Some(pattern) = bundle.get_message(key).and_then(|m| m.value()) else {
                continue;
            };
            // a missing argument prints its own name; tests hold texts to the arguments they are given
            let mut missing = Vec::new();
            if bundle
                .write_pattern(out, pattern, args, &mut missing)
                .is_ok()
            {
                return;
            }
        }
        let _ = out.write_str(key); // writing to a string cannot fail
    }

    fn bundle(&self, language: Language) -> &Bundle {
        match language {
            Language::En => &self.english,
            Language::Es => &self.spanish,
        }
    }
}

fn bundle(tag: &str, source: &str) -> Bundle {
    let language: LanguageIdentifier = tag.parse().expect("the tag is a language identifier");
    let mut bundle = FluentBundle::new_concurrent(vec![language]);
    // the marks would show up as boxes on old phones, and both languages run left to right
    bundle.set_use_isolating(false);
    let resource = match FluentResource::try_new(source.to_owned()) {
        Ok(resource) => resource,
        Err((partial, _)) => partial,
    };
    bundle.add_resource_overriding(resource);
    bundle
}
