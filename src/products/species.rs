//! Species groups of softwood lumber: what bearing and self weight need of them.
//!
//! Sources: weights at about 12% moisture, American wood design data of 1992, read in a secondary copy. Design values
//! in bearing across the grain from memory of the NDS Supplement (2018), tables 4A, 4B and 4D. The strength values of
//! the grades belong to the design layer.

use crate::units::{Density, Stress};

/// A species group as it is stamped.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Species {
    /// The stamp the format prints.
    pub name: &'static str,
    /// Other spellings, in capitals without points, blanks or dashes.
    pub also: &'static [&'static str],
    /// What the stamp stands for.
    pub meaning: &'static str,
    /// Allowable bearing across the grain, lumber up to 4 in. thick.
    pub bearing: Stress,
    /// The same of timbers, 5x5 and larger.
    pub timber_bearing: Stress,
    /// Weight, dry.
    pub weight: Density,
}

/// The species groups.
pub const SPECIES: &[Species] = &[
    Species {
        name: "DF-L",
        also: &["DFL", "DF", "DOUGFIR", "DOUGLASFIR", "DOUGLASFIRLARCH"],
        meaning: "Douglas fir-larch",
        bearing: Stress::psi(625.0),
        timber_bearing: Stress::psi(625.0),
        weight: Density::pcf(33.6),
    },
    Species {
        name: "HF",
        also: &["HEMFIR"],
        meaning: "hem-fir",
        bearing: Stress::psi(405.0),
        timber_bearing: Stress::psi(405.0),
        weight: Density::pcf(29.2),
    },
    Species {
        name: "SP",
        also: &["SYP", "SOUTHERNPINE"],
        meaning: "southern pine",
        bearing: Stress::psi(565.0),
        timber_bearing: Stress::psi(375.0),
        weight: Density::pcf(36.7),
    },
    Species {
        name: "SPF",
        also: &["SPRUCEPINEFIR"],
        meaning: "spruce-pine-fir",
        bearing: Stress::psi(425.0),
        timber_bearing: Stress::psi(425.0),
        weight: Density::pcf(28.5),
    },
    Species {
        name: "SPF-S",
        also: &["SPFS", "SPRUCEPINEFIRSOUTH"],
        meaning: "spruce-pine-fir (south)",
        bearing: Stress::psi(335.0),
        timber_bearing: Stress::psi(335.0),
        weight: Density::pcf(24.6),
    },
];

/// The weight to take where no species is named: the heaviest of the groups, on the safe side.
pub const UNNAMED_WEIGHT: Density = Density::pcf(36.7);

/// The group of this stamp; case, points, blanks and dashes don't count.
pub fn species(stamp: &str) -> Option<&'static Species> {
    let bare = bare(stamp);
    SPECIES.iter().find(|group| self::bare(group.name) == bare || group.also.contains(&bare.as_str()))
}

fn bare(stamp: &str) -> String {
    stamp.chars().filter(char::is_ascii_alphanumeric).map(|c| c.to_ascii_uppercase()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// AWC Wood Structural Design Data, 1992 revisions, read in a secondary copy.
    #[test]
    fn weights_are_the_published_ones() {
        for (stamp, pcf) in [("SP", 36.7), ("SPF", 28.5), ("SPF-S", 24.6)] {
            assert_eq!(species(stamp).unwrap().weight, Density::pcf(pcf));
        }
    }

    #[test]
    fn finds_a_stamp_in_any_spelling() {
        assert_eq!(species("DF").map(|group| group.name), Some("DF-L"));
        assert_eq!(species("hem-fir").map(|group| group.name), Some("HF"));
        assert_eq!(species("S-P-F").map(|group| group.name), Some("SPF"));
        assert_eq!(species("oak"), None);
    }

    #[test]
    fn the_unnamed_weight_is_the_heaviest() {
        assert!(SPECIES.iter().all(|group| group.weight <= UNNAMED_WEIGHT));
    }
}
