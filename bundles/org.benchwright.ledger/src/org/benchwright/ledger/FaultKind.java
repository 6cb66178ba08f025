package org.benchwright.ledger;

/** What can be wrong with a ledger, each with the line of verification that finds it. Names are stable; scripts may rely on them. */
public enum FaultKind {

    /** The database file itself is damaged. */
    STORE_DAMAGED(1),
    /** A table, index or trigger lacks, was changed or added. */
    SAFEGUARDS_CHANGED(1),
    /** A table can't be read. */
    TABLE_UNREADABLE(1),
    /** The stored bytes are no event in canonical form. */
    EVENT_UNREADABLE(1),
    /** A column says something else than the event's bytes. */
    COLUMN_DIFFERS(1),
    /** A place in the ledger is empty, taken twice or out of order. */
    POSITION_BROKEN(1),
    /** A number in a test is missing, taken twice or out of order. */
    SEQUENCE_BROKEN(1),
    /** The event, or one before it in its test, is not the one that was written. */
    LINK_BROKEN(1),
    /** The event does not stand where it was written among the events of other tests. */
    ORDER_CHANGED(1),
    /** An event follows a seal that may not. */
    AFTER_SEAL(1),
    /** A document, or its row, is not the one that was kept. */
    DOCUMENT_CHANGED(1),
    /** A document that is named in an event, or listed, is not there. */
    DOCUMENT_MISSING(1),
    /** A signature is not true of what it signs. */
    SIGNATURE_FALSE(2),
    /** An event that must be signed is not. */
    SIGNATURE_MISSING(2),
    /** A row in the list of signers is not as its key signed it. */
    SIGNER_CHANGED(2),
    /** Something was signed with another key than the bench's. */
    FOREIGN_KEY(2),
    /** Something was signed with a person's key before it was enrolled, or after it was replaced or revoked. */
    KEY_OUT_OF_USE(2),
    /** Something was entered in the register of people that its signer had no right to, or that does not fit. */
    REGISTER_FALSE(2),
    /** A checkpoint is not as it was signed, or not true of this ledger. */
    CHECKPOINT_FALSE(2),
    /** The checkpoint that belongs to a signed event lacks. */
    CHECKPOINT_MISSING(2),
    /** A checkpoint tells of more events than there are: the end was cut off. */
    TAIL_CUT(2),
    /** A kept checkpoint, given for comparison, is not as it was signed. */
    KEPT_CHECKPOINT_FALSE(2),
    /** The ledger's beginning is not what a kept checkpoint tells of. */
    HISTORY_REWRITTEN(2),
    /** The ledger holds less than a kept checkpoint tells of. */
    OLDER_COPY(2),
    /** A decision does not follow from what was observed. */
    DECISION_DIFFERS(3),
    /** The cache beside the ledger says something else of a test than its events. */
    PROJECTION_DIFFERS(3);

    private final int line;

    FaultKind(int line) {
        this.line = line;
    }

    /** 1 links, places and documents; 2 signatures and checkpoints; 3 decisions re-derived. */
    public int line() {
        return line;
    }
}
