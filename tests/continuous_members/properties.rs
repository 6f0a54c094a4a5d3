//! What must hold of every member: responses add up, mirror and scale; loads and reactions balance; Maxwell's reciprocity.

use proptest::prelude::*;
use storyrod::statics::continuous::{Hold, Line, Prop, Push, Response, Stretch};
use storyrod::statics::pattern::{envelope, patterns};
use storyrod::units::{FlexuralRigidity, Force, Length, LineLoad, Moment, SpringRate};

/// A sixteenth of an inch: all places are whole numbers of it.
fn places(sixteenths: i64) -> Length {
    Length::sixteenths(0, sixteenths)
}

fn hold() -> impl Strategy<Value = Hold> {
    prop_oneof![
        8 => Just(Hold::Pinned),
        1 => Just(Hold::Fixed),
        1 => (500.0..1e5).prop_map(|rate| Hold::Spring(SpringRate::lb_per_in(rate))),
    ]
}

/// A member of up to five spans, with overhangs, steps of stiffness, and a joint in the first or last span of several.
fn line() -> impl Strategy<Value = Line> {
    let spans = prop::collection::vec((400..4_000_i64, hold()), 1..6);
    let steps = prop::collection::vec((0.0..1.0, 1e8..1e9, prop::option::of(1e5..1e7)), 0..3);
    (0..900_i64, 0..900_i64, hold(), spans, steps, prop::option::of(0.1..0.9)).prop_map(
        |(left, right, first, spans, steps, hinge)| {
            let mut at = left;
            let mut props = vec![Prop { at: places(at), hold: first, settlement: Length::ZERO }];
            for (span, hold) in &spans {
                at += span;
                props.push(Prop { at: places(at), hold: *hold, settlement: Length::ZERO });
            }
            let length = places(at + right);
            let mut stretches: Vec<Stretch> = steps
                .iter()
                .map(|&(share, rigidity, shear)| Stretch {
                    to: length.scaled(share).rounded_up_to(places(1)).max(places(1)),
                    rigidity: FlexuralRigidity::lb_in2(rigidity),
                    shear_rigidity: shear.map(Force::lb),
                })
                .filter(|stretch| stretch.to < length)
                .collect();
            stretches.push(Stretch {
                to: length,
                rigidity: FlexuralRigidity::lb_in2(3e8),
                shear_rigidity: None,
            });
            stretches.sort_by_key(|stretch| stretch.to);
            stretches.dedup_by_key(|stretch| stretch.to);
            let hinges = match hinge {
                Some(share) if spans.len() > 1 => {
                    vec![(props[0].at + (props[1].at - props[0].at).scaled(share)).rounded_to(places(1))]
                }
                _ => Vec::new(),
            };
            Line { length, stretches, props, hinges }
        },
    )
}

/// Loads by shares of a length, so that they fit any member.
#[derive(Clone, Copy, Debug)]
enum Load {
    Spread(f64, f64, f64, f64),
    Point(f64, f64),
    Couple(f64, f64),
}

fn loads() -> impl Strategy<Value = Vec<Load>> {
    let load = prop_oneof![
        (0.0..=1.0, 0.0..=1.0, -300.0..900.0, -300.0..900.0)
            .prop_map(|(a, b, c, d)| Load::Spread(a, b, c, d)),
        (0.0..=1.0, -2_000.0..6_000.0).prop_map(|(at, force)| Load::Point(at, force)),
        (0.0..=1.0, -30_000.0..30_000.0).prop_map(|(at, moment)| Load::Couple(at, moment)),
    ];
    prop::collection::vec(load, 1..6)
}

