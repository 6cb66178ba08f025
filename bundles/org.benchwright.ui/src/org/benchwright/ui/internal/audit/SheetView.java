package org.benchwright.ui.internal.audit;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

import org.benchwright.present.Bench;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.DeviationRow;
import org.benchwright.present.RecordRow;
import org.benchwright.present.RecordSheet;
import org.benchwright.present.RecordStanding;
import org.benchwright.present.WallTime;
import org.benchwright.report.Page;
import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.Background;
import org.benchwright.ui.internal.Latest;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.app.Settings;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.look.Buttons;
import org.benchwright.ui.internal.look.Story;
import org.benchwright.ui.internal.look.Switched;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.viewers.ISelection;
import org.eclipse.jface.viewers.IStructuredSelection;
import org.eclipse.swt.SWT;
import org.eclipse.swt.custom.SashForm;
import org.eclipse.swt.layout.RowLayout;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.ui.ISelectionListener;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchPart;
import org.eclipse.ui.part.ViewPart;

/** Record sheet: the selected record as a story, from its opening to its seal. */
public final class SheetView extends ViewPart {

    private SashForm parts;
    private Story story;
    private Courses courses;
    private Button returned;
    private Button compare;
    private SheetDeeds deeds;
    private Optional<RecordRow> shown = Optional.empty();
    private final Latest reading = new Latest();
    private final ISelectionListener listener = this::selected;

    @Override
    public void createPartControl(Composite parent) {
        Composite body = new Composite(parent, SWT.NONE);
        GridLayoutFactory.fillDefaults().applyTo(body);
        parts = new SashForm(body, SWT.HORIZONTAL);
        GridDataFactory.fillDefaults().grab(true, true).applyTo(parts);
        story = new Story(parts, 1);
        courses = new Courses(parts);
        parts.setWeights(3, 2);
        parts.setMaximizedControl(story.control());
        story.paragraph(Message.SHEET_NONE.text());
        Composite buttons = new Composite(body, SWT.NONE);
        GridDataFactory.fillDefaults().grab(true, false).applyTo(buttons);
        buttons.setLayout(new RowLayout());
        deeds = new SheetDeeds(buttons, getSite().getService(Desk.class).ledger(), getSite().getService(Settings.class).technician(),
                () -> shown.ifPresent(row -> read(row.test())));
        returned = Buttons.push(buttons, Message.SHEET_RETURNED.text(), () -> shown.ifPresent(this::cameBack));
        returned.setEnabled(false);
        compare = Buttons.push(buttons, Message.SHEET_COMPARE.text(), () -> shown.ifPresent(row -> new CompareDialog(getSite().getShell(),
                getSite().getService(Desk.class).ledger(), row).open()));
        compare.setEnabled(false);
        getSite().getPage().addPostSelectionListener(listener);
        parent.addDisposeListener(event -> getSite().getPage().removePostSelectionListener(listener));
        // What was selected before this view was there.
        Optional.ofNullable(getSite().getPage().getSelection(Ids.RECORDS_VIEW)).ifPresent(this::selected);
    }

    /** Reads the record whose sheet is shown on a page once more, since something was signed about it elsewhere. */
    static void readAgain(IWorkbenchPage page) {
        if (page.findView(Ids.SHEET_VIEW) instanceof SheetView sheet) {
            sheet.shown.ifPresent(row -> sheet.read(row.test()));
        }
    }

    private void selected(IWorkbenchPart part, ISelection selection) {
        selected(selection);
    }

    private void selected(ISelection selection) {
        if (selection instanceof IStructuredSelection rows && rows.getFirstElement() instanceof RecordRow row) {
            read(row.test());
        } else if (selection instanceof IStructuredSelection rows && rows.getFirstElement() instanceof DeviationRow row) {
            read(row.test());
        }
    }

