package org.benchwright.engine.record;

import static org.benchwright.engine.internal.Refusals.refused;

import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

import org.benchwright.core.Role;
import org.benchwright.engine.RefusedException;

/** The kinds of what can be done to a record after its seal, with who may. */
public enum Deed {
    DECIDE_DEPARTURE(true, Role.AUDITOR),
    DECIDE_NONCONFORMITY(true, Role.AUDITOR),
    AMEND(false, Role.TECHNICIAN, Role.ENGINEER, Role.SUPERVISOR, Role.AUDITOR),
    REVIEW(true, Role.AUDITOR),
    HAND_OVER(false, Role.TECHNICIAN, Role.SUPERVISOR, Role.AUDITOR),
    SUPERSEDE(false, Role.SUPERVISOR, Role.AUDITOR),
    RECALL(false, Role.SUPERVISOR, Role.AUDITOR),
    WITHDRAW(true, Role.AUDITOR, Role.SUPERVISOR),
    VOID(false, Role.SUPERVISOR, Role.AUDITOR);

    private final boolean independent;
    private final List<Role> by;

    Deed(boolean independent, Role... by) {
        this.independent = independent;
        this.by = List.of(by);
    }

    /** What a fact does. */
    public static Deed of(RecordFact fact) {
        if (fact instanceof RecordFact.DepartureDecided) {
            return DECIDE_DEPARTURE;
        } else if (fact instanceof RecordFact.NonconformityDecided) {
            return DECIDE_NONCONFORMITY;
        } else if (fact instanceof RecordFact.Amended) {
            return AMEND;
        } else if (fact instanceof RecordFact.Reviewed) {
            return REVIEW;
        } else if (fact instanceof RecordFact.HandedOver) {
            return HAND_OVER;
        } else if (fact instanceof RecordFact.Superseded) {
            return SUPERSEDE;
        }
        if (fact instanceof RecordFact.AttachmentWithdrawn) {
            return WITHDRAW;
        }
        return fact instanceof RecordFact.Recalled ? RECALL : VOID;
    }

    /** In which of these roles somebody may do it; one of {@link #by()}, or nothing. */
    public Set<Role> allowed(Collection<Role> roles) {
        Set<Role> allowed = EnumSet.noneOf(Role.class);
        by.stream().filter(roles::contains).forEach(allowed::add);
        return allowed;
    }

    /**
     * Whoever does it has one of its roles.
     *
     * @param person who
     * @param roles  what that person may be
     * @throws RefusedException if none of them is one
     */
    public void requireRole(String person, Collection<Role> roles) throws RefusedException {
        if (allowed(roles).isEmpty()) {
            throw refused("record.role." + name(), person, by.stream().map(Role::word).collect(Collectors.joining(", ")));
        }
    }

    /** Who may, the usual one first. */
    public List<Role> by() {
        return by;
    }

    /** Whether it takes somebody who had no hand in the test, its amendments and the preparation of its procedure's revision. */
    public boolean independent() {
        return independent;
    }
}
