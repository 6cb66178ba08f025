package org.benchwright.present;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

import org.benchwright.engine.instrument.Instrument;
import org.benchwright.engine.instrument.InstrumentFact;
import org.benchwright.engine.instrument.InstrumentRange;
import org.benchwright.present.internal.Asked;
import org.benchwright.present.internal.EntryReader;
import org.benchwright.present.internal.HouseWords;
import org.benchwright.present.internal.InstrumentSheet;
import org.benchwright.present.internal.RangeText;
import org.benchwright.workshop.BenchLedger;

/** The register of instruments: what the bench measures with. Passwords that are handed in are blanked out. */
public final class InstrumentDesk {

    private final Path ledger;
    private final Bench.Clocks clocks;
    private final ZoneId zone;

    /**
     * @param ledger the ledger's file; made if there is none, with the first instrument that the bench itself signs
     * @param zone   in which a day is a day
     */
    public InstrumentDesk(Path ledger, Bench.Clocks clocks, ZoneId zone) {
        this.ledger = ledger;
        this.clocks = clocks;
        this.zone = zone;
    }

    /** At this machine: with the clocks that everybody's watch shows, and times by the clock on the wall. */
    public static InstrumentDesk here(Path ledger) {
        return new InstrumentDesk(ledger, Bench.Clocks.system(), ZoneId.systemDefault());
    }

    /**
     * All instruments, in the order in which they were added.
     *
     * @throws CannotStoreException if the ledger can't be read, or the register is not as it was signed
     */
    public List<InstrumentRow> instruments() throws CannotStoreException {
        return Asked.read(ledger, open -> open.instruments().all().stream().map(this::row).toList());
    }

    private InstrumentRow row(Instrument i) {
        LocalDate today = LocalDate.ofInstant(clocks.clock().instant(), zone);
        boolean late = i.due().filter(today::isAfter).isPresent();
        String state = i.retired().map(HouseWords.INSTRUMENT_RETIRED::text)
                .orElseGet(() -> late ? HouseWords.INSTRUMENT_LATE.text(i.due().get().toString())
                        : i.calibrated().isEmpty() ? HouseWords.INSTRUMENT_NEVER.text() : HouseWords.INSTRUMENT_GOOD.text());
        return new InstrumentRow(i.asset(), i.title(), i.serial(), i.ranges().stream().map(InstrumentRange::words).toList(), i.custody(), i.certificate(),
                i.calibrated(), i.due(), state, i.retired().isEmpty() && !late);
    }

    /**
     * A new instrument.
     *
     * @param asset   the asset number on it, typed or scanned
     * @param title   what it is
     * @param serial  the maker's serial number, may be empty
     * @param ranges  each such as {@code reads 0 V to 60 V dc, 0.05 % + 2 digits of 0.01 V}
     * @param custody where it is, or who has it; may be empty
     */
    public record NewInstrument(String asset, String title, String serial, List<String> ranges, String custody) {
        public NewInstrument {
            ranges = List.copyOf(ranges);
        }
    }

    /** Adds an instrument. */
    public InstrumentRow add(NewInstrument added, Optional<PeopleDesk.Signing> by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return sign(() -> new InstrumentFact.Added(clean(added.asset()), clean(added.title()), clean(added.serial()), RangeText.all(added.ranges()),
                clean(added.custody())), by);
    }

