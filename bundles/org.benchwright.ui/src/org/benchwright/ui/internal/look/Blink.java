package org.benchwright.ui.internal.look;

import org.benchwright.core.FlashRate;
import org.benchwright.core.LampPattern;
import org.benchwright.core.Limits;
import org.benchwright.core.Quantity;
import org.benchwright.core.UnitOfMeasure;

/** When a drawn lamp is lit. */
public final class Blink {

    /** Where any flashing will do, once a second. */
    private static final double ANY_HZ = 1.0;
    private static final double NANOS = 1e9;

    private Blink() {
    }

    /**
     * True if a lamp of this pattern is lit at this time: half of each period, in the middle of the rates that are meant.
     *
     * @param nanos a time that only goes forward, in nanoseconds
     */
    public static boolean lit(LampPattern pattern, long nanos) {
        if (pattern instanceof LampPattern.Off) {
            return false;
        } else if (pattern instanceof LampPattern.Flashing flashing) {
            double periods = nanos / NANOS * hertz(flashing.rate());
            return periods - Math.floor(periods) < 0.5;
        }
        return true;
    }

    /** The rate that is drawn, in Hz. */
    public static double hertz(FlashRate rate) {
        return rate.band().map(Blink::middle).orElse(ANY_HZ);
    }

    private static double middle(Limits band) {
        double lower = band.lower().map(Blink::inHertz).orElse(ANY_HZ);
        double upper = band.upper().map(Blink::inHertz).orElse(lower);
        return (lower + upper) / 2;
    }

    private static double inHertz(Quantity rate) {
        return rate.in(UnitOfMeasure.of("Hz"));
    }
}
