package org.benchwright.report.internal;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.util.Locale;

import org.benchwright.core.Plot.Role;
import org.benchwright.report.Look;
import org.knowm.xchart.style.AxesChartStyler;
import org.knowm.xchart.style.Styler.LegendLayout;
import org.knowm.xchart.style.Styler.LegendPosition;

/**
 * Colours and fonts of a chart. Roles differ by shape too, so that grey paper and colour-blind eyes lose nothing.
 *
 * @param ground behind everything
 * @param text   words and axes
 * @param grid   fine lines
 * @param data   what was measured
 * @param bars   the inside of bars
 * @param limit  limits and ends of intervals
 * @param signal what stands out
 */
record Inks(Color ground, Color text, Color grid, Color data, Color bars, Color limit, Color signal) {

    private static final Inks LIGHT = new Inks(new Color(255, 255, 255), new Color(16, 20, 23), new Color(214, 219, 223),
            new Color(20, 84, 150), new Color(150, 186, 222), new Color(96, 62, 10), new Color(168, 32, 20));
    private static final Inks DARK = new Inks(new Color(20, 24, 27), new Color(240, 243, 245), new Color(62, 70, 77),
            new Color(122, 186, 250), new Color(52, 104, 156), new Color(240, 198, 120), new Color(255, 138, 118));
    private static final Inks PRINT = new Inks(Color.WHITE, Color.BLACK, new Color(210, 210, 210), Color.BLACK,
            new Color(190, 190, 190), new Color(70, 70, 70), new Color(150, 0, 0));

    static Inks of(Look look) {
        return switch (look) {
            case LIGHT -> LIGHT;
            case DARK -> DARK;
            case PRINT -> PRINT;
        };
    }

    Color of(Role role) {
        return switch (role) {
            case STEPS -> text;
            case BARS, LINE, POINTS -> data;
            case LIMIT, ENDS -> limit;
            case SIGNALS -> signal;
        };
    }

    void apply(AxesChartStyler styler) {
        // Numbers beside a plot have points wherever it is printed, and so have those on it.
        styler.setLocale(Locale.ROOT);
        Font words = new Font(Font.SANS_SERIF, Font.PLAIN, 14);
        styler.setBaseFont(words).setChartBackgroundColor(ground).setPlotBackgroundColor(ground).setPlotBorderVisible(false)
                .setChartFontColor(text).setLegendBackgroundColor(ground).setLegendBorderColor(ground).setLegendFont(words)
                .setLegendPosition(LegendPosition.OutsideS).setLegendLayout(LegendLayout.Horizontal)
                .setChartTitleFont(words.deriveFont(Font.BOLD, 16f)).setAntiAlias(true).setChartPadding(8);
        styler.setAxisTickLabelsFont(words).setAxisTitleFont(words).setAxisTickLabelsColor(text).setAxisTickMarksColor(text)
                .setPlotGridLinesColor(grid).setPlotGridLinesStroke(new BasicStroke(1f)).setPlotGridVerticalLinesVisible(false);
        styler.setXAxisTitleColor(text);
        styler.setYAxisTitleColor(text);
        styler.setMarkerSize(6);
    }
}