    /**
     * Writes down a calibration.
     *
     * @param due    until when it holds; empty where it is never due
     * @param ranges ranges as they were found; empty: as before
     */
    public InstrumentRow calibrated(String asset, String certificate, LocalDate on, Optional<LocalDate> due, List<String> ranges,
            Optional<PeopleDesk.Signing> by) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return sign(() -> new InstrumentFact.Calibrated(clean(asset), clean(certificate), on, due, RangeText.all(ranges)), by);
    }

    /** It is elsewhere, or somebody else has it. */
    public InstrumentRow moved(String asset, String custody, Optional<PeopleDesk.Signing> by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return sign(() -> new InstrumentFact.Moved(clean(asset), clean(custody)), by);
    }

    /** It goes out of service. */
    public InstrumentRow retired(String asset, String reason, Optional<PeopleDesk.Signing> by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return sign(() -> new InstrumentFact.Retired(clean(asset), clean(reason)), by);
    }

    /** It is in service again. */
    public InstrumentRow reinstated(String asset, String reason, Optional<PeopleDesk.Signing> by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        return sign(() -> new InstrumentFact.Reinstated(clean(asset), clean(reason)), by);
    }

    /**
     * The text of a list, for {@link #importList}.
     *
     * @throws EntryRefusedException if it can't be read, or is not in UTF-8
     */
    public static String list(Path file) throws EntryRefusedException {
        try {
            return Files.readString(file, StandardCharsets.UTF_8);
        } catch (NoSuchFileException missing) {
            throw unreadable(file, HouseWords.IMPORT_NO_FILE.text(), missing);
        } catch (CharacterCodingException noText) {
            throw unreadable(file, HouseWords.IMPORT_NO_TEXT.text(), noText);
        } catch (IOException e) {
            throw unreadable(file, String.valueOf(e.getMessage()), e);
        }
    }

    private static EntryRefusedException unreadable(Path file, String why, IOException cause) {
        return new EntryRefusedException(HouseWords.FILE_UNREADABLE.text(file.toString(), why), cause);
    }

    /**
     * Adds all instruments of a list, and their calibrations. The list is read to its end before anything is signed.
     *
     * @param csv the text of a list with the headings {@code asset,title,serial,ranges,custody,certificate,calibrated,due}; several
     *            ranges stand in one cell, separated by semicolons
     * @return how many were added
     * @throws EntryRefusedException if a line of it is not taken, and which
     */
    public int importList(String csv, Optional<PeopleDesk.Signing> by) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        try {
            List<InstrumentFact> facts = InstrumentSheet.facts(csv);
            signAll(facts, by);
            return (int) facts.stream().filter(InstrumentFact.Added.class::isInstance).count();
        } finally {
            blank(by);
        }
    }

    private void signAll(List<InstrumentFact> facts, Optional<PeopleDesk.Signing> by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        List<InstrumentFact> signed = new ArrayList<>();
        try {
            for (InstrumentFact fact : facts) {
                signOne(fact, by);
                signed.add(fact);
            }
        } catch (EntryRefusedException refused) {
            throw new EntryRefusedException(HouseWords.IMPORT_STOPPED.text(signed.size(), facts.get(signed.size()).asset(), refused.getMessage()), refused);
        }
    }

    private static String clean(String text) throws EntryRefusedException {
        return EntryReader.scanned(text);
    }

    /** What is to be signed, read from what was typed. */
    @FunctionalInterface
    private interface Typed {
        InstrumentFact read() throws EntryRefusedException;
    }

    private InstrumentRow sign(Typed typed, Optional<PeopleDesk.Signing> by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        try {
            return row(signOne(typed.read(), by));
        } finally {
            blank(by);
        }
    }

    private static void blank(Optional<PeopleDesk.Signing> by) {
        by.ifPresent(who -> Arrays.fill(who.password(), ' '));
    }

    private Instrument signOne(InstrumentFact fact, Optional<PeopleDesk.Signing> by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        // Only a bench without people begins its ledger with an instrument; all else is about one that is there.
        boolean begins = fact instanceof InstrumentFact.Added && by.isEmpty();
        return Asked.of(() -> {
            try (BenchLedger open = begins ? BenchLedger.open(ledger) : BenchLedger.openExisting(ledger)) {
                return open.instrumentRegister(clocks.time()).sign(fact, by.isPresent() ? Optional.of(by.get().person()) : Optional.empty());
            }
        });
    }
}
