package org.benchwright.present;

import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

import org.benchwright.engine.calendar.CalendarFormatException;
import org.benchwright.engine.calendar.CalendarText;
import org.benchwright.engine.calendar.ShopCalendar;
import org.benchwright.present.internal.HouseWords;

/**
 * When somebody is in the shop, as the file {@value #FILE} beside the ledger says.
 *
 * @param calendar the calendar; empty if there is no such file, or it can't be understood
 * @param trouble  why it can't be understood, with the line; empty if it can, or there is none
 */
public record OpeningHours(Optional<ShopCalendar> calendar, Optional<String> trouble) {

    /** The file's name in the bench folder. */
    public static final String FILE = "opening-hours.txt";

    private static final long LARGEST = 1 << 20;

    /** Nothing is known of when somebody is in. */
    public static OpeningHours unknown() {
        return new OpeningHours(Optional.empty(), Optional.empty());
    }

    /** The calendar beside a ledger. */
    public static OpeningHours beside(Path ledger) {
        Path file = ledger.toAbsolutePath().resolveSibling(FILE);
        if (!Files.isRegularFile(file)) {
            return unknown();
        }
        try {
            if (Files.size(file) > LARGEST) {
                return troubled(file, HouseWords.HOURS_LARGE.text());
            }
            return new OpeningHours(Optional.of(CalendarText.read(Files.readString(file, StandardCharsets.UTF_8))), Optional.empty());
        } catch (CalendarFormatException wrong) {
            return troubled(file, wrong.line() == 0 ? wrong.getMessage() : HouseWords.HOURS_LINE.text(wrong.line(), wrong.getMessage()));
        } catch (MalformedInputException noText) {
            return troubled(file, HouseWords.HOURS_NO_TEXT.text());
        } catch (IOException unreadable) {
            return troubled(file, String.valueOf(unreadable.getMessage()));
        }
    }

    private static OpeningHours troubled(Path file, String why) {
        return new OpeningHours(Optional.empty(), Optional.of(HouseWords.HOURS_TROUBLE.text(file.toString(), why)));
    }
}
