//! `hosebib review`.

use super::{Folders, run};

#[test]
fn what_was_not_understood_is_grouped_and_the_newest_comes_first() {
    let folders = Folders::new();
    folders.load();
    folders.says("dana", "2027-01-16T12:00:00Z", "12 zoggle 40\n");
    folders.says("mo", "2027-01-16T13:00:00Z", "14 pressure 50 or 60 psi\n");
    folders.says("dana", "2027-01-16T14:00:00Z", "14 zoggle 35\n");
    let said = run(["review", "--data", folders.data()]).good();
    assert!(
        said.starts_with("3 messages not understood in full"),
        "{said}"
    );
    let newest = said.find("14 zoggle 35").expect(&said);
    let oldest = said.find("12 zoggle 40").expect(&said);
    assert!(newest < oldest, "{said}");
    assert!(said.contains("zoggle: 2"), "{said}");
    // by the clocks of the fleet, four hours behind UTC in January
    assert!(
        said.contains("2027-01-16 10:00 dana: 14 zoggle 35"),
        "{said}"
    );
    let one = run(["review", "--each", "1", "--data", folders.data()]).good();
    assert!(
        one.contains("and 1 older") && !one.contains("zoggle 40"),
        "{one}"
    );
}

#[test]
fn a_log_that_was_understood_says_so() {
    let folders = Folders::new();
    folders.load();
    folders.says(
        "dana",
        "2027-01-16T12:00:00Z",
        "12 pressure 55\nstatus 12\nthanks\n",
    );
    let said = run(["review", "--data", folders.data()]).good();
    assert_eq!(said, "every message was understood in full\n");
}

#[test]
fn nothing_that_a_terminal_would_obey_is_printed() {
    let folders = Folders::new();
    folders.load();
    folders.says("dana", "2027-01-16T12:00:00Z", "12 \u{1b}[2Jzoggle 40\n");
    let said = run(["review", "--data", folders.data()]).good();
    assert!(
        said.contains("zoggle") && !said.contains('\u{1b}'),
        "{said:?}"
    );
}
