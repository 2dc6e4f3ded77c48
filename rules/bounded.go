package rules

import (
	"context"
	"errors"
	"fmt"
	"runtime"
	"runtime/debug"
	"runtime/metrics"
	"time"
)

// Bounds of what a yard's rules may take.
type bounds struct {
	what   string
	time   time.Duration
	memory uint64 // bytes beyond what the process holds
}

func evaluation() bounds { return bounds{"it", 3 * time.Second, 512 << 20} }
func loading() bounds    { return bounds{"reading the yard's rules", 30 * time.Second, 512 << 20} }

// grace is how long work that was told to stop may take to do so.
const grace = time.Second

// RunawayError is the error of work that went beyond its bounds and did not stop
// when told to. Whoever gets it should end the process: the work goes on.
type RunawayError struct{ Says string }

func (e *RunawayError) Error() string { return e.Says }

// errBounds is the cause of work that was stopped.
var errBounds = errors.New("stopped")

// bounded does work of a yard's rules within bounds: beyond them its context
// ends, and if it does not stop then, it is left alone.
func bounded[T any](b bounds, work func(context.Context) (T, error)) (T, error) {
	type outcome struct {
		value T
		err   error
	}
	ctx, stop := context.WithCancelCause(context.Background())
	defer stop(nil)
	done := make(chan outcome, 1)
	go func() {
		var o outcome
		defer func() {
			if value := recover(); value != nil {
				o.err = fmt.Errorf("the evaluator failed: %v\n%s", value, debug.Stack())
			}
			done <- o
		}()
		o.value, o.err = work(ctx)
	}()
	start, limit := time.Now(), held()+b.memory
	tick := time.NewTicker(5 * time.Millisecond)
	defer tick.Stop()
	var stopped time.Time
	for {
		select {
		case o := <-done:
			if cause := context.Cause(ctx); cause != nil {
				return o.value, cause
			}
			return o.value, o.err
		case now := <-tick.C:
			var says string
			used := held()
			if used > limit && stopped.IsZero() {
				runtime.GC() // what is garbage does not count
				used = held()
			}
			switch {
			case used > limit:
				says = fmt.Sprintf("%s took more than %d MiB of memory", b.what, b.memory>>20)
			case now.Sub(start) > b.time:
				says = fmt.Sprintf("%s took longer than %v", b.what, b.time)
			default:
				continue
			}
			if stopped.IsZero() {
				stopped = now
				stop(fmt.Errorf("%w: %s", errBounds, says))
			}
			if now.Sub(stopped) > grace || used > limit+b.memory {
				var none T
				return none, &RunawayError{says + ", and could not be stopped"}
			}
		}
	}
}

// held is the memory that the process's objects take, bytes.
func held() uint64 {
	sample := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}}
	metrics.Read(sample)
	return sample[0].Value.Uint64()
}
