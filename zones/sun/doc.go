// Package sun says how many hours of direct sun each part of a lawn gets.
package sun
