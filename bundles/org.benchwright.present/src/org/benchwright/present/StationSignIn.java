package org.benchwright.present;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;

import org.benchwright.engine.RefusedException;
import org.benchwright.present.internal.Asked;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.SignedIn;
import org.benchwright.workshop.SigningPerson;
import org.benchwright.workshop.StoreException;

/**
 * Who has signed in at this station, until it is locked: by key, or when nobody has touched it for a while. Passwords and PINs that are
 * handed in are blanked out. May be used by several threads.
 */
public final class StationSignIn {

    /** A station that nobody touches locks itself after so long. */
    public static final Duration IDLE = Duration.ofMinutes(10);

    private final Bench.Clocks clocks;
    private Optional<SignedIn> person = Optional.empty();
    private Instant touched;

    /** Nobody has signed in. */
    public StationSignIn(Bench.Clocks clocks) {
        this.clocks = clocks;
        this.touched = clocks.clock().instant();
    }

    /**
     * Signs somebody in, and whoever was before them out.
     *
     * @param id       as the register of people has it
     * @param password the full one
     * @param pin      by which they sign what they carry out, as long as the station stays unlocked
     * @throws EntryRefusedException if there is no such person or key, the password is not taken, or the PIN is too short
     * @throws CannotStoreException  if there is no ledger, or it can't be read
     */
    public void signIn(Path ledger, String id, char[] password, char[] pin) throws EntryRefusedException, CannotStoreException {
        try (BenchLedger opened = BenchLedger.openReadOnly(ledger)) {
            take(opened.signIn(new SigningPerson(id.strip(), password), pin, clocks.time()));
        } catch (RefusedException e) {
            throw new EntryRefusedException(e.getMessage(), e);
        } catch (StoreException e) {
            throw Asked.cannotStore(e);
        } finally {
            Arrays.fill(pin, ' ');
            Arrays.fill(password, ' ');
        }
    }

    /** Apart from opening the key, which takes a while: nobody who asks about the station waits for that. */
    private synchronized void take(SignedIn now) {
        person.ifPresent(SignedIn::lock);
        person = Optional.of(now);
        touched = clocks.clock().instant();
    }

    /** Whoever has signed in last, even if the station is locked; empty if nobody has. */
    public synchronized Optional<String> person() {
        return person.map(SignedIn::id);
    }

    /** True if somebody has signed in and the station is locked: nothing can be entered before they, or somebody else, sign in again. */
    public synchronized boolean locked() {
        return person.filter(SignedIn::locked).isPresent();
    }

    /** Locks the station; does nothing if nobody has signed in. */
    public synchronized void lock() {
        person.ifPresent(SignedIn::lock);
    }

    /** Somebody has touched key or mouse. */
    public synchronized void touched() {
        touched = clocks.clock().instant();
    }

    /** Locks the station if it was not touched for {@link #IDLE}; true if it is locked now and was not before. */
    public synchronized boolean lockIfIdle() {
        boolean idle = !locked() && person.isPresent() && Duration.between(touched, clocks.clock().instant()).compareTo(IDLE) >= 0;
        if (idle) {
            lock();
        }
        return idle;
    }

    /** Signs out: the station is open to everybody again, as one without keys. */
    public synchronized void signOut() {
        lock();
        person = Optional.empty();
    }

    /** True if that person has signed in here and the station is unlocked: what they sign now is signed with PIN or badge. */
    public synchronized boolean takesPin(String id) {
        return person.filter(who -> !who.locked() && who.id().equals(id.strip())).isPresent();
    }

    /**
     * Somebody who signs here: with PIN or badge if they have signed in, with the full password otherwise.
     *
     * @param typed blanked out after use
     */
    public PeopleDesk.Signing signing(String id, char[] typed) {
        return new PeopleDesk.Signing(id.strip(), typed, takesPin(id) ? Optional.of(this) : Optional.empty());
    }

    synchronized Optional<SignedIn> signedIn() {
        return person;
    }
}
