//! The inner scheme of the run sheet as a plain project scheduler, on projects whose shortest length is proven.

use cook_model::schedule::{Activity, Project};
use serde::Deserialize;

/// Schedules laid out for each project at most. The literature compares methods at 1,000, 5,000 and 50,000.
const WORK: u32 = 1500;

#[derive(Deserialize)]
struct Proven {
    optimum: i64,
    rooms: Vec<u32>,
    takes: Vec<u32>,
    wants: Vec<Vec<u32>>,
    after: Vec<Vec<usize>>,
}

impl Proven {
    fn project(&self) -> Project {
        let activities = self.takes.iter().zip(&self.wants).zip(&self.after);
        let activities = activities.map(|((takes, wants), after)| Activity {
            takes: *takes,
            wants: wants.clone(),
            after: after.clone(),
        });
        Project::new(self.rooms.clone(), activities.collect()).expect("a project")
    }

    /// How much longer ours is, as a share. Panics where ours breaks a rule.
    fn deviation(&self) -> f64 {
        let project = self.project();
        let found = project.shortest(WORK);
        assert_eq!(project.length_of(&found.begins), Some(found.length));
        assert!(found.schedules < WORK + 100, "{}", found.schedules);
        assert!(found.length >= self.optimum, "shorter than what is proven");
        (found.length - self.optimum) as f64 / self.optimum as f64
    }
}

/// Kolisch and Sprecher 1996, "PSPLIB: a project scheduling problem library", European Journal of Operational Research
/// 96: instance j30 1_1, whose shortest length is 43 by the library's list of optima, and by CP-SAT.
#[test]
fn a_published_project_is_as_short_as_it_can_be() {
    let proven: Proven =
        serde_json::from_str(include_str!("../data/project_j30_1_1.json")).expect("a project");
    assert_eq!(proven.optimum, 43);
    assert_eq!(proven.deviation(), 0.0);
}

/// Projects of our own, made and proven by `projects.py` with CP-SAT.
#[test]
fn projects_of_thirty_steps_are_near_the_proven_shortest() {
    let proven: Vec<Proven> =
        serde_json::from_str(include_str!("../data/projects.json")).expect("projects");
    assert!(proven.len() >= 60, "{}", proven.len());
    let deviations: Vec<f64> = proven.iter().map(Proven::deviation).collect();
    let mean = deviations.iter().sum::<f64>() / deviations.len() as f64;
    let worst = deviations.iter().copied().fold(0.0, f64::max);
    let exact = deviations
        .iter()
        .filter(|deviation| **deviation == 0.0)
        .count();
    println!(
        "mean {mean:.4}, worst {worst:.4}, exact {exact} of {}",
        proven.len()
    );
    assert!(mean <= 0.02, "mean deviation {mean}");
    assert!(worst <= 0.08, "worst deviation {worst}");
}
