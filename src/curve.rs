//! What kurbo lacks for pattern work.
