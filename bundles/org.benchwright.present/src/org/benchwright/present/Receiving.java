package org.benchwright.present;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

import org.benchwright.core.Actor;
import org.benchwright.core.FamilyPlate;
import org.benchwright.core.Role;
import org.benchwright.core.ScannedText;
import org.benchwright.core.SerialMask;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.receipt.KeptFile;
import org.benchwright.engine.receipt.Plate;
import org.benchwright.engine.receipt.Receipt;
import org.benchwright.engine.receipt.ReceiptBook;
import org.benchwright.engine.receipt.ReceiptFact;
import org.benchwright.engine.receipt.ReplacedPart;
import org.benchwright.engine.receipt.Standing;
import org.benchwright.present.internal.Asked;
import org.benchwright.present.internal.EntryReader;
import org.benchwright.present.internal.HouseWords;
import org.benchwright.present.internal.Message;
import org.benchwright.present.internal.OfferedFile;
import org.benchwright.present.internal.ReceivedRows;
import org.benchwright.report.UnitTag;
import org.benchwright.workshop.BenchLedger;
import org.benchwright.workshop.FaultyRecordException;
import org.benchwright.workshop.KeptTest;
import org.benchwright.workshop.OvertakenException;
import org.benchwright.workshop.ReceivedUnit;
import org.benchwright.workshop.Receipts;
import org.benchwright.workshop.LedgerMemory;
import org.benchwright.workshop.Station;
import org.benchwright.workshop.StoreException;

/** Units that come in: receiving them, what is known of them, and where they stand. May be used from several threads. */
public final class Receiving {

    private final Path ledger;
    private final Station station;
    private final Bench.Clocks clocks;
    private final List<FamilyPlate> plates;
    private final LedgerMemory memory = new LedgerMemory();

    /**
     * @param ledger   the ledger's file; made, if there is none, by whatever is written down first
     * @param station  the bench's name
     * @param software name and version of this program
     * @param plates   what the plates of the families look like that are known here
     */
    public Receiving(Path ledger, String station, String software, Bench.Clocks clocks, List<FamilyPlate> plates) {
        this.ledger = ledger;
        this.station = new Station(station, software);
        this.clocks = clocks;
        this.plates = List.copyOf(plates);
    }

    /**
     * A unit as it is received.
     *
     * @param order     the order, may be empty
     * @param owner     whose it is, may be empty
     * @param unit      the serial number as scanned or typed, or a tag of the workshop's
     * @param plate     {@code read}, {@code missing} or {@code unreadable}
     * @param asTyped   true if the plate says what looks like no serial number
     * @param again     true if a unit that seems to be in the house was away meanwhile
     * @param family    its family's name; empty for the one whose serial numbers look like it
     * @param complaint what its owner says, may be empty
     * @param damage    what is seen from outside, may be empty
     * @param preserve  what must not be lost, may be empty
     * @param files     photos and papers
     */
    public record Arriving(String order, String owner, String unit, String plate, boolean asTyped, boolean again, String family, String complaint,
            String damage, String preserve, List<Path> files) {
        public Arriving {
            files = List.copyOf(files);
        }

        /** The same with another unit. */
        public Arriving of(String other) {
            return new Arriving(order, owner, other, plate, asTyped, again, family, complaint, damage, preserve, files);
        }
    }

    /** What can be said of a plate, the usual answer first. */
    public static List<String> plateWords() {
        return List.of(Plate.READ.word(), Plate.MISSING.word(), Plate.UNREADABLE.word());
    }

