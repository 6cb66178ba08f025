package org.benchwright.ui.internal.flow;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;

import org.benchwright.core.Cancellation;
import org.benchwright.language.proof.FlowDiagram;
import org.benchwright.language.proof.FlowPlace;
import org.benchwright.language.proof.FlowWay;
import org.benchwright.ui.internal.flow.PlacedFlow.Box;
import org.benchwright.ui.internal.flow.PlacedFlow.Line;
import org.benchwright.ui.internal.flow.PlacedFlow.Point;
import org.eclipse.elk.alg.layered.options.LayeredMetaDataProvider;
import org.eclipse.elk.alg.layered.options.LayeredOptions;
import org.eclipse.elk.alg.layered.options.OrderingStrategy;
import org.eclipse.elk.core.RecursiveGraphLayoutEngine;
import org.eclipse.elk.core.data.LayoutMetaDataService;
import org.eclipse.elk.core.math.ElkPadding;
import org.eclipse.elk.core.options.CoreOptions;
import org.eclipse.elk.core.options.Direction;
import org.eclipse.elk.core.options.EdgeRouting;
import org.eclipse.elk.core.options.PortConstraints;
import org.eclipse.elk.core.options.PortSide;
import org.eclipse.elk.core.util.BasicProgressMonitor;
import org.eclipse.elk.graph.ElkEdge;
import org.eclipse.elk.graph.ElkEdgeSection;
import org.eclipse.elk.graph.ElkLabel;
import org.eclipse.elk.graph.ElkNode;
import org.eclipse.elk.graph.ElkPort;
import org.eclipse.elk.graph.util.ElkGraphUtil;

/** Lays a flow out from top to bottom, in layers, with ways that turn at right angles. Needs no display and may take a second. */
public final class FlowLayout {

    private static final double STEP_WIDTH = 236;
    private static final double STEP_HEIGHT = 58;
    private static final double END_WIDTH = 92;
    private static final double END_HEIGHT = 26;
    private static final double LETTER = 6.4;
    private static final double LABEL_HEIGHT = 15;
    private static final double MARGIN = 14;

    private static final LayoutMetaDataService ALGORITHMS = algorithms();

    private FlowLayout() {
    }

