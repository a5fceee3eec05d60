package groundbass.musicxml;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.theory.Degree;
import groundbass.theory.Quality;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.audiveris.proxymusic.KindValue;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A kind with its degrees has the tones of the chord that it stands for. */
class ChordKindTest {
    /** MusicXML 4.0, kind-value: what each kind consists of, extensions on all that lie below them. */
    private static final Map<String, String> KINDS = Map.ofEntries(
            Map.entry("major", "1 3 5"),
            Map.entry("minor", "1 b3 5"),
            Map.entry("augmented", "1 3 #5"),
            Map.entry("diminished", "1 b3 b5"),
            Map.entry("dominant", "1 3 5 b7"),
            Map.entry("major-seventh", "1 3 5 7"),
            Map.entry("minor-seventh", "1 b3 5 b7"),
            Map.entry("diminished-seventh", "1 b3 b5 bb7"),
            Map.entry("augmented-seventh", "1 3 #5 b7"),
            Map.entry("half-diminished", "1 b3 b5 b7"),
            Map.entry("major-minor", "1 b3 5 7"),
            Map.entry("major-sixth", "1 3 5 6"),
            Map.entry("minor-sixth", "1 b3 5 6"),
            Map.entry("dominant-ninth", "1 3 5 b7 9"),
            Map.entry("major-ninth", "1 3 5 7 9"),
            Map.entry("minor-ninth", "1 b3 5 b7 9"),
            Map.entry("dominant-11th", "1 3 5 b7 9 11"),
            Map.entry("minor-11th", "1 b3 5 b7 9 11"),
            Map.entry("dominant-13th", "1 3 5 b7 9 11 13"),
            Map.entry("major-13th", "1 3 5 7 9 11 13"),
            Map.entry("minor-13th", "1 b3 5 b7 9 11 13"),
            Map.entry("suspended-second", "1 2 5"),
            Map.entry("suspended-fourth", "1 4 5"),
            Map.entry("power", "1 5"));

    /** MusicXML 4.0, degree-alter: added degrees are counted against a dominant chord, major and perfect but for the 7th. */
    private static final int DOMINANT_SEVENTH = -1;

    @ParameterizedTest
    @EnumSource(Quality.class)
    void theTonesAreThoseOfTheChord(Quality quality) {
        var kind = ChordKind.of(quality);
        assertThat(KINDS).containsKey(kind.name());
        assertThat(Arrays.stream(KindValue.values()).map(KindValue::value)).contains(kind.name());
        var tones = new TreeMap<Integer, Integer>();
        Arrays.stream(KINDS.get(kind.name()).split(" "))
                .map(Degree::parse)
                .forEach(degree -> tones.put(degree.number(), degree.alteration()));
        for (var degree : kind.degrees()) {
            switch (degree.type()) {
                case ADD ->
                    tones.put(degree.number(), degree.alteration() + (degree.number() == 7 ? DOMINANT_SEVENTH : 0));
                case ALTER -> tones.merge(degree.number(), degree.alteration(), Integer::sum);
                case SUBTRACT -> assertThat(tones.remove(degree.number())).isNotNull();
            }
        }
        Set<Degree> said = tones.entrySet().stream()
                .map(tone -> new Degree(tone.getKey(), tone.getValue()))
                .collect(Collectors.toSet());
        assertThat(said).isEqualTo(Set.copyOf(quality.degrees()));
    }
}
