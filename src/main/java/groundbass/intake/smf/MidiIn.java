package groundbass.intake.smf;

import groundbass.intake.draft.BassNames;
import groundbass.intake.draft.RoughLine;
import groundbass.intake.notice.FilePart;
import groundbass.intake.notice.NoticeList;
import groundbass.intake.notice.Unreadable;
import groundbass.text.Message;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.IntPredicate;

/** A Standard MIDI File of format 0, whose channels are its parts, or 1, whose tracks are. */
public final class MidiIn {
    /** General MIDI's channel of drums, from 0. */
    private static final int DRUMS = 9;

    /** General MIDI's basses, from 0. */
    private static final int FIRST_BASS = 32;

    private static final int LAST_BASS = 39;

    private final Smf file;
    private final List<Played> parts;

    /**
     * What is played by one hand.
     *
     * @param instants notes without length
     * @param weight how much speaks for its being the bass
     */
    record Played(FilePart part, List<Smf.Note> notes, List<Smf.Note> instants, int weight) {}

    private MidiIn(Smf file, List<Played> parts) {
        this.file = file;
        this.parts = parts;
    }

    /** Whether a file begins as a MIDI file does. */
    public static boolean isMidi(byte[] file) {
        return SmfReader.isSmf(file);
    }

    public static MidiIn of(byte[] file) throws Unreadable {
        var read = SmfReader.read(file);
        var parts = read.format() == 0 ? channels(read) : tracks(read);
        if (parts.isEmpty()) {
            throw new Unreadable(Message.of("intake.refused.empty"));
        }
        return new MidiIn(read, parts);
    }

    private static List<Played> tracks(Smf file) {
        var parts = new ArrayList<Played>();
        for (var track : file.tracks()) {
            if (!track.notes().isEmpty()) {
                parts.add(played(parts.size() + 1, track, track.name(), channel -> true));
            }
        }
        return parts;
    }

    /** The name of the one track is that of the whole, so the parts have none (MMA RP-001). */
    private static List<Played> channels(Smf file) {
        var parts = new ArrayList<Played>();
        for (var track : file.tracks()) {
            track.notes().stream()
                    .map(Smf.Note::channel)
                    .distinct()
                    .sorted()
                    .forEach(channel -> parts.add(played(parts.size() + 1, track, "", each -> each == channel)));
        }
        return parts;
    }

    private static Played played(int number, Smf.Track track, String name, IntPredicate ofPart) {
        var notes = ofPart(track.notes(), ofPart);
        var channels = notes.stream().map(Smf.Note::channel).distinct().toList();
        boolean program = track.programs().stream()
                .anyMatch(each ->
                        channels.contains(each.channel()) && each.number() >= FIRST_BASS && each.number() <= LAST_BASS);
        boolean named = BassNames.isBass(track.name());
        int weight = channels.contains(DRUMS) ? 0 : (named ? 1 : 0) + (program ? 1 : 0);
        var part = new FilePart(number, name, OptionalInt.of(channels.get(0) + 1), notes.size());
        return new Played(part, notes, ofPart(track.instants(), ofPart), weight);
    }

    private static List<Smf.Note> ofPart(List<Smf.Note> notes, IntPredicate ofPart) {
        return notes.stream().filter(note -> ofPart.test(note.channel())).toList();
    }

    /** Those that have notes. */
    public List<FilePart> parts() {
        return parts.stream().map(Played::part).toList();
    }

    /** The only part, or the one that is named or sounds as a bass. */
    public Optional<FilePart> bass() {
        int most = parts.stream().mapToInt(Played::weight).max().orElse(0);
        var best = parts.stream().filter(part -> part.weight() == most).toList();
        boolean clear = parts.size() == 1 || most > 0 && best.size() == 1;
        return clear ? Optional.of(best.get(0).part()) : Optional.empty();
    }

    /** @param wanted one of {@link #parts} */
    public RoughLine read(FilePart wanted, NoticeList notices) throws Unreadable {
        var part = parts.stream()
                .filter(each -> each.part().equals(wanted))
                .findFirst()
                .orElseThrow();
        var notes = part.notes().stream()
                .sorted(Comparator.comparingLong(Smf.Note::on).thenComparingInt(Smf.Note::key))
                .toList();
        return new SmfDraft(file, notes, part.instants(), notices).draft();
    }
}
