//! Limits of the residential code as the profiles hold them, and the statics of tributary widths.

use storyrod::products::lumber::{self, Dressed};
use storyrod::profiles::{OneIn, foundations, framing, levels, loads, stairs};
use storyrod::statics::continuous::{Hold, Line, Prop, Push, Stretch};
use storyrod::units::{Area, AreaLoad, FlexuralRigidity, Length, LineLoad};

use crate::cases::{Case, Comparison};
use crate::wood::inches;

pub fn check(case: &Case) -> Option<Comparison> {
    let ok = |is_kept: bool| Comparison::new().truth("ok", is_kept);
    Some(match case.id.as_str() {
        "stair-riser-7p75" => ok(inches(case, "riser_in") <= stairs::RISER_HEIGHT.value),
        "stair-tread-10" => ok(tread_passes(case)),
        "stair-nosing" => ok(tread_passes(case)),
        "stair-tread-9p9" => ok(inches(case, "tread_in") >= stairs::TREAD_DEPTH.value),
        "stair-adjacent-not-spread" => spread_of_risers(case),
        "door-landing-7p75" => ok(inches(case, "drop_in") <= stairs::THRESHOLD_DROP.value),
        "r5028-hole-edge" => hole_near_an_edge(case),
        id if id.starts_with("r5028-") => cuts(case),
        "bearing-sill-48" => {
            ok(Area::sq_in(case.number("plate_area_in2")) >= framing::SILL_BEARING_AREA.value)
        }
        id if id.starts_with("bearing-") => ok(bearing_passes(case)),
        "lap-3in" => ok(inches(case, "lap_in") >= framing::JOIST_LAP.value),
        "opening-tail-12ft" => ok(inches(case, "tail_in") <= framing::TAIL_WITHOUT_HANGER.value),
        "decay-joist-18" => pair(case, "clear_in", foundations::CRAWL_CLEARANCE_JOISTS.value),
        "decay-girder-12" => ok(inches(case, "clear_in") >= foundations::CRAWL_CLEARANCE_GIRDERS.value),
        "decay-pocket-half" => ok(inches(case, "clear_in") >= foundations::POCKET_AIR_GAP.value),
        "ceiling-7ft" => pair(case, "height_in", levels::CEILING_HEIGHT.value),
        id if id.starts_with("r3015-") => live_load(case),
        "stair-tread-load" => tread_load(case),
        id if id.starts_with("drain-slope-") => drain_slope(case),
        "drain-fall" => drain_fall(case),
        "two-span-uplift" => two_spans(case),
        "trib-girder" => girder_under_simple_joists(case),
        "trib-girder-continuous" => girder_under_continuous_joists(case),
        _ => return None,
    })
}

fn tread_passes(case: &Case) -> bool {
    let (tread, nosing) = (inches(case, "tread_in"), inches(case, "nosing_in"));
    let has_nosing = (stairs::NOSING_LEAST.value..=stairs::NOSING_MOST.value).contains(&nosing);
    tread >= stairs::TREAD_DEPTH.value && (tread >= stairs::NOSING_TREAD.value || has_nosing)
}

fn spread_of_risers(case: &Case) -> Comparison {
    let risers: Vec<Length> = case.numbers("risers_in").into_iter().map(Length::decimal_inches).collect();
    let spread = *risers.iter().max().unwrap() - *risers.iter().min().unwrap();
    Comparison::new()
        .number("spread_in", spread.to_inches())
        .truth("ok", spread <= stairs::RISER_DIFFERENCE.value)
}

fn hole_near_an_edge(case: &Case) -> Comparison {
    let edge = inches(case, "centre_from_top_in") - inches(case, "hole_in").half();
    Comparison::new().number("edge_in", edge.to_inches()).truth("ok", edge >= framing::HOLE_EDGE.value)
}

fn cuts(case: &Case) -> Comparison {
    let Dressed { width: depth, .. } = {
        let (thickness, width) = case.words("size").split_once('x').unwrap();
        lumber::dressed(thickness.parse().unwrap(), width.parse().unwrap()).unwrap()
    };
    assert_eq!(depth, inches(case, "d_in"));
    let share = |one_in: OneIn| depth.shared_by(one_in.0).unwrap().rounded();
    let edge = framing::HOLE_EDGE.value;
    let hole = share(framing::HOLE_DIAMETER.value);
    Comparison::new()
        .number("hole_max_in", hole.to_inches())
        .number("hole_max_with_edge_rule_in", hole.min(depth - edge * 2).to_inches())
        .number("notch_max_in", share(framing::NOTCH_DEPTH.value).to_inches())
        .number("notch_len_max_in", share(framing::NOTCH_LENGTH.value).to_inches())
        .number("end_notch_max_in", share(framing::END_NOTCH_DEPTH.value).to_inches())
        .number("edge_min_in", edge.to_inches())
}

