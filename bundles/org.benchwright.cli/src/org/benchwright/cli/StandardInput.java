package org.benchwright.cli;

import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** What is typed, or comes through a pipe or out of a file. */
public final class StandardInput {

    private static final Path OPEN_AS_INPUT = Path.of("/proc/self/fd/0");

    private StandardInput() {
    }

    /**
     * Standard input of this process; nothing where it was started with none. The first file that the program itself opens takes the place of
     * an input that is closed, and its bytes were typed by nobody.
     */
    public static InputStream ofThisProcess() {
        return isOurs() ? InputStream.nullInputStream() : new FileInputStream(FileDescriptor.in);
    }

    private static boolean isOurs() {
        try {
            Path open = OPEN_AS_INPUT.toRealPath();
            return Files.isRegularFile(open) && (open.startsWith(Path.of(System.getProperty("java.home")).toRealPath())
                    || open.getFileName().toString().endsWith(".jar"));
        } catch (IOException notToBeTold) {
            return false;
        }
    }
}
