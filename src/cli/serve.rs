//! `hosebib serve`.

use std::io::{self, Write};
use std::net::SocketAddr;
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::time::Duration;

use tokio::signal::unix::{SignalKind, signal};
use tokio::sync::{mpsc, watch};
use tracing::{error, info, warn};
use tracing_subscriber::EnvFilter;
use tracing_subscriber::fmt::MakeWriter;

use super::CliError;
use super::bot::{self, TOKEN};
use super::clock::now;
use super::data::Random;
use super::load;
use crate::chat::clerk::{Clerk, SNAPSHOT_EVERY, Setup, Window};
use crate::chat::metrics::{Listener, Metrics};
use crate::chat::socket::Socket;
use crate::chat::telegram::{self, Api, Limits, Refusal, Token};
use crate::desk::Desk;
use crate::store::Files;

/// How long everything may take to stop.
const STOPS_WITHIN: Duration = Duration::from_secs(7);

/// How often the clerk is asked whether old texts are to go.
const RETENTION_ASKED: Duration = Duration::from_secs(300);

/// Arguments of `hosebib serve`.
#[derive(Debug, clap::Args)]
pub(super) struct Args {
    /// The data directory: an empty one becomes a new store
    #[arg(long, value_name = "DIR")]
    data: PathBuf,
    /// The folder with fleet.toml, jobs.toml and crew.toml: loaded at start where it differs from the last load, and
    /// again on SIGHUP
    #[arg(long, value_name = "DIR")]
    fleet: Option<PathBuf>,
    #[command(flatten)]
    bot: bot::Bot,
    /// Tell Prometheus what is counted, on this port of the loopback: 127.0.0.1:9464
    #[arg(long, value_name = "ADDRESS", value_parser = address)]
    metrics: Option<SocketAddr>,
}

pub(super) fn run(args: &Args) -> Result<ExitCode, CliError> {
    let told_at = args.metrics.map(Listener::check).transpose();
    let told_at = told_at.map_err(|error| CliError::Usage(error.to_string()))?;
    let token = args.bot.token()?;
    let metrics = Metrics::default();
    let api = args.bot.api(token.clone()).map_err(CliError::Usage)?;
    let api = api.counted(metrics.clone());
    log(token);
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()?;
    let (outbox, parcels) = mpsc::unbounded_channel();
    let setup = Setup {
        salt: Box::new(Random),
        clock: Box::new(now),
        // a parcel for a sender that has ended waits in the clerk's outbox
        deliver: Box::new(move |parcel| drop(outbox.send(parcel))),
        comes_again: true,
        disk: Box::new(Files),
        snapshot_every: SNAPSHOT_EVERY,
        metrics: metrics.clone(),
    };
    let (clerk, notes) = Clerk::open::<Desk>(&args.data, setup)
        .map_err(|error| CliError::Failed(error.to_string()))?;
    notes.iter().for_each(|note| warn!("{note}"));
    let window = clerk.window();
    let served = runtime.block_on(async {
        if let Some(dir) = &args.fleet {
            load_at_start(dir, &window).await?;
        }
        retain(&window).await;
        let socket = Socket::listen(&args.data).map_err(|error| {
            CliError::Failed(format!(
                "no control socket in `{}`: {error}",
                args.data.display()
            ))
        })?;
        let socket = tokio::spawn(socket.serve(window.clone()));
        if let Some(address) = told_at {
            tell_counts(address, metrics, window.clone()).await?;
        }
        let retaining = tokio::spawn(retain_daily(window.clone()));
        let outcome = serve(args, api, &window, parcels).await;
        retaining.abort();
        socket.abort();
        // its file goes with it
        let _ = socket.await;
        outcome
    });
    runtime.shutdown_timeout(Duration::from_millis(200));
    let stopped = clerk.stop();
    served?;
    stopped.map_err(|error| CliError::Failed(error.to_string()))?;
    info!("stopped");
    Ok(ExitCode::SUCCESS)
}

/// Begins to tell the counts on a port, until the process ends.
async fn tell_counts(
    address: SocketAddr,
    metrics: Metrics,
    window: Window,
) -> Result<(), CliError> {
    let failed = |error: std::io::Error| {
        CliError::Failed(format!(
            "no metrics on `{address}`: {error}: give another port with `--metrics`"
        ))
    };
    let listener = Listener::bind(address).await.map_err(failed)?;
    let there = listener.address().map_err(failed)?;
    info!("metrics are at http://{there}/metrics");
    tokio::spawn(listener.serve(metrics, window));
    Ok(())
}

