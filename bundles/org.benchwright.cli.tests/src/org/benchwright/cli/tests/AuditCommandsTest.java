package org.benchwright.cli.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

import org.benchwright.core.Digest;
import org.benchwright.workshop.tests.Approved;
import org.benchwright.workshop.tests.SamplePhoto;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Deciding, amending, reviewing, handing over and ending records at the terminal. */
class AuditCommandsTest extends OnAnApprovedBench {

    private String test;

    @BeforeEach
    void aTestThatWasGivenUp() throws Exception {
        bench.audited();
        test = bench.carryOut(SampleProcedure.GIVEN_UP).test();
    }

    private CommandRunner.Ended signing(String... words) {
        return bench(Approved.PASSWORD + "\n", words);
    }

    private void says(CommandRunner.Ended ended, String words) {
        assertFalse(ended.says(words).out().contains(Approved.PASSWORD), ended.out());
    }

    private String event() {
        return bench("", "departures").out().replaceAll("(?s)^.*event (\\d+).*$", "$1");
    }

    @Test
    void whatWaitsIsListedDecidedAndListedAsDecided() throws Exception {
        CommandRunner.Ended waiting = bench("", "departures");
        says(waiting, test + " event " + event() + " C16-004711");
        says(waiting, "ago; to act: an auditor");
        says(bench("", "nonconformities"), "Nothing waits for a decision.");
        says(bench("", "nonconformities", "--all"), "There is none in this ledger.");
        signing("decide", test, event(), "--as", "fine", "--reason", "x", "--by", "MJ").refused("Say one of: accepted, repeat, void.");
        signing("decide", test, "first", "--as", "accepted", "--reason", "x", "--by", "MJ").refused("\"first\" is no number of an event");
        signing("decide", test, event(), "--as", "accepted", "--reason", "x", "--by", "QN").refused("QN had a hand in this test");
        bench("wrong guess\n", "decide", test, event(), "--as", "accepted", "--reason", "x", "--by", "MJ").refused("not the password of MJ");
        says(signing("decide", test, event(), "--as", "accepted", "--reason", "nothing was begun", "--by", "MJ"), "Signed. Test " + test + " is now: decided.");
        says(bench("", "departures"), "Nothing waits for a decision.");
        says(bench("", "departures", "--all"), "accepted by MJ, 2026-03-02");
        assertEquals(0, bench("", "departures", "--all", "--csv", "d.csv", "--json", "d.json").status());
        assertTrue(Files.readString(folder.resolve("d.csv")).contains("\"accepted\",\"nothing was begun\",\"MJ\""));
        assertTrue(Files.readString(folder.resolve("d.json")).contains("\"decision\": \"accepted\""));
        ledgerIsSound();
    }

    /** What can't be right is said before anybody types a password: none is given here. */
    @Test
    void theNumberOfTheEventIsReadBeforeThePassword() {
        bench("", "decide", test, "first", "--as", "accepted", "--reason", "x", "--by", "MJ").refused("\"first\" is no number of an event");
        bench("", "amend", test, "9999999999999999999", "--right", "1 V", "--reason", "x", "--by", "MJ").refused("is no number of an event");
    }

    @Test
    void whatWillNotBeSignedAsksForNoPassword() {
        bench("", "decide", test, "2", "--as", "accepted", "--reason", "x", "--by", "MJ")
                .refused("Event 2 of " + test + " is neither a departure nor a nonconformity. bench departures and bench nonconformities list what waits");
        bench("", "decide", test, event(), "--as", "fine", "--reason", "x", "--by", "MJ").refused("Say one of: accepted, repeat, void.");
        bench("", "decide", test, event(), "--as", "accepted", "--reason", "x", "--by", "QN").refused("QN had a hand in this test");
        bench("", "hand-over", test, "--to", "the owner", "--by", "XX").refused("There is nobody with the id XX");
        bench("", "decide", test, event(), "--as", "accepted", "--reason", "x", "--by", "MJ").refused("password");
    }

    @Test
    void aRecordIsReviewedHandedOverAmendedAndRecalled() throws Exception {
        says(signing("decide", test, event(), "--as", "accepted", "--reason", "nothing was begun", "--by", "MJ"), "decided");
        bench("", "review", test, "--by", "HD").refused("Say either --agreed");
        signing("review", test, "--agreed", "--by", "MJ").refused("A review takes another auditor");
        says(signing("review", test, "--agreed", "--by", "HD"), "is now: reviewed.");
        says(signing("hand-over", test, "--to", "Millbrook pumping station", "--by", "KM"),
                "is now: handed over to Millbrook pumping station with certificate " + test + "/1.");
        long meter = Long.parseLong(record().replaceAll("(?s)^.*?<td>(\\d+)</td><td>[^<]*</td><td>QN</td><td>meter is M-17[^<]*</td>.*$", "$1"));
        says(signing("amend", test, String.valueOf(meter), "--right", "M-18", "--reason", "misread", "--by", "QN"),
                "amended since, certificate " + test + "/2 is to take its place.");
        assertTrue(record().contains("STRUCK: meter is M-17") && record().contains("<td>meter is M-18"), record());
        says(signing("hand-over", test, "--to", "Millbrook pumping station", "--by", "KM"), "with certificate " + test + "/2.");
        says(signing("recall", test, "--reason", "the meter was out of order", "--by", "KM"), "is now: recalled.");
        signing("supersede", test, "--with", "T-22222-22222", "--reason", "x", "--by", "KM").refused("This record is recalled");
        says(signing("void", test, "--reason", "the meter was out of order", "--by", "MJ"), "is now: void.");
        assertTrue(record().contains("This paper does not hold any more: void by MJ"), record());
        ledgerIsSound();
    }

