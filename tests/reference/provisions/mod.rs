//! Provisions against published yields, salt diffusion and shop practice.

mod portions;
mod salt;
mod yields;
