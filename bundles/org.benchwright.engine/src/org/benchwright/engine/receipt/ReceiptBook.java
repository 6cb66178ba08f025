package org.benchwright.engine.receipt;

import static org.benchwright.engine.internal.Refusals.require;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.stream.Collectors;

import org.benchwright.core.Digest;
import org.benchwright.core.SerialNumber;
import org.benchwright.engine.RefusedException;
import org.benchwright.engine.record.Deed;

/**
 * All units that came in and all repairs, as what was told makes them. Whoever enters something is asked here whether it fits; whoever
 * verifies asks again. Immutable.
 *
 * <p>A unit that comes in again has a new receipt; the newest one of a unit is the one that counts.
 */
public final class ReceiptBook {

    /** The longest text of an entry, in characters. */
    public static final int LONGEST_TEXT = 2000;
    private static final int LONGEST_WORD = 200;

    private final Map<Long, Receipt> receipts;
    private final Map<Long, Statement> statements;
    private final List<Repair> repairs;
    /** What was entered, in order; withdrawals are not among it. */
    private final List<Entry> entered;
    private final Map<Digest, ReceiptEvent> withdrawn;

    /**
     * What was said once about how a unit came in.
     *
     * @param receipt number of the receipt that it is about
     * @param said    what
     */
    public record Statement(long receipt, ReceiptFact.Received said) {
    }

    /**
     * A file that was kept with a receipt or a repair.
     *
     * @param event number of the event that named it
     * @param about number of the receipt or the repair
     * @param file  the file
     */
    public record Attachment(long event, long about, KeptFile file) {
    }

    /** Something that was entered about the receipt or repair of that number. */
    private record Entry(long event, long about, String person, List<KeptFile> files) {

        boolean names(Digest digest) {
            return files.stream().anyMatch(file -> file.digest().equals(digest));
        }
    }

    private ReceiptBook(Map<Long, Receipt> receipts, Map<Long, Statement> statements, List<Repair> repairs, List<Entry> entered,
            Map<Digest, ReceiptEvent> withdrawn) {
        this.receipts = receipts;
        this.statements = statements;
        this.repairs = repairs;
        this.entered = entered;
        this.withdrawn = withdrawn;
    }

    /** Nothing came in yet. */
    public static ReceiptBook empty() {
        return new ReceiptBook(new LinkedHashMap<>(), new LinkedHashMap<>(), new ArrayList<>(), new ArrayList<>(), new HashMap<>());
    }

    /**
     * The book that these events make; what does not fit changes nothing.
     *
     * @param objections is told of each event that does not fit, and why
     */
    public static ReceiptBook of(List<ReceiptEvent> events, BiConsumer<ReceiptEvent, String> objections) {
        ReceiptBook book = empty();
        for (ReceiptEvent event : events) {
            try {
                book.take(event);
            } catch (RefusedException refused) {
                objections.accept(event, refused.getMessage());
            }
        }
        return book;
    }

    /**
     * The book with one more event.
     *
     * @throws RefusedException if it does not fit
     */
    public ReceiptBook with(ReceiptEvent event) throws RefusedException {
        ReceiptBook next = new ReceiptBook(new LinkedHashMap<>(receipts), new LinkedHashMap<>(statements), new ArrayList<>(repairs),
                new ArrayList<>(entered), new HashMap<>(withdrawn));
        next.take(event);
        return next;
    }

    private void take(ReceiptEvent event) throws RefusedException {
        if (event.fact() instanceof ReceiptFact.Received received) {
            fits(received);
            receipts.put(event.number(), new Receipt(event.number(), event.instant(), event.by(), event.number(), received, Optional.empty()));
            statements.put(event.number(), new Statement(event.number(), received));
            entered(event, event.number(), received.files());
        } else if (event.fact() instanceof ReceiptFact.Corrected corrected) {
            Receipt receipt = inHouse(corrected.receipt());
            reason(corrected.reason());
            fits(corrected.to());
            require(corrected.to().earlier().equals(receipt.said().earlier()), "receipt.earlier");
            receipts.put(receipt.number(), receipt.corrected(event.number(), corrected.to()));
            statements.put(event.number(), new Statement(receipt.number(), corrected.to()));
            entered(event, receipt.number(), corrected.to().files());
        } else if (event.fact() instanceof ReceiptFact.GivenBack back) {
            Receipt receipt = inHouse(back.receipt());
            reason(back.reason());
            receipts.put(receipt.number(), receipt.givenBack(back.reason()));
            entered(event, receipt.number(), List.of());
        } else if (event.fact() instanceof ReceiptFact.AttachmentWithdrawn away) {
            fits(away, event);
            withdrawn.put(away.attachment(), event);
        } else {
            ReceiptFact.Repaired repaired = (ReceiptFact.Repaired) event.fact();
            fits(repaired);
            repairs.add(new Repair(event.number(), event.instant(), event.by(), repaired));
            entered(event, event.number(), repaired.files());
        }
    }

    private void entered(ReceiptEvent event, long about, List<KeptFile> files) {
        entered.add(new Entry(event.number(), about, key(event.by().id()), files));
    }

