//! Values that what stands beside them makes doubtful: they are asked about, not logged.

use std::collections::BTreeSet;

use crate::heard::ReadingKey;
use crate::words::attach;
use crate::words::concept::{Mark, Noun, Unit};
use crate::words::item::{Form, Item, What};
use crate::words::scope;

/// "pressure 55, then again maybe it was 65": a value that the sender then doubts is asked about.
pub(super) fn doubted_again(
    items: &[Item],
    scopes: &[scope::Scope],
    placed: &mut [attach::Placed],
) {
    use attach::Value;
    for n in 1..placed.len() {
        let (before, p) = (placed[n - 1], placed[n]);
        let bare = p.noun.is_none() || p.noun == before.noun;
        let alike = items[before.at]
            .number()
            .zip(items[p.at].number())
            .is_some_and(|(a, b)| {
                (a.form == Form::Part) == (b.form == Form::Part)
                    && (b.unit.is_none() || a.unit == b.unit)
            });
        if scopes[p.at].doubt
            && !scopes[before.at].doubt
            && bare
            && alike
            && items[before.at].sentence == items[p.at].sentence
            && !matches!(p.value, Value::Label)
            && matches!(before.value, Value::Reading(..))
        {
            placed[n - 1].value = Value::Unclear("doubt");
        }
    }
}

/// "winds 20 gusting 35": the gust is what the trailer and its crew have to stand.
pub(super) fn gusts_over_winds(items: &[Item], placed: &mut [attach::Placed]) {
    use attach::Value;
    let gusts: Vec<(usize, f64)> = placed
        .iter()
        .filter_map(|p| match p.value {
            Value::Reading(ReadingKey::WindMph, gust) if p.noun == Some(Noun::Gust) => {
                Some((items[p.at].sentence, gust))
            }
            _ => None,
        })
        .collect();
    for p in placed.iter_mut() {
        if let Value::Reading(ReadingKey::WindMph, wind) = p.value
            && p.noun != Some(Noun::Gust)
            && gusts
                .iter()
                .any(|(sentence, gust)| *sentence == items[p.at].sentence && wind <= *gust)
        {
            p.value = Value::Label;
        }
    }
}

/// A number without a place beside a word nobody knows makes the values of its chunk doubtful: the word may be a slip
/// for "to", for a noun or for a measure. So does one beside values where no trailer is named.
pub(super) fn drop_beside_unplaced(items: &[Item], placed: &mut [attach::Placed]) {
    use attach::Value;
    let mut doubtful = BTreeSet::new();
    beside_no_place(items, placed, &mut doubtful);
    for pair in placed.windows(2) {
        let pair = Pair {
            items,
            a: &pair[0],
            b: &pair[1],
        };
        if pair.second_of_now() || pair.second_level() || pair.level_after_a_strange_word() {
            doubtful.insert(items[pair.a.at].chunk);
        }
        if pair.first_level_lost() {
            doubtful.insert(items[pair.b.at].chunk);
        }
    }
    beside_a_name_left_over(items, placed, &mut doubtful);
    unread_levels(items, placed, &mut doubtful);
    two_levels_in_one_breath(items, placed, &mut doubtful);
    for p in placed.iter_mut() {
        if matches!(p.value, Value::Reading(..) | Value::Amps(..))
            && doubtful.contains(&items[p.at].chunk)
        {
            p.value = Value::Unclear("beside-unplaced");
        }
    }
}

fn is_word(items: &[Item], at: usize) -> bool {
    matches!(items.get(at).map(|n| n.what), Some(What::Word { .. }))
}

fn is_level(value: attach::Value) -> bool {
    matches!(
        value,
        attach::Value::Reading(ReadingKey::WastePct | ReadingKey::FreshPct, _)
    )
}

/// "14 has 2, no wiat 3", "PSI 60, PIS 80": the chunk of a number without a place, and those beside it where the word is
/// a slip for a correction or a noun.
fn beside_no_place(items: &[Item], placed: &[attach::Placed], doubtful: &mut BTreeSet<usize>) {
    for (n, p) in placed.iter().enumerate() {
        if !matches!(p.value, attach::Value::Unclear("no-place" | "no-measure")) {
            continue;
        }
        let chunk = items[p.at].chunk;
        doubtful.insert(chunk);
        let beside = || {
            let before = n.checked_sub(1).and_then(|m| placed.get(m));
            [before, placed.get(n + 1)].into_iter().flatten()
        };
        let lone = beside().all(|q| items[q.at].chunk != chunk);
        let strange = is_word(items, p.at + 1) || p.at > 0 && is_word(items, p.at - 1);
        if lone && strange {
            let chunks = beside().map(|q| items[q.at].chunk);
            doubtful.extend(chunks.filter(|c| c.abs_diff(chunk) <= 2));
        }
    }
}

