//! Findings that words bring up, with no number between told and not told: each has its near miss in the nearest words that
//! must not bring it up, of something else, in order, over, or of nobody. All in both languages, through the whole desk.

use std::sync::LazyLock;

use chrono::{DateTime, Utc};
use hosebib::book::{MessageKey, Record};
use hosebib::desk::{Desk, Inbound, Sender};
use hosebib::finding::FindingId as Id;
use hosebib::fleet;

/// A finding, messages that bring it up, and the nearest that do not; each with who writes it.
pub(super) struct Row {
    pub(super) id: Id,
    pub(super) fires: [(&'static str, &'static str); 2],
    pub(super) near: [(&'static str, &'static str); 2],
}

/// Returns the rows of every topic.
pub(super) fn rows() -> impl Iterator<Item = &'static Row> {
    [DANGERS, WATER_AND_POWER, ROOMS, DESK]
        .into_iter()
        .flatten()
}

/// Returns what the first message of a desk brings up, and whether all of it was understood.
pub(super) fn found(who: &str, text: &str) -> (Vec<Id>, bool) {
    let now: DateTime<Utc> = "2027-01-23T19:00:00Z".parse().expect("an instant");
    static DESK: LazyLock<Desk> = LazyLock::new(|| crate::desks::at_work(fleet::demo::fleet()));
    let key = MessageKey::new("test", 1, 1, 0);
    let turn = DESK.receive(&Inbound::says(key, Sender::Crew(who.into()), now, text));
    let found = turn.findings.iter().map(|finding| finding.id).collect();
    let understood = turn.records.iter().all(|record| match record {
        Record::Message(message) => message.unclear.is_empty(),
        _ => true,
    });
    (found, understood)
}

/// A row whose messages a driver writes in English and another in Spanish.
const fn row(id: Id, fires: [&'static str; 2], near: [&'static str; 2]) -> Row {
    Row {
        id,
        fires: [("tobin", fires[0]), ("lupe", fires[1])],
        near: [("tobin", near[0]), ("lupe", near[1])],
    }
}

const DANGERS: &[Row] = &[
    row(
        Id::PowerShock,
        ["12 i got shocked by the steps", "la 12 me dio toques"],
        [
            "12 shock absorber looks worn",
            "la 12 le di unos toques de pintura",
        ],
    ),
    row(
        Id::CrewPersonHurt,
        [
            "12 somebody fell and is bleeding",
            "se cayó una señora en la 12",
        ],
        [
            "12 a sign fell, nobody hurt",
            "se cayó un letrero en la 12, nadie herido",
        ],
    ),
    row(
        Id::TroubleFire,
        ["12 is on fire", "hay fuego en la 12"],
        [
            "12 fire extinguisher checked",
            "la 12 extintor revisado, no hay fuego",
        ],
    ),
    row(
        Id::TroubleGasIllness,
        [
            "12 two people are dizzy from the fumes",
            "hay gente mareada por el humo en la 12",
        ],
        ["12 nobody is dizzy", "la 12 nadie está mareado"],
    ),
    row(
        Id::TroublePersonTrapped,
        [
            "somebody is locked in a stall on 12",
            "alguien encerrado en la 12",
        ],
        [
            "12 is locked for the night",
            "la 12 está cerrada con llave por la noche",
        ],
    ),
    row(
        Id::TroubleRunaway,
        ["12 is rolling away", "la 12 se va rodando"],
        [
            "12 paper is rolling out of the dispenser",
            "la 12 no se mueve, calzada",
        ],
    ),
    row(
        Id::WasteSpill,
        [
            "12 sewage spill by the steps",
            "derrame de aguas negras en la 12",
        ],
        [
            "12 somebody spilled a soda on the floor",
            "la 12 se derramó un refresco en el piso",
        ],
    ),
    row(
        Id::SiteUnsafe,
        [
            "12 somebody bypassed the gfci",
            "puentearon el gfci de la 12",
        ],
        ["12 gfci is not bypassed", "la 12 gfci probado, bien"],
    ),
    row(
        Id::SiteIcy,
        ["12 steps are icy", "los escalones de la 12 tienen hielo"],
        [
            "12 steps are salted, not icy",
            "los escalones de la 12 sin hielo, ya le echamos sal",
        ],
    ),
    row(
        Id::TroubleHotPlug,
        ["12 plug is hot", "la clavija de la 12 está caliente"],
        ["12 plug is cool", "la clavija de la 12 está fría"],
    ),
    row(
        Id::TroubleCordDamaged,
        ["12 cord is cut", "cable cortado en la 12"],
        ["12 cord is good", "el cable de la 12 está bien"],
    ),
];

