package groundbass.release;

import groundbass.audio.Tags;
import groundbass.document.EpisodeDocument;
import groundbass.lesson.Lesson;
import groundbass.release.PracticeTrack.Sounding;
import groundbass.sound.mix.PreRoll;
import groundbass.text.Messages;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * The practice tracks of a lesson: the whole band, the band without bass, and the bass with a click, as MP3. Whatever else
 * somebody wants is made when they ask for it.
 */
final class PracticeSet {
    private static final String MP3 = "audio/mpeg";
    private static final String FLAC = "audio/flac";

    private final LineAudio main;
    private final List<LineAudio> exercises;
    private final EpisodeDocument document;
    private final BuildSpec spec;
    private final Messages messages;
    private final byte[] cover;
    private final List<PracticeTrack> tracks;

    /**
     * @param lines the main line first
     * @param tracks of it, to be made beforehand: {@link #usual}
     * @param cover the picture that players show, PNG
     */
    PracticeSet(
            List<LineAudio> lines,
            List<PracticeTrack> tracks,
            EpisodeDocument document,
            BuildSpec spec,
            Messages messages,
            byte[] cover) {
        this.main = lines.get(0);
        this.exercises = spec.has(Feature.SOUND_OF_EXERCISES) ? lines.subList(1, lines.size()) : List.of();
        this.document = document;
        this.spec = spec;
        this.messages = messages;
        this.cover = cover;
        this.tracks = List.copyOf(tracks);
    }

    /** Those that the educator asks for and the one that the line is written for, slowest first. */
    static List<Integer> tempos(Lesson lesson) {
        return Stream.concat(lesson.document().settings().tempoPercents().stream(), Stream.of(PracticeTrack.WHOLE))
                .distinct()
                .sorted()
                .toList();
    }

    /**
     * What of the line is made beforehand, by what sounds, the slowest first: the whole band at every tempo that the
     * educator asks for, the rest at the full one; before tracks were made on request all of it at every tempo.
     */
    static List<PracticeTrack> usual(Lesson lesson, BuildSpec spec) {
        var tracks = new ArrayList<PracticeTrack>();
        for (var sounding : Sounding.USUAL) {
            tempos(lesson).stream()
                    .filter(percent -> sounding == Sounding.FULL
                            || percent == PracticeTrack.WHOLE
                            || !spec.has(Feature.TRACKS_ON_REQUEST))
                    .forEach(percent -> tracks.add(new PracticeTrack(sounding, percent)));
        }
        return tracks;
    }

    /** How many steps so many tracks take, with so many exercises. */
    static int steps(int tracks, int exercises, BuildSpec spec) {
        int lossless = spec.has(Feature.TRACKS_ON_REQUEST) ? 0 : Sounding.USUAL.size();
        return tracks + lossless + exercises;
    }

    List<ReleaseFile> make(ArtifactStore artifacts) {
        var lossless = tracks.stream()
                .filter(track -> track.percent() == PracticeTrack.WHOLE && !spec.has(Feature.TRACKS_ON_REQUEST));
        return Stream.of(
                        tracks.stream().map(this::mp3),
                        exercises.stream().map(this::exercise),
                        lossless.map(this::flac))
                .flatMap(steps -> steps)
                .toList()
                .parallelStream()
                .map(artifacts::step)
                .toList();
    }

    /** An exercise as it is written: the whole band at the full tempo. */
    private ArtifactStore.Step<ReleaseFile> exercise(LineAudio exercise) {
        var track = new PracticeTrack(Sounding.FULL, PracticeTrack.WHOLE);
        int place = tracks.size() + 1 + exercises.indexOf(exercise);
        String title = messages.say(
                "release.track", document.title(), exercise.line().header().title());
        return () -> ReleaseFile.of(
                exercise.name() + ".mp3",
                FileRole.PRACTICE,
                MP3,
                exercise.mp3(track, rounds(), tags(exercise, title, place, PracticeTrack.WHOLE)));
    }

    private ArtifactStore.Step<ReleaseFile> mp3(PracticeTrack track) {
        return () ->
                ReleaseFile.of(track.fileName("mp3"), FileRole.PRACTICE, MP3, main.mp3(track, rounds(), tags(track)));
    }

    private ArtifactStore.Step<ReleaseFile> flac(PracticeTrack track) {
        return () -> ReleaseFile.of(
                track.fileName("flac"), FileRole.LOSSLESS, FLAC, main.flac(track, rounds(), tags(track)));
    }

    /** What somebody asks for; it comes behind the usual tracks. */
    ReleaseFile onRequest(WantedTrack wanted, LineAudio line) throws IOException {
        var track = new PracticeTrack(wanted.sounding(), wanted.percent());
        String lesson = wanted.line() == 0
                ? document.title()
                : messages.say(
                        "release.track", document.title(), line.line().header().title());
        int last = tracks.size() + exercises.size();
        var tags = tags(line, track.tagTitleWithTempo(lesson, messages), 1 + last, wanted.percent());
        return wanted.lossless()
                ? ReleaseFile.of(wanted.name(), FileRole.ON_REQUEST, FLAC, line.flac(track, rounds(), tags))
                : ReleaseFile.of(wanted.name(), FileRole.ON_REQUEST, MP3, line.mp3(track, rounds(), tags));
    }

    private int rounds() {
        return document.settings().roundsNumber();
    }

    private Tags tags(PracticeTrack track) {
        String title = spec.has(Feature.NAMES_OF_ITS_OWN)
                ? track.tagTitleWithTempo(document.title(), messages)
                : track.tagTitle(document.title(), messages);
        return tags(main, title, 1 + tracks.indexOf(track), track.percent());
    }

    /** @param place among the lesson's recordings; in earlier releases all have the lesson's place in the series */
    private Tags tags(LineAudio audio, String title, int place, int percent) {
        int tempo = audio.line().inForce().get(0).tempo().perMinute();
        return new Tags(
                title,
                spec.series(),
                spec.has(Feature.NAMES_OF_ITS_OWN) ? spec.episodeNumber() : 0,
                spec.has(Feature.NAMES_OF_ITS_OWN) ? place : spec.episodeNumber(),
                document.rights().composer(),
                document.rights().statement(),
                Math.round(tempo * percent / (float) PracticeTrack.WHOLE),
                PreRoll.SECONDS,
                cover);
    }
}
