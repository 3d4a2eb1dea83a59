//! When to call the pump truck: by the level, and by the forecast against the notice that the truck wants.

use chrono::{DateTime, DurationRound, TimeDelta, Utc};

use super::super::COMMON_PRACTICE;
use super::super::tanks::waste_told;
use super::{coated, dropped_unexplained, waste_level};
use crate::book::Stage;
use crate::finding::{Facts, Finding, FindingId, Level, Origin, TaskKind, Urgency};
use crate::heard::{Event, Fault, ReadingKey};
use crate::outlook::TankOutlook;
use crate::physics::tank::{SAFETY_H, STOP_PCT, time_to_book};
use crate::physics::units::{hours, in_hours};
use crate::quantity::Measure;
use crate::situation::{Occasion, Situation};

/// Make sure of a truck from here, % by volume (common practice, no source).
const PLAN_PCT: f64 = 50.0;
/// Ask who comes, and when, from here, %.
const SOON_PCT: f64 = 75.0;
/// A forecast this near is not told as a time.
const JUST_NOW: TimeDelta = TimeDelta::minutes(5);
/// Nobody drives to the minute: a truck that is called at once is there to the next of these.
const TEN_MINUTES: TimeDelta = TimeDelta::minutes(10);

/// What bears on the decision.
const READINGS: &[ReadingKey] = &[
    ReadingKey::WastePct,
    ReadingKey::WasteGal,
    ReadingKey::Guests,
];

/// Plan from 50 %, soon from 75 %, now when the truck's notice is used up and the tank would be full before the job ends.
pub(super) fn book_pump_out(s: &Situation<'_>) -> Option<Finding> {
    // told late, it bears on what was read since
    let pumped = s.now.last_pumped().map(|(at, _)| at);
    let read = s.now.waste_reads().last().map(|(at, _)| *at);
    let late = s.report.events.contains(&Event::WastePumped) && read > pumped;
    let bears = late || s.touches(READINGS, &[Event::InService], &[]);
    // on the hook the rules of towing speak of what is aboard
    if !bears || s.now.stage() == Stage::Hitched {
        return None;
    }
    let booking = Booking::weigh(s)?;
    let urgency = booking.urgency()?;
    // by the crowd alone there is nothing to plan by, and no time to tell
    if booking.unread && (!booking.is_forecast() || urgency == Urgency::Plan) {
        return None;
    }
    let found = |urgency| {
        let facts = booking.facts();
        Finding::new(FindingId::WasteBookPumpOut, Level::Notice, urgency, facts)
    };
    // right after a pump-out the gauge is not believed: somebody looks first
    if coated(s).is_some() && !s.now.has(Fault::GaugeStuck) {
        return Some(found(urgency.min(Urgency::Soon)).says("waste-book-pump-out-doubted"));
    }
    // the gauge shows less than is reckoned with, and it is asked whether it was pumped
    let reckoned = booking.origin == Origin::Computed;
    if reckoned && s.occasion == Occasion::Report && dropped_unexplained(s).is_some() {
        return Some(found(urgency.min(Urgency::Soon)).says("waste-book-pump-out-fell"));
    }
    let found = found(urgency).says(booking.says(urgency));
    // half full and never to be full: no truck is needed yet
    let wanted = !booking.unread && (urgency != Urgency::Plan || booking.p50.is_some());
    Some(match wanted {
        true => found.task(TaskKind::PumpOut, booking.due()),
        false => found,
    })
}

/// Tells whether a trailer that nobody called open is spoken of by the clock: its doors are open by the plan, and somebody
/// counted the guests.
fn is_taken_to_be_open(s: &Situation<'_>) -> bool {
    let open = s.job.is_some_and(|job| job.is_open(s.at));
    let unknown = s.now.stage() == Stage::Unknown;
    s.occasion == Occasion::Tick && open && unknown && !s.guests.is_empty()
}

/// What is known when a truck is weighed.
struct Booking<'a> {
    s: &'a Situation<'a>,
    outlook: Option<&'a TankOutlook>,
    /// The level, % by volume, and where it comes from.
    level: f64,
    origin: Origin,
    /// Whether nobody read the gauge, so that the level is the crowd's.
    unread: bool,
    /// The notice that the truck wants, hours.
    lead_h: f64,
    /// Hours until it must be called by today's pace, while the doors are open.
    book_in_h: Option<f64>,
    /// When one in ten, and half, of all courses reach the stop level.
    p10: Option<DateTime<Utc>>,
    p50: Option<DateTime<Utc>>,
}

