//! Rules: house to findings. One rule, one file, with its documentation, check and tests.
//!
//! The path of a rule's file is its name: `rules/stairs/risers_not_even.rs` is `risers-not-even`; the folder is its
//! group. A rule says only where and what; name and severity come from here.

mod assertions;
mod finding;
mod grouping;
mod index;
mod silence;
mod standing;
mod weighing;
mod wording;

pub mod beams;
pub mod bearing;
pub mod built;
pub mod claims;
pub mod columns;
pub mod coverage;
pub mod files;
pub mod floors;
pub mod foundations;
pub mod hygiene;
pub mod intents;
pub mod lateral;
pub mod load_path;
pub mod names;
pub mod severities;
pub mod sheets;
pub mod spelling;
pub mod stack;
pub mod stairs;
pub mod strength;
pub mod supports;
pub mod waivers;

pub use finding::{Finding, Findings};
pub use index::index;
pub use silence::Waived;
pub use standing::{Standing, is_comparing};
pub use weighing::is_fixed;

use crate::diagnostic::{Diagnostic, Severity};
use crate::house::House;

/// One rule.
#[derive(Clone, Copy, Debug)]
pub struct Rule {
    /// Its name, a slug that says the fault.
    pub slug: &'static str,
    /// How much it matters when the project does not say otherwise.
    pub severity: Severity,
    /// It means danger: a project cannot switch it off or lower it, only waive it one by one with a reason.
    pub is_danger: bool,
    /// Its documentation: what, why, source, examples.
    pub documentation: &'static str,
    /// The module it stands in.
    pub module: &'static str,
    /// Looks for the fault.
    pub check: fn(&House, &mut Findings<'_>),
}

/// Makes `RULE` from a documentation comment, a slug and a severity; a `danger` behind them sets [`Rule::is_danger`].
macro_rules! rule {
    ($(#[doc = $doc:literal])+ $slug:literal, $severity:ident $(, $danger:ident)?) => {
        $(#[doc = $doc])+
        pub(crate) const RULE: $crate::rules::Rule = $crate::rules::Rule {
            slug: $slug,
            severity: $crate::diagnostic::Severity::$severity,
            is_danger: rule!(@danger $($danger)?),
            documentation: concat!($($doc, "\n"),+),
            module: module_path!(),
            check,
        };
    };
    (@danger danger) => { true };
    (@danger) => { false };
}
pub(crate) use rule;

/// So many problems of the text, and of the names, are told one by one in a file; the rest is counted.
const MOST_TOLD: usize = 100;

/// Every rule, in the order the index lists them.
pub const RULES: &[Rule] = &[
    spelling::stray_character::RULE,
    spelling::text_not_closed::RULE,
    spelling::line_too_long::RULE,
    spelling::number_too_large::RULE,
    spelling::unit_unclear::RULE,
    spelling::impossible_fraction::RULE,
    spelling::odd_dimension::RULE,
    spelling::length_not_exact::RULE,
    spelling::day_does_not_exist::RULE,
    spelling::unknown_element::RULE,
    spelling::name_missing::RULE,
    spelling::name_malformed::RULE,
    spelling::name_reserved::RULE,
    spelling::heading_unclear::RULE,
    spelling::fact_before_element::RULE,
    spelling::unknown_fact::RULE,
    spelling::fact_repeated::RULE,
    spelling::fact_not_understood::RULE,
    spelling::include_unclear::RULE,
    names::unknown_name::RULE,
    names::name_of_other_kind::RULE,
    names::name_reused::RULE,
    names::refers_to_itself::RULE,
    names::unknown_grid_line::RULE,
    names::grid_line_misused::RULE,
    names::grid_not_ascending::RULE,
    names::fact_missing::RULE,
    names::decided_twice::RULE,
    names::size_unknown::RULE,
    names::unknown_word::RULE,
    names::limit_of_other_kind::RULE,
    names::value_of_other_kind::RULE,
    names::not_positive::RULE,
    names::without_extent::RULE,
    names::second_of_its_kind::RULE,
    names::project_missing::RULE,
    files::include_not_found::RULE,
    files::include_outside_root::RULE,
    files::include_circle::RULE,
    files::include_repeated::RULE,
    files::include_unreadable::RULE,
    files::file_empty::RULE,
    files::too_many_problems::RULE,
    stack::stack_does_not_close::RULE,
    stack::ceiling_too_low::RULE,
    stack::joists_do_not_meet::RULE,
    stack::nominal_as_actual::RULE,
    stack::unbuildable_fraction::RULE,
    stack::drop_measured_on_wrong_surface::RULE,
    stack::floor_drop_not_at_wall::RULE,
    stack::shrinkage_splits_levels::RULE,
    stack::stud_length_by_base::RULE,
    intents::intent_clear_bay::RULE,
    columns::column_length_does_not_close::RULE,
    columns::base_not_buried::RULE,
    columns::cap_turned::RULE,
    columns::cap_unbalanced::RULE,
    bearing::wood_crush::RULE,
    bearing::flat_plate_in_column_line::RULE,
    bearing::cap_too_short::RULE,
    bearing::cap_too_thin::RULE,
    bearing::base_plate_too_thin::RULE,
    bearing::concrete_crushed::RULE,
    bearing::connector_overloaded::RULE,
    columns::column_minimum::RULE,
    columns::column_overload::RULE,
    columns::grout_range::RULE,
    columns::post_off_line::RULE,
    columns::wood_post_on_concrete::RULE,
    columns::column_in_the_way::RULE,
    stairs::risers_not_even::RULE,
    stairs::riser_too_tall::RULE,
    stairs::step_not_whole_risers::RULE,
    stairs::opening_misses_stair::RULE,
    stairs::stair_headroom::RULE,
    beams::flush_beam_projects::RULE,
    beams::flush_steel_no_gap::RULE,
    beams::bottoms_differ_on_one_cap::RULE,
    beams::nailer_missing::RULE,
    beams::nailer_too_wide::RULE,
    beams::shim_stack::RULE,
    beams::web_crushed::RULE,
    strength::beam_deflection::RULE,
    strength::beam_strength::RULE,
    strength::beam_unbraced::RULE,
    strength::joist_bounce::RULE,
    strength::joist_deflection::RULE,
    strength::joist_span::RULE,
    strength::member_lifts::RULE,
    strength::transfer_sags::RULE,
    supports::support_out_of_place::RULE,
    supports::joist_end_unsupported::RULE,
    supports::beam_end_unsupported::RULE,
    supports::bearing_short::RULE,
    supports::bearing_longer_than_support::RULE,
    supports::lap_too_short::RULE,
    supports::splice_off_support::RULE,
    supports::support_narrower_than_beam::RULE,
    load_path::point_load_dropped::RULE,
    load_path::footing_missing::RULE,
    load_path::circular_support::RULE,
    load_path::stack_broken::RULE,
    load_path::post_untied::RULE,
    foundations::frost_depth::RULE,
    foundations::crawl_clearance::RULE,
    foundations::pocket_clearance::RULE,
    foundations::seat_above_wall_top::RULE,
    foundations::shelf_too_narrow::RULE,
    foundations::short_studs_unsheathed::RULE,
    foundations::sill_untreated::RULE,
    foundations::stoop_buries_wood::RULE,
    foundations::upstand_too_thin_or_tall::RULE,
    foundations::wall_thin_behind_pocket::RULE,
    foundations::wood_near_grade::RULE,
    foundations::column_off_pad::RULE,
    foundations::soil_pressure::RULE,
    foundations::footing_punched::RULE,
    foundations::point_load_on_strip::RULE,
    foundations::footing_bending::RULE,
    foundations::footing_shear::RULE,
    foundations::footing_bars::RULE,
    foundations::footing_on_backfill::RULE,
    foundations::footing_step_steep::RULE,
    foundations::pad_clash::RULE,
    foundations::pad_vs_slab::RULE,
    foundations::step_at_wrong_station::RULE,
    foundations::soil_above_lower_floor::RULE,
    foundations::wall_top_unsupported::RULE,
    foundations::anchor_too_small::RULE,
    foundations::anchors_too_far_apart::RULE,
    foundations::anchor_near_edge::RULE,
    floors::load_below_use::RULE,
    floors::drain_on_joist::RULE,
    stairs::tread_too_short::RULE,
    stairs::handrail_missing::RULE,
    stairs::guard_missing::RULE,
    stairs::guard_post_unbacked::RULE,
    stairs::steps_eat_room::RULE,
    stairs::flight_too_tall::RULE,
    stairs::door_over_steps::RULE,
    stairs::landing_too_small::RULE,
    stairs::threshold_drop::RULE,
    stairs::single_riser::RULE,
    stairs::tolerance_eats_budget::RULE,
    built::built_beyond_tolerance::RULE,
    floors::hole_beyond_limits::RULE,
    floors::notch_beyond_limits::RULE,
    floors::flange_cut::RULE,
    floors::opening_cuts_carrier::RULE,
    floors::drain_without_room::RULE,
    floors::duct_blocked_at_step::RULE,
    floors::step_edge_unframed::RULE,
    floors::opening_underframed::RULE,
    floors::deck_edge_unbacked::RULE,
    floors::layouts_out_of_register::RULE,
    supports::joists_can_roll::RULE,
    supports::hang_deeper_than_beam::RULE,
    supports::hang_without_hanger::RULE,
    supports::back_span_short::RULE,
    supports::cantilever_too_long::RULE,
    load_path::wall_off_support::RULE,
    load_path::bearing_wall_along_joists::RULE,
    load_path::bearing_wall_unloaded::RULE,
    load_path::partition_loaded::RULE,
    load_path::transfer_web_unstiffened::RULE,
    load_path::squash_block_missing::RULE,
    load_path::squash_block_short::RULE,
    lateral::floors_untied_at_step::RULE,
    lateral::thrust_without_floor::RULE,
    lateral::braced_line_breaks_at_step::RULE,
    lateral::hold_down_concrete_thin::RULE,
    coverage::roof_drift_not_covered::RULE,
    coverage::lateral_not_covered::RULE,
    load_path::member_unstable::RULE,
    load_path::load_reaches_nothing::RULE,
    load_path::load_left_out::RULE,
    sheets::string_does_not_close::RULE,
    sheets::count_differs::RULE,
    sheets::mark_unscheduled::RULE,
    sheets::stale_sheet::RULE,
    sheets::mirrored_side::RULE,
    intents::intent_below_ceiling::RULE,
    intents::intent_face_not_straight::RULE,
    intents::intent_not_level::RULE,
    intents::intent_not_over::RULE,
    intents::drop_unexplained::RULE,
    intents::intent_not_kept::RULE,
    intents::promise_not_checked::RULE,
    sheets::sheet_differs::RULE,
    sheets::rounded_away::RULE,
    claims::claim_not_kept::RULE,
    claims::comparison_of_unlike_things::RULE,
    claims::fact_not_derived::RULE,
    hygiene::check_not_run::RULE,
    hygiene::assumed_value::RULE,
    hygiene::declared_without_source::RULE,
    hygiene::element_unreferenced::RULE,
    waivers::waiver_without_reason::RULE,
    waivers::waiver_out_of_date::RULE,
    waivers::waiver_of_unknown_rule::RULE,
    waivers::waiver_silences_nothing::RULE,
    waivers::accept_acknowledges_nothing::RULE,
    severities::severity_of_unknown_rule::RULE,
    severities::severity_without_reason::RULE,
    severities::severity_must_stay::RULE,
    severities::severity_given_twice::RULE,
];

/// The rule of this name.
pub fn rule_named(slug: &str) -> Option<&'static Rule> {
    RULES.iter().find(|rule| rule.slug == slug)
}

/// What the rules find in a house.
#[derive(Clone, Debug, Default)]
pub struct Found {
    /// What is wrong: roots with their consequences, by file, place and rule.
    pub findings: Vec<Diagnostic>,
    /// What waivers silence, and rules that the project switches off, by file, place and rule.
    pub waived: Vec<Waived>,
}

/// What the rules find in a house. `None` when cancelled.
pub fn found_in(house: &House, is_cancelled: &dyn Fn() -> bool) -> Option<Found> {
    let mut found = Vec::new();
    for rule in RULES {
        if is_cancelled() {
            return None;
        }
        found.extend(of_rule(rule, house));
    }
    let (kept, waived) = weighed(house, found);
    Some(Found { findings: grouping::grouped(kept), waived })
}

fn of_rule(rule: &'static Rule, house: &House) -> Vec<Finding> {
    let mut findings = Findings::new(house, rule);
    (rule.check)(house, &mut findings);
    findings.into_list()
}

/// What is left to say, and what is silenced: with the severities that the project sets, and what was decided about what
/// stands already.
fn weighed(house: &House, found: Vec<Finding>) -> (Vec<Finding>, Vec<Waived>) {
    let (weighed, mut silenced) = weighing::with_severities(house, found);
    let (kept, waived) = silence::parted(house, standing::settled(house, weighed));
    silenced.extend(waived);
    silenced.sort_by_key(|silenced| (silenced.finding.span, silenced.finding.rule));
    (kept, silenced)
}

impl Rule {
    /// The first sentence of its documentation.
    pub fn summary(&self) -> &'static str {
        self.documentation.trim().lines().next().unwrap_or("").trim()
    }

    /// The text of one section of its documentation, on one line.
    pub fn section(&self, name: &str) -> String {
        let heading = format!("## {name}");
        let lines = self.documentation.lines().map(str::trim);
        let inside =
            lines.skip_while(|line| *line != heading).skip(1).take_while(|line| !line.starts_with("## "));
        inside.filter(|line| !line.is_empty()).collect::<Vec<_>>().join(" ")
    }

    /// True when what it finds is wrong with the text itself: no waiver silences it, and it is not weighed lower.
    pub fn is_of_the_text(&self) -> bool {
        let is_whole_group = matches!(self.group(), "spelling" | "names" | "files" | "severities");
        is_whole_group || matches!(self.slug, "waiver-of-unknown-rule" | "waiver-without-reason")
    }

    /// The folder its file stands in.
    pub fn group(&self) -> &'static str {
        self.module.rsplit("::").nth(1).unwrap_or("")
    }
}

