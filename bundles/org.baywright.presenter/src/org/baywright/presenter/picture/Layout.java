package org.baywright.presenter.picture;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;

import org.baywright.presenter.picture.LaidOut.Box;
import org.baywright.presenter.picture.LaidOut.Point;
import org.baywright.presenter.picture.LaidOut.Rect;
import org.baywright.presenter.picture.LaidOut.Route;
import org.eclipse.elk.alg.layered.LayeredLayoutProvider;
import org.eclipse.elk.alg.layered.options.LayeredOptions;
import org.eclipse.elk.core.data.LayoutMetaDataService;
import org.eclipse.elk.core.math.ElkPadding;
import org.eclipse.elk.core.options.Direction;
import org.eclipse.elk.core.options.EdgeRouting;
import org.eclipse.elk.core.util.BasicProgressMonitor;
import org.eclipse.elk.graph.ElkEdge;
import org.eclipse.elk.graph.ElkEdgeSection;
import org.eclipse.elk.graph.ElkLabel;
import org.eclipse.elk.graph.ElkNode;
import org.eclipse.elk.graph.util.ElkGraphUtil;

/** Finds a place for everything in a picture: layers from left to right, lines at right angles. */
public final class Layout {

	private static final double BOX_WIDTH = 190;
	private static final double LABEL_WIDTH = 150;
	private static final double PADDING = Shape.PADDING;
	private static final double MARGIN = 16;
	private static final double GAP = 14;
	private static final double LAYER_GAP = 34;
	/** Beyond this many nodes the layout looks less long for the fewest crossings. */
	private static final int LARGE = 300;

	static {
		LayoutMetaDataService.initElkReflect(); // teaches the library to copy its own default values
	}

	private final Picture picture;
	private final TextMetrics metrics;
	private final ElkNode graph = ElkGraphUtil.createGraph();
	private final Map<String, ElkNode> nodes = new HashMap<>();
	private final List<ElkEdge> edges = new ArrayList<>();

	private Layout(Picture picture, TextMetrics metrics) {
		this.picture = picture;
		this.metrics = metrics;
	}

	/**
	 * Lays a picture out; the same picture and metrics give the same layout.
	 *
	 * @param cancelled asked now and then whether to stop
	 * @throws CancellationException if it was asked to stop
	 */
	public static LaidOut of(Picture picture, TextMetrics metrics, BooleanSupplier cancelled) {
		return new Layout(picture, metrics).run(cancelled);
	}

	private LaidOut run(BooleanSupplier cancelled) {
		graph.setProperty(LayeredOptions.DIRECTION, Direction.RIGHT);
		graph.setProperty(LayeredOptions.EDGE_ROUTING, EdgeRouting.ORTHOGONAL);
		graph.setProperty(LayeredOptions.PADDING, new ElkPadding(MARGIN));
		graph.setProperty(LayeredOptions.SPACING_NODE_NODE, GAP);
		graph.setProperty(LayeredOptions.SPACING_NODE_NODE_BETWEEN_LAYERS, LAYER_GAP);
		graph.setProperty(LayeredOptions.RANDOM_SEED, 1);
		graph.setProperty(LayeredOptions.THOROUGHNESS, picture.nodes().size() > LARGE ? 2 : LayeredOptions.THOROUGHNESS.getDefault());
		picture.nodes().forEach(this::add);
		picture.edges().forEach(this::add);
		BasicProgressMonitor monitor = new BasicProgressMonitor() {
			@Override
			public boolean isCanceled() {
				return cancelled.getAsBoolean();
			}
		};
		new LayeredLayoutProvider().layout(graph, monitor);
		if (cancelled.getAsBoolean()) {
			throw new CancellationException();
		}
		return new LaidOut(picture, graph.getWidth(), graph.getHeight(), boxes(), routes());
	}

	private void add(Node node) {
		ElkNode shape = ElkGraphUtil.createNode(graph);
		shape.setDimensions(BOX_WIDTH, 2 * PADDING + title(node).size() * metrics.height(TextMetrics.Style.TITLE)
				+ detail(node).size() * metrics.height(TextMetrics.Style.DETAIL));
		nodes.put(node.id(), shape);
	}

	private void add(Edge edge) {
		ElkEdge line = ElkGraphUtil.createSimpleEdge(nodes.get(edge.from()), nodes.get(edge.to()));
		if (!edge.label().isEmpty()) {
			List<String> lines = label(edge);
			ElkLabel label = ElkGraphUtil.createLabel(edge.label(), line);
			label.setDimensions(
					lines.stream().mapToDouble(text -> metrics.width(text, TextMetrics.Style.LABEL)).max().orElse(0),
					lines.size() * metrics.height(TextMetrics.Style.LABEL));
		}
		edges.add(line);
	}

	private List<String> title(Node node) {
		return Wrap.lines(node.title(), BOX_WIDTH - 2 * PADDING, metrics, TextMetrics.Style.TITLE);
	}

	private List<String> detail(Node node) {
		return node.detail().isEmpty() ? List.of()
				: Wrap.lines(node.detail(), BOX_WIDTH - 2 * PADDING, metrics, TextMetrics.Style.DETAIL);
	}

	private List<String> label(Edge edge) {
		return edge.label().isEmpty() ? List.of()
				: Wrap.lines(edge.label(), LABEL_WIDTH, metrics, TextMetrics.Style.LABEL);
	}

	private List<Box> boxes() {
		return picture.nodes().stream().map(node -> {
			ElkNode shape = nodes.get(node.id());
			return new Box(node, new Rect(shape.getX(), shape.getY(), shape.getWidth(), shape.getHeight()), title(node),
					detail(node));
		}).toList();
	}

	private List<Route> routes() {
		List<Route> routes = new ArrayList<>();
		for (int i = 0; i < edges.size(); i++) {
			ElkEdgeSection section = edges.get(i).getSections().get(0);
			List<Point> points = new ArrayList<>();
			points.add(new Point(section.getStartX(), section.getStartY()));
			section.getBendPoints().forEach(bend -> points.add(new Point(bend.getX(), bend.getY())));
			points.add(new Point(section.getEndX(), section.getEndY()));
			Rect place = edges.get(i).getLabels().stream().findFirst()
					.map(label -> new Rect(label.getX(), label.getY(), label.getWidth(), label.getHeight()))
					.orElse(new Rect(points.get(0).x(), points.get(0).y(), 0, 0));
			routes.add(new Route(picture.edges().get(i), points, place, label(picture.edges().get(i))));
		}
		return routes;
	}
}
