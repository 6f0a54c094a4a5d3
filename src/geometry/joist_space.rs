//! The hollow between deck and support that a post over a floor stands above.

use crate::geometry::carried::Carried;
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::framing::Joists;
use crate::model::openings::Squash;
use crate::model::support::Stand;
use crate::products::section::Make;
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

/// How much longer than the joists are deep a block is cut, so that it and not the joist takes the load. Common
/// practice, the same as the limit `squash-block-proud`.
const PROUD: Length = Length::sixteenths(0, 1);

/// The joists between a floor's deck and what is right below.
#[derive(Clone, Copy, Debug)]
pub struct JoistSpace<'a> {
    /// The floor.
    pub floor: ElementId,
    /// What is right below: wall, beam, ledger.
    pub over: ElementId,
    /// The joists of the floor there.
    pub joists: &'a Joists,
    /// How deep they are.
    pub depth: Length,
}

impl JoistSpace<'_> {
    /// Solid blocking fills it over what is below.
    pub fn is_blocked_solid(&self) -> bool {
        let over = Some(self.over);
        let here = |blocking: &crate::model::framing::Blocking| {
            blocking.is_solid && blocking.over.as_ref().is_some_and(|reference| reference.target == over)
        };
        self.joists.blocked.iter().any(|blocking| here(&blocking.value))
    }

    /// Its joists are I-joists, whose webs take no load from above.
    pub fn is_of_i_joists(&self) -> bool {
        let section = self.joists.size.value().and_then(|size| size.section.as_ref());
        section.is_some_and(|section| matches!(section.make, Make::IJoist(_)))
    }
}

/// The space under something that stands on a floor over a wall, beam or ledger. `None` when it stands on something
/// else, or on a floor without joists.
pub fn under<'a>(carried: &Carried<'a>, stand: &Stand) -> Option<JoistSpace<'a>> {
    let floor = stand.on.reference()?.target.filter(|on| on.kind == ElementKind::Floor)?;
    let over = stand.over.as_ref()?.target?;
    let is_of_floor =
        |(joists, _): &&(&Joists, _)| joists.floor.value().and_then(|floor| floor.target) == Some(floor);
    let on_it = carried.joists_on(over).iter().find(is_of_floor).map(|(joists, _)| *joists);
    let joists = on_it.or_else(|| carried.fields_of(floor).first().copied())?;
    Some(JoistSpace { floor, over, joists, depth: joists.size.value()?.depth()? })
}

/// The space that a squash block fills: under the post or the jacks it belongs to.
pub fn of_block<'a>(model: &Model, carried: &Carried<'a>, block: &Squash) -> Option<JoistSpace<'a>> {
    let post = block.under.value()?.target?;
    let stand = match post.kind {
        ElementKind::Column => &model.column(post)?.stands_on,
        ElementKind::Jacks => &model.jacks_of(post)?.stands_on,
        _ => return None,
    };
    under(carried, stand.value()?)
}

/// How long a block that fills a space is cut.
pub fn block_length(space: &JoistSpace<'_>) -> Length {
    space.depth + PROUD
}
