//! properties
