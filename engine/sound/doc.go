// Package sound answers what a field of blocks does to sound that meets it:
// how evenly it is spread, how much of it leaves the mirror direction, from
// which frequency on, and what may be said of that to a client.
//
// Method: the far field of a stepped rigid surface (Kirchhoff and Fraunhofer),
// plane wave in, third-octave bands, and from it the directional diffusion
// coefficient of ISO 17497-2 and the correlation scattering coefficient of
// E. Mommertz (Applied Acoustics 60, 2000, 201). The figures are calculated, to
// compare designs; they are no measurement and stand beside no laboratory
// table. Trust says how far they can be off.
//
// Axes: x to the right and y up along the panel as hung, z out of it; z = 0 is
// the highest face, the wave is exp(+jωt) and k = 2πf/c. A direction is given
// by its angle from the normal and its azimuth from x. The source direction
// points from the panel to the source, so that (u, v), the sum of source and
// receiver direction, is 0 in the mirror direction. Pressure is 1 where a flat
// panel of the same size, met straight on, sends its mirror reflection; the
// factor k/2π of the full integral is left out, so that every line of a band
// weighs alike.
//
// Units: metres, hertz, m/s; angles are degrees at the door and radians inside.
// Not covered: exchange between neighbouring wells, double bounces between
// sides, edges and frame, losses, near field. Ceilings, wet rooms and outdoors
// are out of scope.
package sound
