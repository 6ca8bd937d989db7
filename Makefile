# Everything from a fresh clone, with only Python 3.11+, git and make.
PYTHON ?= python3
BIN := .venv/bin
STAMP := .venv/.made-from-lock
# What tests need beside what builds a book, and what reads our code.
TESTS := .venv/.made-for-tests
CHECKS := .venv/.made-for-checks
SOAK := .venv/.made-for-soak
# Python compiles what is imported when it is imported; compiling every file of every library takes longer than fetching them.
INSTALL := $(BIN)/pip install --quiet --disable-pip-version-check --no-compile

# What Python has compiled is kept, whatever the shell says: each of the tests' many processes would compile its libraries anew.
unexport PYTHONDONTWRITEBYTECODE

.PHONY: site test serve check read gallery bench soak walks audit clean

site: $(STAMP)
	$(BIN)/swardbook build

test: $(TESTS) $(CHECKS) read
	$(BIN)/python -m tests.engines.chromium
	$(BIN)/python -m pytest -n 2 --dist loadfile --no-loadscope-reorder

serve: $(STAMP)
	$(BIN)/mkdocs serve --livereload

check: $(STAMP) $(CHECKS) read
	$(BIN)/swardbook check

# What reads our code: slips, types, names that nothing uses.
read: $(CHECKS)
	$(BIN)/ruff check --quiet
	$(BIN)/mypy --no-error-summary
	$(BIN)/vulture

# Every component from its own examples, for those who change them.
gallery: $(TESTS)
	$(BIN)/python -m tests.components.gallery .gallery

bench: $(TESTS)
	$(BIN)/python -m tests.bench.seasons

soak: $(TESTS) $(SOAK)
	$(BIN)/python -m tests.engines.chromium
	$(BIN)/python -m pytest -m soak
	$(BIN)/python -m tests.small_changes

# The readers' walks in a second engine, the distribution's Firefox: from the disk, and from a server on this machine.
walks: site $(TESTS)
	$(BIN)/python -m tests.engines.firefox
	SWARDBOOK_ENGINE=firefox SWARDBOOK_SITE=site $(BIN)/python -m pytest -m walk tests/site
	SWARDBOOK_ENGINE=firefox SWARDBOOK_SITE=site SWARDBOOK_SERVED=yes $(BIN)/python -m pytest -m walk tests/site

# Needs Java and Node, so it stands apart from `make test`.
audit: walks
	tests/audit.sh

clean:
	rm -rf site .gallery .venv *.egg-info

$(STAMP): requirements.lock pyproject.toml
	$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11) and "Swardbook needs Python 3.11 or newer; this is " + sys.version.split()[0])'
	$(PYTHON) -m venv .venv
	$(INSTALL) --require-hashes -r requirements.lock
	$(INSTALL) --no-deps --no-build-isolation -e .
	touch $(STAMP)

$(CHECKS): $(STAMP) requirements-check.lock
	$(INSTALL) --require-hashes -r requirements-check.lock
	touch $(CHECKS)

$(SOAK): $(TESTS) requirements-soak.lock
	$(INSTALL) --require-hashes -r requirements-soak.lock
	touch $(SOAK)

$(TESTS): $(STAMP) requirements-dev.lock
	$(INSTALL) --require-hashes -r requirements-dev.lock
	touch $(TESTS)
