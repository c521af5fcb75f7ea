//! The run sheet as a problem to be solved: steps with their rules, people with their hours, rooms with their size; and
//! what a move of one step by hand comes to.
//!
//! The lattice is part of every outlook, so that a move is judged where the finger is, without asking the worker.

mod binding;
mod explain;
mod lattice;
mod moves;
mod network;
mod project;
mod reason;
mod serial;
mod shortest;
mod solve;
mod timetable;

pub use lattice::{
    Bound, DishSpans, Edge, Hours, Lattice, Link, Person, RoomSize, Skill, Stay, Stretch, Task, Tie,
};
pub use moves::{BrokenPromise, Moved, Refused, To, move_step};
pub use project::{Activity, NoProject, Project};
pub use reason::{Allowed, Pin, Reason, Room, Rule};
pub use shortest::Shortest;
