//! Weather pasted from an aviation report, and a low told for tonight.
//!
//! A METAR or SPECI (FM 15, FM 16) gives the air as it is, a TAF (FM 51) the lowest temperature to come. Codes: ICAO
//! Annex 3, Appendices 3 and 5; WMO No. 306, Volume I.1, Part A: `27015G25KT` wind, direction then speed; `M05/M08` air and
//! dew point in whole °C, `M` for below zero; `TX02/1721Z TNM08/1712Z` the highest and lowest with day and hour.

use std::borrow::Cow;

use super::senses::{Sense, Senses};
use crate::heard::{Entry, Heard, Plan, PlanKind, ReadingKey};
use crate::quantity::{TemperatureScale, f_from_c, rounded};

const MPH_PER_KNOT: f64 = 1.150_779;
const MPH_PER_MPS: f64 = 2.236_936;

/// Reads a pasted report; none where the text is no such report or holds no temperature.
pub(super) fn pasted(text: &str) -> Option<Heard> {
    let upper = text.trim().to_uppercase();
    let groups = body(&upper)?;
    let mut entry = Entry::default();
    let mut low: Option<f64> = None;
    let mut groups = groups.into_iter();
    while let Some(group) = groups.next() {
        if group == "RMK" {
            tenths(groups, &mut entry);
            break;
        }
        // "TN M12/2412Z": some write the group apart
        let apart = (group == "TN").then(|| groups.next()).flatten();
        if let Some(rest) = apart.or_else(|| group.strip_prefix("TN")) {
            let c = rest.split('/').next().and_then(degrees);
            low = c.map(|c| low.map_or(c, |low| low.min(c))).or(low);
        } else if let Some((air, dew)) = group.split_once('/')
            && let Some(c) = degrees(air)
            && (dew.is_empty() || degrees(dew).is_some())
        {
            entry.readings.set(ReadingKey::AirF, rounded(f_from_c(c)));
        } else if let Some(mph) = wind(group)
            && entry.readings.value(ReadingKey::WindMph).is_none()
        {
            entry.readings.set(ReadingKey::WindMph, rounded(mph));
        }
    }
    if let Some(c) = low {
        // the wind of a forecast's first group is not the night's
        entry.readings = crate::heard::Entry::default().readings;
        entry.readings.set(ReadingKey::LowF, rounded(f_from_c(c)));
    }
    let told = [ReadingKey::LowF, ReadingKey::AirF];
    told.iter()
        .any(|key| entry.readings.value(*key).is_some())
        .then(|| Heard {
            entries: vec![entry],
            plans: vec![Plan {
                unit: None,
                kind: PlanKind::Weather,
                text: text.trim().to_owned(),
            }],
            ..Heard::default()
        })
}

/// Tells whether a text is an aviation report, whether or not a temperature can be read in it.
pub(super) fn is_report(text: &str) -> bool {
    body(&text.trim().to_uppercase()).is_some()
}

/// Parts a message into a pasted report and the lines of talk behind it; none where it is not both.
pub(super) fn with_talk(text: &str) -> Option<(&str, &str)> {
    let text = text.trim();
    // a report is sent in capitals: the first line with other letters is somebody talking
    let breaks = text.match_indices('\n').map(|(at, _)| at);
    let talks = |at: &usize| {
        let line = text[at + 1..].lines().next().unwrap_or_default();
        line.contains(|c: char| c.is_lowercase())
    };
    let at = breaks.into_iter().find(talks)?;
    let (report, talk) = (&text[..at], text[at..].trim());
    (pasted(report).is_some() && !talk.is_empty()).then_some((report, talk))
}

/// Parts a line into a report in capitals and the words around it, "12: METAR KPLB ...", "METAR for 21: KPLB ...",
/// "METAR KPLB ... unit 12"; none where it is not both.
pub(super) fn beside_words(text: &str) -> Option<(String, String)> {
    const LEAD: usize = 6;
    // most messages hold no report, and are left at once
    if !text.split_whitespace().take(2 * LEAD).any(is_stamp) {
        return None;
    }
    let groups: Vec<&str> = text.split_whitespace().collect();
    let small = |group: &&str| group.contains(|c: char| c.is_lowercase());
    let name = |group: &str| matches!(group, "METAR" | "SPECI" | "TAF");
    let of = |from: usize| {
        let rest = &groups[from..];
        let end = rest.iter().position(&small).unwrap_or(rest.len());
        let lead = groups[..from].iter().chain(&rest[end..]);
        let talk: Vec<&str> = lead.copied().filter(|group| !name(group)).collect();
        // its name may stand in the words before it
        let named = groups[..from]
            .iter()
            .find(|group| name(group))
            .unwrap_or(&"METAR");
        let report = match name(rest.first()?) {
            true => rest[..end].join(" "),
            false => format!("{named} {}", rest[..end].join(" ")),
        };
        let both = pasted(&report).is_some() && !talk.is_empty();
        both.then(|| (report, talk.join(" ")))
    };
    (0..groups.len().min(LEAD)).find_map(of)
}

