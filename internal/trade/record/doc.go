// Package record holds what a weaver's book keeps, as values: documents with their
// versions, events, the plan that was frozen when work began, settings; and what can
// be wrong with the book itself. Pure values: it reads no file and asks no clock.
package record
