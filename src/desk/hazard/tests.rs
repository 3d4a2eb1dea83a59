//! Which hazards the words of crews tell of, and which they only sound like.

use super::*;
use crate::heard::Language;
use crate::reply::Replies;

fn told(text: &str) -> Option<&'static str> {
    let folded = plain(text);
    // by its words alone, whatever else was told or reported
    let alone = |hazard: &&Hazard| {
        let beside = hazard.beside.is_empty() && hazard.instead.is_empty();
        hazard.after.is_none() && beside && !hazard.crew
    };
    let mut known = known().iter().filter(alone);
    let found = known.find(|hazard| hazard.is_in(&Words::of(&folded), text));
    found.map(|hazard| hazard.code.as_str())
}

#[test]
fn every_hazard_is_said_in_both_languages() {
    let replies = Replies::new();
    for hazard in known() {
        assert!(
            hazard.all.iter().all(|list| list.iter().next().is_some()),
            "{}",
            hazard.code
        );
        let mut keys = vec![format!("name-site-unsafe-{}", hazard.code)];
        if hazard.reports.is_empty() {
            keys.push(format!("site-unsafe-{}", hazard.code));
            assert!(hazard.level.is_some(), "{}", hazard.code);
        }
        for key in keys {
            for language in [Language::En, Language::Es] {
                assert!(replies.has(language, &key), "{language}: {key}");
            }
        }
    }
}

#[test]
fn a_list_that_is_named_and_not_there_is_an_error() {
    let file = "[[list]]\nname = \"fire\"\nsay = [\"flames\"]\n[[hazard]]\ncode = \"x\"\nall = [[\"odd\"]]\n";
    assert!(Hazards::parse(&format!("{file}but = [\"@fire\"]\n")).is_ok());
    let wrong = Hazards::parse(&format!("{file}but = [\"@fyre\"]\n"));
    let said = wrong.expect_err("no such list").to_string();
    assert!(said.contains("fyre"), "{said}");
}

