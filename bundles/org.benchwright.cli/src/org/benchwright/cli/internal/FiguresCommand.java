package org.benchwright.cli.internal;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.core.Cancellation;
import org.benchwright.core.Progress;
import org.benchwright.core.SheetTable;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.Figure;
import org.benchwright.present.FigureFilter;
import org.benchwright.present.Figures;
import org.benchwright.report.Charts;
import org.benchwright.report.Csv;
import org.benchwright.report.Look;
import org.benchwright.report.Page;

import picocli.CommandLine.Model.CommandSpec;

/** Shows figures in the terminal, and writes them as tables, charts or a page. */
final class FiguresCommand {

    private static final int WIDTH = 900;
    private static final int HEIGHT = 420;

    private final Surroundings around;

    FiguresCommand(Surroundings around) {
        this.around = around;
    }

    static CommandSpec spec() {
        return Specs.command("figures", Message.HELP_FIGURES).addOption(Specs.ledger())
                .addOption(Specs.text("--family", "NAME", Message.HELP_FIGURES_FAMILY))
                .addOption(Specs.text("--unit", "SERIAL", Message.HELP_FIGURES_UNIT))
                .addOption(Specs.text("--from", "DATE", Message.HELP_FIGURES_FROM))
                .addOption(Specs.text("--to", "DATE", Message.HELP_FIGURES_TO))
                .addOption(Specs.file("--csv", "FOLDER", Message.HELP_FIGURES_CSV))
                .addOption(Specs.file("--svg", "FOLDER", Message.HELP_FIGURES_SVG))
                .addOption(Specs.file("--html", "FILE", Message.HELP_FIGURES_HTML));
    }

    int run(Given given) throws CannotStoreException {
        try (Screen screen = Screens.printing(around)) {
            FigureFilter filter = new FigureFilter(given.text("--family"), given.text("--unit"), given.day("--from"), given.day("--to"),
                    around.zone(), LocalDate.ofInstant(around.clocks().clock().instant(), around.zone()));
            Figures figures = Figures.read(given.ledger(), filter, Progress.none(), Cancellation.never());
            print(figures, screen);
            write(figures, given, new Output(screen));
            nothingToWrite(figures, given, screen);
            return ExitStatus.OK;
        } catch (EntryRefusedException e) {
            return Screens.refused(around, e.getMessage());
        }
    }

    private static void print(Figures figures, Screen screen) {
        figures.basis().forEach(sentence -> Wrap.lines(sentence, screen.width(), "", "").forEach(screen::line));
        SheetPrinter printer = new SheetPrinter(screen, Message.FIGURES_ROWS);
        figures.figures().forEach(figure -> printer.print(figure.title(), figure.sentences(), figure.tables()));
    }

    private static void write(Figures figures, Given given, Output output) throws CannotStoreException {
        Optional<Path> tables = given.path("--csv");
        Optional<Path> charts = given.path("--svg");
        Optional<Path> page = given.path("--html");
        for (Figure figure : figures.figures()) {
            for (SheetTable table : tables.isPresent() ? figure.tables() : List.<SheetTable>of()) {
                output.writeInto(tables.get(), table.name() + ".csv", Csv.of(table));
            }
            if (charts.isPresent() && figure.plot().isPresent()) {
                output.writeInto(charts.get(), figure.tables().get(0).name() + ".svg",
                        Charts.svg(figure.plot().get(), Look.PRINT, WIDTH, HEIGHT));
            }
        }
        if (page.isPresent()) {
            output.writeInto(page.get().toAbsolutePath().getParent(), page.get().getFileName().toString(), page(figures).html());
        }
    }

    /** Whoever asked for files, and finds none, learns why. */
    private static void nothingToWrite(Figures figures, Given given, Screen screen) {
        if (given.path("--csv").isPresent() && figures.figures().stream().allMatch(figure -> figure.tables().isEmpty())) {
            screen.line(Message.FIGURES_NO_TABLE.text());
        }
        if (given.path("--svg").isPresent() && figures.figures().stream().allMatch(figure -> figure.plot().isEmpty())) {
            screen.line(Message.FIGURES_NO_CHART.text());
        }
    }

    private static Page page(Figures figures) {
        List<Page.Section> sections = figures.figures().stream()
                .map(figure -> new Page.Section(figure.title(), figure.sentences(), figure.plot(), figure.tables())).toList();
        return new Page(Message.FIGURES_TITLE.text(), figures.basis(), sections);
    }
}
