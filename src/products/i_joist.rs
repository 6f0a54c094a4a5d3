//! I-joists of the performance-rated standard (ANSI/APA PRI-400): depths, series and flanges.
//!
//! Sources: the four depths read in a secondary copy of its scope; which series is made in which depth, and the
//! flange sizes, from memory of its 2012 generation.

pub mod capacities;

use crate::units::{Density, Length, LineLoad};

/// An I-joist of one series and depth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct IJoist {
    /// The number in the series' name: 40 of PRI-40.
    pub series: u32,
    /// Over both flanges.
    pub depth: Length,
    /// Width of a flange.
    pub flange_width: Length,
}

/// Depth of a flange, taken alike for all series (from memory: 1-3/8 to 1-1/2 in.).
pub const FLANGE_DEPTH: Length = Length::sixteenths(1, 8);

/// Thickness of a web, at least the 3/8 category of the standard.
pub const WEB: Length = Length::sixteenths(0, 6);

/// Every series with its flange width and the depths it is made in.
const SERIES: &[(u32, Length, &[Length])] = &[
    (20, Length::sixteenths(1, 12), &[D9, D11]),
    (30, Length::sixteenths(2, 5), &[D9, D11]),
    (40, Length::sixteenths(2, 8), &[D9, D11, D14, D16]),
    (50, Length::sixteenths(1, 12), &[D9, D11]),
    (60, Length::sixteenths(2, 8), &[D9, D11, D14, D16]),
    (70, Length::sixteenths(2, 5), &[D11, D14]),
    (80, Length::sixteenths(3, 8), &[D11, D14, D16]),
    (90, Length::sixteenths(3, 8), &[D11, D14, D16]),
];

/// The depths of the standard.
pub const DEPTHS: &[Length] = &[D9, D11, D14, D16];

const D9: Length = Length::sixteenths(9, 8);
const D11: Length = Length::sixteenths(11, 14);
const D14: Length = Length::inches(14);
const D16: Length = Length::inches(16);

/// Density that self weight is figured from where no product declares a weight (common practice).
const DENSITY: Density = Density::pcf(38.0);

impl IJoist {
    /// Its own weight, from flanges and web (common practice where no product declares it).
    pub fn weight(&self) -> LineLoad {
        let flanges = 2.0 * self.flange_width.to_inches() * FLANGE_DEPTH.to_inches();
        let web = WEB.to_inches() * (self.depth - FLANGE_DEPTH * 2).to_inches();
        LineLoad::plf((flanges + web) / 144.0 * DENSITY.to_pcf())
    }
}

/// Every I-joist of the standard, by series and depth.
pub fn all() -> impl Iterator<Item = IJoist> {
    SERIES.iter().flat_map(|(series, flange_width, depths)| {
        depths.iter().map(|depth| IJoist { series: *series, depth: *depth, flange_width: *flange_width })
    })
}

/// The I-joist of this depth whose series' number ends the words: `PRI-40`, `class 40`, `40`.
pub fn i_joist(depth: Length, words: &str) -> Option<IJoist> {
    let series = series_in(words)?;
    all().find(|joist| joist.depth == depth && joist.series == series)
}

fn series_in(words: &str) -> Option<u32> {
    let digits = words.trim_end().rsplit(|c: char| !c.is_ascii_digit()).next()?;
    digits.parse().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Depths of ANSI/APA PRI-400, read in a secondary copy of its scope.
    #[test]
    fn depths_are_the_standard_s() {
        let printed: Vec<String> = DEPTHS.iter().map(|depth| depth.in_inches().to_string()).collect();
        assert_eq!(printed, ["9-1/2\"", "11-7/8\"", "14\"", "16\""]);
        assert!(all().all(|joist| DEPTHS.contains(&joist.depth)));
    }

    /// Flange width 2-1/2 in. from memory of ANSI/APA PRI-400.
    #[test]
    fn a_series_may_be_called_a_class() {
        let joist = i_joist(Length::sixteenths(11, 14), "class 40").unwrap();
        assert_eq!(joist.flange_width, Length::sixteenths(2, 8));
        assert_eq!(i_joist(Length::sixteenths(11, 14), "PRI-40"), Some(joist));
        assert_eq!(i_joist(Length::sixteenths(11, 14), "PRI"), None);
        assert_eq!(i_joist(Length::inches(16), "PRI-20"), None);
        assert_eq!(i_joist(Length::inches(12), "PRI-40"), None);
    }

    /// By hand: (2 x 2.5 x 1.5 + 0.375 x 8.875) / 144 x 38 = 2.857 plf.
    #[test]
    fn weighs_its_flanges_and_web() {
        let joist = i_joist(Length::sixteenths(11, 14), "PRI-40").unwrap();
        assert!((joist.weight().to_plf() - 2.857).abs() < 0.001);
    }
}
