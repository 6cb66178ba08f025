package org.benchwright.workshop.tests;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;

import org.benchwright.core.Role;
import org.benchwright.engine.plan.Plan;
import org.benchwright.engine.revision.Revision;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.people.KeyProtection;
import org.benchwright.ledger.people.People;
import org.benchwright.ledger.people.Person;
import org.benchwright.ledger.people.PersonKeyStore;
import org.benchwright.workshop.Approvals;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.BenchTime;
import org.benchwright.workshop.CompiledProcedure;
import org.benchwright.workshop.Registrar;
import org.benchwright.workshop.SigningPerson;

/**
 * A ledger in which procedures are approved: LW is administrator, RB engineer, KM supervisor. Trying one of their passwords costs next to
 * nothing, so that tests are fast; how much it costs stands in the key's file.
 */
public final class Approved {

    /** Everybody's password. */
    public static final String PASSWORD = "four wet otters";

    private static final int ROUNDS = 10;

    private Approved() {
    }

    /** Begins the register with the three people. */
    public static void people(BenchLedger ledger, BenchTime time) throws Exception {
        Registrar registrar = ledger.registrar(time, ROUNDS);
        registrar.begin("LW", "administrator LW", List.of(), PASSWORD.toCharArray());
        registrar.add(by("LW"), "RB", "engineer RB", List.of(Role.ENGINEER));
        registrar.enroll(by("LW"), "RB", PASSWORD.toCharArray());
        registrar.add(by("LW"), "KM", "supervisor KM", List.of(Role.SUPERVISOR));
        registrar.enroll(by("LW"), "KM", PASSWORD.toCharArray());
    }

    /** Adds MJ and HD, who are auditors, and QN, a technician who is an auditor too. */
    public static void auditors(BenchLedger ledger, BenchTime time) throws Exception {
        Registrar registrar = ledger.registrar(time, ROUNDS);
        add(registrar, "MJ", Role.AUDITOR);
        add(registrar, "HD", Role.AUDITOR);
        add(registrar, "QN", Role.TECHNICIAN, Role.AUDITOR);
    }

    private static void add(Registrar registrar, String id, Role... roles) throws Exception {
        registrar.add(by("LW"), id, roles[0].word() + " " + id, List.of(roles));
        registrar.enroll(by("LW"), id, PASSWORD.toCharArray());
    }

    /** RB prepares and KM approves. */
    public static Revision approve(BenchLedger ledger, BenchTime time, Plan plan, String text) throws Exception {
        Approvals approvals = ledger.approvals(time);
        CompiledProcedure procedure = new CompiledProcedure(plan, text);
        approvals.prepare(procedure, by("RB"));
        return approvals.approve(procedure, by("KM"));
    }

    /** Makes a ledger in which that procedure is approved. */
    public static void in(Path file, BenchTime time, Plan plan, String text) throws Exception {
        try (BenchLedger ledger = BenchLedger.open(file)) {
            people(ledger, time);
            approve(ledger, time, plan, text);
        }
    }

    /** Somebody's first key, for whoever signs past the workshop's rules. */
    static Signer key(Path file, Clock clock, String id) throws Exception {
        try (Ledger ledger = SqliteLedger.openReadOnly(file)) {
            Person who = People.read(ledger).person(id).orElseThrow();
            return new PersonKeyStore(file.getParent(), KeyProtection.standard(), clock).unlock(who, who.keys().get(0).key(), PASSWORD.toCharArray());
        }
    }

    /** Somebody with the right password. */
    public static SigningPerson by(String id) {
        return new SigningPerson(id, PASSWORD.toCharArray());
    }
}
