//! A low that is told in few words, or mends the one before it: "low -8", "no wait low 18".

use chrono::{DateTime, TimeDelta, Utc};

use super::super::Desk;
use super::super::phrases::plain;
use super::super::receive::Hearing;
use super::super::sites;
use crate::fleet::{CrewMember, Role};

/// A low is mended within this long of its being told.
const MENDED: TimeDelta = TimeDelta::minutes(90);

/// Returns the whole sentence that a dispatcher's word about a low stands for: "low -8", and after one that was told a
/// moment ago "no wait low 18" and "sorry, -18". None where it is no such word.
pub(in super::super) fn spelled_out(
    desk: &Desk,
    member: &CrewMember,
    text: &str,
    at: DateTime<Utc>,
) -> Option<String> {
    if member.role != Role::Dispatcher {
        return None;
    }
    let phrases = desk.phrases;
    if let Some(of_a_site) = without_site(desk, text, at) {
        return Some(of_a_site);
    }
    if let Some(drops) = drops_to(desk, text) {
        return Some(drops);
    }
    let mended = phrases.after("mend", "opens", text);
    let rest = mended.unwrap_or(text);
    let told = phrases.after("weather", "low", rest);
    let told = told.or_else(|| rest.strip_prefix("low ")); // a minus right behind it stays
    let last = desk.book.ahead().weather_of(&member.id);
    let last = last.filter(|last| !last.air);
    let lately = last.is_some_and(|last| at >= last.at && at - last.at <= MENDED);
    let newest = |at: DateTime<Utc>| {
        let mut sent = desk.book.sent(&member.id).iter();
        !sent.any(|sent| sent.at > at && !sent.units.is_empty())
    };
    let degrees = match (told, mended) {
        (Some(told), _) => told,
        // a bare number mends the low where that was the last thing told
        (None, Some(mended)) if lately && last.is_some_and(|last| newest(last.at)) => mended,
        _ => return None,
    };
    // "12 below" is under zero, which the reader does not know of a low
    let under = phrases.before("weather", "below", degrees);
    let under = under.and_then(below_zero);
    if let Some(under) = under {
        return Some(format!("low tonight {under}"));
    }
    let tonight = |word: &&str| TONIGHT_WORDS.contains(&word.to_lowercase().as_str());
    let words: Vec<&str> = degrees.split_whitespace().collect();
    // the reader knows it by itself
    if mended.is_none() && words.iter().any(tonight) || text.contains("noche") {
        return None;
    }
    let bare: Vec<&str> = words.into_iter().filter(|word| !tonight(word)).collect();
    let bare = bare.join(" ");
    is_degrees(&bare).then(|| format!("low tonight {bare}"))
}

/// Returns a low that is told of a site without the site's name: "low tonight at conduit yard 18F".
fn without_site(desk: &Desk, text: &str, at: DateTime<Utc>) -> Option<String> {
    let fleet = desk.fleet_at(at);
    let site = sites::placed_in(&fleet, text)?;
    let words: Vec<&str> = text.split_whitespace().collect();
    let spelled: Vec<&str> = site.1.split(' ').collect();
    let is_it = |from: &usize| {
        let mut told = words[*from..].iter();
        spelled
            .iter()
            .all(|part| told.next().is_some_and(|word| plain(word) == *part))
    };
    let from = (0..words.len()).find(is_it)?;
    let before = desk.phrases;
    let joins = |word: &&&str| before.is("site", "before", word);
    let start = from - usize::from(words[..from].last().filter(joins).is_some());
    let rest = [&words[..start], &words[from + spelled.len()..]]
        .concat()
        .join(" ");
    if let Some(drops) = drops_to(desk, &rest) {
        return Some(drops);
    }
    let degrees = desk.phrases.after("weather", "low", &rest)?;
    is_degrees(degrees).then_some(rest)
}

/// Reads "va a bajar a 12F esta noche", "dropping to 12F tonight": a low in other words, of this night or with its measure.
fn drops_to(desk: &Desk, text: &str) -> Option<String> {
    let degrees = desk.phrases.after("weather", "drops", text)?;
    let folded = plain(text);
    let tonight = folded.split(' ').any(|word| {
        let digits = word.trim_end_matches(['f', 'c']);
        let measured = digits.len() < word.len() && digits.parse::<u32>().is_ok();
        measured || word == "noche" || TONIGHT_WORDS.contains(&word)
    });
    let bare: Vec<&str> = degrees
        .split_whitespace()
        .filter(|word| !TONIGHT_WORDS.contains(word) && !["esta", "noche"].contains(word))
        .collect();
    let bare = bare.join(" ");
    (tonight && is_degrees(&bare)).then(|| format!("low tonight {bare}"))
}

/// Writes a temperature that is told as so much below zero with its sign; none where more than that is told.
fn below_zero(number: &str) -> Option<String> {
    let bare = number.trim_start_matches(['-', ' ']);
    let told = is_degrees(bare) && bare.starts_with(|c: char| c.is_ascii_digit());
    told.then(|| format!("-{bare}"))
}

/// Words by which a low is of the night to come.
const TONIGHT_WORDS: &[&str] = &["tonight", "tonite", "overnight"];

/// Tells whether words are a temperature and nothing else: "-8", "18F", "minus 14 tonight".
fn is_degrees(words: &str) -> bool {
    const BESIDE: &[&str] = &[
        "minus", "menos", "°f", "°c", "tonight", "tonite", "f", "c", "degrees", "grados", "about",
        "esta", "noche", "now",
    ];
    let folded = words.to_lowercase();
    let mut numbers = 0;
    let known = folded.split_whitespace().all(|word| {
        let word = word.trim_end_matches(['.', ',', '!']);
        let digits = word.trim_end_matches(['°', 'º', 'f', 'c']);
        let is_number = digits.parse::<f64>().is_ok_and(|value| value.abs() < 130.0);
        numbers += usize::from(is_number);
        is_number || BESIDE.contains(&word)
    });
    known && numbers == 1
}

/// Returns the site of the sender's low that a message mends, which names none anew.
pub(super) fn site_mended(hearing: &Hearing<'_>) -> Option<String> {
    hearing
        .desk
        .phrases
        .after("mend", "opens", hearing.written)?;
    let last = hearing.desk.book.ahead().weather_of(&hearing.member.id)?;
    let lately = !last.air && hearing.now - last.at <= MENDED;
    last.site.clone().filter(|_| lately)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_temperature_is_told_alone_or_it_is_none() {
        for words in ["-8", "18F", "minus 14 tonight", "12 °f", "menos 5"] {
            assert!(is_degrees(words), "{words}");
        }
        for words in ["", "flow on 12", "50 psi", "12 14", "tank", "300"] {
            assert!(!is_degrees(words), "{words}");
        }
    }
}
