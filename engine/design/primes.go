package design

// IsPrime reports whether n is a prime number; n is small.
func IsPrime(n int) bool {
	if n < 2 {
		return false
	}
	for d := 2; d*d <= n; d++ {
		if n%d == 0 {
			return false
		}
	}
	return true
}

// Foldable reports whether a primitive-root sequence of the prime order n can
// be folded to two dimensions: whether n − 1 is a product of two numbers above
// 1 without a common factor. It is not for 5, 17 and 257, where n − 1 is a
// power of two.
func Foldable(n int) bool {
	if !IsPrime(n) {
		return false
	}
	rest := n - 1
	for rest > 1 && rest%2 == 0 {
		rest /= 2
	}
	return rest > 1
}

// folds reports whether rows by columns is a fold of the order n.
func folds(n, rows, columns int) bool {
	return rows > 1 && columns > 1 && rows*columns == n-1 && gcd(rows, columns) == 1
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// nearestOrder returns the order from 5 to 1201 that is fit and nearest to n,
// the smaller one of two.
func nearestOrder(n int, fit func(int) bool) int {
	const low, high = firstOrder, lastOrder
	n = min(max(n, low), high)
	for d := 0; ; d++ {
		if n-d >= low && fit(n-d) {
			return n - d
		}
		if n+d <= high && fit(n+d) {
			return n + d
		}
	}
}
