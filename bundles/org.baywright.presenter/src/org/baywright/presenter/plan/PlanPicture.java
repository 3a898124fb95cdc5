package org.baywright.presenter.plan;

import java.util.ArrayList;
import java.util.List;

import org.baywright.model.Span;
import org.baywright.presenter.picture.Edge;
import org.baywright.presenter.picture.Node;
import org.baywright.presenter.picture.Picture;

/** Makes a picture of the tree of a plan. */
final class PlanPicture {

	private static final String ABOUT = "From left to right: what to do, what is found with its share of a hundred vehicles, and how it ends.";

	private final List<Node> nodes = new ArrayList<>();
	private final List<Edge> edges = new ArrayList<>();

	private PlanPicture() {
	}

	static Picture of(PlanShown plan) {
		PlanPicture picture = new PlanPicture();
		plan.tree().ifPresent(picture::add);
		return new Picture(plan.title(), ABOUT, picture.nodes, picture.edges, 0);
	}

	private String add(Twig twig) {
		String id = "place:" + nodes.size();
		nodes.add(new Node(id, kind(twig.kind()), twig.title(), twig.detail(), twig.span()));
		twig.after().forEach(next -> edges.add(new Edge(id, add(next), Edge.Kind.FOLLOWS, next.leads(), Span.NONE)));
		return id;
	}

	private static Node.Kind kind(Twig.Kind kind) {
		return switch (kind) {
		case STEP -> Node.Kind.STEP;
		case CONFIRMED -> Node.Kind.CONFIRMED;
		case REFERRED -> Node.Kind.REFERRAL;
		case NOTHING -> Node.Kind.NOTHING;
		case MORE -> Node.Kind.MORE;
		};
	}
}