fn bearing_passes(case: &Case) -> bool {
    let least = match case.words("on") {
        "wood" => framing::BEARING_ON_WOOD.value,
        "concrete" => framing::BEARING_ON_CONCRETE.value,
        other => panic!("{}: `{other}`", case.id),
    };
    inches(case, "bearing_in") >= least
}

/// Two measures against one limit from below.
fn pair(case: &Case, key: &str, least: Length) -> Comparison {
    let [first, second] = case.numbers(key).try_into().unwrap();
    let is_kept = |measure| Length::decimal_inches(measure) >= least;
    Comparison::new().truth("ok", is_kept(first)).truth("ok_second", is_kept(second))
}

fn live_load(case: &Case) -> Comparison {
    let use_word = match case.words("use") {
        "sleeping_rooms" => "sleeping",
        "other_rooms" => "living",
        "attic_limited_storage" => "attic storage",
        other => panic!("{}: `{other}`", case.id),
    };
    Comparison::new().number("psf", loads::live_load_of(use_word).unwrap().value.to_psf())
}

fn tread_load(case: &Case) -> Comparison {
    let tread = Length::decimal_inches(case.number("tread_width_ft") * 12.0) * inches(case, "tread_depth_in");
    Comparison::new()
        .number("uniform_total_lb", (loads::LIVE_STAIRS.value * tread).to_lb())
        .left_out("point_lb", "the point load of a tread belongs to the stair's maker")
}

fn drain_slope(case: &Case) -> Comparison {
    let fall = fall_of(inches(case, "dia_in"));
    Comparison::new().number("in_per_ft", 12.0 / f64::from(fall.0))
}

fn drain_fall(case: &Case) -> Comparison {
    let run = Length::decimal_inches(case.number("run_ft") * 12.0);
    let fall = run.shared_by(fall_of(inches(case, "dia_in")).0).unwrap().rounded();
    Comparison::new().number("fall_in", fall.to_inches())
}

fn fall_of(diameter: Length) -> OneIn {
    if diameter >= Length::inches(3) { framing::DRAIN_FALL.value } else { framing::DRAIN_FALL_SMALL.value }
}

/// Reactions of a member on pins at the ends of spans, and its moment over the second of them.
fn on_pins(spans: &[f64], load: LineLoad) -> (Vec<f64>, f64) {
    let mut places = vec![Length::ZERO];
    for span in spans {
        places.push(*places.last().unwrap() + Length::decimal_inches(span * 12.0));
    }
    let length = *places.last().unwrap();
    let line = Line {
        length,
        stretches: vec![Stretch {
            to: length,
            rigidity: FlexuralRigidity::lb_in2(1e8),
            shear_rigidity: None,
        }],
        props: places
            .iter()
            .map(|at| Prop { at: *at, hold: Hold::Pinned, settlement: Length::ZERO })
            .collect(),
        hinges: Vec::new(),
    };
    let push = Push::Spread { from: Length::ZERO, to: length, start: load, end: load };
    let response = line.prepare().unwrap().response(&[push]).unwrap();
    let reactions = response.reactions.iter().map(|force| force.to_lb()).collect();
    (reactions, response.moment_at(places[1]).to_lb_ft())
}

fn two_spans(case: &Case) -> Comparison {
    let (reactions, moment) = on_pins(&case.numbers("spans_ft"), LineLoad::plf(case.number("w_plf")));
    Comparison::new()
        .number("M_support_lbft", moment)
        .number("R1_lb", reactions[0])
        .number("R2_lb", reactions[1])
        .number("R3_lb", reactions[2])
        .truth("uplift", reactions.iter().any(|reaction| *reaction < 0.0))
}

/// A strip of floor one foot wide: what it presses on the girder is the girder's load on a foot.
fn strip_of(case: &Case) -> LineLoad {
    AreaLoad::psf(case.number("psf")) * Length::feet(1)
}

/// Joists that end over the girder: each span alone.
fn under_simple_joists(case: &Case) -> f64 {
    let presses = |span: &f64| on_pins(&[*span], strip_of(case)).0[1];
    case.numbers("spans_ft").iter().map(presses).sum()
}

fn girder_under_simple_joists(case: &Case) -> Comparison {
    assert!(!case.holds("continuous"));
    Comparison::new().number("w_plf", under_simple_joists(case))
}

fn girder_under_continuous_joists(case: &Case) -> Comparison {
    assert!(case.holds("continuous"));
    let (reactions, _) = on_pins(&case.numbers("spans_ft"), strip_of(case));
    Comparison::new().number("w_plf", reactions[1]).number("w_simple_plf", under_simple_joists(case))
}
