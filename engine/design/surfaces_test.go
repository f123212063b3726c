package design_test

import (
	"errors"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A surface is added as far as there is room, follows when it is put elsewhere,
// and never covers more of a place than there is.
func TestSurfaces(t *testing.T) {
	doc, path, err := design.Add(design.Default(), "room.surfaces")
	require.NoError(t, err)
	assert.Equal(t, "room.surfaces[0]", path)
	assert.Equal(t, []design.Surface{{Place: design.Walls, Lining: design.SoftPanelLining, Share: 10}}, doc.Design.Room.Surfaces)
	doc = set(t, doc, path+".share", "95")
	doc, path, err = design.Add(doc, "room.surfaces")
	require.NoError(t, err)
	assert.InDelta(t, 5, doc.Design.Room.Surfaces[1].Share, 1e-12, "what is free")
	doc = set(t, doc, path+".place", design.Floor)
	doc = set(t, doc, path+".lining", design.CarpetLining)
	doc = set(t, doc, path+".share", "100 %")
	doc = set(t, doc, path+".place", design.Walls)
	assert.InDelta(t, 5, doc.Design.Room.Surfaces[1].Share, 1e-12, "no more than is free there")

	_, err = design.Set(doc, path+".share", "5.1", length.Metric)
	var faults design.Faults
	require.True(t, errors.As(err, &faults))
	assert.Equal(t, "design.room.surfaces[1].share: 5.1 % is out of range (allowed 0 % to 5 %)", faults[0].Error())

	again, err := design.Decode(design.Encode(doc))
	require.NoError(t, err)
	assert.Equal(t, doc, again)
	doc, err = design.Remove(doc, "room.surfaces[0]")
	require.NoError(t, err)
	assert.Len(t, doc.Design.Room.Surfaces, 1)
}

// A design without surfaces is the file, and the revision, that it was before
// there were any.
func TestNoSurfacesAreNotWritten(t *testing.T) {
	doc := design.Default()
	assert.NotContains(t, string(design.Encode(doc)), "surfaces")
	before := doc.Design.Revision()
	doc, _, err := design.Add(doc, "room.surfaces")
	require.NoError(t, err)
	assert.NotEqual(t, before, doc.Design.Revision())
	doc, err = design.Remove(doc, "room.surfaces[0]")
	require.NoError(t, err)
	assert.Equal(t, before, doc.Design.Revision())
}
