package groundbass.intake.xml;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** How far what sounds lies from what is written, by staves. An octave clef moves nothing, for pitches are written so. Mutable. */
final class Transposing {
    private static final int ALL = 0;
    private static final int MOST = 48;

    private final Map<Integer, Integer> semitones = new HashMap<>();

    void read(Element attributes) {
        attributes.all("transpose").forEach(transpose -> {
            int staff = transpose.attribute("number").flatMap(Numbers::whole).orElse(ALL);
            int steps = figure(transpose, "chromatic") + 12 * figure(transpose, "octave-change");
            if (staff == ALL) {
                semitones.clear();
            }
            semitones.put(staff, Math.max(-MOST, Math.min(MOST, steps)));
        });
    }

    private static int figure(Element transpose, String name) {
        return transpose
                .text(name)
                .flatMap(Numbers::decimal)
                .map(each -> (int) each.floor())
                .filter(each -> Math.abs(each) <= MOST)
                .orElse(0);
    }

    int of(int staff) {
        return Optional.ofNullable(semitones.get(staff)).orElse(semitones.getOrDefault(ALL, 0));
    }
}