/// Returns the day of the month, hour and minute, UTC, at which a pasted METAR or SPECI observed the air; none of a TAF,
/// which tells of hours to come.
pub fn observed_at(text: &str) -> Option<(u32, u32, u32)> {
    let upper = alone(text).trim().to_uppercase();
    if upper.starts_with("TAF") {
        return None;
    }
    let stamp = body(&upper)?.into_iter().next()?.strip_suffix('Z')?;
    let part = |at: usize| stamp.get(at..at + 2)?.parse().ok();
    Some((part(0)?, part(2)?, part(4)?))
}

/// Returns a report without the words around it.
fn alone(text: &str) -> Cow<'_, str> {
    match beside_words(text) {
        Some((report, _)) => Cow::Owned(report),
        None => Cow::Borrowed(text),
    }
}

/// A day of the month and an hour, as forecasts tell them.
type DayHour = (u32, u32);

/// Returns when the lowest temperature of a pasted forecast is expected, and when the forecast ends: day of the month and
/// hour, UTC. None where the text is no forecast.
pub fn forecast_for(text: &str) -> Option<(Option<DayHour>, Option<DayHour>)> {
    let upper = alone(text).trim().to_uppercase();
    if !upper.starts_with("TAF") {
        return None;
    }
    let told = |four: &str| -> Option<DayHour> {
        let digits = four.len() == 4 && four.bytes().all(|b| b.is_ascii_digit());
        digits.then(|| Some((four[..2].parse().ok()?, four[2..].parse().ok()?)))?
    };
    let groups = || {
        upper
            .split_whitespace()
            .filter_map(|group| group.split_once('/'))
    };
    let ends = groups().find_map(|(from, to)| told(from).and(told(to)));
    let low = groups().find_map(|(head, at)| {
        head.starts_with("TN")
            .then(|| told(at.trim_end_matches('Z')))?
    });
    Some((low, ends))
}

/// Returns the groups of a report behind its name, station and time; none where the text is none.
fn body(upper: &str) -> Option<Vec<&str>> {
    let apart = |c: char| c.is_whitespace() || "=:".contains(c);
    let mut groups = upper
        .split(apart)
        .filter(|group| !group.is_empty())
        .peekable();
    let mut named = false;
    while let Some(group) = groups.next_if(|group| {
        matches!(
            *group,
            "METAR" | "SPECI" | "TAF" | "AMD" | "COR" | "AUTO" | "RTD"
        )
    }) {
        named |= matches!(group, "METAR" | "SPECI" | "TAF");
    }
    // a report without its name is known by station and time
    let station = groups.next()?;
    let is_station = station.len() == 4
        && station.starts_with(|c: char| c.is_ascii_uppercase())
        && station.chars().all(|c| c.is_ascii_alphanumeric());
    // one that was shortened may have lost its time, and not its name
    let is_span = |span: &str| {
        let (from, to) = span.split_once('/').unwrap_or_default();
        let hours = |part: &str| part.len() == 4 && part.bytes().all(|b| b.is_ascii_digit());
        hours(from) && hours(to)
    };
    let next = *groups.peek()?;
    let known = is_stamp(next) || named && (is_span(next) || wind(next).is_some());
    (is_station && known).then(|| groups.collect())
}

/// Tells whether a group is a day and a time: `242253Z`.
fn is_stamp(group: &str) -> bool {
    let digits = group.strip_suffix('Z').unwrap_or_default();
    digits.len() == 6 && digits.bytes().all(|b| b.is_ascii_digit())
}

