package org.benchwright.report.internal;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TimeZone;
import javax.xml.transform.TransformerException;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.PDEmbeddedFilesNameTreeNode;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;
import org.apache.xmpbox.XMPMetadata;
import org.apache.xmpbox.schema.PDFAIdentificationSchema;
import org.apache.xmpbox.type.BadFieldValueException;
import org.apache.xmpbox.xml.XmpSerializer;

/**
 * PDF files for archives: PDF/A-3u (ISO 19005-3), with the fonts in them, every character readable by machines, and files attached.
 */
public final class Archive {

    private static final String PRODUCER = "Benchwright";

    private Archive() {
    }

    /**
     * A file that goes with the paper.
     *
     * @param name    its name
     * @param content a JSON text
     * @param what    what it is
     */
    public record Attached(String name, String content, String what) {
    }

    /** How pages get their content. */
    @FunctionalInterface
    interface Drawing {
        void into(PDDocument pdf) throws IOException;
    }

    /** The document as pages. */
    public static byte[] pages(Document document, String footer, Instant now, List<Attached> attached) {
        return pdf(document.title(), now, attached, pdf -> new PageLayout(document, pdf).layOut(footer));
    }

    /** A PDF/A file. */
    static byte[] pdf(String title, Instant now, List<Attached> attached, Drawing drawing) {
        try (PDDocument pdf = new PDDocument(); ByteArrayOutputStream out = new ByteArrayOutputStream()) {
            pdf.setVersion(1.7f);
            // The same content makes the same bytes.
            pdf.setDocumentId((long) title.hashCode() << 32 ^ now.getEpochSecond());
            drawing.into(pdf);
            describe(pdf, title, now);
            attach(pdf, attached, now);
            pdf.save(out);
            return out.toByteArray();
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
    }

    private static void describe(PDDocument pdf, String title, Instant now) throws IOException {
        Calendar date = calendar(now);
        PDDocumentInformation information = pdf.getDocumentInformation();
        information.setTitle(title);
        information.setProducer(PRODUCER);
        information.setCreator(PRODUCER);
        information.setCreationDate(date);
        information.setModificationDate(date);
        XMPMetadata metadata = XMPMetadata.createXMPMetadata();
        try {
            PDFAIdentificationSchema archive = metadata.createAndAddPDFAIdentificationSchema();
            archive.setPart(3);
            archive.setConformance("U");
            metadata.createAndAddDublinCoreSchema().setTitle(title);
            metadata.createAndAddAdobePDFSchema().setProducer(PRODUCER);
            var basic = metadata.createAndAddXMPBasicSchema();
            basic.setCreatorTool(PRODUCER);
            basic.setCreateDate(date);
            basic.setModifyDate(date);
            ByteArrayOutputStream xml = new ByteArrayOutputStream();
            new XmpSerializer().serialize(metadata, xml, true);
            PDMetadata kept = new PDMetadata(pdf, new ByteArrayInputStream(xml.toByteArray()));
            pdf.getDocumentCatalog().setMetadata(kept);
        } catch (BadFieldValueException | TransformerException impossible) {
            throw new IOException(impossible);
        }
        pdf.getDocumentCatalog().setLanguage("en");
    }

    private static Calendar calendar(Instant now) {
        Calendar calendar = new GregorianCalendar(TimeZone.getTimeZone(ZoneOffset.UTC));
        calendar.setTimeInMillis(now.getEpochSecond() * 1000);
        return calendar;
    }

    private static void attach(PDDocument pdf, List<Attached> attached, Instant now) throws IOException {
        if (attached.isEmpty()) {
            return;
        }
        Map<String, PDComplexFileSpecification> names = new HashMap<>();
        COSArray associated = new COSArray();
        for (Attached file : attached) {
            byte[] content = file.content().getBytes(StandardCharsets.UTF_8);
            PDEmbeddedFile embedded = new PDEmbeddedFile(pdf, new ByteArrayInputStream(content), COSName.FLATE_DECODE);
            embedded.setSubtype("application/json");
            embedded.setSize(content.length);
            embedded.setModDate(calendar(now));
            PDComplexFileSpecification specification = new PDComplexFileSpecification();
            specification.setFile(file.name());
            specification.setFileUnicode(file.name());
            specification.setFileDescription(file.what());
            specification.setEmbeddedFile(embedded);
            specification.setEmbeddedFileUnicode(embedded);
            specification.getCOSObject().setName("AFRelationship", "Data");
            names.put(file.name(), specification);
            associated.add(specification.getCOSObject());
        }
        PDEmbeddedFilesNameTreeNode tree = new PDEmbeddedFilesNameTreeNode();
        tree.setNames(names);
        PDDocumentNameDictionary dictionary = new PDDocumentNameDictionary(pdf.getDocumentCatalog());
        dictionary.setEmbeddedFiles(tree);
        pdf.getDocumentCatalog().setNames(dictionary);
        pdf.getDocumentCatalog().getCOSObject().setItem("AF", associated);
    }
}
