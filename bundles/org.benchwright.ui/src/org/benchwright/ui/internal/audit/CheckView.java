package org.benchwright.ui.internal.audit;

import java.util.Optional;

import org.benchwright.present.Auditing;
import org.benchwright.present.VerificationReport;
import org.benchwright.ui.internal.Background;
import org.benchwright.ui.internal.Failures;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.desk.Desk;
import org.benchwright.ui.internal.desk.StillWindow;
import org.benchwright.ui.internal.look.Buttons;
import org.benchwright.ui.internal.look.Story;
import org.benchwright.ui.internal.look.Switched;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.swt.SWT;
import org.eclipse.swt.layout.GridData;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.ProgressBar;
import org.eclipse.ui.part.ViewPart;

/** Ledger check: links, signatures, decisions once more; can be stopped. */
public final class CheckView extends ViewPart {

    private static final int PARTS = 1000;

    private Button start;
    private Button stop;
    private Button erase;
    private ProgressBar bar;
    private Story story;
    private Optional<CheckJob> job = Optional.empty();

    @Override
    public void createPartControl(Composite parent) {
        Composite body = new Composite(parent, SWT.NONE);
        GridLayoutFactory.swtDefaults().numColumns(4).applyTo(body);
        start = Buttons.push(body, Message.CHECK_START.text(), this::start);
        stop = Buttons.push(body, Message.CHECK_STOP.text(), this::stop);
        Switched.enable(stop, false);
        erase = Buttons.push(body, Message.CHECK_ERASE.text(), this::erase);
        GridDataFactory.fillDefaults().exclude(true).applyTo(erase);
        offerErasing(false);
        bar = new ProgressBar(body, SWT.HORIZONTAL | SWT.SMOOTH);
        bar.setVisible(false);
        GridDataFactory.fillDefaults().grab(true, false).align(SWT.FILL, SWT.CENTER).applyTo(bar);
        story = new Story(body, 1);
        story.paragraph(Message.CHECK_NOT_YET.text());
        GridDataFactory.fillDefaults().grab(true, true).span(4, 1).applyTo(story.control());
        parent.addDisposeListener(event -> job.ifPresent(CheckJob::stop));
    }

    /** Starts a check. */
    void start() {
        CheckJob next = new CheckJob(getSite().getService(Desk.class).ledger(), getSite().getService(StillWindow.class), new CheckJob.Watcher() {
            @Override
            public void advanced(long events, long all) {
                onScreen(() -> running(events, all));
            }

            @Override
            public void checked(VerificationReport report, boolean stopped) {
                onScreen(() -> tell(report, stopped));
            }

            @Override
            public void failed(String words) {
                onScreen(() -> {
                    over();
                    story.strong(words);
                });
            }
        });
        job = Optional.of(next);
        Switched.enable(start, false);
        Switched.enable(stop, true);
        offerErasing(false);
        bar.setVisible(true);
        running(0, 0);
        next.schedule();
    }

    // ---- bytes that a withdrawal left, since it was broken off

    private void offerErasing(boolean left) {
        erase.setVisible(left);
        ((GridData) erase.getLayoutData()).exclude = !left;
        erase.requestLayout();
    }

    /** Looks again when it is done. */
    private void erase() {
        Switched.enable(start, false);
        offerErasing(false);
        story.clear();
        story.paragraph(Message.CHECK_ERASING.text());
        Auditing auditing = Auditing.here(getSite().getService(Desk.class).ledger());
        Background.begun(Message.CHECK_ERASE.text(), auditing::endWithdrawals)
                .whenComplete((done, failure) -> onScreen(() -> erased(Optional.ofNullable(failure))));
    }

    private void erased(Optional<Throwable> failure) {
        if (failure.isEmpty()) {
            start();
        } else {
            Switched.enable(start, true);
            offerErasing(true);
            story.strong(Failures.words(failure.get()));
        }
    }

    // ---- how far it is, and what it found

    private void stop() {
        Switched.enable(stop, false);
        job.ifPresent(CheckJob::stop);
        story.paragraph(Message.CHECK_STOPPING.text());
    }

    private void running(long events, long all) {
        // Thousandths, as there may be more events than a bar can count.
        bar.setMaximum(PARTS);
        bar.setSelection(all == 0 ? 0 : (int) (events * PARTS / all));
        story.clear();
        story.paragraph(Message.CHECK_RUNNING.text(String.valueOf(getSite().getService(Desk.class).ledger().getFileName()),
                events));
    }

    private void onScreen(Runnable work) {
        OnDisplay.later(bar, work);
    }

    private void over() {
        Switched.enable(start, true);
        Switched.enable(stop, false);
        bar.setVisible(false);
        story.clear();
    }

    private void tell(VerificationReport report, boolean stopped) {
        over();
        offerErasing(report.bytesLeft());
        Message verdict = stopped ? Message.CHECK_STOPPED : report.sound() ? Message.CHECK_SOUND : Message.CHECK_NOT_SOUND;
        story.heading(verdict.text());
        for (VerificationReport.Line line : report.lines()) {
            story.strong(line.words());
            line.faults().forEach(fault -> story.paragraph("    " + fault));
        }
        if (!report.signers().isEmpty()) {
            story.paragraph(Message.CHECK_SIGNERS.text(report.signers().size()));
            report.signers().forEach(key -> story.paragraph("    " + key));
            report.whose().ifPresent(story::paragraph);
        }
        if (!report.open().isEmpty()) {
            story.paragraph(Message.CHECK_OPEN_TESTS.text(report.open().size()));
        }
        report.withdrawn().forEach(story::paragraph);
        if (!report.reviews().isEmpty()) {
            story.paragraph(Message.CHECK_REVIEWS.text(report.reviews().size(), String.join(", ", report.reviews())));
        }
        if (!report.late().isEmpty()) {
            story.paragraph(Message.CHECK_LATE.text(report.late().size()));
            report.late().forEach(words -> story.paragraph("    " + words));
        }
        story.showBeginning();
    }

    @Override
    public void setFocus() {
        start.setFocus();
    }
}
