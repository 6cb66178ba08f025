package org.benchwright.ui.tests;

import java.nio.file.Path;
import org.benchwright.ui.Ids;
import org.benchwright.workshop.tests.Approved;
import org.eclipse.jface.text.ITextOperationTarget;
import org.eclipse.jface.text.source.ISourceViewer;
import org.eclipse.swt.custom.StyledText;
import org.eclipse.swt.widgets.Label;
import org.eclipse.ui.IEditorPart;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;

/** Pictures of what a test engineer works with. */
@ExtendWith(QuietLog.class)
class AuthorScreensTest {

    @Test
    void author(@TempDir Path temporary) throws Exception {
        IEditorPart editor = Engineer.open(Engineer.copyOfTheDemo(temporary).resolve(Technician.C16));
        Screen.waitFor("a clean folder", () -> Engineer.remarksSay().contains("no remarks"));
        try {
            writeAndTake(editor, "author", "author-meaning", "author-proposals");
            Pictures.dark(() -> Pictures.take("dark-author"));
        } finally {
            Engineer.closeAll();
        }
    }

    private static void writeAndTake(IEditorPart editor, String withRemarks, String withMeaning, String withProposals) throws Exception {
        Engineer.replace(editor, "expect pwr steady within 2 s of on", "expect pwm steady within 500 ms of on");
        Screen.waitFor("two remarks", () -> Engineer.marks(editor).size() == 2 && Engineer.remarkRows().size() == 2);
        Engineer.openRemark(0);
        Pictures.take(withRemarks);
        Engineer.press("F1");
        Screen.waitFor("the page", () -> Screen.all(StyledText.class).anyMatch(text -> text.getText().startsWith("unknown-lamp")));
        Pictures.take(withMeaning);
        Screen.page().hideView(Screen.page().findView(Ids.PAGE_VIEW));
        Engineer.goBehind(editor, "Press as you close the switch.\"\n            ");
        ((ITextOperationTarget) Engineer.viewer(editor)).doOperation(ISourceViewer.CONTENTASSIST_PROPOSALS);
        Screen.waitFor("the list", () -> Engineer.proposals().stream().anyMatch(text -> text.startsWith("expect")));
        Engineer.selectProposal(1);
        Pictures.take(withProposals);
        Engineer.closeProposals();
    }

    @Test
    void asPrinted(@TempDir Path temporary) throws Exception {
        IEditorPart editor = Engineer.open(Engineer.copyOfTheDemo(temporary).resolve(Technician.C16));
        Screen.waitFor("the sheet", () -> Screen.all(StyledText.class).anyMatch(text -> Engineer.isSheet(text)));
        try {
            Engineer.goBehind(editor, "step lamps \"");
            Screen.waitFor("the step", () -> Engineer.inSight("PWR (Power) green steady within"));
            Pictures.take("as-printed");
            Pictures.dark(() -> Pictures.take("dark-as-printed"));
        } finally {
            Engineer.closeAll();
        }
    }

    @Test
    void whatItProves(@TempDir Path temporary) throws Exception {
        Engineer.open(Engineer.copyOfTheDemo(temporary).resolve(Technician.C16));
        try {
            Prover.waitForFlow("lamps");
            Prover.select("lamps");
            Pictures.take("what-it-proves");
            Prover.turnTo("Soak");
            Prover.waitForPlot();
            Pictures.take("what-it-proves-soak");
            Prover.turnTo("Risks");
            Pictures.take("what-it-proves-risks");
            Prover.turnTo("Times");
            Pictures.take("what-it-proves-times");
            Pictures.dark(() -> {
                Prover.turnTo("Flow");
                Pictures.take("dark-what-it-proves");
                Prover.turnTo("Soak");
                Prover.waitForPlot();
                Pictures.take("dark-what-it-proves-soak");
            });
        } finally {
            Prover.lookAway();
            Engineer.closeAll();
        }
    }

    @Test
    void revisions(@TempDir Path temporary) throws Exception {
        Technician.approve(Technician.C16);
        IEditorPart editor = Engineer.open(Engineer.copyOfTheDemo(temporary).resolve(Technician.C16));
        try {
            Engineer.replace(editor, "limits 23.5 .. 24.5 V, decide guarded both ways", "limits 23.5 .. 24.3 V, decide guarded both ways");
            Screen.page().saveEditor(editor, false);
            Signer.look();
            Signer.waitForRow("2 | draft (this text)");
            Signer.signs("&Prepare", "Prepare a revision", "RB", Approved.PASSWORD);
            Signer.waitForRow("2 | prepared (this text)");
            Signer.select("2 | prepared");
            Screen.waitFor("what it changes", () -> Signer.told().contains("24.5 V became 24.3 V"));
            revisions("");
            Pictures.dark(() -> revisions("dark-"));
        } finally {
            Screen.page().showView(Ids.PRINTED_VIEW);
            Engineer.closeAll();
        }
    }

    private static void revisions(String look) throws Exception {
        Pictures.largeAndSmall(look + "revisions");
        Signer.in("&Approve", "Approve a revision", dialog -> {
            Pictures.take(look + "revision-approve");
            Signer.sign(dialog, "RB", Approved.PASSWORD);
            Pictures.take(look + "revision-approve-refused");
            dialog.close();
        });
        Signer.in("&Withdraw", "Withdraw a revision", dialog -> {
            Pictures.take(look + "revision-withdraw");
            dialog.close();
        });
        Dialogs.answered("New test", () -> Screen.command("org.benchwright.ui.newTest"), dialog -> {
            Screen.waitFor("why it is a rehearsal", () -> Screen.all(dialog, Label.class).stream().anyMatch(label -> label.getText().contains("rehearsed")));
            Pictures.take(look + "new-test-draft");
            dialog.close();
        });
    }
}
