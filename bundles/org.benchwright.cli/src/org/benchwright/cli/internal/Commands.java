package org.benchwright.cli.internal;

import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.ProcedureSource;
import org.benchwright.cli.Surroundings;
import org.benchwright.language.FamilyChoice;
import org.benchwright.language.server.EditorServer;
import org.benchwright.present.Bench;
import org.benchwright.present.CannotStoreException;

import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;

/** The commands with their options; built by hand, since reading them off annotations would slow every start. */
public final class Commands {

    private static final String DEMO_SERIAL = "C16-004711";
    private static final String DEMO_PROCEDURE = "tarn-c16-acceptance.procedure";

    private final Surroundings around;
    private final KeptFailure printed;
    private final ProcedureSource procedures;
    private final Function<Surroundings, Screen> screens;
    private final PrintWriter out;
    private final PrintWriter err;

    /**
     * @param around     everything around the commands
     * @param procedures where procedures come from
     * @param screens    where a person answers
     */
    public Commands(Surroundings around, ProcedureSource procedures, Function<Surroundings, Screen> screens) {
        this.printed = new KeptFailure(around.out());
        this.around = new Surroundings(around.in(), printed, around.err(), around.terminal(), around.environment(), around.workingFolder(),
                around.procedures(), around.clocks(), around.zone(), around.version());
        this.procedures = procedures;
        this.screens = screens;
        this.out = new PrintWriter(new OutputStreamWriter(printed, StandardCharsets.UTF_8), true);
        this.err = new PrintWriter(new OutputStreamWriter(around.err(), StandardCharsets.UTF_8), true);
    }

    /** Carries a command out. */
    public int run(String... arguments) {
        List<Subcommand> subcommands = subcommands();
        CommandLine line = new CommandLine(root(subcommands)).setOut(out).setErr(err)
                .setExecutionStrategy(result -> execute(result, subcommands))
                .setParameterExceptionHandler((e, args) -> refused(e));
        try {
            return told(line.execute(arguments));
        } finally {
            out.flush();
            err.flush();
        }
    }

    /** Done is only what was told, too: what a disk that is full, or whoever went away, did not take is lost. */
    private int told(int status) {
        out.flush();
        Optional<IOException> lost = printed.failure();
        // Who has read enough of a list goes away, and wants to hear nothing of it.
        lost.map(IOException::getMessage).filter(words -> !words.contains("Broken pipe")).ifPresent(words -> err.println(Message.OUTPUT_LOST.text(words)));
        return lost.isPresent() && status == ExitStatus.OK ? ExitStatus.CANNOT_STORE : status;
    }

    // ---- what there is

    /** What a command does, to an exit status. */
    private interface Action {
        int run(Given given) throws CannotStoreException, InterruptedException;
    }

    /**
     * One command.
     *
     * @param interrupted the exit status where it is broken off: whether a test was left open by it
     */
    private record Subcommand(CommandSpec spec, Action action, int interrupted) {
        Subcommand(CommandSpec spec, Action action) {
            this(spec, action, ExitStatus.CANNOT_STORE);
        }
    }

    /** The names of all commands. */
    public List<String> names() {
        return subcommands().stream().map(each -> each.spec().name()).toList();
    }

