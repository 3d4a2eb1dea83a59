//! What the reader keeps for the desk: bare answers, needs, watches.

use hosebib::quantity::TemperatureScale;
use hosebib::words::Reader;

#[test]
fn bare_answers_are_kept_for_the_open_question() {
    use hosebib::heard::ShortAnswer;
    let reader = Reader::new();
    let answer = |text: &str| {
        reader
            .hear(text, TemperatureScale::F)
            .answer
            .unwrap_or_default()
    };
    assert_eq!(answer("14").number, Some(14.0));
    assert_eq!(answer("14").unit.unwrap().as_str(), "14");
    assert_eq!(
        answer("psi").measure.as_deref(),
        Some("psi").or(answer("psi").noun.as_deref())
    );
    assert_eq!(answer("waste").noun.as_deref(), Some("waste"));
    assert_eq!(answer("yes").word, Some(ShortAnswer::Yes));
    assert_eq!(answer("sí").word, Some(ShortAnswer::Yes));
    assert_eq!(answer("no").word, Some(ShortAnswer::No));
    assert_eq!(answer("before").word, Some(ShortAnswer::Before));
    assert_eq!(
        answer("before the regulator").word,
        Some(ShortAnswer::Before)
    );
    assert!(reader.hear("yes", TemperatureScale::F).unclear.is_empty());
    assert!(!reader.hear("14", TemperatureScale::F).unclear.is_empty());
}

#[test]
fn needs_and_watches_are_kept_for_the_desk() {
    use hosebib::heard::{Need, PlanKind};
    let reader = Reader::new();
    let heard = reader.hear("need a pump-out on 12 before noon", TemperatureScale::F);
    assert!(
        matches!(&heard.plans[0].kind, PlanKind::Need { need: Need::PumpOut, by: Some(by) } if by == "12:00"),
        "{:?}",
        heard.plans
    );
    assert_eq!(heard.plans[0].unit.as_ref().unwrap().as_str(), "12");
    let heard = reader.hear("if 12 hits 3/4 call me", TemperatureScale::F);
    assert!(
        matches!(heard.plans[0].kind, PlanKind::Watch { key: hosebib::heard::ReadingKey::WastePct, value, below: false } if value == 75.0),
        "{:?}",
        heard.plans
    );
    assert!(!heard.set_aside.is_empty());
}
