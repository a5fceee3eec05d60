package groundbass.midi;

import groundbass.groove.ChordTone;
import groundbass.groove.Piece;
import groundbass.score.Technique;

/** Numbers of General MIDI 1 (RP-003), programs counted from zero. */
final class GeneralMidi {
    static final int FINGER_BASS = 33;
    static final int PICK_BASS = 34;
    static final int SLAP_BASS = 36;
    static final int ELECTRIC_PIANO = 4;
    static final int CLEAN_GUITAR = 27;
    static final int DRUM_CHANNEL = 9;
    static final int WOODBLOCK = 115;

    /** F0 7E 7F 09 01 F7 (RP-003), without the first byte: every instrument as General MIDI has it. */
    static final int[] SYSTEM_ON = {0x7E, 0x7F, 0x09, 0x01, 0xF7};

    /** The last channel: whoever mutes it mutes the click alone. */
    static final int CLICK_CHANNEL = 15;

    static final int CHORD_CHANNEL = 10;

    private GeneralMidi() {}

    static int program(Technique hand) {
        return switch (hand) {
            case SLAP, POP, THUMB_DOWN, THUMB_UP -> SLAP_BASS;
            case PICK -> PICK_BASS;
            case FINGER, INDEX, MIDDLE, THUMB, PLUCK, TAP, MUTE, RAKE, LEFT_HAND -> FINGER_BASS;
        };
    }

    static int program(ChordTone tone) {
        return switch (tone) {
            case KEYS -> ELECTRIC_PIANO;
            case GUITAR -> CLEAN_GUITAR;
        };
    }

    static int key(Piece piece) {
        return switch (piece) {
            case KICK -> 36;
            case SNARE -> 38;
            case RIM -> 37;
            case CLAP -> 39;
            case HAT -> 42;
            case OPEN -> 46;
            case PEDAL -> 44;
            case RIDE -> 51;
            case BELL -> 53;
            case CRASH -> 49;
            case HIGHTOM -> 50;
            case MIDTOM -> 47;
            case LOWTOM -> 45;
            case SHAKER -> 70;
            case TAMBOURINE -> 54;
            case COWBELL -> 56;
        };
    }
}
