//! Every unit at once, for the dispatcher; and one unit in a line or two.

use std::ops::Bound;
use std::sync::Arc;

use chrono::{DateTime, Datelike, Days, NaiveDate, TimeDelta, TimeZone, Utc};

use super::Desk;
use super::answer::Reply;
use super::days;
use super::receive::Hearing;
use super::situate::Case;
use super::tick;
use super::truck;
use super::when;
use crate::book::{AheadChange, Record, Stage, Stand, TankNote, Task, UnitState, WasteStand};
use crate::finding::{Finding, FindingId, TaskKind};
use crate::fleet::{Fleet, Job, Role, Source};
use crate::heard::{PlanKind, ReadingKey, UnitName};
use crate::outlook::{Outlook, Prospect};
use crate::reply::{Arg, DayJob, Digest, DigestRow, DigestTail, Voice, look_ahead};
use crate::situation::Occasion;

/// A waste tank at its stop level, % by volume (common practice, no source).
pub(super) const FULL_PCT: f64 = 85.0;
/// A tank that stands somewhere is foreseen for a day that begins within this long.
const FORESEEN: TimeDelta = TimeDelta::hours(36);
/// A unit nobody said a word about for this long, and at no job, is left out.
const STALE: TimeDelta = TimeDelta::days(14);

/// Iterates over the trailers a digest tells of, by name after `after`: at a job, or spoken of lately.
pub(super) fn told_of<'a>(
    desk: &'a Desk,
    fleet: &'a Fleet,
    now: DateTime<Utc>,
    after: Option<&UnitName>,
) -> impl Iterator<Item = &'a UnitName> {
    let from = after.map_or(Bound::Unbounded, |last| Bound::Excluded(last.clone()));
    let units = fleet.trailers.range((from, Bound::Unbounded));
    units.map(|(unit, _)| unit).filter(move |unit| {
        let known = desk.book.unit(unit);
        let fresh = known
            .and_then(|kept| kept.newest())
            .is_some_and(|newest| now - newest <= STALE);
        fresh
            || fleet
                .job_of(unit, now, None)
                .is_some_and(|job| job.to >= now)
    })
}

/// Looks at a trailer, with what is found, the worst first, and how it stands.
pub(super) fn look(
    desk: &Desk,
    fleet: &Arc<Fleet>,
    unit: &UnitName,
    now: DateTime<Utc>,
) -> (Case, Vec<Finding>, Stand) {
    let case = Case::standing(desk, fleet, unit, now, Occasion::Tick);
    let mut findings = case.findings();
    findings.sort_by_key(Finding::order);
    let stand = Stand {
        unit: unit.clone(),
        site: case.place(),
        worst: findings
            .first()
            .map(|finding| (finding.id, finding.level, finding.urgency)),
        more: findings.len().saturating_sub(1),
        silent: findings
            .iter()
            .any(|finding| finding.id == FindingId::CrewLateCheckIn),
        unheard: unheard(desk, fleet, unit, now).is_some(),
        waste: case.outlook.waste.as_ref().map(|waste| WasteStand {
            level_pct: waste.likely_pct,
            p10: waste.p10,
            p50: waste.p50,
        }),
    };
    (case, findings, stand)
}

/// Returns when the doors opened of a trailer of which nobody said a word since its set-up was to begin; none where
/// somebody did, or where they are not open yet.
pub(super) fn unheard(
    desk: &Desk,
    fleet: &Fleet,
    unit: &UnitName,
    now: DateTime<Utc>,
) -> Option<DateTime<Utc>> {
    let job = fleet.job_of(unit, now, None)?;
    let word = desk.book.unit(unit).and_then(|kept| kept.newest());
    let begins = fleet.set_up_of(unit, &job.id)?;
    let silent = word.is_none_or(|word| word < begins);
    (silent && job.is_open(now)).then_some(job.from)
}

/// Puts into words how some trailers stand, and no more.
pub(super) fn rows(desk: &Desk, stands: &[Stand], voice: &Voice<'_>) -> String {
    Digest::of(stands.iter().map(|stand| row(desk, stand))).text(voice)
}

/// Puts into words how the trailers stand, with who is silent, what is late and which trucks are to be called.
pub(super) fn text(desk: &Desk, stands: &[Stand], voice: &Voice<'_>) -> String {
    whole(desk, stands, voice.now()).text(voice)
}

