//! The cross-section behind a written size: true width and depth, what it is made as, what it weighs.
//!
//! The model turns a member's words into a [`Named`] size and asks [`section_of`]. Declared products don't come here:
//! the model builds their [`Section`] from what the product states.

use std::f64::consts::PI;

use crate::products::i_joist::IJoist;
use crate::products::rolled::{self, Outline, Rolled};
use crate::products::species::{self, Species};
use crate::products::{engineered, i_joist, lumber};
use crate::units::{Density, Length, LineLoad};

/// A member's size and stuff, as words and numbers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Named<'a> {
    /// Plies or pieces, at least 1.
    pub pieces: u32,
    /// Its size.
    pub size: Size<'a>,
    /// What it is made as, when words say so: `I-joist`, `glulam`, `LVL`.
    pub make: Option<&'a str>,
    /// The stamp of its species group.
    pub species: Option<&'a str>,
    /// Grade, class or series.
    pub grade: Option<&'a str>,
}

/// The size a member's text names.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Size<'a> {
    /// Nominal lumber or timber, thickness first.
    Nominal(u32, u32),
    /// True width and depth of one piece.
    Built(Length, Length),
    /// A depth alone: that of an I-joist.
    Depth(Length),
    /// A mark: `W8x24`.
    Rolled(&'a str),
    /// Two sides and the nominal wall of a tube.
    Tube(Length, Length, Length),
    /// Diameter and wall of a pipe.
    Pipe(Length, Length),
    /// Outside diameter of a concrete-filled pipe.
    FilledPipe(Length),
}

/// The cross-section of a member standing on edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Section {
    /// Plies or pieces side by side.
    pub pieces: u32,
    /// Width of one piece.
    pub piece_width: Length,
    /// Depth.
    pub depth: Length,
    /// What it is made as.
    pub make: Make,
    /// Weight of one piece.
    pub piece_weight: LineLoad,
}

/// What a member is made as.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Make {
    /// Sawn lumber.
    Sawn {
        /// Its species group, when named and listed.
        species: Option<&'static Species>,
        /// Graded as a timber, 5x5 and larger.
        is_timber: bool,
    },
    /// Glued-laminated timber.
    Glulam,
    /// Composite lumber: plies or billets of glued veneer or strand.
    Composite,
    /// An I-joist; its series when it is one of the standard's.
    IJoist(Option<IJoist>),
    /// A rim board.
    RimBoard,
    /// A rolled or formed steel shape.
    Rolled(&'static Rolled),
    /// A steel shape of a declared product: its properties are the product's.
    DeclaredSteel,
    /// A pipe filled with concrete.
    FilledPipe,
}

/// What a member does across its depth as it dries.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CrossGrain {
    /// It shrinks.
    Shrinks,
    /// It comes dry and keeps its size.
    Dry,
    /// It is no wood.
    NoGrain,
}

/// A size that no list holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct UnknownSize {
    /// The size asked for, as the format writes it.
    pub asked: String,
    /// The nearest listed sizes, nearest first; empty when nothing is near.
    pub nearest: Vec<String>,
}

impl Section {
    /// Its whole width.
    pub fn width(&self) -> Length {
        self.piece_width * i64::from(self.pieces)
    }

    /// Its whole weight.
    pub fn weight(&self) -> LineLoad {
        self.piece_weight * f64::from(self.pieces)
    }

    /// What it does across its depth as it dries.
    pub const fn cross_grain(&self) -> CrossGrain {
        match self.make {
            Make::Sawn { .. } => CrossGrain::Shrinks,
            Make::Glulam | Make::Composite | Make::IJoist(_) | Make::RimBoard => CrossGrain::Dry,
            Make::Rolled(_) | Make::DeclaredSteel | Make::FilledPipe => CrossGrain::NoGrain,
        }
    }
}

