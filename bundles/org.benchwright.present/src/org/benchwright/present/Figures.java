package org.benchwright.present;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Progress;
import org.benchwright.present.internal.Asked;
import org.benchwright.present.internal.CapacityFigure;
import org.benchwright.present.internal.FaultFigures;
import org.benchwright.present.internal.FigureBasis;
import org.benchwright.present.internal.ReadingFigures;
import org.benchwright.present.internal.ReturnFigure;
import org.benchwright.present.internal.ReviewFigure;
import org.benchwright.present.internal.SoakFigure;
import org.benchwright.present.internal.SpreadFigures;
import org.benchwright.present.internal.YieldFigures;
import org.benchwright.workshop.Fleet;
import org.benchwright.workshop.FleetFilter;
import org.benchwright.workshop.StoreException;

/**
 * What the records of a ledger say about units, families and procedures.
 *
 * @param basis   what the figures rest on: which tests, of which time, what was left out, which confidence
 * @param figures one after the other
 */
public record Figures(List<String> basis, List<Figure> figures) {

    /** The confidence of all limits. */
    public static final double CONFIDENCE = 0.95;

    /** Freezes the lists. */
    public Figures {
        basis = List.copyOf(basis);
        figures = List.copyOf(figures);
    }

    /**
     * Reads a ledger. Nothing in it is made or changed. The first reading derives every test again and takes its time; later ones only what
     * came since.
     *
     * @param progress     is told of tests that had to be derived
     * @param cancellation may stop that
     * @throws CannotStoreException if there is no ledger, it can't be read, or it was cancelled
     */
    public static Figures read(Path ledger, FigureFilter filter, Progress progress, Cancellation cancellation) throws CannotStoreException {
        try (Fleet fleet = Fleet.of(ledger, progress, cancellation)) {
            return of(fleet, filter);
        } catch (StoreException e) {
            throw Asked.cannotStore(e);
        }
    }

    /**
     * The figures of a fleet.
     *
     * @throws CannotStoreException if it can't be read
     */
    public static Figures of(Fleet fleet, FigureFilter filter) throws CannotStoreException {
        FleetFilter which = new FleetFilter(filter.family(), filter.serial(), filter.from().map(day -> begin(day, filter.zone())),
                filter.to().map(day -> begin(day.plusDays(1), filter.zone())));
        return Asked.read(() -> {
            List<Fleet.Group> groups = fleet.groups(which);
            List<Figure> figures = new ArrayList<>(YieldFigures.of(groups));
            figures.addAll(FaultFigures.of(fleet.found(which)));
            List<Fleet.Soaks> soaks = fleet.soaks(which);
            figures.add(SoakFigure.of(soaks));
            figures.add(ReturnFigure.of(fleet.inField(which, filter.today(), ReturnFigure.MOST_DAYS)));
            figures.add(CapacityFigure.of(groups, soaks, fleet.span(which)));
            figures.add(ReviewFigure.of(groups));
            for (Fleet.Measured measured : fleet.measured(which)) {
                List<Fleet.Read> readings = fleet.readings(which, measured, ReadingFigures.MOST);
                figures.add(ReadingFigures.of(measured, readings, filter.zone()));
                figures.addAll(SpreadFigures.of(measured, readings));
            }
            return new Figures(FigureBasis.of(groups, filter), figures);
        });
    }

    private static Instant begin(LocalDate day, ZoneId zone) {
        return day.atStartOfDay(zone).toInstant();
    }
}
