package org.benchwright.ledger.internal.verify;

import java.util.List;
import java.util.Optional;
import org.benchwright.core.Digest;
import org.benchwright.ledger.PayloadException;
import org.benchwright.ledger.internal.Event;
import org.benchwright.ledger.internal.EventCodec;
import org.benchwright.ledger.internal.References;

/**
 * What can be told of a row without knowing any other.
 *
 * @param row        the row
 * @param event      what its bytes say, if they say something
 * @param differing  the columns beside the bytes that say something else
 * @param references the documents that the event names
 */
public record DecodedRow(EventRow row, Optional<Event> event, List<String> differing, List<Digest> references) {

    /** Reads {@code row}. */
    public static DecodedRow of(EventRow row) {
        try {
            Event event = EventCodec.decode(row.cell("canonical").blob().orElse(new byte[0]));
            return new DecodedRow(row, Optional.of(event), row.differing(event), References.in(event.payload()));
        } catch (PayloadException unreadable) {
            return new DecodedRow(row, Optional.empty(), List.of(), List.of());
        }
    }
}
