//! The toile judged: published cases, plain faults, signs dropped and added, every fault and parameter reachable, any text at all.

mod advice;
mod any_text;
mod cases;
mod measured;
mod numbers;
mod plain;
mod reach;
mod signs_lost;
mod told;
mod weights;
mod words;
