//! Nothing that comes in from outside makes the app panic, hang or lose its own rules.

mod chart;
