package design

import (
	"reflect"
	"slices"
)

// Assumable returns the paths below the design of all values that come from the
// real world, sorted. In a fresh design each of them is assumed.
func Assumable(d Design) []string {
	var paths []string
	top, _ := designTree().child("design")
	eachAssumable(top, reflect.ValueOf(&d).Elem(), nil, func(p *at) { paths = append(paths, p.String()) })
	slices.Sort(paths)
	return paths
}

// eachAssumable calls visit for every assumable place in and below n.
func eachAssumable(n *node, v reflect.Value, p *at, visit func(*at)) {
	if n.field.Assumable {
		visit(p)
	}
	switch n.shape {
	case part:
		if n.optionalPart() {
			return // an offer holds nothing of the kind
		}
		for i := range n.parts {
			kid := &n.parts[i]
			eachAssumable(kid, v.Field(kid.index), p.field(kid.name), visit)
		}
	case partList:
		for i := range v.Len() {
			for k := range n.parts {
				kid := &n.parts[k]
				eachAssumable(kid, v.Index(i).Field(kid.index), p.item(i).field(kid.name), visit)
			}
		}
	}
}
