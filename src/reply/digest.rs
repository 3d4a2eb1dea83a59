//! The digest: every unit on one line, worst first, on one phone screen.

use std::cmp::Reverse;
use std::fmt::Write;

use chrono::{DateTime, Utc};

use super::voice::{Arg, Voice};
use crate::book::{Stage, Task};
use crate::finding::{FindingId, Level, TaskKind, Urgency};
use crate::heard::UnitName;

/// Lines in all: what a phone shows with little scrolling.
const LINES: usize = 25;
/// Fleets up to this size are listed whole; in larger ones those in good order are counted.
const LISTED_WHOLE: usize = 12;
/// Characters a line aims at.
const WIDTH: usize = 60;
/// Characters a site's name may take.
const SITE_WIDTH: usize = 16;

/// What the digest says of one unit.
#[derive(Debug, Clone)]
pub struct DigestRow<'a> {
    /// The trailer.
    pub unit: &'a UnitName,
    /// The site it stands at, by name.
    pub site: Option<&'a str>,
    /// Where it stands in its round.
    pub stage: Stage,
    /// The worst of what is wrong.
    pub worst: Option<(FindingId, Level, Urgency)>,
    /// What can hurt somebody and is no fault, by its code, where that is the worst.
    pub hazard: Option<&'a str>,
    /// How many things more are wrong.
    pub more: usize,
    /// What is due first.
    pub due: Option<(TaskKind, DateTime<Utc>)>,
    /// The pump-out that is open.
    pub pump_out: Option<&'a Task>,
    /// When the crew last said a word about it.
    pub last_word: Option<DateTime<Utc>>,
    /// Whether its doors are open and nobody has said a word about it on this job.
    pub unheard: bool,
}

impl DigestRow<'_> {
    /// Tells whether nothing is wrong and nothing is due.
    pub fn in_good_order(&self) -> bool {
        self.worst.is_none() && self.due.is_none() && !self.unheard
    }

    /// Returns the key by which rows are ordered: worst first, then what is due soonest, then by name.
    fn order(&self) -> impl Ord + '_ {
        let worst = self.worst.map(|(_, level, urgency)| (level, urgency));
        let due = self.due.map(|(_, at)| at);
        (Reverse(worst), due.is_none(), due, !self.unheard, self.unit)
    }
}

/// How the trailers stand, in the order in which they are told: worked out once, put into words for each reader.
#[derive(Debug, Clone, Default)]
pub struct Digest<'a> {
    /// What is wrong or due, worst first; in small fleets those in good order too.
    listed: Vec<DigestRow<'a>>,
    /// How many trailers there are in all, and on how many something is wrong or due.
    count: usize,
    trouble: usize,
    /// Where those in good order stand, and how many stand there, where they are only counted.
    counted: Vec<(Stage, usize)>,
    /// What comes first, what is late, who is silent.
    pub tail: DigestTail<'a>,
}

