//! What a message wants of the bot besides work: to be asked after, to be left alone on the road, one day of the digest,
//! one's own tasks.
//!
//! These are set phrases around at most one number, so they are looked for in the folded text as a whole. Nothing is taken
//! out of the message by it: what else it says is read as ever.

use std::borrow::Cow;
use std::sync::LazyLock;

use super::read::one_slip;
use super::vocab::FastMap;
use crate::heard::{Ask, Heard, Plan, PlanKind, Remark, UnitName};

/// "Ask after me in so many minutes": English, Spanish.
const CHECK_ME: &[&str] = &[
    "check me",
    "check on me",
    "check in on me",
    "checkin on me",
    "ask after me",
    "time me",
    "chequenme",
    "chequeame",
    "revisame",
    "revisenme",
    "preguntame",
    "preguntenme",
    "checame",
    "avisame",
    "buscame",
    "busquenme",
];
/// Words by which somebody says that they work under a trailer now: English, Spanish.
const UNDER: &[&str] = &[
    "going under",
    "crawling under",
    "climbing under",
    "getting under",
    "sliding under",
    "headed under",
    "im under",
    "me meto debajo",
    "me meto abajo",
    "voy debajo",
    "voy abajo",
    "me voy a meter debajo",
    "estoy debajo",
];
/// Words by which somebody below says when they will be out again: English, Spanish.
const BACK_IN: &[&str] = &[
    "back in",
    "out in",
    "done in",
    "salgo en",
    "regreso en",
    "vuelvo en",
];
/// Words by which somebody says that they are on the road: English, Spanish.
const ON_THE_ROAD: &[&str] = &[
    "rolling",
    "on my way",
    "omw",
    "otw",
    "en route",
    "enroute",
    "on the road",
    "left the yard",
    "leaving the yard",
    "en camino",
    "voy para alla",
    "voy manejando",
    "saliendo del patio",
    "sali del patio",
];
/// Words beside which nobody is on the road yet.
const NOT_YET: &[&str] = &[
    "rolling in",
    "rolling at",
    "not rolling",
    "tomorrow",
    "before",
    "after",
    "when",
    "later",
    "manana",
    "antes",
    "cuando",
    "despues",
];
/// The days of the week from Monday, then tomorrow.
const DAYS: [&[&str]; 8] = [
    &["monday", "mon", "lunes"],
    &["tuesday", "tue", "tues", "martes"],
    &["wednesday", "wed", "miercoles"],
    &["thursday", "thu", "thurs", "jueves"],
    &["friday", "fri", "viernes"],
    &["saturday", "sat", "sabado"],
    &["sunday", "sun", "domingo"],
    &["tomorrow", "tmrw", "manana"],
];
/// Words by which somebody says that they are well: English, Spanish.
const WELL: &[&str] = &[
    "ok",
    "okay",
    "im ok",
    "i m ok",
    "out",
    "im out",
    "i m out",
    "all good",
    "good",
    "done",
    "clear",
    "all clear",
    "fine",
    "yes",
    "bien",
    "todo bien",
    "estoy bien",
    "listo",
    "lista",
    "fuera",
    "ya sali",
    "si",
];
/// A word that one is well has no more words than this.
const WELL_WORDS: usize = 5;
/// Words for what is the sender's own.
const MINE: &[&str] = &["my", "mine", "mis", "mias"];

/// Minutes that a lone worker's clock may run.
const MINUTES: std::ops::RangeInclusive<u32> = 1..=240;

/// The bit of [`CHECK_ME`] in [`OPENERS`].
const ASKS_AFTER: u8 = 1;
/// The bit of [`ON_THE_ROAD`] in [`OPENERS`].
const ROAD: u8 = 2;
/// The bit of [`UNDER`] in [`OPENERS`].
const BELOW: u8 = 4;

/// The words that phrases open with: most messages have none of them, and no phrase need be looked for.
static OPENERS: LazyLock<FastMap<&'static str, u8>> = LazyLock::new(|| {
    let mut openers = FastMap::default();
    for (phrases, kind) in [(CHECK_ME, ASKS_AFTER), (ON_THE_ROAD, ROAD), (UNDER, BELOW)] {
        for opener in phrases.iter().filter_map(|phrase| phrase.split(' ').next()) {
            *openers.entry(opener).or_default() |= kind;
        }
    }
    openers
});

