//! Kinds of ground, the pressure each is presumed to bear, and the load of each against a wall.

use crate::design::NotCovered;
use crate::units::{AreaLoad, Density};

/// Whether a value was read in a copy of its source.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Certainty {
    /// Read in a secondary copy.
    SecondaryCopy,
    /// From memory: read nowhere.
    FromMemory,
}

/// A group of the unified soil classification, or two of them mixed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SoilGroup {
    /// GW: well-graded gravel.
    WellGradedGravel,
    /// GP: poorly graded gravel.
    PoorlyGradedGravel,
    /// GM: silty gravel.
    SiltyGravel,
    /// GC: clayey gravel.
    ClayeyGravel,
    /// SW: well-graded sand.
    WellGradedSand,
    /// SP: poorly graded sand.
    PoorlyGradedSand,
    /// SM: silty sand.
    SiltySand,
    /// SM-SC: sand with silt and clay.
    SiltyClayeySand,
    /// SC: clayey sand.
    ClayeySand,
    /// ML: silt.
    Silt,
    /// ML-CL: silt and clay.
    SiltAndClay,
    /// CL: lean clay.
    LeanClay,
    /// MH: elastic silt.
    ElasticSilt,
    /// CH: fat clay.
    FatClay,
    /// OL, OH and PT: organic soil and peat.
    Organic,
}

/// What a footing stands on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Ground {
    /// Crystalline bedrock.
    CrystallineBedrock,
    /// Sedimentary or foliated rock.
    LayeredRock,
    /// Soil.
    Soil(SoilGroup),
}

/// The pressure that ground is presumed to bear where no one has tested it.
///
/// Source: IRC table R401.4.1 (R401.4.1(1) since 2021) and IBC table 1806.2, read in secondary copies.
/// Range:  the classes of the table; organic soil needs a soil investigation, and so does any ground thought to bear less than
///         1,500 psf.
/// Result: gross or net is not said by the table.
pub fn presumptive_bearing(ground: Ground) -> Result<AreaLoad, NotCovered> {
    use SoilGroup::{
        ClayeyGravel, ClayeySand, ElasticSilt, FatClay, LeanClay, Organic, PoorlyGradedGravel,
        PoorlyGradedSand, Silt, SiltAndClay, SiltyClayeySand, SiltyGravel, SiltySand, WellGradedGravel,
        WellGradedSand,
    };
    let psf = match ground {
        Ground::CrystallineBedrock => 12_000.0,
        Ground::LayeredRock => 4_000.0,
        Ground::Soil(WellGradedGravel | PoorlyGradedGravel) => 3_000.0,
        Ground::Soil(
            WellGradedSand | PoorlyGradedSand | SiltySand | SiltyClayeySand | ClayeySand | SiltyGravel
            | ClayeyGravel,
        ) => 2_000.0,
        Ground::Soil(LeanClay | Silt | SiltAndClay | ElasticSilt | FatClay) => 1_500.0,
        Ground::Soil(Organic) => {
            return Err(NotCovered::NoRule { what: "footings on organic soil", clause: "IRC R401.4" });
        }
    };
    Ok(AreaLoad::psf(psf))
}

/// The load of earth against a wall for each foot of depth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LateralSoilLoad {
    /// Against a wall that may lean away: pressure a foot of depth.
    pub active: Density,
    /// Against a wall held at its top.
    pub at_rest: Density,
    /// Whether the row was read.
    pub certainty: Certainty,
}

/// The load of drained backfill against a wall.
///
/// Source: IBC 2021 table 1610.1: rows GW to SP read in a secondary copy, the others from memory.
/// Range:  the rows of the table. MH, CH and organic soil are not backfill; undrained earth weighs more.
/// Result: psf a foot of depth, which is a density.
pub fn lateral_soil_load(group: SoilGroup) -> Result<LateralSoilLoad, NotCovered> {
    use Certainty::{FromMemory, SecondaryCopy};
    let (active, at_rest, certainty) = match group {
        SoilGroup::WellGradedGravel
        | SoilGroup::PoorlyGradedGravel
        | SoilGroup::WellGradedSand
        | SoilGroup::PoorlyGradedSand => (30.0, 60.0, SecondaryCopy),
        SoilGroup::SiltyGravel => (40.0, 60.0, SecondaryCopy),
        SoilGroup::ClayeyGravel => (45.0, 60.0, SecondaryCopy),
        SoilGroup::SiltySand => (45.0, 60.0, FromMemory),
        SoilGroup::SiltyClayeySand | SoilGroup::Silt => (45.0, 100.0, FromMemory),
        SoilGroup::ClayeySand | SoilGroup::SiltAndClay | SoilGroup::LeanClay => (60.0, 100.0, FromMemory),
        SoilGroup::ElasticSilt | SoilGroup::FatClay | SoilGroup::Organic => {
            return Err(NotCovered::NoRule {
                what: "backfill of elastic silt, fat clay or organic soil",
                clause: "IBC table 1610.1",
            });
        }
    };
    Ok(LateralSoilLoad { active: Density::pcf(active), at_rest: Density::pcf(at_rest), certainty })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn soil_that_no_table_knows() {
        assert!(presumptive_bearing(Ground::Soil(SoilGroup::Organic)).is_err());
        assert!(lateral_soil_load(SoilGroup::FatClay).is_err());
        assert!(lateral_soil_load(SoilGroup::Organic).is_err());
    }

    /// A wall held at its top bears more than one that may lean, in every row.
    #[test]
    fn earth_at_rest_presses_more() {
        for group in
            [SoilGroup::WellGradedGravel, SoilGroup::SiltyGravel, SoilGroup::Silt, SoilGroup::LeanClay]
        {
            let row = lateral_soil_load(group).unwrap();
            assert!(row.at_rest > row.active);
        }
    }
}
