//! Columns that stand on a slab, with no footing between: what would punch through.

use crate::design::concrete::plain::two_way_shear as strength;
use crate::design::concrete::two_way_shear::interior_perimeter;
use crate::design::loads::STRENGTH;
use crate::model::element::ElementId;
use crate::model::foundation::Slab;
use crate::statics::action::{Action, Source};
use crate::syntax::vocabulary::ElementKind;
use crate::units::{Force, Length};
use crate::verify::Known;
use crate::verify::check::{Check, NotVerified, Step, Verification};
use crate::verify::demands::combined;
use crate::verify::footings::Worst;
use crate::verify::footings::ground;
use crate::verify::footings::standing::alone;
use crate::verify::limit_state::LimitState;

/// What plain concrete on soil loses of its thickness: ACI 318 14.5.1.7.
const LOST: Length = Length::inches(2);

/// Punching of every slab under every column on it.
pub fn of(known: &Known<'_>) -> Vec<Verification> {
    let slabs = known.model.slabs.iter();
    slabs
        .flat_map(|slab| known.forces.on(slab.common.id).iter().map(move |action| (slab, action)))
        .filter_map(|(slab, action)| {
            let Source::From(column) = action.source else { return None };
            (column.kind == ElementKind::Column).then(|| punching(known, slab, column, action))
        })
        .collect()
}

fn punching(known: &Known<'_>, slab: &Slab, column: ElementId, action: &Action) -> Verification {
    Verification {
        of: slab.common.id,
        part: None,
        against: Some(column),
        limit_state: LimitState::Punching,
        outcome: check(known, slab, column, action),
    }
}

fn check(known: &Known<'_>, slab: &Slab, column: ElementId, action: &Action) -> Result<Check, NotVerified> {
    let id = slab.common.id;
    let concrete = ground::concrete(known, id, &slab.concrete)?;
    let thickness = slab.thick.get().ok_or(NotVerified::Missing(id, "thick"))?;
    let standing = alone(known, column)?;
    let depth = thickness - LOST;
    let perimeter = interior_perimeter(standing.critical, depth)?;
    let strength = strength(standing.critical, perimeter, depth, concrete.strength)?;
    let [side, other] = standing.critical;
    let mut worst = Worst::default();
    for combination in STRENGTH {
        let demand: Force = combined(combination, &action.acting.total());
        worst.take(Ok(Check {
            demand: demand.into(),
            capacity: strength.design.into(),
            combination: combination.name,
            pattern: None,
            at: None,
            clause: "ACI 318 14.5.5.1(b), a slab taken as a plain footing",
            steps: vec![
                Step::read("Pu", demand, "from the takedown; nothing taken off for the soil right below"),
                Step::read("c", side.min(other), "between the cuts, ACI 318 table 13.2.7.1"),
                Step::worked(
                    "h",
                    "t - 2\"",
                    vec![("t", thickness.into())],
                    depth,
                    "2 in. less on soil, ACI 318 14.5.1.7",
                ),
                Step::read("bo", perimeter, "at half of it all round"),
                Step::read("phi Vn", strength.design, "0.60 x 2.66 root f'c bo h for a square"),
            ],
            assumed: concrete.assumed.clone(),
        }));
    }
    worst.outcome().unwrap_or(Err(NotVerified::NoForces("nothing stands on it".into())))
}
