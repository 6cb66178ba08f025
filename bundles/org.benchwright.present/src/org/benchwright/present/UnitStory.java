package org.benchwright.present;

import java.util.List;
import java.util.Optional;

/**
 * What is known of a unit when it is scanned.
 *
 * @param unit     serial number or tag, cleaned
 * @param family   the family whose serial numbers look like it, if one alone does
 * @param question why its serial number is asked about; empty if it looks as it should
 * @param inHouse  its receipt, if it is in the house
 * @param openTest its open test, if there is one; the last one if there are several
 * @param lines    receipts, tests, repairs and returns, the oldest first
 * @param files    photos and papers of its receipts and repairs, the oldest first
 */
public record UnitStory(String unit, Optional<String> family, Optional<String> question, Optional<ReceivedRow> inHouse, Optional<String> openTest,
        List<String> lines, List<HouseFile> files) {
    public UnitStory {
        lines = List.copyOf(lines);
        files = List.copyOf(files);
    }
}