const WATER_AND_POWER: &[Row] = &[
    row(
        Id::TroubleLowFlow,
        ["12 weak water", "poca agua en la 12"],
        ["12 water is strong", "la 12 agua con buena fuerza"],
    ),
    row(
        Id::TroubleNoWater,
        ["12 no water", "no hay agua en la 12"],
        ["12 no hot sauce, water is good", "la 12 ya hay agua"],
    ),
    row(
        Id::TroubleNoHotWater,
        ["12 no hot water", "no hay agua caliente en la 12"],
        ["12 hot water is fine", "la 12 sí hay agua caliente"],
    ),
    row(
        Id::TroublePumpRunning,
        ["12 pump wont shut off", "la bomba de la 12 no para"],
        ["12 pump runs fine", "la bomba de la 12 trabaja bien"],
    ),
    row(
        Id::TroublePumpDead,
        ["12 pump dead", "la bomba de la 12 no prende"],
        ["12 pump is fine", "la bomba de la 12 sí prende"],
    ),
    row(
        Id::TroubleLeak,
        ["12 hose is leaking", "hay fuga en la 12"],
        ["12 no leaks", "la 12 sin fugas"],
    ),
    row(
        Id::TroubleFrozen,
        ["12 hose frozen", "manguera congelada en la 12"],
        [
            "12 hose is not frozen",
            "la manguera de la 12 no está congelada",
        ],
    ),
    row(
        Id::TroubleNoLights,
        ["12 no lights in room A", "la 12 no tiene luces"],
        ["12 lights are fine", "las luces de la 12 están bien"],
    ),
    row(
        Id::TroubleNoPower,
        ["12 no power", "no hay corriente en la 12"],
        ["12 power is good", "la 12 sí hay corriente"],
    ),
    row(
        Id::TroubleBreakerTrip,
        ["12 breaker tripped", "se botó el breaker de la 12"],
        ["12 breaker holds", "el breaker de la 12 aguanta"],
    ),
    row(
        Id::TroubleGfciTrip,
        ["12 gfci tripped", "se botó el gfci de la 12"],
        ["12 gfci not tripped", "el gfci de la 12 no se botó"],
    ),
    row(
        Id::TroubleFuseBlown,
        ["12 fuse blew", "fusible fundido en la 12"],
        ["12 fuse is good", "fusible bueno en la 12"],
    ),
];

const ROOMS: &[Row] = &[
    row(
        Id::TroubleNoHeat,
        ["12 no heat", "no hay calefacción en la 12"],
        ["12 heat works", "la calefacción de la 12 funciona"],
    ),
    row(
        Id::TroubleNoCooling,
        ["12 ac not cooling", "el clima de la 12 no enfría"],
        ["12 ac is cooling", "el clima de la 12 sí enfría"],
    ),
    row(
        Id::TroubleToiletClog,
        ["12 toilet clogged", "inodoro tapado en la 12"],
        ["12 toilets flush fine", "los inodoros de la 12 están bien"],
    ),
    row(
        Id::TroubleToiletRunning,
        ["12 toilet keeps running", "el inodoro de la 12 no para"],
        [
            "12 toilets flush fine, none runs on",
            "el inodoro de la 12 ya paró",
        ],
    ),
    row(
        Id::TroubleSinkClog,
        ["12 sink is clogged", "lavabo tapado en la 12"],
        ["12 sink drains fine", "el lavabo de la 12 está bien"],
    ),
    row(
        Id::TroubleOdor,
        ["12 bad smell", "la 12 huele mal"],
        ["12 no smell", "la 12 no huele mal"],
    ),
    row(
        Id::TroubleDamage,
        ["12 cracked window", "ventana rota en la 12"],
        ["12 no damage", "la 12 sin daños"],
    ),
    row(
        Id::TroubleFanDead,
        ["12 fan dead", "el ventilador de la 12 no prende"],
        ["12 fan is on", "el ventilador de la 12 está prendido"],
    ),
    row(
        Id::TroubleLockJam,
        ["12 lock is jammed", "chapa atorada en la 12"],
        ["12 lock works", "la chapa de la 12 está bien"],
    ),
    row(
        Id::TroubleNoSound,
        ["12 no sound", "la 12 sin sonido"],
        ["12 sound is good", "el sonido de la 12 está bien"],
    ),
    row(
        Id::TroubleOutOfSupplies,
        ["12 out of paper towels", "la 12 no tiene papel"],
        ["12 plenty of paper towels", "la 12 tiene papel"],
    ),
    row(
        Id::TroubleTire,
        ["12 flat tire", "llanta ponchada en la 12"],
        ["12 tires are good", "las llantas de la 12 están bien"],
    ),
];

const DESK: &[Row] = &[
    row(
        Id::DeskUnknownUnit,
        ["unit 13 tank 1/2", "unidad 13 tanque 1/2"],
        ["unit 12 tank 1/2", "unidad 12 tanque 1/2"],
    ),
    // its waste tank holds 500 gal, and a tenth more to the brim
    row(
        Id::DeskImplausible,
        ["12 pumped 551 gal", "la 12 bombeamos 551 galones"],
        ["12 pumped 549 gal", "la 12 bombeamos 549 galones"],
    ),
    Row {
        id: Id::DeskNotAllowed,
        fires: [
            ("tobin", "override 12 gate closes at ten"),
            ("lupe", "crew"),
        ],
        near: [
            ("nadia", "override 12 gate closes at ten"),
            ("nadia", "crew"),
        ],
    },
];
