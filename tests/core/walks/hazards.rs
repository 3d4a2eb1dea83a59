//! Whatever can hurt somebody stands once it is told: in the status of its trailer, in the digest, and with the dispatcher,
//! until it is told to be over.

use std::collections::BTreeSet;

use super::{Crew, words_to};

/// A hazard of the word file, what is told before it, and how it is told of 12 in English and in Spanish.
type Row = (
    &'static str,
    &'static [&'static str],
    &'static str,
    &'static str,
);

#[rustfmt::skip]
const TOLD: &[Row] = &[
    ("no-chocks", &[], "no chocks", "faltan las calzas en la"),
    ("dumped", &[], "dumped the waste in the ditch", "tiramos las negras en la cuneta de la"),
    ("burnt-smell-plug", &[], "smells burnt by the plug", "huele a quemado la clavija de la"),
    ("burnt-smell", &[], "smells like burnt plastic", "huele a quemado en la"),
    ("co-alarm", &[], "co alarm is going off", "está sonando la alarma de co en la"),
    ("water-on-fire", &["12 is on fire"], "threw water on it", "le eché agua a la"),
    ("frostbite", &[], "cant feel my fingers", "no siento los dedos, en la"),
    ("trapped", &[], "kid locked in, not answering", "un niño encerrado, no contesta, en la"),
    ("backfeed", &[], "backfed it with a male to male cord", "conecté macho a macho en la"),
    ("refuel-running", &[], "filling the gen while its running", "llenando la planta prendida de la"),
    ("bypassed", &[], "used a cheater plug", "puenteé el gfci de la"),
    ("open-neutral", &[], "neutral is loose", "el neutro está suelto en la"),
    ("power-strip", &[], "plugged into a power strip", "conecté a una regleta la"),
    ("breaker-held", &[], "breaker is taped on", "la pastilla está con cinta en la"),
    ("generator-near", &[], "genny 5 ft from the door", "planta a 3 metros de la puerta de la"),
    ("exhaust-in", &[], "exhaust from the generator is blowing in", "el humo del generador se mete a la"),
    ("generator-at-door", &[], "generator is running right at the door", "la planta está pegada a la puerta de la"),
    ("generator-behind", &[], "generator right behind it", "el generador está muy cerca de la"),
    ("engine-at-door", &[], "truck idling at the door", "una troca con el motor prendido en la puerta de la"),
    ("fuel-heater", &[], "propane heater in the stall", "un calentador de propano adentro de la"),
    ("fuel-heater-meant", &["12 no heat"], "gonna run a propane heater in it anyway", "voy a meter un calentador de gas a la"),
    ("cord-taped", &["12 damaged cord"], "taped it up, using it", "le puse cinta al cable de la"),
    ("cord-in-water", &[], "cord is in a puddle", "el cable está en un charco en la"),
    ("people-inside", &["12 i smell gas"], "guests are still inside", "todavía hay gente adentro de la"),
    ("road-loose", &[], "came off the hitch on the highway", "se me soltó en la carretera la"),
    ("came-off", &[], "came off the hitch on the highway", "se me zafó el remolque, la"),
    ("rolled", &[], "it rolled a foot", "se rodó la"),
    ("wheel-loose", &[], "lug nut loose on left wheel", "un birlo flojo en la"),
    ("bites", &[], "handrail bites me", "el barandal da toques en la"),
    ("battery-gassing", &[], "battery is hissing and swollen", "la batería está hinchada en la"),
    ("needle-stick", &[], "got stuck by a needle", "me piqué con una jeringa en la"),
    ("needle-how", &["12 found a needle on the floor"], "do i pick it up with gloves", "la recojo con guantes, en la"),
    ("needle", &[], "found a needle on the floor", "hay una jeringa en el piso de la"),
    ("burnt-by-plug", &[], "burned my hand on the plug", "me quemé con la clavija de la"),
    ("plug-hot", &[], "outlet hot", "la clavija está caliente en la"),
    ("spill-drain", &["12 waste spilled on the ground"], "it went down the storm drain", "se fue a la coladera, la"),
    ("smoking", &[], "guys smoking by the vents", "están fumando junto al respiradero de la"),
    ("gas-collapse", &[], "guy collapsed by the open tank", "se desmayó uno junto al tanque abierto de la"),
    ("tank-entry", &[], "hes going into the waste tank", "me voy a meter en el tanque de la"),
    ("under-jack", &[], "guy is under it, only on the jack", "está debajo, nomás con el gato, de la"),
    ("fuse-wrong", &[], "put foil on the fuse", "le puse alambre al fusible de la"),
    ("thaw-heat", &[], "used a heat gun on the hose", "le puse la pistola de calor a la manguera de la"),
    ("relief-valve", &[], "relief valve blowing", "la válvula de alivio escupe en la"),
    ("space-heater", &[], "space heater on an extension cord", "un calentón con extensión en la"),
    ("power-line-hurt", &[], "got shocked, a power line is down", "le dio toques la línea de luz que cayó en la"),
    ("power-line", &[], "touched the overhead line", "tocamos la línea de luz con la"),
    ("swaying", &[], "trailer is swaying", "va coleando la"),
    ("wreck", &[], "truck slid in the ditch with it", "tuve un choque con la"),
    ("sliding", &[], "trailer is sliding", "se resbala el remolque, la"),
    ("pushed", &[], "is pushing me down the hill", "me empuja en la bajada la"),
    ("lost", &[], "im lost in the snow with it", "ando perdido en la nieve con la"),
    ("stranded", &[], "stuck in the snow with it and no heat", "me quedé atascado en la nieve, sin calefacción, con la"),
    ("stuck-in-snow", &[], "we are stuck in the snow", "me quedé atascado en la nieve con la"),
    ("shut-in", &[], "i cant get out, the door froze", "no puedo salir, se congeló la puerta de la"),
    ("gas-leak", &[], "propane tank is leaking", "gotea el tanque de gas de la"),
    ("panel-hot", &[], "breaker box is buzzing", "zumba el tablero de la"),
    ("water-in-panel", &[], "water is running into the panel", "cae agua en el tablero de la"),
    ("sewage-runs", &[], "poop water is running toward the creek", "el agua negra corre hacia el arroyo en la"),
    ("overdose", &[], "a dude od'd in stall 2", "hay una sobredosis en la"),
    ("fight", &[], "guy has a knife", "hay pelea, uno trae navaja, en la"),
    ("emergency", &[], "emergency", "emergencia en la"),
    ("generator-in", &[], "generator is running in the barn", "la planta está prendida en la bodega de la"),
    ("scalding", &[], "hot water is scalding", "el agua sale hirviendo en la"),
    ("hitch-pin", &[], "falta el pasador", "sin pasador la"),
    ("chain-broken", &[], "safety chain snapped", "se rompió la cadena de la"),
    ("tow-lights-out", &[], "brake lights are out", "no prenden las luces de freno de la"),
    ("sewage-up", &[], "sewage is coming up the shower drain", "salen aguas negras por la coladera de la"),
    ("hurt", &[], "a lady fell down the steps", "se cayó una señora en la"),
    ("ill", &[], "dizzy from the exhaust", "mareado por el humo de la planta en la"),
    ("battery-frozen", &[], "battery is frozen", "se congeló la batería de la"),
    ("wind-tips", &[], "wind is gonna tip the trailer", "el viento va a voltear el remolque, la"),
    ("held", &[], "he cant let go of the cord", "no suelta el cable en la"),
    ("mixed-cleaners", &[], "guy mixed bleach and acid", "mezclaron cloro con ácido en la"),
    ("tips", &[], "is tipping over", "se va a voltear la"),
    ("tank-gas-strong", &[], "strong rotten egg smell in the ladies", "huele fuertísimo a huevo podrido en la"),
    ("tank-gas", &[], "rotten eggs smell", "huele a huevo podrido en la"),
    ("shared-outlet", &[], "2 cords on one outlet", "dos cables en un contacto en la"),
    ("towed-attached", &[], "drove off with the hose on", "me fui con la manguera conectada, la"),
    ("blowout", &[], "tire blew on the highway", "se reventó una llanta en la carretera, la"),
    ("drowsy", &[], "fell asleep at the wheel almost", "me estoy durmiendo, voy con la"),
    ("drank", &[], "i had a few beers but im driving", "me tomé unas chelas, voy manejando la"),
    ("truck-brakes", &[], "truck brakes are bad", "la troca no frena bien, traigo la"),
    ("stolen", &[], "someone stole the generator", "se robaron el cable de la"),
    ("heat-stroke", &[], "one of the guys stopped sweating", "un muchacho ya no suda, en la"),
    ("hose-whips", &[], "hose burst and is whipping", "se reventó la manguera y anda chicoteando en la"),
    ("waste-cap-off", &[], "waste cap popped and its all over the ground", "el tapón del drenaje se botó y todo se salió en la"),
    ("bowl-over", &[], "water coming over the rim", "se desborda el mingitorio de la"),
    ("drain-cleaner-in", &["12 toilet clogged"], "used drain cleaner in it", "le eché sosa a la taza de la"),
    ("on-the-roof", &[], "climbing on the roof to brush snow", "me subo al techo de la"),
    ("battery-jumped", &[], "jumping the battery from the truck", "le paso corriente a la batería con la troca, la"),
    ("tire-low", &[], "left tire looks low", "se ve baja una llanta de la"),
    ("not-ok", &[], "juno is in bad shape", "juno se puso mal, en la"),
    ("choking", &[], "a guest is choking on food", "se atragantó una señora en la"),
    ("self-harm", &[], "a lady says she wants to die", "un señor se quiere matar en la"),
    ("scald-burn", &[], "hot tap burned a kid", "me quemé con el agua en la"),
    ("sewage-on-person", &[], "sewage sprayed in my face", "me cayó mierda en los ojos en la"),
    ("foul-fresh", &[], "sewer hose got hooked to the fresh fill", "conecté la manguera de negras a la limpia en la"),
    ("brown-water", &[], "water comes out brown", "sale café el agua de la"),
    ("alarm-fire", &[], "smoke alarm going off", "está sonando la alarma de humo en la"),
    ("gunshots", &[], "gunshots close by", "se oyen tiros junto a la"),
    ("bomb-threat", &[], "somebody called in a bomb threat", "hay una mochila sospechosa en la"),
    ("assault", &[], "a man followed her in and grabbed her", "un tipo la siguió y la manoseó en la"),
    ("missing-person", &[], "kid is missing", "se perdió un niño junto a la"),
    ("tips", &[], "trailer is leaning, about to tip", "se está ladeando el remolque, la"),
    ("gives-way", &[], "roof is sagging from the snow", "truena el techo por la nieve en la"),
    ("steps-loose", &[], "steps are loose", "están flojos los escalones de la"),
    ("roof-ice", &[], "ice falling off the roof onto guests", "se cae del techo el hielo en la"),
    ("flood", &[], "creek is rising around the trailer", "se desbordó el arroyo junto a la"),
    ("person-under", &[], "theres a kid under the trailer", "se metió un niño debajo del remolque, la"),
];

