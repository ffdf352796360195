package render

import (
	"slices"
	"strings"
)

// each turns a list into another, never into null.
func each[From, To any](list []From, turn func(From) To) []To {
	out := make([]To, len(list))
	for i, item := range list {
		out[i] = turn(item)
	}
	return out
}

// neighbours divides a list into rows in which each is like the one before it.
func neighbours[T any](list []T, alike func(a, b T) bool) [][]T {
	var all [][]T
	for from := 0; from < len(list); {
		to := from + 1
		for to < len(list) && alike(list[to-1], list[to]) {
			to++
		}
		all = append(all, list[from:to:to])
		from = to
	}
	return all
}

// texts is a list that is never null.
func texts(list []string) []string { return append([]string{}, list...) }

func sorted(list []string) []string {
	list = texts(list)
	slices.Sort(list)
	return list
}

// list joins a few names into one text.
func list(names []string) string { return strings.Join(names, ", ") }
