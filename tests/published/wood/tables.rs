//! Headers and footings, cell by cell.

use storyrod::design::concrete::footing_tables::{self, Below, House};
use storyrod::design::prescriptive::footings;
use storyrod::design::prescriptive::headers::{self, Supports};
use storyrod::units::{AreaLoad, Length};

use crate::cases::{Case, Comparison};

pub fn check(case: &Case) -> Option<Comparison> {
    match case.id.split('-').next()? {
        "r6027" => Some(header(case)),
        "r4031" => Some(strip(case)),
        "r403" => Some(former_strip(case)),
        _ => None,
    }
}

fn header(case: &Case) -> Comparison {
    let supports = match case.words("supports") {
        "roof_ceiling" => Supports::Roof,
        "roof_ceiling_1_center_bearing_floor" => Supports::RoofAndFloor,
        other => panic!("{}: `{other}`", case.id),
    };
    let (plies, size) = case.words("size").split_once('-').unwrap();
    let depth = size.split_once('x').unwrap().1;
    let found = headers::header(
        supports,
        plies.parse().unwrap(),
        depth.parse().unwrap(),
        AreaLoad::psf(case.number("ground_snow_psf")),
        feet(case, "width_ft"),
    )
    .unwrap();
    Comparison::new()
        .number("max_span_in", found.span.to_inches())
        .number("jack_studs", f64::from(found.jack_studs))
}

fn strip(case: &Case) -> Comparison {
    let walls = match case.words("table") {
        "R403.1(1)" => footing_tables::Walls::LightFrame,
        "R403.1(3)" => footing_tables::Walls::Concrete,
        other => panic!("{}: `{other}`", case.id),
    };
    let (storeys, below) = case.words("stories_type").split_once('_').unwrap();
    let below = match below {
        "slab" => Below::Slab,
        "crawl" => Below::CrawlSpace,
        "basement" => Below::Basement,
        other => panic!("{}: `{other}`", case.id),
    };
    let psf = |key| AreaLoad::psf(case.number(key));
    let house = House {
        storeys: storeys.parse().unwrap(),
        below,
        width: feet(case, "width_ft"),
        roof_load: psf("snow_or_roof_live_psf"),
        soil: psf("soil_psf"),
    };
    let found = footing_tables::least_strip(walls, &house).unwrap();
    Comparison::new()
        .number("width_in", found.width.to_inches())
        .number("thickness_in", found.thickness.to_inches())
}

fn former_strip(case: &Case) -> Comparison {
    let walls = match case.words("wall") {
        "frame" => footings::Walls::Frame,
        "veneer_or_8_hollow" => footings::Walls::VeneerOrHollow,
        "solid8" => footings::Walls::Solid,
        other => panic!("{}: `{other}`", case.id),
    };
    let soil = AreaLoad::psf(case.number("soil_psf"));
    let found = footings::least_width(walls, case.number("stories") as u32, soil).unwrap();
    Comparison::new().number("width_in", found.to_inches())
}

fn feet(case: &Case, key: &str) -> Length {
    Length::decimal_inches(case.number(key) * 12.0)
}
