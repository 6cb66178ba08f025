package org.benchwright.cli.tests;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;

import org.benchwright.cli.BenchCommandLine;
import org.benchwright.cli.StandardInput;
import org.benchwright.cli.Surroundings;
import org.benchwright.present.Bench;

/** The command line in a process of its own, with the sample procedure: to be killed. */
public final class PlainBench {

    private PlainBench() {
    }

    /** Runs a command. */
    public static void main(String[] arguments) {
        Surroundings around = new Surroundings(StandardInput.ofThisProcess(), new FileOutputStream(FileDescriptor.out),
                new FileOutputStream(FileDescriptor.err), false, Map.of("USER", "QN", "HOSTNAME", "bench2"), Path.of("").toAbsolutePath(),
                Optional.empty(), Bench.Clocks.system(), ZoneOffset.UTC, "0.1.0");
        System.exit(new BenchCommandLine(around, SampleProcedure.SOURCE).run(arguments));
    }
}