/// "12 arrived, 14", and on the next line "temp 60": the number that ends its line may name the trailer of the next one.
fn beside_a_name_left_over(
    items: &[Item],
    placed: &[attach::Placed],
    doubtful: &mut BTreeSet<usize>,
) {
    let left_over = |p: &&attach::Placed| {
        p.value == attach::Value::Unclear("no-place")
            && p.at > 0
            && items[p.at - 1].what == What::Sign(',')
            && items.get(p.at + 1).is_some_and(|n| n.what == What::Break)
    };
    for p in placed.iter().filter(left_over) {
        let line = || {
            items[p.at + 2..]
                .iter()
                .take_while(|i| i.what != What::Break)
        };
        if line().all(|i| !matches!(i.what, What::Units(_))) {
            doubtful.extend(line().map(|i| i.chunk));
        }
    }
}

/// Two values, one after the other.
struct Pair<'a> {
    items: &'a [Item],
    a: &'a attach::Placed,
    b: &'a attach::Placed,
}

impl Pair<'_> {
    fn in_one_sentence(&self) -> bool {
        self.items[self.a.at].sentence == self.items[self.b.at].sentence
    }

    fn in_one_sentence_or_the_next(&self) -> bool {
        self.items[self.a.at].sentence + 1 >= self.items[self.b.at].sentence
    }

    /// "battery 11.9 an our ago, 12.4 now": a second value, of now, that has no place of its own.
    fn second_of_now(&self) -> bool {
        let (items, at) = (self.items, self.b.at);
        let near = at.saturating_sub(4)..items.len().min(at + 4);
        let now = near
            .filter(|i| items[*i].chunk == items[at].chunk)
            .any(|i| items[i].is(Mark::Now));
        now && self.b.value == attach::Value::Unclear("no-place") && self.in_one_sentence()
    }

    /// "7 waste 1/2, I mena 3/4": a second level that no tank claims, beside a word that says nothing here.
    fn second_level(&self) -> bool {
        let at = self.b.at;
        let second = self.b.value == attach::Value::Unclear("which-tank")
            && self.items[at].number().is_some();
        is_level(self.a.value)
            && second
            && at > 0
            && is_word(self.items, at - 1)
            && self.in_one_sentence()
    }

    /// "48 fresh 40%, scrtach that, 45%", "tank full on 12. ank empty": a second level without a tank, after a word nobody
    /// knows.
    fn level_after_a_strange_word(&self) -> bool {
        let odd = (self.a.at + 1..self.b.at)
            .any(|i| self.items[i].what == What::Word { ordinary: false });
        let second = matches!(
            self.b.value,
            attach::Value::Unclear("which-tank" | "no-measure" | "no-number" | "beside-unplaced")
        );
        is_level(self.a.value) && second && odd && self.in_one_sentence_or_the_next()
    }

    /// "24 wase empty. 24 waste half".
    fn first_level_lost(&self) -> bool {
        let at = self.a.at;
        let lost = self.a.value == attach::Value::Unclear("which-tank")
            && at > 0
            && self.items[at - 1].what == (What::Word { ordinary: false });
        lost && is_level(self.b.value) && self.in_one_sentence_or_the_next()
    }
}

/// "24 waste epty. 24 waste half": a level that cannot be read, and another of the same tank.
fn unread_levels(items: &[Item], placed: &[attach::Placed], doubtful: &mut BTreeSet<usize>) {
    for p in placed {
        if p.value == attach::Value::Unclear("no-number") && p.noun.is_some() {
            let alike = placed.iter().filter(|q| {
                q.noun == p.noun && items[q.at].sentence.abs_diff(items[p.at].sentence) <= 1
            });
            doubtful.extend(alike.map(|q| items[q.at].chunk));
        }
    }
}

/// "50% clean 70% clean": two levels in one breath, and one of them without a tank.
fn two_levels_in_one_breath(
    items: &[Item],
    placed: &[attach::Placed],
    doubtful: &mut BTreeSet<usize>,
) {
    for p in placed {
        let untold = p.value == attach::Value::Unclear("which-tank");
        let beside = |q: &attach::Placed| {
            q.at != p.at && items[q.at].chunk == items[p.at].chunk && is_level(q.value)
        };
        if untold && items[p.at].number().is_some() && placed.iter().any(beside) {
            doubtful.insert(items[p.at].chunk);
        }
    }
}

/// "12 volts 118 psi": a trailer with its volts, and a measure that contradicts them; or a battery and a pressure.
pub(super) fn contradicted_label(items: &[Item], placed: &mut [attach::Placed]) {
    use attach::Value;
    let named = items.iter().any(|i| matches!(i.what, What::Units(_)));
    for n in 1..placed.len() {
        let (a, b) = (placed[n - 1].at, placed[n].at);
        let opens = a == 0 || items[a - 1].chunk != items[a].chunk;
        let label = items[a].number().is_some_and(|n| {
            n.unit == Some(Unit::Volt) && n.form == Form::Whole && n.value <= 60.0
        });
        let other = items[b].number().is_some_and(|n| {
            n.unit.is_some_and(|unit| unit != Unit::Volt) && (90.0..=260.0).contains(&n.value)
        });
        if !named && opens && a + 1 == b && items[a].chunk == items[b].chunk && label && other {
            placed[n - 1].value = Value::Unclear("which-unit");
            placed[n].value = Value::Unclear("which-unit");
        }
    }
}
