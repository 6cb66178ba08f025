package org.benchwright.cli.internal;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
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

/** Shows figures in the terminal, and writes them as tables, charts or a page. */
final class FiguresCommand {

    private static final int WIDTH = 900;
    private static final int HEIGHT = 420;

    private final Surroundings around;

    /** What was asked for. */
    record Request(Path ledger, Optional<String> family, Optional<String> unit, Optional<String> from, Optional<String> to,
            Optional<Path> csv, Optional<Path> svg, Optional<Path> html) {
    }

    FiguresCommand(Surroundings around) {
        this.around = around;
    }

    /** Does it. */
    int run(Request request) throws CannotStoreException {
        try (Screen screen = Screens.printing(around)) {
            FigureFilter filter = new FigureFilter(request.family(), request.unit(), day(request.from()), day(request.to()), around.zone());
            Figures figures = Figures.read(request.ledger(), filter, Progress.none(), Cancellation.never());
            print(figures, screen);
            write(figures, request, screen);
            return ExitStatus.OK;
        } catch (EntryRefusedException e) {
            try (Screen screen = Screens.printing(around)) {
                screen.line(e.getMessage());
            }
            return ExitStatus.BAD_INPUT;
        }
    }

    private static Optional<LocalDate> day(Optional<String> text) throws EntryRefusedException {
        try {
            return text.map(LocalDate::parse);
        } catch (DateTimeException e) {
            throw new EntryRefusedException(Message.FIGURES_NO_DAY.text(text.orElse("")), e);
        }
    }

    private static void print(Figures figures, Screen screen) {
        figures.basis().forEach(sentence -> Wrap.lines(sentence, screen.width(), "", "").forEach(screen::line));
        for (Figure figure : figures.figures()) {
            screen.line("");
            screen.line(figure.title());
            figure.sentences().forEach(sentence -> Wrap.lines(sentence, screen.width(), "  ", "  ").forEach(screen::line));
            figure.tables().forEach(table -> {
                TextTable text = new TextTable(table, screen.width());
                text.lines().forEach(screen::line);
                if (text.leftOut() > 0) {
                    screen.line("  " + Message.FIGURES_ROWS.text(String.valueOf(text.leftOut())));
                }
            });
        }
    }

    private static void write(Figures figures, Request request, Screen screen) throws CannotStoreException {
        if (request.csv().isPresent()) {
            for (SheetTable table : figures.figures().stream().flatMap(figure -> figure.tables().stream()).toList()) {
                write(request.csv().get().resolve(table.name() + ".csv"), Csv.of(table), screen);
            }
        }
        if (request.svg().isPresent()) {
            for (Figure figure : figures.figures()) {
                if (figure.plot().isPresent()) {
                    String name = figure.tables().get(0).name() + ".svg";
                    write(request.svg().get().resolve(name), Charts.svg(figure.plot().get(), Look.PRINT, WIDTH, HEIGHT), screen);
                }
            }
        }
        if (request.html().isPresent()) {
            write(request.html().get(), page(figures).html(), screen);
        }
    }

    private static Page page(Figures figures) {
        List<Page.Section> sections = figures.figures().stream()
                .map(figure -> new Page.Section(figure.title(), figure.sentences(), figure.plot(), figure.tables())).toList();
        return new Page(Message.FIGURES_TITLE.text(), figures.basis(), sections);
    }

    private static void write(Path file, String text, Screen screen) throws CannotStoreException {
        try {
            if (file.getParent() != null) {
                Files.createDirectories(file.getParent());
            }
            Files.writeString(file, text, StandardCharsets.UTF_8);
            screen.line(Message.FIGURES_WRITTEN.text(file.toString()));
        } catch (IOException e) {
            throw new CannotStoreException(Message.FIGURES_NOT_WRITTEN.text(file.toString(), String.valueOf(e.getMessage())), e);
        }
    }
}
