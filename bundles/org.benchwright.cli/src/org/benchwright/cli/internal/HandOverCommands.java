package org.benchwright.cli.internal;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.present.Bench;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.HandingOver;
import org.benchwright.report.HandOver;
import org.benchwright.report.NotCertifiableException;
import org.benchwright.report.Register;

import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** Commands that hand records over: report, export. */
final class HandOverCommands {

    private final Surroundings around;

    HandOverCommands(Surroundings around) {
        this.around = around;
    }

    static CommandSpec report() {
        return Specs.command("report", Message.HELP_REPORT).addPositional(Specs.word("TEST", true, Message.HELP_PROVE_TEST))
                .addOption(Specs.file("--ledger", "FILE", Message.HELP_LEDGER)).addOption(Specs.file("--pdf", "FILE", Message.HELP_PDF))
                .addOption(Specs.file("--record", "FILE", Message.HELP_RECORD)).addOption(Specs.file("--label", "FILE", Message.HELP_LABEL))
                .addOption(Specs.file("--html", "FILE", Message.HELP_HTML)).addOption(Specs.file("--json", "FILE", Message.HELP_JSON))
                .addOption(Specs.file("--csv", "FILE", Message.HELP_CSV));
    }

    static CommandSpec export() {
        return Specs.command("export", Message.HELP_EXPORT).addOption(Specs.file("--ledger", "FILE", Message.HELP_LEDGER))
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

    int report(ParseResult given) throws CannotStoreException {
        if (PAPERS.stream().noneMatch(wanted -> given.hasMatchedOption(wanted.option()))) {
            return refused(Message.REPORT_WHAT.text());
        }
        try (Screen screen = Screens.printing(around)) {
            HandOver papers = HandingOver.of(ledger(given), Specs.word(given).orElseThrow(), around.clocks().clock().instant());
            for (Wanted wanted : PAPERS) {
                Optional<Path> file = Specs.path(given, wanted.option(), around);
                if (file.isPresent()) {
                    new Output(around).write(file.get(), wanted.making().of(papers), screen);
                }
            }
            return ExitStatus.OK;
        } catch (EntryRefusedException | NotCertifiableException e) {
            return refused(e.getMessage());
        }
    }

    int export(ParseResult given) throws CannotStoreException {
        Optional<Path> csv = Specs.path(given, "--csv", around);
        Optional<Path> json = Specs.path(given, "--json", around);
        Register register = new Register(HandingOver.all(ledger(given), given.hasMatchedOption("--rehearsals")));
        try (Screen screen = Screens.printing(around)) {
            if (json.isPresent()) {
                new Output(around).write(json.get(), bytes(register.json()), screen);
            }
            if (csv.isPresent()) {
                new Output(around).write(csv.get(), bytes(register.csv()), screen);
            } else if (json.isEmpty()) {
                register.csv().lines().forEach(screen::line);
            }
            return ExitStatus.OK;
        }
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private Path ledger(ParseResult given) {
        return Specs.path(given, "--ledger", around).orElseGet(Bench::standardLedger);
    }

    private int refused(String words) {
        try (Screen screen = Screens.printing(around)) {
            screen.remark(words);
            return ExitStatus.BAD_INPUT;
        }
    }
}
