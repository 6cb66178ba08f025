package org.benchwright.cli.internal;

import java.time.ZoneId;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

import org.benchwright.cli.ExitStatus;
import org.benchwright.cli.Surroundings;
import org.benchwright.core.FamilyPlate;
import org.benchwright.core.ScannedText;
import org.benchwright.language.FamilyPlates;
import org.benchwright.language.LanguageServices;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.ReceivedRow;
import org.benchwright.present.Receiving;
import org.benchwright.present.TakenElsewhereException;
import org.benchwright.present.UnitStory;

import org.benchwright.present.WallTime;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** Receiving units at the terminal, what is in the house, and what was repaired. */
final class ReceivingCommands extends ScreenCommands {

    ReceivingCommands(Surroundings around, Function<Surroundings, Screen> screens) {
        super(around, screens);
    }

    static CommandSpec receiveSpec() {
        return Specs.command("receive", Message.HELP_RECEIVE).addPositional(Specs.words("UNIT", Message.HELP_RECEIVE_UNIT))
                .addOption(Specs.text("--order", "ORDER", Message.HELP_RECEIVE_ORDER)).addOption(Specs.text("--owner", "OWNER", Message.HELP_RECEIVE_OWNER))
                .addOption(Specs.text("--complaint", "TEXT", Message.HELP_RECEIVE_COMPLAINT)).addOption(Specs.text("--damage", "TEXT", Message.HELP_RECEIVE_DAMAGE))
                .addOption(Specs.text("--preserve", "TEXT", Message.HELP_RECEIVE_PRESERVE)).addOption(Specs.files("--file", "FILE", Message.HELP_RECEIVE_FILE))
                .addOption(Specs.text("--plate", "WORD", Message.HELP_RECEIVE_PLATE)).addOption(Specs.flag("--as-typed", Message.HELP_RECEIVE_AS_TYPED))
                .addOption(Specs.flag("--again", Message.HELP_RECEIVE_AGAIN)).addOption(Specs.text("--family", "NAME", Message.HELP_RECEIVE_FAMILY))
                .addOption(Specs.text("--correct", "RECEIPT", Message.HELP_RECEIVE_CORRECT)).addOption(Specs.text("--give-back", "RECEIPT", Message.HELP_RECEIVE_GIVE_BACK))
                .addOption(Specs.text("--reason", "WORDS", Message.HELP_REASON)).addOption(families())
                .addOption(Specs.text("--technician", "INITIALS", Message.HELP_TECHNICIAN)).addOption(Specs.text("--station", "NAME", Message.HELP_STATION))
                .addOption(Specs.ledger());
    }

    static CommandSpec receivedSpec() {
        return Specs.command("received", Message.HELP_RECEIVED).addPositional(Specs.word("UNIT", false, Message.HELP_RECEIVED_UNIT))
                .addOption(Specs.flag("--all", Message.HELP_RECEIVED_ALL))
                .addOption(Specs.file("--tag", "FILE", Message.HELP_RECEIVED_TAG)).addOption(Specs.text("--contact", "WORDS", Message.HELP_RECEIVED_CONTACT)).addOption(families()).addOption(Specs.ledger());
    }

    static CommandSpec repairedSpec() {
        return Specs.command("repaired", Message.HELP_REPAIRED).addPositional(Specs.word("UNIT", true, Message.HELP_REPAIRED_UNIT))
                .addOption(Specs.text("--what", "TEXT", Message.HELP_REPAIRED_WHAT)).addOption(Specs.texts("--part", "PART", Message.HELP_REPAIRED_PART))
                .addOption(Specs.files("--file", "FILE", Message.HELP_RECEIVE_FILE)).addOption(Specs.text("--technician", "INITIALS", Message.HELP_TECHNICIAN))
                .addOption(Specs.text("--station", "NAME", Message.HELP_STATION)).addOption(Specs.ledger());
    }

    private static OptionSpec families() {
        return Specs.file("--families", "FOLDER", Message.HELP_RECEIVE_FAMILIES);
    }

    private Receiving receiving(Given given) throws CannotStoreException {
        List<FamilyPlate> plates = given.path("--families").map(folder -> FamilyPlates.of(LanguageServices.create(), folder)).orElse(List.of());
        return new Receiving(given.ledgerToRead(), given.station(), around().software(), around().clocks(), plates);
    }