fn pushes(line: &Line, loads: &[Load]) -> Vec<Push> {
    let at = |share: f64| line.length.scaled(share).rounded_to(places(1)).min(line.length);
    let push = |load: &Load| match *load {
        Load::Spread(from, to, start, end) => {
            Push::Spread { from: at(from), to: at(to), start: LineLoad::plf(start), end: LineLoad::plf(end) }
        }
        Load::Point(place, force) => Push::Point { at: at(place), force: Force::lb(force) },
        Load::Couple(place, moment) => Push::Couple { at: at(place), moment: Moment::lb_in(moment) },
    };
    let on_hinge = |push: &Push| matches!(push, Push::Couple { at, .. } if line.hinges.contains(at));
    loads.iter().map(push).filter(|push| !on_hinge(push)).collect()
}

fn mirrored(line: &Line, pushes: &[Push]) -> (Line, Vec<Push>) {
    let across = |at: Length| line.length - at;
    let starts = std::iter::once(Length::ZERO).chain(line.stretches.iter().map(|stretch| stretch.to));
    let mut stretches: Vec<Stretch> = line
        .stretches
        .iter()
        .zip(starts)
        .map(|(stretch, from)| Stretch { to: across(from), ..*stretch })
        .collect();
    stretches.reverse();
    let push = |push: &Push| match *push {
        Push::Spread { from, to, start, end } => {
            Push::Spread { from: across(to), to: across(from), start: end, end: start }
        }
        Push::Point { at, force } => Push::Point { at: across(at), force },
        Push::Couple { at, moment } => Push::Couple { at: across(at), moment: -moment },
    };
    let props = line.props.iter().map(|prop| Prop { at: across(prop.at), ..*prop }).collect();
    let hinges = line.hinges.iter().map(|&at| across(at)).collect();
    (Line { length: line.length, stretches, props, hinges }, pushes.iter().map(push).collect())
}

/// Force, moment about the left end, and the sum of the sizes of each. Clockwise moments are positive.
fn applied(pushes: &[Push]) -> (f64, f64, f64, f64) {
    let mut total = (0.0, 0.0, 0.0, 0.0);
    let mut add = |force: f64, moment: f64, force_size: f64, moment_size: f64| {
        total = (total.0 + force, total.1 + moment, total.2 + force_size, total.3 + moment_size);
    };
    for push in pushes {
        match *push {
            Push::Spread { from, to, start, end } => {
                let (from, to, start, end) =
                    if from <= to { (from, to, start, end) } else { (to, from, end, start) };
                let (a, b) = (from.to_inches(), to.to_inches());
                let (p, q) = (start.to_plf() / 12.0, end.to_plf() / 12.0);
                let force = (p + q) / 2.0 * (b - a);
                let moment = force * a + (b - a).powi(2) * (p / 6.0 + q / 3.0);
                let size = (p.abs() + q.abs()) * (b - a);
                add(force, moment, size, size * b);
            }
            Push::Point { at, force } => {
                let (at, force) = (at.to_inches(), force.to_lb());
                add(force, force * at, force.abs(), force.abs() * at);
            }
            Push::Couple { moment, .. } => add(0.0, moment.to_lb_in(), 0.0, moment.to_lb_in().abs()),
        }
    }
    total
}

/// Moments, shears and deflections of two responses agree at every twentieth, to a share of their largest.
fn assert_same(one: &Response, other: &Response, length: Length, share: f64) {
    let (a, b) = (one.extremes(), other.extremes());
    let force = a.shear.0.abs().max(b.shear.0.abs()).to_lb().max(1e-3);
    let moment = a.sagging.0.abs().max(a.hogging.0.abs()).to_lb_in().max(force);
    let drop = a.down.0.max(a.up.0).to_inches();
    for step in 0..=20 {
        let at = length.scaled(f64::from(step) / 20.0);
        let moments = (one.moment_at(at).to_lb_in(), other.moment_at(at).to_lb_in());
        assert!((moments.0 - moments.1).abs() <= share * moment, "moments {moments:?} at {at}");
        let (left, right) = (one.shear_at(at), other.shear_at(at));
        assert!((left.0 - right.0).abs().to_lb() <= share * force, "shears {left:?} {right:?} at {at}");
        let drops = (one.deflection_at(at).to_inches(), other.deflection_at(at).to_inches());
        assert!((drops.0 - drops.1).abs() <= share * drop + 6e-6, "deflections {drops:?} at {at}");
    }
}

