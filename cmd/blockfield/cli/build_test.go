package cli

import (
	"testing"

	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
)

// The address that clients write to is one, and nothing more than one: it stands in a link.
func TestAddresses(t *testing.T) {
	t.Parallel()
	for _, good := range []string{"workshop@example.org", "a.b+c@x.example", "o'neil@example.org"} {
		assert.True(t, isAddress(good), good)
	}
	for _, bad := range []string{
		"workshop", "@example.org", "Workshop <workshop@example.org>", "a@b@example.org", "a@example.org?bcc=b@example.org", "a@example.org,b@example.org",
		"a b@example.org", "a@example.org ", `"a&b"@example.org`, "a%0d@example.org", "javascript:x",
	} {
		assert.False(t, isAddress(bad), bad)
	}
	_, err := buildSite(0, "nobody", words.English())
	assert.ErrorContains(t, err, `-write-to: "nobody" is no mail address (allowed NAME@HOST`)
}
