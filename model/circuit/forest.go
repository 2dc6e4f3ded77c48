package circuit

// forest is how a network falls into blocks: a bridge, whose current Kirchhoff's
// current law alone tells, or a part with rings, whose currents have to be
// solved. Blocks hang together at single nodes, as a tree in each island, so
// that the way of a current between any two nodes is found by climbing.
//
// Blocks are the biconnected components of the graph, found by depth-first
// search (Hopcroft and Tarjan, 1973).
type forest struct {
	island []int // by node: root of its tree
	above  []int // by node: block that leads to the root, -1 at a root
	depth  []int // by node: blocks up to the root
	top    []int // by block: its node nearest the root
	blocks [][]int

	members [][]int       // by block: its nodes but the top, once found
	under   map[int][]int // by node: the blocks that it is the top of, once found
}

// findUnder notes the nodes of each block and the blocks under each node.
func (f *forest) findUnder() {
	f.members, f.under = make([][]int, len(f.blocks)), map[int][]int{}
	for node, k := range f.above {
		if k >= 0 {
			f.members[k] = append(f.members[k], node)
		}
	}
	for k, node := range f.top {
		f.under[node] = append(f.under[node], k)
	}
}

// newForest finds the blocks of the closed branches. The tree of its island is
// rooted at the given node, -1 for any.
func newForest(n *network, closed []int, root int) *forest {
	size := len(n.nodes)
	f := &forest{island: make([]int, size), above: make([]int, size), depth: make([]int, size)}
	start, near := adjacency(n, closed)
	seen, low := make([]int, size), make([]int, size) // from 1
	var order []int
	for i := range f.above {
		f.above[i], f.island[i] = -1, -1
	}
	next := append([]int(nil), start[:size]...)
	var path, over, stack []int // nodes, branch into each, branches not yet in a block
	for k := -1; k < size; k++ {
		from := k
		if k < 0 {
			from = root
		}
		if from < 0 || f.island[from] >= 0 {
			continue
		}
		enter := func(node, branch int) {
			order = append(order, node)
			seen[node], low[node], f.island[node] = len(order), len(order), from
			path, over = append(path, node), append(over, branch)
		}
		enter(from, -1)
		for len(path) > 0 {
			node := path[len(path)-1]
			if next[node] < start[node+1] {
				i := near[next[node]]
				next[node]++
				far := n.branches[i].other(node)
				switch {
				case i == over[len(over)-1] || far == node:
				case seen[far] == 0:
					stack = append(stack, i)
					enter(far, i)
				case seen[far] < seen[node]:
					stack = append(stack, i)
					low[node] = min(low[node], seen[far])
				}
				continue
			}
			branch := over[len(over)-1]
			path, over = path[:len(path)-1], over[:len(over)-1]
			if branch < 0 {
				continue
			}
			up := path[len(path)-1]
			low[up] = min(low[up], low[node])
			if low[node] >= seen[up] {
				k := len(stack) - 1
				for stack[k] != branch {
					k--
				}
				f.addBlock(n, append([]int(nil), stack[k:]...), up)
				stack = stack[:k]
			}
		}
	}
	for _, node := range order {
		if b := f.above[node]; b >= 0 {
			f.depth[node] = f.depth[f.top[b]] + 1
		}
	}
	return f
}

func (f *forest) addBlock(n *network, branches []int, top int) {
	for _, i := range branches {
		for _, node := range []int{n.branches[i].a, n.branches[i].b} {
			if node != top {
				f.above[node] = len(f.blocks)
			}
		}
	}
	f.blocks = append(f.blocks, branches)
	f.top = append(f.top, top)
}

// adjacency returns the closed branches at each node: near[start[i]:start[i+1]].
func adjacency(n *network, closed []int) (start, near []int) {
	start = make([]int, len(n.nodes)+1)
	for _, i := range closed {
		start[n.branches[i].a+1]++
		start[n.branches[i].b+1]++
	}
	for i := range n.nodes {
		start[i+1] += start[i]
	}
	fill := append([]int(nil), start[:len(n.nodes)]...)
	near = make([]int, 2*len(closed))
	for _, i := range closed {
		for _, node := range []int{n.branches[i].a, n.branches[i].b} {
			near[fill[node]] = i
			fill[node]++
		}
	}
	return start, near
}

// leg is the part of a way that lies in one block.
type leg struct{ block, from, to int }

// way adds the blocks between two nodes of one island to legs, in order.
func (f *forest) way(legs []leg, from, to int) []leg {
	var most [32]leg // room for the second half of most ways
	up, down := legs, most[:0]
	for from != to {
		bf, bt := f.above[from], f.above[to]
		switch {
		case f.depth[from] > f.depth[to]:
			up = append(up, leg{bf, from, f.top[bf]})
			from = f.top[bf]
		case f.depth[from] < f.depth[to]:
			down = append(down, leg{bt, f.top[bt], to})
			to = f.top[bt]
		case bf == bt:
			up = append(up, leg{bf, from, to})
			from = to
		default:
			up = append(up, leg{bf, from, f.top[bf]})
			down = append(down, leg{bt, f.top[bt], to})
			from, to = f.top[bf], f.top[bt]
		}
	}
	for k := len(down) - 1; k >= 0; k-- {
		up = append(up, down[k])
	}
	return up
}
