package org.benchwright.cli.internal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.core.Cancellation;
import org.benchwright.core.Progress;
import org.benchwright.core.SheetTable;
import org.benchwright.present.Auditing;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.DeviationRow;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.HouseFile;
import org.benchwright.present.PeopleDesk;
import org.benchwright.present.RecordStanding;
import org.benchwright.present.ReviewRow;
import org.benchwright.present.TakenElsewhereException;

import org.benchwright.present.WallTime;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/** What waits for an auditor, and what people sign about records after their seal, at the terminal. */
final class AuditCommands extends ScreenCommands {

    AuditCommands(Surroundings around, Function<Surroundings, Screen> screens) {
        super(around, screens);
    }

    // ---- lists

    static CommandSpec departuresSpec() {
        return list("departures", Message.HELP_DEPARTURES);
    }

    static CommandSpec nonconformitiesSpec() {
        return list("nonconformities", Message.HELP_NONCONFORMITIES);
    }

    private static CommandSpec list(String name, Message help) {
        return Specs.command(name, help).addOption(Specs.flag("--all", Message.HELP_DEVIATIONS_ALL))
                .addOption(Specs.file("--csv", "FILE", Message.HELP_DEVIATIONS_CSV)).addOption(Specs.file("--json", "FILE", Message.HELP_DEVIATIONS_JSON))
                .addOption(Specs.ledger());
    }

    int departures(Given given) throws CannotStoreException {
        return list(given, false);
    }

    int nonconformities(Given given) throws CannotStoreException {
        return list(given, true);
    }

    private int list(Given given, boolean nonconformities) throws CannotStoreException {
        List<DeviationRow> rows = auditing(given).deviations(nonconformities, !given.has("--all"), Progress.none(), Cancellation.never());
        SheetTable table = table(nonconformities, rows);
        try (Screen screen = Screens.printing(around())) {
            if (!new Output(screen).writeAsked(given, table)) {
                if (rows.isEmpty()) {
                    screen.line((given.has("--all") ? Message.DEVIATIONS_NONE : Message.DEVIATIONS_NOTHING_WAITS).text());
                }
                rows.forEach(row -> print(row, screen));
            }
            return ExitStatus.OK;
        }
    }

    private void print(DeviationRow row, Screen screen) {
        screen.line(Message.DEVIATION_HEAD.text(row.test(), row.event(), row.serial(), row.place()));
        Wrap.lines(row.words(), screen.width(), "    ", "    ").forEach(screen::line);
        String standing = row.decision().map(each -> Message.DEVIATION_DECIDED.text(each.word(), each.by(), time(each.instant()), each.reason()))
                .orElseGet(() -> Message.DEVIATION_WAITS.text(time(row.noted()), row.age(), row.owner()));
        Wrap.lines(standing, screen.width(), "    ", "    ").forEach(screen::line);
    }

    private String time(Instant instant) {
        return new WallTime(around().zone()).minute(instant);
    }

    private static SheetTable table(boolean nonconformities, List<DeviationRow> rows) {
        List<List<String>> cells = new ArrayList<>();
        for (DeviationRow row : rows) {
            Optional<DeviationRow.Decision> decision = row.decision();
            cells.add(List.of(row.test(), String.valueOf(row.event()), row.serial(), row.family(), row.procedure(), row.place(), row.words(),
                    row.noted().toString(), row.age(), row.owner(), decision.map(DeviationRow.Decision::word).orElse(""),
                    decision.map(DeviationRow.Decision::reason).orElse(""), decision.map(DeviationRow.Decision::by).orElse(""),
                    decision.map(each -> each.instant().toString()).orElse("")));
        }
        return new SheetTable(nonconformities ? "nonconformities" : "departures", List.of("test", "event", "serial", "family", "procedure", "place", "what",
                "noted", "age", "owner", "decision", "reason", "by", "decided"), cells);
    }

    static CommandSpec reviewsSpec() {
        return Specs.command("reviews", Message.HELP_REVIEWS).addOption(Specs.number("--lot", "TESTS", Message.HELP_REVIEWS_LOT))
                .addOption(Specs.text("--quality", "PERCENT", Message.HELP_REVIEWS_QUALITY)).addOption(Specs.flag("--none", Message.HELP_REVIEWS_NONE))
                .addOption(Specs.text("--reason", "WORDS", Message.HELP_REASON))
                .addOption(Specs.text("--by", "ID", Message.HELP_BY)).addOption(Specs.ledger());
    }

