//! Who works alone stays watched: by whatever words the clock is wanted, moved on or told of somebody else.

use chrono::TimeDelta;

use super::Crew;

impl Crew {
    /// Returns whether a clock runs for somebody, and the trailer it is on.
    fn clock(&self, who: &str) -> Option<Option<String>> {
        let clock = self.desk.book().ahead().alone(who)?;
        Some(clock.unit.as_ref().map(|unit| unit.to_string()))
    }

    /// Returns in how many minutes somebody is asked.
    fn asked_in(&self, who: &str) -> Option<i64> {
        let clock = self.desk.book().ahead().alone(who)?;
        Some((clock.due - self.now).num_minutes())
    }
}

#[test]
fn a_clock_is_set_by_who_is_below_and_says_when_they_will_be_out() {
    for (who, text, minutes) in [
        ("tobin", "under 12 again, back in ten", 10),
        (
            "tobin",
            "going in the crawl space under 12, call me in ten",
            10,
        ),
        (
            "ines",
            "me voy a meter abajo de la 12, si no salgo en 15 avisa",
            15,
        ),
        ("ines", "estoy solita en la 12, me checas en 20", 20),
    ] {
        let mut crew = Crew::new(false);
        let reply = crew.hears(who, text);
        assert_eq!(
            crew.clock(who),
            Some(Some("12".to_owned())),
            "{text}: {reply}"
        );
        assert_eq!(crew.asked_in(who), Some(minutes), "{text}: {reply}");
    }
}

#[test]
fn minutes_more_never_bring_the_clock_forward() {
    for more in ["need 10 more min", "almost done, 5 more min"] {
        let mut crew = Crew::new(false);
        let due = |crew: &Crew| crew.desk.book().ahead().alone("tobin").map(|it| it.due);
        crew.hears("tobin", "going under 12, check me in 15");
        let set = due(&crew);
        crew.hears("tobin", more);
        assert!(set.is_some() && due(&crew) == set, "{more}");
    }
}

#[test]
fn a_clock_runs_anew_for_who_goes_on_working_below() {
    for (who, set, on) in [
        (
            "tobin",
            "going under 12, check me in 15",
            "ok im going back under",
        ),
        ("tobin", "going under 12, check me in 15", "ok still here"),
        ("ines", "voy debajo de la 12, chécame en 15", "aquí sigo"),
        (
            "ines",
            "voy debajo de la 12, chécame en 15",
            "ok, sigo abajo",
        ),
    ] {
        let mut crew = Crew::new(false);
        crew.hears(who, set);
        crew.now += TimeDelta::minutes(8);
        let reply = crew.hears(who, on);
        assert_eq!(crew.asked_in(who), Some(15), "{on}: {reply}");
        assert!(!reply.contains("No entendí"), "{on}: {reply}");
        // "ok" alone still ends it
        crew.hears(who, "ok");
        assert_eq!(crew.clock(who), None, "{on}");
    }
}

#[test]
fn a_clock_that_asks_every_so_often_asks_again_until_it_is_ended() {
    for (who, set, end) in [
        (
            "tobin",
            "check on me every 20 min im by myself at 12",
            "im done",
        ),
        ("ines", "chécame cada 20, estoy sola en la 12", "ya terminé"),
    ] {
        let mut crew = Crew::new(false);
        crew.hears(who, set);
        crew.now += TimeDelta::minutes(18);
        let reply = crew.hears(who, "ok");
        assert_eq!(crew.asked_in(who), Some(20), "{set}: {reply}");
        crew.hears(who, end);
        assert_eq!(crew.clock(who), None, "{end}");
    }
}

#[test]
fn who_is_told_to_work_alone_has_the_clock_and_not_who_tells_it() {
    for (text, who) in [
        ("tobin works alone at 12 til 9 pm", "tobin"),
        (
            "juno is working alone at 16 for a while, check on juno in 30",
            "juno",
        ),
        ("lupe's on his own at 6 til 9 pm", "lupe"),
        ("lupe trabaja sola en la 6 hasta las 9 pm", "lupe"),
    ] {
        let mut crew = Crew::new(false);
        crew.now += TimeDelta::hours(6);
        let reply = crew.hears("nadia", text);
        assert!(crew.clock(who).is_some(), "{text}: {reply}");
        assert_eq!(crew.clock("nadia"), None, "{text}: {reply}");
    }
    let mut crew = Crew::new(false);
    let reply = crew.hears("nadia", "have abel check on 10");
    assert!(!reply.contains("clock"), "{reply}");
}

#[test]
fn word_that_a_lone_worker_called_and_is_fine_ends_their_clock() {
    for said in ["juno called me, hes fine", "me llamó juno, está bien"] {
        let mut crew = Crew::new(false);
        crew.hears("juno", "going under 16, check me in 15");
        let reply = crew.hears("nadia", said);
        assert_eq!(crew.clock("juno"), None, "{said}: {reply}");
    }
}
