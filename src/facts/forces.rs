//! Facts of forces: what comes down, what presses on what, how full a member is.

use std::ops::{Add, Mul};

use crate::facts::{Answer, FactValue, NoAnswer};
use crate::geometry::sum::Unknown;
use crate::house::House;
use crate::model::element::ElementId;
use crate::statics::action::Receiver;
use crate::statics::cases::ByCase;
use crate::syntax::vocabulary::ElementKind;
use crate::units::AreaLoad;
use crate::verify::demands::{acting, combinations, combined};
use crate::verify::limit_state::LimitState;
use crate::verify::quantity::Quantity;

/// All that comes down on an element, its own weight left out; along a wall, a ledger or a beam also the heaviest foot of it.
pub fn load(house: &House, on: ElementId, case: Option<&str>) -> Result<Answer, NoAnswer> {
    let force = house.forces.load_on(on);
    let axis = match on.kind {
        ElementKind::Wall => house.model.wall(on).and_then(|wall| wall.from.value()?.axis()),
        ElementKind::Ledger => {
            let ledger = house.model.ledgers.get(on.index as usize);
            ledger.and_then(|ledger| ledger.from.value()?.axis())
        }
        ElementKind::Beam => house.model.beam(on).and_then(|beam| beam.from.value()?.axis()),
        _ => None,
    };
    let line = axis.map(|axis| house.forces.heaviest_line(on, axis));
    Ok(Answer {
        value: FactValue::Force {
            whole: in_case(&force, case),
            each_foot: line.map(|line| in_case(&line, case)),
        },
        sum: None,
    })
}

/// What one element brings to another.
pub fn reaction(house: &House, of: ElementId, on: ElementId, case: Option<&str>) -> Result<Answer, NoAnswer> {
    let to = Receiver::Element(on);
    if house.forces.handed_by(of).iter().all(|handed| handed.to != to) {
        return Err(NoAnswer::Unknown(Unknown { of: Some(of), fact: "bears on" }));
    }
    let whole = in_case(&house.forces.reaction(of, to), case);
    let each_foot = house.forces.heaviest_handed(of, to).map(|line| in_case(&line, case));
    Ok(Answer { value: FactValue::Force { whole, each_foot }, sum: None })
}

/// One case, the plain sum of `all`, or without a word the combination that makes it most.
fn in_case<T>(amount: &ByCase<T>, case: Option<&str>) -> T
where
    T: Copy + Default + PartialOrd + Add<Output = T> + Mul<f64, Output = T>,
{
    match case {
        Some("dead") => amount.dead,
        Some("live") => amount.live,
        Some("snow") => amount.snow,
        Some(_) => amount.total(),
        None => {
            let all = combinations(acting(amount)).map(|combination| combined(combination, amount));
            all.fold(T::default(), |most, one| if one > most { one } else { most })
        }
    }
}

/// The most that a footing presses on the soil.
pub fn pressure(house: &House, under: ElementId) -> Result<Answer, NoAnswer> {
    let found = house
        .verifications
        .of(under)
        .filter(|verification| verification.limit_state == LimitState::SoilPressure)
        .filter_map(|verification| match verification.outcome.as_ref().ok()?.demand {
            Quantity::AreaLoad(pressure) => Some(pressure.to_psf()),
            _ => None,
        })
        .max_by(f64::total_cmp);
    let pressure = found.ok_or(NoAnswer::Unknown(Unknown { of: Some(under), fact: "size" }))?;
    Ok(Answer { value: FactValue::Pressure(AreaLoad::psf(pressure)), sum: None })
}

/// The worst demand on an element over what it can take.
pub fn utilisation(house: &House, of: ElementId) -> Result<Answer, NoAnswer> {
    let of_demand = house.verifications.of(of).filter(|verification| verification.limit_state.is_of_demand());
    let ratios = of_demand.filter_map(|verification| verification.ratio());
    let worst = ratios.max_by(f64::total_cmp);
    let worst = worst.ok_or(NoAnswer::Unknown(Unknown { of: Some(of), fact: "size" }))?;
    Ok(Answer { value: FactValue::Number(worst), sum: None })
}
