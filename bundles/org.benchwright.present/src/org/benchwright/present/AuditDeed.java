package org.benchwright.present;

/** What can be done to a record after its seal. */
public enum AuditDeed {
    DECIDE_DEPARTURE, DECIDE_NONCONFORMITY, AMEND, REVIEW, HAND_OVER, SUPERSEDE, RECALL, VOID, WITHDRAW
}
