package main

import (
	"context"
	"runtime"

	"driploop/model/yard"
)

// ahead is how many files are judged ahead of the one that is printed, for each
// processor: enough that no processor waits, few enough that memory stays flat.
const ahead = 8

// inOrder judges files on all processors and hands over the results in the order
// of the files. It stops at the first error, and at once when the context ends.
func inOrder(ctx context.Context, files []yard.File, judge func(yard.File) result, take func(yard.File, result) error) error {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	type job struct {
		file yard.File
		done chan result
	}
	workers := runtime.GOMAXPROCS(0)
	todo := make(chan job)
	inTurn := make(chan job, ahead*workers)
	for range min(len(files), workers) {
		go func() {
			for j := range todo {
				j.done <- judge(j.file)
			}
		}()
	}
	go func() {
		defer close(todo)
		defer close(inTurn)
		for _, f := range files {
			j := job{f, make(chan result, 1)}
			for _, to := range []chan job{inTurn, todo} {
				select {
				case to <- j:
				case <-ctx.Done():
					return
				}
			}
		}
	}()
	for j := range inTurn {
		select {
		case r := <-j.done:
			if err := take(j.file, r); err != nil {
				return err
			}
		case <-ctx.Done():
			return ctx.Err()
		}
	}
	return ctx.Err()
}
