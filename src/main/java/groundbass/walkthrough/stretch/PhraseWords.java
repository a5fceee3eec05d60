package groundbass.walkthrough.stretch;

import groundbass.score.Technique;
import groundbass.walkthrough.words.NoteWords;
import groundbass.walkthrough.words.Wording;
import groundbass.writing.Head;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Phrases in words, one after the other: a technique is named where it changes. */
final class PhraseWords {
    private static final Set<Technique> THUMB = EnumSet.of(Technique.THUMB_DOWN, Technique.THUMB_UP);

    private final Wording words;
    private final NoteWords notes;
    private Optional<Technique> technique = Optional.empty();

    PhraseWords(Wording words, NoteWords notes) {
        this.words = words;
        this.notes = notes;
    }

    /** What is struck one after the other, in one sentence. */
    String of(List<List<Head>> strokes) {
        return Phrase.of(strokes).stream()
                .map(this::of)
                .reduce((one, two) -> words.say("next", one, two))
                .orElseThrow();
    }

    private String of(Phrase phrase) {
        return switch (phrase.kind()) {
            case SINGLE -> single(phrase.strokes().get(0));
            case REPEATED -> repeated(phrase);
            case ROUND -> round(phrase);
            case RUN ->
                run(phrase.strokes().stream().map(stroke -> stroke.get(0)).toList());
        };
    }

    private String single(List<Head> heads) {
        var before = technique;
        boolean news = isNews(heads);
        boolean thumb = heads.size() == 1
                && before.filter(THUMB::contains).isPresent()
                && technique.filter(THUMB::contains).isPresent();
        String dead = heads.get(0).note().isDead() ? ".dead" : "";
        return thumb
                ? words.say("more." + technique.orElseThrow().word() + dead, notes.of(heads, false))
                : notes.of(heads, news);
    }

    private String repeated(Phrase phrase) {
        var heads = phrase.strokes().get(0);
        return again(notes.of(heads, isNews(heads)), phrase.times());
    }

    private String round(Phrase phrase) {
        var once = phrase.once().stream()
                .map(heads -> notes.of(heads, isNews(heads)))
                .toList();
        return again(words.inTurn(once), phrase.times());
    }

    /** Whether another technique comes than was told last; how a note is reached without a stroke is always said. */
    private boolean isNews(List<Head> heads) {
        var plucks = heads.stream().map(head -> head.note().pluck()).distinct().toList();
        var one = plucks.size() == 1 ? plucks.get(0) : Optional.<Technique>empty();
        boolean news = one.isEmpty() || !one.equals(technique);
        boolean slurred = plucks.equals(List.of(Optional.empty()));
        technique = slurred ? technique : one;
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
            technique = Optional.of(strokes.get(strokes.size() - 1));
            return pattern(strokes, places(heads));
        }
        return isNews(heads.subList(0, 1)) ? words.say("pluck." + strokes.get(0).word(), places(heads)) : places(heads);
    }

    /** {@code thumb down and up on the open E string}. */
    private String pattern(List<Technique> strokes, String places) {
        String order = words.list(strokes.stream().map(this::stroke).toList());
        return words.say(THUMB.containsAll(strokes) ? "pattern.thumb" : "pattern", order, places);
    }

    /** One place struck in several ways is named once. */
    private String places(List<Head> heads) {
        boolean one = heads.stream().map(head -> head.note().place()).distinct().count() == 1;
        if (one && heads.get(0).note().isDead()) {
            return notes.dead(heads);
        }
        return one ? notes.of(heads.subList(0, 1), false) : notes.along(heads);
    }

    private String stroke(Technique technique) {
        return words.say("stroke." + technique.word());
    }
}