/// The section of a named size.
pub fn section_of(named: &Named) -> Result<Section, UnknownSize> {
    match named.size {
        Size::Nominal(thickness, width) => nominal(named, thickness, width),
        Size::Built(width, depth) => Ok(built(named, width, depth)),
        Size::Depth(depth) => series_joist(named, depth),
        Size::Rolled(mark) => {
            let shape = rolled::by_mark(mark).ok_or_else(|| unknown_mark(mark))?;
            Ok(steel(named.pieces, shape))
        }
        Size::Tube(one_side, other_side, wall) => {
            let shape = rolled::tube(one_side, other_side, wall)
                .ok_or_else(|| unknown_tube(one_side, other_side, wall))?;
            Ok(steel(named.pieces, shape))
        }
        Size::Pipe(diameter, wall) => {
            let shape = rolled::pipe(diameter, wall).ok_or_else(|| unknown_pipe(diameter, wall))?;
            Ok(steel(named.pieces, shape))
        }
        Size::FilledPipe(outside) => filled_pipe(named.pieces, outside),
    }
}

fn nominal(named: &Named, thickness: u32, width: u32) -> Result<Section, UnknownSize> {
    let dressed = lumber::dressed(thickness, width).ok_or_else(|| unknown_nominal(thickness, width))?;
    let is_timber = lumber::is_timber(thickness, width);
    Ok(sawn(named, dressed.thickness, dressed.width, is_timber))
}

/// A piece by its true size: what words or a stocked width make it, else sawn.
fn built(named: &Named, width: Length, depth: Length) -> Section {
    let make = match named.make.map(made_as) {
        Some(Some(make)) => make,
        None if named.species.is_none() && engineered::COMPOSITE_WIDTHS.contains(&width) => Make::Composite,
        Some(None) | None => {
            let is_timber = width.min(depth) >= Length::sixteenths(4, 8);
            return sawn(named, width, depth, is_timber);
        }
    };
    let density = match make {
        Make::Glulam => engineered::GLULAM_WEIGHT,
        _ => engineered::COMPOSITE_WEIGHT,
    };
    Section {
        pieces: named.pieces,
        piece_width: width,
        depth,
        make,
        piece_weight: solid_weight(width, depth, density),
    }
}

/// The make that these words name, of those that have a true size.
fn made_as(words: &str) -> Option<Make> {
    let words = words.to_ascii_lowercase();
    if words.contains("glulam") {
        return Some(Make::Glulam);
    }
    if words.contains("rim") {
        return Some(Make::RimBoard);
    }
    ["lvl", "psl", "lsl", "composite"].iter().any(|name| words.contains(name)).then_some(Make::Composite)
}

fn sawn(named: &Named, width: Length, depth: Length, is_timber: bool) -> Section {
    let species = named.species.and_then(species::species);
    let density = species.map_or(species::UNNAMED_WEIGHT, |group| group.weight);
    Section {
        pieces: named.pieces,
        piece_width: width,
        depth,
        make: Make::Sawn { species, is_timber },
        piece_weight: solid_weight(width, depth, density),
    }
}

fn series_joist(named: &Named, depth: Length) -> Result<Section, UnknownSize> {
    let joist = named
        .grade
        .and_then(|words| i_joist::i_joist(depth, words))
        .ok_or_else(|| unknown_joist(depth, named.grade))?;
    Ok(Section {
        pieces: named.pieces,
        piece_width: joist.flange_width,
        depth,
        make: Make::IJoist(Some(joist)),
        piece_weight: joist.weight(),
    })
}

fn steel(pieces: u32, shape: &'static Rolled) -> Section {
    Section {
        pieces,
        piece_width: shape.width(),
        depth: shape.depth(),
        make: Make::Rolled(shape),
        piece_weight: shape.weight,
    }
}

