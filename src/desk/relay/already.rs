//! What is passed on as an order and was reported as done before: whoever gives it is told.

use chrono::{DateTime, TimeDelta, Utc};

use crate::book::{Stage, UnitState, WaterState};
use crate::desk::answer::Reply;
use crate::desk::receive::Hearing;
use crate::desk::settle;
use crate::heard::{Event, UnitName};

/// What was done this long ago may have to be done again.
const LATELY: TimeDelta = TimeDelta::hours(3);

/// Says of each order in the words that it was reported as done already, and when.
pub(super) fn tell(hearing: &Hearing<'_>, words: &str, reply: &mut Reply<'_>) {
    for (unit, event) in orders(hearing, words) {
        let kept = hearing.desk.book.unit(&unit);
        let since = kept.and_then(|kept| done(kept.state(), event, hearing.now));
        let Some(since) = since else {
            continue;
        };
        let what = reply.voice.event(event);
        let args = [
            ("unit", unit.as_str().into()),
            ("what", what.into()),
            ("time", since.into()),
        ];
        reply.say("tell-already", &args);
    }
}

/// Returns what the words would have done to which trailer.
fn orders(hearing: &Hearing<'_>, words: &str) -> Vec<(UnitName, Event)> {
    let phrases = hearing.desk.phrases;
    let words = phrases.after("tell", "to-do", words).unwrap_or(words);
    let scale = hearing.fleet.style.temperature;
    let heard = hearing.desk.reader.hear(words, scale);
    let known = |name: &UnitName| settle::known(&hearing.fleet, name).cloned();
    let told = heard.entries.iter().filter_map(|entry| {
        let unit = known(entry.unit.as_ref()?)?;
        Some(entry.events.iter().map(move |event| (unit.clone(), *event)))
    });
    let mut orders: Vec<(UnitName, Event)> = told.flatten().collect();
    // the reader takes "close 12" for a task that is done
    let lists = [
        ("order-close", Event::Closed),
        ("order-pump", Event::WastePumped),
        ("order-heat", Event::HeaterOn),
        ("order-drain", Event::FreshDrained),
    ];
    for (list, event) in lists {
        if phrases.after("tell", list, words).is_some() && orders.is_empty() {
            let named = words.split(|c: char| !c.is_alphanumeric());
            let named = named.filter_map(|word| known(&UnitName::new(word)));
            orders.extend(named.map(|unit| (unit, event)));
        }
    }
    orders
}

/// Returns since when something is as an order would have it; none where it is not, or nobody said.
fn done(state: &UnitState, event: Event, now: DateTime<Utc>) -> Option<DateTime<Utc>> {
    let when = state.when(event)?;
    let stands = match event {
        Event::Closed => state.stage() == Stage::Closed,
        Event::InService => state.stage() == Stage::InService,
        Event::HeaterOn => state.heater_on(),
        Event::HeaterOff => state.heater_off(),
        Event::WaterOn => matches!(state.water(), WaterState::On(_)),
        Event::WaterOff => matches!(state.water(), WaterState::Off(_)),
        Event::FreshDrained => state.later(event, Event::FreshFilled),
        Event::WastePumped | Event::RegulatorFitted | Event::FreshFilled => now - when <= LATELY,
        _ => false,
    };
    stands.then_some(when)
}
