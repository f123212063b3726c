// Package designtest gives tests the example jobs of the repository: as the
// designs that they are, and as the bytes of their files. It is for tests only;
// what is wrong with a file ends the test.
package designtest

import (
	"io/fs"
	"testing"

	"blockfield/engine/design"
	"blockfield/testdata"
)

// Files returns the design files by their names, "s1.json" or
// "s1-second.json".
func Files(t testing.TB) map[string][]byte {
	t.Helper()
	names, err := fs.Glob(testdata.Designs(), "*.json")
	if err != nil || len(names) == 0 {
		t.Fatalf("%d design files: %v", len(names), err)
	}
	files := make(map[string][]byte, len(names))
	for _, name := range names {
		if files[name], err = fs.ReadFile(testdata.Designs(), name); err != nil {
			t.Fatal(err)
		}
	}
	return files
}

// Documents returns what the files hold, by their names.
func Documents(t testing.TB) map[string]design.Document {
	t.Helper()
	docs := make(map[string]design.Document)
	for name, file := range Files(t) {
		doc, err := design.Decode(file)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		docs[name] = doc
	}
	return docs
}

// Job returns one design by its name, "s1".
func Job(t testing.TB, name string) design.Design {
	t.Helper()
	file, err := fs.ReadFile(testdata.Designs(), name+".json")
	if err != nil {
		t.Fatal(err)
	}
	doc, err := design.Decode(file)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return doc.Design
}
