//! `hosebib fleet show`: the fleet as a table, or one trailer's spec in full.

use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use chrono::{DateTime, Utc};

use super::super::{CliError, beside, clock, load};
use super::learned;
use super::stated::{self, Row};
use super::{checked, files, summary};
use crate::book::{Book, Lesson, Stage};
use crate::fleet::{Fleet, FleetFiles, Trailer, demo};
use crate::heard::{Event, Language, UnitName};
use crate::reply::{Replies, Status};

/// Arguments of `hosebib fleet show`.
#[derive(Debug, clap::Args)]
pub(super) struct Args {
    /// Show this trailer's spec in full
    trailer: Option<String>,
    /// Show the fleet in force in this data directory, and how each trailer stands; a bot may run on it
    #[arg(long, value_name = "DIR")]
    data: Option<PathBuf>,
    /// Show the fleet in this folder; with `--data` too, the spec comes from here and the state from there
    #[arg(long, value_name = "DIR", conflicts_with = "demo")]
    fleet: Option<PathBuf>,
    /// Show the demo fleet
    #[arg(long)]
    demo: bool,
}

pub(super) fn run(args: &Args) -> Result<ExitCode, CliError> {
    if args.data.is_none() && args.fleet.is_none() && !args.demo {
        return Err(CliError::Usage(
            "which fleet? Name it by `--data DIR` (as loaded there), `--fleet DIR` (its files) or `--demo`".into(),
        ));
    }
    let mut out = std::io::stdout().lock();
    let texts = match (&args.fleet, args.demo) {
        (Some(dir), _) => Some(files(dir)?),
        (None, true) => Some(demo::files()),
        (None, false) => None,
    };
    let book = args.data.as_deref().map(beside::book).transpose()?;
    let fleet = fleet_shown(args, &mut out, texts.as_ref(), book.as_ref())?;
    let now = clock::now();
    if let (Some(texts), Some(book)) = (&texts, &book)
        && load::digest(texts) != book.fleet_digest()
    {
        let how = match book.fleet() {
            Some(_) => "these files differ from the last load",
            None => "these files were never loaded there",
        };
        writeln!(
            out,
            "note: {how}: `hosebib fleet load` puts them in force\n"
        )?;
    }
    match &args.trailer {
        Some(name) => {
            let trailer = find(&fleet, name)?;
            let lessons = book.as_ref().map(|book| book.lessons().of(&trailer.id));
            spec(&mut out, trailer, texts.as_ref(), lessons.unwrap_or(&[]))?;
            if let Some(book) = &book {
                state(&mut out, &fleet, trailer, book, now)?;
            }
        }
        None => table(&mut out, &fleet, book.as_ref(), now)?,
    }
    Ok(ExitCode::SUCCESS)
}

fn fleet_shown(
    args: &Args,
    out: &mut dyn Write,
    texts: Option<&FleetFiles>,
    book: Option<&Book>,
) -> Result<Fleet, CliError> {
    match (&args.fleet, texts) {
        (Some(dir), Some(texts)) => return checked(dir, texts, out),
        (_, Some(_)) => return Ok(demo::fleet()),
        (_, None) => {}
    }
    let in_force = book.and_then(Book::fleet).map(|fleet| (**fleet).clone());
    in_force.ok_or_else(|| {
        let data = args.data.as_deref().unwrap_or(Path::new("")).display();
        CliError::Failed(format!(
            "no fleet was ever loaded into `{data}`: load one with `hosebib fleet load DIR --data {data}`"
        ))
    })
}

fn find<'f>(fleet: &'f Fleet, name: &str) -> Result<&'f Trailer, CliError> {
    fleet.trailer(&UnitName::new(name)).ok_or_else(|| {
        let near: Vec<String> = fleet
            .nearest_units(name)
            .iter()
            .map(|unit| format!("`{unit}`"))
            .collect();
        let hint = match near.is_empty() {
            true => "`hosebib fleet show` lists them all".to_owned(),
            false => format!("did you mean {}?", near.join(", ")),
        };
        CliError::Failed(format!("`{name}` is no trailer of this fleet: {hint}"))
    })
}

fn spec(
    out: &mut dyn Write,
    trailer: &Trailer,
    texts: Option<&FleetFiles>,
    lessons: &[Lesson],
) -> Result<(), CliError> {
    let mut rows = match texts {
        Some(texts) => stated::rows(trailer, &texts.fleet),
        None => stated::rows_of_values(trailer),
    };
    if !lessons.is_empty() {
        for row in &mut rows {
            let learned = learned::beside(&row.key, trailer, lessons);
            row.value.push_str(&learned);
        }
        let rates = learned::rates(trailer, lessons).into_iter();
        rows.extend(rates.map(|(key, value)| Row {
            key,
            value,
            from: "learned",
        }));
    }
    writeln!(
        out,
        "trailer {}: {} stalls, {} sinks",
        trailer.id,
        trailer.stalls(),
        trailer.sinks()
    )?;
    let width = |of: fn(&Row) -> &str| {
        let widths = rows.iter().map(|row| of(row).chars().count());
        widths.max().unwrap_or(0)
    };
    let (keys, froms) = (width(|row| &row.key), width(|row| row.from));
    for Row { key, value, from } in &rows {
        writeln!(out, "  {key:keys$}  {from:froms$}  {value}")?;
    }
    if texts.is_none() {
        writeln!(
            out,
            "the journal keeps values, not files: add `--fleet DIR` to see which of those as the default were stated"
        )?;
    }
    Ok(())
}

