package design

// Choices that decide how a panel is built and hung.
const (
	Mitred     = "mitred"
	Butt       = "butt"
	NoFrame    = "none"
	TopEdge    = "top"
	BottomEdge = "bottom"
)