    private void read(String test) {
        Latest.Reading now = reading.begin();
        Path ledger = getSite().getService(Desk.class).ledger();
        Background.soon(Message.RECORDS_READ.text(), monitor -> {
            try (Bench bench = Bench.read(ledger, Bench.Clocks.system())) {
                Optional<RecordSheet> sheet = bench.record(test);
                show(now, () -> sheet.ifPresentOrElse(this::tell, () -> story.strong(Message.SHEET_GONE.text(test))));
            } catch (CannotStoreException e) {
                show(now, () -> story.strong(String.valueOf(e.getMessage())));
            }
        });
    }

    /** Whatever is told, nothing of the sheet that was shown before stays, and nothing can be done to its unit. */
    private void show(Latest.Reading now, Runnable telling) {
        OnDisplay.later(story.control(), () -> now.show(() -> {
            shown = Optional.empty();
            Switched.enable(returned, false);
            Switched.enable(compare, false);
            deeds.clear();
            story.clear();
            draw(List.of());
            telling.run();
            story.showBeginning();
        }));
    }

    /** The course of its soaks beside the story; without one the story has all the room. */
    private void draw(List<Page.Section> sections) {
        courses.show(sections);
        parts.setMaximizedControl(sections.isEmpty() ? story.control() : null);
    }

    private void cameBack(RecordRow row) {
        new ReturnDialog(getSite().getShell(), getSite().getService(Desk.class).ledger(), getSite().getService(Settings.class), row.test(), row.serial(),
                () -> read(row.test())).open();
    }

    private void tell(RecordSheet sheet) {
        RecordRow row = sheet.row();
        shown = Optional.of(row);
        Switched.enable(returned, sheet.out());
        deeds.show(sheet);
        Switched.enable(compare, sheet.predecessor().isPresent());
        story.heading(Message.SHEET_TITLE.text(row.serial(), row.state()));
        if (!sheet.reason().isBlank()) {
            story.strong(sheet.reason());
        }
        sheet.proved().forEach(story::paragraph);
        story.paragraph(Message.SHEET_HEAD.text(row.family(), row.procedure(), WallTime.here().minute(row.opened()),
                row.technician(), row.test()));
        story.paragraph((sheet.sealed() ? Message.SHEET_SEALED : Message.SHEET_OPEN).text()
                + (row.rehearsal() ? " " + Message.SHEET_REHEARSAL.text() : ""));
        sheet.standing().filter(standing -> !row.rehearsal()).ifPresent(this::tell);
        story.paragraph("");
        sheet.story().forEach(story::line);
        draw(sheet.courses());
    }

    /** Where the record stands, what was decided, and what was amended with the first entry struck beside it. */
    private void tell(RecordStanding standing) {
        story.strong(standing.end().orElseGet(() -> Message.SHEET_STANDING.text(standing.words())));
        if (standing.end().isEmpty()) {
            standing.uncertified().ifPresent(words -> story.paragraph(Message.SHEET_NO_CERTIFICATE.text(words)));
        }
        for (DeviationRow each : standing.deviations()) {
            story.paragraph(Message.SHEET_DEVIATION.text(each.event(), each.words()));
            story.paragraph("    " + each.decision().map(decided -> Message.SHEET_DECIDED.text(decided.word(), decided.by(), decided.reason()))
                    .orElseGet(Message.SHEET_WAITS::text));
        }
        for (RecordStanding.Attachment each : standing.attachments()) {
            each.withdrawn().ifPresent(words -> story.paragraph(Message.SHEET_WITHDRAWN.text(String.valueOf(each.event()), each.name(), words)));
        }
        for (RecordStanding.Correction each : standing.corrections()) {
            story.strong(Message.SHEET_AMENDED.text(String.valueOf(each.event()), each.by(), WallTime.here().minute(each.instant()),
                    each.reason()));
            story.struck(each.first());
            story.paragraph(each.right());
            each.decided().forEach(story::paragraph);
        }
    }

    @Override
    public void setFocus() {
        story.control().setFocus();
    }
}
