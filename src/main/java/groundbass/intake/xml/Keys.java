package groundbass.intake.xml;

import groundbass.intake.draft.KeyNames;
import groundbass.intake.xml.document.XmlElement;
import groundbass.intake.xml.document.XmlNumbers;
import groundbass.theory.Key;
import groundbass.theory.Mode;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;

/** Key signatures: so many sharps or flats, and a mode. */
final class Keys {
    private static final Map<String, Mode> OTHER_NAMES = Map.of("ionian", Mode.MAJOR, "aeolian", Mode.MINOR);

    private Keys() {}

    /** Empty where the signature is not one of up to seven sharps or flats. */
    static Optional<Key> of(XmlElement key) {
        var mode = mode(key).orElse(Mode.MAJOR);
        return key.text("fifths").flatMap(XmlNumbers::whole).flatMap(fifths -> KeyNames.of(fifths, mode));
    }

    static Optional<Mode> mode(XmlElement key) {
        return key.text("mode").flatMap(word -> Arrays.stream(Mode.values())
                .filter(mode -> mode.toString().equals(word))
                .findFirst()
                .or(() -> Optional.ofNullable(OTHER_NAMES.get(word))));
    }
}
