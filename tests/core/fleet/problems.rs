use hosebib::fleet::{FleetFile, read};

use super::faulty::{DAY, crew, job, jobs, says, site, trailer};
use super::{of, problems, sample_files};

#[test]
fn unknown_keys_name_the_nearest() {
    says(
        trailer("waste_gall = 500"),
        "fleet.toml:3: trailer 1: expected a key of a trailer, found `waste_gall`; did you mean `waste_gal`?",
    );
    says(
        site("water = { hose = 50, source = \"house\" }"),
        "jobs.toml:3: site s, water: expected a key of a water supply, found `hose`; its keys are `source`, `static_psi`, `hose_ft`, `hose_in`, `rise_ft`",
    );
    says(
        problems(&of("[defaults]\nid = \"4\"", "", "")),
        "fleet.toml:2: defaults: expected a key of the trailers' defaults, found `id`",
    );
    says(
        problems(&of("", "", "[[site]]\nid = \"s\"")),
        "crew.toml:1: expected a key of the crew file, found `site`; it belongs in jobs.toml",
    );
}

#[test]
fn wrong_types_say_what_was_expected_and_found() {
    says(
        trailer("waste_gal = \"500\""),
        "fleet.toml:3: trailer 1, waste_gal: expected a number, 1 to 10000 gal, found `\"500\"`; leave out the quotes",
    );
    says(
        trailer("title = 5"),
        "fleet.toml:3: trailer 1, title: expected text, found `5`; put it in quotes",
    );
    says(
        trailer("cold = { package = \"yes\" }"),
        "fleet.toml:3: trailer 1, cold, package: expected true or false, found `\"yes\"`",
    );
    says(
        trailer("rooms = [ { toilets = 1.5 } ]"),
        "fleet.toml:3: trailer 1, rooms 1, toilets: expected a whole number from 0 to 99, found `1.5`",
    );
    says(
        trailer("rooms = [ { sinks = 2 } ]"),
        "fleet.toml:3: trailer 1, rooms: expected a toilet or urinal in at least one room, found none",
    );
    says(
        trailer("battery = 90"),
        "fleet.toml:3: trailer 1, battery: expected a battery, as in battery = { ... }, found `90`",
    );
    says(
        trailer("rooms = { toilets = 2 }"),
        "fleet.toml:3: trailer 1, rooms: expected a list of tables, found a table; write [[rooms]] with two brackets, or rooms = [ { ... } ]",
    );
    says(
        trailer("circuits = [ 20 ]"),
        "fleet.toml:3: trailer 1, circuits: expected a circuit, as in { ... }, found `20`",
    );
    says(
        problems(&of("[trailer]\nid = \"1\"", "", "")),
        "fleet.toml:1: trailer: expected a list of tables, found a table; write [[trailer]] with two brackets, or trailer = [ { ... } ]",
    );
}

#[test]
fn a_problem_deep_in_a_table_names_its_own_line() {
    let circuits = "circuits = [\n  { breaker_a = 20 },\n  { loads = [\n    { name = \"pump\",\n      amps = 90 },\n  ] },\n]";
    says(
        trailer(circuits),
        "fleet.toml:7: trailer 1, circuits 2, loads 1, amps: expected no more than its breaker's 20 A, found `90`",
    );
}

#[test]
fn missing_keys_are_named_where_their_table_begins() {
    says(
        problems(&of("\n[[trailer]]\ntitle = \"nameless\"", "", "")),
        "fleet.toml:2: trailer 1: expected `id`, the name that crews call it by, as in id = \"12\", found no such key",
    );
    let lines = jobs("[[job]]\n");
    assert_eq!(lines.len(), 4, "{lines:?}");
    assert!(
        lines
            .iter()
            .all(|line| line.starts_with("jobs.toml:6: job 1: expected `")),
        "{lines:?}"
    );
    says(
        problems(&of("", "", "[[crew]]\nname = \"Tam\"")),
        "crew.toml:1: crew 1: expected `id`, a short name that records keep, as in id = \"dana\", found no such key",
    );
}

#[test]
fn ids_are_short_and_given_once() {
    says(
        trailer("[[trailer]]\nid = \"b 7\""),
        "fleet.toml:4: trailer 2, id: expected an id of letters, digits and dashes, at most 40 of them, found `\"b 7\"`",
    );
    says(
        problems(&of(
            "[[trailer]]\nid = \"b7\"\n[[trailer]]\nid = \"B7\"",
            "",
            "",
        )),
        "fleet.toml:4: trailer B7: expected an id of its own, found `B7` again, already given on line 2",
    );
    says(
        site("[[site]]\nid = \"s\""),
        "jobs.toml:4: site s: expected an id of its own, found `s` again, already given on line 2",
    );
    says(
        crew("[[crew]]\nid = \"tam\""),
        "crew.toml:4: crew tam: expected an id of their own, found `tam` again, already given on line 2",
    );
    says(
        crew("chat_user = 7\n[[crew]]\nid = \"pia\"\nchat_user = 7"),
        "crew.toml:6: crew pia, chat_user: expected one person for each chat user, found `7` again, already given on line 3",
    );
    let day = job("s", "\"1\"", DAY.0, DAY.1);
    says(
        jobs(&format!("{day}{}", job("s", "\"2\"", DAY.0, DAY.1))),
        "jobs.toml:11: job s 2027-06-05 12:00: expected a site and a time of its own, found `s 2027-06-05 12:00` again, already given on line 6",
    );
}

