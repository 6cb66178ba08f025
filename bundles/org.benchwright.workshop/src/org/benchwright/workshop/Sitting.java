package org.benchwright.workshop;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

import org.benchwright.core.Actor;
import org.benchwright.core.Role;
import org.benchwright.core.SignalWord;
import org.benchwright.engine.Demand;
import org.benchwright.engine.DoesNotFollowException;
import org.benchwright.engine.Place;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.TestRun;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.event.Moment;
import org.benchwright.engine.event.TestEvent;
import org.benchwright.ledger.EntryDraft;
import org.benchwright.ledger.EventKinds;
import org.benchwright.ledger.Ledger;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.Meaning;
import org.benchwright.ledger.SequenceConflictException;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.Signing;
import org.benchwright.ledger.TestId;
import org.benchwright.ledger.people.People;
import org.benchwright.ledger.people.Person;
import org.benchwright.ledger.people.PersonKeyStore;
import org.benchwright.workshop.internal.KeptTests;
import org.benchwright.workshop.internal.KnownHazards;
import org.benchwright.workshop.internal.LedgerWork;
import org.benchwright.workshop.internal.Message;
import org.benchwright.workshop.internal.PeopleHistory;
import org.benchwright.workshop.internal.PeopleKeys;
import org.benchwright.workshop.internal.ProvedBenches;

/**
 * One process's work on one test. What {@link #record} has returned from is durable; what it refused has left no trace.
 *
 * <p>Used by one thread.
 */
public final class Sitting {

    /** Wall time may differ from monotonic time by as much before it counts as stepped. */
    public static final Duration CLOCK_TOLERANCE = Duration.ofSeconds(2);

    /** The clocks of two stations may differ by as much; where one went back by more between two sittings, it was set back. */
    static final Duration CLOCKS_AGREE = Duration.ofMinutes(1);

    private static final int TRIES = 20;

    static final Actor BENCH = new Actor("bench", Role.BENCH);

    private final TestId test;
    private final Ledger ledger;
    private final LedgerMemory memory;
    private final KeptTests kept;
    private final Signer benchKey;
    private final Station station;
    private final BenchTime time;
    private Actor technician;
    private final int number;
    private final Duration began;
    private final PersonKeyStore keys;
    private final Optional<SignedIn> signedIn;
    private TestRun run;
    private boolean sealed;
    private boolean over;
    private Instant lastWall;
    private Duration lastElapsed;

    /** What a sitting works with. */
    record Tools(Ledger ledger, LedgerMemory memory, KeptTests kept, Signer benchKey, Station station, BenchTime time, PersonKeyStore keys,
            Optional<SignedIn> signedIn) {

        Tools signedIn(SignedIn who) {
            return new Tools(ledger, memory, kept, benchKey, station, time, keys, Optional.of(who));
        }
    }

    Sitting(TestId test, Tools tools, Actor technician, TestRun run, boolean sealed, Moment begin) {
        this.test = test;
        this.ledger = tools.ledger();
        this.memory = tools.memory();
        this.kept = tools.kept();
        this.benchKey = tools.benchKey();
        this.station = tools.station();
        this.time = tools.time();
        this.keys = tools.keys();
        this.signedIn = tools.signedIn();
        this.technician = technician;
        this.run = run;
        this.sealed = sealed;
        this.number = begin.sitting();
        this.lastWall = time.now();
        this.lastElapsed = time.elapsed();
        this.began = lastElapsed.minus(begin.offset());
    }

    /** The test's id. */
    public String test() {
        return test.value();
    }

    /** The test as it is in the ledger as far as this sitting knows. */
    public TestRun run() {
        return run;
    }

    /** Who works. */
    public Actor technician() {
        return technician;
    }

    /** True once the test has ended and is sealed. */
    public boolean sealed() {
        return sealed;
    }

    /** The present moment in this sitting. */
    public Moment moment() {
        return new Moment(time.now().truncatedTo(ChronoUnit.MILLIS), number, time.elapsed().minus(began).truncatedTo(ChronoUnit.MILLIS));
    }

    /** Records a fact that the technician told, see {@link #record(Fact, Actor)}. */
    public List<TestEvent> record(Fact fact) throws RefusedException, OvertakenException, StoreException, FaultyRecordException {
        return record(fact, technician);
    }

