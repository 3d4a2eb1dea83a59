//! A page of stickers as SVG: lengths are millimetres, so that a code is as large on paper as it is here.

use std::fmt::Write;

use qrcode::types::QrError;
use qrcode::{Color, EcLevel, QrCode};

/// Blank modules around a code (ISO/IEC 18004, "quiet zone").
const QUIET: usize = 4;
/// A code's side with its quiet zone. A phone reads a code from about ten times its side (common practice, no source).
const CODE: f64 = 74.0;
/// The largest height of a name's letters.
const NAME: f64 = 28.0;
/// The height of the small print.
const SMALL: f64 = 3.6;

/// A sheet of paper and the stickers on it.
pub(super) struct Paper {
    width: f64,
    height: f64,
    columns: usize,
    rows: usize,
}

impl Paper {
    /// ANSI A, "letter".
    pub(super) const LETTER: Paper = Paper {
        width: 215.9,
        height: 279.4,
        columns: 2,
        rows: 2,
    };
    /// ISO 216 A4.
    pub(super) const A4: Paper = Paper {
        width: 210.0,
        height: 297.0,
        columns: 2,
        rows: 2,
    };
}

/// What one sticker shows.
pub(super) struct Sticker<'a> {
    /// What crews call the trailer.
    pub(super) name: &'a str,
    /// What it is; may be empty.
    pub(super) title: &'a str,
    /// Where its code leads.
    pub(super) link: String,
}

/// Draws stickers onto as many pages as they need, row by row. `words` go beneath each name.
///
/// # Errors
///
/// A link that is too long for any code.
pub(super) fn pages(
    stickers: &[Sticker<'_>],
    paper: &Paper,
    words: &[String],
) -> Result<Vec<String>, QrError> {
    stickers
        .chunks(paper.columns * paper.rows)
        .map(|some| page(some, paper, words))
        .collect()
}

fn page(stickers: &[Sticker<'_>], paper: &Paper, words: &[String]) -> Result<String, QrError> {
    let (width, height) = (paper.width, paper.height);
    #[allow(clippy::cast_precision_loss)]
    let cell = (width / paper.columns as f64, height / paper.rows as f64);
    let mut svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}mm\" height=\"{height}mm\" viewBox=\"0 0 {width} {height}\">\n\
         <style>@page {{ size: {width}mm {height}mm; margin: 0 }} text {{ font-family: Helvetica, Arial, sans-serif; text-anchor: middle }}</style>\n\
         <rect width=\"{width}\" height=\"{height}\" fill=\"#fff\"/>\n"
    );
    for (at, sticker) in stickers.iter().enumerate() {
        #[allow(clippy::cast_precision_loss)]
        let corner = (
            (at % paper.columns) as f64 * cell.0,
            (at / paper.columns) as f64 * cell.1,
        );
        draw(&mut svg, sticker, corner, cell, words)?;
    }
    svg.push_str("</svg>\n");
    Ok(svg)
}

fn draw(
    svg: &mut String,
    sticker: &Sticker<'_>,
    corner: (f64, f64),
    cell: (f64, f64),
    words: &[String],
) -> Result<(), QrError> {
    // a quarter of the code may be scratched or dirty and it is still read
    let code = QrCode::with_error_correction_level(&sticker.link, EcLevel::Q)?;
    let modules = code.width() + 2 * QUIET;
    #[allow(clippy::cast_precision_loss)]
    let module = CODE / modules as f64;
    let inner = cell.0 - 14.0;
    let name = fitting(sticker.name, NAME, inner, 0.68);
    let lines = words.len() + usize::from(!sticker.title.is_empty());
    #[allow(clippy::cast_precision_loss)]
    let tall = CODE + name + lines as f64 * SMALL * 1.5 + 8.0;
    let middle = corner.0 + cell.0 / 2.0;
    let mut y = corner.1 + (cell.1 - tall) / 2.0;
    put(
        svg,
        format_args!(
            "<rect x=\"{:.2}\" y=\"{:.2}\" width=\"{:.2}\" height=\"{:.2}\" rx=\"4\" fill=\"none\" stroke=\"#999\" stroke-width=\"0.2\" stroke-dasharray=\"2 2\"/>\n",
            corner.0 + 5.0,
            corner.1 + 5.0,
            cell.0 - 10.0,
            cell.1 - 10.0
        ),
    );
    put(
        svg,
        format_args!(
            "<path transform=\"translate({:.3} {y:.3}) scale({module:.5})\" shape-rendering=\"crispEdges\" d=\"{}\"/>\n",
            middle - CODE / 2.0,
            dark(&code)
        ),
    );
    y += CODE + name * 0.85 + 1.0;
    text(svg, (middle, y), (name, "bold"), sticker.name);
    y += 2.0;
    if !sticker.title.is_empty() {
        y += SMALL * 1.5;
        let size = fitting(sticker.title, SMALL, inner, 0.56);
        text(svg, (middle, y), (size, "normal"), sticker.title);
    }
    for line in words {
        y += SMALL * 1.5;
        let size = fitting(line, SMALL, inner, 0.56);
        text(svg, (middle, y), (size, "normal"), line);
    }
    Ok(())
}

