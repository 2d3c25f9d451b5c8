"""Formulas of the trade: one topic a file, plain arithmetic on floats or arrays, SI, sourced."""
