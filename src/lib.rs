//! Fourcourse: a fully offline helper for jam circles.