async fn serve(
    args: &Args,
    api: Api,
    window: &Window,
    parcels: mpsc::UnboundedReceiver<crate::chat::clerk::Parcel>,
) -> Result<(), CliError> {
    let (stop, mut stopped) = watch::channel(false);
    let mut terminate = signal(SignalKind::terminate())?;
    let mut interrupt = signal(SignalKind::interrupt())?;
    let mut hang_up = signal(SignalKind::hangup())?;
    let work = async {
        match telegram::who_am_i(&api, &mut stopped).await {
            Ok(Some(me)) => {
                telegram::serve(
                    api,
                    me,
                    window.clone(),
                    parcels,
                    Limits::default(),
                    now,
                    stopped,
                )
                .await
            }
            Ok(None) => {}
            Err(refusal) => return Err(refused(&refusal)),
        }
        Ok(())
    };
    tokio::pin!(work);
    loop {
        tokio::select! {
            outcome = &mut work => {
                outcome?;
                return Err(CliError::Failed("the clerk has ended: see the log above, then start again".into()));
            }
            _ = terminate.recv() => break,
            _ = interrupt.recv() => break,
            _ = hang_up.recv() => match &args.fleet {
                Some(dir) => load_again(dir, window).await,
                None => warn!("a hang-up asks for the fleet to be loaded again, but no `--fleet` was given"),
            }
        }
    }
    info!("stopping");
    // nobody listens any more when the work has ended by itself in this instant
    let _ = stop.send(true);
    if tokio::time::timeout(STOPS_WITHIN, work).await.is_err() {
        warn!("the network did not let go in time; what it has not confirmed comes again");
    }
    Ok(())
}

fn address(text: &str) -> Result<SocketAddr, String> {
    let expected = |_| "expected an address and a port, as in 127.0.0.1:9464".to_owned();
    text.parse().map_err(expected)
}

fn refused(refusal: &Refusal) -> CliError {
    CliError::Failed(format!(
        "{refusal}: check {TOKEN} or the token file against the bot's registration"
    ))
}

/// Loads the fleet where its files are not those in force. Problems end the start only where there is no fleet yet.
async fn load_at_start(dir: &Path, window: &Window) -> Result<(), CliError> {
    let before = in_force(window).await?;
    match load::read(dir) {
        Ok(loaded) if loaded.digest == before => {
            info!("the fleet's files are those of the last load");
            Ok(())
        }
        Ok(loaded) => put_in_force(loaded, window).await,
        Err(problems) if before.is_empty() => Err(problems),
        Err(problems) => {
            error!("{problems}\nthe fleet loaded before stays in force");
            Ok(())
        }
    }
}

/// Takes out the texts that are older than the fleet keeps.
async fn retain(window: &Window) {
    match window.retain().await {
        Ok(_) => {}
        Err(error) => warn!("old texts could not be taken out: {error}"),
    }
}

/// Asks the clerk now and then whether old texts are to go; it knows the hour for that.
async fn retain_daily(window: Window) {
    loop {
        tokio::time::sleep(RETENTION_ASKED).await;
        retain(&window).await;
    }
}

async fn load_again(dir: &Path, window: &Window) {
    let outcome = match load::read(dir) {
        Ok(loaded) => put_in_force(loaded, window).await,
        Err(problems) => Err(problems),
    };
    if let Err(problems) = outcome {
        error!("{problems}\nthe fleet loaded before stays in force");
    }
}

async fn put_in_force(loaded: load::Loaded, window: &Window) -> Result<(), CliError> {
    let (trailers, people) = (loaded.fleet.trailers.len(), loaded.fleet.crew.len());
    window
        .load(loaded.digest, loaded.fleet)
        .await
        .map_err(|error| CliError::Failed(error.to_string()))?;
    info!("the fleet is loaded: {trailers} trailers, {people} people");
    Ok(())
}

async fn in_force(window: &Window) -> Result<String, CliError> {
    let shown = window
        .show()
        .await
        .map_err(|error| CliError::Failed(error.to_string()))?;
    Ok(shown["fleet_digest"]
        .as_str()
        .unwrap_or_default()
        .to_owned())
}

/// Sets up the log on standard error. Whatever is logged, the token is not; a panic tells its place and not its text,
/// which may hold a person's words.
fn log(token: Token) {
    let filter = EnvFilter::try_from_default_env().unwrap_or_else(|_| EnvFilter::new("info"));
    // a second call, in one process with a test, keeps the first log
    let _ = tracing_subscriber::fmt()
        .with_env_filter(filter)
        .with_writer(Redacting { token })
        .with_ansi(false)
        .try_init();
    std::panic::set_hook(Box::new(|panic| {
        let place = panic
            .location()
            .map(ToString::to_string)
            .unwrap_or_default();
        error!("a fault in hosebib itself, at {place}: please report it");
    }));
}

/// Takes the token out of each line on its way to standard error.
struct Redacting {
    token: Token,
}

impl<'a> MakeWriter<'a> for Redacting {
    type Writer = RedactingLine<'a>;

    fn make_writer(&'a self) -> Self::Writer {
        RedactingLine { token: &self.token }
    }
}

struct RedactingLine<'a> {
    token: &'a Token,
}

impl Write for RedactingLine<'_> {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        let text = self.token.redact(&String::from_utf8_lossy(bytes));
        io::stderr().lock().write_all(text.as_bytes())?;
        Ok(bytes.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        io::stderr().flush()
    }
}
