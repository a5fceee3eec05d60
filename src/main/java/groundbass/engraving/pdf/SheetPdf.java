package groundbass.engraving.pdf;

import groundbass.engraving.mark.Page;
import groundbass.engraving.sheet.Sheet;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.Locale;
import java.util.TimeZone;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.common.PDStream;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.graphics.color.PDOutputIntent;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;

/** Writes sheets as a tagged, archival PDF. The same sheets and meta give the same bytes. */
public final class SheetPdf {
    private static final String PRODUCER = "Groundbass";
    private static final String COLOURS = "sRGB IEC61966-2.1";

    private SheetPdf() {}

    /**
     * Writes a whole document; the stream stays open. One at a time: the parsed fonts are shared, and PDFBox reads them
     * while it makes subsets.
     */
    public static synchronized void write(Sheet sheet, SheetMeta meta, OutputStream out) throws IOException {
        try (var document = new PDDocument()) {
            document.setVersion(1.7f);
            document.setDocumentId(meta.id());
            describe(document, meta);
            var resources = new PdfResources(document);
            var tags = new PdfTags(document, sheet::words);
            var bookmarks = new PdfBookmarks();
            for (var layout : sheet.pages()) {
                var page = page(document, layout);
                layout.parts().forEach(part -> bookmarks.add(page, layout, part));
                draw(document, resources, tags, page, layout);
            }
            resources.finish();
            tags.finish();
            bookmarks.addTo(document);
            document.save(out);
        }
    }

    private static PDPage page(PDDocument document, Page layout) {
        float scale = (float) PdfCanvas.pointsPerSpace(layout);
        var page = new PDPage(new PDRectangle((float) layout.width() * scale, (float) layout.height() * scale));
        document.addPage(page);
        return page;
    }

    private static void draw(PDDocument document, PdfResources resources, PdfTags tags, PDPage page, Page layout)
            throws IOException {
        tags.page(page);
        var canvas = new PdfCanvas(resources, tags, layout);
        layout.drawOn(canvas);
        page.setResources(resources.shared());
        page.setContents(new PDStream(document, new ByteArrayInputStream(canvas.content()), COSName.FLATE_DECODE));
    }

    private static void describe(PDDocument document, SheetMeta meta) throws IOException {
        var catalog = document.getDocumentCatalog();
        catalog.setLanguage(meta.language());
        var marked = new PDMarkInfo();
        marked.setMarked(true);
        catalog.setMarkInfo(marked);
        var preferences = new PDViewerPreferences(new COSDictionary());
        preferences.setDisplayDocTitle(true);
        catalog.setViewerPreferences(preferences);
        inform(document, meta);
        var packet = PdfMetadata.packet(meta, PRODUCER).getBytes(StandardCharsets.UTF_8);
        catalog.setMetadata(new PDMetadata(document, new ByteArrayInputStream(packet)));
        catalog.addOutputIntent(colours(document));
    }

    private static void inform(PDDocument document, SheetMeta meta) {
        Calendar made = new GregorianCalendar(TimeZone.getTimeZone("UTC"), Locale.ROOT);
        made.setTimeInMillis(meta.made().getEpochSecond() * 1000);
        var information = document.getDocumentInformation();
        information.setTitle(meta.title());
        if (!meta.author().isEmpty()) {
            information.setAuthor(meta.author());
        }
        information.setProducer(PRODUCER);
        information.setCreationDate(made);
        information.setModificationDate(made);
    }

    private static PDOutputIntent colours(PDDocument document) throws IOException {
        byte[] profile = ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData();
        var intent = new PDOutputIntent(document, new ByteArrayInputStream(profile));
        intent.setInfo(COLOURS);
        intent.setOutputCondition(COLOURS);
        intent.setOutputConditionIdentifier(COLOURS);
        intent.setRegistryName("http://www.color.org");
        return intent;
    }
}
