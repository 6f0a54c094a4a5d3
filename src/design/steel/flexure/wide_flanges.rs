//! W shapes in bending: AISC 360 F2, F3 and F6.

use std::f64::consts::PI;

use crate::design::NotCovered;
use crate::design::steel::flexure::{Class, at_least_one};
use crate::design::steel::grades::ELASTIC_MODULUS;
use crate::design::steel::sections::{Axis, WideFlange};
use crate::design::steel::{Strength, above_zero, inches, inches_or_none, modulus_over_yield, up_to, usual};
use crate::units::{Length, Moment, Stress};

/// A W shape bent about its strong axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MajorBending {
    /// Mp.
    pub plastic_moment: Moment,
    /// Lp, up to which it yields before it twists.
    pub plastic_length: Length,
    /// Lr, beyond which it twists while elastic.
    pub elastic_length: Length,
    /// Fcr, when it twists while elastic.
    pub critical_stress: Option<Stress>,
    /// What yielding and twisting leave (F2).
    pub lateral_torsional: Moment,
    /// Of the flange.
    pub flange: Class,
    /// What a flange that is not compact leaves (F3).
    pub flange_local: Option<Moment>,
    /// Mn.
    pub strength: Strength<Moment>,
}

/// A W shape bent about its weak axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MinorBending {
    /// Mp, not above 1.6 Fy Sy.
    pub plastic_moment: Moment,
    /// Of the flange.
    pub flange: Class,
    /// What a flange that is not compact leaves (F6.2).
    pub flange_local: Option<Moment>,
    /// Mn.
    pub strength: Strength<Moment>,
}

/// A W shape bent about its strong axis, its compression flange held at both ends of `unbraced`.
///
/// Source: AISC 360-16, -22 §F2, Eq. F2-1 to F2-6 with c = 1, and §F3, Eq. F3-1.
/// Range:  a compact web, h/tw <= 3.76 sqrt(E/Fy) (limit from memory); a flange that is not slender,
/// bf/2tf <= 1.0 sqrt(E/Fy); 0 <= Lb; 1 <= Cb.
/// Result: moment, never above Mp. Falls with Lb.
pub fn wide_flange(
    section: &WideFlange,
    yield_strength: Stress,
    unbraced: Length,
    gradient: f64,
) -> Result<MajorBending, NotCovered> {
    const CLAUSE: &str = "AISC 360 F2";
    let root = modulus_over_yield(yield_strength, CLAUSE)?.sqrt();
    let web = inches("h", section.clear_web(), CLAUSE)? / inches("tw", section.web, CLAUSE)?;
    up_to("h/tw", web, 3.76 * root, CLAUSE)?;
    let gradient = at_least_one(gradient)?;
    let length = inches_or_none("Lb", unbraced, CLAUSE)?;
    let twist = Twist::of(section, yield_strength)?;

    let plastic_moment = yield_strength * section.major.plastic_modulus;
    let first_yield = yield_strength * 0.7 * section.major.elastic_modulus;
    let (lp, lr) = (twist.plastic_length, twist.elastic_length);
    let critical_stress = (length > lr).then(|| twist.critical_stress(length, gradient));
    let lateral_torsional = match critical_stress {
        Some(stress) => plastic_moment.min(stress * section.major.elastic_modulus),
        None if length <= lp => plastic_moment,
        None => {
            let fallen = (plastic_moment - first_yield) * ((length - lp) / (lr - lp));
            plastic_moment.min((plastic_moment - fallen) * gradient)
        }
    };
    let (flange, flange_local) = flange_local(section, plastic_moment, first_yield, root, "AISC 360 F3")?;
    let nominal = flange_local.map_or(lateral_torsional, |local| local.min(lateral_torsional));
    Ok(MajorBending {
        plastic_moment,
        plastic_length: Length::decimal_inches(lp),
        elastic_length: Length::decimal_inches(lr),
        critical_stress,
        lateral_torsional,
        flange,
        flange_local,
        strength: usual(nominal),
    })
}

/// A W shape bent about its weak axis. It does not twist.
///
/// Source: AISC 360-16, -22 §F6, Eq. F6-1, F6-2.
/// Range:  a flange that is not slender, bf/2tf <= 1.0 sqrt(E/Fy).
/// Result: moment, never above 1.6 Fy Sy.
pub fn wide_flange_about_minor(
    section: &WideFlange,
    yield_strength: Stress,
) -> Result<MinorBending, NotCovered> {
    const CLAUSE: &str = "AISC 360 F6";
    let root = modulus_over_yield(yield_strength, CLAUSE)?.sqrt();
    let Axis { elastic_modulus, plastic_modulus, .. } = section.minor;
    let plastic_moment = (yield_strength * plastic_modulus).min(yield_strength * 1.6 * elastic_modulus);
    let first_yield = yield_strength * 0.7 * elastic_modulus;
    let (flange, flange_local) = flange_local(section, plastic_moment, first_yield, root, CLAUSE)?;
    let strength = usual(flange_local.unwrap_or(plastic_moment));
    Ok(MinorBending { plastic_moment, flange, flange_local, strength })
}

