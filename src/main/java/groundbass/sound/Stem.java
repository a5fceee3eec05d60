package groundbass.sound;

/** What a mix is made of. */
public enum Stem {
    BASS,
    DRUMS,
    CHORDS,
    CLICK
}