    /**
     * Receives a unit.
     *
     * @param by initials of who receives it
     * @throws EntryRefusedException   if it is not taken, and what to look at again
     * @throws TakenElsewhereException if others wrote again and again in the same moment
     * @throws CannotStoreException    if it can't be recorded
     */
    public ReceivedRow receive(Arriving arriving, String by) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        String unit = EntryReader.scanned(arriving.unit());
        Plate plate = plate(arriving, unit);
        Optional<String> family = family(arriving.family(), unit);
        requireTaken(arriving, by);
        return Asked.of(() -> {
            try (BenchLedger open = BenchLedger.open(ledger)) {
                Optional<ReceivedRow> inHouse = open.received(memory).stream().filter(each -> each.receipt().said().unit().equals(unit))
                        .filter(each -> each.standing().inHouse() && each.standing() != Standing.ACCEPTED).map(this::row).findFirst();
                if (inHouse.isPresent() && !arriving.again()) {
                    throw new EntryRefusedException(HouseWords.IN_HOUSE.text(unit, inHouse.get().receipt(), inHouse.get().state()));
                }
                Receipts receipts = receipts(open);
                ReceiptFact.Received fact = new ReceiptFact.Received(EntryReader.scanned(arriving.order()), EntryReader.scanned(arriving.owner()), unit, plate,
                        family, text(arriving.complaint()), text(arriving.damage()), text(arriving.preserve()), kept(receipts, arriving.files()),
                        Optional.empty());
                Receipt receipt = receipts.receive(fact, actor(by));
                return row(new ReceivedUnit(receipt, Standing.WAITING, Optional.empty(), receipt.instant()));
            }
        });
    }

    /** What will be refused makes no ledger. */
    private static void requireTaken(Arriving arriving, String by) throws EntryRefusedException, CannotStoreException {
        for (Path file : arriving.files()) {
            new OfferedFile(file).requirePhotoOrPaper();
        }
        try {
            actor(by);
        } catch (RefusedException e) {
            throw new EntryRefusedException(e.getMessage(), e);
        }
    }

    /** Leaves line ends in a text, and nothing else that nobody sees. */
    private static String text(String typed) {
        return typed.lines().map(ScannedText::clean).collect(Collectors.joining("\n")).strip();
    }

    private static List<KeptFile> kept(Receipts receipts, List<Path> files) throws RefusedException, StoreException, EntryRefusedException {
        for (Path file : files) {
            new OfferedFile(file).requirePhotoOrPaper();
        }
        List<KeptFile> kept = new ArrayList<>();
        for (Path file : files) {
            kept.add(receipts.keep(file));
        }
        return kept;
    }

    private Plate plate(Arriving arriving, String unit) throws EntryRefusedException {
        Plate said = List.of(Plate.READ, Plate.MISSING, Plate.UNREADABLE).stream().filter(each -> each.word().equals(arriving.plate().strip())).findFirst()
                .orElseThrow(() -> new EntryRefusedException(HouseWords.PLATE_UNKNOWN.text(arriving.plate())));
        if (unit.isEmpty()) {
            throw new EntryRefusedException((said.tagged() ? HouseWords.TAG_NEEDED : HouseWords.NO_UNIT).text());
        }
        Optional<String> question = said == Plate.READ ? question(unit) : Optional.empty();
        if (question.isPresent() && !arriving.asTyped()) {
            throw new EntryRefusedException(question.get());
        }
        return question.isPresent() ? Plate.AS_TYPED : said;
    }

    /**
     * Why a unit is not received before it was scanned or typed a second time: its serial number looks like none of the families.
     *
     * @return nothing where that is not so, or it was said already that the plate says so
     */
    public Optional<String> doubt(Arriving arriving) {
        String unit = ScannedText.clean(arriving.unit());
        boolean read = arriving.plate().strip().equals(Plate.READ.word());
        return !read || arriving.asTyped() || unit.isEmpty() ? Optional.empty() : question(unit);
    }

    /** Why a serial number is asked about; nothing where no mask is known at all. */
    private Optional<String> question(String unit) {
        List<String> masks = plates.stream().flatMap(plate -> plate.mask().stream()).map(SerialMask::mask).distinct().toList();
        boolean fits = masks.isEmpty() || plates.stream().anyMatch(plate -> plate.accepts(unit));
        return fits ? Optional.empty() : Optional.of(HouseWords.UNLIKE.text(unit, String.join(", ", masks)) + meant(unit));
    }

    /** What it may have been meant for, with a blank before it; nothing where that can't be told. */
    private String meant(String unit) {
        List<List<String>> meant = plates.stream().flatMap(plate -> plate.mask().stream()).map(mask -> mask.meant(unit)).filter(each -> !each.isEmpty())
                .distinct().toList();
        if (meant.size() != 1) {
            return "";
        }
        List<String> one = meant.get(0);
        return " " + (one.size() == 1 ? HouseWords.UNLIKE_NEAR.text(one.get(0)) : HouseWords.UNLIKE_TWO.text(one.get(0), one.get(1)));
    }

    private Optional<String> family(String named, String unit) throws EntryRefusedException {
        if (!named.isBlank()) {
            FamilyPlate plate = plates.stream().filter(each -> each.name().equals(named.strip()) || each.title().equalsIgnoreCase(named.strip())).findFirst()
                    .orElseThrow(() -> new EntryRefusedException(HouseWords.NO_FAMILY.text(named,
                            plates.stream().map(FamilyPlate::name).collect(Collectors.joining(", ")), plates.size())));
            return Optional.of(plate.name());
        }
        return looksLike(unit).map(FamilyPlate::name);
    }

    private Optional<FamilyPlate> looksLike(String unit) {
        List<FamilyPlate> fitting = plates.stream().filter(plate -> plate.accepts(unit)).toList();
        return fitting.size() == 1 ? Optional.of(fitting.get(0)) : Optional.empty();
    }

    /**
     * What is known of a unit.
     *
     * @param scanned the serial number or tag as scanned or typed
     * @throws EntryRefusedException if nothing was scanned
     * @throws CannotStoreException  if the ledger can't be read, or a record is not sound
     */
    public UnitStory look(String scanned) throws EntryRefusedException, CannotStoreException {
        String unit = ScannedText.clean(scanned);
        if (unit.isEmpty()) {
            throw new EntryRefusedException(HouseWords.NO_UNIT.text());
        }
        Optional<String> family = looksLike(unit).map(FamilyPlate::title);
        if (!Files.exists(ledger)) {
            return new UnitStory(unit, family, question(unit), Optional.empty(), Optional.empty(), List.of(), List.of());
        }
        return Asked.read(ledger, open -> {
            List<KeptTest> tests = open.testsOf(unit);
            ReceiptBook book = open.receiptBook();
            Optional<ReceivedRow> inHouse = open.received(memory).stream().filter(each -> each.receipt().said().unit().equals(unit))
                    .filter(each -> each.standing().inHouse()).map(this::row).reduce((earlier, later) -> later);
            Optional<String> openTest = tests.stream().filter(test -> !test.run().ended()).map(KeptTest::id).reduce((earlier, later) -> later);
            return new UnitStory(unit, family, question(unit).filter(asked -> book.of(unit).isEmpty()), inHouse, openTest,
                    new ReceivedRows(plates).story(unit, book, tests), ReceivedRows.files(unit, book));
        });
    }

    /**
     * The tag that tells where a unit stands.
     *
     * @param scanned serial number or tag of the workshop's
     * @param contact whom to ask, with a telephone number; may be empty
     * @throws EntryRefusedException if the unit is not in the house
     * @throws CannotStoreException  if the ledger can't be read, or a record is not sound
     */
    public UnitTag tag(String scanned, String contact, ZoneId zone) throws EntryRefusedException, CannotStoreException {
        UnitStory story = look(scanned);
        ReceivedRow row = story.inHouse().orElseThrow(() -> new EntryRefusedException(HouseWords.TAG_NOT_HERE.text(story.unit())));
        List<String> lines = new ArrayList<>();
        lines.add(row.family());
        lines.add(row.order().isBlank() ? "" : HouseWords.TAG_ORDER.text(row.order()));
        lines.add(row.owner());
        lines.add(HouseWords.TAG_SINCE.text(row.since().atZone(zone).toLocalDateTime().truncatedTo(ChronoUnit.MINUTES).toString().replace('T', ' ')));
        lines.add(row.test().orElse(row.receipt()));
        List<String> cautions = new ArrayList<>();
        boolean left = row.standing() == Standing.ON_SOAK || row.standing() == Standing.ON_TEST;
        if (left) {
            cautions.add((row.standing() == Standing.ON_SOAK ? HouseWords.TAG_SOAK : HouseWords.TAG_TEST).text());
            cautions.add(HouseWords.TAG_CUT_OFF.text());
        }
        if (left || !contact.isBlank()) {
            cautions.add(HouseWords.TAG_CONTACT.text(contact.isBlank() ? "______________________" : ScannedText.clean(contact)));
        }
        String status = switch (row.standing()) {
            case REPAIRED -> HouseWords.TAG_REPAIRED.text();
            case WAITING -> HouseWords.TAG_WAITING.text();
            case NOT_VALID -> HouseWords.TAG_NOT_VALID.text();
            default -> row.state();
        };
        return new UnitTag(status, row.unit(), lines.stream().filter(line -> !line.isBlank()).toList(), cautions);
    }

    /**
     * The units that came in, the latest last.
     *
     * @param all also those that left the house
     * @throws CannotStoreException if the ledger can't be read, or a record is not sound
     */
    public List<ReceivedRow> received(boolean all) throws CannotStoreException {
        return Asked.read(ledger, open -> open.received(memory).stream().filter(unit -> all || unit.standing().inHouse()).map(this::row).toList());
    }

    private ReceivedRow row(ReceivedUnit unit) {
        return new ReceivedRows(plates).row(unit);
    }

    /**
     * Says anew how a unit came in.
     *
     * @param receipt such as {@code R-17}
     * @param to      all that holds now; its files come to those that are kept already
     * @throws EntryRefusedException   if there is no such receipt, or it is not taken so
     * @throws TakenElsewhereException if others wrote again and again in the same moment
     * @throws CannotStoreException    if it can't be recorded
     */
    public void correct(String receipt, String reason, Arriving to, String by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        String unit = EntryReader.scanned(to.unit());
        Plate plate = plate(to, unit);
        Optional<String> family = family(to.family(), unit);
        entering(receipts -> {
            List<KeptFile> files = new ArrayList<>(receipts.book().receipt(number(receipt)).map(before -> before.said().files()).orElse(List.of()));
            files.addAll(kept(receipts, to.files()));
            receipts.correct(number(receipt), text(reason), new ReceiptFact.Received(EntryReader.scanned(to.order()), EntryReader.scanned(to.owner()), unit,
                    plate, family, text(to.complaint()), text(to.damage()), text(to.preserve()), files, Optional.empty()), actor(by));
        });
    }

    /** What was said of a unit last, to be corrected. */
    public Arriving said(String receipt) throws EntryRefusedException, CannotStoreException {
        try (BenchLedger open = BenchLedger.openReadOnly(ledger)) {
            ReceiptFact.Received said = open.receiptBook().receipt(number(receipt)).orElseThrow(() -> new RefusedException(HouseWords.NO_RECEIPT.text(receipt)))
                    .said();
            String plate = said.plate() == Plate.AS_TYPED ? Plate.READ.word() : said.plate().word();
            return new Arriving(said.order(), said.owner(), said.unit(), plate, said.plate() == Plate.AS_TYPED, false, said.family().orElse(""),
                    said.complaint(), said.damage(), said.preserve(), List.of());
        } catch (RefusedException e) {
            throw new EntryRefusedException(e.getMessage(), e);
        } catch (StoreException e) {
            throw new CannotStoreException(e.getMessage(), e);
        }
    }

    /** A unit leaves the house untested. */
    public void giveBack(String receipt, String reason, String by) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        entering(receipts -> receipts.giveBack(number(receipt), text(reason), actor(by)));
    }

    /**
     * A repair.
     *
     * @param what  what was done, may be empty if parts are named
     * @param parts what was replaced, each as {@code part} or {@code part, lot}
     * @param files photos and papers
     */
    public record Mending(String what, List<String> parts, List<Path> files) {
        public Mending {
            parts = List.copyOf(parts);
            files = List.copyOf(files);
        }
    }

    /**
     * Writes down what was repaired after a test that the unit did not pass.
     *
     * @param unitOrTest the unit, which means its last test, or that test
     * @return the test after which it was written down
     */
    public String repaired(String unitOrTest, Mending mending, String by)
            throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        String test = failed(EntryReader.scanned(unitOrTest));
        EntryReader.scanned(String.join(", ", mending.parts()));
        List<ReplacedPart> parts = mending.parts().stream().map(String::strip).filter(line -> !line.isEmpty()).map(Receiving::part).toList();
        entering(receipts -> receipts.repaired(test, text(mending.what()), parts, kept(receipts, mending.files()), actor(by)));
        return test;
    }

    private String failed(String unitOrTest) throws EntryRefusedException, CannotStoreException {
        return Asked.read(ledger, open -> {
            // A serial number may begin as tests' ids do.
            Optional<KeptTest> named = open.test(unitOrTest);
            if (named.isPresent()) {
                return named.get().id();
            }
            List<KeptTest> tests = open.testsOf(unitOrTest).stream().filter(test -> !test.run().rehearsal()).toList();
            if (tests.isEmpty() || !tests.get(tests.size() - 1).run().ended() || tests.get(tests.size() - 1).passed()) {
                throw new EntryRefusedException(HouseWords.NOT_ON_TEST.text(unitOrTest));
            }
            return tests.get(tests.size() - 1).id();
        });
    }

    private static ReplacedPart part(String line) {
        int comma = line.lastIndexOf(',');
        String part = ScannedText.clean(comma < 0 ? line : line.substring(0, comma));
        return new ReplacedPart(part, comma < 0 ? "" : ScannedText.clean(line.substring(comma + 1)).replaceFirst("(?i)^lot\\s+", ""));
    }

    private static long number(String receipt) throws RefusedException {
        return Receipt.number(receipt).orElseThrow(() -> new RefusedException(HouseWords.NO_RECEIPT.text(receipt)));
    }

    private static Actor actor(String initials) throws RefusedException {
        try {
            return new Actor(initials.strip(), Role.TECHNICIAN);
        } catch (IllegalArgumentException e) {
            throw new RefusedException(Message.REFUSED_TECHNICIAN.text(e.getMessage()));
        }
    }

    @FunctionalInterface
    private interface Entering {
        void into(Receipts receipts) throws RefusedException, OvertakenException, StoreException, FaultyRecordException, EntryRefusedException;
    }

    /** About what came in before: where there is no ledger nothing did. */
    private void entering(Entering entering) throws EntryRefusedException, TakenElsewhereException, CannotStoreException {
        Asked.to(() -> {
            try (BenchLedger open = BenchLedger.openExisting(ledger)) {
                entering.into(receipts(open));
            }
        });
    }

    private Receipts receipts(BenchLedger open) throws StoreException {
        return open.receipts(station, clocks.time(), memory);
    }
}
