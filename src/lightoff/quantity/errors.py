"""The root of every error that carries a sentence for a person."""


class LightoffError(ValueError):
    """Something a person declared or typed cannot be used; `str()` is one clear sentence."""


class QuantityError(LightoffError):
    """A text is not the quantity that was due."""