    private List<Subcommand> subcommands() {
        return List.of(new Subcommand(CheckCommand.spec(), given -> new CheckCommand(around).run(given)),
                new Subcommand(FormatCommand.spec(), given -> new FormatCommand(around).run(given)),
                new Subcommand(DiffCommand.spec(), given -> new DiffCommand(around).run(given)),
                new Subcommand(PrintCommand.spec(), given -> new PrintCommand(around, procedures).run(given)),
                new Subcommand(WhatItProvesCommand.spec(), given -> new WhatItProvesCommand(around).run(given)),
                new Subcommand(lspSpec(), this::serveEditor),
                new Subcommand(TestCommand.spec(), given -> new TestCommand(around, procedures, screens).run(given), ExitStatus.LEFT_OPEN),
                new Subcommand(RackCommands.roundSpec(), given -> new RackCommands(around, screens).round(given), ExitStatus.LEFT_OPEN),
                new Subcommand(RackCommands.makeSafeSpec(), given -> new RackCommands(around, screens).makeSafe(given)),
                new Subcommand(PeopleCommands.spec(), given -> new PeopleCommands(around, screens).run(given)),
                new Subcommand(RevisionCommands.prepareSpec(), given -> new RevisionCommands(around, procedures, screens).prepare(given)),
                new Subcommand(RevisionCommands.approveSpec(), given -> new RevisionCommands(around, procedures, screens).approve(given)),
                new Subcommand(RevisionCommands.withdrawSpec(), given -> new RevisionCommands(around, procedures, screens).withdraw(given)),
                new Subcommand(RevisionCommands.revisionsSpec(), given -> new RevisionCommands(around, procedures, screens).revisions(given)),
                new Subcommand(HelpCommand.spec(), given -> new HelpCommand(around).run(given)),
                new Subcommand(LedgerCommands.unitsSpec(), given -> new LedgerCommands(around).units(given)),
                new Subcommand(LedgerCommands.recordsSpec(), given -> new LedgerCommands(around).records(given)),
                new Subcommand(WatchCommand.spec(), given -> new WatchCommand(around).run(given)),
                new Subcommand(FiguresCommand.spec(), given -> new FiguresCommand(around).run(given)),
                new Subcommand(ReturnedCommand.spec(), given -> new ReturnedCommand(around).run(given)),
                new Subcommand(AuditCommands.departuresSpec(), given -> new AuditCommands(around, screens).departures(given)),
                new Subcommand(AuditCommands.nonconformitiesSpec(), given -> new AuditCommands(around, screens).nonconformities(given)),
                new Subcommand(AuditCommands.decideSpec(), given -> new AuditCommands(around, screens).decide(given)),
                new Subcommand(AuditCommands.amendSpec(), given -> new AuditCommands(around, screens).amend(given)),
                new Subcommand(AuditCommands.reviewSpec(), given -> new AuditCommands(around, screens).review(given)),
                new Subcommand(AuditCommands.reviewsSpec(), given -> new AuditCommands(around, screens).reviews(given)),
                new Subcommand(AuditCommands.handOverSpec(), given -> new AuditCommands(around, screens).handOver(given)),
                new Subcommand(AuditCommands.supersedeSpec(), given -> new AuditCommands(around, screens).supersede(given)),
                new Subcommand(AuditCommands.recallSpec(), given -> new AuditCommands(around, screens).recall(given)),
                new Subcommand(AuditCommands.withdrawSpec(), given -> new AuditCommands(around, screens).withdrawAttachment(given)),
                new Subcommand(AuditCommands.voidSpec(), given -> new AuditCommands(around, screens).voidRecord(given)),
                new Subcommand(FaultsCommand.spec(), given -> new FaultsCommand(around, screens).run(given)),
                new Subcommand(InstrumentCommands.spec(), given -> new InstrumentCommands(around, screens).run(given)),
                new Subcommand(ReceivingCommands.receiveSpec(), given -> new ReceivingCommands(around, screens).receive(given)),
                new Subcommand(ReceivingCommands.receivedSpec(), given -> new ReceivingCommands(around, screens).received(given)),
                new Subcommand(ReceivingCommands.repairedSpec(), given -> new ReceivingCommands(around, screens).repaired(given)),
                new Subcommand(CompareCommands.compareSpec(), given -> new CompareCommands(around).compare(given)),
                new Subcommand(CompareCommands.impactSpec(), given -> new CompareCommands(around).impact(given)),
                new Subcommand(ProofCommands.verifySpec(), given -> new ProofCommands(around).verify(given)),
                new Subcommand(ProofCommands.checkpointSpec(), given -> new ProofCommands(around).checkpoint(given)),
                new Subcommand(ProofCommands.proveSpec(), given -> new ProofCommands(around).prove(given)),
                new Subcommand(SelfCheckCommand.spec(), given -> new SelfCheckCommand(around, procedures).run(given)),
                new Subcommand(HandOverCommands.reportSpec(), given -> new HandOverCommands(around).report(given)),
                new Subcommand(SharingCommands.shareSpec(), given -> new SharingCommands(around, screens).share(given)),
                new Subcommand(SharingCommands.forwardSpec(), given -> new SharingCommands(around, screens).forward(given)),
                new Subcommand(CopyCommands.backupSpec(), given -> new CopyCommands(around).backup(given)),
                new Subcommand(CopyCommands.restoreSpec(), given -> new CopyCommands(around).restore(given)),
                new Subcommand(CopyCommands.archiveSpec(), given -> new CopyCommands(around).archive(given)),
                new Subcommand(HandOverCommands.exportSpec(), given -> new HandOverCommands(around).export(given)));
    }

