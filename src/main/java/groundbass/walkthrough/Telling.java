package groundbass.walkthrough;

import groundbass.analysis.Analysis;
import groundbass.score.Arrival;
import groundbass.score.Fraction;
import groundbass.score.InForce;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Place.Fretted;
import groundbass.score.Technique;
import groundbass.walkthrough.Walkthrough.Reading;
import groundbass.walkthrough.idea.BarIdea;
import groundbass.walkthrough.words.NoteWords;
import groundbass.walkthrough.words.RunningLoudness;
import groundbass.walkthrough.words.Wording;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What the bars of one telling share: the words, and what is worth a sentence of its own where. */
record Telling(
        Wording words,
        Line line,
        List<InForce> inForce,
        Firsts firsts,
        BarIdea idea,
        HardSpots hard,
        StringCrossings crossings,
        HandPositions hand,
        RunningLoudness loudness,
        UsualRhythm usual,
        Reading reading) {
    /** So much that is new can be told once it was played; of more one has to know before. */
    private static final int ONE = 1;

    /**
     * What a telling of a line needs.
     *
     * @param hand  where the fretting hand lies, as far as it is told
     * @param usual what is told once, and not with each bar or beat that has it
     */
    static Telling of(Line line, Wording words, HandPositions hand, UsualRhythm usual, Reading reading) {
        var tones = Analysis.of(line).tones();
        return new Telling(
                words,
                line,
                line.inForce(),
                new Firsts(line),
                new BarIdea(line, tones, words),
                new HardSpots(line),
                new StringCrossings(line, tones),
                hand,
                new RunningLoudness(line),
                usual,
                reading);
    }

    /** What is to be known before one plays what comes in a stretch of the bar of this index. */
    List<String> known(int bar, Fraction from, Fraction to) {
        var known = new ArrayList<String>();
        firsts.techniques(bar, from, to).stream()
                .map(feature -> "means." + feature)
                .filter(words::has)
                .map(key -> words.say(key))
                .forEach(known::add);
        var news = news(bar, from, to);
        if (news.size() > ONE) {
            known.addAll(news);
        }
        known.addAll(crossings.known(bar, from, to, words, notes(bar)));
        return known;
    }

    /** What is new and what is hard in a stretch of the bar of this index, each with what to do about it. */
    List<String> remarks(int bar, Fraction from, Fraction to) {
        var remarks = new ArrayList<String>();
        var news = news(bar, from, to);
        if (news.size() <= ONE) {
            remarks.addAll(news);
        }
        remarks.addAll(hard.in(bar, from, to, hand, words));
        remarks.addAll(crossings.remarks(bar, from, to, words));
        return remarks;
    }

    private List<String> news(int bar, Fraction from, Fraction to) {
        var news = new ArrayList<String>();
        for (var feature : firsts.techniques(bar, from, to)) {
            how(feature, bar, from, to)
                    .map(how -> words.say(news.isEmpty() ? "new" : "new.also", words.say("new." + feature), how))
                    .ifPresent(news::add);
        }
        return news;
    }

    /** How to play what is new; nothing of what was told before. */
    private Optional<String> how(String feature, int bar, Fraction from, Fraction to) {
        if (feature.equals(Technique.PLUCK.word())) {
            return plucked(strings(Technique.PLUCK, bar, from, to));
        }
        if (feature.equals(Firsts.TWO_POPS)) {
            return popped(strings(Technique.POP, bar, from, to));
        }
        boolean toOpen = feature.equals(Arrival.Kind.PULL.word()) && isPulledToOpen(bar, from, to);
        return Optional.of("how." + feature + (toOpen ? ".open" : ""))
                .filter(words::has)
                .map(key -> words.say(key));
    }

    private boolean isPulledToOpen(int bar, Fraction from, Fraction to) {
        return line.bars().get(bar).notes().stream()
                .filter(note -> !note.onset().isBefore(from) && note.onset().isBefore(to))
                .filter(note -> note.arrival()
                        .filter(arrival -> arrival.kind() == Arrival.Kind.PULL)
                        .isPresent())
                .allMatch(note -> note.place() instanceof Fretted place && place.fret() == 0);
    }

    /** The strings that are struck in such a way, the lowest first. */
    private List<String> strings(Technique technique, int bar, Fraction from, Fraction to) {
        return line.bars().get(bar).notes().stream()
                .filter(note -> note.pluck().equals(Optional.of(technique)))
                .filter(note -> !note.onset().isBefore(from) && note.onset().isBefore(to))
                .map(Note::string)
                .distinct()
                .sorted(Comparator.reverseOrder())
                .map(notes(bar)::string)
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

    /** Of more strings than two it goes without saying. */
    private Optional<String> popped(List<String> strings) {
        return Optional.of(strings)
                .filter(two -> two.size() == 2)
                .map(two -> words.say("how.pops", two.get(0), two.get(1)));
    }

    /** The words for notes of a bar: a finger goes without saying where one has heard where the hand lies. */
    NoteWords notes(int index) {
        return NoteWords.inOneBreath(
                words, line.header().tuning(), note -> reading == Reading.IN_TURN && hand.isUnderFinger(index, note));
    }
}
