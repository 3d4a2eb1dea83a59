//! A generator's size against what it must run and start.

use super::circuits::cold_package_due;
use super::{LoadKind, RATED_V, is_cold_package, kind_of};
use crate::finding::{Caution, Facts, Finding, FindingId, Level, Origin, Urgency};
use crate::fleet::{Circuit, Load, Source};
use crate::heard::{Event, Fault, ReadingKey};
use crate::physics::power::{Derate, GeneratorLoad, generator_rating, start_watts};
use crate::physics::units::{deg_f, ft, in_watts, watts};
use crate::quantity::Measure;
use crate::situation::Situation;

/// Air up to which a generator gives its rating, taken where nobody read it, °F.
pub(super) const MILD_F: f64 = 70.0;
/// At or below this rooms are heated, not cooled, °F (common practice, no source).
const HEATING_F: f64 = 50.0;

/// The set at the site is smaller than what it must run and start, at this height and heat: soon; smaller than what it
/// must run alone: now.
pub(super) fn generator(s: &Situation<'_>) -> Option<Finding> {
    let bears = s.touches(
        &[ReadingKey::Cords],
        &[Event::PowerOn, Event::PowerBack],
        &[],
    ) || s.touches_circuits();
    let site = s
        .site
        .filter(|site| site.power.source == Source::Generator)?;
    let rated = site.power.generator_w?;
    if !bears || !s.stands() {
        return None;
    }
    let loads = loads(s, None);
    let (air, air_origin) = match s.air_f() {
        Some(read) => (read, Origin::Read),
        None => (MILD_F, Origin::Assumed),
    };
    let needed = in_watts(generator_rating(
        &loads,
        ft(site.altitude_ft),
        deg_f(air),
        Derate::default(),
    ));
    let running: f64 = loads.iter().map(|load| in_watts(load.running)).sum();
    if needed <= rated {
        return None;
    }
    let facts = Facts::new()
        .spec("generator_w", rated, Measure::Watt)
        .computed("running_w", running, Measure::Watt)
        .computed("needed_w", needed, Measure::Watt)
        .spec("altitude", site.altitude_ft, Measure::Ft)
        .number("air", air, Measure::DegF, air_origin)
        .by("formula-generator", "common practice, no source");
    // where nothing starts hard, height and heat alone ask for more
    let starts = loads.iter().any(|load| load.starting > load.running);
    let (urgency, says) = match (running > rated, starts) {
        (true, true) => (Urgency::Now, "power-generator-act"),
        (true, false) => (Urgency::Now, "power-generator-act-heat"),
        (false, true) => (Urgency::Soon, "power-generator-soon"),
        (false, false) => (Urgency::Soon, "power-generator-soon-heat"),
    };
    Some(
        Finding::new(FindingId::PowerGenerator, Level::Caution, urgency, facts)
            .says(says)
            .cautions(&[Caution::CarbonMonoxide, Caution::GeneratorHandling]),
    )
}

/// What a generator must give that runs all of a trailer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GeneratorSize {
    /// All loads that may run at once, W.
    pub running_w: f64,
    /// The rating that starts the hardest of them beside the rest, at this height and heat, W.
    pub needed_w: f64,
    /// The air it was reckoned for, °F.
    pub air_f: f64,
}

/// Returns what a generator must give for a trailer at a height; the air is taken as mild where nobody read it.
pub fn generator_size(s: &Situation<'_>, altitude_ft: f64) -> GeneratorSize {
    let all: Vec<u8> = (1..=s.spec.circuits.len() as u8).collect();
    let cold = |number: &u8| {
        let circuit = s.spec.circuits.get(usize::from(*number) - 1);
        circuit.is_some_and(is_cold_package) && !cold_package_due(s)
    };
    let plan: Vec<u8> = all.into_iter().filter(|number| !cold(number)).collect();
    let loads = loads(s, Some(&plan));
    let air_f = s.air_f().unwrap_or(MILD_F);
    let rating = generator_rating(&loads, ft(altitude_ft), deg_f(air_f), Derate::default());
    GeneratorSize {
        running_w: loads.iter().map(|load| in_watts(load.running)).sum(),
        needed_w: in_watts(rating),
        air_f,
    }
}

/// It runs indoors, in a tent, or so that its exhaust blows in: danger, people out first.
pub(super) fn generator_inside(s: &Situation<'_>) -> Option<Finding> {
    s.tells(Fault::GeneratorInside).then(|| {
        let facts = Facts::new().by("formula-reported", "CPSC portable generator alert");
        Finding::new(
            FindingId::PowerGenerator,
            Level::Danger,
            Urgency::Now,
            facts,
        )
        .says("power-generator-inside")
        .cautions(&[Caution::CarbonMonoxide, Caution::GeneratorHandling])
    })
}

/// What runs at once: of each group one load, the one this weather asks for; circuits that are not fed, or not in the
/// `plan`, left out.
pub(super) fn loads(s: &Situation<'_>, plan: Option<&[u8]>) -> Vec<GeneratorLoad> {
    let heating = s.air_f().is_some_and(|air| air <= HEATING_F);
    let live = s.now.circuits_live.as_ref().map(|(live, _)| live);
    let fed = |number: u8, circuit: &Circuit| match (plan, live) {
        (Some(plan), _) => plan.contains(&number),
        (None, Some(live)) => live.contains(&number),
        (None, None) => !is_cold_package(circuit) || cold_package_due(s),
    };
    let mut running = Vec::new();
    for (i, circuit) in s.spec.circuits.iter().enumerate() {
        if !fed(i as u8 + 1, circuit) {
            continue;
        }
        let mut grouped: Vec<&Load> = Vec::new();
        for load in &circuit.loads {
            let rival = grouped
                .iter_mut()
                .find(|other| load.group.is_some() && other.group == load.group);
            match rival {
                Some(rival) => {
                    if wanted(load, heating) > wanted(rival, heating) {
                        *rival = load;
                    }
                }
                None => grouped.push(load),
            }
        }
        running.extend(grouped.into_iter().map(on_generator));
    }
    running
}

/// Ranks the loads of a group: what the weather asks for first, then the larger.
fn wanted(load: &Load, heating: bool) -> (bool, i64) {
    let fits = (kind_of(load) == LoadKind::Heat) == heating;
    (fits, (load.amps * 1000.0) as i64)
}

fn on_generator(load: &Load) -> GeneratorLoad {
    let running = watts(load.amps * RATED_V);
    let starting = match load.start_w {
        Some(stated) => watts(stated),
        None if kind_of(load) == LoadKind::Cooling => start_watts(running),
        None => running,
    };
    GeneratorLoad { running, starting }
}
