package org.benchwright.ui.internal.audit;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Collectors;

import org.benchwright.core.Cancellation;
import org.benchwright.core.Progress;
import org.benchwright.present.Auditing;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.PeopleDesk;
import org.benchwright.present.ReviewRow;
import org.benchwright.present.TakenElsewhereException;
import org.benchwright.ui.internal.Background;
import org.benchwright.ui.internal.Failures;
import org.benchwright.ui.internal.Message;
import org.benchwright.ui.internal.OnDisplay;
import org.benchwright.ui.internal.sign.SignDialog;
import org.eclipse.swt.widgets.Control;

/** Which records are drawn for a review: tells how it is planned and what is due, and has an auditor plan it anew. */
final class Reviews {

    private static final int MOST_NAMED = 5;
    private static final String USUAL_LOT = "100";
    private static final String USUAL_QUALITY = "1.0";

    private final Control place;
    private final Auditing auditing;
    private final String who;
    private final Consumer<String> told;

    /**
     * @param place where it is asked
     * @param who   the id of who will probably sign
     * @param told  is told the plan in words when it was signed, on the display's thread
     */
    Reviews(Control place, Path ledger, String who, Consumer<String> told) {
        this.place = place;
        this.auditing = Auditing.here(ledger);
        this.who = who;
        this.told = told;
    }

    /** Reads how things stand, then asks. */
    void ask() {
        Background.soon(Message.REVIEWS_TITLE.text(), monitor -> {
            try {
                String words = auditing.reviewPlan() + " " + due();
                OnDisplay.later(place, () -> plan(words));
            } catch (CannotStoreException | RuntimeException failure) {
                OnDisplay.later(place, () -> Failures.tell(place.getShell(), failure));
            }
        });
    }

    private String due() throws CannotStoreException {
        List<ReviewRow> due = auditing.reviewsDue(Progress.none(), Cancellation.never());
        String named = due.stream().limit(MOST_NAMED).map(ReviewRow::test).collect(Collectors.joining(", "))
                + (due.size() > MOST_NAMED ? ", ..." : "");
        return due.isEmpty() ? Message.REVIEWS_NONE_DUE.text() : Message.CHECK_REVIEWS.text(due.size(), named);
    }

    private void plan(String words) {
        String[] signed = {""};
        SignDialog.Asked asked = new SignDialog.Asked(Message.REVIEWS_TITLE.text(), words,
                List.of(new SignDialog.Choice(Message.REVIEWS_DRAW.text(),
                        List.of(Message.REVIEWS_DRAW_SAMPLE.text(), Message.REVIEWS_DRAW_NONE.text())),
                        new SignDialog.Line(Message.REVIEWS_LOT.text(), USUAL_LOT),
                        new SignDialog.Line(Message.REVIEWS_QUALITY.text(), USUAL_QUALITY),
                        new SignDialog.Line(Message.DECIDE_REASON.text(), "")),
                who, (answers, by) -> signed[0] = sign(answers, by));
        SignDialog.ask(place.getShell(), asked, () -> told.accept(signed[0]));
    }

    private String sign(List<String> answers, PeopleDesk.Signing by) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return answers.get(0).equals(Message.REVIEWS_DRAW_NONE.text()) ? auditing.endReviews(answers.get(3), by)
                : auditing.planReviews(answers.get(1), answers.get(2), answers.get(3), by);
    }
}
