//! Every guided check comes to each of its ends: fixed, a task, a licensed trade, another check, a report of worse.

use hosebib::dialogue::Check;
use hosebib::finding::TaskKind;
use hosebib::heard::{Fault, UnitName};
use hosebib::rules::{Asks, Step, Then, last_resort, steps};

use std::collections::BTreeSet;

use hosebib::book::{Record, TaskChange};

use super::{Crew, none_is};

/// Somebody who answers in one language.
struct Speaker {
    who: &'static str,
    yes: &'static str,
    no: &'static str,
    skip: &'static str,
    works: &'static str,
    says: fn(Fault) -> &'static str,
}

const SPEAKERS: [Speaker; 2] = [
    Speaker {
        who: "tobin",
        yes: "yes",
        no: "no",
        skip: "skip",
        works: "works now",
        says: super::said,
    },
    Speaker {
        who: "lupe",
        yes: "sí",
        no: "no",
        skip: "omite",
        works: "ya funciona",
        says: said_es,
    },
];

/// A way to say each fault that has steps, in Spanish.
fn said_es(fault: Fault) -> &'static str {
    use Fault as F;
    match fault {
        F::LowFlow => "poca agua",
        F::NoWater => "no hay agua",
        F::NoLights => "no hay luces",
        F::NoPower => "no hay corriente",
        F::BreakerTrip => "se botó el breaker",
        F::GfciTrip => "se botó el gfci",
        F::PumpRunning => "la bomba no para",
        F::PumpDead => "la bomba no prende",
        F::NoHeat => "no hay calefacción",
        F::NoCooling => "el clima no enfría",
        F::NoHotWater => "no hay agua caliente",
        F::Leak => "hay fuga",
        F::Frozen => "manguera congelada",
        F::ToiletClog => "inodoro tapado",
        F::ToiletRunning => "el inodoro no para",
        F::Odor => "huele mal",
        F::Spill => "derrame de aguas negras",
        F::GaugeStuck => "medidor atorado",
        F::NotLevel => "está chueca",
        F::BatteryLow => "batería baja",
        F::LockJam => "chapa atorada",
        F::Shock => "me dio toques",
        F::FuseBlown => "fusible fundido",
        F::PersonTrapped => "alguien encerrado en el baño",
        _ => "",
    }
}

/// Which faults have a guided check.
pub(super) fn checked() -> impl Iterator<Item = Fault> {
    Fault::ALL
        .iter()
        .copied()
        .filter(|fault| !steps(*fault).is_empty())
}

/// The answer by which a step finds what it looks for, and the one by which it rules it out.
fn answers(step: &Step, speaker: &Speaker) -> (String, String) {
    match step.asks {
        Asks::IfGood => (speaker.no.into(), speaker.yes.into()),
        Asks::IfBad => (speaker.yes.into(), speaker.no.into()),
        Asks::IfMended => (speaker.no.into(), speaker.no.into()),
        Asks::For { least, most, .. } => {
            let bad = if least > 0.0 { least - 1.0 } else { most + 1.0 };
            (format!("{bad:.1}"), format!("{:.1}", least.max(1.0) + 1.0))
        }
    }
}

/// Somebody in the check of one fault on one trailer.
struct Walk<'a> {
    speaker: &'a Speaker,
    unit: &'static str,
    fault: Fault,
    crew: Crew,
}

/// What a message would come to, were it sent now.
struct Came {
    told: String,
    check: Option<Check>,
    logged: Vec<Fault>,
    mended: Vec<Fault>,
    tasks: Vec<(TaskKind, bool)>,
}

