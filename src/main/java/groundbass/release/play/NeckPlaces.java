package groundbass.release.play;

import groundbass.release.play.PlayManifest.Fingered;
import groundbass.score.Line;
import groundbass.score.Place;
import groundbass.writing.Element;
import groundbass.writing.Writing;
import groundbass.writing.WrittenBar;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Where on the neck everything of a line is that a page lights. */
public final class NeckPlaces {
    private static final String DAMPED = "x";

    private NeckPlaces() {}

    /** In their order; bars that come again stand once, as on the sheet. */
    public static List<Fingered> of(Line line) {
        var bars = Writing.of(line).bars();
        return IntStream.range(0, bars.size())
                .boxed()
                .flatMap(i -> of(line.firstNumber() + i, bars.get(i)))
                .toList();
    }

    private static Stream<Fingered> of(int number, WrittenBar bar) {
        return bar.voices().stream()
                .flatMap(voice -> voice.elements().stream())
                .filter(Element.Chord.class::isInstance)
                .map(Element.Chord.class::cast)
                .flatMap(chord -> chord.heads().stream()
                        .map(head -> of(number, chord, head.note().place())));
    }

    private static Fingered of(int number, Element.Chord chord, Place place) {
        String fret = place instanceof Place.Fretted fretted ? Integer.toString(fretted.fret()) : DAMPED;
        return new Fingered(number, PlayManifest.text(chord.onset()), place.string(), fret);
    }
}