#[cfg(test)]
mod tests {
    use std::collections::HashSet;
    use std::path::Path;

    use super::*;
    use crate::testing::rule_check::{check_example, house};

    #[test]
    fn names_are_unique_and_plain() {
        let mut seen = HashSet::new();
        for rule in RULES {
            assert!(seen.insert(rule.slug), "{} is registered twice", rule.slug);
            let is_plain = rule.slug.bytes().all(|byte| byte.is_ascii_lowercase() || byte == b'-');
            assert!(is_plain && !rule.slug.starts_with("no-"), "{} is no plain name of a fault", rule.slug);
        }
    }

    #[test]
    fn path_and_name_agree() {
        for rule in RULES {
            let file = rule.module.rsplit("::").next().unwrap();
            assert_eq!(file.replace('_', "-"), rule.slug, "in {}", rule.module);
        }
    }

    #[test]
    fn every_file_is_registered() {
        let modules: HashSet<&str> = RULES.iter().map(|rule| rule.module).collect();
        let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/rules");
        for group in
            std::fs::read_dir(root).unwrap().map(Result::unwrap).filter(|entry| entry.path().is_dir())
        {
            for file in std::fs::read_dir(group.path()).unwrap().map(Result::unwrap) {
                let name = file.path().file_stem().unwrap().to_str().unwrap().to_owned();
                let module = format!("storyrod::rules::{}::{name}", group.file_name().to_str().unwrap());
                assert!(modules.contains(module.as_str()), "{module} is not in RULES");
            }
        }
    }

