//! Old texts go by themselves, once a day in the small hours, and old photos with them.

use chrono::TimeDelta;
use hosebib::chat::clerk::{Forget, Forgotten, PHOTOS, Window};
use hosebib::desk::{Body, Desk, Inbound, Photo};
use hosebib::fleet::Fleet;
use hosebib::store::Files;

use super::{Post, fleet, inbound, keys};

fn retain(post: &Post) -> Forgotten {
    retain_through(&post.window)
}

/// Takes out what is old, and waits for it.
pub(super) fn retain_through(window: &Window) -> Forgotten {
    let runtime = tokio::runtime::Builder::new_current_thread()
        .build()
        .unwrap();
    runtime.block_on(window.retain()).unwrap()
}

fn holds(dir: &std::path::Path, word: &str) -> bool {
    let lines = hosebib::store::read_only(dir).unwrap();
    lines.map(Result::unwrap).any(|line| {
        let letters = line.outgoing.iter();
        letters
            .into_iter()
            .any(|letter| letter.to_string().contains(word))
    })
}

#[test]
fn old_texts_go_once_a_day_after_four_in_the_fleets_zone() {
    let dir = tempfile::tempdir().unwrap();
    let post = Post::open(dir.path(), Files);
    let keeps = Fleet {
        keep_texts_days: Some(2),
        time_zone: chrono_tz::America::Halifax,
        ..fleet()
    };
    post.window.load_blocking("two".into(), keeps).unwrap();
    // 17:10 there, a Saturday
    post.says(1, "the willow").unwrap();
    let parcel = post.parcels.recv().unwrap();
    post.window.sent(parcel.id.unwrap(), 0, 1, 900);
    assert_eq!(retain(&post), Forgotten::default(), "nothing is old yet");
    post.later(TimeDelta::days(2));
    post.later(TimeDelta::hours(6));
    // Monday 23:10: done on Saturday, so due since Sunday 04:00
    assert_eq!(retain(&post).texts, 1);
    assert!(!holds(dir.path(), "willow"));

    let now = *post.clock.lock().unwrap();
    let young = Inbound {
        at: now,
        received: now,
        ..inbound(2, "the brook")
    };
    post.window.batch_blocking(vec![young]).unwrap();
    let parcel = post.parcels.recv().unwrap();
    post.window.sent(parcel.id.unwrap(), 0, 1, 901);
    post.later(TimeDelta::hours(4));
    // 03:10: not yet again
    assert_eq!(retain(&post), Forgotten::default());
    let lines = || hosebib::store::read_only(dir.path()).unwrap().count();
    let before = lines();
    post.later(TimeDelta::hours(1));
    assert_eq!(
        retain(&post),
        Forgotten::default(),
        "04:10, and nothing is old"
    );
    assert_eq!(lines(), before + 2, "it was done all the same, and noted");
    assert_eq!(retain(&post), Forgotten::default());
    assert_eq!(lines(), before + 2, "once a day");
    assert!(holds(dir.path(), "brook"));
    assert_eq!(hosebib::store::verify(dir.path()).unwrap().damage, []);
    post.stop();
}

#[test]
fn old_photos_go_and_younger_ones_stay() {
    let dir = tempfile::tempdir().unwrap();
    let post = Post::with::<Desk>(dir.path(), Files, 10);
    let keeps = Fleet {
        keep_photos_days: Some(30),
        ..fleet()
    };
    post.window.load_blocking("one".into(), keeps).unwrap();
    let files = || {
        let folder = std::fs::read_dir(dir.path().join(PHOTOS)).unwrap();
        folder.count()
    };
    shows(&post, 1, b"\xff\xd8\xff the first");
    assert_eq!(files(), 1);
    post.later(TimeDelta::days(20));
    shows(&post, 2, b"\xff\xd8\xff the second");
    retain(&post);
    assert_eq!(files(), 2, "neither is old");
    post.later(TimeDelta::days(11));
    retain(&post);
    assert_eq!(files(), 1, "the first is 31 days old");
    post.later(TimeDelta::days(20));
    retain(&post);
    assert_eq!(files(), 0, "the second is 31 days old");
    post.stop();
}

/// Sends a picture, and lets the network give it out.
fn shows(post: &Post, number: i64, bytes: &[u8]) {
    let now = *post.clock.lock().unwrap();
    let photo = Photo {
        file: format!("file-{number}"),
        bytes: None,
        caption: Some("the gauge".into()),
        album: None,
    };
    let inbound = Inbound {
        at: now,
        received: now,
        body: Body::Photo(photo),
        ..inbound(number, "")
    };
    post.window.batch_blocking(vec![inbound]).unwrap();
    let mut wanted = post.parcels.iter().filter_map(|parcel| parcel.fetch);
    let (key, file) = wanted.next().unwrap();
    assert_eq!(file, format!("file-{number}"));
    post.window.photo(&key, Ok(bytes.to_vec()));
    // the clerk works in turn: what follows waits until the picture is kept
    post.window.show_blocking().unwrap();
}

