package org.benchwright.present.internal;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

import org.benchwright.core.Plot;
import org.benchwright.core.Plot.Role;
import org.benchwright.core.Plot.Series;
import org.benchwright.core.SheetTable;
import org.benchwright.evidence.SamplingPlan;
import org.benchwright.evidence.SamplingTable;
import org.benchwright.evidence.SamplingTable.Level;
import org.benchwright.present.Figure;
import org.benchwright.workshop.Fleet;

/** How many of the records somebody has to review, and what such a sample lets pass: the plans of ISO 2859-1 for as many tests as ended. */
public final class ReviewFigure {

    private static final List<String> QUALITIES = List.of("0.65", "1.0", "2.5", "4.0");
    /** The quality level whose plan is drawn and told. */
    private static final String TOLD = "1.0";
    private static final int MOST_FAULTY_PERCENT = 15;
    private static final int[] SHOWN_PERCENT = {1, 5, 10};

    private ReviewFigure() {
    }

    /** The figure. */
    public static Figure of(List<Fleet.Group> groups) {
        long ended = groups.stream().filter(group -> group.state().verdict().isPresent()).mapToLong(Fleet.Group::count).sum();
        if (ended < 2) {
            return new Figure(FigureWords.REVIEW.text(), List.of(FigureWords.REVIEW_NONE.text(ended)), Optional.empty(), List.of());
        }
        int lot = Math.toIntExact(ended);
        SamplingPlan told = plan(lot, TOLD);
        List<String> sentences = new ArrayList<>();
        sentences.add(told.sampleSize() >= lot ? FigureWords.REVIEW_ALL.text(lot, TOLD)
                : FigureWords.REVIEW_SAYS.text(lot, told.sampleSize(), told.acceptance(), TOLD, Numbers.percent(chance(told, lot, 1)),
                        Numbers.percent(chance(told, lot, 5)), Numbers.percent(chance(told, lot, 10))));
        sentences.add(FigureWords.REVIEW_TABLE.text());
        List<List<String>> rows = QUALITIES.stream().map(quality -> row(lot, quality)).toList();
        SheetTable table = new SheetTable("review-sampling", List.of(FigureWords.REVIEW_QUALITY.text(), FigureWords.REVIEW_SAMPLE.text(),
                FigureWords.REVIEW_ACCEPTANCE.text(), FigureWords.REVIEW_AT.text(1), FigureWords.REVIEW_AT.text(5),
                FigureWords.REVIEW_AT.text(10)), rows);
        return new Figure(FigureWords.REVIEW.text(), sentences, told.sampleSize() >= lot ? Optional.empty() : Optional.of(plot(told, lot)),
                List.of(table));
    }

    private static SamplingPlan plan(int lot, String quality) {
        return SamplingTable.plan(lot, Level.II, new BigDecimal(quality));
    }

    /** The chance that the lot is accepted although so many of a hundred records are faulty; drawn without putting back. */
    private static double chance(SamplingPlan plan, int lot, double percent) {
        return new SamplingPlan(Math.min(lot, plan.sampleSize()), plan.acceptance()).probabilityOfAcceptance(lot,
                (int) Math.round(lot * percent / 100));
    }

    private static List<String> row(int lot, String quality) {
        SamplingPlan plan = plan(lot, quality);
        List<String> row = new ArrayList<>(List.of(quality, String.valueOf(Math.min(lot, plan.sampleSize())),
                String.valueOf(plan.acceptance())));
        for (int percent : SHOWN_PERCENT) {
            row.add(Numbers.percent(chance(plan, lot, percent)));
        }
        return row;
    }

    private static Plot plot(SamplingPlan plan, int lot) {
        List<Double> percents = IntStream.rangeClosed(0, 4 * MOST_FAULTY_PERCENT).mapToObj(i -> i / 4.0).toList();
        return new Plot(FigureWords.REVIEW.text(), FigureWords.REVIEW_FAULTY.text(), FigureWords.REVIEW_CHANCE.text(), Plot.Scale.NUMBERS,
                List.of(), List.of(new Series(FigureWords.REVIEW_CURVE.text(plan.sampleSize(), plan.acceptance()), Role.LINE, percents,
                        percents.stream().map(percent -> 100 * chance(plan, lot, percent)).toList())));
    }
}