    private static String key(String person) {
        return person.toLowerCase(Locale.ROOT);
    }

    /** It destroys evidence: it takes the role for it, and somebody who entered nothing about any receipt or repair that shows the file. */
    private void fits(ReceiptFact.AttachmentWithdrawn away, ReceiptEvent event) throws RefusedException {
        Deed.WITHDRAW.requireRole(event.by().id(), Set.of(event.by().role()));
        require(entered.stream().anyMatch(entry -> entry.event() == away.event() && entry.names(away.attachment())), "receipt.noSuchFile", away.event());
        Optional<ReceiptEvent> before = withdrawn(away.attachment());
        require(before.isEmpty(), "receipt.withdrawnBefore", before.map(earlier -> earlier.by().id()).orElse(""));
        Set<Long> about = entered.stream().filter(entry -> entry.names(away.attachment())).map(Entry::about).collect(Collectors.toSet());
        require(entered.stream().noneMatch(entry -> about.contains(entry.about()) && entry.person().equals(key(event.by().id()))), "receipt.acted",
                event.by().id());
        reason(away.reason());
    }

    private Receipt inHouse(long number) throws RefusedException {
        Optional<Receipt> receipt = receipt(number);
        require(receipt.isPresent(), "receipt.unknown", Receipt.name(number));
        require(receipt.get().left().isEmpty(), "receipt.left", Receipt.name(number), receipt.get().left().orElse(""));
        return receipt.get();
    }

    private static void fits(ReceiptFact.Received said) throws RefusedException {
        unit(said.unit());
        word(said.order());
        word(said.owner());
        text(said.complaint());
        text(said.damage());
        text(said.preserve());
        files(said.files());
    }

    private static void fits(ReceiptFact.Repaired said) throws RefusedException {
        unit(said.unit());
        text(said.what());
        require(!said.what().isBlank() || !said.parts().isEmpty(), "receipt.nothingDone");
        for (ReplacedPart part : said.parts()) {
            require(!part.part().isBlank(), "receipt.part");
            word(part.part());
            word(part.lot());
        }
        files(said.files());
    }

    private static void unit(String unit) throws RefusedException {
        try {
            require(new SerialNumber(unit).text().equals(unit), "receipt.unit", unit);
        } catch (IllegalArgumentException none) {
            throw new RefusedException(none.getMessage());
        }
    }

    private static void word(String text) throws RefusedException {
        require(text.length() <= LONGEST_WORD && text.chars().noneMatch(Character::isISOControl), "receipt.word", LONGEST_WORD);
    }

    private static void text(String text) throws RefusedException {
        require(text.length() <= LONGEST_TEXT && text.chars().noneMatch(c -> Character.isISOControl(c) && c != '\n'), "receipt.text", LONGEST_TEXT);
    }

    private static void reason(String reason) throws RefusedException {
        require(!reason.isBlank(), "receipt.reason");
        text(reason);
    }

    private static void files(List<KeptFile> files) throws RefusedException {
        for (KeptFile file : files) {
            boolean plain = !file.name().isBlank() && file.name().length() <= LONGEST_WORD
                    && file.name().chars().noneMatch(c -> c == '/' || c == '\\' || Character.isISOControl(c));
            require(plain, "refused.fileName", file.name());
        }
    }

    /** All receipts, in the order in which the units came in. */
    public List<Receipt> receipts() {
        return List.copyOf(receipts.values());
    }

    /** The receipt of that number. */
    public Optional<Receipt> receipt(long number) {
        return Optional.ofNullable(receipts.get(number));
    }

    /** All receipts of a unit, in order. */
    public List<Receipt> of(String unit) {
        return receipts.values().stream().filter(receipt -> receipt.said().unit().equals(unit)).toList();
    }

    /** The receipt of a unit that counts: its newest, unless the unit left since. */
    public Optional<Receipt> current(String unit) {
        List<Receipt> all = of(unit);
        return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1)).filter(last -> last.left().isEmpty());
    }

    /** What the event of that number said about how a unit came in. */
    public Optional<Statement> statement(long number) {
        return Optional.ofNullable(statements.get(number));
    }

    /** All repairs, in order. */
    public List<Repair> repairs() {
        return List.copyOf(repairs);
    }

    /** The repairs that followed a test, in order. */
    public List<Repair> repairsAfter(String test) {
        return repairs.stream().filter(repair -> repair.said().test().equals(test)).toList();
    }

    /** All files of receipts and repairs, in the order in which they were first named; a correction names those of its receipt again. */
    public List<Attachment> attachments() {
        Map<String, Attachment> first = new LinkedHashMap<>();
        entered.forEach(entry -> entry.files().forEach(file -> first.putIfAbsent(entry.about() + " " + file.digest().hex(),
                new Attachment(entry.event(), entry.about(), file))));
        return List.copyOf(first.values());
    }

    /** By which event the file with that digest was withdrawn. */
    public Optional<ReceiptEvent> withdrawn(Digest file) {
        return Optional.ofNullable(withdrawn.get(file));
    }

    /** The digests of all files that were withdrawn. */
    public Set<Digest> withdrawn() {
        return Set.copyOf(withdrawn.keySet());
    }
}
