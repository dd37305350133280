package geo

import (
	"cmp"
	"slices"
)

// Union returns the ground that is in any of the regions.
func Union(regions ...Region) (Region, error) {
	if len(regions) == 1 {
		return regions[0], nil
	}
	groups := clusters(regions)
	var polygons []Polygon
	for _, g := range groups {
		u, err := unionOfCluster(g)
		if err != nil {
			return Region{}, err
		}
		polygons = append(polygons, u.polygons...)
	}
	return regionOf(polygons), nil
}

func unionOfCluster(regions []Region) (Region, error) {
	if len(regions) == 1 {
		return regions[0], nil
	}
	o, err := Lay(regions...)
	if err != nil {
		return Region{}, err
	}
	defer o.Release()
	return o.Ground(func([]int) bool { return true }), nil
}

// clusters groups the regions whose bounds meet, directly or through others.
func clusters(regions []Region) [][]Region {
	var order []int // from west to east
	for i, r := range regions {
		if !r.Empty() {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(regions[i].bounds.Min.X, regions[j].bounds.Min.X) })

	head := make([]int, len(regions)) // towards the first of a cluster
	first := func(i int) int {
		for head[i] != i {
			head[i] = head[head[i]]
			i = head[i]
		}
		return i
	}
	var open []int
	for _, i := range order {
		head[i] = i
		b := regions[i].bounds
		open = slices.DeleteFunc(open, func(j int) bool { return regions[j].bounds.Max.X < b.Min.X })
		for _, j := range open {
			if regions[j].bounds.Meets(b) {
				f, g := first(i), first(j)
				head[max(f, g)] = min(f, g)
			}
		}
		open = append(open, i)
	}
	return gathered(regions, first)
}

// gathered returns the regions that are not empty by the first of their
// cluster.
func gathered(regions []Region, first func(int) int) [][]Region {
	var groups [][]Region
	group := make(map[int]int)
	for i, r := range regions {
		if r.Empty() {
			continue
		}
		k, known := group[first(i)]
		if !known {
			k = len(groups)
			group[first(i)] = k
			groups = append(groups, nil)
		}
		groups[k] = append(groups[k], r)
	}
	return groups
}

// Difference returns the ground of a that is not in b.
func Difference(a, b Region) (Region, error) {
	b, _ = b.partedBy(a)
	if a.Empty() || b.Empty() {
		return a, nil
	}
	if r, ok := pierced(a, b); ok {
		return r, nil
	}
	met, clear := a.partedBy(b)
	o, err := Lay(met, b)
	if err != nil {
		return Region{}, err
	}
	defer o.Release()
	out := o.Ground(func(holders []int) bool { return len(holders) == 1 && holders[0] == 0 })
	return regionOf(append(out.polygons, clear.polygons...)), nil
}

// Intersection returns the ground that is in both regions.
func Intersection(a, b Region) (Region, error) {
	a, _ = a.partedBy(b)
	b, _ = b.partedBy(a)
	switch {
	case a.Empty() || b.Empty():
		return Region{}, nil
	case within(a, b):
		return a, nil
	case within(b, a):
		return b, nil
	}
	o, err := Lay(a, b)
	if err != nil {
		return Region{}, err
	}
	defer o.Release()
	return o.Ground(func(holders []int) bool { return len(holders) == 2 }), nil
}

// partedBy returns the pieces of r whose bounds meet those of o, and the
// others.
func (r Region) partedBy(o Region) (met, clear Region) {
	for _, p := range r.polygons {
		b, side := p.Shell.bounds(), &clear
		if b.Meets(o.Bounds()) {
			side = &met
		}
		side.bounds = b.Union(side.Bounds())
		side.polygons = append(side.polygons, p)
	}
	return met, clear
}