/// A filled pipe is named by its outside diameter, and weighed as a standard pipe full of concrete (common practice).
fn filled_pipe(pieces: u32, outside: Length) -> Result<Section, UnknownSize> {
    let Some((shell, _, wall)) = standard_pipes().find(|(_, listed, _)| *listed == outside) else {
        return Err(UnknownSize {
            asked: format!("filled pipe {}", bare(outside)),
            nearest: nearest(standard_pipes(), |(_, listed, _)| gap(*listed, outside))
                .map(|(_, listed, _)| format!("filled pipe {}", bare(listed)))
                .collect(),
        });
    };
    let core = (outside - wall * 2).to_inches();
    let concrete = LineLoad::plf(PI / 4.0 * core * core / 144.0 * CONCRETE.to_pcf());
    Ok(Section {
        pieces,
        piece_width: outside,
        depth: outside,
        make: Make::FilledPipe,
        piece_weight: shell.weight + concrete,
    })
}

/// Plain concrete of normal weight (common practice).
const CONCRETE: Density = Density::pcf(145.0);

/// Standard pipes with their outside diameter and design wall.
fn standard_pipes() -> impl Iterator<Item = (&'static Rolled, Length, Length)> {
    rolled::PIPES.iter().filter_map(|shape| match shape.outline {
        Outline::Pipe { outside, design_wall, .. } if shape.mark.ends_with("STD") => {
            Some((shape, outside, design_wall))
        }
        Outline::Pipe { .. } | Outline::WideFlange { .. } | Outline::Tube { .. } => None,
    })
}

/// The weight of a solid piece.
pub fn solid_weight(width: Length, depth: Length, density: Density) -> LineLoad {
    LineLoad::plf(width.to_inches() * depth.to_inches() / 144.0 * density.to_pcf())
}

fn unknown_nominal(thickness: u32, width: u32) -> UnknownSize {
    // A wrong thickness is a rarer slip than a wrong width, so it counts more.
    let far = |size: &(u32, u32)| {
        u64::from(size.0.abs_diff(thickness)).saturating_mul(4).saturating_add(size.1.abs_diff(width).into())
    };
    UnknownSize {
        asked: format!("{thickness}x{width}"),
        nearest: nearest(lumber::sizes(), far).map(|(t, w)| format!("{t}x{w}")).collect(),
    }
}

fn unknown_joist(depth: Length, grade: Option<&str>) -> UnknownSize {
    let asked = [Some(format!("{} I-joist", bare(depth))), grade.map(str::to_owned)];
    // Without a series no number is nearest: all of the nearest depth are offered.
    let closest = i_joist::DEPTHS.iter().min_by_key(|known| gap(**known, depth));
    UnknownSize {
        asked: asked.into_iter().flatten().collect::<Vec<_>>().join(" "),
        nearest: i_joist::all()
            .filter(|joist| Some(&joist.depth) == closest)
            .map(|joist| format!("{} I-joist PRI-{}", bare(joist.depth), joist.series))
            .collect(),
    }
}

fn unknown_mark(mark: &str) -> UnknownSize {
    let wanted = depth_and_weight(mark);
    let far = |shape: &&Rolled| {
        let listed = depth_and_weight(shape.mark);
        listed.zip(wanted).map_or(u64::MAX, |((depth, weight), (wanted_depth, wanted_weight))| {
            // In tenths: a series of depth counts before any weight.
            ((depth - wanted_depth).abs() * 10_000.0 + (weight - wanted_weight).abs() * 10.0) as u64
        })
    };
    let nearest = match wanted {
        Some(_) => nearest(rolled::WIDE_FLANGES.iter(), far).map(|shape| shape.mark.to_owned()).collect(),
        None => Vec::new(),
    };
    UnknownSize { asked: mark.to_owned(), nearest }
}

/// The two numbers of a W mark.
fn depth_and_weight(mark: &str) -> Option<(f64, f64)> {
    let numbers = mark.trim().strip_prefix(['W', 'w'])?;
    let (depth, weight) = numbers.split_once(['X', 'x'])?;
    Some((depth.trim().parse().ok()?, weight.trim().parse().ok()?))
}

