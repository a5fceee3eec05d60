package groundbass.walkthrough;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.score.Tuning;
import groundbass.walkthrough.words.NoteWords;
import groundbass.walkthrough.words.Wording;
import groundbass.writing.Element;
import groundbass.writing.Element.Chord;
import groundbass.writing.Head;
import groundbass.writing.Voice;
import java.util.List;
import java.util.Optional;

/** One voice of a stretch: what carries on, the rhythm of what begins, and its notes. */
final class VoiceTelling {
    private final Wording words;
    private final PhraseWords phrases;
    private final Voice voice;
    private final Meter meter;
    private final Optional<String> usualRhythm;

    /** @param usualRhythm of a beat, which was told before */
    VoiceTelling(Wording words, Tuning tuning, Voice voice, Meter meter, Optional<String> usualRhythm) {
        this.words = words;
        this.phrases = new PhraseWords(words, new NoteWords(words, tuning));
        this.voice = voice;
        this.meter = meter;
        this.usualRhythm = usualRhythm;
    }

    String text(Fraction from, Fraction to) {
        return switch (Stretch.kind(voice, from, to)) {
            case HOLD -> words.say("hold");
            case REST -> words.say("rest");
            case PLAY -> play(from, to);
        };
    }

    private String play(Fraction from, Fraction to) {
        int overlapping = indexAfter(from);
        int end = indexFrom(to);
        int first = overlapping;
        while (first < end && carriesOn(first, from)) {
            first++;
        }
        var rhythm = new RhythmWords(words, voice);
        boolean fresh = first == overlapping;
        String led = fresh
                ? rhythm.spoken(first, end)
                : words.say("then", lead(voice.elements().get(first - 1)), rhythm.of(first, end));
        boolean known =
                fresh && usualRhythm.equals(Optional.of(rhythm.of(first, end))) && Stretch.isBeat(from, to, meter);
        return struck(voice.elements().subList(first, end))
                .map(struck -> known ? struck : words.say("rhythm", led, struck))
                .orElse(led);
    }

    /** Whether an element began before, or is tied to what did, so that it is told as a length of time gone on. */
    private boolean carriesOn(int index, Fraction from) {
        var element = voice.elements().get(index);
        boolean inTuplet = voice.tuplets().stream().anyMatch(group -> group.first() <= index && index <= group.last());
        return element.onset().isBefore(from) || (RhythmWords.isHeld(element) && !inTuplet);
    }

    private String lead(Element last) {
        String what = last instanceof Chord ? "hold" : "rest";
        return words.count(last.onset().plus(last.length()), meter)
                .map(count -> words.say(what + ".until", count))
                .orElseGet(() -> words.say(what + ".on"));
    }

    private Optional<String> struck(List<Element> elements) {
        List<List<Head>> strokes = elements.stream()
                .filter(Chord.class::isInstance)
                .map(Chord.class::cast)
                .map(chord ->
                        chord.heads().stream().filter(head -> !head.tiedFrom()).toList())
                .filter(heads -> !heads.isEmpty())
                .toList();
        return Phrase.of(strokes).stream().map(phrases::of).reduce((one, two) -> words.say("next", one, two));
    }

    /** The first element that ends after this time. */
    private int indexAfter(Fraction at) {
        return (int) voice.elements().stream()
                .takeWhile(element -> !element.onset().plus(element.length()).isAfter(at))
                .count();
    }

    /** The first element that does not begin before this time. */
    private int indexFrom(Fraction at) {
        return (int) voice.elements().stream()
                .takeWhile(element -> element.onset().isBefore(at))
                .count();
    }
}
