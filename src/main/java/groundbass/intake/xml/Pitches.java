package groundbass.intake.xml;

import groundbass.intake.xml.document.XmlElement;
import groundbass.intake.xml.document.XmlNumbers;
import groundbass.score.Fraction;
import groundbass.theory.Letter;
import groundbass.theory.NoteName;
import groundbass.theory.Pitch;
import java.util.Optional;

/** A step, an alteration and an octave. */
final class Pitches {
    private static final Fraction HALF = Fraction.of(1, 2);

    private Pitches() {}

    /** @param prefix of the elements' names: {@code tuning-}, or nothing */
    static Optional<Pitch> of(XmlElement element, String prefix) {
        var name = name(element, prefix);
        var octave = element.text(prefix + "octave").flatMap(XmlNumbers::whole).filter(each -> each >= 0 && each <= 9);
        return name.isPresent() && octave.isPresent()
                ? Optional.of(new Pitch(name.get(), octave.get()))
                : Optional.empty();
    }

    /** Quarter tones go to the semitone above. */
    static Optional<NoteName> name(XmlElement element, String prefix) {
        var step = element.text(prefix + "step").filter(letter -> letter.matches("[A-G]"));
        var alter = element.text(prefix + "alter")
                .flatMap(XmlNumbers::decimal)
                .map(semitones -> (int) semitones.plus(HALF).floor())
                .orElse(0);
        return step.filter(letter -> Math.abs(alter) <= NoteName.MOST_ALTERED)
                .map(letter -> new NoteName(Letter.valueOf(letter), alter));
    }
}
