//! What a message wants of the bot besides work: to be asked after, to be left alone on the road, one day of the digest,
//! one's own tasks.
//!
//! These are set phrases around at most one number, so they are looked for in the folded text as a whole. Nothing is taken
//! out of the message by it: what else it says is read as ever.

use std::borrow::Cow;

use super::concept::{Concept, Mark, Spoken, Unit};
use super::normal::plain;
use super::read::one_slip;
use super::senses::{Sense, Senses, SensesOf};
use super::vocab::Vocab;
use super::{NamedDay, Reader, named_day};
use crate::heard::{Ask, Heard, Plan, PlanKind, Remark, UnitName};

/// A word that one is well has no more words than this.
const WELL_WORDS: usize = 5;
/// How the digest's plan counts the day after this one, behind the days of the week.
const TOMORROW: u8 = 7;
/// Minutes that a lone worker's clock may run.
const MINUTES: std::ops::RangeInclusive<u32> = 1..=240;

/// Finds the wishes of a message that is otherwise read.
pub(super) fn find(reader: &Reader, text: &str, original: &str, heard: &Heard) -> Vec<Plan> {
    let mut words = Words {
        said: text
            .split(|c: char| !c.is_alphanumeric())
            .filter(|word| !word.is_empty())
            .map(bare)
            .collect(),
        vocab: &reader.vocab,
        senses: &reader.senses,
    };
    words.mend_check_me();
    let opened = words
        .said
        .iter()
        .map(|word| reader.senses.opened_by(word))
        .fold(SensesOf::default(), SensesOf::and);
    let mut found = Vec::new();
    let mut wish = |unit: Option<UnitName>, kind: PlanKind| {
        found.push(Plan {
            unit,
            kind,
            text: original.trim().to_owned(),
        });
    };
    match heard.ask {
        Some(Ask::Digest) => {
            if let Some(day) = words.said.iter().find_map(|word| named_day(word)) {
                let day = match day {
                    NamedDay::Weekday(day) => day,
                    NamedDay::Tomorrow => TOMORROW,
                };
                wish(None, PlanKind::Day { day });
            }
        }
        Some(Ask::Tasks) if words.any(Sense::Mine) => wish(None, PlanKind::Mine),
        _ => {}
    }
    let asked = opened
        .has(Sense::CheckMe)
        .then(|| words.minutes_after(Sense::CheckMe));
    // "going under 12, back in 10"
    let below = opened.has(Sense::GoingUnder) && words.hold(Sense::GoingUnder);
    let beneath = below || opened.has(Sense::Beneath) && words.hold(Sense::Beneath);
    let promised = beneath.then(|| words.minutes_after(Sense::BackIn));
    let minutes = asked.flatten().or(promised.flatten());
    let ahead = || words.hold(Sense::NotOnTheRoadYet);
    if let Some(minutes) = minutes {
        let unit = heard
            .named
            .iter()
            .find(|name| name.as_str() != minutes.to_string());
        let unit = unit.cloned().or_else(|| words.place_of());
        wish(unit, PlanKind::CheckMe { minutes });
    } else if opened.has(Sense::OnTheRoad)
        && heard.ask.is_none()
        && words.hold(Sense::OnTheRoad)
        && !ahead()
    {
        wish(heard.named.first().cloned(), PlanKind::OnTheRoad);
    } else if below
        && heard.ask.is_none()
        && !ahead()
        && let Some(unit) = words.place_of().filter(|unit| no_value(heard, unit))
    {
        wish(Some(unit), PlanKind::GoingUnder);
    } else if heard.ask.is_none()
        && heard.entries.is_empty()
        && !heard.plans.iter().any(orders_work)
        && words.said.len() <= WELL_WORDS
        && words.hold(Sense::Well)
        && !words.deny()
    {
        wish(None, PlanKind::Well);
    }
    found
}

/// "need pump out on 12": the "out" is of the work that is wanted.
fn orders_work(plan: &Plan) -> bool {
    matches!(plan.kind, PlanKind::Need { .. } | PlanKind::Booked { .. })
}

