//! How stiff a member is: the whole of it, all plies, on edge or laid flat.

use crate::model::Model;
use crate::model::framing::Beam;
use crate::model::member::Member;
use crate::model::stuff::{DeclaredSteel, Stuff, Values, Wood, WoodKind};
use crate::products::grades::composite::SHEAR_MODULUS_SHARE;
use crate::statics::member_line::Stiffness;
use crate::units::{FlexuralRigidity, Length, SecondMoment, Stress};

/// The stiffness of a member on edge; `None` when its stuff or size isn't known.
pub fn of(model: &Model, member: Option<&Member>) -> Option<Stiffness> {
    of_stuff(&model.stuff_of(member?).ok()?, false)
}

/// The stiffness of a beam as it is laid.
pub fn of_beam(model: &Model, beam: &Beam) -> Option<Stiffness> {
    of_stuff(&model.stuff_of(beam.size.value()?).ok()?, beam.is_laid_flat)
}

/// The stiffness of a member of this stuff; `None` when its modulus isn't known, or it is none that bends.
pub fn of_stuff(stuff: &Stuff, is_laid_flat: bool) -> Option<Stiffness> {
    let pieces = f64::from(stuff.section.pieces);
    match &stuff.values {
        Values::Wood(wood) => of_wood(stuff, wood, is_laid_flat),
        Values::IJoist(joist) => Some(Stiffness {
            rigidity: joist.rigidity.filter(|_| !is_laid_flat)? * pieces,
            // A uniform load w shears a span l by w l² / 8 GA: what the series publishes is K of w l² / K.
            shear_rigidity: joist.shear_coefficient.map(|coefficient| coefficient * (pieces / 8.0)),
        }),
        Values::Rolled(shape) => {
            let axis = if is_laid_flat { shape.minor } else { shape.major };
            Some(bending_alone(STEEL_MODULUS * axis.second_moment * pieces))
        }
        Values::DeclaredSteel(shape) if !is_laid_flat => {
            let modulus = shape.modulus.unwrap_or(STEEL_MODULUS);
            Some(bending_alone(modulus * of_outline(shape)? * pieces))
        }
        Values::DeclaredSteel(_) | Values::FilledPipe(_) => None,
    }
}

/// E of steel: AISC 360-16, the list of symbols.
const STEEL_MODULUS: Stress = Stress::ksi(29_000.0);

/// How much less a rectangle resists shear than if it spread evenly: mechanics, 6/5.
const UNEVEN_SHEAR: f64 = 1.2;

fn bending_alone(rigidity: FlexuralRigidity) -> Stiffness {
    Stiffness { rigidity, shear_rigidity: None }
}

fn of_wood(stuff: &Stuff, wood: &Wood, is_laid_flat: bool) -> Option<Stiffness> {
    let modulus = wood.modulus?;
    let (breadth, depth) = match is_laid_flat {
        true => (stuff.section.depth, stuff.section.piece_width),
        false => (stuff.section.piece_width, stuff.section.depth),
    };
    // Plies lie on one another when laid flat, and slip: each bends by itself.
    let pieces = f64::from(stuff.section.pieces);
    let shear_rigidity = match wood.kind {
        WoodKind::Composite { .. } => {
            Some(modulus * (breadth * depth) * (SHEAR_MODULUS_SHARE * pieces / UNEVEN_SHEAR))
        }
        // The published E of solid wood and glulam has its usual shear in it.
        WoodKind::Dimension(..) | WoodKind::Timber | WoodKind::Glulam { .. } => None,
    };
    Some(Stiffness { rigidity: modulus * rectangle(breadth, depth) * pieces, shear_rigidity })
}

fn rectangle(breadth: Length, depth: Length) -> SecondMoment {
    SecondMoment::in4(breadth.to_inches() * depth.to_inches().powi(3) / 12.0)
}

/// The second moment of area of two flanges and a web, without fillets.
fn of_outline(shape: &DeclaredSteel) -> Option<SecondMoment> {
    let (web, flange) = (shape.web?, shape.flange?);
    let hollow = rectangle(shape.width - web, shape.depth - flange * 2);
    Some(rectangle(shape.width, shape.depth) - hollow)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::rule_check::house;

    fn rigidity(facts: &str) -> f64 {
        let house = house(&format!("beam B1\n  size {facts}\n"));
        let beam = &house.model.beams[0];
        of_beam(&house.model, beam).unwrap().rigidity.to_lb_in2()
    }

    /// By hand: 3 x 1.5 x 9.25^3 / 12 = 296.8 in4, times 1.4 million psi (from memory); flat 3 x 9.25 x 1.5^3 / 12 = 7.80 in4.
    #[test]
    fn plies_count_together_and_flat_ones_each_alone() {
        assert!((rigidity("3-ply 2x10 SPF No.2") / (296.79 * 1.4e6) - 1.0).abs() < 1e-4);
        assert!((rigidity("3-ply 2x10 SPF No.2\n  laid flat") / (7.804 * 1.4e6) - 1.0).abs() < 1e-4);
    }

    /// AISC Shapes Database v15.0: W8x24 has Ix = 82.7 in4, Iy = 18.3 in4.
    #[test]
    fn a_listed_shape_has_its_published_moment_of_area() {
        assert!((rigidity("W8x24") / (82.7 * 29e6) - 1.0).abs() < 1e-9);
        assert!((rigidity("W8x24\n  laid flat") / (18.3 * 29e6) - 1.0).abs() < 1e-9);
    }

    #[test]
    fn what_names_no_class_has_no_stiffness() {
        let house = house("beam B1\n  size 2-ply 1-3/4 x 11-7/8\n");
        assert_eq!(of_beam(&house.model, &house.model.beams[0]), None);
    }
}
