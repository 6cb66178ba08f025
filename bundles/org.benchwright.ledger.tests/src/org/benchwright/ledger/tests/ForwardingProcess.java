package org.benchwright.ledger.tests;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import org.benchwright.core.Cancellation;
import org.benchwright.ledger.BenchKeyStore;
import org.benchwright.ledger.Forwarder;
import org.benchwright.ledger.LedgerException;
import org.benchwright.ledger.PostgresLedger;
import org.benchwright.ledger.SharedPlace;
import org.benchwright.ledger.SqliteLedger;

/**
 * A bench of its own that forwards until everything is there, whatever happens meanwhile. Arguments: ledger, address, events to write itself
 * meanwhile (0 for none). Prints each place that it has reached, and "done".
 */
public final class ForwardingProcess {

    private static final Duration PATIENCE = Duration.ofSeconds(2);

    private ForwardingProcess() {
    }

    public static void main(String[] arguments) throws Exception {
        Path file = Path.of(arguments[0]);
        SharedPlace place = new SharedPlace(arguments[1], PostgresServer.BENCH, PostgresServer.PASSWORD, Optional.empty(), PATIENCE);
        int own = Integer.parseInt(arguments[2]);
        Thread work = new Thread(() -> work(file, own));
        work.start();
        System.out.println("ready");
        boolean done = false;
        while (!done) {
            boolean last = !work.isAlive();
            done = forwarded(file, place) && last;
        }
        System.out.println("done");
    }

    private static boolean forwarded(Path file, SharedPlace place) throws InterruptedException {
        try (SqliteLedger ledger = SqliteLedger.open(file); PostgresLedger shared = PostgresLedger.open(place)) {
            Forwarder forwarder = new Forwarder(ledger, shared, BenchKeyStore.openOrCreate(file.getParent()), Clock.systemUTC());
            Forwarder.Outcome outcome = forwarder.run(reached -> System.out.println(reached.reached()), Cancellation.never());
            if (!outcome.stops().isEmpty()) {
                throw new IllegalStateException(outcome.stops().toString());
            }
            return true;
        } catch (LedgerException lost) {
            Thread.sleep(20);
            return false;
        }
    }

    private static void work(Path file, int events) {
        try (SqliteLedger ledger = SqliteLedger.open(file)) {
            long seed = file.hashCode() + 1000L * ledger.tests().size();
            SampleLedger sample = new SampleLedger(ledger, BenchKeyStore.openOrCreate(file.getParent()), seed);
            int each = 10;
            for (int done = 0; done < events; done += each) {
                sample.carryOut(2, each / 2);
            }
        } catch (Exception failure) {
            throw new IllegalStateException(failure);
        }
    }
}
