package circuit

import "slices"

// regulation is what a charging source does: it holds its voltage, gives its
// greatest current, or gives nothing because the network stands above it.
type regulation uint8

const (
	holding regulation = iota
	limited
	blocked
)

// regulationLimit bounds the rounds in which charging sources settle.
const regulationLimit = 50

// charge solves the mesh with loads at work and settles what each charging
// source does: from all holding their voltage, a source that would give more
// than its greatest current is limited, one that would take current is blocked,
// and either holds again when its voltage calls for it.
//
// A charging source that feeds an island by itself holds its voltage: there is
// nothing else that could.
func (m *mesh) charge(pulls []pull) (*solution, int) {
	does := m.chargers()
	if len(does) == 0 {
		return m.draw(pulls, nil)
	}
	var s *solution
	for range regulationLimit {
		at, given := m.regulated(does)
		var bad int
		if s, bad = at.draw(pulls, given); s == nil || bad >= 0 {
			return s, bad
		}
		if !m.settle(does, s) {
			return s, -1
		}
	}
	return nil, -1
}

// chargers returns the charging sources that share an island with a battery.
func (m *mesh) chargers() map[int]regulation {
	backed := map[int]bool{}
	for _, i := range m.closed {
		if b := &m.net.branches[i]; b.kind == source && b.class == batteryClass {
			backed[m.island[b.a]] = true
		}
	}
	does := map[int]regulation{}
	for _, i := range m.closed {
		if b := &m.net.branches[i]; b.kind == source && b.class == chargeClass && backed[m.island[b.a]] {
			does[i] = holding
		}
	}
	return does
}

// regulated returns the mesh in which only the holding sources hold, and the
// currents of the limited ones.
func (m *mesh) regulated(does map[int]regulation) (*mesh, []drain) {
	var closed []int
	var given []drain
	for _, i := range m.closed {
		b := &m.net.branches[i]
		switch does[i] {
		case holding:
			closed = append(closed, i)
		case limited:
			given = append(given, drain{branch: i, a: b.a, b: b.b, amps: -b.limit.pick(i, m.round, false)})
		}
	}
	if len(closed) == len(m.closed) {
		return m, nil
	}
	if m.derived == nil || !slices.Equal(m.derived.closed, closed) {
		m.derived = newMesh(m.net, closed, m.values, m.round, nil)
	}
	return m.derived, given
}

// settle moves each source to what its voltage and current call for, and
// reports whether any moved.
func (m *mesh) settle(does map[int]regulation, s *solution) bool {
	const slack = 1e-9
	moved := false
	for _, i := range m.closed {
		was, ok := does[i]
		if !ok {
			continue
		}
		b := &m.net.branches[i]
		limit := b.limit.pick(i, m.round, false)
		gives := -s.amps[i]
		short := m.values.volts[i] - m.values.ohms[i]*max(0, gives) - (s.volts[b.a] - s.volts[b.b])
		now := was
		switch was {
		case holding:
			if gives > limit*(1+slack) {
				now = limited
			} else if gives < -slack {
				now = blocked
			}
		case limited:
			if short < -slack {
				now = holding
			}
		case blocked:
			if short > slack {
				now = holding
			}
		}
		does[i] = now
		moved = moved || now != was
	}
	return moved
}