    /**
     * Records a fact and all that follows from it. When this returns it is durable. If wall time was stepped since the last fact, that is
     * recorded first. The end of the test is sealed.
     *
     * @return the fact's event and those derived from it
     * @throws RefusedException      if the test does not take the fact where it stands; nothing was recorded
     * @throws OvertakenException    if somebody else wrote to the test meanwhile; nothing was recorded, and {@link #run()} is up to date
     * @throws StoreException        if the ledger can't be written; nothing was recorded
     * @throws FaultyRecordException if what somebody else wrote meanwhile does not follow
     */
    public List<TestEvent> record(Fact fact, Actor actor)
            throws RefusedException, OvertakenException, StoreException, FaultyRecordException {
        if (over) {
            throw new RefusedException(Message.REFUSED_SITTING_OVER.text(test.value()));
        }
        Fact asKept = kept.asKept(fact);
        if (asKept instanceof Fact.Released released && !run.rehearsal()) {
            requireUnsigned(released.by(), register());
        }
        requireAuthorised(asKept, actor);
        noteClockStep();
        tellBenchProof();
        return followed(recorded(asKept, actor));
    }

    /** Where the bench has to be proved before the unit is energised, it is told which test did so; without one the engine refuses. */
    private List<TestEvent> tellBenchProof() throws OvertakenException, StoreException, FaultyRecordException {
        Instant now = moment().instant();
        Optional<Duration> owed = run.benchProofOwed(now);
        Optional<Fact.BenchProved> proof = owed.isEmpty() ? Optional.empty() : new ProvedBenches(ledger).find(run.opening().station(), now, owed.get());
        try {
            return proof.isPresent() ? append(run.record(proof.get(), BENCH, moment())) : List.of();
        } catch (RefusedException e) {
            // It has aged in this very instant: the next entry is told what lacks.
            return List.of();
        }
    }

    private List<TestEvent> followed(List<TestEvent> made) throws OvertakenException, StoreException, FaultyRecordException {
        List<TestEvent> all = new ArrayList<>(made);
        all.addAll(tellBenchProof());
        all.addAll(tellKnownHazards());
        if (!owesSignature()) {
            sealIfEnded();
        }
        return List.copyOf(all);
    }

    // ---- who may work

    /** Ending a test and making it safe stay open to everybody. */
    private void requireAuthorised(Fact fact, Actor actor) throws RefusedException, StoreException {
        boolean open = run.rehearsal() || actor.role() != Role.TECHNICIAN || fact instanceof Fact.Abandoned || fact instanceof Fact.Noted
                || run.place().map(Place::makingSafe).orElse(false);
        if (!open) {
            requireAuthorised(register(), run.opening().family(), run.opening().procedure(), actor, time.now());
        }
    }

    static void requireAuthorised(People people, String family, String procedure, Actor actor, Instant now) throws RefusedException {
        if (!people.mayCarryOut(actor.id(), family, procedure, LocalDate.ofInstant(now, ZoneOffset.UTC))) {
            throw new RefusedException(Message.REFUSED_UNAUTHORISED.text(actor.id(), procedure, family));
        }
    }

    private People register() throws StoreException {
        return LedgerWork.of(() -> memory.people(ledger));
    }

    /**
     * Another technician goes on with the test here, without an interruption.
     *
     * @throws RefusedException if it is the same person, somebody who released in it or is not authorised, or a tone is about to sound
     */
    public List<TestEvent> takeOver(Actor by) throws RefusedException, OvertakenException, StoreException, FaultyRecordException {
        List<TestEvent> made = record(new Fact.TakenOver(run.holder().orElse(technician).id()), by);
        technician = by;
        return made;
    }

    /**
     * Goes on after an interruption; where somebody else had the test, it is taken over from them.
     *
     * @param gap from the last event to now by wall time; if that was set back meanwhile, nobody knows for how long the test was interrupted
     */
    void takeUp(Duration gap) throws RefusedException, OvertakenException, StoreException, FaultyRecordException {
        noteClockStep();
        append(run.record(new Fact.Interrupted(gap.isNegative() ? Duration.ZERO : gap), BENCH, moment()));
        if (gap.negated().compareTo(CLOCKS_AGREE) > 0) {
            append(run.record(new Fact.ClockChanged(gap), BENCH, moment()));
        }
        String before = run.holder().orElse(technician).id();
        if (!before.equalsIgnoreCase(technician.id())) {
            try {
                record(new Fact.TakenOver(before));
            } catch (RefusedException e) {
                // Not authorised, or has released in it: it can still be made safe, and the next entry is told why not more.
                return;
            }
        }
        tellKnownHazards();
    }

