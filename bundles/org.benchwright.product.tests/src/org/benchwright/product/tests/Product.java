package org.benchwright.product.tests;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** The product that the build has just put together, started with a command line. */
final class Product {

    /** How long one command may take before the test gives it up. */
    private static final long LIMIT_SECONDS = 300;

    private final Path home;
    private final Path workingFolder;

    /**
     * @param workingFolder where the command is started, and where its configuration is kept: a folder of the test's own
     */
    Product(Path workingFolder) {
        this.home = home("org.benchwright.headless", "linux/gtk/x86_64");
        this.workingFolder = workingFolder;
    }

    /** Where the build has put a product together for a system. */
    static Path home(String product, String system) {
        return Path.of("..", "..", "releng", "org.benchwright.product", "target", "products").resolve(product).resolve(system)
                .toAbsolutePath().normalize();
    }

    /** What a command printed and how it ended. */
    record Ended(int status, String out, String err) {
    }

    Ended run(String... arguments) throws IOException, InterruptedException {
        Path out = workingFolder.resolve("stdout.txt");
        Path err = workingFolder.resolve("stderr.txt");
        Process process = new ProcessBuilder(command(arguments))
                .directory(workingFolder.toFile())
                .redirectInput(ProcessBuilder.Redirect.from(Path.of("/dev/null").toFile()))
                .redirectOutput(out.toFile())
                .redirectError(err.toFile())
                .start();
        if (!process.waitFor(LIMIT_SECONDS, TimeUnit.SECONDS)) {
            process.destroyForcibly().waitFor();
            throw new IOException("No end after " + LIMIT_SECONDS + " s: " + List.of(arguments));
        }
        return new Ended(process.exitValue(), Files.readString(out), Files.readString(err));
    }

    /** The command line that starts the product with arguments. */
    List<String> command(String... arguments) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                // As the start script says it.
                "-Dbenchwright.procedures=" + Path.of("..", "..", "procedures").toAbsolutePath().normalize(),
                "-jar", launcher().toString(),
                "-configuration", workingFolder.resolve("configuration").toString(),
                "-data", "@none", "-nosplash"));
        command.addAll(List.of(arguments));
        return command;
    }

    private Path launcher() throws IOException {
        try (Stream<Path> plugins = Files.list(home.resolve("plugins"))) {
            return plugins.filter(file -> file.getFileName().toString().startsWith("org.eclipse.equinox.launcher_"))
                    .findFirst()
                    .orElseThrow(() -> new IOException("No launcher in " + home));
        }
    }
}
