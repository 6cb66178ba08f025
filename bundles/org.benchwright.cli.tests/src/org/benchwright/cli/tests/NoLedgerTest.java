package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A ledger whose name was mistyped is said not to be there, and none is begun in its place. */
class NoLedgerTest extends OnABench {

    @ParameterizedTest
    @ValueSource(strings = {"watch --for 0", "units", "records", "round", "make-safe --reason smoke", "receive C16-004711", "receive",
        "receive --correct R-1 --reason other --order O-2", "receive --give-back R-1 --reason wanted", "received", "received C16-004711 --tag tag.pdf",
        "repaired C16-004711 --what fuse", "repaired T-4K7M2-QXD9R --what fuse", "instruments", "instruments add M-17 --title Meter",
        "instruments add M-17 --title Meter --by RB", "instruments calibrated M-17 --certificate C-9 --on 2026-01-10",
        "instruments moved M-17 --custody shelf", "instruments retire M-17 --reason dropped", "instruments reinstate M-17 --reason mended",
        "instruments import meters.csv", "people", "people add TM --name T --by LW", "people grant TM --role auditor --by LW", "prepare c16.procedure --by RB",
        "approve c16.procedure --by KM", "withdraw c16.procedure --by KM --reason x", "figures", "faults", "departures", "nonconformities", "reviews",
        "reviews --none --reason x --by MJ", "decide T-4K7M2-QXD9R 4 --as accepted --reason x --by MJ", "amend T-4K7M2-QXD9R 4 --right 1 --reason x --by MJ",
        "review T-4K7M2-QXD9R --agreed --by MJ", "hand-over T-4K7M2-QXD9R --to owner --by KM", "supersede T-4K7M2-QXD9R --with T-4K7M2-QXD9S --reason x --by KM",
        "recall T-4K7M2-QXD9R --reason x --by KM", "void T-4K7M2-QXD9R --reason x --by MJ", "withdraw-attachment T-4K7M2-QXD9R 4 --reason x --by MJ",
        "withdraw-attachment R-1 face.jpg --reason x --by MJ", "returned T-4K7M2-QXD9R --on 2026-01-31 --complaint stops", "compare T-4K7M2-QXD9R",
        "impact M-17 --reads 1V_high --from 2026-01-01 --to 2026-01-31", "verify", "checkpoint", "prove T-4K7M2-QXD9R", "report T-4K7M2-QXD9R --pdf c.pdf",
        "export", "export --csv t.csv", "backup copy", "archive --year 2026 --out year.archive", "test c16.procedure --serial C16-004711"})
    void itIsSaidAndNoneIsBegun(String command) throws Exception {
        Files.writeString(folder.resolve("meters.csv"), "asset,title\nM-1,Meter\n");
        List<Path> before = files();
        CommandRunner.Ended ended = bench("a password\n", Stream.of(command.split(" ")).map(word -> word.replace('_', ' ')).toArray(String[]::new));
        assertTrue(ended.status() == 2 || command.startsWith("test ") && ended.status() == 1, ended.toString());
        assertFalse(ended.err().isBlank(), ended.toString());
        assertEquals(before, files(), "nothing was made: " + ended);
    }

    private List<Path> files() throws Exception {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.sorted().toList();
        }
    }
}
