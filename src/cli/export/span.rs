//! The time that an export covers.

use std::str::FromStr;

use chrono::{DateTime, Days, NaiveDate, NaiveTime, TimeZone, Utc};
use chrono_tz::Tz;

use crate::cli::CliError;

/// A day of the fleet's zone, or an instant.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::cli) enum When {
    Day(NaiveDate),
    Instant(DateTime<Utc>),
}

impl FromStr for When {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        if let Ok(day) = NaiveDate::parse_from_str(text, "%Y-%m-%d") {
            return Ok(When::Day(day));
        }
        DateTime::parse_from_rfc3339(text)
            .map(|at| When::Instant(at.to_utc()))
            .map_err(|_| {
                "expected a day such as 2027-01-16, or RFC 3339 such as 2027-01-16T08:00:00-04:00"
                    .into()
            })
    }
}

/// From an instant on, up to another and without it.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Span {
    from: Option<DateTime<Utc>>,
    before: Option<DateTime<Utc>>,
}

impl Span {
    /// Makes the span of `--from` and `--to`; a day counts as a whole, in `zone`.
    ///
    /// # Errors
    ///
    /// That the first lies after the second.
    pub(super) fn new(from: Option<&When>, to: Option<&When>, zone: Tz) -> Result<Self, CliError> {
        let starts = |day: NaiveDate| start_of(day, zone);
        let from = from.map(|when| match when {
            When::Day(day) => starts(*day),
            When::Instant(at) => *at,
        });
        let before = to.map(|when| match when {
            When::Day(day) => starts(day.checked_add_days(Days::new(1)).unwrap_or(*day)),
            // an instant is meant with its whole second, which is how times are printed
            When::Instant(at) => *at + chrono::TimeDelta::seconds(1),
        });
        match (from, before) {
            (Some(from), Some(before)) if from >= before => Err(CliError::Usage(
                "`--from` lies after `--to`: give the earlier one as `--from`".into(),
            )),
            _ => Ok(Span { from, before }),
        }
    }

    pub(super) fn holds(&self, at: DateTime<Utc>) -> bool {
        self.from.is_none_or(|from| at >= from) && self.before.is_none_or(|before| at < before)
    }
}

/// Returns when a day begins; where midnight does not exist, the first hour that does.
fn start_of(day: NaiveDate, zone: Tz) -> DateTime<Utc> {
    (0..24)
        .filter_map(|hour| NaiveTime::from_hms_opt(hour, 0, 0))
        .find_map(|time| zone.from_local_datetime(&day.and_time(time)).earliest())
        .map_or_else(|| day.and_time(NaiveTime::MIN).and_utc(), |at| at.to_utc())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn span(from: &str, to: &str) -> Span {
        let zone = chrono_tz::America::Halifax;
        Span::new(from.parse().ok().as_ref(), to.parse().ok().as_ref(), zone).unwrap()
    }

    #[test]
    fn a_day_is_whole_and_local() {
        let span = span("2027-01-16", "2027-01-16");
        // Halifax keeps UTC-4 in winter (IANA time zone database)
        for (at, holds) in [
            ("2027-01-16T03:59:59Z", false),
            ("2027-01-16T04:00:00Z", true),
            ("2027-01-17T03:59:59Z", true),
            ("2027-01-17T04:00:00Z", false),
        ] {
            assert_eq!(span.holds(at.parse().unwrap()), holds, "{at}");
        }
    }

    #[test]
    fn an_instant_holds_itself() {
        let at = "2027-01-16T08:00:00Z";
        assert!(span(at, at).holds(at.parse().unwrap()));
    }

    #[test]
    fn times_in_the_wrong_order_are_refused() {
        let when = |text: &str| text.parse::<When>().unwrap();
        let (late, early) = (when("2027-01-17"), when("2027-01-16"));
        assert!(Span::new(Some(&late), Some(&early), Tz::UTC).is_err());
        assert!("last week".parse::<When>().is_err());
    }
}
