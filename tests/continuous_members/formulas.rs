//! Formulas of the published beam tables: American Wood Council, Design Aid 6, "Beam Design Formulas with Shear and Moment
//! Diagrams" (2007). The three of two spans were read in a copy; the others are from memory, and each can be derived
//! in a few lines. Shear deformation and springs: derived here, as said beside them.

use storyrod::statics::continuous::{Hold, Line, Prop, Push, Response, Stretch};
use storyrod::units::{FlexuralRigidity, Force, Length, LineLoad, Moment, SpringRate};

/// Pounds times square inches; pounds an inch; pounds.
const EI: f64 = 2.4e8;
const W: f64 = 30.0;
const P: f64 = 2_000.0;

fn inches(value: f64) -> Length {
    Length::decimal_inches(value)
}

fn member(length: f64, props: &[(f64, Hold)]) -> Line {
    Line {
        length: inches(length),
        stretches: vec![Stretch {
            to: inches(length),
            rigidity: FlexuralRigidity::lb_in2(EI),
            shear_rigidity: None,
        }],
        props: props
            .iter()
            .map(|&(at, hold)| Prop { at: inches(at), hold, settlement: Length::ZERO })
            .collect(),
        hinges: Vec::new(),
    }
}

fn uniform(from: f64, to: f64) -> Push {
    let load = LineLoad::plf(12.0 * W);
    Push::Spread { from: inches(from), to: inches(to), start: load, end: load }
}

fn point(at: f64) -> Push {
    Push::Point { at: inches(at), force: Force::lb(P) }
}

fn response(line: &Line, push: Push) -> Response {
    line.prepare().unwrap().response(&[push]).unwrap()
}

#[track_caller]
fn close(value: f64, expected: f64) {
    assert!((value - expected).abs() <= 1e-9 * expected.abs().max(1.0), "{value}, not {expected}");
}

/// To the exact unit of a length.
#[track_caller]
fn close_drop(value: Length, expected: f64) {
    assert!((value.to_inches() - expected).abs() <= 3e-6, "{value:?}, not {expected}");
}

/// `digits` as the tables print them: half of the last one may be lost.
#[track_caller]
fn close_printed(value: f64, digits: f64, last: f64) {
    assert!((value - digits).abs() <= 0.5 * last + 1e-12, "{value}, not {digits}");
}

#[test]
fn simple_spans() {
    let l = 180.0;
    let line = member(l, &[(0.0, Hold::Pinned), (l, Hold::Pinned)]);
    let uniform = response(&line, uniform(0.0, l));
    close(uniform.reactions[0].to_lb(), W * l / 2.0);
    close(uniform.extremes().sagging.0.to_lb_in(), W * l * l / 8.0);
    close_drop(uniform.extremes().down.0, 5.0 * W * l.powi(4) / (384.0 * EI));

    let (a, b) = (120.0, 60.0);
    let anywhere = response(&line, point(a));
    close(anywhere.reactions[1].to_lb(), P * a / l);
    close(anywhere.extremes().sagging.0.to_lb_in(), P * a * b / l);
    close_drop(anywhere.deflection_at(inches(a)), P * a * a * b * b / (3.0 * EI * l));
    let (down, at) = anywhere.extremes().down;
    close_drop(down, P * a * b * (a + 2.0 * b) * (3.0 * a * (a + 2.0 * b)).sqrt() / (27.0 * EI * l));
    close_drop(at, (a * (a + 2.0 * b) / 3.0).sqrt());

    // Growing to one end, total load w: 0.1283 w l at 0.5774 l, 0.01304 w l³ / EI at 0.5193 l.
    let growing = Push::Spread {
        from: Length::ZERO,
        to: inches(l),
        start: LineLoad::ZERO,
        end: LineLoad::plf(12.0 * W),
    };
    let extremes = response(&line, growing).extremes();
    let total = W * l / 2.0;
    close_printed(extremes.sagging.0.to_lb_in() / (total * l), 0.1283, 1e-4);
    close_printed(extremes.sagging.1.to_inches() / l, 0.5774, 1e-4);
    close_printed(extremes.down.0.to_inches() * EI / (total * l.powi(3)), 0.01304, 1e-5);
    close_printed(extremes.down.1.to_inches() / l, 0.5193, 1e-4);
}

