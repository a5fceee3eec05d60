package groundbass.walkthrough;

import groundbass.score.Fraction;
import groundbass.score.Meter;
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
    private final Known known;

    /**
     * What was told before.
     *
     * @param bar   whether it was the rhythm of the bar
     * @param beat  the rhythm of a beat, if any
     * @param alone whether beats were named and the bar has no other voice, so that a count of it is enough to come in by
     */
    record Known(boolean bar, Optional<String> beat, boolean alone) {}

    /**
     * What is told of a stretch.
     *
     * @param rhythm parts of a heading
     * @param one    whether it is one stroke
     */
    record Said(List<String> rhythm, String played, boolean one) {
        Said(List<String> rhythm, String played) {
            this(rhythm, played, false);
        }

        /** Whether it is one stroke and its length. */
        boolean isOne() {
            return one && rhythm.size() == 1;
        }

        /** Of one stroke, its length after it. */
        String noteFirst(Wording words) {
            return words.say("detail", played, rhythm.get(0));
        }

        /** In one breath, where two voices are told one after the other. */
        String joined(Wording words) {
            return rhythm.stream()
                    .reduce((one, two) -> words.say("heading", one, two))
                    .map(each -> words.say("rhythm", each, played))
                    .orElse(played);
        }
    }

    VoiceTelling(Wording words, NoteWords notes, Voice voice, Meter meter, Known known) {
        this.words = words;
        this.phrases = new PhraseWords(words, notes);
        this.voice = voice;
        this.meter = meter;
        this.known = known;
    }

    Said text(Fraction from, Fraction to) {
        return switch (Stretch.kind(voice, from, to)) {
            case HOLD -> new Said(List.of(), words.say("hold"));
            case REST -> new Said(List.of(), words.say("rest"));
            case PLAY -> play(from, to);
        };
    }

    private Said play(Fraction from, Fraction to) {
        int overlapping = indexAfter(from);
        int end = indexFrom(to);
        int first = overlapping;
        while (first < end && carriesOn(first, from)) {
            first++;
        }
        var rhythm = new RhythmWords(words, voice);
        boolean fresh = first == overlapping;
        var led = fresh
                ? known.alone() ? rhythm.spoken(first, end, meter) : List.of(rhythm.spoken(first, end))
                : List.of(words.say("then", lead(voice.elements().get(first - 1)), rhythm.of(first, end)));
        boolean usual = known.bar()
                || fresh && known.beat().equals(Optional.of(rhythm.of(first, end))) && Stretch.isBeat(from, to, meter);
        boolean one = first + 1 == end;
        boolean grouped = hasTuplet(first, end);
        return struck(voice.elements().subList(first, end))
                .map(struck -> new Said(usual ? List.of() : led, struck, one))
                .map(said -> grouped ? new Said(List.of(), said.joined(words)) : said)
                .orElseGet(() -> new Said(List.of(), led.get(0)));
    }

    private boolean hasTuplet(int first, int end) {
        return voice.tuplets().stream().anyMatch(group -> group.first() < end && group.last() >= first);
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
