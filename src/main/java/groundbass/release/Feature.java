package groundbass.release;

/** What releases did not have from the beginning; one that was made before has it once it is made anew. */
public enum Feature {
    /** Its lines as MusicXML. */
    MUSICXML(6),
    /** And as tablature in plain text. */
    PLAIN_TAB(8),
    /** Its first bars as a picture beside links to it. */
    LINK_PICTURE(10),
    /** Its sections among what the page plays. */
    SECTIONS(10),
    /** A bundle that unpacks into a folder of its own. */
    FOLDER(10),
    /** Its lines as music braille. */
    BRAILLE(14),
    /** Its first bars as pictures in lists and on the covers of its recordings. */
    CARD_PICTURES(18),
    SOUND_OF_EXERCISES(18),
    /** Its places on the neck among what the page plays. */
    NECK(18),
    WALKTHROUGH_IN_EVERY_LANGUAGE(18),
    /** A bundle whose files are called as they are alone. */
    NAMES_OF_ITS_OWN(18),
    /**
     * Only the recordings that most readers want are made beforehand; other tempos, other mixes and what is without loss
     * when they are first asked for, and the bundle while it is sent.
     */
    TRACKS_ON_REQUEST(19),
    /** What the page plays in a smaller form; without loss it is made when it is asked for. */
    SMALL_SOUND(20),
    /** Its lines as MIDI without count-in, too. */
    MIDI_FROM_BAR_1(22);

    private final int since;

    /** @param since the first version of the renderers that makes it */
    Feature(int since) {
        this.since = since;
    }

    boolean isIn(int renderers) {
        return renderers >= since;
    }
}
