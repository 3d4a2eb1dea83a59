//! What crews say of a truck in words that are read for something else, put as it is read: a truck that left is no trailer
//! that leaves, one that is not wanted is none ordered, and what waits for a truck calls none.

use super::super::Desk;
use super::super::others::called;
use super::super::phrases::{Phrases, plain};
use super::super::settle;
use crate::finding::TaskKind;
use crate::fleet::Fleet;
use crate::heard::UnitName;

/// The most words of one phrase.
const LONGEST: usize = 5;

/// A text by its words, as typed and folded.
struct Spoken<'t> {
    phrases: &'static Phrases,
    typed: Vec<&'t str>,
    folded: Vec<String>,
}

/// Puts a message about a truck as it is read; none where it is read as it stands.
pub(in crate::desk) fn reworded(desk: &Desk, fleet: &Fleet, text: &str) -> Option<String> {
    if text.contains('\n') {
        return None;
    }
    let typed: Vec<&str> = text.split_whitespace().collect();
    let folded = typed.iter().map(|word| plain(word)).collect();
    let phrases = desk.phrases;
    let spoken = Spoken {
        phrases,
        typed,
        folded,
    };
    let is_unit = |word: &str| settle::known(fleet, &UnitName::new(word)).is_some();
    spoken
        .without_a_wait()
        .or_else(|| spoken.minutes_away())
        .or_else(|| spoken.unwanted())
        .or_else(|| spoken.without_a_truck_gone(is_unit))
        .or_else(|| spoken.asks_for_a_pump())
        .or_else(|| spoken.refilled(desk, fleet))
        .or_else(|| spoken.gone_on_to(desk, fleet))
}

