//! The cases of `tests/data/statics.json`. None of them is a published table: each was worked
//! out by two or three independent solvers (named in the file's head), some by a formula of the textbooks besides.

use serde_json::Value;
use storyrod::statics::continuous::{Hold, Line, Prepared, Prop, Push, Response, Stretch};
use storyrod::statics::pattern::{envelope, patterns};
use storyrod::units::SecondMoment;
use storyrod::units::{Force, Length, LineLoad, Moment, SpringRate, Stress};

fn cases() -> Value {
    serde_json::from_str(include_str!("../data/statics.json")).unwrap()
}

fn list(value: &Value) -> &[Value] {
    value.as_array().unwrap()
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap()
}

fn feet(value: &Value) -> Length {
    Length::decimal_inches(number(value) * 12.0)
}

fn member(inputs: &Value) -> Line {
    let modulus = Stress::psi(number(&inputs["E_psi"]));
    let stretches = list(&inputs["I_in4"]).iter().map(|stretch| Stretch {
        to: feet(&stretch["x1_ft"]),
        rigidity: modulus * SecondMoment::in4(number(&stretch["I"])),
        shear_rigidity: None,
    });
    let props = list(&inputs["supports"]).iter().map(|support| Prop {
        at: feet(&support["x_ft"]),
        hold: match support["kind"].as_str().unwrap() {
            "pin" => Hold::Pinned,
            "fix" => Hold::Fixed,
            "spring" => Hold::Spring(SpringRate::lb_per_in(number(&support["k_lb_per_in"]))),
            other => unreachable!("{other}"),
        },
        settlement: Length::decimal_inches(number(&support["settlement_in"])),
    });
    Line {
        length: feet(&inputs["L_ft"]),
        stretches: stretches.collect(),
        props: props.collect(),
        hinges: list(&inputs["hinges_ft"]).iter().map(feet).collect(),
    }
}

fn loads(inputs: &Value) -> Vec<Push> {
    let spread = list(&inputs["distributed"]).iter().map(|load| Push::Spread {
        from: feet(&load["x0_ft"]),
        to: feet(&load["x1_ft"]),
        start: LineLoad::plf(number(&load["w0_plf"])),
        end: LineLoad::plf(number(&load["w1_plf"])),
    });
    let points = list(&inputs["points"])
        .iter()
        .map(|load| Push::Point { at: feet(&load["x_ft"]), force: Force::lb(number(&load["P_lb"])) });
    let couples = list(&inputs["couples"])
        .iter()
        .map(|load| Push::Couple { at: feet(&load["x_ft"]), moment: Moment::lb_ft(number(&load["C_lbft"])) });
    spread.chain(points).chain(couples).collect()
}

fn response(prepared: &Prepared, inputs: &Value) -> Response {
    let loaded = prepared.response(&loads(inputs)).unwrap();
    Response::sum(&[(1.0, &loaded), (1.0, &prepared.settling())])
}

#[track_caller]
fn assert_close(value: f64, expected: f64, share: f64, scale: f64, what: &str) {
    let tolerance = share * expected.abs().max(1e-3 * scale);
    assert!((value - expected).abs() <= tolerance, "{what}: {value}, not {expected}");
}

/// The place agrees to 0.01 ft, or the value there is the same: of equal extremes either may be named.
#[track_caller]
fn assert_place(place: Length, expected: &Value, value_there: f64, value: f64, what: &str) {
    let near = (place - feet(expected)).abs() <= Length::decimal_inches(0.12);
    assert!(
        near || (value_there - value).abs() <= 1e-4 * value.abs() + 1e-9,
        "{what} at {place}, not at {expected} ft"
    );
}

