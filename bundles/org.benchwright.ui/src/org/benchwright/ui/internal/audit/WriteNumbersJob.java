package org.benchwright.ui.internal.audit;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;

import org.benchwright.core.SheetTable;
import org.benchwright.present.Figures;
import org.benchwright.report.Csv;
import org.benchwright.ui.internal.Message;
import org.eclipse.core.runtime.IProgressMonitor;
import org.eclipse.core.runtime.IStatus;
import org.eclipse.core.runtime.Status;
import org.eclipse.core.runtime.jobs.Job;

/** Writes the numbers of all figures into a folder, a CSV file for each table. */
final class WriteNumbersJob extends Job {

    private final Path folder;
    private final List<SheetTable> tables;
    private final Consumer<String> told;

    /** @param told is told on the job's thread what came of it */
    WriteNumbersJob(Figures figures, Path folder, Consumer<String> told) {
        super(Message.FIGURES_WRITE.text());
        this.folder = folder;
        this.tables = figures.figures().stream().flatMap(figure -> figure.tables().stream()).toList();
        this.told = told;
        setSystem(true);
    }

    @Override
    protected IStatus run(IProgressMonitor monitor) {
        try {
            Files.createDirectories(folder);
            for (SheetTable table : tables) {
                Files.writeString(folder.resolve(table.name() + ".csv"), Csv.of(table), StandardCharsets.UTF_8);
            }
            told.accept(Message.FIGURES_WRITTEN.text(tables.size(), folder.toString()));
        } catch (IOException e) {
            told.accept(Message.FIGURES_NOT_WRITTEN.text(folder.toString(), String.valueOf(e.getMessage())));
        }
        return Status.OK_STATUS;
    }
}
