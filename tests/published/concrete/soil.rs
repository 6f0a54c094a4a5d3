//! Presumed bearing, earth pressure, and the least footings of the residential code.

use storyrod::design::concrete::bars::numbered;
use storyrod::design::concrete::footing_bars::{Face, least_cover};
use storyrod::design::concrete::footing_tables::{Below, House, Strip, Walls, least_strip};
use storyrod::design::concrete::residential;
use storyrod::design::soil::classification::{
    Certainty, Ground, SoilGroup, lateral_soil_load, presumptive_bearing,
};
use storyrod::profiles::foundations as profile;
use storyrod::units::{AreaLoad, Density, Length};

use crate::cases::{Case, Comparison};

pub fn check(case: &Case) -> Option<Comparison> {
    Some(match case.id.as_str() {
        "SO-1" => presumed_bearing(),
        "SO-2" => least_footing(),
        "SO-4" => strips_under_concrete(case),
        "SO-5" => lateral_loads(),
        _ => return None,
    })
}

fn presumed_bearing() -> Comparison {
    use SoilGroup::{
        ClayeyGravel, ClayeySand, ElasticSilt, FatClay, LeanClay, PoorlyGradedGravel, PoorlyGradedSand, Silt,
        SiltyGravel, SiltySand, WellGradedGravel, WellGradedSand,
    };
    let bears = |ground| presumptive_bearing(ground).unwrap().to_psf();
    // A row of several groups bears the same for each of them.
    let row = |groups: &[SoilGroup]| {
        let mut values: Vec<f64> = groups.iter().map(|group| bears(Ground::Soil(*group))).collect();
        values.dedup();
        assert_eq!(values.len(), 1, "{groups:?}");
        values[0]
    };
    Comparison::new()
        .number("crystalline_bedrock", bears(Ground::CrystallineBedrock))
        .number("sedimentary_foliated_rock", bears(Ground::LayeredRock))
        .number("sandy_gravel_GW_GP", row(&[WellGradedGravel, PoorlyGradedGravel]))
        .number(
            "sand_SW_SP_SM_SC_GM_GC",
            row(&[WellGradedSand, PoorlyGradedSand, SiltySand, ClayeySand, SiltyGravel, ClayeyGravel]),
        )
        .number("clay_CL_ML_MH_CH", row(&[LeanClay, Silt, ElasticSilt, FatClay]))
}

/// The profile's limits are the same.
fn least_footing() -> Comparison {
    assert_eq!(profile::FOOTING_WIDTH.value, residential::WIDTH);
    assert_eq!(profile::FOOTING_THICKNESS.value, residential::THICKNESS);
    assert_eq!(profile::FOOTING_PROJECTION.value, residential::PROJECTION);
    let thickness = Length::inches(9);
    let holds_at = |projection| residential::shape(Length::inches(40), thickness, projection).holds();
    let is_thickness = holds_at(thickness) && !holds_at(thickness + Length::sixteenths(0, 1));
    let cover = |face, bar| least_cover(face, numbered(bar).unwrap()).to_inches();
    Comparison::new()
        .number("min_width_in", residential::WIDTH.to_inches())
        .number("min_thickness_in", residential::THICKNESS.to_inches())
        .number("min_projection_in", residential::PROJECTION.to_inches())
        .words("projection_max", if is_thickness { "thickness" } else { "something else" })
        .number("min_depth_below_undisturbed_in", profile::FOOTING_DEPTH.value.to_inches())
        .number("cover_against_earth_in", cover(Face::AgainstEarth, 5))
        .number("cover_formed_exposed_No5_and_smaller_in", cover(Face::FormedOutside, 5))
        .number("cover_formed_exposed_No6_up_in", cover(Face::FormedOutside, 6))
        .number("cover_not_exposed_in", cover(Face::FormedInside, 5))
}

fn strips_under_concrete(case: &Case) -> Comparison {
    let rows = [
        ("one_story_slab", 1, Below::Slab),
        ("one_story_crawl", 1, Below::CrawlSpace),
        ("one_story_basement", 1, Below::Basement),
        ("two_story_slab", 2, Below::Slab),
        ("two_story_crawl", 2, Below::CrawlSpace),
        ("two_story_basement", 2, Below::Basement),
        ("three_story_slab", 3, Below::Slab),
        ("three_story_crawl", 3, Below::CrawlSpace),
        ("three_story_basement", 3, Below::Basement),
    ];
    rows.into_iter().fold(Comparison::new(), |found, (name, storeys, below)| {
        let roof_load = AreaLoad::psf(case.number("snow_psf"));
        let soil = AreaLoad::psf(case.number("soil_psf"));
        let house = House { storeys, below, width: Length::feet(32), roof_load, soil };
        let Strip { width, thickness } = least_strip(Walls::Concrete, &house).unwrap();
        found.words(name, format!("{}x{}", width.to_inches(), thickness.to_inches()))
    })
}

fn lateral_loads() -> Comparison {
    let row = |group| {
        let row = lateral_soil_load(group).unwrap();
        assert_eq!(row.certainty, Certainty::SecondaryCopy);
        vec![row.active.to_pcf(), row.at_rest.to_pcf()]
    };
    Comparison::new()
        .numbers("GW", row(SoilGroup::WellGradedGravel))
        .numbers("GP", row(SoilGroup::PoorlyGradedGravel))
        .numbers("GM", row(SoilGroup::SiltyGravel))
        .numbers("GC", row(SoilGroup::ClayeyGravel))
        .numbers("SW", row(SoilGroup::WellGradedSand))
        .numbers("SP", row(SoilGroup::PoorlyGradedSand))
}

/// IBC table 1610.1, the other rows, from memory.
#[test]
fn from_memory_lateral_loads() {
    for (group, active, at_rest) in [
        (SoilGroup::SiltySand, 45.0, 60.0),
        (SoilGroup::SiltyClayeySand, 45.0, 100.0),
        (SoilGroup::ClayeySand, 60.0, 100.0),
        (SoilGroup::Silt, 45.0, 100.0),
        (SoilGroup::SiltAndClay, 60.0, 100.0),
        (SoilGroup::LeanClay, 60.0, 100.0),
    ] {
        let row = lateral_soil_load(group).unwrap();
        assert_eq!(row.certainty, Certainty::FromMemory);
        assert_eq!((row.active, row.at_rest), (Density::pcf(active), Density::pcf(at_rest)), "{group:?}");
    }
}

/// IRC table R403.1(1), rows of 30 psf and 2,000 psf, read in a handout on perimeter footings: a secondary copy.
#[test]
fn published_strips_under_light_frame() {
    let rows = [[(12, 6), (12, 6), (14, 6)], [(12, 6), (13, 6), (17, 6)], [(12, 6), (15, 6), (20, 6)]];
    for (storeys, row) in (1..).zip(rows) {
        for (below, (width, thickness)) in
            [Below::Slab, Below::CrawlSpace, Below::Basement].into_iter().zip(row)
        {
            let house = House {
                storeys,
                below,
                width: Length::feet(32),
                roof_load: AreaLoad::psf(30.0),
                soil: AreaLoad::psf(2_000.0),
            };
            let strip = Strip { width: Length::inches(width), thickness: Length::inches(thickness) };
            assert_eq!(least_strip(Walls::LightFrame, &house), Ok(strip), "{storeys} {below:?}");
        }
    }
}
