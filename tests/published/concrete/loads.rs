//! Combinations of loads, and live load on large areas.

use storyrod::design::loads::{Combination, Floors, LoadCode, allowable, reduced_live_load, strength};
use storyrod::units::{Area, AreaLoad};

use crate::cases::{Case, Comparison};

pub fn check(case: &Case) -> Option<Comparison> {
    Some(match case.id.as_str() {
        "LD-1" => combinations(case),
        "LD-3" => later_snow(case),
        "LD-4" => large_areas(case),
        _ => return None,
    })
}

fn combinations(case: &Case) -> Comparison {
    let loads = ["D", "L", "Lr", "S"].map(|key| case.number(key));
    let sum = |name| sum_of(allowable(LoadCode::Asce7_16), name, loads);
    Comparison::new()
        .number("D", sum("D"))
        .number("D+L", sum("D + L"))
        .number("D+S", sum("D + S"))
        .number("D+0.75L+0.75S", sum("D + 0.75L + 0.75S"))
}

fn later_snow(case: &Case) -> Comparison {
    let loads = [case.number("D"), case.number("L"), 0.0, case.number("S_722")];
    let service = |name| sum_of(allowable(LoadCode::Asce7_22), name, loads);
    let factored = |name| sum_of(strength(LoadCode::Asce7_22), name, loads);
    Comparison::new()
        .number("ASD 3a D+0.7S", service("D + 0.7S"))
        .number("ASD 4a D+0.75L+0.75(0.7S)", service("D + 0.75L + 0.75(0.7S)"))
        .number("LRFD 1.2D+1.0S+L", factored("1.2D + 1.0S + L"))
        .left_out("LRFD 1.2D+1.6L+0.3S", "the companion snow is from memory: a test of its own has it")
}

fn large_areas(case: &Case) -> Comparison {
    let reduced = |floors| {
        let unreduced = AreaLoad::psf(case.number("Lo_psf"));
        case.rows("cases")
            .map(|row| (Area::sq_ft(row.number("AT_ft2")), row.number("KLL")))
            .map(|(area, factor)| reduced_live_load(unreduced, area, factor, floors).unwrap())
            .map(|found| found.reduced.to_psf())
            .collect()
    };
    Comparison::new()
        .numbers("L_psf_one_floor", reduced(Floors::One))
        .numbers("L_psf_two_or_more_floors", reduced(Floors::TwoOrMore))
}

/// What dead, live, roof live and snow load come to in a combination.
fn sum_of(combinations: &[Combination], name: &str, [dead, live, roof_live, snow]: [f64; 4]) -> f64 {
    let found = combinations.iter().find(|combination| combination.name == name).unwrap();
    found.dead * dead + found.live * live + found.roof_live * roof_live + found.snow * snow
}

/// ASCE 7-22, the companion 0.3S, from memory: 1.2 x 1,000 + 1.6 x 2,000 + 0.3 x 2,400 = 5,120.
#[test]
fn from_memory_companion_snow() {
    let sum = sum_of(strength(LoadCode::Asce7_22), "1.2D + 1.6L + 0.3S", [1_000.0, 2_000.0, 0.0, 2_400.0]);
    assert!((sum - 5_120.0).abs() < 1e-9);
}
