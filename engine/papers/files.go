package papers

import (
	"archive/zip"
	"bytes"
	"path"

	"blockfield/engine/papers/sheet"
)

// File is one file of an export. Its name is a path below the export's folder,
// with slashes and in ASCII.
type File struct {
	Name string
	Body []byte
}

// Files are the sets of the names as files: one document of sheets for each set,
// its drawings, those of full size too, and the tables that go with it, each once. A name that is none
// gives nothing. Without fonts there are drawings and tables only: a document would
// be set in another type than it was laid out for.
func Files(in Input, names []string, fonts Fonts) []File {
	var all []File
	have := map[string]bool{}
	add := func(name string, body []byte) {
		if !have[name] {
			have[name] = true
			all = append(all, File{name, body})
		}
	}
	if fonts.Regular == nil {
		in.Drawn = sheet.NoSheets()
	}
	for _, name := range names {
		set, ok := Make(in, name)
		if !ok {
			continue
		}
		if fonts.Regular != nil {
			add(name+".html", set.HTML(in.Words.Language.Tag, fonts))
		}
		for _, d := range set.Drawings {
			add(path.Join("drawings", d.Name+".svg"), []byte(d.SVG()))
		}
		for _, d := range set.FullSize {
			add(path.Join("full-size", d.Name+".svg"), []byte(d.SVG()))
		}
		for _, t := range set.tables {
			add(path.Join("tables", t.name+".csv"), t.csv())
		}
	}
	return all
}

// Zip packs files into one archive, the same bytes for the same files.
func Zip(files []File) ([]byte, error) {
	var b bytes.Buffer
	w := zip.NewWriter(&b)
	for _, f := range files {
		to, err := w.Create(f.Name)
		if err != nil {
			return nil, err
		}
		if _, err := to.Write(f.Body); err != nil {
			return nil, err
		}
	}
	err := w.Close()
	return b.Bytes(), err
}
