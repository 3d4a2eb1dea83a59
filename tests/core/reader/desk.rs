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

#[test]
fn how_a_pressure_was_read_and_which_circuits_are_live_are_kept() {
    use hosebib::heard::{Event, Taps};
    let reader = Reader::new();
    let first = |text: &str| {
        let heard = reader.hear(text, TemperatureScale::F);
        heard.entries.into_iter().next().unwrap_or_default()
    };
    // all that is shut beside a pressure are the taps, and no trailer
    for text in [
        "14 is 45 psi, everything closed",
        "14 45 psi cerrado todo",
        "14 is 45 psi, everything off",
        "14 tiene 45 psi, todo cerrado",
    ] {
        let entry = first(text);
        assert_eq!(entry.readings.taps, Some(Taps::Shut), "{text}");
        assert!(entry.events.is_empty(), "{text}: {:?}", entry.events);
    }
    assert_eq!(first("everything closed on 14").events, [Event::Closed]);
    // so many taps are no trailer
    let entry = first("with a toilet refilling and 2 taps open she drops to 14 psi");
    assert_eq!(entry.readings.taps, Some(Taps::Running));
    assert_eq!(entry.unit, None);
    for text in [
        "están en el circuito 1 y el 3",
        "12 cords on circuits 1 and 3",
        "los cables están en los circuitos 1 y 3",
        "theyre on circuits 1 and 3",
    ] {
        let live = first(text).readings.circuits_live;
        assert_eq!(live, Some(vec![1, 3]), "{text}");
    }
    for text in [
        "breaker tripped on circuits 1 and 3",
        "12 is on circuit 2",
        "no power on circuits 1 and 3",
    ] {
        assert_eq!(first(text).readings.circuits_live, None, "{text}");
    }
}
