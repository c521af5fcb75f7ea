//! Runs the app: on the page as screens, in the worker as the reckoning.

fn main() {
    planner::start();
}
