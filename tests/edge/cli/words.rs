//! Words of a company's own, in its files and taught in chat, on disk.

use super::{Folders, run, run_with};

#[test]
fn every_fault_of_words_toml_is_told_at_once_with_its_line() {
    let folders = Folders::new();
    folders.write(
        "words.toml",
        "[[word]]\nsay = [\"glugger\"]\nmeans = \"wastte\"\n\n[[word]]\nsay = [\"pressure\", \"house\", \"dana\", \"twelve\"]\nmeans = \"waste\"\n\n[[word]]\nsay = [\"gulper\"]\nmean = \"fresh\"\n\n[[word]]\nsay = [\"gulper\"]\nmeans = \"fresh\"\n",
    );
    let checked = run(["fleet", "check", folders.fleet()]);
    assert_eq!(checked.code, Some(1), "{checked:?}");
    for line in [
        "words.toml:3: word 1, means: expected a keyword that hosebib knows, found `wastte`; did you mean `waste`",
        "words.toml:6: word 2, say: expected a word that has no meaning yet, found `pressure`; it already means `pressure`",
        "words.toml:6: word 2, say: expected a word that says nothing in other messages, found `house`",
        "words.toml:6: word 2, say: expected a word that is no name, found `dana`; it is the name of a person",
        "words.toml:6: word 2, say: expected a word that is no number, found `twelve`",
        "words.toml:9: word 3: expected `means`",
        "words.toml:11: word 3: expected a key of a word, found `mean`; did you mean `means`?",
        "words.toml:14: word 4, say: expected each word once, found `gulper` again, already given on line 10",
    ] {
        assert!(checked.out.contains(line), "{line}\n{}", checked.out);
    }
    assert_eq!(checked.out.lines().count(), 8, "{}", checked.out);
}

#[test]
fn words_of_the_files_and_words_taught_outlive_a_restart() {
    let folders = Folders::new();
    folders.write(
        "words.toml",
        "[[word]]\nsay = [\"gulper\"]\nmeans = \"fresh\"\n",
    );
    let checked = run(["fleet", "check", folders.fleet()]).good();
    assert!(checked.contains("1 word of its own"), "{checked}");
    folders.load();
    let taught = folders.says("mo", "2027-01-16T12:00:00Z", "teach glugger = waste\n");
    assert!(
        taught.contains("From now on I read \"glugger\""),
        "{taught}"
    );
    let logged = folders.says(
        "dana",
        "2027-01-16T12:05:00Z",
        "12 glugger 1/2, gulper 3/4\n",
    );
    assert!(
        logged.contains("waste 1/2") && logged.contains("fresh 3/4"),
        "{logged}"
    );
    let reviewed = run(["review", "--data", folders.data()]).good();
    assert_eq!(reviewed, "every message was understood in full\n");
    // without words.toml the words of the files are gone, and what was logged stays
    std::fs::remove_file(folders.fleet.path().join("words.toml")).unwrap();
    folders.load();
    let asked = folders.says("dana", "2027-01-16T12:10:00Z", "12 gulper 1/4\n");
    assert!(asked.contains("Not logged"), "{asked}");
    let forgotten = folders.says("mo", "2027-01-16T12:15:00Z", "forget word glugger\n");
    assert!(forgotten.contains("no longer means"), "{forgotten}");
    let asked = folders.says("dana", "2027-01-16T12:20:00Z", "12 glugger 1/4\n");
    assert!(asked.contains("Not logged"), "{asked}");
}

#[test]
fn one_message_can_be_read_with_a_fleets_words() {
    let folders = Folders::new();
    folders.write(
        "words.toml",
        "[[word]]\nsay = [\"gulper\"]\nmeans = \"fresh\"\n",
    );
    let read = run_with(["read", "--fleet", folders.fleet()], b"12 gulper 1/2\n").good();
    assert!(read.contains("\"fresh_pct\":50"), "{read}");
}
