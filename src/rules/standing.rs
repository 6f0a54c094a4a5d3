//! What can still be done about an element that is bought or stands already, and what somebody has decided about it. All
//! of it is common practice.

use crate::diagnostic::Severity;
use crate::facts::FactValue;
use crate::house::House;
use crate::model::element::{Common, ElementId, Stage};
use crate::rules::wording::all_of;
use crate::rules::{self, Finding, Findings, built, claims, columns, stack};
use crate::syntax::value::Date;
use crate::syntax::vocabulary::ElementKind;

/// An element that is no longer only on paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Standing {
    /// How far it has come. Invariant: not [`Stage::Drawn`].
    pub stage: Stage,
    /// Since when.
    pub since: Option<Date>,
}

impl Standing {
    /// The standing of an element; `None` on paper.
    pub fn of(common: &Common) -> Option<Self> {
        let status = common.status.value()?;
        match status.stage {
            Stage::Drawn => None,
            stage @ (Stage::Ordered | Stage::Poured | Stage::Set) => {
                Some(Self { stage, since: status.since })
            }
        }
    }

    /// The ways out for whoever stands before it, when a fact by which it is made or laid was `old` and is `new`: other
    /// facts of it, such as the room below, follow from those.
    pub fn ways_out(self, kind: ElementKind, words: &str, old: &FactValue, new: &FactValue) -> Vec<String> {
        if is_made_by(kind, words) { self.ways(kind, words, old, new) } else { Vec::new() }
    }

    /// The ways out when a number by which it is made or laid is `old` and should be `new`.
    fn ways(self, kind: ElementKind, words: &str, old: &FactValue, new: &FactValue) -> Vec<String> {
        let by = match (old.as_length(), new.as_length()) {
            (Some(old), Some(new)) => Some(new - old),
            _ => None,
        };
        let mut ways: Vec<String> = Vec::new();
        match self.stage {
            Stage::Drawn => {}
            Stage::Ordered => {
                ways.push(format!("call the supplier before it is made: {words} {new} instead of {old}"))
            }
            Stage::Poured | Stage::Set => match (kind, by) {
                (kind, Some(by)) if is_cast(kind) => ways.push(if by.is_positive() {
                    format!("build it up by {by}: packing or grout under what bears there")
                } else {
                    format!("cut it down by {}, or let what lies on it give way", by.abs())
                }),
                (ElementKind::Column, Some(by)) if by.is_positive() => {
                    ways.push(format!("shim it by {by}, or set a new one"));
                }
                (ElementKind::Column, Some(by)) => {
                    ways.push(format!("cut it by {}, or set a new one", by.abs()))
                }
                (
                    ElementKind::Beam | ElementKind::Joists | ElementKind::Ledger | ElementKind::Header,
                    Some(by),
                ) => {
                    let way = if by.is_positive() { "shim its ends up" } else { "lower its seats" };
                    ways.push(format!("{way} by {}", by.abs()));
                }
                (_, _) => ways.push(format!("keep {words} {old} and change the rest")),
            },
        }
        ways.push("write `accept \"…\" on DATE` there once it is decided".to_owned());
        ways
    }
}

/// True for what is poured or laid in mortar.
fn is_cast(kind: ElementKind) -> bool {
    matches!(
        kind,
        ElementKind::Wall
            | ElementKind::Shelf
            | ElementKind::Pocket
            | ElementKind::Footing
            | ElementKind::Slab
    )
}

/// The facts that the saw, the forms or the seat of a thing fix.
fn is_made_by(kind: ElementKind, words: &str) -> bool {
    match kind {
        ElementKind::Column | ElementKind::Jacks | ElementKind::Squash | ElementKind::Header => {
            matches!(words, "cut" | "size")
        }
        ElementKind::Wall => matches!(words, "top" | "thick" | "studs cut"),
        ElementKind::Footing | ElementKind::Slab => matches!(words, "top" | "bottom" | "thick" | "size"),
        ElementKind::Shelf | ElementKind::Pocket => words == "seat",
        ElementKind::Beam | ElementKind::Joists | ElementKind::Ledger => {
            matches!(words, "bottom" | "cut" | "size")
        }
        ElementKind::Stair => matches!(words, "risers" | "riser" | "run"),
        _ => false,
    }
}