    // ---- hazards that were read before

    /** What the technician has read in this shift, for this very plan, is told instead of being asked again. */
    List<TestEvent> tellKnownHazards() throws OvertakenException, StoreException, FaultyRecordException {
        List<TestEvent> told = new ArrayList<>();
        Optional<Fact.HazardKnown> known = knownHazard();
        while (known.isPresent()) {
            try {
                told.addAll(append(run.record(known.get(), technician, moment())));
            } catch (RefusedException e) {
                // Whoever released in this test does not work on it: they are asked, and told so.
                return told;
            }
            known = knownHazard();
        }
        return told;
    }

    private Optional<Fact.HazardKnown> knownHazard() throws StoreException, FaultyRecordException {
        boolean asked = !run.rehearsal() && run.opening().shift().isPresent() && run.demand() instanceof Demand.AcknowledgeHazard d
                && d.hazard().signal() != SignalWord.DANGER;
        return asked ? new KnownHazards(ledger).find(run.opening().plan(), ((Demand.AcknowledgeHazard) run.demand()).hazard().name(), technician,
                moment().instant(), run.opening().shift().get()) : Optional.empty();
    }

    // ---- what people sign

    /** Whether that person has a key, so that a release of theirs has to be signed with it. */
    public boolean signsReleases(String id) throws StoreException {
        return !run.rehearsal() && register().person(id).flatMap(Person::key).isPresent();
    }

    /**
     * Records a release, signed by whoever gives or refuses it.
     *
     * @throws RefusedException if the password is wrong, a PIN is given in its place, the register does not let them release so, or the test does
     *                          not take it
     */
    public List<TestEvent> release(Fact.Released fact, SigningPerson by)
            throws RefusedException, OvertakenException, StoreException, FaultyRecordException {
        Fact.Released asKept = (Fact.Released) kept.asKept(fact);
        if (over || !by.id().equals(asKept.by().id())) {
            throw new RefusedException(over ? Message.REFUSED_SITTING_OVER.text(test.value()) : Message.REFUSED_RELEASE_UNSIGNED.text(by.id()));
        }
        if (by.signedIn().isPresent()) {
            throw new RefusedException(Message.REFUSED_RELEASE_PIN.text());
        }
        requireAuthorised(asKept, technician);
        noteClockStep();
        try {
            PeopleHistory people = PeopleHistory.trusted(ledger, memory.books());
            Person person = PeopleKeys.person(people.now(), by.id());
            requireRole(person, asKept.by().role());
            List<TestEvent> made = run.record(asKept, technician, moment());
            Signer signer = PeopleKeys.unlock(keys, people.now(), by);
            int at = first(made);
            List<TestEvent> before = made.subList(0, at);
            if (!before.isEmpty()) {
                append(before);
            }
            EntryDraft draft = kept.drafts(test, made.subList(at, at + 1)).get(0);
            ledger.appendSigned(draft, run.lastSequence(), new Signing(signer, Meaning.RELEASED, asKept.by().toString(), benchKey), people.stand());
            follow(made.subList(at, at + 1));
            if (at + 1 < made.size()) {
                append(made.subList(at + 1, made.size()));
            }
            return followed(made.subList(at, made.size()));
        } catch (SequenceConflictException conflict) {
            refold();
            throw new OvertakenException(Message.OVERTAKEN.text(test.value()), conflict);
        } catch (LedgerException e) {
            throw LedgerWork.failed(e);
        }
    }

    private static int first(List<TestEvent> made) {
        int at = 0;
        while (!(made.get(at).body() instanceof Fact.Released)) {
            at++;
        }
        return at;
    }

    /** Whoever has a key signs; and where the register says who is supervisor, nobody else is one. */
    private static void requireUnsigned(Actor by, People register) throws RefusedException {
        Optional<Person> person = register.person(by.id());
        if (person.flatMap(Person::key).isPresent()) {
            throw new RefusedException(Message.REFUSED_RELEASE_UNSIGNED.text(by.id()));
        }
        boolean told = by.role() == Role.SUPERVISOR && register.all().stream().anyMatch(each -> each.may(Role.SUPERVISOR));
        if (told && person.filter(each -> each.may(Role.SUPERVISOR)).isEmpty()) {
            throw new RefusedException(Message.REFUSED_RELEASE_ROLE.text(by.id(), by.role().label()));
        }
    }

    private static void requireRole(Person person, Role as) throws RefusedException {
        if (!PeopleKeys.mayRelease(person, as)) {
            throw new RefusedException(Message.REFUSED_RELEASE_ROLE.text(person.id(), as.label()));
        }
    }

