//! The worker's desk: requests come in at any time, work is done in chunks, and a newer question sweeps its line clear.

use super::{Effort, Line, Question, Request};
use std::collections::BTreeMap;

/// Work that is done in chunks.
pub trait Work {
    /// What comes out.
    type Answer;
    /// Begins the work on a question.
    fn begin(&mut self, question: Question, effort: Effort);
    /// Does a chunk of at most 20 ms. The answer, once the work is done.
    fn step(&mut self) -> Option<Self::Answer>;
}

/// What a turn at the desk came to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Turn<Answer> {
    /// Nothing to do until a request comes.
    Idle,
    /// There is more to do.
    Busy,
    /// A request is answered; there may be more to do.
    Done {
        /// Its id.
        id: u32,
        /// Its generation.
        generation: u32,
        /// Its effort.
        effort: Effort,
        /// The answer.
        answer: Answer,
    },
}

/// Requests waiting and the one being worked on.
pub struct Desk<W> {
    work: W,
    /// By what comes first: the least effort, the line that waits least, the order of asking. The one being worked on is
    /// among them.
    waiting: BTreeMap<Rank, Request>,
    current: Option<Rank>,
    newest: BTreeMap<Line, u32>,
}

/// What comes first.
type Rank = (Effort, Line, u32);

fn rank(request: &Request) -> Rank {
    (request.effort, request.question.wanted.line(), request.id)
}

impl<W: Work> Desk<W> {
    /// An empty desk.
    pub const fn new(work: W) -> Self {
        Self {
            work,
            waiting: BTreeMap::new(),
            current: None,
            newest: BTreeMap::new(),
        }
    }

    /// Takes a request in. One of a newer generation ends all older ones of its line; one of an older generation is
    /// dropped. One that comes before the work at hand interrupts it: that begins again later, with all that was worked
    /// out for it so far.
    pub fn take(&mut self, request: Request) {
        let line = request.question.wanted.line();
        let newest = self.newest.entry(line).or_default();
        if request.generation < *newest {
            return;
        }
        if request.generation > *newest {
            *newest = request.generation;
            self.waiting.retain(|(_, other, _), _| *other != line);
        }
        self.waiting.insert(rank(&request), request);
    }

    /// Does one chunk of work.
    pub fn turn(&mut self) -> Turn<W::Answer> {
        let Some(first) = self.waiting.first_entry() else {
            self.current = None;
            return Turn::Idle;
        };
        let rank = *first.key();
        if self.current != Some(rank) {
            let Request {
                question, effort, ..
            } = first.get().clone();
            self.work.begin(question, effort);
            self.current = Some(rank);
        }
        let Some(answer) = self.work.step() else {
            return Turn::Busy;
        };
        self.current = None;
        match self.waiting.remove(&rank) {
            Some(request) => Turn::Done {
                id: request.id,
                generation: request.generation,
                effort: request.effort,
                answer,
            },
            None => Turn::Busy,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reckon::Wanted;
    use cook_model::handover::identity::DishId;
    use cook_model::plan::{Plan, Serving, Situation, Zone};
    use cook_model::units::Moment;

    /// Work of three chunks that answers with the number of guests.
    #[derive(Default)]
    struct Counting {
        guests: u32,
        left: u32,
    }

    impl Work for Counting {
        type Answer = u32;

        fn begin(&mut self, question: Question, _: Effort) {
            self.guests = question.plan.guests.grown;
            self.left = 3;
        }

        fn step(&mut self) -> Option<u32> {
            self.left -= 1;
            (self.left == 0).then_some(self.guests)
        }
    }

    fn request(id: u32, generation: u32, effort: Effort) -> Request {
        let serving = Serving {
            local: "2026-09-12T18:00:00".parse().expect("a date and time"),
            zone: "Europe/London".to_owned(),
            offset_seconds: 3600,
        };
        let mut plan = Plan::new(serving);
        plan.guests.grown = generation * 10;
        Request {
            id,
            generation,
            effort,
            question: Question {
                plan,
                situation: Situation::new(Moment::from_unix_seconds(0), Zone::fixed(0)),
                wanted: Wanted::Outlook,
            },
        }
    }

    fn trial(id: u32, generation: u32, effort: Effort) -> Request {
        let mut request = request(id, generation, effort);
        request.question.wanted = Wanted::Trial {
            way: 0,
            dish: DishId::new(1, 1),
            also: None,
        };
        request
    }

    fn answers(desk: &mut Desk<Counting>) -> Vec<(u32, u32)> {
        let mut answers = Vec::new();
        loop {
            match desk.turn() {
                Turn::Idle => return answers,
                Turn::Busy => {}
                Turn::Done { id, answer, .. } => answers.push((id, answer)),
            }
        }
    }

    #[test]
    fn rough_then_full() {
        let mut desk = Desk::new(Counting::default());
        desk.take(request(1, 1, Effort::Rough));
        desk.take(request(2, 1, Effort::Full));
        assert_eq!(answers(&mut desk), [(1, 10), (2, 10)]);
    }

    #[test]
    fn a_newer_question_ends_the_older_at_the_next_chunk() {
        let mut desk = Desk::new(Counting::default());
        desk.take(request(1, 1, Effort::Rough));
        desk.take(request(2, 1, Effort::Full));
        assert_eq!(desk.turn(), Turn::Busy);
        desk.take(request(3, 2, Effort::Rough));
        assert_eq!(answers(&mut desk), [(3, 20)]);
    }

    #[test]
    fn a_late_old_question_is_dropped() {
        let mut desk = Desk::new(Counting::default());
        desk.take(request(2, 2, Effort::Rough));
        desk.take(request(1, 1, Effort::Rough));
        assert_eq!(answers(&mut desk), [(2, 20)]);
    }

    #[test]
    fn somebody_at_a_counter_is_answered_first_and_nothing_else_is_lost() {
        let mut desk = Desk::new(Counting::default());
        desk.take(request(1, 1, Effort::Rough));
        desk.take(request(2, 1, Effort::Full));
        assert_eq!(desk.turn(), Turn::Busy);
        desk.take(trial(3, 2, Effort::Rough));
        desk.take(trial(4, 2, Effort::Full));
        assert_eq!(answers(&mut desk), [(3, 20), (1, 10), (4, 20), (2, 10)]);
    }

    #[test]
    fn a_newer_trial_ends_older_trials_alone() {
        let mut desk = Desk::new(Counting::default());
        desk.take(trial(1, 1, Effort::Rough));
        desk.take(request(2, 1, Effort::Rough));
        assert_eq!(desk.turn(), Turn::Busy);
        desk.take(trial(3, 2, Effort::Rough));
        assert_eq!(answers(&mut desk), [(3, 20), (2, 10)]);
    }
}
