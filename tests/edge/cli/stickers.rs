//! `hosebib stickers`: what is printed must be read by a general decoder, and lead where the desk takes it up.

use std::path::Path;

use super::{Bot, Folders, run};
use crate::telegram::botapi::BotApi;

/// How many pixels a millimetre of the page gets.
const PER_MM: f64 = 4.0;

/// A path of bars (`M x y h n v1 h-n z`) and where it lies on its page.
struct Code {
    left: f64,
    top: f64,
    module: f64,
    bars: Vec<[f64; 3]>,
}

/// Takes the codes out of a page.
fn codes(page: &str) -> Vec<Code> {
    let number = |text: &str| text.parse::<f64>().unwrap();
    let between = |text: &str, from: &str, to: &str| {
        let (_, rest) = text.split_once(from).unwrap();
        rest.split_once(to).unwrap().0.to_owned()
    };
    page.lines()
        .filter(|line| line.starts_with("<path"))
        .map(|line| {
            let at = between(line, "translate(", ")");
            let (left, top) = at.split_once(' ').unwrap();
            let bars = between(line, " d=\"", "\"");
            let bars = bars.split('M').skip(1).map(|bar| {
                let (place, length) = bar.split_once('h').unwrap();
                let (x, y) = place.split_once(' ').unwrap();
                let (length, _) = length.split_once('v').unwrap();
                [number(x), number(y), number(length)]
            });
            Code {
                left: number(left),
                top: number(top),
                module: number(&between(line, "scale(", ")")),
                bars: bars.collect(),
            }
        })
        .collect()
}

/// Paints a whole page's codes and has a general decoder find and read them.
fn read(page: &str) -> Vec<String> {
    let (width, height) = ((220.0 * PER_MM) as usize, (300.0 * PER_MM) as usize);
    let mut dark = vec![false; width * height];
    for code in codes(page) {
        let pixel =
            |corner: f64, modules: f64| ((corner + modules * code.module) * PER_MM) as usize;
        for [x, y, length] in code.bars {
            for row in pixel(code.top, y)..pixel(code.top, y + 1.0) {
                let bar = pixel(code.left, x)..pixel(code.left, x + length);
                dark[row * width..][bar].fill(true);
            }
        }
    }
    let shade = |x: usize, y: usize| if dark[y * width + x] { 0 } else { 255 };
    let mut picture = rqrr::PreparedImage::prepare_from_greyscale(width, height, shade);
    let grids = picture.detect_grids();
    let mut links: Vec<String> = grids.iter().map(|grid| grid.decode().unwrap().1).collect();
    links.sort();
    links
}

fn page(folder: &Path) -> String {
    std::fs::read_to_string(folder.join("stickers-01.svg")).unwrap()
}

#[test]
fn a_decoder_reads_a_link_for_each_trailer() {
    let (folders, place) = (Folders::new(), tempfile::tempdir().unwrap());
    for paper in ["letter", "a4"] {
        let to = place.path().join(paper);
        let to_shown = to.to_str().unwrap();
        let args = [
            "stickers",
            to_shown,
            "--bot",
            "@saltbox_bot",
            "--paper",
            paper,
        ];
        let said = run(args.iter().chain(&["--fleet", folders.fleet()])).good();
        assert!(
            said.starts_with("2 stickers for @saltbox_bot on 1 page"),
            "{said}"
        );
        let page = page(&to);
        assert_eq!(
            read(&page),
            [
                "https://t.me/saltbox_bot?start=u-12",
                "https://t.me/saltbox_bot?start=u-14"
            ]
        );
        assert!(page.contains(">12</text>") && page.contains(">14</text>"));
        assert!(page.contains("Crew: scan") && page.contains("Personal: escanee"));
    }
}

#[test]
fn the_bots_name_comes_from_the_bot_that_runs_or_from_the_network() {
    let (folders, place, api) = (
        Folders::new(),
        tempfile::tempdir().unwrap(),
        BotApi::start(),
    );
    folders.load();
    let new = |name: &str| place.path().join(name).to_str().unwrap().to_owned();
    let args = ["--data", folders.data(), "--trailer", "14"];
    let refused = run(["stickers", &new("none")].iter().chain(&args)).bad();
    assert!(
        refused.contains("the bot's name is not known") && refused.contains("--bot NAME"),
        "{refused}"
    );
    let token = place.path().join("token");
    std::fs::write(&token, crate::telegram::botapi::TOKEN).unwrap();
    let asked = [
        "stickers",
        &new("network"),
        "--token-file",
        token.to_str().unwrap(),
        "--api-url",
        &api.url(),
    ];
    run(asked.iter().chain(&args)).good();
    let from_network = read(&page(Path::new(&new("network"))));
    let _bot = Bot::start(&api, folders.data.path());
    run(["stickers", &new("running")].iter().chain(&args)).good();
    let from_running = read(&page(Path::new(&new("running"))));
    assert_eq!(from_network, from_running);
    assert!(from_running[0].ends_with("?start=u-14"), "{from_running:?}");
}

#[test]
fn a_scanned_sticker_sets_the_trailer_in_the_chat() {
    let (folders, place, api) = (
        Folders::new(),
        tempfile::tempdir().unwrap(),
        BotApi::start(),
    );
    folders.load();
    let to = place.path().join("sheet");
    let bot = Bot::start(&api, folders.data.path());
    let args = [
        "stickers",
        to.to_str().unwrap(),
        "--trailer",
        "14",
        "--data",
        folders.data(),
    ];
    run(args).good();
    let link = read(&page(&to)).remove(0);
    let (_, code) = link.split_once("?start=").unwrap();
    // the network's app sends this when somebody opens the link and presses Start (Telegram deep links)
    api.says(77, &format!("/start {code}"));
    api.says(77, "pressure 50");
    let replies = api.replies(77, 2);
    assert!(
        replies[1].contains("Logged for 14: water 50 psi"),
        "{replies:?}"
    );
    drop(bot);
}

#[test]
fn what_cannot_be_printed_is_said() {
    let (folders, place) = (Folders::new(), tempfile::tempdir().unwrap());
    folders.write(
        "fleet.toml",
        "[[trailer]]\nid = \"12\"\n\n[[trailer]]\nid = \"14.2\"\n",
    );
    let to = place.path().join("sheet");
    let to = to.to_str().unwrap();
    let args = ["--fleet", folders.fleet(), "--bot", "saltbox_bot"];
    let ran = run(["stickers", to].iter().chain(&args));
    assert!(ran.out.starts_with("1 sticker for"), "{ran:?}");
    assert!(
        ran.bad()
            .contains("no sticker for 14.2: a link carries only")
    );
    let again = run(["stickers", to].iter().chain(&args)).bad();
    assert!(
        again.contains("is not empty: name a new or empty folder"),
        "{again}"
    );
    let other = place.path().join("other");
    let other = other.to_str().unwrap();
    let unknown = run(["stickers", other, "--trailer", "99"].iter().chain(&args)).bad();
    assert!(
        unknown.contains("the fleet has no trailer `99`"),
        "{unknown}"
    );
    let named = [
        "stickers",
        other,
        "--fleet",
        folders.fleet(),
        "--bot",
        "a bot",
    ];
    assert_eq!(run(named).code, Some(2));
    assert!(!Path::new(other).exists());
}
