"""Contexts: what each page shows, as frozen data made by pure functions; templates only print."""
