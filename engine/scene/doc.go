// Package scene holds what can be seen of a job, camera, lamp, wood tones,
// wall and panels, and draws it. It answers two questions: what colour has
// each pixel of the picture (Render), and which cell of which panel lies under
// a point of the picture (Scene.Hit).
//
// All lengths are metres. The x axis runs to the right along the wall, y up, z
// out of the wall towards the room; the origin is the lower left corner of the
// wall, on the floor. Column 0 of a field is at the left and row 0 at the top,
// as hung and seen from the room. Picture coordinates have their origin in the
// upper left corner, x to the right and y down; the centre of the first pixel
// is at (0.5, 0.5). Angles are degrees in exported names and radians inside.
// Colours are linear RGB albedos from 0 to 1 until the last step, which encodes
// them as sRGB.
//
// Method: each view ray is tested against the boxes of the frames and walks
// through the grid of heights cell by cell; a second walk towards the lamp
// decides about shadow. The lamp's rays are parallel for shadows and angles of
// incidence, its brightness falls off with the distance to a lamp a few metres
// away. The fragment shader of the live preview repeats these steps one by one,
// so a change here is a change there.
package scene
