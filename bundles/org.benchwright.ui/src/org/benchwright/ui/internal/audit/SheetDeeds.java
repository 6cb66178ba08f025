package org.benchwright.ui.internal.audit;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

import org.benchwright.present.AuditDeed;
import org.benchwright.present.Auditing;
import org.benchwright.present.RecordRow;
import org.benchwright.present.RecordSheet;
import org.benchwright.present.RecordStanding;
import org.benchwright.present.TimelineLine;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.look.Buttons;
import org.benchwright.ui.internal.look.Labels;
import org.benchwright.ui.internal.look.Switched;
import org.benchwright.ui.internal.sign.SignDialog;
import org.eclipse.swt.widgets.Button;
import org.eclipse.swt.widgets.Composite;
import org.eclipse.swt.widgets.Shell;

/** The buttons of a record sheet that sign something; each is enabled only while the record takes it, and says why not. */
final class SheetDeeds {

    private static final int LONGEST_ENTRY = 90;

    private final Map<AuditDeed, Button> buttons = new EnumMap<>(AuditDeed.class);
    private final Auditing auditing;
    private final String who;
    private final Runnable signed;
    private Optional<RecordSheet> shown = Optional.empty();

    /**
     * @param who    the id of who will probably sign
     * @param signed is run when something was signed
     */
    SheetDeeds(Composite parent, Path ledger, String who, Runnable signed) {
        this.auditing = Auditing.here(ledger);
        this.who = who;
        this.signed = signed;
        button(parent, AuditDeed.AMEND, Message.SHEET_BUTTON_AMEND);
        button(parent, AuditDeed.REVIEW, Message.SHEET_BUTTON_REVIEW);
        button(parent, AuditDeed.HAND_OVER, Message.SHEET_BUTTON_HAND_OVER);
        button(parent, AuditDeed.SUPERSEDE, Message.SHEET_BUTTON_SUPERSEDE);
        button(parent, AuditDeed.RECALL, Message.SHEET_BUTTON_RECALL);
        button(parent, AuditDeed.VOID, Message.SHEET_BUTTON_VOID);
        button(parent, AuditDeed.WITHDRAW, Message.SHEET_BUTTON_WITHDRAW);
    }

    private void button(Composite parent, AuditDeed deed, Message text) {
        Button button = Buttons.push(parent, text.text(), () -> shown.ifPresent(sheet -> sign(parent.getShell(), deed, sheet)));
        button.setEnabled(false);
        buttons.put(deed, button);
    }

    /** From here on the buttons are about this record. */
    void show(RecordSheet sheet) {
        shown = Optional.of(sheet);
        buttons.forEach((deed, button) -> {
            Optional<String> objection = sheet.standing().map(standing -> Optional.ofNullable(standing.objections().get(deed)))
                    .orElseGet(() -> Optional.of(Message.SHEET_OPEN.text()));
            Switched.enable(button, objection.isEmpty());
            button.setToolTipText(objection.map(Labels::letters).orElse(null));
        });
    }

    /** From here on the buttons are about nothing. */
    void clear() {
        shown = Optional.empty();
        buttons.values().forEach(button -> Switched.enable(button, false));
    }

    private void sign(Shell over, AuditDeed deed, RecordSheet sheet) {
        SignDialog.ask(over, asked(deed, sheet.row(), sheet.standing().orElseThrow()), signed);
    }

    private SignDialog.Asked asked(AuditDeed deed, RecordRow row, RecordStanding standing) {
        SignDialog.Line reason = new SignDialog.Line(Message.DECIDE_REASON.text(), "");
        String test = row.test();
        return switch (deed) {
            case AMEND -> amend(row, standing, reason);
            case REVIEW -> asked(Message.REVIEW_TITLE, Message.REVIEW_WHAT.text(test, row.serial()),
                    List.of(new SignDialog.Choice(Message.REVIEW_RESULT.text(),
                            List.of(Message.REVIEW_AGREED.text(), Message.REVIEW_NOT_AGREED.text())),
                            new SignDialog.Line(Message.REVIEW_REMARK.text(), "")),
                    (answers, by) -> auditing.review(test, answers.get(0).equals(Message.REVIEW_AGREED.text()), answers.get(1), by));
            case HAND_OVER -> asked(Message.HAND_OVER_TITLE, Message.HAND_OVER_WHAT.text(standing.number(), row.serial()),
                    List.of(new SignDialog.Line(Message.HAND_OVER_TO.text(), "")), (answers, by) -> auditing.handOver(test, answers.get(0), by));
            case SUPERSEDE -> asked(Message.SUPERSEDE_TITLE, Message.SUPERSEDE_WHAT.text(test, row.serial()),
                    List.of(new SignDialog.Line(Message.SUPERSEDE_BY.text(), ""), reason),
                    (answers, by) -> auditing.supersede(test, answers.get(0), answers.get(1), by));
            case WITHDRAW -> withdraw(row, standing, reason);
            case RECALL -> asked(Message.RECALL_TITLE, Message.RECALL_WHAT.text(test, row.serial()), List.of(reason),
                    (answers, by) -> auditing.recall(test, answers.get(0), by));
            default -> asked(Message.VOID_TITLE, Message.VOID_WHAT.text(test, row.serial()), List.of(reason),
                    (answers, by) -> auditing.voidRecord(test, answers.get(0), by));
        };
    }

    private SignDialog.Asked withdraw(RecordRow row, RecordStanding standing, SignDialog.Line reason) {
        List<RecordStanding.Attachment> there = standing.attachments().stream().filter(each -> each.withdrawn().isEmpty()).toList();
        List<String> names = there.stream().map(each -> Message.ATTACHMENT_ENTRY.text(String.valueOf(each.event()), each.name())).toList();
        return asked(Message.ATTACHMENT_TITLE, Message.ATTACHMENT_WHAT.text(row.test(), row.serial()),
                List.of(new SignDialog.Choice(Message.ATTACHMENT_WHICH.text(), names), reason),
                (answers, by) -> auditing.withdrawAttachment(row.test(), there.get(names.indexOf(answers.get(0))).event(), answers.get(1), by));
    }

    private SignDialog.Asked amend(RecordRow row, RecordStanding standing, SignDialog.Line reason) {
        List<String> entries = standing.entries().stream().map(SheetDeeds::entry).toList();
        return asked(Message.AMEND_TITLE, Message.AMEND_WHAT.text(row.test(), row.serial()),
                List.of(new SignDialog.Choice(Message.AMEND_ENTRY.text(), entries), new SignDialog.Line(Message.AMEND_RIGHT.text(), ""), reason),
                (answers, by) -> auditing.amend(row.test(), standing.entries().get(entries.indexOf(answers.get(0))).sequence(), answers.get(1),
                        answers.get(2), by));
    }

    /** Its number makes it tell itself from every other. */
    private static String entry(TimelineLine line) {
        String words = line.sequence() + "  " + line.words();
        return words.length() > LONGEST_ENTRY ? words.substring(0, LONGEST_ENTRY) + "..." : words;
    }

    private SignDialog.Asked asked(Message title, String words, List<SignDialog.Question> questions, SignDialog.Signature signature) {
        return new SignDialog.Asked(title.text(), words, questions, who, signature);
    }
}