    // ---- receiving

    int receive(Given given) throws CannotStoreException {
        if (given.text("--give-back").isPresent()) {
            String receipt = given.text("--give-back").get();
            return printing(screen -> {
                receiving(given).giveBack(receipt, given.text("--reason").orElse(""), given.technician());
                screen.line(Message.RECEIVE_GIVEN_BACK.text(receipt));
            });
        } else if (given.text("--correct").isPresent()) {
            return printing(screen -> correct(given, given.text("--correct").get(), screen));
        } else if (given.words().isEmpty()) {
            return answering(screen -> scan(given, screen));
        }
        try (Screen screen = Screens.printing(around())) {
            List<String> units = distinct(given.words(), screen);
            int done = listed(given, units, screen);
            if (units.size() > 1) {
                screen.line(Message.RECEIVE_COUNT.text(done));
            }
            return done == units.size() ? ExitStatus.OK : ExitStatus.BAD_INPUT;
        }
    }

    /** One that is refused keeps none of the others out; how many were received. */
    private int listed(Given given, List<String> units, Screen screen) throws CannotStoreException {
        Receiving receiving = receiving(given);
        int done = 0;
        for (String unit : units) {
            done += taken(receiving, arriving(given).of(unit), given.technician(), screen) ? 1 : 0;
        }
        return done;
    }

    private static Receiving.Arriving arriving(Given given) {
        return new Receiving.Arriving(given.text("--order").orElse(""), given.text("--owner").orElse(""), given.words().stream().findFirst().orElse(""),
                given.text("--plate").orElse(Receiving.plateWords().get(0)), given.has("--as-typed"), given.has("--again"), given.text("--family").orElse(""),
                given.text("--complaint").orElse(""), given.text("--damage").orElse(""), given.text("--preserve").orElse(""), given.paths("--file"));
    }

    private static List<String> distinct(List<String> words, Screen screen) {
        Set<String> units = new LinkedHashSet<>();
        for (String word : words) {
            String unit = ScannedText.clean(word);
            if (!units.add(unit)) {
                screen.remark(Message.RECEIVE_TWICE.text(unit));
            }
        }
        return List.copyOf(units);
    }