    private String record() throws Exception {
        return record(test);
    }

    @Test
    void whatIsDrawnForAReviewWaitsForItAndSaysSoEverywhere() throws Exception {
        says(bench("", "reviews"), "No reviews are planned");
        signing("reviews", "--lot", "2", "--by", "MJ").refused("To plan reviews say --lot, --quality, --reason and --by; to plan none --none, --reason and --by.");
        signing("reviews", "--lot", "2", "--quality", "some", "--reason", "x", "--by", "MJ").refused("A lot of 2 at \"some\" %");
        signing("reviews", "--lot", "2", "--quality", "1.1", "--reason", "x", "--by", "MJ").refused("No plan for that");
        signing("reviews", "--lot", "2", "--quality", "1.0", "--reason", "x", "--by", "KM").refused("KM may not plan reviews");
        says(signing("reviews", "--lot", "100", "--quality", "1.0", "--reason", "as agreed", "--by", "MJ"), "13 of 100 tests are drawn for a review on average");
        says(signing("reviews", "--lot", "2", "--quality", "1.0", "--reason", "the first month", "--by", "MJ"), "Every test that is opened from now on is reviewed.");
        says(bench("", "reviews"), "No review is due.");
        String drawn = bench.carryOut(SampleProcedure.GIVEN_UP).test();
        String event = bench("", "departures").out().replaceAll("(?s)^.*" + drawn + "\\s+event (\\d+).*$", "$1");
        says(signing("decide", drawn, event, "--as", "accepted", "--reason", "nothing was begun", "--by", "MJ"), "is now: due for review.");
        says(bench("", "reviews"), "1 review is due:");
        says(bench("", "reviews"), drawn + " C16-004711, opened by QN");
        signing("hand-over", drawn, "--to", "the owner", "--by", "KM").refused("This record was drawn for a review");
        CommandRunner.Ended paper = bench("", "report", drawn, "--pdf", "c.pdf");
        assertTrue(paper.status() != 0 && paper.err().contains("This record was drawn for a review"), paper.out() + paper.err());
        says(bench.run("verify", bench.ledger().toString()), "1 review is due:");
        signing("review", drawn, "--agreed", "--by", "MJ").refused("A review takes another auditor");
        says(signing("review", drawn, "--agreed", "--by", "HD"), "is now: reviewed.");
        says(bench("", "reviews"), "No review is due.");
        says(signing("hand-over", drawn, "--to", "the owner", "--by", "KM"), "handed over to the owner");
        signing("reviews", "--none", "--lot", "2", "--reason", "x", "--by", "MJ").refused("To plan reviews say");
        says(signing("reviews", "--none", "--reason", "the first month is over", "--by", "MJ"), "No reviews are planned");
        signing("reviews", "--none", "--reason", "again", "--by", "MJ").refused("nothing to end");
    }

    @Test
    void anAttachmentIsWithdrawnAndVerificationTellsByWhomAndWhy() throws Exception {
        Path photo = Files.write(folder.resolve("face.jpg"), SamplePhoto.of("a face that could be recognised"));
        String attached = bench.carryOut("y, 4711\n22,5 degC\n" + photo + "\n! the plate is missing\n\nM-17, 0.02 V, k 2, due 2027-03-01\n0,4\n").test();
        String event = bench("", "report", attached, "--html", "r.html").status() == 0
                ? Files.readString(folder.resolve("r.html")).replaceAll("(?s)^.*?<td>(\\d+)</td><td>[^<]*</td><td>QN</td><td>[^<]*face\\.jpg.*$", "$1") : "";
        signing("withdraw-attachment", attached, event, "--reason", "a face", "--by", "QN").refused("QN had a hand in this test");
        signing("withdraw-attachment", attached, "1", "--reason", "a face", "--by", "MJ").refused("Event 1 of this test attached nothing");
        says(signing("withdraw-attachment", attached, event, "--reason", "a face can be seen", "--by", "MJ"), "Signed.");
        signing("withdraw-attachment", attached, event, "--reason", "again", "--by", "MJ").refused("no attachment in this test that could be withdrawn");
        says(bench.run("verify", bench.ledger().toString()), "was withdrawn by auditor MJ: a face can be seen");
        says(bench.run("verify", bench.ledger().toString()), "The ledger is sound.");
        assertTrue(record(attached).contains("face.jpg (withdrawn, its digest stays)"), record(attached));
        Path brokenOff = bench.ledger().resolveSibling("attachments").resolve(Digest.of(Files.readAllBytes(photo)).hex().replaceFirst("^..", "$0/"));
        Files.createDirectories(brokenOff.getParent());
        Files.copy(photo, brokenOff);
        says(bench.run("verify", bench.ledger().toString()), "bench withdraw-attachment once more");
        says(bench("", "withdraw-attachment", attached, event, "--reason", "again", "--by", "MJ"), "are erased now.");
        assertFalse(Files.exists(brokenOff));
        assertFalse(new String(Files.readAllBytes(bench.ledger()), StandardCharsets.ISO_8859_1).contains("a face that could be recognised"));
    }

