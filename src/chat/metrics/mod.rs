//! What the service counts of itself, for Prometheus: how much, how long, how often it failed. No names, no texts, no
//! numbers of chats.

mod listen;

use std::time::Duration;

use prometheus::core::Collector;
use prometheus::{
    Encoder, Gauge, Histogram, HistogramOpts, IntCounter, IntCounterVec, IntGauge, Opts, Registry,
    TextEncoder,
};

pub use listen::{Listener, NotLoopback};

use crate::store::Draft;

/// The commit times that are told apart, s: an SSD's first, a failing disk's last.
const COMMIT_S: [f64; 12] = [
    0.0001, 0.0002, 0.0005, 0.001, 0.002, 0.005, 0.01, 0.05, 0.1, 0.5, 1.0, 5.0,
];

/// The counts of one service. Copies of it all count into the same.
#[derive(Clone)]
pub struct Metrics {
    registry: Registry,
    turns: IntCounter,
    messages: IntCounter,
    set_aside: IntCounter,
    refused: IntCounterVec,
    commit: Histogram,
    commits_failed: IntCounter,
    requests: IntCounterVec,
    outbox: IntGauge,
    outbox_age: Gauge,
    unreachable: IntGauge,
    due_lag: Gauge,
    open_tasks: IntGauge,
    logging: IntGauge,
}

/// How things stand at one instant, as the clerk knows them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Standing {
    /// How many messages wait to be sent.
    pub outbox: usize,
    /// How long the oldest of them has waited.
    pub outbox_age: Duration,
    /// How many people and groups cannot be written to.
    pub unreachable: usize,
    /// How long what the clock brings has been due.
    pub due_lag: Duration,
    /// How many tasks are open.
    pub open_tasks: usize,
    /// Whether what comes in can be written down.
    pub logging: bool,
}

impl Default for Metrics {
    fn default() -> Self {
        let registry = Registry::new();
        let counter = |name: &str, help: &str| {
            enlisted(
                &registry,
                IntCounter::new(name, help).expect("a plain name"),
            )
        };
        let by = |name: &str, help: &str, labels: &[&str]| {
            let counters = IntCounterVec::new(Opts::new(name, help), labels);
            enlisted(&registry, counters.expect("plain names"))
        };
        let number = |name: &str, help: &str| {
            enlisted(&registry, IntGauge::new(name, help).expect("a plain name"))
        };
        let seconds = |name: &str, help: &str| {
            enlisted(&registry, Gauge::new(name, help).expect("a plain name"))
        };
        let commit = HistogramOpts::new(
            "hosebib_commit_seconds",
            "How long it took to bring a batch to the disk.",
        );
        let commit = Histogram::with_opts(commit.buckets(COMMIT_S.to_vec()));
        let metrics = Metrics {
            turns: counter(
                "hosebib_turns_total",
                "Turns written to the journal and synced.",
            ),
            messages: counter("hosebib_messages_total", "Messages of the crew among them."),
            set_aside: counter(
                "hosebib_set_aside_total",
                "Messages that could not be worked through and were set aside.",
            ),
            refused: by(
                "hosebib_refused_total",
                "Attempts that were refused, by what was tried.",
                &["tried"],
            ),
            commit: enlisted(&registry, commit.expect("a plain name and rising buckets")),
            commits_failed: counter(
                "hosebib_commits_failed_total",
                "Batches that could not be written.",
            ),
            requests: by(
                "hosebib_network_requests_total",
                "Requests to the chat network, by method and what came of them.",
                &["method", "outcome"],
            ),
            outbox: number("hosebib_outbox_messages", "Messages that wait to be sent."),
            outbox_age: seconds(
                "hosebib_outbox_oldest_seconds",
                "How long the oldest message has waited to be sent.",
            ),
            unreachable: number(
                "hosebib_unreachable",
                "People and groups that cannot be written to.",
            ),
            due_lag: seconds(
                "hosebib_due_lag_seconds",
                "How long what the clock brings has been due.",
            ),
            open_tasks: number("hosebib_open_tasks", "Tasks that are open."),
            logging: number(
                "hosebib_logging",
                "1 while what comes in can be written down, else 0.",
            ),
            registry: registry.clone(),
        };
        metrics.logging.set(1);
        metrics
    }
}

/// Puts a count among those that are told.
fn enlisted<C: Collector + Clone + 'static>(registry: &Registry, count: C) -> C {
    registry
        .register(Box::new(count.clone()))
        .expect("each name stands once");
    count
}

impl Metrics {
    /// Counts turns that are on disk, and how long that took.
    pub(super) fn committed(&self, drafts: &[Draft], took: Duration) {
        self.commit.observe(took.as_secs_f64());
        self.turns.inc_by(drafts.len() as u64);
        for record in drafts.iter().flat_map(|draft| &draft.records) {
            match (record["record"].as_str(), record["note"].as_str()) {
                (Some("message"), _) => self.messages.inc(),
                (Some("refused"), _) => {
                    let tried = record["tried"].as_str().unwrap_or("message");
                    self.refused.with_label_values(&[tried]).inc();
                }
                (_, Some("set-aside")) => self.set_aside.inc(),
                _ => {}
            }
        }
    }

    /// Counts a batch that could not be written.
    pub(super) fn not_committed(&self) {
        self.commits_failed.inc();
    }

    /// Counts a request to the chat network.
    pub(super) fn asked(&self, method: &str, outcome: &str) {
        self.requests.with_label_values(&[method, outcome]).inc();
    }

    /// Prints everything in the text format (Prometheus, "Exposition formats", 0.0.4).
    pub fn print(&self, standing: Option<Standing>) -> String {
        if let Some(standing) = standing {
            let count = |count: usize| i64::try_from(count).unwrap_or(i64::MAX);
            self.outbox.set(count(standing.outbox));
            self.outbox_age.set(standing.outbox_age.as_secs_f64());
            self.unreachable.set(count(standing.unreachable));
            self.due_lag.set(standing.due_lag.as_secs_f64());
            self.open_tasks.set(count(standing.open_tasks));
            self.logging.set(standing.logging.into());
        }
        let mut bytes = Vec::new();
        TextEncoder::new()
            .encode(&self.registry.gather(), &mut bytes)
            .expect("counts can be printed");
        String::from_utf8(bytes).expect("the format is text")
    }
}
