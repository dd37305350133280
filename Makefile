# Everyday commands. CI runs .ci/run, which calls the same ones.

GO ?= go
PEERS ?= ../shared/peers

.PHONY: build test lint fuzz golden crosscheck bench

build: ; $(GO) build -o turfplat ./cmd/turfplat

test: ; $(GO) test ./...

lint:
	@test -z "$$(gofmt -l .)" || { gofmt -l .; exit 1; }
	$(GO) vet ./...
	$(GO) tool staticcheck ./...

# a short run of every fuzz target; FUZZTIME=10m for a long one
FUZZTIME ?= 10s
fuzz: ; .ci/fuzz $(FUZZTIME)

# rewrite expected outputs and pictures; look at the difference before committing
golden:
	$(GO) test ./cmd/turfplat ./render -update

# areas of 1,000 generated properties against general reference software,
# cover by cover, within 1e-4 m2; needs g++, rapidjson, GEOS, PROJ and Clipper
crosscheck: build
	cd $(PEERS) && $(GO) run ./gen -n 1000 -seed 20261124 > $(CURDIR)/crosscheck.ndjson
	$(PEERS)/compare -runs 1 -limit 1e-3 -skip postgis,shapely crosscheck.ndjson ./turfplat
	rm crosscheck.ndjson

bench: ; $(GO) test -run '^$$' -bench . -benchmem ./...
