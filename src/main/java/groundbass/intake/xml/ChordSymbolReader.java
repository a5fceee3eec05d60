package groundbass.intake.xml;

import groundbass.intake.xml.document.XmlElement;
import groundbass.intake.xml.document.XmlNumbers;
import groundbass.musicxml.ChordKind;
import groundbass.theory.ChordSymbol;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.NoteName;
import groundbass.theory.Quality;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Chord symbols: by their kind and degrees, by what is written, or by the kind alone. */
final class ChordSymbolReader {
    private static final Map<Named, Quality> KINDS = kinds();

    private ChordSymbolReader() {}

    /** A kind and what differs from it, in any order. */
    private record Named(String kind, Set<List<String>> degrees) {}

    /**
     * A symbol.
     *
     * @param exact whether nothing of it was left out
     */
    record Read(ChordSymbol symbol, boolean exact) {
        Read with(ChordSymbol other) {
            return new Read(other, exact);
        }
    }

    private static Map<Named, Quality> kinds() {
        var kinds = new HashMap<Named, Quality>();
        for (var quality : Quality.values()) {
            var kind = ChordKind.of(quality);
            var degrees = kind.degrees().stream()
                    .map(each -> List.of(
                            String.valueOf(each.number()),
                            String.valueOf(each.alteration()),
                            each.type().word()))
                    .collect(Collectors.toSet());
            kinds.put(new Named(kind.name(), degrees), quality);
        }
        return kinds;
    }

    /** Empty where a line has no such chord. */
    static Optional<Read> of(XmlElement harmony) {
        String kind = harmony.text("kind").orElse("");
        if (kind.equals("none")) {
            return Optional.of(new Read(ChordSymbol.NO_CHORD, true));
        }
        var root = harmony.child("root").flatMap(each -> Pitches.name(each, "root-"));
        if (root.isEmpty()) {
            return Optional.empty();
        }
        var bass = harmony.child("bass").flatMap(each -> Pitches.name(each, "bass-"));
        var exact = exact(harmony, kind);
        var quality = exact.or(() -> alone(kind));
        return quality.map(each -> new Read(chord(root.get(), each, bass), exact.isPresent()));
    }

    private static ChordSymbol chord(NoteName root, Quality quality, Optional<NoteName> bass) {
        return new Chord(root, quality, bass);
    }

    private static Optional<Quality> exact(XmlElement harmony, String kind) {
        var degrees = harmony.all("degree").map(ChordSymbolReader::degree).collect(Collectors.toSet());
        return Optional.ofNullable(KINDS.get(new Named(kind, degrees))).or(() -> harmony.child("kind")
                .flatMap(each -> each.attribute("text"))
                .flatMap(text -> ChordSymbol.parse("C" + text))
                .filter(Chord.class::isInstance)
                .map(chord -> ((Chord) chord).quality()));
    }

    private static List<String> degree(XmlElement degree) {
        return List.of(
                degree.text("degree-value").orElse(""),
                degree.text("degree-alter").flatMap(XmlNumbers::whole).orElse(0).toString(),
                degree.text("degree-type").orElse(""));
    }

    /** The plain chord of a kind, or the only one of it. */
    private static Optional<Quality> alone(String kind) {
        return Optional.ofNullable(KINDS.get(new Named(kind, Set.of()))).or(() -> Arrays.stream(Quality.values())
                .filter(quality -> ChordKind.of(quality).name().equals(kind))
                .findFirst());
    }
}
