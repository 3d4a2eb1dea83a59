//! Cries for help in whatever words reach the dispatcher as a danger; talk that has the same words alarms nobody.

use super::{Crew, words_to};

/// Who writes what, and how the dispatcher hears of it.
#[rustfmt::skip]
const CRIES: &[(&str, &str, &str)] = &[
    ("tobin", "911", "DANGER: Tobin reports an emergency"),
    ("tobin", "call 911", "an emergency"),
    ("tobin", "emergency at 12", "an emergency"),
    ("ines", "emergencia", "an emergency"),
    ("ines", "socorro", "an emergency"),
    ("tobin", "im in the ditch", "a rig in the ditch"),
    ("tobin", "slid into a ditch", "a rig in the ditch"),
    ("ines", "me fui a la cuneta", "a rig in the ditch"),
    ("ines", "choqué", "a crash"),
    ("tobin", "lost the trailer on the hill", "a trailer lost on the road"),
    ("tobin", "12 trailer pushing me down the hill", "pushes its truck"),
    ("lupe", "no puedo frenar en la bajada, me empuja la 6", "pushes its truck"),
    ("ines", "viene culebreando la 12", "sways"),
    ("ines", "la 12 se va de lado en la carretera", "sways"),
    ("tobin", "abel is in the tank", "going into a tank"),
    ("tobin", "he dropped his phone and went in after it, 12 waste tank", "going into a tank"),
    ("lupe", "un muchacho se cayó al tanque de la 6", "going into a tank"),
    ("tobin", "my buddy went down by the waste valve hes not moving", "someone down by a tank"),
    ("tobin", "guy collapsed at the dump valve 12", "someone down by a tank"),
    ("lupe", "se desmayó uno en la válvula de vaciado de la 6", "someone down by a tank"),
    ("tobin", "drunk guy throwing punches at 12", "a fight or a weapon"),
    ("lupe", "uno trae pistola en la 6", "a fight or a weapon"),
    ("tobin", "dude OD'd in stall 2 of 12", "an overdose"),
    ("tobin", "juno is mumbling and stumbling out here in the cold", "someone hurt"),
    ("lupe", "abel balbucea y tiene mucho frío", "someone hurt"),
    ("lupe", "ando perdido en la nieve", "lost in the cold"),
    ("tobin", "stuck in the snow with 12, no heat in the truck", "stuck in the snow without heat"),
    ("lupe", "me quedé atascado con la 6 en la nieve", "WARNING 6: Lupe tells of a truck stuck in the snow"),
    ("ines", "no puedo salir, se congeló la puerta", "who cannot get out"),
    ("lupe", "me caí", "someone hurt"),
    ("tobin", "lp bottle hissing 12", "smell of gas"),
    ("lupe", "tanque de gas goteando en la 6", "smell of gas"),
    ("tobin", "running the generator inside the bay on 12", "generator or fuel burner inside"),
    ("tobin", "wire hanging down over 12", "a power line"),
    ("tobin", "6 the frame buzzes my hand", "electric shock"),
    ("tobin", "i touched the trailer and my arm went numb", "electric shock"),
    ("tobin", "12 felt electricity in the water", "electric shock"),
    ("ines", "12 toques en el escalón", "electric shock"),
    ("ines", "la 12 está electrificada", "electric shock"),
    ("ines", "me quedé pegado a la puerta de la 12", "electric shock"),
    ("tobin", "sparks flying from the panel at 12", "a panel that hums"),
    ("tobin", "12 water is running down into the panel", "water in a panel"),
    ("ines", "está humeando el contacto de la 12", "fire"),
    ("tobin", "12 theres a hot smell", "burnt smell"),
    ("tobin", "12 smells real bad and my eyes burn", "someone sick from gas"),
    ("tobin", "12 stinks im gonna puke", "someone sick from gas"),
    ("ines", "apesta la 12, me arden los ojos", "someone sick from gas"),
    ("tobin", "guest collapsed outside 23", "DANGER 23: Tobin reports someone hurt"),
    ("tobin", "fight outside 23", "DANGER 23: Tobin reports a fight"),
    ("tobin", "gas smell outside 10", "DANGER 10: Tobin reports smell of gas"),
    ("tobin", "kid hit by a car outside 16", "DANGER 16: Tobin reports someone hurt"),
    ("ines", "una señora se desmayó afuera de la 23", "DANGER 23: Inés reports someone hurt"),
    ("ines", "atropellaron a un niño en la 16", "DANGER 16: Inés reports someone hurt"),
    ("tobin", "does anyone else smell smoke at 12", "DANGER 12: Tobin reports burnt smell"),
    ("tobin", "should i worry about smoke from the heater at 12", "DANGER 12: Tobin reports fire"),
    ("tobin", "could smell propane near 10", "DANGER 10: Tobin reports smell of gas"),
    ("tobin", "is that gas i smell at 12", "DANGER 12: Tobin reports smell of gas"),
    ("tobin", "is it normal that the plug on 12 is smoking?", "DANGER 12: Tobin reports fire"),
    ("tobin", "why is my head spinning in 12", "someone sick from gas"),
    ("tobin", "why does the sink at 12 shock me", "DANGER 12: Tobin reports electric shock"),
    ("tobin", "anyone else getting shocked by the sink at 10", "DANGER 10: Tobin reports electric shock"),
    ("tobin", "anyone smell gas at 23", "DANGER 23: Tobin reports smell of gas"),
    ("tobin", "12 is the heater supposed to smell burnt", "DANGER 12: Tobin reports burnt smell"),
    ("ines", "es normal que huela a gas en la 4", "DANGER 4: Inés reports smell of gas"),
    ("tobin", "im stuck under 12", "DANGER 12: Tobin reports someone"),
    ("tobin", "trapped under 12", "DANGER 12: Tobin reports someone"),
    ("tobin", "cant get out from under 12", "DANGER 12: Tobin reports someone"),
    ("tobin", "the trailer is on my leg at 16", "DANGER 16: Tobin reports someone"),
    ("ines", "estoy atorado debajo de la 12", "DANGER 12: Inés reports someone"),
    ("tobin", "heading inside the tank on 12 to grab a phone", "going into a tank"),
    ("tobin", "gonna reach in the waste tank for the phone", "going into a tank"),
    ("ines", "voy adentro del tanque por un celular", "going into a tank"),
    ("ines", "metí la mano al tanque de la 4", "going into a tank"),
    ("tobin", "somebody needs to get here now", "an emergency"),
    ("tobin", "need someone on 12 now", "an emergency"),
    ("tobin", "theres a guy following me", "an emergency"),
    ("ines", "que venga alguien ya", "an emergency"),
    ("ines", "alguien que venga rápido a la 4", "an emergency"),
    ("ines", "mándenme ayuda", "Inés"),
    ("ines", "estoy temblando mucho y no puedo parar", "hurt by the cold"),
    ("tobin", "im so cold i cant think straight", "someone hurt"),
    ("tobin", "its coming back up in the toilet 23", "WARNING 23: Close the unit"),
    ("tobin", "12 poo water is running toward the creek", "WARNING 12: Close the unit"),
    ("tobin", "12 hose came off while dumping, its everywhere", "WARNING 12: Close the unit"),
    ("ines", "12 se salieron las negras", "WARNING 12: Close the unit"),
    ("tobin", "some guy by the steps isnt breathing right", "someone hurt"),
    ("tobin", "hes out cold", "someone hurt"),
    ("tobin", "cut my arm wide open", "someone hurt"),
    ("tobin", "woman in labor in stall 1", "someone hurt"),
    ("tobin", "kid drank the hand sanitizer", "someone hurt"),
    ("tobin", "battery acid in my eyes", "someone hurt"),
    ("tobin", "eyes burning from cleaner", "someone hurt"),
    ("tobin", "hand stuck in the jack", "someone hurt"),
    ("tobin", "12 lady's wrist is bent funny", "DANGER 12: Tobin reports someone hurt"),
    ("tobin", "blood all over stall 3", "someone hurt"),
    ("tobin", "kid hurt by 12", "DANGER 12: Tobin reports someone hurt"),
    ("tobin", "fingers r numb and white", "hurt by the cold"),
    ("tobin", "juno is shaking n talking weird from the cold", "someone hurt"),
    ("tobin", "two bar staff by the genny say their heads are splitting", "someone sick from gas"),
    ("lupe", "se me desmayó una doña, la 6", "DANGER 6: Lupe reports someone hurt"),
    ("lupe", "a mi compa le dio un golpe de calor en la 6", "DANGER 6: Lupe reports somebody with heat stroke"),
    ("lupe", "un niño se tragó el azul de la 6", "DANGER 6: Lupe reports someone hurt"),
    ("lupe", "picó un alacrán a mi compa", "someone hurt"),
    ("lupe", "se cortó con el vidrio en la 6", "DANGER 6: Lupe reports someone hurt"),
    ("lupe", "alguien se encerró y no contesta, la 6", "somebody shut in who does not answer"),
    ("lupe", "recibió un toque con el barandal", "electric shock"),
    ("lupe", "me pegó la luz en la 6", "DANGER 6: Lupe reports electric shock"),
    ("lupe", "a la señora le dio un corrientazo", "electric shock"),
    ("lupe", "me dio calambre al tocar la puerta", "electric shock"),
    ("tobin", "jack is sinking w juno under it", "under a trailer on a jack"),
    ("lupe", "se está hundiendo el gato de la 6 con Inés abajo", "under a trailer on a jack"),
    ("tobin", "trailer is rolling", "rolling"),
    ("tobin", "tree branch on the wire above 12", "a power line"),
    ("tobin", "12 water heater is spitting steam", "a relief valve"),
    ("tobin", "spilled gas refueling the genny", "smell of gas"),
    ("lupe", "se derramó gasolina en la 6", "DANGER 6: Lupe reports smell of gas"),
    ("tobin", "brought the generator in the barn to warm up", "generator or fuel burner inside"),
    ("lupe", "el generador lo tengo debajo del toldo", "generator or fuel burner inside"),
    ("lupe", "hay agua en los contactos de la 6", "water in a panel"),
    ("lupe", "sale lo negro por la coladera del piso de la 6", "WARNING 6: Close the unit"),
];