fn state(
    out: &mut dyn Write,
    fleet: &Fleet,
    trailer: &Trailer,
    book: &Book,
    now: DateTime<Utc>,
) -> Result<(), CliError> {
    let Some(unit) = book.unit(&trailer.id) else {
        writeln!(out, "\nnothing was ever reported on it")?;
        return Ok(());
    };
    let replies = Replies::new();
    let voice = replies
        .voice(Language::En, fleet.style, fleet.time_zone, now)
        .naming(fleet);
    let left = unit.state().when(Event::Left);
    let site = fleet
        .job_of(&trailer.id, now, left)
        .and_then(|job| fleet.site_of(job));
    let status = Status {
        unit: &trailer.id,
        site: site.map(|site| site.name.as_str()),
        state: unit.state(),
        spec: Some(trailer),
        outlook: None,
        tasks: book.tasks().open_on(&trailer.id).collect(),
    };
    writeln!(out, "\n{}", voice.status(&status))?;
    Ok(())
}

fn table(
    out: &mut dyn Write,
    fleet: &Fleet,
    book: Option<&Book>,
    now: DateTime<Utc>,
) -> Result<(), CliError> {
    let company = match fleet.company.is_empty() {
        true => String::new(),
        false => format!("{}: ", fleet.company),
    };
    writeln!(out, "{company}{}\n", summary(fleet))?;
    let mut head = vec![
        "trailer", "stalls", "waste", "fresh", "psi", "circuits", "cold", "where",
    ];
    if book.is_some() {
        head.extend(["stage", "last word", "tasks"]);
    }
    let mut rows = vec![head.into_iter().map(str::to_owned).collect::<Vec<_>>()];
    let mut trailers: Vec<&Trailer> = fleet.trailers.values().collect();
    trailers.sort_by_key(|trailer| by_number(trailer.id.as_str()));
    rows.extend(
        trailers
            .into_iter()
            .map(|trailer| cells(fleet, trailer, book, now)),
    );
    let columns = rows[0].len();
    let widths: Vec<usize> = (0..columns)
        .map(|at| rows.iter().map(|row| row[at].chars().count()).max())
        .map(Option::unwrap_or_default)
        .collect();
    for row in &rows {
        let line: Vec<String> = row
            .iter()
            .zip(&widths)
            .map(|(cell, &width)| format!("{cell:width$}"))
            .collect();
        writeln!(out, "{}", line.join("  ").trim_end())?;
    }
    Ok(())
}

/// Puts 4 before 10, and names that begin with a letter last.
fn by_number(name: &str) -> (u64, &str) {
    let digits = name.find(|c: char| !c.is_ascii_digit());
    let number = name[..digits.unwrap_or(name.len())].parse();
    (number.unwrap_or(u64::MAX), name)
}

fn cells(fleet: &Fleet, trailer: &Trailer, book: Option<&Book>, now: DateTime<Utc>) -> Vec<String> {
    let unit = book.and_then(|book| book.unit(&trailer.id));
    let left = unit.and_then(|unit| unit.state().when(Event::Left));
    let zone = fleet.time_zone;
    let place = match (
        fleet.job_of(&trailer.id, now, left),
        fleet.next_job_of(&trailer.id, now),
    ) {
        (Some(job), _) if job.to >= now => job.id.site.clone(),
        (_, Some(next)) => format!(
            "next {}, {}",
            next.id.site,
            next.from.with_timezone(&zone).format("%Y-%m-%d")
        ),
        _ => "no job ahead".into(),
    };
    let limits = trailer.pressure_psi;
    let mut cells = vec![
        trailer.id.to_string(),
        trailer.stalls().to_string(),
        format!("{} gal", trailer.waste_gal),
        format!("{} gal", trailer.fresh_gal),
        format!("{}-{}, set {}", limits.min, limits.max, limits.regulator),
        trailer.circuits.len().to_string(),
        if trailer.cold.package { "yes" } else { "no" }.into(),
        place,
    ];
    if let Some(book) = book {
        let state = unit.map(crate::book::UnitBook::state);
        let word = state.and_then(|state| state.last_word.as_ref());
        cells.extend([
            stage(state.map_or(Stage::Unknown, crate::book::UnitState::stage)).to_owned(),
            word.map_or_else(
                || "never".into(),
                |word| {
                    let at = word.at.with_timezone(&zone);
                    format!("{} {}", at.format("%Y-%m-%d %H:%M"), word.from)
                },
            ),
            book.tasks().open_on(&trailer.id).count().to_string(),
        ]);
    }
    cells
}

fn stage(stage: Stage) -> &'static str {
    match stage {
        Stage::Unknown => "not known",
        Stage::Yard => "in the yard",
        Stage::Hitched => "hitched",
        Stage::SettingUp => "setting up",
        Stage::InService => "in service",
        Stage::Closed => "closed",
    }
}