impl<'a> Digest<'a> {
    /// Puts rows in order: worst first; those in good order counted once there are many.
    pub fn of(rows: impl Iterator<Item = DigestRow<'a>>) -> Digest<'a> {
        let (mut listed, well): (Vec<_>, Vec<_>) = rows.partition(|row| !row.in_good_order());
        let (trouble, count) = (listed.len(), listed.len() + well.len());
        let mut counted = Vec::new();
        if count <= LISTED_WHOLE {
            listed.extend(well);
        } else {
            let at = |stage| well.iter().filter(|row| row.stage == stage).count();
            counted.extend(STAGES.map(|stage| (stage, at(stage))));
            counted.retain(|(_, count)| *count > 0);
        }
        // those that are only counted are many, and need no order
        listed.sort_by(|a, b| a.order().cmp(&b.order()));
        Digest {
            listed,
            count,
            trouble,
            counted,
            tail: DigestTail::default(),
        }
    }

    /// Says how the trailers stand, and what the digest ends with where there is anything of it.
    pub fn text(&self, voice: &Voice<'_>) -> String {
        let mut out = voice.say(
            "digest-head",
            &[
                ("time", Arg::from(voice.now())),
                ("count", self.count.into()),
                ("trouble", self.trouble.into()),
            ],
        );
        let wanted = self.listed.len();
        // the head, the count of those in good order, and the line that counts what did not fit
        let shown = if wanted + 2 <= LINES {
            wanted
        } else {
            LINES - 3
        };
        for row in &self.listed[..shown] {
            out.push('\n');
            voice.write_digest_row(&mut out, row);
        }
        if wanted > shown {
            out.push('\n');
            voice.write(
                &mut out,
                "digest-more",
                &[("count", (wanted - shown).into())],
            );
        }
        if !self.counted.is_empty() {
            out.push('\n');
            let args = [
                ("count", Arg::from(self.count - self.trouble)),
                ("stages", voice.stages(&self.counted).into()),
            ];
            voice.write(&mut out, "digest-good-order", &args);
        }
        let tail = self.tail.text(voice);
        if !tail.is_empty() {
            out.push('\n');
            out.push_str(&tail);
        }
        out
    }
}

/// Where a trailer can stand in its round, as a digest counts them.
const STAGES: [Stage; 6] = [
    Stage::InService,
    Stage::SettingUp,
    Stage::Closed,
    Stage::Hitched,
    Stage::Yard,
    Stage::Unknown,
];

/// What a digest ends with: what comes first, what is late, who is silent.
#[derive(Debug, Clone, Default)]
pub struct DigestTail<'a> {
    /// The trailers whose waste tank reaches its stop level, each with when and whether that is likely: the soonest first.
    pub fills: Vec<(&'a UnitName, DateTime<Utc>, bool)>,
    /// The trailers whose pump truck is to be called by now, and nobody has; each with its task.
    pub call: Vec<(&'a UnitName, &'a Task)>,
    /// The trailers whose truck comes when their tank may be full already, each with when it comes and when that may be.
    pub too_late: Vec<(&'a UnitName, DateTime<Utc>, DateTime<Utc>)>,
    /// The trailers whose truck is to be called in the quiet hours to come, each with by when.
    pub call_by: Vec<(&'a UnitName, DateTime<Utc>)>,
    /// The trailers whose truck was promised and has not come, each with the time it was promised for.
    pub missing: Vec<(&'a UnitName, DateTime<Utc>)>,
    /// The tasks that are late.
    pub late: Vec<&'a Task>,
    /// The trailers whose waste tank may be full by now by the crowd alone: nobody has read it.
    pub unread: Vec<&'a UnitName>,
    /// The trailers whose doors are open and of which nobody has said a word on this job.
    pub unheard: Vec<&'a UnitName>,
    /// The trailers in service of which nobody spoke for too long, each with the last word.
    pub silent: Vec<(&'a UnitName, DateTime<Utc>)>,
}

/// How many are named of each.
const NAMED: usize = 3;

impl DigestTail<'_> {
    /// Says what a digest ends with; nothing where there is nothing of it.
    fn text(&self, voice: &Voice<'_>) -> String {
        let fills = self.fills.iter().take(NAMED);
        let fills: Vec<String> = fills
            .map(|(unit, at, likely)| match (*at <= voice.now(), likely) {
                (true, true) => format!("{unit} {}", voice.word("digest-fills-now")),
                (_, true) => format!("{unit} {}", voice.time(*at)),
                (_, false) => {
                    let args = [("time", Arg::from(*at))];
                    format!("{unit} {}", voice.say("digest-fills-maybe", &args))
                }
            })
            .collect();
        let silent = self.silent.iter().take(NAMED);
        let silent: Vec<String> = silent
            .map(|(unit, last)| format!("{unit} {}", voice.age(*last)))
            .collect();
        let late = self.late.iter().take(NAMED);
        let late: Vec<String> = late.map(|task| how_late(task, voice)).collect();
        let call = self.call.iter().take(NAMED);
        let call: Vec<String> = call
            .map(|(unit, task)| match voice.truck_too_late(task) {
                Some(here) => {
                    let args = [("unit", Arg::from(unit.as_str())), ("time", here.into())];
                    voice.say("digest-call-late-one", &args)
                }
                None => unit.to_string(),
            })
            .collect();
        let too_late = self.too_late.iter().take(NAMED);
        let too_late: Vec<String> = too_late
            .map(|(unit, comes, full)| {
                let args = [
                    ("unit", Arg::from(unit.as_str())),
                    ("time", (*comes).into()),
                    ("due", (*full).into()),
                ];
                voice.say("digest-truck-late-one", &args)
            })
            .collect();
        let call_by = self.call_by.iter().take(NAMED);
        let call_by: Vec<String> = call_by
            .map(|(unit, at)| {
                let args = [("unit", Arg::from(unit.as_str())), ("time", (*at).into())];
                voice.say("digest-call-by-one", &args)
            })
            .collect();
        let missing = self.missing.iter().take(NAMED);
        let missing: Vec<String> = missing
            .map(|(unit, at)| {
                let args = [("unit", Arg::from(unit.as_str())), ("time", (*at).into())];
                voice.say("digest-truck-missing-one", &args)
            })
            .collect();
        let unread = self.unread.iter().take(NAMED);
        let unread: Vec<String> = unread.map(ToString::to_string).collect();
        let unheard = self.unheard.iter().take(NAMED);
        let unheard: Vec<String> = unheard.map(ToString::to_string).collect();
        let lines = [
            ("digest-unread", unread, self.unread.len()),
            ("digest-call", call, self.call.len()),
            ("digest-call-by", call_by, self.call_by.len()),
            ("digest-truck-missing", missing, self.missing.len()),
            ("digest-truck-late", too_late, self.too_late.len()),
            // the soonest are what counts here
            ("digest-fills", fills, 0),
            ("digest-late", late, self.late.len()),
            ("digest-unheard", unheard, self.unheard.len()),
            ("digest-silent", silent, self.silent.len()),
        ];
        let mut out = Vec::new();
        for (key, named, all) in lines {
            if named.is_empty() {
                continue;
            }
            let mut list = named.join(", ");
            if all > NAMED {
                let _ = write!(list, " +{}", all - NAMED);
            }
            out.push(voice.say(key, &[("names", list.into())]));
        }
        out.join("\n")
    }
}

/// Says which task is late, and by how much: `4 pump-out 12 (54 min)`.
fn how_late(task: &Task, voice: &Voice<'_>) -> String {
    let past = |at: &DateTime<Utc>| *at < voice.now();
    let since = task.due.filter(past).or(task.promised.filter(past));
    let head = voice.task_head(task);
    match since {
        Some(since) => {
            let args = [("task", head.into()), ("age", voice.age(since).into())];
            voice.say("digest-late-one", &args)
        }
        None => head,
    }
}

/// When a tank that stands somewhere reaches its stop level, and whether that is likely; none where it does not.
pub type Foreseen = Option<(DateTime<Utc>, bool)>;

/// One job of a day to come, as a look ahead tells it.
#[derive(Debug, Clone)]
pub struct DayJob<'a> {
    /// The site, by name.
    pub site: &'a str,
    /// When the doors open.
    pub from: DateTime<Utc>,
    /// When they close.
    pub to: DateTime<Utc>,
    /// The people booked.
    pub guests: f64,
    /// Whether the site has no water, and no power.
    pub lacks: (bool, bool),
    /// The people named for it, by id.
    pub crew: Vec<&'a str>,
    /// Its trailers, in the order of the plan.
    pub trailers: Vec<&'a UnitName>,
    /// Those that are to come, each with when its waste tank reaches the stop level by the guests alone; none where it does not.
    pub units: Vec<(&'a UnitName, Option<DateTime<Utc>>)>,
    /// The trailers that stand there already, each with when its waste tank reaches the stop level as it stands.
    pub stands: Vec<(&'a UnitName, Foreseen)>,
}

/// Says what a day to come brings, job by job.
pub fn look_ahead(voice: &Voice<'_>, day: DateTime<Utc>, jobs: &[DayJob<'_>]) -> String {
    let args = [
        ("word", Arg::from(voice.date(day))),
        ("count", jobs.len().into()),
    ];
    let mut out = voice.say("ahead-head", &args);
    for job in jobs {
        let units: Vec<String> = job.trailers.iter().map(ToString::to_string).collect();
        out.push('\n');
        let args = [
            ("site", Arg::from(job.site)),
            ("units", voice.all_of(&units).into()),
            ("first", job.from.into()),
            ("last", job.to.into()),
            (
                "value",
                Arg::Number(job.guests, crate::quantity::Measure::Count),
            ),
        ];
        voice.write(&mut out, "ahead-job", &args);
        out.push(' ');
        let crew = job.crew.iter();
        let crew: Vec<String> = crew.map(|who| voice.person(who).into_owned()).collect();
        match crew.is_empty() {
            true => voice.write(&mut out, "answer-next-job-nobody", &[]),
            false => {
                let names = voice.all_of(&crew);
                voice.write(&mut out, "answer-who-crew", &[("names", names.into())]);
            }
        }
        for (lacks, key) in [
            (job.lacks.0, "answer-next-job-no-water"),
            (job.lacks.1, "answer-next-job-no-power"),
        ] {
            if lacks {
                out.push(' ');
                voice.write(&mut out, key, &[]);
            }
        }
        if !job.stands.is_empty() {
            out.push(' ');
            voice.write_as_they_stand(&mut out, &job.stands);
        }
        if job.units.is_empty() {
            continue;
        }
        let fills = job.units.iter();
        let fills: Vec<String> = fills
            .filter_map(|(unit, at)| Some(format!("{unit} {}", voice.time((*at)?))))
            .collect();
        out.push(' ');
        if fills.is_empty() {
            voice.write(&mut out, "ahead-no-truck", &[]);
        } else {
            voice.write(
                &mut out,
                "ahead-truck",
                &[("names", fills.join(", ").into())],
            );
        }
    }
    out
}

impl Voice<'_> {
    /// Says which trailers fill up as they stand now, and when.
    fn write_as_they_stand(&self, out: &mut String, stands: &[(&UnitName, Foreseen)]) {
        let fills = stands.iter().filter_map(|(unit, at)| {
            let (at, likely) = (*at)?;
            let args = [("time", Arg::from(at))];
            Some(match (likely, at <= self.now()) {
                (true, true) => format!("{unit} {}", self.word("digest-fills-now")),
                (true, false) => format!("{unit} {}", self.time(at)),
                (false, _) => format!("{unit} {}", self.say("digest-fills-maybe", &args)),
            })
        });
        let fills: Vec<String> = fills.collect();
        match fills.is_empty() {
            true => self.write(out, "ahead-stands-no-truck", &[]),
            false => self.write(
                out,
                "ahead-stands-truck",
                &[("names", fills.join(", ").into())],
            ),
        }
    }

    /// Says where a trailer stands in its round.
    pub fn stage(&self, stage: Stage) -> String {
        self.word(match stage {
            Stage::Unknown => "stage-unknown",
            Stage::Yard => "stage-yard",
            Stage::Hitched => "stage-hitched",
            Stage::SettingUp => "stage-setting-up",
            Stage::InService => "stage-in-service",
            Stage::Closed => "stage-closed",
        })
    }

    /// Writes `12 Heron Mere, open: WARNING pressure too high +2, pump-out 19:15. 25 min`.
    fn write_digest_row(&self, out: &mut String, row: &DigestRow<'_>) {
        let mut text = String::with_capacity(96);
        text.push_str(row.unit.as_str());
        if let Some(site) = row.site {
            text.push(' ');
            push_short(&mut text, site, SITE_WIDTH);
        }
        let _ = write!(text, ", {}: ", self.stage(row.stage));
        if let Some((id, level, urgency)) = row.worst {
            let name = match row.hazard {
                Some(code) => self.hazard(code),
                None => self.name_beside(id, level, row.pump_out),
            };
            let _ = write!(text, "{} {name}", self.opening(level, urgency));
            if row.more > 0 {
                let _ = write!(text, " +{}", row.more);
            }
        } else if row.due.is_none() {
            // of one that nobody wrote of nobody knows whether it is in order
            let never = row.stage == Stage::Unknown && row.last_word.is_none();
            let key = match row.unheard || never {
                true => "digest-unheard-row",
                false => "digest-well",
            };
            self.write(&mut text, key, &[]);
        }
        let age = match row.last_word {
            Some(at) => self.age(at),
            None => self.word("digest-no-word"),
        };
        if let Some((kind, at)) = row.due {
            let due = format!("{} {}", self.coded("task", kind.code()), self.time(at));
            if row.worst.is_none() {
                text.push_str(&due);
            } else if text.chars().count() + due.chars().count() + age.chars().count() + 4 <= WIDTH
            {
                let _ = write!(text, ", {due}");
            }
        }
        let _ = write!(text, ". {age}");
        out.push_str(&text);
    }

    fn stages(&self, counted: &[(Stage, usize)]) -> String {
        let counted = counted.iter();
        let counted = counted.map(|(stage, count)| format!("{count} {}", self.stage(*stage)));
        counted.collect::<Vec<_>>().join(", ")
    }
}

/// Appends a name, cut at a whole word where it is too long: `Sleigh Barn` for "Sleigh Barn at Dovecote Farm".
fn push_short(out: &mut String, name: &str, most: usize) {
    let name = name.split([',', '(']).next().unwrap_or_default().trim();
    if name.chars().count() <= most {
        out.push_str(name);
        return;
    }
    let cut: String = name.chars().take(most + 1).collect();
    let Some((mut words, _)) = cut.rsplit_once(' ') else {
        out.extend(cut.chars().take(most - 1));
        out.push('…');
        return;
    };
    // "at", "de", "la" at the end would leave the name hanging
    while let Some((head, last)) = words.rsplit_once(' ')
        && last.chars().count() <= 3
        && last.chars().all(char::is_lowercase)
    {
        words = head;
    }
    out.push_str(words);
}