impl Spoken<'_> {
    /// Returns how many words from `at` on are a phrase of a list; none where they are not.
    fn list(&self, list: &str, at: usize) -> Option<usize> {
        self.of("truck-said", list, at)
    }

    fn of(&self, topic: &str, list: &str, at: usize) -> Option<usize> {
        let most = LONGEST.min(self.folded.len().saturating_sub(at));
        let is = |count: &usize| {
            let words = self.folded[at..at + count].join(" ");
            self.phrases.is(topic, list, &words)
        };
        (1..=most).rev().find(is)
    }

    fn ends_a_clause(&self, at: usize) -> bool {
        self.typed[at].ends_with([',', '.', ';', '!'])
    }

    /// Returns the text with other words in place of some.
    fn with(&self, from: usize, to: usize, instead: &str) -> Option<String> {
        let mut words: Vec<&str> = self.typed[..from].to_vec();
        if instead.is_empty()
            && to >= self.typed.len()
            && let Some(last) = words.last_mut()
        {
            *last = last.trim_end_matches([',', ';', '-']);
        }
        words.extend((!instead.is_empty()).then_some(instead));
        words.extend(&self.typed[to..]);
        let text = words.join(" ");
        (!text.trim().is_empty()).then_some(text)
    }

    /// "Close 12 until the truck comes": no truck is called by it.
    fn without_a_wait(&self) -> Option<String> {
        (1..self.typed.len()).find_map(|at| {
            let until = at + self.list("waits-until", at)?;
            let end = match self.list("comes-whole", until) {
                Some(count) => until + count,
                None => {
                    let subject = until + self.list("subject", until)?;
                    subject + self.list("comes-then", subject)?
                }
            };
            // with its hour it is told when it comes
            let last = end >= self.typed.len() || self.ends_a_clause(end - 1);
            last.then(|| self.with(at, end, ""))?
        })
    }

    /// "Trucks 20 min away": it is the truck that is, and nobody of the crew.
    fn minutes_away(&self) -> Option<String> {
        let from = self.list("article", 0).unwrap_or(0);
        let at = from + self.list("subject", from)?;
        let at = at + self.list("is", at).unwrap_or(0);
        let about = self.list("about", at).unwrap_or(0);
        // "está a 20 minutos" says it by itself
        let apart = about > 0 && self.list("at-distance", at).is_some();
        let at = at + about;
        let (number, glued) = self.count(at)?;
        let end = match glued {
            true => at + 1,
            false => at + 1 + self.list("minutes", at + 1)?,
        };
        let away = self.list("away", end);
        let end = end + away.or(apart.then_some(0))?;
        if away.is_none() && end < self.typed.len() {
            return None;
        }
        self.with(0, end, &format!("truck comes in {number} min"))
    }

    /// Reads "20" or "20min"; whether its measure is glued to it.
    fn count(&self, at: usize) -> Option<(u32, bool)> {
        let word = self.folded.get(at)?;
        let digits = word.trim_end_matches(char::is_alphabetic);
        let measure = &word[digits.len()..];
        let glued = self.phrases.is("truck-said", "minutes", measure);
        let number = digits
            .parse()
            .ok()
            .filter(|_| glued || measure.is_empty())?;
        Some((number, glued))
    }

    /// "Dont send a truck to 10", "10 needs no truck": none is wanted.
    fn unwanted(&self) -> Option<String> {
        (0..self.typed.len()).find_map(|at| {
            let (count, refuses) = match self.list("refuses-one", at) {
                Some(count) => (count, "dont need a"),
                None => (self.list("refuses-one-es", at)?, "ya no necesito"),
            };
            let end = at + count;
            let end = end + self.list("article", end).unwrap_or(0);
            let truck = self.of("truck", "who", end)?;
            let word = self.typed[end..end + truck].join(" ");
            self.with(at, end + truck, &format!("{refuses} {word}"))
        })
    }

    /// "430 gal and he left", "truck left 10, tank still 1/2": what left is the truck. Told alone it is read as it stands.
    fn without_a_truck_gone(&self, is_unit: impl Fn(&str) -> bool) -> Option<String> {
        let hauled = self.folded.iter().enumerate().any(|(at, word)| {
            let gallons = word.ends_with("gal") || self.list("gallons", at).is_some();
            gallons
                || self.of("truck", "pumped", at).is_some()
                || self.of("truck", "took", at).is_some()
        });
        let came = || (0..self.typed.len()).any(|at| self.of("truck", "past", at).is_some());
        (0..self.typed.len()).find_map(|at| {
            let joined = at + self.list("joins", at).unwrap_or(0);
            let joined = joined + self.list("joins", joined).unwrap_or(0);
            let end = match self.list("goer", joined) {
                Some(subject) => joined + subject + self.list("goes-off", joined + subject)?,
                None => joined + self.list("gone-whole", joined)?,
            };
            let last = end >= self.typed.len();
            // "all done truck rolled out"
            let filler = |i: usize| self.list("all-done", i).is_some();
            let whole =
                last && !hauled && (0..at).all(filler) && self.of("truck", "who", joined).is_some();
            let known = || self.phrases.holds("truck", "left", &self.typed.join(" "));
            if whole && (at > 0 || !known()) {
                return Some("truck left".to_owned());
            }
            if at > 0 {
                let alone = last || self.ends_a_clause(end - 1);
                let rest = (alone && (hauled || came())).then(|| self.with(at, end, ""))??;
                return Some(pumped(self.phrases, &rest).unwrap_or(rest));
            }
            let unit = self.folded.get(end).filter(|word| is_unit(word))?;
            let more = end + 1 < self.typed.len() && self.ends_a_clause(end);
            more.then(|| self.with(at, end + 1, &format!("{unit},")))?
        })
    }

    /// "Necesito una bomba para la 6": a truck, and no pump of the trailer's.
    fn asks_for_a_pump(&self) -> Option<String> {
        let count = self.list("pump-asked", 0)?;
        self.with(0, count, "necesito un camion")
    }

    /// "Refilled 6", "6 filled", "llené la 6": the fresh water that a task asks for.
    fn refilled(&self, desk: &Desk, fleet: &Fleet) -> Option<String> {
        let by = usize::from(self.list("refills", 0).is_none() && self.folded.len() > 2);
        let at = match self.list("refills", by) {
            Some(count) => by + count,
            None => 0,
        };
        let behind = at > 0;
        let at = at + self.list("article", at).unwrap_or(0);
        let unit = settle::known(fleet, &UnitName::new(self.folded.get(at)?))?;
        let end = match behind {
            true => at + 1,
            false => at + 1 + self.list("refilled", at + 1)?,
        };
        let by_somebody = by == 0 || !behind || is_somebody(fleet, &self.folded[0]);
        let task = desk.book.tasks().open_task(unit, TaskKind::Refill);
        let whole = end >= self.folded.len() && task.is_some() && by_somebody;
        whole.then(|| format!("{unit} fresh filled"))
    }

    /// "Now hes on 10": the truck that was called for that trailer.
    fn gone_on_to(&self, desk: &Desk, fleet: &Fleet) -> Option<String> {
        let from = self
            .of("truck", "now", 0)
            .or_else(|| self.of("truck", "now-behind", 0));
        let from = from.unwrap_or(0);
        let at = from + self.list("goer", from)?;
        let at = at + self.list("is", at).unwrap_or(0);
        let at = at + self.list("goes-on", at)?;
        let name = UnitName::new(self.folded.get(at)?);
        let unit = settle::known(fleet, &name)?;
        let end = at + 1 + self.of("truck", "now-behind", at + 1).unwrap_or(0);
        let task = desk.book.tasks().open_task(unit, TaskKind::PumpOut)?;
        let its = end >= self.typed.len() && task.called.is_some();
        its.then(|| format!("truck is at {unit} now"))
    }
}

