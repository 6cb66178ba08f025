package org.benchwright.present.internal;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

import org.benchwright.present.FigureFilter;
import org.benchwright.present.Figures;
import org.benchwright.workshop.Fleet;
import org.benchwright.workshop.Fleet.State;

/** What figures rest on, in sentences. */
public final class FigureBasis {

    private FigureBasis() {
    }

    /** The sentences. */
    public static List<String> of(List<Fleet.Group> groups, FigureFilter filter) {
        long ended = count(groups, state -> state.verdict().isPresent());
        long open = count(groups, state -> state == State.OPEN);
        long faulty = count(groups, state -> state == State.FAULTY);
        List<String> basis = new ArrayList<>();
        basis.add(FigureWords.BASIS_TESTS.text(ended + open, ended, open));
        basis.add(filter.family().map(name -> FigureWords.BASIS_FAMILY.text(name)).orElseGet(FigureWords.BASIS_ALL::text));
        filter.serial().ifPresent(serial -> basis.add(FigureWords.BASIS_SERIAL.text(serial)));
        basis.add(period(filter));
        basis.add(FigureWords.BASIS_LEFT_OUT.text(count(groups, state -> state == State.REHEARSAL)));
        if (faulty > 0) {
            basis.add(FigureWords.BASIS_FAULTY.text(faulty));
        }
        long voided = count(groups, state -> state == State.VOID);
        if (voided > 0) {
            basis.add(FigureWords.BASIS_VOID.text(voided));
        }
        basis.add(FigureWords.BASIS_CONFIDENCE.text(Math.round(100 * Figures.CONFIDENCE)));
        return basis;
    }

    private static String period(FigureFilter filter) {
        if (filter.from().isPresent() && filter.to().isPresent()) {
            return FigureWords.BASIS_FROM_TO.text(filter.from().get(), filter.to().get());
        }
        return filter.from().map(day -> FigureWords.BASIS_FROM.text(day))
                .or(() -> filter.to().map(day -> FigureWords.BASIS_TO.text(day))).orElseGet(FigureWords.BASIS_ANY_TIME::text);
    }

    private static long count(List<Fleet.Group> groups, Predicate<State> which) {
        return groups.stream().filter(group -> which.test(group.state())).mapToLong(Fleet.Group::count).sum();
    }
}
