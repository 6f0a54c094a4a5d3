//! Columns: AISC 360 chapter E, with the width-to-thickness limits of table B4.1a.

use std::f64::consts::PI;

use crate::design::NotCovered;
use crate::design::steel::grades::ELASTIC_MODULUS;
use crate::design::steel::sections::{Pipe, Tube, WideFlange};
use crate::design::steel::{Strength, inches, inches_or_none, modulus_over_yield, up_to, usual};
use crate::units::{Area, Force, Length, Stress};

/// The slenderness above which a column is better made stockier: advice of a note to E2, from memory.
pub const ADVISED_SLENDERNESS: f64 = 200.0;

/// How far a column is from buckling sideways.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Buckling {
    /// Lc / r.
    pub slenderness: f64,
    /// Fe, the elastic buckling stress; without end for no length.
    pub elastic_stress: Stress,
    /// Fn, the stress it bears.
    pub stress: Stress,
}

/// A flat part of a section, by what holds its edges (table B4.1a).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Element {
    /// A wall of a square or rectangular tube.
    TubeWall,
    /// The web of a W shape.
    Web,
    /// Half a flange of a W shape.
    HalfFlange,
}

/// What counts of the width of a flat part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EffectiveWidth {
    /// b.
    pub width: Length,
    /// λ = b / t.
    pub ratio: f64,
    /// λr, above which the part is slender at full stress.
    pub limit: f64,
    /// Fel, at which the part buckles by itself.
    pub elastic_stress: Stress,
    /// be, what counts.
    pub effective: Length,
}

/// A column under load along its axis.
#[derive(Clone, Debug, PartialEq)]
pub struct Compression {
    /// About the axis that governs.
    pub buckling: Buckling,
    /// Walls along the depth, then along the width; half flange, then web; none of a pipe.
    pub elements: Vec<EffectiveWidth>,
    /// Ae.
    pub effective_area: Area,
    /// Pn.
    pub strength: Strength<Force>,
}

/// A tube as a column.
///
/// Source: AISC 360-16, -22 §E3, §E7.1, table E7.1.
/// Range:  as [`flexural_buckling`] and [`effective_width`]; a load in the axis.
/// Result: force; the effective lengths are about the major and the minor axis.
pub fn tube(
    section: &Tube,
    yield_strength: Stress,
    [major, minor]: [Length; 2],
) -> Result<Compression, NotCovered> {
    let lengths = [(major, section.major.radius), (minor, section.minor.radius)];
    let buckling = governing_buckling(yield_strength, lengths)?;
    let wall = |flat| effective_width(Element::TubeWall, flat, section.wall, yield_strength, buckling.stress);
    let depth = wall(section.flat_depth())?;
    let width = wall(section.flat_width())?;
    let lost = (depth.lost() + width.lost()) * section.wall * 2.0;
    Ok(compression(buckling, vec![depth, width], section.area - lost))
}

/// A pipe or round tube as a column.
///
/// Source: AISC 360-16, -22 §E3; §E7.2 for a slender wall (from memory).
/// Range:  0 < D/t < 0.45 E/Fy; a load in the axis.
/// Result: force.
pub fn pipe(section: &Pipe, yield_strength: Stress, length: Length) -> Result<Compression, NotCovered> {
    let buckling = flexural_buckling(yield_strength, length, section.axis.radius)?;
    let modulus_over_yield = modulus_over_yield(yield_strength, "AISC 360 E7.2")?;
    inches("t", section.wall, "AISC 360 E7.2")?;
    let ratio = up_to("D/t", section.outside / section.wall, 0.45 * modulus_over_yield, "AISC 360 E7.2")?;
    let limit = 0.11 * modulus_over_yield;
    // The formula starts a little above the whole area, which is all there is.
    let share = if ratio <= limit { 1.0 } else { (0.038 * modulus_over_yield / ratio + 2.0 / 3.0).min(1.0) };
    Ok(compression(buckling, Vec::new(), section.area * share))
}