/// A number that an element states, or that was measured of it, and the one that follows from the rest.
#[derive(Clone, Debug)]
pub struct Disagreement {
    /// The element.
    pub of: ElementId,
    /// What it is a number of: `top`.
    pub words: Box<str>,
    /// The element's own number.
    pub own: FactValue,
    /// What it should be.
    pub wanted: FactValue,
}

/// The rules that call [`Finding::disagrees`]: what an `accept` can acknowledge.
const COMPARING: [&rules::Rule; 4] = [
    &stack::stack_does_not_close::RULE,
    &columns::column_length_does_not_close::RULE,
    &claims::claim_not_kept::RULE,
    &built::built_beyond_tolerance::RULE,
];

/// True for the rules that compare numbers of elements that may stand already.
pub fn is_comparing(slug: &str) -> bool {
    COMPARING.iter().any(|rule| rule.slug == slug)
}

/// Gives each finding about numbers of what is bought or stands the ways out on site. Where every such element has an
/// `accept`, the finding becomes advice that says what was decided.
pub fn settled(house: &House, mut findings: Vec<Finding>) -> Vec<Finding> {
    for finding in findings.iter_mut().filter(|finding| !finding.disagreements.is_empty()) {
        match accepts(house, finding) {
            Some(notes) => {
                finding.diagnostic.severity = Severity::Advice;
                // What was decided stands; an edit would take it back.
                finding.diagnostic.fix = None;
                finding.diagnostic.notes.splice(0..0, notes);
            }
            None => add_ways_out(house, finding),
        }
    }
    findings
}

/// What was decided about every element whose number disagrees; `None` when one has nothing to say for itself.
fn accepts(house: &House, finding: &Finding) -> Option<Vec<String>> {
    if rules::rule_named(finding.diagnostic.rule).is_some_and(|rule| rule.is_danger) {
        return None;
    }
    let mut notes = Vec::new();
    for disagreement in &finding.disagreements {
        let common = house.model.common(disagreement.of)?;
        is_made(common)?;
        let accept = common.accepts.last()?;
        let on = accept.value.on.map(|on| format!(" on {on}")).unwrap_or_default();
        let note = format!("{}: accepted{on}, \"{}\"", common.label(), accept.value.note);
        if !notes.contains(&note) {
            notes.push(note);
        }
    }
    Some(notes)
}

/// The standing of what is bought or stands; what was measured stands, whatever its status says.
fn is_made(common: &Common) -> Option<Standing> {
    let measured = || (!common.shots.is_empty()).then_some(Standing { stage: Stage::Set, since: None });
    Standing::of(common).or_else(measured)
}

fn add_ways_out(house: &House, finding: &mut Finding) {
    let is_of_several = finding.disagreements.iter().any(|it| Some(it.of) != finding.subject);
    // What is to be done alike about several is said once.
    let mut ways: Vec<(String, Vec<String>)> = Vec::new();
    for Disagreement { of, words, own, wanted } in &finding.disagreements {
        let Some(common) = house.model.common(*of) else { continue };
        let Some(standing) = is_made(common) else { continue };
        for way in standing.ways(of.kind, words, own, wanted) {
            match ways.iter_mut().find(|(known, _)| *known == way) {
                Some((_, labels)) => labels.push(common.label()),
                None => ways.push((way, vec![common.label()])),
            }
        }
    }
    finding.diagnostic.help.extend(ways.into_iter().map(|(way, mut labels)| {
        labels.dedup();
        if is_of_several { format!("{}: {way}", all_of(&labels)) } else { way }
    }));
}