/// Reads the air in tenths out of a report's remarks, `T11831206`, where the report itself has none.
fn tenths<'g>(mut remarks: impl Iterator<Item = &'g str>, entry: &mut Entry) {
    if entry.readings.value(ReadingKey::AirF).is_some() {
        return;
    }
    let read = |group: &str| {
        let digits = group.strip_prefix('T')?;
        let whole = digits.len() == 8 && digits.bytes().all(|b| b.is_ascii_digit());
        let sign = if digits.starts_with('1') { -1.0 } else { 1.0 };
        let tenths: f64 = digits.get(1..4).filter(|_| whole)?.parse().ok()?;
        Some(sign * tenths / 10.0)
    };
    if let Some(c) = remarks.find_map(read) {
        entry.readings.set(ReadingKey::AirF, rounded(f_from_c(c)));
    }
}

/// Reads a low told for tonight with the number after "low": "low 18 tonight", "low -8" and no more, °F.
pub(super) fn low_tonight(text: &str, scale: TemperatureScale, senses: &Senses) -> Option<f64> {
    let words: Vec<&str> = text
        .split(|c: char| c.is_whitespace() || ",;!?".contains(c))
        .map(|word| word.trim_end_matches('.'))
        .filter(|word| !word.is_empty())
        .collect();
    let is_low = |word: &&str| senses.has(word, Sense::TheLow);
    let tonight = |word: &&str| senses.has(word, Sense::TheNight);
    // "low -8": that and no more, with a sign or degrees
    let degrees = |word: &&str| word.starts_with('-') || word.ends_with(['°', 'º', 'f', 'c']);
    let alone = matches!(words.as_slice(), [low, number] if is_low(low) && degrees(number));
    if !alone && !words.iter().any(tonight) {
        return None;
    }
    let low = words.iter().position(is_low)?;
    let mut rest = words[low + 1..].iter();
    let after = rest.find(|word| !senses.has(word, Sense::LowIs))?;
    let under = rest
        .next()
        .is_some_and(|word| senses.has(word, Sense::UnderZero));
    let bare = after.trim_end_matches(['°', 'º', 'f', 'c']);
    let value: f64 = bare
        .parse()
        .ok()
        .filter(|value: &f64| value.abs() < 130.0)?;
    let value = if under { -value.abs() } else { value };
    let celsius = after.ends_with('c') || (scale == TemperatureScale::C && !after.ends_with('f'));
    let f = if celsius { f_from_c(value) } else { value };
    (-60.0..=130.0).contains(&f).then_some(f)
}

/// Reads `M05` as −5.
fn degrees(group: &str) -> Option<f64> {
    let (sign, digits) = match group.strip_prefix('M') {
        Some(digits) => (-1.0, digits),
        None => (1.0, group),
    };
    let is_two_digits = digits.len() == 2 && digits.bytes().all(|b| b.is_ascii_digit());
    is_two_digits.then(|| digits.parse::<f64>().ok().map(|c| sign * c))?
}

