package field

// SmallestPrimitiveRoot returns the smallest g whose powers run through all of
// 1 … n−1 modulo the prime n, or 0 when n is not a prime above 2.
func SmallestPrimitiveRoot(n int) int {
	for g := 2; g < n; g++ {
		if orderOf(g, n) == n-1 {
			return g
		}
	}
	return 0
}

// orderOf returns the smallest t > 0 with gᵗ = 1 modulo n, or 0.
func orderOf(g, n int) int {
	v := 1
	for t := 1; t < n; t++ {
		if v = v * g % n; v == 1 {
			return t
		}
	}
	return 0
}

// Fold returns the most nearly square pair of rows and columns without a
// common factor whose product is n−1, rows the fewer; 1 and n−1 when there is
// no other.
func Fold(n int) (rows, columns int) {
	rows, columns = 1, n-1
	for a := 2; a*a < n-1; a++ {
		if (n-1)%a == 0 && gcd(a, (n-1)/a) == 1 {
			rows, columns = a, (n-1)/a
		}
	}
	return rows, columns
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