    /**
     * Lays a flow out.
     *
     * @throws CancellationException if cancelled
     */
    public static PlacedFlow of(FlowDiagram diagram, Cancellation cancellation) {
        ElkNode graph = graph();
        List<Shape> shapes = diagram.places().stream().map(place -> new Shape(graph, place)).toList();
        List<ElkEdge> edges = diagram.ways().stream().map(way -> edge(diagram, shapes, way)).toList();
        new RecursiveGraphLayoutEngine().layout(graph, new BasicProgressMonitor() {
            @Override
            public boolean isCanceled() {
                return cancellation.requested();
            }
        });
        if (cancellation.requested()) {
            throw new CancellationException();
        }
        List<Box> boxes = shapes.stream().map(shape -> shape.node).map(node -> new Box(node.getX(), node.getY(), node.getWidth(), node.getHeight()))
                .toList();
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < edges.size(); i++) {
            lines.add(line(diagram, diagram.ways().get(i), edges.get(i)));
        }
        return new PlacedFlow(diagram, boxes, lines, graph.getWidth(), graph.getHeight());
    }

    /** Tells the library of its own algorithm: inside OSGi it does not find that by itself. Once, for it keeps it for everybody. */
    private static LayoutMetaDataService algorithms() {
        LayoutMetaDataService service = LayoutMetaDataService.getInstance();
        service.registerLayoutMetaDataProviders(new LayeredMetaDataProvider());
        return service;
    }

    private static ElkNode graph() {
        ElkNode graph = ElkGraphUtil.createGraph();
        graph.setProperty(CoreOptions.ALGORITHM, ALGORITHMS.getAlgorithmData(LayeredOptions.ALGORITHM_ID).getId());
        graph.setProperty(CoreOptions.DIRECTION, Direction.DOWN);
        graph.setProperty(CoreOptions.EDGE_ROUTING, EdgeRouting.ORTHOGONAL);
        graph.setProperty(CoreOptions.PADDING, new ElkPadding(MARGIN));
        graph.setProperty(CoreOptions.SPACING_NODE_NODE, 18.0);
        graph.setProperty(CoreOptions.SPACING_COMPONENT_COMPONENT, 40.0);
        graph.setProperty(LayeredOptions.SPACING_NODE_NODE_BETWEEN_LAYERS, 26.0);
        graph.setProperty(LayeredOptions.SPACING_EDGE_NODE_BETWEEN_LAYERS, 12.0);
        // What stands first in the text stays first, so that typing moves as little as may be.
        graph.setProperty(LayeredOptions.CONSIDER_MODEL_ORDER_STRATEGY, OrderingStrategy.NODES_AND_EDGES);
        return graph;
    }

    /**
     * A place as the library knows it. The straight way comes in above and leaves below, so that it runs in one line; all else leaves at the sides.
     */
    private static final class Shape {

        private final ElkNode node;
        private final ElkPort above;
        private final ElkPort below;
        private final ElkPort left;
        private final ElkPort right;

        Shape(ElkNode graph, FlowPlace place) {
            node = ElkGraphUtil.createNode(graph);
            boolean small = place.isEnd() || place.kind() == FlowPlace.Kind.OVER;
            node.setDimensions(small ? END_WIDTH : STEP_WIDTH, small ? END_HEIGHT : STEP_HEIGHT);
            node.setProperty(CoreOptions.PORT_CONSTRAINTS, PortConstraints.FIXED_POS);
            above = port(PortSide.NORTH, node.getWidth() / 2, 0);
            below = port(PortSide.SOUTH, node.getWidth() / 2, node.getHeight());
            left = port(PortSide.WEST, 0, node.getHeight() / 2);
            right = port(PortSide.EAST, node.getWidth(), node.getHeight() / 2);
        }

        private ElkPort port(PortSide side, double x, double y) {
            ElkPort port = ElkGraphUtil.createPort(node);
            port.setDimensions(0, 0);
            port.setLocation(x, y);
            port.setProperty(CoreOptions.PORT_SIDE, side);
            return port;
        }

        /** Ends stand to the left, other ways go round on the right. */
        ElkPort leaving(FlowWay way, FlowPlace to) {
            return way.kind().isStraight() ? below : to.isEnd() ? left : right;
        }
    }

    private static ElkEdge edge(FlowDiagram diagram, List<Shape> shapes, FlowWay way) {
        ElkPort from = shapes.get(way.from()).leaving(way, diagram.places().get(way.to()));
        Shape target = shapes.get(way.to());
        boolean aside = !way.kind().isStraight() && diagram.places().get(way.to()).isEnd();
        ElkEdge edge = ElkGraphUtil.createSimpleEdge(from, aside ? target.right : target.above);
        boolean straight = way.kind().isStraight();
        edge.setProperty(LayeredOptions.PRIORITY_STRAIGHTNESS, straight ? 20 : 1);
        edge.setProperty(LayeredOptions.PRIORITY_DIRECTION, straight ? 20 : 1);
        String words = words(diagram, way);
        if (!words.isEmpty()) {
            ElkLabel label = ElkGraphUtil.createLabel(words, edge);
            label.setDimensions(words.length() * LETTER + 6, LABEL_HEIGHT);
        }
        return edge;
    }

    private static Line line(FlowDiagram diagram, FlowWay way, ElkEdge edge) {
        ElkEdgeSection section = edge.getSections().get(0);
        List<Point> points = new ArrayList<>();
        points.add(new Point(section.getStartX(), section.getStartY()));
        section.getBendPoints().forEach(bend -> points.add(new Point(bend.getX(), bend.getY())));
        points.add(new Point(section.getEndX(), section.getEndY()));
        Box label = edge.getLabels().stream().findFirst().map(each -> new Box(each.getX(), each.getY(), each.getWidth(), each.getHeight()))
                .orElse(new Box(0, 0, 0, 0));
        return new Line(way, points, label, words(diagram, way));
    }

    /** What leads to an end is told where that is selected; there is no room beside it. */
    private static String words(FlowDiagram diagram, FlowWay way) {
        return diagram.places().get(way.to()).isEnd() ? "" : way.label();
    }
}
