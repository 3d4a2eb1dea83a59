//! Values that what stands beside them makes doubtful: they are asked about, not logged.

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
    let word = |i: usize| matches!(items.get(i).map(|n| n.what), Some(What::Word { .. }));
    let mut doubtful: std::collections::BTreeSet<usize> = std::collections::BTreeSet::new();
    for (n, p) in placed.iter().enumerate() {
        if !matches!(p.value, Value::Unclear("no-place" | "no-measure")) {
            continue;
        }
        let chunk = items[p.at].chunk;
        doubtful.insert(chunk);
        // "14 has 2, no wiat 3", "PSI 60, PIS 80": a slip for a correction or a noun
        let lone = [n.checked_sub(1), Some(n + 1)]
            .into_iter()
            .flatten()
            .all(|m| placed.get(m).is_none_or(|q| items[q.at].chunk != chunk));
        let strange = word(p.at + 1) || p.at > 0 && word(p.at - 1);
        if lone && strange {
            let near = |q: Option<&attach::Placed>| {
                q.map(|q| items[q.at].chunk)
                    .filter(|c| c.abs_diff(chunk) <= 2)
            };
            doubtful.extend(n.checked_sub(1).and_then(|m| near(placed.get(m))));
            doubtful.extend(near(placed.get(n + 1)));
        }
    }
    // "battery 11.9 an our ago, 12.4 now": a second value, of now, that has no place of its own
    for pair in placed.windows(2) {
        let [a, b] = [&pair[0], &pair[1]];
        let here = |i: &usize| items[*i].chunk == items[b.at].chunk;
        let now = (b.at.saturating_sub(4)..items.len().min(b.at + 4))
            .filter(here)
            .any(|i| items[i].is(Mark::Now));
        if now
            && b.value == Value::Unclear("no-place")
            && items[a.at].sentence == items[b.at].sentence
        {
            doubtful.insert(items[a.at].chunk);
        }
    }
    // "7 waste 1/2, I mena 3/4": a second level that no tank claims, beside a word that says nothing here
    for pair in placed.windows(2) {
        let [a, b] = [&pair[0], &pair[1]];
        let level = matches!(
            a.value,
            Value::Reading(ReadingKey::WastePct | ReadingKey::FreshPct, _)
        );
        let second = b.value == Value::Unclear("which-tank") && items[b.at].number().is_some();
        if level
            && second
            && b.at > 0
            && word(b.at - 1)
            && items[a.at].sentence == items[b.at].sentence
        {
            doubtful.insert(items[a.at].chunk);
        }
    }
    // "48 fresh 40%, scrtach that, 45%", "tank full on 12. ank empty": a second level without a tank, after a word
    // nobody knows
    for pair in placed.windows(2) {
        let [a, b] = [&pair[0], &pair[1]];
        let level = matches!(
            a.value,
            Value::Reading(ReadingKey::WastePct | ReadingKey::FreshPct, _)
        );
        let between = a.at + 1..b.at;
        let odd = between
            .clone()
            .any(|i| items[i].what == What::Word { ordinary: false });
        let second = matches!(
            b.value,
            Value::Unclear("which-tank" | "no-measure" | "no-number" | "beside-unplaced")
        );
        if level && second && odd && items[a.at].sentence + 1 >= items[b.at].sentence {
            doubtful.insert(items[a.at].chunk);
        }
    }
    // "24 wase empty. 24 waste half"
    for pair in placed.windows(2) {
        let [a, b] = [&pair[0], &pair[1]];
        let lost = a.value == Value::Unclear("which-tank")
            && a.at > 0
            && items[a.at - 1].what == (What::Word { ordinary: false });
        let level = matches!(
            b.value,
            Value::Reading(ReadingKey::WastePct | ReadingKey::FreshPct, _)
        );
        if lost && level && items[a.at].sentence + 1 >= items[b.at].sentence {
            doubtful.insert(items[b.at].chunk);
        }
    }
    // "24 waste epty. 24 waste half": a level that cannot be read, and another of the same tank
    for p in placed.iter() {
        if p.value == Value::Unclear("no-number") && p.noun.is_some() {
            let alike = placed.iter().filter(|q| {
                q.noun == p.noun && items[q.at].sentence.abs_diff(items[p.at].sentence) <= 1
            });
            doubtful.extend(alike.map(|q| items[q.at].chunk));
        }
    }
    // "50% clean 70% clean": two levels in one breath, and one of them without a tank
    for p in placed.iter() {
        if p.value == Value::Unclear("which-tank")
            && items[p.at].number().is_some()
            && placed.iter().any(|q| {
                q.at != p.at
                    && items[q.at].chunk == items[p.at].chunk
                    && matches!(
                        q.value,
                        Value::Reading(ReadingKey::WastePct | ReadingKey::FreshPct, _)
                    )
            })
        {
            doubtful.insert(items[p.at].chunk);
        }
    }
    if doubtful.is_empty() {
        return;
    }
    for p in placed.iter_mut() {
        if matches!(p.value, Value::Reading(..) | Value::Amps(..))
            && doubtful.contains(&items[p.at].chunk)
        {
            p.value = Value::Unclear("beside-unplaced");
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