    @Test
    void aFaceOnAPhotoOfAReceiptIsWithdrawnAndItsDigestStays() throws Exception {
        byte[] face = SamplePhoto.of("a face at the counter that could be recognised");
        Files.write(folder.resolve("face.jpg"), face);
        Files.write(folder.resolve("plate.jpg"), SamplePhoto.of("plate"));
        says(bench("", "receive", "C16-004799", "--file", folder.resolve("face.jpg").toString(), "--file", folder.resolve("plate.jpg").toString(),
                "--technician", "QN"), "R-1");
        signing("withdraw-attachment", "R-1", "other.jpg", "--reason", "a face", "--by", "MJ").refused("There are: face.jpg, plate.jpg.");
        signing("withdraw-attachment", "C16-000000", "face.jpg", "--reason", "a face", "--by", "MJ").refused("There are none.");
        signing("withdraw-attachment", "R-1", "face.jpg", "--reason", "a face", "--by", "RB").refused("RB may not withdraw attachments.");
        says(signing("withdraw-attachment", "R-1", "face.jpg", "--reason", "a face can be seen", "--by", "MJ"),
                "Signed. receipt R-1: face.jpg is withdrawn by MJ, 2026-03-02: a face can be seen.");
        signing("withdraw-attachment", "c16-004799", Digest.of(face).hex().substring(0, 8), "--reason", "x", "--by", "KM").refused("There are none.");
        signing("withdraw-attachment", "C16-004799", Digest.of(face).hex().substring(0, 8), "--reason", "x", "--by", "KM").refused("This file was withdrawn by MJ already.");
        says(bench("", "received", "C16-004799"), "face.jpg (withdrawn by MJ");
        says(bench.run("verify", bench.ledger().toString()), "was withdrawn by auditor MJ: a face can be seen");
        says(bench.run("verify", bench.ledger().toString()), "The ledger is sound.");
        assertFalse(new String(Files.readAllBytes(bench.ledger()), StandardCharsets.ISO_8859_1).contains("a face at the counter"));
    }

    /** A serial number may begin as tests' ids do. */
    @Test
    void aUnitWhoseNumberBeginsLikeATestIsNoTest() {
        says(bench("", "receive", "T-4711", "--file", "plate.jpg", "--technician", "QN"), "R-1");
        signing("withdraw-attachment", "T-4711", "other.jpg", "--reason", "a face", "--by", "MJ").refused("There are: plate.jpg.");
        says(signing("withdraw-attachment", "T-4711", "plate.jpg", "--reason", "a face", "--by", "MJ"), "Signed. receipt R-1: plate.jpg is withdrawn by MJ");
        signing("withdraw-attachment", "T-22222-22222", "4", "--reason", "x", "--by", "MJ").refused("There is no test T-22222-22222 in this ledger.");
    }

    private String record(String of) throws Exception {
        assertEquals(0, bench("", "report", of, "--html", "r.html").status());
        return Files.readString(folder.resolve("r.html"));
    }

    @Test
    void aTestThatIsToBeRepeatedIsSupersededByTheNextOne() throws Exception {
        says(signing("decide", test, event(), "--as", "repeat", "--reason", "the plate was found", "--by", "MJ"), "is now: to be repeated.");
        String again = bench.carryOut(SampleProcedure.GIVEN_UP).test();
        signing("supersede", test, "--with", test, "--reason", "tested again", "--by", "KM").refused("Name the test that takes the place");
        signing("supersede", test, "--with", "T-4K7M2-QXD9R", "--reason", "tested again", "--by", "KM").refused("is no sealed test of unit C16-004711");
        says(signing("supersede", test, "--with", again, "--reason", "tested again", "--by", "KM"), "is now: superseded.");
        says(bench("", "records", "superseded"), test + " C16-004711 undecided, superseded");
        says(bench.run("verify", bench.ledger().toString()), "The ledger is sound.");
    }

    @Test
    void whatIsNotThereIsSaid() {
        signing("void", "T-22222-22222", "--reason", "x", "--by", "MJ").refused("There is no test T-22222-22222 in this ledger.");
        CommandRunner.Ended nowhere = bench.run("departures", "--ledger", folder.resolve("none.ledger").toString());
        assertEquals(2, nowhere.status());
        assertFalse(Files.exists(folder.resolve("none.ledger")));
    }
}