/// Finds the wishes of a message that is otherwise read.
pub(super) fn find(text: &str, original: &str, heard: &Heard) -> Vec<Plan> {
    let mut words: Vec<Cow<'_, str>> = text
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(plain)
        .collect();
    mend_check_me(&mut words);
    let opened = words
        .iter()
        .filter_map(|word| OPENERS.get(word.as_ref()))
        .fold(0, |all, kinds| all | kinds);
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
            let day = (0_u8..)
                .zip(DAYS)
                .find(|(_, names)| words.iter().any(|word| names.contains(&word.as_ref())));
            if let Some((day, _)) = day {
                wish(None, PlanKind::Day { day });
            }
        }
        Some(Ask::Tasks) if words.iter().any(|word| MINE.contains(&word.as_ref())) => {
            wish(None, PlanKind::Mine);
        }
        _ => {}
    }
    let asked = (opened & ASKS_AFTER != 0).then(|| minutes_after(&words, CHECK_ME));
    // "going under 12, back in 10"
    let below = opened & BELOW != 0 && UNDER.iter().any(|phrase| holds(&words, phrase));
    let promised = below.then(|| minutes_after(&words, BACK_IN));
    let minutes = asked.flatten().or(promised.flatten());
    if let Some(minutes) = minutes {
        let unit = heard
            .named
            .iter()
            .find(|name| name.as_str() != minutes.to_string());
        let unit = unit.cloned().or_else(|| place_of(&words));
        wish(unit, PlanKind::CheckMe { minutes });
    } else if opened & ROAD != 0
        && heard.ask.is_none()
        && ON_THE_ROAD.iter().any(|phrase| holds(&words, phrase))
        && !NOT_YET.iter().any(|phrase| holds(&words, phrase))
    {
        wish(heard.named.first().cloned(), PlanKind::OnTheRoad);
    } else if below
        && heard.ask.is_none()
        && !NOT_YET.iter().any(|phrase| holds(&words, phrase))
        && let Some(unit) = place_of(&words).filter(|unit| no_value(heard, unit))
    {
        wish(Some(unit), PlanKind::GoingUnder);
    } else if heard.ask.is_none()
        && heard.entries.is_empty()
        && words.len() <= WELL_WORDS
        && WELL.iter().any(|phrase| holds(&words, phrase))
        && !words
            .iter()
            .any(|word| matches!(word.as_ref(), "not" | "no" | "isnt"))
    {
        wish(None, PlanKind::Well);
    }
    found
}

/// "chek me in 10": a slip in the word would leave somebody alone unwatched.
fn mend_check_me(words: &mut [Cow<'_, str>]) {
    for at in 1..words.len() {
        let before_me = matches!(words[at].as_ref(), "me")
            || matches!(words[at].as_ref(), "on" | "in")
                && words.get(at + 1).is_some_and(|w| w == "me");
        let meant = words[at - 1].len() >= 3 && one_slip(&words[at - 1], "check");
        if before_me && meant {
            words[at - 1] = Cow::Borrowed("check");
        }
    }
}

/// "pressure going under 50": no number that was read as a value is a place.
fn no_value(heard: &Heard, unit: &UnitName) -> bool {
    let placed = |remark: &Remark| remark.why == Remark::NOT_UNDERSTOOD;
    heard.named.contains(unit) || heard.entries.is_empty() && heard.unclear.iter().all(placed)
}

/// Returns the minutes behind one of `phrases`, after which somebody is to be asked after.
fn minutes_after(words: &[Cow<'_, str>], phrases: &[&str]) -> Option<u32> {
    let (start, phrase) = phrases.iter().find_map(|phrase| {
        let start = place(words, phrase)?;
        Some((start, phrase.split(' ').count()))
    })?;
    let after = &words[start + phrase..];
    // "avísame si la 6 llega a 3/4" is an alarm on a trailer
    let on_condition = ["if", "when", "si", "cuando"];
    if after
        .first()
        .is_some_and(|word| on_condition.contains(&word.as_ref()))
    {
        return None;
    }
    let (at, number) = after
        .iter()
        .take(4)
        .enumerate()
        .find_map(|(at, word)| Some((at, number(word)?)))?;
    let hours = after.get(at + 1).is_some_and(|word| {
        matches!(
            word.as_ref(),
            "h" | "hr" | "hrs" | "hour" | "hours" | "hora" | "horas"
        )
    });
    let minutes = if hours { number * 60 } else { number };
    MINUTES.contains(&minutes).then_some(minutes)
}

/// Returns the trailer named right after a word for where somebody goes.
fn place_of(words: &[Cow<'_, str>]) -> Option<UnitName> {
    let places = [
        "under",
        "underneath",
        "into",
        "inside",
        "behind",
        "debajo",
        "abajo",
        "adentro",
        "dentro",
        "atras",
    ];
    let at = words
        .iter()
        .position(|word| places.contains(&word.as_ref()))?;
    words[at + 1..]
        .iter()
        .take(3)
        .find(|word| word.chars().any(|c| c.is_ascii_digit()))
        .map(|word| UnitName::new(word))
}

fn number(word: &str) -> Option<u32> {
    let digits = word
        .trim_end_matches("minutos")
        .trim_end_matches("mins")
        .trim_end_matches("min")
        .trim_end_matches('m');
    match digits {
        "five" | "cinco" => Some(5),
        "ten" | "diez" => Some(10),
        "fifteen" | "quince" => Some(15),
        "twenty" | "veinte" => Some(20),
        "thirty" | "treinta" => Some(30),
        _ => digits.parse().ok(),
    }
}

fn place(words: &[Cow<'_, str>], phrase: &str) -> Option<usize> {
    let (opener, rest) = phrase.split_once(' ').unwrap_or((phrase, ""));
    let goes_on = |from: usize| {
        let mut told = words[from..].iter();
        rest.split_terminator(' ')
            .all(|wanted| told.next().is_some_and(|word| word == wanted))
    };
    (0..words.len()).find(|at| words[*at] == opener && goes_on(at + 1))
}

fn holds(words: &[Cow<'_, str>], phrase: &str) -> bool {
    place(words, phrase).is_some()
}

/// Takes the accents off: people on phones leave them out.
fn plain(word: &str) -> Cow<'_, str> {
    if word.is_ascii() {
        return Cow::Borrowed(word);
    }
    let bare = |c| match c {
        'á' => 'a',
        'é' => 'e',
        'í' => 'i',
        'ó' => 'o',
        'ú' | 'ü' => 'u',
        'ñ' => 'n',
        c => c,
    };
    Cow::Owned(word.chars().map(bare).collect())
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