/// Places, sizes and stiffnesses without sense: at the ends of what a text may state, and beyond.
fn any_place() -> impl Strategy<Value = Length> {
    prop_oneof![
        4 => (0..40_i64).prop_map(Length::feet),
        2 => (0..5_i64).prop_map(Length::from_units),
        1 => Just(Length::LONGEST_WRITTEN),
        1 => any::<i64>().prop_map(Length::from_units),
    ]
}

fn any_size() -> impl Strategy<Value = f64> {
    prop_oneof![
        4 => 1.0..1e4,
        2 => (-300..300_i32).prop_map(|exponent| 10_f64.powi(exponent)),
        1 => prop::sample::select(vec![0.0, -0.0, -1.0, f64::NAN, f64::INFINITY, f64::MAX, f64::MIN_POSITIVE]),
    ]
}

fn any_line() -> impl Strategy<Value = Line> {
    let hold = prop_oneof![
        3 => Just(Hold::Pinned),
        1 => Just(Hold::Fixed),
        1 => any_size().prop_map(|rate| Hold::Spring(SpringRate::lb_per_in(rate))),
    ];
    let prop =
        (any_place(), hold, any_place()).prop_map(|(at, hold, settlement)| Prop { at, hold, settlement });
    let rigidity = prop_oneof![3 => 1e6..1e9, 2 => any_size()];
    let stretch = (any_place(), rigidity, prop::option::of(any_size())).prop_map(|(to, rigidity, shear)| {
        Stretch { to, rigidity: FlexuralRigidity::lb_in2(rigidity), shear_rigidity: shear.map(Force::lb) }
    });
    let stretches = prop::collection::vec(stretch, 1..4);
    let props = prop::collection::vec(prop, 0..6);
    let hinges = prop::collection::vec(any_place(), 0..3);
    (stretches, props, hinges, any::<bool>()).prop_map(|(mut stretches, mut props, mut hinges, is_neat)| {
        stretches.sort_by_key(|stretch| stretch.to);
        let length = stretches.last().unwrap().to;
        if is_neat {
            stretches.dedup_by_key(|stretch| stretch.to);
            props.sort_by_key(|prop| prop.at);
            props.dedup_by_key(|prop| prop.at);
            props.retain(|prop| prop.at <= length && !prop.at.is_negative());
            hinges.retain(|&at| at <= length && !at.is_negative());
        }
        Line { length, stretches, props, hinges }
    })
}

fn any_push() -> impl Strategy<Value = Push> {
    prop_oneof![
        (any_place(), any_place(), any_size(), any_size()).prop_map(|(from, to, start, end)| Push::Spread {
            from,
            to,
            start: LineLoad::plf(start),
            end: LineLoad::plf(end),
        }),
        (any_place(), any_size()).prop_map(|(at, force)| Push::Point { at, force: Force::lb(force) }),
        (any_place(), any_size()).prop_map(|(at, moment)| Push::Couple { at, moment: Moment::lb_in(moment) }),
    ]
}

