package org.benchwright.present.internal;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

import org.benchwright.core.FamilyPlate;
import org.benchwright.core.Verdict;
import org.benchwright.engine.FieldReturn;
import org.benchwright.engine.InTheField;
import org.benchwright.engine.event.Fact;
import org.benchwright.engine.receipt.KeptFile;
import org.benchwright.engine.receipt.Plate;
import org.benchwright.engine.receipt.Receipt;
import org.benchwright.engine.receipt.ReceiptBook;
import org.benchwright.engine.receipt.ReceiptFact;
import org.benchwright.engine.receipt.Repair;
import org.benchwright.engine.record.Standing;
import org.benchwright.engine.record.TestRecord;
import org.benchwright.present.HouseFile;
import org.benchwright.present.ReceivedRow;
import org.benchwright.workshop.KeptTest;
import org.benchwright.workshop.ReceivedUnit;

/**
 * Units that came in as rows and stories.
 *
 * @param plates the families that are known here
 */
public record ReceivedRows(List<FamilyPlate> plates) {

    /** The row of a unit. */
    public ReceivedRow row(ReceivedUnit unit) {
        ReceiptFact.Received said = unit.receipt().said();
        List<String> notes = RepairWords.sentences(said.complaint(), said.damage(), said.preserve());
        return new ReceivedRow(unit.receipt().name(), said.unit(), said.plate() == Plate.READ ? "" : said.plate().word(),
                said.family().map(this::title).orElse(""), said.order(), said.owner(), notes, unit.receipt().instant(), unit.receipt().by().id(),
                unit.standing(), HouseWords.valueOf(unit.standing().name()).text(), unit.test(), unit.since());
    }

    private String title(String family) {
        return plates.stream().filter(plate -> plate.name().equals(family)).map(FamilyPlate::title).findFirst().orElse(family);
    }

    private record Told(Instant instant, String words) {
    }

    /** Everything on record of a unit, the oldest first. */
    public List<String> story(String unit, ReceiptBook book, List<KeptTest> tests) {
        List<Told> told = new ArrayList<>();
        book.of(unit).forEach(receipt -> told.add(new Told(receipt.instant(), receipt(receipt, book))));
        tests.forEach(test -> {
            told.add(new Told(test.run().events().get(0).moment().instant(), test(test)));
            test.field().flatMap(InTheField::returned).ifPresent(back -> told.add(new Told(instant(back), HouseWords.STORY_RETURNED.text(back.on(), back.words()))));
        });
        book.repairs().stream().filter(repair -> repair.said().unit().equals(unit)).forEach(repair -> told.add(new Told(repair.instant(), repair(repair, book))));
        return told.stream().sorted(Comparator.comparing(Told::instant)).map(Told::words).toList();
    }

    private static Instant instant(FieldReturn back) {
        return back.on().atStartOfDay(ZoneOffset.UTC).toInstant();
    }

    private static String receipt(Receipt receipt, ReceiptBook book) {
        ReceiptFact.Received said = receipt.said();
        StringBuilder words = new StringBuilder(HouseWords.RECEIVED.text(RepairWords.day(receipt.instant()), receipt.name(), receipt.by().id()));
        words.append(said.order().isBlank() ? "" : HouseWords.RECEIVED_ORDER.text(said.order()));
        words.append(said.owner().isBlank() ? "" : HouseWords.RECEIVED_OWNER.text(said.owner()));
        if (said.plate() != Plate.READ) {
            words.append("; ").append(HouseWords.SAID_PLATE.text(said.plate().word()));
        }
        RepairWords.sentences(said.complaint(), said.damage(), said.preserve()).forEach(sentence -> words.append("; ").append(sentence));
        words.append(files(said.files(), book));
        receipt.left().ifPresent(reason -> words.append("; ").append(HouseWords.STORY_LEFT.text(receipt.name(), reason)));
        return words.toString();
    }

    private static String test(KeptTest test) {
        Fact.Opened opening = test.run().opening();
        String day = RepairWords.day(test.run().events().get(0).moment().instant());
        String procedure = Message.ROW_PROCEDURE.text(test.run().plan().title(), String.valueOf(opening.revision()));
        if (opening.rehearsal()) {
            return HouseWords.STORY_REHEARSAL.text(day, test.id(), procedure);
        }
        return test.run().verdict().map(verdict -> verdict(test, verdict)).map(words -> HouseWords.STORY_TEST.text(day, test.id(), procedure, words))
                .orElseGet(() -> HouseWords.STORY_OPEN.text(day, test.id(), procedure));
    }

    private static String verdict(KeptTest test, Verdict verdict) {
        return test.counts() ? verdict.word()
                : HouseWords.STORY_NOT_VALID.text(verdict.word(), test.record().map(TestRecord::standing).map(Standing::word).orElse(""));
    }

    private static String repair(Repair repair, ReceiptBook book) {
        return HouseWords.STORY_REPAIRED.text(RepairWords.day(repair.instant()), repair.by().id(), repair.said().test(),
                RepairWords.of(repair.said().what(), repair.said().parts())) + files(repair.said().files(), book);
    }

    private static String files(List<KeptFile> files, ReceiptBook book) {
        return files.isEmpty() ? "" : "; " + HouseWords.SAID_FILES.text(files.stream().map(file -> file(file, book)).collect(Collectors.joining(", ")));
    }

    private static String file(KeptFile file, ReceiptBook book) {
        return withdrawn(file, book).map(words -> HouseWords.SAID_WITHDRAWN.text(file.name(), words)).orElse(file.name());
    }

    private static Optional<String> withdrawn(KeptFile file, ReceiptBook book) {
        return book.withdrawn(file.digest()).map(event -> Message.STANDING_WITHDRAWN.text(event.by().id(), RepairWords.day(event.instant()),
                ((ReceiptFact.AttachmentWithdrawn) event.fact()).reason()));
    }

    /** Photos and papers of a unit's receipts and repairs, the oldest first. */
    public static List<HouseFile> files(String unit, ReceiptBook book) {
        Map<Long, String> where = new HashMap<>();
        book.of(unit).forEach(receipt -> where.put(receipt.number(), HouseWords.FILE_OF_RECEIPT.text(receipt.name())));
        book.repairs().stream().filter(repair -> repair.said().unit().equals(unit))
                .forEach(repair -> where.put(repair.number(), HouseWords.FILE_OF_REPAIR.text(repair.said().test())));
        return book.attachments().stream().filter(each -> where.containsKey(each.about())).map(each -> new HouseFile(each.event(),
                each.file().digest().hex(), each.file().name(), where.get(each.about()), withdrawn(each.file(), book))).toList();
    }
}
