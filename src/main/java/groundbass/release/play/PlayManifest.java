package groundbass.release.play;

import com.fasterxml.jackson.annotation.JsonInclude;
import groundbass.score.Fraction;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.UnaryOperator;

/**
 * All that a page needs to play one line, as data. Each tempo has one timeline in frames, which begins with the count-in;
 * bars come in the order in which they are played, repeats again and again. Addresses are relative to the manifest's.
 *
 * @param form grows by one when a page that knows this form could misread it
 * @param line the line's name among the release's files: {@code line}, {@code exercise-1}
 * @param rate frames a second
 * @param headroom decibels by which the stems lie under what is to be heard: a player turns them up by it, and rounds off
 *     what then stands out where they meet
 * @param stems their names, in the order in which they are shown
 * @param tempos slowest first
 * @param tracks recordings of the educator's own, which belong to the main line
 * @param sections in their order; none in manifests of earlier programs
 * @param strings what the open strings are called, the highest first; none in manifests of earlier programs
 * @param places where on the neck each written event is; likewise
 */
public record PlayManifest(
        int form,
        String line,
        String title,
        int rate,
        double headroom,
        List<String> stems,
        List<Tempo> tempos,
        List<OwnTrack> tracks,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Section> sections,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<String> strings,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Fingered> places) {
    public static final int FORM = 2;

    public PlayManifest {
        sections = List.copyOf(Objects.requireNonNullElse(sections, List.of()));
        strings = List.copyOf(Objects.requireNonNullElse(strings, List.of()));
        places = List.copyOf(Objects.requireNonNullElse(places, List.of()));
    }

    /** A time inside a bar, in whole notes from its first count: {@code 3/8}. */
    static String text(Fraction at) {
        return at.toString();
    }

    /**
     * The line at one tempo.
     *
     * @param percent of the tempo that it is written for
     * @param bpm of the first bar: so many of {@code beat} a minute
     * @param endFrame where the last bar ends
     * @param files by the stem's name
     * @param exact where the same is told of stems without loss, which are made when somebody asks; null where these are
     */
    public record Tempo(
            int percent,
            double bpm,
            String beat,
            long endFrame,
            CountIn countIn,
            List<Bar> bars,
            Map<String, StemFile> files,
            @JsonInclude(JsonInclude.Include.NON_NULL) String exact) {
        public Tempo withExact(String address) {
            return new Tempo(percent, bpm, beat, endFrame, countIn, bars, files, address);
        }

        /** With other names for the same files. */
        public Tempo renamed(UnaryOperator<String> name) {
            var renamed = new LinkedHashMap<String, StemFile>();
            files.forEach((stem, file) -> renamed.put(stem, file.renamed(name)));
            return new Tempo(percent, bpm, beat, endFrame, countIn.renamed(name), bars, renamed, exact);
        }
    }

    /**
     * How a stream is decoded that has a rate of its own: decoded at that rate it has the frames of the sound, one for one,
     * whatever that one's rate.
     *
     * @param rate in hertz
     * @param skip how many decoded frames come before the first of the sound
     */
    public record Decoding(int rate, int skip) {}

    /**
     * The clicks before the first whole bar, from frame zero on.
     *
     * @param frames how long it takes; a pickup begins before its end
     * @param soundFrames how many frames its sound has
     * @param quietFrames how long a player waits before it, so that nothing that wakes up late swallows the first click
     * @param decoding as of {@link StemFile}
     */
    public record CountIn(
            long frames,
            List<Beat> beats,
            String url,
            long offset,
            long bytes,
            long soundFrames,
            long quietFrames,
            @JsonInclude(JsonInclude.Include.NON_NULL) Decoding decoding) {
        CountIn renamed(UnaryOperator<String> name) {
            return new CountIn(frames, beats, name.apply(url), offset, bytes, soundFrames, quietFrames, decoding);
        }
    }

    /** @param accent whether it is the first of a bar */
    public record Beat(long frame, boolean accent) {}

    /**
     * One playing of one bar.
     *
     * @param bar its number; a pickup is bar 0
     * @param pass through its repeated stretch, from 1
     * @param counts each count and its quarters, when they sound
     * @param events what is lit
     */
    public record Bar(int bar, int pass, long startFrame, long frames, List<At> counts, List<Event> events) {}

    /** @param at from the bar's first count, in whole notes */
    public record At(String count, String at, long frame) {}

    /** A written note or chord, named as the sheet's drawing names it. */
    public record Event(int bar, String at, int toBar, String to, long startFrame, long endFrame) {}

    /**
     * One stem: complete streams of Ogg Opus, or of FLAC, one after the other.
     *
     * @param pan from -1, left, to 1, right, by equal power
     * @param segments one for each bar of {@link Tempo#bars}; equal bars share their bytes
     * @param decoding of Opus; null for FLAC
     */
    public record StemFile(
            String url,
            double pan,
            List<Segment> segments,
            @JsonInclude(JsonInclude.Include.NON_NULL) Decoding decoding) {
        StemFile renamed(UnaryOperator<String> name) {
            return new StemFile(name.apply(url), pan, segments, decoding);
        }
    }

    /**
     * What begins in one bar, with its tail.
     *
     * @param bytes 0 where nothing begins
     * @param lead how many of the frames come before the bar's start: a grace note's
     */
    public record Segment(long offset, long bytes, long frames, long lead) {}

    /**
     * A place on the neck that a written event has.
     *
     * @param at when the event begins, as {@link Event#at}
     * @param string from 1, the highest
     * @param fret as tablature shows it: a number, or {@code x} where the string is only damped
     */
    public record Fingered(int bar, String at, int string, String fret) {}

    /** A part of the form, and the bar that it begins at. */
    public record Section(String name, int bar) {}

    /**
     * A recording of the educator's own.
     *
     * @param bars when each bar begins in it; empty while nobody has said so
     * @param endSeconds when its last bar ends
     */
    public record OwnTrack(
            String url, String title, String kind, double seconds, List<MappedBar> bars, double endSeconds) {}

    /** @param round through the whole line, from 1 */
    public record MappedBar(int bar, int pass, int round, double seconds) {}
}
