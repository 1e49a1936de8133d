# make serve   the site on this machine, reloaded as files change
# make check   everything that is wrong with the library, and every proof
# make card    a bench card of the mouthparts key
# make test    all tests (installs Debian's chromium when it may)
# make test-quick   what is told in under a minute: no browser, no whole builds
# make lint    formatter, lint and types, and the site's scripts

PYTHON ?= python3
VENV := .venv
RUN := $(VENV)/bin

.PHONY: serve check card site test test-quick lint bench lighthouse screenshot clean chromium

serve: $(VENV)/.installed
	$(RUN)/wetmount serve

check: $(VENV)/.installed
	$(RUN)/wetmount check

card: $(VENV)/.installed
	$(RUN)/wetmount card --key nematode-mouthparts --paper A4 -o card.pdf

site: $(VENV)/.installed
	$(RUN)/wetmount site --cards

test: $(VENV)/.installed-test chromium
	$(RUN)/python -m pytest -n 2 --dist worksteal

test-quick: $(VENV)/.installed-test
	$(RUN)/python -m pytest -n 2 --dist worksteal -m "not browser and not whole"

lint: $(VENV)/.installed-test
	$(RUN)/ruff check keytool tests benchmarks
	$(RUN)/ruff format --check --quiet keytool tests benchmarks
	$(RUN)/mypy keytool
	$(RUN)/python -m tests.check_scripts

screenshot: site $(VENV)/.installed-test
	$(RUN)/python site/screenshot.py

bench: $(VENV)/.installed-test
	$(RUN)/python benchmarks/run.py
	$(RUN)/python benchmarks/live_field.py
	$(RUN)/python benchmarks/identify.py
	$(RUN)/python benchmarks/answer_time.py

lighthouse: site $(VENV)/.installed-test
	$(RUN)/python benchmarks/lighthouse.py

$(VENV)/.installed: pyproject.toml
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' || \
		{ echo "wetmount needs Python 3.11 or newer; this is $$($(PYTHON) --version)."; exit 1; }
	@$(PYTHON) -c 'import ensurepip, venv' 2>/dev/null || \
		{ echo "Python's venv module is missing. On Debian or Ubuntu:  apt-get install python3-venv"; exit 1; }
	$(PYTHON) -m venv $(VENV)
	$(RUN)/python -m pip install --quiet --editable .
	touch $@

$(VENV)/.installed-test: $(VENV)/.installed pyproject.toml
	$(RUN)/python -m pip install --quiet --editable '.[test]'
	touch $@

# The browser tests drive Debian's chromium. Without it they are skipped by name, or fail when CI=true.
chromium:
	@if command -v chromium >/dev/null; then :; \
	elif [ "$$(id -u)" = 0 ] && command -v apt-get >/dev/null; then \
		apt-get update -qq && apt-get install -y -qq --no-install-recommends chromium >/dev/null; \
	else echo "No chromium: the browser tests are skipped. On Debian:  apt-get install chromium"; fi

clean:
	rm -rf build dist $(VENV)
