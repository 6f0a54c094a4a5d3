//! formulas
