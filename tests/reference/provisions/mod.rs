//! Provisions against published yields, salt diffusion and shop practice.

mod amounts;
mod convection;
mod fuel;
mod losses;
mod portions;
mod salt;
mod yields;
