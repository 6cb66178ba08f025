package org.benchwright.language.speed.tests;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

import org.benchwright.core.Cancellation;
import org.benchwright.language.Remark;
import org.benchwright.language.editing.FolderSession;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

/**
 * Somebody types a statement into the middle of a long procedure, letter by letter, and takes it back: from each letter to all that the
 * editor shows, the pause before it excluded.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class KeystrokeSpeed {

    /** How many steps. */
    @Param("2000")
    public int steps;

    private Path folder;
    private Path file;
    private FolderSession session;
    private Typing typing;

    /** Opens the procedure. */
    @Setup
    public void open() throws IOException {
        folder = Files.createTempDirectory("keystroke");
        file = folder.resolve("long.procedure");
        Files.writeString(folder.resolve("lark.family"), Library.FAMILY);
        typing = new Typing(Library.procedure(0, steps));
        Files.writeString(file, typing.text());
        session = FolderSession.open(folder);
        session.analyse(file, Cancellation.never());
    }

    /** Leaves nothing behind. */
    @TearDown
    public void close() throws IOException {
        Files.delete(file);
        Files.delete(folder.resolve("lark.family"));
        Files.delete(folder);
    }

    /** The next letter. */
    @Benchmark
    public List<Remark> keystroke() {
        session.change(file, typing.next());
        return session.analyse(file, Cancellation.never()).orElseThrow().remarks();
    }
}
