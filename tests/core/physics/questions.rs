//! Asking by name: what is refused, and with which words.

use hosebib::physics::sum::{self, Kind, SumError};
use serde_json::{Value, json};

fn ask(quantity: &str, inputs: Value) -> Result<sum::Answer, SumError> {
    sum::answer(quantity, inputs.as_object().unwrap())
}

fn refusal(quantity: &str, inputs: Value) -> String {
    ask(quantity, inputs).unwrap_err().to_string()
}

#[test]
fn an_unknown_name_is_answered_with_the_nearest() {
    assert_eq!(
        refusal("velocity_fts", json!({})),
        "`velocity_fts` is no quantity known here; did you mean `velocity_ft_s`?"
    );
    assert_eq!(
        refusal("hose_loss", json!({})),
        "`hose_loss` is no quantity known here; did you mean `hose_loss_hazen_williams_psi`?"
    );
    assert_eq!(refusal("zzz", json!({})), "`zzz` is no quantity known here");
}

#[test]
fn a_missing_or_impossible_input_is_refused_with_its_range() {
    assert_eq!(
        refusal("velocity_ft_s", json!({"flow_gpm": 8})),
        "`id_in` is missing, a number from 0.1 to 24 in is needed"
    );
    assert_eq!(
        refusal("velocity_ft_s", json!({"flow_gpm": 8, "id_in": -1})),
        "`id_in` must be a number from 0.1 to 24 in, `-1` is out of range"
    );
    assert_eq!(
        refusal("velocity_ft_s", json!({"flow_gpm": "8", "id_in": 1})),
        "`flow_gpm` must be a number from 0 to 1,000 gpm, not `\"8\"`"
    );
    assert_eq!(
        refusal("velocity_ft_s", json!({"flow_gpm": 8, "idin": 1})),
        "`idin` is no input known here; did you mean `id_in`?"
    );
    assert!(
        refusal(
            "kf_level_pct",
            json!({"readings": [[1]], "step_pct": 25, "rate0": 5, "var_rate0": 4})
        )
        .contains("rows")
    );
}

#[test]
fn inputs_impossible_together_are_refused() {
    let queue = json!({"servers": 4, "arrivals_h": 160, "service_s": 90});
    assert!(refusal("mmc_mean_wait_s", queue).contains("without end"));
    let pipe = json!({"id_in": 1, "od_in": 0.5, "air_F": 0, "h_total_W_m2K": 50});
    assert!(refusal("pipe_hours_to_32F", pipe).contains("outside diameter"));
    let loads = json!({"running_W": [1500, 800], "starting_W": [3600]});
    assert!(refusal("generator_rated_W", loads).contains("each load"));
}

#[test]
fn what_never_comes_to_pass_is_null() {
    let foam =
        json!({"gal": 200, "area_ft2": 59.3, "R_ft2Fh_Btu": 4.25, "air_F": 0, "heater_W": 300});
    assert_eq!(ask("tank_hours_to_32F", foam).unwrap().value, Value::Null);
    let mild = json!({"id_in": 0.75, "air_F": 35});
    assert_eq!(
        ask("hose_hours_to_blocked", mild).unwrap().value,
        Value::Null
    );
}

#[test]
fn what_was_assumed_is_said() {
    let answer = ask("hose_hours_to_32F", json!({"id_in": 0.75, "air_F": 20})).unwrap();
    assert!(answer.assumed.contains(&("wind_mph", json!(10))));
    assert!(answer.assumed.contains(&("water_F", json!(50))));
    let all_told = json!({"amps": 16, "one_way_ft": 150, "awg": 14});
    let answer = ask("voltage_drop_V", all_told).unwrap();
    assert_eq!(answer.value, json!(15.072));
    assert!(answer.assumed.is_empty());
}

#[test]
fn flags_and_words_are_read_as_people_write_them() {
    let with = |alcohol: Value| {
        ask(
            "fema_urinals",
            json!({"patrons": 400, "alcohol": alcohol, "hours": 5}),
        )
        .unwrap()
        .value
    };
    assert_eq!(with(json!(true)), with(json!(1)));
    let tingle = ask("first_step", json!({"symptom": "Tingle"})).unwrap();
    assert_eq!(tingle.value, json!("power-off-now"));
    assert!(refusal("first_step", json!({"symptom": "schock"})).contains("`shock`"));
}

#[test]
fn every_quantity_names_its_source_and_sane_inputs() {
    let mut names = Vec::new();
    for (topic, quantities) in sum::registry() {
        for quantity in *quantities {
            assert!(
                !quantity.source.is_empty() && !quantity.unit.is_empty(),
                "{}",
                quantity.name
            );
            assert!(
                !names.contains(&quantity.name),
                "{topic} repeats {}",
                quantity.name
            );
            names.push(quantity.name);
            for input in quantity.inputs {
                let (Kind::Number(low, high) | Kind::Whole(low, high)) = input.kind else {
                    continue;
                };
                let usual = input.default.filter(|usual| !usual.is_nan());
                assert!(low < high, "{} {}", quantity.name, input.name);
                assert!(usual.is_none_or(|usual| (low..=high).contains(&usual)));
            }
        }
    }
    assert!(names.len() > 110, "{}", names.len());
}
