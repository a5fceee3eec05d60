package groundbass.release;

import groundbass.audio.Mp3;
import groundbass.sound.mix.Mix;
import groundbass.text.Messages;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A practice track of the main line. The name of its file says both what sounds and how fast.
 *
 * @param percent of the line's tempo
 */
public record PracticeTrack(Sounding sounding, int percent) {
    /** The tempo that the line is written for. */
    public static final int WHOLE = 100;

    private static final Pattern NAME = Pattern.compile("([a-z-]+)-([0-9]{1,3})\\.(?:mp3|flac)");

    /** What sounds. */
    public enum Sounding {
        FULL("full", Mix.FULL, Mp3.KILOBITS_A_SECOND),
        WITHOUT_BASS("without-bass", Mix.WITHOUT_BASS, Mp3.KILOBITS_A_SECOND),
        /** Nearly one sound on both sides, and without cymbals: it needs fewer. */
        BASS("bass", Mix.BASS_AND_CLICK, 80),
        WITHOUT_DRUMS("without-drums", Mix.WITHOUT_DRUMS, 112);

        /** What is made beforehand. */
        static final List<Sounding> USUAL = List.of(FULL, WITHOUT_BASS, BASS);

        private final String word;
        private final Mix mix;
        private final int kilobits;

        Sounding(String word, Mix mix, int kilobits) {
            this.word = word;
            this.mix = mix;
            this.kilobits = kilobits;
        }

        /** A second of it as MP3. */
        int kilobits() {
            return kilobits;
        }

        /** The word for it in file names and in the keys of the message bundle. */
        public String word() {
            return word;
        }

        Mix mix() {
            return mix;
        }

        static Optional<Sounding> of(String word) {
            return Arrays.stream(values()).filter(one -> one.word.equals(word)).findFirst();
        }
    }

    /** The track in a file of a release; empty for a file that is none. */
    public static Optional<PracticeTrack> of(ReleaseFile file) {
        var name = NAME.matcher(file.name());
        boolean track = file.role() == FileRole.PRACTICE
                || file.role() == FileRole.LOSSLESS
                || file.role() == FileRole.ON_REQUEST;
        if (!track || !name.matches()) {
            return Optional.empty();
        }
        return Sounding.of(name.group(1)).map(sounding -> new PracticeTrack(sounding, Integer.parseInt(name.group(2))));
    }

    String fileName(String ending) {
        return sounding.word + "-" + percent + "." + ending;
    }

    /** What a player shows for it, short enough for a small screen. */
    String tagTitle(String lesson, Messages messages) {
        String what = messages.say("release.track." + sounding.word);
        return percent == WHOLE
                ? messages.say("release.track", lesson, what)
                : messages.say("release.track.tempo", lesson, what, percent);
    }

    /** The same with its tempo, the full one as well: in a list of many, one without says nothing. */
    String tagTitleWithTempo(String lesson, Messages messages) {
        return messages.say("release.track.tempo", lesson, messages.say("release.track." + sounding.word), percent);
    }

    /** What it is, in words. */
    String title(Messages messages) {
        String what = messages.say("release.practice." + sounding.word);
        return percent == WHOLE
                ? messages.say("release.practice.speed.full", what)
                : messages.say("release.practice.speed", what, percent);
    }
}