impl<'a> Booking<'a> {
    fn weigh(s: &'a Situation<'a>) -> Option<Booking<'a>> {
        let (level, origin) = waste_level(s)?;
        let unread = waste_told(s).is_none();
        if unread && s.now.in_service().is_none() && !is_taken_to_be_open(s) {
            return None; // nobody told what it started with
        }
        let outlook = s.outlook.waste.as_ref();
        let lead_h = s.lead_h();
        let open = s.job.is_some_and(|job| job.is_open(s.at));
        let book_in = outlook.filter(|_| open).and_then(|waste| {
            let (lead, in_hand) = (hours(lead_h), hours(SAFETY_H));
            time_to_book(level, waste.rate_pct_h, lead, in_hand, STOP_PCT)
        });
        Some(Booking {
            s,
            outlook,
            level,
            origin,
            unread,
            lead_h,
            book_in_h: book_in.map(in_hours),
            p10: outlook.and_then(|waste| waste.p10),
            p50: outlook.and_then(|waste| waste.p50),
        })
    }

    /// Tells whether the tank is expected to be full before the job ends.
    fn is_forecast(&self) -> bool {
        self.p10.is_some() && self.p50.is_some()
    }

    /// Tells whether a truck called now may come too late.
    fn notice_is_used_up(&self) -> bool {
        let notice = TimeDelta::minutes(((self.lead_h + SAFETY_H) * 60.0).round() as i64);
        self.book_in_h.is_some_and(|h| h <= 0.0)
            || self.p10.is_some_and(|at| at - self.s.at <= notice)
    }

    fn urgency(&self) -> Option<Urgency> {
        let used_up = self.notice_is_used_up();
        Some(match self.level {
            // by the crowd alone there is nothing to act on but the gauge
            _ if used_up && self.is_forecast() && self.unread => Urgency::Soon,
            _ if used_up && self.is_forecast() => Urgency::Now,
            // where even one in ten fills it before the job ends
            pct if used_up && pct >= PLAN_PCT && self.p10.is_some() => Urgency::Soon,
            pct if pct >= SOON_PCT => Urgency::Soon,
            pct if pct >= PLAN_PCT => Urgency::Plan,
            _ => return None,
        })
    }

    /// Tells whether a time has come, and so is no forecast.
    fn has_come(&self, at: Option<DateTime<Utc>>) -> bool {
        at.is_some_and(|at| at - self.s.at <= JUST_NOW)
    }

    /// Tells whether the stop level is reached, read or reckoned.
    fn is_over(&self) -> bool {
        self.level >= STOP_PCT || self.has_come(self.p50)
    }

    /// Tells whether the level that is told is past the stop level, and not only expected to be within minutes.
    fn reads_over(&self) -> bool {
        let most = self.outlook.map_or(0.0, |waste| waste.level_pct[1]);
        self.level.max(most) >= STOP_PCT
    }

    /// Returns when a truck that is called at once is on site.
    fn here(&self) -> DateTime<Utc> {
        let here = self.s.at + TimeDelta::minutes((self.lead_h * 60.0).round() as i64);
        (here + TEN_MINUTES - TimeDelta::nanoseconds(1))
            .duration_trunc(TEN_MINUTES)
            .unwrap_or(here)
    }

    /// Returns when the truck must be there.
    fn due(&self) -> Option<DateTime<Utc>> {
        let forecast = self.p10.map(|at| at.max(self.s.at));
        forecast.or(self.is_over().then_some(self.s.at))
    }

    fn facts(&self) -> Facts {
        // what is past the stop level is not told with a lamp's lower figure
        let (told, origin) = match self.outlook {
            Some(waste) if self.is_over() && self.level < STOP_PCT.min(waste.level_pct[1]) => {
                (waste.level_pct[1], Origin::Computed)
            }
            _ => (self.level, self.origin),
        };
        let mut facts = Facts::new()
            .number("level", told, Measure::Pct, origin)
            .limit("stop_level", STOP_PCT, Measure::Pct)
            .spec("lead", self.lead_h, Measure::Hour)
            .assumed("in_hand", SAFETY_H, Measure::Hour)
            .time("here", self.here(), Origin::Computed);
        if let Some(waste) = self.outlook {
            facts = facts.computed("rate", waste.rate_pct_h, Measure::PctPerHour);
        }
        if let Some(h) = self.book_in_h {
            facts = facts.computed("book_in", h, Measure::Hour);
        }
        let p90 = self.outlook.and_then(|waste| waste.p90);
        for (name, at) in [("p10", self.p10), ("p50", self.p50), ("p90", p90)] {
            if let Some(at) = at {
                facts = facts.time(name, at, Origin::Computed);
            }
        }
        facts.by("formula-book-pump-out", COMMON_PRACTICE)
    }

    /// Returns the text that says it.
    fn says(&self, urgency: Urgency) -> &'static str {
        let here = self.here();
        let before_it = |at: Option<DateTime<Utc>>| at.is_some_and(|at| at < here);
        match (urgency, self.is_forecast()) {
            _ if self.unread && self.is_over() => "waste-book-pump-out-unread-over",
            (Urgency::Soon, false) if self.is_over() => "waste-book-pump-out-over",
            (Urgency::Now, _) if self.is_over() && self.reads_over() => "waste-book-pump-out-over",
            (Urgency::Now, _) if self.is_over() || self.has_come(self.p10) => {
                "waste-book-pump-out-any-time"
            }
            _ if self.unread => "waste-book-pump-out-unread",
            (Urgency::Now, _) if before_it(self.p50) => "waste-book-pump-out-too-late",
            (Urgency::Now, _) if before_it(self.p10) => "waste-book-pump-out-late",
            (Urgency::Now, _) => "waste-book-pump-out-now",
            (Urgency::Soon, true) => "waste-book-pump-out-soon",
            (Urgency::Soon, false) => "waste-book-pump-out-high",
            (Urgency::Plan, true) => "waste-book-pump-out-plan",
            (Urgency::Plan, false) => "waste-book-pump-out-watch",
        }
    }
}
