package page

import (
	"embed"
	"html/template"
)

//go:embed templates/*.tmpl
var templateFiles embed.FS

// templates never change after the start of the program.
var templates = template.Must(template.ParseFS(templateFiles, "templates/*.tmpl"))