    /** Lists the reviews that are due, or plans how many there are to be. */
    int reviews(Given given) throws CannotStoreException {
        boolean planned = given.has("--lot") && given.has("--quality") && !given.has("--none");
        boolean ended = given.has("--none") && !given.has("--lot") && !given.has("--quality");
        if (ended && given.has("--by")) {
            return answering(screen -> screen.line(auditing(given).endReviews(text(given, "--reason"), by(given, screen))));
        } else if (planned && given.has("--by")) {
            return answering(screen -> screen.line(auditing(given).planReviews(String.valueOf(given.number("--lot").orElse(0)), text(given, "--quality"),
                    text(given, "--reason"), by(given, screen))));
        } else if (List.of("--lot", "--quality", "--none", "--by", "--reason").stream().anyMatch(given::has)) {
            return Screens.refused(around(), Message.REVIEWS_WHAT.text());
        }
        return printing(screen -> {
            screen.line(auditing(given).reviewPlan());
            List<ReviewRow> due = auditing(given).reviewsDue(Progress.none(), Cancellation.never());
            screen.line(due.isEmpty() ? Message.REVIEWS_NONE_DUE.text() : Message.REVIEWS_DUE.text(due.size()));
            due.forEach(row -> screen.line(Message.REVIEW_DUE_ROW.text(row.test(), row.serial(), row.technician(), time(row.opened()))));
        });
    }

    // ---- deeds

    static CommandSpec decideSpec() {
        return deed("decide", Message.HELP_DECIDE).addPositional(Specs.second("EVENT", Message.HELP_DECIDE_EVENT))
                .addOption(Specs.neededText("--as", "WORDS", Message.HELP_DECIDE_AS)).addOption(reason());
    }

    static CommandSpec amendSpec() {
        return deed("amend", Message.HELP_AMEND).addPositional(Specs.second("EVENT", Message.HELP_AMEND_EVENT))
                .addOption(Specs.neededText("--right", "ENTRY", Message.HELP_AMEND_RIGHT)).addOption(reason());
    }

    static CommandSpec reviewSpec() {
        return deed("review", Message.HELP_REVIEW).addOption(Specs.flag("--agreed", Message.HELP_REVIEW_AGREED))
                .addOption(Specs.text("--not-agreed", "WORDS", Message.HELP_REVIEW_NOT_AGREED));
    }

    static CommandSpec handOverSpec() {
        return deed("hand-over", Message.HELP_HAND_OVER).addOption(Specs.neededText("--to", "WHOM", Message.HELP_HAND_OVER_TO));
    }

    static CommandSpec supersedeSpec() {
        return deed("supersede", Message.HELP_SUPERSEDE).addOption(Specs.neededText("--with", "TEST", Message.HELP_SUPERSEDE_WITH)).addOption(reason());
    }

    static CommandSpec recallSpec() {
        return deed("recall", Message.HELP_RECALL).addOption(reason());
    }

    static CommandSpec voidSpec() {
        return deed("void", Message.HELP_VOID).addOption(reason());
    }

    static CommandSpec withdrawSpec() {
        return deed("withdraw-attachment", Message.HELP_WITHDRAW_ATTACHMENT, Specs.word("TEST", true, Message.HELP_WITHDRAW_ATTACHMENT_TEST))
                .addPositional(Specs.second("EVENT", Message.HELP_WITHDRAW_ATTACHMENT_EVENT))
                .addOption(reason());
    }

    private static CommandSpec deed(String name, Message help) {
        return deed(name, help, Specs.word("TEST", true, Message.HELP_PROVE_TEST));
    }

    private static CommandSpec deed(String name, Message help, PositionalParamSpec about) {
        return Specs.command(name, help).addPositional(about)
                .addOption(Specs.neededText("--by", "ID", Message.HELP_BY)).addOption(Specs.ledger());
    }

    private static OptionSpec reason() {
        return Specs.neededText("--reason", "WORDS", Message.HELP_REASON);
    }

    /** Something that is signed about a test. */
    @FunctionalInterface
    private interface Signed {
        /**
         * Has it signed.
         *
         * @throws EntryRefusedException   if the record does not take it, the person may not, or the password is not taken
         * @throws TakenElsewhereException if somebody else wrote to the record in the same moment
         * @throws CannotStoreException    if it can't be recorded
         */
        RecordStanding by(Auditing auditing, String test, PeopleDesk.Signing who)
                throws EntryRefusedException, TakenElsewhereException, CannotStoreException;
    }

    private int sign(Given given, Signed signed) throws CannotStoreException {
        return answering(screen -> sign(given, screen, signed));
    }

