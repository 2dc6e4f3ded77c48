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
	flat   []int // the branches of all blocks, one after the other

	members [][]int // by block: its nodes but the top, once found
	under   [][]int // by node: the blocks that it is the top of, once found
}

// findUnder notes the nodes of each block and the blocks under each node.
func (f *forest) findUnder() {
	f.members = lists(len(f.blocks), f.above)
	f.under = lists(len(f.above), f.top)
}

// lists returns for each value what has it: i is in list of[i], unless that is -1.
func lists(values int, of []int) [][]int {
	count := make([]int, values)
	for _, v := range of {
		if v >= 0 {
			count[v]++
		}
	}
	out, all := make([][]int, values), make([]int, len(of))
	for v, c := range count {
		out[v], all = all[:0:c], all[c:]
	}
	for i, v := range of {
		if v >= 0 {
			out[v] = append(out[v], i)
		}
	}
	return out
}

// newForest finds the blocks of the closed branches. The tree of its island is
// rooted at the given node, -1 for any.
func newForest(n *network, closed []int, root int) *forest {
	size := len(n.nodes)
	kept, room := make([]int, 3*size), n.roomFor(8*size+1+2*len(closed))
	take := func(count int) (part []int) { part, room = room[:count:count], room[count:]; return part }
	f := &forest{
		island: kept[:size:size], above: kept[size : 2*size : 2*size], depth: kept[2*size:],
		blocks: make([][]int, 0, len(closed)), top: make([]int, 0, len(closed)), flat: make([]int, 0, len(closed)),
	}
	start, next, near := take(size+1), take(size), take(2*len(closed))
	adjacency(n, closed, start, next, near)
	seen, low := take(size), take(size) // from 1
	for i := range f.above {
		f.above[i], f.island[i] = -1, -1
	}
	order := take(size)[:0]
	path, over := take(size)[:0], take(size)[:0] // nodes, branch into each
	var stack []int                              // branches not yet in a block
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
				f.addBlock(n, stack[k:], up)
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
	at := len(f.flat)
	f.flat = append(f.flat, branches...)
	branches = f.flat[at:len(f.flat):len(f.flat)]
	for _, i := range branches {
		for _, node := range [2]int{n.branches[i].a, n.branches[i].b} {
			if node != top {
				f.above[node] = len(f.blocks)
			}
		}
	}
	f.blocks = append(f.blocks, branches)
	f.top = append(f.top, top)
}

// adjacency writes down the closed branches at each node, near[start[i]:start[i+1]],
// and the first of each.
func adjacency(n *network, closed []int, start, first, near []int) {
	for _, i := range closed {
		start[n.branches[i].a+1]++
		start[n.branches[i].b+1]++
	}
	for i := range n.nodes {
		start[i+1] += start[i]
	}
	copy(first, start)
	for _, i := range closed {
		for _, node := range [2]int{n.branches[i].a, n.branches[i].b} {
			near[first[node]] = i
			first[node]++
		}
	}
	copy(first, start)
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
