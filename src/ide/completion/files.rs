//! Files that a spec can include.

use crate::ide::completion::{Completion, CompletionKind, Place};

/// Between the quotes of an include; no other text is completed.
pub(super) fn in_quotes(place: &Place<'_>, paths: &dyn Fn() -> Vec<String>, items: &mut Vec<Completion>) {
    if is_include(place) {
        items.extend(paths().into_iter().map(|path| {
            let item = place.item(path.clone(), CompletionKind::File);
            let rest = place.cursor.line.get(place.cursor.typed_to..).unwrap_or("");
            let text = if rest.starts_with(['"', '”']) { path.clone() } else { format!("{path}\"") };
            Completion { text, filter: Some(path), ..item }
        }));
    }
}

/// Behind `include`, and `include` itself.
pub(super) fn after_include(place: &Place<'_>, paths: &dyn Fn() -> Vec<String>, items: &mut Vec<Completion>) {
    if place.cursor.before.is_empty() {
        let item = place.item("include", CompletionKind::Element).detail("Another file of this spec.");
        let snippet = place.cursor.ends_the_line().then(|| "include \"$1\"$0".to_owned());
        items.push(Completion { snippet, ..item });
    } else if is_include(place) {
        items.extend(paths().into_iter().map(|path| place.item(format!("\"{path}\""), CompletionKind::File)));
    }
}

fn is_include(place: &Place<'_>) -> bool {
    matches!(place.cursor.before.as_slice(), [only] if only.is_word("include"))
        && place.cursor.is_in_first_column()
}
