package org.benchwright.cli.internal;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.HandingOver;
import org.benchwright.report.HandOver;
import org.benchwright.report.NotCertifiableException;
import org.benchwright.report.Register;

import picocli.CommandLine.Model.CommandSpec;

/** Commands that hand records over: report, export. */
final class HandOverCommands {

    private final Surroundings around;

    HandOverCommands(Surroundings around) {
        this.around = around;
    }

    static CommandSpec reportSpec() {
        return Specs.command("report", Message.HELP_REPORT).addPositional(Specs.word("TEST", true, Message.HELP_PROVE_TEST))
                .addOption(Specs.ledger()).addOption(Specs.file("--pdf", "FILE", Message.HELP_PDF))
                .addOption(Specs.file("--record", "FILE", Message.HELP_RECORD)).addOption(Specs.file("--label", "FILE", Message.HELP_LABEL))
                .addOption(Specs.file("--html", "FILE", Message.HELP_HTML)).addOption(Specs.file("--json", "FILE", Message.HELP_JSON))
                .addOption(Specs.file("--csv", "FILE", Message.HELP_CSV)).addOption(Specs.file("--soak", "FILE", Message.HELP_SOAK));
    }

    static CommandSpec exportSpec() {
        return Specs.command("export", Message.HELP_EXPORT).addOption(Specs.ledger())
                .addOption(Specs.file("--csv", "FILE", Message.HELP_EXPORT_CSV)).addOption(Specs.file("--json", "FILE", Message.HELP_EXPORT_JSON))
                .addOption(Specs.flag("--rehearsals", Message.HELP_REHEARSALS));
    }

    private interface Making {
        byte[] of(HandOver papers) throws NotCertifiableException;
    }

    private record Wanted(String option, Making making) {
    }

    private static final List<Wanted> PAPERS = List.of(new Wanted("--pdf", HandOver::certificate), new Wanted("--record", HandOver::record),
            new Wanted("--label", HandOver::label), new Wanted("--html", papers -> bytes(papers.html())),
            new Wanted("--json", papers -> bytes(papers.json())), new Wanted("--csv", papers -> bytes(papers.csv())));

    int report(Given given) throws CannotStoreException {
        if (!given.has("--soak") && PAPERS.stream().noneMatch(wanted -> given.has(wanted.option()))) {
            return Screens.refused(around, Message.REPORT_WHAT.text());
        }
        try (Screen screen = Screens.printing(around)) {
            HandOver papers = HandingOver.of(given.ledger(), given.word().orElseThrow(), around.clocks().clock().instant());
            for (Wanted wanted : PAPERS) {
                Optional<Path> file = given.path(wanted.option());
                if (file.isPresent()) {
                    new Output(screen).write(file.get(), wanted.making().of(papers));
                }
            }
            Optional<Path> soak = given.path("--soak");
            if (soak.isPresent()) {
                new Output(screen).write(soak.get(), bytes(HandingOver.soaks(given.ledger(), given.word().orElseThrow()).html()));
            }
            return ExitStatus.OK;
        } catch (EntryRefusedException | NotCertifiableException e) {
            return Screens.refused(around, e.getMessage());
        }
    }

    int export(Given given) throws CannotStoreException {
        Optional<Path> csv = given.path("--csv");
        Optional<Path> json = given.path("--json");
        Register register = new Register(HandingOver.all(given.ledger(), given.has("--rehearsals")));
        try (Screen screen = Screens.printing(around)) {
            if (json.isPresent()) {
                new Output(screen).write(json.get(), bytes(register.json()));
            }
            if (csv.isPresent()) {
                new Output(screen).write(csv.get(), bytes(register.csv()));
            } else if (json.isEmpty()) {
                register.csv().lines().forEach(screen::line);
            }
            return ExitStatus.OK;
        }
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
