//! `hosebib stickers`: sheets to print, a sticker for each trailer, whose code opens the chat with that trailer set.

mod sheet;

use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::ValueEnum;

use super::shown::counted;
use super::{CliError, beside, bot, clock, load};
use crate::chat::socket::{self, Request};
use crate::chat::telegram::checkup;
use crate::desk::sticker_code;
use crate::fleet::{Fleet, Trailer};
use crate::heard::Language;
use crate::reply::Replies;
use sheet::{Paper, Sticker};

/// The lengths that the network's bot names have (Bot API, "username").
const NAME_LENGTHS: std::ops::RangeInclusive<usize> = 5..=32;

/// Arguments of `hosebib stickers`.
#[derive(Debug, clap::Args)]
#[command(group(clap::ArgGroup::new("from").required(true).args(["data", "fleet"])))]
pub(super) struct Args {
    /// The folder to write the pages into: new or empty
    #[arg(value_name = "FOLDER")]
    to: PathBuf,
    /// Stickers for these trailers alone; may be given several times
    #[arg(long = "trailer", value_name = "ID")]
    trailers: Vec<String>,
    /// The paper's size
    #[arg(long, value_enum, default_value_t = Size::Letter)]
    paper: Size,
    /// The bot's name on the chat network; without it, the bot that runs on `--data` is asked, else the network
    #[arg(long, value_name = "NAME")]
    bot: Option<String>,
    /// The data directory with the fleet; a bot may run on it
    #[arg(long, value_name = "DIR")]
    data: Option<PathBuf>,
    /// The folder with fleet.toml, jobs.toml and crew.toml
    #[arg(long, value_name = "DIR")]
    fleet: Option<PathBuf>,
    #[command(flatten)]
    network: bot::Bot,
}

#[derive(Debug, Clone, Copy, ValueEnum)]
enum Size {
    /// 8.5 by 11 inches
    Letter,
    /// 210 by 297 millimetres
    A4,
}

pub(super) fn run(args: &Args) -> Result<ExitCode, CliError> {
    let fleet = fleet(args)?;
    let trailers = wanted(&fleet, &args.trailers)?;
    let bot = bot(args)?;
    let words = words(&fleet);
    let mut stickers = Vec::new();
    let mut left_out = Vec::new();
    for trailer in trailers {
        match sticker_code(trailer.id.as_str()) {
            Some(code) => stickers.push(Sticker {
                name: trailer.id.as_str(),
                title: &trailer.title,
                link: format!("https://t.me/{bot}?start={code}"),
            }),
            None => left_out.push(trailer.id.as_str()),
        }
    }
    let paper = match args.paper {
        Size::Letter => Paper::LETTER,
        Size::A4 => Paper::A4,
    };
    let pages = sheet::pages(&stickers, &paper, &words)
        .map_err(|error| CliError::Failed(format!("a link does not fit a code: {error}")))?;
    write(&args.to, &pages)?;
    writeln!(
        std::io::stdout(),
        "{} for @{bot} on {} in `{}`: open each in a browser and print it at its own size. Scan one before you put them up.",
        counted(stickers.len(), "sticker"),
        counted(pages.len(), "page"),
        args.to.display()
    )?;
    if left_out.is_empty() {
        return Ok(ExitCode::SUCCESS);
    }
    Err(CliError::Failed(format!(
        "no sticker for {}: a link carries only the letters A to Z, digits, `-` and `_`, 62 of them; give another id",
        left_out.join(", ")
    )))
}

fn fleet(args: &Args) -> Result<Fleet, CliError> {
    match (&args.fleet, &args.data) {
        (Some(dir), _) => Ok(load::read(dir)?.fleet),
        (None, Some(dir)) => beside::fleet(dir)?.ok_or_else(|| {
            let dir = dir.display();
            CliError::Failed(format!(
                "no fleet was ever loaded into `{dir}`: load one with `hosebib fleet load DIR --data {dir}`"
            ))
        }),
        (None, None) => Err(CliError::Usage("name `--data` or `--fleet`".into())),
    }
}

/// Returns the trailers that were named, in that order; all of them where none was.
fn wanted<'f>(fleet: &'f Fleet, named: &[String]) -> Result<Vec<&'f Trailer>, CliError> {
    if named.is_empty() {
        return Ok(fleet.trailers.values().collect());
    }
    let find = |name: &String| {
        let found = fleet
            .trailers
            .values()
            .find(|trailer| trailer.id.as_str() == name);
        found.ok_or_else(|| {
            CliError::Failed(format!(
                "the fleet has no trailer `{name}`: check its id in fleet.toml"
            ))
        })
    };
    named.iter().map(find).collect()
}

/// Returns the line under each name, in both languages: whoever finds the trailer should know whom the code is for.
fn words(fleet: &Fleet) -> [String; 2] {
    let replies = Replies::new();
    [Language::En, Language::Es].map(|language| {
        let voice = replies.voice(language, fleet.style, fleet.time_zone, clock::now());
        voice.word("sticker")
    })
}

/// Finds the bot's name: as given, from the bot that runs, or from the network.
fn bot(args: &Args) -> Result<String, CliError> {
    let name = match &args.bot {
        Some(name) => name.clone(),
        None => match running(args.data.as_deref())? {
            Some(name) => name,
            None => on_the_network(args)?,
        },
    };
    let name = name.trim().trim_start_matches('@');
    let fits = NAME_LENGTHS.contains(&name.len())
        && name
            .bytes()
            .all(|byte| byte.is_ascii_alphanumeric() || byte == b'_');
    if fits {
        return Ok(name.to_owned());
    }
    Err(CliError::Usage(format!(
        "`{name}` is not a bot's name: expected 5 to 32 letters, digits and underscores, as in `--bot saltbox_bot`"
    )))
}

fn running(data: Option<&Path>) -> Result<Option<String>, CliError> {
    let Some(dir) = data else { return Ok(None) };
    let standing = socket::ask(dir, &Request::Show).map_err(CliError::Failed)?;
    Ok(standing.and_then(|standing| standing["bot"].as_str().map(str::to_owned)))
}

fn on_the_network(args: &Args) -> Result<String, CliError> {
    let unknown = |why: &str| {
        CliError::Failed(format!(
            "the bot's name is not known: {why}. Give it with `--bot NAME`"
        ))
    };
    let token = args.network.token();
    let token = token.map_err(|error| unknown(&error.to_string()))?;
    let api = args.network.api(token).map_err(CliError::Usage)?;
    let runtime = tokio::runtime::Builder::new_current_thread()
        .enable_all()
        .build()?;
    let identity = runtime
        .block_on(checkup::identity(&api))
        .map_err(|error| unknown(&error.to_string()))?;
    identity
        .username
        .ok_or_else(|| unknown("the network knows none"))
}

/// Writes the pages, and nothing over what is there: a page of an older fleet would go to the printer with the rest.
fn write(to: &Path, pages: &[String]) -> Result<(), CliError> {
    let failed = |what: &str, path: &Path, error: std::io::Error| {
        CliError::Failed(format!("`{}` cannot be {what}: {error}", path.display()))
    };
    fs::create_dir_all(to).map_err(|error| failed("made", to, error))?;
    let mut there = fs::read_dir(to).map_err(|error| failed("read", to, error))?;
    if there.next().is_some() {
        return Err(CliError::Failed(format!(
            "`{}` is not empty: name a new or empty folder",
            to.display()
        )));
    }
    for (number, page) in (1..).zip(pages) {
        let path = to.join(format!("stickers-{number:02}.svg"));
        fs::write(&path, page).map_err(|error| failed("written", &path, error))?;
    }
    Ok(())
}
