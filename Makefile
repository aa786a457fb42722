# Two cores and a bare Debian are enough: scripts/need.sh finds or installs what is missing.

NEED := ./scripts/need.sh

.PHONY: help build demo text test check bench fuzz pictures torture release bare live

help: ## this list
	@sed -n 's/^\([a-z]*\):.*## */\1|/p' Makefile | awk -F'|' '{printf "  make %-8s  %s\n", $$1, $$2}'

build: ## build bin/intake-bot
	@$(NEED) go -- ./scripts/build.sh

demo: ## five customers write to the demo shop, on a private Postgres; ONCE=1 checks the leads and ends
	@$(NEED) go postgres -- ./scripts/build.sh
	@$(NEED) postgres -- ./bin/intake-bot demo

text: ## text the running demo from here: make text SAY="my skylight is cracked" [FROM=+12185550160]
	@./bin/intake-bot text --from "$(or $(FROM),+12185550160)" -- "$$SAY"

test: ## all tests, with real Postgres, mail servers and browser
	@$(NEED) go postgres gcc chromium axe dovecot opensmtpd caddy nginx shellcheck systemd prometheus strace -- ./scripts/test.sh

torture: ## kill the bot 500 times and break all it stands on, under made-up customers; KILLS=, SEED=, CUSTOMERS=; an hour
	@$(NEED) go postgres -- env TORTURE=1 go test -tags nodynamic -count=1 -v -timeout 8h ./internal/torture

check: ## format, vet, staticcheck, shell scripts, generated files current
	@$(NEED) go -- ./scripts/check.sh

bench: ## benchmarks; ends with one line a figure: ratio NAME VALUE goal >= VALUE
	@$(NEED) go postgres -- ./scripts/bench.sh

pictures: ## take the pictures of the staff's page anew that docs/pictures keeps
	@$(NEED) go postgres chromium axe -- ./scripts/pictures.sh

fuzz: ## every fuzz target for FUZZTIME (20s)
	@$(NEED) go -- ./scripts/fuzz.sh

release: ## programs for Linux and macOS in dist/, built twice and compared, with checksums and bills of materials
	@$(NEED) go -- ./scripts/release.sh

live: ## docs/going-live.md on a Debian of its own in which systemd runs; keeps docs/live-debian.log
	@./scripts/live.sh

bare: ## both README commands on a bare Debian, made by debootstrap, as root and as anybody; long, keeps docs/bare-debian.log
	@./scripts/bare.sh