fn unknown_tube(one_side: Length, other_side: Length, wall: Length) -> UnknownSize {
    let (long, short) = (one_side.max(other_side), one_side.min(other_side));
    let far = |shape: &&Rolled| match shape.outline {
        Outline::Tube { depth, width, wall: known, .. } => {
            gap(depth, long).saturating_add(gap(width, short)).saturating_add(gap(known, wall))
        }
        Outline::WideFlange { .. } | Outline::Pipe { .. } => u64::MAX,
    };
    UnknownSize {
        asked: format!("HSS {} x {} x {}", bare(one_side), bare(other_side), bare(wall)),
        nearest: nearest(rolled::TUBES.iter(), far).map(|shape| shape.mark.to_owned()).collect(),
    }
}

fn unknown_pipe(diameter: Length, wall: Length) -> UnknownSize {
    let far = |shape: &&Rolled| match shape.outline {
        Outline::Pipe { outside, wall: known, .. } => gap(outside, diameter).saturating_add(gap(known, wall)),
        Outline::WideFlange { .. } | Outline::Tube { .. } => u64::MAX,
    };
    let named = |outside: Length, wall: Length| format!("pipe {} x {:.3}", bare(outside), wall.to_inches());
    UnknownSize {
        asked: named(diameter, wall),
        nearest: nearest(rolled::PIPES.iter(), far)
            .filter_map(|shape| match shape.outline {
                Outline::Pipe { outside, wall, .. } => Some(named(outside, wall)),
                Outline::WideFlange { .. } | Outline::Tube { .. } => None,
            })
            .collect(),
    }
}

/// How many nearest sizes a message can carry.
const OFFERED: usize = 3;

fn nearest<T>(sizes: impl Iterator<Item = T>, far: impl Fn(&T) -> u64) -> impl Iterator<Item = T> {
    let mut sizes: Vec<T> = sizes.collect();
    sizes.sort_by_key(far);
    sizes.into_iter().take(OFFERED)
}

fn gap(one: Length, other: Length) -> u64 {
    one.to_units().abs_diff(other.to_units())
}

