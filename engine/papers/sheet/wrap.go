package sheet

import "strings"

// Wrap breaks text into lines that are not wider than width. It breaks at
// spaces and behind hyphens and slashes, but for those between figures, as in dates and
// fractions, and those between a figure and its fraction or its %, and within a word only
// where the word alone is wider.
func Wrap(face Face, size, width float64, text string) []string {
	var lines []string
	line := ""
	for _, part := range parts(Plain(text)) {
		if Width(face, size, strings.TrimRight(line+part, " ")) <= width {
			line += part
			continue
		}
		if line != "" {
			lines = append(lines, strings.TrimRight(line, " "))
		}
		line = part
		for line != "" && Width(face, size, strings.TrimRight(line, " ")) > width {
			n := fitting(face, size, width, line)
			lines = append(lines, line[:n])
			line = line[n:]
		}
	}
	if line != "" {
		lines = append(lines, strings.TrimRight(line, " "))
	}
	return lines
}

// parts are the pieces of a text that stay together, each with the space
// behind it.
func parts(text string) []string {
	var all []string
	start := 0
	figure := func(at int) bool { return at >= 0 && at < len(text) && text[at] >= '0' && text[at] <= '9' }
	for i, r := range text {
		if (r == '/' || r == '-') && figure(i-1) && figure(i+1) {
			continue
		}
		if r == ' ' && figure(i-1) && belongs(text[i+1:]) {
			continue
		}
		if end := i + len(string(r)); (r == ' ' || r == '/' || r == '-' || r == '–') && end > start {
			all = append(all, text[start:end])
			start = end
		}
	}
	if start < len(text) {
		all = append(all, text[start:])
	}
	return all
}

// belongs reports whether what follows a figure and a space is no word of its own: a % or a
// fraction.
func belongs(rest string) bool {
	if strings.HasPrefix(rest, "%") {
		return true
	}
	over := strings.TrimLeft(rest, "0123456789")
	return len(over) < len(rest) && len(over) > 1 && over[0] == '/' && over[1] >= '0' && over[1] <= '9'
}

// fitting is how many bytes of a line fit into a width, one character at least.
func fitting(face Face, size, width float64, line string) int {
	for i, r := range line {
		if end := i + len(string(r)); i > 0 && Width(face, size, line[:end]) > width {
			return i
		}
	}
	return len(line)
}

// Fit returns text as one line that is not wider than width, shortened with
// dots where it is.
func Fit(face Face, size, width float64, text string) string {
	text = Plain(text)
	if Width(face, size, text) <= width {
		return text
	}
	const dots = "…"
	n := fitting(face, size, width-Width(face, size, dots), text)
	return strings.TrimRight(text[:n], " ") + dots
}

// mostLines is how many lines are shown of a text that is not split over sheets:
// somebody's longest text must not make a piece that is higher than a sheet.
const mostLines = 12

// bounded is a text in lines, the last of them with dots where there are too many.
func bounded(face Face, size, width float64, text string) []string {
	return shorten(Wrap(face, size, width, text), mostLines, face, size, width)
}

// shorten keeps the first lines, the last of them with dots, where there are
// more than most.
func shorten(lines []string, most int, face Face, size, width float64) []string {
	if len(lines) <= most {
		return lines
	}
	lines = lines[:most:most]
	const dots = "…"
	last := lines[most-1]
	if Width(face, size, last+dots) > width {
		last = last[:fitting(face, size, width-Width(face, size, dots), last)]
	}
	lines[most-1] = strings.TrimRight(last, " ") + dots
	return lines
}
