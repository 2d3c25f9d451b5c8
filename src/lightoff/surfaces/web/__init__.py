"""The web: pages for people and the same questions for programs, on this machine only."""

from lightoff.surfaces.web.app import create_app

__all__ = ["create_app"]
