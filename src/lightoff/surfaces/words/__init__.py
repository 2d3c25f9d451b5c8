"""Words: the one catalogue of sentences, and how a reader is spoken to."""

from lightoff.surfaces.words.catalogue import catalogue, has
from lightoff.surfaces.words.speech import Speech, resolution_of

__all__ = ["Speech", "catalogue", "has", "resolution_of"]
