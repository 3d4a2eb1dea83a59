//! The plan for plugging in, put into lines.

use super::super::answer::Reply;
use super::super::situate::Case;
use crate::quantity::Measure;
use crate::reply::Arg;
use crate::rules::{self, PlugIn};

/// Says what to expect of the cords that a message tells of.
pub(in crate::desk) fn tell(cases: &[Case], reply: &mut Reply<'_>) {
    for case in cases {
        let plan = case
            .situation()
            .and_then(|situation| rules::plug_in(&situation));
        if let Some(plan) = plan {
            tell_one(&plan, reply);
        }
    }
}

fn tell_one(plan: &PlugIn, reply: &mut Reply<'_>) {
    if let Some(end) = plan.cord {
        let what = [
            (end.cord_ft, Measure::Ft),
            (f64::from(end.cord_awg), Measure::Awg),
            (end.amps, Measure::Amp),
        ]
        .map(|(value, measure)| reply.voice.number(value, measure))
        .join(", ");
        let mut args = vec![
            ("value", Arg::Number(end.volts, Measure::Volt)),
            ("what", what.into()),
        ];
        let key = match end.read {
            None => "plug-volts",
            Some(_) if end.is_low() => "plug-volts-low",
            Some(_) => "plug-volts-good",
        };
        args.extend(
            end.read
                .map(|read| ("read", Arg::Number(read, Measure::Volt))),
        );
        reply.say(key, &args);
    }
    if let Some(rating) = plan.generator {
        let air = reply.voice.number(rating.air_f, Measure::DegF);
        let air = if rating.air_taken {
            reply.voice.say("plug-taken", &[("value", air.into())])
        } else {
            air
        };
        let height = reply.voice.number(rating.altitude_ft, Measure::Ft);
        let what = format!("{height}, {air}");
        reply.say(
            "plug-generator",
            &[
                ("value", Arg::Number(rating.watts, Measure::Watt)),
                ("what", what.into()),
            ],
        );
    }
}
