//! Every finding of the registry has a case in which it fires and a near miss: by a number just inside its limit
//! (`limits`), or, where nothing but words bring it up, by the nearest words that must not (`told`). What has neither fails
//! here; what no conversation brings up fails beside the conversations.

mod limits;
mod told;

use hosebib::finding::FindingId;

#[test]
fn every_finding_has_a_firing_case_and_a_near_miss() {
    let limits = limits::rows().map(|row| row.id);
    let rows: Vec<FindingId> = limits.chain(told::rows().map(|row| row.id)).collect();
    for id in FindingId::ALL {
        let count = rows.iter().filter(|of| *of == id).count();
        assert_eq!(count, 1, "{id} has {count} rows");
    }
}

#[test]
fn each_fires_at_its_limit_and_not_just_inside() {
    let mut wrong = Vec::new();
    for row in limits::rows() {
        let (fires, near) = ((row.fires)().ids(), (row.near)().ids());
        if !fires.contains(&row.id) || near.contains(&row.id) {
            wrong.push(format!("{}: {fires:?}, near {near:?}", row.id));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn each_fires_by_the_words_for_it_and_not_by_the_nearest_others() {
    let mut wrong = Vec::new();
    for row in told::rows() {
        for (who, text) in row.fires {
            let (found, _) = told::found(who, text);
            if !found.contains(&row.id) {
                wrong.push(format!(
                    "{} is not brought up by {text:?}: {found:?}",
                    row.id
                ));
            }
        }
        for (who, text) in row.near {
            let (found, understood) = told::found(who, text);
            if found.contains(&row.id) {
                wrong.push(format!("{} is brought up by {text:?}", row.id));
            }
            if !understood {
                wrong.push(format!("{text:?} proves nothing: it is not understood"));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
