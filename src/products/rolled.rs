//! Rolled and formed steel: wide flanges, tubes and pipes with their published properties.
//!
//! One file a family below; each names its source. Outer sizes are exact: a beam's true depth is 7.93", never 8".
//! Weights, areas and moduli are the published figures, not computed from the outline.

use crate::units::{Area, Length, LineLoad, SecondMoment, SectionModulus};

mod pipes;
mod tubes;
mod wide_flanges;

pub use pipes::PIPES;
pub use tubes::TUBES;
pub use wide_flanges::WIDE_FLANGES;

/// Where the properties are from, and how sure that is.
pub const SOURCE: &str = "AISC Shapes Database v15.0, read in a copy open to the public";

/// A rolled or formed steel shape.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rolled {
    /// Its mark as the format writes it: `W8x24`, `HSS 4 x 4 x 3/16`, `Pipe3STD`.
    pub mark: &'static str,
    /// Its own weight.
    pub weight: LineLoad,
    /// The area of its section.
    pub area: Area,
    /// Its outline.
    pub outline: Outline,
    /// Bending about the strong axis, or about either one of a square tube or a pipe.
    pub major: Axis,
    /// Bending about the weak axis.
    pub minor: Axis,
    /// Its torsional constant.
    pub torsion: SecondMoment,
}

/// The outline of a shape.
///
/// Thicknesses are published in thousandths of an inch and stored to the nearest exact unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Outline {
    /// A W shape.
    WideFlange {
        /// Over both flanges.
        depth: Length,
        /// Width of a flange.
        flange_width: Length,
        /// Thickness of a flange.
        flange: Length,
        /// Thickness of the web.
        web: Length,
        /// From the outer face of a flange to the toe of its fillet: the value for design (kdes), not for detailing.
        fillet: Length,
        /// Effective radius of gyration of the compression flange (rts).
        effective_radius: Length,
        /// Between the centres of the flanges.
        flange_distance: Length,
    },
    /// A square or rectangular tube.
    Tube {
        /// The longer side.
        depth: Length,
        /// The shorter side.
        width: Length,
        /// The wall as ordered.
        wall: Length,
        /// The wall that counts in design.
        design_wall: Length,
    },
    /// A pipe.
    Pipe {
        /// The size it is called by.
        nominal: Length,
        /// Outside diameter.
        outside: Length,
        /// The wall as ordered.
        wall: Length,
        /// The wall that counts in design.
        design_wall: Length,
    },
}

/// What a section brings to bending about one axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Axis {
    /// Second moment of area.
    pub second_moment: SecondMoment,
    /// Elastic section modulus.
    pub elastic_modulus: SectionModulus,
    /// Plastic section modulus.
    pub plastic_modulus: SectionModulus,
    /// Radius of gyration.
    pub radius: Length,
}

impl Axis {
    /// In the order of the table: in4, in3 elastic, in3 plastic, in.
    const fn published([second_moment, elastic, plastic, radius]: [f64; 4]) -> Self {
        Self {
            second_moment: SecondMoment::in4(second_moment),
            elastic_modulus: SectionModulus::in3(elastic),
            plastic_modulus: SectionModulus::in3(plastic),
            radius: Length::decimal_inches(radius),
        }
    }
}

impl Rolled {
    /// Its true depth; the outside diameter of a pipe.
    pub const fn depth(&self) -> Length {
        match self.outline {
            Outline::WideFlange { depth, .. } | Outline::Tube { depth, .. } => depth,
            Outline::Pipe { outside, .. } => outside,
        }
    }

    /// Its true width: flange, shorter side or outside diameter.
    pub const fn width(&self) -> Length {
        match self.outline {
            Outline::WideFlange { flange_width, .. } => flange_width,
            Outline::Tube { width, .. } => width,
            Outline::Pipe { outside, .. } => outside,
        }
    }
}

/// The shape of this mark; blanks and case don't count: `w8X24`, `HSS4x4x3/16`.
pub fn by_mark(mark: &str) -> Option<&'static Rolled> {
    all().find(|shape| is_same_mark(shape.mark, mark))
}

