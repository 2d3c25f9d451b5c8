"""The forward model: what every point of a machine would show, its unknowns being as they are."""
