package org.benchwright.present;

import java.util.Optional;

/**
 * A photo or paper that was kept with a receipt or a repair.
 *
 * @param event     number of the event of the book of receipts that named it first
 * @param digest    of its content, in hexadecimal digits
 * @param name      its name
 * @param where     of which receipt or repair it is, in words
 * @param withdrawn by whom, when and why its bytes were taken away; empty if they were not
 */
public record HouseFile(long event, String digest, String name, String where, Optional<String> withdrawn) {
}
