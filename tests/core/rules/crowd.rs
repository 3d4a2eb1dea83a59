use hosebib::finding::{FindingId as Id, Urgency};
use hosebib::heard::{Fault, ReadingKey as R};

use super::support::{said, unit};

// common practice, no source: busy share over 0.75 note, over 0.85 warn, from 1 act; trailer 9 has seven stalls, 90 s a use, a peak of
// twice 0.25 uses a guest and hour, so 7 × 80 = 560 guests keep it busy all the time
#[test]
fn the_busy_share_of_the_peak_sets_the_urgency() {
    let guests = |n| unit("9").hears("2027-06-05 13:00", said().read(R::Guests, n));
    guests(420.0).lacks(Id::CrowdUnderServed); // 0.75
    guests(421.0).has(Id::CrowdUnderServed, Urgency::Plan);
    guests(476.0).has(Id::CrowdUnderServed, Urgency::Plan); // 0.85
    guests(477.0).has(Id::CrowdUnderServed, Urgency::Soon);
    guests(559.0).has(Id::CrowdUnderServed, Urgency::Soon);
    guests(560.0).has(Id::CrowdUnderServed, Urgency::Now);
}

// "one stall out of order is therefore a queue matter": 420 guests on six stalls are 0.875
#[test]
fn a_stall_out_of_order_is_a_queue_matter() {
    unit("9")
        .after("2027-06-05 12:30", said().read(R::Guests, 420.0))
        .hears("2027-06-05 13:00", said().wrong(Fault::ToiletClog))
        .has(Id::CrowdUnderServed, Urgency::Soon)
        .says(Id::CrowdUnderServed, "crowd-under-served-stall-out")
        .near(Id::CrowdUnderServed, "stalls", 6.0, 0.0);
}

// 210 guests on seven stalls are 0.375, on three 0.875: a count of stalls is taken at its word
#[test]
fn three_toilets_clogged_are_three_stalls_out() {
    let clogged = |count| {
        unit("9")
            .after("2027-06-05 12:30", said().read(R::Guests, 210.0))
            .hears(
                "2027-06-05 13:00",
                said().wrong(Fault::ToiletClog).read(R::StallsOut, count),
            )
    };
    clogged(1.0).lacks(Id::CrowdUnderServed);
    clogged(3.0).lacks(Id::CrowdUnderServed); // 0.656
    clogged(4.0)
        .has(Id::CrowdUnderServed, Urgency::Soon)
        .near(Id::CrowdUnderServed, "stalls", 3.0, 0.0)
        .near(Id::CrowdUnderServed, "stalls_out", 4.0, 0.0);
    unit("9")
        .after(
            "2027-06-05 12:30",
            said().wrong(Fault::ToiletClog).read(R::StallsOut, 4.0),
        )
        .after("2027-06-05 12:45", said().over(Fault::ToiletClog))
        .hears("2027-06-05 13:00", said().read(R::Guests, 210.0))
        .lacks(Id::CrowdUnderServed);
}
