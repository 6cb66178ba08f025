package org.benchwright.core;

import java.util.List;

/**
 * What a plot shows, as plain values: whoever derives the numbers makes it, whoever draws takes it, and neither knows the other.
 *
 * @param title      above it
 * @param x          what goes to the right, with its unit
 * @param y          what goes up, with its unit
 * @param scale      what the numbers to the right mean
 * @param categories the names of places 0, 1, 2 ... when the scale is {@link Scale#NAMES}, otherwise empty
 * @param series     what is drawn
 */
public record Plot(String title, String x, String y, Scale scale, List<String> categories, List<Series> series) {

    /** Freezes the lists. */
    public Plot {
        categories = List.copyOf(categories);
        series = List.copyOf(series);
    }

    /** What the numbers to the right mean. */
    public enum Scale {
        /** Places with names. */
        NAMES,
        /** Numbers. */
        NUMBERS,
        /** Milliseconds since 1970. */
        DATES
    }

    /** What a series is, and so how it is drawn; never told by colour alone. */
    public enum Role {
        /** Bars from zero. */
        BARS,
        /** A line through points. */
        LINE,
        /** A line that stays level until it changes. */
        STEPS,
        /** Points alone. */
        POINTS,
        /** A limit, or what a model says: a dashed line. */
        LIMIT,
        /** The lower and the upper end of what is uncertain: small dashes. */
        ENDS,
        /** Points that stand out. */
        SIGNALS
    }

    /**
     * Points that belong together.
     *
     * @param name in the legend
     * @param role what they are
     * @param x    places, in order
     * @param y    heights, as many
     */
    public record Series(String name, Role role, List<Double> x, List<Double> y) {

        /**
         * Freezes the numbers.
         *
         * @throws IllegalArgumentException when there are more of one than of the other
         */
        public Series {
            x = List.copyOf(x);
            y = List.copyOf(y);
            if (x.size() != y.size()) {
                throw new IllegalArgumentException("Each point needs a place and a height: " + x.size() + ", " + y.size());
            }
        }
    }
}
