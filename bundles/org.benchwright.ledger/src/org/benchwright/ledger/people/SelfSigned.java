package org.benchwright.ledger.people;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigInteger;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.Signature;
import java.security.cert.CertificateFactory;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.util.Date;
import org.bouncycastle.asn1.ASN1Encoding;
import org.bouncycastle.asn1.ASN1Integer;
import org.bouncycastle.asn1.ASN1ObjectIdentifier;
import org.bouncycastle.asn1.ASN1EncodableVector;
import org.bouncycastle.asn1.DERBitString;
import org.bouncycastle.asn1.DERSequence;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x509.AlgorithmIdentifier;
import org.bouncycastle.asn1.x509.SubjectPublicKeyInfo;
import org.bouncycastle.asn1.x509.TBSCertificate;
import org.bouncycastle.asn1.x509.Time;
import org.bouncycastle.asn1.x509.V3TBSCertificateGenerator;

/**
 * The certificate without which a PKCS#12 file takes no private key. Nobody relies on it: whose key it is stands in the register, and the
 * certificate names the key alone, so that the file says nothing about people.
 */
final class SelfSigned {

    /** RFC 8410, 3. */
    private static final AlgorithmIdentifier ED25519 = new AlgorithmIdentifier(new ASN1ObjectIdentifier("1.3.101.112"));
    /** "No well-defined expiration date" (RFC 5280, 4.1.2.5). */
    private static final Instant NEVER = Instant.parse("9999-12-31T23:59:59Z");

    private SelfSigned() {
    }

    static X509Certificate certificate(KeyPair pair, String fingerprint, Instant from) throws GeneralSecurityException, IOException {
        X500Name name = new X500Name("CN=" + fingerprint);
        V3TBSCertificateGenerator generator = new V3TBSCertificateGenerator();
        generator.setSerialNumber(new ASN1Integer(BigInteger.ONE));
        generator.setSignature(ED25519);
        generator.setIssuer(name);
        generator.setSubject(name);
        generator.setStartDate(new Time(Date.from(from)));
        generator.setEndDate(new Time(Date.from(NEVER)));
        generator.setSubjectPublicKeyInfo(SubjectPublicKeyInfo.getInstance(pair.getPublic().getEncoded()));
        TBSCertificate content = generator.generateTBSCertificate();
        Signature signature = Signature.getInstance("Ed25519");
        signature.initSign(pair.getPrivate());
        signature.update(content.getEncoded(ASN1Encoding.DER));
        ASN1EncodableVector parts = new ASN1EncodableVector();
        parts.add(content);
        parts.add(ED25519);
        parts.add(new DERBitString(signature.sign()));
        byte[] encoded = new DERSequence(parts).getEncoded(ASN1Encoding.DER);
        return (X509Certificate) CertificateFactory.getInstance("X.509").generateCertificate(new ByteArrayInputStream(encoded));
    }
}
