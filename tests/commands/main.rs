//! The command line as dialogues: what is typed, what is printed, what is written, how it ends.

mod blocks;
mod cloth;
mod compare;
mod dialogue;
mod draft;
mod fit;
mod lesson;
mod readme;
mod refusals;
mod shell;
mod streams;
mod toile;
mod written;
