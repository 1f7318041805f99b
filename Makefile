# Two commands on a fresh machine with python3.11+, pip and make:
#   make run    sets out the demo roof and says where the sheet is
#   make test   runs the tests
# Each makes the environment it needs first.

PYTHON ?= python3
RUN_ENV := .venv-run
ENV := .venv
RUN_BIN := $(RUN_ENV)/bin
BIN := $(ENV)/bin
OUT ?= build/demo

.PHONY: run test test-slow check lint types imports wasm format bench docs locks clean

run: $(RUN_ENV)/.ready
	@$(RUN_BIN)/gaugerod demo --out $(OUT)

test: $(ENV)/.ready
	$(BIN)/pytest -n auto

test-slow: $(ENV)/.ready
	$(BIN)/pytest -n auto --dist worksteal -m "slow or not slow" --durations=15

check: lint types imports wasm test-slow

lint: $(ENV)/.ready
	$(BIN)/ruff check .
	$(BIN)/ruff format --check .

types: $(ENV)/.ready
	$(BIN)/mypy

imports: $(ENV)/.ready
	$(BIN)/lint-imports

# The engine's tests under WebAssembly Python, in Node: what a browser would run. Needs node and npm.
wasm: $(ENV)/.ready tools/wasm/node_modules/.ready
	node tools/wasm/run_tests.mjs "$$($(BIN)/python -c 'import sysconfig; print(sysconfig.get_path("purelib"))')"

tools/wasm/node_modules/.ready: tools/wasm/package-lock.json
	cd tools/wasm && npm ci --silent
	@touch $@

format: $(ENV)/.ready
	$(BIN)/ruff format .
	$(BIN)/ruff check --fix .

bench: $(ENV)/.ready
	$(BIN)/python -m benchmarks

# Re-writes what is generated: the job schema, the reference pages and the pictures in docs/.
docs: $(ENV)/.ready
	$(BIN)/python -m tools.generate

# The maintainer's tool: needs uv on the path. No host name and no path of a machine enters the locks.
UV_COMPILE := uv pip compile --universal --python-version 3.11 --generate-hashes --no-header --no-emit-index-url --no-annotate -q
locks:
	$(UV_COMPILE) --extra app --extra order --group build pyproject.toml -o requirements.txt
	$(UV_COMPILE) --extra app --extra dxf --extra order --group build --group dev pyproject.toml -c requirements.txt -o requirements-dev.txt

clean:
	rm -rf build tools/wasm/node_modules $(RUN_ENV) $(ENV) .pytest_cache .mypy_cache .ruff_cache .hypothesis

$(RUN_ENV)/.ready: requirements.txt pyproject.toml
	$(PYTHON) -m venv $(RUN_ENV)
	$(RUN_BIN)/pip install --quiet --disable-pip-version-check --require-hashes -r requirements.txt
	$(RUN_BIN)/pip install --quiet --disable-pip-version-check --no-deps --no-build-isolation -e .
	@touch $@

$(ENV)/.ready: requirements-dev.txt pyproject.toml
	$(PYTHON) -m venv $(ENV)
	$(BIN)/pip install --quiet --disable-pip-version-check --require-hashes -r requirements-dev.txt
	$(BIN)/pip install --quiet --disable-pip-version-check --no-deps --no-build-isolation -e .
	@touch $@
