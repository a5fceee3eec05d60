package groundbass.walkthrough;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.score.Tuning;
import groundbass.walkthrough.words.NoteWords;
import groundbass.walkthrough.words.Wording;
import groundbass.writing.Element.Chord;
import groundbass.writing.Head;
import groundbass.writing.WrittenBar;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** One bar in one breath: on each count what is played, its technique only where it changes, and where silence begins. */
final class BriefTelling {
    private final Wording words;
    private final WrittenBar written;
    private final Meter meter;
    private final NoteWords notes;
    private Optional<String> technique = Optional.empty();

    BriefTelling(Wording words, Tuning tuning, WrittenBar written) {
        this.words = words;
        this.written = written;
        this.meter = written.inForce().meter();
        this.notes = new NoteWords(words, tuning);
    }

    String text() {
        var said = new ArrayList<String>();
        var sounding = written.bar().from();
        for (var chord : chords()) {
            if (chord.onset().isAfter(sounding)) {
                said.add(counted(sounding, words.say("brief.rest")));
            }
            var struck = chord.heads().stream().filter(head -> !head.tiedFrom()).toList();
            if (!struck.isEmpty()) {
                said.add(counted(chord.onset(), told(struck)));
            }
            sounding = sounding.max(chord.onset().plus(chord.length()));
        }
        if (sounding.isBefore(written.bar().to())) {
            said.add(counted(sounding, words.say("brief.rest")));
        }
        return said.stream().reduce((one, two) -> words.say("next", one, two)).orElseGet(() -> words.say("hold"));
    }

    /** What begins in both voices, in order. */
    private List<Chord> chords() {
        return written.voices().stream()
                .flatMap(voice -> voice.elements().stream())
                .filter(Chord.class::isInstance)
                .map(Chord.class::cast)
                .sorted(Comparator.comparing(Chord::onset))
                .toList();
    }

    /** {@code 2& pop G}; between the counts that have names it is simply the next thing. */
    private String counted(Fraction at, String what) {
        return words.count(at, meter)
                .map(count -> words.say("brief.at", count, what))
                .orElseGet(() -> words.say("brief.then", what));
    }

    private String told(List<Head> heads) {
        String struck = heads.stream()
                .map(this::told)
                .reduce((one, two) -> words.say("brief.together", one, two))
                .orElseThrow();
        return notes.spread(heads, struck);
    }

    private String told(Head head) {
        String how = notes.manner(head.note());
        boolean changes = !technique.equals(Optional.of(how));
        technique = Optional.of(how);
        String what = notes.brief(head);
        return notes.marks(head.note()).stream()
                .reduce(
                        changes ? notes.strike(head.note(), what) : what,
                        (text, detail) -> words.say("detail", text, detail));
    }
}
