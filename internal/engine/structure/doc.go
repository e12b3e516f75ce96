// Package structure says what a weave is: its repeat, its floats, whether it hangs
// together, whether its edges are caught, what handbooks call it, and what of that a
// weaver should know. It gives figures and what they are of; the words are package
// present's.
//
// All that it counts it counts by classes: threads that do the same are looked at
// once. A weave of few lifts is then judged about as fast as its rows can be
// compared, and one in which all threads differ in a time that grows with the words
// of 64 crossings it is held in.
package structure
