package org.benchwright.present;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

import org.benchwright.core.Role;
import org.benchwright.engine.RefusedException;
import org.benchwright.present.internal.Asked;
import org.benchwright.present.internal.Hands;
import org.benchwright.present.internal.Message;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.BenchTime;
import org.benchwright.workshop.OvertakenException;
import org.benchwright.workshop.RegisteredPerson;
import org.benchwright.workshop.Registrar;
import org.benchwright.workshop.SigningPerson;
import org.benchwright.workshop.StoreException;

/** The register of people: who they are, what they may do, and their keys. Passwords that are handed in are blanked out. */
public final class PeopleDesk {

    private final Path ledger;
    private final BenchTime time;

    /**
     * @param ledger the ledger's file; beginning the register makes it if there is none, everything else needs it
     * @param clocks the bench's clocks
     */
    public PeopleDesk(Path ledger, Bench.Clocks clocks) {
        this.ledger = ledger;
        this.time = clocks.time();
    }

    /** Somebody who signs: with the full password, or with a PIN where they have signed in. */
    public static final class Signing {

        private final String id;
        private final Optional<StationSignIn> station;
        private final Optional<Asking> asking;
        private char[] password;

        /** How somebody is asked for the password. */
        @FunctionalInterface
        public interface Asking {
            /**
             * Asks.
             *
             * @throws EntryRefusedException if none is given
             */
            char[] password() throws EntryRefusedException;
        }

        private Signing(String id, char[] password, Optional<StationSignIn> station, Optional<Asking> asking) {
            this.id = id;
            this.password = password;
            this.station = station;
            this.asking = asking;
        }

        /** Somebody who signs with the full password; it is blanked out after use. */
        public Signing(String id, char[] password) {
            this(id, password, Optional.empty(), Optional.empty());
        }

        /**
         * Somebody who has typed something.
         *
         * @param id       as the register has it
         * @param password the full password, or the PIN; blanked out after use
         * @param station  where they have signed in, if they sign with their PIN
         */
        Signing(String id, char[] password, Optional<StationSignIn> station) {
            this(id, password, station, Optional.empty());
        }

        /** Somebody who is asked for the full password when nothing else speaks against what is to be signed. */
        public static Signing asked(String id, Asking asking) {
            return new Signing(id, new char[0], Optional.empty(), Optional.of(asking));
        }

        /** As the register has it. */
        public String id() {
            return id;
        }

        /** What was typed; blank after use, and empty before somebody was asked. */
        public char[] password() {
            return password;
        }

        SigningPerson person() throws EntryRefusedException {
            if (asking.isPresent() && password.length == 0) {
                password = asking.get().password();
            }
            return new SigningPerson(id, password, station.flatMap(StationSignIn::signedIn));
        }

        @Override
        public String toString() {
            return id;
        }
    }

    /**
     * Everybody who was ever in it; nobody where there is no ledger yet.
     *
     * @throws CannotStoreException if the ledger can't be read, or the register is not as it was signed
     */
    public static List<PersonRow> people(Path ledger) throws CannotStoreException {
        if (!Files.exists(ledger)) {
            return List.of();
        }
        return Asked.read(ledger, open -> open.people().stream().map(PeopleDesk::row).toList());
    }

    private static PersonRow row(RegisteredPerson person) {
        return new PersonRow(person.id(), person.name(), person.roles().stream().sorted().map(Role::label).toList(),
                person.keys().stream().map(PeopleDesk::key).toList(), person.authorisations().stream().map(PeopleDesk::mayCarryOut).toList());
    }

    private static PersonRow.Authorised mayCarryOut(RegisteredPerson.MayCarryOut may) {
        String words = may.ended() ? Hands.AUTHORISED_ENDED.text(may.procedure(), may.family())
                : Hands.AUTHORISED.text(may.procedure(), may.family(), may.from().toString(), may.until().toString());
        return new PersonRow.Authorised(may.family(), may.procedure(), may.ended(), words);
    }

    private static PersonRow.Key key(RegisteredPerson.Key key) {
        String state = switch (key.state()) {
            case IN_USE -> Message.KEY_IN_USE.text();
            case REPLACED -> Message.KEY_REPLACED.text();
            case REVOKED -> Message.KEY_REVOKED.text(key.reason());
        };
        return new PersonRow.Key(key.fingerprint(), key.state() == RegisteredPerson.KeyState.IN_USE, state);
    }

