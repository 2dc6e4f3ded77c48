package rules

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// parallel calls f with each of all, on as many processors as there are.
func parallel[T any](all []T, f func(T)) {
	var next atomic.Int64
	var work sync.WaitGroup
	for range min(len(all), runtime.GOMAXPROCS(0)) {
		work.Go(func() {
			for i := next.Add(1) - 1; i < int64(len(all)); i = next.Add(1) - 1 {
				f(all[i])
			}
		})
	}
	work.Wait()
}
