package org.benchwright.cli.internal;

import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.ProcedureSource;
import org.benchwright.cli.Surroundings;
import org.benchwright.language.server.EditorServer;
import org.benchwright.present.Bench;
import org.benchwright.present.CannotStoreException;

import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.TypeConversionException;

/** The commands with their options; built by hand, since reading them off annotations would slow every start. */
public final class Commands {

    private static final String DEMO_SERIAL = "C16-004711";
    private static final String DEMO_PROCEDURE = "tarn-c16-acceptance.procedure";

    private final Surroundings around;
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
        this.around = around;
        this.procedures = procedures;
        this.screens = screens;
        this.out = new PrintWriter(new OutputStreamWriter(around.out(), StandardCharsets.UTF_8), true);
        this.err = new PrintWriter(new OutputStreamWriter(around.err(), StandardCharsets.UTF_8), true);
    }

    /** Carries a command out. */
    public int run(String... arguments) {
        CommandLine line = new CommandLine(root()).setOut(out).setErr(err)
                .setExecutionStrategy(this::execute)
                .setParameterExceptionHandler((e, args) -> refused(e));
        try {
            return line.execute(arguments);
        } finally {
            out.flush();
            err.flush();
        }
    }

    // ---- what there is

    private CommandSpec root() {
        CommandSpec root = command("bench", Message.HELP_ROOT);
        root.addOption(OptionSpec.builder("-V", "--version").versionHelp(true).description(Message.HELP_VERSION.text()).build());
        root.version("Benchwright " + around.version());
        root.addSubcommand("check", command("check", Message.HELP_CHECK).addPositional(
                files("PATH", Message.HELP_CHECK_PATH)));
        root.addSubcommand("format", command("format", Message.HELP_FORMAT).addPositional(files("PATH", Message.HELP_FORMAT_PATH))
                .addOption(Specs.flag("--check", Message.HELP_FORMAT_CHECK)));
        root.addSubcommand("diff", command("diff", Message.HELP_DIFF).addPositional(files("OLD NEW", Message.HELP_DIFF_FILES)));
        root.addSubcommand("lsp", command("lsp", Message.HELP_LSP));
        root.addSubcommand("test", test());
        root.addSubcommand("units", command("units", Message.HELP_UNITS).addOption(ledger()));
        root.addSubcommand("figures", figures());
        root.addSubcommand("verify", ProofCommands.verify());
        root.addSubcommand("checkpoint", ProofCommands.checkpoint());
        root.addSubcommand("prove", ProofCommands.prove());
        root.addSubcommand("self-check", SelfCheckCommand.spec());
        root.addSubcommand("report", HandOverCommands.report());
        root.addSubcommand("export", HandOverCommands.export());
        return root;
    }

    private CommandSpec test() {
        CommandSpec test = command("test", Message.HELP_TEST).addPositional(file("FILE", true, Message.HELP_TEST_FILE));
        test.addOption(text("--serial", "S", Message.HELP_SERIAL).required(true).build());
        test.addOption(option("--answers", "FILE", Message.HELP_ANSWERS).type(Path.class).build());
        test.addOption(ledger());
        test.addOption(OptionSpec.builder("--rehearse").description(Message.HELP_REHEARSE.text()).build());
        test.addOption(text("--technician", "INITIALS", Message.HELP_TECHNICIAN).build());
        test.addOption(text("--station", "NAME", Message.HELP_STATION).build());
        test.usageMessage().footer(Message.HELP_TEST_STATUS.text().split("\\R"));
        return test;
    }

    private CommandSpec figures() {
        CommandSpec figures = command("figures", Message.HELP_FIGURES).addOption(ledger());
        figures.addOption(text("--family", "NAME", Message.HELP_FIGURES_FAMILY).build());
        figures.addOption(text("--unit", "SERIAL", Message.HELP_FIGURES_UNIT).build());
        figures.addOption(text("--from", "DATE", Message.HELP_FIGURES_FROM).build());
        figures.addOption(text("--to", "DATE", Message.HELP_FIGURES_TO).build());
        figures.addOption(option("--csv", "FOLDER", Message.HELP_FIGURES_CSV).type(Path.class).build());
        figures.addOption(option("--svg", "FOLDER", Message.HELP_FIGURES_SVG).type(Path.class).build());
        figures.addOption(option("--html", "FILE", Message.HELP_FIGURES_HTML).type(Path.class).build());
        return figures;
    }

    private CommandSpec command(String name, Message help) {
        CommandSpec command = CommandSpec.create().name(name);
        command.addOption(OptionSpec.builder("-h", "--help").usageHelp(true).description(Message.HELP_HELP.text()).build());
        command.usageMessage().description(help.text()).width(80);
        return command;
    }

    private static PositionalParamSpec files(String label, Message help) {
        return PositionalParamSpec.builder().paramLabel(label).arity("1..*").required(true).type(Path[].class)
                .converters(Commands::path).description(help.text()).build();
    }

    private static PositionalParamSpec file(String label, boolean required, Message help) {
        return PositionalParamSpec.builder().paramLabel(label).index("0").arity(required ? "1" : "0..1").required(required)
                .type(Path.class).converters(Commands::path).description(help.text()).build();
    }

    private static OptionSpec ledger() {
        return option("--ledger", "FILE", Message.HELP_LEDGER).type(Path.class).build();
    }

    private static OptionSpec.Builder text(String name, String label, Message help) {
        return OptionSpec.builder(name).paramLabel(label).type(String.class).description(help.text());
    }

    private static OptionSpec.Builder option(String name, String label, Message help) {
        return OptionSpec.builder(name).paramLabel(label).converters(Commands::path).description(help.text());
    }

    private static Path path(String text) {
        try {
            return Path.of(text);
        } catch (InvalidPathException e) {
            throw new TypeConversionException(Message.NO_PATH.text(text));
        }
    }

    // ---- carrying out

    private int execute(ParseResult result) {
        Integer helped = CommandLine.executeHelpRequest(result);
        if (helped != null) {
            return ExitStatus.OK;
        }
        try {
            return result.hasSubcommand() ? execute(result.subcommand().commandSpec().name(), result.subcommand()) : demo();
        } catch (CannotStoreException e) {
            err.println(e.getMessage());
            return ExitStatus.CANNOT_STORE;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return ExitStatus.LEFT_OPEN;
        } catch (RuntimeException | StackOverflowError | LinkageError unexpected) {
            // The last place before the user, who has no use for a stack trace.
            return failed(unexpected);
        }
    }

    private int execute(String name, ParseResult given) throws CannotStoreException, InterruptedException {
        return switch (name) {
            case "check" -> new CheckCommand(around).run(paths(given));
            case "format" -> new FormatCommand(around).run(paths(given), given.hasMatchedOption("--check"));
            case "diff" -> new DiffCommand(around).run(paths(given));
            case "lsp" -> EditorServer.serve(around.version(), around.in(), around.out()) ? ExitStatus.OK : ExitStatus.BAD_INPUT;
            case "test" -> new TestCommand(around, procedures, screens).run(request(given));
            case "figures" -> new FiguresCommand(around).run(new FiguresCommand.Request(
                    path(given, "--ledger").orElseGet(Bench::standardLedger), word(given, "--family"), word(given, "--unit"),
                    word(given, "--from"), word(given, "--to"), path(given, "--csv"), path(given, "--svg"), path(given, "--html")));
            case "units" -> new LedgerCommands(around).units(path(given, "--ledger").orElseGet(Bench::standardLedger));
            case "checkpoint" -> new ProofCommands(around).checkpoint(given);
            case "self-check" -> new SelfCheckCommand(around, procedures).run(given);
            case "report" -> new HandOverCommands(around).report(given);
            case "export" -> new HandOverCommands(around).export(given);
            case "prove" -> new ProofCommands(around).prove(given);
            default -> new ProofCommands(around).verify(given);
        };
    }

    private TestCommand.Request request(ParseResult given) {
        return new TestCommand.Request(file(given).orElseThrow(), path(given, "--answers"),
                path(given, "--ledger").orElseGet(Bench::standardLedger), given.matchedOptionValue("--serial", ""),
                Optional.ofNullable(given.<String>matchedOptionValue("--technician", null)).orElseGet(this::user),
                Optional.ofNullable(given.<String>matchedOptionValue("--station", null)).orElseGet(this::machine),
                given.hasMatchedOption("--rehearse"));
    }

    private List<Path> paths(ParseResult given) {
        Path[] none = {};
        return List.of(given.matchedPositionalValue(0, none)).stream().map(this::resolved).toList();
    }

    private Optional<Path> file(ParseResult given) {
        return Optional.ofNullable(given.<Path>matchedPositionalValue(0, null)).map(this::resolved);
    }

    private Optional<Path> path(ParseResult given, String option) {
        return Optional.ofNullable(given.<Path>matchedOptionValue(option, null)).map(this::resolved);
    }

    private static Optional<String> word(ParseResult given, String option) {
        return Optional.ofNullable(given.<String>matchedOptionValue(option, null));
    }

    private Path resolved(Path path) {
        return around.workingFolder().resolve(path);
    }

    private String user() {
        return around.environment().getOrDefault("USER", around.environment().getOrDefault("USERNAME", "technician"));
    }

    private String machine() {
        return around.environment().getOrDefault("HOSTNAME", around.environment().getOrDefault("COMPUTERNAME", "bench"));
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
        return new TestCommand(around, procedures, screens).run(
                new TestCommand.Request(folder.resolve(DEMO_PROCEDURE), answers, ledger, DEMO_SERIAL, user(), machine(), true));
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
