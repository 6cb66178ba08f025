package org.benchwright.engine.record;

import org.benchwright.core.Digest;
import org.benchwright.engine.internal.Words;

/** Something that somebody signs about a record after its seal. */
public sealed interface RecordFact {

    /** What was signed, as words of a record. */
    String words();

    /**
     * An auditor decides on a departure from the procedure.
     *
     * @param departure number of the event that noted it
     * @param decision  what was decided
     * @param reason    why
     */
    record DepartureDecided(long departure, DepartureDecision decision, String reason) implements RecordFact {
        @Override
        public String words() {
            return Words.of("record.said.departure", departure, decision.word(), reason);
        }
    }

    /**
     * An auditor decides what becomes of a unit that does not conform.
     *
     * @param nonconformity number of the event that noted it
     * @param disposition   what becomes of the unit
     * @param reason        why
     */
    record NonconformityDecided(long nonconformity, Disposition disposition, String reason) implements RecordFact {
        @Override
        public String words() {
            return Words.of("record.said.nonconformity", nonconformity, disposition.word(), reason);
        }
    }

    /**
     * An entry is corrected. What was entered first stays where it is.
     *
     * @param event  number of the event that is corrected
     * @param entry  what is right, as typed
     * @param reason why
     */
    record Amended(long event, String entry, String reason) implements RecordFact {
        @Override
        public String words() {
            return Words.of("record.said.amended", event, entry, reason);
        }
    }

    /**
     * Somebody who had no hand in it has looked the record through.
     *
     * @param agreed whether it is as it should be
     * @param remark what there is to say; not empty where it is not as it should be
     */
    record Reviewed(boolean agreed, String remark) implements RecordFact {
        @Override
        public String words() {
            return Words.of(!agreed ? "record.said.notAgreed" : remark.isBlank() ? "record.said.agreed" : "record.said.agreedRemark", remark);
        }
    }

    /**
     * The unit went to its owner.
     *
     * @param to          to whom
     * @param certificate number of the certificate that went with it
     */
    record HandedOver(String to, String certificate) implements RecordFact {
        @Override
        public String words() {
            return Words.of("record.said.handedOver", to, certificate);
        }
    }

    /**
     * Another test takes the place of this one.
     *
     * @param by     id of that test
     * @param reason why
     */
    record Superseded(String by, String reason) implements RecordFact {
        @Override
        public String words() {
            return Words.of("record.said.superseded", by, reason);
        }
    }

    /** A unit that was handed over is called back, for that reason: its certificate does not hold any more. */
    record Recalled(String reason) implements RecordFact {
        @Override
        public String words() {
            return reason;
        }
    }

    /**
     * The bytes of an attachment are taken away, since they are personal: a face, a name. Its digest stays.
     *
     * @param event      number of the event that attached it
     * @param attachment its digest
     * @param reason     why
     */
    record AttachmentWithdrawn(long event, Digest attachment, String reason) implements RecordFact {
        @Override
        public String words() {
            return Words.of("record.said.withdrawn", event, reason);
        }
    }

    /** The record is void, for that reason: nothing follows from it. */
    record Voided(String reason) implements RecordFact {
        @Override
        public String words() {
            return reason;
        }
    }
}
