//! Capacities and loads that come from nowhere.

use crate::house::House;
use crate::model::element::Common;
use crate::model::field::Field;
use crate::model::site::Soil;
use crate::model::support::{Connector, Contact, Support};
use crate::rules::{Findings, rule};
use crate::text::Span;

rule! {
    /// A declared number does not say where it comes from.
    ///
    /// Hangers and clips, the fastening of a ledger, the soil, a load of its own. A `source` line of the element covers
    /// all its numbers.
    ///
    /// ## Why
    /// Nobody can check a capacity without the table it was read from, and a table changes with its edition.
    ///
    /// ## Source
    /// Common practice: a number from a supplier or a report is quoted with its document.
    ///
    /// ## Examples
    /// ```framing,fires
    /// beam B1
    ///   hangs from  B2 by hanger 1100 lb
    /// beam B2
    /// ```
    /// ```framing,passes
    /// beam B1
    ///   hangs from  B2 by hanger 1100 lb source "hanger table" on 2027-02-01
    /// beam B2
    /// ```
    "declared-without-source", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let model = &house.model;
    let joists = model.joists.iter().map(|joists| (&joists.common, &joists.supports));
    let beams = model.beams.iter().map(|beam| (&beam.common, &beam.supports));
    let headers = model.headers.iter().map(|header| (&header.common, &header.supports));
    for (common, supports) in joists.chain(beams).chain(headers) {
        for support in supports {
            of_support(common, support, findings);
        }
    }
    for opening in &model.openings {
        let connectors = [
            opening.headers.stated().and_then(|(headers, span)| Some((headers.by.as_ref()?, span))),
            opening.tails.stated(),
        ];
        for (connector, span) in connectors.into_iter().flatten() {
            of_connector(&opening.common, connector, span, findings);
        }
    }
    for ledger in &model.ledgers {
        if let Some((fastening, span)) = ledger.fastened.stated()
            && fastening.capacity.is_some()
            && fastening.source.is_none()
        {
            report(&ledger.common, span, "capacity of the fastening", findings);
        }
    }
    for wall in &model.walls {
        let unfounded =
            wall.hold_downs.iter().filter(|held| held.capacity.is_some() && held.source.is_none());
        for held in unfounded {
            report(&wall.common, held.span, "capacity of the hold-down", findings);
        }
    }
    for load in &model.loads {
        if let Some(span) = load.amount.stated().map(|(_, span)| span) {
            report(&load.common, span, "load", findings);
        }
    }
    if let Some(project) = &model.project {
        of_soil(&project.common, &project.soil, findings);
    }
    for footing in &model.footings {
        of_soil(&footing.common, &footing.soil, findings);
    }
}

fn of_support(common: &Common, support: &Support, findings: &mut Findings<'_>) {
    match &support.by {
        Contact::Hangs(connector) => of_connector(common, connector, support.span, findings),
        Contact::Bears(_) => {}
    }
}

fn of_connector(common: &Common, connector: &Connector, span: Span, findings: &mut Findings<'_>) {
    match connector {
        Connector::Hanger { capacity: Some(_), source: None, .. } => {
            report(common, span, "capacity of the hanger", findings);
        }
        Connector::Clip { capacity: Some(_), source: None, .. } => {
            report(common, span, "capacity of the clip", findings);
        }
        Connector::Hanger { .. } | Connector::Clip { .. } | Connector::Ledger(_) | Connector::None => {}
    }
}

fn of_soil(common: &Common, soil: &Field<Soil>, findings: &mut Findings<'_>) {
    if let Some((soil, span)) = soil.stated()
        && !soil.is_assumed
        && soil.source.is_none()
    {
        report(common, span, "soil pressure", findings);
    }
}

fn report(common: &Common, span: Span, what: &str, findings: &mut Findings<'_>) {
    // A line for all of the element; one that can't be read would be it.
    if !common.source.is_missing() || common.has_unread_lines {
        return;
    }
    findings
        .about(common.id, span, format!("the {what} on {} has no source", common.label()))
        .help("write `source \"…\" on` and the document's day behind it, or on a line of its own");
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::{check_rule, found};

    #[test]
    fn a_line_of_its_own_covers_the_element() {
        check_rule(
            &RULE,
            "
project \"Loon Cove\"
  soil      2000 psf net
--          ^^^^^^^^ the soil pressure on project Loon Cove has no source
beam B1
  source    \"hanger table\" on 2027-02-01
  hangs from B2 by hanger 1100 lb
beam B2
footing F1
  soil      1500 psf assumed
",
        );
    }

    #[test]
    fn a_load_of_its_own_needs_one() {
        let load = "load L1\n  amount 435 plf\n";
        assert_eq!(found(&RULE, load)[0].message, "the load on load L1 has no source");
        assert_eq!(found(&RULE, &format!("{load}  source \"second floor plan\"\n")), []);
    }
}
