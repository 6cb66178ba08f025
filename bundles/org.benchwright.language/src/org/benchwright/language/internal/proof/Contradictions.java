package org.benchwright.language.internal.proof;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

import org.benchwright.core.FlashRate;
import org.benchwright.core.LampPattern;
import org.benchwright.core.Limits;
import org.benchwright.engine.plan.Signal;

/** Whether a unit that shows one thing can show another at the same time. */
public final class Contradictions {

    private Contradictions() {
    }

    /** Whether a unit that shows all of the first can't show the other. */
    public static boolean exclude(List<Signal> shown, Signal other) {
        List<Signal> all = shown.stream().flatMap(Contradictions::parts).toList();
        return parts(other).anyMatch(part -> all.stream().anyMatch(signal -> differ(signal, part)));
    }

    /** A mode together with what shows it. */
    private static Stream<Signal> parts(Signal signal) {
        return signal instanceof Signal.ModeShows mode ? Stream.concat(Stream.of(mode), mode.shows().stream().flatMap(Contradictions::parts))
                : Stream.of(signal);
    }

    private static boolean differ(Signal one, Signal other) {
        if (one instanceof Signal.LampShows lamp && other instanceof Signal.LampShows lit) {
            return lamp.source().equals(lit.source()) && (patternsDiffer(lamp.pattern(), lit.pattern()) || coloursDiffer(lamp, lit));
        } else if (one instanceof Signal.DisplayShows display && other instanceof Signal.DisplayShows shows) {
            return display.source().equals(shows.source()) && !display.text().equals(shows.text());
        }
        // A unit is in one mode at a time.
        return one instanceof Signal.ModeShows mode && other instanceof Signal.ModeShows is && !mode.source().equals(is.source());
    }

    private static boolean coloursDiffer(Signal.LampShows one, Signal.LampShows other) {
        boolean lit = !(one.pattern() instanceof LampPattern.Off) && !(other.pattern() instanceof LampPattern.Off);
        return lit && one.colour().isPresent() && other.colour().isPresent() && !one.colour().equals(other.colour());
    }

    private static boolean patternsDiffer(LampPattern one, LampPattern other) {
        if (one instanceof LampPattern.Flashing flashing && other instanceof LampPattern.Flashing flashes) {
            return ratesDiffer(flashing.rate(), flashes.rate());
        }
        return !one.getClass().equals(other.getClass());
    }

    private static boolean ratesDiffer(FlashRate one, FlashRate other) {
        Optional<Limits> band = one.band();
        Optional<Limits> bands = other.band();
        return band.isPresent() && bands.isPresent() && (above(band.get(), bands.get()) || above(bands.get(), band.get()));
    }

    private static boolean above(Limits one, Limits other) {
        return one.lower().orElseThrow().compareTo(other.upper().orElseThrow()) > 0;
    }
}
