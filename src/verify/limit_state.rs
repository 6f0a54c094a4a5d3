//! The ways in which a member can fail its purpose.

/// A limit state of one member.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LimitState {
    /// Bending strength.
    Bending,
    /// Shear strength.
    Shear,
    /// Sag under live load alone.
    LiveDeflection,
    /// Sag under all load, with creep where the stuff creeps.
    TotalDeflection,
    /// Sag under live load against what good practice asks beyond the code: advice.
    Bounce,
    /// A support that would have to pull the member down.
    Uplift,
    /// Support reaction of a product that publishes one.
    SupportReaction,
    /// Crushing of wood across its grain, at the weakest layer.
    WoodBearing,
    /// Crushing of a wooden plate that lies flat in the line of a post.
    PlateBearing,
    /// Bearing of a column or plate on concrete.
    ConcreteBearing,
    /// A hanger, clip or ledger against its declared capacity.
    Connector,
    /// Strength of a web over a support or under a point load.
    Web,
    /// Compression, buckling counted, with moment where there is one.
    Compression,
    /// Length of a cap or saddle under each member that lands on it.
    CapLength,
    /// Bending of a cap plate beyond the column.
    CapBending,
    /// Moment from unequal members on one cap.
    CapBalance,
    /// Bending of a base plate.
    BasePlate,
    /// Pressure on the soil.
    SoilPressure,
    /// Punching of a column through its footing.
    Punching,
    /// Shear across a footing.
    FootingShear,
    /// Bending of a footing.
    FootingBending,
    /// Least reinforcement and its development.
    FootingBars,
    /// A point load on a strip footing.
    StripPointLoad,
    /// Earth against a foundation wall.
    WallBackfill,
    /// Lateral support of a beam.
    LateralSupport,
    /// Notches and holes with the forces there.
    Cut,
}

impl LimitState {
    /// True where a demand stands against what the member can take: neither what is asked beyond the code nor a rule for
    /// how much there must be of something.
    pub const fn is_of_demand(self) -> bool {
        !matches!(self, Self::Bounce | Self::FootingBars)
    }

    /// What a report calls it.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Bending => "bending",
            Self::Shear => "shear",
            Self::LiveDeflection => "sag under live load",
            Self::TotalDeflection => "sag under all load",
            Self::Bounce => "firmness",
            Self::Uplift => "uplift",
            Self::SupportReaction => "support reaction",
            Self::WoodBearing => "crushing across the grain",
            Self::PlateBearing => "crushing of a flat plate",
            Self::ConcreteBearing => "bearing on concrete",
            Self::Connector => "connector",
            Self::Web => "web at a point load",
            Self::Compression => "compression",
            Self::CapLength => "length of the cap",
            Self::CapBending => "bending of the cap plate",
            Self::CapBalance => "balance on the cap",
            Self::BasePlate => "bending of the base plate",
            Self::SoilPressure => "soil pressure",
            Self::Punching => "punching",
            Self::FootingShear => "shear in the footing",
            Self::FootingBending => "bending of the footing",
            Self::FootingBars => "bars of the footing",
            Self::StripPointLoad => "point load on the strip",
            Self::WallBackfill => "earth against the wall",
            Self::LateralSupport => "lateral support",
            Self::Cut => "notch or hole",
        }
    }
}
