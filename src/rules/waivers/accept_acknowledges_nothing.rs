//! Notes on what stands, with nothing to acknowledge.

use crate::house::House;
use crate::rules::standing::idle_accepts;
use crate::rules::{Findings, rule};

rule! {
    /// An `accept` acknowledges nothing.
    ///
    /// It acknowledges a number of an ordered, poured, set or measured element that disagrees with the rest: a stated level or
    /// cut, a claim, a measurement beyond its tolerance. The finding becomes advice that says what was decided. Whatever means
    /// danger can't be accepted, nor what is still on paper.
    ///
    /// ## Why
    /// What it was written for is mended, or was never found; left there it would acknowledge the next thing that goes wrong.
    ///
    /// ## Source
    /// The format's own rule: `accept "note" on DATE`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    ///   kind    concrete
    ///   top     99'-0 1/2"
    ///   status  poured 2027-04-02
    ///   accept  "shim 3/4 in." on 2027-04-10
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   kind    concrete
    ///   top     99'-0 1/2"
    ///   status  poured 2027-04-02
    ///   shot    top 98'-11 3/4" on 2027-04-03
    ///   accept  "shim 3/4 in." on 2027-04-10
    /// ```
    "accept-acknowledges-nothing", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    // With a line unread, what it is for may only wait for that line.
    if house.has_unread_names() {
        return;
    }
    for common in idle_accepts(house) {
        for accept in &common.accepts {
            findings
                .about(
                    common.id,
                    accept.span,
                    format!("what {} accepts is no finding: the note acknowledges nothing", common.label()),
                )
                .help("take the line out")
                .take_out(house, accept.span);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// The joists need 98'-10 1/2" (100'-0" less 3/4", 11-1/4" and 1-1/2"); both walls say 99'-0 1/2", one is poured.
    #[test]
    fn what_is_on_paper_is_mended_there() {
        check_rule(
            &RULE,
            "
floor main
  subfloor    100'-0\"
  deck        3/4\"
joists J1
  floor       main
  size        2x12 SPF No.2
  bears on    W1
  bears on    W2
wall W1
  kind        concrete
  top         99'-0 1/2\"
  sill        1 of 2x6 treated
  status      poured 2027-04-02
  accept      \"joists notched 2 in.\" on 2027-04-10
wall W2
  kind        concrete
  top         99'-0 1/2\"
  sill        1 of 2x6 treated
  accept      \"joists notched 2 in.\" on 2027-04-10
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ what wall W2 accepts is no finding: the note acknowledges nothing
",
        );
    }
}
