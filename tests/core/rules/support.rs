//! A trailer of the sample fleet, told things one after the other, and what the rules make of the last.

use chrono::{DateTime, NaiveDateTime, Utc};
use hosebib::book::UnitState;
use hosebib::finding::{Caution, Fact, FactValue, Finding, FindingId, Level, TaskWish, Urgency};
use hosebib::fleet::{Fleet, FleetFiles, read};
use hosebib::heard::{
    Amps, Entry, Event, Fault, LoadPair, Plan, PlanKind, ReadingKey, Taps, UnitName,
};
use hosebib::outlook::{Outlook, Prospect};
use hosebib::rules;
use hosebib::situation::{Occasion, Situation};

/// What one message says.
#[derive(Debug, Clone, Default)]
pub(super) struct Said(Entry, Vec<Plan>);

/// Starts a message that says nothing yet.
pub(super) fn said() -> Said {
    Said::default()
}

impl Said {
    pub(super) fn did(mut self, event: Event) -> Self {
        self.0.events.push(event);
        self
    }

    pub(super) fn read(mut self, key: ReadingKey, value: f64) -> Self {
        self.0.readings.set(key, value);
        self
    }

    pub(super) fn amps(mut self, circuit: u8, amps: f64) -> Self {
        let circuit = (circuit > 0).then_some(circuit);
        self.0.readings.amps.push(Amps { circuit, amps });
        self
    }

    pub(super) fn taps(mut self, taps: Taps) -> Self {
        self.0.readings.taps = Some(taps);
        self
    }

    pub(super) fn live(mut self, circuits: &[u8]) -> Self {
        self.0.readings.circuits_live = Some(circuits.to_vec());
        self
    }

    pub(super) fn wrong(mut self, fault: Fault) -> Self {
        self.0.faults.push(fault);
        self
    }

    pub(super) fn plans(mut self, text: &str) -> Self {
        self.1.push(Plan {
            unit: None,
            kind: PlanKind::Other,
            text: text.into(),
        });
        self
    }

    pub(super) fn together(mut self, pair: LoadPair) -> Self {
        self.1.push(Plan {
            unit: None,
            kind: PlanKind::Together { pair },
            text: String::new(),
        });
        self
    }

    pub(super) fn over(mut self, fault: Fault) -> Self {
        self.0.cleared.push(fault);
        self
    }
}

/// A trailer and what was told of it so far.
pub(super) struct Unit {
    pub(super) fleet: Fleet,
    name: UnitName,
    state: UnitState,
}

/// Takes a trailer of the sample fleet of which nobody has said anything.
pub(super) fn unit(name: &str) -> Unit {
    let files = FleetFiles {
        fleet: include_str!("fleet/fleet.toml").into(),
        jobs: include_str!("fleet/jobs.toml").into(),
        crew: include_str!("fleet/crew.toml").into(),
        ..FleetFiles::default()
    };
    Unit {
        fleet: read(&files).expect("the sample fleet"),
        name: UnitName::new(name),
        state: UnitState::default(),
    }
}

impl Unit {
    /// Changes the fleet before anything is told.
    pub(super) fn with(mut self, change: impl FnOnce(&mut Fleet)) -> Self {
        change(&mut self.fleet);
        self
    }

    /// Takes in an earlier message; times are local, `2027-05-29 14:00`.
    pub(super) fn after(mut self, at: &str, said: Said) -> Self {
        let at = self.instant(at);
        self.state.take_in(at, "wren", &said.0);
        self
    }

    /// Tells what the rules find when this is said.
    pub(super) fn hears(&self, at: &str, said: Said) -> Found {
        let at = self.instant(at);
        let mut now = self.state.clone();
        now.take_in(at, "wren", &said.0);
        self.check(at, &now, &said, Occasion::Report)
    }

    /// Tells what the rules find when somebody asks about the trailer.
    pub(super) fn asked(&self, at: &str) -> Found {
        let at = self.instant(at);
        self.check(at, &self.state, &said(), Occasion::Asked)
    }

    /// Tells what the rules find when the clock comes round.
    pub(super) fn ticks(&self, at: &str) -> Found {
        let at = self.instant(at);
        self.check(at, &self.state, &said(), Occasion::Tick)
    }

