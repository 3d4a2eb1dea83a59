//! `hosebib serve --metrics`: what is counted, in Prometheus' text format, on the loopback alone.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::process::{Child, Stdio};

use super::{Folders, program, run};
use crate::telegram::botapi::{BotApi, Fault, TOKEN};

struct Served {
    child: Child,
    address: String,
}

impl Served {
    /// Starts a bot that tells its counts on any free port.
    fn start(api: &BotApi, folders: &Folders) -> Self {
        let mut child = program()
            .args(["serve", "--metrics", "127.0.0.1:0", "--api-url", &api.url()])
            .args(["--data", folders.data()])
            .env("HOSEBIB_TOKEN", TOKEN)
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        let mut lines = BufReader::new(child.stderr.take().unwrap()).lines();
        let address = lines
            .find_map(|line| {
                let line = line.unwrap();
                let (_, rest) = line.split_once("metrics are at http://")?;
                Some(rest.trim_end_matches("/metrics").to_owned())
            })
            .expect("it says where");
        std::thread::spawn(move || lines.for_each(drop));
        Served { child, address }
    }

    /// Asks with one request, as a scraper does; returns head and body.
    fn asks(&self, request: &str) -> (String, String) {
        let mut stream = TcpStream::connect(&self.address).unwrap();
        stream.write_all(request.as_bytes()).unwrap();
        let mut answer = String::new();
        stream.read_to_string(&mut answer).unwrap();
        let (head, body) = answer.split_once("\r\n\r\n").unwrap();
        (head.to_owned(), body.to_owned())
    }

    fn scraped(&self) -> String {
        let (head, body) = self.asks("GET /metrics HTTP/1.1\r\nHost: x\r\n\r\n");
        assert!(head.starts_with("HTTP/1.1 200"), "{head}");
        // Prometheus, "Exposition formats": the text format's type
        assert!(head.contains("text/plain; version=0.0.4"), "{head}");
        body
    }
}

impl Drop for Served {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

#[track_caller]
fn value(body: &str, sample: &str) -> f64 {
    let line = body.lines().find(|line| {
        let rest = line.strip_prefix(sample);
        rest.is_some_and(|rest| rest.starts_with(' '))
    });
    let line = line.unwrap_or_else(|| panic!("no {sample} in\n{body}"));
    line.rsplit_once(' ').unwrap().1.parse().unwrap()
}

/// Holds every line to the grammar of the text format: comments of help and type, then samples of that name.
fn well_formed(body: &str) {
    let mut name = String::new();
    for line in body.lines() {
        if let Some(rest) = line.strip_prefix("# ") {
            let mut words = rest.splitn(3, ' ');
            let (what, of, rest) = (
                words.next().unwrap(),
                words.next().unwrap(),
                words.next().unwrap(),
            );
            match what {
                "HELP" => name = of.to_owned(),
                "TYPE" => assert!(
                    ["counter", "gauge", "histogram"].contains(&rest) && of == name,
                    "{line}"
                ),
                _ => panic!("{line}"),
            }
            continue;
        }
        assert!(
            line.starts_with(&name) && name.starts_with("hosebib_"),
            "{line}"
        );
        let (sample, number) = line.rsplit_once(' ').unwrap();
        assert!(number.parse::<f64>().is_ok(), "{line}");
        let labels = sample.split_once('{').map(|(_, labels)| labels);
        assert!(
            labels.is_none_or(|labels| labels.ends_with("\"}")),
            "{line}"
        );
    }
    assert!(body.ends_with('\n'));
}

#[test]
fn known_turns_give_known_counts_and_no_names_or_texts() {
    let (api, folders) = (BotApi::start(), Folders::new());
    folders.load();
    let served = Served::start(&api, &folders);
    api.faults("sendMessage", [Fault::Status(502, "Bad Gateway")]);
    api.says(77, "12 waste 1/2 by the old willow");
    api.replies(77, 1);
    api.says(77, "12 pressure 50");
    api.says(99, "let me in");
    api.says(99, "/start 0123456789abcdef0123456789abcdef");
    api.replies(77, 2);
    api.replies(99, 1);
    // the clerk hears a moment later that the network took the last one
    let mut body = served.scraped();
    while value(&body, "hosebib_outbox_messages") > 0.0 {
        body = served.scraped();
    }
    well_formed(&body);
    assert_eq!(value(&body, "hosebib_messages_total"), 2.0);
    assert_eq!(
        value(&body, "hosebib_refused_total{tried=\"message\"}"),
        1.0
    );
    assert_eq!(
        value(&body, "hosebib_refused_total{tried=\"forged-invite\"}"),
        1.0
    );
    assert_eq!(value(&body, "hosebib_set_aside_total"), 0.0);
    assert!(value(&body, "hosebib_turns_total") >= 4.0);
    let batches = value(&body, "hosebib_commit_seconds_count");
    assert!(
        (1.0..=value(&body, "hosebib_turns_total")).contains(&batches),
        "{body}"
    );
    let sends = |outcome: &str| {
        format!("hosebib_network_requests_total{{method=\"SendMessage\",outcome=\"{outcome}\"}}")
    };
    assert_eq!(value(&body, &sends("unwell")), 1.0);
    assert!(value(&body, &sends("ok")) >= 3.0);
    assert_eq!(value(&body, "hosebib_logging"), 1.0);
    // 77 as a label: among the digits of a duration it may stand
    for word in ["willow", "dana", "Dana", "\"77\"", TOKEN] {
        assert!(!body.contains(word), "{word} in\n{body}");
    }
}

#[test]
fn what_waits_to_be_sent_is_counted_with_its_age() {
    let (api, folders) = (BotApi::start(), Folders::new());
    folders.load();
    let served = Served::start(&api, &folders);
    api.faults("sendMessage", [Fault::Flood(30)]);
    api.says(77, "12 waste 1/2");
    api.wait("a send that is told to wait", |state| {
        state
            .asked
            .iter()
            .any(|(method, _)| method == "sendmessage")
    });
    let body = served.scraped();
    assert_eq!(value(&body, "hosebib_outbox_messages"), 1.0);
    assert!(value(&body, "hosebib_outbox_oldest_seconds") < 30.0);
}

#[test]
fn other_requests_are_answered_in_order_and_other_addresses_refused() {
    let (api, folders) = (BotApi::start(), Folders::new());
    folders.load();
    let served = Served::start(&api, &folders);
    assert!(
        served
            .asks("GET / HTTP/1.1\r\n\r\n")
            .0
            .starts_with("HTTP/1.1 404")
    );
    assert!(
        served
            .asks("POST /metrics HTTP/1.1\r\n\r\n")
            .0
            .starts_with("HTTP/1.1 405")
    );
    assert!(served.asks("\r\n\r\n").0.starts_with("HTTP/1.1 405"));
    let (head, body) = served.asks("HEAD /metrics HTTP/1.1\r\n\r\n");
    assert!(head.starts_with("HTTP/1.1 200") && body.is_empty());
    well_formed(&served.scraped());
    for address in ["0.0.0.0:9464", "192.0.2.1:9464", "[::]:9464"] {
        let ran = run(["serve", "--data", folders.data(), "--metrics", address]);
        assert_eq!(ran.code, Some(2), "{ran:?}");
        assert!(ran.err.contains("give one of the loopback"), "{ran:?}");
    }
}
