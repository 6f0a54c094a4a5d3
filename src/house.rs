//! Everything known of one spec at one moment.

use std::sync::Arc;

use crate::geometry::Geometry;
use crate::inputs::Inputs;
use crate::model::Model;
use crate::profiles::Limits;
use crate::syntax::value::Date;
use crate::syntax::{self, ElementCache, ProblemKind, Tree};
use crate::text::{FileId, Span};

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
    /// The limits that hold: the project's, or the newest profile's when the spec has none that can be read.
    pub limits: Limits,
    /// The day of the analysis.
    pub today: Date,
}

impl House {
    /// Reads and derives a house. `elements` keeps the trees of elements whose text stays the same.
    pub fn of(inputs: &Arc<Inputs>, elements: &mut ElementCache, today: Date) -> Self {
        let trees: Vec<Tree> =
            inputs.sources.iter().map(|source| syntax::parse(&source.text, elements)).collect();
        let model = Model::of(&trees);
        let geometry = Geometry::of(&model);
        let limits = model.limits();
        Self { inputs: Arc::clone(inputs), trees, model, geometry, limits, today }
    }

    /// What the reader could not make sense of, in the order of the text.
    pub fn text_problems(&self) -> impl Iterator<Item = (Span, &ProblemKind)> {
        self.trees.iter().enumerate().flat_map(|(file, tree)| {
            let file = FileId(u32::try_from(file).unwrap_or(u32::MAX));
            tree.chunks.iter().flat_map(move |chunk| {
                chunk
                    .body
                    .problems
                    .iter()
                    .map(move |problem| (problem.span.within(file, chunk.start), &problem.kind))
            })
        })
    }

    /// The text of a place.
    pub fn text_at(&self, span: Span) -> &str {
        let source = self.inputs.sources.get(span.file.0 as usize);
        source.and_then(|source| source.text.get(span.start as usize..span.end as usize)).unwrap_or("")
    }
}