/// What has such words and is no danger.
#[rustfmt::skip]
const CALM: &[(&str, &str)] = &[
    ("tobin", "12 emergency lights work"),
    ("lupe", "6 freno d emergencia probado"),
    ("tobin", "no emergency at 12"),
    ("tobin", "black ice everywhere on 12"),
    ("tobin", "fighting with this valve on 12"),
    ("tobin", "theres a heat gun in the truck"),
    ("tobin", "found a knife in stall 2"),
    ("tobin", "hose fell in the tank"),
    ("tobin", "dumped blue in the tank"),
    ("tobin", "guest dropped paper on the floor at 12"),
    ("tobin", "wheel chocks are on the ground by 12"),
    ("tobin", "got lost on the way, at 12 now"),
    ("tobin", "i fell behind schedule"),
    ("ines", "me caí de sueño"),
    ("ines", "casi me caigo en la nieve de la 12"),
    ("ines", "ya está dando corriente la planta de la 12"),
    ("tobin", "12 propane tank leak test good, not leaking"),
    ("tobin", "its 23 outside"),
    ("tobin", "was anyone hurt at 12"),
    ("tobin", "anyone hurt at 12?"),
    ("tobin", "hose is stuck under 12"),
    ("tobin", "the trailer is on my list"),
    ("tobin", "why does the pump on 12 hum"),
    ("tobin", "passed out flyers at 12"),
    ("tobin", "knocked out the setup at 12"),
    ("tobin", "12 is on fire tonight, guests love it"),
    ("tobin", "i almost got shocked today by the bill"),
    ("tobin", "burned my tongue on coffee"),
    ("tobin", "12 coffee somebody dropped"),
    ("tobin", "somebody dropped their phone at 12"),
    ("tobin", "12 pump, bleeding the air out of it"),
    ("tobin", "pressure fell"),
    ("tobin", "12 put the generator in the barn for the night, its off"),
    ("tobin", "out of hand sanitizer on 12"),
    ("tobin", "tree on the property line by 12"),
    ("lupe", "dale un toque final a la 6"),
    ("lupe", "se soltó la manguera de la 6"),
];

