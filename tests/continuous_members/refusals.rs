//! What has no answer is refused in words, and nothing brings a number that is none.

use storyrod::statics::continuous::{Hold, Line, Prepared, Prop, Push, Response, Stretch, Unstable};
use storyrod::statics::pattern::{envelope, patterns};
use storyrod::units::{FlexuralRigidity, Force, Length, LineLoad, Moment, SpringRate};

fn feet(feet: i64) -> Length {
    Length::feet(feet)
}

fn prop(at: i64) -> Prop {
    Prop { at: feet(at), hold: Hold::Pinned, settlement: Length::ZERO }
}

fn line(length: i64, props: &[i64], hinges: &[i64]) -> Line {
    Line {
        length: feet(length),
        stretches: vec![Stretch {
            to: feet(length),
            rigidity: FlexuralRigidity::lb_in2(2e8),
            shear_rigidity: None,
        }],
        props: props.iter().copied().map(prop).collect(),
        hinges: hinges.iter().copied().map(feet).collect(),
    }
}

fn refusal(line: &Line) -> Unstable {
    line.prepare().err().unwrap()
}

fn simple() -> Prepared {
    line(12, &[0, 12], &[]).prepare().unwrap()
}

#[test]
fn members_that_cannot_stand() {
    let cases = [
        (line(12, &[], &[]), "nothing supports the member"),
        (line(12, &[4], &[]), "the part from 0\" to 12'-0\" can move without bending: a support is missing"),
        (
            line(24, &[0, 24], &[10]),
            "the part from 0\" to 24'-0\" can move without bending: a support is missing",
        ),
        (
            line(36, &[0, 12, 24, 36], &[14, 18, 22]),
            "the part from 14'-0\" to 22'-0\" can move without bending: a support is missing",
        ),
        (line(0, &[0], &[]), "the member has no length"),
        (line(-3, &[0], &[]), "the member has no length"),
        (line(12, &[0, 12, 0], &[]), "two supports stand at 0\""),
        (line(12, &[0, 13], &[]), "the support at 13'-0\" is off the member, which is 12'-0\" long"),
        (line(12, &[0, 12], &[-1]), "the joint at -1'-0\" is off the member, which is 12'-0\" long"),
    ];
    for (line, message) in cases {
        assert_eq!(refusal(&line).to_string(), message);
    }
}

#[test]
fn stiffness_that_is_none() {
    for rigidity in [0.0, -1.0, f64::NAN, f64::INFINITY, 1e-320] {
        let mut soft = line(12, &[0, 12], &[]);
        soft.stretches[0].rigidity = FlexuralRigidity::lb_in2(rigidity);
        assert_eq!(refusal(&soft), Unstable::NoRigidity { at: feet(12) });
        let mut soft = line(12, &[0, 12], &[]);
        soft.stretches[0].shear_rigidity = Some(Force::lb(rigidity));
        assert_eq!(refusal(&soft), Unstable::NoRigidity { at: feet(12) });
        let mut soft = line(12, &[0, 12], &[]);
        soft.props[0].hold = Hold::Spring(SpringRate::lb_per_in(rigidity));
        assert_eq!(refusal(&soft), Unstable::NoRigidity { at: Length::ZERO });
    }
    for ends in [vec![], vec![6], vec![6, 6, 12], vec![8, 6, 12], vec![13]] {
        let mut line = line(12, &[0, 12], &[]);
        let stretch = line.stretches[0];
        line.stretches = ends.iter().map(|&to| Stretch { to: feet(to), ..stretch }).collect();
        assert!(matches!(refusal(&line), Unstable::Stretches { .. }), "{ends:?}");
    }
}

#[test]
fn loads_that_have_no_place_or_no_size() {
    let spread = |from, to, start: f64, end: f64| Push::Spread {
        from: feet(from),
        to: feet(to),
        start: LineLoad::plf(start),
        end: LineLoad::plf(end),
    };
    for push in [
        spread(-1, 12, 1.0, 1.0),
        spread(0, 13, 1.0, 1.0),
        Push::Point { at: feet(13), force: Force::lb(1.0) },
        Push::Couple { at: feet(-1), moment: Moment::lb_ft(1.0) },
    ] {
        assert!(
            matches!(simple().response(&[push]), Err(Unstable::Off { what: "the load", .. })),
            "{push:?}"
        );
        assert!(matches!(patterns(&simple(), &[push]), Err(Unstable::Off { .. })), "{push:?}");
    }
    for none in [f64::NAN, f64::INFINITY] {
        for push in [
            spread(0, 12, none, 1.0),
            spread(0, 12, 1.0, none),
            Push::Point { at: feet(3), force: Force::lb(none) },
            Push::Couple { at: feet(3), moment: Moment::lb_ft(none) },
        ] {
            assert!(matches!(simple().response(&[push]), Err(Unstable::NotANumber { .. })), "{push:?}");
        }
    }
    for push in [spread(0, 12, 1e308, -1e308), Push::Point { at: feet(3), force: Force::lb(1e308) }] {
        assert_eq!(simple().response(&[push]), Err(Unstable::BeyondArithmetic), "{push:?}");
    }
    let jointed = line(24, &[0, 12, 24], &[12]).prepare().unwrap();
    let couple = Push::Couple { at: feet(12), moment: Moment::lb_ft(100.0) };
    assert_eq!(jointed.response(&[couple]), Err(Unstable::CoupleOnHinge { at: feet(12) }));
}

