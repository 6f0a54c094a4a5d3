//! Members with their true sizes, and declared loads.

use crate::model::lower::reader::Reader;
use crate::model::member::Member;
use crate::model::problem::ModelProblemKind;
use crate::products::section::{Named, Section, Size, bare, section_of};
use crate::syntax::value::{Member as Written, Section as WrittenSection};
use crate::syntax::vocabulary::ElementKind;
use crate::syntax::{Fact, Part};
use crate::units::Length;

impl<'t> Reader<'_, 't> {
    /// The member of a fact.
    pub fn member(&mut self, fact: &Fact) -> Option<Member> {
        let part = fact.part("member")?;
        let written = fact.member("member")?;
        let sides = sides_of(&written.section);
        if written.plies == 0 || !sides.iter().all(|side| side.is_positive()) {
            self.report(self.span(part.span), ModelProblemKind::NotPositive(fact.spec.phrase));
            return None;
        }
        Some(Member {
            text: text_of(written).into(),
            span: self.span(part.span),
            plies: written.plies,
            written: written.section.clone(),
            section: self.section(written, part),
            species: written.species.clone(),
            grade: written.grade.clone(),
            is_treated: written.is_treated,
        })
    }

    /// So many members: one when no number stands there.
    pub fn counted_member(&mut self, fact: &Fact) -> Option<(u32, Member)> {
        let count = match fact.has("count") {
            true => self.count(fact, "count"),
            false => Some(1),
        };
        let member = self.member(fact)?;
        Some((count?, member))
    }

    fn section(&mut self, written: &Written, part: &Part) -> Option<Section> {
        let size = match &written.section {
            WrittenSection::Nominal(thickness, width) => Size::Nominal(*thickness, *width),
            WrittenSection::Built(width, depth) => Size::Built(*width, *depth),
            WrittenSection::Depth(depth) => Size::Depth(*depth),
            WrittenSection::Rolled(mark) => Size::Rolled(mark),
            WrittenSection::Tube(one, other, wall) => Size::Tube(*one, *other, *wall),
            WrittenSection::Pipe(diameter, wall) => Size::Pipe(*diameter, *wall),
            WrittenSection::FilledPipe(diameter) => Size::FilledPipe(*diameter),
            WrittenSection::Product(name) => return self.declared_section(name, written, part),
        };
        let named = Named {
            pieces: written.plies,
            size,
            make: written.make.as_deref(),
            species: written.species.as_deref(),
            grade: written.grade.as_deref(),
        };
        match section_of(&named) {
            Ok(section) => Some(section),
            Err(unknown) => {
                let nearest = unknown.nearest.into_iter().map(String::into_boxed_str).collect();
                self.report(self.span(part.span), ModelProblemKind::UnknownSize(nearest));
                None
            }
        }
    }

    fn declared_section(&mut self, name: &str, written: &Written, part: &Part) -> Option<Section> {
        const KINDS: &[ElementKind] = &[ElementKind::Product];
        if self.lowering.model.named(name).is_none() {
            let nearest = self.lowering.nearest_name(name, KINDS).into_iter().collect();
            self.report(self.span(part.span), ModelProblemKind::UnknownSize(nearest));
            return None;
        }
        let span = self.span(written.product_span.unwrap_or(part.span));
        let id = self.lowering.resolve(name, span, KINDS, self.entry.id)?;
        let section = self.lowering.products.get(&id)?;
        Some(Section { pieces: written.plies, ..*section })
    }
}

fn sides_of(section: &WrittenSection) -> Vec<Length> {
    match section {
        WrittenSection::Built(one, other) | WrittenSection::Pipe(one, other) => vec![*one, *other],
        WrittenSection::Depth(one) | WrittenSection::FilledPipe(one) => vec![*one],
        WrittenSection::Tube(one, other, wall) => vec![*one, *other, *wall],
        WrittenSection::Nominal(..) | WrittenSection::Rolled(_) | WrittenSection::Product(_) => Vec::new(),
    }
}

/// The member in the one way it is printed: `3-ply 2x10 SPF No.2`.
fn text_of(member: &Written) -> String {
    let plies = (member.plies > 1).then(|| format!("{}-ply", member.plies));
    let section = match &member.section {
        WrittenSection::Nominal(thickness, width) => format!("{thickness}x{width}"),
        WrittenSection::Built(width, depth) => format!("{} x {}", bare(*width), bare(*depth)),
        WrittenSection::Depth(depth) => bare(*depth),
        WrittenSection::Rolled(mark) => mark.replace('X', "x"),
        WrittenSection::Tube(one, other, wall) => {
            format!("HSS {} x {} x {}", bare(*one), bare(*other), bare(*wall))
        }
        WrittenSection::Pipe(diameter, wall) => format!("pipe {} x {:.3}", bare(*diameter), wall.to_inches()),
        WrittenSection::FilledPipe(diameter) => format!("filled pipe {}", bare(*diameter)),
        WrittenSection::Product(name) => name.to_string(),
    };
    let words = [member.make.as_deref(), member.species.as_deref(), member.grade.as_deref()];
    let treated = member.is_treated.then_some("treated");
    let words = words.into_iter().chain([treated]).flatten();
    plies.as_deref().into_iter().chain([section.as_str()]).chain(words).collect::<Vec<_>>().join(" ")
}
