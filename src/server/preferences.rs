//! What a person has set in the editor's settings, under `storyrod`.

use serde::{Deserialize, Serialize};
use serde_json::Value;

/// What a person wants to see. Whatever the settings do not say, or say in another form, is as [`Preferences::default`].
#[derive(Clone, Debug, PartialEq, Eq, Deserialize, Serialize)]
#[serde(default, rename_all = "camelCase")]
pub struct Preferences {
    /// Figures above columns, footings and the like.
    pub code_lens: bool,
    /// Derived numbers beside the text, kind by kind.
    pub inlay_hints: InlayHintPreferences,
    /// Findings also of specs with no file open.
    pub whole_workspace: bool,
    /// Where the pages of the rules stand: a rule's slug is put behind it. None are linked without it.
    pub rules_address: Option<String>,
    /// A hover says what a finding says, and its cures: for an editor that does not show them there by itself.
    pub hovers_tell_findings: bool,
    /// Sheets open as documents when the client can open one; otherwise only the command's result holds them.
    pub opens_sheets: bool,
}

/// Which derived numbers stand beside the text.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize, Serialize)]
#[serde(default, rename_all = "camelCase")]
pub struct InlayHintPreferences {
    /// Elevations that follow from the rest.
    pub elevations: bool,
    /// Spans of joists and beams.
    pub spans: bool,
    /// Lengths that things are cut to.
    pub cuts: bool,
    /// What comes down on a support.
    pub reactions: bool,
    /// How full a member is.
    pub ratios: bool,
    /// Risers of stairs, drops between floors.
    pub risers: bool,
}

impl Default for Preferences {
    fn default() -> Self {
        Self {
            code_lens: true,
            inlay_hints: InlayHintPreferences::default(),
            whole_workspace: true,
            rules_address: None,
            hovers_tell_findings: true,
            opens_sheets: true,
        }
    }
}

impl Default for InlayHintPreferences {
    fn default() -> Self {
        Self { elevations: true, spans: true, cuts: true, reactions: true, ratios: true, risers: true }
    }
}

/// The section of the settings that is ours.
pub const SECTION: &str = "storyrod";

impl Preferences {
    /// Reads the section's value, or settings that hold the section. A member that can't be read is left as it is by
    /// default and does not cost the others.
    pub fn of(settings: &Value) -> Self {
        let own = settings.get(SECTION).unwrap_or(settings);
        let Value::Object(members) = own else { return Self::default() };
        let readable = members.iter().filter(|(name, value)| {
            let alone = Value::Object([((*name).clone(), (*value).clone())].into_iter().collect());
            Self::deserialize(alone).is_ok()
        });
        let readable = readable.map(|(name, value)| (name.clone(), value.clone())).collect();
        Self::deserialize(Value::Object(readable)).unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;

    #[test]
    fn what_is_not_said_or_not_understood_is_as_by_default() {
        let off = InlayHintPreferences { cuts: false, ..InlayHintPreferences::default() };
        let expected = Preferences { code_lens: false, inlay_hints: off, ..Preferences::default() };
        let own = json!({"codeLens": false, "inlayHints": {"cuts": false}, "wholeWorkspace": "?", "x": 1});
        assert_eq!(Preferences::of(&own), expected);
        assert_eq!(Preferences::of(&json!({"storyrod": own, "other": 1})), expected);
        assert_eq!(Preferences::of(&json!(null)), Preferences::default());
        assert_eq!(Preferences::of(&json!({"inlayHints": {"cuts": 3}})), Preferences::default());
    }
}
