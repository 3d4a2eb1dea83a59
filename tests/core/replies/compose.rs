//! Whole replies, as they are sent.

use hosebib::dialogue::About;
use hosebib::finding::TaskKind;
use hosebib::heard::{Entry, Language, Plan, PlanKind, ReadingKey, Remark, Taken, Taps};
use hosebib::reply::{Answer, Context, Logged, Replies, TaskNote, TaskTurn};

use super::sample::{at, logged, on, over_pressure, pump_out, report, task, trailer, unit, voice};

#[test]
fn a_reply_tells_the_worst_first_then_what_was_logged_then_what_to_send() {
    let replies = Replies::new();
    let (over, pump) = (over_pressure(), pump_out());
    let (regulator, truck) = (
        task(40, TaskKind::Regulator, Some(at(17, 10)), None),
        task(41, TaskKind::PumpOut, Some(at(19, 15)), Some(at(17, 10))),
    );
    let (twelve, entry, spec) = (unit("12"), report(), trailer());
    let answer = Answer {
        findings: vec![&pump, &over],
        logged: vec![Logged {
            spec: Some(&spec),
            ..logged(&twelve, &entry)
        }],
        tasks: vec![
            TaskNote {
                task: &regulator,
                turn: TaskTurn::Opened,
            },
            TaskNote {
                task: &truck,
                turn: TaskTurn::Opened,
            },
        ],
        ..Answer::default()
    };
    assert_eq!(
        answer.compose(&voice(&replies, Language::En)),
        "\
WARNING 12: Water 95 psi, limit 60 psi. Is that before or after the regulator? Before: fit one set to 45 psi, tap off \
first. After: it does not hold. Swap it. Task 40.
  Stand clear when you open the water. A burst hose or fitting whips.
  Shut the spigot and bleed the pressure at a sink before you open anything.
Now Waste about 75 %. 85 % about 19:40, maybe 19:15. Call the pump truck now. Truck on site by 19:15. It wants 2 h 30 min \
notice. Nobody called yet: task 41.
Logged for 12 at Heron Mere: water 95 psi, waste 3/4 (about 375 gal), outside -5 °F.
Send \"why\", \"done 40\" or the new pressure."
    );
    assert_eq!(
        answer.compose(&voice(&replies, Language::Es)),
        "\
ADVERTENCIA 12: Agua a 95 psi, límite 60 psi. ¿Es antes o después del regulador? Antes: ponga uno a 45 psi, con la toma \
cerrada. Después: no aguanta. Cámbielo. Tarea 40.
  Hágase a un lado al abrir el agua. Una manguera o pieza que revienta da latigazos.
  Cierre la toma y saque la presión por un lavabo antes de abrir cualquier pieza.
Ahora Aguas negras como al 75 %. Llegan al 85 % hacia 19:40, quizá 19:15. Llame ya al camión de vaciado. Camión en \
sitio antes de 19:15. Pide 2 h 30 min de aviso. Nadie ha llamado aún: tarea 41.
Anotado para la 12 en Heron Mere: agua 95 psi, tanque de negras 3/4 (unos 375 gal), afuera -5 °F.
Mande \"por qué\", \"hecho 40\" o la presión nueva."
    );
}

#[test]
fn a_reply_on_two_units_names_each_and_says_a_caution_once() {
    let replies = Replies::new();
    let first = over_pressure();
    let second = on("14", over_pressure());
    let pump = on("14", pump_out());
    let answer = Answer {
        findings: vec![&first, &second, &pump],
        without_hint: true,
        ..Answer::default()
    };
    let text = answer.compose(&voice(&replies, Language::En));
    assert_eq!(text.matches("Stand clear").count(), 1, "{text}");
    assert!(text.contains("\nWARNING 14: "), "{text}");
    assert!(text.contains("\nNow 14: Waste"), "{text}");
}

