//! Squash blocks.

use crate::syntax::form::Form::Slot;
use crate::syntax::form::Kind;
use crate::syntax::vocabulary::parts::{COUNTED_MEMBER, LENGTH, STANDS_ON};
use crate::syntax::vocabulary::{ElementKind, ElementSpec, FactSpec, Naming};

pub static SQUASH: ElementSpec = ElementSpec {
    kind: ElementKind::Squash,
    keyword: "squash",
    also: &["squash blocks"],
    naming: Naming::Name,
    summary: "Upright blocks beside joists that carry a post's load through the floor's depth.",
    example: r#"squash SQ1 "Under the west jacks"
  under         JK1
  size          2 of 2x6 SPF
  stands on     W2
  length        should be 9-5/16"
"#,
    facts: &[
        FactSpec::required(
            "under",
            Slot("post", Kind::Name(&[ElementKind::Column, ElementKind::Jacks])),
            "What stands above them.",
            "under JK1",
        ),
        FactSpec::required("size", COUNTED_MEMBER, "How many, and of what.", "size 2 of 2x6 SPF"),
        FactSpec::derived(
            "length",
            LENGTH,
            "Their length: the joists' depth and 1/16\" more.",
            r#"length 9-5/16""#,
        ),
        FactSpec::required("stands on", STANDS_ON, "What carries them.", "stands on W2"),
    ],
};
