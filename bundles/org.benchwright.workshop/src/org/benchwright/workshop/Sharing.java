package org.benchwright.workshop;

import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.function.Consumer;
import java.util.stream.Stream;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Digest;
import org.benchwright.engine.RefusedException;
import org.benchwright.ledger.BenchFolder;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.BooksDifferException;
import org.benchwright.ledger.DurableFiles;
import org.benchwright.ledger.Forwarder;
import org.benchwright.ledger.ForwardingStop;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.LedgerVerifier;
import org.benchwright.ledger.PostgresLedger;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.SqliteLedger;
import org.benchwright.ledger.VerificationRequest;
import org.benchwright.ledger.Withdrawal;
import org.benchwright.workshop.internal.FileEraser;
import org.benchwright.workshop.internal.LedgerWork;
import org.benchwright.workshop.internal.Message;
import org.benchwright.workshop.internal.SharedSettings;

/** A bench's part in a ledger that benches share: forwarding, and what its owner does once. */
public final class Sharing {

    private static final String STATE = "shared.state";
    private static final Duration BETWEEN = Duration.ofSeconds(2);
    private static final Duration LONGEST_WAIT = Duration.ofMinutes(1);
    private static final Duration BETWEEN_NOTES = Duration.ofSeconds(1);

    private final Path ledger;
    private final SharedSettings settings;
    private final Map<String, String> environment;
    private final BenchTime time;

    private Sharing(Path ledger, SharedSettings settings, Map<String, String> environment, BenchTime time) {
        this.ledger = ledger;
        this.settings = settings;
        this.environment = environment;
        this.time = time;
    }

    /**
     * What is set up beside a ledger; empty where it is shared with nobody.
     *
     * @param environment may hold the password
     * @throws StoreException if the settings can't be read
     */
    public static Optional<Sharing> of(Path ledger, Map<String, String> environment, BenchTime time) throws StoreException {
        return SharedSettings.beside(ledger).map(settings -> new Sharing(ledger, settings, Map.copyOf(environment), time));
    }

    /**
     * How things stand.
     *
     * @param waiting events that wait to be forwarded
     * @param since   instant of the first of them
     * @param reached when everything was forwarded last
     * @param trouble what was in the way at the last try, in words; empty if nothing was
     * @param stops   tests that are not forwarded any further, in words
     */
    public record State(long waiting, Optional<Instant> since, Optional<Instant> reached, Optional<String> trouble, List<String> stops) {

        public State {
            stops = List.copyOf(stops);
        }
    }

    /** Where the shared ledger is. */
    public String url() {
        return settings.url();
    }

    /**
     * How things stand, as the bench itself knows; asks nobody.
     *
     * @throws StoreException if the ledger can't be read
     */
    public State state() throws StoreException {
        if (!Files.exists(ledger)) {
            return new State(0, Optional.empty(), Optional.empty(), Optional.empty(), List.of());
        }
        Note note = Note.read(noteFile());
        try (SqliteLedger own = SqliteLedger.openReadOnly(ledger)) {
            Forwarder.Waiting waiting = Forwarder.waiting(own, note.position());
            return new State(waiting.events(), waiting.since(), note.reached(), note.trouble(), note.stops());
        } catch (LedgerException failure) {
            throw LedgerWork.failed(failure);
        }
    }

    /**
     * Forwards everything, once.
     *
     * @return how many events were added to the shared ledger
     * @throws RefusedException if the bench's books are not those of the shared ledger
     * @throws StoreException   if one of the two ledgers can't be reached
     */
    public long forward() throws RefusedException, StoreException {
        try (SqliteLedger own = SqliteLedger.openExisting(ledger); PostgresLedger shared = open()) {
            Noting noting = new Noting();
            Forwarder.Outcome outcome = new Forwarder(own, shared, benchKey(), Clock.systemUTC()).run(noting, Cancellation.never());
            noting.done(outcome);
            FileEraser.erase(own);
            return outcome.added();
        } catch (BooksDifferException differ) {
            trouble(differ.getMessage());
            throw new RefusedException(differ.getMessage());
        } catch (LedgerException failure) {
            trouble(failure.getMessage());
            throw LedgerWork.failed(failure);
        }
    }

    /**
     * Forwards on and on. Where it can't, it waits, longer each time up to a minute, and tries again.
     *
     * @param told is told whenever something has changed
     */
    public void keepOn(Consumer<State> told, Cancellation cancellation) throws InterruptedException, StoreException {
        Duration wait = BETWEEN;
        while (!cancellation.requested()) {
            try (SqliteLedger own = SqliteLedger.openExisting(ledger); PostgresLedger shared = open()) {
                Forwarder forwarder = new Forwarder(own, shared, benchKey(), Clock.systemUTC());
                // What was fetched before and not erased, since the power was cut in between.
                FileEraser.erase(own);
                while (!cancellation.requested()) {
                    Noting noting = new Noting();
                    Forwarder.Outcome outcome = forwarder.run(noting, cancellation);
                    noting.done(outcome);
                    if (outcome.fetched() > 0) {
                        FileEraser.erase(own);
                    }
                    told.accept(state());
                    wait = BETWEEN;
                    time.pause(BETWEEN);
                }
            } catch (LedgerException | StoreException failure) {
                trouble(failure.getMessage());
                told.accept(state());
                time.pause(wait);
                wait = wait.multipliedBy(2).compareTo(LONGEST_WAIT) > 0 ? LONGEST_WAIT : wait.multipliedBy(2);
            }
        }
    }

