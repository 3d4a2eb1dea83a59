//! Earlier times that a word gives: yesterday 21:00, last night around 9, this morning.

use super::{Aside, Scope, Sentence, set};
use crate::words::concept::{AskWord, Concept, Mark, Noun, Unit};
use crate::words::item::{Item, Number, What};

/// An earlier time that a word gives.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::words) enum Day {
    /// The day before, with a clock time beside it.
    Yesterday,
    /// The night before, with a clock time beside it.
    LastNight,
    /// This day, before noon.
    Morning,
    /// So many minutes ago.
    Ago(u16),
}

impl Day {
    /// Returns the time as an entry prints it, with the clock time that stands beside the word.
    pub(in crate::words) fn said(self, minutes: Option<u16>) -> String {
        const MORNING: u16 = 5 * 60;
        const NOON: u16 = 12 * 60;
        let Some(minutes) = minutes else {
            return match self {
                Day::Ago(minutes) => format!("{minutes} min ago"),
                _ => "this morning".into(),
            };
        };
        let minutes = minutes % EITHER_HALF;
        match self {
            Day::Morning | Day::Ago(_) => clock(minutes),
            Day::Yesterday => format!("yesterday {}", clock(minutes)),
            // twelve to five at night is of this day; nine of last night is in the evening, however it is written
            Day::LastNight if minutes < MORNING => clock(minutes),
            Day::LastNight if minutes / 60 == 12 => clock(minutes % 60),
            Day::LastNight if minutes < NOON => format!("yesterday {}", clock(minutes + NOON)),
            Day::LastNight => format!("yesterday {}", clock(minutes)),
        }
    }
}

/// Added to an hour that is told without its half of the day: "at 4", "a las 4".
pub(in crate::words) const EITHER_HALF: u16 = 24 * 60;

/// Returns a time of day as an entry prints it; one of either half of the day without a zero in front: "4:00".
pub(in crate::words) fn clock(minutes: u16) -> String {
    if minutes > EITHER_HALF {
        return format!("{}:{:02}", minutes / 60 % 24, minutes % 60);
    }
    format!("{:02}:{:02}", minutes / 60 % 24, minutes % 60)
}

/// Marks what is given for an earlier time: with a clock time it keeps that, without one it is set aside.
pub(super) fn days(items: &[Item], sentences: &[Sentence], scope: &mut [Scope]) {
    for (number, sentence) in sentences.iter().enumerate() {
        for at in sentence.start..sentence.end {
            let day = match items[at].what {
                What::Is(Concept::Mark(Mark::Yesterday)) => Day::Yesterday,
                What::Is(Concept::Mark(Mark::LastNight)) => Day::LastNight,
                What::Is(Concept::Mark(Mark::Morning)) => Day::Morning,
                // "yesterday's numbers:" over what they were
                What::Is(Concept::Ask(AskWord::History)) if heads(items, sentence, at) => {
                    Day::Yesterday
                }
                What::Number(n) => match ago(items, at, n) {
                    Some(minutes) => Day::Ago(minutes),
                    None => continue,
                },
                _ => continue,
            };
            let mut range = reach(items, sentence, at);
            if heads(items, sentence, at) {
                range.end = sentences[number + 1..]
                    .iter()
                    .take_while(|s| !items[s.start..s.end].iter().any(timed))
                    .last()
                    .map_or(range.end, |s| s.end);
            }
            let clock = range
                .clone()
                .any(|i| matches!(items[i].what, What::Clock(_)));
            if matches!(day, Day::Morning | Day::Ago(_)) || clock {
                for s in &mut scope[range] {
                    s.day = s.day.or(Some(day));
                }
            } else {
                set(scope, range, Aside::EarlierDay);
            }
        }
    }
}

/// Returns what the word at `at` is said of: its chunk, or where it stands alone in that what follows, else what went
/// before.
fn reach(items: &[Item], sentence: &Sentence, at: usize) -> std::ops::Range<usize> {
    let chunk = items[at].chunk;
    let start = (sentence.start..at)
        .rev()
        .take_while(|i| items[*i].chunk == chunk)
        .last()
        .unwrap_or(at);
    let end = (at..sentence.end)
        .find(|i| items[*i].chunk != chunk)
        .unwrap_or(sentence.end);
    let opens = items[sentence.start..at]
        .iter()
        .all(|i| i.is_filler() || i.is(Mark::Call) || matches!(i.what, What::Sign(_)));
    if items[start..end].iter().any(says) && !opens {
        return start..end;
    }
    // "rough night last night, 22 waste at 3/4": only the night is of yesterday
    let chatter = items[start..end]
        .iter()
        .any(|i| matches!(i.what, What::Word { .. }));
    if chatter && !opens {
        return start..end;
    }
    if opens || !items[sentence.start..start].iter().any(says) {
        // "yesterday, 12 waste 3/4, fresh 1/2": all of it, until a word of another time
        let end = (end..sentence.end)
            .find(|i| timed(&items[*i]))
            .and_then(|i| (end..=i).find(|j| items[*j].chunk == items[i].chunk))
            .unwrap_or(sentence.end);
        return start..end;
    }
    // "12 waste 3/4, that was yesterday"
    let before = start.checked_sub(1).map_or(chunk, |i| items[i].chunk);
    let from = (sentence.start..start)
        .find(|i| items[*i].chunk == before)
        .unwrap_or(start);
    from..end
}

/// "Yesterday's numbers:" on a line of its own heads those below it.
fn heads(items: &[Item], sentence: &Sentence, at: usize) -> bool {
    let colon = items[at..sentence.end]
        .iter()
        .rev()
        .find(|i| i.what != What::Break)
        .is_some_and(|i| i.what == What::Sign(':'));
    colon && !items[sentence.start..sentence.end].iter().any(says)
}

/// "20 minutes ago", "hace 20 minutos", where `hace` is otherwise the air's: how long ago.
fn ago(items: &[Item], at: usize, number: Number) -> Option<u16> {
    let minutes = match number.unit? {
        Unit::Minute => number.value,
        Unit::Hour => number.value * 60.0,
        _ => return None,
    };
    let said = items.get(at + 1).is_some_and(|n| n.is(Mark::Ago))
        || at > 0 && items[at - 1].noun() == Some(Noun::Air);
    (said && (0.0..=720.0).contains(&minutes)).then_some(minutes as u16)
}

/// Tells whether an item speaks of a time.
fn timed(item: &Item) -> bool {
    item.is(Mark::Now) || item.is(Mark::Yesterday) || item.is(Mark::LastNight)
}

/// Tells whether an item says something that could be logged.
fn says(item: &Item) -> bool {
    if let Some(number) = item.number() {
        return !matches!(number.unit, Some(Unit::Minute | Unit::Hour));
    }
    matches!(
        item.what,
        What::Range(..)
            | What::Is(
                Concept::Noun(_)
                    | Concept::State(_)
                    | Concept::Event(_)
                    | Concept::Fault(_)
                    | Concept::Clears(_)
                    | Concept::Level(_)
            )
    )
}
