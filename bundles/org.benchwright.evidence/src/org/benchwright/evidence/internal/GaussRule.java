package org.benchwright.evidence.internal;

import org.hipparchus.analysis.integration.gauss.GaussIntegrator;
import org.hipparchus.analysis.integration.gauss.GaussIntegratorFactory;

/** A Gauss-Legendre rule, worked out once and laid over as many panels as wanted. */
final class GaussRule {

    /** Takes a point and its weight. */
    @FunctionalInterface
    interface Visitor {
        void visit(double point, double weight);
    }

    private final GaussIntegrator unit;

    GaussRule(int points) {
        unit = new GaussIntegratorFactory().legendre(points);
    }

    /** Visits the points of equal panels between two ends, in order. */
    void over(double from, double to, int panels, Visitor visitor) {
        double half = (to - from) / panels / 2;
        for (int panel = 0; panel < panels; panel++) {
            double middle = from + (2 * panel + 1) * half;
            for (int i = 0; i < unit.getNumberOfPoints(); i++) {
                visitor.visit(middle + half * unit.getPoint(i), half * unit.getWeight(i));
            }
        }
    }
}
