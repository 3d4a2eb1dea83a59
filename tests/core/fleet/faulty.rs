//! Small faulty fleets, and what is said of them.

use super::{of, problems};

/// What is wrong with a lone trailer whose keys begin on line 3.
pub(crate) fn trailer(keys: &str) -> Vec<String> {
    problems(&of(&format!("[[trailer]]\nid = \"1\"\n{keys}"), "", ""))
}

pub(crate) fn site(keys: &str) -> Vec<String> {
    problems(&of("", &format!("[[site]]\nid = \"s\"\n{keys}"), ""))
}

pub(crate) fn crew(keys: &str) -> Vec<String> {
    problems(&of("", "", &format!("[[crew]]\nid = \"tam\"\n{keys}")))
}

/// What is wrong with jobs that begin on line 6 of a file with the sites `s` and `t`; there are trailers 1 and 2.
pub(crate) fn jobs(jobs: &str) -> Vec<String> {
    let trailers =
        "time_zone = \"America/New_York\"\n[[trailer]]\nid = \"1\"\n[[trailer]]\nid = \"2\"";
    let sites = "[[site]]\nid = \"s\"\n[[site]]\nid = \"t\"\n\n";
    problems(&of(trailers, &format!("{sites}{jobs}"), ""))
}

/// A job on five lines.
pub(crate) fn job(site: &str, trailers: &str, from: &str, to: &str) -> String {
    format!("[[job]]\nsite = \"{site}\"\ntrailers = [{trailers}]\nfrom = {from}\nto = {to}\n")
}

pub(crate) const DAY: (&str, &str) = ("2027-06-05T12:00:00", "2027-06-05T20:00:00");

#[track_caller]
pub(crate) fn says(found: Vec<String>, expected: &str) {
    assert_eq!(found, [expected]);
}
