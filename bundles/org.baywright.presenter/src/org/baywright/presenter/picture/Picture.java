package org.baywright.presenter.picture;

import java.util.List;
import java.util.Optional;

import org.baywright.model.RuleBase;
import org.baywright.presenter.RuleScope;

/**
 * A graph of rules, or of the steps of a plan, not yet laid out.
 *
 * @param title what the picture shows
 * @param about how it is to be read, in a sentence
 * @param nodes in a fixed order
 * @param edges in a fixed order; both ends are among the nodes
 * @param rules how many rules are in it
 */
public record Picture(String title, String about, List<Node> nodes, List<Edge> edges, int rules) {

	public Picture {
		nodes = List.copyOf(nodes);
		edges = List.copyOf(edges);
	}

	/** Draws some rules. */
	public static Picture of(RuleBase base, RuleScope scope) {
		return new PictureMaker(base).picture(scope);
	}

	public Optional<Node> node(String id) {
		return nodes.stream().filter(node -> node.id().equals(id)).findFirst();
	}
}
