package main

import (
	"context"
	"iter"
	"runtime"
)

// ahead is how many files are judged ahead of the one that is printed, for each
// processor: enough that no processor waits, few enough that memory stays flat.
const ahead = 8

// inOrder judges files, or other texts, on all processors and hands over the
// results in their order, each as soon as it is there. It stops at the first
// error, and at once when the context ends.
func inOrder[T any](ctx context.Context, all iter.Seq[T], judge func(T) result, take func(T, result) error) error {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	type job struct {
		of   T
		done chan result
	}
	workers := runtime.GOMAXPROCS(0)
	todo := make(chan job)
	inTurn := make(chan job, ahead*workers)
	for range workers {
		go func() {
			for j := range todo {
				j.done <- judge(j.of)
			}
		}()
	}
	go func() {
		defer close(todo)
		defer close(inTurn)
		for of := range all {
			j := job{of, make(chan result, 1)}
			for _, to := range []chan job{inTurn, todo} {
				select {
				case to <- j:
				case <-ctx.Done():
					return
				}
			}
		}
	}()
	for {
		select {
		case j, more := <-inTurn:
			if !more {
				return ctx.Err()
			}
			select {
			case r := <-j.done:
				if err := take(j.of, r); err != nil {
					return err
				}
			case <-ctx.Done():
				return ctx.Err()
			}
		case <-ctx.Done():
			return ctx.Err()
		}
	}
}
