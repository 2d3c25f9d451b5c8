#!/bin/sh
# venv.sh PYTHON: makes .venv, or says in one sentence what is missing.
set -eu
if ! "$1" -c 'import sys; sys.exit(sys.version_info < (3, 11))' 2> /dev/null; then
  found=$("$1" --version 2> /dev/null || echo "not found")
  echo "lightoff needs Python 3.11 or newer, and '$1' is $found: name another, as in 'make run PYTHON=python3.12'." >&2
  exit 1
fi
# Debian ships Python without it
"$1" -c 'import ensurepip' 2> /dev/null ||
  scripts/apt.sh "$("$1" -c 'import sys; print("python%d.%d-venv" % sys.version_info[:2])')" \
    "Python cannot make a virtual environment here"
"$1" -m venv .venv