/// A length as sizes write it: inches without the mark.
/// Inches without their mark, as a built size is written: `1-3/4`.
pub fn bare(length: Length) -> String {
    length.in_inches().to_string().replace(['"', '~'], "")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn plain(size: Size) -> Named {
        Named { pieces: 1, size, make: None, species: None, grade: None }
    }

    #[test]
    fn sawn_plies_add_up_and_shrink() {
        let named = Named { pieces: 3, species: Some("SPF"), ..plain(Size::Nominal(2, 10)) };
        let section = section_of(&named).unwrap();
        assert_eq!(section.width(), Length::sixteenths(4, 8));
        assert_eq!(section.depth, Length::sixteenths(9, 4));
        assert_eq!(section.cross_grain(), CrossGrain::Shrinks);
        // By hand: 3 x 1.5 x 9.25 / 144 x 28.5 = 8.238 plf.
        assert!((section.weight().to_plf() - 8.238).abs() < 0.001);
    }

    #[test]
    fn a_timber_says_so() {
        let named = Named { species: Some("DF"), grade: Some("No.1"), ..plain(Size::Nominal(8, 8)) };
        let section = section_of(&named).unwrap();
        assert_eq!(section.width(), Length::sixteenths(7, 8));
        assert!(
            matches!(section.make, Make::Sawn { species: Some(group), is_timber: true } if group.name == "DF-L")
        );
    }

    #[test]
    fn steel_keeps_its_true_depth() {
        let section = section_of(&plain(Size::Rolled("W10X49"))).unwrap();
        assert_eq!(section.depth, Length::inches(10));
        assert_eq!(section.weight(), LineLoad::plf(49.0));
        assert_eq!(section.cross_grain(), CrossGrain::NoGrain);
        let four = Length::inches(4);
        let tube = section_of(&plain(Size::Tube(four, four, Length::sixteenths(0, 4)))).unwrap();
        assert_eq!((tube.width(), tube.depth), (four, four));
    }

    #[test]
    fn glued_lumber_comes_dry() {
        let joist = Named {
            make: Some("I-joist"),
            grade: Some("class 40"),
            ..plain(Size::Depth(Length::sixteenths(11, 14)))
        };
        let section = section_of(&joist).unwrap();
        assert_eq!(section.width(), Length::sixteenths(2, 8));
        assert_eq!(section.cross_grain(), CrossGrain::Dry);

        let girder = Named { pieces: 2, ..plain(Size::Built(Length::sixteenths(1, 12), Length::inches(16))) };
        assert_eq!(section_of(&girder).unwrap().make, Make::Composite);
        let glulam = Named {
            make: Some("glulam"),
            ..plain(Size::Built(Length::sixteenths(5, 2), Length::inches(12)))
        };
        assert_eq!(section_of(&glulam).unwrap().make, Make::Glulam);
        let full = Named {
            species: Some("DF"),
            ..plain(Size::Built(Length::sixteenths(1, 12), Length::inches(10)))
        };
        assert_eq!(section_of(&full).unwrap().cross_grain(), CrossGrain::Shrinks);
        let rim = Named {
            make: Some("rim board"),
            ..plain(Size::Built(Length::sixteenths(1, 2), Length::sixteenths(11, 14)))
        };
        assert_eq!(section_of(&rim).unwrap().make, Make::RimBoard);
    }

    /// By hand: 9.12 + pi/4 x (4 - 2 x 0.211)^2 / 144 x 145 = 9.12 + 10.12 = 19.24 plf.
    #[test]
    fn a_filled_pipe_weighs_its_concrete() {
        let section = section_of(&plain(Size::FilledPipe(Length::inches(4)))).unwrap();
        assert!((section.weight().to_plf() - 19.24).abs() < 0.01);
    }

    fn offered(size: Size) -> (String, Vec<String>) {
        let unknown = section_of(&plain(size)).unwrap_err();
        (unknown.asked, unknown.nearest)
    }

    #[test]
    fn an_unknown_size_offers_the_nearest() {
        let (asked, nearest) = offered(Size::Nominal(2, 11));
        assert_eq!(asked, "2x11");
        assert_eq!(nearest, ["2x10", "2x12", "2x8"]);
        assert_eq!(offered(Size::Rolled("W8X23")).1, ["W8x24", "W8x21", "W8x18"]);
        assert_eq!(offered(Size::Rolled("Q9")).1, Vec::<String>::new());

        let four = Length::inches(4);
        let (asked, nearest) = offered(Size::Tube(four, four, Length::sixteenths(0, 7)));
        assert_eq!(asked, "HSS 4 x 4 x 7/16");
        assert_eq!(nearest.first().map(String::as_str), Some("HSS 4 x 4 x 3/8"));
        let (asked, nearest) = offered(Size::Pipe(Length::sixteenths(3, 8), Length::sixteenths(0, 4)));
        assert_eq!(asked, "pipe 3-1/2 x 0.250");
        assert_eq!(nearest.first().map(String::as_str), Some("pipe 3-1/2 x 0.216"));
        assert_eq!(
            offered(Size::FilledPipe(Length::inches(3))).1.first().map(String::as_str),
            Some("filled pipe 3-1/2")
        );
    }

    #[test]
    fn an_i_joist_without_series_offers_those_of_its_depth() {
        let (asked, nearest) = offered(Size::Depth(Length::inches(14)));
        assert_eq!(asked, "14 I-joist");
        assert_eq!(nearest.len(), 5);
        assert_eq!(nearest.first().map(String::as_str), Some("14 I-joist PRI-40"));
    }
}