/// Works out a digest of the trailers: once, for however many readers.
pub(super) fn whole<'a>(
    desk: &'a Desk,
    stands: impl IntoIterator<Item = &'a Stand>,
    now: DateTime<Utc>,
) -> Digest<'a> {
    let stands: Vec<&Stand> = stands.into_iter().collect();
    let mut digest = Digest::of(stands.iter().map(|stand| row(desk, stand)));
    digest.tail = tail(desk, &stands, now);
    digest
}

fn row<'a>(desk: &'a Desk, stand: &'a Stand) -> DigestRow<'a> {
    let known = desk.book.unit(&stand.unit).map(|kept| kept.state());
    let mut row = DigestRow {
        unit: &stand.unit,
        site: stand.site.as_deref(),
        stage: known.map_or(Stage::Unknown, UnitState::stage),
        worst: stand.worst,
        hazard: hazard_of(known, stand),
        more: stand.more,
        due: None,
        pump_out: None,
        last_word: known.and_then(|known| Some(known.last_word.as_ref()?.at)),
        unheard: stand.unheard,
    };
    for task in desk.book.tasks().open_on(&stand.unit) {
        let due = task.due.map(|due| (task.kind, due));
        let sooner = |new: &(TaskKind, DateTime<Utc>)| row.due.is_none_or(|(_, at)| new.1 < at);
        row.due = due.filter(sooner).or(row.due);
        if task.kind == TaskKind::PumpOut {
            row.pump_out = Some(task);
        }
    }
    row
}

/// Returns the code of what can hurt somebody on a trailer and is no fault, where that is the worst there.
fn hazard_of<'a>(known: Option<&'a UnitState>, stand: &Stand) -> Option<&'a str> {
    let (id, ..) = stand.worst?;
    let hazards = known.map(|known| &known.hazards)?;
    let first = hazards.keys().next().filter(|_| hazards.len() == 1)?;
    (id == FindingId::SiteUnsafe).then_some(first)
}

/// Gathers what a digest ends with.
fn tail<'a>(desk: &'a Desk, stands: &[&'a Stand], now: DateTime<Utc>) -> DigestTail<'a> {
    let mut tail = DigestTail {
        late: late(desk, now),
        ..DigestTail::default()
    };
    // who is silent is told apart
    tail.late.retain(|task| task.kind != TaskKind::CheckIn);
    for fill in fills(desk, stands.iter().copied(), now) {
        match fill.unread {
            true => tail.unread.push(&fill.stand.unit),
            false => tail.fills.push((&fill.stand.unit, fill.at, fill.likely)),
        }
    }
    for &stand in stands {
        let unit = &stand.unit;
        if stand.unheard {
            tail.unheard.push(unit);
        }
        if stand.silent {
            let word = desk
                .book
                .unit(unit)
                .and_then(|kept| kept.state().last_word.as_ref());
            tail.silent.extend(word.map(|word| (unit, word.at)));
        }
        let pump_out = desk.book.tasks().open_task(unit, TaskKind::PumpOut);
        if let Some(task) = pump_out {
            tail.call.extend(to_call(task, now).then_some((unit, task)));
            let promised = task.promised.filter(|_| truck::is_missing(task, now));
            tail.missing
                .extend(promised.map(|promised| (unit, promised)));
            tail.too_late.extend(truck_too_late(task, stand, now));
        }
        let call_by = called_at_night(desk, stand, pump_out, now);
        tail.call_by.extend(call_by.map(|call_by| (unit, call_by)));
    }
    tail.silent.sort_by_key(|(_, since)| *since);
    tail
}

/// Tells whether the truck of a pump-out is to be called by now and nobody has.
fn to_call(task: &Task, now: DateTime<Utc>) -> bool {
    task.called.is_none() && task.call_by.is_some_and(|at| at <= now)
}

/// What is to be called for within this long is told before the night.
const NIGHT: TimeDelta = TimeDelta::hours(12);
/// What is allowed for besides the hauler's notice.
const IN_HAND: TimeDelta = TimeDelta::hours(1);

/// Returns by when the truck of a trailer must be called where that falls into the quiet hours to come: then nobody is told.
fn called_at_night(
    desk: &Desk,
    stand: &Stand,
    pump_out: Option<&Task>,
    now: DateTime<Utc>,
) -> Option<DateTime<Utc>> {
    let waste = stand.waste.filter(|waste| waste.p50.is_some())?;
    let fleet = desk.fleet_at(now);
    let job = fleet.job_of(&stand.unit, now, None)?;
    let notice = fleet.site_of(job)?.pump_truck.notice();
    let call_by = waste.p10? - notice - IN_HAND;
    let called = pump_out.is_some_and(|task| task.called.is_some());
    let soon = now < call_by && call_by - now <= NIGHT;
    (soon && !called && tick::is_quiet(&fleet, call_by)).then_some(call_by)
}

/// Returns when the truck of a trailer comes and when its tank may be full, where that is before the truck.
fn truck_too_late<'a>(
    task: &Task,
    stand: &'a Stand,
    now: DateTime<Utc>,
) -> Option<(&'a UnitName, DateTime<Utc>, DateTime<Utc>)> {
    let promised = task.promised.filter(|at| *at > now)?;
    let full = stand.waste?.p10?.max(now);
    (promised > full).then_some((&stand.unit, promised, full))
}