    private CommandSpec root(List<Subcommand> subcommands) {
        CommandSpec root = Specs.command("bench", Message.HELP_ROOT);
        root.addOption(OptionSpec.builder("-V", "--version").versionHelp(true).description(Message.HELP_VERSION.text()).build());
        root.version(around.software());
        subcommands.forEach(each -> root.addSubcommand(each.spec().name(), each.spec()));
        return root;
    }

    // ---- carrying out

    private int execute(ParseResult result, List<Subcommand> subcommands) {
        Integer helped = CommandLine.executeHelpRequest(result);
        if (helped != null) {
            return ExitStatus.OK;
        }
        try {
            return result.hasSubcommand() ? carryOut(result.subcommand(), subcommands) : demo();
        } catch (CannotStoreException e) {
            err.println(e.getMessage());
            return ExitStatus.CANNOT_STORE;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            err.println(Message.INTERRUPTED.text());
            return result.hasSubcommand() ? asked(result.subcommand(), subcommands).interrupted() : ExitStatus.LEFT_OPEN;
        } catch (RuntimeException | StackOverflowError | LinkageError unexpected) {
            // The last place before the user, who has no use for a stack trace.
            return failed(unexpected);
        }
    }

    private int carryOut(ParseResult parsed, List<Subcommand> subcommands) throws CannotStoreException, InterruptedException {
        return asked(parsed, subcommands).action().run(new Given(around, parsed));
    }

    private static Subcommand asked(ParseResult parsed, List<Subcommand> subcommands) {
        return subcommands.stream().filter(each -> each.spec() == parsed.commandSpec()).findFirst().orElseThrow();
    }

    private static CommandSpec lspSpec() {
        return Specs.command("lsp", Message.HELP_LSP).addOption(Specs.file("--ledger", "FILE", Message.HELP_COMPARED_LEDGER));
    }

    private int serveEditor(Given given) throws CannotStoreException, InterruptedException {
        return EditorServer.serve(around.version(), ApprovedInLedger.watched(given, around, err::println), around.in(), around.out()) ? ExitStatus.OK : ExitStatus.BAD_INPUT;
    }

    /** Without arguments, where there is no display: the demo procedure, rehearsed in a ledger of its own. */
    private int demo() throws CannotStoreException, InterruptedException {
        if (around.procedures().isEmpty()) {
            out.println(Message.NO_DEMO.text());
            return ExitStatus.BAD_INPUT;
        }
        out.println(Message.DEMO.text());
        Path folder = around.procedures().get();
        Path ledger = Bench.demoLedger();
        Optional<Path> answers = around.terminal() ? Optional.empty() : Optional.of(folder.resolve("answers").resolve("accepted.answers"));
        int status = new TestCommand(around, procedures, screens).run(
                new TestCommand.Request(folder.resolve(DEMO_PROCEDURE), new FamilyChoice.AsWritten(), answers, ledger, DEMO_SERIAL, around.user(), around.machine(), true));
        // The last line of standard output stays the one that scripts read.
        err.println(Message.DEMO_OVER.text());
        return status;
    }

    // ---- what went wrong

    private int refused(ParameterException e) {
        err.println(e.getMessage());
        err.println(Message.SEE_HELP.text(e.getCommandLine().getCommandSpec().qualifiedName()));
        return ExitStatus.BAD_INPUT;
    }

    private int failed(Throwable e) {
        String kind = e.getClass().getSimpleName();
        Optional<Path> log = CrashLog.write(e, around.clocks().clock().instant());
        err.println(log.map(file -> Message.CRASHED.text(kind, file.toString())).orElseGet(() -> Message.CRASHED_UNLOGGED.text(kind)));
        return ExitStatus.CANNOT_STORE;
    }
}
