package main

import (
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestSparesAreNeverUsedTwiceAtATime(t *testing.T) {
	type tool struct {
		mutex sync.Mutex
		used  int
	}
	var all spares[tool]
	var running sync.WaitGroup
	for range 4 {
		running.Go(func() {
			for range 1000 {
				one := all.take()
				if assert.True(t, one.mutex.TryLock(), "somebody else uses it") {
					one.used++
					one.mutex.Unlock()
				}
				all.give(one)
			}
		})
	}
	running.Wait()
	total := 0
	for _, one := range all.free {
		total += one.used
	}
	assert.Equal(t, 4000, total)
	assert.LessOrEqual(t, len(all.free), 4)
}
