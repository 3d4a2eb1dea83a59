//! "12 was shocking people yesterday", "anoche la 6 olía a gas": what was dangerous at an earlier hour or day stands there
//! still, where nobody who may has mended it. Of people it is over, one way or the other, and stays of that day.

use super::hear::add_dangers;
use super::meaning::Came;
use crate::heard::{Fault, Heard};

/// What does not go away by itself.
const STANDS: &[Fault] = &[
    Fault::Shock,
    Fault::GasSmell,
    Fault::BurntSmell,
    Fault::HotPlug,
    Fault::Spill,
];

impl Came<'_> {
    /// Adds the dangers that a message tells of an earlier day.
    pub(super) fn dangers_of_an_earlier_day(&self, text: &str, heard: &mut Heard) {
        let says = |list| self.desk.phrases.holds("earlier", list, text);
        if heard.ask.is_some() || !says("days") || says("mended") || says("not") {
            return;
        }
        let today = self.desk.phrases.without("earlier", "days", text);
        let scale = self.fleet.style.temperature;
        let told = self.desk.reader.hear_dangers(&today, scale).entries;
        if add_dangers(heard, told, |fault| STANDS.contains(fault)) {
            heard.unclear.clear();
            heard.set_aside.clear();
        }
    }
}
