//! What every name means: the ids of all elements, and the model as far as it is read.

use std::collections::{BTreeMap, HashMap, HashSet};

use crate::model::Model;
use crate::model::element::{ElementId, Mention};
use crate::model::problem::{ModelProblem, ModelProblemKind};
use crate::products::section::Section;
use crate::syntax::value::{Section as SyntaxSection, Value};
use crate::syntax::vocabulary::{ElementKind, Naming, spec_of};
use crate::syntax::{Chunk, Heading, Opening, Tree};
use crate::text::{FileId, LocalSpan, Span, nearest};

/// An element of the spec, before its facts are read.
#[derive(Debug)]
pub struct Entry<'t> {
    /// Which element it will be.
    pub id: ElementId,
    /// The file it is in.
    pub file: FileId,
    /// Its text.
    pub chunk: &'t Chunk,
    /// Its first line.
    pub heading: &'t Heading,
}

impl Entry<'_> {
    /// A place in the element's text as a place in its file.
    pub fn span(&self, local: LocalSpan) -> Span {
        local.within(self.file, self.chunk.start)
    }

    /// Its name, and where it stands; the title or the keyword for kinds without names.
    pub fn name(&self) -> (&str, Span) {
        let spec = spec_of(self.heading.kind);
        let keyword = self.span(self.heading.keyword);
        match (&self.heading.name, &self.heading.title) {
            (Some((name, span)), _) => (name, self.span(*span)),
            (None, Some((title, _))) if spec.naming == Naming::Title => (title, keyword),
            (None, _) => (spec.keyword, keyword),
        }
    }
}

/// The model as far as it is read, and what reading the rest of it needs.
#[derive(Debug, Default)]
pub struct Lowering<'t> {
    /// The model so far.
    pub model: Model,
    /// True sections of declared products.
    pub products: HashMap<ElementId, Section>,
    /// How far the grid is known.
    pub grid: GridState,
    /// Where each name was given first.
    declared: HashMap<ElementId, Span>,
    names: BTreeMap<ElementKind, Vec<&'t str>>,
    /// Names behind words that open no element: that is told there, once.
    lost_names: HashSet<&'t str>,
    /// How many more names may be compared with unknown ones: offers are a courtesy, not worth a minute.
    comparisons_left: usize,
}

const COMPARISONS: usize = 200_000;

/// How far the grid is known: one mistake in it is not to show again wherever a line is used.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum GridState {
    /// There is none so far, and nothing has told so.
    #[default]
    None,
    /// It is in the text but can't be read, or that there is none has been told.
    Reported,
    /// A line that it does not have is a mistake where the line is used.
    Read,
}

impl<'t> Lowering<'t> {
    /// Gives every element its id and its name.
    pub fn of(trees: &'t [Tree]) -> (Self, Vec<Entry<'t>>) {
        let mut lowering = Self { comparisons_left: COMPARISONS, ..Self::default() };
        let mut firsts: BTreeMap<ElementKind, Span> = BTreeMap::new();
        let mut counts: BTreeMap<ElementKind, u32> = BTreeMap::new();
        let mut entries = Vec::new();
        for (file, tree) in (0..).map(FileId).zip(trees) {
            for chunk in &tree.chunks {
                if let Opening::Unknown(_, Some(name)) = &chunk.body.opening {
                    lowering.lost_names.insert(name);
                }
                let Opening::Element(heading) = &chunk.body.opening else { continue };
                let kind = heading.kind;
                let count = counts.entry(kind).or_default();
                let entry = Entry { id: ElementId { kind, index: *count }, file, chunk, heading };
                let keyword = entry.span(heading.keyword);
                let first = *firsts.entry(kind).or_insert(keyword);
                if is_alone(kind) && *count > 0 {
                    lowering.report(keyword, None, ModelProblemKind::SecondOfItsKind(kind, first));
                    continue;
                }
                *count += 1;
                lowering.declare(&entry);
                entries.push(entry);
            }
        }
        if !counts.contains_key(&ElementKind::Project) {
            let start = LocalSpan::new(0, 0).within(FileId(0), 0);
            lowering.report(start, None, ModelProblemKind::NoProject);
        }
        (lowering, entries)
    }

    fn declare(&mut self, entry: &Entry<'t>) {
        let Some((name, span)) = &entry.heading.name else { return };
        let span = entry.span(*span);
        self.model.mentions.push(Mention { span, target: entry.id, is_declaration: true });
        if let Some(first) = self.model.by_name.get(name) {
            let first = self.declared.get(first).copied().unwrap_or(span);
            let kind = ModelProblemKind::NameReused(name.clone(), first);
            self.report(span, Some(entry.id), kind);
            return;
        }
        self.model.by_name.insert(name.clone(), entry.id);
        self.declared.insert(entry.id, span);
        self.names.entry(entry.id.kind).or_default().push(name);
    }

    /// The element of this name, used here by `user`. Reports a name that nothing has or that something unfitting
    /// has. No kinds are any kind.
    pub fn resolve(
        &mut self,
        name: &str,
        span: Span,
        kinds: &'static [ElementKind],
        user: ElementId,
    ) -> Option<ElementId> {
        let Some(target) = self.model.named(name) else {
            if self.lost_names.contains(name) {
                return None;
            }
            let nearest = self.nearest_name(name, kinds);
            self.report(span, Some(user), ModelProblemKind::UnknownName(kinds, nearest));
            return None;
        };
        self.model.mentions.push(Mention { span, target, is_declaration: false });
        if !kinds.is_empty() && !kinds.contains(&target.kind) {
            let place = self.declared.get(&target).copied().unwrap_or(span);
            self.report(span, Some(user), ModelProblemKind::WrongKind(kinds, target.kind, place));
            return None;
        }
        Some(target)
    }

    /// Notes that a declared product's name stands in a value that is only compared, not read.
    pub fn mention_product(&mut self, value: &Value, entry: &Entry<'t>) {
        let Value::Member(member) = value else { return };
        let (SyntaxSection::Product(name), Some(span)) = (&member.section, member.product_span) else {
            return;
        };
        if let Some(target) = self.model.named(name) {
            let span = entry.span(span);
            self.model.mentions.push(Mention { span, target, is_declaration: false });
        }
    }

    /// The nearest name of an element of one of these kinds.
    pub fn nearest_name(&mut self, name: &str, kinds: &[ElementKind]) -> Option<Box<str>> {
        let fitting = || kinds.iter().filter_map(|kind| self.names.get(kind)).flatten().copied();
        self.comparisons_left = self.comparisons_left.checked_sub(fitting().count())?;
        nearest(name, fitting()).map(Box::from)
    }

    /// Notes what can't be made sense of.
    pub fn report(&mut self, span: Span, subject: Option<ElementId>, kind: ModelProblemKind) {
        self.model.problems.push(ModelProblem { span, subject, kind });
    }

    /// The model, its lists in the order of the text.
    pub fn finished(mut self) -> Model {
        self.model.mentions.sort_unstable();
        self.model.problems.sort_by_key(|problem| problem.span);
        self.model
    }
}

/// True for kinds of which a spec has one.
const fn is_alone(kind: ElementKind) -> bool {
    matches!(kind, ElementKind::Project | ElementKind::Grid)
}
