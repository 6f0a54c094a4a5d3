//! What a rule reports, before it is weighed, silenced and grouped.

use crate::diagnostic::{Diagnostic, Edit, Fix, Related, Remedy, Severity};
use crate::facts::FactValue;
use crate::house::{House, lines};
use crate::model::element::{Common, ElementId, Stage};
use crate::rules::standing::{Disagreement, is_comparing};
use crate::rules::wording::quoted;
use crate::rules::{RULES, Rule};
use crate::text::{Span, nearest};

/// A finding with what the engine needs to silence and group it.
#[derive(Clone, Debug)]
pub struct Finding {
    /// What a person reads.
    pub diagnostic: Diagnostic,
    /// The element it is about; a waiver stands there.
    pub subject: Option<ElementId>,
    /// Elements whose facts it rests on, the nearest first: when one of them has a finding of its own, this one is
    /// listed under it.
    pub follows: Vec<ElementId>,
    /// Findings with the same suspect fold into one; empty when it stands alone.
    pub suspect: Option<(ElementId, &'static str)>,
    /// Numbers of elements that it compares with what follows from the rest.
    pub disagreements: Vec<Disagreement>,
    /// A waiver cannot silence it: the text itself is wrong.
    pub is_of_the_text: bool,
}

/// Where a rule puts what it finds.
pub struct Findings<'a> {
    house: &'a House,
    rule: &'static Rule,
    list: Vec<Finding>,
}

impl<'a> Findings<'a> {
    /// For one run of one rule.
    pub fn new(house: &'a House, rule: &'static Rule) -> Self {
        Self { house, rule, list: Vec::new() }
    }

    /// A fault of an element. The message says it in one sentence with both numbers; lower case, no final stop.
    pub fn about(&mut self, subject: ElementId, span: Span, message: impl Into<String>) -> &mut Finding {
        let common = self.house.model.common(subject);
        let remedy = common.map_or(Remedy::OnPaper, remedy_of);
        let label = common.map(|common| common.label()).unwrap_or_default();
        self.push(Some(subject), label, remedy, span, message.into())
    }

    /// A fault of the text: no element can take it on itself.
    pub fn in_text(&mut self, span: Span, message: impl Into<String>) -> &mut Finding {
        let finding = self.push(None, String::new(), Remedy::OnPaper, span, message.into());
        finding.is_of_the_text = true;
        finding
    }

    /// A line that names no rule, with the rule it probably means.
    pub fn no_such_rule(&mut self, span: Span, written: &str) {
        let finding = self.in_text(span, format!("there is no rule {}", quoted(written)));
        if let Some(nearest) = nearest(written, RULES.iter().map(|rule| rule.slug)) {
            finding.meant(span, nearest);
        }
    }

    /// What was found.
    pub fn into_list(self) -> Vec<Finding> {
        self.list
    }

    fn push(
        &mut self,
        subject: Option<ElementId>,
        label: String,
        remedy: Remedy,
        span: Span,
        message: String,
    ) -> &mut Finding {
        self.list.push_mut(Finding {
            diagnostic: Diagnostic {
                rule: self.rule.slug,
                severity: self.rule.severity,
                standing: label.clone(),
                subject: label,
                span,
                message,
                related: Vec::new(),
                notes: Vec::new(),
                help: Vec::new(),
                remedy,
                basis: None,
                fix: None,
                choices: Vec::new(),
                waiver: None,
                consequences: Vec::new(),
            },
            subject,
            follows: Vec::new(),
            suspect: None,
            disagreements: Vec::new(),
            is_of_the_text: false,
        })
    }
}

impl Finding {
    /// Another place that belongs to it, and what it has to do with it.
    pub fn related(&mut self, span: Span, message: impl Into<String>) -> &mut Self {
        self.diagnostic.related.push(Related { span, message: message.into() });
        self
    }

    /// More to know: the chain of arithmetic, an assumed value.
    pub fn note(&mut self, note: impl Into<String>) -> &mut Self {
        self.diagnostic.notes.push(note.into());
        self
    }

