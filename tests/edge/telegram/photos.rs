//! Pictures: kept with the check-in, checked, forgotten.

use super::*;
use serde_json::json;

const JPEG: &[u8] = b"\xff\xd8\xff\xe0\x00\x10JFIF a gauge";

fn photo(file: &str, caption: Option<&str>) -> Value {
    let mut photo =
        json!({"photo": [{"file_id": file, "file_unique_id": file, "width": 1280, "height": 960}]});
    if let Some(caption) = caption {
        photo["caption"] = caption.into();
    }
    photo
}

/// The files under the data directory's photos, by name.
fn kept(folders: &Folders) -> Vec<String> {
    let Ok(folder) = std::fs::read_dir(folders.data.path().join("photos")) else {
        return Vec::new();
    };
    folder
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect()
}

#[track_caller]
fn wait_for_files(folders: &Folders, count: usize) -> Vec<String> {
    for _ in 0..3000 {
        let files = kept(folders);
        if files.len() == count && files.iter().all(|name| !name.ends_with(".part")) {
            return files;
        }
        std::thread::sleep(std::time::Duration::from_millis(20));
    }
    panic!("never {count} files: {:?}", kept(folders));
}

#[test]
fn a_photo_is_kept_with_its_check_in_and_its_caption_is_read() {
    let (api, folders) = (BotApi::start(), Folders::new());
    api.state()
        .files
        .insert("../../etc/gauge".into(), b"no".to_vec());
    api.state().files.insert("gauge".into(), JPEG.to_vec());
    // the network fails for a while, and the photo is fetched all the same
    api.faults("getFile", [Fault::Status(502, "Bad Gateway")]);
    let bot = Bot::start(&api, &folders);
    api.sends(77, photo("gauge", Some("12 battery 12.6")));
    let reply = api.replies(77, 1)[0].clone();
    assert!(
        reply.contains("12.6") && reply.contains("Photo noted with 12"),
        "{reply}"
    );
    let files = wait_for_files(&folders, 1);
    let whole = std::fs::read(folders.data.path().join("photos").join(&files[0])).unwrap();
    assert_eq!(whole, JPEG);
    assert!(
        files[0].ends_with(".jpg") && files[0].len() == 68,
        "{files:?}"
    );
    assert!(bot.stop());
    let photos = records(folders.data.path(), "photo");
    let message = &records(folders.data.path(), "message")[0];
    assert_eq!(
        (&photos[0]["unit"], &photos[0]["key"]),
        (&json!("12"), &message["key"])
    );
}

#[test]
fn a_photo_without_words_goes_with_the_unit_talked_about_or_is_asked_about() {
    let (api, folders) = (BotApi::start(), Folders::new());
    api.state().files.insert("one".into(), JPEG.to_vec());
    let bot = Bot::start(&api, &folders);
    api.sends(77, photo("one", None));
    let asked = api.replies(77, 1)[0].clone();
    assert!(asked.contains("Which unit"), "{asked}");
    api.says(77, "14");
    assert!(api.replies(77, 2)[1].contains("14"));
    api.sends(77, photo("one", None));
    assert!(api.replies(77, 3)[2].contains("Photo noted with 14"));
    wait_for_files(&folders, 1);
    assert!(bot.stop());
    assert_eq!(records(folders.data.path(), "photo-of")[0]["unit"], "14");
}

#[test]
fn what_is_no_picture_or_too_large_is_refused_in_words() {
    let (api, folders) = (BotApi::start(), Folders::new());
    api.state()
        .files
        .insert("text".into(), b"#!/bin/sh".to_vec());
    let mut large = JPEG.to_vec();
    large.resize(10 * 1024 * 1024 + 1, 0);
    api.state().files.insert("large".into(), large);
    let bot = Bot::start(&api, &folders);
    api.sends(77, photo("text", Some("12 gauge")));
    let texts = api.replies(77, 2);
    assert!(texts[1].contains("not a JPEG"), "{texts:?}");
    api.sends(77, photo("large", Some("12 gauge")));
    let texts = api.replies(77, 4);
    assert!(
        texts.last().unwrap().contains("larger than 10 MB"),
        "{texts:?}"
    );
    api.sends(77, photo("missing", Some("12 gauge")));
    let texts = api.replies(77, 6);
    assert!(texts.last().unwrap().contains("Send it again"), "{texts:?}");
    assert!(bot.stop());
    assert!(kept(&folders).is_empty());
}

#[test]
fn a_photo_is_fetched_after_a_restart_and_forgotten_with_its_sender() {
    let (api, folders) = (BotApi::start(), Folders::new());
    api.state().files.insert("one".into(), JPEG.to_vec());
    let slow = std::time::Duration::from_secs(2);
    api.faults("getFile", [Fault::Slow(slow)]);
    let bot = Bot::start(&api, &folders);
    api.sends(77, photo("one", Some("12 gauge")));
    api.replies(77, 1);
    bot.kill();
    assert!(kept(&folders).is_empty());
    let bot = Bot::start(&api, &folders);
    wait_for_files(&folders, 1);
    assert!(bot.stop());
    let forgotten = Command::new(env!("CARGO_BIN_EXE_hosebib"))
        .args(["forget", "dana", "--data"])
        .arg(folders.data.path())
        .output()
        .unwrap();
    assert!(forgotten.status.success(), "{forgotten:?}");
    assert!(kept(&folders).is_empty());
}
