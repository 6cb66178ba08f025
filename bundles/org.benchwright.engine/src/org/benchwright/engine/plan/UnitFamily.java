package org.benchwright.engine.plan;

import java.util.List;
import java.util.Optional;

import org.benchwright.core.Limits;
import org.benchwright.core.SerialMask;

/**
 * A model family as the plan needs it, everything inherited already merged in.
 *
 * @param name       the family's name
 * @param title      its title as people read it
 * @param supply     limits of the supply, where declared
 * @param serialMask what a serial number of this family looks like, where declared
 * @param lamps      every lamp, groups spelled out
 * @param modes      modes and what shows them
 * @param faults     fault notes
 * @param stopStays  true if a stop latches: the unit stays stopped until somebody restarts it
 * @param nominal    the supply as people say it, such as {@code 24 V dc}
 * @param stopUntil  what ends a stop that stays, where declared
 * @param watch      how a watch reads its state, where declared
 */
public record UnitFamily(String name, String title, Optional<Limits> supply, Optional<SerialMask> serialMask, List<Lamp> lamps,
        List<Mode> modes, List<FaultNote> faults, boolean stopStays, Optional<String> nominal, Optional<String> stopUntil,
        Optional<WatchMap> watch) {

    /** A family of which nothing is said about the nominal supply, the end of a stop and a watch. */
    public UnitFamily(String name, String title, Optional<Limits> supply, Optional<SerialMask> serialMask, List<Lamp> lamps,
            List<Mode> modes, List<FaultNote> faults, boolean stopStays) {
        this(name, title, supply, serialMask, lamps, modes, faults, stopStays, Optional.empty(), Optional.empty(), Optional.empty());
    }

    public UnitFamily {
        lamps = List.copyOf(lamps);
        modes = List.copyOf(modes);
        faults = List.copyOf(faults);
    }

    /** The fault note of that code, letter case ignored: technicians type codes as they come. */
    public Optional<FaultNote> fault(String code) {
        return faults.stream().filter(f -> f.code().equalsIgnoreCase(code.strip())).findFirst();
    }
}
