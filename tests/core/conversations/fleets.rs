//! The fleets that scripts are played with.

use hosebib::fleet::{self, Fleet, FleetFiles};
use hosebib::heard::Language;

/// Loads the fleet that a script names.
pub(super) fn load(name: &str) -> Fleet {
    if name == "demo" {
        return fleet::demo::fleet();
    }
    if name == "demo-es" {
        let mut fleet = fleet::demo::fleet();
        let crew = fleet.crew.values_mut();
        crew.for_each(|member| member.language = Some(Language::Es));
        return fleet;
    }
    if name == "many" {
        return many();
    }
    if name == "demo-phones" {
        let mut fleet = fleet::demo::fleet();
        for (member, number) in fleet.crew.values_mut().zip(101..) {
            member.chat_user = Some(number);
        }
        return fleet;
    }
    crate::desks::fleet_of(name)
}

/// Makes a fleet of which a digest shows a part only.
fn many() -> Fleet {
    let names: Vec<String> = (1..=60).map(|n| n.to_string()).collect();
    let trailers: String = names
        .iter()
        .map(|name| format!("[[trailer]]\nid = \"{name}\"\n"))
        .collect();
    let crew = [
        ("ana", "driver", "en"),
        ("dot", "dispatcher", "en"),
        ("alma", "dispatcher", "es"),
    ];
    let crew = crew.map(|(id, role, language)| {
        format!("[[crew]]\nid = \"{id}\"\nname = \"{id}\"\nrole = \"{role}\"\nlanguage = \"{language}\"\n")
    });
    let files = FleetFiles {
        fleet: format!("company = \"Reed Lane\"\ntime_zone = \"America/Denver\"\n{trailers}"),
        jobs: format!(
            "[[site]]\nid = \"green\"\n[[job]]\nsite = \"green\"\ntrailers = {names:?}\nfrom = 2027-06-19T12:00:00\nto = 2027-06-19T23:00:00\nguests = 300\n"
        ),
        crew: crew.concat(),
        ..FleetFiles::default()
    };
    fleet::read(&files).unwrap_or_else(|problems| panic!("{}", problems[0]))
}
