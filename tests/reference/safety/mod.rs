//! Safety against the published tables and rates.

mod cooling;
mod lethality;
mod limits;