/// So many messages take many slices to go through.
const MANY: i64 = 1_500;

/// A clerk that has been told of the willow many times.
fn told_of_the_willow(dir: &std::path::Path) -> Post {
    let post = Post::open(dir, Files);
    let messages: Vec<Inbound> = (1..=MANY)
        .map(|number| inbound(number, "the willow"))
        .collect();
    for batch in messages.chunks(100) {
        post.window.batch_blocking(batch.to_vec()).unwrap();
    }
    for parcel in post.parcels.try_iter() {
        post.window.sent(parcel.id.unwrap(), 0, 1, 900);
    }
    post
}

/// Asks for a person's texts to be taken out, and does not wait for it.
fn begin_to_forget(post: &Post) {
    let runtime = tokio::runtime::Builder::new_current_thread()
        .build()
        .unwrap();
    let dana = Forget::Person("dana".into());
    runtime.block_on(async {
        tokio::select! {
            biased;
            outcome = post.window.forget(dana) => panic!("done at once: {outcome:?}"),
            () = std::future::ready(()) => {}
        }
    });
}

#[test]
fn a_message_is_answered_while_texts_are_taken_out() {
    let dir = tempfile::tempdir().unwrap();
    let post = told_of_the_willow(dir.path());
    begin_to_forget(&post);
    post.window
        .batch_blocking(vec![inbound(MANY + 1, "the brook")])
        .unwrap();
    assert!(
        holds(dir.path(), "willow"),
        "it waited until all were taken out"
    );
    let dana = Forget::Person("dana".into());
    post.window.forget_blocking(dana).unwrap();
    assert!(!holds(dir.path(), "willow"));
    assert_eq!(keys(dir.path()).len(), MANY as usize + 1, "nothing is lost");
    post.stop();
    assert_eq!(hosebib::store::verify(dir.path()).unwrap().damage, []);
}

/// Waits until the clerk, left to itself, has taken out what it was asked to.
#[track_caller]
fn wait_until_gone(dir: &std::path::Path) {
    let end = std::time::Instant::now() + std::time::Duration::from_secs(60);
    while holds(dir, "willow") {
        assert!(std::time::Instant::now() < end, "the wish is forgotten");
        std::thread::sleep(std::time::Duration::from_millis(50));
    }
}

#[test]
fn it_begins_anew_where_another_fleet_is_loaded_meanwhile() {
    let dir = tempfile::tempdir().unwrap();
    let post = told_of_the_willow(dir.path());
    begin_to_forget(&post);
    post.window.load_blocking("two".into(), fleet()).unwrap();
    assert!(holds(dir.path(), "willow"), "nothing was left to do");
    wait_until_gone(dir.path());
    post.stop();
    assert_eq!(hosebib::store::verify(dir.path()).unwrap().damage, []);
    let post = Post::open(dir.path(), Files);
    assert_eq!(keys(dir.path()).len(), MANY as usize);
    post.stop();
}

#[test]
fn a_second_wish_for_the_same_person_outlives_a_stop() {
    let dir = tempfile::tempdir().unwrap();
    let post = told_of_the_willow(dir.path());
    begin_to_forget(&post);
    post.says(MANY + 1, "the late willow").unwrap();
    let parcel = post.parcels.recv().unwrap();
    post.window.sent(parcel.id.unwrap(), 0, 1, 901);
    begin_to_forget(&post);
    post.stop();
    let post = Post::open(dir.path(), Files);
    wait_until_gone(dir.path());
    post.stop();
}

#[test]
fn a_wish_that_a_stop_broke_off_is_carried_out_after_it() {
    let dir = tempfile::tempdir().unwrap();
    let post = told_of_the_willow(dir.path());
    begin_to_forget(&post);
    post.stop();
    assert!(holds(dir.path(), "willow"), "the stop waited for it");
    let post = Post::open(dir.path(), Files);
    wait_until_gone(dir.path());
    post.stop();
    let (turns, post) = (
        hosebib::store::read_only(dir.path()).unwrap().count(),
        Post::open(dir.path(), Files),
    );
    post.stop();
    assert_eq!(
        hosebib::store::read_only(dir.path()).unwrap().count(),
        turns,
        "it is not carried out twice"
    );
}
