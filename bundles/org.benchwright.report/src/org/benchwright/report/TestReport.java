package org.benchwright.report;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.benchwright.ledger.InclusionProof;
import org.benchwright.ledger.ProofFormatException;

/**
 * A test as it is handed over: plain words and values out of a verified record. How they look on paper is this bundle's affair, what they
 * say is not.
 *
 * @param heading         which test, and how it ended
 * @param results         every decision, in the order in which they were made
 * @param soaks           what each soak proved, a sentence or two each
 * @param instruments     what was measured with
 * @param departures      where the work departed from the procedure
 * @param nonconformities where the unit does not conform
 * @param attachments     files kept with the test
 * @param amendments      what was signed after the seal
 * @param story           every event in order
 * @param proof           where the test stands in the ledger; empty until a checkpoint tells of it
 * @param standing        what became of the record after its seal
 * @param shown           what people are shown of it besides
 */
public record TestReport(Heading heading, List<Result> results, List<String> soaks, List<Instrument> instruments,
        List<String> departures, List<String> nonconformities, List<Attachment> attachments, List<Amendment> amendments,
        List<StoryLine> story, Optional<InclusionProof> proof, Standing standing, Shown shown) {

    public TestReport {
        Objects.requireNonNull(heading);
        results = List.copyOf(results);
        soaks = List.copyOf(soaks);
        instruments = List.copyOf(instruments);
        departures = List.copyOf(departures);
        nonconformities = List.copyOf(nonconformities);
        attachments = List.copyOf(attachments);
        amendments = List.copyOf(amendments);
        story = List.copyOf(story);
        Objects.requireNonNull(proof);
        Objects.requireNonNull(standing);
        Objects.requireNonNull(shown);
    }

    /**
     * What people are shown of a test, and machines are not: they get every event and every number.
     *
     * @param story   what happened, in order; what a watch saw over and over is one line
     * @param courses the course of each soak, state and conditions
     */
    public record Shown(List<StoryLine> story, List<Page.Section> courses) {
        public Shown {
            story = List.copyOf(story);
            courses = List.copyOf(courses);
        }
    }

    /**
     * What became of a record after its seal.
     *
     * @param words       where it stands; empty before the seal
     * @param end         how it was superseded, recalled or voided; empty if it was not
     * @param uncertified why there is no certificate, and what to do; empty if there is one
     * @param corrections what was amended, in order
     */
    public record Standing(String words, Optional<End> end, Optional<String> uncertified, List<Correction> corrections) {

        /** Nothing became of it. */
        public static final Standing NONE = new Standing("", Optional.empty(), Optional.empty(), List.of());

        public Standing {
            corrections = List.copyOf(corrections);
        }
    }

    /**
     * How a record ended.
     *
     * @param word  superseded, recalled or void
     * @param words by whom, when and why
     */
    public record End(String word, String words) {
    }

    /**
     * What was amended.
     *
     * @param event   number of the event that is corrected
     * @param first   what was entered first
     * @param right   what is right
     * @param reason  why
     * @param by      who says so
     * @param decided what would have been decided with it beside what was
     */
    public record Correction(long event, String first, String right, String reason, String by, List<String> decided) {
        public Correction {
            decided = List.copyOf(decided);
        }
    }

    /**
     * Which test, and how it ended.
     *
     * @param test       its id
     * @param serial     the unit's serial number
     * @param family     the unit's family, by its title
     * @param procedure  the procedure, by its title
     * @param revision   of the procedure
     * @param purpose    the procedure's purpose, may be empty
     * @param text       SHA-256 of the procedure's text, in hexadecimal digits
     * @param approval   the approval of that revision; empty for a rehearsal, and where none was asked for yet
     * @param station    where it was carried out
     * @param software   what carried it out
     * @param technicians ids of all who recorded something
     * @param opened     when it began
     * @param concluded  when it ended; empty while it is open
     * @param predecessor the test of this unit before, if any
     * @param rehearsal  true: there is no verdict, and no certificate
     * @param sealed     true once the work is over and signed
     * @param verdict    the verdict's word; of a rehearsal what it would be; empty while it is open
     * @param reason     why
     * @param arrival    how the unit came in, as far as that is on record
     * @param repairs    what was repaired since the test before, a sentence each
     */
    public record Heading(String test, String serial, String family, String procedure, int revision, String purpose, String text,
            Optional<Approval> approval, String station, String software, List<String> technicians, Instant opened, Optional<Instant> concluded,
            Optional<String> predecessor, boolean rehearsal, boolean sealed, Optional<String> verdict, String reason, Optional<Arrival> arrival,
            List<String> repairs) {
        public Heading {
            technicians = List.copyOf(technicians);
            repairs = List.copyOf(repairs);
        }
    }

    /**
     * How a unit came in; each text may be empty.
     *
     * @param receipt   what the receipt is called
     * @param received  when
     * @param order     the order
     * @param owner     whose it is
     * @param plate     what its type plate told
     * @param complaint what its owner says
     * @param damage    what was seen from outside
     * @param preserve  what must not be lost
     */
    public record Arrival(String receipt, Instant received, String order, String owner, String plate, String complaint, String damage,
            String preserve) {
    }

    /**
     * The approval of a revision.
     *
     * @param preparedBy id of the person who prepared it
     * @param approvedBy id of the second person, who approved it
     * @param instant    when it was approved
     */
    public record Approval(String preparedBy, String approvedBy, Instant instant) {
    }

    /**
     * A decision.
     *
     * @param step    the step in which it was made
     * @param what    what was decided on
     * @param outcome conforms, does not conform, undecided or released, in words
     * @param words   the decision in plain words
     * @param numbers the numbers, where it was a measurement
     */
    public record Result(String step, String what, String outcome, String words, Optional<Numbers> numbers) {
    }

    /**
     * The numbers of a measured decision, with their unit.
     *
     * @param rule        the decision rule's name
     * @param value       the value decided on
     * @param limits      in words
     * @param uncertainty expanded uncertainty used
     * @param margin      to the nearest limit, negative outside
     * @param certainty   how sure the decision is, where that can be told
     */
    public record Numbers(String rule, String value, String limits, String uncertainty, String margin, Optional<Certainty> certainty) {
    }

    /**
     * How sure a decision by one of the rules of ILAC-G8 is, in words.
     *
     * @param guardBand   the distance that was kept from a limit
     * @param conformance the probability that the true value lies within the limits
     * @param falseAccept the largest probability of accepting what lies beyond a limit, the repeats that are allowed counted
     * @param readings    the how manieth reading it was, and how many are allowed
     */
    public record Certainty(String guardBand, String conformance, String falseAccept, String readings) {
    }

    /**
     * An instrument.
     *
     * @param name        its name in the procedure
     * @param asset       its asset number
     * @param uncertainty expanded uncertainty with coverage factor, in words; may be empty
     * @param due         when its calibration is due; may be empty
     */
    public record Instrument(String name, String asset, String uncertainty, String due) {
    }

    /**
     * A file kept with the test.
     *
     * @param name   the file's name
     * @param what   what it shows
     * @param digest SHA-256 of its content
     */
    public record Attachment(String name, String what, String digest) {
    }

    /**
     * Something signed after the seal.
     *
     * @param sequence the event's number
     * @param instant  when
     * @param kind     amended, reviewed, handed over ...
     * @param by       who signed, in print
     * @param words    what was said; may be empty
     * @param changes  true if it changes what a certificate says, so that a new one takes the place of the old
     */
    public record Amendment(long sequence, Instant instant, String kind, String by, String words, boolean changes) {
    }

    /**
     * Something that happened.
     *
     * @param sequence the event's number
     * @param instant  when
     * @param who      who told it; empty for what follows from it
     * @param words    what
     * @param struck   true if it was struck as a slip
     */
    public record StoryLine(long sequence, Instant instant, String who, String words, boolean struck) {
    }

    /**
     * With the proof as a text.
     *
     * @throws IllegalArgumentException if the text is no proof, is about another test, or does not hold
     */
    public static TestReport of(Heading heading, List<Result> results, List<String> soaks, List<Instrument> instruments,
            List<String> departures, List<String> nonconformities, List<Attachment> attachments, List<Amendment> amendments,
            List<StoryLine> story, Optional<String> proof, Standing standing, Shown shown) {
        Optional<InclusionProof> read = proof.map(text -> proof(text, heading.test()));
        return new TestReport(heading, results, soaks, instruments, departures, nonconformities, attachments, amendments, story, read,
                standing, shown);
    }

    /** The same with another standing. */
    public TestReport with(Standing other) {
        return new TestReport(heading, results, soaks, instruments, departures, nonconformities, attachments, amendments, story, proof, other,
                shown);
    }

    /** The same, shown otherwise. */
    public TestReport with(Shown other) {
        return new TestReport(heading, results, soaks, instruments, departures, nonconformities, attachments, amendments, story, proof, standing,
                other);
    }

    private static InclusionProof proof(String text, String test) {
        try {
            InclusionProof proof = InclusionProof.read(text);
            if (!proof.holds() || !proof.test().value().equals(test)) {
                throw new IllegalArgumentException("the proof does not hold for test " + test);
            }
            return proof;
        } catch (ProofFormatException malformed) {
            throw new IllegalArgumentException(malformed.getMessage(), malformed);
        }
    }

    /** From 1: counts up with every amendment that changes what a certificate says. */
    public int issue() {
        return 1 + (int) amendments.stream().filter(Amendment::changes).count();
    }

    /** The number on the certificate. */
    public String number() {
        return heading.test() + "/" + issue();
    }

    /** The number of the certificate whose place this one takes, if any. */
    public Optional<String> replaces() {
        return issue() == 1 ? Optional.empty() : Optional.of(heading.test() + "/" + (issue() - 1));
    }

    /** The verdict on a certificate and a label, large: how the record ended, if it did, for then the verdict does not hold any more. */
    public String holds() {
        return standing.end().map(End::word).or(heading::verdict).orElse("");
    }

    /**
     * Whether a certificate and a label can be had: of a sealed test that is no rehearsal, that a checkpoint tells of and of which every departure
     * and nonconformity is decided. What was superseded, recalled or voided since has papers that say so.
     */
    public boolean certifiable() {
        return (standing.end().isPresent() || standing.uncertified().isEmpty()) && heading.sealed() && !heading.rehearsal()
                && heading.verdict().isPresent() && proof.isPresent();
    }
}
