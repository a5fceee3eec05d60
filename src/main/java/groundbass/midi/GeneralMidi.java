package groundbass.midi;

import groundbass.groove.Piece;
import groundbass.score.Technique;

/** Numbers of General MIDI 1 (RP-003), programs counted from zero. */
final class GeneralMidi {
    static final int FINGER_BASS = 33;
    static final int PICK_BASS = 34;
    static final int SLAP_BASS = 36;
    static final int ELECTRIC_PIANO = 4;
    static final int DRUM_CHANNEL = 9;
    static final int HIGH_WOOD_BLOCK = 76;
    static final int LOW_WOOD_BLOCK = 77;

    private GeneralMidi() {}

    static int program(Technique hand) {
        return switch (hand) {
            case SLAP, POP, THUMB_DOWN, THUMB_UP -> SLAP_BASS;
            case PICK -> PICK_BASS;
            case FINGER, INDEX, MIDDLE, THUMB, PLUCK, TAP, MUTE, RAKE, LEFT_HAND -> FINGER_BASS;
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
