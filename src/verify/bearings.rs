//! Where load crosses from one member to the next: wood across its grain, concrete, plates, hangers.
//!
//! Each place is held against its weakest layer: the member itself, the plate or nailer it lies on, the sill below. Load
//! duration never helps wood across its grain.

pub mod connectors;
pub mod layer;
pub mod members;
pub mod on_concrete;
pub mod plates;
pub mod standing;

use crate::statics::cases::ByCase;
use crate::units::Force;
use crate::verify::Known;
use crate::verify::check::Verification;
use crate::verify::demands::{acting, combinations, combined};

/// Verifies every place where load crosses.
pub fn of(known: &Known<'_>) -> Vec<Verification> {
    let mut all = standing::of(known);
    all.extend(members::of(known));
    all.extend(plates::of(known));
    all.extend(connectors::of(known));
    all.extend(on_concrete::of(known));
    all
}

/// A force, and what brings it.
#[derive(Clone, Debug, PartialEq)]
pub struct Pressing {
    /// How much.
    pub force: Force,
    /// The load combination.
    pub combination: &'static str,
    /// Which spans carry live load, when not all.
    pub pattern: Option<Box<str>>,
}

/// The heaviest combination; nothing when nothing presses down.
pub fn heaviest(force: &ByCase<Force>) -> Option<Pressing> {
    let all = combinations(acting(force)).map(|combination| (combination.name, combined(combination, force)));
    let (combination, force) = all.max_by(|one, other| one.1.to_lb().total_cmp(&other.1.to_lb()))?;
    (force > Force::ZERO).then_some(Pressing { force, combination, pattern: None })
}

#[cfg(test)]
mod tests {
    use crate::testing::rule_check::house;
    use crate::verify::check::Check;
    use crate::verify::limit_state::LimitState;
    use crate::verify::quantity::Quantity;

    const LOON_COVE: &str = include_str!("../../grammar/samples/loon-cove.framing");
    const HOP_BARN: &str = include_str!("../../grammar/samples/hop-barn.framing");

    fn check(text: &str, name: &str, state: LimitState) -> Check {
        let house = house(text);
        let of = house.model.named(name).unwrap();
        let mut found = house.verifications.of(of).filter(|verification| verification.limit_state == state);
        found.next().unwrap().outcome.clone().unwrap()
    }

    fn value(quantity: Quantity) -> f64 {
        match quantity {
            Quantity::Stress(stress) => stress.to_psi(),
            Quantity::Length(length) => length.to_inches(),
            other => panic!("{other}"),
        }
    }

    fn near(found: f64, expected: f64, tolerance: f64) {
        assert!((found - expected).abs() <= tolerance, "{found}, expected {expected}");
    }

    /// By hand: 1,331 plf over 12'-4 1/2" are 8,236 lb an end; three 2x6 on the sill 24.75 sq in, 333 psi. Two at this end
    /// alone: 12'-3 3/4", 8,195 lb on 16.5 sq in, 497 psi (with two at both ends 12'-3", 8,153 lb, 494 psi). Hem-fir bears 405 (from memory).
    #[test]
    fn from_memory_jacks_on_a_sill() {
        let three = check(LOON_COVE, "JK1", LimitState::WoodBearing);
        near(value(three.demand), 333.0, 1.0);
        near(value(three.capacity), 405.0, 0.1);
        let text =
            LOON_COVE.replacen("size          3 of 2x6 SPF No.2", "size          2 of 2x6 SPF No.2", 1);
        near(value(check(&text, "JK1", LimitState::WoodBearing).demand), 496.7, 1.0);
    }

    /// By hand: 13,136 lb on 9 x 9 is 162 psi, m 2.6, t = 2.6 sqrt(3.34 x 162 / 36,000) = 0.32. The cap reaches 3.1 past what
    /// the tube holds; 6,568 lb on 5": t = 0.41.
    #[test]
    fn plates_of_an_evenly_loaded_column() {
        near(value(check(LOON_COVE, "C1", LimitState::BasePlate).demand), 0.32, 0.005);
        near(value(check(LOON_COVE, "C1", LimitState::CapBending).demand), 0.41, 0.005);
        near(value(check(LOON_COVE, "C1", LimitState::CapLength).capacity), 5.0, 0.001);
    }

    /// By hand: 25,283 lb on 10 x 10, t = 0.475; the long side brings 19,400 lb to 6" of the cap, t = 0.71. The tool's loads
    /// are a little larger: joists and post weigh something, and live load may lie on the long span alone.
    #[test]
    fn plates_under_a_transfer_beam() {
        near(value(check(HOP_BARN, "C1", LimitState::BasePlate).demand), 0.475, 0.01);
        near(value(check(HOP_BARN, "C1", LimitState::CapBending).demand), 0.71, 0.01);
    }

    /// By hand: 14,592 lb on 7-1/2 x 7-1/2 is 259 psi, on 3-1/2 of width 556, under 6x6 482; spruce bears 425 (from memory).
    /// The post weighs up to 190 lb, 2 to 7 psi.
    #[test]
    fn from_memory_a_post_on_a_flat_plate() {
        let flat = HOP_BARN.replace("base          bare, through the deck", "base          bare");
        let stress = |text: &str| value(check(text, "P1", LimitState::PlateBearing).demand);
        near(stress(&flat), 261.0, 3.0);
        near(stress(&flat.replace("8x8 DF No.1", "6x6 DF No.1")), 484.0, 3.0);
        near(stress(&flat.replace("nailer        2x10 SPF", "nailer        2x4 SPF")), 560.0, 5.0);
        near(value(check(&flat, "P1", LimitState::PlateBearing).capacity), 425.0, 0.1);
        let through = house(HOP_BARN);
        assert_eq!(through.verifications.on(LimitState::PlateBearing).count(), 0);
    }
}
