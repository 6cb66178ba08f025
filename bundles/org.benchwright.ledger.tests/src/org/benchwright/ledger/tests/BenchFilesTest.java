package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchwright.ledger.BenchFolder;
import org.benchwright.ledger.DurableFiles;
import org.benchwright.ledger.FolderLock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Folders, locks and files on which benches of several operating systems rely. */
class BenchFilesTest {

    @TempDir
    Path folder;

    @Test
    void theBenchFolderFollowsTheCustomsOfEachSystem() {
        Path home = folder.resolve("home").toAbsolutePath();
        Path elsewhere = folder.resolve("elsewhere").toAbsolutePath();
        // XDG Base Directory Specification: $XDG_DATA_HOME, else ~/.local/share; relative paths are ignored.
        assertEquals(home.resolve(".local/share/benchwright"), BenchFolder.standard("Linux", Map.of(), home).path());
        assertEquals(elsewhere.resolve("benchwright"),
                BenchFolder.standard("Linux", Map.of("XDG_DATA_HOME", elsewhere.toString()), home).path());
        assertEquals(home.resolve(".local/share/benchwright"),
                BenchFolder.standard("FreeBSD", Map.of("XDG_DATA_HOME", "relative"), home).path());
        // Microsoft, known folder FOLDERID_LocalAppData.
        assertEquals(elsewhere.resolve("Benchwright"),
                BenchFolder.standard("Windows 11", Map.of("LOCALAPPDATA", elsewhere.toString()), home).path());
        assertEquals(home.resolve("AppData/Local/Benchwright"), BenchFolder.standard("Windows 11", Map.of(), home).path());
        // Apple, File System Programming Guide.
        assertEquals(home.resolve("Library/Application Support/Benchwright"),
                BenchFolder.standard("Mac OS X", Map.of(), home).path());
        assertEquals(folder, BenchFolder.of(folder.resolve("my.ledger")).path());
        assertEquals("bench.ledger", BenchFolder.of(folder.resolve("my.ledger")).ledgerFile().getFileName().toString());
    }

    @Test
    void aDurableFileIsWholeAndLeavesNothingBeside() throws IOException {
        Path file = folder.resolve("a");
        DurableFiles.write(file, new byte[] {1, 2});
        DurableFiles.write(file, new byte[] {3});
        assertArrayEquals(new byte[] {3}, Files.readAllBytes(file));
        assertThrows(NoSuchFileException.class, () -> DurableFiles.write(folder.resolve("no").resolve("a"), new byte[1]));
        Files.createDirectories(folder.resolve("full").resolve("inside"));
        assertThrows(IOException.class, () -> DurableFiles.write(folder.resolve("full"), new byte[1]));
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(List.of("a", "full"), files.map(path -> path.getFileName().toString()).sorted().toList());
        }
    }

    @Test
    void theFolderLockIsHeldByOne() throws IOException {
        FolderLock held = FolderLock.take(folder, Duration.ZERO).orElseThrow();
        assertEquals(Optional.empty(), FolderLock.take(folder, Duration.ofMillis(30)));
        held.close();
        FolderLock.take(folder, Duration.ZERO).orElseThrow().close();
    }
}