    /**
     * Puts this bench's books into the shared ledger, as their beginning there.
     *
     * @return how many entries
     * @throws RefusedException if the books there are not the beginning of this bench's
     */
    public long lendBooks() throws RefusedException, StoreException {
        try (SqliteLedger own = SqliteLedger.openExisting(ledger); PostgresLedger shared = open()) {
            Forwarder forwarder = new Forwarder(own, shared, benchKey(), Clock.systemUTC());
            long lent = forwarder.lendBooks();
            Noting noting = new Noting();
            noting.done(forwarder.run(noting, Cancellation.never()));
            return lent;
        } catch (BooksDifferException differ) {
            throw new RefusedException(differ.getMessage());
        } catch (LedgerException failure) {
            throw LedgerWork.failed(failure);
        }
    }

    /** Makes the shared ledger in its empty database. */
    public void install(String owner, char[] password) throws StoreException {
        LedgerWork.to(() -> PostgresLedger.install(settings.place(owner, new String(password)), settings.user()));
    }

    /** Brings the shared ledger up to this release's format. */
    public void migrate(String owner, char[] password) throws StoreException {
        LedgerWork.to(() -> PostgresLedger.migrate(settings.place(owner, new String(password))));
    }

    /**
     * Takes the bytes of attachments that were withdrawn out of the shared ledger, as its owner. It is verified first: nothing is erased because
     * of a withdrawal that nobody had the right to.
     *
     * @return of how many attachments
     * @throws RefusedException if the shared ledger is not sound
     */
    public long erase(String owner, char[] password) throws RefusedException, StoreException {
        try {
            Path folder = Files.createTempDirectory("shared");
            Path copy = folder.resolve("shared.ledger");
            try {
                copyTo(copy);
                if (!BenchLedger.verify(copy).sound()) {
                    throw new RefusedException(Message.ERASE_NOT_SOUND.text());
                }
                List<Digest> left = LedgerVerifier.verify(VerificationRequest.of(copy)).withdrawn().stream().filter(each -> !each.gone())
                        .map(Withdrawal::attachment).toList();
                return left.isEmpty() ? 0 : PostgresLedger.erase(settings.place(owner, new String(password)), left);
            } finally {
                delete(folder);
            }
        } catch (LedgerException failure) {
            throw LedgerWork.failed(failure);
        } catch (IOException failure) {
            throw new StoreException(Message.ERASE_NO_COPY.text(String.valueOf(failure.getMessage())), failure);
        }
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(each);
            }
        }
    }

    /** Copies the shared ledger into a file, to be verified or kept. */
    public void copyTo(Path file) throws StoreException {
        try (PostgresLedger shared = open()) {
            shared.copyTo(file);
        } catch (LedgerException failure) {
            throw LedgerWork.failed(failure);
        }
    }

    PostgresLedger open() throws LedgerException, StoreException {
        return PostgresLedger.open(settings.place(environment));
    }

    private Signer benchKey() throws LedgerException {
        return BenchKeyStore.openOrCreate(BenchFolder.of(ledger).path());
    }

    // ---- the note beside the ledger, for people

    private Path noteFile() {
        return BenchFolder.of(ledger).path().resolve(STATE);
    }

    private void trouble(String words) {
        Note before = Note.read(noteFile());
        new Note(before.position(), before.reached(), Optional.of(words), before.stops()).write(noteFile());
    }

    private final class Noting implements Forwarder.Listener {

        private Instant last = Instant.MIN;

        @Override
        public void reached(Forwarder.Outcome outcome) {
            Instant now = time.now();
            if (last.equals(Instant.MIN) || Duration.between(last, now).compareTo(BETWEEN_NOTES) > 0) {
                last = now;
                new Note(outcome.reached(), Note.read(noteFile()).reached(), Optional.empty(), words(outcome)).write(noteFile());
            }
        }

        void done(Forwarder.Outcome outcome) {
            new Note(outcome.reached(), Optional.of(time.now().truncatedTo(ChronoUnit.SECONDS)), Optional.empty(), words(outcome))
                    .write(noteFile());
        }

        private static List<String> words(Forwarder.Outcome outcome) {
            return outcome.stops().stream().map(ForwardingStop::words).toList();
        }
    }

    /** What is noted; nothing relies on it but what people are shown. */
    private record Note(long position, Optional<Instant> reached, Optional<String> trouble, List<String> stops) {

        private static final Note NONE = new Note(0, Optional.empty(), Optional.empty(), List.of());

        static Note read(Path file) {
            try {
                Properties found = new Properties();
                found.load(new StringReader(Files.readString(file, StandardCharsets.UTF_8)));
                List<String> stops = new ArrayList<>();
                for (int i = 1; found.containsKey("stop." + i); i++) {
                    stops.add(found.getProperty("stop." + i));
                }
                return new Note(Long.parseLong(found.getProperty("position", "0")), Optional.ofNullable(found.getProperty("reached")).map(Instant::parse),
                        Optional.ofNullable(found.getProperty("trouble")), stops);
            } catch (IOException | IllegalArgumentException | DateTimeException none) {
                return NONE;
            }
        }

        void write(Path file) {
            Properties said = new Properties();
            said.setProperty("position", Long.toString(position));
            reached.ifPresent(instant -> said.setProperty("reached", instant.toString()));
            trouble.ifPresent(words -> said.setProperty("trouble", words));
            for (int i = 0; i < stops.size(); i++) {
                said.setProperty("stop." + (i + 1), stops.get(i));
            }
            StringWriter text = new StringWriter();
            try {
                said.store(text, Message.SHARED_STATE.text());
                DurableFiles.write(file, text.toString().getBytes(StandardCharsets.UTF_8));
            } catch (IOException unwritable) {
                // Forwarding goes on without it; what waits is then told too high.
                return;
            }
        }
    }
}
