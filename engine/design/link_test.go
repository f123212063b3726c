package design_test

import (
	"bytes"
	"compress/flate"
	"crypto/sha256"
	"encoding/base64"
	"slices"
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// packed makes a link of any content with a right check, as an attacker could.
func packed(t testing.TB, plain []byte) string {
	t.Helper()
	var b bytes.Buffer
	w, err := flate.NewWriter(&b, flate.BestCompression)
	require.NoError(t, err)
	_, err = w.Write(plain)
	require.NoError(t, err)
	require.NoError(t, w.Close())
	sum := sha256.Sum256(b.Bytes())
	return base64.RawURLEncoding.EncodeToString(append(sum[:4:4], b.Bytes()...))
}

func TestLinkCarriesTheClientCopy(t *testing.T) {
	for name, data := range designtest.Files(t) {
		doc, err := design.Decode(data)
		require.NoError(t, err)
		link, err := design.EncodeLink(doc)
		require.NoError(t, err)
		assert.Empty(t, strings.Trim(link, "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"), name)
		assert.Less(t, len(link), 2500, "a link of a usual job can be sent by mail")
		for _, fragment := range []string{link, "#" + link, "#" + link + "%20", " " + link + "\r\n"} {
			again, err := design.DecodeLink(fragment)
			require.NoError(t, err)
			assert.Equal(t, doc, again, name)
		}
	}
}

func TestLinkLeavesLooksAtHome(t *testing.T) {
	doc := design.Default()
	doc.Looks = []design.Look{{Name: "kept", Design: doc.Design}}
	doc.Offer = &design.Offer{Revision: doc.Design.Revision(), BookCode: "000000", Currency: "XXX", ValidUntil: "2028-02-29"}
	link, err := design.EncodeLink(doc)
	require.NoError(t, err)
	again, err := design.DecodeLink(link)
	require.NoError(t, err)
	assert.Nil(t, again.Looks)
	assert.Equal(t, doc.Offer, again.Offer)
	assert.Len(t, doc.Looks, 1, "the document itself keeps them")
}

func TestDamagedLinks(t *testing.T) {
	link, err := design.EncodeLink(design.Default())
	require.NoError(t, err)
	const damaged = "is damaged or cut off"
	// Every single letter counts.
	for i := range link {
		other := byte('A')
		if link[i] == other {
			other = 'B'
		}
		_, err := design.DecodeLink(link[:i] + string(other) + link[i+1:])
		require.EqualError(t, err, damaged, "letter %d", i)
	}
	for n := range len(link) {
		_, err := design.DecodeLink(link[:n])
		require.EqualError(t, err, damaged, "cut to %d", n)
	}
	for _, bad := range []string{"", "#", "!!!!", "####", link + "=", link + "AAAA", link[:9] + " " + link[9:]} {
		_, err := design.DecodeLink(bad)
		require.EqualError(t, err, damaged, bad)
	}
}

func TestHostileLinks(t *testing.T) {
	bomb := packed(t, bytes.Repeat([]byte(" "), 64<<20))
	_, err := design.DecodeLink(bomb)
	assert.ErrorContains(t, err, "is too large")

	_, err = design.DecodeLink(packed(t, bytes.Repeat([]byte(" "), 1<<20+1)))
	assert.EqualError(t, err, "is too large: 1048577 bytes (allowed at most 1048576 bytes)")

	_, err = design.DecodeLink(strings.Repeat("A", 64<<10+1))
	assert.EqualError(t, err, "is too large: 65537 bytes (allowed at most 65536 bytes)")

	_, err = design.DecodeLink(packed(t, []byte(small(`"columns":400,"rows":400`))))
	assert.ErrorContains(t, err, "makes too many blocks")

	_, err = design.DecodeLink(packed(t, []byte("not JSON")))
	assert.ErrorContains(t, err, "cannot be read as JSON")
}

func TestLinkOfALargeDrawing(t *testing.T) {
	// 200 × 200 cells of four heights in no order: the most that a link may have
	// to carry for one panel.
	doc := design.Default()
	g := &doc.Design.Walls[0].Groups[0]
	g.Columns, g.Rows = 200, 200
	g.Pattern.Kind = design.Drawn
	state := uint64(1)
	for range 200 {
		row := make([]byte, 200)
		for j := range row {
			state = state*6364136223846793005 + 1442695040888963407
			row[j] = byte('0' + state>>33%4)
		}
		g.Pattern.Drawn = append(g.Pattern.Drawn, string(row))
	}
	require.NoError(t, design.Validate(doc))
	link, err := design.EncodeLink(doc)
	require.NoError(t, err)
	again, err := design.DecodeLink(link)
	require.NoError(t, err)
	assert.Equal(t, doc, again)
	assert.Less(t, len(link), 20_000)

	// Four such groups of nine heights are too many.
	g.Heights = nil
	for i := range 9 {
		g.Heights = append(g.Heights, length.MM(int64(10+i)))
	}
	for i, row := range g.Pattern.Drawn {
		other := []byte(row)
		for j := range other {
			state = state*6364136223846793005 + 1442695040888963407
			other[j] = byte('0' + state>>33%9)
		}
		g.Pattern.Drawn[i] = string(other)
	}
	doc.Design.Walls[0].Groups = slices.Repeat([]design.Group{*g}, 4)
	for i := range doc.Design.Walls[0].Groups {
		// Shifted against one another, so that they do not fold into one.
		rows := slices.Clone(g.Pattern.Drawn)
		for j, row := range rows {
			rows[j] = row[i*37:] + row[:i*37]
		}
		slices.Reverse(rows)
		doc.Design.Walls[0].Groups[i].Pattern.Drawn = rows
	}
	require.NoError(t, design.Validate(doc))
	_, err = design.EncodeLink(doc)
	assert.ErrorContains(t, err, "is too large")
}