/// A W shape as a column.
///
/// Source: AISC 360-16, -22 §E3, §E7.1, table E7.1.
/// Range:  as [`flexural_buckling`] and [`effective_width`]; a load in the axis; held against twist at least where it is
/// held about the minor axis (E4 otherwise, not here).
/// Result: force; the effective lengths are about the major and the minor axis.
pub fn wide_flange(
    section: &WideFlange,
    yield_strength: Stress,
    [major, minor]: [Length; 2],
) -> Result<Compression, NotCovered> {
    let lengths = [(major, section.major.radius), (minor, section.minor.radius)];
    let buckling = governing_buckling(yield_strength, lengths)?;
    let part = |element, width, thickness| {
        effective_width(element, width, thickness, yield_strength, buckling.stress)
    };
    let flange = part(Element::HalfFlange, section.flange_width.scaled(0.5), section.flange)?;
    let web = part(Element::Web, section.clear_web(), section.web)?;
    let lost = flange.lost() * section.flange * 4.0 + web.lost() * section.web;
    Ok(compression(buckling, vec![flange, web], section.area - lost))
}

fn compression(buckling: Buckling, elements: Vec<EffectiveWidth>, effective_area: Area) -> Compression {
    let strength = usual(buckling.stress * effective_area);
    Compression { buckling, elements, effective_area, strength }
}

/// Buckling about the slenderer of two axes, each with its effective length and radius.
fn governing_buckling(
    yield_strength: Stress,
    [one, other]: [(Length, Length); 2],
) -> Result<Buckling, NotCovered> {
    let one = flexural_buckling(yield_strength, one.0, one.1)?;
    let other = flexural_buckling(yield_strength, other.0, other.1)?;
    Ok(if other.slenderness > one.slenderness { other } else { one })
}

/// The stress that a column bears before it bends out sideways.
///
/// Source: AISC 360-16, -22 §E3, Eq. E3-1 to E3-4; the branch of long columns, 0.877 Fe, from memory.
/// Range:  0 <= Lc, 0 < r. No upper end; [`ADVISED_SLENDERNESS`] is advice.
/// Result: 0 < Fn <= Fy.
pub fn flexural_buckling(
    yield_strength: Stress,
    effective_length: Length,
    radius: Length,
) -> Result<Buckling, NotCovered> {
    modulus_over_yield(yield_strength, "AISC 360 E3")?;
    let length = inches_or_none("Lc", effective_length, "AISC 360 E3")?;
    let slenderness = length / inches("r", radius, "AISC 360 E3")?;
    let elastic_stress = ELASTIC_MODULUS * PI.powi(2) / slenderness.powi(2);
    let ratio = yield_strength / elastic_stress;
    let stress = if ratio <= 2.25 { yield_strength * 0.658_f64.powf(ratio) } else { elastic_stress * 0.877 };
    Ok(Buckling { slenderness, elastic_stress, stress })
}

/// What counts of the width of a flat part under uniform compression.
///
/// Source: AISC 360-16, -22 §E7.1, Eq. E7-2, E7-3, E7-5, table E7.1, limits of table B4.1a; that of flanges
/// as in the handbook, p. 5.4.
/// Range:  0 < b, 0 < t, 0 < Fn <= Fy.
/// Result: 0 < be <= b.
pub fn effective_width(
    element: Element,
    width: Length,
    thickness: Length,
    yield_strength: Stress,
    stress: Stress,
) -> Result<EffectiveWidth, NotCovered> {
    const CLAUSE: &str = "AISC 360 E7.1";
    let root = modulus_over_yield(yield_strength, CLAUSE)?.sqrt();
    let ratio = inches("b", width, CLAUSE)? / inches("t", thickness, CLAUSE)?;
    let share = up_to("Fn/Fy", stress / yield_strength, 1.0, CLAUSE)?;
    // Table E7.1: c1, c2.
    let (limit, c1, c2) = match element {
        Element::TubeWall => (1.40 * root, 0.20, 1.38),
        Element::Web => (1.49 * root, 0.18, 1.31),
        Element::HalfFlange => (0.56 * root, 0.22, 1.49),
    };
    let elastic_stress = yield_strength * (c2 * limit / ratio).powi(2);
    let effective = if ratio <= limit / share.sqrt() {
        width
    } else {
        let buckled = (elastic_stress / stress).sqrt();
        width.scaled((1.0 - c1 * buckled) * buckled)
    };
    Ok(EffectiveWidth { width, ratio, limit, elastic_stress, effective })
}

impl EffectiveWidth {
    /// What does not count of the width.
    pub fn lost(&self) -> Length {
        self.width - self.effective
    }

