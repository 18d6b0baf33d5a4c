package judge

import (
	"errors"
	"fmt"
	"runtime"
	"sync"
	"sync/atomic"
)

// Each does the work on every item, on as many cores as there are; the results
// keep the items' order.
func Each[T, R any](items []T, work func(T) (R, error)) ([]R, error) {
	out, errs := make([]R, len(items)), make([]error, len(items))
	var next atomic.Int64
	var wg sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(items)) {
		wg.Go(func() {
			for i := next.Add(1) - 1; int(i) < len(items); i = next.Add(1) - 1 {
				out[i], errs[i] = guarded(work, items[i])
			}
		})
	}
	wg.Wait()
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	return out, nil
}

// guarded makes a panic of one item's work an error that names the fault, so
// that it is told like any other.
func guarded[T, R any](work func(T) (R, error), item T) (out R, err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("a fault of this program: %v", p)
		}
	}()
	return work(item)
}
