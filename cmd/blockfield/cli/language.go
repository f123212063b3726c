package cli

import (
	"flag"
	"fmt"
	"slices"
	"strings"

	"blockfield/engine/words"
)

// language is the tag of the language that sentences come in; empty: not said.
type language string

// languageFlag is a flag that names a language.
func languageFlag(flags *flag.FlagSet) *language {
	var l language
	flags.Func("language", "", func(text string) error {
		if !slices.Contains(words.Tags(), text) {
			return fmt.Errorf("%q is no language of ours (allowed %s)", text, strings.Join(words.Tags(), ", "))
		}
		l = language(text)
		return nil
	})
	return &l
}

// or is the language that was asked for, or else that of a tag.
func (l language) or(tag string) words.Language {
	if l != "" {
		tag = string(l)
	}
	return words.In(tag)
}
