// Package material says how much of what goes on turf: quantities with their
// units, rates and what is in a product, amounts on zones, packs and tanks,
// and the settings of spreaders.
//
// Start with [Parse], which reads a quantity as people write it. A [Product]
// turns the rate of what is in it into a rate of itself ([Product.Rate]),
// [Spread] lays that on zones, [Buy] sums up and chooses packs.
//
// Inside, weights are kilograms, volumes cubic metres, lengths metres, areas
// square metres and temperatures degrees Celsius. Factors of units are exact;
// results are good to 1e-12 of themselves, rounded only for people
// ([Figures]). Gallons, quarts, pints and fluid ounces are those of the United
// States unless written "imp gal" and so on, whatever units a site is shown
// in; an ounce (oz) is a weight, a fluid ounce (fl oz) a volume; a ton is
// 2,000 lb, a tonne (t) 1,000 kg.
//
// No rate is built in. Where a label speaks, the label is the law.
package material