    /// A cure, in one line.
    pub fn help(&mut self, help: impl Into<String>) -> &mut Self {
        self.diagnostic.help.push(help.into());
        self
    }

    /// The clause or the practice it rests on.
    pub fn basis(&mut self, basis: impl Into<String>) -> &mut Self {
        self.diagnostic.basis = Some(basis.into());
        self
    }

    /// An edit that has one answer.
    pub fn fix(&mut self, fix: Fix) -> &mut Self {
        self.diagnostic.fix = Some(fix);
        self
    }

    /// The edit that has one answer is to write this there.
    pub fn write(&mut self, span: Span, text: impl Into<String>) -> &mut Self {
        let text = text.into();
        self.fix(Fix { title: format!("write `{text}`"), edits: vec![Edit { span, text }] })
    }

    /// The word that was probably meant here: a cure, and the edit that makes it.
    pub fn meant(&mut self, span: Span, word: &str) -> &mut Self {
        self.help(format!("did you mean `{word}`?")).write(span, word)
    }

    /// The edit that has one answer is to take the line out in which this stands.
    pub fn take_out(&mut self, house: &House, span: Span) -> &mut Self {
        self.fix(Fix { title: "take the line out".to_owned(), edits: vec![lines::removed(house, span)] })
    }

    /// The edit that has one answer is to add this line to an element.
    pub fn add(&mut self, house: &House, to: &Common, fact: &str) -> &mut Self {
        let Some(edit) = lines::added(house, to, fact) else { return self };
        self.fix(Fix { title: format!("add `{fact}`"), edits: vec![edit] })
    }

    /// One of several edits that a person can take.
    pub fn choice(&mut self, title: impl Into<String>, edit: Edit) -> &mut Self {
        self.diagnostic.choices.push(Fix { title: title.into(), edits: vec![edit] });
        self
    }

    /// Two lines of which one has to go: each by what a person calls it.
    pub fn keep_one(
        &mut self,
        house: &House,
        (first, first_place): (&str, Span),
        (second, second_place): (&str, Span),
    ) -> &mut Self {
        self.help("keep one of the two lines")
            .choice(format!("keep {first}"), lines::removed(house, second_place))
            .choice(format!("keep {second}"), lines::removed(house, first_place))
    }

    /// Another severity than the rule's own, where the same fault can matter more or less.
    pub fn severity(&mut self, severity: Severity) -> &mut Self {
        self.diagnostic.severity = severity;
        self
    }

    /// Mending it means touching this element as well: the one that has come furthest decides what a cure costs.
    pub fn stands_in(&mut self, common: &Common) -> &mut Self {
        let remedy = remedy_of(common);
        if remedy > self.diagnostic.remedy {
            self.diagnostic.remedy = remedy;
            self.diagnostic.standing = common.label();
        }
        self
    }

    /// It rests on facts of this element too.
    pub fn follows(&mut self, element: ElementId) -> &mut Self {
        self.follows.push(element);
        self
    }

    /// A number of this element is not what follows from the rest: what is bought or stands gets the ways out on site, and
    /// an `accept` there acknowledges it.
    pub fn disagrees(&mut self, of: ElementId, words: &str, own: FactValue, wanted: FactValue) -> &mut Self {
        debug_assert!(is_comparing(self.diagnostic.rule), "{} compares numbers", self.diagnostic.rule);
        self.disagreements.push(Disagreement { of, words: words.into(), own, wanted });
        self
    }

    /// It questions this surface of this element.
    pub fn suspects(&mut self, element: ElementId, surface: &'static str) -> &mut Self {
        self.suspect = Some((element, surface));
        self
    }
}

fn remedy_of(common: &Common) -> Remedy {
    match common.status.value().map(|status| status.stage) {
        Some(Stage::Poured | Stage::Set) => Remedy::InPlace,
        // What was measured stands, whatever its status says.
        _ if !common.shots.is_empty() => Remedy::InPlace,
        Some(Stage::Ordered) => Remedy::Ordered,
        Some(Stage::Drawn) | None => Remedy::OnPaper,
    }
}
