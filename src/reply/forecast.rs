//! What is coming, in words: when a tank reaches its limit, when the battery runs down.

use super::voice::{Arg, Voice};
use crate::outlook::{BatteryOutlook, Outlook, TankOutlook};
use crate::quantity::Measure;

impl Voice<'_> {
    /// Says what is coming for a trailer, a line each for waste, fresh water and battery; that nothing is known where
    /// the outlook is empty.
    pub fn forecast(&self, outlook: &Outlook) -> String {
        let mut lines = Vec::with_capacity(3);
        if let Some(waste) = &outlook.waste {
            lines.push(self.tank_forecast("waste", waste));
        }
        if let Some(fresh) = &outlook.fresh {
            lines.push(self.tank_forecast("fresh", fresh));
        }
        if let Some(battery) = &outlook.battery {
            lines.push(self.battery_forecast(battery));
        }
        if lines.is_empty() {
            lines.push(self.word("forecast-none"));
        }
        lines.join("\n")
    }

    /// Says what is coming for one of `waste`, `fresh` and `battery`; none where nothing is known of it.
    pub fn forecast_of(&self, what: &str, outlook: &Outlook) -> Option<String> {
        match what {
            "waste" => Some(self.tank_forecast(what, outlook.waste.as_ref()?)),
            "fresh" => Some(self.tank_forecast(what, outlook.fresh.as_ref()?)),
            _ => Some(self.battery_forecast(outlook.battery.as_ref()?)),
        }
    }

    fn tank_forecast(&self, tank: &str, outlook: &TankOutlook) -> String {
        let limit = ("limit", Arg::Number(outlook.limit_pct, Measure::Pct));
        let past = match tank {
            "waste" => outlook.likely_pct >= outlook.limit_pct,
            _ => outlook.likely_pct <= outlook.limit_pct,
        };
        let key = |what: &str| format!("forecast-{tank}-{what}");
        let mut said = match (outlook.p10, outlook.p50, outlook.p90) {
            // nobody looked: it may be so, and somebody has to
            _ if past && outlook.unread => return self.say(&key("unread"), &[limit]),
            _ if past => self.say(&key("now"), &[limit]),
            (Some(early), Some(likely), Some(late)) => {
                let args = [
                    limit,
                    ("likely", likely.into()),
                    ("early", early.into()),
                    ("late", late.into()),
                ];
                self.say(&key("at"), &args)
            }
            (Some(early), Some(likely), None) => {
                let args = [limit, ("likely", likely.into()), ("early", early.into())];
                self.say(&key("perhaps"), &args)
            }
            (Some(early), None, _) => self.say(&key("early"), &[limit, ("early", early.into())]),
            _ => self.say(&key("never"), &[limit]),
        };
        if outlook.unread {
            said.push(' ');
            self.write(&mut said, "forecast-unread", &[]);
        } else if outlook.stuck {
            said.push(' ');
            self.write(&mut said, "forecast-stuck", &[]);
        } else if outlook.misread {
            said.push(' ');
            self.write(&mut said, "forecast-misread", &[]);
        }
        said
    }

    fn battery_forecast(&self, outlook: &BatteryOutlook) -> String {
        let amps = ("amps", Arg::Number(outlook.amps, Measure::Amp));
        match (outlook.p10, outlook.p50, outlook.p90) {
            (Some(early), Some(likely), Some(late)) => {
                let args = [
                    ("likely", likely.into()),
                    ("early", early.into()),
                    ("late", late.into()),
                    amps,
                ];
                self.say("forecast-battery-at", &args)
            }
            (_, Some(likely), _) => {
                self.say("forecast-battery-about", &[("likely", likely.into()), amps])
            }
            _ => self.say("forecast-battery-long", &[amps]),
        }
    }
}