#[test]
fn a_load_may_be_written_from_either_end_and_nothing_off_the_member_counts() {
    let forwards =
        Push::Spread { from: feet(2), to: feet(9), start: LineLoad::plf(10.0), end: LineLoad::plf(70.0) };
    let backwards =
        Push::Spread { from: feet(9), to: feet(2), start: LineLoad::plf(70.0), end: LineLoad::plf(10.0) };
    let response = simple().response(&[forwards]).unwrap();
    assert_eq!(response, simple().response(&[backwards]).unwrap());
    for at in [feet(-1), feet(13)] {
        assert_eq!(response.moment_at(at), Moment::ZERO);
        assert_eq!(response.shear_at(at), (Force::ZERO, Force::ZERO));
        assert_eq!(response.deflection_at(at), Length::ZERO);
    }
    assert_eq!(response.shear_at(Length::ZERO).0, Force::ZERO);
    assert_eq!(response.shear_at(Length::ZERO).1, response.reactions[0]);
    assert_eq!(Response::sum(&[]), Response::default());
    assert!(simple().response(&[]).unwrap().reactions.iter().all(|reaction| reaction.to_lb() == 0.0));
}

#[test]
fn a_free_end_and_a_support_at_one_place_with_a_joint() {
    // A joint at an end changes nothing, but a fixed end with a joint is pinned.
    let load = Push::Spread {
        from: Length::ZERO,
        to: feet(12),
        start: LineLoad::plf(100.0),
        end: LineLoad::plf(100.0),
    };
    let mut jointed = line(12, &[0, 12], &[0, 12]);
    let plain = simple().response(&[load]).unwrap();
    assert_eq!(jointed.prepare().unwrap().response(&[load]).unwrap(), plain);
    jointed.props[0].hold = Hold::Fixed;
    assert_eq!(jointed.prepare().unwrap().response(&[load]).unwrap(), plain);
    let alone = line(12, &[0], &[0]);
    let mut alone = Line { props: vec![Prop { hold: Hold::Fixed, ..alone.props[0] }], ..alone };
    assert!(matches!(refusal(&alone), Unstable::Mechanism { .. }));
    alone.hinges.clear();
    assert!(alone.prepare().is_ok());
}

/// By hand: a force on a support goes straight down, under the patterns of one span alone: the right one, or the last.
#[test]
fn a_force_on_a_support_belongs_to_one_span() {
    let prepared = line(36, &[0, 12, 24, 36], &[]).prepare().unwrap();
    for (at, spans, support) in
        [(0, [true, false, false], 0), (12, [false, true, false], 1), (36, [false, false, true], 3)]
    {
        let push = Push::Point { at: feet(at), force: Force::lb(900.0) };
        let patterned = patterns(&prepared, &[push]).unwrap();
        assert_eq!(patterned.patterns.len(), 2);
        let loaded = patterned.patterns.last().unwrap();
        assert_eq!(loaded.spans, spans);
        assert!((loaded.response.reactions[support].to_lb() - 900.0).abs() < 1e-9);
    }
}

#[test]
fn ten_spans_take_only_the_patterns_that_matter() {
    let places: Vec<i64> = (0..=10).map(|span| 12 * span).collect();
    let prepared = line(120, &places, &[]).prepare().unwrap();
    let load = LineLoad::plf(400.0);
    let push = Push::Spread { from: Length::ZERO, to: feet(120), start: load, end: load };
    let patterned = patterns(&prepared, &[push]).unwrap();
    assert!(patterned.patterns.len() < 80, "{}", patterned.patterns.len());
    assert!(patterned.patterns.first().unwrap().spans.iter().all(|&is_loaded| !is_loaded));
    assert!(patterned.patterns.last().unwrap().spans.iter().all(|&is_loaded| is_loaded));

    // All 1,024 arrangements, each solved for itself, find nothing worse at supports.
    let nothing = prepared.response(&[]).unwrap();
    let found = envelope(&nothing, &patterned, 1.0);
    for bits in 0..1_u32 << 10 {
        let pushes: Vec<Push> = (0..10)
            .filter(|span| bits >> span & 1 == 1)
            .map(|span| Push::Spread {
                from: feet(12 * span),
                to: feet(12 * span + 12),
                start: load,
                end: load,
            })
            .collect();
        let response = prepared.response(&pushes).unwrap();
        for (range, reaction) in found.reactions.iter().zip(&response.reactions) {
            assert!(reaction.to_lb() <= range.most.0.to_lb() + 1e-6);
            assert!(reaction.to_lb() >= range.least.0.to_lb() - 1e-6);
        }
        for (span, at) in found.spans.iter().zip(0..) {
            let extremes = response.extremes_between(feet(12 * at), feet(12 * at + 12));
            assert!(extremes.sagging.0.to_lb_ft() <= span.sagging.value.to_lb_ft() + 1e-6);
            assert!(extremes.hogging.0.to_lb_ft() >= span.hogging.value.to_lb_ft() - 1e-6);
            assert!(extremes.shear.0.abs().to_lb() <= span.shear.value.abs().to_lb() + 1e-6);
            assert!(extremes.down.0 <= span.down.value + Length::from_units(2));
            assert!(extremes.up.0 <= span.up.value + Length::from_units(2));
        }
    }
}