#[test]
fn unknown_roles_and_languages() {
    says(
        crew("role = \"boss\""),
        "crew.toml:3: crew tam, role: expected one of \"driver\", \"tech\", \"dispatcher\", found `\"boss\"`",
    );
    says(
        crew("role = \"dispatch\""),
        "crew.toml:3: crew tam, role: expected one of \"driver\", \"tech\", \"dispatcher\", found `\"dispatch\"`; did you mean `dispatcher`?",
    );
    says(
        crew("language = \"pt\""),
        "crew.toml:3: crew tam, language: expected one of \"en\", \"es\", found `\"pt\"`",
    );
    says(
        crew("chat_user = \"@tam\""),
        "crew.toml:3: crew tam, chat_user: expected a whole number from 1 to 9223372036854775807, found `\"@tam\"`",
    );
}

#[test]
fn jobs_name_what_is_there() {
    says(
        jobs(&job("ss", "\"1\"", DAY.0, DAY.1)),
        "jobs.toml:7: job at ss, site: expected the id of a site in this file, found `\"ss\"`",
    );
    let misspelt =
        "[[site]]\nid = \"mill-yard\"\n".to_string() + &job("mil-yard", "\"1\"", DAY.0, DAY.1);
    says(
        problems(&of("[[trailer]]\nid = \"1\"", &misspelt, "")),
        "jobs.toml:4: job at mil-yard, site: expected the id of a site in this file, found `\"mil-yard\"`; did you mean `mill-yard`?",
    );
    says(
        jobs(&job("s", "\"1\", \"B12\"", DAY.0, DAY.1)),
        "jobs.toml:8: job at s, trailers: expected the id of a trailer in fleet.toml, found `B12`",
    );
    says(
        jobs(&job("s", "1", DAY.0, DAY.1)),
        "jobs.toml:8: job at s, trailers: expected text, found `1`; put it in quotes",
    );
    says(
        jobs(&job("s", "", DAY.0, DAY.1)),
        "jobs.toml:8: job at s, trailers: expected at least one trailer, found the list `[]`",
    );
    says(
        jobs(&job("s", "\"1\", \"1\"", DAY.0, DAY.1)),
        "jobs.toml:8: job at s, trailers: expected each trailer once, found `1` again",
    );
}

#[test]
fn a_job_may_name_trailers_that_have_problems_of_their_own() {
    let files = of(
        "[[trailer]]\nid = \"1\"\nwaste_gal = -1",
        &format!(
            "[[site]]\nid = \"s\"\naltitude_ft = true\n{}",
            job("s", "\"1\"", DAY.0, DAY.1)
        ),
        "",
    );
    let lines = problems(&files);
    assert_eq!(lines.len(), 2, "{lines:?}");
}

#[test]
fn what_is_no_toml_is_said_and_the_other_files_are_still_checked() {
    let files = of(
        "[[trailer]\nid = \"1\"",
        "[[job]]\nsite = \"s\"\ntrailers = [\"1\"]\nfrom = 2027-06-05T12:00:00\nto = 2027-06-05T20:00:00",
        "[[crew]]\nid = 5",
    );
    assert_eq!(
        problems(&files),
        [
            "fleet.toml:1: expected TOML, found `[[trailer]`; unclosed array table, expected `]`",
            "jobs.toml:2: job at s, site: expected the id of a site in this file, found `\"s\"`",
            "crew.toml:2: crew 1, id: expected text, found `5`; put it in quotes",
        ]
    );
    let twice = problems(&of("company = \"a\"\ncompany = \"b\"", "", ""));
    assert!(
        twice.len() == 1
            && twice[0].starts_with("fleet.toml:2: ")
            && twice[0].contains("duplicate key"),
        "{twice:?}"
    );
    let two = problems(&of("company = \nunits = \nclock = 24", "", ""));
    assert!(
        two.iter().any(|line| line.starts_with("fleet.toml:1: "))
            && two.iter().any(|line| line.starts_with("fleet.toml:2: ")),
        "{two:?}"
    );
}

#[test]
fn all_problems_come_at_once_in_order_and_nothing_is_loaded() {
    let mut files = sample_files();
    files.fleet = files
        .fleet
        .replacen("waste_gal = 500", "waste_gal = -500", 1)
        .replacen("kind = \"lamps\"", "kind = \"lamp\"", 1);
    files.jobs = files
        .jobs
        .replacen("source = \"house\"", "source = \"home\"", 1)
        .replacen("guests = 220", "guests = \"220\"", 1);
    files.crew = files
        .crew
        .replacen("role = \"driver\"", "roll = \"driver\"", 1);
    let problems = read(&files).expect_err("five things are wrong");
    let places: Vec<(FleetFile, usize)> = problems
        .iter()
        .map(|problem| (problem.file, problem.line))
        .collect();
    assert_eq!(places.len(), 5, "{problems:?}");
    assert!(places.is_sorted());
    for (file, line) in places {
        let source = files.text(file).lines().nth(line - 1).unwrap_or_default();
        let mended = ["-500", "\"lamp\"", "\"home\"", "\"220\"", "roll"]
            .iter()
            .any(|wrong| source.contains(wrong));
        assert!(mended, "{file}:{line} is `{source}`");
    }
}