/// A waste tank that fills up.
pub(super) struct Fill<'a> {
    /// Its trailer, as it stands.
    pub(super) stand: &'a Stand,
    /// When it is at its stop level, now at the earliest.
    pub(super) at: DateTime<Utc>,
    /// Whether it is likely by then, or only possible.
    pub(super) likely: bool,
    /// Whether only the crowd says that it may be full by now: nobody has read it.
    pub(super) unread: bool,
}

/// Lists the waste tanks that fill up, the soonest first: the same for everybody who asks.
pub(super) fn fills<'a>(
    desk: &Desk,
    stands: impl IntoIterator<Item = &'a Stand>,
    now: DateTime<Utc>,
) -> Vec<Fill<'a>> {
    let fill = |stand: &'a Stand| {
        let waste = stand.waste?;
        let read = was_read(desk, &stand.unit, now);
        let (at, likely) = match (waste.p50.filter(|at| *at > now), waste.p10) {
            (Some(at), _) => (at, true),
            // what is full already fills first of all
            (None, _) if waste.level_pct >= FULL_PCT && read => (now, true),
            (None, Some(at)) => (at.max(now), false),
            (None, None) => return None,
        };
        let unread = !read && !likely && at <= now;
        Some(Fill {
            stand,
            at,
            likely,
            unread,
        })
    };
    let mut fills: Vec<Fill<'a>> = stands.into_iter().filter_map(fill).collect();
    // a tank that nobody has read may be anything: it comes last
    fills.sort_by_key(|fill| (fill.unread, fill.at, !fill.likely));
    fills
}

/// Lists the open tasks that are past their time, the longest first: what is due, and who was called and did not come.
pub(super) fn late(desk: &Desk, now: DateTime<Utc>) -> Vec<&Task> {
    let missed = |task: &Task| task.here.is_none() && task.promised.is_some_and(|at| at < now);
    let is_late = |task: &&Task| task.is_late(now) || missed(task);
    let mut late: Vec<&Task> = desk.book.tasks().open().filter(is_late).collect();
    late.sort_by_key(|task| (task.due.is_none(), task.due, task.id));
    late
}

/// Tells whether somebody read a waste tank within the day.
fn was_read(desk: &Desk, unit: &UnitName, now: DateTime<Utc>) -> bool {
    let state = desk.book.unit(unit).map(|kept| kept.state());
    state.is_some_and(|state| {
        [ReadingKey::WastePct, ReadingKey::WasteGal]
            .iter()
            .filter_map(|key| state.readings.get(key))
            .any(|read| now.signed_duration_since(read.at) <= TimeDelta::hours(24))
    })
}