/// Returns the dark modules as one path in units of a module, a row's neighbours as one bar.
fn dark(code: &QrCode) -> String {
    let colors = code.to_colors();
    let mut path = String::new();
    for (y, row) in colors.chunks(code.width()).enumerate() {
        let mut x = 0;
        while x < row.len() {
            let length = row[x..]
                .iter()
                .take_while(|color| **color == Color::Dark)
                .count();
            if length > 0 {
                put(
                    &mut path,
                    format_args!("M{} {}h{length}v1h-{length}z", x + QUIET, y + QUIET),
                );
            }
            x += length.max(1);
        }
    }
    path
}

fn text(svg: &mut String, (x, y): (f64, f64), (size, weight): (f64, &str), words: &str) {
    put(
        svg,
        format_args!(
            "<text x=\"{x:.2}\" y=\"{y:.2}\" font-size=\"{size:.2}\" font-weight=\"{weight}\">{}</text>\n",
            escaped(words)
        ),
    );
}

/// Returns the largest size, up to `most`, at which a text fits a width; `wide` is a letter's width in parts of the size.
fn fitting(text: &str, most: f64, width: f64, wide: f64) -> f64 {
    #[allow(clippy::cast_precision_loss)]
    let letters = text.chars().count().max(1) as f64;
    most.min(width / (letters * wide))
}

/// Takes what a picture's format would obey out of a text, and what it may not hold at all.
fn escaped(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            c if c.is_control() => safe.push(' '),
            c => safe.push(c),
        }
    }
    safe
}

fn put(svg: &mut String, words: std::fmt::Arguments<'_>) {
    svg.write_fmt(words).expect("a string takes everything");
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_data_and_shrink_to_their_sticker() {
        let sticker = |name| Sticker {
            name,
            title: "<b>loud</b>",
            link: "https://t.me/saltbox_bot?start=u-12".into(),
        };
        let name = "a-very-long-name-that-no-crew-calls-it-by";
        let pages = pages(&[sticker("12"), sticker(name)], &Paper::A4, &[]).unwrap();
        assert_eq!(pages.len(), 1);
        assert!(pages[0].contains("&lt;b&gt;loud&lt;/b&gt;"));
        let size = |name: &str| {
            let line = pages[0]
                .lines()
                .find(|line| line.contains(&format!(">{name}<")));
            let (_, size) = line.unwrap().split_once("font-size=\"").unwrap();
            size.split('"').next().unwrap().parse::<f64>().unwrap()
        };
        assert_eq!(size("12"), NAME);
        assert!(size(name) * 0.5 * 41.0 < 100.0);
    }

    #[test]
    fn five_stickers_take_two_pages() {
        let stickers: Vec<Sticker<'_>> = ["1", "2", "3", "4", "5"]
            .map(|name| Sticker {
                name,
                title: "",
                link: format!("https://t.me/saltbox_bot?start=u-{name}"),
            })
            .into();
        let pages = pages(&stickers, &Paper::LETTER, &[]).unwrap();
        let codes = |page: &String| page.matches("<path").count();
        assert_eq!(pages.iter().map(codes).collect::<Vec<_>>(), [4, 1]);
    }
}
