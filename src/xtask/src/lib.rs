//! The part of the project's commands that the browser tests use too: serving the bundled app.

pub mod site;
