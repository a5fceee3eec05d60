package groundbass.intake.smf;

import groundbass.intake.draft.Draft;
import groundbass.intake.notice.FilePart;
import groundbass.intake.notice.Notices;
import groundbass.intake.notice.Unreadable;
import groundbass.text.Message;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** A Standard MIDI File of format 0, whose channels are its parts, or 1, whose tracks are. */
public final class MidiIn {
    private static final Pattern BASS = Pattern.compile("bass|bas[oe]\\b|basso\\b");
    private static final Pattern NOT_A_BASS = Pattern.compile("bassoon|clarinet|drum|trombone|sax|klarinette|posaune");

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
     * @param weight how much speaks for its being the bass
     */
    record Played(FilePart part, List<Smf.Note> notes, int weight) {}

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
                parts.add(played(parts.size() + 1, track, track.notes()));
            }
        }
        return parts;
    }

    private static List<Played> channels(Smf file) {
        var parts = new ArrayList<Played>();
        for (var track : file.tracks()) {
            track.notes().stream().map(Smf.Note::channel).distinct().sorted().forEach(channel -> {
                var notes = track.notes().stream()
                        .filter(note -> note.channel() == channel)
                        .toList();
                parts.add(played(parts.size() + 1, track, notes));
            });
        }
        return parts;
    }

    private static Played played(int number, Smf.Track track, List<Smf.Note> notes) {
        var channels = notes.stream().map(Smf.Note::channel).distinct().toList();
        String lower = track.name().toLowerCase(Locale.ROOT);
        boolean named = BASS.matcher(lower).find() && !NOT_A_BASS.matcher(lower).find();
        boolean program = track.programs().stream()
                .anyMatch(each ->
                        channels.contains(each.channel()) && each.number() >= FIRST_BASS && each.number() <= LAST_BASS);
        int weight = channels.contains(DRUMS) ? 0 : (named ? 1 : 0) + (program ? 1 : 0);
        String name = track.name().isEmpty() ? "channel " + (channels.get(0) + 1) : track.name();
        return new Played(new FilePart(number, name, notes.size()), notes, weight);
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
    public Draft read(FilePart wanted, Notices notices) throws Unreadable {
        var notes = parts.stream().filter(part -> part.part().equals(wanted)).findFirst().orElseThrow().notes().stream()
                .sorted(Comparator.comparingLong(Smf.Note::on).thenComparingInt(Smf.Note::key))
                .toList();
        return new SmfDraft(file, notes, notices).draft();
    }
}
