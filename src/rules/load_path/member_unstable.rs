//! Members that can't stand on what holds them.

use crate::house::House;
use crate::model::element::ElementId;
use crate::rules::{Findings, rule};

rule! {
    /// A member is held in too few places to stand, or its loads make no sense.
    ///
    /// Its forces can't be worked out, and all that stands on it is lost on the way down.
    ///
    /// ## Why
    /// A beam on one support turns over.
    ///
    /// ## Source
    /// Common practice: equilibrium of each piece between its joints.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0'
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    /// beam B1
    ///   size        W8x18
    ///   from        A/1 to B/1
    ///   bears on    C1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0'
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    /// column C2
    ///   at          B/1
    ///   size        HSS 4 x 4 x 1/4
    /// beam B1
    ///   size        W8x18
    ///   from        A/1 to B/1
    ///   bears on    C1
    ///   bears on    C2
    /// ```
    "member-unstable", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let mut told: Vec<ElementId> = Vec::new();
    for (element, why) in &house.forces.unstable {
        let Some(common) = house.model.common(*element).filter(|_| !told.contains(element)) else { continue };
        told.push(*element);
        findings
            .about(common.id, common.name_span, format!("{} can't stand: {why}", common.label()))
            .help("give each of its pieces two supports")
            .follows(common.id);
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::found;

    #[test]
    fn says_why() {
        let house = "
grid
  x           A 0', B 12'
  y           1 0'
column C1
  at          A/1
  size        HSS 4 x 4 x 1/4
beam B1
  size        W8x18
  from        A/1 to B/1
  bears on    C1
";
        let found = found(&RULE, house);
        let [only] = found.as_slice() else { panic!("{found:?}") };
        assert!(only.message.starts_with("beam B1 can't stand: "), "{}", only.message);
    }
}