impl<'a> Walk<'a> {
    fn start(speaker: &'a Speaker, unit: &'static str, fault: Fault) -> Walk<'a> {
        let mut crew = Crew::new(false);
        crew.hears(speaker.who, &format!("{unit} {}", (speaker.says)(fault)));
        Walk {
            speaker,
            unit,
            fault,
            crew,
        }
    }

    fn check(&self) -> Option<Check> {
        let talk = self.crew.desk.book().talk(self.speaker.who)?;
        talk.checks.last().cloned()
    }

    fn would(&self, text: &str) -> Came {
        let turn = self.crew.turn(self.speaker.who, text);
        let told = turn
            .outgoing
            .iter()
            .filter(|message| message.to == self.speaker.who);
        let mut came = Came {
            told: told.map(|message| message.text.text()).collect(),
            check: self.check(),
            logged: Vec::new(),
            mended: Vec::new(),
            tasks: Vec::new(),
        };
        for record in &turn.records {
            match record {
                Record::Talk { who, talk } if who == self.speaker.who => {
                    came.check = talk.checks.last().cloned();
                }
                Record::Message(message) => {
                    for report in &message.reports {
                        came.logged.extend(&report.entry.faults);
                        came.mended.extend(&report.entry.cleared);
                    }
                }
                Record::Task {
                    change: TaskChange::Opened { task },
                    ..
                } => came.tasks.push((task.kind, task.found.is_some())),
                _ => {}
            }
        }
        came
    }

    fn says(&mut self, text: &str) {
        self.crew.hears(self.speaker.who, text);
    }

    fn is_over_by(&self, text: &str) -> Result<(), String> {
        let came = self.would(text);
        let over = came.mended.contains(&self.fault) && came.check.is_none();
        match over {
            true => Ok(()),
            false => Err(format!("{text:?} is not logged as mended: {}", came.told)),
        }
    }

    /// Tries every answer to a step, and goes on to the next one.
    fn try_step(&mut self, step: &Step, wrong: &mut Vec<String>) {
        let (bad, good) = answers(step, self.speaker);
        let name = format!(
            "{} {} {} {}",
            self.speaker.who, self.unit, self.fault, step.key
        );
        let mut hold = |held: Result<(), String>| {
            if let Err(what) = held {
                wrong.push(format!("{name}: {what}"));
            }
        };
        // a shock is not over because something works, nor a spill
        if !(step.guards() && matches!(self.fault, Fault::Shock | Fault::Spill)) {
            hold(self.is_over_by(self.speaker.works));
        }
        let before = self.check();
        if step.asks == Asks::IfMended {
            hold(self.is_over_by(self.speaker.yes));
        } else {
            hold(self.finds(&bad, step));
        }
        let came = self.would(&good);
        let leads_on = came
            .check
            .as_ref()
            .is_none_or(|check| before.as_ref().is_some_and(|was| was.step < check.step));
        if !leads_on || came.mended.contains(&self.fault) {
            hold(Err(format!("{good:?} does not lead on: {}", came.told)));
        }
        let skipped = self.would(self.speaker.skip);
        let stays = skipped.check == before
            || skipped.check.as_ref().map(|check| check.step)
                == before.as_ref().map(|check| check.step);
        if stays != step.guards() {
            hold(Err(format!("{:?}: {}", self.speaker.skip, skipped.told)));
        }
        let trips = matches!(self.fault, Fault::BreakerTrip | Fault::GfciTrip);
        match (step.asks, step.then) {
            // a trip told once more ends the check of a breaker
            (Asks::IfGood | Asks::IfBad, Then::Mend) if !trips => {
                self.says(&bad);
                hold(self.is_over_by(self.speaker.works));
                hold(self.is_over_by(self.speaker.yes));
                self.says(self.speaker.no);
            }
            (Asks::For { .. }, _) => self.says(self.speaker.skip),
            _ => self.says(&good),
        }
    }

    /// Tells what is wrong with what follows an answer by which a step has found its cause.
    fn finds(&self, bad: &str, step: &Step) -> Result<(), String> {
        let came = self.would(bad);
        let check = came.check.as_ref();
        let is = |held: bool, what: &str| match held {
            true => Ok(()),
            false => Err(format!("{bad:?}: {what}: {}", came.told)),
        };
        is(!came.mended.contains(&self.fault), "it is taken for mended")?;
        match step.then {
            Then::Mend => is(
                check.is_some_and(|check| check.mending),
                "it does not ask whether that helped",
            ),
            Then::Hold => is(
                check.is_some_and(|check| steps(self.fault)[check.step as usize] == *step),
                "it does not stay at what guards somebody",
            ),
            Then::Call(kind) => {
                is(check.is_none(), "the check goes on")?;
                is(
                    came.tasks.contains(&(kind, true)),
                    "no task says what was found",
                )
            }
            Then::Turn(other) => is(
                check.is_some_and(|check| {
                    check.steps_of == other && check.step == 0 && check.fault == self.fault
                }),
                "it does not turn to the other steps",
            ),
            Then::Report(other) => {
                // a bare yes tells of gas in the air, and of nobody who is ill
                let told = match other {
                    Fault::GasIllness => Fault::GasSmell,
                    other => other,
                };
                is(came.logged.contains(&told), "the worse fault is not logged")?;
                let warns = ["DANGER", "WARNING", "PELIGRO", "ADVERTENCIA"];
                is(
                    warns.iter().any(|word| came.told.starts_with(word)),
                    "no word of danger comes first",
                )
            }
            Then::Over => is(check.is_none(), "the check goes on"),
        }
    }
}

#[test]
fn every_step_of_every_check_leads_where_it_says() {
    let mut wrong = Vec::new();
    let mut tried = 0;
    for speaker in &SPEAKERS {
        let mut reached = BTreeSet::new();
        // one with water of the site, one on its tank
        for unit in ["12", "6"] {
            let by_source =
                |fault: &Fault| steps(*fault).iter().any(|step| step.water_from.is_some());
            for fault in checked().filter(|fault| unit == "12" || by_source(fault)) {
                let mut walk = Walk::start(speaker, unit, fault);
                for (number, step) in steps(fault).iter().enumerate() {
                    let here = walk.check().is_some_and(|check| {
                        check.fault == fault
                            && check.steps_of == fault
                            && check.step as usize == number
                            && !check.mending
                    });
                    if here {
                        reached.insert((fault, step.key));
                        tried += 1;
                        walk.try_step(step, &mut wrong);
                    }
                }
                // no step is left: it is somebody's work
                let kind = last_resort(fault);
                let unit = UnitName::new(unit);
                let tasks = walk.crew.desk.book().tasks();
                let open = tasks.open_on(&unit).any(|task| task.kind == kind);
                if walk.check().is_some() || !open {
                    wrong.push(format!(
                        "{} {unit} {fault}: it does not end in {kind}",
                        speaker.who
                    ));
                }
            }
        }
        for fault in checked() {
            for step in steps(fault) {
                if !reached.contains(&(fault, step.key)) {
                    wrong.push(format!(
                        "{} {fault} {} is never reached",
                        speaker.who, step.key
                    ));
                }
            }
        }
    }
    none_is(&wrong, tried);
}
