//! The data directory and the disk under it.

use std::fs::{self, File};
use std::io::Write;
use std::path::Path;
use std::time::Instant;

use super::{CliError, Report, failed};
use crate::chat::socket::{self, Request};
use crate::store::{self, StoreError};

/// Under so much free space nothing can be relied on: two segments and their index.
const TOO_LITTLE_MB: u64 = 50;
/// Under so much it is time to look for room.
const LITTLE_MB: u64 = 500;
/// A sync that takes longer keeps crews waiting, ms.
const SLOW_MS: u128 = 200;

pub(super) fn check(dir: &Path, report: &mut Report) -> Result<(), CliError> {
    match store::holder(dir) {
        Ok(held) => {
            held_by(dir, held, report)?;
            opens(dir, report)?;
        }
        Err(StoreError::Empty(_)) => report.good("data", "empty: a new store begins here")?,
        Err(error @ StoreError::ReadOnly(_)) => report.bad("data", failed(&error))?,
        Err(error) => return report.bad("data", failed(&error)),
    }
    open_to_others(dir, report)?;
    space(dir, report)?;
    writes(dir, report)
}

/// Says where other accounts of the machine can read what people wrote.
fn open_to_others(dir: &Path, report: &mut Report) -> Result<(), CliError> {
    use std::os::unix::fs::PermissionsExt;
    // a directory that cannot be looked at was told of above
    let Ok(found) = fs::metadata(dir) else {
        return Ok(());
    };
    let mode = found.permissions().mode() & 0o777;
    match mode & 0o077 {
        0 => report.good("data", "only its owner can look into it"),
        _ => report.note(
            "data",
            format!(
                "other accounts of this machine can look into it (mode {mode:o}), and it holds what people wrote: `chmod 700 {}`",
                dir.display()
            ),
        ),
    }
}

fn held_by(dir: &Path, held: Option<StoreError>, report: &mut Report) -> Result<(), CliError> {
    match socket::ask(dir, &Request::Show) {
        Ok(Some(standing)) if standing["logging"] == false => report.bad(
            "bot",
            "it runs but cannot log: see its log for the reason, and the disk below",
        ),
        Ok(Some(standing)) => {
            let waiting = standing["waiting"].as_u64().unwrap_or(0);
            let said = format!("it runs here; {waiting} messages wait to be sent");
            report.good("bot", said)
        }
        Ok(None) => match held {
            Some(held) => report.note("data", format!("{held} (it has no control socket)")),
            None => report.good("bot", "none runs here"),
        },
        Err(error) => report.bad("bot", error),
    }
}

/// Checks what opening would check.
fn opens(dir: &Path, report: &mut Report) -> Result<(), CliError> {
    match store::glance(dir) {
        Ok(glance) => report.good(
            "store",
            format!(
                "opens: turns {}, segments {} (`hosebib verify` walks every record)",
                glance.turns, glance.segments
            ),
        ),
        Err(error) => report.bad("store", failed(&error)),
    }
}

fn space(dir: &Path, report: &mut Report) -> Result<(), CliError> {
    let free = match rustix::fs::statvfs(dir) {
        Ok(disk) => disk.f_bavail.saturating_mul(disk.f_frsize) / 1_000_000,
        Err(error) => return report.note("space", format!("it cannot be told: {error}")),
    };
    let said = format!("{free} MB free on the disk that holds the data");
    if free < TOO_LITTLE_MB {
        report.bad(
            "space",
            format!("{said}: make room, or nothing can be logged soon"),
        )
    } else if free < LITTLE_MB {
        report.note("space", format!("{said}: plan for more"))
    } else {
        report.good("space", said)
    }
}

/// Writes and syncs a file, and takes it away.
fn writes(dir: &Path, report: &mut Report) -> Result<(), CliError> {
    let path = dir.join(format!("doctor-{}.new", std::process::id()));
    let begun = Instant::now();
    let write = || {
        let mut file = File::create_new(&path)?;
        file.write_all(&[0; 65_536])?;
        file.sync_all()
    };
    let outcome = write();
    let took = begun.elapsed().as_millis();
    // there is none when it could not be made
    let _ = fs::remove_file(&path);
    match outcome {
        Ok(()) if took > SLOW_MS => report.note(
            "disk",
            format!("64 kB took {took} ms to be on the disk: crews wait so long for each answer; a local SSD is faster"),
        ),
        Ok(()) => report.good("disk", format!("64 kB are on the disk in {took} ms")),
        Err(error) => report.bad(
            "disk",
            format!("`{}` cannot be written: {error}: give this user the right to write there, or free or repair the disk", dir.display()),
        ),
    }
}
