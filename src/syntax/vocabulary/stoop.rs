//! An outdoor landing at a door.

use crate::syntax::vocabulary::landing::LANDING_FACTS;
use crate::syntax::vocabulary::{ElementKind, ElementSpec, Naming};

pub static STOOP: ElementSpec = ElementSpec {
    kind: ElementKind::Stoop,
    keyword: "stoop",
    also: &[],
    naming: Naming::Name,
    summary: "A landing outside at a door.",
    example: r#"stoop SP1 "Kitchen door"
  kind          concrete
  at            DR2
  size          5'-0" x 3'-0"
  top           99'-5"
  gap           1/2" flashed to W1
  steps down    to grade by 3 risers at 7"
  stands on     F7
  slope         1/8" per foot
"#,
    facts: LANDING_FACTS,
};
