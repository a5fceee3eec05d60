package groundbass.walkthrough;

import groundbass.score.Arrival;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Place.Fretted;
import groundbass.score.Technique;
import groundbass.walkthrough.words.NoteWords;
import groundbass.walkthrough.words.Wording;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** How to play what a line shows for the first time: a single thing once it was played, several before. */
final class NewTechniques {
    private final Line line;
    private final Firsts firsts;
    private final Wording words;

    NewTechniques(Line line, Firsts firsts, Wording words) {
        this.line = line;
        this.firsts = firsts;
        this.words = words;
    }

    /** Sentences to be known before a stretch of the bar of this index is played. */
    List<String> known(int bar, Fraction from, Fraction to, NoteWords notes) {
        var meanings = firsts.techniques(bar, from, to).stream()
                .map(feature -> "means." + feature)
                .filter(words::has)
                .map(key -> words.say(key));
        var news = news(bar, from, to, notes);
        return Stream.concat(meanings, isMuch(news) ? news.stream() : Stream.empty())
                .toList();
    }

    /** Sentences about a stretch of the bar of this index that was played. */
    List<String> remarks(int bar, Fraction from, Fraction to, NoteWords notes) {
        var news = news(bar, from, to, notes);
        return isMuch(news) ? List.of() : news;
    }

    private static boolean isMuch(List<String> news) {
        return news.size() > 1;
    }

    private List<String> news(int bar, Fraction from, Fraction to, NoteWords notes) {
        var here = line.bars().get(bar).notes().stream()
                .filter(note -> !note.onset().isBefore(from) && note.onset().isBefore(to))
                .toList();
        var news = new ArrayList<String>();
        for (var feature : firsts.techniques(bar, from, to)) {
            how(feature, here, notes)
                    .map(how -> words.say(news.isEmpty() ? "new" : "new.also", words.say("new." + feature), how))
                    .ifPresent(news::add);
        }
        return news;
    }

    /** Nothing of what has a meaning of its own, and of more strings than there are fingers. */
    private Optional<String> how(String feature, List<Note> here, NoteWords notes) {
        if (feature.equals(Technique.PLUCK.word())) {
            return plucked(strings(Technique.PLUCK, here, notes));
        }
        if (feature.equals(Firsts.TWO_POPS)) {
            return popped(strings(Technique.POP, here, notes));
        }
        boolean toOpen = feature.equals(Arrival.Kind.PULL.word()) && isPulledToOpen(here);
        return Optional.of("how." + feature + (toOpen ? ".open" : ""))
                .filter(words::has)
                .map(key -> words.say(key));
    }

    private static boolean isPulledToOpen(List<Note> here) {
        return here.stream()
                .filter(note -> note.arrival()
                        .filter(arrival -> arrival.kind() == Arrival.Kind.PULL)
                        .isPresent())
                .allMatch(note -> note.place() instanceof Fretted place && place.fret() == 0);
    }

    /** The strings that are struck in such a way, the lowest first. */
    private static List<String> strings(Technique technique, List<Note> here, NoteWords notes) {
        return here.stream()
                .filter(note -> note.pluck().equals(Optional.of(technique)))
                .map(Note::string)
                .distinct()
                .sorted(Comparator.reverseOrder())
                .map(notes::string)
                .toList();
    }

    /** Which finger of the plucking hand takes which string: the thumb the lowest (common practice, no source). */
    private Optional<String> plucked(List<String> strings) {
        return switch (strings.size()) {
            case 2 -> Optional.of(words.say("plucked.two", strings.get(0), strings.get(1)));
            case 3 -> Optional.of(words.say("plucked.three", strings.get(0), strings.get(1), strings.get(2)));
            case 4 ->
                Optional.of(words.say("plucked.four", strings.get(0), strings.get(1), strings.get(2), strings.get(3)));
            default -> Optional.empty();
        };
    }

    private Optional<String> popped(List<String> strings) {
        return Optional.of(strings)
                .filter(two -> two.size() == 2)
                .map(two -> words.say("how.pops", two.get(0), two.get(1)));
    }
}