/// The elements with an `accept` that acknowledges nothing: what it was written for is mended, or never was.
pub fn idle_accepts(house: &House) -> Vec<&Common> {
    let mut idle: Vec<&Common> = house.model.commons().filter(|common| !common.accepts.is_empty()).collect();
    for rule in COMPARING {
        if idle.is_empty() {
            break;
        }
        let mut findings = Findings::new(house, rule);
        (rule.check)(house, &mut findings);
        let found = findings.into_list();
        let compared: Vec<ElementId> =
            found.iter().flat_map(|finding| &finding.disagreements).map(|it| it.of).collect();
        idle.retain(|common| is_made(common).is_none() || !compared.contains(&common.id));
    }
    idle
}

#[cfg(test)]
mod tests {
    use crate::diagnostic::{Diagnostic, Severity};
    use crate::rules::found_in;
    use crate::testing::rule_check::house;

    /// The joists need 98'-10 1/2" (100'-0" less 3/4", 11-1/4" and 1-1/2"); both walls say 99'-0 1/2": 2" too high.
    fn walls(of_w1: &str, of_w2: &str) -> Diagnostic {
        let wall = |name: &str, more: &str| {
            format!("wall {name}\n  kind concrete\n  top 99'-0 1/2\"\n  sill 1 of 2x6 treated\n{more}")
        };
        let text = format!(
            "floor main\n  subfloor 100'-0\"\n  deck 3/4\"\njoists J1\n  floor main\n  size 2x12 SPF No.2\n  bears on W1\n  bears on W2\n{}{}",
            wall("W1", of_w1),
            wall("W2", of_w2)
        );
        let mut all = found_in(&house(&text), &|| false).unwrap().findings;
        all.retain(|finding| finding.rule == "stack-does-not-close");
        let [only] = all.try_into().unwrap();
        only
    }

    const POURED: &str = "  status poured 2027-04-02\n";
    const ACCEPTED: &str = "  status poured 2027-04-02\n  accept \"joists notched 2 in.\" on 2027-04-10\n";

    #[test]
    fn what_is_in_concrete_has_ways_out_on_site() {
        assert_eq!(walls("", "").help, ["write 98'-10 1/2\" there, or change what lies on it by 2\""]);
        assert_eq!(
            walls(POURED, POURED).help,
            [
                "change what lies on it by 2\"",
                "wall W1 and wall W2: cut it down by 2\", or let what lies on it give way",
                "wall W1 and wall W2: write `accept \"…\" on DATE` there once it is decided",
            ]
        );
        assert!(walls("", POURED).help[1].starts_with("wall W2: cut it down by 2\""));
    }

    #[test]
    fn it_is_settled_when_all_of_it_is() {
        for (one, other) in [(POURED, ACCEPTED), ("", ACCEPTED), (POURED, "  accept \"so\" on 2027-04-10\n")]
        {
            assert_eq!(walls(one, other).severity, Severity::Error, "{one}{other}");
        }
        let settled = walls(ACCEPTED, ACCEPTED);
        assert_eq!(settled.severity, Severity::Advice);
        assert_eq!(
            settled.notes[..2],
            ["W1", "W2"].map(|wall| format!("wall {wall}: accepted on 2027-04-10, \"joists notched 2 in.\""))
        );
        assert!(settled.fix.is_none());
    }

    /// A column over nothing it could stand on means danger: no note on it makes that advice.
    #[test]
    fn danger_is_not_accepted() {
        let text = "column C1\n  size HSS 4 x 4 x 1/4\n  status set 2027-04-02\n  accept \"it stands\" on 2027-04-10\n";
        let all = found_in(&house(text), &|| false).unwrap().findings;
        let all: Vec<_> = all.iter().flat_map(Diagnostic::with_consequences).collect();
        assert!(
            all.iter().any(|it| it.rule == "point-load-dropped" && it.severity == Severity::Error),
            "{all:?}"
        );
        assert!(all.iter().any(|it| it.rule == "accept-acknowledges-nothing"), "{all:?}");
    }
}
