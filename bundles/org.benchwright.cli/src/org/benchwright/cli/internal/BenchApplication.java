package org.benchwright.cli.internal;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Optional;

import org.benchwright.cli.BenchCommandLine;
import org.benchwright.cli.StandardInput;
import org.benchwright.cli.Surroundings;
import org.benchwright.present.Bench;
import org.eclipse.equinox.app.IApplication;
import org.eclipse.equinox.app.IApplicationContext;
import org.osgi.framework.FrameworkUtil;
import org.osgi.framework.Version;

/** The command line as the product starts it. */
public final class BenchApplication implements IApplication {

    /** Names the folder of the demo procedures; set by the start script. */
    private static final String PROCEDURES = "benchwright.procedures";

    @Override
    public Object start(IApplicationContext context) {
        String[] arguments = (String[]) context.getArguments().get(IApplicationContext.APPLICATION_ARGS);
        // The application has no splash screen; without this the launcher would wait for one to be taken down.
        context.applicationRunning();
        return new BenchCommandLine(surroundings(), new LanguageSource()).run(arguments);
    }

    private static Surroundings surroundings() {
        // The streams themselves: System.out would encode text as the machine's locale has it.
        return new Surroundings(StandardInput.ofThisProcess(), new FileOutputStream(FileDescriptor.out),
                new FileOutputStream(FileDescriptor.err), System.console() != null, System.getenv(),
                Path.of("").toAbsolutePath(), Optional.ofNullable(System.getProperty(PROCEDURES)).map(Path::of).filter(Files::isDirectory),
                Bench.Clocks.system(), ZoneId.systemDefault(), version());
    }

    private static String version() {
        Version version = FrameworkUtil.getBundle(BenchApplication.class).getVersion();
        return version.getMajor() + "." + version.getMinor() + "." + version.getMicro();
    }

    @Override
    public void stop() {
        // Whatever runs is durable step by step; there is nothing to bring to an end.
    }
}
