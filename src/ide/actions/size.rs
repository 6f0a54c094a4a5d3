//! The next size that works, where one fails.

use crate::diagnostic::{Diagnostic, Edit};
use crate::facts::FactValue;
use crate::facts::answers::answer;
use crate::house::{House, lines};
use crate::ide::actions::{Action, ActionKind, Mended};
use crate::ide::meaning::element_at;
use crate::model::element::ElementId;
use crate::model::foundation::FootingSize;
use crate::model::member::Member;
use crate::products::rolled::Rolled;
use crate::rules;
use crate::snapshot::{Snapshot, edited};
use crate::syntax::vocabulary::ElementKind;
use crate::text::Span;
use crate::verify::check::Verification;
use crate::verify::{footings, steel_sizes, wood_columns, wood_sizes};

/// The groups whose findings a larger size mends.
const OF_STRENGTH: [&str; 3] = ["strength", "columns", "foundations"];

/// A larger size for the element under the cursor, where a check of it fails: a choice for a person who knows what else hangs
/// on it, never the answer.
pub fn next_sizes(snapshot: &Snapshot, place: Span, findings: &[&Diagnostic]) -> Vec<Action> {
    let house = &snapshot.house;
    let Some(id) = element_at(house, place.file, place.start) else { return Vec::new() };
    if !house.verifications.of(id).any(Verification::fails) {
        return Vec::new();
    }
    let label = house.model.common(id).map(|common| common.label()).unwrap_or_default();
    let mends: Vec<Mended> = findings
        .iter()
        .filter(|finding| finding.subject == label && is_of_strength(finding))
        .map(|finding| Mended { rule: finding.rule, span: finding.span })
        .collect();
    let sizes = [next_size(house, id), one_jack_more(house, id)];
    let actions = sizes.into_iter().flatten().filter_map(|edit| {
        let after = edited::house_with(snapshot, std::slice::from_ref(&edit));
        // It mends one check; with it the whole element must hold.
        if after.verifications.of(id).any(Verification::fails) {
            return None;
        }
        let title = match answer(&after, "utilisation", &[id]).ok()?.value {
            FactValue::Number(worst) => {
                format!("write `{}`: at {:.0} % of what it bears; have it checked", edit.text, worst * 100.0)
            }
            _ => return None,
        };
        Some(Action { mends: mends.clone(), ..Action::new(title, ActionKind::QuickFix, vec![edit]) })
    });
    actions.collect()
}

fn is_of_strength(finding: &Diagnostic) -> bool {
    rules::rule_named(finding.rule).is_some_and(|rule| OF_STRENGTH.contains(&rule.group()))
}

fn next_size(house: &House, id: ElementId) -> Option<Edit> {
    let known = house.known();
    if let Some(footing) = house.model.footing(id) {
        let (_, span) = footing.size.stated()?;
        let text = match footings::next_size(&known, footing)? {
            FootingSize::Pad(one, other, thickness) => format!("{one} x {other} x {thickness}"),
            FootingSize::Strip(width, thickness) => format!("{width} x {thickness}"),
            FootingSize::Round(diameter, thickness) => format!("{diameter} round x {thickness}"),
        };
        return Some(Edit { span, text });
    }
    if let Some(column) = house.model.column(id) {
        let (member, span) = column.size.stated()?;
        let wood = wood_columns::next_size(&known, column).map(String::from);
        let steel = || written_for(member, steel_sizes::next_column(&known, column)?);
        return Some(Edit { span, text: wood.or_else(steel)? });
    }
    if let Some(beam) = house.model.beam(id)
        && let Some((member, span)) = beam.size.stated()
        && let Some(shape) = steel_sizes::next_beam(&known, beam)
    {
        return Some(Edit { span, text: written_for(member, shape)? });
    }
    let size = match id.kind {
        ElementKind::Beam => house.model.beam(id)?.size.span()?,
        ElementKind::Joists => house.model.joists_of(id)?.size.span()?,
        ElementKind::Header => house.model.headers.get(id.index as usize)?.size.span()?,
        _ => return None,
    };
    let text = wood_sizes::next(&known, id)?.to_string();
    Some(Edit { span: lines::part_at(house, size, "member")?, text })
}

/// A shape with the grade that the member has.
fn written_for(member: &Member, shape: &Rolled) -> Option<String> {
    match &member.grade {
        None => Some(shape.mark.to_owned()),
        Some(grade) => member.text.ends_with(&**grade).then(|| format!("{} {grade}", shape.mark)),
    }
}

fn one_jack_more(house: &House, id: ElementId) -> Option<Edit> {
    let jacks = house.model.jacks_of(id)?;
    let count = lines::part_at(house, jacks.size.span()?, "count")?;
    let now: u32 = house.text_at(count).parse().ok()?;
    Some(Edit { span: count, text: now.checked_add(1)?.to_string() })
}

#[cfg(test)]
mod tests {
    use crate::ide::actions::tests::{check, offered};

    const LOON_COVE: &str = include_str!("../../../grammar/samples/loon-cove.framing");

    /// By hand: of the sag of W8x24, L/415, W8x21 has 82.7 / 75.3 times as much, L/378, and W8x18 L/311, which fails L/360.
    #[test]
    fn the_next_shape_is_a_choice_and_says_how_full_it_is() {
        let at = LOON_COVE.find("W8x24").unwrap();
        let mut text = LOON_COVE.to_owned();
        text.replace_range(at..at + 5, "W8x1$05");
        let action = offered(&text).into_iter().find(|it| it.title.starts_with("write `W8x21`")).unwrap();
        assert!(!action.is_preferred && action.title.ends_with("have it checked"), "{}", action.title);
        let after = check(&text, &action.title);
        assert_eq!(after, LOON_COVE.replacen("W8x24", "W8x21", 1));
    }

    #[test]
    fn what_holds_is_offered_nothing() {
        let text = LOON_COVE.replacen("W8x24", "W8x2$04", 1);
        assert!(offered(&text).iter().all(|action| !action.title.contains("of what it bears")));
    }
}
