package org.benchwright.ui.internal.house;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

import org.benchwright.engine.receipt.Standing;
import org.benchwright.present.ReceivedRow;
import org.benchwright.present.WallTime;

/** How a unit is shown in a list. */
final class Shown {

    private static final Set<Standing> MENDABLE = EnumSet.of(Standing.REJECTED, Standing.UNDECIDED, Standing.NOT_VALID, Standing.REPAIRED);
    private static final Set<Standing> TESTABLE = EnumSet.of(Standing.WAITING, Standing.NOT_VALID, Standing.REPAIRED);

    private Shown() {
    }

    /** The unit with what its plate told, where that is not its serial number. */
    static String unit(ReceivedRow row) {
        return row.plate().isEmpty() ? row.unit() : row.unit() + " (" + row.plate() + ")";
    }

    static String since(ReceivedRow row) {
        return WallTime.here().near(row.since());
    }

    /** A mark before the words, so that no colour is needed to tell them apart at a distance. */
    static String state(ReceivedRow row) {
        String mark = switch (row.standing()) {
            case ACCEPTED -> "\u2713 ";
            case REJECTED -> "\u2717 ";
            case UNDECIDED -> "? ";
            case ON_TEST, ON_SOAK -> "\u25b6 ";
            case WAITING, REPAIRED, NOT_VALID -> "\u2026 ";
            default -> "";
        };
        return mark + row.state();
    }

    static boolean canRepair(Optional<ReceivedRow> row) {
        return row.map(ReceivedRow::standing).filter(MENDABLE::contains).isPresent();
    }

    static boolean canCorrect(Optional<ReceivedRow> row) {
        return row.map(ReceivedRow::standing).filter(standing -> standing != Standing.GIVEN_BACK).isPresent();
    }

    static boolean canGiveBack(Optional<ReceivedRow> row) {
        return row.map(ReceivedRow::standing).filter(standing -> standing == Standing.WAITING).isPresent();
    }

    static boolean canTest(Optional<ReceivedRow> row) {
        return row.map(ReceivedRow::standing).filter(TESTABLE::contains).isPresent();
    }
}
