package org.benchwright.ledger.people;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchwright.core.Digest;
import org.benchwright.core.Role;
import org.benchwright.ledger.LedgerEntry;
import org.benchwright.ledger.PayloadException;
import org.benchwright.ledger.SignerKey;
import org.benchwright.ledger.internal.CanonicalJson;
import org.benchwright.ledger.internal.JsonValue;
import org.benchwright.ledger.internal.JsonValue.Members;
import org.benchwright.ledger.internal.JsonValue.Text;
import org.benchwright.ledger.people.PeopleFact.AuthorisationEnded;
import org.benchwright.ledger.people.PeopleFact.Authorised;
import org.benchwright.ledger.people.PeopleFact.KeyEnrolled;
import org.benchwright.ledger.people.PeopleFact.KeyRevoked;
import org.benchwright.ledger.people.PeopleFact.KeyRotated;
import org.benchwright.ledger.people.PeopleFact.PersonAdded;
import org.benchwright.ledger.people.PeopleFact.RoleEnded;
import org.benchwright.ledger.people.PeopleFact.RoleGranted;

/** Facts about people as events keep them: a kind, and a payload of texts. */
final class PeopleCodec {

    private PeopleCodec() {
    }

    static String kind(PeopleFact fact) {
        if (fact instanceof PersonAdded) {
            return "person-added";
        } else if (fact instanceof RoleGranted) {
            return "role-granted";
        } else if (fact instanceof RoleEnded) {
            return "role-ended";
        } else if (fact instanceof Authorised) {
            return "authorised";
        } else if (fact instanceof AuthorisationEnded) {
            return "authorisation-ended";
        } else if (fact instanceof KeyEnrolled) {
            return "key-enrolled";
        }
        return fact instanceof KeyRotated ? "key-rotated" : "key-revoked";
    }

    static String payload(PeopleFact fact) {
        Map<String, JsonValue> members = new LinkedHashMap<>();
        members.put("person", new Text(fact.person()));
        if (fact instanceof PersonAdded added) {
            members.put("name", new Text(added.name()));
        } else if (fact instanceof RoleGranted granted) {
            members.put("role", new Text(granted.role().word()));
        } else if (fact instanceof RoleEnded ended) {
            members.put("role", new Text(ended.role().word()));
            members.put("reason", new Text(ended.reason()));
        } else if (fact instanceof Authorised a) {
            members.put("family", new Text(a.family()));
            members.put("procedure", new Text(a.procedure()));
            members.put("from", new Text(a.from().toString()));
            members.put("until", new Text(a.until().toString()));
        } else if (fact instanceof AuthorisationEnded e) {
            members.put("family", new Text(e.family()));
            members.put("procedure", new Text(e.procedure()));
            members.put("reason", new Text(e.reason()));
        } else if (fact instanceof KeyEnrolled enrolled) {
            members.put("key", new Text(HexFormat.of().formatHex(enrolled.key().encoded())));
        } else if (fact instanceof KeyRotated rotated) {
            members.put("key", new Text(HexFormat.of().formatHex(rotated.key().encoded())));
        } else if (fact instanceof KeyRevoked revoked) {
            members.put("revoked", new Text(revoked.key().hex()));
            members.put("from", new Text(revoked.from().toString()));
            members.put("reason", new Text(revoked.reason()));
        }
        return CanonicalJson.text(new Members(members));
    }

    /** The fact in an event; empty when there is none that this release knows. */
    static Optional<PeopleFact> fact(LedgerEntry entry) {
        try {
            Members payload = CanonicalJson.parse(entry.payload());
            Optional<PeopleFact> fact = Optional.of(fact(entry.kind(), text(payload, "person"), payload));
            return fact.filter(found -> names(payload.without("signature")).equals(namesOf(found)));
        } catch (PayloadException | IllegalArgumentException | DateTimeException malformed) {
            return Optional.empty();
        }
    }

    private static Set<String> names(Members payload) {
        return payload.values().keySet();
    }

    private static Set<String> namesOf(PeopleFact fact) {
        try {
            return names(CanonicalJson.parse(payload(fact)));
        } catch (PayloadException impossible) {
            throw new IllegalStateException("a payload that was built is valid", impossible);
        }
    }

    private static PeopleFact fact(String kind, String person, Members payload) {
        return switch (kind) {
            case "person-added" -> new PersonAdded(person, text(payload, "name"));
            case "role-granted" -> new RoleGranted(person, role(payload));
            case "role-ended" -> new RoleEnded(person, role(payload), text(payload, "reason"));
            case "authorised" -> new Authorised(person, text(payload, "family"), text(payload, "procedure"),
                    LocalDate.parse(text(payload, "from")), LocalDate.parse(text(payload, "until")));
            case "authorisation-ended" -> new AuthorisationEnded(person, text(payload, "family"), text(payload, "procedure"),
                    text(payload, "reason"));
            case "key-enrolled" -> new KeyEnrolled(person, key(payload));
            case "key-rotated" -> new KeyRotated(person, key(payload));
            case "key-revoked" -> new KeyRevoked(person, Digest.parse(text(payload, "revoked")), Instant.parse(text(payload, "from")),
                    text(payload, "reason"));
            default -> throw new IllegalArgumentException(kind);
        };
    }

    private static String text(Members payload, String name) {
        return payload.text(name).orElseThrow(() -> new IllegalArgumentException(name));
    }

    private static Role role(Members payload) {
        return Role.find(text(payload, "role")).orElseThrow(() -> new IllegalArgumentException("role"));
    }

    private static SignerKey key(Members payload) {
        return SignerKey.decode(HexFormat.of().parseHex(text(payload, "key"))).orElseThrow(() -> new IllegalArgumentException("key"));
    }
}
