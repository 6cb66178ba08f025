package org.benchwright.cli.internal;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

import org.benchwright.cli.Surroundings;

import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.TypeConversionException;

/** Parts of which commands are built, and how their values are read. */
final class Specs {

    private Specs() {
    }

    static CommandSpec command(String name, Message help) {
        CommandSpec command = CommandSpec.create().name(name);
        command.addOption(OptionSpec.builder("-h", "--help").usageHelp(true).description(Message.HELP_HELP.text()).build());
        command.usageMessage().description(help.text()).width(80);
        return command;
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

    static PositionalParamSpec word(String label, boolean required, Message help) {
        return PositionalParamSpec.builder().paramLabel(label).index("0").arity(required ? "1" : "0..1").required(required)
                .type(String.class).description(help.text()).build();
    }

    private static Path path(String text) {
        try {
            return Path.of(text);
        } catch (InvalidPathException e) {
            throw new TypeConversionException(Message.NO_PATH.text(text));
        }
    }

    static Optional<Path> path(ParseResult given, String option, Surroundings around) {
        return Optional.ofNullable(given.<Path>matchedOptionValue(option, null)).map(path -> around.workingFolder().resolve(path));
    }

    static List<Path> paths(ParseResult given, String option, Surroundings around) {
        Path[] none = {};
        return List.of(given.matchedOptionValue(option, none)).stream().map(path -> around.workingFolder().resolve(path)).toList();
    }

    static Optional<String> word(ParseResult given) {
        return Optional.ofNullable(given.<String>matchedPositionalValue(0, null));
    }
}
