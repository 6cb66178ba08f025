package org.benchwright.ui.internal.app;

import java.io.IOException;
import java.nio.file.Path;
import java.util.function.Consumer;

import org.benchwright.ui.Ids;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.bench.NewTestHandler;
import org.benchwright.ui.internal.look.Buttons;
import org.benchwright.ui.internal.look.Fonts;
import org.benchwright.ui.internal.look.Labels;
import org.eclipse.core.runtime.ILog;
import org.eclipse.jface.layout.GridDataFactory;
import org.eclipse.jface.layout.GridLayoutFactory;
import org.eclipse.jface.resource.ImageDescriptor;
import org.eclipse.jface.resource.ResourceLocator;
import org.eclipse.swt.SWT;
import org.eclipse.swt.graphics.Image;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Label;
import org.eclipse.ui.IWorkbenchPage;
import org.eclipse.ui.IWorkbenchWindow;
import org.eclipse.ui.WorkbenchException;
import org.eclipse.ui.part.ViewPart;

/** Gets each of the three people to work with one click. */
public final class StartView extends ViewPart {

    private static final int LARGE_ICON_PERCENT = 400;
    private static final int COLUMNS = 3;

    private Button first;
    private Fonts fonts;

    @Override
    public void createPartControl(Composite parent) {
        fonts = new Fonts(parent.getDisplay());
        parent.addDisposeListener(e -> fonts.dispose());
        GridLayoutFactory.swtDefaults().numColumns(COLUMNS).margins(80, 60).spacing(28, 30).applyTo(parent);
        label(parent, Message.START_TITLE.text(), 56, true);
        label(parent, Message.START_WHAT.text(), 24, false);
        first = choice(parent, "bench", Message.START_TECHNICIAN, Message.START_TECHNICIAN_WHAT, this::test);
        choice(parent, "author", Message.START_ENGINEER, Message.START_ENGINEER_WHAT, this::write);
        choice(parent, "audit", Message.START_AUDITOR, Message.START_AUDITOR_WHAT, this::audit);
        Settings settings = getSite().getService(Settings.class);
        Path ledger = settings.ledger();
        label(parent, Message.START_LEDGER.text(ledger.subpath(Math.max(0, ledger.getNameCount() - 2), ledger.getNameCount()).toString()),
                18, false).setToolTipText(Labels.letters(ledger.toString()));
    }

    private Label label(Composite parent, String text, int pixels, boolean bold) {
        Label label = new Label(parent, SWT.WRAP);
        Labels.say(label, text);
        label.setFont(fonts.of(pixels, bold));
        GridDataFactory.fillDefaults().grab(true, false).hint(600, SWT.DEFAULT).span(COLUMNS, 1).applyTo(label);
        return label;
    }

    /** A picture, the button, and what it is for. */
    private Button choice(Composite parent, String icon, Message who, Message what, Consumer<IWorkbenchWindow> work) {
        Label picture = new Label(parent, SWT.NONE);
        ResourceLocator.imageDescriptorFromBundle(StartView.class, "icons/" + icon + ".svg")
                .ifPresent(image -> picture.setImage(large(picture, image)));
        Button button = Buttons.push(parent, who.text(), () -> work.accept(getSite().getWorkbenchWindow()));
        button.setToolTipText(what.text());
        button.setFont(fonts.of(36, false));
        GridDataFactory.fillDefaults().hint(420, 110).applyTo(button);
        GridDataFactory.fillDefaults().grab(true, false).align(SWT.FILL, SWT.CENTER).applyTo(label(parent, what.text(), 28, false));
        return button;
    }

    private static Image large(Label label, ImageDescriptor icon) {
        Image image = new Image(label.getDisplay(), icon.getImageData(LARGE_ICON_PERCENT));
        label.addDisposeListener(event -> image.dispose());
        return image;
    }

    private void test(IWorkbenchWindow window) {
        show(window, Ids.BENCH);
        new NewTestHandler().open(window);
    }

    private void write(IWorkbenchWindow window) {
        IWorkbenchPage page = show(window, Ids.AUTHOR);
        try {
            ProcedureFiles.procedures(getSite().getService(Settings.class).procedures()).stream()
                    .filter(file -> file.getFileName().toString().contains("c16-acceptance")).findFirst()
                    .ifPresent(file -> Editors.open(page, file));
        } catch (IOException e) {
            ILog.of(StartView.class).warn(Message.PROCEDURES_UNREADABLE.text(String.valueOf(e.getMessage())), e);
        }
    }

    private void audit(IWorkbenchWindow window) {
        show(window, Ids.AUDIT);
    }

    private static IWorkbenchPage show(IWorkbenchWindow window, String perspective) {
        try {
            return window.getWorkbench().showPerspective(perspective, window);
        } catch (WorkbenchException e) {
            throw new IllegalStateException("a perspective of this product is missing: " + perspective, e);
        }
    }

    @Override
    public void setFocus() {
        first.setFocus();
    }
}
