// Package chance has numbers that look drawn and are the same for ever, so that a seed in
// a file means the same panel in each version of the program.
package chance

// Next is the 64-bit split-mix generator of G. Steele, D. Lea and C. Flood (OOPSLA 2014)
// with its published constants: the value of a state, and the state after it.
func Next(state uint64) (value, next uint64) {
	next = state + 0x9e3779b97f4a7c15
	z := next
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31, next
}

// Shuffle shuffles from the last place down. Its choice among n is a value modulo n, which
// for a panel is as good as a fair one.
func Shuffle[T any](all []T, seed uint64) {
	for i := len(all) - 1; i > 0; i-- {
		var value uint64
		value, seed = Next(seed)
		j := value % uint64(i+1)
		all[i], all[j] = all[j], all[i]
	}
}