/// What a noncompact flange leaves: on a line from Mp at λp to 0.7 Fy S at λr. `root` is sqrt(E/Fy).
fn flange_local(
    section: &WideFlange,
    plastic_moment: Moment,
    first_yield: Moment,
    root: f64,
    clause: &'static str,
) -> Result<(Class, Option<Moment>), NotCovered> {
    inches("tf", section.flange, clause)?;
    let ratio = section.flange_slenderness();
    let (compact, noncompact) = (0.38 * root, 1.0 * root);
    let class = Class::of(ratio, compact, noncompact);
    match class {
        Class::Compact => Ok((class, None)),
        Class::Noncompact => {
            let share = (ratio - compact) / (noncompact - compact);
            Ok((class, Some(plastic_moment - (plastic_moment - first_yield) * share)))
        }
        Class::Slender => {
            Err(NotCovered::OutOfRange { quantity: "bf/2tf", value: ratio, limit: noncompact, clause })
        }
    }
}

/// What decides when a W shape twists. Lengths in inches.
struct Twist {
    plastic_length: f64,
    elastic_length: f64,
    effective_radius: f64,
    /// Jc / Sx ho, with c = 1 for a doubly symmetric shape (F2-8a).
    torsion_term: f64,
}

impl Twist {
    fn of(section: &WideFlange, yield_strength: Stress) -> Result<Self, NotCovered> {
        const CLAUSE: &str = "AISC 360 F2";
        let modulus_over_yield = modulus_over_yield(yield_strength, CLAUSE)?;
        let effective_radius = inches("rts", section.effective_radius, CLAUSE)?;
        let modulus_arm =
            section.major.elastic_modulus.to_in3() * inches("ho", section.flange_distance, CLAUSE)?;
        let torsion_term = above_zero("Jc/Sx ho", section.torsion.to_in4() / modulus_arm, CLAUSE)?;
        let minor_radius = inches("ry", section.minor.radius, CLAUSE)?;
        let yield_strain = 0.7 / modulus_over_yield;
        let inner = (torsion_term.powi(2) + 6.76 * yield_strain.powi(2)).sqrt();
        Ok(Self {
            plastic_length: 1.76 * minor_radius * modulus_over_yield.sqrt(),
            elastic_length: 1.95 * effective_radius / yield_strain * (torsion_term + inner).sqrt(),
            effective_radius,
            torsion_term,
        })
    }

    /// F2-4.
    fn critical_stress(&self, length: f64, gradient: f64) -> Stress {
        let slenderness = length / self.effective_radius;
        let warping = ELASTIC_MODULUS * (gradient * PI.powi(2) / slenderness.powi(2));
        warping * (1.0 + 0.078 * self.torsion_term * slenderness.powi(2)).sqrt()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Area, SecondMoment, SectionModulus};

    const FY: Stress = Stress::ksi(50.0);

    fn axis([second_moment, elastic, plastic, radius]: [f64; 4]) -> Axis {
        Axis {
            second_moment: SecondMoment::in4(second_moment),
            elastic_modulus: SectionModulus::in3(elastic),
            plastic_modulus: SectionModulus::in3(plastic),
            radius: Length::decimal_inches(radius),
        }
    }

    /// W18x50 of the AISC shapes database v15.0.
    fn w18x50() -> WideFlange {
        WideFlange {
            area: Area::sq_in(14.7),
            depth: Length::inches(18),
            flange_width: Length::decimal_inches(7.5),
            flange: Length::decimal_inches(0.57),
            web: Length::decimal_inches(0.355),
            fillet: Length::decimal_inches(0.972),
            effective_radius: Length::decimal_inches(1.98),
            flange_distance: Length::decimal_inches(17.4),
            torsion: SecondMoment::in4(1.24),
            major: axis([800.0, 88.9, 101.0, 7.38]),
            minor: axis([40.1, 10.7, 16.6, 1.65]),
        }
    }

    fn at(unbraced: Length, gradient: f64) -> Result<MajorBending, NotCovered> {
        wide_flange(&w18x50(), FY, unbraced, gradient)
    }

