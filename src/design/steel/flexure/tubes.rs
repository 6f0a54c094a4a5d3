//! Square and rectangular tubes in bending: AISC 360 F7.

use crate::design::NotCovered;
use crate::design::steel::flexure::{Class, at_least_one};
use crate::design::steel::grades::ELASTIC_MODULUS;
use crate::design::steel::sections::Tube;
use crate::design::steel::{Strength, inches, inches_or_none, modulus_over_yield, usual};
use crate::units::{Length, Moment, SecondMoment, SectionModulus, Stress};

/// The axis that a tube is bent about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum About {
    /// The longer side stands up.
    Major,
    /// The longer side lies flat.
    Minor,
}

/// A tube in bending.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TubeBending {
    /// Mp.
    pub plastic_moment: Moment,
    /// Of the wall in compression.
    pub flange: Class,
    /// What counts of a slender wall in compression.
    pub effective_flange: Option<EffectiveFlange>,
    /// What a wall in compression that is not compact leaves (F7.2).
    pub flange_local: Option<Moment>,
    /// Of the walls along the bending.
    pub web: Class,
    /// What walls along the bending that are not compact leave (F7.3).
    pub web_local: Option<Moment>,
    /// Of a rectangular tube that stands on its shorter side (F7.4).
    pub twist: Option<TubeTwist>,
    /// Mn.
    pub strength: Strength<Moment>,
}

/// What counts of a tube whose wall in compression is slender, the wall in tension reduced alike (on the safe side).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EffectiveFlange {
    /// be.
    pub width: Length,
    /// Ieff.
    pub second_moment: SecondMoment,
    /// Se.
    pub elastic_modulus: SectionModulus,
}

/// Lateral-torsional buckling of a rectangular tube.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TubeTwist {
    /// Lp.
    pub plastic_length: Length,
    /// Lr.
    pub elastic_length: Length,
    /// What it leaves, never above Mp.
    pub moment: Moment,
}

/// A tube in bending, held against twist at both ends of `unbraced`.
///
/// Source: AISC 360-16, -22 §F7, Eq. F7-1 to F7-4, F7-10, F7-12, F7-13; Eq. F7-6 of a noncompact web as in the handbook,
/// p. 5.22; the upper limit of such a web, 5.70 sqrt(E/Fy), and Eq. F7-11 of a long tube from memory.
/// Range:  webs that are not slender; 0 <= Lb; 1 <= Cb.
/// Result: moment, never above Mp.
pub fn tube(
    section: &Tube,
    about: About,
    yield_strength: Stress,
    unbraced: Length,
    gradient: f64,
) -> Result<TubeBending, NotCovered> {
    const CLAUSE: &str = "AISC 360 F7";
    let root = modulus_over_yield(yield_strength, CLAUSE)?.sqrt();
    inches_or_none("Lb", unbraced, CLAUSE)?;
    let gradient = at_least_one(gradient)?;
    let (axis, height, flat_flange, flat_web) = match about {
        About::Major => (section.major, section.depth, section.flat_width(), section.flat_depth()),
        About::Minor => (section.minor, section.width, section.flat_depth(), section.flat_width()),
    };
    let wall = inches("t", section.wall, CLAUSE)?;
    let flange_ratio = inches("b", flat_flange, CLAUSE)? / wall;
    let web_ratio = inches("h", flat_web, CLAUSE)? / wall;
    let plastic_moment = yield_strength * axis.plastic_modulus;
    let beyond_yield = plastic_moment - yield_strength * axis.elastic_modulus;

    let flange = Class::of(flange_ratio, 1.12 * root, 1.40 * root);
    let effective_flange = (flange == Class::Slender).then(|| {
        let width = effective_width(flat_flange, section.wall, root);
        effective_flange(width, flat_flange, section.wall, height, axis.second_moment)
    });
    let flange_local = match effective_flange {
        Some(effective) => Some(yield_strength * effective.elastic_modulus),
        None if flange == Class::Compact => None,
        // F7-2.
        None => Some(plastic_moment.min(plastic_moment - beyond_yield * (3.57 * flange_ratio / root - 4.0))),
    };

    let web = Class::of(web_ratio, 2.42 * root, 5.70 * root);
    let web_local = match web {
        Class::Compact => None,
        // F7-6.
        Class::Noncompact => {
            Some(plastic_moment.min(plastic_moment - beyond_yield * (0.305 * web_ratio / root - 0.738)))
        }
        Class::Slender => {
            let limit = 5.70 * root;
            return Err(NotCovered::OutOfRange { quantity: "h/t", value: web_ratio, limit, clause: CLAUSE });
        }
    };

    let can_twist = about == About::Major && section.width < section.depth;
    let twist = can_twist.then(|| twist(section, yield_strength, unbraced, gradient)).transpose()?;
    let nominal = [flange_local, web_local, twist.map(|twist| twist.moment)]
        .into_iter()
        .flatten()
        .fold(plastic_moment, Moment::min);
    let strength = usual(nominal);
    Ok(TubeBending {
        plastic_moment,
        flange,
        effective_flange,
        flange_local,
        web,
        web_local,
        twist,
        strength,
    })
}

/// F7-4. `root` is sqrt(E/Fy).
fn effective_width(flat: Length, wall: Length, root: f64) -> Length {
    let ratio = flat / wall;
    flat.min(wall.scaled(1.92 * root * (1.0 - 0.38 / ratio * root)))
}

