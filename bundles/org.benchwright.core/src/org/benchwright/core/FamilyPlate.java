package org.benchwright.core;

import java.util.Optional;

/**
 * What the type plates of a family look like.
 *
 * @param name  the family's name
 * @param title as people read it
 * @param mask  what its serial numbers look like, where that is known
 */
public record FamilyPlate(String name, String title, Optional<SerialMask> mask) {

    /** Whether a serial number looks like one of this family; false where nothing is known of them. */
    public boolean accepts(String serial) {
        return mask.filter(known -> known.accepts(serial)).isPresent();
    }
}
