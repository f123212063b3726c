# The project's scripts. Everything that is built lands in build/ and site/wasm/,
# both of which git ignores. `make` alone lists the targets.

SHELL := /bin/bash
.SHELLFLAGS := -euo pipefail -c
.NOTPARALLEL:
.PHONY: help run test check bench site golden browsers contact-sheet sample-sheet papers-preview soak race vuln audit screens modules blockfield chromium test-cut test-wasm test-native clean

ADDR ?= 127.0.0.1:8080
PAPER ?= A4
SETTINGS ?=
FUZZ_TIME ?= 60s
MONKEY_TIME ?= 30m
# With -trimpath everywhere, vet, tests and modules share what was compiled.
JS := GOOS=js GOARCH=wasm GOFLAGS=-trimpath
# What runs in a browser; the command does not.
IN_BROWSER := ./engine/... ./wasm/...
GOROOT := $(shell go env GOROOT)
# Without inlining a module is a ninth smaller to send, and no slower but for what
# computes long: the engine's kernels and what they rest on keep it, the preview runs on
# the graphics card.
KERNELS := runtime internal/runtime/... cmp math/... blockfield/engine/cut blockfield/engine/sound/... blockfield/engine/scene
SMALL := -trimpath -ldflags='-s -w'

help: ## list the targets
	@grep -hE '^[a-z-]+:.*## ' $(MAKEFILE_LIST) | sed -E 's/:[^#]*## /\t/' | expand -t 16

run: blockfield ## build everything and serve the page (ADDR=127.0.0.1:8080 SETTINGS=site.json)
	@exec build/blockfield serve -addr $(ADDR) $(if $(SETTINGS),-settings $(SETTINGS))

test: check chromium test-cut test-wasm test-native ## check, then every test: native, as WebAssembly, in the browser

check: ## format, vet and staticcheck (native and WebAssembly), direction of imports
	@unformatted="$$(gofmt -l cmd engine site testdata wasm)"; \
	if [ -n "$$unformatted" ]; then echo "not formatted (run gofmt -w):"; echo "$$unformatted"; exit 1; fi
	go vet ./...
	$(JS) go vet $(IN_BROWSER)
	go tool staticcheck ./...
	$(JS) $$(go tool -n staticcheck) $(IN_BROWSER)
	go test -run '^TestImports' ./cmd/blockfield

# The published problems take a third of a minute, so they run once, here.
test-cut: ## published cutting problems, from the folder that BLOCKFIELD_CUT_INSTANCES names
	go test -v -run '^TestBenchmarkInstances$$' ./engine/cut | grep -vE '^ *(=== |--- PASS)'

test-native: ## unit tests and browser tests
	env -u BLOCKFIELD_CUT_INSTANCES go test -vet=off -timeout 60m ./...

# Node only runs the module; the tests are the same as in test-native.
test-wasm: ## the engine's tests as WebAssembly, under Node
	@if command -v node >/dev/null; then \
		echo "$(JS) go test ./engine/..."; \
		env -u BLOCKFIELD_CUT_INSTANCES $(JS) go test -vet=off -exec='$(GOROOT)/lib/wasm/go_js_wasm_exec' ./engine/...; \
	else \
		echo "NOT RUN: the engine's tests as WebAssembly. They need Node: apt-get install nodejs"; \
	fi

chromium: ## install Chromium and pdftotext for the browser tests where they are missing
	@if command -v chromium >/dev/null && command -v pdftotext >/dev/null; then exit 0; fi; \
	if [ "$$(id -u)" = 0 ]; then as=; elif sudo -n true 2>/dev/null; then as="sudo -n"; else \
		echo "The browser tests need Chromium and pdftotext. Install them with: sudo apt-get install chromium poppler-utils" >&2; exit 1; \
	fi; \
	echo "Chromium or pdftotext is missing: installing them from Debian's packages"; \
	$$as env DEBIAN_FRONTEND=noninteractive apt-get update -q; \
	$$as env DEBIAN_FRONTEND=noninteractive apt-get install -q -y --no-install-recommends chromium poppler-utils

bench: ## every benchmark
	go test -run '^$$' -bench . -benchmem ./...

golden: ## write the golden files anew; read the difference before you commit it
	go test $$(grep -rl --include='*_test.go' 'flag.Bool("update"' ./cmd ./engine ./wasm | xargs dirname | sort -u) -update

contact-sheet: ## pictures of every wood, view and scenario to look at, in build/contact-sheet
	go test -count=1 -run '^TestContactSheet$$' ./cmd/blockfield -sheet '$(CURDIR)/build/contact-sheet'

browsers: ## the page in Firefox and WebKit (apt-get install firefox-esr webkit2gtk-driver xvfb)
	xvfb-run -a -s '-screen 0 1440x1000x24' go test -count=1 -v -timeout 20m -run '^TestOtherBrowsers$$' ./cmd/blockfield -browsers

sample-sheet: ## every part of the page in its states, light and dark, in build/sample-sheet
	go test -count=1 -timeout 60m -run '^TestSampleSheet$$' ./cmd/blockfield -sample '$(CURDIR)/build/sample-sheet'