/// Equal couples at both ends: the moment is the same everywhere, the deflection M l² / 8 EI midway.
#[test]
fn an_even_bend() {
    let (l, moment) = (120.0, 40_000.0);
    let couple = |at: f64, moment: f64| Push::Couple { at: inches(at), moment: Moment::lb_in(moment) };
    let line = member(l, &[(0.0, Hold::Pinned), (l, Hold::Pinned)]);
    let bent = line.prepare().unwrap().response(&[couple(0.0, moment), couple(l, -moment)]).unwrap();
    close(bent.reactions[0].to_lb(), 0.0);
    close(bent.extremes().sagging.0.to_lb_in(), moment);
    close(bent.extremes().hogging.0.to_lb_in(), moment);
    close_drop(bent.extremes().down.0, moment * l * l / (8.0 * EI));
    close_drop(bent.extremes().down.1, l / 2.0);
}

#[test]
fn fixed_ends() {
    let l = 144.0;
    let cantilever = member(l, &[(l, Hold::Fixed)]);
    let at_tip = response(&cantilever, point(0.0));
    close(at_tip.extremes().hogging.0.to_lb_in(), -P * l);
    close_drop(at_tip.deflection_at(Length::ZERO), P * l.powi(3) / (3.0 * EI));
    let everywhere = response(&cantilever, uniform(0.0, l));
    close(everywhere.fixed_moments[0].to_lb_in(), W * l * l / 2.0);
    close_drop(everywhere.deflection_at(Length::ZERO), W * l.powi(4) / (8.0 * EI));

    let propped = response(&member(l, &[(0.0, Hold::Pinned), (l, Hold::Fixed)]), uniform(0.0, l));
    let extremes = propped.extremes();
    close(propped.reactions[0].to_lb(), 3.0 * W * l / 8.0);
    close(extremes.hogging.0.to_lb_in(), -W * l * l / 8.0);
    close(extremes.sagging.0.to_lb_in(), 9.0 * W * l * l / 128.0);
    close_printed(W * l.powi(4) / (EI * extremes.down.0.to_inches()), 185.0, 1.0);
    close_printed(extremes.down.1.to_inches() / l, 0.4215, 1e-4);

    let built_in = response(&member(l, &[(0.0, Hold::Fixed), (l, Hold::Fixed)]), uniform(0.0, l));
    let extremes = built_in.extremes();
    close(extremes.hogging.0.to_lb_in(), -W * l * l / 12.0);
    close(extremes.sagging.0.to_lb_in(), W * l * l / 24.0);
    close_drop(extremes.down.0, W * l.powi(4) / (384.0 * EI));
}

#[test]
fn an_overhang() {
    let (l, a) = (144.0, 48.0);
    let line = member(l + a, &[(0.0, Hold::Pinned), (l, Hold::Pinned)]);
    let everywhere = response(&line, uniform(0.0, l + a));
    close(everywhere.reactions[0].to_lb(), W / (2.0 * l) * (l * l - a * a));
    close(everywhere.reactions[1].to_lb(), W / (2.0 * l) * (l + a).powi(2));
    let extremes = everywhere.extremes();
    close(extremes.sagging.0.to_lb_in(), W / (8.0 * l * l) * (l + a).powi(2) * (l - a).powi(2));
    close_drop(extremes.sagging.1, l / 2.0 * (1.0 - a * a / (l * l)));
    close(extremes.hogging.0.to_lb_in(), -W * a * a / 2.0);
    let tip = W * a / (24.0 * EI) * (4.0 * a * a * l - l.powi(3) + 3.0 * a.powi(3));
    close_drop(everywhere.deflection_at(inches(l + a)), tip);

    let at_tip = response(&line, point(l + a));
    close(at_tip.reactions[0].to_lb(), -P * a / l);
    close_drop(at_tip.deflection_at(inches(l + a)), P * a * a * (l + a) / (3.0 * EI));
    close_drop(at_tip.extremes().up.0, P * a * l * l / (9.0 * 3.0_f64.sqrt() * EI));
}

