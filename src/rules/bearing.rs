//! What a message bears on, and how the trailer lives: the questions that several topics ask of a situation.

use chrono::TimeDelta;

use crate::book::{PowerState, Stage, WaterState};
use crate::fleet::{PumpTruck, Source};
use crate::heard::{Event, Fault, Plan, PlanKind, ReadingKey};
use crate::outlook::runs_on_tank;
use crate::physics::tank::usual_uses_per_h;
use crate::situation::{Occasion, Situation};

/// A battery on charge stands at these volts (common practice, no source).
const CHARGING_V: std::ops::RangeInclusive<f64> = 13.2..=15.0;

/// Dangers for which the power is cut at its source.
const CUT_FOR: &[Fault] = &[Fault::Shock, Fault::Fire, Fault::BurntSmell];

impl Situation<'_> {
    /// Tells whether the message reports this fault; asked, whether it stands.
    pub(super) fn tells(&self, fault: Fault) -> bool {
        self.touches(&[], &[], &[fault]) && self.now.has(fault)
    }

    /// Tells whether the message reads a current.
    pub(super) fn touches_amps(&self) -> bool {
        self.occasion != Occasion::Report || !self.report.readings.amps.is_empty()
    }

    /// Tells whether the message names the circuits that have power.
    pub(super) fn touches_circuits(&self) -> bool {
        self.occasion != Occasion::Report || self.report.readings.circuits_live.is_some()
    }

    /// Tells whether the trailer stands on a site, as far as anyone said.
    pub(super) fn stands(&self) -> bool {
        !matches!(self.now.stage(), Stage::Yard | Stage::Hitched)
    }

    /// Tells whether the water comes from the trailer's own tank.
    pub(super) fn runs_from_tank(&self) -> bool {
        let open = self.job.is_some_and(|job| job.is_open(self.at));
        let turned_off = matches!(self.now.water(), WaterState::Off(_)) && open;
        self.stands() && (turned_off || runs_on_tank(self.now, self.site))
    }

    /// Tells whether the site gives no power now: lost, or never there.
    pub(super) fn without_power(&self) -> bool {
        match self.now.power() {
            PowerState::Lost(_) => self.stands(),
            PowerState::Unknown => {
                self.stands()
                    && self
                        .site
                        .is_some_and(|site| site.power.source == Source::None)
            }
            // cut for a danger it is missed as much as one that was lost
            PowerState::Off(_) => {
                let cut = CUT_FOR.iter().any(|fault| self.now.has(*fault));
                self.stands() && (cut || self.now.in_service().is_some())
            }
            PowerState::On(_) => false,
        }
    }

    /// Tells whether the battery was seen on charge within the hour, so that the converter lives.
    pub(super) fn battery_charging(&self) -> bool {
        self.recent(ReadingKey::BatteryV, TimeDelta::hours(1))
            .is_some_and(|volts| CHARGING_V.contains(&volts))
    }

    /// Tells whether a regulator was fitted since the trailer arrived.
    pub(super) fn regulated(&self) -> bool {
        self.now.when(Event::RegulatorFitted).is_some()
    }

    /// Tells whether its lines were drained for the winter and not filled since.
    pub(super) fn winterized(&self) -> bool {
        self.now
            .holds(Event::Winterized, &[Event::WaterOn, Event::FreshFilled])
    }

    /// Returns the uses an hour this trailer can expect while it is open, from its share of the guests.
    pub(super) fn uses_per_h(&self) -> Option<f64> {
        let alcohol = self.job.is_some_and(|job| job.alcohol);
        Some(usual_uses_per_h(self.guests_here()?, alcohol))
    }

    /// Returns what to tell the emergency line of the place, where the site states it.
    pub(super) fn emergency_address(&self) -> Option<&str> {
        self.site?.emergency_address.as_deref()
    }

    /// Tells whether its fresh tank was drained and nothing came in since: then nobody is told to fill it.
    pub(super) fn is_drained(&self) -> bool {
        let filled = [Event::FreshFilled, Event::WaterOn, Event::InService];
        self.now.holds(Event::FreshDrained, &filled)
    }

    /// Tells whether the trailer is packed up or goes: nothing is filled or switched on any more.
    pub(super) fn is_going(&self) -> bool {
        let holds = |event, undone: &[Event]| self.now.holds(event, undone);
        let packed = holds(Event::Stowed, &[Event::Arrived, Event::InService])
            || holds(Event::JacksUp, &[Event::JacksDown, Event::InService]);
        let shut = holds(Event::Closed, &[Event::InService]) && self.is_drained();
        let goes = |plan: &Plan| matches!(plan.kind, PlanKind::Leave | PlanKind::Going);
        let plans = self.plans.iter().any(goes);
        plans || packed || shut || self.now.stage() == Stage::Hitched
    }

    /// Returns the notice the hauler wants, h.
    pub(super) fn lead_h(&self) -> f64 {
        let truck = self.site.map(|site| &site.pump_truck);
        truck.map_or_else(|| PumpTruck::default().lead_h, |truck| truck.lead_h)
    }
}
