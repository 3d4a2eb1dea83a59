//! What nobody means to send: not text, endless, empty, full of control characters.

use serde_json::Value;

use super::{Folders, Ran, run, run_with};

/// 10 MB on one line, then a line that is fine.
fn endless(fine: &str) -> Vec<u8> {
    let mut bytes = b"unit 12 pressure 95 ".repeat(500_000);
    bytes.push(b'\n');
    bytes.extend(fine.as_bytes());
    bytes
}

/// Bytes that are no text, then control characters, then empty lines, then a line that is fine.
fn junk(fine: &str) -> Vec<u8> {
    let mut bytes = b"\xff\xfe12 pressure 95\n\x00\x01\x1b[2J\x07\n\n\r\n".to_vec();
    bytes.extend(fine.as_bytes());
    bytes
}

fn json(ran: &Ran) -> Vec<Value> {
    ran.out
        .lines()
        .map(|line| serde_json::from_str(line).expect(line))
        .collect()
}

#[test]
fn read_says_what_it_cannot_read_and_reads_on() {
    let ran = run_with(["read"], &endless("12 pressure 55\n"));
    let lines = json(&ran);
    assert_eq!((ran.code, lines.len()), (Some(1), 2));
    assert!(
        lines[0]["error"]
            .as_str()
            .unwrap()
            .contains("longer than 64 kB")
    );
    assert_eq!(lines[1]["entries"][0]["readings"]["pressure_psi"], 55);

    let ran = run_with(["read"], &junk("12 pressure 55\n"));
    let lines = json(&ran);
    assert_eq!((ran.code, lines.len()), (Some(1), 5));
    assert!(lines[0]["error"].as_str().unwrap().contains("not UTF-8"));
    assert_eq!(lines[1]["entries"], Value::Array(vec![]));
    assert_eq!(lines[4]["entries"][0]["readings"]["pressure_psi"], 55);

    let long = serde_json::json!({"text": "12 pressure 95 ".repeat(5_000)});
    let ran = run_with(["read", "--json"], format!("{long}\n").as_bytes());
    assert!(
        json(&ran)[0]["error"]
            .as_str()
            .unwrap()
            .contains("longer than 64 kB")
    );

    let ran = run_with(["read"], b"");
    assert_eq!(
        (ran.code, ran.out.as_str(), ran.err.as_str()),
        (Some(0), "", "")
    );
}

#[test]
fn read_takes_a_message_of_64_kb() {
    let text = "12 pressure 55. ".repeat(4_096);
    assert_eq!(text.len(), 65_536);
    let ran = run_with(["read"], text.as_bytes());
    assert_eq!(ran.code, Some(0));
    assert_eq!(json(&ran)[0]["entries"][0]["unit"], "12");
}

#[test]
fn sum_says_what_it_cannot_read_and_goes_on() {
    let fine = "{\"quantity\": \"liquid_lb\", \"inputs\": {\"gal\": 100}}\n";
    for (input, bad) in [(endless(fine), 1), (junk(fine), 2)] {
        let ran = run_with(["sum"], &input);
        let lines = json(&ran);
        assert_eq!((ran.code, lines.len()), (Some(1), bad + 1), "{lines:?}");
        assert!(lines[..bad].iter().all(|line| line["error"].is_string()));
        // 8.34 lb a gallon (handbook value of water at 60 °F)
        assert!(
            (lines[bad]["value"].as_f64().unwrap() - 834.0).abs() < 3.0,
            "{lines:?}"
        );
    }
    let ran = run_with(["sum"], b"");
    assert_eq!((ran.code, ran.out.as_str()), (Some(0), ""));
}

#[test]
fn replay_says_what_it_cannot_read_and_goes_on() {
    let folders = Folders::new();
    let fine =
        "{\"at\": \"2027-01-16T12:00:00Z\", \"from\": \"dana\", \"text\": \"12 pressure 55\"}\n";
    let args = ["replay", "--json", "--fleet", folders.fleet()];
    for (input, bad) in [(endless(fine), 1), (junk(fine), 2)] {
        let ran = run_with(args, &input);
        let lines = json(&ran);
        assert_eq!((ran.code, lines.len()), (Some(0), bad + 1), "{lines:?}");
        assert!(lines[..bad].iter().all(|line| line["error"].is_string()));
        assert_eq!(lines[bad]["from"], "dana");
    }
    let ran = run_with(args, b"");
    assert_eq!((ran.code, ran.out.as_str()), (Some(0), ""));
}

#[test]
fn a_piped_chat_says_what_it_cannot_read_and_loses_no_record() {
    let folders = Folders::new();
    folders.load();
    let at = "2027-01-16T12:00:00Z";
    let chat = |input: &[u8]| {
        run_with(
            ["chat", "--data", folders.data(), "--as", "dana", "--at", at],
            input,
        )
        .good()
    };
    let said = chat(&endless("12 pressure 55\n"));
    assert!(
        said.contains("Not read: the line is longer than 64 kB"),
        "{said}"
    );
    let said = chat(&junk("14 pressure 50\n"));
    assert!(said.contains("Not read: the line is not UTF-8"), "{said}");
    assert!(!said.contains('\u{1b}'), "{said:?}");
    chat(b"");
    let out = run(["export", "check-ins", "--jsonl", "--data", folders.data()]).good();
    let texts: Vec<Value> = out
        .lines()
        .map(|line| serde_json::from_str::<Value>(line).unwrap()["text"].clone())
        .collect();
    assert_eq!(texts, ["12 pressure 55", "14 pressure 50"]);
}

#[test]
fn a_time_without_its_offset_is_told_what_to_write() {
    let wrong = |args: &[&str]| {
        let ran = run(args);
        assert_eq!(ran.code, Some(2), "{ran:?}");
        ran.err
    };
    let said = wrong(&["chat", "--demo", "--at", "2027-01-23T17:10:00"]);
    assert!(
        said.contains("lacks its offset from UTC: write `2027-01-23T17:10:00-07:00`"),
        "{said}"
    );
    let said = wrong(&["replay", "--demo", "--until", "tomorrow"]);
    assert!(
        said.contains("`tomorrow` is not an RFC 3339 time"),
        "{said}"
    );
}
