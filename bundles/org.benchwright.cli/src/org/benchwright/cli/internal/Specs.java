package org.benchwright.cli.internal;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;

import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.TypeConversionException;

/** Parts of which commands are built; {@link Given} reads what was given for them. */
final class Specs {

    private Specs() {
    }

    static CommandSpec command(String name, Message help) {
        CommandSpec command = CommandSpec.create().name(name);
        command.addOption(OptionSpec.builder("-h", "--help").usageHelp(true).description(Message.HELP_HELP.text()).build());
        command.usageMessage().description(help.text()).width(80);
        return command;
    }

    /** The ledger that a command works on. */
    static OptionSpec ledger() {
        return file("--ledger", "FILE", Message.HELP_LEDGER);
    }

    /** For which of the families that a procedure applies to. */
    static OptionSpec family(Message help) {
        return text("--family", "NAME", help);
    }

    static OptionSpec file(String name, String label, Message help) {
        return OptionSpec.builder(name).paramLabel(label).type(Path.class).converters(Specs::path).description(help.text()).build();
    }

    static OptionSpec files(String name, String label, Message help) {
        return OptionSpec.builder(name).paramLabel(label).arity("1").type(Path[].class).converters(Specs::path).description(help.text())
                .build();
    }

    static OptionSpec flag(String name, Message help) {
        return OptionSpec.builder(name).description(help.text()).build();
    }

    static OptionSpec text(String name, String label, Message help) {
        return OptionSpec.builder(name).paramLabel(label).type(String.class).description(help.text()).build();
    }

    static OptionSpec neededText(String name, String label, Message help) {
        return OptionSpec.builder(name).paramLabel(label).type(String.class).required(true).description(help.text()).build();
    }

    /** A text that is given once at least. */
    static OptionSpec neededTexts(String name, String label, Message help) {
        return OptionSpec.builder(name).paramLabel(label).arity("1").required(true).type(String[].class).description(help.text()).build();
    }

    /** A text that may be given several times. */
    static OptionSpec texts(String name, String label, Message help) {
        return OptionSpec.builder(name).paramLabel(label).arity("1").type(String[].class).description(help.text()).build();
    }

    static OptionSpec number(String name, String label, Message help) {
        return OptionSpec.builder(name).paramLabel(label).type(Long.class).converters(Specs::number).description(help.text()).build();
    }

    /** Files that stand without an option, one at least. */
    static PositionalParamSpec neededFiles(String label, Message help) {
        return PositionalParamSpec.builder().paramLabel(label).arity("1..*").required(true).type(Path[].class).converters(Specs::path)
                .description(help.text()).build();
    }

    /** One file that stands without an option. */
    static PositionalParamSpec neededFile(String label, Message help) {
        return PositionalParamSpec.builder().paramLabel(label).index("0").arity("1").required(true).type(Path.class)
                .converters(Specs::path).description(help.text()).build();
    }

    /** One file that may stand without an option. */
    static PositionalParamSpec file(String label, Message help) {
        return PositionalParamSpec.builder().paramLabel(label).index("0").arity("0..1").required(false).type(Path.class)
                .converters(Specs::path).description(help.text()).build();
    }

    /** A word that stands without an option. */
    static PositionalParamSpec word(String label, boolean required, Message help) {
        return PositionalParamSpec.builder().paramLabel(label).index("0").arity(required ? "1" : "0..1").required(required)
                .type(String.class).description(help.text()).build();
    }

    /** A second word that stands without an option. */
    static PositionalParamSpec second(String label, Message help) {
        return PositionalParamSpec.builder().paramLabel(label).index("1").arity("1").required(true).type(String.class).description(help.text()).build();
    }

    /** Words that stand without an option; there may be none. */
    static PositionalParamSpec words(String label, Message help) {
        return PositionalParamSpec.builder().paramLabel(label).arity("0..*").required(false).type(String[].class).description(help.text()).build();
    }

    private static Long number(String text) {
        try {
            return Long.valueOf(text);
        } catch (NumberFormatException e) {
            throw new TypeConversionException(Message.NO_NUMBER.text(text));
        }
    }

    private static Path path(String text) {
        try {
            return Path.of(text);
        } catch (InvalidPathException e) {
            throw new TypeConversionException(Message.NO_PATH.text(text));
        }
    }
}
