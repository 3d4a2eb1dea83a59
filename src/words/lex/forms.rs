//! The forms that a number is written in: dates, phones, times, fractions, ranges, thousands, decimal commas.

use super::{Kind, half_day};
use nom::branch::alt;
use nom::bytes::complete::{tag, take_while_m_n, take_while1};
use nom::character::complete::{char, digit1, one_of};
use nom::combinator::{opt, peek, recognize, verify};
use nom::sequence::{pair, preceded, terminated};
use nom::{IResult, Parser};

/// Reads the number that `text` opens with, in any of its forms.
pub(super) fn read_number(text: &str) -> (Kind, usize) {
    let mut forms = alt((iso_date, date, phone, clock, mixed, fraction, day, range));
    match forms.parse(text) {
        Ok((rest, kind)) => (kind, text.len() - rest.len()),
        Err(_) => read_plain(text),
    }
}

pub(super) fn digits(least: usize, most: usize) -> impl Fn(&str) -> IResult<&str, &str> {
    move |input| {
        terminated(
            take_while_m_n(least, most, |c: char| c.is_ascii_digit()),
            nom::combinator::not(peek(one_of("0123456789"))),
        )
        .parse(input)
    }
}

fn number_of(text: &str) -> f64 {
    text.parse().unwrap_or(f64::MAX)
}

fn iso_date(input: &str) -> IResult<&str, Kind> {
    let (rest, _) = recognize((
        digits(4, 4),
        one_of("-/"),
        digits(1, 2),
        one_of("-/"),
        digits(1, 2),
    ))
    .parse(input)?;
    Ok((rest, Kind::Labelled))
}

fn date(input: &str) -> IResult<&str, Kind> {
    let (rest, _) = recognize((
        digits(1, 2),
        one_of("-/."),
        digits(1, 2),
        one_of("-/."),
        alt((digits(4, 4), digits(2, 2))),
    ))
    .parse(input)?;
    Ok((rest, Kind::Labelled))
}

fn phone(input: &str) -> IResult<&str, Kind> {
    let long = recognize((
        opt(pair(digits(1, 2), one_of("-. "))),
        digits(3, 3),
        one_of("-. "),
        digits(3, 3),
        one_of("-. "),
        digits(4, 4),
    ));
    let short = recognize((digits(3, 3), char('-'), digits(4, 4)));
    let (rest, _) = alt((long, short)).parse(input)?;
    Ok((rest, Kind::Labelled))
}

fn clock(input: &str) -> IResult<&str, Kind> {
    let (rest, (hours, _, minutes)) = (digits(1, 2), char(':'), digits(2, 2)).parse(input)?;
    let (h, m) = (number_of(hours) as u16, number_of(minutes) as u16);
    if h > 24 || m > 59 {
        return Err(nom::Err::Error(nom::error::Error::new(
            input,
            nom::error::ErrorKind::Verify,
        )));
    }
    let (rest, _) = opt(preceded(char(':'), digits(2, 2))).parse(rest)?;
    let mark: IResult<&str, Option<&str>> = opt(preceded(
        opt(char(' ')),
        alt((
            tag("am"),
            tag("pm"),
            tag("a.m."),
            tag("p.m."),
            tag("a. m."),
            tag("p. m."),
        )),
    ))
    .parse(rest);
    let (rest, mark) = mark?;
    let minutes = match mark {
        Some(mark) => half_day(h, m, mark),
        None => h * 60 + m,
    };
    Ok((rest, Kind::Clock(minutes)))
}

/// `1 1/2`, `2 3/4`.
fn mixed(input: &str) -> IResult<&str, Kind> {
    let (rest, (whole, _, part)) = (digits(1, 2), one_of(" -"), proper).parse(input)?;
    if number_of(whole) > 4.0 {
        return Err(nom::Err::Error(nom::error::Error::new(
            input,
            nom::error::ErrorKind::Verify,
        )));
    }
    Ok((rest, Kind::Fraction(number_of(whole) + part)))
}