    private void sign(Given given, Screen screen, Signed signed) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        Auditing auditing = auditing(given);
        String test = given.word().orElseThrow();
        print(test, signed.by(auditing, test, by(given, screen)), screen);
    }

    /** Signs about one of a test's events, whose number is read before anybody types a password. */
    private int signAbout(Given given, AboutEvent signed) throws CannotStoreException {
        return answering(screen -> {
            long event = event(given);
            sign(given, screen, (auditing, test, who) -> signed.by(auditing, test, event, who));
        });
    }

    /** Something that is signed about an event of a test. */
    @FunctionalInterface
    private interface AboutEvent {
        RecordStanding by(Auditing auditing, String test, long event, PeopleDesk.Signing who)
                throws EntryRefusedException, TakenElsewhereException, CannotStoreException;
    }

    /** Who signs; the password is asked for once nothing else speaks against it. */
    private static PeopleDesk.Signing by(Given given, Screen screen) {
        String by = text(given, "--by");
        return PeopleDesk.Signing.asked(by, () -> new Passwords(screen).of(by));
    }

    private static void print(String test, RecordStanding standing, Screen screen) {
        screen.line(Message.AUDIT_SIGNED.text(test, standing.words()));
        long waiting = standing.deviations().stream().filter(DeviationRow::waiting).count();
        if (waiting > 0) {
            screen.line(Message.AUDIT_WAITING.text(waiting));
        }
        int last = standing.corrections().size() - 1;
        if (last >= 0) {
            standing.corrections().get(last).decided().forEach(words -> Wrap.lines(words, screen.width(), "  ", "  ").forEach(screen::line));
        }
    }

    int decide(Given given) throws CannotStoreException {
        return signAbout(given, (auditing, test, event, who) -> auditing.decide(test, event, text(given, "--as"), text(given, "--reason"), who));
    }

    int amend(Given given) throws CannotStoreException {
        return signAbout(given, (auditing, test, event, who) -> auditing.amend(test, event, text(given, "--right"), text(given, "--reason"), who));
    }

    int review(Given given) throws CannotStoreException {
        if (given.has("--agreed") == given.has("--not-agreed")) {
            return Screens.refused(around(), Message.REVIEW_WHAT.text());
        }
        return sign(given, (auditing, test, who) -> auditing.review(test, given.has("--agreed"), text(given, "--not-agreed"), who));
    }

    int handOver(Given given) throws CannotStoreException {
        return sign(given, (auditing, test, who) -> auditing.handOver(test, text(given, "--to"), who));
    }

    int supersede(Given given) throws CannotStoreException {
        return sign(given, (auditing, test, who) -> auditing.supersede(test, text(given, "--with"), text(given, "--reason"), who));
    }

    int recall(Given given) throws CannotStoreException {
        return sign(given, (auditing, test, who) -> auditing.recall(test, text(given, "--reason"), who));
    }

    int withdrawAttachment(Given given) throws CannotStoreException {
        String about = given.word().orElseThrow();
        return answering(screen -> {
            if (!auditing(given).namesTest(about)) {
                withdrawFile(given, about, given.second().orElse(""), screen);
                return;
            }
            // Asked before the password is, which that doesn't need.
            long event = event(given);
            if (auditing(given).endWithdrawal(about, event)) {
                screen.line(Message.AUDIT_ERASED.text(about, String.valueOf(event)));
            } else {
                print(about, auditing(given).withdrawAttachment(about, event, text(given, "--reason"), by(given, screen)), screen);
            }
        });
    }

    private void withdrawFile(Given given, String about, String name, Screen screen)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        Optional<HouseFile> ended = auditing(given).endWithdrawal(about, name);
        if (ended.isPresent()) {
            screen.line(Message.AUDIT_FILE_ERASED.text(ended.get().where(), ended.get().name(), ended.get().withdrawn().orElse("")));
            return;
        }
        HouseFile file = auditing(given).withdrawFile(about, name, text(given, "--reason"), by(given, screen));
        screen.line(Message.AUDIT_FILE_WITHDRAWN.text(file.where(), file.name(), file.withdrawn().orElse("")));
    }

    int voidRecord(Given given) throws CannotStoreException {
        return sign(given, (auditing, test, who) -> auditing.voidRecord(test, text(given, "--reason"), who));
    }

    private static String text(Given given, String option) {
        return given.text(option).orElse("");
    }

    private static long event(Given given) throws EntryRefusedException {
        String text = given.second().orElse("");
        try {
            return Long.parseLong(text);
        } catch (NumberFormatException malformed) {
            throw new EntryRefusedException(Message.AUDIT_NO_EVENT.text(text), malformed);
        }
    }

    private Auditing auditing(Given given) throws CannotStoreException {
        return new Auditing(given.ledgerToRead(), around().clocks(), around().zone());
    }
}
