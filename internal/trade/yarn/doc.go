// Package yarn holds the nouns of yarn: what a count says, how a skein and
// wraps measure it, how thick it is, what it is made of, how it is put up and
// what it costs. Pure values: nothing here decides how cloth is woven.
//
// A count is kept exactly as written (system, number, plies) and becomes a
// grist only when asked; every conversion is exact. The twist of a folded yarn
// takes up a little of its singles' length, so a real folded yarn is slightly
// coarser than its resultant count says; as in the handbooks (Brooks, Cotton
// Manufacturing), this is left out everywhere.
//
// Texts that cannot be read give a *qty.Fault. Its Args are: "valid" and
// "readings", lists of texts that would be read; "near", the likeliest of them;
// "least" and "most", the limits of a figure.
package yarn