/// Reads `27015G25KT`, mph: the gust where there is one.
fn wind(group: &str) -> Option<f64> {
    let (digits, factor) = match (group.strip_suffix("KT"), group.strip_suffix("MPS")) {
        (Some(digits), _) => (digits, MPH_PER_KNOT),
        (None, Some(digits)) => (digits, MPH_PER_MPS),
        _ => return None,
    };
    let speeds = digits.get(3..)?;
    let speed = speeds.split('G').next()?;
    speed.parse::<f64>().ok().map(|speed| speed * factor)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Vec<(ReadingKey, f64)> {
        pasted(text).map_or(Vec::new(), |heard| {
            heard.entries[0]
                .readings
                .values
                .iter()
                .map(|(key, value)| (*key, *value))
                .collect()
        })
    }

    #[test]
    fn a_report_in_an_odd_form_is_still_read() {
        let low = |f: f64| vec![(ReadingKey::LowF, f)];
        for text in [
            "TAF KDEN 231720Z 2318/2424 36012KT P6SM SCT050 TN M12/2412Z",
            "TAF: KDEN 2318/2424 36012KT P6SM SCT050 TNM12/2412Z",
            "TAF AMD KDEN 231720Z 2318/2424 36012KT TX02/2320Z\n  TNM12/2412Z=",
        ] {
            assert_eq!(read(text), low(10.4), "{text}");
        }
        let air = read("KDEN 231653Z 36010KT 10SM RMK AO2 T11831206");
        assert!(air.contains(&(ReadingKey::AirF, -0.94)), "{air:?}");
        assert!(is_report("METAR KDEN 231653Z 36010KT 10SM"));
        assert!(!is_report("unit 12 at the gate"));
        assert_eq!(
            with_talk("METAR KDEN 231653Z 36010KT M05/M08\nstatus 12"),
            Some(("METAR KDEN 231653Z 36010KT M05/M08", "status 12"))
        );
        assert_eq!(with_talk("METAR KDEN 231653Z\n36010KT M05/M08"), None);
    }

    #[test]
    fn a_metar_gives_air_and_wind() {
        // the code form of FM 15; −5 °C is 23 °F, 15 kt is 17.26 mph
        assert_eq!(
            read("METAR KXYZ 161753Z 27015G25KT 10SM FEW080 M05/M08 A3012 RMK AO2 T10501083"),
            [(ReadingKey::AirF, 23.0), (ReadingKey::WindMph, 17.262)]
        );
        assert_eq!(
            read("XYZA 070900Z AUTO 00000KT 9999 02/M01 Q1008="),
            [(ReadingKey::AirF, 35.6), (ReadingKey::WindMph, 0.0)]
        );
    }

    #[test]
    fn the_published_examples_are_read() {
        // ICAO Annex 3, Appendix 3, Examples A3-1 and A3-2, and Appendix 5, Example A5-1 (from memory): 17 °C is 62.6 °F,
        // 4 m/s 8.948 mph, 25 °C 77 °F, 25 kt 28.769 mph; that TAF gives no temperature
        let metar = "METAR YUDO 221630Z 24004MPS 0600 R12/1000U DZ FG SCT010 OVC020 17/16 Q1018 \
                     BECMG TL1700 0800 FG BECMG AT1800 9999 NSW";
        assert_eq!(
            read(metar),
            [(ReadingKey::AirF, 62.6), (ReadingKey::WindMph, 8.948)]
        );
        let speci = "SPECI YUDO 151115Z 05025G37KT 3000 1200NE +TSRA BKN005CB 25/22 Q1008 \
                     TEMPO TL1200 0600 BECMG AT1200 8000 NSW NSC";
        assert_eq!(
            read(speci),
            [(ReadingKey::AirF, 77.0), (ReadingKey::WindMph, 28.769)]
        );
        let taf = "TAF YUDO 151800Z 1600/1618 13005MPS 9000 BKN020 BECMG 1606/1608 SCT015CB BKN020 \
                   TEMPO 1608/1612 17006G12MPS 1000 TSRA SCT010CB BKN020 FM161230 15004MPS 9999 BKN020";
        assert_eq!(read(taf), []);
        // WMO No. 306, 15.11 (from memory): −0.5 °C is sent as M00; a dew point may be missing
        assert_eq!(
            read("METAR YUDO 221630Z VRB01KT 9999 M00/M03 Q1018"),
            [(ReadingKey::AirF, 32.0), (ReadingKey::WindMph, 1.151)]
        );
        assert_eq!(
            read("YUDO 221630Z /////KT 9999 M12/ Q1018"),
            [(ReadingKey::AirF, 10.4)]
        );
    }

    #[test]
    fn a_taf_gives_the_lowest_temperature_to_come() {
        // −8 °C is 17.6 °F
        let text = "TAF KXYZ 161720Z 1618/1724 27015KT P6SM SKC\n  TX02/1721Z TNM08/1712Z";
        assert_eq!(read(text), [(ReadingKey::LowF, 17.6)]);
    }

    #[test]
    fn other_words_are_no_report() {
        for text in [
            "unit 12 pressure 95 tank 3/4 temp -5",
            "TAF",
            "NORA 161753Z",
            "12 waste 3/4",
            "",
        ] {
            assert!(pasted(text).is_none(), "{text}");
        }
    }

    #[test]
    fn a_low_may_stand_before_its_night() {
        let reader = crate::words::Reader::new();
        let low_tonight = |text| low_tonight(text, TemperatureScale::F, &reader.senses);
        assert_eq!(low_tonight("low 18 tonight"), Some(18.0));
        assert_eq!(low_tonight("mínima -8c esta noche"), Some(17.6));
        assert_eq!(low_tonight("low -8"), Some(-8.0));
        assert_eq!(low_tonight("low 12f"), Some(12.0));
        assert_eq!(low_tonight("low 10 below zero overnight"), Some(-10.0));
        assert_eq!(low_tonight("low of 10 below tonight"), Some(-10.0));
        assert_eq!(low_tonight("mínima 10 bajo cero esta noche"), Some(-10.0));
        assert_eq!(low_tonight("low 12"), None);
        assert_eq!(low_tonight("low -8 on 12"), None);
        assert_eq!(low_tonight("low tire on 12 tonight"), None);
        assert_eq!(low_tonight("tank low 18"), None);
    }
}