    /// Rules that fire only on more text than a page holds; their own tests make it.
    const TOO_LONG_TO_SHOW: &[&str] = &["line-too-long", "too-many-problems"];

    #[test]
    fn documentation_is_whole() {
        for rule in RULES {
            for section in ["## Why", "## Source", "## Examples"] {
                assert!(rule.documentation.contains(section), "{} has no `{section}`", rule.slug);
            }
            if TOO_LONG_TO_SHOW.contains(&rule.slug) {
                continue;
            }
            let (fires, passes) = (examples(rule, "fires"), examples(rule, "passes"));
            assert!(
                !fires.is_empty() && !passes.is_empty(),
                "{} needs an example that fires and one that passes",
                rule.slug
            );
        }
    }

    #[test]
    fn a_rule_of_the_text_finds_what_no_waiver_silences() {
        for rule in RULES {
            for text in examples(rule, "fires") {
                let findings = of_rule(rule, &house(&text));
                let is_so = |finding: &Finding| finding.is_of_the_text == rule.is_of_the_text();
                assert!(findings.iter().all(is_so), "{}", rule.slug);
            }
        }
    }

    #[test]
    fn examples_do_what_they_say() {
        for rule in RULES {
            for text in examples(rule, "fires") {
                check_example(rule, &text, true);
            }
            for text in examples(rule, "passes") {
                check_example(rule, &text, false);
            }
        }
    }

    /// The fenced specs of a rule's documentation.
    fn examples(rule: &Rule, which: &str) -> Vec<String> {
        let fence = format!("```framing,{which}");
        let mut examples = Vec::new();
        let mut current: Option<String> = None;
        for line in rule.documentation.lines().map(|line| line.strip_prefix(' ').unwrap_or(line)) {
            match (&mut current, line) {
                (None, line) if line == fence => current = Some(String::new()),
                (None, _) => {}
                (Some(_), "```") => examples.extend(current.take()),
                (Some(text), line) => {
                    text.push_str(line);
                    text.push('\n');
                }
            }
        }
        examples
    }
}
