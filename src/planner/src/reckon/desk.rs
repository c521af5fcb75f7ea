//! The worker's desk: requests come in at any time, work is done in chunks, and a newer question sweeps the desk clear.

use super::{Effort, Question, Request};
use std::collections::VecDeque;

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
    waiting: VecDeque<Request>,
    current: Option<(u32, u32, Effort)>,
    newest: u32,
}

impl<W: Work> Desk<W> {
    /// An empty desk.
    pub const fn new(work: W) -> Self {
        Self {
            work,
            waiting: VecDeque::new(),
            current: None,
            newest: 0,
        }
    }

    /// Takes a request in. One of a newer generation ends all older ones; one of an older generation is dropped.
    pub fn take(&mut self, request: Request) {
        if request.generation < self.newest {
            return;
        }
        if request.generation > self.newest {
            self.newest = request.generation;
            self.waiting.clear();
            self.current = None;
        }
        self.waiting.push_back(request);
    }

    /// Does one chunk of work.
    pub fn turn(&mut self) -> Turn<W::Answer> {
        let (id, generation, effort) = match self.current {
            Some(current) => current,
            None => {
                let Some(request) = self.waiting.pop_front() else {
                    return Turn::Idle;
                };
                let current = (request.id, request.generation, request.effort);
                self.work.begin(request.question, request.effort);
                self.current = Some(current);
                current
            }
        };
        match self.work.step() {
            None => Turn::Busy,
            Some(answer) => {
                self.current = None;
                Turn::Done {
                    id,
                    generation,
                    effort,
                    answer,
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
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
            },
        }
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
}
