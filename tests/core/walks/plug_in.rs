//! The plug-in plan against sums worked by hand. Sources: conductor resistance at 75 °C from NEC chapter 9, table 8 (12 AWG
//! 1.98, 10 AWG 1.24 ohm/kft); drop 2 × length × amps × ohm/kft ÷ 1000; generator derates of 3.5 % for each 1,000 ft and
//! 1 % for each 10 °F over 85 °F are common practice, no published source.

use chrono::{DateTime, Utc};

use super::Crew;

fn on(day: &str) -> Crew {
    let mut crew = Crew::new(false);
    crew.now = day.parse::<DateTime<Utc>>().expect("an instant");
    crew
}

/// A day, a message, what the reply says and what it must not.
type Row = (
    &'static str,
    &'static str,
    &'static [&'static str],
    &'static [&'static str],
);

const WINTER: &str = "2027-01-23T16:00:00Z";
const FILM: &str = "2027-01-22T16:00:00Z";
const HOT: &str = "2027-07-10T20:00:00Z";

const ROWS: &[Row] = &[
    // circuit 2 has the converter; a trailer with AC in two rooms and a water heater needs three
    (
        WINTER,
        "2 cords 12",
        &[
            "Feed circuits 2 and 1",
            "Will not run: AC room B, heat room B",
            // 120 - 2 × 25 × 12.5 × 1.24 ÷ 1000 = 119.2
            "about 119 V at the trailer under load (25 ft, 10 AWG, 12.5 A)",
        ],
        &["A generator for"],
    ),
    (WINTER, "2 cords on 12", &["Feed circuits 2 and 1"], &[]),
    (WINTER, "1 cord 12", &["Feed circuit 2:"], &[]),
    (
        WINTER,
        "3 cords 12",
        &["Expect about 119 V"],
        &["circuits are needed"],
    ),
    // at 40 °F and below the cold package needs its circuit before the rooms
    (
        WINTER,
        "12 temp 38, 2 cords",
        &["Feed circuits 2 and 4"],
        &[],
    ),
    (
        WINTER,
        "12 temp 42, 2 cords",
        &["Feed circuits 2 and 1"],
        &[],
    ),
    // held against what was read: 5 V under what the cord leaves is lost elsewhere
    (
        WINTER,
        "12 4 cords 115 volts",
        &["You read 115 V, with about 119 V"],
        &["Feel each plug"],
    ),
    (WINTER, "12 4 cords 114 volts", &["Feel each plug"], &[]),
    // 50 ft of 10 AWG: 120 - 2 × 50 × 12.5 × 1.24 ÷ 1000 = 118.45
    // circuits 2 and 1: 9 A + 5 A + 11 A at 120 V = 3,000 W; the AC starts with 3,000 - 1,320 = 1,680 W more
    // (3,000 + 1,680) ÷ (1 - 0.035 × 7.2) = 6,257 W
    (
        FILM,
        "2 cords 6",
        &[
            "about 118 V",
            "A generator for these circuits: 6,257 W or more (7,200 ft, 70 °F taken)",
        ],
        &[],
    ),
    // at 20 °F heat in place of the AC, and the cold package: 9 + 5 + 12.5 + 8.5 + 3.3 = 38.3 A, 4,596 W, nothing starts hard
    // 4,596 ÷ 0.748 = 6,144 W
    (
        FILM,
        "6 temp 20, 3 cords",
        &["6,144 W or more (7,200 ft, 20 °F)"],
        &["to start an AC"],
    ),
    (
        WINTER,
        "2 cables 12",
        &[
            "Alimente los circuitos 2 y 1",
            "No andarán: aire del cuarto B, calefacción del cuarto B",
        ],
        &["heat", "room"],
    ),
    // a show ground at 5,600 ft and 95 °F: height leaves 1 - 0.035 × 5.6 = 0.804, heat 0.99
    // circuits 2, 1 and 3: 12 + 3.5 + 12.5 + 12.5 = 40.5 A, 4,860 W; an AC of 1,500 W starts with 2.4 times that, 2,100 W more
    // 6,960 ÷ (0.804 × 0.99) = 8,744 W
    (
        HOT,
        "B3 temp 95, 3 cords",
        &["8,744 W or more (5,600 ft, 95 °F)"],
        &[],
    ),
];

#[test]
fn the_plan_is_what_is_worked_out_by_hand() {
    let mut wrong = Vec::new();
    for (day, text, says, never) in ROWS {
        let mut crew = on(day);
        let who = if text.contains("cables") {
            "lupe"
        } else {
            "tobin"
        };
        let told = crew.hears(who, text);
        let misses = says.iter().filter(|part| !told.contains(**part));
        let has = never.iter().filter(|part| told.contains(**part));
        for part in misses.chain(has) {
            wrong.push(format!("{text:?} and {part:?}: {told}"));
        }
    }
    super::none_is(&wrong, ROWS.len());
}