    fn check(&self, at: DateTime<Utc>, now: &UnitState, said: &Said, occasion: Occasion) -> Found {
        let spec = &self.fleet.trailers[&self.name];
        let left = self.state.when(Event::Left).filter(|left| {
            self.state
                .when(Event::Arrived)
                .is_none_or(|back| back < *left)
        });
        let job = self.fleet.job_of(&self.name, at, left);
        let site = job.and_then(|job| self.fleet.site_of(job));
        let outlook = Outlook::of(&Prospect {
            fleet: &self.fleet,
            spec,
            job,
            site,
            state: now,
            guests: &now.guests,
            lessons: &[],
            at,
        });
        let findings = rules::check(&Situation {
            fleet: &self.fleet,
            spec,
            job,
            site,
            before: &self.state,
            now,
            report: &said.0,
            plans: &said.1,
            occasion,
            at,
            guests: &now.guests,
            tasks: &[],
            outlook: &outlook,
            air_near: None,
            wind_reported: None,
        });
        Found { at, findings }
    }

    fn instant(&self, local: &str) -> DateTime<Utc> {
        let naive = NaiveDateTime::parse_from_str(local, "%Y-%m-%d %H:%M").expect("a local time");
        naive
            .and_local_timezone(self.fleet.time_zone)
            .single()
            .expect("a time that exists once")
            .with_timezone(&Utc)
    }
}

/// What the rules found.
pub(super) struct Found {
    pub(super) at: DateTime<Utc>,
    pub(super) findings: Vec<Finding>,
}

impl Found {
    #[track_caller]
    pub(super) fn one(&self, id: FindingId) -> &Finding {
        let found = self.findings.iter().find(|finding| finding.id == id);
        found.unwrap_or_else(|| panic!("no {id} among {:?}", self.ids()))
    }

    #[track_caller]
    pub(super) fn has(&self, id: FindingId, urgency: Urgency) -> &Self {
        assert_eq!(self.one(id).urgency, urgency, "{id}");
        self
    }

    #[track_caller]
    pub(super) fn at_level(&self, id: FindingId, level: Level) -> &Self {
        assert_eq!(self.one(id).level, level, "{id}");
        self
    }

    #[track_caller]
    pub(super) fn lacks(&self, id: FindingId) -> &Self {
        let found = self.findings.iter().find(|finding| finding.id == id);
        if let Some(found) = found {
            panic!("{id} {:?}: {:?}", found.urgency, found.facts.items);
        }
        self
    }

    #[track_caller]
    pub(super) fn number(&self, id: FindingId, fact: &str) -> f64 {
        match self.fact(id, fact).value {
            FactValue::Number(value, _) => value,
            ref other => panic!("{id} {fact} is {other:?}"),
        }
    }

    #[track_caller]
    pub(super) fn near(&self, id: FindingId, fact: &str, value: f64, tolerance: f64) -> &Self {
        let got = self.number(id, fact);
        assert!(
            (got - value).abs() <= tolerance,
            "{id} {fact}: {got}, not {value}"
        );
        self
    }

    #[track_caller]
    pub(super) fn fact(&self, id: FindingId, fact: &str) -> &Fact {
        let finding = self.one(id);
        finding
            .facts
            .find(fact)
            .unwrap_or_else(|| panic!("{id} has no {fact}: {:?}", finding.facts.items))
    }

    #[track_caller]
    pub(super) fn says(&self, id: FindingId, key: &str) -> &Self {
        assert_eq!(self.one(id).action, key);
        self
    }

    #[track_caller]
    pub(super) fn warns(&self, id: FindingId, caution: Caution) -> &Self {
        let cautions = &self.one(id).cautions;
        assert!(cautions.contains(&caution), "{id}: {cautions:?}");
        self
    }

    #[track_caller]
    pub(super) fn task(&self, id: FindingId) -> &TaskWish {
        let task = self.one(id).task.as_ref();
        task.unwrap_or_else(|| panic!("{id} wishes no task"))
    }

    pub(super) fn ids(&self) -> Vec<FindingId> {
        self.findings.iter().map(|finding| finding.id).collect()
    }
}
