package groundbass.release;

import groundbass.audio.Tags;
import groundbass.document.EpisodeDocument;
import groundbass.release.PracticeTrack.Sounding;
import groundbass.sound.mix.PreRoll;
import groundbass.text.Messages;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * The practice tracks of a lesson: the whole band, the band without bass, and the bass with a click, each at every tempo
 * as MP3, and at the full tempo without loss.
 */
final class PracticeSet {
    private static final String MP3 = "audio/mpeg";
    private static final String FLAC = "audio/flac";

    private final LineAudio main;
    private final EpisodeDocument document;
    private final BuildSpec spec;
    private final Messages messages;
    private final byte[] cover;
    private final List<PracticeTrack> tracks;

    /** @param cover the picture that players show, PNG */
    PracticeSet(
            LineAudio main,
            List<Integer> tempos,
            EpisodeDocument document,
            BuildSpec spec,
            Messages messages,
            byte[] cover) {
        this.main = main;
        this.document = document;
        this.spec = spec;
        this.messages = messages;
        this.cover = cover;
        this.tracks = tracks(tempos);
    }

    /** By what sounds, the slowest first. */
    private static List<PracticeTrack> tracks(List<Integer> tempos) {
        var tracks = new ArrayList<PracticeTrack>();
        for (var sounding : Sounding.values()) {
            tempos.forEach(percent -> tracks.add(new PracticeTrack(sounding, percent)));
        }
        return tracks;
    }

    /** How many steps a set at so many tempos takes. */
    static int steps(int tempos) {
        return Sounding.values().length * (tempos + 1);
    }

    List<ReleaseFile> make(ArtifactStore artifacts) {
        var lossless = tracks.stream().filter(track -> track.percent() == PracticeTrack.WHOLE);
        return Stream.concat(tracks.stream().map(this::mp3), lossless.map(this::flac)).toList().parallelStream()
                .map(artifacts::step)
                .toList();
    }

    private ArtifactStore.Step<ReleaseFile> mp3(PracticeTrack track) {
        return () ->
                ReleaseFile.of(track.fileName("mp3"), FileRole.PRACTICE, MP3, main.mp3(track, rounds(), tags(track)));
    }

    private ArtifactStore.Step<ReleaseFile> flac(PracticeTrack track) {
        return () -> ReleaseFile.of(
                track.fileName("flac"), FileRole.LOSSLESS, FLAC, main.flac(track, rounds(), tags(track)));
    }

    private int rounds() {
        return document.settings().roundsNumber();
    }

    private Tags tags(PracticeTrack track) {
        int tempo = main.line().inForce().get(0).tempo().perMinute();
        return new Tags(
                track.tagTitle(document.title(), messages),
                spec.series(),
                spec.episodeNumber(),
                document.rights().composer(),
                document.rights().statement(),
                Math.round(tempo * track.percent() / (float) PracticeTrack.WHOLE),
                PreRoll.SECONDS,
                cover);
    }
}
