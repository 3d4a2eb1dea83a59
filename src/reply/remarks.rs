//! What was not understood, and what was understood and not logged: quoted, with what to send instead.

use super::voice::{Arg, Voice};
use crate::heard::{Remark, Taken};

impl Voice<'_> {
    /// Says what was wrong with a part of a message and what to send instead, quoting it.
    ///
    /// A reason without a text of its own falls back to a general one.
    pub fn unclear(&self, remark: &Remark) -> String {
        let key = format!("unclear-{}", remark.why);
        let key = if self.knows(&key) {
            &key
        } else {
            "unclear-other"
        };
        self.say(key, &[("quote", self.quote(&remark.text).into())])
    }

    /// Says that a part was understood and not logged. None where that goes without saying: a phone number, a price.
    pub fn aside(&self, remark: &Remark) -> Option<String> {
        let key = format!("aside-{}", remark.why);
        self.knows(&key)
            .then(|| self.say(&key, &[("quote", self.quote(&remark.text).into())]))
    }

    /// Says which spellings were taken for others: `Read "presure" as "pressure".`
    pub fn taken(&self, taken: &[Taken]) -> String {
        let pairs: Vec<String> = taken
            .iter()
            .map(|one| {
                let args = [
                    ("typed", Arg::from(self.quote(&one.typed))),
                    ("read", self.quote(&one.read).into()),
                ];
                self.say("taken-pair", &args)
            })
            .collect();
        self.say("taken", &[("pairs", pairs.join(", ").into())])
    }
}
