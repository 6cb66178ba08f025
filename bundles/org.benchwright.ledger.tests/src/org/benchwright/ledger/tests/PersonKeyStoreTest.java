package org.benchwright.ledger.tests;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.cert.X509Certificate;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.benchwright.core.Role;
import org.benchwright.ledger.Signer;
import org.benchwright.ledger.people.KeyProtection;
import org.benchwright.ledger.people.KeyRefusedException;
import org.benchwright.ledger.people.Person;
import org.benchwright.ledger.people.PersonKeyStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The files with people's secret keys. */
class PersonKeyStoreTest {

    private static final Person RB = new Person("RB", "engineer RB", Set.of(Role.ENGINEER), List.of());
    private static final KeyProtection FEW = new KeyProtection(10);
    private static final Instant START = Instant.parse("2026-03-02T07:30:00Z");
    private static final byte[] STATEMENT = "approved".getBytes(StandardCharsets.US_ASCII);

    @TempDir
    Path folder;

    private static char[] right() {
        return "four wet otters".toCharArray();
    }

    /** A program that was started at that time. */
    private PersonKeyStore at(Instant now) {
        return new PersonKeyStore(folder, FEW, Clock.fixed(now, ZoneOffset.UTC));
    }

    private static String refusal(Executable work) {
        return assertThrows(KeyRefusedException.class, work).getMessage();
    }

    private Path file() throws Exception {
        try (Stream<Path> files = Files.list(folder.resolve("people"))) {
            return files.filter(file -> file.toString().endsWith(".p12")).findFirst().orElseThrow();
        }
    }

    @Test
    void aKeySignsAfterTheRightPassword() throws Exception {
        Signer made = at(START).create(RB, right());
        Signer opened = at(START).unlock(RB, made.key(), right());
        assertTrue(made.key().verifies(STATEMENT, opened.sign(STATEMENT)));
    }

    @Test
    void theFileIsAnOrdinaryKeystoreForItsOwnerAloneThatNamesNobody() throws Exception {
        Signer made = at(START).create(RB, right());
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file())));
        byte[] bytes = Files.readAllBytes(file());
        assertFalse(new String(bytes, StandardCharsets.ISO_8859_1).contains("engineer RB"));
        KeyStore store = KeyStore.getInstance("PKCS12");
        store.load(new ByteArrayInputStream(bytes), "benchwright".toCharArray());
        assertEquals("Ed25519", ((PrivateKey) store.getKey("key", right())).getAlgorithm().replace("EdDSA", "Ed25519"));
        X509Certificate certificate = (X509Certificate) store.getCertificate("key");
        certificate.verify(certificate.getPublicKey());
        assertEquals("CN=" + made.key().fingerprint().hex(), certificate.getSubjectX500Principal().getName());
    }

    @Test
    void eachTryOnAStolenFileCostsAsManyRoundsAsWereAskedFor() throws Exception {
        new PersonKeyStore(folder, new KeyProtection(4321), Clock.fixed(START, ZoneOffset.UTC)).create(RB, right());
        // PBKDF2's iteration count as it stands in the file: the INTEGER 4321 (X.690, 8.3).
        byte[] count = {0x02, 0x02, 0x10, (byte) 0xE1};
        String file = new String(Files.readAllBytes(file()), StandardCharsets.ISO_8859_1);
        assertTrue(file.contains(new String(count, StandardCharsets.ISO_8859_1)));
        // The other seal, by a cheaper function, is no test of the password.
        byte[] bytes = Files.readAllBytes(file());
        assertThrows(IOException.class, () -> KeyStore.getInstance("PKCS12").load(new ByteArrayInputStream(bytes), right()));
        assertEquals(600_000, KeyProtection.standard().iterations());
    }

    @Test
    void weakPasswordsAreNotTaken() {
        for (String weak : List.of("", "short", "aaaaaaaaaaaaaaa", "ababababababab", "the engineer key", "x".repeat(129))) {
            refusal(() -> at(START).create(RB, weak.toCharArray()));
        }
        assertFalse(Files.exists(folder.resolve("people")));
    }

    @Test
    void afterFiveWrongPasswordsTheWaitGrowsAndOutlastsARestart() throws Exception {
        Signer made = at(START).create(RB, right());
        for (int i = 0; i < 5; i++) {
            assertTrue(refusal(() -> at(START).unlock(RB, made.key(), "wrong guess 1".toCharArray())).contains("not the password"));
        }
        assertTrue(refusal(() -> at(START).unlock(RB, made.key(), right())).contains("looked at in 1 min."));
        Instant later = START.plusSeconds(60);
        refusal(() -> at(later).unlock(RB, made.key(), "wrong guess 2".toCharArray()));
        assertTrue(refusal(() -> at(later.plusSeconds(119)).unlock(RB, made.key(), right())).contains("looked at in 1 s"));
        at(later.plusSeconds(120)).unlock(RB, made.key(), right());
        refusal(() -> at(later.plusSeconds(121)).unlock(RB, made.key(), "wrong guess 3".toCharArray()));
        at(later.plusSeconds(121)).unlock(RB, made.key(), right());
    }

    @Test
    void theWaitGrowsToADayAndNotBeyond() throws Exception {
        Signer made = at(START).create(RB, right());
        Instant now = START;
        for (int i = 0; i < 30; i++) {
            Instant when = now;
            assertTrue(refusal(() -> at(when).unlock(RB, made.key(), "wrong guess 1".toCharArray())).contains("not the password"));
            now = now.plus(Duration.ofDays(1));
        }
        Instant end = now;
        refusal(() -> at(end.minusSeconds(1)).unlock(RB, made.key(), right()));
        at(end).unlock(RB, made.key(), right());
    }

    @ParameterizedTest
    @ValueSource(strings = {"none at all", "", "\u00e9\u00e8", "-3 2026-03-02T07:30:00Z"})
    void aCounterThatSomebodyOverwroteMakesTryingNoCheaperAndLocksNobodyOutForEver(String overwritten) throws Exception {
        Signer made = at(START).create(RB, right());
        refusal(() -> at(START).unlock(RB, made.key(), "wrong guess 1".toCharArray()));
        Path counter = Path.of(file().toString().replace(".p12", ".tries"));
        Files.writeString(counter, overwritten);
        assertTrue(refusal(() -> at(START).unlock(RB, made.key(), right())).contains("looked at in 1 min."));
        assertTrue(refusal(() -> at(START.plusSeconds(59)).unlock(RB, made.key(), right())).contains("looked at in 1 s."));
        at(START.plusSeconds(60)).unlock(RB, made.key(), right());
    }

    @Test
    void aKeyOfAnotherBenchAndAChangedFileAreToldPlainly() throws Exception {
        Signer made = at(START).create(RB, right());
        assertTrue(refusal(() -> at(START).unlock(RB, Register.newKey().key(), right())).contains("not on this bench"));
        byte[] bytes = Files.readAllBytes(file());
        bytes[bytes.length / 2] ^= 1;
        Files.write(file(), bytes);
        refusal(() -> at(START).unlock(RB, made.key(), right()));
        Files.writeString(file(), "no keystore");
        assertTrue(refusal(() -> at(START).unlock(RB, made.key(), right())).contains("can't be read"));
        String counted = Files.readString(Path.of(file().toString().replace(".p12", ".tries")));
        assertEquals("2 " + START + "\n", counted, "a try is counted before anything is looked at, and only the right password takes that back");
    }
}