/// The tube with these sides, in either order, and this nominal wall.
pub fn tube(one_side: Length, other_side: Length, wall: Length) -> Option<&'static Rolled> {
    let (depth, width) = (one_side.max(other_side), one_side.min(other_side));
    TUBES.iter().find(|shape| {
        let Outline::Tube { depth: d, width: w, wall: t, .. } = shape.outline else { return false };
        d == depth && w == width && t == wall
    })
}

/// The pipe with this diameter and nominal wall.
///
/// The diameter may be the outside one or the nominal one: with the wall, either names one pipe only.
/// Walls are published in thousandths of an inch, so half a thousandth counts as the same.
pub fn pipe(diameter: Length, wall: Length) -> Option<&'static Rolled> {
    let half_a_thousandth = Length::decimal_inches(0.0005);
    PIPES.iter().find(|shape| {
        let Outline::Pipe { nominal, outside, wall: t, .. } = shape.outline else { return false };
        let is_outside = (outside - diameter).abs() <= half_a_thousandth;
        (is_outside || nominal == diameter) && (t - wall).abs() <= half_a_thousandth
    })
}

/// Every listed shape.
pub fn all() -> impl Iterator<Item = &'static Rolled> {
    WIDE_FLANGES.iter().chain(TUBES).chain(PIPES)
}

fn is_same_mark(listed: &str, written: &str) -> bool {
    letters(listed).eq(letters(written))
}

