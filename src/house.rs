//! Everything known of one spec at one moment.

pub mod as_built;
pub mod edited;
pub mod lines;
pub mod wish;

use std::sync::{Arc, OnceLock};

use crate::geometry::Geometry;
use crate::house::as_built::AsBuilt;
use crate::inputs::Inputs;
use crate::model::Model;
use crate::model::problem::ModelProblemKind;
use crate::profiles::Limits;
use crate::statics::takedown::{self, Takedown};
use crate::syntax::value::Date;
use crate::syntax::vocabulary::ElementKind;
use crate::syntax::{self, ElementCache, Opening, ProblemKind, Tree};
use crate::text::{FileId, LocalSpan, Span};
use crate::verify::{self, Known, Verifications};

/// Everything known of one spec at one moment.
#[derive(Debug)]
pub struct House {
    /// What it was made from.
    pub inputs: Arc<Inputs>,
    /// The tree of each file.
    pub trees: Vec<Tree>,
    /// The house as written.
    pub model: Model,
    /// Where everything is.
    pub geometry: Geometry,
    /// What everything carries.
    pub forces: Takedown,
    /// Whether it holds.
    pub verifications: Verifications,
    /// The limits that hold: the project's, or the newest profile's when the spec has none that can be read.
    pub limits: Limits,
    /// The day of the analysis.
    pub today: Date,
    as_built: OnceLock<Option<Box<AsBuilt>>>,
}

/// Something that the reader could not make sense of, with its place.
#[derive(Clone, Copy, Debug)]
pub struct TextProblem<'a> {
    /// Where.
    pub span: Span,
    /// What.
    pub kind: &'a ProblemKind,
    /// The kind of element it stands in.
    pub element: Option<ElementKind>,
    chunk: u32,
}

impl TextProblem<'_> {
    /// A further place that the kind names.
    pub const fn place(&self, local: LocalSpan) -> Span {
        local.within(self.span.file, self.chunk)
    }
}

impl House {
    /// Reads and derives a house. `elements` keeps the trees of elements whose text stays the same.
    pub fn of(inputs: &Arc<Inputs>, elements: &mut ElementCache, today: Date) -> Self {
        let trees: Vec<Tree> =
            inputs.sources.iter().map(|source| syntax::parse(&source.text, elements)).collect();
        let model = Model::of(&trees);
        let geometry = Geometry::of(&model);
        let forces = takedown::of(&model, &geometry);
        let limits = model.limits();
        let known = Known { model: &model, geometry: &geometry, forces: &forces, limits: &limits };
        let verifications = verify::of(&known);
        Self {
            inputs: Arc::clone(inputs),
            trees,
            model,
            geometry,
            forces,
            verifications,
            limits,
            today,
            as_built: OnceLock::new(),
        }
    }

    /// The house with what was measured in place of what was drawn; `None` when nothing was measured. Made when it is
    /// first asked for.
    pub fn as_built(&self) -> Option<&AsBuilt> {
        self.as_built.get_or_init(|| as_built::of(self).map(Box::new)).as_deref()
    }

    /// What verifications are made from, to make one more: of another size.
    pub const fn known(&self) -> Known<'_> {
        Known { model: &self.model, geometry: &self.geometry, forces: &self.forces, limits: &self.limits }
    }

    /// What the reader could not make sense of in one file, in the order of the text.
    pub fn text_problems_of(&self, file: FileId) -> impl Iterator<Item = TextProblem<'_>> {
        let tree = self.trees.get(file.0 as usize);
        tree.into_iter().flat_map(|tree| &tree.chunks).flat_map(move |chunk| {
            let element = match &chunk.body.opening {
                Opening::Element(heading) => Some(heading.kind),
                Opening::Nothing | Opening::Include(_) | Opening::Unknown(..) => None,
            };
            chunk.body.problems.iter().map(move |problem| TextProblem {
                span: problem.span.within(file, chunk.start),
                kind: &problem.kind,
                element,
                chunk: chunk.start,
            })
        })
    }

    /// A line or a name of the spec can't be read: it might be the one that names an element which nothing else names.
    pub fn has_unread_names(&self) -> bool {
        let mut chunks = self.trees.iter().flat_map(|tree| &tree.chunks);
        let mut problems = self.model.problems.iter();
        chunks.any(|chunk| !chunk.body.problems.is_empty())
            || problems.any(|problem| {
                matches!(problem.kind, ModelProblemKind::UnknownName(..) | ModelProblemKind::UnknownSize(_))
            })
    }

    /// Every file of the spec.
    pub fn files(&self) -> impl Iterator<Item = FileId> + use<> {
        (0..u32::try_from(self.trees.len()).unwrap_or(u32::MAX)).map(FileId)
    }

    /// The line in which a place begins, without its line end.
    pub fn line_of(&self, span: Span) -> Span {
        let Some(source) = self.inputs.sources.get(span.file.0 as usize) else { return span };
        let (start, end) = source.lines.range_of(source.lines.line_of(span.start));
        let line = self.text_at(Span::new(span.file, start, end)).trim_end_matches(['\r', '\n']);
        Span::new(span.file, start, start + u32::try_from(line.len()).unwrap_or(0))
    }

    /// The text of a place.
    pub fn text_at(&self, span: Span) -> &str {
        let source = self.inputs.sources.get(span.file.0 as usize);
        source.and_then(|source| source.text.get(span.start as usize..span.end as usize)).unwrap_or("")
    }
}
