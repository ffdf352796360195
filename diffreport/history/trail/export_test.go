package trail

import (
	"maps"

	"homerun/schema/vcs"
)

// Held says how often each token stands in the last of some versions, each told by the one before it.
func Held(versions []vcs.Version) map[uint32]int32 {
	var t tally
	for i := range versions {
		t.take(&versions[i])
	}
	held := make(map[uint32]int32)
	for _, e := range t.events {
		held[uint32(e.token)] += e.more
	}
	maps.DeleteFunc(held, func(_ uint32, often int32) bool { return often == 0 })
	return held
}