/// Tells how every unit stands, or what the day that was asked for brings. A digest over many is gathered by ticks, in
/// slices between which turns run.
pub(super) fn tell(hearing: &Hearing<'_>, reply: &mut Reply<'_>, records: &mut Vec<Record>) {
    if let Some((unit, days)) = days_asked(hearing) {
        reply.lines.push(days_ahead(hearing, unit.as_ref(), &days));
        return;
    }
    if hearing.desk.phrases.holds("nearest", "past", hearing.text) {
        reply.say("answer-digest-past", &[]);
    }
    let (desk, fleet) = (hearing.desk, &hearing.fleet);
    let at_job = |unit| fleet.job_of(unit, hearing.now, None).is_some();
    if tick::too_many(told_of(desk, fleet, hearing.now, None).map(at_job)) {
        reply.say("digest-asked", &[]);
        let who = hearing.member.id.clone();
        return records.push(Record::Ahead {
            at: hearing.now,
            change: AheadChange::Asked { who },
        });
    }
    let mut stands = Vec::new();
    for unit in told_of(desk, fleet, hearing.now, None) {
        let (case, mut findings, stand) = look(desk, fleet, unit, hearing.now);
        stands.push(stand);
        reply.foresee(&case);
        if hearing.heard.entries.is_empty() {
            reply.listed.append(&mut findings);
        }
    }
    let text = text(desk, &stands, &reply.voice);
    reply.lines.push(text);
}

/// Returns the days that are asked after, and the one trailer whose days they are.
fn days_asked(hearing: &Hearing<'_>) -> Option<(Option<UnitName>, Vec<NaiveDate>)> {
    let (phrases, fleet, text) = (hearing.desk.phrases, &hearing.fleet, hearing.text);
    let at = hearing.inbound.at;
    if let Some((unit, days)) = days::of_a_unit(phrases, fleet, text, at) {
        return Some((Some(unit), days));
    }
    let named = days::asked(phrases, text, at, fleet.time_zone);
    let heard = || {
        let day = hearing
            .heard
            .plans
            .iter()
            .find_map(|plan| match plan.kind {
                PlanKind::Day { day } => Some(day),
                _ => None,
            })?;
        Some(vec![next_day(hearing, day)?])
    };
    Some((None, named.or_else(heard)?))
}

/// Says what days bring, each where there is something on it; of one trailer where it is named.
fn days_ahead(hearing: &Hearing<'_>, unit: Option<&UnitName>, days: &[NaiveDate]) -> String {
    let fleet = &hearing.fleet;
    let busy = |day: &NaiveDate| !jobs_on(fleet, unit, *day).is_empty();
    let told: Vec<String> = days
        .iter()
        .filter(|day| busy(day))
        .map(|day| day_ahead(hearing, unit, *day))
        .collect();
    if !told.is_empty() {
        return told.join("\n");
    }
    let voice = &hearing.voice();
    let date = |day: Option<&NaiveDate>| {
        day.map_or_else(String::new, |day| voice.date(noon_of(hearing, *day)))
    };
    let args = [
        ("unit", unit.map_or("", UnitName::as_str).into()),
        ("word", Arg::from(date(days.first()))),
        ("what", date(days.last()).into()),
    ];
    let key = match (unit, days) {
        (Some(_), [_]) => "ahead-none-of",
        (Some(_), _) => "ahead-none-of-until",
        (None, [_]) => "ahead-none",
        (None, _) => "ahead-none-until",
    };
    voice.say(key, &args)
}

/// Returns the jobs that are on a day by their own clocks; of one trailer where it is named.
fn jobs_on<'f>(fleet: &'f Fleet, unit: Option<&UnitName>, day: NaiveDate) -> Vec<&'f Job> {
    let on = |job: &&Job| {
        let date = |at: DateTime<Utc>| at.with_timezone(&job.time_zone).date_naive();
        let of_it = unit.is_none_or(|unit| job.trailers.contains(unit));
        of_it && date(job.from) <= day && day <= date(job.to)
    };
    fleet.jobs.iter().filter(on).collect()
}

fn noon_of(hearing: &Hearing<'_>, day: NaiveDate) -> DateTime<Utc> {
    let zone = hearing.fleet.time_zone;
    let noon = day.and_hms_opt(12, 0, 0);
    let noon = noon.and_then(|noon| zone.from_local_datetime(&noon).earliest());
    noon.map_or(hearing.now, |noon| noon.to_utc())
}

/// Returns the next local day of a name: 0 Monday to 6 Sunday (today where it is that day), 7 tomorrow.
fn next_day(hearing: &Hearing<'_>, day: u8) -> Option<NaiveDate> {
    let today = hearing.now.with_timezone(&hearing.fleet.time_zone);
    let weekday = today.weekday().num_days_from_monday() as u8;
    let ahead = if day == 7 { 1 } else { (day + 7 - weekday) % 7 };
    today.date_naive().checked_add_days(Days::new(ahead.into()))
}

