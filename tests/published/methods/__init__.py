"""How each family of published cases is asked of our formulas, one topic a file.

A method takes the case's given quantities in SI and its labels, and returns what it can say, in SI;
a list where the case has one.
"""

import re
from importlib import import_module

from published.cases import Method


def method_for(topic: str, case_id: str) -> Method:
    """The method of a case."""
    methods = import_module(f"published.methods.{topic}").METHODS
    return next(method for pattern, method in methods if re.fullmatch(pattern, case_id))