#[test]
fn a_danger_moves_where_a_step_of_a_check_waits_too() {
    for (who, check, said, place) in [
        ("tobin", "12 leak", "i smell gas", "no, at 23"),
        (
            "tobin",
            "12 valve is frozen",
            "someone hurt",
            "no its at 23",
        ),
        ("lupe", "12 fuga de agua", "huele a gas", "no, en la 23"),
    ] {
        let mut crew = Crew::new(false);
        crew.hears(who, check);
        crew.hears(who, said);
        let told = words_to(&crew.takes(who, place), "nadia");
        assert!(told.contains("DANGER 23"), "{place}: {told}");
    }
}

#[test]
fn which_trailer_it_is_does_not_say_that_its_power_is_off() {
    for said in ["yeah 12", "yes its 12"] {
        let mut crew = Crew::new(false);
        crew.hears("tobin", "12 electric shock");
        let reply = crew.hears("tobin", said);
        assert!(
            !reply.contains("power off;") && !reply.contains(": power off"),
            "{reply}"
        );
        assert!(reply.contains("Is the power off at the source"), "{reply}");
    }
}

#[test]
fn a_trailer_that_is_dead_as_a_whole_has_no_power() {
    for (who, said, fault) in [
        ("tobin", "12 dead, nothing works", "no power"),
        ("tobin", "12 is completely dead", "no power"),
        ("lupe", "la 6 está muerta, no prende nada", "sin corriente"),
    ] {
        let reply = Crew::new(false).hears(who, said);
        assert!(reply.contains(fault), "{said}: {reply}");
    }
    let reply = Crew::new(false).hears("tobin", "12 battery completely dead");
    assert!(!reply.contains(": no power"), "{reply}");
}