#[test]
fn what_is_denied_mended_or_asked_is_no_hazard() {
    for (text, wanted) in [
        ("12 no chocks on the truck", Some("no-chocks")),
        ("used 2 rocks", Some("no-chocks")),
        ("12 only chocked one side", Some("no-chocks")),
        ("la 12 nomás calcé de un lado", Some("no-chocks")),
        ("16 chocked left side", Some("no-chocks")),
        ("12 only chocked the uphill wheels", Some("no-chocks")),
        ("12 calzada solo de un lado", Some("no-chocks")),
        ("12 no ay trancas", Some("no-chocks")),
        ("12 3 of 4 chocks froze", Some("no-chocks")),
        ("12 chocked left and right side", None),
        ("open neutral at 12", Some("open-neutral")),
        ("12 lights dim then bright", Some("open-neutral")),
        ("neutro abierto en la 12", Some("open-neutral")),
        ("truck is in neutral", None),
        ("chocks in the truck", None),
        ("12 dumped it in the ditch", Some("dumped")),
        ("tiramos las negras en la cuneta", Some("dumped")),
        ("12 dumped at the dump station", None),
        ("should we dump in the ditch", None),
        (
            "12 backfed from the stove plug with a male to male cord",
            Some("backfeed"),
        ),
        (
            "12 filling the gen while its running",
            Some("refuel-running"),
        ),
        ("filled the generator, its not running", None),
        ("12 used a cheater plug", Some("bypassed")),
        ("took the cheater off", None),
        ("plugged the 12 into a power strip", Some("power-strip")),
        ("conecté la 12 a una regleta", Some("power-strip")),
        ("took the power strip out on 12", None),
        ("12 breaker is taped on", Some("breaker-held")),
        ("genny 5 ft from the door on 12", Some("generator-near")),
        ("planta a 3 metros de la puerta", Some("generator-near")),
        ("genny 25 ft from the door on 12", None),
        (
            "12 propane heater in the room to thaw pipes",
            Some("fuel-heater"),
        ),
        ("cord is running thru a puddle, ok?", Some("cord-in-water")),
        (
            "some guy put a propane heater in the ladies room of 23",
            Some("fuel-heater"),
        ),
        (
            "pusieron un calentador de propano adentro de la 6",
            Some("fuel-heater"),
        ),
        ("propane heater comes in 10 minutes", None),
        (
            "vendor put his genny right behind 23, 5 ft from the ladies door",
            Some("generator-near"),
        ),
        (
            "vendor put his generator right behind 23",
            Some("generator-behind"),
        ),
        ("genny right behind 23, 30 ft from the door", None),
        (
            "10 generator is running right at the door",
            Some("generator-at-door"),
        ),
        (
            "10 exhaust from a truck idling at the door",
            Some("engine-at-door"),
        ),
        ("el humo del generador se mete a la 6", Some("exhaust-in")),
        ("se me soltó la 6 en la carretera", Some("road-loose")),
        ("la 6 se me zafó", Some("came-off")),
        ("se me soltó la manguera de la 6", None),
        ("12 came off the hitch on the highway", Some("road-loose")),
        ("found a needle on the floor of 10 mens", Some("needle")),
        ("me piqué con una jeringa en la 6", Some("needle-stick")),
        ("12 gauge needle is stuck", None),
        ("se quemó la clavija de la 6", Some("plug-hot")),
        ("me quemé con la clavija de la 6", Some("burnt-by-plug")),
        ("outlet by the sink in 23 is warm", Some("plug-hot")),
        ("12 water is hot at the outlet", None),
        ("12 handrail bites me when its wet", Some("bites")),
        ("12 rolled a foot", Some("rolled")),
        ("rolled up the cord", None),
        ("it moved a bit when i unhitched it", Some("rolled")),
        ("se movió tantito cuando la desenganché", Some("rolled")),
        ("chocks are still in", None),
        ("no, chocks still in", None),
        ("12 lug nut loose on left wheel", Some("wheel-loose")),
        ("wheel wobbles on 12", Some("wheel-loose")),
        ("a la 6 le falta un birlo", Some("wheel-loose")),
        ("un birlo flojo en la 6", Some("wheel-loose")),
        ("lug nuts checked, none loose", None),
        ("4 neutral is loose", Some("open-neutral")),
        ("el neutro está suelto en la 12", Some("open-neutral")),
        ("truck is in neutral, brake is off", None),
        ("lights dim then bright on 4", Some("open-neutral")),
        ("too bright to see the lights", None),
        ("12 on the road, sliding", Some("sliding")),
        ("12 sliding door is stuck", None),
        ("12 slid, no, it is not sliding", None),
        ("truck slid in the ditch with 12", Some("wreck")),
        ("12 hose is in the ditch", None),
        ("tuve un choque con la 12", Some("wreck")),
        ("choque eléctrico en la 12", None),
        ("saw a wreck, traffic is bad", None),
        ("la 12 va coleando", Some("swaying")),
        ("la 12 ya no va coleando", None),
        ("falta el pasador en la 16", Some("hitch-pin")),
        ("falta el pasador de la puerta", None),
        (
            "guy collapsed next to the open manway, rotten egg smell",
            Some("gas-collapse"),
        ),
        ("hose collapsed by the waste tank", None),
        ("put the torch on the hose", Some("thaw-heat")),
        ("wheel chock is loose", None),
        ("fingers are white, not sure if bad", Some("frostbite")),
        (
            "cant feel my fingers, nobody here to ask",
            Some("frostbite"),
        ),
        (
            "numb before, fingers are white now, was in the paint",
            Some("frostbite"),
        ),
        (
            "no siento los dedos, no se si se congelaron",
            Some("frostbite"),
        ),
        ("no frostbite on anybody", None),
        (
            "kid and a dog locked in the stall, not answering",
            Some("trapped"),
        ),
        (
            "child trapped in there, its quiet, nobody has the key",
            Some("trapped"),
        ),
        ("lady locked in, she got out, was not answering", None),
        ("co alarm going off, a guy blacked out", None),
        ("co detector beeping and shes puking", None),
        ("co alarm went off, hes confused", None),
        ("co alarm going off, cant wake him", None),
        ("suena la alarma de co y no despierta", None),
        ("co alarm going off, all outside", Some("co-alarm")),
        ("going into the tank on 12 for a phone", Some("tank-entry")),
        ("voy a meterme al tanque por el celular", Some("tank-entry")),
        ("hose is going into the fresh tank of 12", None),
        ("under 12, its only on the jack", Some("under-jack")),
        (
            "me metí abajo del remolque nomás con el gato",
            Some("under-jack"),
        ),
        ("wood under 12, tongue is on the jack", None),
        ("put foil in the fuse on 12", Some("fuse-wrong")),
        ("le metí un fusible más grande", Some("fuse-wrong")),
        ("12 blew a fuse, can i use a bigger one", None),
        ("gfci on 12 kept popping so i bypassed it", Some("bypassed")),
        ("puentié el gfci de la 6", Some("bypassed")),
        ("thawing the hose w a heat gun", Some("thaw-heat")),
        (
            "estoy descongelando la manguera con soplete",
            Some("thaw-heat"),
        ),
        ("hose on 12 is frozen, no torch here", None),
        (
            "23 water heater spitting at relief valve",
            Some("relief-valve"),
        ),
        (
            "la válvula de alivio de la 6 está escupiendo",
            Some("relief-valve"),
        ),
        (
            "12 space heater in mens, extension cord",
            Some("space-heater"),
        ),
        (
            "pusieron un calentón con extensión en la 6",
            Some("space-heater"),
        ),
        ("12 touching a power line", Some("power-line")),
        ("hit a power line with 12", Some("power-line")),
        ("wire down on 12", Some("power-line")),
        ("la 12 toca un cable de alta", Some("power-line")),
        ("se cayo el cable de luz sobre la 12", Some("power-line")),
        ("12 water line down to a drip", None),
        ("stay away from the power line by 12", None),
        ("12 trailer swaying on the highway", Some("swaying")),
        ("la 6 va coleteando en la carretera", Some("swaying")),
        ("trees swaying by 12, road is clear", None),
        ("se rompió una cadena de la 6", Some("chain-broken")),
        ("12 toilet chain broke", None),
        ("no prenden las luces de freno", Some("tow-lights-out")),
        ("sale mierda por la coladera de la 6", Some("sewage-up")),
        ("12 battery's swollen", Some("battery-gassing")),
        ("brown marks on the 12 plug", Some("plug-hot")),
        ("la 6 da cosquilla en los escalones", Some("bites")),
        ("finger pinched in the hitch of 12", Some("hurt")),
        ("juno twisted her ankle at 12", Some("hurt")),
        ("le cayó la lanza a mi compa en el pie", Some("hurt")),
        ("me duele el pecho", Some("hurt")),
        ("almost broke my wrist on 12", None),
        ("my feet hurt", None),
        ("me caes bien, la 6 lista", None),
        ("guest complains of dizziness in 12", Some("ill")),
    ] {
        assert_eq!(told(text), wanted, "{text}");
    }
}

