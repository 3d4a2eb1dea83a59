//! What answers nothing moves nothing.

use super::{Crew, at_step, every, none_is};

/// What people write that answers nothing, in both languages.
const CHATTER: &[&str] = &[
    "ok",
    "okay",
    "k",
    "done",
    "all done",
    "lol",
    "brb",
    "hi",
    "hello",
    "what?",
    "thanks",
    "thank you",
    "next",
    "ya",
    "listo",
    "hecho",
    "ahorita",
    "ahorita voy",
    "un momento",
    "espera",
    "on it",
    "hold on",
    "one sec",
    "wait",
    "who is this",
    "quien es",
    "roger",
    "copy",
    "will do",
    "cool",
    "great",
    "gracias",
    "vale",
    "bueno",
    "orale",
    "enterado",
    "hola",
    "jaja",
    "10 4",
    "good morning",
    "im on my way",
    "ya voy",
    "let me check",
    "going to look",
    "voy a ver",
    "can i turn it back on?",
    "is it safe to go in",
    "puedo prenderlo?",
    "16 tank 1/4",
    "16 static 52",
    "no, 16 not 12",
    "sorry that was for 16",
    "oops wrong unit",
    "16 si esta apagada",
    "yes on 16",
    "if it is off",
    "when its off i will tell you",
    "trying to",
    "maybe",
    "i think so",
    "creo que si",
    "ill do it later",
    "luego lo hago",
    "yes but he is dizzy",
    "did all that",
    "ok boss",
    "ok thanks",
    "sounds good",
    "on my way",
    "👍",
    "...",
    "what do you mean",
    "why",
    "say again",
    "que?",
    "almost done",
    "ya casi",
];

#[test]
fn chatter_advances_no_step_that_guards_somebody() {
    let mut wrong = Vec::new();
    let mut tried = 0;
    let mut crew = Crew::new(false);
    let mut seen = std::collections::BTreeSet::new();
    for fault in hosebib::heard::Fault::ALL {
        for (number, step) in hosebib::rules::steps(*fault).iter().enumerate() {
            if !step.guards() || !seen.insert(step.key) {
                continue;
            }
            if !at_step(&mut crew, *fault, number) {
                wrong.push(format!("{fault} step {} is not reached", number + 1));
                continue;
            }
            let before = crew.place("tobin");
            for text in CHATTER {
                let hurts = text.contains("dizzy");
                if hurts && matches!(step.then, hosebib::rules::Then::Report(_)) {
                    continue; // there it is the answer
                }
                let would = crew.would("tobin", text);
                tried += 1;
                if would.place != before || (!hurts && would.faults) {
                    wrong.push(format!("{fault} {} {text:?}: {}", step.key, would.told));
                }
            }
        }
    }
    none_is(&wrong, tried);
}

#[test]
fn chatter_logs_no_fault_and_no_fix_at_any_step() {
    let mut wrong = Vec::new();
    let mut tried = 0;
    let mut crew = Crew::new(false);
    let mut seen = std::collections::BTreeSet::new();
    for fault in hosebib::heard::Fault::ALL {
        for (number, step) in hosebib::rules::steps(*fault).iter().enumerate() {
            if !seen.insert(step.key) || !at_step(&mut crew, *fault, number) {
                continue;
            }
            let before = crew.place("tobin");
            for text in every(4, number, CHATTER)
                .filter(|text| !["did all that", "yes but he is dizzy"].contains(text))
            {
                let would = crew.would("tobin", text);
                tried += 1;
                // what was done may have helped: that is asked; "i think so" is a yes where nobody is in danger
                let asked = step.asks == hosebib::rules::Asks::IfMended
                    && would.place.is_some_and(|place| place.2);
                if (would.place != before && !asked) || would.faults {
                    wrong.push(format!("{fault} {} {text:?}: {}", step.key, would.told));
                }
            }
        }
    }
    none_is(&wrong, tried);
}

#[test]
fn a_dizzy_person_after_a_shock_is_hurt_unless_gas_is_named() {
    use hosebib::heard::Fault;
    let mut crew = Crew::new(false);
    let mut logged = |text: &str| {
        assert!(at_step(&mut crew, Fault::Shock, 0));
        crew.hears("tobin", text);
        let unit = hosebib::heard::UnitName::new("12");
        let kept = crew.desk.book().unit(&unit).expect("a trailer of the demo");
        let has = |fault| kept.state().has(fault);
        let found = (has(Fault::PersonHurt), has(Fault::GasIllness));
        crew = Crew::new(false);
        found
    };
    // "dolor" holds "olor", "gasket" holds "gas"
    for text in [
        "yes but he is dizzy",
        "tiene dolor de cabeza y esta mareado",
        "he was at the gasket, he is dizzy",
    ] {
        assert_eq!(logged(text), (true, false), "{text}");
    }
    for text in ["he is dizzy from the fumes", "esta mareado, huele a gas"] {
        assert!(logged(text).1, "{text}");
    }
}
