package org.benchwright.cli.internal;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

import org.benchwright.cli.Surroundings;
import org.benchwright.present.CannotStoreException;
import org.benchwright.present.EntryRefusedException;
import org.benchwright.present.PeopleDesk;
import org.benchwright.present.PersonRow;
import org.benchwright.present.TakenElsewhereException;

/** The register of people at the terminal. */
final class PeopleCommands extends ScreenCommands {

    /** The only one that makes a ledger where there is none. */
    private static final String BEGIN = "begin";
    private static final String ADD = "add";
    private static final String ENROLL = "enroll";
    private static final String BY = "--by";
    private static final int SHOWN_DIGITS = 16;

    PeopleCommands(Surroundings around, Function<Surroundings, Screen> screens) {
        super(around, screens);
    }

    static CommandSpec spec() {
        CommandSpec people = Specs.command("people", Message.HELP_PEOPLE).addOption(Specs.ledger());
        people.addSubcommand(BEGIN, one(BEGIN, Message.HELP_PEOPLE_BEGIN).addOption(name()).addOption(roles()));
        people.addSubcommand(ADD, one(ADD, Message.HELP_PEOPLE_ADD).addOption(name()).addOption(roles()).addOption(by()));
        people.addSubcommand(ENROLL, one(ENROLL, Message.HELP_PEOPLE_ENROLL).addOption(by()));
        people.addSubcommand("rotate", one("rotate", Message.HELP_PEOPLE_ROTATE));
        people.addSubcommand("revoke", one("revoke", Message.HELP_PEOPLE_REVOKE).addOption(by()).addOption(reason())
                .addOption(Specs.text("--key", "DIGITS", Message.HELP_PEOPLE_KEY))
                .addOption(Specs.text("--from", "INSTANT", Message.HELP_PEOPLE_FROM)));
        people.addSubcommand("grant", one("grant", Message.HELP_PEOPLE_GRANT).addOption(by()).addOption(role()));
        people.addSubcommand("authorise", one("authorise", Message.HELP_PEOPLE_AUTHORISE).addOption(by()).addOption(family()).addOption(procedure())
                .addOption(Specs.neededText("--from", "DATE", Message.HELP_PEOPLE_FIRST_DAY))
                .addOption(Specs.neededText("--until", "DATE", Message.HELP_PEOPLE_LAST_DAY)));
        people.addSubcommand("end-authorisation", one("end-authorisation", Message.HELP_PEOPLE_END_AUTHORISATION).addOption(by()).addOption(family())
                .addOption(procedure()).addOption(reason()));
        people.addSubcommand("end", one("end", Message.HELP_PEOPLE_END).addOption(by()).addOption(role()).addOption(reason()));
        return people;
    }

    private static CommandSpec one(String name, Message help) {
        return Specs.command(name, help).addPositional(Specs.word("ID", true, Message.HELP_PEOPLE_ID)).addOption(Specs.ledger());
    }

    private static OptionSpec by() {
        return Specs.neededText(BY, "ID", Message.HELP_BY);
    }

    private static OptionSpec name() {
        return Specs.neededText("--name", "NAME", Message.HELP_PEOPLE_NAME);
    }

    private static OptionSpec reason() {
        return Specs.neededText("--reason", "WORDS", Message.HELP_REASON);
    }

    private static OptionSpec family() {
        return Specs.neededText("--family", "NAME", Message.HELP_PEOPLE_FAMILY);
    }

    private static OptionSpec procedure() {
        return Specs.neededText("--procedure", "NAME", Message.HELP_PEOPLE_PROCEDURE);
    }

    private static OptionSpec role() {
        return Specs.neededText("--role", "ROLE", Message.HELP_PEOPLE_ROLE);
    }

    private static OptionSpec roles() {
        return Specs.texts("--role", "ROLE", Message.HELP_PEOPLE_ROLE);
    }

