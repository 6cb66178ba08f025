package org.benchwright.watch;

import java.util.List;

import org.benchwright.core.PointAddress;
import org.benchwright.core.Quantity;

/** Knows which points say what of a unit. */
public interface Judge {

    /** The points that it needs. */
    List<PointAddress> points();

    /** What these values say. */
    Judgement judge(PointValues values);

    /**
     * Whether a condition is inside its limits.
     *
     * @param condition its name
     */
    boolean inside(String condition, Quantity value);

    /** What a simulated unit reads while it is as it must be, and while it is not. */
    PointValues simulated(boolean good);
}
