package groundbass.walkthrough;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.walkthrough.stretch.Phrase;
import groundbass.walkthrough.stretch.Stretch;
import groundbass.walkthrough.words.NoteWords;
import groundbass.walkthrough.words.Wording;
import groundbass.writing.Element.Chord;
import groundbass.writing.Head;
import groundbass.writing.WrittenBar;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One bar in one breath: on each count what is played, its technique only where it changes, and where silence begins.
 * Beats that are played as those of an earlier bar are told by it.
 */
final class BriefTelling {
    private final Wording words;
    private final WrittenBar written;
    private final Meter meter;
    private final NoteWords notes;
    private final Optional<Leaning> leaning;
    private final HeadingWords headings;
    private final List<String> said = new ArrayList<>();
    private Fraction sounding;
    private Optional<String> technique = Optional.empty();
    private Optional<Stroke> last = Optional.empty();

    /** What was said last, where it is a stroke that may come again at once. */
    private record Stroke(List<Head> heads, List<String> counts, String what) {}

    BriefTelling(Wording words, NoteWords notes, WrittenBar written, Optional<Leaning> leaning, HeadingWords headings) {
        this.words = words;
        this.notes = notes;
        this.written = written;
        this.leaning = leaning;
        this.headings = headings;
        this.meter = written.inForce().meter();
        this.sounding = written.bar().from();
    }

    String text() {
        Optional<Stretch> told = Optional.empty();
        for (var chord : chords()) {
            var row = leaning.flatMap(each -> each.covering(chord.onset()));
            if (row.isEmpty()) {
                restUntil(chord.onset());
                chord(chord);
            } else if (!row.equals(told)) {
                restUntil(row.get().from());
                row(row.get());
                told = row;
            }
            sounding = sounding.max(chord.onset().plus(chord.length()));
        }
        restUntil(written.bar().to());
        return said.stream().reduce((one, two) -> words.say("next", one, two)).orElseGet(() -> words.say("hold"));
    }

    private void restUntil(Fraction at) {
        if (at.isAfter(sounding)) {
            said.add(counted(sounding, words.say("brief.rest")));
            last = Optional.empty();
        }
    }

    private void chord(Chord chord) {
        var struck = chord.heads().stream().filter(head -> !head.tiedFrom()).toList();
        if (struck.isEmpty()) {
            return;
        }
        var count = words.count(chord.onset(), meter);
        if (count.isPresent()
                && last.filter(one -> Phrase.isAgain(one.heads(), struck)).isPresent()) {
            again(last.get(), count.get());
        } else {
            String what = told(struck);
            said.add(counted(chord.onset(), what));
            last = count.map(at -> new Stroke(struck, List.of(at), what));
        }
    }

    /** {@code 1 and 3 play A (E 5)}. */
    private void again(Stroke stroke, String count) {
        var counts = Stream.concat(stroke.counts().stream(), Stream.of(count)).toList();
        said.set(said.size() - 1, words.say("brief.at", words.list(counts), stroke.what()));
        last = Optional.of(new Stroke(stroke.heads(), counts, stroke.what()));
    }

    /** After it the technique is named anew: nobody has heard it here. */
    private void row(Stretch row) {
        String earlier = new EarlierWords(words).beats(leaning.orElseThrow().on(), Optional.empty());
        said.add(words.say("brief.at", headings.beats(row), earlier));
        sounding = sounding.max(row.to());
        technique = Optional.empty();
        last = Optional.empty();
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
        var first = heads.get(0).note();
        boolean alike = heads.stream().map(Head::note).allMatch(note -> notes.isLike(note, first));
        String struck = alike
                ? told(first, together(heads.stream().map(notes::brief)))
                : together(heads.stream().map(head -> told(head.note(), notes.brief(head))));
        return notes.spread(heads, struck);
    }

    private String together(Stream<String> heads) {
        return heads.reduce((one, two) -> words.say("brief.together", one, two)).orElseThrow();
    }

    private String told(Note note, String what) {
        String how = notes.manner(note);
        boolean changes = note.pluck().isEmpty() || !technique.equals(Optional.of(how));
        technique = Optional.of(how);
        return notes.marks(note).stream()
                .reduce(
                        changes ? notes.briefStrike(note, what) : what,
                        (text, detail) -> words.say("detail", text, detail));
    }
}
