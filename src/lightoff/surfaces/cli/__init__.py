"""The terminal: data on stdout, talk on stderr; exit 0 whatever is decided, 2 for bad input."""
