//! Dangers told in people's own words reach the dispatcher as what they are, and their harmless likes alarm nobody.

use super::{Crew, words_to};

#[rustfmt::skip]
const TOLD: &[(&str, &str, &str)] = &[
    ("tobin", "12 smells a bit like propane", "gas or fuel"),
    ("tobin", "12 all good just smells faintly of propane", "gas or fuel"),
    ("tobin", "12 smelled gas but its gone", "gas or fuel"),
    ("tobin", "12 gas smell gone now, opened the door", "gas or fuel"),
    ("tobin", "12 gas can tipped over by the generator", "gas or fuel"),
    ("lupe", "en la mañana olía a gas la 6", "gas or fuel"),
    ("tobin", "yesterday 12 had a gas smell", "gas or fuel"),
    ("tobin", "12 i smell smoke", "burnt smell"),
    ("tobin", "12 panel smells", "burnt smell"),
    ("tobin", "12 no fire no smoke but panel smells", "burnt smell"),
    ("tobin", "12 smells electrical", "burnt smell"),
    ("tobin", "12 was shocking people yesterday", "electric shock"),
    ("tobin", "12 was zapping people this morning", "electric shock"),
    ("lupe", "ayer la 6 daba toques", "electric shock"),
    ("tobin", "12 steps give me a buzz", "electric shock"),
    ("tobin", "12 the steps bite when u touch em wet", "electric shock"),
    ("tobin", "12 hair stands up when i touch the frame", "electric shock"),
    ("lupe", "se me pega la corriente en el lavabo de la 6", "electric shock"),
    ("tobin", "last night 12 sewage spilled on the grass", "Close the unit"),
    ("tobin", "live wire on the ground at 12", "a power line"),
    ("tobin", "cable hanging off the pole onto 12", "a power line"),
    ("lupe", "hay un alambre caído por la 6 echando chispas", "a power line"),
    ("tobin", "12 water in the electrical bay", "water in a panel"),
    ("tobin", "12 48 psi, water running down the breaker box", "water in a panel"),
    ("lupe", "se salió el agua y llegó al panel de la 6", "water in a panel"),
    ("tobin", "12 plug got rained on and is wet", "a cord or plug in water"),
    ("tobin", "12 stall 3 locked for an hour no answer", "does not answer"),
    ("tobin", "12 somebody wont come out, no sound", "does not answer"),
    ("tobin", "12 everyone coughing inside", "sick from gas"),
    ("tobin", "12 two kids sleepy in there, generators close", "sick from gas"),
    ("tobin", "12 mixed bleach with the bowl cleaner and its hard to breathe", "sick from gas"),
    ("tobin", "12 guy blue in the face", "someone hurt"),
    ("tobin", "12 lady has an asthma attack", "someone hurt"),
    ("tobin", "12 fight", "a fight"),
    ("tobin", "12 alarm going off inside", "CO alarm"),
    ("tobin", "12 the detector is red", "CO alarm"),
    ("tobin", "12 fire alarm", "reports fire"),
    ("tobin", "12 jacks sank its tipping", "may tip over"),
    ("tobin", "12 blew off the stands in the wind", "turn a trailer over"),
    ("tobin", "12 floor is soft and caving in", "gives way"),
    ("tobin", "12 water tastes like sewage", "sewage in the fresh"),
    ("tobin", "12 hot water 140 degrees", "scalds"),
    ("tobin", "stopped shivering feel warm now tired", "someone hurt"),
    ("lupe", "6 ya no tiemblo y tengo sueño", "someone hurt"),
    ("tobin", "juno is confused and slurring in the cold", "someone hurt"),
    ("tobin", "12 fingers purple and no feeling", "hurt by the cold"),
    ("tobin", "12 jack fell and juno is under it", "someone hurt"),
    ("tobin", "im pinned", "someone hurt"),
    ("tobin", "12 48 psi, juno got hit by the jack handle", "someone hurt"),
    ("tobin", "a lady sliped on the steps at 12", "someone hurt"),
    ("tobin", "dog bit me at 12", "someone hurt"),
    ("tobin", "12 i think i smell a little gas near the water heater", "gas or fuel"),
    ("tobin", "12 getting whiffs of propane", "gas or fuel"),
    ("tobin", "12 power pole leaning with wires sagging on the roof", "a power line"),
    ("lupe", "se cayó un poste de luz junto a la 6", "a power line"),
    ("tobin", "12 outlet by the sink is soaked", "water in a panel"),
    ("lupe", "está goteando sobre los breakers de la 6", "water in a panel"),
    ("lupe", "un hombre se metió al baño de mujeres y la agarró", "attacked or followed"),
    ("tobin", "12 lost little girl, mom is looking for her", "somebody missing"),
    ("lupe", "está pitando algo en el techo de la 6", "CO alarm"),
    ("lupe", "se quemó un niño con el agua caliente de la 6", "burnt by hot water"),
    ("lupe", "el agua de la 6 sale sucia", "looks, tastes or smells wrong"),
    ("tobin", "juno is under 12 and the jack is slipping", "under a trailer on a jack"),
    ("tobin", "12 parking lot flooded up to the steps", "water rising"),
];

const HARMLESS: &[(&str, &str)] = &[
    ("tobin", "12 smells like the drain a bit"),
    ("tobin", "12 no gas smell"),
    (
        "tobin",
        "12 was shocking people yesterday, electrician fixed it",
    ),
    ("tobin", "yesterday a guest fell at 12"),
    ("tobin", "12 bartender got a tip"),
    ("tobin", "12 grabbed a bite at the barn"),
    ("tobin", "12 cold bites today"),
    ("tobin", "kids missing the bus at 12"),
    ("tobin", "12 smoke alarm tested ok"),
    ("tobin", "12 tent sagging a bit"),
    (
        "tobin",
        "12 hooked up fresh water and the sewer hose to the outlet",
    ),
    ("tobin", "12 fighting the hitch pin"),
    ("tobin", "12 shocked by the bill"),
    ("tobin", "12 no sound in room a"),
    ("tobin", "12 office wont answer"),
    ("tobin", "12 trash can tipped over"),
    ("tobin", "12 waste outlet is wet"),
    ("tobin", "12 water is brown in the toilet"),
    ("tobin", "12 cat under the trailer"),
    ("tobin", "12 leak under the sink, panel is dry"),
    ("lupe", "dejé la alarma a las 6"),
    ("tobin", "set my alarm for 7"),
    ("tobin", "12 black hose on his truck, 50 ft"),
    ("tobin", "12 pads under the trailer are in"),
    ("lupe", "le di un toque a la puerta de la 6"),
    ("lupe", "la 6 huele a drenaje"),
    ("lupe", "6 se fue la bomba de agua"),
];

#[test]
fn a_danger_in_own_words_reaches_the_dispatcher_as_what_it_is() {
    let mut missed = Vec::new();
    for (who, text, wanted) in TOLD {
        let told = words_to(&Crew::new(false).takes(who, text), "nadia");
        if !told.contains(wanted) {
            missed.push(format!("{who}> {text}: {told}"));
        }
    }
    assert!(missed.is_empty(), "{}", missed.join("\n"));
}

#[test]
fn its_harmless_like_alarms_nobody() {
    let mut alarmed = Vec::new();
    for (who, text) in HARMLESS {
        let told = words_to(&Crew::new(false).takes(who, text), "nadia");
        if told.contains("DANGER") || told.contains("WARNING") || told.contains("somebody is in") {
            alarmed.push(format!("{who}> {text}: {told}"));
        }
    }
    assert!(alarmed.is_empty(), "{}", alarmed.join("\n"));
}