fn fraction(input: &str) -> IResult<&str, Kind> {
    let (rest, part) = proper(input)?;
    Ok((rest, Kind::Fraction(part)))
}

/// A day and month, where it can be no part of one: `06/12`.
fn day(input: &str) -> IResult<&str, Kind> {
    let (rest, _) = recognize((digits(1, 2), char('/'), digits(1, 2))).parse(input)?;
    Ok((rest, Kind::Labelled))
}

/// A part of one, in the denominators that gauges have.
fn proper(input: &str) -> IResult<&str, f64> {
    let (rest, (over, _, under)) = (
        verify(digits(1, 2), |d: &str| !d.starts_with('0')),
        char('/'),
        verify(digits(1, 2), |d: &str| {
            matches!(d, "2" | "3" | "4" | "5" | "6" | "8" | "10" | "16")
        }),
    )
        .parse(input)?;
    let (over, under) = (number_of(over), number_of(under));
    let more = rest.starts_with('/') && rest[1..].starts_with(|c: char| c.is_ascii_digit());
    if over > under || more {
        return Err(nom::Err::Error(nom::error::Error::new(
            input,
            nom::error::ErrorKind::Verify,
        )));
    }
    Ok((rest, over / under))
}

fn range(input: &str) -> IResult<&str, Kind> {
    let (rest, (from, _, to)) = (unsigned, alt((tag("--"), tag("-"))), unsigned).parse(input)?;
    if input.starts_with("10-4") && !rest.starts_with(|c: char| c.is_alphanumeric()) && to == 4.0 {
        return Ok((rest, Kind::Labelled)); // message received
    }
    if rest.starts_with(['-', '/']) {
        return Err(nom::Err::Error(nom::error::Error::new(
            input,
            nom::error::ErrorKind::Verify,
        )));
    }
    Ok((rest, Kind::Range(from, to)))
}

fn unsigned(input: &str) -> IResult<&str, f64> {
    let (rest, text) = recognize((digit1, opt((char('.'), digit1)))).parse(input)?;
    Ok((rest, number_of(text)))
}

/// A plain number: thousands parted by commas, a decimal point or comma.
pub(super) fn read_plain(text: &str) -> (Kind, usize) {
    let grouped: IResult<&str, &str> = recognize((
        digits(1, 3),
        nom::multi::many1_count(preceded(char(','), digits(3, 3))),
        opt((char('.'), digit1)),
    ))
    .parse(text);
    if let Ok((rest, number)) = grouped
        && !number.starts_with('0')
    {
        let value = number_of(&number.replace(',', ""));
        return (
            Kind::Number {
                value,
                whole: true,
                signed: false,
            },
            text.len() - rest.len(),
        );
    }
    let decimal: IResult<&str, &str> = alt((
        recognize((digit1, char('.'), digit1)),
        recognize((char('.'), digit1)),
        recognize((digits(1, 3), char(','), digits(1, 2))),
        digit1,
    ))
    .parse(text);
    match decimal {
        Ok((rest, number)) => {
            let length = text.len() - rest.len();
            // a second point makes it an address or a version
            if number.contains(['.', ','])
                && rest.starts_with('.')
                && rest[1..].starts_with(|c: char| c.is_ascii_digit())
            {
                let all: IResult<&str, &str> =
                    take_while1(|c: char| c.is_ascii_digit() || c == '.').parse(text);
                if let Ok((_, all)) = all {
                    return (Kind::Labelled, all.trim_end_matches('.').len());
                }
            }
            let whole = !number.contains(['.', ',']);
            let value = number_of(&number.replace(',', "."));
            (
                Kind::Number {
                    value,
                    whole,
                    signed: false,
                },
                length,
            )
        }
        Err(_) => (
            Kind::Garbled,
            text.chars().next().map_or(0, char::len_utf8).max(1),
        ),
    }
}
