package org.benchwright.report.internal;

import java.awt.BasicStroke;
import java.util.ArrayList;
import java.util.Date;
import java.util.List;
import java.util.Map;
import java.util.TimeZone;

import org.benchwright.core.Plot;
import org.benchwright.core.Plot.Role;
import org.benchwright.core.Plot.Scale;
import org.benchwright.core.Plot.Series;
import org.benchwright.report.Look;
import org.knowm.xchart.CategoryChart;
import org.knowm.xchart.CategoryChartBuilder;
import org.knowm.xchart.CategorySeries;
import org.knowm.xchart.CategorySeries.CategorySeriesRenderStyle;
import org.knowm.xchart.XYChart;
import org.knowm.xchart.XYChartBuilder;
import org.knowm.xchart.XYSeries;
import org.knowm.xchart.XYSeries.XYSeriesRenderStyle;
import org.knowm.xchart.internal.chartpart.IChart;
import org.knowm.xchart.internal.series.AxesChartSeries;
import org.knowm.xchart.internal.series.MarkerSeries;
import org.knowm.xchart.style.markers.Marker;
import org.knowm.xchart.style.markers.SeriesMarkers;

/** A plot as a chart of the library. */
public final class Drawing {

    private static final BasicStroke SOLID = new BasicStroke(2f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);
    private static final BasicStroke FINE = new BasicStroke(1f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);
    private static final BasicStroke DASHED = new BasicStroke(1.5f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10f, new float[] {7f, 5f}, 0f);
    private static final BasicStroke NO_LINE = new BasicStroke(0f);
    private static final double WHOLE = 100;
    private static final Map<Role, XYSeriesRenderStyle> STYLES = Map.of(Role.LINE, XYSeriesRenderStyle.Line, Role.STEPS,
            XYSeriesRenderStyle.Step, Role.POINTS, XYSeriesRenderStyle.Scatter, Role.LIMIT, XYSeriesRenderStyle.Line, Role.ENDS,
            XYSeriesRenderStyle.Scatter, Role.SIGNALS, XYSeriesRenderStyle.Scatter, Role.BARS, XYSeriesRenderStyle.Scatter);
    private static final Map<Role, CategorySeriesRenderStyle> NAMED_STYLES = Map.of(Role.LINE, CategorySeriesRenderStyle.Line, Role.STEPS,
            CategorySeriesRenderStyle.Line, Role.POINTS, CategorySeriesRenderStyle.Scatter, Role.LIMIT, CategorySeriesRenderStyle.Line,
            Role.ENDS, CategorySeriesRenderStyle.Scatter, Role.SIGNALS, CategorySeriesRenderStyle.Scatter, Role.BARS,
            CategorySeriesRenderStyle.Bar);

    private Drawing() {
    }

    /** Makes the chart. */
    public static IChart of(Plot plot, Look look, int width, int height) {
        return plot.scale() == Scale.NAMES ? named(plot, look, width, height) : numbered(plot, look, width, height);
    }

    private static XYChart numbered(Plot plot, Look look, int width, int height) {
        XYChart chart = new XYChartBuilder().width(width).height(height).title(plot.title()).xAxisTitle(plot.x()).yAxisTitle(plot.y()).build();
        Inks inks = Inks.of(look);
        inks.apply(chart.getStyler());
        chart.getStyler().setDatePattern("yyyy-MM-dd").setTimezone(TimeZone.getTimeZone("UTC"));
        for (Series series : plot.series()) {
            if (!series.x().isEmpty()) {
                XYSeries drawn = chart.addSeries(series.name(), places(plot.scale(), series.x()), series.y());
                drawn.setXYSeriesRenderStyle(STYLES.get(series.role()));
                style(drawn, drawn, series.role(), inks);
            }
        }
        return chart;
    }

    private static List<?> places(Scale scale, List<Double> x) {
        return scale == Scale.DATES ? x.stream().map(millis -> new Date(millis.longValue())).toList() : x;
    }

    private static CategoryChart named(Plot plot, Look look, int width, int height) {
        CategoryChart chart = new CategoryChartBuilder().width(width).height(height).title(plot.title()).xAxisTitle(plot.x())
                .yAxisTitle(plot.y()).build();
        Inks inks = Inks.of(look);
        inks.apply(chart.getStyler());
        chart.getStyler().setOverlapped(true).setAvailableSpaceFill(0.6);
        chart.getStyler().setYAxisMin(0.0).setXAxisLabelRotation(plot.categories().size() > 6 ? 30 : 0);
        double highest = plot.series().stream().flatMap(series -> series.y().stream()).mapToDouble(Double::doubleValue).max().orElse(0);
        if (plot.y().contains("%") && highest <= WHOLE) {
            chart.getStyler().setYAxisMax(WHOLE);
        }
        List<String> names = plot.categories().stream().map(Drawing::shortened).toList();
        for (Series series : plot.series()) {
            CategorySeries drawn = chart.addSeries(series.name(), unique(names), series.y());
            drawn.setChartCategorySeriesRenderStyle(NAMED_STYLES.get(series.role()));
            style(drawn, drawn, series.role(), inks);
            drawn.setFillColor(inks.bars());
        }
        return chart;
    }

    private static String shortened(String name) {
        return name.length() <= 28 ? name : name.substring(0, 27) + "\u2026";
    }

    /** The library takes equal names for one place: later ones get a number. */
    private static List<String> unique(List<String> names) {
        List<String> unique = new ArrayList<>();
        for (String name : names) {
            unique.add(unique.contains(name) ? name + " (" + (unique.size() + 1) + ")" : name);
        }
        return unique;
    }

    private static void style(AxesChartSeries line, MarkerSeries marks, Role role, Inks inks) {
        line.setLineColor(inks.of(role));
        marks.setMarkerColor(inks.of(role));
        line.setLineStyle(switch (role) {
            case STEPS -> SOLID;
            case LINE -> FINE;
            case LIMIT -> DASHED;
            case BARS, POINTS, ENDS, SIGNALS -> NO_LINE;
        });
        marks.setMarker(marker(role));
    }

    private static Marker marker(Role role) {
        return switch (role) {
            case BARS, LIMIT, STEPS -> SeriesMarkers.NONE;
            case LINE, POINTS -> SeriesMarkers.CIRCLE;
            case SIGNALS -> SeriesMarkers.DIAMOND;
            case ENDS -> new Dash();
        };
    }
}