#[test]
fn derived_and_oracle_cases_agree() {
    let cases = cases();
    assert_eq!(list(&cases["beams"]).len(), 25);
    for case in list(&cases["beams"]) {
        let id = case["id"].as_str().unwrap();
        let (inputs, expected) = (&case["inputs"], &case["expected"]);
        let prepared = member(inputs).prepare().unwrap();
        let response = response(&prepared, inputs);
        let total: f64 = response.reactions.iter().map(|reaction| reaction.to_lb().abs()).sum();

        let reactions = list(&expected["reactions"]);
        assert_eq!(reactions.len(), response.reactions.len());
        for (reaction, expected) in response.reactions.iter().zip(reactions) {
            assert_close(reaction.to_lb(), number(&expected["R_lb"]), 1e-4, total, &format!("{id} reaction"));
        }
        for expected in list(&expected["fixed_moments"]) {
            let at = feet(&expected["x_ft"]);
            let index =
                list(&inputs["supports"]).iter().position(|support| feet(&support["x_ft"]) == at).unwrap();
            let moment = response.fixed_moments[index].to_lb_ft();
            assert_close(moment, number(&expected["M_lbft"]), 1e-4, total, &format!("{id} fixed moment"));
        }

        let extremes = response.extremes();
        for ((moment, at), name) in [(extremes.sagging, "M_max"), (extremes.hogging, "M_min")] {
            let expected = &expected[name];
            let value = number(&expected["lbft"]);
            assert_close(moment.to_lb_ft(), value, 1e-4, total, &format!("{id} {name}"));
            // A couple at the end counts on its inner side.
            let there = response.moment_at(feet(&expected["x_ft"])).to_lb_ft();
            assert_place(at, &expected["x_ft"], there, value, &format!("{id} {name}"));
        }
        let value = number(&expected["V_abs_max"]["lb"]);
        assert_close(extremes.shear.0.abs().to_lb(), value, 1e-4, total, &format!("{id} shear"));
        let (left, right) = response.shear_at(feet(&expected["V_abs_max"]["x_ft"]));
        let there = left.abs().max(right.abs()).to_lb();
        assert_place(extremes.shear.1, &expected["V_abs_max"]["x_ft"], there, value, &format!("{id} shear"));

        for ((drop, at), name, sign) in
            [(extremes.down, "defl_down_max", 1.0), (extremes.up, "defl_up_max", -1.0)]
        {
            let expected = &expected[name];
            let value = number(&expected["inch"]);
            assert_close(drop.to_inches(), value, 1e-3, 0.01, &format!("{id} {name}"));
            let there = sign * response.deflection_at(feet(&expected["x_ft"])).to_inches();
            assert_place(at, &expected["x_ft"], there, value, &format!("{id} {name}"));
        }
    }
}

/// `10` of the case file is live load on the first of two spans.
fn spans_of(pattern: &Value) -> Vec<bool> {
    pattern.as_str().unwrap().chars().map(|mark| mark == '1').collect()
}

