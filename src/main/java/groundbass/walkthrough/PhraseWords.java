package groundbass.walkthrough;

import groundbass.score.Place.Fretted;
import groundbass.score.Technique;
import groundbass.walkthrough.words.NoteWords;
import groundbass.walkthrough.words.Wording;
import groundbass.writing.Head;
import java.util.List;
import java.util.Optional;

/** Phrases in words, one after the other: a technique is named where it changes. */
final class PhraseWords {
    private final Wording words;
    private final NoteWords notes;
    private Optional<Technique> technique = Optional.empty();

    PhraseWords(Wording words, NoteWords notes) {
        this.words = words;
        this.notes = notes;
    }

    String of(Phrase phrase) {
        var heads = phrase.strokes().get(0);
        return switch (phrase.kind()) {
            case SINGLE -> notes.of(heads, isNews(heads));
            case REPEATED ->
                again(notes.of(heads, isNews(heads)), phrase.strokes().size());
            case RUN ->
                run(phrase.strokes().stream().map(stroke -> stroke.get(0)).toList());
        };
    }

    /** Whether another technique comes than was told last; how a note is reached without a stroke is always said. */
    private boolean isNews(List<Head> heads) {
        var plucks = heads.stream().map(head -> head.note().pluck()).distinct().toList();
        var one = plucks.size() == 1 ? plucks.get(0) : Optional.<Technique>empty();
        boolean news = one.isEmpty() || !one.equals(technique);
        technique = one;
        return news;
    }

    private String again(String what, int times) {
        return words.say("repeated", what, words.counted("times", times));
    }

    private String run(List<Head> heads) {
        var strokes = heads.stream()
                .map(Head::note)
                .flatMap(note -> note.pluck().stream())
                .toList();
        if (strokes.stream().distinct().count() > 1) {
            technique = Optional.empty();
            return words.say("pattern", pattern(strokes), places(heads));
        }
        return isNews(heads.subList(0, 1)) ? words.say("pluck." + strokes.get(0).word(), places(heads)) : places(heads);
    }

    private String places(List<Head> heads) {
        var names = heads.stream().map(head -> words.name(head.pitch().name())).toList();
        var frets = heads.stream().map(PhraseWords::fret).toList();
        String string = notes.string(heads.get(0).note().string());
        return frets.stream().distinct().count() == 1
                ? again(notes.of(heads.subList(0, 1), false), heads.size())
                : words.say("run", words.inTurn(names), string, words.list(frets));
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