/// Codes of hazards that the word file knows.
fn codes() -> BTreeSet<String> {
    let file = include_str!("../../../grammar/hazards.toml");
    let table: toml::Table = file.parse().expect("the hazards are TOML");
    let hazards = table["hazard"].as_array().expect("a list of hazards");
    let code = |hazard: &toml::Value| hazard["code"].as_str().expect("a code").to_owned();
    hazards.iter().map(code).collect()
}

#[test]
fn every_hazard_has_a_row() {
    let rows: BTreeSet<String> = TOLD.iter().map(|(code, ..)| (*code).to_owned()).collect();
    assert_eq!(codes(), rows);
}

#[test]
fn whatever_can_hurt_somebody_stands_in_status_and_digest_and_the_dispatcher_is_told() {
    let mut wrong = Vec::new();
    for (code, before, en, es) in TOLD {
        let both = [("tobin", format!("12 {en}")), ("lupe", format!("{es} 12"))];
        for (who, text) in both {
            let mut crew = Crew::new(false);
            let mut told = String::new();
            for first in *before {
                told.push_str(&words_to(&crew.takes(who, first), "nadia"));
            }
            told.push_str(&words_to(&crew.takes(who, &text), "nadia"));
            let status = crew.hears("nadia", "status 12");
            let digest = crew.hears("nadia", "digest");
            let row = digest.lines().find(|line| line.starts_with("12"));
            let mut missing = Vec::new();
            if told.is_empty() {
                missing.push("nobody told the dispatcher".to_owned());
            }
            if !status.contains("Wrong now") {
                missing.push(format!("status: {status}"));
            }
            if row.is_none_or(|row| row.contains("in order")) {
                missing.push(format!("digest: {row:?}"));
            }
            if !missing.is_empty() {
                wrong.push(format!("{code}, {text}: {}", missing.join("; ")));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn a_hazard_stands_until_it_is_told_to_be_over_and_then_no_more() {
    for (told, not_yet, over) in [
        (
            "23 relief valve blowing",
            "23 relief valve still leaking",
            "23 relief valve replaced",
        ),
        (
            "la válvula de alivio escupe en la 23",
            "23 relief valve, going to be fixed tomorrow",
            "23 ya es segura",
        ),
        (
            "23 used a cheater plug",
            "23 cheater is not off",
            "23 took the cheater off",
        ),
        (
            "23 found a needle on the floor",
            "23 needle is still there",
            "23 needle picked up",
        ),
        (
            "23 no chocks",
            "23 chocks still missing",
            "23 chocked both sides",
        ),
        ("23 trailer is swaying", "23 still swaying", "23 arrived"),
    ] {
        let mut crew = Crew::new(true);
        crew.hears("tobin", told);
        crew.hears("tobin", not_yet);
        let status = crew.hears("nadia", "status 23");
        assert!(status.contains("Wrong now"), "{told}: {status}");
        let over_told = crew.takes("tobin", over);
        let status = crew.hears("nadia", "status 23");
        assert!(!status.contains("Wrong now"), "{over}: {status}");
        let own = words_to(&over_told, "tobin");
        assert!(!own.is_empty(), "{over}");
    }
}

#[test]
fn a_hazard_told_of_the_wrong_trailer_moves() {
    for correction in [
        "its the relief valve at 10 not 23",
        "es la válvula de la 10 no la 23",
    ] {
        let mut crew = Crew::new(false);
        crew.hears("tobin", "23 relief valve leaking");
        let reply = crew.hears("tobin", correction);
        assert!(
            reply.starts_with("DANGER 10") || reply.starts_with("PELIGRO 10"),
            "{reply}"
        );
        let of_23 = crew.hears("nadia", "status 23");
        assert!(!of_23.contains("Wrong now"), "{of_23}");
        let of_10 = crew.hears("nadia", "status 10");
        assert!(of_10.contains("Wrong now"), "{of_10}");
    }
}

#[test]
fn a_hazard_of_no_trailer_is_asked_after() {
    let mut crew = Crew::new(false);
    let reply = crew.hears("abel", "relief valve blowing");
    assert!(
        reply.starts_with("DANGER") && reply.contains("unit"),
        "{reply}"
    );
    let turn = crew.takes("abel", "23");
    assert!(
        words_to(&turn, "nadia").contains("DANGER 23"),
        "{:?}",
        turn.outgoing
    );
    let status = crew.hears("nadia", "status 23");
    assert!(status.contains("Wrong now"), "{status}");
}