#[test]
fn dangers_in_everyday_spelling_are_told_from_their_likes() {
    let rows = [
        (
            "se callo un señor de las escaleras y no se mueve",
            Some("hurt"),
        ),
        (
            "un bato se callo de las escaleras y no se mueve",
            Some("hurt"),
        ),
        ("un señor en la 10 no se mueve", Some("hurt")),
        ("a lady in the stall isnt moving", Some("hurt")),
        ("una señora dice que no se mueve la puerta", None),
        ("el señor de la pipa no se mueve de ahí", None),
        ("se cayó el letrero y no se mueve", None),
        ("a guy says the latch isnt moving", None),
        ("le cayó la traila encima a tobin", Some("hurt")),
        ("le cayó una rama encima a la traila", None),
        ("se le atoró la mano en el gato", Some("hurt")),
        ("se me atoró la llave en la chapa", None),
        ("se le paró el corazón a un señor", Some("hurt")),
        ("se le paró la troca", None),
        ("agarra toques el lavamanos", Some("bites")),
        ("la 12 agarra corriente al tocarla", Some("bites")),
        ("la bomba no agarra corriente", None),
        ("la 12 ya no agarra toques", None),
        ("se esta yendo solo el remolque pa abajo", Some("rolled")),
        ("la traila se esta yendo pa tras", Some("rolled")),
        ("se esta yendo la luz en la traila", None),
        ("el agua se va sola en la traila", None),
        ("tope un cable de luz con la traila", Some("power-line")),
        ("jalé el cable de la luz de la 12", None),
        ("casi tope un cable de luz con la traila", None),
        ("se ladeo la 12 con gente adentro", Some("tips")),
        ("people inside 12 and it is leaning", Some("tips")),
        ("12 leans a bit, people inside", None),
        ("se ladeo la 12, ya salieron todos", None),
        ("se esta hundiendo el gato de la 12", Some("tips")),
        ("hace mucho calor y ya no suda", Some("heat-stroke")),
        ("the pipe stopped sweating", None),
        ("hot day, drink water to avoid heat stroke", None),
        ("nos duele la cabeza a todos en la 6", Some("ill")),
        ("we all have a headache in 12", Some("ill")),
        ("a todos nos duele la cabeza por la musica en la 6", None),
        (
            "la planta esta metida abajo de la traila",
            Some("generator-in"),
        ),
        ("el cable de la planta va abajo de la traila", None),
        (
            "cloro con el liquido azul se me junto",
            Some("mixed-cleaners"),
        ),
        ("no mezcle cloro con orines", None),
        ("bleach on my blue shirt", None),
        ("un guey nos quiere asaltar", Some("fight")),
        ("esos precios nos quieren robar", None),
        ("me tome unas chelas, puedo jalar la 6", Some("drank")),
        ("guests had a few beers, we drive home at 11", None),
        ("me tome un cafe y voy a manejar", None),
        ("tengo mucho sueño y voy a manejar", Some("drowsy")),
        ("the guests are so tired of the road noise", None),
        ("la troca no frena bien", Some("truck-brakes")),
        ("truck brakes are bad", Some("truck-brakes")),
        ("truck brakes fixed, no problem", None),
        ("nos robaron la traila 6", Some("stolen")),
        ("se robaron el papel de la 12", None),
        ("someone stole the generator", Some("stolen")),
        ("ya calzada pero nomás un lado", Some("no-chocks")),
        ("calzada de los dos lados", None),
    ];
    let wrong = rows.iter().filter(|(text, wanted)| told(text) != *wanted);
    let wrong: Vec<_> = wrong.map(|(text, _)| (text, told(text))).collect();
    assert!(wrong.is_empty(), "{wrong:#?}");
}
