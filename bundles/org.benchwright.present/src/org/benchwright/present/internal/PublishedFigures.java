package org.benchwright.present.internal;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.Stream;

import org.benchwright.evidence.Lifetime;
import org.benchwright.evidence.SamplingPlan;
import org.benchwright.evidence.SamplingTable;
import org.benchwright.evidence.Soak;
import org.benchwright.evidence.SuccessRun;
import org.benchwright.evidence.SurvivalCurve;
import org.benchwright.evidence.Uncertainty;

/** Figures of soaks, returns, measurements and samples that others have printed, reckoned again by this copy; sources beside each. */
public final class PublishedFigures {

    private static final double PRINTED_DIGITS = 1e-3;

    private PublishedFigures() {
    }

    /** One of them, and whether this copy comes to it. */
    public record Checked(String name, boolean holds) {
    }

    /** All of them. */
    public static List<Checked> check() {
        return List.of(new Checked(Message.SHEET_MEAN_TIME.text(), meanTime()), new Checked(Message.SHEET_SUCCESS_RUN.text(), successRun()),
                new Checked(Message.SHEET_SURVIVAL.text(), survival()), new Checked(Message.SHEET_COVERAGE.text(), coverage()),
                new Checked(Message.SHEET_SAMPLE.text(), sample()));
    }

    /** NIST/SEMATECH e-Handbook 8.4.5.1: 800 h, 2 failures, 90 %: 127.0690 to 2251.229. */
    private static boolean meanTime() {
        Soak.MeanTime limits = Soak.limits(800, 2, 0.90, Soak.End.AT_A_TIME);
        return near(127.0690, limits.lower()) && limits.upper().isPresent() && near(2251.229, limits.upper().getAsDouble());
    }

    /** Documents of the package reliability: 2995 trials for 0.999 at 95 %. */
    private static boolean successRun() {
        return SuccessRun.CLASSIC.trials(0.999, 0.95) == 2995;
    }

    /** Gehan's data, as the package MASS prints them: 0.857 at 6, standard error 0.0764. */
    private static boolean survival() {
        List<Lifetime> well = List.of(9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35, 6).stream().map(Lifetime::aliveAt).toList();
        List<Lifetime> failed = List.of(6, 6, 6, 7, 10, 13, 16, 22, 23).stream().map(Lifetime::failedAt).toList();
        SurvivalCurve.Step first = SurvivalCurve.of(Stream.concat(well.stream(), failed.stream()).toList()).steps().get(0);
        return near(0.857143, first.survival()) && first.standardError().isPresent() && near(0.0764, first.standardError().getAsDouble());
    }

    /** GUM, table G.2: 2.92 for 16 degrees of freedom at 99 %. */
    private static boolean coverage() {
        return Math.abs(new Uncertainty(1, 16).coverageFactor(0.99) - 2.92) < 5e-3;
    }

    /** MIL-STD-105E, level II: 13 of a lot of 100 at 1.0 %, none nonconforming. */
    private static boolean sample() {
        return SamplingTable.plan(100, SamplingTable.Level.II, new BigDecimal("1.0")).equals(new SamplingPlan(13, 0));
    }

    private static boolean near(double printed, double reckoned) {
        return Math.abs(printed - reckoned) < PRINTED_DIGITS;
    }
}