/// "pressure going under 50": no number that was read as a value is a place.
fn no_value(heard: &Heard, unit: &UnitName) -> bool {
    let placed = |remark: &Remark| remark.why == Remark::NOT_UNDERSTOOD;
    heard.named.contains(unit) || heard.entries.is_empty() && heard.unclear.iter().all(placed)
}

/// The words of a message, folded, without accents and signs.
struct Words<'t> {
    said: Vec<Cow<'t, str>>,
    vocab: &'t Vocab,
    senses: &'t Senses,
}

impl Words<'_> {
    /// "chek me in 10": a slip in the word would leave somebody alone unwatched.
    fn mend_check_me(&mut self) {
        for phrase in self.senses.of(Sense::CheckMe) {
            let Some((opener, rest)) = phrase.split_once(' ') else {
                continue;
            };
            for at in 1..self.said.len() {
                let goes_on = self.goes_on(at, rest);
                if goes_on && self.said[at - 1].len() >= 3 && one_slip(&self.said[at - 1], opener) {
                    self.said[at - 1] = Cow::Owned(opener.to_owned());
                }
            }
        }
    }

    fn any(&self, sense: Sense) -> bool {
        self.said.iter().any(|word| self.senses.has(word, sense))
    }

    fn deny(&self) -> bool {
        self.said.iter().any(|word| {
            matches!(
                self.vocab.alone(word),
                Some(Concept::Mark(Mark::Not | Mark::No))
            )
        })
    }

    fn hold(&self, sense: Sense) -> bool {
        let mut phrases = self.senses.of(sense).iter();
        phrases.any(|phrase| self.place(phrase).is_some())
    }

    /// Tells whether `phrase` stands at `from`.
    fn goes_on(&self, from: usize, phrase: &str) -> bool {
        let mut told = self.said[from..].iter();
        phrase
            .split_terminator(' ')
            .all(|wanted| told.next().is_some_and(|word| word == wanted))
    }

    fn place(&self, phrase: &str) -> Option<usize> {
        let (opener, rest) = phrase.split_once(' ').unwrap_or((phrase, ""));
        (0..self.said.len()).find(|at| self.said[*at] == opener && self.goes_on(at + 1, rest))
    }

    /// Returns the minutes behind a phrase of `sense`, after which somebody is to be asked after.
    fn minutes_after(&self, sense: Sense) -> Option<u32> {
        let (start, length) = self.senses.of(sense).iter().find_map(|phrase| {
            let start = self.place(phrase)?;
            Some((start, phrase.split(' ').count()))
        })?;
        let after = &self.said[start + length..];
        // "avísame si la 6 llega a 3/4" is an alarm on a trailer
        let conditional = after
            .first()
            .is_some_and(|word| self.senses.has(word, Sense::OnCondition));
        if conditional {
            return None;
        }
        let (at, number) = after
            .iter()
            .take(4)
            .enumerate()
            .find_map(|(at, word)| Some((at, self.number(word)?)))?;
        // "forty five", "cuarenta y cinco"
        let and =
            |word: &Cow<'_, str>| matches!(self.vocab.alone(word), Some(Concept::Mark(Mark::And)));
        let skip = 1 + usize::from(after.get(at + 1).is_some_and(and));
        let ones = after
            .get(at + skip)
            .filter(|word| number >= 20 && number % 10 == 0 && !starts_with_digit(word))
            .and_then(|word| self.number(word))
            .filter(|ones| *ones < 10);
        let (at, number) = match ones {
            Some(ones) => (at + skip, number + ones),
            None => (at, number),
        };
        let hours = after
            .get(at + 1)
            .is_some_and(|word| self.vocab.measure(word) == Some(Unit::Hour));
        let minutes = if hours { number * 60 } else { number };
        MINUTES.contains(&minutes).then_some(minutes)
    }

    /// Returns the trailer named right after a word for where somebody goes.
    fn place_of(&self) -> Option<UnitName> {
        let at = self
            .said
            .iter()
            .position(|word| self.senses.has(word, Sense::GoesInto))?;
        self.said[at + 1..]
            .iter()
            .take(3)
            .find(|word| word.chars().any(|c| c.is_ascii_digit()))
            .map(|word| UnitName::new(word))
    }

    /// Reads "15", "15min", "fifteen".
    fn number(&self, word: &str) -> Option<u32> {
        if !starts_with_digit(word) {
            return match self.vocab.alone(word) {
                Some(Concept::Spoken(Spoken::Number(n))) => Some(n as u32),
                _ => None,
            };
        }
        let end = word
            .find(|c: char| !c.is_ascii_digit())
            .unwrap_or(word.len());
        let (digits, rest) = word.split_at(end);
        let minutes = rest.is_empty() || self.senses.has(rest, Sense::Minutes);
        digits.parse().ok().filter(|_| minutes)
    }
}

