package org.baywright.analysis.proof;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Order of derivation: the strongly connected groups of a dependency graph, what is needed first coming first. */
public final class Strata {

	/** One dependency: {@code from} looks at {@code to}; {@code onAbsence} if it holds when {@code to} does not. */
	public record Edge(int to, boolean onAbsence) {
	}

	private final List<List<Edge>> edges;
	private final int[] group;
	private final List<int[]> groups = new ArrayList<>();

	/** @param edges for each node what it looks at */
	public Strata(List<List<Edge>> edges) {
		this.edges = edges;
		group = new int[edges.size()];
		Arrays.fill(group, -1);
		new Tarjan().run();
	}

	/** Returns the groups of nodes, needed ones first; a group of one node need not look at itself. */
	public List<int[]> groups() {
		return groups;
	}

	public int groupOf(int node) {
		return group[node];
	}

	/** Returns whether nodes of the group look at each other (or one at itself). */
	public boolean isLoop(int[] nodes) {
		if (nodes.length > 1) {
			return true;
		}
		return edges.get(nodes[0]).stream().anyMatch(edge -> edge.to() == nodes[0]);
	}

	/**
	 * Returns for each dependency on absence that lies on a circle a shortest circle through it, as the nodes on it in
	 * order of looking; the last looks at the absence of the first. A circle through several of them comes once.
	 */
	public List<int[]> circles() {
		Map<Set<Integer>, int[]> byNodes = new LinkedHashMap<>();
		for (int node = 0; node < edges.size(); node++) {
			for (Edge edge : edges.get(node)) {
				if (edge.onAbsence() && group[edge.to()] == group[node]) {
					int[] path = path(edge.to(), node);
					byNodes.putIfAbsent(Arrays.stream(path).boxed().collect(Collectors.toSet()), path);
				}
			}
		}
		return List.copyOf(byNodes.values());
	}

	private int[] path(int from, int to) {
		int[] cameFrom = new int[edges.size()];
		Arrays.fill(cameFrom, -1);
		cameFrom[from] = from;
		Deque<Integer> queue = new ArrayDeque<>(List.of(from));
		while (cameFrom[to] < 0) {
			int node = queue.remove();
			for (Edge edge : edges.get(node)) {
				if (group[edge.to()] == group[node] && cameFrom[edge.to()] < 0) {
					cameFrom[edge.to()] = node;
					queue.add(edge.to());
				}
			}
		}
		List<Integer> back = new ArrayList<>(List.of(to));
		for (int node = to; node != from; node = cameFrom[node]) {
			back.add(cameFrom[node]);
		}
		int[] path = new int[back.size()];
		for (int i = 0; i < path.length; i++) {
			path[i] = back.get(path.length - 1 - i);
		}
		return path;
	}

	/** Tarjan's algorithm, with its own stack so that long chains cannot overflow the thread's. */
	private final class Tarjan {
		private final int[] index = new int[edges.size()];
		private final int[] low = new int[edges.size()];
		private final int[] nextEdge = new int[edges.size()];
		private final boolean[] open = new boolean[edges.size()];
		private final Deque<Integer> members = new ArrayDeque<>();
		private final Deque<Integer> calls = new ArrayDeque<>();
		private int counter = 1;

		void run() {
			for (int node = 0; node < edges.size(); node++) {
				if (index[node] == 0) {
					enter(node);
					while (!calls.isEmpty()) {
						step(calls.peek());
					}
				}
			}
		}

		private void enter(int node) {
			index[node] = counter;
			low[node] = counter;
			counter++;
			open[node] = true;
			members.push(node);
			calls.push(node);
		}

		private void step(int node) {
			List<Edge> out = edges.get(node);
			while (nextEdge[node] < out.size()) {
				int to = out.get(nextEdge[node]).to();
				if (index[to] == 0) {
					enter(to);
					return; // comes back to the same edge when the call is done
				}
				if (open[to]) {
					low[node] = Math.min(low[node], low[to]);
				}
				nextEdge[node]++;
			}
			calls.pop();
			if (low[node] == index[node]) {
				close(node);
			}
		}

		private void close(int root) {
			List<Integer> nodes = new ArrayList<>();
			int node;
			do {
				node = members.pop();
				open[node] = false;
				group[node] = groups.size();
				nodes.add(node);
			} while (node != root);
			groups.add(nodes.stream().mapToInt(Integer::intValue).sorted().toArray());
		}
	}
}
