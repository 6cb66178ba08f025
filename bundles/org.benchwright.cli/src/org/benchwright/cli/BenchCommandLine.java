package org.benchwright.cli;

import org.benchwright.cli.internal.Commands;
import org.benchwright.cli.internal.Screens;

/** The command line: takes arguments, ends with a status, and never throws. */
public final class BenchCommandLine {

    private final Commands commands;

    /**
     * @param around     everything around it
     * @param procedures where procedures come from
     */
    public BenchCommandLine(Surroundings around, ProcedureSource procedures) {
        this.commands = new Commands(around, procedures, Screens::answering);
    }

    /**
     * Carries a command out.
     *
     * @return the exit status, see {@link ExitStatus}
     */
    public int run(String... arguments) {
        return commands.run(arguments);
    }
}
