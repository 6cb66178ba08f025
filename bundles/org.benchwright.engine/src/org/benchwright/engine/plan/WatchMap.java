package org.benchwright.engine.plan;

import java.util.List;

/**
 * How units of a family can be watched. Where each one is reached is the bench's affair, and stands in no procedure.
 *
 * @param protocol what they speak
 * @param points   what is read
 */
public record WatchMap(Protocol protocol, List<WatchPoint> points) {

    /** What a unit can be asked by. */
    public enum Protocol {
        MODBUS, OPC_UA
    }

    public WatchMap {
        points = List.copyOf(points);
    }
}
