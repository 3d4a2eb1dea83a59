//! The time a sender gives: a clock time, one of yesterday or last night, this morning, so long ago.

use hosebib::quantity::TemperatureScale;
use hosebib::words::{Reader, to_json};
use serde_json::Value;

fn read(text: &str) -> Value {
    to_json(text, &Reader::new().hear(text, TemperatureScale::F))
}

#[test]
fn what_is_given_for_an_earlier_time_is_never_taken_for_now() {
    for (text, when) in [
        ("12 yesterday 21:00 waste 3/4", "yesterday 21:00"),
        ("yesterday 21:00 12 waste 3/4", "yesterday 21:00"),
        ("ayer a las 21:00 la 12 negras a 3/4", "yesterday 21:00"),
        ("12 waste 3/4 at 9 last night", "yesterday 21:00"),
        ("12 waste 3/4 last night at 9:30pm", "yesterday 21:30"),
        ("anoche a las 9 la 12 negras a 3/4", "yesterday 21:00"),
        // two at night is of this day
        ("at 2 last night 12 waste 3/4", "02:00"),
        ("this morning 12 waste 3/4", "this morning"),
        ("esta mañana la 12 tanque 3/4", "this morning"),
        ("at 6 this morning 12 waste 3/4", "06:00"),
        ("this morning at 8:30 12 waste 3/4", "08:30"),
        ("a las 6 de la mañana la 12 tanque 3/4", "06:00"),
        ("12 waste 3/4 at 9 at night", "21:00"),
        ("12 waste 3/4 20 minutes ago", "20 min ago"),
        ("12 waste 3/4 two hours ago", "120 min ago"),
        ("hace 20 minutos la 12 tanque 3/4", "20 min ago"),
    ] {
        let got = read(text);
        assert_eq!(got["entries"][0]["when"], when, "{text:?}: {got}");
        assert_eq!(got["entries"][0]["unit"], "12", "{text:?}: {got}");
        assert_eq!(
            got["entries"][0]["readings"]["waste_pct"], 75.0,
            "{text:?}: {got}"
        );
    }
}

#[test]
fn a_value_of_an_earlier_day_without_its_clock_time_is_set_aside() {
    for text in [
        "yesterday 12 waste 3/4",
        "yesterday, 12 waste 3/4, fresh 1/2",
        "12 waste 3/4, that was yesterday",
        "last night 12 waste 3/4",
        "12 waste 3/4 as of last night",
        "la 12 anoche 3/4 de negras",
        // nine of which half of the day
        "ayer a las 9 la 12 tanque 3/4",
        "Yesterday's numbers:\n12 waste 3/4\n14 fresh 1/2",
        "12 pumped yesterday, 300 gal",
    ] {
        let got = read(text);
        assert_eq!(got["entries"], serde_json::json!([]), "{text:?}: {got}");
        let aside = got["set_aside"].as_array().unwrap();
        assert!(
            aside.iter().any(|r| r["why"] == "earlier-day"),
            "{text:?}: {got}"
        );
    }
    let asked = |text: &str| read(text)["unclear"][0]["why"] == "earlier-day";
    assert!(asked("12 pumped last night"));
    assert!(asked("the pipe on 12 froze last night"));
    assert!(!asked("last night 12 was leaking, dry now"));
}

#[test]
fn a_word_for_an_earlier_time_reaches_no_farther_than_what_it_is_said_of() {
    let now = |text: &str| {
        let got = read(text);
        assert_eq!(
            got["entries"].as_array().unwrap().len(),
            1,
            "{text:?}: {got}"
        );
        assert!(
            got["entries"][0].get("when").is_none_or(Value::is_null),
            "{text:?}: {got}"
        );
        got["entries"][0].clone()
    };
    for text in [
        "Long day yesterday. 12 waste 3/4",
        "thanks for yesterday! 12 waste 3/4",
        "12 last night 9pm waste 1/2, now 3/4",
        "12 waste was half last night, 3/4 now",
        "12 waste 3/4, this morning it was half",
        "ayer la 12 tanque a la mitad, hoy 3/4",
        "slept bad last night. 12 waste 3/4",
    ] {
        assert_eq!(now(text)["readings"]["waste_pct"], 75.0, "{text:?}");
    }
    for text in [
        "12 leak since yesterday",
        "12 has been leaking since last night",
        "la 12 tiene fuga desde ayer",
    ] {
        assert_eq!(now(text)["faults"], serde_json::json!(["leak"]), "{text:?}");
    }
    // in the morning without an hour is a plan
    assert_eq!(
        read("pump 12 in the morning")["entries"],
        serde_json::json!([])
    );
    // the hour of a plan, or since which something stands, is none of the level beside it
    for text in [
        "9 tank 1/2, gotta leave by 5",
        "need a pump-out on 9 by four, tank's at 1/2",
        "9 open since 11, tank 1/2",
        "la 9 abierta desde las 10, negras a la mitad",
    ] {
        let got = read(text);
        assert_eq!(
            got["entries"][0]["readings"]["waste_pct"], 50.0,
            "{text:?}: {got}"
        );
        assert_eq!(got["entries"][0].get("when"), None, "{text:?}: {got}");
    }
    // two times, two entries
    let got = read("last night around 10 12 pumped, waste 1/4 now");
    assert_eq!(got["entries"][0]["when"], "yesterday 22:00", "{got}");
    assert_eq!(got["entries"][1]["readings"]["waste_pct"], 25.0, "{got}");
}
