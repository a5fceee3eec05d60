package groundbass.intake.xml;

import groundbass.intake.xml.document.XmlElement;
import groundbass.intake.xml.document.XmlNumbers;
import groundbass.score.Tuning;
import groundbass.score.Tuning.OpenString;
import groundbass.theory.Pitch;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

/** The strings as a file tunes them. Mutable. */
final class FileTuning {
    private Optional<Tuning> tuning = Optional.empty();
    private int capo;

    /** Lines count from the lowest; a later tuning does not change an earlier one. */
    void read(XmlElement staffDetails) {
        staffDetails
                .text("capo")
                .flatMap(XmlNumbers::whole)
                .filter(fret -> fret >= 0 && fret <= 24)
                .ifPresent(fret -> capo = fret);
        var lines = new TreeMap<Integer, Pitch>(Comparator.reverseOrder());
        staffDetails.all("staff-tuning").forEach(line -> {
            var number = line.attribute("line").flatMap(XmlNumbers::whole);
            var pitch = Pitches.of(line, "tuning-");
            if (number.isPresent() && pitch.isPresent()) {
                lines.put(number.get(), pitch.get());
            }
        });
        var strings = List.copyOf(lines.values());
        boolean fits = !strings.isEmpty()
                && strings.size() <= Tuning.MOST_STRINGS
                && strings.stream().allMatch(pitch -> OpenString.isOpenPitch(pitch.name(), pitch.octave()));
        if (tuning.isEmpty() && fits) {
            tuning = Optional.of(new Tuning(strings.stream().map(OpenString::of).toList()));
        }
    }

    Optional<Tuning> tuning() {
        return tuning;
    }

    int capo() {
        return capo;
    }
}
