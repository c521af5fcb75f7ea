//! What the reference and browser tests share.
