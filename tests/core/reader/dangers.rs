//! Words for a danger to a person, as frightened people write them, and the words that only sound like one. Missing one is
//! worse than answering one too many.

use hosebib::heard::Fault;
use hosebib::quantity::TemperatureScale;
use hosebib::words::Reader;

/// What a message reports, first words for it come first.
const DANGERS: &[(Fault, &[&str])] = &[
    (
        Fault::PersonHurt,
        &[
            "12 my buddy is under the trailer and it fell",
            "he is not moving",
            "12 man trapped under the trailer",
            "12 tobin is pinned under the axle",
            "12 trailer fell on him",
            "12 woman slipped on ice, cant get up",
            "12 chest pain",
            "12 jack slipped and it came down on his leg",
            "12 someone crushed his hand in the hitch",
            "he is on the floor not moving",
            "he has no pulse",
            "he wont wake up",
            "sewage splashed in my eyes",
            "12 got sewage in my mouth",
            "burned my hand on the hot water 12",
            "12 le cayo encima el remolque",
            "me salpico aguas negras en los ojos",
            "me machuque la mano en la 12",
            "la señora no despierta",
        ],
    ),
    (
        Fault::Fire,
        &[
            "12 fire",
            "fire!! 12",
            "room A is burning 12",
            "la 12 se quema",
            "12 heater smoking",
            "the tank heater is smoking",
            "12 wheel is smoking",
            "12 fire in room B",
            "smoke from the outlet in 12",
            "hay lumbre en la 12",
            "12 echa humo",
            "humo en el tablero",
        ],
    ),
    (
        Fault::Runaway,
        &[
            "12 is rolling downhill nobody in it",
            "12 trailer is rolling away!",
            "12 runaway trailer",
            "12 going down the hill by itself",
            "12 tipped over",
            "trailer moved, its off the jack, 12",
            "12 it came off the hitch on the highway",
            "se solto el remolque, se va rodando",
            "la 12 se volteo",
        ],
    ),
    (Fault::HotPlug, &["wires are hot on 12"]),
    (
        Fault::PersonTrapped,
        &[
            "12 kid locked himself in",
            "esta atrapada una niña en el baño",
        ],
    ),
];

/// What sounds like a danger and is none.
const NONE: &[&str] = &[
    "12 fire extinguisher checked",
    "fire marshal signed off on 12",
    "fire up the genny at 12",
    "fired up the heater in 12",
    "12 is next to the fire lane",
    "guests smoking behind 12",
    "no fire at 12",
    "no smoke no fire, 12 is fine",
    "we're on fire today, 12 and 14 done",
    "12 rolling now",
    "12 hoses rolled up",
    "i am under the trailer fixing the drain on 12",
    "12 is near the fire pit",
    "the fire dept told us to move 12",
    "12 nobody is hurt",
    "nadie herido en la 12",
    "se solto la llave del agua en la 6",
    "ya sali de abajo de la 6",
    "12 backed over the curb and parked",
];

#[test]
fn a_danger_is_heard_in_the_words_of_frightened_people() {
    let reader = Reader::new();
    let mut missed = Vec::new();
    for (fault, messages) in DANGERS {
        for text in *messages {
            let heard = reader.hear(text, TemperatureScale::F);
            if !heard
                .entries
                .iter()
                .any(|entry| entry.faults.contains(fault))
            {
                let faults: Vec<_> = heard
                    .entries
                    .iter()
                    .flat_map(|entry| &entry.faults)
                    .collect();
                missed.push(format!("{text:?}: {fault:?} not in {faults:?}"));
            }
        }
    }
    assert!(missed.is_empty(), "{missed:#?}");
}

#[test]
fn words_that_only_sound_like_a_danger_are_none() {
    let reader = Reader::new();
    let dangers: Vec<Fault> = DANGERS.iter().map(|(fault, _)| *fault).collect();
    for text in NONE {
        let heard = reader.hear(text, TemperatureScale::F);
        let found: Vec<_> = heard
            .entries
            .iter()
            .flat_map(|entry| &entry.faults)
            .filter(|fault| dangers.contains(fault))
            .collect();
        assert!(found.is_empty(), "{text:?}: {found:?}");
    }
}

#[test]
fn somebody_who_is_out_again_is_no_trailer_that_left() {
    let reader = Reader::new();
    for text in [
        "ya salio la niña de la 6",
        "la 6 ya salio la niña",
        "got the kid out of 12",
    ] {
        let heard = reader.hear(text, TemperatureScale::F);
        let entry = &heard.entries[0];
        assert!(entry.events.is_empty(), "{text:?}: {:?}", entry.events);
        assert_eq!(entry.cleared, [Fault::PersonTrapped], "{text:?}");
    }
}
