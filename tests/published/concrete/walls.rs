//! Earth on foundation walls.

use storyrod::design::foundation_walls::{
    Prescribed, earth_on_wall, plain_wall, prescribed, whole_thickness_counts,
};
use storyrod::units::{Density, Length, Stress};

use crate::cases::{Case, Comparison};
use crate::concrete::{feet, inches};

pub fn check(case: &Case) -> Option<Comparison> {
    Some(match case.id.as_str() {
        "FW-PC1" => first_row(case),
        "FW-LEDGE" => shelves(case),
        id if id.starts_with("FW-") => statics(case),
        _ => return None,
    })
}

/// 7-1/2, 9-1/2 and 11-1/2 in. at 30, 45 and 60 psf a foot.
fn first_row(case: &Case) -> Comparison {
    let (height, fill) = (feet(case, "H_ft"), feet(case, "backfill_ft"));
    let mut cells: Vec<Prescribed> = [7.5, 9.5, 11.5]
        .into_iter()
        .flat_map(|thick| [30.0, 45.0, 60.0].map(|soil| (Length::decimal_inches(thick), Density::pcf(soil))))
        .map(|(thickness, soil)| prescribed(height, fill, thickness, soil).unwrap())
        .collect();
    assert_eq!(cells.len(), 9);
    cells.dedup();
    let word = match cells.as_slice() {
        [Prescribed::Plain] => "PC",
        _ => "several",
    };
    Comparison::new().words("all_nine_cells", word)
}

fn shelves(case: &Case) -> Comparison {
    let counts = case
        .rows("cases")
        .map(|shelf| {
            let inches = |key| Length::decimal_inches(shelf.number(key));
            whole_thickness_counts(inches("reduction_in"), inches("height_in"))
        })
        .collect();
    Comparison::new()
        .truths("vertical_bars_from_full_thickness", counts)
        .left_out("reduced_part_at_least", "the thickness of the wall above is for a rule to compare")
}

fn statics(case: &Case) -> Comparison {
    let soil = Density::pcf(case.number("lateral_psf_per_ft"));
    let earth = earth_on_wall(feet(case, "H_ft"), feet(case, "backfill_ft"), soil).unwrap();
    let wall = plain_wall(inches(case, "t_in"), Stress::psi(case.number("fc_psi"))).unwrap();
    let factored = earth.moment * 1.6;
    Comparison::new()
        .number("R_top_plf", earth.top.to_plf())
        .number("R_bottom_plf", earth.bottom.to_plf())
        .number("M_lbft_per_ft", earth.moment.to_lb_ft())
        .number("M_at_ft_from_top", earth.at.to_inches() / 12.0)
        .number("Mu_1_6_lbft_per_ft", factored.to_lb_ft())
        .number("phiMn_plain_lbft_per_ft", wall.design.to_lb_ft())
        .truth("plain_ok", factored <= wall.design)
}

/// Statics of walls held at top and bottom, checked with a beam solver apart from this crate: height and fill in ft, soil in
/// psf a foot; top and bottom in plf, moment and 1.6 times it in lb-ft a foot; whether plain walls of 5-1/2, 7-1/2, 9-1/2 and
/// 11-1/2 in. bear it.
#[test]
fn derived_table_of_walls() {
    type Row = (i64, i64, f64, f64, f64, f64, f64, &'static str);
    const ROWS: [Row; 30] = [
        (7, 6, 30.0, 154.3, 385.7, 484.2, 775.0, "nyyy"),
        (7, 6, 45.0, 231.4, 578.6, 726.2, 1162.0, "nyyy"),
        (7, 6, 60.0, 308.6, 771.4, 968.3, 1549.0, "nnyy"),
        (7, 7, 30.0, 245.0, 490.0, 660.1, 1056.0, "nyyy"),
        (7, 7, 45.0, 367.5, 735.0, 990.2, 1584.0, "nnyy"),
        (7, 7, 60.0, 490.0, 980.0, 1320.2, 2112.0, "nnyy"),
        (8, 5, 30.0, 78.1, 296.9, 353.2, 565.0, "yyyy"),
        (8, 5, 45.0, 117.2, 445.3, 529.9, 848.0, "nyyy"),
        (8, 5, 60.0, 156.2, 593.8, 706.5, 1130.0, "nyyy"),
        (8, 6, 30.0, 135.0, 405.0, 540.0, 864.0, "nyyy"),
        (8, 6, 45.0, 202.5, 607.5, 810.0, 1296.0, "nyyy"),
        (8, 6, 60.0, 270.0, 810.0, 1080.0, 1728.0, "nnyy"),
        (8, 7, 30.0, 214.4, 520.6, 754.7, 1207.0, "nyyy"),
        (8, 7, 45.0, 321.6, 780.9, 1132.0, 1811.0, "nnyy"),
        (8, 7, 60.0, 428.8, 1041.2, 1509.3, 2415.0, "nnny"),
        (8, 8, 30.0, 320.0, 640.0, 985.3, 1577.0, "nnyy"),
        (8, 8, 45.0, 480.0, 960.0, 1478.0, 2365.0, "nnny"),
        (8, 8, 60.0, 640.0, 1280.0, 1970.7, 3153.0, "nnny"),
        (9, 7, 30.0, 190.6, 544.4, 833.9, 1334.0, "nyyy"),
        (9, 7, 45.0, 285.8, 816.7, 1250.8, 2001.0, "nnyy"),
        (9, 7, 60.0, 381.1, 1088.9, 1667.8, 2668.0, "nnny"),
        (9, 8, 30.0, 284.4, 675.6, 1110.2, 1776.0, "nnyy"),
        (9, 8, 45.0, 426.7, 1013.3, 1665.3, 2665.0, "nnny"),
        (9, 8, 60.0, 568.9, 1351.1, 2220.4, 3553.0, "nnnn"),
        (9, 9, 30.0, 405.0, 810.0, 1403.0, 2245.0, "nnyy"),
        (9, 9, 45.0, 607.5, 1215.0, 2104.4, 3367.0, "nnnn"),
        (9, 9, 60.0, 810.0, 1620.0, 2805.9, 4489.0, "nnnn"),
        (10, 10, 30.0, 500.0, 1000.0, 1924.5, 3079.0, "nnny"),
        (10, 10, 45.0, 750.0, 1500.0, 2886.8, 4619.0, "nnnn"),
        (10, 10, 60.0, 1000.0, 2000.0, 3849.0, 6158.0, "nnnn"),
    ];
    for (height, fill, pcf, top, bottom, moment, factored, plain) in ROWS {
        let found = earth_on_wall(Length::feet(height), Length::feet(fill), Density::pcf(pcf)).unwrap();
        let is = |found: f64, printed: f64, half_digit: f64| {
            assert!((found - printed).abs() <= half_digit * 1.01, "{height} {fill} {pcf}: {found} {printed}");
        };
        is(found.top.to_plf(), top, 0.05);
        is(found.bottom.to_plf(), bottom, 0.05);
        is(found.moment.to_lb_ft(), moment, 0.05);
        is((found.moment * 1.6).to_lb_ft(), factored, 0.5);
        let bears: String = [5.5, 7.5, 9.5, 11.5]
            .into_iter()
            .map(|inches| {
                let wall = plain_wall(Length::decimal_inches(inches), Stress::psi(2_500.0)).unwrap();
                if found.moment * 1.6 <= wall.design { 'y' } else { 'n' }
            })
            .collect();
        assert_eq!(bears, plain, "{height} {fill} {pcf}");
    }
}
