package groundbass.sound.string;

import groundbass.signal.SampleRate;
import java.util.List;

/**
 * What a string knocks against when it is slapped or snapped: the frets below it. They lie at fractions of what sounds, so
 * that the contact goes with the fretting hand and neighbouring frets sound alike (rule: fret-contact).
 *
 * @param places from the bridge, as fractions of what sounds
 * @param action how the neck falls away below the string, per sample of travel
 * @param share how hard they turn the string back, 0 not at all to 1
 * @param seconds for which the string swings widely enough to reach them
 * @param least how hard a stroke must be for that, 1 for a normal one of its hand
 */
record FretContact(List<Double> places, double action, double share, double seconds, double least) {
    static final FretContact NONE = new FretContact(List.of(), 0, 0, 0, 0);

    /** A blow drives the string against those beyond the thumb (by trial, no source). */
    static final FretContact UNDER_A_BLOW = new FretContact(List.of(0.714, 0.726, 0.856), 0.44, 0.73, 0.05, 0);

    /** A snap lets it fall onto those before it (by trial, no source). */
    static final FretContact UNDER_A_SNAP = new FretContact(List.of(0.325, 0.43, 0.571), 0.33, 0.9, 0.05, 0);

    /** What a finger draws aside far enough falls back onto the last of them (by trial, no source). */
    static final FretContact UNDER_A_HARD_FINGER = new FretContact(List.of(0.8), 0.85, 0.35, 0.05, 1.05);

    FretContact {
        places = List.copyOf(places);
    }

    /** @param period of what sounds, in samples */
    List<Contact> contacts(SampleRate rate, double period, double level) {
        return level < least
                ? List.of()
                : places.stream()
                        .map(place ->
                                Contact.fret(place * period, action * period * (1 - place), share, rate.at(seconds)))
                        .toList();
    }
}