    /// By hand: Mp = 50 x 101 / 12 = 420.8 kip-ft; Lp = 1.76 x 1.65 x 24.08 / 12 = 5.83 ft.
    #[test]
    fn braced_by_hand() {
        let braced = at(Length::ZERO, 1.0).unwrap();
        assert!((braced.strength.nominal.to_kip_ft() - 420.8).abs() < 0.05);
        assert!((braced.plastic_length.to_inches() / 12.0 - 5.83).abs() < 0.005);
    }

    /// Eq. F2-6 is Eq. F2-4 solved for 0.7 Fy, its constants rounded: at Lr the critical stress is just that, and the straight
    /// line ends there.
    #[test]
    fn the_elastic_length_undoes_the_critical_stress() {
        let lr = at(Length::ZERO, 1.0).unwrap().elastic_length;
        let beyond = at(lr + Length::from_units(1), 1.0).unwrap();
        assert!((beyond.critical_stress.unwrap().to_ksi() - 35.0).abs() < 0.1);
        let before = at(lr - Length::from_units(1), 1.0).unwrap();
        assert_eq!(before.critical_stress, None);
        assert!((before.strength.nominal / beyond.strength.nominal - 1.0).abs() < 3e-3);
    }

    #[test]
    fn falls_with_length_and_never_passes_the_plastic_moment() {
        let nominal = |feet, gradient| at(Length::feet(feet), gradient).unwrap().strength.nominal;
        for feet in 1..60 {
            assert!(nominal(feet, 1.0) <= nominal(feet - 1, 1.0), "{feet}");
            assert!(nominal(feet, 1.0) <= nominal(feet, 2.0), "{feet}");
            assert!(nominal(feet, 3.0) <= nominal(0, 1.0), "{feet}");
        }
    }

    /// By hand: Mp = 50 x 16.6 = 830 kip-in, 1.6 Fy S = 1.6 x 50 x 10.7 = 856 kip-in.
    #[test]
    fn weak_axis_by_hand() {
        let minor = wide_flange_about_minor(&w18x50(), FY).unwrap();
        assert!((minor.strength.nominal.to_kip_in() - 830.0).abs() < 1e-6);
        let mut lopsided = w18x50();
        lopsided.minor.plastic_modulus = SectionModulus::in3(20.0);
        let minor = wide_flange_about_minor(&lopsided, FY).unwrap();
        assert!((minor.strength.nominal.to_kip_in() - 856.0).abs() < 1e-6);
    }

    /// At bf/2tf = 1.0 sqrt(E/Fy) = 24.08 a flange leaves 0.7 Fy S, about either axis; beyond there is no value here.
    #[test]
    fn the_ends_of_the_flange_formula() {
        let with = |flange_width: f64| WideFlange {
            flange_width: Length::decimal_inches(flange_width),
            flange: Length::decimal_inches(0.5),
            ..w18x50()
        };
        let (full, just, beyond) = (with(9.0), with(24.08), with(24.09));
        assert_eq!(wide_flange(&full, FY, Length::ZERO, 1.0).unwrap().flange_local, None);
        let local = wide_flange(&just, FY, Length::ZERO, 1.0).unwrap().flange_local.unwrap();
        assert!((local.to_kip_in() / (35.0 * 88.9) - 1.0).abs() < 1e-3);
        let local = wide_flange_about_minor(&just, FY).unwrap().flange_local.unwrap();
        assert!((local.to_kip_in() / (35.0 * 10.7) - 1.0).abs() < 1e-3);
        assert!(wide_flange(&beyond, FY, Length::ZERO, 1.0).is_err());
        assert!(wide_flange_about_minor(&beyond, FY).is_err());
    }

    /// By hand, limit from memory: h = 18 - 1.944 = 16.056 in. over 3.76 x 24.08 = 90.55 is a web of 0.1773 in.
    #[test]
    fn no_value_outside_of_the_range() {
        let web = |inches| WideFlange { web: Length::decimal_inches(inches), ..w18x50() };
        assert!(wide_flange(&web(0.178), FY, Length::ZERO, 1.0).is_ok());
        assert!(wide_flange(&web(0.177), FY, Length::ZERO, 1.0).is_err());
        assert!(wide_flange(&web(0.0), FY, Length::ZERO, 1.0).is_err());
        assert!(at(-Length::inches(1), 1.0).is_err());
        assert!(at(Length::feet(1), 0.99).is_err());
        assert!(at(Length::feet(1), f64::NAN).is_err());
        assert!(wide_flange(&w18x50(), Stress::ksi(f64::NAN), Length::ZERO, 1.0).is_err());
        let untwistable = WideFlange { torsion: SecondMoment::ZERO, ..w18x50() };
        assert!(wide_flange(&untwistable, FY, Length::ZERO, 1.0).is_err());
    }
}
