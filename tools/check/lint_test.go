package main

import "testing"

func TestTheLibraryOfTheBookFits(t *testing.T) {
	const mod = "module m\n\nrequire (\n\tmodernc.org/libc v1.2.3\n\tmodernc.org/other v1.0.0 // indirect\n)\n"
	for used, want := range map[string]string{
		"v1.2.3": "",
		"v1.2.4": "modernc.org/libc is in use in v1.2.4, and modernc.org/sqlite was made for v1.2.3: run go get modernc.org/libc@v1.2.3",
	} {
		if err := libcFits(mod, used); (err == nil) != (want == "") || err != nil && err.Error() != want {
			t.Errorf("%s: %v", used, err)
		}
	}
	if libcFits("require modernc.org/libc v1.2.3", "v1.2.3") != nil {
		t.Error("a line by itself is not read")
	}
	if libcFits("module m\n", "v1.2.3") == nil {
		t.Error("a library that says nothing is taken")
	}
}