fn is_somebody(fleet: &Fleet, word: &str) -> bool {
    called(fleet.crew.values(), word).is_some()
}

/// "12 truck came, 200 gal": puts what it hauled as pumped.
fn pumped(phrases: &Phrases, text: &str) -> Option<String> {
    let spoken = Spoken {
        phrases: Phrases::built_in(),
        typed: text.split_whitespace().collect(),
        folded: text.split_whitespace().map(plain).collect(),
    };
    let gallons = phrases.holds("truck-said", "gallons", text);
    let told = phrases.holds("truck", "pumped", text);
    let (at, end) = (0..spoken.typed.len()).find_map(|at| {
        let who = at + spoken.list("goer", at)?;
        Some((at, who + spoken.of("truck", "past", who)?))
    })?;
    (gallons && !told).then(|| spoken.with(at, end, "pumped"))?
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fleet::demo;

    #[test]
    fn what_is_said_of_a_truck_is_put_as_it_is_read() {
        let (desk, fleet) = (Desk::default(), demo::fleet());
        for (text, read) in [
            ("430 gal and he left", "430 gal"),
            ("12 truck came, 200 gal, then he left", "12 pumped 200 gal"),
            ("all done truck rolled out", "truck left"),
            (
                "necesito una bomba para la 6 antes de las 9",
                "necesito un camion para la 6 antes de las 9",
            ),
            ("10 pumped 180 gal, truck left", "10 pumped 180 gal"),
            ("12 pumped 430, truck left", "12 pumped 430"),
            (
                "la 6 vaciada 200 galones y ya se fue",
                "la 6 vaciada 200 galones",
            ),
            ("truck left 10, tank still 1/2", "10, tank still 1/2"),
            ("trucks 20 min away", "truck comes in 20 min"),
            ("the hauler is about 15min out", "truck comes in 15 min"),
            ("el camión está a 20 minutos", "truck comes in 20 min"),
            (
                "dont send a truck to 10 tonight",
                "dont need a truck to 10 tonight",
            ),
            ("10 needs no truck", "10 dont need a truck"),
            ("no mandes pipa a la 10", "ya no necesito pipa a la 10"),
            ("close 12 until the truck comes", "close 12"),
            ("wait with 12 until the truck is there", "wait with 12"),
            ("cierra la 12 hasta que llegue el camión", "cierra la 12"),
        ] {
            assert_eq!(
                reworded(&desk, &fleet, text).as_deref(),
                Some(read),
                "{text}"
            );
        }
        for text in [
            "truck left, 380 gal",
            "truck gone",
            "truck left",
            "12 pumped and left",
            "12 left at 8, pumped 200 gal before",
            "send a truck to 10",
            "close 12 when the truck comes at 8",
            "12 is 20 min away",
            "im 20 min away",
            "truck for 12 comes in 20 min",
        ] {
            assert_eq!(reworded(&desk, &fleet, text), None, "{text}");
        }
    }
}
