package org.benchwright.cli.internal;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.ProcedureSource;
import org.benchwright.cli.Surroundings;
import org.benchwright.language.FamilyChoice;
import org.benchwright.present.Bench;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.SelfCheckSheet;
import org.benchwright.present.SelfCheckSheet.Line;

import picocli.CommandLine.Model.CommandSpec;

/** Shows that the installed copy works on this machine: published values, the demo rehearsals, their ledger. Prints a signed sheet. */
final class SelfCheckCommand {

    private static final Pattern REHEARSES = Pattern.compile("# For a rehearsal of (\\S+) on (\\S+)\\.");
    private static final Pattern COMES_TO = Pattern.compile("# Would-be verdict: (accepted|rejected|undecided)\\.");

    private final Surroundings around;
    private final ProcedureSource procedures;

    SelfCheckCommand(Surroundings around, ProcedureSource procedures) {
        this.around = around;
        this.procedures = procedures;
    }

    static CommandSpec spec() {
        return Specs.command("self-check", Message.HELP_SELF_CHECK).addOption(Specs.file("--ledger", "FILE", Message.HELP_SELF_CHECK_LEDGER))
                .addOption(Specs.file("--out", "FILE", Message.HELP_OUT));
    }

    int run(Given given) throws CannotStoreException, InterruptedException {
        SelfCheckSheet sheet = new SelfCheckSheet(SelfCheckSheet.publishedValues()).with(demo());
        String machine = String.join(" ", System.getProperty("os.name"), System.getProperty("os.version"), System.getProperty("os.arch"), "Java",
                System.getProperty("java.version"));
        String text = sheet.signed(given.ledger(), around.software(), machine, around.clocks().clock().instant());
        try (Screen screen = Screens.printing(around)) {
            text.lines().forEach(screen::line);
            Optional<Path> out = given.path("--out");
            if (out.isPresent()) {
                new Output(screen).write(out.get(), text.getBytes(StandardCharsets.UTF_8));
            }
        }
        return sheet.holds() ? ExitStatus.OK : ExitStatus.BAD_INPUT;
    }

    private List<Line> demo() throws CannotStoreException, InterruptedException {
        if (around.procedures().isEmpty()) {
            return List.of(new Line(Message.SELF_CHECK_NO_DEMO.text(), false));
        }
        try {
            Path folder = Files.createTempDirectory("self-check");
            try {
                return demo(around.procedures().get(), folder.resolve("bench.ledger"));
            } finally {
                delete(folder);
            }
        } catch (IOException e) {
            throw new CannotStoreException(Message.SELF_CHECK_FOLDER.text(String.valueOf(e.getMessage())), e);
        }
    }

    private List<Line> demo(Path folder, Path ledger) throws IOException, CannotStoreException, InterruptedException {
        List<Path> files;
        try (Stream<Path> all = Files.list(folder.resolve("answers"))) {
            files = all.filter(file -> file.toString().endsWith(".answers")).sorted().toList();
        }
        List<Line> lines = new ArrayList<>();
        for (Path answers : files) {
            lines.add(rehearsal(folder, answers, ledger));
        }
        lines.add(new Line(Message.SELF_CHECK_LEDGER.text(), Bench.verify(ledger, around.clocks()).sound()));
        return lines;
    }

    private Line rehearsal(Path folder, Path answers, Path ledger) throws IOException, CannotStoreException, InterruptedException {
        String head = Files.readString(answers);
        Matcher what = REHEARSES.matcher(head);
        Matcher comes = COMES_TO.matcher(head);
        String name = Message.SELF_CHECK_REHEARSAL.text(answers.getFileName().toString());
        if (!what.find() || !comes.find()) {
            return new Line(name, false);
        }
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        ByteArrayOutputStream errors = new ByteArrayOutputStream();
        Surroundings aside = new Surroundings(InputStream.nullInputStream(), said, errors, false, around.environment(), around.workingFolder(),
                around.procedures(), around.clocks(), around.zone(), around.version());
        int status = new TestCommand(aside, procedures, Screens::answering).run(new TestCommand.Request(folder.resolve(what.group(1)),
                new FamilyChoice.Fitting(what.group(2)), Optional.of(answers), ledger, what.group(2), "self-check", "self-check", true));
        return new Line(name, status == status(comes.group(1)) && errors.size() == 0);
    }

    private static int status(String verdict) {
        return switch (verdict) {
            case "accepted" -> ExitStatus.OK;
            case "rejected" -> ExitStatus.REJECTED;
            default -> ExitStatus.UNDECIDED;
        };
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(file);
            }
        }
    }
}
