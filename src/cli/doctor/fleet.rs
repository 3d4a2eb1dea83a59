//! The fleet, its people and its time zone.

use chrono_tz::Tz;

use super::super::shown::counted;
use super::super::{beside, clock};
use super::{Args, CliError, Report};
use crate::fleet::{self, Fleet, Role};

pub(super) fn check(args: &Args, report: &mut Report) -> Result<(), CliError> {
    let fleet = match (&args.fleet, &args.data) {
        (Some(dir), _) => match super::super::fleet::files(dir).map(|files| fleet::read(&files)) {
            Ok(Ok(fleet)) => Some(fleet),
            Ok(Err(problems)) => {
                let said = format!(
                    "{}: `hosebib fleet check {}` lists them with file and line",
                    counted(problems.len(), "problem"),
                    dir.display()
                );
                return report.bad("fleet", said);
            }
            Err(error) => return report.bad("fleet", error.to_string()),
        },
        // what is wrong with the directory was said before
        (None, Some(dir)) => beside::fleet(dir).unwrap_or_default(),
        (None, None) => None,
    };
    match fleet {
        Some(fleet) => people_and_zone(&fleet, report),
        None => report.note(
            "fleet",
            "none to check: name its folder with `--fleet`, or load one with `hosebib fleet load`",
        ),
    }
}

fn people_and_zone(fleet: &Fleet, report: &mut Report) -> Result<(), CliError> {
    report.good("fleet", super::super::fleet::summary(fleet))?;
    let people = || fleet.crew.values();
    if fleet.crew.is_empty() {
        report.bad(
            "crew",
            "nobody is on the list, so nobody is let in: fill crew.toml and load it",
        )?;
    } else if !people().any(|member| member.role == Role::Dispatcher) {
        report.bad(
            "crew",
            "no dispatcher is on the list, so no alarm reaches anybody: give one person role = \"dispatcher\"",
        )?;
    } else {
        let unbound = people().filter(|member| member.chat_user.is_none()).count();
        match unbound {
            0 => report.good("crew", "everybody has a chat number")?,
            _ => report.note(
                "crew",
                format!(
                    "{} of {} have no chat_user in crew.toml: until it is given or they join by invite, the chat does not know them",
                    unbound,
                    fleet.crew.len()
                ),
            )?,
        }
    }
    let local = clock::now().with_timezone(&fleet.time_zone);
    let said = format!(
        "{}: it is {} there",
        fleet.time_zone,
        local.format("%a %-d %b %Y, %H:%M")
    );
    match fleet.time_zone {
        Tz::UTC => report.note(
            "time zone",
            format!("{said}. Set time_zone in fleet.toml unless crews keep UTC"),
        ),
        _ => report.good(
            "time zone",
            format!("{said}. If a clock on the wall says otherwise, mend time_zone in fleet.toml"),
        ),
    }
}
