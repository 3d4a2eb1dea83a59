//! Water that is said to be on where the site's card says that there is none.

use super::super::answer::Reply;
use super::super::situate::Case;
use crate::fleet::Source;
use crate::heard::Event;

/// Asks where the water comes from: it is logged as told, and whoever comes next must know.
pub(super) fn tell(cases: &[Case], reply: &mut Reply<'_>) {
    for case in cases {
        let says_on = case.report.events.contains(&Event::WaterOn);
        let dry = case.site().filter(|site| site.water.source == Source::None);
        if let Some(site) = dry.filter(|_| says_on) {
            let args = [
                ("unit", case.unit.as_str().into()),
                ("site", site.name.as_str().into()),
            ];
            reply.say("plug-water-from", &args);
        }
    }
}
