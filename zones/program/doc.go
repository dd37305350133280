// Package program plans the season on a property's zones: which steps, where,
// when, how much of what, and what must not meet.
//
// [Read] reads a program file, [BuiltIn] gives the programs that come with
// turfplat, and [Program.Plan] lays one on zones: each step gets its dates, its
// zones, its amounts and a status with the reasons for it. A soil temperature
// log moves dates that hang on the soil.
//
// Nothing here knows what day it is: a plan depends on the program, the zones,
// the log and the day that the caller names. Figures of the trade and of law
// are rows of tables, each with its source. No rate of a pesticide is built in:
// those come from the label, which is the law. A plan is an aid; label, local
// rules and the advice of an extension service come first.
package program
