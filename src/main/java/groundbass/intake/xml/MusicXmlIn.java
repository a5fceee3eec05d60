package groundbass.intake.xml;

import groundbass.intake.draft.RoughLine;
import groundbass.intake.notice.FilePart;
import groundbass.intake.notice.NoticeList;
import groundbass.intake.notice.Unreadable;
import groundbass.intake.xml.PartSurvey.Surveyed;
import groundbass.intake.xml.document.Container;
import groundbass.intake.xml.document.Document;
import groundbass.text.Message;
import java.util.List;
import java.util.Optional;

/**
 * A MusicXML score of any version from 1.0 to 4.0, parts of measures or measures of parts, plain or compressed. It is read
 * twice, once to see its parts and once to read one of them, so that the others are never held.
 */
public final class MusicXmlIn {
    private final Document document;
    private final List<Surveyed> parts;

    private MusicXmlIn(Document document, List<Surveyed> parts) {
        this.document = document;
        this.parts = parts;
    }

    /** Whether a file begins as a MusicXML file may: a zip, or a document. */
    public static boolean isMusicXml(byte[] file) {
        return Container.isZip(file) || isDocument(file);
    }

    private static boolean isDocument(byte[] file) {
        for (int i = 0; i < Math.min(file.length, 16); i++) {
            if (file[i] == '<') {
                return true;
            }
        }
        return false;
    }

    public static MusicXmlIn of(byte[] file) throws Unreadable {
        var document = Container.isZip(file) ? Container.document(file) : Document.of(file);
        var parts = PartSurvey.of(document).stream()
                .filter(surveyed -> surveyed.part().notes() > 0)
                .toList();
        if (parts.isEmpty()) {
            throw new Unreadable(Message.of("intake.refused.empty"));
        }
        return new MusicXmlIn(document, parts);
    }

    /** Those that have notes. */
    public List<FilePart> parts() {
        return parts.stream().map(Surveyed::part).toList();
    }

    /** The only part, or the one that is clearly the bass; of two that are, the one with tablature. */
    public Optional<FilePart> bass() {
        if (parts.size() == 1) {
            return Optional.of(parts.get(0).part());
        }
        int most = parts.stream().mapToInt(Surveyed::weight).max().orElse(0);
        var best = parts.stream()
                .filter(part -> part.isBass() && part.weight() == most)
                .toList();
        var shown = best.size() == 1
                ? best
                : best.stream().filter(Surveyed::tablature).toList();
        return shown.size() == 1 ? Optional.of(shown.get(0).part()) : Optional.empty();
    }

    /** @param wanted one of {@link #parts} */
    public RoughLine read(FilePart wanted, NoticeList notices) throws Unreadable {
        var surveyed = parts.stream()
                .filter(part -> part.part().equals(wanted))
                .findFirst()
                .orElseThrow();
        var reader = new PartReader(surveyed.id(), notices);
        ScoreWalk.of(document, reader);
        return XmlDraft.of(reader, notices);
    }
}
