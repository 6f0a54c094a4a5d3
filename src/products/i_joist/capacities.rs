//! What an I-joist of the performance-rated standard can bear, without bearing stiffeners.
//!
//! Source: ANSI/APA PRI-400, generation of 2012, from memory; its tables could not be read. Two rows of 16 in. (series 80
//! and 90) are left out, for want of a value each. A `product` that declares its own values goes before these.

use crate::products::i_joist::{D9, D11, D14, D16, IJoist};
use crate::units::{FlexuralRigidity, Force, Length, Moment};

/// Where the values are from, and how sure that is.
pub const SOURCE: &str = "ANSI/APA PRI-400, generation of 2012, from memory";

/// Reference capacities, for ten years of load.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Capacities {
    /// EI.
    pub rigidity: FlexuralRigidity,
    /// M.
    pub moment: Moment,
    /// V.
    pub shear: Force,
    /// IR: reaction where it runs over a support of [`INNER_BEARING`].
    pub inner_reaction: Force,
    /// ER: reaction at its end on [`END_BEARING`].
    pub end_reaction: Force,
    /// K: a uniform load w on a span l sags by w l² / K in shear. 0.52e6 lb for an inch of depth.
    pub shear_coefficient: Force,
}

/// Bearing that the end reaction is stated for: PRI-400, from memory.
pub const END_BEARING: Length = Length::sixteenths(1, 12);

/// Bearing that the inner reaction is stated for: PRI-400, from memory.
pub const INNER_BEARING: Length = Length::sixteenths(3, 8);

/// The capacities of a joist; `None` where its row is not here.
pub fn capacities(joist: IJoist) -> Option<Capacities> {
    ROWS.iter().find(|row| row.0 == joist.series && row.1 == joist.depth).map(|row| row.2)
}

type Row = (u32, Length, Capacities);

const fn row(series: u32, depth: Length, [rigidity, moment, shear, inner, end]: [f64; 5]) -> Row {
    let inches = depth.to_units() as f64 / Length::UNITS_PER_INCH as f64;
    let capacities = Capacities {
        rigidity: FlexuralRigidity::lb_in2(rigidity),
        moment: Moment::lb_ft(moment),
        shear: Force::lb(shear),
        inner_reaction: Force::lb(inner),
        end_reaction: Force::lb(end),
        shear_coefficient: Force::lb(520_000.0 * inches),
    };
    (series, depth, capacities)
}

/// Series and depth; then EI in lb-in², M in lb-ft, V, IR and ER in lb.
const ROWS: &[Row] = &[
    row(20, D9, [145_000_000.0, 2_520.0, 1_120.0, 1_700.0, 830.0]),
    row(30, D9, [161_000_000.0, 3_225.0, 1_120.0, 1_905.0, 945.0]),
    row(40, D9, [193_000_000.0, 2_735.0, 1_120.0, 2_160.0, 1_080.0]),
    row(50, D9, [186_000_000.0, 3_800.0, 1_120.0, 2_040.0, 1_015.0]),
    row(60, D9, [231_000_000.0, 3_780.0, 1_120.0, 2_160.0, 1_080.0]),
    row(20, D11, [253_000_000.0, 3_265.0, 1_420.0, 1_700.0, 830.0]),
    row(30, D11, [280_000_000.0, 4_170.0, 1_420.0, 1_905.0, 945.0]),
    row(40, D11, [330_000_000.0, 3_545.0, 1_420.0, 2_500.0, 1_200.0]),
    row(50, D11, [322_000_000.0, 4_915.0, 1_420.0, 2_040.0, 1_015.0]),
    row(60, D11, [396_000_000.0, 4_900.0, 1_420.0, 2_500.0, 1_200.0]),
    row(70, D11, [420_000_000.0, 6_645.0, 1_420.0, 2_335.0, 1_160.0]),
    row(80, D11, [547_000_000.0, 6_940.0, 1_420.0, 2_760.0, 1_280.0]),
    row(90, D11, [604_000_000.0, 9_605.0, 1_925.0, 3_355.0, 1_400.0]),
    row(40, D14, [482_000_000.0, 4_270.0, 1_710.0, 2_500.0, 1_200.0]),
    row(60, D14, [584_000_000.0, 5_895.0, 1_710.0, 2_500.0, 1_200.0]),
    row(70, D14, [613_000_000.0, 7_990.0, 1_710.0, 2_335.0, 1_160.0]),
    row(80, D14, [802_000_000.0, 8_360.0, 1_710.0, 3_020.0, 1_280.0]),
    row(90, D14, [881_000_000.0, 11_530.0, 2_125.0, 3_355.0, 1_400.0]),
    row(40, D16, [657_000_000.0, 4_950.0, 1_970.0, 2_500.0, 1_200.0]),
    row(60, D16, [799_000_000.0, 6_835.0, 1_970.0, 2_500.0, 1_200.0]),
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::products::i_joist;

    /// PRI-400 from memory: 11-7/8 PRI-40 has EI 330e6, M 3545, V 1420, IR 2500, ER 1200 and K 6.18e6.
    #[test]
    fn a_row_from_memory() {
        let joist = i_joist::i_joist(Length::sixteenths(11, 14), "PRI-40").unwrap();
        let row = capacities(joist).unwrap();
        assert_eq!((row.rigidity, row.moment), (FlexuralRigidity::lb_in2(330e6), Moment::lb_ft(3_545.0)));
        assert_eq!((row.inner_reaction, row.end_reaction), (Force::lb(2_500.0), Force::lb(1_200.0)));
        assert!((row.shear_coefficient.to_lb() - 6.18e6).abs() < 0.01e6);
    }

    #[test]
    fn all_but_two_joists_have_a_row() {
        let without: Vec<_> = i_joist::all()
            .filter(|joist| capacities(*joist).is_none())
            .map(|joist| (joist.series, joist.depth))
            .collect();
        assert_eq!(without, [(80, D16), (90, D16)]);
        assert!(
            ROWS.iter().all(|row| i_joist::all().any(|joist| (joist.series, joist.depth) == (row.0, row.1)))
        );
    }

    /// A deeper joist of one series is stiffer and stronger.
    #[test]
    fn rows_grow_with_depth() {
        for one in ROWS {
            for other in ROWS.iter().filter(|other| other.0 == one.0 && other.1 > one.1) {
                assert!(other.2.rigidity > one.2.rigidity && other.2.moment > one.2.moment);
            }
        }
    }
}
