package org.benchwright.engine.receipt;

import java.util.List;
import java.util.Optional;

import org.benchwright.core.Digest;

/** Something that is signed about a unit in the house, beside its tests. */
public sealed interface ReceiptFact {

    /**
     * A unit came in.
     *
     * @param order     the order it belongs to, may be empty
     * @param owner     whose it is, may be empty
     * @param unit      the serial number, or the workshop's tag where the plate tells none
     * @param plate     what the plate told
     * @param family    its family's name, if known
     * @param complaint what its owner says, may be empty
     * @param damage    what is seen from outside, may be empty
     * @param preserve  what must not be lost, may be empty
     * @param files     photos and papers
     * @param earlier   the last test of this unit before, if one is on record here
     */
    record Received(String order, String owner, String unit, Plate plate, Optional<String> family, String complaint, String damage,
            String preserve, List<KeptFile> files, Optional<String> earlier) implements ReceiptFact {
        public Received {
            files = List.copyOf(files);
        }
    }

    /**
     * What was said when a unit came in is said anew; the first entry stays readable.
     *
     * @param receipt number of the receipt
     * @param reason  why
     * @param to      all that holds now
     */
    record Corrected(long receipt, String reason, Received to) implements ReceiptFact {
    }

    /**
     * A unit left the house without a test that let it go.
     *
     * @param receipt number of the receipt
     * @param reason  why
     */
    record GivenBack(long receipt, String reason) implements ReceiptFact {
    }

    /**
     * Something was replaced or mended between a test that the unit did not pass and the next one.
     *
     * @param unit  serial number or tag
     * @param test  the test that it did not pass
     * @param what  what was done
     * @param parts what was replaced
     * @param files photos and papers
     */
    record Repaired(String unit, String test, String what, List<ReplacedPart> parts, List<KeptFile> files) implements ReceiptFact {
        public Repaired {
            parts = List.copyOf(parts);
            files = List.copyOf(files);
        }
    }

    /**
     * The bytes of a file are taken away, since they are personal: a face, a name. Its digest stays.
     *
     * @param event      number of the event that named it
     * @param attachment its digest
     * @param reason     why
     */
    record AttachmentWithdrawn(long event, Digest attachment, String reason) implements ReceiptFact {
    }
}
