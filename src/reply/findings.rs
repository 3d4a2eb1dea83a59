//! One finding in words: what to do, its cautions, and why.

use super::voice::{Arg, Voice};
use crate::book::Task;
use crate::finding::{Caution, Fact, FactValue, Finding, FindingId, Level, Origin};

impl Voice<'_> {
    /// Says a finding: `WARNING 12: …` where someone can be hurt, else `Now …` (`Now 12: …` in a reply on several
    /// trailers). Its cautions follow, each on an indented line of its own.
    pub fn finding(&self, finding: &Finding, several_units: bool) -> String {
        let mut out = String::with_capacity(256);
        self.write_finding(&mut out, finding, several_units);
        self.write_cautions(&mut out, &finding.cautions);
        out
    }

    /// Returns the text of one caution.
    pub fn caution(&self, caution: Caution) -> String {
        self.coded("caution", caution.code())
    }

    /// Returns the few words by which lists call a finding: `pressure too high`. One id may stand for a graver thing at a
    /// graver level, with a name of its own: a generator too small, or running inside.
    pub fn name(&self, id: FindingId, level: Level) -> String {
        let graver = match level {
            Level::Danger => Some("danger"),
            Level::Warning => Some("warning"),
            Level::Caution | Level::Notice => None,
        };
        let own = graver.map(|level| format!("name-{}-{level}", id.code().replace('.', "-")));
        match own.filter(|key| self.knows(key)) {
            Some(key) => self.word(&key),
            None => self.coded("name", id.code()),
        }
    }

    /// Returns the few words for a finding beside the task that it asked for: a truck that is called is not to be booked.
    pub fn name_beside(&self, id: FindingId, level: Level, task: Option<&Task>) -> String {
        let called = task.filter(|task| task.called.is_some());
        let here = called.and_then(|task| task.here);
        if id == FindingId::WasteBookPumpOut && here.is_some() {
            return self.word("truck-named-here");
        }
        match (id, called.map(|task| task.promised)) {
            (FindingId::WasteBookPumpOut, Some(Some(at))) => {
                self.say("truck-named-promised", &[("time", at.into())])
            }
            (FindingId::WasteBookPumpOut, Some(None)) => self.word("truck-named-called"),
            _ => self.name(id, level),
        }
    }

    /// Returns a finding that wants a truck as it is said while one is called: nobody is told to call again, and once it is
    /// there nobody is told to chase it.
    pub(super) fn as_called(&self, finding: &Finding, task: &Task) -> Option<Finding> {
        let wants_one = finding.id == FindingId::WasteBookPumpOut && task.called.is_some();
        let own = match task.here {
            Some(_) => "waste-book-pump-out-here".to_owned(),
            None => format!("{}-called", finding.action),
        };
        wants_one.then(|| Finding {
            action: match self.knows(&own) {
                true => own.into(),
                false => finding.action.clone(),
            },
            ..finding.clone()
        })
    }

    /// Returns the few words for this one finding: its own where it has some, else those of its id.
    pub fn name_of(&self, finding: &Finding) -> String {
        let own = format!("name-{}", finding.action);
        match self.knows(&own) {
            true => self.word(&own),
            false => self.name(finding.id, finding.level),
        }
    }

    /// Says what a finding asks for, without its opening word and its cautions.
    pub fn action(&self, finding: &Finding) -> String {
        self.say(&finding.action, &self.spoken_facts(finding))
    }

    /// Says what a finding rests on: each number with where it came from, the formula in words, the limit, the source.
    /// What was assumed says so.
    pub fn why(&self, finding: &Finding) -> String {
        let mut out = match &finding.unit {
            Some(unit) => self.say(
                "why-head-unit",
                &[
                    ("unit", unit.as_str().into()),
                    ("name", self.name(finding.id, finding.level).into()),
                ],
            ),
            None => self.say(
                "why-head",
                &[("name", self.name(finding.id, finding.level).into())],
            ),
        };
        for fact in &finding.facts.items {
            out.push_str("\n  ");
            out.push_str(&self.fact_line(fact));
        }
        let spoken = self.spoken_facts(finding);
        if let Some(formula) = &finding.facts.formula {
            out.push_str("\n  ");
            if self.knows(formula) {
                let text = self.say(formula, &spoken);
                self.write(&mut out, "why-formula", &[("formula", text.into())]);
            } else {
                self.write(
                    &mut out,
                    "why-formula",
                    &[("formula", formula.as_ref().into())],
                );
            }
        }
        if let Some(source) = &finding.facts.source {
            out.push_str("\n  ");
            let source = self.source(source);
            self.write(&mut out, "why-source", &[("source", source.into())]);
        }
        if finding.facts.items.is_empty() && finding.facts.source.is_none() {
            out.push_str("\n  ");
            self.write(&mut out, "why-said", &[]);
        }
        out
    }

    /// Appends the opening word, the unit and the action of a finding.
    pub(super) fn write_finding(&self, out: &mut String, finding: &Finding, several_units: bool) {
        let signal = finding.level >= Level::Caution;
        // what the desk finds in a message asks for no work, so nothing is to be done "now"
        let of_the_message = finding.id.topic() == "desk" && !signal;
        if !of_the_message {
            out.push_str(&self.opening(finding.level, finding.urgency));
            out.push(' ');
        }
        match &finding.unit {
            Some(unit) if signal || several_units => {
                out.push_str(unit.as_str());
                out.push_str(": ");
            }
            _ if signal => {
                out.pop();
                out.push_str(": ");
            }
            _ => {}
        }
        let args = self.spoken_facts(finding);
        self.write(out, &finding.action, &args);
        if let Some(from) = finding.facts.find("air_from") {
            out.push(' ');
            self.write(out, "air-taken", &[("from", self.spoken(from))]);
        }
    }

    /// Appends cautions, each on a line of its own.
    pub(super) fn write_cautions(&self, out: &mut String, cautions: &[Caution]) {
        for caution in cautions {
            out.push_str("\n  ");
            out.push_str(&self.caution(*caution));
        }
    }

    /// Returns the facts of a finding, with its unit, as arguments of a text.
    fn spoken_facts<'f>(&self, finding: &'f Finding) -> Vec<(&'f str, Arg<'f>)> {
        let facts = finding.facts.items.iter();
        let mut args: Vec<(&str, Arg<'_>)> = facts
            .map(|fact| (fact.name.as_ref(), self.spoken(fact)))
            .collect();
        if let Some(unit) = &finding.unit
            && finding.facts.find("unit").is_none()
        {
            args.push(("unit", unit.as_str().into()));
        }
        args
    }

    /// Turns a fact into what a text takes. Codes that the rules give are said in words: `jacks-up, closed`.
    fn spoken<'f>(&self, fact: &'f Fact) -> Arg<'f> {
        if let FactValue::Text(text) = &fact.value
            && fact.name == "left_out"
        {
            return self.loads(text).into();
        }
        if let FactValue::Text(text) = &fact.value
            && fact.name == "feed"
        {
            let circuits: Vec<String> = text.split(", ").map(str::to_owned).collect();
            return self.all_of(&circuits).into();
        }
        if let FactValue::Text(text) = &fact.value
            && fact.origin != Origin::Read
            && let Some(words) = self.in_words(text)
        {
            return words.into();
        }
        self.fact(&fact.value)
    }

    /// Says a list of loads as the fleet's files name them: those that are common in the reader's language.
    fn loads(&self, names: &str) -> String {
        let names = names.split(", ").map(|name| self.load(name));
        names.collect::<Vec<_>>().join(", ")
    }

    fn load(&self, name: &str) -> String {
        let (what, room) = match name.split_once(" room ") {
            Some((what, room)) => (what, Some(room)),
            None => (name, None),
        };
        let key = format!("part-{}", what.to_lowercase().replace(' ', "-"));
        match (self.knows(&key), room) {
            (false, _) => self.plain(name).into_owned(),
            (true, None) => self.word(&key),
            (true, Some(room)) => {
                let room = self.plain(room);
                self.say(
                    "part-of-room",
                    &[("what", self.word(&key).into()), ("name", Arg::Text(room))],
                )
            }
        }
    }

    /// Says a list of codes in words; none where one of them is no code of ours.
    fn in_words(&self, codes: &str) -> Option<String> {
        let words = codes.split(", ").map(|code| {
            let key = format!("value-{code}");
            self.knows(&key).then(|| self.word(&key))
        });
        Some(words.collect::<Option<Vec<_>>>()?.join(", "))
    }

    fn fact_line(&self, fact: &Fact) -> String {
        let name = self.fact_name(&fact.name);
        let value = self.show(&self.spoken(fact));
        let origin = self.word(match fact.origin {
            Origin::Read => "origin-read",
            Origin::Spec => "origin-spec",
            Origin::Assumed => "origin-assumed",
            Origin::Computed => "origin-computed",
            Origin::Report => "origin-report",
            Origin::Limit => "origin-limit",
        });
        if let FactValue::Number(hours, measure) = fact.value
            && fact.name == "book_in"
            && hours < 0.0
        {
            let args = [
                ("value", Arg::Number(-hours, measure)),
                ("origin", origin.into()),
            ];
            return self.say("why-book-late", &args);
        }
        self.say(
            "why-fact",
            &[
                ("name", name.into()),
                ("value", value.into()),
                ("origin", origin.into()),
            ],
        )
    }

    fn fact_name(&self, name: &str) -> String {
        let key = format!("fact-{}", name.replace('_', "-"));
        if self.knows(&key) {
            self.word(&key)
        } else {
            name.replace(['_', '-'], " ")
        }
    }

    /// Says the source: standards and papers stand as they are cited, the trade's own practice and what was taken from
    /// memory in the reader's words. What a formula answers where it has no value is for programs.
    pub fn source(&self, source: &str) -> String {
        let parts = source
            .split("; ")
            .filter(|part| !part.starts_with("null "))
            .map(|part| match part {
                COMMON_PRACTICE => self.word("source-common-practice"),
                "common practice" => self.word("source-practice"),
                part => part
                    .replace(COMMON_PRACTICE, &self.word("source-common-practice"))
                    .replace("from memory", &self.word("source-memory"))
                    .replace("common practice", &self.word("source-practice")),
            });
        parts.collect::<Vec<_>>().join("; ")
    }
}

/// How a rule marks what the trade does and no publication states.
const COMMON_PRACTICE: &str = "common practice, no source";
