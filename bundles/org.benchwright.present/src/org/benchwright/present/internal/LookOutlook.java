package org.benchwright.present.internal;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

import org.benchwright.core.Durations;
import org.benchwright.engine.Demand;
import org.benchwright.engine.calendar.ShopCalendar;
import org.benchwright.engine.calendar.SoakTimes;
import org.benchwright.engine.plan.SoakStage;
import org.benchwright.present.OpeningHours;

/** What the shop's opening hours mean for the looks of a soak: told before it begins, and while it goes on. */
public final class LookOutlook {

    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("EEEE d MMMM HH:mm", Locale.ENGLISH);
    private static final int MOST_TOLD = 3;

    private LookOutlook() {
    }

    /** What to know before a soak begins, or while it goes on; nothing where no hours are known. */
    static List<String> of(Demand demand, Instant now, OpeningHours hours) {
        if (!(demand instanceof Demand.Look look)) {
            return List.of();
        }
        List<String> words = new ArrayList<>(hours.trouble().stream().toList());
        hours.calendar().ifPresent(calendar -> {
            if (look.begins()) {
                words.addAll(before(calendar, look.soak(), now));
            } else {
                reminder(calendar, look).ifPresent(words::add);
            }
        });
        return words;
    }

    private static List<String> before(ShopCalendar calendar, SoakStage soak, Instant now) {
        SoakTimes.Rhythm rhythm = new SoakTimes.Rhythm(soak.lasting(), soak.lookEvery(), soak.lookTolerance());
        SoakTimes times = SoakTimes.of(calendar, now, rhythm);
        List<String> words = new ArrayList<>();
        String ends = HouseWords.SOAK_ENDS.text(Durations.words(soak.lasting()), time(times.end(), calendar.zone()));
        if (times.unattended().isEmpty()) {
            words.add(ends + " " + HouseWords.SOAK_ALL_IN.text());
            return words;
        }
        String due = times.unattended().stream().limit(MOST_TOLD).map(at -> time(at, calendar.zone())).collect(Collectors.joining("; "));
        int more = Math.max(0, times.unattended().size() - MOST_TOLD);
        words.add(ends + " " + HouseWords.SOAK_NOBODY.text(times.unattended().size(), due, more));
        words.add(SoakTimes.better(calendar, now, rhythm).map(better -> offered(better, calendar.zone())).orElseGet(HouseWords.SOAK_NO_BETTER::text));
        return words;
    }

    private static String offered(SoakTimes better, ZoneId zone) {
        String start = time(better.start(), zone);
        return better.unattended().isEmpty() ? HouseWords.SOAK_BETTER.text(start, time(better.end(), zone))
                : HouseWords.SOAK_LESS_BAD.text(start, better.unattended().size());
    }

    /** That nobody is in when the next look is due; empty if somebody is. */
    static Optional<String> reminder(ShopCalendar calendar, Demand.Look look) {
        if (look.begins()) {
            return Optional.empty();
        }
        Instant due = look.since().instant().plus(look.due());
        return calendar.isOpenWithin(due, due.plus(look.soak().lookTolerance())) ? Optional.empty()
                : Optional.of(HouseWords.LOOK_NOBODY.text(time(due, calendar.zone())));
    }

    private static String time(Instant instant, ZoneId zone) {
        return TIME.format(instant.atZone(zone));
    }
}
