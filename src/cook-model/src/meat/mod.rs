//! What lies on the grate: the catalogue of cuts, what they are made of, their shape, and when they are done.

mod beef;
mod catalogue;
mod cut;
mod lamb;
mod pork;
mod poultry;
mod small;

pub use catalogue::{CutId, UnknownCut, catalogue};
pub use cut::{
    Bone, Composition, Cut, EdibleYield, Kind, Make, Programme, ReferenceShape, RestTimes,
};
