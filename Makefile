# The targets a person types carry a "##" line; the rest are steps, each with a stamp, so that
# nothing is set up twice.
SHELL := bash
.SHELLFLAGS := -euo pipefail -c
.DEFAULT_GOAL := help
.DELETE_ON_ERROR:
.NOTPARALLEL: # pip would install twice into one place
.PHONY: help run test check prove bench reference lock clean chromium

PYTHON ?= python3
BIN := .venv/bin
VENDOR := src/lightoff/surfaces/web/static/vendor
# the last file that assets.py writes
ASSETS := $(VENDOR)/fonts/lightoff-sans-700.woff2
SEAM := web-assets/node_modules/.dev build/wheels/.made
PIP := $(BIN)/python -m pip --quiet --disable-pip-version-check
export PATH := $(CURDIR)/$(BIN):$(PATH)

help:
	@sed -En 's/^([a-z]+):.*## (.*)/make \1\t\2/p' Makefile | expand -t 12

run: .venv/.run $(ASSETS) ## set up what is missing, then open the workbench with the example jobs
	@$(BIN)/lightoff serve --examples

test: check $(ASSETS) $(SEAM) chromium ## check the code, then run all tests
	@$(BIN)/pytest --numprocesses auto --maxprocesses 4 --dist loadfile

check: .venv/.test ## formatting, lint, types and who may import whom
	@$(BIN)/ruff check --quiet
	@$(BIN)/ruff format --check --quiet
	@$(BIN)/mypy --no-error-summary
	@told=$$($(BIN)/lint-imports 2>&1) || { echo "$$told"; exit 1; }

prove: .venv/.test $(ASSETS) $(SEAM) chromium ## the long proofs, kept in docs/proof
	@mkdir -p docs/proof
	@{ echo "commit $$(git describe --always --dirty), $$(date -u +%F), $$($(BIN)/python --version)"; \
	   $(BIN)/pytest -m prove -vv --no-header --durations=0; } | tee docs/proof/log.txt

bench: .venv/.test ## one ratio against a named rival from each script in bench
	@for script in $(sort $(wildcard bench/*.py)); do $(BIN)/python $$script; done

reference: .venv/.test ## write docs/reference again, from the formulas and calculations
	@$(BIN)/python scripts/reference.py

lock: .venv/.run .venv/.node ## pin the newest releases again, in requirements and web-assets
	@$(BIN)/python scripts/lock.py
	@npm --prefix web-assets update --package-lock-only > /dev/null

clean: ## back to a fresh clone (the record in var stays)
	@rm -rf .venv build dist $(VENDOR) web-assets/node_modules .*_cache .coverage .hypothesis

.venv/.made:
	@scripts/venv.sh $(PYTHON)
	@touch $@

.venv/.run: requirements/run.txt pyproject.toml | .venv/.made
	@echo "Installing lightoff into .venv ..."
	@$(PIP) install -r requirements/run.txt
	@$(PIP) install --no-deps --editable .
	@touch $@

.venv/.test: requirements/test.txt | .venv/.run
	@echo "Installing what tests and checks need ..."
	@$(PIP) install -r requirements/test.txt
	@touch $@

# npm answers only where node works too
.venv/.node: requirements/node.txt | .venv/.made
	@npm --version > /dev/null 2>&1 || { echo "Installing Node.js into .venv ..."; $(PIP) install -r requirements/node.txt; }
	@touch $@

$(ASSETS): web-assets/package-lock.json requirements/assets.txt scripts/assets.py | .venv/.node
	@echo "Building the page's scripts and fonts ..."
	@$(PIP) install -r requirements/assets.txt
	@npm --prefix web-assets ci --omit=dev > /dev/null
	@$(BIN)/python scripts/assets.py

# after the page's own install, which would remove these again
web-assets/node_modules/.dev: $(ASSETS)
	@echo "Installing Pyodide and axe ..."
	@npm --prefix web-assets ci > /dev/null
	@touch $@

# the browser's Python is 3.14; its platform tag belongs to Pyodide 314
build/wheels/.made: requirements/run.txt | .venv/.made
	@echo "Fetching the browser's wheels ..."
	@rm -rf build/wheels
	@$(PIP) download --only-binary :all: --implementation cp --python-version 3.14 --abi cp314 \
	  --platform pyemscripten_2026_0_wasm32 --dest build/wheels --constraint requirements/run.txt pydantic
	@touch $@

chromium:
	@command -v chromium > /dev/null || scripts/apt.sh chromium "The page tests need a browser"
