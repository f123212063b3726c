package design_test

import (
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestLooksAreKeptOpenedAndDropped(t *testing.T) {
	doc := design.Default()
	first := doc.Design.Revision()
	doc, err := design.KeepLook(doc, "A")
	require.NoError(t, err)
	doc, err = design.Set(doc, "walls[0].groups[0].width", "1.6 m", length.Metric)
	require.NoError(t, err)
	wide := doc.Design.Revision()
	assert.Equal(t, first, doc.Looks[0].Design.Revision(), "an edit leaves what was kept")
	doc, err = design.KeepLook(doc, "B")
	require.NoError(t, err)

	back, err := design.OpenLook(doc, 0)
	require.NoError(t, err)
	assert.Equal(t, first, back.Design.Revision())
	assert.Len(t, back.Looks, 2)
	again, err := design.Decode(design.Encode(back))
	require.NoError(t, err)
	assert.Equal(t, back, again)

	one, err := design.DropLook(back, 0)
	require.NoError(t, err)
	require.Len(t, one.Looks, 1)
	assert.Equal(t, wide, one.Looks[0].Design.Revision())
	assert.Len(t, back.Looks, 2, "the document before is as it was")
	none, err := design.DropLook(one, 0)
	require.NoError(t, err)
	assert.Nil(t, none.Looks)

	_, err = design.OpenLook(doc, 2)
	assert.Error(t, err)
	_, err = design.DropLook(doc, -1)
	assert.Error(t, err)
	doc, err = design.KeepLook(doc, "C")
	require.NoError(t, err)
	_, err = design.KeepLook(doc, "D")
	assert.ErrorContains(t, err, "3")
}
