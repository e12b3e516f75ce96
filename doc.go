// Package sley holds no code of its own. It is the place of the tests that look
// at the whole house: who may import whom (floors_test.go), whether the links of
// the papers lead somewhere (links_test.go) and whether the README tells the
// truth (readme_test.go).
//
// The program is in cmd/sley and its floors are in internal.
package sley