#[test]
fn two_spans() {
    let l = 120.0;
    let line = member(2.0 * l, &[(0.0, Hold::Pinned), (l, Hold::Pinned), (2.0 * l, Hold::Pinned)]);
    let both = response(&line, uniform(0.0, 2.0 * l));
    let extremes = both.extremes();
    close(both.reactions[0].to_lb(), 3.0 * W * l / 8.0);
    close(both.reactions[1].to_lb(), 10.0 * W * l / 8.0);
    close(extremes.shear.0.abs().to_lb(), 5.0 * W * l / 8.0);
    close(extremes.hogging.0.to_lb_in(), -W * l * l / 8.0);
    close(extremes.sagging.0.to_lb_in(), 9.0 * W * l * l / 128.0);
    close_printed(W * l.powi(4) / (EI * extremes.down.0.to_inches()), 185.0, 1.0);

    let one = response(&line, uniform(0.0, l));
    for (reaction, share) in one.reactions.iter().zip([7.0 / 16.0, 5.0 / 8.0, -1.0 / 16.0]) {
        close(reaction.to_lb(), share * W * l);
    }
    close(-one.moment_at(inches(l)).to_lb_in(), W * l * l / 16.0);
    close(one.extremes().sagging.0.to_lb_in(), 49.0 * W * l * l / 512.0);
    close_printed(one.extremes().down.0.to_inches() * EI / (W * l.powi(4)), 0.0092, 1e-4);

    let (a, b) = (192.0, 48.0);
    let unequal = member(a + b, &[(0.0, Hold::Pinned), (a, Hold::Pinned), (a + b, Hold::Pinned)]);
    let unequal = response(&unequal, uniform(0.0, a + b));
    close(unequal.moment_at(inches(a)).to_lb_in(), -W * (a.powi(3) + b.powi(3)) / (8.0 * (a + b)));
}

/// Derived: shear adds the moment over the shear rigidity to the deflection of a simple span. Over two spans the middle
/// reaction is what brings the simple span of twice the length back: its deflection over that of one pound.
#[test]
fn derived_shear_deformation() {
    let (l, stiff) = (96.0, 1.0e5);
    let with_shear = |mut line: Line| {
        line.stretches[0].shear_rigidity = Some(Force::lb(stiff));
        line
    };
    let simple = with_shear(member(l, &[(0.0, Hold::Pinned), (l, Hold::Pinned)]));
    let down = response(&simple, uniform(0.0, l)).extremes().down.0;
    close_drop(down, 5.0 * W * l.powi(4) / (384.0 * EI) + W * l * l / (8.0 * stiff));
    let down = response(&simple, point(l / 2.0)).extremes().down.0;
    close_drop(down, P * l.powi(3) / (48.0 * EI) + P * l / (4.0 * stiff));

    let two = with_shear(member(2.0 * l, &[(0.0, Hold::Pinned), (l, Hold::Pinned), (2.0 * l, Hold::Pinned)]));
    let without = 5.0 * W * (2.0 * l).powi(4) / (384.0 * EI) + W * (2.0 * l).powi(2) / (8.0 * stiff);
    let by_one_pound = (2.0 * l).powi(3) / (48.0 * EI) + 2.0 * l / (4.0 * stiff);
    close(response(&two, uniform(0.0, 2.0 * l)).reactions[1].to_lb(), without / by_one_pound);
}

/// Derived: a spring gives way by its force over its rate, so that the middle reaction is the deflection without it over
/// that of one pound and one pound's shortening. A joint over a support makes two simple spans of two.
#[test]
fn derived_springs_and_joints() {
    let (l, rate) = (144.0, 12_000.0);
    let spring = Hold::Spring(SpringRate::lb_per_in(rate));
    let line = member(2.0 * l, &[(0.0, Hold::Pinned), (l, spring), (2.0 * l, Hold::Pinned)]);
    let without = 5.0 * W * (2.0 * l).powi(4) / (384.0 * EI);
    let middle = without / ((2.0 * l).powi(3) / (48.0 * EI) + 1.0 / rate);
    let on_spring = response(&line, uniform(0.0, 2.0 * l));
    close(on_spring.reactions[1].to_lb(), middle);
    close_drop(on_spring.deflection_at(inches(l)), middle / rate);

    let mut jointed = member(2.0 * l, &[(0.0, Hold::Pinned), (l, Hold::Pinned), (2.0 * l, Hold::Pinned)]);
    jointed.hinges.push(inches(l));
    let jointed = response(&jointed, uniform(0.0, 2.0 * l));
    close(jointed.reactions[1].to_lb(), W * l);
    close(jointed.extremes().sagging.0.to_lb_in(), W * l * l / 8.0);
    close_drop(jointed.extremes().down.0, 5.0 * W * l.powi(4) / (384.0 * EI));
}
