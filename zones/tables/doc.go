// Package tables reads tables of the trade, which are CSV under a head: those
// that are part of the program, with what each row rests on, and those that users
// give in place of them.
package tables
