//! The order in which messages go.

use super::*;

fn parcel(turn: u64, text: &str, level: Option<Level>) -> Parcel {
    Parcel {
        id: Some(ParcelId { turn, index: 0 }),
        to: "dana".into(),
        text: text.into(),
        level,
        ..Parcel::default()
    }
}

fn queues() -> (Queues, Instant) {
    let now = Instant::now();
    (Queues::new(Limits::default(), now), now)
}

fn sent(queues: &mut Queues, now: Instant) -> Option<String> {
    match queues.next(now) {
        Next::Send(piece) => Some(piece.text),
        _ => None,
    }
}

#[test]
fn a_recalled_message_is_not_sent_and_one_on_its_way_keeps_its_place() {
    let (mut queues, now) = queues();
    queues.put(&parcel(1, "first", None), 7, now);
    queues.put(&parcel(2, "second", None), 7, now);
    queues.put(&parcel(3, "third", None), 7, now);
    assert_eq!(sent(&mut queues, now).as_deref(), Some("first"));
    for turn in [1, 2] {
        queues.recall(ParcelId { turn, index: 0 });
    }
    queues.accepted(7);
    let later = now + Duration::from_secs(60);
    assert_eq!(sent(&mut queues, later).as_deref(), Some("third"));
}

#[test]
fn one_chat_keeps_its_order_and_waits_for_each_outcome() {
    let (mut queues, now) = queues();
    queues.put(&parcel(1, "first", None), 7, now);
    queues.put(&parcel(2, "second", None), 7, now);
    assert_eq!(sent(&mut queues, now).as_deref(), Some("first"));
    assert_eq!(queues.next(now), Next::Nothing);
    queues.failed(7, now);
    assert_eq!(queues.next(now), Next::At(now + Duration::from_secs(1)));
    let later = now + Duration::from_secs(1);
    assert_eq!(
        sent(&mut queues, later).as_deref(),
        Some("first"),
        "a failed one goes again before the next"
    );
    queues.accepted(7);
    assert_eq!(sent(&mut queues, later).as_deref(), Some("second"));
}

#[test]
fn a_slow_chat_does_not_hold_another() {
    let (mut queues, now) = queues();
    queues.put(&parcel(1, "slow", None), 7, now);
    queues.put(&parcel(2, "quick", None), 8, now);
    assert_eq!(sent(&mut queues, now).as_deref(), Some("slow"));
    queues.wait(7, Duration::from_secs(30), now);
    assert_eq!(sent(&mut queues, now).as_deref(), Some("quick"));
    queues.accepted(8);
    assert_eq!(queues.next(now), Next::At(now + Duration::from_secs(30)));
}

#[test]
fn a_danger_overtakes_its_own_chat_and_all_others() {
    let (mut queues, now) = queues();
    for turn in 0..40 {
        queues.put(
            &parcel(turn, "digest", None),
            7 + i64::try_from(turn).unwrap(),
            now,
        );
    }
    while sent(&mut queues, now).is_some() {}
    queues.put(&parcel(50, "later", None), 90, now);
    queues.put(&parcel(51, "danger", Some(Level::Danger)), 90, now);
    assert_eq!(
        sent(&mut queues, now).as_deref(),
        Some("danger"),
        "the supply is used up, a danger goes all the same"
    );
}

#[test]
fn a_danger_obeys_the_networks_own_wait() {
    let (mut queues, now) = queues();
    queues.put(&parcel(1, "danger", Some(Level::Danger)), 7, now);
    assert!(sent(&mut queues, now).is_some());
    queues.wait(7, Duration::from_secs(9), now);
    assert_eq!(queues.next(now), Next::At(now + Duration::from_secs(9)));
}

#[test]
fn a_long_text_goes_in_parts_and_begins_where_it_was_left() {
    let (mut queues, now) = queues();
    let text = format!("{}\n{}", "a".repeat(4000), "b".repeat(4000));
    let mut long = parcel(1, &text, None);
    long.parts_sent = 1;
    queues.put(&long, 7, now);
    match queues.next(now) {
        Next::Send(piece) => assert_eq!(
            (piece.part, piece.of, piece.text.as_bytes()[0]),
            (1, 2, b'b')
        ),
        other => panic!("{other:?}"),
    }
    long.parts_sent = 0;
    queues.put(&long, 8, now);
    assert!(sent(&mut queues, now).is_some());
    queues.given_up(8);
    assert_eq!(
        queues.len(),
        1,
        "with one part given up, the rest of it goes too"
    );
}

#[test]
fn what_waits_for_a_group_follows_it() {
    let (mut queues, now) = queues();
    queues.put(&parcel(1, "one", None), -5, now);
    queues.put(&parcel(2, "two", None), -5, now);
    assert_eq!(sent(&mut queues, now).as_deref(), Some("one"));
    queues.moved(-5, -1005, now);
    match queues.next(now) {
        Next::Send(piece) => assert_eq!((piece.chat, piece.text.as_str()), (-1005, "one")),
        other => panic!("{other:?}"),
    }
}

#[test]
fn quiet_chats_are_forgotten_and_tired_ones_are_not() {
    let (mut queues, now) = queues();
    for turn in 0..3 {
        queues.put(&parcel(turn, "x", None), 7, now);
        sent(&mut queues, now);
        queues.accepted(7);
    }
    queues.tidy(now);
    assert_eq!(queues.chats.len(), 1);
    queues.tidy(now + Duration::from_secs(5));
    assert!(queues.chats.is_empty());
}