    /** True if the test is over and waits for the signature of whoever carried it out and has signed in here. */
    public boolean owesSignature() {
        return run.ended() && !sealed && !over && !run.rehearsal() && signedIn.filter(who -> !who.locked() && who.id().equals(technician.id())).isPresent();
    }

    /**
     * Seals the test with the technician's own key: "carried out".
     *
     * @param pin the PIN or badge of whoever has signed in
     * @throws RefusedException if it is wrong, the station is locked, or there is nothing to sign
     */
    public void sign(char[] pin) throws RefusedException, OvertakenException, StoreException, FaultyRecordException {
        if (!owesSignature()) {
            throw new RefusedException(Message.REFUSED_NOT_ENDED.text());
        }
        seal(technician, new Signing(signedIn.get().key(pin), Meaning.CARRIED_OUT, technician.toString(), benchKey));
    }

    /** Seals a test that is over with the bench key, because nobody signs it. */
    public void leaveUnsigned() throws OvertakenException, StoreException, FaultyRecordException {
        sealIfEnded();
    }

    /** Where nothing but a watch has written meanwhile, and it asks the same still, the person need not enter it again. */
    private List<TestEvent> recorded(Fact fact, Actor actor) throws RefusedException, OvertakenException, StoreException, FaultyRecordException {
        for (int tries = 0;; tries++) {
            long before = run.lastSequence();
            String asked = run.demand().key();
            try {
                return append(run.record(fact, actor, moment()));
            } catch (OvertakenException overtaken) {
                boolean watchOnly = run.events().stream().skip(before).allMatch(event -> event.actor().role() == Role.WATCH);
                if (over || sealed || !watchOnly || !asked.equals(run.demand().key()) || tries == TRIES) {
                    throw overtaken;
                }
            }
        }
    }

    private void noteClockStep() throws RefusedException, OvertakenException, StoreException, FaultyRecordException {
        Instant wall = time.now();
        Duration elapsed = time.elapsed();
        Duration step = Duration.between(lastWall, wall).minus(elapsed.minus(lastElapsed)).truncatedTo(ChronoUnit.MILLIS);
        lastWall = wall;
        lastElapsed = elapsed;
        if (step.abs().compareTo(CLOCK_TOLERANCE) > 0) {
            append(run.record(new Fact.ClockChanged(step), BENCH, moment()));
        }
    }

    private List<TestEvent> append(List<TestEvent> events) throws OvertakenException, StoreException, FaultyRecordException {
        try {
            ledger.append(test, run.lastSequence(), kept.drafts(test, events));
        } catch (SequenceConflictException conflict) {
            refold();
            throw new OvertakenException(Message.OVERTAKEN.text(test.value()), conflict);
        } catch (LedgerException e) {
            throw LedgerWork.failed(e);
        }
        follow(events);
        return events;
    }

    private void follow(List<TestEvent> events) {
        try {
            run = run.with(events);
        } catch (DoesNotFollowException e) {
            throw new IllegalStateException("the engine does not follow its own events", e);
        }
    }

    /** Takes over what the ledger holds. A later sitting of somebody else ends this one: its clock is not comparable with ours. */
    private void refold() throws StoreException, FaultyRecordException {
        KeptTest now = kept.read(ledger, test);
        run = now.run();
        sealed = now.sealed();
        over = sealed || run.lastMoment().sitting() > number;
    }

    /** True if the test was taken up elsewhere: {@link Workshop#resume} takes it up again here. */
    public boolean over() {
        return over;
    }

    void sealIfEnded() throws OvertakenException, StoreException, FaultyRecordException {
        if (run.ended() && !sealed) {
            seal(BENCH, new Signing(benchKey, Meaning.CARRIED_OUT, station.name()));
        }
    }

    private void seal(Actor by, Signing signing) throws OvertakenException, StoreException, FaultyRecordException {
        Moment now = moment();
        try {
            EntryDraft draft = new EntryDraft(test, now.instant(), now.sitting(), now.offset(), by, EventKinds.SEALED, "{}");
            ledger.appendSigned(draft, run.lastSequence(), signing);
            sealed = true;
        } catch (SequenceConflictException conflict) {
            refold();
            throw new OvertakenException(Message.OVERTAKEN.text(test.value()), conflict);
        } catch (LedgerException e) {
            throw LedgerWork.failed(e);
        }
    }
}