fn effective_flange(
    width: Length,
    flat: Length,
    wall: Length,
    height: Length,
    whole: SecondMoment,
) -> EffectiveFlange {
    let (lost, wall) = ((flat - width).to_inches(), wall.to_inches());
    let height = height.to_inches();
    let arm = (height - wall) / 2.0;
    let of_one_strip = lost * wall * arm.powi(2) + lost * wall.powi(3) / 12.0;
    let second_moment = whole.to_in4() - 2.0 * of_one_strip;
    EffectiveFlange {
        width,
        second_moment: SecondMoment::in4(second_moment),
        elastic_modulus: SectionModulus::in3(second_moment / (height / 2.0)),
    }
}

/// F7-10 to F7-13.
fn twist(
    section: &Tube,
    yield_strength: Stress,
    unbraced: Length,
    gradient: f64,
) -> Result<TubeTwist, NotCovered> {
    let plastic_moment = yield_strength * section.major.plastic_modulus;
    let first_yield = yield_strength * 0.7 * section.major.elastic_modulus;
    let radius = inches("ry", section.minor.radius, "AISC 360 F7.4")?;
    // E ry sqrt(J Ag), in kips times square inches.
    let stiffness =
        ELASTIC_MODULUS.to_ksi() * radius * (section.torsion.to_in4() * section.area.to_sq_in()).sqrt();
    let plastic_length = 0.13 * stiffness / plastic_moment.to_kip_in();
    let elastic_length = 2.0 * stiffness / first_yield.to_kip_in();
    let length = unbraced.to_inches();
    let moment = if length <= plastic_length {
        plastic_moment
    } else if length <= elastic_length {
        let share = (length - plastic_length) / (elastic_length - plastic_length);
        plastic_moment.min((plastic_moment - (plastic_moment - first_yield) * share) * gradient)
    } else {
        plastic_moment.min(Moment::kip_in(2.0 * gradient * stiffness / length))
    };
    Ok(TubeTwist {
        plastic_length: Length::decimal_inches(plastic_length),
        elastic_length: Length::decimal_inches(elastic_length),
        moment,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::steel::sections::Axis;
    use crate::units::Area;

    const FY: Stress = Stress::ksi(50.0);

    /// HSS 10 x 6 x 3/16 of the AISC shapes database v15.0, with another wall.
    fn with_wall(wall: f64) -> Tube {
        let axis = |second_moment, elastic, plastic, radius| Axis {
            second_moment: SecondMoment::in4(second_moment),
            elastic_modulus: SectionModulus::in3(elastic),
            plastic_modulus: SectionModulus::in3(plastic),
            radius: Length::decimal_inches(radius),
        };
        Tube {
            area: Area::sq_in(5.37),
            depth: Length::inches(10),
            width: Length::inches(6),
            wall: Length::decimal_inches(wall),
            torsion: SecondMoment::in4(73.8),
            major: axis(74.6, 14.9, 18.0, 3.73),
            minor: axis(34.1, 11.4, 12.8, 2.52),
        }
    }

    fn of(wall: f64, about: About, unbraced: Length) -> Result<TubeBending, NotCovered> {
        tube(&with_wall(wall), about, FY, unbraced, 1.0)
    }

    /// Where the classes meet, so do the formulas: 3.57 x 1.12 less 4.0 is nothing and so is 0.305 x 2.42 less 0.738, which
    /// leaves Mp; 0.305 x 5.70 less 0.738 is one, which leaves Fy S. By hand at 50 ksi: b/t = 27.0 is a wall of 0.200 in.,
    /// h/t = 58.3 one of 0.1632, 137.3 one of 0.0713 in.
    #[test]
    fn the_formulas_meet_where_the_classes_do() {
        let plastic = 900.0;
        let flange = |wall| of(wall, About::Major, Length::ZERO).unwrap().flange_local;
        assert_eq!(flange(0.201), None);
        assert!((flange(0.1999).unwrap().to_kip_in() / plastic - 1.0).abs() < 2e-3);
        let web = |wall| of(wall, About::Major, Length::ZERO).unwrap().web_local;
        assert_eq!(web(0.164), None);
        assert!((web(0.1628).unwrap().to_kip_in() / plastic - 1.0).abs() < 2e-3);
        assert!((web(0.0715).unwrap().to_kip_in() / (50.0 * 14.9) - 1.0).abs() < 2e-3);
        assert!(of(0.0711, About::Major, Length::ZERO).is_err());
    }

    /// Eq. F7-13 is Eq. F7-11 solved for 0.7 Fy S, the end of the straight line.
    #[test]
    fn twist_ends_where_the_line_does() {
        let lr = of(0.3, About::Major, Length::ZERO).unwrap().twist.unwrap().elastic_length;
        let moment = |length| of(0.3, About::Major, length).unwrap().twist.unwrap().moment.to_kip_in();
        let (before, beyond) = (moment(lr - Length::inches(1)), moment(lr + Length::inches(1)));
        assert!((before / (35.0 * 14.9) - 1.0).abs() < 1e-3);
        assert!((beyond / (35.0 * 14.9) - 1.0).abs() < 1e-3);
    }

    #[test]
    fn a_tube_on_its_side_does_not_twist() {
        assert_eq!(of(0.3, About::Minor, Length::feet(40)).unwrap().twist, None);
        let square = Tube { width: Length::inches(10), ..with_wall(0.4) };
        assert_eq!(tube(&square, About::Major, FY, Length::feet(40), 1.0).unwrap().twist, None);
    }

    #[test]
    fn no_value_outside_of_the_range() {
        assert!(of(0.0, About::Major, Length::ZERO).is_err());
        assert!(of(0.3, About::Major, -Length::inches(1)).is_err());
        assert!(tube(&with_wall(0.3), About::Major, FY, Length::ZERO, 0.5).is_err());
        assert!(tube(&with_wall(0.3), About::Major, Stress::ksi(f64::NAN), Length::ZERO, 1.0).is_err());
        // Nothing flat is left of the sides.
        assert!(of(2.0, About::Major, Length::ZERO).is_err());
    }
}
