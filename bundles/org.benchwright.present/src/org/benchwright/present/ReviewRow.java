package org.benchwright.present;

import java.time.Instant;

/**
 * A sealed test that was drawn for a review, which an auditor has to make before anything goes out by it.
 *
 * @param test       its id
 * @param serial     the unit's serial number
 * @param family     its family's name
 * @param procedure  by which procedure
 * @param technician who opened it
 * @param opened     when
 */
public record ReviewRow(String test, String serial, String family, String procedure, String technician, Instant opened) {
}