fn letters(mark: &str) -> impl Iterator<Item = char> {
    mark.chars().filter(|c| !c.is_whitespace()).map(|c| c.to_ascii_uppercase())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Figures of the AISC Shapes Database v15.0, read in a public copy.
    #[test]
    fn carries_the_published_figures() {
        let shape = by_mark("W8X24").unwrap();
        assert_eq!(shape.depth(), Length::hundredths(793));
        assert_eq!(shape.width(), Length::hundredths(650));
        assert_eq!(shape.major.second_moment, SecondMoment::in4(82.7));
        assert_eq!(shape.major.plastic_modulus, SectionModulus::in3(23.1));
        assert_eq!(shape.minor.radius, Length::hundredths(161));

        let tube = by_mark("HSS4X4X3/16").unwrap();
        assert_eq!(tube.depth(), Length::inches(4));
        assert_eq!(tube.weight, LineLoad::plf(9.42));
        assert!((tube.area.to_sq_in() - 2.58).abs() < 1e-9);
        assert_eq!(tube.major.radius, Length::hundredths(155));

        let pipe = by_mark("Pipe3STD").unwrap();
        assert_eq!(pipe.depth(), Length::sixteenths(3, 8));
        assert_eq!(pipe.major.plastic_modulus, SectionModulus::in3(2.19));
    }

    /// Numbers printed in the AISC Design Examples v16.0, read in a secondary copy: E.10 (b/t and h/t of a tube, area
    /// 6.76), F.6 (I of the 3-1/2 tube), F.7 (S, Z), F.9 (Z of the 8 in. extra-strong pipe), J.6 (sizes of W12x96).
    #[test]
    fn agrees_with_published_worked_examples() {
        let tube = by_mark("HSS 12 x 8 x 3/16").unwrap();
        let Outline::Tube { depth, width, design_wall, .. } = tube.outline else { panic!("a tube") };
        let flat = |side: Length| (side - design_wall * 3).to_inches() / design_wall.to_inches();
        assert!((flat(width) - 43.0).abs() < 0.05);
        assert!((flat(depth) - 66.0).abs() < 0.05);
        assert!((tube.area.to_sq_in() - 6.76).abs() < 1e-9);

        let small = by_mark("HSS 3-1/2 x 3-1/2 x 1/8").unwrap();
        assert_eq!(small.major.second_moment, SecondMoment::in4(2.90));
        let flat_tube = by_mark("HSS 10 x 6 x 3/16").unwrap();
        assert_eq!(flat_tube.major.elastic_modulus, SectionModulus::in3(14.9));
        assert_eq!(flat_tube.major.plastic_modulus, SectionModulus::in3(18.0));
        assert_eq!(by_mark("Pipe8XS").unwrap().major.plastic_modulus, SectionModulus::in3(31.0));
        let wide = by_mark("W12x96").unwrap();
        assert_eq!((wide.depth(), wide.width()), (Length::hundredths(1270), Length::hundredths(1220)));
    }

    /// Web slenderness h/tw and flange slenderness bf/2tf as the AISC Shapes Database v15.0 prints them.
    #[test]
    fn outlines_give_the_published_slenderness() {
        for (mark, web_ratio, flange_ratio) in
            [("W8x24", 25.9, 8.12), ("W10x49", 23.1, 8.93), ("W18x50", 45.2, 6.57), ("W6x9", 29.2, 9.16)]
        {
            let Outline::WideFlange { depth, flange_width, flange, web, fillet, .. } =
                by_mark(mark).unwrap().outline
            else {
                panic!("a wide flange")
            };
            let clear = (depth - fillet * 2).to_inches() / web.to_inches();
            assert!((clear / web_ratio - 1.0).abs() < 0.005, "{mark}: {clear}");
            let half_flange = flange_width.to_inches() / (2.0 * flange.to_inches());
            assert!((half_flange / flange_ratio - 1.0).abs() < 0.005, "{mark}: {half_flange}");
        }
    }

    /// Steel weighs 490 pcf (the density of the AISC Manual): 3.40 plf a square inch. Mill weights of W shapes are
    /// nominal and tube weights count the nominal wall, hence the wide margin: it finds slips of a row, not of a digit.
    #[test]
    fn no_row_has_slipped() {
        assert_eq!(all().count(), 95);
        for shape in all() {
            let weighed = shape.weight.to_plf() / (shape.area.to_sq_in() * 490.0 / 144.0);
            assert!((0.97..1.09).contains(&weighed), "{}: {weighed}", shape.mark);
            let gyration = (shape.major.second_moment.to_in4() / shape.area.to_sq_in()).sqrt();
            assert!((gyration / shape.major.radius.to_inches() - 1.0).abs() < 0.02, "{}", shape.mark);
            let half_depth = shape.major.second_moment.to_in4() / shape.major.elastic_modulus.to_in3();
            assert!((2.0 * half_depth / shape.depth().to_inches() - 1.0).abs() < 0.02, "{}", shape.mark);
        }
    }

    #[test]
    fn depths_are_exact() {
        for shape in all() {
            let hundredth = Length::hundredths(1);
            let sixteenth = Length::sixteenths(0, 1);
            let is_whole = |length: Length, step: Length| length.rounded_to(step) == length;
            let is_published_pipe = shape.mark.starts_with("Pipe5") || shape.mark.starts_with("Pipe8");
            assert!(
                is_whole(shape.depth(), hundredth) || is_whole(shape.depth(), sixteenth) || is_published_pipe,
                "{}",
                shape.mark
            );
        }
    }

    #[test]
    fn finds_a_mark_in_any_spelling() {
        assert_eq!(by_mark("w8x24").map(|shape| shape.mark), Some("W8x24"));
        assert_eq!(by_mark("hss 4x4 x3/16").map(|shape| shape.mark), Some("HSS 4 x 4 x 3/16"));
        assert_eq!(by_mark("PIPE 3 STD").map(|shape| shape.mark), Some("Pipe3STD"));
        assert_eq!(by_mark("W8x23"), None);
    }

    #[test]
    fn finds_tubes_and_pipes_by_their_sizes() {
        let found = tube(Length::inches(6), Length::inches(10), Length::sixteenths(0, 6));
        assert_eq!(found.map(|shape| shape.mark), Some("HSS 10 x 6 x 3/8"));
        let wall = Length::decimal_inches(0.226);
        assert_eq!(pipe(Length::inches(4), wall).map(|shape| shape.mark), Some("Pipe3-1/2STD"));
        assert_eq!(pipe(Length::sixteenths(3, 8), wall).map(|shape| shape.mark), Some("Pipe3-1/2STD"));
        let thinner = Length::decimal_inches(0.216);
        assert_eq!(pipe(Length::sixteenths(3, 8), thinner).map(|shape| shape.mark), Some("Pipe3STD"));
        assert_eq!(pipe(Length::inches(4), thinner), None);
    }
}