fn assert_numbers(response: &Response, length: Length) {
    let extremes = response.extremes();
    assert!(extremes.sagging.0.is_finite() && extremes.hogging.0.is_finite() && extremes.shear.0.is_finite());
    for (_, at) in [extremes.down, extremes.up] {
        assert!(!at.is_negative() && at <= length, "{at}");
    }
    assert!(response.reactions.iter().all(|reaction| reaction.is_finite()));
    assert!(response.fixed_moments.iter().all(|moment| moment.is_finite()));
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2_000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn nothing_written_brings_a_number_that_is_none(
        line in any_line(), pushes in prop::collection::vec(any_push(), 0..4),
    ) {
        match line.prepare() {
            Err(unstable) => prop_assert!(!unstable.to_string().is_empty()),
            Ok(prepared) => {
                assert_numbers(&prepared.settling(), line.length);
                if let Ok(response) = prepared.response(&pushes) {
                    assert_numbers(&response, line.length);
                }
                if let Ok(patterned) = patterns(&prepared, &pushes) {
                    let worst = envelope(&prepared.settling(), &patterned, 1.6).whole;
                    prop_assert!(worst.sagging.value.is_finite() && worst.shear.value.is_finite());
                }
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn loads_and_reactions_balance(line in line(), loads in loads()) {
        let pushes = pushes(&line, &loads);
        let response = line.prepare().unwrap().response(&pushes).unwrap();
        let (force, moment, force_size, moment_size) = applied(&pushes);
        let up: f64 = response.reactions.iter().map(|reaction| reaction.to_lb()).sum();
        let sizes: f64 = response.reactions.iter().map(|reaction| reaction.abs().to_lb()).sum();
        prop_assert!((up - force).abs() <= 1e-9 * (force_size + sizes + 1.0), "{up} against {force}");
        let mut turning = moment;
        let mut size = moment_size;
        for ((reaction, couple), prop) in response.reactions.iter().zip(&response.fixed_moments).zip(&line.props) {
            turning += couple.to_lb_in() - (*reaction * prop.at).to_lb_in();
            size += couple.to_lb_in().abs() + (*reaction * prop.at).to_lb_in().abs();
        }
        prop_assert!(turning.abs() <= 1e-9 * (size + 1.0), "{turning} of {size}");
    }

    #[test]
    fn responses_add_up_and_scale(line in line(), one in loads(), other in loads()) {
        let prepared = line.prepare().unwrap();
        let (one, other) = (pushes(&line, &one), pushes(&line, &other));
        let (a, b) = (prepared.response(&one).unwrap(), prepared.response(&other).unwrap());
        let both: Vec<Push> = one.iter().chain(&other).chain(&other).copied().collect();
        let at_once = prepared.response(&both).unwrap();
        assert_same(&Response::sum(&[(1.0, &a), (2.0, &b)]), &at_once, line.length, 1e-8);
    }

    #[test]
    fn a_mirrored_member_responds_in_the_mirror(line in line(), loads in loads()) {
        let pushes = pushes(&line, &loads);
        let response = line.prepare().unwrap().response(&pushes).unwrap();
        let (mirror, mirrored_pushes) = mirrored(&line, &pushes);
        let mirror = mirror.prepare().unwrap().response(&mirrored_pushes).unwrap();
        let (force, moment) = (applied(&pushes).2, applied(&pushes).3 + 1.0);
        for (one, other) in response.reactions.iter().zip(&mirror.reactions) {
            prop_assert!((*one - *other).abs().to_lb() <= 1e-8 * (force + moment / 20.0));
        }
        let (a, b) = (response.extremes(), mirror.extremes());
        prop_assert!((a.sagging.0 - b.sagging.0).abs().to_lb_in() <= 1e-8 * moment);
        prop_assert!((a.hogging.0 - b.hogging.0).abs().to_lb_in() <= 1e-8 * moment);
        prop_assert!((a.shear.0.abs() - b.shear.0.abs()).abs().to_lb() <= 1e-8 * (force + moment / 20.0));
        let drop = a.down.0.max(a.up.0).scaled(1e-8) + Length::from_units(2);
        prop_assert!((a.down.0 - b.down.0).abs() <= drop && (a.up.0 - b.up.0).abs() <= drop);
    }

    #[test]
    fn deflection_here_by_load_there_is_deflection_there_by_load_here(
        line in line(), here in 0.0..=1.0, there in 0.0..=1.0,
    ) {
        let prepared = line.prepare().unwrap();
        let [here, there] = [here, there].map(|share: f64| line.length.scaled(share).rounded_to(places(1)).min(line.length));
        let deflection = |load: Length, at: Length| {
            let push = Push::Point { at: load, force: Force::lb(5_000.0) };
            prepared.response(&[push]).unwrap().deflection_at(at)
        };
        let (one, other) = (deflection(here, there), deflection(there, here));
        let tolerance = one.abs().scaled(1e-7) + Length::from_units(2);
        prop_assert!((one - other).abs() <= tolerance, "{one:?} {other:?}");
    }

    #[test]
    fn an_envelope_is_the_worst_of_its_patterns(line in line(), steady in loads(), live in loads()) {
        let prepared = line.prepare().unwrap();
        let steady = prepared.response(&pushes(&line, &steady)).unwrap();
        let live = pushes(&line, &live);
        let patterned = patterns(&prepared, &live).unwrap();
        let envelope = envelope(&steady, &patterned, 0.75);

        let all = &patterned.patterns.last().unwrap().response;
        assert_same(all, &prepared.response(&live).unwrap(), line.length, 1e-8);
        let (share, unit) = (1e-9, Length::from_units(1));
        for (&(from, to), governing) in patterned.spans.iter().zip(&envelope.spans) {
            for pattern in &patterned.patterns {
                let sum = Response::sum(&[(1.0, &steady), (0.75, &pattern.response)]);
                let extremes = sum.extremes_between(from, to);
                let noise = share * (governing.sagging.value.abs() + governing.hogging.value.abs()).to_lb_in();
                prop_assert!(extremes.sagging.0.to_lb_in() <= governing.sagging.value.to_lb_in() + noise);
                prop_assert!(extremes.hogging.0.to_lb_in() >= governing.hogging.value.to_lb_in() - noise);
                prop_assert!(extremes.shear.0.abs().to_lb() <= governing.shear.value.abs().to_lb() * (1.0 + share));
                prop_assert!(extremes.down.0 <= governing.down.value + unit);
                prop_assert!(extremes.up.0 <= governing.up.value + unit);
            }
            let named = &patterned.patterns[governing.down.pattern];
            let sum = Response::sum(&[(1.0, &steady), (0.75, &named.response)]);
            prop_assert!((sum.extremes_between(from, to).down.0 - governing.down.value).abs() <= unit);
        }
    }

    #[test]
    fn nothing_between_is_beyond_the_extremes(line in line(), loads in loads(), from in 0.0..0.7, reach in 0.05..0.3) {
        let response = line.prepare().unwrap().response(&pushes(&line, &loads)).unwrap();
        let [from, to] = [from, from + reach].map(|share: f64| line.length.scaled(share));
        let whole = response.extremes();
        let part = response.extremes_between(from, to);
        let noise = |one: f64, other: f64| 1e-9 * (one.abs() + other.abs());
        let moment_noise = noise(whole.sagging.0.to_lb_in(), whole.hogging.0.to_lb_in());
        for step in 0..=40 {
            let at = from + (to - from).scaled(f64::from(step) / 40.0);
            let moment = response.moment_at(at).to_lb_in();
            prop_assert!(moment <= part.sagging.0.to_lb_in() + moment_noise);
            prop_assert!(moment >= part.hogging.0.to_lb_in() - moment_noise);
            let drop = response.deflection_at(at);
            prop_assert!(drop <= part.down.0 + Length::from_units(2) && -drop <= part.up.0 + Length::from_units(2));
            let (left, right) = response.shear_at(at);
            if step > 0 {
                prop_assert!(left.abs().to_lb() <= part.shear.0.abs().to_lb() * (1.0 + 1e-9) + 1e-9);
            }
            if step < 40 {
                prop_assert!(right.abs().to_lb() <= part.shear.0.abs().to_lb() * (1.0 + 1e-9) + 1e-9);
            }
        }
        prop_assert!(part.sagging.0.to_lb_in() <= whole.sagging.0.to_lb_in() + moment_noise);
        prop_assert!(part.hogging.0.to_lb_in() >= whole.hogging.0.to_lb_in() - moment_noise);
        prop_assert!(part.down.0 <= whole.down.0 + Length::from_units(2));
        prop_assert!(part.up.0 <= whole.up.0 + Length::from_units(2));
    }
}
