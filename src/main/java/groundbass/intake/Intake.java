package groundbass.intake;

import groundbass.intake.draft.DraftLine;
import groundbass.intake.draft.RoughLine;
import groundbass.intake.notice.FilePart;
import groundbass.intake.notice.NoticeList;
import groundbass.intake.notice.Unreadable;
import groundbass.intake.smf.MidiIn;
import groundbass.intake.xml.MusicXmlIn;
import groundbass.text.Message;
import java.util.List;
import java.util.Optional;

/** Reads a file of another program as a line. */
public final class Intake {
    /** Bytes of one file. */
    public static final int LARGEST = 16 << 20;

    private Intake() {}

    /** What came of a file. */
    public sealed interface Outcome permits Brought, Unclear, Refused {}

    /** Several parts of the file may be the bass: a person says which. */
    public record Unclear(List<FilePart> parts) implements Outcome {
        public Unclear {
            parts = List.copyOf(parts);
        }
    }

    /** The file cannot be read; why, and what to do. */
    public record Refused(Message why) implements Outcome {}

    /**
     * Whatever the bytes are, an outcome comes back.
     *
     * @param wanted the number of the part that is meant; where it is empty, the one that is clearly the bass
     */
    public static Outcome read(byte[] file, Optional<Integer> wanted) {
        try {
            if (file.length > LARGEST) {
                throw new Unreadable(Message.of("intake.refused.size"));
            }
            if (MidiIn.isMidi(file)) {
                var midi = MidiIn.of(file);
                return outcome(midi.parts(), midi.bass(), midi::read, wanted);
            }
            if (MusicXmlIn.isMusicXml(file)) {
                var score = MusicXmlIn.of(file);
                return outcome(score.parts(), score.bass(), score::read, wanted);
            }
            throw new Unreadable(Message.of("intake.refused.kind"));
        } catch (Unreadable e) {
            return new Refused(e.message());
        }
    }

    /** Reads one part of a file. */
    @FunctionalInterface
    private interface Reading {
        RoughLine read(FilePart part, NoticeList notices) throws Unreadable;
    }

    private static Outcome outcome(
            List<FilePart> parts, Optional<FilePart> bass, Reading reading, Optional<Integer> wanted)
            throws Unreadable {
        var part = wanted.isPresent()
                ? parts.stream().filter(each -> wanted.get() == each.number()).findFirst()
                : bass;
        if (part.isEmpty()) {
            return new Unclear(parts);
        }
        var notices = new NoticeList();
        if (wanted.isEmpty() && parts.size() > 1) {
            notices.guessed(Message.of("intake.guessed.part", part.get().called()));
        }
        var line = DraftLine.of(reading.read(part.get(), notices), notices);
        return new Brought(line, part.get(), parts, notices.list(line.firstNumber()));
    }
}