    /** What is not said again stays as it was. */
    private void correct(Given given, String receipt, Screen screen) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        Receiving receiving = receiving(given);
        Receiving.Arriving before = receiving.said(receipt);
        boolean renamed = !given.words().isEmpty() || given.has("--plate");
        Receiving.Arriving to = new Receiving.Arriving(given.text("--order").orElse(before.order()), given.text("--owner").orElse(before.owner()),
                given.words().stream().findFirst().orElse(before.unit()), given.text("--plate").orElse(renamed ? Receiving.plateWords().get(0) : before.plate()),
                renamed ? given.has("--as-typed") : before.asTyped(), false, given.text("--family").orElse(before.family()),
                given.text("--complaint").orElse(before.complaint()), given.text("--damage").orElse(before.damage()),
                given.text("--preserve").orElse(before.preserve()), given.paths("--file"));
        receiving.correct(receipt, given.text("--reason").orElse(""), to, given.technician());
        screen.line(Message.RECEIVE_CORRECTED.text(receipt));
    }

    /** One unit after the other as it is scanned; an empty line ends. What is refused stops nobody: it is asked again. */
    private void scan(Given given, Screen screen) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        Receiving receiving = receiving(given);
        Set<String> done = new LinkedHashSet<>();
        boolean asTyped = given.has("--as-typed");
        screen.line(Message.RECEIVE_SCAN.text());
        Optional<String> asked = Optional.empty();
        for (Optional<String> typed = screen.ask("> "); typed.isPresent() && !typed.get().isBlank(); typed = screen.ask("> ")) {
            String unit = ScannedText.clean(typed.get());
            if (done.contains(unit)) {
                screen.remark(Message.RECEIVE_TWICE.text(unit));
                continue;
            }
            // Scanned a second time in a row, a number that looked wrong is what the plate says.
            boolean same = asked.filter(unit::equals).isPresent();
            Receiving.Arriving said = arriving(given).of(unit);
            Receiving.Arriving one = new Receiving.Arriving(said.order(), said.owner(), unit, said.plate(), asTyped || same, said.again(),
                    said.family(), said.complaint(), said.damage(), said.preserve(), said.files());
            Optional<String> doubt = receiving.doubt(one);
            asked = doubt.map(why -> unit);
            if (doubt.isPresent()) {
                screen.remark(doubt.get());
                screen.remark(Message.RECEIVE_SAME_AGAIN.text());
            } else {
                if (taken(receiving, one, given.technician(), screen)) {
                    done.add(unit);
                }
            }
        }
        screen.line(Message.RECEIVE_COUNT.text(done.size()));
    }

    /** Receives one unit; what is refused is said, and keeps none of the others out. */
    private static boolean taken(Receiving receiving, Receiving.Arriving one, String technician, Screen screen) throws CannotStoreException {
        try {
            print(receiving, receiving.receive(one, technician), screen);
            return true;
        } catch (EntryRefusedException | TakenElsewhereException refused) {
            screen.remark(refused.getMessage());
            return false;
        }
    }

    private static void print(Receiving receiving, ReceivedRow row, Screen screen) throws EntryRefusedException, CannotStoreException {
        screen.line(Message.RECEIVE_DONE.text(row.receipt(), row.unit(), row.family().isEmpty() ? 0 : 1, row.family()));
        UnitStory story = receiving.look(row.unit());
        story.lines().stream().filter(line -> !line.contains(row.receipt())).forEach(line -> Wrap.lines(line, screen.width(), "    ", "      ").forEach(screen::line));
    }

    // ---- what is in the house

    int received(Given given) throws CannotStoreException {
        return printing(screen -> {
            if (given.path("--tag").isPresent()) {
                byte[] tag = receiving(given).tag(given.word().orElse(""), given.text("--contact").orElse(""), around().zone())
                        .pdf(around().clocks().clock().instant());
                new Output(screen).write(given.path("--tag").get(), tag);
                return;
            }
            if (given.word().isPresent()) {
                story(receiving(given).look(given.word().get()), screen);
                return;
            }
            List<ReceivedRow> rows = receiving(given).received(given.has("--all"));
            if (rows.isEmpty()) {
                screen.line(Message.RECEIVED_NONE.text());
            }
            rows.forEach(row -> print(row, around().zone(), screen));
        });
    }

    private static void story(UnitStory story, Screen screen) {
        screen.line(story.unit() + story.family().map(family -> "  " + family).orElse(""));
        story.question().ifPresent(words -> Wrap.lines(words, screen.width(), "  ", "  ").forEach(screen::line));
        if (story.lines().isEmpty()) {
            screen.line("  " + Message.RECEIVED_NOTHING.text());
        }
        story.lines().forEach(line -> Wrap.lines(line, screen.width(), "  ", "    ").forEach(screen::line));
    }

    private static void print(ReceivedRow row, ZoneId zone, Screen screen) {
        String head = String.format(Locale.ROOT, "  %-7s %-14s ", row.receipt(), row.unit());
        String rest = " ".repeat(head.length());
        String state = Message.RECEIVED_STATE.text(row.state(), new WallTime(zone).minute(row.since()), row.test().orElse(""), row.test().isEmpty() ? 0 : 1);
        Wrap.lines(state, screen.width(), head, rest).forEach(screen::line);
        String unit = String.join(", ", List.of(row.family(), row.order().isEmpty() ? "" : Message.RECEIVED_ORDER.text(row.order()), row.owner()).stream()
                .filter(text -> !text.isEmpty()).toList());
        if (!unit.isEmpty()) {
            Wrap.lines(unit, screen.width(), rest, rest).forEach(screen::line);
        }
        row.notes().forEach(note -> Wrap.lines(note, screen.width(), rest, rest).forEach(screen::line));
    }

    // ---- repairs

    int repaired(Given given) throws CannotStoreException {
        return printing(screen -> {
            Receiving.Mending mending = new Receiving.Mending(given.text("--what").orElse(""), given.texts("--part"), given.paths("--file"));
            screen.line(Message.REPAIRED.text(receiving(given).repaired(given.word().orElseThrow(), mending, given.technician())));
        });
    }
}
