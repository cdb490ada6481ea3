# Each target does everything it needs on a machine that has Python 3.11 with venv, and make.
PYTHON ?= $(shell command -v python3.11 || command -v python3 || echo python3)
HOST ?= 127.0.0.1
PORT ?= 8000
BIN := .venv/bin
DEMO_ENV = DEMO=1 SECRET_KEY="$$(cat .demo/secret)" DATABASE_URL="sqlite:///$(CURDIR)/.demo/show.sqlite3" \
  MEDIA_ROOT="$(CURDIR)/.demo/media" STATIC_ROOT="$(CURDIR)/.demo/static" \
  ALLOWED_HOSTS="$(if $(filter 0.0.0.0 ::,$(HOST)),*,127.0.0.1,localhost,$(HOST))"

.PHONY: demo test lint bench proof clean

demo: .venv/for-running
	@mkdir -p .demo && { [ -s .demo/secret ] || $(BIN)/python -c "import secrets; print(secrets.token_urlsafe(60))" > .demo/secret; }
	@$(DEMO_ENV) $(BIN)/python manage.py prepare
	@$(DEMO_ENV) $(BIN)/python manage.py demo --host "$(HOST)" --port "$(PORT)"
	@$(DEMO_ENV) exec $(BIN)/python manage.py serve --host "$(HOST)" --port "$(PORT)"

test: .venv/for-testing
	@$(BIN)/python -m tests.run

lint: .venv/for-testing
	$(BIN)/ruff check .
	$(BIN)/ruff format --check .
	$(BIN)/mypy
	$(BIN)/lint-imports

bench: .venv/for-testing
	@$(BIN)/python -m tests.bench

proof: .venv/for-testing
	@$(BIN)/python -m tests.proof --share 1

clean:
	rm -rf .venv .demo build

# The stamps say which lock the environment was made from; a changed lock installs again.
.venv/for-running: requirements.lock | .venv/made
	@echo "Installing what the program needs ..."
	@$(BIN)/python -m pip install --quiet --disable-pip-version-check --require-hashes -r requirements.lock
	@touch $@

.venv/for-testing: requirements-dev.lock | .venv/made
	@echo "Installing what the program and its tests need ..."
	@$(BIN)/python -m pip install --quiet --disable-pip-version-check --require-hashes -r requirements-dev.lock
	@touch $@ .venv/for-running

.venv/made:
	@$(PYTHON) -c "import sys; sys.exit(sys.version_info < (3, 11))" 2>/dev/null || \
	  { echo "Python 3.11 or newer is needed. Install it, or name it: make PYTHON=/path/to/python3.11 $(MAKECMDGOALS)"; exit 1; }
	@$(PYTHON) -c "import venv, ensurepip" 2>/dev/null || \
	  { echo "Python's venv module is missing. On Debian and Ubuntu: apt install python3-venv"; exit 1; }
	@$(PYTHON) -m venv .venv
	@touch $@