    /// True when some of the width does not count.
    pub fn is_reduced(&self) -> bool {
        self.effective < self.width
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(slenderness: i64) -> Buckling {
        flexural_buckling(Stress::ksi(50.0), Length::inches(slenderness), Length::inches(1)).unwrap()
    }

    /// By hand: at Lc/r = 100 Fe = 286,218 / 10,000 = 28.62 ksi, Fy/Fe = 1.747, Fn = 0.658^1.747 x 50 = 24.07 ksi.
    /// At 200 Fe = 7.155 ksi, Fy/Fe = 6.99 > 2.25, Fn = 0.877 x 7.155 = 6.275 ksi.
    #[test]
    fn both_branches_by_hand() {
        assert!((at(100).elastic_stress.to_ksi() - 28.62).abs() < 0.005);
        assert!((at(100).stress.to_ksi() - 24.07).abs() < 0.01);
        assert!((at(200).stress.to_ksi() - 6.275).abs() < 0.005);
    }

    /// AISC design examples v16.0, E.9, secondary copy: the branches meet at 4.71 sqrt(E/Fy) = 113 at 50 ksi.
    #[test]
    fn the_branches_meet_at_the_published_slenderness() {
        let ratio = |slenderness| Stress::ksi(50.0) / at(slenderness).elastic_stress;
        assert!(ratio(113) < 2.25 && 2.25 < ratio(114));
        assert!(at(113).stress.to_ksi() / at(114).stress.to_ksi() < 1.03);
    }

    /// AISC design examples v16.0, secondary copy: E.9 gives HSS12x10x3/8, 20 ft, K 0.8: KL/r 47.9, Fn 42.3 ksi; E.11
    /// gives Pipe 10 Std, 35 ksi, 30 ft: KL/r 97.8, Fn 21.4 ksi.
    #[test]
    fn published_examples() {
        let tube = flexural_buckling(Stress::ksi(50.0), Length::feet(16), Length::hundredths(401)).unwrap();
        assert!((tube.slenderness - 47.9).abs() < 0.05);
        assert!((tube.stress.to_ksi() - 42.3).abs() < 0.05);
        let pipe = flexural_buckling(Stress::ksi(35.0), Length::feet(30), Length::hundredths(368)).unwrap();
        assert!((pipe.slenderness - 97.8).abs() < 0.05);
        assert!((pipe.stress.to_ksi() - 21.4).abs() < 0.05);
        // The example rounds Fn before it multiplies (246 kip); the Manual's own table 4-6 has 148 kip over Ω.
        let allowable = usual(pipe.stress * Area::sq_in(11.5)).allowable();
        assert!((allowable.to_kip() - 148.0).abs() < 0.5);
    }

    #[test]
    fn falls_with_length_from_the_yield_strength() {
        assert!((at(0).stress.to_ksi() - 50.0).abs() < 1e-9);
        for slenderness in 1..300 {
            assert!(at(slenderness).stress < at(slenderness - 1).stress, "{slenderness}");
        }
    }

    #[test]
    fn no_value_outside_of_the_range() {
        let fy = Stress::ksi(50.0);
        assert!(flexural_buckling(fy, -Length::inches(1), Length::inches(1)).is_err());
        assert!(flexural_buckling(fy, Length::inches(1), Length::ZERO).is_err());
        assert!(flexural_buckling(Stress::ksi(f64::NAN), Length::inches(1), Length::inches(1)).is_err());
        let width = |stress| {
            effective_width(
                Element::TubeWall,
                Length::inches(4),
                Length::hundredths(10),
                fy,
                Stress::ksi(stress),
            )
        };
        assert!(width(50.0).is_ok());
        assert!(width(50.1).is_err());
        assert!(width(f64::NAN).is_err());
    }

    /// By hand, 50 ksi: 0.45 E/Fy = 261 for a round wall.
    #[test]
    fn a_round_wall_has_an_end() {
        let of = |wall: Length| {
            let axis = crate::design::steel::sections::Axis {
                second_moment: crate::units::SecondMoment::in4(1.0),
                elastic_modulus: crate::units::SectionModulus::in3(1.0),
                plastic_modulus: crate::units::SectionModulus::in3(1.0),
                radius: Length::inches(10),
            };
            let section = Pipe { area: Area::sq_in(10.0), outside: Length::inches(26), wall, axis };
            pipe(&section, Stress::ksi(50.0), Length::feet(8))
        };
        assert!((of(Length::inches(1)).unwrap().effective_area.to_sq_in() - 10.0).abs() < 1e-9);
        assert!(of(Length::hundredths(10)).is_ok_and(|column| column.effective_area < Area::sq_in(10.0)));
        assert!(of(Length::decimal_inches(0.099)).is_err());
    }
}
