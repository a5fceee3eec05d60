package groundbass.release.play;

import groundbass.audio.Flac;
import groundbass.audio.MonoPcm;
import groundbass.audio.Opus;
import groundbass.release.play.PlayManifest.Decoding;
import groundbass.sound.mix.Stem;

/** How the segments of stems become bytes, each to be decoded alone. */
public enum StemForm {
    /** As it was played, for browsers that cannot decode the other form. */
    EXACT("flac", "audio/flac", null) { // RFC 9639, section 11.2
        @Override
        byte[] encoded(MonoPcm pcm, Stem stem) {
            return Flac.mono(pcm);
        }
    },
    /** With a little loss, and much smaller. */
    SMALL("opus", "audio/ogg; codecs=opus", new Decoding(Opus.RATE, Opus.SKIP)) { // RFC 7845, section 9
        @Override
        byte[] encoded(MonoPcm pcm, Stem stem) {
            return Opus.mono(pcm, kilobits(stem));
        }
    };

    private final String ending;
    private final String mediaType;
    private final Decoding decoding;

    StemForm(String ending, String mediaType, Decoding decoding) {
        this.ending = ending;
        this.mediaType = mediaType;
        this.decoding = decoding;
    }

    public String mediaType() {
        return mediaType;
    }

    String ending() {
        return ending;
    }

    /** Null where nothing has to be said of it. */
    Decoding decoding() {
        return decoding;
    }

    abstract byte[] encoded(MonoPcm pcm, Stem stem);

    /** What has strokes and much above the voice needs most (rule: small-sound). */
    private static int kilobits(Stem stem) {
        return switch (stem) {
            case BASS, CHORDS -> 64;
            case DRUMS -> 72;
            case CLICK -> 40;
        };
    }
}
