//! Provisions against published yields, salt diffusion and shop practice.

mod convection;
mod fuel;
mod portions;
mod salt;
mod yields;
