package groundbass.walkthrough;

import groundbass.score.Note;
import groundbass.score.Place.Fretted;
import groundbass.score.Technique;
import groundbass.walkthrough.words.NoteWords;
import groundbass.walkthrough.words.Wording;
import groundbass.writing.Head;
import java.util.List;
import java.util.Optional;

/** A phrase in words. */
final class PhraseWords {
    private final Wording words;
    private final NoteWords notes;

    PhraseWords(Wording words, NoteWords notes) {
        this.words = words;
        this.notes = notes;
    }

    String of(Phrase phrase) {
        return switch (phrase.kind()) {
            case SINGLE -> notes.of(phrase.strokes().get(0));
            case REPEATED ->
                again(notes.of(phrase.strokes().get(0)), phrase.strokes().size());
            case RUN ->
                run(phrase.strokes().stream().map(stroke -> stroke.get(0)).toList());
        };
    }

    private String again(String what, int times) {
        return words.say("repeated", what, words.counted("times", times));
    }

    private String run(List<Head> heads) {
        var first = heads.get(0).note();
        var names = heads.stream().map(head -> words.name(head.pitch().name())).toList();
        var frets = heads.stream().map(PhraseWords::fret).toList();
        String string = notes.string(first.string());
        String what = frets.stream().distinct().count() == 1
                ? again(words.say("place.fret", names.get(0), string, frets.get(0)), heads.size())
                : words.say("run", words.list(names), string, words.list(frets));
        var strokes = heads.stream()
                .map(Head::note)
                .map(Note::pluck)
                .flatMap(Optional::stream)
                .toList();
        return strokes.stream().distinct().count() == 1
                ? words.say("pluck." + strokes.get(0).word(), what)
                : words.say("pattern", pattern(strokes), what);
    }

    private String pattern(List<Technique> strokes) {
        return strokes.stream()
                .map(this::stroke)
                .reduce((one, two) -> words.say("list.more", one, two))
                .orElseThrow();
    }

    private String stroke(Technique technique) {
        return words.say("stroke." + technique.word());
    }

    private static String fret(Head head) {
        return head.note().place() instanceof Fretted fretted ? String.valueOf(fretted.fret()) : "";
    }
}