#[test]
fn what_was_not_understood_is_quoted_with_what_to_send_instead() {
    let replies = Replies::new();
    let (twelve, mut entry) = (unit("12"), Entry::default());
    entry.readings.set(ReadingKey::PressurePsi, 50.0);
    let taken = [Taken {
        typed: "presure".into(),
        read: "pressure".into(),
    }];
    let unclear = [Remark {
        text: "tank 3/4 \u{202e}or\n1/2,".into(),
        why: "two-values".into(),
    }];
    let set_aside = [
        Remark {
            text: "555-0123".into(),
            why: "phone".into(),
        },
        Remark {
            text: "pump it tonight".into(),
            why: "plan".into(),
        },
    ];
    let answer = Answer {
        context: Some(Context::Last(&twelve)),
        logged: vec![Logged {
            site: None,
            all_well: true,
            ..logged(&twelve, &entry)
        }],
        taken: &taken,
        unclear: &unclear,
        set_aside: &set_aside,
        ..Answer::default()
    };
    assert_eq!(
        answer.compose(&voice(&replies, Language::En)),
        "\
Logged for 12: water 50 psi. No unit named, so taken as 12, your last.
Read \"presure\" as \"pressure\".
Not logged, as it is not done yet: \"pump it tonight\". Tell me when it is done.
Not logged: \"tank 3/4 or 1/2\" gives two values for one reading. Send the right one alone."
    );
}

#[test]
fn a_request_answered_with_a_task_is_not_said_to_be_set_aside() {
    let replies = Replies::new();
    let text = "if 12 hits 3/4 call me";
    let set_aside = [Remark {
        text: text.into(),
        why: "condition".into(),
    }];
    let plans = [Plan {
        unit: Some(unit("12")),
        kind: PlanKind::Watch {
            key: ReadingKey::WastePct,
            value: 75.0,
            below: false,
        },
        text: text.into(),
    }];
    let answer = Answer {
        lines: vec!["I will tell you.".into()],
        set_aside: &set_aside,
        answered: &plans,
        ..Answer::default()
    };
    assert_eq!(
        answer.compose(&voice(&replies, Language::En)),
        "I will tell you."
    );
}

#[test]
fn hostile_text_is_cut_and_cannot_flood_a_reply() {
    let replies = Replies::new();
    let remarks: Vec<Remark> = (0..1000)
        .map(|_| Remark {
            text: "{ $x } \u{7}".repeat(2000),
            why: "no-place".into(),
        })
        .collect();
    let answer = Answer {
        unclear: &remarks,
        ..Answer::default()
    };
    let text = answer.compose(&voice(&replies, Language::En));
    assert!(
        text.len() < 1500 && text.contains("996 more parts"),
        "{text}"
    );
    assert!(!text.contains('\u{7}'));
}

#[test]
fn one_question_closes_a_reply_with_its_likely_answers() {
    let replies = Replies::new();
    let about = About::WhichUnit {
        entry: report(),
        at: at(17, 10),
        likely: vec![unit("12"), unit("14"), unit("9")],
    };
    let answer = Answer {
        question: Some(&about),
        ..Answer::default()
    };
    assert_eq!(
        answer.compose(&voice(&replies, Language::En)),
        "Which unit is this for: 12, 14 or 9?"
    );
    assert_eq!(
        answer.compose(&voice(&replies, Language::Es)),
        "¿Para qué unidad es: 12, 14 o 9?"
    );
}

#[test]
fn a_unit_in_good_order_is_told_so() {
    let replies = Replies::new();
    let (twelve, mut entry) = (unit("12"), Entry::default());
    entry.readings.set(ReadingKey::PressurePsi, 50.0);
    entry.readings.taps = Some(Taps::Shut);
    let answer = Answer {
        logged: vec![Logged {
            all_well: true,
            at: Some(at(16, 30)),
            ..logged(&twelve, &entry)
        }],
        ..Answer::default()
    };
    assert_eq!(
        answer.compose(&voice(&replies, Language::En)),
        "12: all within limits.\nLogged for 12 at Heron Mere, 16:30: water 50 psi with taps shut."
    );
}