    int run(Given given) throws CannotStoreException {
        if (!given.parsed().hasSubcommand()) {
            return printing(screen -> list(given.onFreshBench() ? List.of() : PeopleDesk.people(given.ledgerToRead()), screen));
        }
        Given sub = new Given(around(), given.parsed().subcommand());
        String what = sub.parsed().commandSpec().name();
        return answering(screen -> {
            Path ledger = what.equals(BEGIN) ? sub.ledger() : sub.ledgerToRead();
            enter(what, sub, new PeopleDesk(ledger, around().clocks()), screen);
            screen.line(Message.PEOPLE_ENTERED.text());
            if (what.equals(ADD)) {
                screen.line(Message.PEOPLE_ENROLL_NEXT.text(sub.word().orElseThrow(), sub.text(BY).orElse(""), sub.sameLedger()));
            }
        });
    }

    private static void enter(String what, Given given, PeopleDesk desk, Screen screen)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        Passwords passwords = new Passwords(screen);
        String id = given.word().orElseThrow();
        if (what.equals(BEGIN)) {
            String name = given.text("--name").orElse("");
            List<String> roles = given.texts("--role");
            desk.begin(id, name, roles, passwords.fresh(id, password -> PeopleDesk.requireFirst(id, name, roles, password)));
            return;
        }
        String by = what.equals("rotate") ? id : given.text(BY).orElse("");
        desk.requireSigner(by);
        if (what.equals(ENROLL)) {
            desk.requirePerson(id);
        }
        Optional<Instant> from = what.equals("revoke") ? from(given) : Optional.empty();
        if (what.equals("authorise")) {
            // Read before anybody types a password.
            given.day("--from");
            given.day("--until");
        }
        PeopleDesk.Signing signing = new PeopleDesk.Signing(by, passwords.of(by));
        switch (what) {
            case ADD -> desk.add(signing, id, given.text("--name").orElse(""), given.texts("--role"));
            case ENROLL -> desk.enroll(signing, id, Passwords.with(signing.password(), () -> passwords.fresh(id, password -> desk.requirePassword(id, password))));
            case "rotate" -> desk.rotate(signing, Passwords.with(signing.password(), () -> passwords.fresh(id, password -> desk.requirePassword(id, password))));
            case "revoke" -> desk.revoke(signing, id, given.text("--key").orElse(""), from, given.text("--reason").orElse(""));
            case "grant" -> desk.grant(signing, id, given.text("--role").orElse(""));
            case "authorise" -> desk.authorise(signing, id, given.text("--family").orElse(""), given.text("--procedure").orElse(""),
                    given.text("--from").orElse(""), given.text("--until").orElse(""));
            case "end-authorisation" -> desk.endAuthorisation(signing, id, given.text("--family").orElse(""), given.text("--procedure").orElse(""),
                    given.text("--reason").orElse(""));
            default -> desk.end(signing, id, given.text("--role").orElse(""), given.text("--reason").orElse(""));
        }
    }

    private static Optional<Instant> from(Given given) throws EntryRefusedException {
        String text = given.text("--from").orElse("");
        try {
            return text.isEmpty() ? Optional.empty() : Optional.of(Instant.parse(text));
        } catch (DateTimeException malformed) {
            throw new EntryRefusedException(Message.NO_INSTANT.text(text), malformed);
        }
    }

    private static void list(List<PersonRow> people, Screen screen) {
        if (people.isEmpty()) {
            screen.line(Message.PEOPLE_NONE.text());
        }
        for (PersonRow person : people) {
            String roles = person.roles().isEmpty() ? Message.PEOPLE_NO_ROLE.text() : String.join(", ", person.roles());
            screen.line(person.id() + "  " + person.name() + "  (" + roles + ")");
            if (person.keys().isEmpty()) {
                screen.line("    " + Message.PEOPLE_NO_KEY.text());
            }
            person.authorisations().forEach(may -> screen.line("    " + Message.PEOPLE_MAY.text(may.words())));
            person.keys().forEach(key -> screen.line("    " + Message.PEOPLE_KEY.text(key.fingerprint().substring(0, SHOWN_DIGITS), key.state())));
        }
    }
}
