//! Dressed sizes of nominal lumber and timbers.
//!
//! Source: American Softwood Lumber Standard (PS 20), read in a secondary copy; boards (1 in.) from memory.
//! Lumber up to 4 in. thick is sold dry and has its dry size. Timbers (5x5 and larger) are sold unseasoned and have
//! their green size, 1/2 in. off (common practice): an 8x8 is 7-1/2 x 7-1/2.

use crate::units::Length;

/// The true size of a nominal one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Dressed {
    /// The smaller side, or the first of a timber.
    pub thickness: Length,
    /// The larger side, or the second of a timber.
    pub width: Length,
}

/// How wet the wood was when it was surfaced.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Surfaced {
    /// At 19% moisture or less.
    Dry,
    /// Above that.
    Green,
}

/// Nominal thicknesses below 5 in., with the widths each is sold in.
pub const DIMENSION: &[(u32, &[u32])] = &[
    (1, &[2, 3, 4, 6, 8, 10, 12]),
    (2, &[2, 3, 4, 5, 6, 8, 10, 12, 14]),
    (3, &[3, 4, 6, 8, 10, 12, 14]),
    (4, &[4, 6, 8, 10, 12, 14, 16]),
];

/// Nominal sides of timbers; any two of them make one.
pub const TIMBER: &[u32] = &[5, 6, 8, 10, 12, 14, 16];

/// The size of a nominal piece as it is sold; `None` when it is not.
pub fn dressed(nominal_thickness: u32, nominal_width: u32) -> Option<Dressed> {
    let surfaced = if is_timber(nominal_thickness, nominal_width) { Surfaced::Green } else { Surfaced::Dry };
    sizes().any(|size| size == (nominal_thickness, nominal_width)).then_some(())?;
    Some(Dressed {
        thickness: side(nominal_thickness, nominal_thickness, surfaced)?,
        width: side(nominal_width, nominal_thickness, surfaced)?,
    })
}

/// True of a nominal size that is graded as a timber.
pub const fn is_timber(nominal_thickness: u32, nominal_width: u32) -> bool {
    nominal_thickness >= 5 && nominal_width >= 5
}

/// Every nominal size sold, thickness first.
pub fn sizes() -> impl Iterator<Item = (u32, u32)> {
    let dimension =
        DIMENSION.iter().flat_map(|(thickness, widths)| widths.iter().map(|width| (*thickness, *width)));
    let timber = TIMBER.iter().flat_map(|one| TIMBER.iter().map(|other| (*one, *other)));
    dimension.chain(timber)
}

/// The true length of one nominal side of a piece this thick.
pub fn side(nominal: u32, nominal_thickness: u32, surfaced: Surfaced) -> Option<Length> {
    if nominal_thickness >= 5 {
        return timber_side(nominal, surfaced);
    }
    match surfaced {
        Surfaced::Dry => dry_side(nominal),
        Surfaced::Green => green_side(nominal),
    }
}

fn timber_side(nominal: u32, surfaced: Surfaced) -> Option<Length> {
    let off = match (surfaced, nominal) {
        (_, ..5) => return None,
        (Surfaced::Green, _) | (Surfaced::Dry, 5..=6) => Length::sixteenths(0, 8),
        (Surfaced::Dry, 7..=15) => Length::sixteenths(0, 12),
        (Surfaced::Dry, 16..) => Length::inches(1),
    };
    Some(Length::inches(i64::from(nominal)) - off)
}

fn dry_side(nominal: u32) -> Option<Length> {
    let off = match nominal {
        1 => Length::sixteenths(0, 4),
        2..=6 => Length::sixteenths(0, 8),
        8..=16 => Length::sixteenths(0, 12),
        _ => return None,
    };
    Some(Length::inches(i64::from(nominal)) - off)
}

fn green_side(nominal: u32) -> Option<Length> {
    let (whole, sixteenths) = match nominal {
        2 => (1, 9),
        3 => (2, 9),
        4 => (3, 9),
        5 => (4, 10),
        6 => (5, 10),
        8 => (7, 8),
        10 => (9, 8),
        12 => (11, 8),
        14 => (13, 8),
        16 => (15, 8),
        _ => return None,
    };
    Some(Length::sixteenths(whole, sixteenths))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Minimum dressed sizes of dimension lumber, dry: PS 20, read in a secondary copy.
    #[test]
    fn dry_sizes_are_the_standard_s() {
        let published = [(2, 1.5), (3, 2.5), (8, 7.25), (10, 9.25), (12, 11.25), (14, 13.25)];
        for (nominal, actual) in published {
            assert_eq!(
                side(nominal, 2, Surfaced::Dry),
                Some(Length::decimal_inches(actual)),
                "{nominal} in. nominal"
            );
        }
    }

    /// Minimum dressed sizes of dimension lumber, green: PS 20, read in a secondary copy.
    #[test]
    fn green_sizes_are_the_standard_s() {
        let published = [(2, 1.5625), (4, 3.5625), (6, 5.625), (8, 7.5), (10, 9.5), (12, 11.5)];
        for (nominal, actual) in published {
            assert_eq!(
                side(nominal, 2, Surfaced::Green),
                Some(Length::decimal_inches(actual)),
                "{nominal} in. nominal"
            );
        }
    }

    /// Timber rules: PS 20, read in a secondary copy: dry 1/2 in. off up to 6, 3/4 from 7 to 15, 1 from 16; green 1/2.
    #[test]
    fn timbers_follow_their_own_rule() {
        assert_eq!(side(6, 6, Surfaced::Dry), Some(Length::sixteenths(5, 8)));
        assert_eq!(side(8, 8, Surfaced::Dry), Some(Length::sixteenths(7, 4)));
        assert_eq!(side(16, 16, Surfaced::Dry), Some(Length::inches(15)));
        assert_eq!(side(8, 8, Surfaced::Green), Some(Length::sixteenths(7, 8)));
        let eight = Length::sixteenths(7, 8);
        assert_eq!(dressed(8, 8), Some(Dressed { thickness: eight, width: eight }));
    }

    #[test]
    fn what_is_not_sold_has_no_size() {
        assert_eq!(
            dressed(2, 10).map(|d| (d.thickness, d.width)),
            Some((Length::sixteenths(1, 8), Length::sixteenths(9, 4)))
        );
        assert!(dressed(4, 4).is_some());
        assert_eq!(dressed(10, 2), None);
        assert_eq!(dressed(2, 11), None);
        assert_eq!(dressed(0, 0), None);
        assert_eq!(dressed(u32::MAX, u32::MAX), None);
    }

    #[test]
    fn every_listed_size_resolves() {
        for (thickness, width) in sizes() {
            assert!(dressed(thickness, width).is_some(), "{thickness}x{width}");
        }
    }
}
