//! Where the rules can be read.

/// A publication: what it is, which edition, and where it was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Source {
    /// Publisher and title.
    pub title: &'static str,
    /// Edition, year or section.
    pub edition: &'static str,
    /// Where it was read: the publisher's page or a copy of it.
    pub read_at: &'static str,
}

macro_rules! sources {
    ($($name:ident = $title:literal, $edition:literal, $read_at:literal;)+) => {
        $(pub(super) const $name: Source = Source { title: $title, edition: $edition, read_at: $read_at };)+
    };
}

sources! {
    MINIMUM_CHART = "FoodSafety.gov, safe minimum internal temperature chart", "current", "foodsafety.gov";
    STORAGE_CHART = "FoodSafety.gov, cold food storage chart", "current", "foodsafety.gov";
    FSIS_SMOKING = "USDA FSIS, Smoking Meat and Poultry", "current sheet", "a copy at docslib.org/doc/6878951";
    FSIS_APPENDIX_A = "USDA FSIS, Appendix A, lethality performance standards, table for meat", "1999", "a whole copy at rhosey.com/usda_cooking_guideline.htm; 7-log minutes also in NY 1 CRR 271-2.10";
    FSIS_POULTRY = "USDA FSIS, time-temperature tables for ready-to-eat poultry", "2005, repeated 2021", "printed copies of part of the table; front page at canr.msu.edu";
    FSIS_APPENDIX_B = "USDA FSIS, Appendix B, stabilisation (cooling)", "1999", "canr.msu.edu, stabilisation option 2";
    FSIS_THAWING = "USDA FSIS, The Big Thaw", "current sheet", "extension.illinois.edu/meat-safety/thawing";
    FSIS_HANDLING = "USDA FSIS, basics for handling food safely", "current sheet", "copies on university extension pages";
    FSIS_SMOKER_AIR = "USDA FSIS release on smoking, repeated by Alabama Extension", "2012", "aces.edu, food safety";
    FOOD_CODE_COOKING = "FDA Food Code, 3-401.11", "2017 and 2022", "1library.net/document/zx6e22oz and a state food handler manual";
    FOOD_CODE_THAWING = "FDA Food Code, 3-501.13", "as adopted in Maine 10-144 ch. 200", "regulations.justia.com";
    FOOD_CODE_COOLING = "FDA Food Code, 3-501.14 and 3-501.15", "as adopted in COMAR 10.15.03.11", "dsd.state.md.us";
    FOOD_CODE_HOLDING = "FDA Food Code, 3-501.16", "as adopted in WAC 246-215-03525", "Washington Administrative Code";
    FOOD_CODE_TIME = "FDA Food Code, 3-501.19", "as adopted in Georgia 511-6-1", "Georgia rules for food service";
    FOOD_CODE_REHEATING = "FDA Food Code, 3-403.11", "as adopted in COMAR 10.15.03.11", "dsd.state.md.us";
    CPSC_CARBON_MONOXIDE = "US Consumer Product Safety Commission, charcoal and carbon monoxide", "release 99-051, document 5012", "cpsc.gov";
    USFA_GRILLS = "US Fire Administration and NFPA, grilling fire safety", "current sheet", "a copy at ppec.coop";
    FIRE_CODE_BALCONY = "International Fire Code, 308.1.4", "as adopted in Raleigh, North Carolina", "raleighnc.gov";
    FIRE_DEPARTMENT_ASH = "Raleigh Fire Department and US Fire Administration, disposal of coals", "current page", "raleighnc.gov";
}
