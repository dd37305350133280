# Everyday commands. CI runs .ci/run, which calls the same ones.

GO ?= go
PEERS ?= ../shared/peers

.PHONY: build test lint fuzz golden crosscheck peers bench yards bench-parcels bench-stream

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
	$(GO) run ./cmd/turfplat map samples/alder-lane.geojson -o samples/alder-lane-map.png
	$(GO) run ./cmd/turfplat map --program samples/alder-lane-season.yaml --on 2026-05-04 --swath 10ft --step spring-feed samples/alder-lane.geojson -o golden.png
	mv golden-*-spring-feed.png samples/alder-lane-step.png
	mv golden-*-season.png samples/alder-lane-season.png
	rm golden-*.png
	$(GO) test ./cmd/turfplat ./render ./zones/lanes -update

# Areas of 1,000 generated properties against general reference software, cover
# by cover: the table's column "sites over 0.0001 m2" must read 0 for turfplat.
# The feed in columns is read by another engine. Needs g++, rapidjson, GEOS, PROJ and Clipper; map extracts need osmium-tool
# and gdal-bin; node, npm, python3-shapely and python3-pyproj.
crosscheck: build
	$(GO) test ./geo/ingest -run TestOSMCrosscheck -v
	cd $(PEERS) && $(GO) run ./gen -n 1000 -seed 20261124 > $(CURDIR)/crosscheck.ndjson
	$(PEERS)/compare -runs 1 -limit 1e-3 -skip postgis,shapely crosscheck.ndjson ./turfplat
	.ci/columns ./turfplat crosscheck.ndjson
	rm crosscheck.ndjson

# CPU time, memory and areas of N generated properties beside the pipelines of
# general reference software, in one run; needs PostGIS and Shapely as well.
N ?= 10000
peers: build
	cd $(PEERS) && $(GO) run ./gen -n $(N) -seed 20261124 > $(CURDIR)/peers.ndjson
	$(PEERS)/compare -runs 3 peers.ndjson ./turfplat
	rm peers.ndjson

COUNT ?= 1
# Of one change against another: go install golang.org/x/perf/cmd/benchstat,
# make bench COUNT=8 > old.txt, change, the same to new.txt, benchstat old.txt new.txt.
bench: ; $(GO) test -run '^$$' -bench . -benchmem -count $(COUNT) ./...

# Zones by sun, of exposure and of grass, on 1,000 generated properties: they add
# up to the turf, are written, read back and zoned again.
yards: ; $(GO) test ./zones -run 'TestZonesBy(Sun|Grass)' -timeout 30m -count=1 -v -yards 1000

# A site for each of 10,000 parcels of an invented town: time and memory of the
# whole program. Needs GNU time.
TOWN ?= $(CURDIR)/town
bench-parcels: build
	mkdir -p $(TOWN)
	$(GO) test -run '^$$' -bench Parcels -benchtime 1x ./cmd/turfplat -town $(TOWN)
	cd $(TOWN) && /usr/bin/time -v $(CURDIR)/turfplat survey --parcels parcels.geojson town.osm -o sites.ndjson

# Sites as lines, ten times as many each time: memory must stay flat and time
# grow with the sites. Needs GNU time. STREAM="10000 100000 1000000" for more.
STREAM ?= 10000 100000
bench-stream: build
	@for n in $(STREAM); do \
	  (cd $(PEERS) && $(GO) run ./gen -n $$n -seed 20261124) > stream.ndjson; \
	  for run in "measure --json" "feed --format parquet"; do \
	    /usr/bin/time -f "$$n sites, $$run: %U s user, %S s system, %e s in all, peak %M kB" ./turfplat $$run --lines --quiet stream.ndjson -o stream.out || exit 1; \
	  done; \
	done; rm -f stream.ndjson stream.out