/// Says what the day brings that a question names, tomorrow where it names none.
pub(super) fn day_named(hearing: &Hearing<'_>) -> String {
    let zone = hearing.fleet.time_zone;
    let day = when::day_word(hearing.text).unwrap_or_else(|| "tomorrow".to_owned());
    let noon = when::told("12:00", &day, hearing.now, zone);
    let date = noon
        .unwrap_or(hearing.now)
        .with_timezone(&zone)
        .date_naive();
    days_ahead(hearing, None, &[date])
}

/// Returns the day that a question names, from its beginning to its end.
pub(super) fn day_span(hearing: &Hearing<'_>) -> Option<(DateTime<Utc>, DateTime<Utc>)> {
    let zone = hearing.fleet.time_zone;
    let noon = when::told("12:00", hearing.text, hearing.now, zone)?;
    Some((noon - TimeDelta::hours(12), noon + TimeDelta::hours(12)))
}

/// Returns when a trailer that comes empty from the yard has its waste at the stop level, by a job's guests alone.
pub(super) fn fills_by_guests(
    desk: &Desk,
    fleet: &Fleet,
    job: &Job,
    unit: &UnitName,
    from: DateTime<Utc>,
) -> Option<DateTime<Utc>> {
    let spec = fleet.trailers.get(unit)?;
    let mut state = UnitState::default();
    state.tanks.push((from, TankNote::Pumped(None)));
    let prospect = Prospect {
        fleet,
        spec,
        job: Some(job),
        site: fleet.site_of(job),
        state: &state,
        guests: &[],
        lessons: desk.book.lessons().of(unit),
        at: from,
    };
    Outlook::of(&prospect).waste?.p50
}

/// Says which jobs a day brings: trailers, doors, guests, and what fills when by the guests alone.
fn day_ahead(hearing: &Hearing<'_>, unit: Option<&UnitName>, day: NaiveDate) -> String {
    let fleet = &hearing.fleet;
    let noon = noon_of(hearing, day);
    let mut jobs: Vec<DayJob<'_>> = Vec::new();
    for job in jobs_on(fleet, unit, day) {
        let site = fleet.site_of(job);
        let window = job
            .windows(job.from)
            .find(|(from, _)| from.with_timezone(&job.time_zone).date_naive() == day)
            .unwrap_or((job.from, job.to));
        // one that stands there already is told as it stands
        let now = hearing.now;
        let here = |unit: &&UnitName| {
            let of_it = fleet.job_of(unit, now, None);
            let kept = hearing.desk.book.unit(unit);
            let known = kept.is_some_and(|kept| !kept.state().tanks.is_empty());
            let near = window.0 - now <= FORESEEN;
            near && known && of_it.is_some_and(|other| other.id == job.id)
        };
        let (stands, comes): (Vec<&UnitName>, Vec<&UnitName>) = job.trailers.iter().partition(here);
        let units = comes.into_iter().map(|unit| {
            let fills = fills_by_guests(hearing.desk, fleet, job, unit, window.0);
            (unit, fills.filter(|at| *at <= window.1))
        });
        let stands = stands.into_iter().map(|unit| {
            let waste = hearing.asked_about(unit).outlook.waste;
            let likely = waste.as_ref().and_then(|waste| waste.p50);
            let may = waste.as_ref().and_then(|waste| waste.p10);
            let at = likely.or(may).filter(|at| *at <= window.1);
            (unit, at.map(|at| (at, likely.is_some())))
        });
        jobs.push(DayJob {
            site: site.map_or(job.id.site.as_str(), |site| site.name.as_str()),
            from: window.0,
            to: window.1,
            guests: job.guests,
            lacks: site.map_or((false, false), |site| {
                let none = |source| source == Source::None;
                (none(site.water.source), none(site.power.source))
            }),
            crew: job.crew.iter().map(String::as_str).collect(),
            trailers: job.trailers.iter().collect(),
            units: units.collect(),
            stands: stands.collect(),
        });
    }
    jobs.sort_by_key(|job| job.from);
    // times of that day need no weekday
    let voice = hearing
        .desk
        .voice_for(hearing.member, hearing.heard.language, fleet, noon);
    look_ahead(&voice, noon, &jobs)
}

/// Returns the code of a role.
pub(super) fn role_code(role: Role) -> &'static str {
    match role {
        Role::Driver => "driver",
        Role::Tech => "tech",
        Role::Dispatcher => "dispatcher",
    }
}
