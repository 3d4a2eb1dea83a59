//! Text to [`Heard`]: what a crew member's message means, before anyone knows who sent it.
//!
//! The stages stand in files of their own, in the order of the work: `normal` folds Unicode, `lex` cuts tokens,
//! `vocab` knows the words, `item` groups tokens into phrases, `unit` finds the trailers, `correct` mends what the
//! sender took back, `scope` tells what counts, `pair` and `attach` read statements and values, `assemble` gives each to
//! its trailer, and `ask` finds what the sender wants back; `either_way` takes out again what hangs on a word nobody knows.
//! Reading is total: what is not understood is data.

mod answer;
mod ask;
mod assemble;
mod attach;
mod concept;
mod correct;
mod days;
mod either_way;
mod explain;
mod foretold;
mod hot_air;
mod hot_skin;
mod instead;
mod item;
mod json;
mod legs;
mod lex;
mod normal;
mod number;
mod pair;
mod plan;
mod read;
mod scope;
mod senses;
mod spell;
mod taught;
mod told;
mod typed;
mod unit;
mod vocab;
mod weather;
mod wire;
mod wish;

pub use days::{NamedDay, named_day, named_month};
pub use explain::Explained;
pub use json::to_json;
pub use taught::{LONGEST, MOST_WORDS, NameOf, TaughtWord, TeachError, common_keywords};
pub use vocab::{WordFile, WordsError};
pub use weather::{forecast_for, observed_at};

use std::sync::{Arc, LazyLock};

use crate::heard::{Heard, Language, Plan, PlanKind};
use crate::quantity::{FT_PER_M, LITRES_PER_GAL, TemperatureScale};
use concept::Unit;
use pair::Pairs;
use senses::Senses;
use vocab::Vocab;

const ENGLISH: &str = include_str!("../../grammar/words/en.toml");
const SPANISH: &str = include_str!("../../grammar/words/es.toml");
/// Words of each language that are one slip away from one of ours and are never taken for it.
const ORDINARY: [(&str, Language); 2] = [
    (
        include_str!("../../grammar/words/ordinary-en.txt"),
        Language::En,
    ),
    (
        include_str!("../../grammar/words/ordinary-es.txt"),
        Language::Es,
    ),
];
const SENSES: &str = include_str!("../../grammar/words/senses.toml");
const FACTS: &str = include_str!("../../grammar/words/facts.toml");

/// Returns how many psi one of a measure of pressure is, by any of its spellings in the word files. Pounds and kilos alone
/// may be a weight, and are none.
pub fn psi_in(measure: &str) -> Option<f64> {
    let unit = Reader::new().vocab.measure(measure)?;
    unit.is_pressure().then(|| unit.psi())
}

/// Returns how many feet one of a measure of length is, by any of its spellings in the word files.
pub fn feet_in(measure: &str) -> Option<f64> {
    match Reader::new().vocab.measure(measure)? {
        Unit::Ft => Some(1.0),
        Unit::Metre => Some(FT_PER_M),
        _ => None,
    }
}

/// Returns how many gallons one of a measure of what a tank holds is, by any of its spellings in the word files.
pub fn gallons_in(measure: &str) -> Option<f64> {
    match Reader::new().vocab.measure(measure)? {
        Unit::Gal => Some(1.0),
        Unit::Litre => Some(1.0 / LITRES_PER_GAL),
        _ => None,
    }
}

/// Returns how many minutes one of a measure of time is, by any of its spellings in the word files.
pub fn minutes_in(measure: &str) -> Option<u32> {
    match Reader::new().vocab.measure(measure)? {
        Unit::Minute => Some(1),
        Unit::Hour => Some(60),
        _ => None,
    }
}

/// Reads messages. Reading needs no more than `&self`, and clones share what was compiled.
#[derive(Debug, Clone)]
pub struct Reader {
    vocab: Arc<Vocab>,
    senses: Arc<Senses>,
    pairs: Arc<Pairs>,
}

impl Default for Reader {
    fn default() -> Self {
        Reader::new()
    }
}

impl Reader {
    /// Makes a reader of the built-in word files, in both languages.
    pub fn new() -> Reader {
        // compiled once; a fleet's own words are added to a copy of the vocabulary
        static BUILT_IN: LazyLock<Reader> = LazyLock::new(|| {
            Reader::compile().expect("the built-in word files are read by a test")
        });
        BUILT_IN.clone()
    }

    /// Reads a message. Never fails: what means nothing to us gives an empty [`Heard`].
    pub fn hear(&self, text: &str, scale: TemperatureScale) -> Heard {
        // a pasted weather report is no crew message: its groups are read by their own rules
        if let Some((report, talk)) = weather::with_talk(text)
            && let Some(pasted) = weather::pasted(report)
        {
            let mut heard = self.read(talk, scale).heard;
            heard.entries.splice(..0, pasted.entries);
            heard.plans.splice(..0, pasted.plans);
            return heard;
        }
        if let Some((report, talk)) = weather::beside_words(text)
            && let Some(mut pasted) = weather::pasted(&report)
        {
            // "12: METAR ...": whose air it is
            let mut heard = self.read(&talk, scale).heard;
            if let [unit] = heard.named.as_slice() {
                let entries = pasted.entries.iter_mut();
                entries.for_each(|entry| entry.unit = Some(unit.clone()));
            }
            heard.unclear.clear();
            heard.entries.splice(..0, pasted.entries);
            heard.plans.splice(..0, pasted.plans);
            return heard;
        }
        if let Some(heard) = weather::pasted(text) {
            return heard;
        }
        // one that tells no temperature has nothing for us, and its groups are no readings
        if weather::is_report(text) {
            return Heard {
                plans: vec![Plan {
                    unit: None,
                    kind: PlanKind::Weather,
                    text: text.trim().to_owned(),
                }],
                ..Heard::default()
            };
        }
        self.read(text, scale).heard
    }

    /// Reads a message so that no danger in it is doubted or past: whoever only thinks that they smell gas is not sent to
    /// look, and what hurt somebody an hour ago still does. Of this only the dangers are to be kept.
    pub fn hear_dangers(&self, text: &str, scale: TemperatureScale) -> Heard {
        read::Reading::alarmed(self, text, scale).heard
    }

    /// Reads a message and tells how.
    pub fn explain(&self, text: &str, scale: TemperatureScale) -> Explained {
        explain::explain(self.read(text, scale))
    }

    fn read<'t>(&self, text: &'t str, scale: TemperatureScale) -> read::Reading<'t> {
        let mut reading = read::Reading::new(self, text, scale);
        either_way::sift(self, &mut reading, scale);
        reading
    }

    fn compile() -> Result<Reader, WordsError> {
        let mut vocab = Vocab::default();
        for (file, text, language) in [
            ("en.toml", ENGLISH, Language::En),
            ("es.toml", SPANISH, Language::Es),
        ] {
            vocab.add(file, &WordFile::parse(file, text)?, Some(language))?;
        }
        for (words, language) in ORDINARY {
            vocab.add_ordinary(words, Some(language));
        }
        vocab.finish();
        let pairs = Pairs::parse("facts.toml", FACTS)?;
        let senses = Senses::parse("senses.toml", SENSES)?;
        Ok(Reader {
            vocab: Arc::new(vocab),
            senses: Arc::new(senses),
            pairs: Arc::new(pairs),
        })
    }
}
