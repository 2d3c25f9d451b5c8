"""Surfaces: each reads a request, calls the pure functions, renders the answer."""
