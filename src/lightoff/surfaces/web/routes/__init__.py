"""Routes by noun: each reads a request, calls the record or a pure function, shows a page."""
