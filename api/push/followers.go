package push

import (
	"context"
	"sync"
	"time"

	"example.com/cookday/api"
)

// followers keep the places of plans that were told a moment ago: a plan that is revised
// every minute need not be read from its beginning each time.
type followers struct {
	service *api.Service
	mu      sync.Mutex
	kept    map[followed]*follower
}

type followed struct{ way, plan string }

// follower is one plan's. One that is behind holds all that was not told yet, and is let
// go of.
type follower struct {
	*api.Follower
	Behind bool
	used   time.Time // by the machine: which one goes first
}

// mostFollowers are kept.
const mostFollowers = 64

func newFollowers(s *api.Service) *followers {
	return &followers{service: s, kept: map[followed]*follower{}}
}

// take gives the follower of a plan, which nobody else has until put.
func (k *followers) take(ctx context.Context, way, plan string) (*follower, error) {
	k.mu.Lock()
	f := k.kept[followed{way, plan}]
	delete(k.kept, followed{way, plan})
	k.mu.Unlock()
	if f != nil {
		return f, nil
	}
	made, err := k.service.Follow(ctx, plan)
	if err != nil {
		return nil, err
	}
	return &follower{Follower: made}, nil
}

func (k *followers) put(way, plan string, f *follower) {
	k.mu.Lock()
	defer k.mu.Unlock()
	if f.Behind || k.kept[followed{way, plan}] != nil {
		f.Close()
		return
	}
	f.used = time.Now()
	k.kept[followed{way, plan}] = f
	if len(k.kept) <= mostFollowers {
		return
	}
	var oldest followed
	for key, f := range k.kept {
		if o := k.kept[oldest]; o == nil || f.used.Before(o.used) {
			oldest = key
		}
	}
	k.kept[oldest].Close()
	delete(k.kept, oldest)
}

func (k *followers) closeAll() {
	k.mu.Lock()
	defer k.mu.Unlock()
	for key, f := range k.kept {
		f.Close()
		delete(k.kept, key)
	}
}
