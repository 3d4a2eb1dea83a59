//! A place that somebody shared: near a site of today's jobs it is asked which trailer has arrived, further away it is told
//! how far it is. Where somebody was is used for the answer and kept nowhere.

use chrono::{DateTime, TimeDelta, Utc};

use super::Desk;
use super::answer::Reply;
use super::inbound::{Body, Inbound, Place};
use super::receive::Hearing;
use crate::book::Stage;
use crate::dialogue::{About, Placed, Talk};
use crate::fleet::{CrewMember, Fleet, Job, Site};
use crate::heard::UnitName;
use crate::physics::distance;
use crate::quantity::Measure;
use crate::reply::Arg;

/// Who is this close to a site is there, miles.
const THERE: f64 = 0.3;
/// How long a phone that shares its way is not asked again about the same site.
const ASKED_LASTS: TimeDelta = TimeDelta::hours(12);

/// The nearest site of today's jobs.
struct Nearest<'a> {
    site: &'a Site,
    miles: f64,
    /// The trailers that are due there and have not arrived.
    due: Vec<UnitName>,
}

/// Tells whether a place is one of many that a moving phone sends, and asks for no word.
pub(super) fn is_in_passing(desk: &Desk, inbound: &Inbound, member: &CrewMember) -> bool {
    let Body::Place(place) = &inbound.body else {
        return false;
    };
    if !place.moves {
        return false;
    }
    let fleet = desk.fleet_at(inbound.at);
    let Some(nearest) = nearest(desk, &fleet, place, inbound.at) else {
        return true;
    };
    let asked = desk
        .book
        .talk(&member.id)
        .and_then(|talk| talk.placed.as_ref());
    let asked = asked.is_some_and(|placed| {
        placed.site == nearest.site.id && inbound.at - placed.at < ASKED_LASTS
    });
    nearest.miles > THERE || nearest.due.is_empty() || asked
}

/// Answers a place that was shared.
pub(super) fn tell(hearing: &Hearing<'_>, reply: &mut Reply<'_>) {
    let Body::Place(place) = &hearing.inbound.body else {
        return;
    };
    if hearing.late() {
        reply.say("place-late", &[]);
        return;
    }
    let Some(nearest) = nearest(hearing.desk, &hearing.fleet, place, hearing.now) else {
        reply.say("place-nowhere", &[]);
        return;
    };
    let site = ("site", Arg::from(nearest.site.name.as_str()));
    if nearest.miles > THERE {
        let minutes = distance::tow_minutes(nearest.miles);
        let args = [
            site,
            ("value", Arg::Number(nearest.miles, Measure::Mile)),
            ("age", Arg::Number(minutes, Measure::Minute)),
        ];
        reply.say("place-far", &args);
        return;
    }
    reply.say("place-there", &[site]);
    if nearest.due.is_empty() {
        reply.say("place-none-due", &[]);
        return;
    }
    reply.asks = Some(About::Arrived {
        site: nearest.site.id.clone(),
        units: nearest.due,
    });
}

/// Notes where somebody was asked whether they have arrived.
pub(super) fn note(hearing: &Hearing<'_>, talk: &mut Talk) {
    if let (Body::Place(_), Some(question)) = (&hearing.inbound.body, &talk.question)
        && let About::Arrived { site, .. } = &question.about
    {
        talk.placed = Some(Placed {
            site: site.clone(),
            at: hearing.now,
        });
    }
}

fn nearest<'a>(
    desk: &Desk,
    fleet: &'a Fleet,
    place: &Place,
    at: DateTime<Utc>,
) -> Option<Nearest<'a>> {
    let here = (place.latitude, place.longitude);
    let today = fleet.jobs.iter().filter(|job| is_on(fleet, job, at));
    let sites = today.filter_map(|job| fleet.site_of(job));
    let (miles, site) = sites
        .filter_map(|site| Some((distance::miles(here, site.position?), site)))
        .min_by(|(one, _), (other, _)| one.total_cmp(other))?;
    let jobs = fleet.jobs.iter().filter(|job| is_on(fleet, job, at));
    let mut due: Vec<UnitName> = Vec::new();
    for unit in jobs
        .filter(|job| job.id.site == site.id)
        .flat_map(|job| &job.trailers)
    {
        let stage = desk.book.unit(unit).map(|kept| kept.state().stage());
        let there = stage.is_some_and(Stage::is_on_site);
        if !there && !due.contains(unit) {
            due.push(unit.clone());
        }
    }
    Some(Nearest { site, miles, due })
}

/// Tells whether a job is on: from the set-up of the first of its trailers to its end.
fn is_on(fleet: &Fleet, job: &Job, at: DateTime<Utc>) -> bool {
    let begun = |unit: &UnitName| {
        fleet
            .set_up_of(unit, &job.id)
            .is_some_and(|from| from <= at)
    };
    at <= job.to && job.trailers.iter().any(begun)
}