    /** Begins the register with its first administrator, who gets a key under that password. */
    public void begin(String id, String name, List<String> roles, char[] password)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        if (!Files.exists(ledger)) {
            // What will be refused makes no ledger.
            refuseBeforeMaking(id, name, roles, password);
        }
        enter(BenchLedger::open, registrar -> registrar.begin(id, name, roles(roles), password), password);
    }

    private static void refuseBeforeMaking(String id, String name, List<String> roles, char[] password) throws EntryRefusedException {
        try {
            requireFirst(id, name, roles, password);
        } catch (EntryRefusedException e) {
            Arrays.fill(password, ' ');
            throw e;
        }
    }

    /**
     * Asked before anybody types a password.
     *
     * @throws EntryRefusedException if there is nobody of that id
     */
    public void requirePerson(String id) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        enter(registrar -> registrar.requirePerson(id));
    }

    /**
     * Asked before anybody types a password.
     *
     * @throws EntryRefusedException if there is nobody of that id, or no key of theirs is in use
     */
    public void requireSigner(String id) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        enter(registrar -> registrar.requireSigner(id));
    }

    /**
     * Asked before anybody types a new password a second time.
     *
     * @throws EntryRefusedException if there is nobody of that id, or the password will not do
     */
    public void requirePassword(String id, char[] password) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        enter(registrar -> registrar.requirePassword(id, password));
    }

    /**
     * Asked before the first administrator types the password a second time.
     *
     * @throws EntryRefusedException if the register can't be begun so
     */
    public static void requireFirst(String id, String name, List<String> roles, char[] password) throws EntryRefusedException {
        try {
            Registrar.requireFirst(id, name, roles(roles), password);
        } catch (RefusedException e) {
            throw new EntryRefusedException(e.getMessage(), e);
        }
    }

    /** Adds somebody, without a key. */
    public void add(Signing by, String id, String name, List<String> roles)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        enter(registrar -> registrar.add(by.person(), id, name, roles(roles)), by.password());
    }

    /** Gives somebody a key under the password that this person typed. */
    public void enroll(Signing by, String id, char[] password) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        enter(registrar -> registrar.enroll(by.person(), id, password), by.password(), password);
    }

    /** Puts a new key in the place of the own one. */
    public void rotate(Signing own, char[] password) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        enter(registrar -> registrar.rotate(own.person(), password), own.password(), password);
    }

    /**
     * Says that a key is not to be trusted any more.
     *
     * @param key  how its fingerprint begins; empty: the one in use
     * @param from since when; empty: now
     */
    public void revoke(Signing by, String id, String key, Optional<Instant> from, String reason)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        enter(registrar -> registrar.revoke(by.person(), id, key, from, reason), by.password());
    }

    /** Lets somebody act in a role. */
    public void grant(Signing by, String id, String role) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        enter(registrar -> registrar.grant(by.person(), id, role(role)), by.password());
    }

    /**
     * Lets somebody carry out a procedure on units of a family.
     *
     * @param family    its name, or {@code *} for all
     * @param procedure its name, or {@code *} for all
     * @param from      first day, such as 2026-03-02
     * @param until     last day
     */
    public void authorise(Signing by, String id, String family, String procedure, String from, String until)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        enter(registrar -> registrar.authorise(by.person(), id, family, procedure, day(from), day(until)), by.password());
    }

    /** Ends an authorisation before its last day; named as it was granted. */
    public void endAuthorisation(Signing by, String id, String family, String procedure, String reason)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        enter(registrar -> registrar.endAuthorisation(by.person(), id, family, procedure, reason), by.password());
    }

    private static LocalDate day(String typed) throws RefusedException {
        try {
            return LocalDate.parse(typed.strip());
        } catch (DateTimeParseException e) {
            throw new RefusedException(Hands.REFUSED_DAY.text(typed));
        }
    }

    /** Lets somebody act in a role no more. */
    public void end(Signing by, String id, String role, String reason)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        enter(registrar -> registrar.end(by.person(), id, role(role), reason), by.password());
    }

    @FunctionalInterface
    private interface Entering {
        void into(Registrar registrar) throws RefusedException, OvertakenException, StoreException, EntryRefusedException;
    }

    @FunctionalInterface
    private interface Opening {
        BenchLedger of(Path file) throws StoreException;
    }

    private void enter(Entering entering, char[]... passwords) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        enter(BenchLedger::openExisting, entering, passwords);
    }

    private void enter(Opening opening, Entering entering, char[]... passwords)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        try {
            Asked.of(() -> {
                try (BenchLedger open = opening.of(ledger)) {
                    entering.into(open.registrar(time));
                    return Boolean.TRUE;
                }
            });
        } finally {
            for (char[] password : passwords) {
                Arrays.fill(password, ' ');
            }
        }
    }

    private static Collection<Role> roles(List<String> words) throws RefusedException {
        List<Role> roles = new ArrayList<>();
        for (String word : words) {
            roles.add(role(word));
        }
        return roles;
    }

    private static Role role(String word) throws RefusedException {
        return Role.find(word.strip().toLowerCase(Locale.ROOT)).orElseThrow(() -> new RefusedException(Message.REFUSED_ROLE.text(word)));
    }
}