#[test]
fn help_that_a_dispatcher_called_is_no_second_danger() {
    for said in ["ambulance on the way", "ya viene la ambulancia"] {
        let mut crew = Crew::new(false);
        crew.hears("tobin", "someone hurt at 12");
        let reply = crew.hears("nadia", said);
        assert!(!reply.contains("DANGER"), "{said}: {reply}");
    }
    // where nobody told of anybody it is a danger
    let reply = Crew::new(false).hears("tobin", "ambulance on the way");
    assert!(reply.starts_with("DANGER"), "{reply}");
}

#[test]
fn a_cry_for_help_reaches_the_dispatcher_as_what_it_is() {
    let mut missed = Vec::new();
    for (who, text, wanted) in CRIES {
        let told = words_to(&Crew::new(false).takes(who, text), "nadia");
        if !told.contains(wanted) {
            missed.push(format!("{who}> {text}: {told}"));
        }
    }
    assert!(missed.is_empty(), "{}", missed.join("\n"));
}

#[test]
fn talk_that_has_such_words_alarms_nobody() {
    let mut alarmed = Vec::new();
    for (who, text) in CALM {
        let told = words_to(&Crew::new(false).takes(who, text), "nadia");
        if !told.is_empty() {
            alarmed.push(format!("{who}> {text}: {told}"));
        }
    }
    assert!(alarmed.is_empty(), "{}", alarmed.join("\n"));
}

#[test]
fn a_torch_on_a_hose_told_frozen_is_stopped_and_boiling_water_turns_no_water_on() {
    for (frozen, torch) in [
        ("12 hose is frozen", "using a torch on it"),
        ("12 manguera congelada", "le estoy dando con soplete"),
    ] {
        let mut crew = Crew::new(false);
        crew.hears("tobin", frozen);
        let told = words_to(&crew.takes("tobin", torch), "nadia");
        assert!(told.contains("WARNING 12"), "{torch}: {told}");
    }
    let mut crew = Crew::new(false);
    crew.hears("tobin", "12 hose is frozen");
    let reply = crew.hears("tobin", "pouring boiling water on it");
    assert!(reply.starts_with("No."), "{reply}");
    assert!(!reply.contains("water on"), "{reply}");
}

#[test]
fn a_danger_on_the_road_is_not_placed_at_the_site_of_the_plan() {
    for (who, text) in [
        ("tobin", "im in the ditch with 12"),
        ("ines", "ando perdida en la nieve con la 12"),
    ] {
        let told = words_to(&Crew::new(false).takes(who, text), "nadia");
        assert!(
            told.contains("DANGER 12") && !told.contains("Sleigh Barn"),
            "{text}: {told}"
        );
    }
}

#[test]
fn the_place_of_a_danger_is_mended_by_naming_the_trailer_it_was_at() {
    for (who, said, place) in [
        ("tobin", "guest fell at 12", "no sorry that was at 23"),
        ("tobin", "guest fell at 12", "it was at 23 actually"),
        ("tobin", "guest fell at 12", "its at 23 not 12"),
        ("ines", "un señor se cayó en la 12", "perdón en la 23"),
        ("tobin", "guest fell", "23"),
        ("tobin", "guest fell", "23!!"),
        ("tobin", "guest fell", "trailer 23"),
        ("tobin", "guest fell", "its at 23"),
        ("ines", "se cayó un señor", "en la 23"),
    ] {
        let mut crew = Crew::new(false);
        crew.hears(who, "12 presión 50");
        crew.hears(who, said);
        let told = words_to(&crew.takes(who, place), "nadia");
        let moved = told.contains("It is 23 that is meant") && told.contains("DANGER 23");
        assert!(moved, "{said}; {place}: {told}");
    }
}

#[test]
fn a_number_after_a_danger_at_a_named_trailer_moves_it_nowhere() {
    let mut crew = Crew::new(false);
    crew.hears("tobin", "guest fell at 12");
    let told = words_to(&crew.takes("tobin", "23"), "nadia");
    assert!(!told.contains("is meant"), "{told}");
}
