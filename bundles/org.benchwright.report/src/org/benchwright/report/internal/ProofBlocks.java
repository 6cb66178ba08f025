package org.benchwright.report.internal;

import java.util.ArrayList;
import java.util.List;
import org.benchwright.report.TestReport;

/**
 * What was decided, how sure that is, and what the soaks proved: alike on a certificate and in a record.
 *
 * @param report the test
 */
record ProofBlocks(TestReport report) {

    /** The sections. */
    List<Block> all() {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Heading(Message.RESULTS.text()));
        blocks.addAll(results());
        blocks.addAll(certainty());
        blocks.add(new Block.Heading(Message.SOAK.text()));
        if (report.soaks().isEmpty()) {
            blocks.add(new Block.Text(Message.SOAK_NONE.text()));
        }
        report.soaks().forEach(words -> blocks.add(new Block.Text(words)));
        return blocks;
    }

    private List<Block> results() {
        if (report.results().isEmpty()) {
            return List.of(new Block.Text(Message.RESULTS_NONE.text()));
        }
        List<List<String>> measured = new ArrayList<>();
        List<List<String>> judged = new ArrayList<>();
        for (TestReport.Result result : report.results()) {
            result.numbers().ifPresentOrElse(numbers -> measured.add(List.of(result.what(), numbers.value(), numbers.limits(),
                    numbers.uncertainty(), numbers.margin(), result.outcome())),
                    () -> judged.add(List.of(result.step(), result.words(), result.outcome())));
        }
        List<Block> blocks = new ArrayList<>();
        if (!measured.isEmpty()) {
            blocks.add(new Block.Table(ReportWords.texts(Message.WHAT, Message.VALUE, Message.LIMITS, Message.UNCERTAINTY,
                    Message.MARGIN, Message.OUTCOME), List.of(4, 2, 3, 2, 2, 2), measured));
        }
        if (!judged.isEmpty()) {
            blocks.add(new Block.Table(ReportWords.texts(Message.STEP, Message.DECISION, Message.OUTCOME), List.of(3, 9, 2), judged));
        }
        return blocks;
    }

    /** For each measured decision the rule, its guard band and what may be wrong with it. */
    private List<Block> certainty() {
        List<List<String>> rows = new ArrayList<>();
        for (TestReport.Result result : report.results()) {
            result.numbers().ifPresent(numbers -> numbers.certainty().ifPresent(sure -> rows.add(List.of(result.what(), numbers.rule(),
                    sure.guardBand(), sure.conformance(), sure.falseAccept(), sure.readings()))));
        }
        return rows.isEmpty() ? List.of() : List.of(new Block.Heading(Message.CERTAINTY.text()),
                new Block.Table(ReportWords.texts(Message.WHAT, Message.RULE, Message.GUARD_BAND, Message.CONFORMANCE,
                        Message.FALSE_ACCEPT, Message.READINGS), List.of(4, 3, 2, 2, 2, 2), rows),
                new Block.Small(Message.CERTAINTY_HOW.text()));
    }
}