#[test]
fn derived_and_oracle_patterns_agree() {
    let cases = cases();
    assert_eq!(list(&cases["patterns"]).len(), 3);
    for case in list(&cases["patterns"]) {
        let id = case["id"].as_str().unwrap();
        let inputs = &case["inputs"];
        let length = feet(&inputs["L_ft"]);
        let rigidity = Stress::psi(number(&inputs["E_psi"])) * SecondMoment::in4(number(&inputs["I_in4"]));
        let line = Line {
            length,
            stretches: vec![Stretch { to: length, rigidity, shear_rigidity: None }],
            props: list(&inputs["supports_ft"])
                .iter()
                .map(|at| Prop { at: feet(at), hold: Hold::Pinned, settlement: Length::ZERO })
                .collect(),
            hinges: Vec::new(),
        };
        let everywhere = |load: f64| {
            let load = LineLoad::plf(load);
            [Push::Spread { from: Length::ZERO, to: length, start: load, end: load }]
        };
        let prepared = line.prepare().unwrap();
        let steady = prepared.response(&everywhere(number(&inputs["D_plf"]))).unwrap();
        let patterned = patterns(&prepared, &everywhere(number(&inputs["L_plf"]))).unwrap();
        let envelope = envelope(&steady, &patterned, 1.0);
        let name_of = |pattern: usize| patterned.patterns[pattern].spans.clone();
        let total = (number(&inputs["D_plf"]) + number(&inputs["L_plf"])) * number(&inputs["L_ft"]);

        let reactions = list(&case["reactions"]);
        assert_eq!(reactions.len(), envelope.reactions.len());
        for (range, expected) in envelope.reactions.iter().zip(reactions) {
            assert_close(range.most.0.to_lb(), number(&expected["max_lb"]), 1e-4, total, id);
            assert_close(range.least.0.to_lb(), number(&expected["min_lb"]), 1e-4, total, id);
            assert_eq!(name_of(range.most.1), spans_of(&expected["max_pattern"]), "{id}");
            assert_eq!(name_of(range.least.1), spans_of(&expected["min_pattern"]), "{id}");
        }

        let regions = list(&case["regions"]);
        assert_eq!(regions.len(), envelope.spans.len());
        for (span, expected) in envelope.spans.iter().zip(regions) {
            assert_close(span.sagging.value.to_lb_ft(), number(&expected["M_max_lbft"]), 1e-4, total, id);
            assert_close(span.hogging.value.to_lb_ft(), number(&expected["M_min_lbft"]), 1e-4, total, id);
            assert_close(span.down.value.to_inches(), number(&expected["total_defl_max_in"]), 1e-3, 0.01, id);
            // A region without sagging has its largest moment, zero, under every pattern.
            if number(&expected["M_max_lbft"]) > 0.0 {
                assert_eq!(name_of(span.sagging.pattern), spans_of(&expected["M_max_pattern"]), "{id}");
                assert_place(span.sagging.at, &expected["M_max_x_ft"], f64::NAN, 0.0, id);
            }
            assert_eq!(name_of(span.hogging.pattern), spans_of(&expected["M_min_pattern"]), "{id}");
            assert_place(span.hogging.at, &expected["M_min_x_ft"], f64::NAN, 0.0, id);
            assert_eq!(name_of(span.down.pattern), spans_of(&expected["total_defl_pattern"]), "{id}");
            assert_place(span.down.at, &expected["total_defl_x_ft"], f64::NAN, 0.0, id);
        }
        let shear = envelope.whole.shear;
        assert_close(shear.value.abs().to_lb(), number(&case["V_abs_max"]["lb"]), 1e-4, total, id);
    }
}

/// A joist field over a middle beam, the joist continuous: what one foot of it gives the beam and each wall.
#[test]
fn derived_and_oracle_house_agrees_on_its_continuous_joist() {
    let cases = cases();
    let house = &list(&cases["houses"])[0];
    let inputs = &house["inputs"];
    let spans = list(&inputs["joist_spans_ft"]);
    let (beam, length) = (feet(&spans[0]), feet(&spans[0]) + feet(&spans[1]));
    let rigidity = Stress::psi(1_400_000.0) * SecondMoment::in4(178.0);
    let line = Line {
        length,
        stretches: vec![Stretch { to: length, rigidity, shear_rigidity: None }],
        props: [Length::ZERO, beam, length]
            .map(|at| Prop { at, hold: Hold::Pinned, settlement: Length::ZERO })
            .to_vec(),
        hinges: Vec::new(),
    };
    let load = LineLoad::plf(number(&inputs["D_psf"]) + number(&inputs["L_psf"]));
    let push = Push::Spread { from: Length::ZERO, to: length, start: load, end: load };
    let response = line.prepare().unwrap().response(&[push]).unwrap();
    let expected = &house["results"]["continuous_joist"];
    assert_close(
        -response.moment_at(beam).to_lb_ft(),
        number(&expected["M_over_beam_lbft_per_ft"]),
        1e-4,
        1.0,
        "M",
    );
    let [left, middle, right] = response.reactions[..] else { unreachable!() };
    assert_close(left.to_lb(), number(&expected["left_wall_plf"]), 1e-4, 1.0, "left wall");
    assert_close(right.to_lb(), number(&expected["right_wall_plf"]), 1e-4, 1.0, "right wall");
    let with_beam = middle.to_lb() + number(&inputs["beam_self_plf"]);
    assert_close(with_beam, number(&expected["beam_plf"]), 1e-4, 1.0, "beam");
}
