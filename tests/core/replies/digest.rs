//! The digest, as it is sent.

use hosebib::book::Stage;
use hosebib::finding::{FindingId, Level, TaskKind, Urgency};
use hosebib::heard::{Language, UnitName};
use hosebib::reply::{Digest, DigestRow, Replies};

use super::sample::{at, unit, voice};

fn row<'a>(unit: &'a UnitName, worst: Option<(FindingId, Level, Urgency)>) -> DigestRow<'a> {
    DigestRow {
        unit,
        site: Some("Sleigh Barn at Dovecote Farm"),
        stage: Stage::InService,
        worst,
        hazard: None,
        more: 0,
        due: None,
        pump_out: None,
        last_word: Some(at(16, 45)),
        unheard: false,
    }
}

#[test]
fn a_small_fleet_is_listed_whole_worst_first() {
    let replies = Replies::new();
    let (nine, twelve, fourteen) = (unit("9"), unit("12"), unit("14"));
    let over = (FindingId::WaterOverPressure, Level::Warning, Urgency::Now);
    let rows = [
        DigestRow {
            last_word: None,
            site: None,
            stage: Stage::Yard,
            ..row(&nine, None)
        },
        DigestRow {
            due: Some((TaskKind::PumpOut, at(19, 15))),
            ..row(&fourteen, None)
        },
        DigestRow {
            more: 2,
            due: Some((TaskKind::PumpOut, at(19, 15))),
            ..row(&twelve, Some(over))
        },
    ];
    assert_eq!(
        Digest::of(rows.into_iter()).text(&voice(&replies, Language::En)),
        "\
17:10: 3 units, 2 to look at.
12 Sleigh Barn, open: WARNING water pressure too high +2. 25 min
14 Sleigh Barn, open: pump-out 19:15. 25 min
9, in the yard: in order. no word"
    );
}

#[test]
fn a_fleet_of_two_hundred_fits_a_phone() {
    let replies = Replies::new();
    let units: Vec<UnitName> = (1..=200).map(|n| unit(&format!("R-{n}"))).collect();
    let trouble = (FindingId::TroubleGasIllness, Level::Danger, Urgency::Now);
    for (language, wrong) in [(Language::En, 5), (Language::Es, 60)] {
        let rows: Vec<DigestRow<'_>> = units
            .iter()
            .enumerate()
            .map(|(i, unit)| DigestRow {
                more: 3,
                ..row(unit, (i < wrong).then_some(trouble))
            })
            .collect();
        let text = Digest::of(rows.into_iter()).text(&voice(&replies, language));
        assert!(text.lines().count() <= 25, "{text}");
        let widest = text
            .lines()
            .map(|line| line.chars().count())
            .max()
            .unwrap_or_default();
        assert!(widest <= 75, "{widest} characters: {text}");
        let well = (200 - wrong).to_string();
        assert!(
            text.lines().last().is_some_and(|line| line.contains(&well)),
            "{text}"
        );
    }
}