fn starts_with_digit(word: &str) -> bool {
    word.starts_with(|c: char| c.is_ascii_digit())
}

/// Takes the accents off: people on phones leave them out.
fn bare(word: &str) -> Cow<'_, str> {
    if word.is_ascii() {
        Cow::Borrowed(word)
    } else {
        Cow::Owned(plain(word))
    }
}

#[cfg(test)]
mod tests {
    use super::super::Reader;
    use super::*;
    use crate::quantity::TemperatureScale;

    fn wishes(text: &str) -> Vec<(Option<String>, PlanKind)> {
        let heard = Reader::new().hear(text, TemperatureScale::F);
        let plans = heard.plans.into_iter();
        plans
            .filter(|plan| plan.kind != PlanKind::Other)
            .map(|plan| (plan.unit.map(|unit| unit.to_string()), plan.kind))
            .collect()
    }

    #[test]
    fn a_lone_worker_names_place_and_minutes_in_either_language() {
        for text in [
            "going under 21, check me in 15",
            "going under 21. check on me in 15 min",
            "voy debajo de la 21, revísame en 15 minutos",
            "me meto debajo de la 21 a solas, avísame en quince",
        ] {
            let unit = Some("21".to_owned());
            assert_eq!(
                wishes(text),
                [(unit, PlanKind::CheckMe { minutes: 15 })],
                "{text}"
            );
        }
        assert_eq!(
            wishes("check me in 1 hour"),
            [(None, PlanKind::CheckMe { minutes: 60 })]
        );
        assert_eq!(wishes("check me when you can"), []);
    }

    #[test]
    fn a_slip_leaves_nobody_unwatched_and_who_names_no_time_is_known_to_be_below() {
        let unit = || Some("16".to_owned());
        assert_eq!(
            wishes("going under 16 chek me in 10"),
            [(unit(), PlanKind::CheckMe { minutes: 10 })]
        );
        assert_eq!(
            wishes("im going under 16 now"),
            [(unit(), PlanKind::GoingUnder)]
        );
        assert_eq!(
            wishes("me meto debajo de la 16"),
            [(unit(), PlanKind::GoingUnder)]
        );
        assert_eq!(wishes("12 pressure going under 50 psi"), []);
    }

    #[test]
    fn who_is_on_the_road_says_so_and_who_will_be_is_not() {
        assert_eq!(wishes("rolling"), [(None, PlanKind::OnTheRoad)]);
        let on_my_way = wishes("on my way to 12");
        assert!(on_my_way.contains(&(Some("12".into()), PlanKind::OnTheRoad)));
        assert!(
            wishes("voy en camino a la 12").contains(&(Some("12".into()), PlanKind::OnTheRoad))
        );
        for text in ["rolling in ten", "will text when on my way"] {
            assert!(
                !wishes(text)
                    .iter()
                    .any(|(_, kind)| *kind == PlanKind::OnTheRoad),
                "{text}"
            );
        }
    }

    #[test]
    fn a_digest_may_name_its_day_and_tasks_their_owner() {
        assert_eq!(wishes("digest friday"), [(None, PlanKind::Day { day: 4 })]);
        assert_eq!(wishes("resumen sábado"), [(None, PlanKind::Day { day: 5 })]);
        assert_eq!(wishes("my tasks"), [(None, PlanKind::Mine)]);
        assert_eq!(wishes("mis tareas"), [(None, PlanKind::Mine)]);
        assert_eq!(wishes("tasks"), []);
    }
}
