//! Buttons that were offered with messages: what a press of each means, who may press it where, and until when.
//!
//! A button carries an opaque key. The book keeps its digest only, so that whoever reads the book cannot press.

use std::collections::{BTreeMap, VecDeque};

use chrono::{DateTime, TimeDelta, Utc};
use serde::{Deserialize, Serialize};

use super::record::MessageKey;

/// How long a button can be pressed.
const LASTS: TimeDelta = TimeDelta::hours(72);
/// How long it is known after that, so that pressing it late is told from pressing what was never offered.
const REMEMBERED: TimeDelta = TimeDelta::days(14);
/// How many buttons of one person are known at most.
const MOST_A_PERSON: usize = 160;

/// One button that was offered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Offer {
    /// SHA-256 of its key, in hex.
    pub digest: String,
    /// What the person says by pressing it.
    pub says: String,
    /// What that bears on.
    pub bears: Bears,
}

/// What a press bears on: it counts only while that stands.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Bears {
    /// Nothing that could be over; it can be pressed again and again.
    Anytime,
    /// Nothing that could be over, but once is enough.
    Once,
    /// The question that was asked then.
    Question(DateTime<Utc>),
    /// The step of a guided check that was asked then.
    Step(DateTime<Utc>),
    /// The step of setting up or leaving that was asked then.
    Round(DateTime<Utc>),
    /// The message that is to be taken back.
    Message(MessageKey),
}

/// What becomes of a press.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Pressed<'a> {
    /// It counts.
    Good(&'a Offer),
    /// It was pressed before, and once was enough.
    Spent,
    /// It was offered too long ago.
    Expired,
    /// It was offered to somebody else, or in another chat.
    NotTheirs,
    /// It was never offered.
    Unknown,
}

#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
struct Kept {
    offer: Offer,
    at: DateTime<Utc>,
    #[serde(with = "crate::fleet::personal::number")]
    chat: Option<i64>,
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    spent: bool,
}

/// The buttons that were offered lately, by person, oldest first.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Offers(BTreeMap<String, VecDeque<Kept>>);

impl Offers {
    pub(super) fn take_in(
        &mut self,
        at: DateTime<Utc>,
        who: &str,
        chat: Option<i64>,
        offers: &[Offer],
    ) {
        let kept = self.0.entry(who.to_owned()).or_default();
        kept.extend(offers.iter().map(|offer| Kept {
            offer: offer.clone(),
            at,
            chat,
            spent: false,
        }));
        while kept.len() > MOST_A_PERSON || kept.front().is_some_and(|old| at - old.at > REMEMBERED)
        {
            kept.pop_front();
        }
    }

    /// Notes that a button was pressed. Its like of the same question are spent with it.
    pub(super) fn pressed(&mut self, who: &str, digest: &str) {
        let Some(kept) = self.0.get_mut(who) else {
            return;
        };
        let Some(bears) = kept
            .iter()
            .find(|kept| kept.offer.digest == digest)
            .map(|kept| kept.offer.bears.clone())
        else {
            return;
        };
        let shared = matches!(
            bears,
            Bears::Question(_) | Bears::Step(_) | Bears::Round(_) | Bears::Message(_)
        );
        for kept in kept {
            let same = kept.offer.digest == digest || shared && kept.offer.bears == bears;
            kept.spent |= same && bears != Bears::Anytime;
        }
    }

    /// Forgets all buttons of somebody who is shut out.
    pub(super) fn shut_out(&mut self, who: &str) {
        self.0.remove(who);
    }

    /// Looks a press up by its key's digest: pressed by `who` in `chat` at `at`.
    pub fn press(
        &self,
        digest: &str,
        who: &str,
        chat: Option<i64>,
        at: DateTime<Utc>,
    ) -> Pressed<'_> {
        let of = |kept: &&Kept| kept.offer.digest == digest;
        let theirs = self.0.get(who).and_then(|kept| kept.iter().find(of));
        let Some(kept) = theirs else {
            let somebodys = self.0.values().flatten().any(|kept| of(&kept));
            return match somebodys {
                true => Pressed::NotTheirs,
                false => Pressed::Unknown,
            };
        };
        if kept.chat != chat {
            Pressed::NotTheirs
        } else if at - kept.at > LASTS {
            Pressed::Expired
        } else if kept.spent {
            Pressed::Spent
        } else {
            Pressed::Good(&kept.offer)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(hour: i64) -> DateTime<Utc> {
        DateTime::UNIX_EPOCH + TimeDelta::hours(hour)
    }

    fn offer(digest: &str, bears: Bears) -> Offer {
        Offer {
            digest: digest.into(),
            says: digest.into(),
            bears,
        }
    }

    fn offers() -> Offers {
        let mut offers = Offers::default();
        let question = Bears::Question(at(0));
        let of_one_message = [
            offer("yes", question.clone()),
            offer("no", question),
            offer("why", Bears::Anytime),
            offer("done", Bears::Once),
        ];
        offers.take_in(at(0), "dana", Some(77), &of_one_message);
        offers
    }

    #[test]
    fn a_press_counts_for_its_person_in_its_chat_within_three_days() {
        let offers = offers();
        let good = offers.press("yes", "dana", Some(77), at(72));
        assert!(matches!(good, Pressed::Good(offer) if offer.says == "yes"));
        let late = at(72) + TimeDelta::seconds(1);
        assert_eq!(
            offers.press("yes", "dana", Some(77), late),
            Pressed::Expired
        );
        assert_eq!(
            offers.press("yes", "dana", Some(-5), at(1)),
            Pressed::NotTheirs
        );
        assert_eq!(
            offers.press("yes", "mo", Some(77), at(1)),
            Pressed::NotTheirs
        );
        assert_eq!(
            offers.press("maybe", "dana", Some(77), at(1)),
            Pressed::Unknown
        );
    }

    #[test]
    fn an_answer_spends_its_question_and_nothing_else() {
        let mut offers = offers();
        for digest in ["yes", "why"] {
            offers.pressed("dana", digest);
        }
        let press = |digest| offers.press(digest, "dana", Some(77), at(1));
        assert_eq!(
            (press("yes"), press("no")),
            (Pressed::Spent, Pressed::Spent)
        );
        assert!(matches!(press("why"), Pressed::Good(_)));
        assert!(matches!(press("done"), Pressed::Good(_)));
    }

    #[test]
    fn who_is_shut_out_has_no_buttons_left() {
        let mut offers = offers();
        offers.shut_out("dana");
        assert_eq!(
            offers.press("yes", "dana", Some(77), at(1)),
            Pressed::Unknown
        );
    }

    #[test]
    fn a_person_cannot_fill_the_book() {
        let mut offers = offers();
        for hour in 1..1000 {
            let name = hour.to_string();
            offers.take_in(at(0), "dana", Some(77), &[offer(&name, Bears::Once)]);
        }
        assert_eq!(offers.0["dana"].len(), MOST_A_PERSON);
        offers.take_in(at(24 * 30), "dana", Some(77), &[offer("new", Bears::Once)]);
        assert_eq!(offers.0["dana"].len(), 1, "old ones are forgotten");
    }
}
