//! Wind and earthquake that a project states, and that nothing is designed for.

use crate::house::House;
use crate::profiles::loads::WIND_WITHOUT_A_WORD;
use crate::rules::{Findings, rule};

rule! {
    /// The project states more wind or earthquake than goes without a word, and nothing here is designed for either.
    ///
    /// Every report says below that wind and earthquake are not checked. This is for the houses where it matters: a
    /// seismic design category of D0, D1, D2 or E, or a wind pressure over the limit. One finding for each line.
    ///
    /// ## Why
    /// A list without findings reads as a sound house. Its walls may have nothing that keeps them upright.
    ///
    /// ## Source
    /// Residential code R301.2.2 (from memory: dwellings in categories D0 to D2 have rules of their own, and E is
    /// designed); the limit `wind-without-a-word` is common practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// project "Alder House"
    ///   profile   irc-2021
    ///   seismic   category D1
    /// ```
    /// ```framing,passes
    /// project "Alder House"
    ///   profile   irc-2021
    ///   seismic   category B
    ///   wind      20 psf
    /// ```
    "lateral-not-covered", Advice
}

/// Categories in which dwellings have rules of their own, or are designed.
const SHAKEN: [&str; 4] = ["D0", "D1", "D2", "E"];

fn check(house: &House, findings: &mut Findings<'_>) {
    let Some(project) = &house.model.project else { return };
    if let Some((category, span)) = project.seismic.stated().filter(|(word, _)| SHAKEN.contains(&&***word)) {
        findings
            .about(
                project.common.id,
                span,
                format!("seismic category {category}: nothing here is designed or checked for earthquake"),
            )
            .help("have bracing, ties and anchorage designed; the rules here only say where a push finds nothing")
            .basis("R301.2.2 (from memory)");
    }
    let calm = house.limits.of(&WIND_WITHOUT_A_WORD);
    if let Some((wind, span)) = project.wind.stated().filter(|(wind, _)| **wind > calm.value) {
        findings
            .about(
                project.common.id,
                span,
                format!("a wind of {} psf: nothing here is designed or checked for wind", wind.to_psf()),
            )
            .help("have bracing and uplift ties designed; the rules here only say where a pull finds nothing")
            .basis(calm.basis());
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// 30 psf is common practice; the categories are from memory.
    #[test]
    fn from_memory_where_it_matters() {
        check_rule(&RULE, "project \"House\"\n  seismic  C\n  wind  30 psf\n");
        check_rule(
            &RULE,
            "
project \"House\"
  seismic   D0
--          ^^ seismic category D0: nothing here is designed or checked for earthquake
  wind      31 psf
--          ^^^^^^ a wind of 31 psf: nothing here is designed or checked for wind
",
        );
    }
}