papers-preview: blockfield ## the papers of three jobs as pages to look at, in build/papers (PAPER=A4; needs Chromium and pdftoppm)
	@command -v pdftoppm >/dev/null || { echo "pdftoppm is missing: apt-get install poppler-utils" >&2; exit 1; }
	@rm -rf build/papers
	@for job in s2 s5 s8; do \
		out=build/papers/$$job; \
		build/blockfield papers testdata/scenarios/$$job.json -paper $(PAPER) -site https://blocks.example/ -o $$out; \
		for set in $$out/*.html; do \
			chromium --headless --no-sandbox --disable-gpu --no-pdf-header-footer --print-to-pdf=$${set%.html}.pdf "file://$$PWD/$$set" 2>/dev/null; \
			pdftoppm -r 80 -png $${set%.html}.pdf $${set%.html}; \
		done; \
	done; ls build/papers/*/*.png | wc -l

soak: race ## race detector, every set of three jobs printed, a monkey at the page for MONKEY_TIME, then each fuzz target for FUZZ_TIME
	go test -run '^TestSetsPrint$$' -timeout 30m ./cmd/blockfield -all-prints
	go test -v -count=1 -run '^TestMonkey$$' -timeout 0 ./cmd/blockfield -monkey $(MONKEY_TIME)
	grep -rHo --include='*_test.go' 'func Fuzz[A-Za-z0-9_]*' engine cmd wasm | sort | \
	while IFS=: read -r file target; do \
		go test -run '^$$' -fuzz "^$${target#func }$$" -fuzztime $(FUZZ_TIME) -fuzzminimizetime 10x "./$$(dirname "$$file")" </dev/null; \
	done

race: ## unit tests under the race detector
	go test -race ./engine/... ./cmd/blockfield/cli ./cmd/blockfield/web

# What the audit measures with, of the npm registry, with fixed versions: the newest
# Lighthouse wants a newer Node than Debian has.
AUDIT_TOOLS := axe-core@4.14.1 vnu-jar@26.9.27 lighthouse@12.8.2
AUDIT ?=

audit: site chromium ## measure the built page and write testdata/audit/report.md (AUDIT=/axe for one chapter; needs Node, Java, the npm registry)
	@mkdir -p build/audit testdata/audit
	@[ "$$(cat build/audit/tools.txt 2>/dev/null)" = "$(AUDIT_TOOLS)" ] || { \
		npm install --prefix build/audit --no-save --no-audit --no-fund --ignore-scripts $(AUDIT_TOOLS); \
		echo "$(AUDIT_TOOLS)" >build/audit/tools.txt; }
	go test -count=1 -timeout 90m -run '^TestAudit$$$(AUDIT)' ./cmd/blockfield -audit '$(CURDIR)/build/audit' \
		-audit-site '$(CURDIR)/build/site' -audit-report '$(CURDIR)/testdata/audit/report.md'

screens: ## pictures of every section, reading, size and scheme to look at, in build/screens (SCREENS_LANGUAGE=de for German)
	go test -count=1 -timeout 60m -run '^TestScreens$$' ./cmd/blockfield -screens '$(CURDIR)/build/screens' -screens-language $(or $(SCREENS_LANGUAGE),en)

# Outside of CI: it needs the vulnerability database of the Go project, at its own
# address or at the one that GOVULNDB names.
vuln: ## known vulnerabilities in what command and page use (needs the vulnerability database)
	@GOBIN='$(CURDIR)/build/tools' go install golang.org/x/vuln/cmd/govulncheck@v1.9.0
	@for as in '' '$(JS)'; do \
		env $$as build/tools/govulncheck $$([ -z "$$as" ] && echo ./... || echo $(IN_BROWSER)) 2>&1 | tee build/vuln.txt || { \
			if grep -q 'fetching vulnerabilities' build/vuln.txt; then \
				echo "NOT CHECKED: the vulnerability database cannot be reached from here. Nothing is known of vulnerabilities." >&2; \
			fi; exit 1; }; \
	done

site: modules ## the static site in build/site, compressed as far as it goes (SETTINGS=site.json)
	go build -tags site $(SMALL) -o build/blockfield ./cmd/blockfield
	build/blockfield build -brotli 11 -o build/site $(if $(SETTINGS),-settings $(SETTINGS))

blockfield: modules ## the command, with the page in it, as build/blockfield
	go build -tags site $(SMALL) -o build/blockfield ./cmd/blockfield

modules: ## the two WebAssembly modules, into site/wasm
	@mkdir -p site/wasm
	$(JS) go build $(SMALL) -gcflags=all=-l $(KERNELS:%=-gcflags=%=) -o site/wasm/engine.wasm ./wasm/engine
	$(JS) go build $(SMALL) -gcflags=all=-l -o site/wasm/preview.wasm ./wasm/preview
	cp '$(GOROOT)/lib/wasm/wasm_exec.js' site/wasm/wasm_exec.js

clean: ## remove what was built
	rm -rf build site/wasm
