//! The serial schedule-generation scheme (Kolisch 1996, "Serial and parallel resource-constrained project scheduling
//! methods revisited", European Journal of Operational Research 90): steps are taken one by one in the order of a list,
//! and each is put where it is best among those that are placed already. What is best is the caller's to say: as late as
//! it fits when a day is laid out backwards, as early in the pass forward, or nearest to where it is liked.

use super::network::Network;

/// Puts each step of the list into its place. `choose` gets a step and its window, and says where it begins; it keeps its
/// own timetables. None where a step has no place.
pub(super) fn serial(
    network: &mut Network,
    list: &[usize],
    mut choose: impl FnMut(usize, (i64, i64)) -> Option<i64>,
) -> Option<Vec<i64>> {
    let mut begins = vec![0; list.len()];
    for step in list {
        let window = network.window(*step);
        let at = choose(*step, window)?;
        network.put(*step, at).ok()?;
        *begins.get_mut(*step)? = at;
    }
    Some(begins)
}
